"""Room for the views on a page's stage of any size, and the views laid out for it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from fireplace_calc.drawing.composed.compose import TURNS, view_sheet
from fireplace_calc.drawing.composed.live import roof_limits
from fireplace_calc.drawing.page.glyphs import CAP
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.rules import Finding

LETTER = 12.1
"""Font size of the smallest letter on a page. [px]"""
DENSITY = LETTER * CAP / SMALL
"""Dots of the page to a millimeter of a sheet. [px/mm]"""
ALL, DRAFT = "all", "draft"
"""The four elevations together, and the charts of the draft in their places."""
FOUR = (236.0, 134.0)
"""Least stage for four views together. [mm]"""
TWO = 190.0
"""Least width of a stage for two. [mm]"""
LEAST = (100.0, 112.0)
"""Least paper of a view; on a smaller stage letters are smaller too. [mm]"""
MARKED = "marked"
"""A check where it is measured, with its caption over it."""
LEAST_OF = {
    MARKED: (100.0, 144.0),
    "arch": (120.0, 112.0),
    "staging": (110.0, 148.0),
}
"""The same of views whose words take more room. [mm]"""
SHARES = {"left": 106.0 / 300.0, "section": 92.0 / 300.0, "front": 108.0 / 186.0}
"""Of the width for front and plan, and for the section; of the height for the front. [-]"""


@dataclass(frozen=True)
class PageStage:
    """A stage cut into cells.

    Attributes
    ----------
    width, height : float
        Of what is seen at once. [mm]
    count : int
        Views that are seen at once: 4 (the front over the plan, then section, then roof), 2 or 1
        side by side, the others further on. [-]
    cells : dict
        Paper of each view, in the order in which they stand; each begins at its own lower left
        corner. [mm]
    """

    width: float
    height: float
    count: int
    cells: dict[str, Cell]


def stage_cells(view: str, wide: float, high: float, count: int | None = None) -> PageStage:
    """Cut a stage into cells.

    Parameters
    ----------
    view : str
        ``all`` for the four elevations, ``draft`` for the charts in their places, a view that has
        the stage alone, or ``marked`` for a check where it is measured.
    wide, high : float
        Of the stage, in the page's own dots. [px]
    count : int, optional
        How many of four views are to be seen at once, 4, 2 or 1; by default as many as have room.
        [-]

    Returns
    -------
    PageStage
    """
    width, height = wide / DENSITY, high / DENSITY
    if view not in (ALL, DRAFT):
        alone = _paper(width, height, LEAST_OF.get(view, LEAST))
        return PageStage(alone.right, alone.top, 1, {view: alone})
    count = count or _fitting(width, height)
    if count < len(TURNS):
        paper = _paper(width / count, height)
        return PageStage(count * paper.right, paper.top, count, dict.fromkeys(TURNS, paper))
    left, middle, upper = (
        width * SHARES["left"],
        width * SHARES["section"],
        height * SHARES["front"],
    )
    cells = {
        "front": Cell(0.0, 0.0, left, upper),
        "section": Cell(0.0, 0.0, middle, height),
        "roof": Cell(0.0, 0.0, width - left - middle, height),
        "plan": Cell(0.0, 0.0, left, height - upper),
    }
    return PageStage(width, height, count, cells)


def _fitting(width: float, height: float) -> int:
    if width >= FOUR[0] and height >= FOUR[1]:
        return 4
    return 2 if width >= TWO else 1


def _paper(width: float, height: float, least: tuple[float, float] = LEAST) -> Cell:
    """A view's own paper, of the stage's shape; larger than the stage where that has no room."""
    grow = max(least[0] / width, least[1] / height, 1.0)
    return Cell(0.0, 0.0, width * grow, height * grow)


def stage_views(
    view: str,
    geometry: Geometry,
    units: str,
    findings: Iterable[Finding],
    guides: Collection[str],
    stage: PageStage,
) -> Iterator[tuple[str, Cell, Sheet]]:
    """The views of a stage, each on its own paper, with the roof clearances as the checks found
    them; the very same sheets as long as what they are drawn from is the same.

    Parameters
    ----------
    view : str
        As it was given to ``stage_cells``.
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.
    findings : iterable of Finding
        With the two of ``live.CLEARANCES``.
    guides : collection of str
        Names of the proportion guides that the view ``room`` shows.
    stage : PageStage

    Yields
    ------
    str, Cell, Sheet
        Name of the view, its paper, and what is on it.
    """
    limits = roof_limits(findings)
    for name, cell in stage.cells.items():
        yield name, cell, view_sheet(name, cell, geometry, units, limits, guides, own_paper=True)
