"""Short cards: why steps of one kind come where they do, what is checked, how long one waits; and
what can hurt, with the steps in which it does.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from fireplace_calc.build import Plan, WorkStep
from fireplace_calc.build.lift_parts import STACK
from fireplace_calc.build.on_site.set_in import SetIn
from fireplace_calc.drawing.plates.bands import PITCH, Together, heading, row
from fireplace_calc.drawing.plates.marks import SMALL
from fireplace_calc.drawing.sheets.lists import Column, wrapped
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.drawing.work_chart.at_hand import numbers, plain_name
from fireplace_calc.drawing.work_chart.step_bars import OVER, UNDER

SIDE, APART = 1.6, 1.4
"""Between a card's frame and its letters, and between two cards. [mm]"""
RISING = "Flue and chimney"
"""What rises together is one kind of step."""
MOST = 6
"""Lines of a card under its title; what is more goes on a card of its own. [-]"""
LIFTING = "Lifting: "
LISTED = (", two people.", ", hoist.")
"""Ends of cautions that the list of lifts says better."""


def by_kind(plan: Plan) -> dict[str, list[WorkStep]]:
    """Steps under their plain name, in the order in which each kind begins."""
    found: dict[str, list[WorkStep]] = defaultdict(list)
    for step in plan.steps:
        found[
            RISING if step.parts and step.parts[0].part in STACK else plain_name(step.name)
        ].append(step)
    return found


def said_on(steps: list[WorkStep], things: Sequence[SetIn] = ()) -> list[str]:
    """What a card says, each once: what it stands on where that is no step, what is set in, checks,
    waits.
    """
    whys = dict.fromkeys(why for step in steps for why in step.why)
    said = [f"{why[0].upper()}{why[1:]}." for why in whys if not why.startswith(HOWS)]
    for thing in things:
        if any(step.number == thing.step for step in steps):
            at = f" in step {thing.step}" if len(steps) > 1 else ""
            said.append(f"{thing.item}{at}: {thing.what}.")
    holds = dict.fromkeys((h.kind, h.what) for step in steps for h in step.hold_points)
    said += [f"{kind.capitalize()}: {what}" for kind, what in holds]
    waits = dict.fromkeys((w.days, w.what) for step in steps for w in step.waits)
    said += [f"Wait {days:g} d: {what}." for days, what in waits]
    return said


HOWS = (
    "rests on ",
    "stands in ",
    "is cast against ",
    "goes round ",
    "leans on ",
    "is steadied by ",
    "comes after ",
    "goes on ",
)
"""How a step waits for one before it: the chart has their numbers."""


def cards(plan: Plan, wide: float, things: Sequence[SetIn] = ()) -> list[Together]:
    """A card for every kind of step, framed. [mm]"""
    made = [heading("Must be right before the next step", wide)]
    for name, steps in by_kind(plan).items():
        if said := said_on(steps, things):
            made += card(f"{numbers(step.number for step in steps)}  {name}", said, wide)
    unknown = [thing.item for thing in things if thing.step is None]
    if unknown:
        told = f"Nobody has told yet whether there is: {', '.join(unknown).lower()}."
        made += card("Not in the order yet", [told], wide)
    return made


def card(title: str, said: list[str], wide: float) -> list[Together]:
    """A card with a title; another under it, without one, where there is too much for one.

    Parameters
    ----------
    title : str
    said : list of str
        Paragraphs.
    wide : float
        [mm]

    Returns
    -------
    list of Together
        Each of at most six lines.
    """
    head = list(wrapped(title, wide - 2 * SIDE, True))
    parts: list[list[str]] = [[]]
    for text in said:
        lines = list(wrapped(text, wide - 2 * SIDE))
        if parts[-1] and len(parts[-1]) + len(lines) > MOST:
            parts.append([])
        parts[-1] += lines
    short = [part[n : n + MOST] for part in parts for n in range(0, max(len(part), 1), MOST)]
    last = len(short) - 1
    return [
        _card(head if n == 0 else [], part, wide, APART if n == last else 0.0)
        for n, part in enumerate(short)
    ]


def _card(head: list[str], lines: list[str], wide: float, apart: float) -> Together:
    high = OVER + SMALL + (len(head) + len(lines) - 1) * PITCH + UNDER

    def paint(sheet: Sheet, left: float, top: float) -> None:
        for n, text in enumerate((*head, *lines)):
            y = top - OVER - SMALL - n * PITCH
            sheet.text(left + SIDE, y, text, SMALL, "left", bold=n < len(head))
        frame = [(left, top), (left + wide, top), (left + wide, top - high), (left, top - high)]
        sheet.line(frame, "seen", closed=True)

    return Together(high + apart, paint, leads=apart == 0.0)


def dangers(plan: Plan, wide: float) -> list[Together]:
    """What can hurt in which steps; who lifts what stands in the list of lifts. [mm]"""
    found: dict[str, list[int]] = defaultdict(list)
    for step in plan.steps:
        for said in step.cautions:
            if not (said.startswith(LIFTING) and said.endswith(LISTED)):
                found[said].append(step.number)
    made = [heading("What can hurt, and in which steps", wide)]
    shape = (Column("", 1.0),)
    for said, steps in found.items():
        made += row(shape, (f"{said} Steps {numbers(steps)}.",), wide)
    return made
