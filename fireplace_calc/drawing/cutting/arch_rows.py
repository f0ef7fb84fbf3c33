"""The arch in rows of words: its bricks with their joints, and ordinates from a straight edge."""

from __future__ import annotations

from math import degrees

from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.brickwork.cutting.set_arch import ArchSetting, VoussoirRing
from fireplace_calc.drawing.cutting.list_rows import other_tape, sized, tape
from fireplace_calc.drawing.plates.bands import Together, heading, row, words
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.views.layout import length

STEP = {FEET_INCHES: 3 * INCH, "millimetres": 0.1}
"""Between two ordinates. [m]"""
MOST = 14
"""More are not written: the step is doubled. [-]"""
ORDINATES = (
    Column("From the center line, each way", 40),
    Column("Up from the straight edge", 36),
    Column("", 20),
)
SIZES = (Column("", 44), Column("", 30), Column("", 22))
CENTERING = (
    "Centering: cut two boards to the ordinates below, laid off from a straight edge from springing"
    " to springing, less the thickness of the lagging all along; 3/4 in plywood is usual (common"
    " practice). Set them on wedges, so that they can be eased down, and leave them until the work"
    " over the arch is up and the mortar is hard: {keep} Nobody stands under it meanwhile."
)
KEEP = "usual is seven days and more in cold (common practice, no source)."


def arch_blocks(setting: ArchSetting, units: str, wide: float) -> list[Together]:
    """All that is set out of an arch.

    Parameters
    ----------
    setting : ArchSetting
    units : str
    wide : float
        Of the column. [mm]
    """
    ring, (across, up) = setting.ring, setting.skewback
    made = [heading("Arch", wide)]
    for name, value in (
        ("Span", ring.span),
        ("Rise", ring.rise),
        ("Radius of the soffit", ring.radius),
        ("Radius of the back", ring.radius + ring.depth),
        ("Center under the springing", setting.center),
        ("Depth of the ring", ring.depth),
        ("Front to back", ring.thickness),
        ("Skewback, across", across),
        ("Skewback, up", up),
    ):
        made += row(SIZES, (name, length(value, units), other_tape(value, units)), wide)
    lean = f"{degrees(ring.half_angle):.1f} degrees"
    made += row(SIZES, ("Skewback, off plumb", lean, ""), wide)
    if not setting.rings:
        made += words("Stone: how many voussoirs is the mason's choice, odd for a key.", wide)
    for n, one in enumerate(setting.rings, 1):
        made += _ring(one, n if len(setting.rings) > 1 else 0, setting.deep, units, wide)
    made += words(CENTERING.format(keep=KEEP), wide)
    made += row(ORDINATES, [column.heading for column in ORDINATES], wide, bold=True, leads=True)
    step = STEP[units]
    while len(setting.stations(step)) > MOST:
        step *= 2
    for x in setting.stations(step):
        high = setting.ordinate(x)
        texts = (length(x, units), tape(high, units), other_tape(high, units))
        made += row(ORDINATES, texts, wide)
    return made


def _ring(one: VoussoirRing, number: int, deep: int, units: str, wide: float) -> list[Together]:
    name = f"Ring {number}" if number else "Bricks"
    behind = f", {deep} behind one another" if deep > 1 else ""
    made = row(SIZES, (f"{name} round", f"{one.bricks}{behind}", "the middle one is the key"), wide)
    (narrow, broad), (low, high) = one.wedge, one.taper
    if one.tapered:
        own, other = sized((low, high), units)
        made += row(SIZES, ("Cut to a taper, soffit and back", own, other), wide)
        joint = (tape(one.joint, units), other_tape(one.joint, units))
        made += row(SIZES, ("Joints, all alike", *joint), wide)
        return made
    own, other = sized((narrow, broad), units)
    made += row(SIZES, ("Whole; joints at soffit and back", own, other), wide)
    if not one.whole:
        said = (
            "These joints are outside of what is laid well, and a brick cut to a taper would not"
            " fill them: take a thinner brick, a shallower ring or more rings."
        )
        made += words(said, wide)
    return made
