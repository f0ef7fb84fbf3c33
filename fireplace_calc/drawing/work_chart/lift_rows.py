"""Who lifts what, staging, curing and first fires, and the cautions of the whole job."""

from __future__ import annotations

from collections import defaultdict
from math import inf

from fireplace_calc.base.printing import show
from fireplace_calc.build import Lift, Plan
from fireplace_calc.build.lifting.equation import capacity
from fireplace_calc.build.lifting.lift_list import HEAVY_UNIT
from fireplace_calc.build.notes import cautions as cautions_of
from fireplace_calc.drawing.plates.bands import Together, heading, row, words
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.work_chart.at_hand import numbers
from fireplace_calc.report.sentences import weight
from fireplace_calc.takeoff.goods import SET_PIECE

LIFTS = (
    Column("What", 50),
    Column("No.", 9, "right"),
    Column("Weight", 16, "right"),
    Column("Who", 13),
    Column("Steps", 16),
    Column("Index", 18, "right"),
)
PLACE = (
    Column("Set at", 22, "right"),
    Column("Held off", 21, "right"),
    Column("One", 14, "right"),
)
"""Before the index, where there is room."""
PLACED = (
    " Set at: over the floor one stands on; held off: from the body; one: what one may lift there."
)
TURN = "no twist: turn with the feet"
STRAIN = "strain at its worst bed: bring pile and stand nearer to its height"
COMMON, READ = "common practice", ("read", "read twice")
OSHA = " (OSHA)"
ONE = (Column("", 1.0),)


def lift_table(plan: Plan, units: str, wide: float, full: bool = False) -> list[Together]:
    """Table of what is heavy, each kind once, at its worst bed.

    Parameters
    ----------
    plan : Plan
    units : str
    wide : float
        [mm]
    full : bool
        Whether it says where a piece is set at its worst, and what one may lift there.

    Returns
    -------
    list of Together
        None where nothing is heavy.
    """
    if not plan.lifts:
        return []
    before = (
        f"Who lifts goes by weight alone: one person up to {weight(HEAVY_UNIT, units)}, two up to"
        f" {weight(capacity(HEAVY_UNIT, 2), units)}, a hoist beyond or where hands do not reach."
        " Index: weight over what the revised NIOSH equation of 1991 allows one, and two, at the"
        " worst bed; over 1 it strains (*): bring pile and stand nearer to its height. Turn with"
        " the feet, never twist." + (PLACED if full else "")
    )
    made = [heading("Lifts, at their worst", wide), *words(before, wide)]
    shape = (*LIFTS[:-1], *PLACE, LIFTS[-1]) if full else LIFTS
    headings = [column.heading for column in shape]
    made += row(shape, headings, wide, bold=True, weight="seen", leads=True)
    for texts in lift_texts(plan, units):
        made += row(shape, texts if full else (*texts[:5], texts[-1]), wide)
    return made


def lift_texts(plan: Plan, units: str) -> list[tuple[str, ...]]:
    """Rows of lifts: what weighs and is lifted alike stands in one."""
    by_item: dict[str, list[Lift]] = defaultdict(list)
    for lift in plan.lifts:
        by_item[lift.item].append(lift)
    alike: dict[tuple[str, ...], list[tuple[str, str]]] = defaultdict(list)
    for item, lifts in by_item.items():
        worst = min(lifts, key=lambda lift: lift.allowed)
        notes = dict.fromkeys(
            part
            for lift in lifts
            for part in lift.note.split("; ")
            if part and part not in (TURN, STRAIN)
        )
        strained = any(STRAIN in lift.note for lift in lifts)
        key = (
            "not known" if worst.weight is None else weight(worst.weight, units),
            worst.verdict.split(" pe")[0],
            numbers(lift.step for lift in lifts),
            show(worst.height, "length", units),
            show(worst.reach, "length", units),
            weight(worst.allowed, units),
            f"{indices(worst)}{' *' if strained else ''}",
            "; ".join(notes),
        )
        alike[key].append((item, f"{sum(lift.count for lift in lifts):.0f}"))
    return [
        (
            "; ".join(filter(None, (_named([item for item, _ in same]), key[-1]))),
            ", ".join(dict.fromkeys(n for _, n in same)),
            *key[:-1],
        )
        for key, same in alike.items()
    ]


def indices(lift: Lift) -> str:
    """Strain for one person and for two."""
    if lift.index_one is None or lift.index_two is None:
        return ""
    if lift.index_one == inf:
        return "out of reach"
    return f"{lift.index_one:.1f}, {lift.index_two:.1f}"


def _named(items: list[str]) -> str:
    if len(items) == 1:
        return items[0]
    marks = [
        item.removeprefix(SET_PIECE).split(",")[0] if item.startswith(SET_PIECE) else item
        for item in items
    ]
    return f"{'Pieces ' if items[0].startswith(SET_PIECE) else ''}{', '.join(marks)}"


def staging_rows(plan: Plan, units: str, wide: float) -> list[Together]:
    """Working floors, when they are put up and taken down; nothing where none is wanted. [mm]"""
    if not plan.staging:
        return []
    floors = "; ".join(
        f"floor {stage.number} at {show(stage.level, 'length', units)}"
        f"{' with guard rails' if stage.rails else ''}, steps {numbers(stage.steps)}"
        for stage in plan.staging
    )
    sides = " and ".join(plan.staging[0].sides)
    said = f"Staging, {sides}: {floors}. Each is up before its first step, and down after its last."
    return row(ONE, (said,), wide)


def curing_rows(plan: Plan, wide: float) -> list[Together]:
    """Curing and first fires. [mm]"""
    cure = plan.curing
    cold = f", and {cure.cold} cold days that do not count" if cure.cold else ""
    fires = "; ".join(
        f"day {fire.day}: {fire.share * 100:.0f} % of a full fire, {fire.note}"
        for fire in cure.fires
    )
    said = f"Curing and first fires, from the end of the work: {cure.days} days{cold}. {cure.note}"
    return row(ONE, (f"{said} {fires[0].upper()}{fires[1:]}.",), wide)


def cautions(pack: str, wide: float, units: str) -> list[Together]:
    """Cautions of the whole job in the words of a book's country, with their source and how sure it
    is. [mm]
    """
    made = [heading("Cautions; local code comes first", wide)]
    sources = "Sources were read unless it is said; without one: common practice, from memory."
    made += row(ONE, (sources,), wide)
    topics: dict[str, list[str]] = defaultdict(list)
    for one in cautions_of(pack):
        sure = "" if one.confidence in READ else f", {one.confidence}"
        source = "" if one.source == COMMON else f" [{one.source.replace(OSHA, '')}{sure}]"
        topics[one.topic].append(f"{one.figured(units)}{source}")
    for topic, said in topics.items():
        made += row(ONE, (f"{topic[0].upper()}{topic[1:]}: {' '.join(said)}",), wide)
    return made
