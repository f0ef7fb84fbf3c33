"""What a design weighs, what acts on it, and whether it stands: one frozen record."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.rules.core import JUDGEMENT, Finding
from fireplace_calc.structure.arch import Arch
from fireplace_calc.structure.footing import Footing
from fireplace_calc.structure.lintel import LintelResult
from fireplace_calc.structure.loads.seismic import SeismicLoad, Steel
from fireplace_calc.structure.loads.stack import FreeStack
from fireplace_calc.structure.loads.weights import Weights


@dataclass(frozen=True)
class Structure:
    """What a design weighs, what pushes it, and whether it stands.

    Attributes
    ----------
    design : Design
    frame : Frame
    weights : Weights
        Mass of every part.
    stack : FreeStack
        The chimney above its last support.
    seismic_load : SeismicLoad or None
        Earthquake on it, where the response is known.
    steel : Steel
        Bars, ties and straps by rule.
    lintel : LintelResult or None
        A straight head.
    arch : Arch or None
        An arched one.
    footing : Footing
    findings : tuple of Finding
        Engineering judgement, worst first.
    engineer : tuple of str
        When to send for one, and why.
    remarks : tuple of str
        What the numbers leave out.
    pack : str
        Book the job is under; empty takes the rules of every country.
    """

    design: Design
    frame: Frame
    weights: Weights
    stack: FreeStack
    seismic_load: SeismicLoad | None
    steel: Steel
    lintel: LintelResult | None
    arch: Arch | None
    footing: Footing
    findings: tuple[Finding, ...] = ()
    engineer: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    pack: str = ""

    @property
    def edition(self) -> str:
        """What every finding is: engineering judgement."""
        return JUDGEMENT
