"""A card for every step: what is set, where, by whom, on what joint, and how it is checked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from fireplace_calc.base.tables.erection import allowed_off
from fireplace_calc.build.lining_work import LiningWork
from fireplace_calc.build.setting.handling import Handling, handling_of
from fireplace_calc.build.setting.mixes import OPEN_TIME, MortarMix, mixes_of_steps
from fireplace_calc.build.setting.setting_order import SettingStep, order_of_setting
from fireplace_calc.build.setting.step_mortar import StepMortar, mortar_of_steps
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.joints import seam
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.pieces.records import FirebrickLining

DAY_WORK = Work()
"""Pace and reach where nobody tells them."""


@dataclass(frozen=True, slots=True)
class Tolerances:
    """How far off will do where the work stops to be checked.

    Attributes
    ----------
    level : float
        Of the top, over the lift's length. [m]
    plumb : float
        Of the faces, from the start. [m]
    joint : float
        Of the bed from what is told. [m]
    """

    level: float
    plumb: float
    joint: float


@dataclass(frozen=True, slots=True)
class SettingCard:
    """One step as it is handed to whoever sets the piece.

    Attributes
    ----------
    number, of : int
        Which step of how many. [-]
    name : str
        Of the piece, or ``lining``.
    placed : Placed or None
        None for the lining.
    lift : str
        Name of the lift it stands in.
    carried_by : tuple of str
        What it rests on.
    beside : tuple of (str, float)
        What stands beside it already, and the joint between. [m]
    front, left, right : float
        Its front edge from the front line, and its edges from the center line, to the right. [m]
    top : float
        Level of its upper bed over the start. [m]
    handling : Handling or None
        Who lifts it.
    mortar : StepMortar or None
    mix : MortarMix or None
        The one it is set from.
    opens_mix : bool
        Whether that is mixed for it.
    hold : Tolerances or None
        Where the lift stands with it and is checked before the next.
    lining : FirebrickLining or None
        Where this is its step.
    laid : LiningWork or None
        What the lining takes, where that was counted.
    """

    number: int
    of: int
    name: str
    placed: Placed | None
    lift: str
    carried_by: tuple[str, ...]
    beside: tuple[tuple[str, float], ...]
    front: float
    left: float
    right: float
    top: float
    handling: Handling | None
    mortar: StepMortar | None
    mix: MortarMix | None
    opens_mix: bool
    hold: Tolerances | None
    lining: FirebrickLining | None
    laid: LiningWork | None = None


def cards_of(
    made: Assembly,
    lining: FirebrickLining | None = None,
    work: Work = DAY_WORK,
    open_time: float = OPEN_TIME,
    laid: LiningWork | None = None,
) -> tuple[SettingCard, ...]:
    """Cards of the whole set, in the order of setting.

    Parameters
    ----------
    made : Assembly
        A set that fits.
    lining : FirebrickLining or None
    work : Work
        Who lifts, and how high a staging lift is.
    open_time : float
        How long mortar may be spread and covered, 10 to 15 minutes. [s]
    laid : LiningWork or None
        What the lining takes, where a whole design is at hand to count it.

    Returns
    -------
    tuple of SettingCard

    Raises
    ------
    InputError
        When pieces wait for each other, or the open time is not allowed.
    """
    steps = order_of_setting(made, lining)
    mortar = mortar_of_steps(made, steps)
    mixes = mixes_of_steps(steps, mortar, open_time)
    by_name = {one.name: one for one in mortar}
    mix_of = {name: mix for mix in mixes for name in mix.names}
    last = {s.placed.lift: s.name for s in steps if s.placed is not None}
    standing: list[Placed] = []
    cards = []
    for step in steps:
        one = step.placed
        if one is None:
            cards.append(_lining_card(step, len(steps), lining, laid))
            continue
        x0, x1, y0, _, _, _ = extent(one.piece)
        mix = mix_of[step.name]
        cards.append(
            SettingCard(
                step.number,
                len(steps),
                step.name,
                one,
                made.lifts[one.lift].name,
                step.carried_by,
                _beside(one, standing),
                y0,
                x0,
                x1,
                one.top - made.start,
                handling_of(one, work, made.start),
                by_name[step.name],
                mix,
                mix.names[0] == step.name,
                _tolerances(made, one) if last[one.lift] == step.name else None,
                None,
            )
        )
        standing.append(one)
    return tuple(cards)


def _lining_card(
    step: SettingStep, of: int, lining: FirebrickLining | None, laid: LiningWork | None
) -> SettingCard:
    return SettingCard(
        number=step.number,
        of=of,
        name=step.name,
        placed=None,
        lift=step.name,
        carried_by=(),
        beside=(),
        front=0.0,
        left=0.0,
        right=0.0,
        top=0.0,
        handling=None,
        mortar=None,
        mix=None,
        opens_mix=False,
        hold=None,
        lining=lining,
        laid=laid,
    )


def _beside(one: Placed, standing: Iterable[Placed]) -> tuple[tuple[str, float], ...]:
    """What stands beside a piece near enough for a joint, and how wide that is where narrowest."""
    found = []
    for other in standing:
        if other.lift == one.lift:
            between = seam(one.piece, other.piece)
            if between.most > 0.0:
                found.append((other.name, between.least))
    return tuple(found)


def lift_length(made: Assembly, lift: int) -> float:
    """From the left end of a lift to its right end.

    Parameters
    ----------
    made : Assembly
    lift : int
        Counted from the base, from nought. [-]

    Returns
    -------
    float
        [m]
    """
    reach = [extent(p.piece) for p in made.by_lift[lift]]
    return float(max(e[1] for e in reach) - min(e[0] for e in reach))


def _tolerances(made: Assembly, one: Placed) -> Tolerances:
    """What the published tolerances allow a lift, by its length and its height."""
    return Tolerances(
        allowed_off("bed level", lift_length(made, one.lift)),
        allowed_off("plumb", one.top - made.start),
        allowed_off("bed thickness"),
    )
