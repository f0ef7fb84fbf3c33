"""What the pictures of the draft are drawn from, kept between moves: only what a move has changed
is worked out and drawn again.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.draft import DraftResult, draft_result
from fireplace_calc.drawing.composed.compose import CELLS
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.draft_charts import DraftCharts, air_sheet, air_view
from fireplace_calc.explore import face_curve, limit_map, pressure_steps
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.report.draft_report import beside

SECTIONS, EXTENSIONS = np.arange(4, 41), np.arange(13) * 2 * INCH
"""Where the curves are worked out. [-], [m]"""


def _without(design: Design, *moved: str) -> Design:
    """The design without what the slider moves, to tell whether anything else has changed."""
    if "sections" in moved:
        design = replace(design, flue=replace(design.flue, sections=4))
    if "extension" in moved:
        design = replace(design, opening=replace(design.opening, extension=0.0))
    return replace(design, name="", note="")


class DraftPictures:
    """The draft's pictures of one panel.

    Attributes
    ----------
    known : dict
        What was worked out, by name, with the key it was made for and how often it has been.
    sheets : dict
        What was drawn, by cell, with what it was drawn from.
    cells : dict or None
        Paper of each picture where it has its own; nothing where all share one sheet. [mm]
    """

    EVENING = "mild"
    """Which evening the pressures are shown of."""

    def __init__(self) -> None:
        self.known: dict[str, tuple[Any, Any, int]] = {}
        self.sheets: dict[str, tuple[tuple[Any, ...], Sheet]] = {}
        self.cells: dict[str, Cell] | None = None

    def whole(self, result: Assessment, units: str) -> list[tuple[str, Cell, Sheet]]:
        """Every picture, brought up to the design: what a moving hand is not kept waiting for."""
        design = result.design
        self._keep(
            "sections",
            _without(design, "sections"),
            lambda: face_curve(design, "flue.sections", SECTIONS),
        )
        self._keep(
            "extension",
            _without(design, "extension"),
            lambda: face_curve(design, "opening.extension", EXTENSIONS),
        )
        self._keep(
            "map",
            (_without(design, "sections", "extension"), result.pack),
            lambda: limit_map(design, result.pack),
        )
        self._keep("said", (design, units), lambda: beside(result, units))
        return self._drawn(result.geometry, result.draft, units)

    def moving(self, design: Design, units: str) -> list[tuple[str, Cell, Sheet]]:
        """While a hand moves curves, map and odds stay as they were; pressures and the design's
        mark follow.

        There has to be something to stay: ``whole`` comes first.
        """
        made = build_geometry(design)
        return self._drawn(made, draft_result(made), units)

    def air(self, made: Geometry, draft: DraftResult) -> DraftCharts:
        """What was worked out, with the marks where this design stands."""
        sections, extension, limits, said = (
            self.known[name][1] for name in ("sections", "extension", "map", "said")
        )
        raised, count = made.design.opening.extension, made.design.flue.sections
        return DraftCharts(
            self.EVENING,
            pressure_steps(draft, made, self.EVENING),
            replace(sections, here=float(count)),
            replace(extension, here=raised),
            replace(limits, here=(raised, count)),
            said,
        )

    def _keep(self, name: str, key: Any, make: Callable[[], Any]) -> None:
        _, _, times = before = self.known.get(name, (None, None, 0))
        if before[0] != key:
            self.known[name] = (key, make(), times + 1)

    def _drawn(
        self, made: Geometry, draft: DraftResult, units: str
    ) -> list[tuple[str, Cell, Sheet]]:
        """One sheet a cell, the very same one as long as what it is drawn from is the same."""
        air, turns = (
            self.air(made, draft),
            {name: times for name, (_, _, times) in self.known.items()},
        )
        at = air.map.here
        read = {
            "front": (turns["map"], at),
            "plan": (turns["map"], turns["said"]),
            "section": (air.steps,),
            "roof": (turns["sections"], turns["extension"], at),
        }
        cells = self.cells or CELLS
        for name, cell in cells.items():
            key = (units, cell, *read[name])
            if self.sheets.get(name, ((),))[0] != key:
                own = self.cells is not None
                made_now = air_sheet(name, cell, air, units) if own else air_view(name, air, units)
                self.sheets[name] = (key, made_now)
        return [(name, cell, self.sheets[name][1]) for name, cell in cells.items()]
