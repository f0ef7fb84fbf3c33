"""One thing that stands by itself, as a body: what the picture's things are made from."""

from __future__ import annotations

import atexit
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.geometry.mesh import part_body
from fireplace_calc.geometry.parts import Part

if TYPE_CHECKING:
    from manifold3d import Manifold

CRUMB = 1e-8
"""A body of less is only what a cut leaves. [m3]"""
EVERYWHERE = 1e6
"""A level that nothing reaches. [m]"""


@dataclass(frozen=True, slots=True)
class ShownSolid:
    """One thing that stands by itself.

    Attributes
    ----------
    key : str
        Its own among all of them.
    name : str
        As it is spoken of.
    part, material : str
        The part it belongs to, and of what it is.
    body : Manifold
        Where it stands. [m]
    item : str
        Its line on the list, where it is one piece of it; nothing for masonry.
    kind : str
        ``masonry`` or ``piece``.
    step : int
        When it is set, counted from 1; nought stands from the beginning. [-]
    smooth : bool
        Round to the eye.
    """

    key: str
    name: str
    part: str
    material: str
    body: Manifold
    item: str = ""
    kind: str = "masonry"
    step: int = 0
    smooth: bool = False


@lru_cache(maxsize=512)
def between_levels(part: Part, low: float = -EVERYWHERE, high: float = EVERYWHERE) -> Manifold:
    """What of a part stands between two levels. Kept: most parts stay when a slider moves.

    Parameters
    ----------
    part : Part
    low, high : float
        [m]

    Returns
    -------
    Manifold
        Empty where nothing does.
    """
    body = part_body(part)
    if part.bottom < low:
        body = body.trim_by_plane((0.0, 0.0, 1.0), low)
    if part.top > high:
        body = body.trim_by_plane((0.0, 0.0, -1.0), -high)
    return body


# solids that outlive the library's own end are reported as lost, on the reader's screen
atexit.register(between_levels.cache_clear)
