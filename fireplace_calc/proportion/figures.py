"""Rectangles that have a name, openings that were published, and single figures, each with its
source.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import log

from fireplace_calc.base.tables import Source, rows, source_of
from fireplace_calc.base.units import INCH


@lru_cache(maxsize=1)
def proportion_figures() -> dict[str, tuple[float, Source]]:
    """Single figures of proportion.

    Returns
    -------
    dict of tuple
        Length [m] or ratio [-], and its source, by name.
    """
    return {
        r["name"]: (float(r["value"]) * (INCH if r["unit"] == "in" else 1.0), source_of(r))
        for r in rows("proportions.csv")
    }


@lru_cache(maxsize=1)
def shapes() -> dict[str, float]:
    """Rectangles that have a name.

    Returns
    -------
    dict of float
        Long side over short side, by name. [-]
    """
    return {r["name"]: float(r["value"]) for r in rows("proportions.csv") if r["group"] == "shape"}


def nearest_shape(ratio: float) -> tuple[str, float]:
    """The named rectangle nearest to one, compared by ratio, so that standing and lying ones are
    treated alike.

    Parameters
    ----------
    ratio : float
        Width over height. [-]

    Returns
    -------
    tuple of str and float
        Its name, with ``upright`` when it stands, and its width over height. [-]

    Examples
    --------
    >>> nearest_shape(36 / 24), nearest_shape(30 / 48)
    (('square and a half', 1.5), ('golden section upright', 0.6180339887498948))
    """
    name, ideal = min(shapes().items(), key=lambda item: abs(log(item[1]) - abs(log(ratio))))
    return (name, ideal) if ratio >= 1 or ideal == 1 else (f"{name} upright", 1 / ideal)


@dataclass(frozen=True, slots=True)
class PublishedOpening:
    """One opening of the old table.

    Attributes
    ----------
    row : int
        Of the table. [-]
    width, height : float
        [m]
    depth_low, depth_high : float
        Of the firebox. [m]
    source : Source
    """

    row: int
    width: float
    height: float
    depth_low: float
    depth_high: float
    source: Source


@lru_cache(maxsize=1)
def published_openings() -> tuple[PublishedOpening, ...]:
    """All openings of the table.

    Returns
    -------
    tuple of PublishedOpening
        Row by row.

    References
    ----------
    USDA Farmers' Bulletin 1889, 1941, table 3.
    """
    return tuple(
        PublishedOpening(
            int(r["row"]),
            float(r["opening_width_w_in"]) * INCH,
            float(r["opening_height_h_in"]) * INCH,
            float(r["depth_d_min_in"]) * INCH,
            float(r["depth_d_max_in"]) * INCH,
            source_of(r),
        )
        for r in rows("fb1889_table3.csv")
    )


def nearest_published(width: float, height: float) -> PublishedOpening:
    """The published opening nearest in width and height, both compared by ratio.

    Parameters
    ----------
    width, height : float
        Of the opening. [m]

    Returns
    -------
    PublishedOpening
        One row of the table.
    """
    return min(
        published_openings(), key=lambda p: log(p.width / width) ** 2 + log(p.height / height) ** 2
    )
