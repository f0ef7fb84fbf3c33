"""What a cubic foot of refractory castable takes out of the bag; from memory, read your own bag."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import PCF, POUND


@dataclass(frozen=True, slots=True)
class Castable:
    """How castable is bought.

    Attributes
    ----------
    bag : float
        Dry castable in one. [kg]
    dry : float
        Dry castable in a volume that is cast. [kg/m3]
    waste : float
        Share of it that never gets into a form. [-]
    note : str
        How well all that is known.
    """

    bag: float
    dry: float
    waste: float
    note: str


@lru_cache(maxsize=1)
def castable() -> Castable:
    """The figures of ``data/castable.csv``.

    Returns
    -------
    Castable
    """
    table = {row["name"]: row for row in rows("castable.csv")}
    bag, dry = float(table["bag"]["value"]) * POUND, float(table["dry"]["value"]) * PCF
    said = (
        f"{table[n]['value']} {table[n]['unit']} {table[n]['note']} ({table[n]['confidence']})"
        for n in ("bag", "dry")
    )
    return Castable(bag, dry, float(table["waste"]["value"]), "; ".join(said))
