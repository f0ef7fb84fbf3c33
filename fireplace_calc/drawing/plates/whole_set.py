"""The set of sheets, put together and numbered: who makes which, in the order in which they lie."""

from __future__ import annotations

from collections.abc import Generator, Mapping
from importlib import import_module
from itertools import count
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.marks import numbered
from fireplace_calc.drawing.plates.sizes import Paper, paper
from fireplace_calc.drawing.plates.title_block import dress
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.takeoff.cost import Price

COVER = "cover_sheet.cover"
"""Lists the sheets of the others, which are handed to it."""
MAKERS: tuple[str, ...] = (
    COVER,
    "set_out.sheets",
    "plan_sheets.plans",
    "details.sheet",
    "rods.sheet",
    "cutting.sheets",
    "checks.inspector",
    "work_chart.chart",
    "yard.order_sheets",
)
"""Modules under ``drawing``, in the order of their sheets. Each has ``plates(result, units, paper,
prices)``, which gives its sheets; one that has nothing to show gives none.
"""


def bound(made: list[Plate], result: Assessment, units: str, on: Paper) -> list[tuple[str, Sheet]]:
    """Sheets with frame, title block, their numbers and the numbers that their marks refer to."""
    numbers = {key: str(n) for n, plate in zip(count(1), made) for key in plate.figures}
    for n, plate in enumerate(made, 1):
        numbered(plate.sheet, numbers)
        number = f"{n} of {len(made)}"
        dress(plate.sheet, on, result, units, plate.name, number, plate.scale, plate.denominator)
    return [(plate.name, plate.sheet) for plate in made]


def drawing(
    result: Assessment,
    units: str,
    size: str | None = None,
    prices: Mapping[str, Price] | None = None,
    makers: tuple[str, ...] | None = None,
) -> Generator[tuple[int, int, str], None, list[tuple[str, Sheet]]]:
    """Draw the whole set maker by maker; the cover, which lists the others, is made last.

    Parameters
    ----------
    result : Assessment
    units : str
    size : str or None
        Paper; the one usual for the units when left out.
    prices : dict or None
        Price list by item; else the example list, which is invented.
    makers : tuple of str or None
        Whose sheets; all when left out.

    Yields
    ------
    int, int, str
        How many sheets are drawn, how many there will be if every maker that is left makes one, and
        what is drawn next.

    Returns
    -------
    list of (str, Sheet)
        By the name of each sheet.
    """
    on, chosen = paper(units, size), MAKERS if makers is None else makers
    inside = [name for name in chosen if name != COVER]
    made: list[Plate] = []
    for n, name in enumerate(inside):
        yield len(made), len(made) + len(chosen) - n, name.split(".")[0].replace("_", " ")
        made += _maker(name).plates(result, units, on, prices)
    if COVER in chosen:
        yield len(made), len(made) + 1, "cover"
        made = [*_maker(COVER).plates(result, units, on, prices, made), *made]
    return bound(made, result, units, on)


def _maker(name: str) -> Any:
    return import_module(f"fireplace_calc.drawing.{name}")


def sheets(
    result: Assessment,
    units: str,
    size: str | None = None,
    prices: Mapping[str, Price] | None = None,
    makers: tuple[str, ...] | None = None,
) -> list[tuple[str, Sheet]]:
    """The whole set at once, as ``drawing`` makes it."""
    steps = drawing(result, units, size, prices, makers)
    while True:
        try:
            next(steps)
        except StopIteration as done:
            made: list[tuple[str, Sheet]] = done.value
            return made
