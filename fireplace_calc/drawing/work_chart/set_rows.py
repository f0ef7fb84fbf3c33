"""A set of pieces in the order of work: in which order they are set, from how many mixes."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from fireplace_calc.build.setting.mixes import MINUTE, OPEN_TIME, mixes_of_steps
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.build.setting.step_mortar import mortar_of_steps
from fireplace_calc.build.setting.wording import volume_text
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.plates.bands import Together, row
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.geometry.from_set.set_up import set_up

ONE = (Column("", 1.0),)
BOOKLET = (
    "Delivery, where it is put down, story pole and a card for every piece are a booklet: Print the"
    " cards, in the notebook piece-by-piece."
)


def in_turn(names: Iterable[str]) -> str:
    """Pieces in the order they are set, each mark with which of its pieces.

    Parameters
    ----------
    names : iterable of str
        As ``WL.1``; without a number where there is one kind of step.

    Returns
    -------
    str

    Examples
    --------
    >>> in_turn(["PL.1", "WL.1", "lining", "F8.1", "F8.2", "F8.3"])
    'PL.1, WL.1, lining, F8.1 to F8.3'
    """
    said = []
    for _, run in groupby(names, key=lambda name: name.rpartition(".")[0] or name):
        each = list(run)
        said += [f"{each[0]} to {each[-1]}"] if len(each) > 2 else each
    return ", ".join(said)


def rows_of_set(design: Design, units: str, wide: float) -> list[Together]:
    """Rows about the set; none for a design without one.

    Parameters
    ----------
    design : Design
    units : str
    wide : float
        [mm]

    Returns
    -------
    list of Together
    """
    if design.piece_set is None:
        return []
    made = set_up(design).assembly
    steps = order_of_setting(made, design.piece_set.lining)
    mixes = mixes_of_steps(steps, mortar_of_steps(made, steps))
    largest = volume_text(max(mix.volume for mix in mixes), units)
    late = sum(not mix.in_time for mix in mixes)
    said = (
        f"{len(mixes)} mixes of refractory mortar, the largest {largest}, each spread and covered"
        f" within {OPEN_TIME / MINUTE:.0f} minutes"
    )
    if late:
        said += f", but for {late} whose one piece takes longer"
    order = in_turn(step.name for step in steps)
    return row(ONE, (f"Pieces in the order they are set: {order}. {said}. {BOOKLET}",), wide)
