"""What grows in the heat, and what a fire of soot does to the liner, in words and rows."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.units import FEET_INCHES, INCH, PSF
from fireplace_calc.heat.telling import told
from fireplace_calc.report.heat.heat_report import cooler, grows

GROWS = ("What grows", "How hot", "It grows", "Gap it asks for", "Gap drawn")
TRADE_GAP = INCH
"""Left between firebox lining and the wall behind it: the brick trade's advice, no code. [m]"""
FINEST = 1e-4
"""A movement is told to this in millimeters, a gap up to the next of five of them. [m]"""
NAMES = {
    "lining across": "Firebox lining, across the back",
    "lining up": "Firebox lining, up to the throat",
    "liner up": "Flue liner, over its whole height",
    "liner across": "Flue liner, across",
}
FIRES = {"hard": "hard fire", "soot": "soot fire"}


def asked_gap(length: float, units: str) -> str:
    """A gap, up to the next 1/32 in or half a millimeter.

    Examples
    --------
    >>> asked_gap(0.0016, "feet-inches"), asked_gap(0.0016, "millimetres")
    ('3/32 in', '2.0 mm')
    """
    if units != FEET_INCHES:
        return f"{ceil(round(length / FINEST / 5, 6)) / 2:.1f} mm"
    return f"{Fraction(ceil(round(length / INCH * 32, 6)), 32)} in"


def growth_rows(result: Assessment, units: str) -> tuple[tuple[str, ...], ...]:
    """One row a part and fire, in the order of ``GROWS``."""
    rows = []
    for one in result.heat.grows:
        at = "at either side" if one.what.endswith("across") else "at the top"
        left = "none drawn" if one.left is None else show(one.left, "length", units)
        if one.what == "liner up":
            left = "slides at the crown"
        if one.enough is False:
            left += ", too little"
        rows.append(
            (
                f"{NAMES[one.what]}, {FIRES[one.fire]}",
                told(one.hot, units=units),
                grows(one.growth, units),
                f"{asked_gap(one.asks, units)} {at}",
                left,
            )
        )
    return tuple(rows)


def growth_sentence(units: str) -> str:
    """What to make of the table of growth."""
    return (
        "Mortar in a gap for movement undoes it: fill it with mineral wool that bears the heat, or"
        " leave it open. Behind the lining the brick trade advises"
        f" {show(TRADE_GAP, 'length', units)}, which is more than growth asks for. At the crown the"
        " liner must slide: bond break and sealant, no mortar."
    )


def pull_sentence(result: Assessment, units: str) -> str:
    """What a fire of soot does to the liner; nothing where the flue is not worked."""
    pull = result.heat.pull
    if pull is None:
        return ""
    stresses = ", ".join(_stress(each, units) for each in (pull.low, pull.middle, pull.high))
    weak, strong = (_stress(each, units) for each in (pull.weak, pull.strong))
    unit = "psi" if units == FEET_INCHES else "MPa"
    word = "It is likely to crack" if pull.likely else "It may crack"
    return (
        f"In a soot fire the inside of the liner is {cooler(pull.difference, units)} than its"
        f" outside, which pulls its outer face with {stresses} {unit} (by soft, middle and stiff"
        f" clay); fired clay stands {weak} to {strong} {unit} in bending, from memory. {word}."
        " After a soot fire light none before somebody has looked at the flue from end to end."
    )


def _stress(pascal: float, units: str) -> str:
    """To a megapascal, or to 100 psi."""
    if units != FEET_INCHES:
        return f"{pascal / 1e6:.0f}"
    return f"{100 * round(pascal / (144 * PSF) / 100):,}"
