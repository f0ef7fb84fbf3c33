"""Proportions to hold a fireplace against, and widths that suit a room. Guides, not rules: nothing
here passes or fails.
"""

from fireplace_calc.proportion.across_corner import corner_fit, corner_of_room, corner_short
from fireplace_calc.proportion.figures import (
    PublishedOpening,
    nearest_published,
    nearest_shape,
    proportion_figures,
    published_openings,
    shapes,
)
from fireplace_calc.proportion.guide import NAMES, Guide
from fireplace_calc.proportion.guides import find_guides
from fireplace_calc.proportion.snapping import SNAPS, SliderStop, slider_stops, snapped
from fireplace_calc.proportion.wall_guides import shelf_top, wall_ends, wall_sides, wall_top
from fireplace_calc.proportion.widths import SuitedWidths, suited_widths, width_sentence

__all__ = [
    "NAMES",
    "SNAPS",
    "SliderStop",
    "Guide",
    "PublishedOpening",
    "SuitedWidths",
    "corner_fit",
    "corner_of_room",
    "corner_short",
    "proportion_figures",
    "find_guides",
    "nearest_published",
    "nearest_shape",
    "published_openings",
    "shapes",
    "shelf_top",
    "slider_stops",
    "snapped",
    "suited_widths",
    "wall_ends",
    "wall_sides",
    "wall_top",
    "width_sentence",
]
