"""What is built and laid in a few figures each: parts, mantels, sets, cast pieces, courses, cuts, of invented designs that
are drawn from a seed.

Whoever changes what is built on purpose looks at it and writes the figures anew: ``.venv/bin/python tests/as_built.py``; the
change stands in ``tests/pins/as_built.csv`` then, a row for each design and what of it.
"""

import dataclasses
import sys
import tomllib
from collections.abc import Mapping, Set
from functools import cache
from random import Random
from zlib import crc32

import numpy as np
from by_lot import by_lot
from held_figures import held, hold
from manifold3d import CrossSection, Manifold
from set_strategies import random_set, stood, text
from test_pieces_misfits import KINDS, written
from test_pieces_random import designed

from fireplace_calc import change
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, InputError
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.arch_ring import laid_arch, voussoirs
from fireplace_calc.brickwork.courses import course_list, odd_courses
from fireplace_calc.brickwork.cutting.bevel_cuts import bevels
from fireplace_calc.brickwork.cutting.cut_marks import cut_list_of
from fireplace_calc.brickwork.cutting.set_arch import arch_setting
from fireplace_calc.brickwork.seen.breast_seen import (
    behind_seat,
    breast_shown,
    hearth_fronts,
    returns,
)
from fireplace_calc.brickwork.seen.coursing_of_face import (
    bonded_units,
    course_heads,
    coursed_face,
    face_joint_widths,
)
from fireplace_calc.brickwork.seen.lining_courses import section_joints
from fireplace_calc.brickwork.seen.stone_face import stone_joints, stones
from fireplace_calc.brickwork.work import count_bricks, split_brick, usual_joint
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import STONE_BONDS
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.clash import clash
from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.geometry.assembled.joints import seam
from fireplace_calc.geometry.assembled.lowering import covers, laps_over
from fireplace_calc.geometry.assembled.readings import lined, read_off
from fireplace_calc.geometry.assembled.sections import contact_area
from fireplace_calc.geometry.assembled.solids import extent, piece_volume, piece_weight
from fireplace_calc.geometry.assembled.volumes import (
    beds,
    nests,
    perpends,
    socket_room,
    tongue_volume,
)
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.casting.cutting import cut_into_pieces
from fireplace_calc.geometry.casting.wish import CastingWish
from fireplace_calc.geometry.first_moments import moments
from fireplace_calc.geometry.from_set.mortar_beds import bed_rings, joint_rings, joints_in_bed
from fireplace_calc.geometry.from_set.standing_solids import stood_apart
from fireplace_calc.geometry.in_room.cut_corner import corner_of
from fireplace_calc.geometry.mantel.on_face import mantel_parts, shelf_board, trim_boxes, trim_steps
from fireplace_calc.geometry.mesh import meshes
from fireplace_calc.geometry.visible.faces import bed_faces, piece_faces
from fireplace_calc.geometry.visible.viewpoint import CORNER, FRONT, SECTION
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.set_text import read_set

FIGURES = ("count", "sum", "weighed", "size")
UNKNOWN, ENDLESS = -77.7, 7777.7
"""What stands for nothing told, and for a length without end."""
HUGE = 1e300
"""No number that is told is as large. [-]"""
OWN = {
    "mantel.family": ("shelf", "beam on corbels", "pilasters and frieze", "paneled overmantel"),
    "opening.head": ("straight", "segmental"),
    "method": ("laid", "laid", "modular"),
    "breast.place": ("in a wall", "across a corner"),
}
"""Of these every value is as likely."""
LEAVE = ("pieces", "job", "prices", "site", "name", "note", "measured", "work")
"""Inputs that move nothing that is built."""


# -- designs ---------------------------------------------------------------------------------------
def drawn(seed):
    """A design of random answers."""
    return by_lot(seed, LEAVE, lambda key: 0.9 if key in OWN else 0.35, _answer)


def _answer(key, spec, lot):
    if key in OWN:
        return lot.choice(OWN[key])
    if spec.kind == "choice":
        return lot.choice(spec.choices)
    if spec.kind == "yes-no":
        return lot.random() < 0.5
    if spec.kind == "count":
        return lot.randint(int(spec.low), min(int(spec.high), int(spec.low) + 30))
    if spec.kind == "length" and spec.default:
        return f"{round(spec.default * lot.uniform(0.6, 1.6) / INCH * 8) / 8} in"
    if spec.kind == "length":
        return f"{round(lot.uniform(max(spec.low, 0.0), min(spec.high, 0.5)) / INCH * 8) / 8} in"
    raise InputError("Left as it is.")


SETS = ("small", "middling", "wide")


def with_a_set(seed):
    """A design on one of the sets that ship, whatever of it can be chosen drawn by lot."""
    lot = Random(f"set {seed}")
    design = change(Design(), {"pieces.set": SETS[seed % 3], "flue.sections": lot.randint(12, 24)})
    for told in (
        {"opening.head": lot.choice(("straight", "segmental"))},
        {"pieces.gap": f"{lot.randint(0, 8) / 8} in"},
        {"pieces.facing": lot.choice(("0 in", "3-5/8 in", "7-5/8 in"))},
        {"pieces.around": f"{lot.randint(4, 10)} in"},
        {"opening.extension": f"{lot.randint(0, 14)} in"},
        {"base.hearth_level": f"{lot.randint(0, 18)} in"},
        {"breast.form": lot.choice(("shouldered", "straight", "flush"))},
        {"mantel.family": lot.choice(OWN["mantel.family"])},
        {"base.core": lot.choice(("hollow", "grouted"))},
        {"pieces.facing_head": lot.choice(("steel angle", "brick arch"))},
    ):
        try:
            design = change(design, told)
        except InputError:
            continue
        except KeyError:
            continue
    return design


def with_a_second_flue(seed):
    """A design with a flue beside the first, from the hearth of another fireplace or from a cellar."""
    lot, design = Random(f"second {seed}"), drawn(100 + seed)
    for told in (
        {"breast.place": "in a wall"},
        {"base.hearth_level": f"{lot.randint(0, 40)} in"},
        {"second_flue.serves": "fireplace"},
        {"second_flue.side": lot.choice(("left", "right"))},
        {"second_flue.start": f"{lot.choice((-30, -12, 0, 24, 60))} in"},
        {"second_flue.size": lot.choice(("8x8", "8x12", "12x12"))},
        {"second_flue.top": f"{lot.randint(-2, 6)} in"},
    ):
        try:
            design = change(design, told)
        except InputError:
            continue
    return design


def on_a_random_set(seed):
    """A design that stands on a random set; one of these seeds leaves no input's range."""
    return designed(dataclasses.replace(random_set(seed), lining=seed % 2))


DESIGNS = (
    {f"design {n}": (drawn, n) for n in range(28)}
    | {f"set {n}": (with_a_set, n) for n in range(9)}
    | {f"second flue {n}": (with_a_second_flue, n) for n in range(10)}
    | {f"design on random set {n}": (on_a_random_set, n) for n in (2, 6, 8, 13, 15, 16, 20, 22)}
)


@cache
def geometry_of(name):
    make, seed = DESIGNS[name]
    return build_geometry(make(seed))


# -- figures ---------------------------------------------------------------------------------------
def _ring(thing):
    return (
        len(thing) > 2
        and all(isinstance(p, tuple) and len(p) == 2 for p in thing)
        and all(isinstance(v, (float, int)) for p in thing for v in p)
    )


def _numbers(thing):
    """Every number in something, wherever it stands; an outline by sums that do not ask where it begins."""
    if thing is None:
        yield UNKNOWN
    elif isinstance(thing, (bool, int, float, np.number)):
        value = float(thing)
        yield value if abs(value) < HUGE else ENDLESS
    elif isinstance(thing, str):
        yield crc32(thing.encode()) % 9973 / 997
    elif isinstance(thing, np.ndarray):
        yield from (float(thing.size), float(thing.sum()), float(np.abs(thing).sum()))
        yield float((thing * thing).sum())
        if thing.ndim > 1:
            yield from map(float, thing.reshape(-1, thing.shape[-1]).sum(axis=0))
    elif isinstance(thing, (tuple, list)) and _ring(thing):
        a = np.array(thing, float)
        b = np.roll(a, -1, axis=0)
        yield from (float(len(a)), *map(float, a.sum(axis=0)), *map(float, (a * a).sum(axis=0)))
        yield float((a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum())
    elif isinstance(thing, Mapping):
        for key, value in thing.items():
            yield from _numbers(key)
            yield from _numbers(value)
    elif isinstance(thing, Set):
        yield from _numbers(sorted(thing))
    elif dataclasses.is_dataclass(thing):
        for field in dataclasses.fields(thing):
            yield from _numbers(getattr(thing, field.name))
    elif hasattr(thing, "__iter__"):
        for one in thing:
            yield from _numbers(one)
    elif isinstance(thing, Manifold):
        yield from _numbers((thing.volume(), thing.surface_area(), *thing.bounding_box()))
    elif isinstance(thing, CrossSection):
        yield from _numbers((thing.area(), *thing.bounds()))
    elif callable(thing):
        yield from _numbers(getattr(thing, "__name__", ""))
    else:
        raise TypeError(type(thing))


def figures(thing):
    """How many numbers, their sum, the same weighed by where they stand, and how large they are."""
    found = np.fromiter(_numbers(thing), float)
    weights = 1.0 + (np.arange(1, len(found) + 1) * 0.6180339887498949) % 1.0
    return np.array([len(found), found.sum(), (weights * found).sum(), np.abs(found).sum()])


def _parts(made):
    for part in (*made.parts, *made.voids, made.outer):
        yield part
        yield moments(part)
        yield moments(part, (part.bottom + part.top) / 2) if part.volume > 1e-9 else ()
        yield sorted(map(len, part.section()))
        yield part.section()
        for share in (0.01, 0.3, 0.7):
            yield part.plan(part.bottom + share * (part.top - part.bottom))
    yield made.levels


def _mantel(made):
    yield [(p.name, p.material, p.burns, p.group, p.group.volume) for p in mantel_parts(made)]
    for part in mantel_parts(made):
        for run in part.group.runs:
            yield run.bounds, run.blocks, run.front, run.section
    yield [tuple(step) if isinstance(step, tuple) else step for step in trim_steps(made)]
    yield list(trim_boxes(made))
    yield shelf_board(made)


def _apart(made):
    """Pieces, beds and joints of a set, each where it stands."""
    if made.design.piece_set is None:
        return
    for one in stood_apart(made.design, made.frame.plate_bottom, lambda here: here[-1]):
        yield one.name, one.with_piece, one.at, one.body.volume()
        yield one.body.bounding_box()


def _corner(made):
    c = corner_of(made.design, made.frame)
    if c is None:
        return
    yield c, c.width, c.leg, c.corner, c.too_deep, c.deep(), c.deep(0.3)
    yield c.own(0.3, -1.2), c.fire(1.1, -0.4)
    yield from c.walls_before(c.wall - 0.2)


def _skins(made):
    for away in ("", "left half", "front half"):
        for skin in meshes(made, away):
            yield skin.name, skin.material, skin.volume
            yield [*map(float, skin.points.min(axis=0)), *map(float, skin.points.max(axis=0))]


def _laid(made):
    work = lay_brickwork(made)
    for layout in work.layouts:
        yield layout.face, layout.unit, layout.bond, layout.pieces, layout.note
        yield layout.shifted, layout.joint, layout.first, layout.closers, layout.left_out
        yield layout.whole, layout.cut, len(layout.slivers), layout.brick_area, layout.joint_area
        yield layout.edges
    yield count_bricks(work.layouts), work.cuts, work.slivers, work.lining_courses
    yield [coursing for coursing in (work.base, work.extension) if coursing]
    for course in work.block_courses:
        yield course.blocks, course.whole, course.lengths, course.areas
    yield usual_joint(made.design), split_brick(made), section_joints(made)


def _courses(made):
    yield course_list(made).all
    yield odd_courses(made, FEET_INCHES), odd_courses(made, MILLIMETRES)


def _cuts(made):
    cuts = cut_list_of(made)
    yield cuts
    yield [(b, b.fall, b.template, b.steep) for b in bevels(cuts)]
    setting = arch_setting(made)
    if setting:
        yield setting, setting.center, setting.skewback, setting.stations(3 * INCH)
        yield [setting.ordinate(x) for x in setting.stations(3 * INCH)]
        yield [(r.wedge, r.taper, r.depth, r.whole, r.tapered) for r in setting.rings]
        yield laid_arch(made)
        line = np.stack([np.linspace(-500, 500, 41), np.zeros(41)], 1)
        yield list(voussoirs(made, line, line + (0, 100)))


def _seen(made):
    top = made.design.house.ceiling
    for low, high in ((0.0, 0.5), (0.5, top), (0.0, top + 1.0), (top, top + 2.5)):
        yield breast_shown(made, low, high), behind_seat(made, low, high), returns(made, low)
    yield hearth_fronts(made)
    if made.design.surround.face in ("brick", "tile"):
        bond, joints = coursed_face(made), face_joint_widths(made)
        yield bond, joints, [course_heads(bond, row) for row in range(-2, 5)]
        yield bonded_units(bond, joints, 2, 4)


OF = {
    "parts": _parts,
    "mantel": _mantel,
    "corner": _corner,
    "apart": _apart,
    "skins": _skins,
    "bricks": _laid,
    "courses": _courses,
    "cuts": _cuts,
    "seen": _seen,
}
"""What of a design."""


def _frame(made):
    frame = made.frame
    yield frame
    yield [frame.half_at(y) for y in (0.0, 0.1, 0.3, 0.5)]
    yield [frame.back_at(z) for z in np.linspace(frame.slab_top, frame.throat, 5)]
    yield [frame.shift_at(z) for z in np.linspace(frame.flue_start, frame.liner_top, 5)]
    yield [frame.front_at(z) for z in np.linspace(0.0, frame.liner_top, 9)]


OF["frame"] = _frame


def of_set(seed):
    """A random set that stands: what is read off it, its mortar, and what is said when it is broken."""
    recipe = dataclasses.replace(random_set(seed), arch=seed % 5)
    made = stood(recipe)
    read = read_off(made)
    yield made.placed, made.tops, read, lined(read, None) if recipe.lining == 0 else ()
    for number, here in enumerate(made.by_lift):
        pieces = tuple(p.piece for p in here)
        yield perpends(pieces), [tongue_volume(p) for p in pieces], [socket_room(p) for p in pieces]
        yield beds(made, number), nests(made, number)


def of_pairs(seed):
    """Of a random set, piece by piece and pair by pair: what meets, covers, laps over and is seen."""
    made = stood(dataclasses.replace(random_set(seed), arch=seed % 5))
    for number, here in enumerate(made.by_lift):
        pieces = tuple(p.piece for p in here)
        below = tuple(p.piece for p in made.by_lift[number - 1]) if number else ()
        for one in pieces:
            yield extent(one), piece_volume(one), piece_weight(one)
            yield [
                (
                    covers(one, other),
                    laps_over(one, other, 0.01),
                    seam(one, other),
                    clash(one, other, 0.0),
                )
                for other in pieces
                if other is not one
            ]
            yield [(contact_area(one, other), covers(one, other)) for other in below]
            for eye in (FRONT, CORNER, SECTION)[: 1 + 2 * (number % 2)]:
                for face in (*piece_faces(one, eye), *bed_faces(one, below, 0.01, eye)):
                    yield (
                        face.outline.area(),
                        face.bounds,
                        face.plane,
                        face.normal,
                        face.kind,
                        face.cut,
                    )
        yield bed_rings(pieces[0], below), joint_rings(pieces, 0.3), joints_in_bed(pieces, below)


def of_broken(kind):
    """What is said of two random sets of which one thing is changed."""
    fixed = KINDS[kind][0]
    for seed in (0, 3):
        recipe = dataclasses.replace(random_set(seed), **fixed)
        raw = tomllib.loads(text(recipe))
        kind(raw)
        try:
            lifts = choose(
                read_set(written(raw)), Choice(extensions=recipe.extensions, flues=recipe.flues)
            )
            yield fit(as_wanted(lifts))
        except InputError as refused:
            yield str(refused)


def of_cast(seed):
    """The text of a set cast from a random design, or why it cannot be."""
    lot = Random(f"cast {seed}")
    design = Design()
    for told in (
        {"opening.width": f"{lot.randint(24, 60)} in"},
        {"opening.standard_height": f"{lot.randint(20, 40)} in"},
        {"firebox.depth": f"{lot.randint(16, 26)} in"},
        {"firebox.lining": lot.choice(("firebrick", "firebrick", "none"))},
        {"opening.extension": f"{lot.choice((0, 0, 2, 8, 14))} in"},
        {"throat.height": f"{lot.randint(6, 12)} in"},
        {"smoke_chamber.height": f"{lot.randint(22, 44)} in"},
        {"flue.size": lot.choice(("8x12", "12x12", "13x13", "12x16"))},
        {"flue.sections": lot.randint(6, 20)},
        {"flue.casing": f"{lot.choice((1, 2.5, 4))} in"},
    ):
        try:
            design = change(design, told)
        except InputError:
            continue
    units = lot.choice((FEET_INCHES, MILLIMETRES))
    for most in (25, 45, 70, 110, 180, 300):
        try:
            cast = cut_into_pieces(design, CastingWish(most=most, units=units))
        except InputError as refused:
            yield str(refused)
            continue
        yield cast.text.splitlines(), cast.choice, cast.said, cast.levels, cast.changes("own")


def of_stones(_):
    for bond in STONE_BONDS:
        ends = (-0.7, 0.9, -0.3, 1.2)
        yield sorted(tuple(map(float, ring.mean(axis=0))) for ring in stones(bond, ends))
        yield np.sort(stone_joints(bond, ends).mean(axis=1), axis=0)


OTHERS = (
    {f"random set {n}": (of_set, n) for n in range(10)}
    | {f"pairs of random set {n}": (of_pairs, n) for n in range(6)}
    | {f"broken set, {kind.__name__}": (of_broken, kind) for kind in KINDS}
    | {f"cast set {n}": (of_cast, n) for n in range(20)}
    | {"stones": (of_stones, 0)}
)


def rows(name):
    """Figures of a design, or of another case, by what of it."""
    if name in OTHERS:
        make, seed = OTHERS[name]
        return {"": figures(make(seed))}
    return {what: figures(of(geometry_of(name))) for what, of in OF.items()}


CASES = (*DESIGNS, *OTHERS)


def kept():
    """By case and what of it, the figures of the file."""
    return held("as_built")


def main():
    found = (((name, what), row) for name in CASES for what, row in rows(name).items())
    hold("as_built", ("case", "of", *FIGURES), found, ".14g")


if __name__ == "__main__":
    sys.exit(main())
