"""Smoke in the room: what the flue must carry off, the margin, and what would use it up."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from fireplace_calc.base.arrays import Array, BoolArray, Number
from fireplace_calc.base.tables.draft import coefficient, coefficients
from fireplace_calc.draft.conditions import BurningFire, Surroundings, leaks
from fireplace_calc.draft.flow_path import FIRE_BED, FlowPath
from fireplace_calc.draft.flow_search import settled
from fireplace_calc.draft.operating import Flow, excess_pressure
from fireplace_calc.draft.physics.air import air_density
from fireplace_calc.draft.physics.house import house_pull, inlet_needed
from fireplace_calc.draft.physics.house_leaks import net_inflow

STANDARD_AIR = float(air_density(293.15))
"""Density that the plume's constant is printed for: 20 C at sea level. [kg/m3]"""


def plume(power: Number, height: Number, density: Number = STANDARD_AIR) -> Number:
    r"""Air and smoke that a fire drives up to a height of its own accord.

    Parameters
    ----------
    power : float or array
        Heat of the fire. [W]
    height : float or array
        From the fuel to the underside of the lintel, above zero. [m]
    density : float or array
        Of the room's air. [kg/m3]

    Returns
    -------
    float or array
        Mass flow. [kg/s]

    Notes
    -----
    .. math::

        \dot m = 0.071\,(\rho/\rho_0)^{2/3} Q_c^{1/3} z^{5/3} + 0.0018\,Q_c,
        \quad Q_c = 0.6\,Q \quad [kW]

    The constant holds for air at sea level; thin air takes more room for the same mass, and the
    second term does not know the density.

    References
    ----------
    Axisymmetric plume of NFPA 92; constants from memory, use for a fireplace mouth derived. Power
    of the density: strong plume law, m = 0.196 (g rho^2 / (c_p T))^(1/3) Q_c^(1/3) z^(5/3), after
    Zukoski and Heskestad, SFPE Handbook of Fire Protection Engineering, chapter on fire plumes;
    from memory.

    Examples
    --------
    >>> round(float(plume(30e3, 0.74 - FIRE_BED)) / 1.2 / (0.915 * 0.74), 2)
    0.13
    """
    kilowatts = coefficient("plume share") * power / 1000.0
    return (
        coefficient("plume constant")
        * np.cbrt((density / STANDARD_AIR) ** 2 * kilowatts)
        * height ** (5.0 / 3.0)
        + coefficient("plume heat constant") * kilowatts
    )


DYING = 1.0 / 3600
"""A fire that burns no faster is dying down: the most that embers burn, engineering judgement.
[kg/s]
"""


def inward_velocity(burn: Number, asked: Number | None = None) -> Number:
    """Least speed through the face that keeps a cross-draft from pulling smoke out.

    Parameters
    ----------
    burn : float or array
        Wood as fired. [kg/s]
    asked : float or array, optional
        Of a burning fire; the middle of what authors ask when left out. [m/s]

    Returns
    -------
    float or array
        For a fire that dies down the least that any author asks: it makes little smoke. [m/s]

    Examples
    --------
    >>> inward_velocity(1e-3).item(), inward_velocity(1e-4).item()
    (0.151, 0.1)
    """
    known = coefficients()["inward velocity"]
    meant = known.value if asked is None else asked
    least: Number = np.where(np.less_equal(burn, DYING), known.low or known.value, meant)
    return least


def least_air(
    fire: BurningFire,
    path: FlowPath,
    room: Number,
    asked: Number | None = None,
    fireback: Number = 0.0,
) -> Number:
    r"""Air that has to go through the opening so that no smoke comes out.

    Parameters
    ----------
    fire : BurningFire
    path : FlowPath
    room : float or array
        Density of the room's air. [kg/m3]
    asked : float or array, optional
        As for ``inward_velocity``. [m/s]
    fireback : float or array
        Nought where air reaches the fire from all round, one where it stands against the fireback,
        or between. [-]

    Returns
    -------
    float or array
        Mass flow: the plume, or the least speed over the whole face, whichever is more. [kg/s]

    Notes
    -----
    A fire against a wall is half a fire of twice the heat: :math:`m = m_p(2 Q) / 2`. Behind shut
    doors no plume reaches the room: the least speed holds for their inlet, and the wood needs its
    air.
    """
    height = plume_height(path.opening_height, path.fire_bed)
    free, leaning = plume(fire.power, height, room), plume(2.0 * fire.power, height, room) / 2.0
    face = inward_velocity(fire.burn, asked) * path.face_area * room
    least: Number = np.maximum(free + fireback * (leaning - free), face)
    if not path.shut.any():
        return least
    return np.where(path.shut, np.maximum(fire.least_flow - fire.burn, face), least)


def plume_height(opening_height: Number, bed: Number = FIRE_BED) -> Number:
    """From the burning fuel up to the underside of the lintel; of the lowest openings half.

    Parameters
    ----------
    opening_height : float or array
        [m]
    bed : float or array
        Height of the burning fuel over the hearth. [m]

    Returns
    -------
    float or array
        Height of the plume. [m]
    """
    height: Number = np.maximum(opening_height - bed, 0.5 * opening_height)
    return height


@dataclass(frozen=True, slots=True)
class Spill:
    """How far a settled fire is from smoking; each field an array of the shape of its ``Flow``.

    Attributes
    ----------
    capture : array
        Face velocity that just carries the smoke off: the plume, or the least speed against a
        cross-draft. [m/s]
    margin : array
        How much farther the room may be pulled down before it smokes. [Pa]
    share : array
        The same over draft and wind at that flow. [-]
    tipping_fan : array
        Flow of all fans together at which smoke comes out; zero when it already does. [m3/s]
    inlet : array
        Free area of outdoor air inlet, the one there is counted in, that keeps the room just within
        the published limit while the fire draws what it then can. [m2]
    stack : array
        What the warm house pulls at the hearth by itself, the inlet shut; nought where it pushes.
        The published limit counts from there: it is for what fans and fire add. [Pa]
    smokes : array of bool
        Whether less air goes through the opening than carries the smoke off.
    """

    capture: Array
    margin: Array
    share: Array
    tipping_fan: Array
    inlet: Array
    stack: Array
    smokes: BoolArray


class Reserve(NamedTuple):
    """A flue that carries off no more than it must.

    Attributes
    ----------
    air : float or array
        What just carries the smoke off. [m3/s]
    margin : float or array
        How much farther the room may be pulled down at that flow. [Pa]
    share : float or array
        The same over draft and wind. [-]
    borne : float or array
        Pull of the house that the flue bears at that flow. [Pa]
    """

    air: Number
    margin: Number
    share: Number
    borne: Number


def reserve(
    path: FlowPath, fire: BurningFire, surroundings: Surroundings, friction: Number | None = None
) -> Reserve:
    """What is left over while the flue carries off no more than it must.

    Parameters
    ----------
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
    friction : float or array, optional
        As for ``settle``. [-]

    Returns
    -------
    Reserve
    """
    room = air_density(surroundings.room, surroundings.pressure)
    # More than the wood needs to burn: 0.0018 kg/s to a kilowatt are over twice its air.
    least = least_air(fire, path, room)
    margin, drive, borne = excess_pressure(least + fire.burn, path, fire, surroundings, friction)
    return Reserve(least / room, margin, margin / np.maximum(drive, 1e-9), borne)


def spill(
    flow: Flow,
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    friction: Number | None = None,
) -> Spill:
    """Hold a settled fire against the air that has to go in with its smoke.

    Parameters
    ----------
    flow : Flow
    path : FlowPath
    fire : BurningFire
    surroundings : Surroundings
        What it settled in.
    friction : float or array, optional
        As for ``settle``. [-]

    Returns
    -------
    Spill
    """
    house, spare = leaks(path, surroundings), reserve(path, fire, surroundings, friction)
    air, open_ = spare.air, np.isinf(house.coefficient)
    with np.errstate(invalid="ignore"):  # a room as open as outdoors
        fan = net_inflow(spare.borne, house) / house.room - air
    fan = np.where(open_, np.where(np.greater(spare.borne, 0), np.inf, 0.0), fan)
    # The fire in a room held just at the limit draws this much; an inlet has to feed it.
    stack = np.maximum(house_pull(0.0, replace(house, inlet=0.0)), 0.0)
    limit = stack + coefficient("depressurisation limit")
    at_limit = replace(
        surroundings, leak=np.inf, inlet=0.0, fans=0.0, wind=surroundings.wind - limit
    )
    mass, stalled = settled(path, fire, at_limit, friction)
    drawn = np.where(stalled, 0.0, (mass - fire.burn) / house.room) + surroundings.fans
    return Spill(
        capture=np.asarray(air / path.face_area),
        margin=np.asarray(spare.margin),
        share=np.asarray(spare.share),
        tipping_fan=np.maximum(fan, 0.0),
        inlet=inlet_needed(drawn * house.room, limit, house),
        stack=stack + 0.0 * np.asarray(air),
        smokes=flow.stalled | (flow.air < air),
    )
