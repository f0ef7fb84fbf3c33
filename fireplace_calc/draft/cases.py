"""What the physics reads of one design: its fire and its surroundings, evening by evening."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace
from typing import TYPE_CHECKING, NamedTuple, TypeVar

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.draft import RoofWind, coefficient, wood_analysis
from fireplace_calc.design.records import Design
from fireplace_calc.draft.conditions import BurningFire, Surroundings
from fireplace_calc.draft.flow_path import DATUMS, FlowPath, trace_flow_path
from fireplace_calc.draft.physics.air import pressure_at
from fireplace_calc.draft.physics.house_leaks import leakage
from fireplace_calc.draft.physics.weather import BREEZE, roof_wind, wind_pressure, wind_range
from fireplace_calc.draft.physics.wood import lower_heating_value, stoichiometric_air
from fireplace_calc.geometry.frame import Framed

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

CASES = ("winter", "mild", "dying down, mild", "windy, mild")
"""Evenings that every design is worked through, in this order; the windy one with the worst that
wind does to such a top and house.
"""
EMBERS = 0.65 / 3600
"""Burn rate of a fire that dies down, the middle of 0.3 to 1 kg/h: engineering judgement. [kg/s]"""


def fire(design: Design, burn_rate: Array | None = None) -> BurningFire:
    """The fire a design is meant for, or the same wood at other rates.

    Parameters
    ----------
    design : Design
    burn_rate : array, optional
        Instead of the design's. [kg/s]

    Returns
    -------
    BurningFire
        Of floats, or of arrays where rates were given.
    """
    wood, given = wood_analysis(design.fire.wood), design.fire
    burned = given.burn_rate if burn_rate is None else burn_rate
    power = burned * lower_heating_value(wood, given.moisture)
    kept = coefficient("combustion efficiency") * (1 - coefficient("share kept by the room"))
    return BurningFire(burned, 1 - given.moisture, power, power * kept, stoichiometric_air(wood))


def surroundings(design: Design) -> Surroundings:
    """Air and house around the fire on a winter evening without wind.

    Parameters
    ----------
    design : Design

    Returns
    -------
    Surroundings
        Of floats.
    """
    house, exponent = design.house, coefficient("house exponent")
    changes = coefficient("air changes at 50 Pa") if house.leakage is None else house.leakage
    return Surroundings(
        outdoor=design.site.winter,
        room=house.indoor,
        leak=leakage(changes, house.volume, exponent),
        exponent=exponent,
        inlet=house.air_inlet,
        fans=house.exhaust,
        pressure=float(pressure_at(design.site.altitude)),
    )


class CaseInputs(NamedTuple):
    """What the physics reads of one design.

    Attributes
    ----------
    path : FlowPath
        Of floats.
    calm : Surroundings
        Winter evening without wind, of floats.
    fires : BurningFire
        One entry a case of ``CASES``.
    cases : Surroundings
        One entry a case of ``CASES``.
    wind : RoofWind
        Which range of wind goes for the top.
    opened : FlowPath or None
        The same path with glass doors open; none where there are none.
    """

    path: FlowPath
    calm: Surroundings
    fires: BurningFire
    cases: Surroundings
    wind: RoofWind
    opened: FlowPath | None = None


def case_inputs(geometry: Framed, datum: str = DATUMS[0]) -> CaseInputs:
    """Path, the calm winter evening, and fire and surroundings of every case as arrays in their
    order.

    Parameters
    ----------
    geometry : Framed
    datum : str
        Where the height of the draft counts from, one of ``DATUMS``.

    Returns
    -------
    CaseInputs
    """
    design, wind = geometry.design, roof_wind(geometry)
    steady, calm = fire(design), surroundings(design)
    rate = np.array([1.0, 1.0, min(EMBERS / design.fire.burn_rate, 1.0), 1.0])
    winter, mild = design.site.winter, design.site.mild
    gust, _ = wind_range(wind)
    return CaseInputs(
        trace_flow_path(geometry, datum),
        calm,
        replace(
            steady, burn=steady.burn * rate, power=steady.power * rate, to_gas=steady.to_gas * rate
        ),
        replace(
            calm,
            outdoor=np.array([winter, mild, mild, mild]),
            wind=np.array([0.0, 0.0, 0.0, wind_pressure(gust, BREEZE, mild, calm.pressure)]),
        ),
        wind,
        None if design.fire.doors_inlet is None else trace_flow_path(geometry, datum, True),
    )


Record = TypeVar("Record", bound="DataclassInstance")


def stacked(records: Sequence[Record]) -> Record:
    """Many records of numbers as one.

    Parameters
    ----------
    records : sequence of dataclass
        Of one kind; each field a number, or an array of the same length in all of them.

    Returns
    -------
    dataclass
        Each field an array of shape (number of records, length).
    """
    columns = {
        f.name: np.array([getattr(r, f.name) for r in records], float).reshape(len(records), -1)
        for f in fields(records[0])
    }
    return replace(records[0], **columns)


def row_of(record: Record, k: int) -> Record:
    """One design's row of a record of arrays, or of dicts of arrays.

    Parameters
    ----------
    record : dataclass
    k : int
        Which row, from 0. [-]

    Returns
    -------
    dataclass
        Each field an array with the first axis gone.
    """

    def row(value: Array | dict[str, Array]) -> Array | dict[str, Array]:
        return {n: v[k] for n, v in value.items()} if isinstance(value, dict) else value[k]

    return replace(record, **{f.name: row(getattr(record, f.name)) for f in fields(record)})
