"""Every fold there is, by the name a notebook asks for it, and the choice each reader begins with."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from fireplace_calc.assess import Assessment
from fireplace_calc.drawing.working import working
from fireplace_calc.drawing.written import cutting, ordering, standing
from fireplace_calc.panels import html
from fireplace_calc.panels.folds import LONG_REST, REST, Body, Checklist, Fold, Guides, Inputs, Words
from fireplace_calc.panels.mending import HowFar, Mending
from fireplace_calc.panels.options import Options
from fireplace_calc.panels.papers import Papers

if TYPE_CHECKING:
    from fireplace_calc.panels.panel import Panel


def _words(title: str, said: Callable[[Assessment, str], str], rest: float = REST) -> Callable[[Panel], Fold]:
    return lambda panel: Words(panel, title, said, rest)


FOLDS: dict[str, Callable[[Panel], Fold]] = {
    "checks": _words("Checks", html.findings),
    "mending": Mending,
    "howfar": HowFar,
    "checklist": Checklist,
    "books": _words("Every book", html.books, LONG_REST),
    "draft": _words("Will it draw?", html.draft, LONG_REST),
    "structure": _words("Will it stand?", lambda result, units: html.flow(standing(result, units)), LONG_REST),
    "bricks": _words("Brickwork and cuts", lambda result, units: html.flow(cutting(result, units)), LONG_REST),
    "takeoff": _words("Material takeoff", html.takeoff),
    "cost": _words("Order and cost", lambda result, units: html.flow(ordering(result, units)), LONG_REST),
    "work": _words("Order of work", lambda result, units: html.flow(working(result, units)), LONG_REST),
    "worked": _words("Formula, numbers, result", html.figures, LONG_REST),
    "options": Options,
    "guides": Guides,
    "body": Body,
    "papers": Papers,
    "inputs": Inputs,
}
"""Every fold by the name a notebook asks for it."""

DESIGNER = ("guides", "options", "body", "checks", "cost", "papers", "inputs")
MASON = ("mending", "howfar", "worked", "checks", "draft", "structure", "bricks", "takeoff", "body", "papers", "inputs")
CREW = ("work", "bricks", "takeoff", "cost", "structure", "checks", "papers", "inputs")
