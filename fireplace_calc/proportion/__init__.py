"""Proportions to hold a fireplace against, and widths that suit a room. Guides, not rules: nothing
here passes or fails.
"""

from fireplace_calc.proportion.figures import (
    Published,
    nearest_published,
    nearest_shape,
    proportion_figures,
    published_openings,
    shapes,
)
from fireplace_calc.proportion.guides import (
    NAMES,
    Guide,
    find_guides,
    shelf_top,
    wall_ends,
    wall_top,
)
from fireplace_calc.proportion.widths import Widths, suited_widths, width_sentence

__all__ = [
    "NAMES",
    "Guide",
    "Published",
    "Widths",
    "proportion_figures",
    "find_guides",
    "nearest_published",
    "nearest_shape",
    "published_openings",
    "shapes",
    "shelf_top",
    "suited_widths",
    "wall_ends",
    "wall_top",
    "width_sentence",
]
