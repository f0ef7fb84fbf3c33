"""A catalogue of designs through a country's weather: labelled arrays, on one core or on as many
machines as there are.

xarray is woken by the first sweep, Dask never: whoever has a cluster brings its client along.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any, Protocol, TypeAlias

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray
from fireplace_calc.design.records import Design
from fireplace_calc.draft import (
    MODES,
    BurningFire,
    FlowPath,
    Surroundings,
    face_velocity,
    fire,
    settle,
    surroundings,
    trace_flow_path,
)
from fireplace_calc.draft.physics.weather import roof_wind, wind_pressure, wind_range
from fireplace_calc.draft.spillage import reserve
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore.climate import UNITS, Evenings, flatten, with_units
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.explore.sweep_checks import require_labels, require_range

if TYPE_CHECKING:
    import xarray
    from numpy.typing import ArrayLike

Results: TypeAlias = "dict[str, Array | BoolArray]"
"""By the names of ``OPERATING``, each of shape (designs, evenings, rates), or (evenings, rates)."""


class Future(Protocol):
    """What a cluster hands back."""

    def result(self) -> tuple[Array, Results]:
        """The parcel, once it is done: sizing velocities [m/s], and results in the units of
        ``OPERATING``.
        """


class Client(Protocol):
    """What is asked of a ``distributed.Client``."""

    def scatter(self, data: list[Evenings], hash: bool) -> list[Any]:
        """Send data to the workers."""

    def map(self, func: Callable[..., Any], *iterables: list[Any], pure: bool) -> list[Any]:
        """Work many parcels."""


BLOCK, TASK = 4096, 32_768
"""Fires that are settled together, so few that they stay in the processor's cache; and fires that
go to a worker in one parcel.
"""
OPERATING = {
    "flow": ("kg/s", "gas up the flue"),
    "air": ("m3/s", "room air through the opening"),
    "face_velocity": ("m/s", "speed of the room air through the opening"),
    "flue_velocity": ("m/s", "speed of the gas in the flue"),
    "throat_temperature": ("K", "gas over the throat, at the foot of the flue"),
    "top_temperature": ("K", "gas at the top of the flue"),
    "draft": ("Pa", "theoretical draft, before any loss"),
    "pull": ("Pa", "how far the room is pulled below outdoors"),
    "margin": ("Pa", "further pull on the room that is borne before smoke comes out"),
    "margin_percent": ("%", "the same margin, of draft and wind at that flow"),
    "stalled": ("1", "no steady flow carries the fire away"),
    "smokes": ("1", "stalled, or less air than carries the smoke off"),
}
"""What a sweep reports of every fire, operating mode: unit and name."""
FLAGS = ("stalled", "smokes")
NOTE = (
    "Where stalled, flow, air and velocities are zero; temperatures, draft and pull are those of"
    " the least flow that the fire can burn with. There are no missing values."
)
SIZING = {
    "units": "m/s",
    "long_name": "speed of the room air through the opening, gas temperature imposed",
    "mode": "sizing",
}


def sweep(
    designs: Mapping[str, Design] | Sequence[tuple[str, Design]],
    weather: xarray.Dataset,
    burn_rate: ArrayLike | None = None,
    client: Client | None = None,
) -> xarray.Dataset:
    """Settle every design in all weather, operating mode, and give the face velocity of sizing mode
    beside it.

    Parameters
    ----------
    designs : mapping or sequence of pairs
        Design by name.
    weather : xarray.Dataset
        ``outdoor`` [K] and ``altitude`` [m], and ``wind`` at the roof where there is any [m/s],
        over any dimensions; from ``stations`` or ``grid``, for instance. Wind is figured at the
        worst it does to a design's top and house.
    burn_rate : float or array, optional
        Rates to burn every design at; each design's own when left out. [kg/s]
    client : distributed.Client, optional
        Where the work is to be done; in this process when left out. The numbers are the same to the
        last bit.

    Returns
    -------
    xarray.Dataset
        Over ``design``, the dimensions of the weather, and ``burn_rate`` where rates are given;
        each variable with its unit, what it is, and its mode. Outdoor temperature and altitude
        stand in for the design's own; all else is the design's.

    Raises
    ------
    InputError
        When something is empty, comes twice, or lies outside its workable range.

    Notes
    -----
    The result is held in memory, 82 bytes a fire; what is needed on the way does not grow with it.

    Examples
    --------
    >>> from fireplace_calc.explore.climate import grid
    >>> found = sweep({"plain": Design()}, grid([263.15, 281.15]))
    >>> dict(found.sizes)
    {'design': 1, 'outdoor': 2, 'altitude': 1}
    >>> bool(found.face_velocity.sel(design="plain", outdoor=263.15, altitude=0) > 0.2)
    True
    """
    import xarray as xr

    named = list(designs.items() if isinstance(designs, Mapping) else designs)
    names = require_labels("Designs", [name for name, _ in named])
    catalogue, rates = [design for _, design in named], _rates(burn_rate)
    dims, lengths, weathers = flatten(weather)
    shape = (len(catalogue), weathers.outdoor.size, 1 if rates is None else rates.size)
    found = {name: np.empty(shape, bool if name in FLAGS else float) for name in OPERATING}
    sized = np.empty(len(catalogue))
    for these, those, velocities, block in _parcels(catalogue, weathers, rates, client):
        sized[these] = velocities
        for name, values in block.items():
            found[name][these, those] = values
    extra, last = ((), ()) if rates is None else (("burn_rate",), (rates.size,))
    variables = {
        name: (
            ("design", *dims, *extra),
            found[name].reshape(len(catalogue), *lengths, *last),
            {"units": unit, "long_name": text, "mode": "operating"},
        )
        for name, (unit, text) in OPERATING.items()
    }
    over = {
        name: weather[name].variable
        for name in weather.variables
        if name in weather.coords or name in UNITS
    }
    own = ("design", [design.fire.burn_rate for design in catalogue]) if rates is None else rates
    return with_units(
        xr.Dataset(
            variables | {"sizing_face_velocity": ("design", sized, SIZING)},
            over | {"design": names, "burn_rate": own},
            {**MODES, "note": NOTE},
        )
    )


def _rates(burn_rate: ArrayLike | None) -> Array | None:
    """Burn rates, if they are workable and none comes twice."""
    if burn_rate is None:
        return None
    rates = np.atleast_1d(np.asarray(burn_rate, float))
    require_labels("Burn rates", rates.tolist())
    return require_range(all_inputs()["fire.burn_rate"], rates)


def _parcels(
    catalogue: list[Design], weathers: Evenings, rates: Array | None, client: Client | None
) -> Iterator[tuple[slice, slice, Array, Results]]:
    """Where the results belong, sizing velocities and results, parcel by parcel; always the same
    parcels in the same order.
    """
    width = max(1, TASK // (1 if rates is None else rates.size))
    parts = [slice(k, k + width) for k in range(0, weathers.outdoor.size, width)]
    many = max(
        1, TASK // (min(width, weathers.outdoor.size) * (1 if rates is None else rates.size)) // 4
    )
    groups = [slice(k, k + many) for k in range(0, len(catalogue), many)]
    places = [(these, k) for these in groups for k in range(len(parts))]
    shares = [weathers.part(part) for part in parts]
    work = partial(_work, rates=rates)
    done: Iterator[tuple[Array, Results]]
    if client is None:
        done = (work(catalogue[these], shares[k]) for these, k in places)
    else:
        sent = client.scatter(shares, hash=False)
        waiting = client.map(
            work,
            [catalogue[these] for these, _ in places],
            [sent[k] for _, k in places],
            pure=False,
        )
        done = _collected(waiting)
    for (these, k), (velocities, block) in zip(places, done, strict=True):
        yield these, parts[k], velocities, block


def _collected(waiting: list[Future]) -> Iterator[tuple[Array, Results]]:
    """Results in their order, each let go of by the cluster as soon as it is here."""
    waiting.reverse()
    while waiting:
        yield waiting.pop().result()


def _work(
    catalogue: list[Design], weathers: Evenings, rates: Array | None
) -> tuple[Array, Results]:
    """One parcel: sizing velocities by design, and every result by design, evening and rate."""
    size, count = weathers.outdoor.size, 1 if rates is None else rates.size
    found = {
        name: np.empty((len(catalogue), size, count), bool if name in FLAGS else float)
        for name in OPERATING
    }
    sized, step = np.empty(len(catalogue)), max(1, BLOCK // count)
    for n, design in enumerate(catalogue):
        drawn = sketch(design)
        path, calm = trace_flow_path(drawn), surroundings(design)
        worst, _ = wind_range(roof_wind(drawn))
        sized[n] = face_velocity(
            path.opening_area,
            path.flue_area,
            path.diameter,
            path.height,
            path.length,
            path.inlet,
            path.other,
        )
        burning = fire(design, rates)
        for part in (slice(k, k + step) for k in range(0, size, step)):
            here = weathers.part(part)
            outdoor, pressure, speed = (
                v[:, None] for v in (here.outdoor, here.pressure, here.wind)
            )
            weather = replace(
                calm,
                outdoor=outdoor,
                pressure=pressure,
                wind=wind_pressure(worst, speed, outdoor, pressure),
            )
            for name, values in _settled(path, burning, weather).items():
                found[name][n, part] = values
    return sized, found


def _settled(path: FlowPath, burning: BurningFire, weather: Surroundings) -> Results:
    """Everything that is reported of some fires."""
    flow, spare = settle(path, burning, weather), reserve(path, burning, weather)
    return {
        "flow": flow.mass,
        "air": flow.air,
        "face_velocity": flow.face,
        "flue_velocity": flow.speed,
        "throat_temperature": flow.foot,
        "top_temperature": flow.top,
        "draft": flow.draft,
        "pull": flow.pull,
        "margin": np.asarray(spare.margin),
        "margin_percent": np.asarray(100.0 * spare.share),
        "stalled": flow.stalled,
        "smokes": flow.stalled | (flow.air < spare.air),
    }
