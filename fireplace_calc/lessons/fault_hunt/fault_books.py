"""What a sound design needs in each book: questions that are answered, rules that its sizes follow,
and what is left out of the search.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from fireplace_calc.assessment import DEFAULT_PACK

ROUND, RECTANGULAR = (
    ("8", "10", "12", "15", "18"),
    ("8.5x8.5", "8.5x13", "8.5x18", "13x18", "18x18"),
)


@dataclass(frozen=True, slots=True)
class FaultBook:
    """One country's book as designs for a search are drawn for it.

    Attributes
    ----------
    start : str
        What the names of its packs begin with.
    flue, above, chamber : tuple of str
        Rules of the flue's size, of the height over the roof, of the smoke chamber.
    following : dict
        Rule to the input that its figure is written into.
    told : dict
        Answers and sizes that hold in this book, over what is drawn.
    guides : tuple of str
        Rules that are no more than a guide beside the code, and are not looked for.
    vent : float
        Least air vent as a share of the throat, nought where none is asked. [-]
    shapes : tuple of str
        Flues that are drawn.
    """

    start: str
    flue: tuple[str, ...]
    above: tuple[str, ...]
    chamber: tuple[str, ...]
    following: dict[str, str]
    told: dict[str, str] = field(default_factory=dict)
    guides: tuple[str, ...] = ()
    vent: float = 0.0
    shapes: tuple[str, ...] = ("round", "rectangular")


_YES = ("braced", "liner_mortar", "firebrick_mortar", "joints_offset", "liners_held", "gap_closed",
        "damper_covers", "soot_door", "sweeping", "liners_socket_up", "fit_for_1100", "co_alarm",
        "heat_recovery")  # fmt: skip
_NO = ("joists_on_wall", "cantilevered", "warm_air", "thatch", "rooflight", "other_space")
_LENGTHS = {
    "cleanout_clearance": "200 mm",
    "flooring_clearance": "20 mm",
    "metal_clearance": "80 mm",
    "liner_start": "250 mm",
    "metal_fixing": "80 mm",
    "drip_distance": "40 mm",
}
ABROAD = (
    {f"abroad.{name}": "yes" for name in _YES}
    | {f"abroad.{name}": "no" for name in _NO}
    | {f"abroad.{name}": value for name, value in _LENGTHS.items()}
)
"""What the books of Canada and England ask beside, answered as a careful mason would on site."""

AMERICA = FaultBook(
    "US IRC",
    ("FLU-10", "FLU-11", "FLU-12", "FLU-13"),
    ("ROF-01", "ROF-02"),
    ("SMK-01", "SMK-02", "SMK-05", "SMK-06", "SMK-07"),
    {
        "HTH-05": "hearth.front",
        "HTH-07": "hearth.front",
        "HTH-06": "hearth.side",
        "HTH-08": "hearth.side",
        "SMK-04": "smoke_chamber.height",
    },
)
CANADA = FaultBook(
    "Canada",
    ("CA-006",),
    ("CA-019", "CA-020"),
    ("CA-058", "CA-059", "CA-060"),
    {
        "CA-050": "hearth.front",
        "CA-052": "hearth.front",
        "CA-053": "hearth.front",
        "CA-051": "hearth.side",
    },
    ABROAD
    | {
        "firebox.lining_thickness": "50 mm",
        "chimney.gap": "1/2 in",
        "chimney.liner_above": "3 in",
        "clearance.side": "4-1/2 in",
        "house.air_inlet": "80 cm2",
    },
    guides=("CA-008", "CA-009", "CA-027"),
    shapes=("round",),
)
ENGLAND = FaultBook(
    "UK ADJ",
    ("UK-001", "UK-002", "UK-003", "UK-004", "UK-056"),
    ("UK-007", "UK-008", "UK-010", "UK-011"),
    (),
    {"UK-045": "hearth.front", "UK-046": "hearth.side"},
    ABROAD | {"opening.extension": "0 in"},
    vent=0.5,
)
FAULT_BOOKS = (AMERICA, CANADA, ENGLAND)


def fault_book(pack: str = DEFAULT_PACK) -> FaultBook:
    """The book of a pack.

    Parameters
    ----------
    pack : str
        One that faults are planted for.

    Returns
    -------
    FaultBook
    """
    return next(book for book in FAULT_BOOKS if pack.startswith(book.start))
