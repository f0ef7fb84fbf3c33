"""Where a slider stops, if it is to stop at something: at a guide, at whole courses of the brick in
the face, at the sizes of a set. Every stop says why it is one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import isclose
from typing import TYPE_CHECKING

from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.units import InputError
from fireplace_calc.brickwork.unit import facing_brick
from fireplace_calc.editing.sets.piece_sets import find_set, shipped_sets
from fireplace_calc.pieces.choice import heads_of
from fireplace_calc.proportion.figures import proportion_figures, published_openings, shapes
from fireplace_calc.proportion.guide import GOLDEN
from fireplace_calc.proportion.wall_guides import shelf_top, wall_ends, wall_top
from fireplace_calc.proportion.widths import suited_widths

if TYPE_CHECKING:
    from fireplace_calc.geometry.parts import Geometry

WIDTH, HEIGHT = "opening.width", "opening.standard_height"
EXTENSION, HEARTH = "opening.extension", "base.hearth_level"
GUIDES, COURSES, SET_SIZES = "guides", "whole courses", "sizes of a set"
SNAPS = (GUIDES, COURSES, SET_SIZES)
"""What a slider may stop at."""
SAME = 1e-6
"""Stops this close are one. [m]"""


@dataclass(frozen=True, slots=True)
class SliderStop:
    """One place where a slider stops.

    Attributes
    ----------
    at : float
        Value of the input. [m]
    why : str
        What it agrees with there.
    """

    at: float
    why: str


def slider_stops(geometry: Geometry, key: str, kinds: Sequence[str]) -> tuple[SliderStop, ...]:
    """Every place where a slider stops, the other inputs as they stand.

    Parameters
    ----------
    geometry : Geometry
    key : str
        Of the input: width, standard height, extension or hearth level.
    kinds : sequence of str
        Of ``SNAPS``; none has no stops.

    Returns
    -------
    tuple of SliderStop
        In rising order, within the input's range; several at one place are one, with every reason.

    Raises
    ------
    InputError
        For a kind that is none.
    """
    for kind in kinds:
        if kind not in SNAPS:
            raise InputError(
                f"A slider may stop at {', '.join(SNAPS)}; {kind!r} is none of these.",
                "Stops of a slider",
                ", ".join(SNAPS),
                kind,
            )
    record, _, name = key.partition(".")
    spec = inputs_of(getattr(geometry.design, record))[name]
    low, high = spec.ends
    asked = (stop for kind in kinds for stop in _STOPS[kind](geometry, key))
    found: list[SliderStop] = []
    for stop in sorted(asked, key=lambda stop: stop.at):
        if found and isclose(stop.at, found[-1].at, abs_tol=SAME):
            found[-1] = SliderStop(found[-1].at, f"{found[-1].why}; {stop.why}")
        elif low <= stop.at <= high:
            found.append(stop)
    return tuple(found)


def snapped(geometry: Geometry, key: str, value: float, kinds: Sequence[str]) -> SliderStop:
    """The stop nearest to where a hand has moved a slider; where there is none, that place itself.

    Parameters
    ----------
    geometry : Geometry
        Before the slider was moved.
    key : str
        Of the input.
    value : float
        Where the hand is. [m]
    kinds : sequence of str
        Of ``SNAPS``.

    Returns
    -------
    SliderStop
        With an empty reason where nothing is there to stop at.
    """
    stops = slider_stops(geometry, key, kinds)
    return min(stops, key=lambda s: abs(s.at - value), default=SliderStop(value, ""))


def _guides(geometry: Geometry, key: str) -> Iterator[SliderStop]:
    """Where a guide agrees to the dot."""
    opening = geometry.design.opening
    if key == WIDTH:
        for row in published_openings():
            yield SliderStop(row.width, f"width of row {row.row} in the old table")
        for name, ratio in _ratios():
            yield SliderStop(opening.clear_height * ratio, name)
        house, cornered = geometry.design.house, geometry.design.breast.cornered
        widths = suited_widths(house.room_length, house.room_width, cornered)
        for end, word in ((widths.low, "least"), (widths.high, "largest")):
            if end is not None:
                yield SliderStop(end, f"{word} width the table gives for the room")
        if house.room_length is not None and not cornered:
            beside = 2 * geometry.frame.block_half - opening.width
            third = 2 * wall_ends(geometry) / 3
            yield SliderStop(third - beside, "breast a third of the wall")
    elif key in (HEIGHT, EXTENSION):
        rest = opening.clear_height - getattr(opening, key.partition(".")[2])
        for height, why in _heights(opening.width):
            yield SliderStop(height - rest, why)
    elif key == HEARTH:
        name, level = shelf_top(geometry)
        rest, top = level - geometry.design.base.hearth_level, wall_top(geometry)
        part = 1 / shapes()[GOLDEN]
        head = proportion_figures()["door head"][0]
        yield SliderStop(head - rest, f"top of the {name} in line with the door heads")
        for share in (1 - part, part):
            yield SliderStop(share * top - rest, f"top of the {name} at the {GOLDEN} of the wall")


def _ratios() -> Iterator[tuple[str, float]]:
    """Named rectangles, lying and upright: width over height. [-]"""
    for name, ratio in shapes().items():
        yield name, ratio
        if ratio > 1:
            yield f"{name} upright", 1 / ratio


def _heights(width: float) -> Iterator[tuple[float, str]]:
    """Heights of an opening so wide that a guide agrees with. [m]"""
    for name, ratio in _ratios():
        yield width / ratio, name
    for row in published_openings():
        if isclose(row.width, width, abs_tol=SAME):
            yield row.height, f"height of row {row.row} in the old table"
    figures = proportion_figures()
    yield figures["lowest opening for tending the fire"][0], "lowest for tending the fire"
    yield figures["highest opening as a rule"][0], "highest as a rule"


def _courses(geometry: Geometry, key: str) -> Iterator[SliderStop]:
    """Whole courses from the hearth, and whole bricks across: an opening is so many bricks with
    their joints and one joint more, as setting-out tables have it (common practice). Nothing where
    the face is not brick.
    """
    design = geometry.design
    if design.surround.face != "brick":
        return
    unit, opening = facing_brick(design), design.opening
    spec = inputs_of(getattr(design, key.partition(".")[0]))[key.partition(".")[2]]
    most = spec.bounds[1] + opening.height
    if key == WIDTH:
        half = (unit.length + unit.joint) / 2
        for n in range(1, int(most / half) + 1):
            whole = f"{n // 2 or ''}{' ' if n > 1 and n % 2 else ''}{'1/2' if n % 2 else ''}"
            bricks = "brick" if n <= 2 else "bricks"
            yield SliderStop(n * half + unit.joint, f"{whole} {bricks} wide")
        return
    rest = opening.height - getattr(opening, key.partition(".")[2]) if key != HEARTH else 0.0
    over = "hearth" if key != HEARTH else "floor"
    for n in range(int(most / unit.course) + 1):
        why = f"{_courses_of(n)} over the {over}" if n else f"level with the {over}"
        yield SliderStop(n * unit.course - rest, why)


def _courses_of(n: int, of: str = "") -> str:
    """So many courses, in words."""
    return f"{n or 'no'} {of}{'course' if n == 1 else 'courses'}"


def _set_sizes(geometry: Geometry, key: str) -> Iterator[SliderStop]:
    """Sizes of the design's set, or, where it has none, of all sets that came with the workbook."""
    from fireplace_calc.geometry.from_set.set_up import raises_of, width_of

    design = geometry.design
    own, asked = design.piece_set, design.opening
    sets = {design.pieces.set: own} if own else {name: find_set(name) for name in shipped_sets()}
    for name, made in sets.items():
        heads = heads_of(made)
        head = asked.head if asked.head in heads or not heads else heads[0]
        wide = [width_of(made, k, head) for k in range(len(made.widths))]
        if key == WIDTH:
            for width, size in zip(made.widths, wide, strict=True):
                yield SliderStop(size, f"{width.name} of the set {name}")
        elif key == EXTENSION:
            near = min(range(len(wide)), key=lambda k: abs(wide[k] - asked.width))
            for n, raised in enumerate(raises_of(made, near, head)):
                yield SliderStop(raised, f"{_courses_of(n, 'extension ')} of the set {name}")


_STOPS: dict[str, Callable[[Geometry, str], Iterator[SliderStop]]] = {
    GUIDES: _guides,
    COURSES: _courses,
    SET_SIZES: _set_sizes,
}
