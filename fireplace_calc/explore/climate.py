"""Weather with labels: stations, or every temperature at every altitude, for designs to be swept
through.

xarray is woken only when it is asked for.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from fireplace_calc.base.inputs import Input
from fireplace_calc.base.places import Place
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.draft.physics.air import pressure_at
from fireplace_calc.editing.changes import all_inputs

if TYPE_CHECKING:
    import xarray

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
    """Weather without labels: each field a flat array. Temperatures in K, pressure in Pa, wind in
    m/s.
    """

    outdoor: np.ndarray
    pressure: np.ndarray
    wind: np.ndarray

    def cut(self, part: slice) -> Evenings:
        """Some of them."""
        return Evenings(self.outdoor[part], self.pressure[part], self.wind[part])


def station_label(place: Place) -> str:
    """The label of a place in a sweep: no two stations of the index have the same.

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
    labels = labelled("Stations", [station_label(place) for place in places])
    unknown = [label for label, place in zip(labels, places, strict=True) if place.winter is None]
    if unknown:
        raise InputError(
            f"No winter temperature is known for {_few(unknown)}; leave such places out, or give"
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
    return described(
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


def grid(outdoor, altitude=0.0) -> xarray.Dataset:
    """Every outdoor temperature at every altitude, as weather for a sweep.

    Parameters
    ----------
    outdoor : float or array
        [K]
    altitude : float or array
        Above sea level. [m]

    Returns
    -------
    xarray.Dataset
        Nothing but the two coordinates.
    """
    import xarray as xr

    return described(
        xr.Dataset(
            coords={
                "outdoor": np.atleast_1d(np.asarray(outdoor, float)),
                "altitude": np.atleast_1d(np.asarray(altitude, float)),
            }
        )
    )


def described(data: xarray.Dataset) -> xarray.Dataset:
    """The same data, with unit and name on what a sweep is made over."""
    for name, (unit, text) in UNITS.items():
        if name in data.variables:
            data[name].attrs.update(units=unit, long_name=text)
    return data


def _few(labels: Sequence) -> str:
    return ", ".join(str(label) for label in labels[:3]) + (
        f" and {len(labels) - 3} more" if len(labels) > 3 else ""
    )


def labelled(what: str, labels: list) -> list:
    """The labels, if there are any and none comes twice; ``what`` they are, for the sentence that
    says otherwise.
    """
    if not labels:
        raise InputError(
            f"{what} are an empty list, but a sweep wants at least one.",
            what,
            "one or more",
            labels,
        )
    seen = set()
    twice = [label for label in labels if label in seen or seen.add(label)]
    if twice:
        raise InputError(
            f"{what} hold {_few(twice)} more than once, but each needs a label of its own to be"
            " found by.",
            what,
            "labels that differ",
            twice[0],
        )
    return labels


def within(spec: Input, values: np.ndarray) -> np.ndarray:
    """The values, if all of them lie in the workable range of an input."""
    slack = ROUNDING * max(abs(spec.low), abs(spec.high))
    wrong = values[~((values >= spec.low - slack) & (values <= spec.high + slack))]
    if wrong.size:
        raise InputError(
            f"{spec.label} of a sweep is {wrong.flat[0]} in SI, but {spec.low:.6g} to"
            f" {spec.high:.6g} ({spec.allowed()}) is the workable range; check the unit.",
            spec.label,
            spec.allowed(),
            wrong.flat[0],
        )
    return values


def evenings(weather: xarray.Dataset) -> tuple[tuple[str, ...], tuple[int, ...], Evenings]:
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
                " wanted.",
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
    for name in weather.sizes:
        labelled(f"Labels of {name}", weather[name].values.tolist())
    asked = all_inputs()
    within(
        replace(asked["site.winter"], label="Outdoor temperature", high=asked["site.mild"].high),
        weather["outdoor"].values,
    )
    within(asked["site.altitude"], weather["altitude"].values)
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
    parts = xr.broadcast(*parts)
    return (
        parts[0].dims,
        parts[0].shape,
        Evenings(*(np.array(part.values, float).ravel() for part in parts)),
    )
