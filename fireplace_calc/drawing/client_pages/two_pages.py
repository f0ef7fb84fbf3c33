"""The two pages that a client is given: the chosen fireplace large, and what there is beside it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from math import atan, degrees, radians, tan

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.client_pages.leaf import (
    LEADING,
    POINT,
    RULE,
    SOFT,
    Leaf,
    Stroke,
    broken,
    measured,
)
from fireplace_calc.drawing.papers.full_papers import paper
from fireplace_calc.report.for_client.handed_over import Names
from fireplace_calc.report.for_client.three_sentences import client_cautions, client_sentences
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.sentences import require_units
from fireplace_calc.scene.eyes import ASPECT
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.still.option_pictures import one_standpoint, option_picture
from fireplace_calc.takeoff.cost import Price

Pictures = Callable[[Assessment, Standpoint, int, int], bytes]
"""Makes the picture of a design from a standpoint, so many dots wide and high."""
OTHER_EYES = ("Seated", "Corner", "Close")
"""Seen from here where there is no other option."""
SMALL, TEXT, LARGE, TITLE = 0.74, 1.0, 1.28, 2.2
"""The one scale of letters, over the size of the text. [-]"""
LETTERS = 10.6
"""Size of the text on letter and A4, in points. [-]"""
BASIS = 297.0
"""Width of the paper for which that is. [mm]"""
ACROSS = 3
"""Other options in a row. [-]"""
UNDER = 1.4
"""Between a small picture and its words. [mm]"""
LOWEST = 0.36
"""No small picture is lower than that, over its width. [-]"""
DOTS = 5.0
"""Dots of a picture to a millimeter of paper. [1/mm]"""


@dataclass(frozen=True, slots=True)
class Option:
    """A design and what it is called."""

    name: str
    result: Assessment


@dataclass(frozen=True, slots=True)
class _Plan:
    """What both pages go by: margins, letters, words."""

    wide: float
    high: float
    units: str
    priced: Mapping[str, Price] | None
    pictures: Pictures

    @property
    def letters(self) -> float:
        return LETTERS * self.wide / BASIS if self.wide > 1.2 * BASIS else LETTERS

    @property
    def margin(self) -> float:
        return 0.056 * self.wide

    def size(self, step: float) -> float:
        return self.letters * step


def still_png(result: Assessment, standpoint: Standpoint, width: int, height: int) -> bytes:
    """The picture of a design without a page that lights it."""
    return option_picture(result, standpoint, width, height).jpeg


def client_pages(
    chosen: Option,
    others: Sequence[Option] = (),
    names: Names | None = None,
    units: str = FEET_INCHES,
    size: str | None = None,
    priced: Mapping[str, Price] | None = None,
    pictures: Pictures = still_png,
) -> tuple[Leaf, Leaf]:
    """Two pages in color.

    Parameters
    ----------
    chosen : Option
        Shown large.
    others : sequence of Option
        Shown small on the second page; without any the chosen one is seen from elsewhere there.
    names : Names, optional
        Client, designer and mark.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str, optional
        One of ``full_papers.PAPERS``; the one usual for the units when left out.
    priced : mapping, optional
        Price list by item; else the example list, which is invented.
    pictures : callable
        Makes each picture.

    Returns
    -------
    tuple of Leaf

    Raises
    ------
    InputError
        When there is no such paper or unit system.
    """
    wide, high = paper(require_units(units), size)
    plan = _Plan(wide, high, units, priced, pictures)
    names = names or Names()
    eye = one_standpoint([chosen.result, *(one.result for one in others)])
    return _first(plan, chosen, names, eye), _second(plan, chosen, others, eye)


def widened(standpoint: Standpoint, aspect: float) -> Standpoint:
    """The same with as much seen from top to bottom in a picture that is wider, or less wide, for
    its height.

    Parameters
    ----------
    standpoint : Standpoint
    aspect : float
        Width over height. [-]
    """
    half = tan(radians(standpoint.angle) / 2) * aspect / ASPECT
    return replace(standpoint, angle=2 * degrees(atan(half)))


def _first(plan: _Plan, chosen: Option, names: Names, eye: Standpoint) -> Leaf:
    page, edge = Leaf(plan.wide, plan.high), plan.margin
    width = plan.wide - 2 * edge
    gap, left, middle = 0.03 * plan.wide, 0.27 * width, 0.42 * width
    _named(plan, page, chosen, names, (edge, 0.0, left))
    y = 0.0
    for sentence in client_sentences(chosen.result, plan.units):
        y = page.write(edge + left + gap, y, middle - gap, sentence, plan.size(TEXT)) + 1.2
    x, rest = edge + left + middle + gap, width - left - middle - gap
    words = option_words(chosen.result, plan.units, plan.priced)
    y = page.write(x, 0.0, rest, "Materials", plan.size(SMALL), color=SOFT)
    y = page.write(x, y, rest, words.price, plan.size(LARGE), "bold") + 0.8
    y = page.write(x, y, rest, words.without, plan.size(SMALL), color=SOFT) + 0.8
    page.write(x, y, rest, f"Low to high: {words.stands_on}", plan.size(SMALL), color=SOFT)
    # The words take what they need, the picture all the rest.
    tall = plan.high - 2 * edge - page.foot - plan.size(TEXT) * POINT
    page.lower(edge + tall + plan.size(TEXT) * POINT)
    _picture(plan, page, chosen, eye, (edge, edge, width, tall))
    return page


def _named(
    plan: _Plan, page: Leaf, chosen: Option, names: Names, at: tuple[float, float, float]
) -> None:
    """Title, client, designer with the mark, and the day."""
    x, y, width = at
    step = next((s for s in (TITLE, 1.75, 1.5) if _lines(plan, chosen.name, s, width) < 2), LARGE)
    y = page.write(x, y, width, chosen.name, plan.size(step)) + 0.8
    if names.client:
        y = page.write(x, y, width, f"for {names.client}", plan.size(LARGE), "italic")
    page.rule(x, y + 1.6, 0.35 * width)
    y += 3.6
    mark = 1.9 * plan.size(TITLE) * POINT
    aside = _mark(plan, page, names, (x, y, mark))
    if names.designer:
        y = page.write(x + aside, y, width - aside, names.designer, plan.size(TEXT))
    invented = " Invented example." if "invented" in chosen.result.design.note.lower() else ""
    said = f"{date.today().isoformat()}. A plan, to be checked on site.{invented} {made_by()}"
    page.write(x + aside, y, width - aside, said, plan.size(SMALL), color=SOFT)


def _lines(plan: _Plan, text: str, step: float, width: float) -> int:
    return len(broken(text, plan.size(step), width))


def _mark(plan: _Plan, page: Leaf, names: Names, at: tuple[float, float, float]) -> float:
    """The designer's mark, or his initials in a ring; gives how much room it takes. [mm]"""
    x, y, side = at
    if names.mark:
        page.show(x, y, side, side, names.mark)
    elif names.initials:
        page.strokes.append(Stroke((x, y), (x + side, y + side), 0.35, RULE, ring=True))
        size = plan.size(LARGE)
        page.write(
            x + (side - measured(names.initials, size)) / 2,
            y + (side - LEADING * size * POINT) / 2,
            side,
            names.initials,
            size,
        )
    else:
        return 0.0
    return side + 3.0


def _second(plan: _Plan, chosen: Option, others: Sequence[Option], eye: Standpoint) -> Leaf:
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
    for caution in client_cautions(plan.units):
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


def _picture(
    plan: _Plan,
    page: Leaf,
    one: Option,
    eye: Standpoint,
    at: tuple[float, float, float, float],
) -> None:
    x, y, width, height = at
    seen = widened(eye, width / height)
    dots = DOTS * min(1.0, BASIS / plan.wide)
    made = plan.pictures(one.result, seen, round(width * dots), round(height * dots))
    page.show(x, y, width, height, made)


def _beside(
    plan: _Plan,
    page: Leaf,
    others: Sequence[Option],
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
        _picture(plan, page, one, eye, (x, y, each, tall))
        for line in leaf.words:
            page.words.append(replace(line, x=line.x + x, y=line.y + y + tall + UNDER))


def _under(plan: _Plan, one: Option, width: float, step: float, head: float) -> Leaf:
    """What stands under a small picture, from the upper left corner on."""
    leaf = Leaf(width, plan.high)
    words = option_words(one.result, plan.units, plan.priced)
    y = leaf.write(0, 0, width, one.name, plan.size(head))
    y = leaf.write(0, y, width, f"Materials {words.price}", plan.size(step), "bold") + 0.5
    for sentence in client_sentences(one.result, plan.units):
        y = leaf.write(0, y, width, sentence, plan.size(step)) + 0.4
    return leaf


def _elsewhere(plan: _Plan, page: Leaf, chosen: Option, at: tuple[float, float, float]) -> None:
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
        _picture(plan, page, chosen, eye, (left, top, across, high))
        page.write(left, top + high + 1.0, across, name, plan.size(SMALL), "italic", SOFT)
