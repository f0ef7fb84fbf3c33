"""From a place to its altitude and its winter design temperature, offline, by weather station.

The index comes with the library idfkit (MIT licence): name, position, height and 99 % heating
temperature of some 17,000 stations, each worked out from the typical years of
climate.onebuilding.org. Only these figures are read, and only when a place is asked for: loading
takes a second or two.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

SOURCE = "idfkit 1.1.1 station index (climate.onebuilding.org typical years)"
LIKELY = 0.3
"""Likeness of a name from which it counts as found; nonsense comes to less than 0.2. [-]"""
WINTER = frozenset((12, 1, 2))
"""Months of the winter that means are taken over."""


@dataclass(frozen=True, slots=True)
class Place:
    """A weather station.

    Attributes
    ----------
    name, country, state, wmo : str
        Country by the three letters of ISO 3166; ``wmo`` is the station's number.
    latitude, longitude : float
        North and east positive. [deg]
    altitude : float
        Above sea level. [m]
    winter : float or None
        The 99 % heating temperature, where it is known. [K]
    source, confidence : str
    """

    name: str
    country: str
    state: str
    wmo: str
    latitude: float
    longitude: float
    altitude: float
    winter: float | None
    source: str = SOURCE
    confidence: str = "read"


@lru_cache(maxsize=1)
def _index() -> Any:
    from idfkit.weather import StationIndex

    return StationIndex.load()


def _one_per_station(stations: Iterable[Any]) -> tuple[Place, ...]:
    """One place a station: of its records by range of years the full one, or else the first."""
    best: dict[tuple[str, str, str], Any] = {}
    for s in stations:
        key = (s.country, s.wmo, s.city)
        if key not in best or s.url.endswith("_TMYx.zip"):
            best[key] = s
    return tuple(
        Place(
            s.city.replace(".", " "),
            s.country,
            s.state or "",
            s.wmo,
            s.latitude,
            s.longitude,
            s.elevation,
            None if s.heating_design_db_c is None else s.heating_design_db_c + 273.15,
        )
        for s in best.values()
    )


@lru_cache(maxsize=64)
def find(text: str, limit: int = 10) -> tuple[Place, ...]:
    """Places by name, best first.

    Parameters
    ----------
    text : str
        Name of a town or station, however written; more words, such as a state, narrow it.
    limit : int
        How many at most. [-]

    Returns
    -------
    tuple of Place
        Empty when nothing fits.
    """
    text = " ".join(text.replace("-", " ").replace(".", " ").split())
    if not text:
        return ()
    return _one_per_station(
        hit.station for hit in _index().search(text, limit=6 * limit) if hit.score >= LIKELY
    )[:limit]


def nearest(latitude: float, longitude: float, limit: int = 5) -> tuple[Place, ...]:
    """Places round a position, nearest first.

    Parameters
    ----------
    latitude, longitude : float
        In degrees, north and east positive. [deg]
    limit : int
        How many at most. [-]

    Returns
    -------
    tuple of Place
    """
    return _one_per_station(
        hit.station for hit in _index().nearest(latitude, longitude, limit=6 * limit)
    )[:limit]


def inside(country: str, state: str | None = None) -> tuple[Place, ...]:
    """All places of a country, in the order of the index.

    Parameters
    ----------
    country : str
        Three letters of ISO 3166, such as ``CAN``.
    state : str, optional
        Letters of a state or province, as the index has them.

    Returns
    -------
    tuple of Place
        Empty when there is none.
    """
    return _one_per_station(
        _index().filter(country=country.upper(), state=None if state is None else state.upper())
    )


def site(place: Place) -> dict[str, str]:
    """What to change in a design so that it stands there.

    Parameters
    ----------
    place : Place

    Returns
    -------
    dict
        For ``change``. The frost depth is not in it: it comes from the building department, not
        from a weather station.

    Examples
    --------
    >>> site(Place("Upper Lake", "XXX", "", "1", 45.0, -75.0, 230.0, 255.15))
    {'site.place': 'Upper Lake', 'site.latitude': '45.00 deg', 'site.altitude': '230.0 m', \
'site.winter': '-18.00 degC'}
    """
    found = {
        "site.place": ", ".join(part for part in (place.name, place.state) if part),
        "site.latitude": f"{place.latitude:.2f} deg",
        "site.altitude": f"{place.altitude:.1f} m",
    }
    return (
        found
        if place.winter is None
        else found | {"site.winter": f"{place.winter - 273.15:.2f} degC"}
    )


def winter_means(hours: Iterable[tuple[int, float, float]]) -> tuple[float, float] | None:
    """Mean of a winter, from hourly records somebody has: what an ordinary winter day is like,
    where the index tells the coldest.

    Parameters
    ----------
    hours : iterable of tuple
        Month [-], air temperature [K] and wind [m/s] of each hour; hours of other months are left
        out.

    Returns
    -------
    tuple of float or None
        Air temperature [K] and wind [m/s], December to February; none where no hour is of the
        winter.

    Examples
    --------
    >>> winter_means([(1, 270.0, 2.0), (2, 274.0, 4.0), (7, 300.0, 9.0)])
    (272.0, 3.0)
    """
    found = [(air, wind) for month, air, wind in hours if month in WINTER]
    return (
        (sum(air for air, _ in found) / len(found), sum(wind for _, wind in found) / len(found))
        if found
        else None
    )
