"""What is to be built, in ten lines from the opening to the footing."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import chain

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.mantel import TOLD
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.sentences import require_units
from fireplace_calc.takeoff.cost import Price

NOT_SAID = "of what, not said"
"""Of a kind that nobody has told."""


def to_be_built(
    result: Assessment, units: str = FEET_INCHES, priced: Mapping[str, Price] | None = None
) -> tuple[tuple[str, str], ...]:
    r"""A part of the work and what it is, ten times; every figure is the design's.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``.
    priced : mapping, optional
        Price list by item; else the example list, which is invented.

    Returns
    -------
    tuple of (str, str)

    Raises
    ------
    InputError
        When there is no such unit system.

    Examples
    --------
    >>> from fireplace_calc import Design, assess
    >>> to_be_built(assess(Design()))[1]
    ('Firebox', 'laid, 1\'-8" deep, back 1\'-10 11/16" wide, firebrick lining 4 1/2".')
    """
    require_units(units)
    told = chain(_in_the_room(result, units), _smoke_way(result, units), _below(result, units))
    said = option_words(result, units, priced)
    cost = f"{said.weight} as it stands, footing included; materials {said.price}."
    return (*told, ("In all", cost))


def _long(value: float, units: str) -> str:
    return show(value, "length", units)


def _in_the_room(result: Assessment, units: str) -> tuple[tuple[str, str], ...]:
    d, f = result.design, result.geometry.frame
    head = (
        f"arch rising {_long(f.opening_top - f.spring, units)}"
        if f.spring < f.opening_top - 1e-9
        else f"straight head on {d.lintel.material or 'a lintel ' + NOT_SAID}"
    )
    hood = f", under a hood of {_long(f.hood, units)}" if f.hood > 0 else ""
    lining = (
        f"{d.firebox.lining} lining {_long(d.firebox.lining_thickness, units)}"
        if d.firebox.lining
        else "no lining told"
    )
    way = "laid" if d.method == "laid" else "set in sections"
    over = _long(f.hearth, units) + " over the floor" if abs(f.hearth) > 1e-6 else "at the floor"
    hearth = (
        f"{d.hearth.material or NOT_SAID}, {_long(d.hearth.front, units)} in front,"
        f" {_long(d.hearth.side, units)} beside, {_long(d.hearth.thickness, units)} thick"
        if d.hearth.front > 0
        else "none in front"
    )
    pieces = len(d.surround.trim)
    mantel = f"mantel: {d.mantel.family}"
    if d.mantel.family == TOLD:
        mantel = (
            f"mantel and trim of {pieces} piece{'s' * (pieces != 1)}" if pieces else "no mantel"
        )
    return (
        (
            "Opening",
            f"{_long(d.opening.width, units)} wide,"
            f" {_long(f.clear_top - f.hearth, units)} high{hood}, {head}; hearth {over}.",
        ),
        (
            "Firebox",
            f"{way}, {_long(f.depth, units)} deep, back {_long(f.back_width, units)} wide,"
            f" {lining}.",
        ),
        ("Hearth extension", f"{hearth}."),
        ("Face", f"{d.surround.face}; {mantel}."),
    )


def _smoke_way(result: Assessment, units: str) -> tuple[tuple[str, str], ...]:
    d, f = result.design, result.geometry.frame
    damper = f"damper at the {d.throat.damper}" if d.throat.damper else "no damper told"
    built = d.smoke_chamber.construction or "how built, not said"
    lining = d.smoke_chamber.lining or "lining not said"
    bore = show(f.bore.area, "area", units)
    second = f"; a second flue beside it for {d.second_flue.serves}" if f.second else ""
    return (
        (
            "Throat",
            f"{_long(d.throat.height, units)} over the opening,"
            f" {_long(d.throat.depth, units)} front to back; {damper}.",
        ),
        ("Smoke chamber", f"{_long(d.smoke_chamber.height, units)} high, {built}, {lining}."),
        (
            "Flue",
            f"{d.flue.shape} {f.bore.label}, {d.flue.liner or 'liner ' + NOT_SAID},"
            f" {d.flue.sections} sections of {_long(d.flue.section_height, units)}; {bore} inside,"
            f" 1/{f.clear_area / f.bore.area:.1f} of the opening{second}.",
        ),
        (
            "Chimney",
            f"{d.chimney.masonry or NOT_SAID}, {_long(2 * f.stack_half, units)} by"
            f" {_long(2 * f.stack_depth, units)}; top {_long(f.crown_top, units)} above the floor,"
            f" {_long(f.crown_top - f.uphill_contact, units)} over the roof.",
        ),
    )


def _below(result: Assessment, units: str) -> tuple[tuple[str, str], ...]:
    base, f = result.design.base, result.geometry.frame
    out = base.footing_projection
    wide, deep = 2 * (f.block_half + out), f.block_back + 2 * out
    return (
        (
            "Footing and base",
            f"concrete {_long(wide, units)} by {_long(deep, units)},"
            f" {_long(base.footing_thickness, units)} thick, underside"
            f" {_long(base.footing_depth, units)} below grade; base of block, core {base.core}.",
        ),
    )
