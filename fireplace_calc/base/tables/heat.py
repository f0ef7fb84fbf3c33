"""What conducts heat and keeps it, fires by what they do to a wall, temperatures that matter."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, rows, source_of


@dataclass(frozen=True, slots=True)
class Conductor:
    """A material in the heat.

    Attributes
    ----------
    conductivity, low, high : float
        Usual, and what is found in tables. [W/(m K)]
    capacity : float
        [J/(m3 K)]
    source : Source
    note : str
    """

    conductivity: float
    low: float
    high: float
    capacity: float
    source: Source
    note: str


@dataclass(frozen=True, slots=True)
class WallFire:
    """A fire by what it does to the wall of its firebox, and the air that cools the gap behind.

    Attributes
    ----------
    key, label : str
    face : float
        Of the inner face, or behind the film. [C]
    film : float or None
        None where the face itself was measured. [W/(m2 K)]
    air : float
        Heat that the room's air carries through the gap. [W/(m2 K)]
    source : Source
    """

    key: str
    label: str
    face: float
    film: float | None
    air: float
    source: Source

    @property
    def named(self) -> str:
        """Its key before what it is."""
        return f"{self.key}: {self.label}"


@dataclass(frozen=True, slots=True)
class HeatLine:
    """A temperature that matters. [C]"""

    key: str
    celsius: float
    name: str
    about: str
    source: Source


@lru_cache(maxsize=1)
def conductors() -> dict[str, Conductor]:
    """Materials by name."""
    return {
        r["material"]: Conductor(
            float(r["conductivity_w_mk"]),
            float(r["low"]),
            float(r["high"]),
            1e6 * float(r["capacity_mj_m3k"]),
            source_of(r),
            r["note"],
        )
        for r in rows("heat_materials.csv")
    }


@lru_cache(maxsize=1)
def wall_fires() -> dict[str, WallFire]:
    """The kind, the middle and the hard fire, in this order."""
    return {
        r["key"]: WallFire(
            r["key"],
            r["label"],
            float(r["inner_face_c"]),
            float(r["film_w_m2k"]) if r["film_w_m2k"] else None,
            float(r["air_w_m2k"]),
            source_of(r),
        )
        for r in rows("heat_fires.csv")
    }


@lru_cache(maxsize=1)
def heat_lines() -> tuple[HeatLine, ...]:
    """From the lowest up."""
    return tuple(
        HeatLine(r["key"], float(r["celsius"]), r["name"], r["about"], source_of(r))
        for r in rows("heat_limits.csv")
    )


@dataclass(frozen=True, slots=True)
class FlueFire:
    """A fire by the gas it sends up.

    Attributes
    ----------
    key, label : str
    gas : float
        [C]
    hours : float
        How long it lasts. [h]
    film : float
        Between gas and liner. [W/(m2 K)]
    source : Source
    """

    key: str
    label: str
    gas: float
    hours: float
    film: float
    source: Source


@dataclass(frozen=True, slots=True)
class Growth:
    """A number of how refractories grow and break, with what is found. [unit]"""

    value: float
    low: float
    high: float
    unit: str
    source: Source


@lru_cache(maxsize=1)
def flue_fires() -> dict[str, FlueFire]:
    """By key, the gentlest first, the soot fire last."""
    return {
        r["key"]: FlueFire(
            r["key"],
            r["label"],
            float(r["gas_c"]),
            float(r["hours"]),
            float(r["film_w_m2k"]),
            source_of(r),
        )
        for r in rows("heat_flue.csv")
    }


@lru_cache(maxsize=1)
def growths() -> dict[str, Growth]:
    """How refractories grow and break, by name."""
    return {
        r["name"]: Growth(
            float(r["value"]), float(r["low"]), float(r["high"]), r["unit"], source_of(r)
        )
        for r in rows("heat_growth.csv")
    }
