"""How sure is it: the same fire thousands of times over, every doubtful figure drawn afresh from
its published range.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from fireplace_calc.base.tables import coefficients
from fireplace_calc.draft.flow_path import FlowPath
from fireplace_calc.draft.operating import BurningFire, Surroundings, settle
from fireplace_calc.draft.physics.air import air_density
from fireplace_calc.draft.spillage import plume, plume_height

DRAWS, SEED = 10_000, 1889
"""How often, and where the drawing starts: the same seed gives the same odds."""
QUANTILES = (0.05, 0.50, 0.95)
"""What is told of every spread. [-]"""
ROOM_SPREAD, WIND_MIDDLE, WIND_SPREAD, BURN_SPREAD, MODEL_SPREAD = 1.5, 1.5, 2.5, 0.3, 0.10
"""Standard deviations of room temperature [K], of the wind's help at the top with its middle [Pa],
of the burn rate and of the model's own flow against what openings were measured to carry [-]:
engineering judgement.
"""
LEAK_SPREAD, TESTED_SPREAD = 0.66, 0.10
"""Log-normal spread of houses nobody has tested (published), and of a fan test repeated (common
practice, no source). [-]
"""


@dataclass(frozen=True, slots=True)
class Odds:
    """Spread of a fire that was drawn many times, operating mode.

    ``face`` [m/s], ``pull`` of the house [Pa] and ``air`` through the opening [m3/s] at the
    quantiles of ``QUANTILES`` (first axis); ``smokes`` and ``below`` are the shares of fires that
    smoke and that miss the published face velocity. [-]
    """

    face: np.ndarray
    pull: np.ndarray
    air: np.ndarray
    smokes: object
    below: object
    draws: int

    @property
    def words(self) -> str:
        """The odds as one says them."""
        smoking = float(np.max(self.smokes)) * 100
        return (
            "smokes in fewer than 1 of 100"
            if 0 <= smoking < 1
            else f"smokes in {smoking:.0f} of 100"
        )


def _three(
    rng: np.random.Generator, low: float, mode: float, high: float, count: int
) -> np.ndarray:
    return rng.triangular(low, mode, high, count)


def smoke_odds(
    path: FlowPath,
    fire: BurningFire,
    surroundings: Surroundings,
    mild: float,
    tested: bool = True,
    cap_told: bool = True,
    draws: int = DRAWS,
    seed: int = SEED,
) -> Odds:
    """Draw a fire many times over the published ranges.

    Parameters
    ----------
    path : Path
        Fields may be arrays whose last axis has length one: many designs at once, all of them
        through the same evenings.
    fire : Fire
        At the rate it is meant to burn. [kg/s, W]
    surroundings : Surroundings
        Its ``outdoor`` is the coldest evening. [K]
    mild : float
        The mildest evening; evenings are drawn evenly between both. [K]
    tested : bool
        Whether the house's leakage was measured; if not, it is drawn from the published spread of
        houses.
    cap_told : bool
        Whether it is known what stands on the flue; if not, its loss is drawn too.
    draws : int
        How many fires.
    seed : int
        Same seed, same odds.

    Returns
    -------
    Odds
    """
    rng, known = np.random.default_rng(seed), coefficients()
    face, leaks, friction = (
        known["face velocity"].value,
        surroundings.leak,
        known["friction factor"],
    )
    kept, clean = known["share kept by the room"], known["combustion efficiency"]
    rubbing = _three(rng, friction.low, friction.value, friction.high, draws)
    throat = path.throat / _three(rng, 0.75, 1.0, 1.25, draws) ** 2
    walls = path.transmittance * _three(rng, 0.625, 1.0, 2.0, draws)
    room_share, burnt = (_three(rng, k.low, k.value, k.high, draws) for k in (kept, clean))
    wetness = np.minimum((1.0 - fire.dry_share) * _three(rng, 0.6, 1.0, 1.75, draws), 0.8)
    rate = np.maximum(fire.burn * rng.normal(1.0, BURN_SPREAD, draws), 0.06 * fire.burn)
    room = surroundings.room + rng.normal(0.0, ROOM_SPREAD, draws)
    outdoor = rng.uniform(min(surroundings.outdoor, mild), max(surroundings.outdoor, mild), draws)
    wind = surroundings.wind + rng.normal(WIND_MIDDLE, WIND_SPREAD, draws)
    exponent = np.clip(_three(rng, 0.58, 0.65, 0.72, draws), 0.5, 1.0)
    changes = rng.lognormal(0.0, TESTED_SPREAD if tested else LEAK_SPREAD, draws)
    top = 0.0 if cap_told else _three(rng, 0.0, 0.25, 1.5, draws)
    model = np.maximum(rng.normal(1.0, MODEL_SPREAD, draws), 0.3)

    dry = (1.0 - wetness) / fire.dry_share
    power = fire.power / fire.burn * rate * dry
    one = BurningFire(
        rate, 1.0 - wetness, power, power * burnt * (1.0 - room_share), fire.air_needed
    )
    leak = leaks * changes * 50.0 ** (surroundings.exponent - exponent)
    evening = replace(
        surroundings, outdoor=outdoor, room=room, wind=wind, exponent=exponent, leak=leak
    )
    flow = settle(
        replace(path, throat=throat, transmittance=walls, cap=path.cap + top),
        one,
        evening,
        friction=rubbing,
    )
    air = flow.air * model
    least = plume(power, plume_height(path.opening_height)) / air_density(
        room, surroundings.pressure
    )
    speed = air / path.opening_area
    return Odds(
        face=np.quantile(speed, QUANTILES, axis=-1),
        pull=np.quantile(flow.pull, QUANTILES, axis=-1),
        air=np.quantile(air, QUANTILES, axis=-1),
        smokes=np.mean(flow.stalled | (air < least), axis=-1),
        below=np.mean(speed < face, axis=-1),
        draws=draws,
    )
