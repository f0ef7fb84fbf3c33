"""One design through the weather: sizing, a winter evening, a mild one, dying down, a windy one,
and lighting it cold.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np

from fireplace_calc.base.tables import coefficient, wood_analysis
from fireplace_calc.design.records import Design
from fireplace_calc.draft.flow_path import FlowPath, trace_flow_path
from fireplace_calc.draft.operating import BurningFire, Flow, Surroundings, settle
from fireplace_calc.draft.physics.air import air_density, pressure_at
from fireplace_calc.draft.physics.house import house_pull, leakage
from fireplace_calc.draft.physics.weather import (
    BREEZE,
    flue_at_rest,
    house_stack,
    roof_wind,
    wind_pressure,
)
from fireplace_calc.draft.physics.wood import (
    lower_heating_value,
    smoke,
    smoke_dew_point,
    stoichiometric_air,
)
from fireplace_calc.draft.sizing import face_velocity, theoretical_draft
from fireplace_calc.draft.spillage import Spill, spill
from fireplace_calc.geometry.parts import Geometry

MODES = {
    "sizing": (
        "sizing mode: gas 222 K over outdoors, imposed as a handbook sizes; 21 C indoors and out"
    ),
    "operating": "operating mode: flow and temperature that settle at the burn rate",
}
"""What stands beside every number of a mode."""
CASES = ("winter", "mild", "dying down, mild", "windy, mild")
"""Evenings that every design is worked through, in this order."""
EMBERS = 0.75 / 3600
"""Burn rate of a fire that dies down, engineering judgement, about the middle of 0.3 to 1 kg/h. [kg/s]"""
INDOOR_HUMIDITY = 0.006
"""Water in the room air, an ordinary heated room. [-]"""


@dataclass(frozen=True, slots=True)
class Lighting:
    """A flue nobody has lit yet; each field an array, winter first and mild after it.

    ``draft`` of the air at rest in the flue, ``stack`` and ``fans``: what house and fans pull at
    the hearth; ``excess`` the draft less both. [Pa]
    """

    draft: object
    stack: object
    fans: object
    excess: object


@dataclass(frozen=True, slots=True)
class DraftResult:
    """What the air will do in one design.

    ``sizing_velocity`` through the face in sizing mode [m/s]; ``flows`` and ``spills`` have one
    entry a case of ``CASES``, operating mode; ``top`` is the wind figure used; ``dew_points`` [K]
    of the smoke, case by case; ``tested``, whether the leakage of the house is known.
    """

    path: FlowPath
    fire: BurningFire
    surroundings: Surroundings
    sizing_velocity: float
    flows: Flow
    spills: Spill
    lighting: Lighting
    wind_case: str
    dew_points: object
    tested: bool = True

    def face(self, case: str) -> float:
        """Face velocity of a case, operating mode. [m/s]"""
        return float(self.flows.face[CASES.index(case)])


def fire(design: Design) -> BurningFire:
    """The fire a design is meant for. Heat in W, mass in kg/s."""
    wood, told = wood_analysis(design.fire.wood), design.fire
    power = told.burn_rate * lower_heating_value(wood, told.moisture)
    kept = coefficient("combustion efficiency") * (1 - coefficient("share kept by the room"))
    return BurningFire(
        told.burn_rate, 1 - told.moisture, power, power * kept, stoichiometric_air(wood)
    )


def surroundings(design: Design) -> Surroundings:
    """What the fire stands in on a winter evening without wind."""
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


def _cases(
    design: Design, path: FlowPath, one: BurningFire, still: Surroundings, wind_figure: float
) -> tuple[BurningFire, Surroundings]:
    """Fire and surroundings of every case, as arrays in their order."""
    low = EMBERS / one.burn
    slow = np.array([1.0, 1.0, min(low, 1.0), 1.0])
    outdoor = np.array([design.site.winter, design.site.mild, design.site.mild, design.site.mild])
    gust = -wind_pressure(wind_figure, BREEZE, design.site.mild, still.pressure)
    burns = BurningFire(
        one.burn * slow, one.dry_share, one.power * slow, one.to_gas * slow, one.air_needed
    )
    return burns, Surroundings(
        outdoor,
        still.room,
        still.leak,
        still.exponent,
        still.inlet,
        still.fans,
        np.array([0.0, 0.0, 0.0, gust]),
        still.pressure,
    )


def _lighting(path: FlowPath, still: Surroundings, outdoor, over) -> Lighting:
    """A flue nobody has lit, ``over`` the level of the house's middle over the hearth; one design,
    or a row a design.
    """
    rest = flue_at_rest(outdoor, still.room, path.indoors)
    draft = theoretical_draft(path.height, rest, outdoor, still.pressure)
    stack = np.maximum(house_stack(over, outdoor, still.room, still.pressure), 0.0)
    fans = house_pull(
        still.fans, still.leak, still.exponent, still.inlet, air_density(outdoor, still.pressure)
    )
    return Lighting(draft, stack, fans, draft - stack - fans)


def _evenings(geometry: Geometry):
    """Outdoors when it is lit, winter and mild. [K]"""
    return np.array([geometry.design.site.winter, geometry.design.site.mild])


def _over(geometry: Geometry) -> float:
    """The middle of the house over the hearth. [m]"""
    return (
        max(geometry.design.roof.eaves_level, geometry.design.house.ceiling) / 2
        - geometry.frame.hearth
    )


def draft_result(geometry: Geometry, datum: str = "opening top") -> DraftResult:
    """Work one design through every case.

    Parameters
    ----------
    geometry : Geometry
    datum : str
        Where the height of the draft counts from.

    Returns
    -------
    Outlook
    """
    design, path = geometry.design, trace_flow_path(geometry, datum)
    one, still, wind = fire(design), surroundings(design), roof_wind(geometry)
    burns, weathers = _cases(design, path, one, still, wind.coefficient)
    flows = settle(path, burns, weathers)
    sized = face_velocity(
        path.opening_area,
        path.flue_area,
        path.diameter,
        path.height,
        path.length,
        path.inlet,
        path.other,
    )
    gas = smoke(
        wood_analysis(design.fire.wood),
        design.fire.moisture,
        np.maximum(flows.air_ratio, 1.0),
        INDOOR_HUMIDITY,
    )
    return DraftResult(
        path=path,
        fire=burns,
        surroundings=weathers,
        sizing_velocity=float(sized),
        flows=flows,
        spills=spill(flows, path, burns, weathers),
        lighting=_lighting(path, still, _evenings(geometry), _over(geometry)),
        wind_case=wind.case,
        dew_points=smoke_dew_point(gas, still.pressure),
        tested=design.house.leakage is not None,
    )


def outlooks(made: Sequence[Geometry]) -> tuple[DraftResult, ...]:
    """Work many designs through every case: the same answers as one by one, in one search for all
    of them.

    Parameters
    ----------
    made : sequence of Geometry

    Returns
    -------
    tuple of DraftResult
        In the order of the designs.
    """
    if not made:
        return ()
    ways, winds = [trace_flow_path(one) for one in made], [roof_wind(one) for one in made]
    alone = [(fire(one.design), surroundings(one.design)) for one in made]
    cases = [
        _cases(one.design, path, *pair, wind.coefficient)
        for one, path, pair, wind in zip(made, ways, alone, winds, strict=True)
    ]
    burns, weathers = zip(*cases, strict=True)
    smoke_way, burning, outside = _stacked(ways), _stacked(burns), _stacked(weathers)
    flows = settle(smoke_way, burning, outside)
    spills = spill(flows, smoke_way, burning, outside)
    sized = face_velocity(
        smoke_way.opening_area,
        smoke_way.flue_area,
        smoke_way.diameter,
        smoke_way.height,
        smoke_way.length,
        smoke_way.inlet,
        smoke_way.other,
    )
    lit = _lighting(
        smoke_way,
        _stacked([still for _, still in alone]),
        np.array([_evenings(one) for one in made]),
        np.array([[_over(one)] for one in made]),
    )
    found = []
    for k, (one, path, (_, still), wind) in enumerate(zip(made, ways, alone, winds, strict=True)):
        flow, told = _row(flows, k), one.design.fire
        gas = smoke(
            wood_analysis(told.wood),
            told.moisture,
            np.maximum(flow.air_ratio, 1.0),
            INDOOR_HUMIDITY,
        )
        found.append(
            DraftResult(
                path,
                burns[k],
                weathers[k],
                float(sized[k, 0]),
                flow,
                _row(spills, k),
                _row(lit, k),
                wind.case,
                smoke_dew_point(gas, still.pressure),
                one.design.house.leakage is not None,
            )
        )
    return tuple(found)


def _stacked(records: Sequence):
    """Many records as one, each field an array with a row a record."""
    return type(records[0])(
        *(
            np.array([getattr(r, f.name) for r in records], float).reshape(len(records), -1)
            for f in fields(records[0])
        )
    )


def _row(record, k: int):
    """One design's share of a record of arrays."""
    values = [getattr(record, f.name) for f in fields(record)]
    return type(record)(
        *(
            {name: v[k] for name, v in value.items()} if isinstance(value, dict) else value[k]
            for value in values
        )
    )
