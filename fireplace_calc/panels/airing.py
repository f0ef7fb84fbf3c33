"""What the pictures of the draft are drawn from, kept between moves: only what a move has changed is worked out again."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from fireplace_calc.airwords import beside
from fireplace_calc.assess import Assessment
from fireplace_calc.design import Design
from fireplace_calc.drawing.air import Air
from fireplace_calc.explore import face_curve, limit_map, pressure_steps
from fireplace_calc.units import INCH

SECTIONS, EXTENSIONS = np.arange(4, 41), np.arange(13) * 2 * INCH
"""Where the curves are worked out. [-], [m]"""


def _without(design: Design, *moved: str) -> Design:
    """The design with what the slider moves put aside, to tell whether anything else has changed."""
    if "sections" in moved:
        design = replace(design, flue=replace(design.flue, sections=4))
    if "extension" in moved:
        design = replace(design, opening=replace(design.opening, extension=0.0))
    return replace(design, name="", note="")


class Airing:
    """The draft's pictures of one panel."""

    def __init__(self) -> None:
        self.known: dict[str, tuple] = {}

    def _kept(self, name: str, key: tuple, make, fresh: bool):
        """What was made for this key; made again when it is another one and there is time for it."""
        if name not in self.known or (fresh and self.known[name][0] != key):
            self.known[name] = (key, make())
        return self.known[name][1]

    def air(self, result: Assessment, units: str, evening: str = "mild", fresh: bool = True) -> Air:
        """Everything for the pictures.

        Parameters
        ----------
        result : Assessment
        units : str
            ``feet-inches`` or ``millimetres``, for the sentences.
        evening : str
            Which evening the pressures are shown of.
        fresh : bool
            False while a hand is moving: curves, map and odds stay as they were and only the design's mark moves.

        Returns
        -------
        Air
        """
        design = result.design
        sections = self._kept("sections", (_without(design, "sections"),), lambda: face_curve(design, "flue.sections", SECTIONS), fresh)
        extension = self._kept("extension", (_without(design, "extension"),),
                               lambda: face_curve(design, "opening.extension", EXTENSIONS), fresh)
        limits = self._kept("map", (_without(design, "sections", "extension"), result.pack), lambda: limit_map(design, result.pack), fresh)
        said = self._kept("said", (design, units), lambda: beside(result, units), fresh)
        return Air(evening, pressure_steps(result.draft, result.geometry, evening), replace(sections, here=float(design.flue.sections)),
                   replace(extension, here=design.opening.extension),
                   replace(limits, here=(design.opening.extension, design.flue.sections)), said)
