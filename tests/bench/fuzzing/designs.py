"""Random designs through change, load and assess: nothing but the package's own error, and sound
figures.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from random import Random
from typing import Any

import numpy as np

from fireplace_calc import PACKS, change
from fireplace_calc.assessment import assess, assess_all
from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.solids import Cylinder, Loft
from fireplace_calc.report.plain_summary import summary
from fuzzing.chance import BAD, chance, random_design, stepped, value

QUIET = (str, int, bool, type(None))
DEEPEST = 8
"""Records inside records are followed so far. [-]"""
BEYOND = (".index_one", ".index_two")
"""Lifting indices: without end where the hands do not reach; the papers say so in words, and are
looked at there.
"""
NOT_A_NUMBER = re.compile(r"(?<![a-z])(?:nan|inf|-inf|infinity)(?![a-z])", re.IGNORECASE)


class Unsound(AssertionError):
    """What must hold does not; the first words name the family."""


def sure(holds: bool, family: str, detail: object = "") -> None:
    """Complain unless it holds."""
    if not holds:
        raise Unsound(f"{family}: {detail}")


def unsound_numbers(thing: Any, at: str = "", depth: int = 0) -> Iterator[tuple[str, Any]]:
    """Every number of a record that is none, with where it stands; arrays of numpy too."""
    kind = thing.__class__
    if kind is float:
        if not math.isfinite(thing):
            yield at, thing
    elif kind in QUIET:
        return
    elif isinstance(thing, (np.ndarray, np.generic)):
        if thing.dtype.kind == "f" and not np.isfinite(thing).all():
            yield at, thing
    elif isinstance(thing, dict):
        for key, inner in thing.items():
            yield from unsound_numbers(inner, f"{at}.{key}", depth + 1)
    elif isinstance(thing, (tuple, list)):
        names = getattr(thing, "_fields", None) or range(len(thing))
        for name, inner in zip(names, thing, strict=True):
            if inner.__class__ not in QUIET:
                yield from unsound_numbers(inner, f"{at}.{name}", depth + 1)
    elif is_dataclass(thing) and depth < DEEPEST:
        for f in fields(thing):
            if f.name not in ("design", "geometry", "frame"):
                yield from unsound_numbers(getattr(thing, f.name), f"{at}.{f.name}", depth + 1)


def finite(thing: Any, name: str) -> None:
    """No nan and no infinity in anything a reader sees."""
    for at, number in unsound_numbers(thing, name):
        family = re.sub(r"[.][0-9]+", "", at)
        sure(at.endswith(BEYOND), f"not finite {family}", f"{at} = {number}")


def extent(solid: Any) -> tuple[float, float, float, float, float, float]:
    """Box round a solid: left, right, front, back, bottom, top. [m]"""
    if isinstance(solid, Loft):
        xs, ys = zip(*solid.lower, *solid.upper, strict=True)
        return min(xs), max(xs), min(ys), max(ys), solid.bottom, solid.top
    if isinstance(solid, Cylinder):
        (x, y), r = solid.center, solid.radius
        return (
            min(x, x + solid.shift) - r,
            max(x, x + solid.shift) + r,
            y - r,
            y + r,
            solid.bottom,
            solid.top,
        )
    if isinstance(solid, ArchVoid):
        return -solid.span / 2, solid.span / 2, 0.0, solid.thickness, solid.bottom, solid.top
    assert isinstance(solid, ArchRing)
    reach = (solid.radius + solid.depth) * math.sin(solid.half_angle)
    return -reach, reach, 0.0, solid.thickness, solid.bottom, solid.top


def solid_and_closed(made: Any) -> None:
    """No negative volume, parts and air add up to the block, and each lies inside it."""
    block = list(zip(*(extent(s) for s in made.outer.adds), strict=True))
    least, most = [min(axis) for axis in block[::2]], [max(axis) for axis in block[1::2]]
    for part in (*made.parts, *made.voids):
        sure(
            part.volume >= 0 and part.volume > -1e-12,
            f"negative volume of {part.name}",
            part.volume,
        )
        for solid in part.adds:
            sure(
                solid.top >= solid.bottom and solid.volume >= 0,
                f"negative solid in {part.name}",
                solid,
            )
            box = extent(solid)
            sure(
                all(low >= a - 1e-6 for low, a in zip(box[::2], least, strict=True))
                and all(high <= b + 1e-6 for high, b in zip(box[1::2], most, strict=True)),
                f"{part.name} stands out of the block",
                box,
            )
    total = sum(p.volume for p in (*made.parts, *made.voids))
    sure(
        abs(total - made.outer.volume) <= 1e-6 * made.outer.volume,
        "parts and air do not add up",
        (total, made.outer.volume),
    )


def apart(made: Any, number: int) -> None:
    """At a few levels no two parts share a place: the polygon booleans of shapely, which know
    nothing of our volumes.
    """
    from shapely.geometry import Polygon
    from shapely.ops import unary_union

    levels = sorted({z for p in made.parts for s in p.adds for z in (s.bottom, s.top)})
    for low, high in list(zip(levels, levels[1:], strict=False))[number // 40 % 3 :: 3]:
        whole = []
        for part in (*made.parts, *made.voids):
            adds, cuts = part.plan(low + 0.37 * (high - low))
            whole.append(
                unary_union([Polygon(p).buffer(0) for p in adds]).difference(
                    unary_union([Polygon(p).buffer(0) for p in cuts])
                )
            )
        shared = sum(shape.area for shape in whole) - unary_union(whole).area
        sure(
            shared < 1e-5 * max(sum(shape.area for shape in whole), 0.1),
            "two parts share a place",
            (low, high, shared),
        )


def sound(design: Design, number: int) -> None:
    """Everything that must hold of one design; the dear parts only for some numbers."""
    packs = sorted(PACKS)
    result = assess(design, packs[number % len(packs)])
    solid_and_closed(result.geometry)
    finite(result.findings, "findings")
    finite(result.takeoff, "takeoff")
    finite(result.levels, "levels")
    sure(math.isfinite(result.weight) and result.weight > 0, "weight", result.weight)
    for row in result.takeoff:
        sure(
            row.net >= 0 and row.order >= row.net - 1e-9,
            f"negative or short order of {row.item}",
            row,
        )
    for name, found in assess_all(design).items() if number % 3 == 0 else ():
        finite(found, f"findings of {name}")
    if number % 5 == 0:
        sure(load_text(text_of(design)) == design, "a design file reads back otherwise")
    if number % 3 == 0:
        finite(result.draft, "draft")
        finite(result.judgement, "judgement")
    if number % 4 == 0:
        finite(result.structure, "structure")
    if number % 40 == 0:
        apart(result.geometry, number)
    if number % 7 == 0:
        finite(result.work, "order of work")
    if number % 50 == 0:
        finite(result.odds, "odds")
    if number % 25 == 0:
        said = (
            summary(result, SYSTEMS[number % 2]).replace(design.name, "").replace(design.note, "")
        )
        sure(not NOT_A_NUMBER.search(said), "summary says nan or inf", NOT_A_NUMBER.search(said))


def by_hand(dice: Random) -> Design:
    """A record made without any door: a value of the right kind, or a bad one, straight into its
    field.
    """
    design, bad = Design(), 0.3 if dice.random() < 0.4 else 0.0
    for key in dice.sample(sorted(key for key in all_inputs() if "." in key), dice.randint(1, 6)):
        group, _, name = key.partition(".")
        record = getattr(design, group)
        spec = inputs_of(record)[name]
        given: Any = dice.choice(BAD) if dice.random() < bad else spec.default
        if isinstance(given, float) and spec.low is not None and dice.random() < 0.8:
            given = (
                dice.uniform(-2, 40) if dice.random() < bad else dice.uniform(spec.low, spec.high)
            )
        design = replace(design, **{group: replace(record, **{name: given})})
    return design


def try_one(seed: str, number: int) -> str:
    """One design; returns how it ended. Anything but the package's own error comes out."""
    dice = chance(seed, number)
    if number % 10 == 9:
        key = dice.choice(
            [
                *all_inputs(),
                "surround.trim",
                "roof.nearby",
                "no.such",
                "",
                ".",
                "opening",
                "site..place",
            ]
        )
        try:
            changed = change(random_design(seed, number), {key: dice.choice(BAD)})
        except InputError:
            return "refused"
        sound(changed, number)
        return "taken"
    if number % 10 == 8:
        try:
            sound(by_hand(dice), number)
        except InputError:
            return "refused"
        except Unsound as wrong:
            raise Unsound(f"by hand, {wrong}") from wrong
        except Exception as wrong:
            raise Unsound(f"by hand, {type(wrong).__name__}: {wrong}") from wrong
        return "made by hand"
    design = random_design(seed, number)
    spec = all_inputs()
    for _ in range(3):
        key = dice.choice(sorted(spec))
        design = stepped(design, {key: value(dice, spec[key])})
    sound(design, number)
    return "assessed"
