"""Weather with labels, for a sweep: stations, or every temperature at every altitude.

xarray is woken only when it is asked for.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.places import Place
from fireplace_calc.base.units import InputError
from fireplace_calc.draft.physics.air import pressure_at
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.sweep_checks import few, require_labels, require_range

if TYPE_CHECKING:
    import xarray
    from numpy.typing import ArrayLike

UNITS = {
    "outdoor": ("K", "outdoor temperature"),
    "altitude": ("m", "altitude above sea level"),
    "wind": ("m/s", "wind at the roof"),
    "burn_rate": ("kg/s", "wood as burned"),
    "latitude": ("degrees_north", "latitude"),
    "longitude": ("degrees_east", "longitude"),
}
"""Unit and name of what a sweep is made over."""


@dataclass(frozen=True, slots=True)
class Evenings:
    """Weather without labels.

    Attributes
    ----------
    outdoor : array, shape (n,)
        Air temperature. [K]
    pressure : array, shape (n,)
        Barometric. [Pa]
    wind : array, shape (n,)
        At the roof. [m/s]
    """

    outdoor: Array
    pressure: Array
    wind: Array

    def part(self, part: slice) -> Evenings:
        """Some of them."""
        return Evenings(self.outdoor[part], self.pressure[part], self.wind[part])


def station_label(place: Place) -> str:
    """The label of a place in a sweep: no two stations of the index have the same.

    Parameters
    ----------
    place : Place

    Returns
    -------
    str

    Examples
    --------
    >>> station_label(Place("Upper Lake", "XXX", "ON", "000001", 45.0, -75.0, 230.0, 255.15))
    'Upper Lake, ON, XXX 000001'
    """
    return " ".join(
        filter(None, (", ".join(filter(None, (place.name, place.state, place.country))), place.wmo))
    )


def stations(places: Iterable[Place], mild: float | None = None) -> xarray.Dataset:
    """Places as weather for a sweep.

    Parameters
    ----------
    places : iterable of Place
    mild : float, optional
        Mild evening for all of them; when given, a dimension ``evening`` with ``winter`` and
        ``mild`` is added. [K]

    Returns
    -------
    xarray.Dataset
        ``outdoor`` [K] and ``altitude`` [m] by ``station``, with position and names beside them.

    Raises
    ------
    InputError
        When there is no place, one comes twice, or the winter of one is unknown.
    """
    import xarray as xr

    places = tuple(places)
    labels = require_labels("Stations", [station_label(place) for place in places])
    unknown = [label for label, place in zip(labels, places, strict=True) if place.winter is None]
    if unknown:
        raise InputError(
            f"No winter temperature is known for {few(unknown)}; leave such places out, or give"
            " them one.",
            "Stations",
            "places with a winter temperature",
            unknown[0],
        )
    winter = np.array([place.winter for place in places])
    outdoor = (
        ("station", winter)
        if mild is None
        else (("station", "evening"), np.stack([winter, np.full(winter.shape, mild)], axis=1))
    )
    beside = {
        name: ("station", [getattr(place, name) for place in places])
        for name in ("latitude", "longitude", "name", "state", "country", "wmo")
    }
    return with_units(
        xr.Dataset(
            {
                "outdoor": outdoor,
                "altitude": ("station", [float(place.altitude) for place in places]),
            },
            {"station": labels}
            | ({} if mild is None else {"evening": ["winter", "mild"]})
            | beside,
        )
    )


def grid(outdoor: ArrayLike, altitude: ArrayLike = 0.0) -> xarray.Dataset:
    """Every outdoor temperature at every altitude, as weather for a sweep.

    Parameters
    ----------
    outdoor : float or array
        Air temperatures. [K]
    altitude : float or array
        Above sea level. [m]

    Returns
    -------
    xarray.Dataset
        Nothing but the two coordinates.
    """
    import xarray as xr

    return with_units(
        xr.Dataset(
            coords={
                "outdoor": np.atleast_1d(np.asarray(outdoor, float)),
                "altitude": np.atleast_1d(np.asarray(altitude, float)),
            }
        )
    )


def with_units(data: xarray.Dataset) -> xarray.Dataset:
    """The same data, with unit and name on what a sweep is made over.

    Parameters
    ----------
    data : xarray.Dataset
        Is changed in place.

    Returns
    -------
    xarray.Dataset
    """
    for name, (unit, text) in UNITS.items():
        if name in data.variables:
            data[name].attrs.update(units=unit, long_name=text)
    return data


def flatten(
    weather: xarray.Dataset,
) -> tuple[tuple[Hashable, ...], tuple[int, ...], Evenings]:
    """Dimensions, their lengths, and all of the weather flat.

    Parameters
    ----------
    weather : xarray.Dataset
        As for ``sweep``.

    Returns
    -------
    tuple
        Names, lengths [-], and the evenings.

    Raises
    ------
    InputError
        When a part of the weather is missing, a label comes twice, or something lies outside its
        workable range.
    """
    import xarray as xr

    for name in ("outdoor", "altitude"):
        if name not in weather.variables:
            raise InputError(
                f"The weather of a sweep has no {name}, but outdoor in K and altitude in m are"
                " needed.",
                name,
                "outdoor, altitude",
                ", ".join(map(str, weather.variables)),
            )
    for name in ("design", "burn_rate"):
        if name in weather.variables or name in weather.sizes:
            raise InputError(
                f"The weather of a sweep has a {name}, but that name is the sweep's own; call it"
                " something else.",
                name,
                "any other name",
                name,
            )
    for dimension in weather.sizes:
        require_labels(f"Labels of {dimension}", weather[dimension].values.tolist())
    inputs = all_inputs()
    require_range(
        replace(inputs["site.winter"], label="Outdoor temperature", high=inputs["site.mild"].high),
        weather["outdoor"].values,
    )
    require_range(inputs["site.altitude"], weather["altitude"].values)
    pressure = np.array([float(pressure_at(float(z))) for z in weather["altitude"].values.ravel()])
    wind = weather["wind"].variable if "wind" in weather.variables else xr.Variable((), 0.0)
    parts = [
        xr.DataArray(values, dims=dims)
        for dims, values in (
            (weather["outdoor"].dims, weather["outdoor"].values),
            (weather["altitude"].dims, pressure.reshape(weather["altitude"].shape)),
            (wind.dims, wind.values),
        )
    ]
    outdoor, barometric, breeze = xr.broadcast(*parts)
    return (
        outdoor.dims,
        outdoor.shape,
        Evenings(*(np.array(v.values, float).ravel() for v in (outdoor, barometric, breeze))),
    )
