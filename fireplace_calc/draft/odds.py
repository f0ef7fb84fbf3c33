"""How sure is it: the same fire thousands of times over, every doubtful figure drawn afresh from
its published range.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import pi, sqrt

import numpy as np

from fireplace_calc.base.arrays import Array, Number
from fireplace_calc.base.draws import DRAWS, SEED, of_hundred
from fireplace_calc.base.tables.draft import Coefficient, coefficients
from fireplace_calc.draft.conditions import BurningFire, Surroundings
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.flow_search import carries
from fireplace_calc.draft.operating import settle
from fireplace_calc.draft.physics.air import air_density
from fireplace_calc.draft.physics.weather import wind_pressure
from fireplace_calc.draft.spillage import DYING, least_air

QUANTILES = (0.05, 0.50, 0.95)
"""Quantiles that are reported of every spread. [-]"""
ROOM_SPREAD, BURN_SPREAD, MODEL_SPREAD = 1.5, 0.3, 0.10
"""Standard deviations of room temperature [K], of the burn rate and of the model's own flow against
what openings were measured to carry [-]: engineering judgement.
"""
EMBERS = (0.3 / 3600, 0.65 / 3600, DYING)
"""Least, likeliest and most that a fire burns while it dies down: engineering judgement. [kg/s]"""
LEAK_SPREAD, TESTED_SPREAD = 0.66, 0.10
"""Log-normal spread of houses nobody has tested (published), and of a fan test repeated (common
practice, no source). [-]
"""


@dataclass(frozen=True, slots=True)
class Odds:
    """Spread of a fire that was drawn many times, operating mode.

    Attributes
    ----------
    face : array, shape (3, ...)
        Face velocity at the quantiles of ``QUANTILES``, then one entry a design. [m/s]
    pull : array, shape (3, ...)
        How far the room lies below outdoors, likewise. [Pa]
    air : array, shape (3, ...)
        Through the opening, likewise. [m3/s]
    smokes, dying, below : array
        Shares of fires that smoke while they burn, that smoke while they die down, and that miss
        the face velocity of sizing while they burn; one entry a design, no axis at all for one
        design. [-]
    draws : int
        How many fires. [-]
    """

    face: Array
    pull: Array
    air: Array
    smokes: Array
    dying: Array
    below: Array
    draws: int

    @property
    def words(self) -> str:
        """The odds as one says them."""
        return f"smokes in {of_hundred(float(np.max(self.smokes)))}"

    @property
    def dying_words(self) -> str:
        """The same of a fire that dies down."""
        return f"dying down it smokes in {of_hundred(float(np.max(self.dying)))}"


def _between(rng: np.random.Generator, known: Coefficient, count: int) -> Array:
    """Triangular, between the ends of a published range and about its figure."""
    if known.low is None or known.high is None:
        raise ValueError(f"A published range is needed, but {known} has none.")
    return rng.triangular(known.low, known.value, known.high, count)


def smoke_odds(
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    mild: float,
    wind: tuple[Number, Number],
    tested: bool = True,
    cap_known: bool = True,
    draws: int = DRAWS,
    seed: int = SEED,
) -> Odds:
    """Draw a fire many times over the published ranges.

    Parameters
    ----------
    path : FlowPath
        Fields may be arrays whose last axis has length one: many designs at once, all of them
        through the same evenings.
    fire : BurningFire
        At the rate it is meant to burn.
    surroundings : Surroundings
        Its ``outdoor`` is the coldest evening. [K]
    mild : float
        The mildest evening; evenings are drawn evenly between both. [K]
    wind : tuple of float or array
        What wind adds to the draft at worst and at best, over its velocity pressure, by the top of
        each design; drawn evenly between both. [-]
    tested : bool
        Whether the house's leakage was measured; if not, it is drawn from the published spread of
        houses.
    cap_known : bool
        Whether it is known what cap is on the flue; if not, its loss is drawn too.
    draws : int
        How many fires, at least 1. [-]
    seed : int
        Same seed, same odds. [-]

    Returns
    -------
    Odds
    """
    rng, known = np.random.default_rng(seed), coefficients()
    # The order of the drawing is part of the result: another order, other odds of the same seed.
    friction = _between(rng, known["friction factor"], draws)
    throat = path.throat / rng.triangular(0.75, 1.0, 1.25, draws) ** 2
    walls = path.transmittance * rng.triangular(0.625, 1.0, 2.0, draws)
    room_share = _between(rng, known["share kept by the room"], draws)
    burnt = _between(rng, known["combustion efficiency"], draws)
    wetness = np.minimum((1.0 - fire.dry_share) * rng.triangular(0.6, 1.0, 1.75, draws), 0.8)
    rate = np.maximum(fire.burn * rng.normal(1.0, BURN_SPREAD, draws), 0.06 * fire.burn)
    room = surroundings.room + rng.normal(0.0, ROOM_SPREAD, draws)
    cold, warm = np.minimum(surroundings.outdoor, mild), np.maximum(surroundings.outdoor, mild)
    outdoor = rng.uniform(cold, warm, draws)
    # Rayleigh's law over the year; less of it among houses; from anywhere round the top.
    mean = known["mean wind"].value * sqrt(known["wind at a roof among houses"].value)
    speed = rng.rayleigh(mean / sqrt(pi / 2), draws)
    share = wind[0] + rng.uniform(0.0, 1.0, draws) * (wind[1] - wind[0])
    gust = wind_pressure(share, speed, outdoor, surroundings.pressure)
    exponent = np.clip(rng.triangular(0.58, 0.65, 0.72, draws), 0.5, 1.0)
    changes = rng.lognormal(0.0, TESTED_SPREAD if tested else LEAK_SPREAD, draws)
    top = 0.0 if cap_known else rng.triangular(0.0, 0.25, 1.5, draws)
    model = np.maximum(rng.normal(1.0, MODEL_SPREAD, draws), 0.3)
    inward = _between(rng, known["inward velocity"], draws)
    fireback = rng.uniform(0.0, 1.0, draws)
    embers = rng.triangular(*EMBERS, draws)

    leak = surroundings.leak * changes * 50.0 ** (surroundings.exponent - exponent)
    evening = replace(
        surroundings,
        outdoor=outdoor,
        room=room,
        wind=surroundings.wind + gust,
        exponent=exponent,
        leak=leak,
    )
    doubtful = replace(path, throat=throat, transmittance=walls, cap=path.cap + top)
    density = air_density(room, surroundings.pressure)

    def burning(rate: Array) -> BurningFire:
        """Fires at these rates."""
        power = fire.power / fire.burn * rate * (1.0 - wetness) / fire.dry_share
        to_gas = power * burnt * (1.0 - room_share)
        return BurningFire(rate, 1.0 - wetness, power, to_gas, fire.air_needed)

    def least(one: BurningFire) -> Number:
        """Air that they need so as not to smoke. [m3/s]"""
        return least_air(one, path, density, inward, fireback) / density

    one, dying = burning(rate), burning(embers)
    flow = settle(doubtful, one, evening, friction=friction)
    air = np.where(flow.stalled, 0.0, (flow.mass - one.burn) / density) * model
    smokes = np.mean(flow.stalled | (air < least(one)), axis=-1)
    drawn = dying.burn + least(dying) * density / model
    asked = np.maximum(drawn, dying.least_flow)
    dying_smokes = np.mean(~carries(doubtful, dying, evening, asked, friction), axis=-1)
    face = np.asarray(air / path.face_area)
    return Odds(
        face=np.quantile(face, QUANTILES, axis=-1),
        pull=np.quantile(flow.pull, QUANTILES, axis=-1),
        air=np.quantile(air, QUANTILES, axis=-1),
        smokes=np.asarray(smokes),
        dying=np.asarray(dying_smokes),
        below=np.asarray(np.mean(face < known["face velocity"].value, axis=-1)),
        draws=draws,
    )
