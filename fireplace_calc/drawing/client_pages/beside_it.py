"""The second page for a client: the other options, what to know, what is still to settle."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fireplace_calc.drawing.client_pages.leaf import LEADING, POINT, SOFT, Leaf, broken
from fireplace_calc.drawing.client_pages.page_plan import (
    LARGE,
    SMALL,
    TEXT,
    NamedDesign,
    PagePlan,
    lay_picture,
)
from fireplace_calc.report.for_client.three_sentences import client_cautions, client_sentences
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.scene.eyes import ASPECT
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.still.option_pictures import one_standpoint

OTHER_EYES = ("Seated", "Corner", "Close")
"""Seen from here where there is no other option."""
ACROSS = 3
"""Other options in a row. [-]"""
UNDER = 1.4
"""Between a small picture and its words. [mm]"""
LOWEST = 0.36
"""Smaller letters are tried where pictures would be lower than that, over their width. [-]"""


def second_page(
    plan: PagePlan, chosen: NamedDesign, others: Sequence[NamedDesign], eye: Standpoint
) -> Leaf:
    """What there is beside the chosen one, what to know, and what is still to settle."""
    page, edge = Leaf(plan.wide, plan.high), plan.margin
    width, gap = plan.wide - 2 * edge, 0.028 * plan.wide
    side = 0.29 * width
    main = width - side - gap
    if others:
        _beside(plan, page, others, eye, (edge, edge, main))
    else:
        _elsewhere(plan, page, chosen, (edge, edge, main))
    x = edge + main + gap
    words = option_words(chosen.result, plan.units, plan.priced)
    y = page.write(x, edge, side, "Good to know", plan.size(LARGE)) + 0.8
    for caution in client_cautions(plan.units, chosen.result.pack):
        y = page.write(x, y, side, caution, plan.size(SMALL) * 1.12) + 1.3
    page.rule(x, y + 0.6, 0.3 * side)
    y = page.write(x, y + 2.4, side, f"{chosen.name}, still to settle", plan.size(LARGE)) + 0.8
    y = page.write(x, y, side, f"{words.headline}.", plan.size(SMALL) * 1.12, "bold") + 0.8
    low, row = plan.high - edge, LEADING * plan.size(SMALL) * POINT
    for number, line in enumerate(words.short):
        left = len(words.short) - number
        if y + row * (len(broken(line, plan.size(SMALL), side)) + (left > 1)) > low - 2 * row:
            y = page.write(x, y, side, f"and {left} more, on the check sheet.", plan.size(SMALL))
            break
        y = page.write(x, y, side, line, plan.size(SMALL)) + 0.4
    page.write(x, y + 0.6, side, f"{words.draft} {words.weight} as it stands.", plan.size(SMALL))
    return page


def _beside(
    plan: PagePlan,
    page: Leaf,
    others: Sequence[NamedDesign],
    eye: Standpoint,
    at: tuple[float, float, float],
) -> None:
    """The other options in rows, all from the standpoint of the first page."""
    x0, y0, width = at
    gap = 0.022 * plan.wide
    across = min(max(len(others), 2), ACROSS)
    each, down = (width - (across - 1) * gap) / across, 2 if len(others) > ACROSS else 1
    room = (plan.high - 2 * plan.margin - (down - 1) * gap) / down
    shown = others[: 2 * ACROSS]
    steps = (SMALL, 0.67) if down > 1 else (TEXT * 0.92, SMALL)
    for step in steps:
        under = [_under(plan, one, each, step, TEXT if down > 1 else LARGE) for one in shown]
        # One height for all pictures, so that one scale is kept.
        tall = min(each / ASPECT, room - max(leaf.foot for leaf in under) - UNDER)
        if tall > LOWEST * each:
            break
    for number, (one, leaf) in enumerate(zip(shown, under, strict=True)):
        x, y = x0 + number % across * (each + gap), y0 + number // across * (room + gap)
        lay_picture(plan, page, one, eye, (x, y, each, tall))
        for line in leaf.words:
            page.words.append(replace(line, x=line.x + x, y=line.y + y + tall + UNDER))


def _under(plan: PagePlan, one: NamedDesign, width: float, step: float, head: float) -> Leaf:
    """What stands under a small picture, from the upper left corner on."""
    leaf = Leaf(width, plan.high)
    words = option_words(one.result, plan.units, plan.priced)
    y = leaf.write(0, 0, width, one.name, plan.size(head))
    y = leaf.write(0, y, width, f"Materials {words.price}", plan.size(step), "bold") + 0.5
    for sentence in client_sentences(one.result, plan.units):
        y = leaf.write(0, y, width, sentence, plan.size(step)) + 0.4
    return leaf


def _elsewhere(
    plan: PagePlan, page: Leaf, chosen: NamedDesign, at: tuple[float, float, float]
) -> None:
    """The chosen one from a chair, from the corner and close by."""
    x, y, width = at
    gap = 0.02 * plan.wide
    room = plan.high - 2 * plan.margin
    label = LEADING * plan.size(SMALL) * POINT + 1.0
    tall = 0.56 * room - label
    half = (width - gap) / 2
    low = room - tall - 2 * label - gap
    for name, left, top, across, high in (
        (OTHER_EYES[0], x, y, width, tall),
        (OTHER_EYES[1], x, y + tall + label + gap, half, low),
        (OTHER_EYES[2], x + half + gap, y + tall + label + gap, half, low),
    ):
        eye = one_standpoint([chosen.result], name)
        lay_picture(plan, page, chosen, eye, (left, top, across, high))
        page.write(left, top + high + 1.0, across, name, plan.size(SMALL), "italic", SOFT)
