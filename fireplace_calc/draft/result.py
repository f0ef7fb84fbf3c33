"""One design through the weather: sizing, a winter evening, a mild one, dying down, a windy one,
and lighting it cold.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, Number
from fireplace_calc.base.tables.draft import wood_analysis
from fireplace_calc.draft.cases import CASES, CaseInputs, case_inputs, row_of, stacked
from fireplace_calc.draft.conditions import BurningFire, Surroundings, leaks
from fireplace_calc.draft.flow_path import DATUMS, FlowPath
from fireplace_calc.draft.operating import Flow, settle
from fireplace_calc.draft.physics.house import house_pull
from fireplace_calc.draft.physics.walls import film, lining_temperature
from fireplace_calc.draft.physics.weather import BREEZE, flue_at_rest, wind_pressure, wind_range
from fireplace_calc.draft.physics.wood import smoke, smoke_dew_point
from fireplace_calc.draft.sizing import face_velocity, theoretical_draft
from fireplace_calc.draft.spillage import Spill, spill
from fireplace_calc.geometry.frame import Framed

MODES = {
    "sizing": (
        "sizing mode: gas 222 K over outdoors, imposed as a handbook sizes; 21 C indoors and out"
    ),
    "operating": "operating mode: flow and temperature that settle at the burn rate",
}
"""What is printed beside every number of a mode."""
INDOOR_HUMIDITY = 0.006
"""Water in the room air, an ordinary heated room. [-]"""


@dataclass(frozen=True, slots=True)
class Lighting:
    """A flue nobody has lit yet; each field an array of shape (2,), the winter evening first and
    the mild one after it.

    Attributes
    ----------
    draft : array
        Of the air at rest in the flue. [Pa]
    stack, fans : array
        What the warm house pulls at the draft's datum, negative where it pushes, and what the fans
        add. [Pa]
    excess : array
        The draft less both. [Pa]
    """

    draft: Array
    stack: Array
    fans: Array
    excess: Array


class Tended(NamedTuple):
    """A fire whose glass doors stand open to lay on wood; one entry a case of ``CASES``.

    Attributes
    ----------
    flows : Flow
    spills : Spill
    """

    flows: Flow
    spills: Spill


def _tended(given: CaseInputs) -> Tended | None:
    """Every evening with the doors open, where there are doors; one design."""
    if given.opened is None:
        return None
    flows = settle(given.opened, given.fires, given.cases)
    return Tended(flows, spill(flows, given.opened, given.fires, given.cases))


@dataclass(frozen=True, slots=True)
class DraftResult:
    """What the air will do in one design.

    Attributes
    ----------
    path : FlowPath
        Of floats.
    fire : BurningFire
        One entry a case of ``CASES``.
    surroundings : Surroundings
        Likewise, where the cases differ.
    sizing_velocity : float
        Through the face, sizing mode. [m/s]
    flows : Flow
        One entry a case, operating mode.
    spills : Spill
        One entry a case, operating mode.
    lighting : Lighting
    wind_case : str
        Where the top stands in the wind.
    wind_range : tuple of float
        What a breeze adds to the draft at worst and at best. [Pa]
    dew_points : array
        Of the smoke, one entry a case. [K]
    linings : array
        Inside face of the liner at the top, one entry a case. [K]
    tested : bool
        Whether the leakage of the house is known.
    shared : bool
        Whether an appliance is connected to the flue; the fire is figured as if none were.
    tended : Tended or None
        The same evenings with glass doors open; none where there are none.
    """

    path: FlowPath
    fire: BurningFire
    surroundings: Surroundings
    sizing_velocity: float
    flows: Flow
    spills: Spill
    lighting: Lighting
    wind_case: str
    wind_range: tuple[float, float]
    dew_points: Array
    linings: Array
    tested: bool
    shared: bool
    tended: Tended | None

    @property
    def shut(self) -> bool:
        """Whether glass doors are shut while the fire burns."""
        return self.tended is not None

    def face(self, case: str) -> float:
        """Face velocity of a case, operating mode. [m/s]"""
        return float(self.flows.face[CASES.index(case)])


def _lighting(path: FlowPath, calm: Surroundings, outdoor: Array) -> Lighting:
    """A flue nobody has lit; one design, or a row a design."""
    at_rest = flue_at_rest(outdoor, calm.room, path.indoors)
    draft = theoretical_draft(path.height, at_rest, outdoor, calm.pressure)
    house = leaks(path, replace(calm, outdoor=outdoor))
    blown = np.atleast_1d(calm.fans * house.room)
    stack, both = house_pull(np.stack([0.0 * blown, blown]), house)
    fans = both - stack
    excess = np.asarray(draft - stack - fans)
    return Lighting(np.asarray(draft), stack, fans, excess)


def _lighting_outdoors(geometry: Framed) -> Array:
    """Outdoors when it is lit, winter and mild. [K]"""
    return np.array([geometry.design.site.winter, geometry.design.site.mild])


def _sized(path: FlowPath) -> Number:
    """Face velocity, sizing mode. [m/s]"""
    return face_velocity(
        path.opening_area,
        path.flue_area,
        path.diameter,
        path.height,
        path.length,
        path.inlet,
        path.other,
    )


def _linings(given: CaseInputs, flows: Flow) -> Array:
    """Inside face of the liner at the top, out in the open air. [K]"""
    path = given.path
    inside = film(flows.mass, path.flue_area, path.diameter, path.roughness, flows.top)
    return np.asarray(
        lining_temperature(flows.top, given.cases.outdoor, path.transmittance, inside)
    )


def _breeze(given: CaseInputs, outdoor: float) -> tuple[float, float]:
    """What a breeze adds to the draft at worst and at best. [Pa]"""
    worst, best = (
        float(wind_pressure(each, BREEZE, outdoor, given.calm.pressure))
        for each in wind_range(given.wind)
    )
    return worst, best


def _result(
    geometry: Framed,
    given: CaseInputs,
    sized: float,
    flows: Flow,
    spills: Spill,
    lighting: Lighting,
) -> DraftResult:
    """What was found for one design, with the dew point of its smoke."""
    design = geometry.design
    gas = smoke(
        wood_analysis(design.fire.wood),
        design.fire.moisture,
        np.maximum(flows.air_ratio, 1.0),
        INDOOR_HUMIDITY,
    )
    return DraftResult(
        path=given.path,
        fire=given.fires,
        surroundings=given.cases,
        sizing_velocity=sized,
        flows=flows,
        spills=spills,
        lighting=lighting,
        wind_case=given.wind.case,
        wind_range=_breeze(given, design.site.mild),
        dew_points=np.asarray(smoke_dew_point(gas, given.calm.pressure)),
        linings=_linings(given, flows),
        tested=design.house.leakage is not None,
        shared=bool(design.stack.connector),
        tended=_tended(given),
    )


def draft_result(geometry: Framed, datum: str = DATUMS[0]) -> DraftResult:
    """Work one design through every case.

    Parameters
    ----------
    geometry : Framed
    datum : str
        Where the height of the draft counts from, one of ``DATUMS``.

    Returns
    -------
    DraftResult

    Raises
    ------
    KeyError
        When there is no such datum.
    """
    given = case_inputs(geometry, datum)
    path, fires, cases = given.path, given.fires, given.cases
    flows = settle(path, fires, cases)
    return _result(
        geometry,
        given,
        float(_sized(path)),
        flows,
        spill(flows, path, fires, cases),
        _lighting(path, given.calm, _lighting_outdoors(geometry)),
    )


def draft_results(geometries: Sequence[Framed]) -> tuple[DraftResult, ...]:
    """Work many designs through every case: the same answers as one by one, in one search for all
    of them.

    Parameters
    ----------
    geometries : sequence of Framed

    Returns
    -------
    tuple of DraftResult
        In the order of the designs.
    """
    if not geometries:
        return ()
    given = [case_inputs(one) for one in geometries]
    path = stacked([one.path for one in given])
    fires, cases = stacked([one.fires for one in given]), stacked([one.cases for one in given])
    flows = settle(path, fires, cases)
    spills = spill(flows, path, fires, cases)
    sized = np.asarray(_sized(path))
    lighting = _lighting(
        path,
        stacked([one.calm for one in given]),
        np.array([_lighting_outdoors(one) for one in geometries]),
    )
    return tuple(
        _result(
            geometry,
            one,
            float(sized[k, 0]),
            row_of(flows, k),
            row_of(spills, k),
            row_of(lighting, k),
        )
        for k, (geometry, one) in enumerate(zip(geometries, given, strict=True))
    )
