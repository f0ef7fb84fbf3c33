"""What the customer wants to keep, which no mend may move; and which book is not this job's."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of

EVERYWHERE = "Trade practice"
"""The book of no country: it takes every country's figures."""
FOREIGN = {"DRF-08": "Canada", "DRF-09": "Canada"}
"""Findings on the draft that hold a design against the table of one country, by key."""


class Kept(NamedTuple):
    """Something a customer wants to keep.

    Attributes
    ----------
    label : str
        As the trade calls it.
    keys : tuple of str
        Inputs that stay.
    """

    label: str
    keys: tuple[str, ...]


LOOKS = {
    "width": Kept("Opening width", ("opening.width",)),
    "raise": Kept("Raise", ("opening.extension",)),
    "height": Kept("Standard height", ("opening.standard_height",)),
    "look": Kept(
        "Look: face, arch, mantel",
        (
            "opening.head",
            "opening.rise",
            "opening.hood",
            "surround.face",
            "surround.thickness",
            "surround.mortar",
            "surround.stone_bond",
            "surround.trim",
            *(key for key in all_inputs() if key.startswith("mantel.")),
            "brick.facing",
            "brick.facing_joint",
            "brick.facing_bond",
        ),
    ),
    "liner": Kept("Liner", ("flue.shape", "flue.size", "flue.own_width", "flue.own_depth")),
    "chimney": Kept("Chimney height", ("flue.sections", "flue.section_height")),
    "hearth": Kept("Hearth extension", ("hearth.front", "hearth.side", "hearth.material")),
    "air": Kept("Fans and outdoor air", ("house.exhaust", "house.air_inlet")),
    "framing": Kept(
        "Framing",
        ("clearance.front", "clearance.side", "clearance.back", "clearance.chimney"),
    ),
}
"""What is mostly kept, by a short name."""


def locked_inputs(locks: Iterable[str]) -> frozenset[str]:
    """Every input that some locks keep.

    Parameters
    ----------
    locks : iterable of str
        Names of ``LOOKS``, and dotted names of inputs.

    Returns
    -------
    frozenset of str

    Raises
    ------
    InputError
        When one is neither.

    Examples
    --------
    >>> sorted(locked_inputs(["raise", "throat.depth"]))
    ['opening.extension', 'throat.depth']
    """
    keys: set[str] = set()
    for name in locks:
        if name in LOOKS:
            keys.update(LOOKS[name].keys)
        elif name in all_inputs() or name == "surround.trim":
            keys.add(name)
        else:
            raise InputError(
                f"There is nothing named {name} to keep; it is one of {', '.join(LOOKS)}, or an"
                " input such as throat.depth.",
                "Locks",
                f"{', '.join(LOOKS)}, or an input",
                name,
            )
    return frozenset(keys)


def stays(design: Design, changed: Design, keys: Iterable[str]) -> bool:
    """Whether some inputs are what they were, moved neither directly nor by what follows.

    Parameters
    ----------
    design, changed : Design
    keys : iterable of str

    Returns
    -------
    bool
    """
    return all(value_of(design, key) == value_of(changed, key) for key in keys)


def foreign(pack: str) -> frozenset[str]:
    """Keys of findings that hold a design against a book of another country than a job's own.

    Parameters
    ----------
    pack : str
        The job's own.

    Returns
    -------
    frozenset of str

    Examples
    --------
    >>> sorted(foreign("US IRC 2021")), sorted(foreign("Canada NBC"))
    (['DRF-08', 'DRF-09'], [])
    """
    if pack == EVERYWHERE:
        return frozenset()
    return frozenset(key for key, country in FOREIGN.items() if not pack.startswith(country))
