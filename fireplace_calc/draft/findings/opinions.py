"""What others would build: the flue that each published rule asks for, beside the flue that the
air of sizing mode asks for.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi, sqrt

from fireplace_calc.base.tables import Source, rows, source_of
from fireplace_calc.base.tables.draft import coefficients
from fireplace_calc.draft.findings.canada import CANADA_TABLE, canadas_flues
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.draft.sizing import face_velocity, round_flue_for

THIS, AIR = "this flue", "the air, sizing mode"
"""Names of the two rows that are no rule."""


@dataclass(frozen=True, slots=True)
class FlueOpinion:
    """A flue for this opening and chimney, by one author.

    Attributes
    ----------
    rule : str
        What it goes by.
    area : float or None
        Clear area of the flue; none where the rule has nothing for such an opening. [m2]
    off : float or None
        The same over what the air asks, less one. [-]
    velocity : float or None
        Through the face of this opening with such a flue, sizing mode; inlet, cap and bends as
        drawn. [m/s]
    source : Source
    """

    rule: str
    area: float | None
    off: float | None
    velocity: float | None
    source: Source


def flue_opinions(found: DraftResult) -> tuple[FlueOpinion, ...]:
    """What each published rule asks of one design, after this flue and the air.

    Parameters
    ----------
    found : DraftResult

    Returns
    -------
    tuple of FlueOpinion

    Notes
    -----
    Flues are compared as round ones. The air asks for the flue that just gives the published face
    velocity with the inlet that is drawn.
    """
    path = found.path
    opening, height = float(path.opening_area), float(path.height)
    just = round_flue_for(opening, height, path.inlet, top=path.other, length=path.length)
    wanted = pi / 4 * float(just) ** 2
    face = coefficients()["face velocity"].source

    def opinion(rule: str, area: float | None, source: Source) -> FlueOpinion:
        if area is None:
            return FlueOpinion(rule, None, None, None, source)
        across = sqrt(4 * area / pi)
        speed = face_velocity(
            opening, area, across, path.height, path.length, path.inlet, path.other
        )
        return FlueOpinion(rule, area, area / wanted - 1.0, float(speed), source)

    least, most, _ = canadas_flues(found)
    said = [opinion(THIS, float(path.flue_area), Source("as drawn", "computed"))]
    said.append(opinion(AIR, wanted, face))
    for r in rows("flue_opinions.csv"):
        share = 1.0 / height if r["kind"] == "height" else float(r["share"])
        said.append(opinion(r["rule"], share * opening, source_of(r)))
    for name, tabled in (("least of Canada's table", least), ("most of Canada's table", most)):
        area = None if tabled is None else pi / 4 * tabled**2
        said.append(opinion(name, area, CANADA_TABLE))
    return tuple(said)
