"""What goes into mortar: recipes by volume, and the quantities they come to."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tables import Source, pick, rows, source_of
from fireplace_calc.base.units import CUFT, POUND

BULLETIN = "1:1:6"
"""As the bulletin of 1941 measures it, by the thousand brick."""
SACK, LIME_BAG = 94 * POUND, 50 * POUND
"""[kg]"""
WATER = 1000.0
"""[kg/m3]"""


@dataclass(frozen=True, slots=True)
class Mix:
    """Materials for a volume of cement and lime mortar.

    Attributes
    ----------
    cement, lime : float
        Sacks of 94 lb, and bags of 50 lb. [-]
    sand : float
        [m3]
    """

    cement: float
    lime: float
    sand: float


@dataclass(frozen=True, slots=True)
class Recipe:
    """Parts by volume of ``cement``, ``lime`` and ``sand`` [-], as text too; and its source."""

    proportions: str
    cement: float
    lime: float
    sand: float
    source: Source


@lru_cache(maxsize=1)
def mortar_figures() -> dict[str, float]:
    """Published figures of mortar.

    Returns
    -------
    dict of float
        By name, each in the unit of its row in ``data/mortar_figures.csv``. [unit]
    """
    return {r["name"]: float(r["value"]) for r in rows("mortar_figures.csv")}


@lru_cache(maxsize=1)
def mortar_recipes() -> dict[str, Recipe]:
    """Proportions by the standard's types.

    Returns
    -------
    dict of str to Recipe
    """
    return {
        r["recipe"]: Recipe(
            r["proportions"],
            float(r["cement"]),
            float(r["lime"]),
            float(r["sand"]),
            source_of(r),
        )
        for r in rows("mortar_recipes.csv")
    }


def mix(volume: float, recipe: str = BULLETIN) -> Mix:
    """What goes into cement and lime mortar.

    Parameters
    ----------
    volume : float
        Of mortar. [m3]
    recipe : str
        ``1:1:6``, or a type of the standard such as ``type S``.

    Returns
    -------
    Mix

    Raises
    ------
    InputError
        When the table does not hold the recipe.

    Notes
    -----
    By the bulletin mortar fills no more than its sand did. By the types, 38 parts of cement, lime
    and sand make 27 of mortar.

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941, figures for 1000 brick; ASTM C270; NAVEDTRA 14043, chapter 8.

    Examples
    --------
    >>> made = mix(18 * CUFT)
    >>> made.cement, made.lime, round(made.sand / CUFT)
    (3.5, 2.6, 18)
    """
    f = mortar_figures()
    if recipe == BULLETIN:
        share = volume / (f["sand per 1000 brick"] * CUFT)
        return Mix(f["cement per 1000 brick"] * share, f["lime per 1000 brick"] * share, volume)
    parts = pick(mortar_recipes(), recipe, "Mortar mix")
    loose = volume * f["materials to a volume of mortar"]
    part = loose / (parts.cement + parts.lime + parts.sand)
    return Mix(
        parts.cement * part / CUFT, parts.lime * part / CUFT / f["lime bag"], parts.sand * part
    )


def mixing_water(volume: float, recipe: str = BULLETIN) -> float:
    """Water that cement and lime mortar asks for, where its sand lies damp: a figure to begin with.

    Parameters
    ----------
    volume : float
        Of mortar. [m3]
    recipe : str
        As for ``mix``.

    Returns
    -------
    float
        To be put in, what the sand brings not counted. [m3]

    Notes
    -----
    What cement, lime, grains of sand and air leave of the volume is water. Densities, air and
    damp are usual figures from memory; the hand that lays decides.

    Examples
    --------
    A sack of cement in type N:

    >>> made = 38 / 27 * 1 / 8  # of a cubic foot of mortar
    >>> round(mixing_water(CUFT / made, "type N") / (231 / 1728 * CUFT), 1)
    8.9
    """
    f, made = mortar_figures(), mix(volume, recipe)
    sand = made.sand / CUFT * f["dry sand in a damp foot"] * POUND
    heaps = (
        (made.cement * SACK, "cement"),
        (made.lime * LIME_BAG, "lime"),
        (sand, "sand"),
    )
    solid = sum(mass / (f[f"{name} against water"] * WATER) for mass, name in heaps)
    return volume * (1 - f["air in mortar"]) - solid - sand * f["water in damp sand"] / WATER
