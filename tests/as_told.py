"""What is told of a design beside its checks and pictures: of a thing that somebody picks, of the places where a slider stops,
of weather, of a fireplace that was measured, of the pole of a set and of what stands of it, of files that are written over and
read back, and of lessons that lack something; of invented designs, many drawn from a seed.

Whoever changes a word or a figure of these on purpose reads both and writes the figures anew:
``.venv/bin/python tests/as_told.py``; the change stands in ``tests/pins/as_told.csv`` then.
"""

import re
import sys
import tomllib
from contextlib import suppress
from random import Random

import numpy as np
from as_built import FIGURES, figures
from as_drawn import HELD, NOON, SETS, assessed, design, geometry, standing
from held_figures import held, hold
from measured_sheet import as_sheet
from set_strategies import made as set_of
from set_strategies import random_set, stood
from set_strategies import text as text_of_set
from test_survey import BRICK, filled
from test_sweep import CATALOGUE, PLACES

from fireplace_calc import assess, change
from fireplace_calc.base import places
from fireplace_calc.base.resources import lesson_keys, lesson_text
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.build.setting.pallet_list import pallet_rows, stopped_without
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.drawing.composed.marked_places import PLACES as MARKED
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.editing.kept_comments import text_over
from fireplace_calc.explore import grid, stations, sweep
from fireplace_calc.lessons.course.checker import missing
from fireplace_calc.pieces.joints.plumb import plumb_odds, plumb_words
from fireplace_calc.pieces.joints.story_pole import pole_notes, pole_rows, pole_table, pole_text
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.measured.hollow_forms import FORMS
from fireplace_calc.pieces.measured.sheet import (
    begun,
    choices_of,
    keys_of,
    label_of,
    other_hand,
    put,
    without,
)
from fireplace_calc.pieces.set_text import read_set
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.as_built_file import as_built_text, read_as_built
from fireplace_calc.pieces.standing.inspector_record import record_rows, record_table
from fireplace_calc.pieces.standing.next_beds import replan
from fireplace_calc.proportion import SNAPS, slider_stops, snapped
from fireplace_calc.proportion.snapping import EXTENSION, HEARTH, HEIGHT, WIDTH
from fireplace_calc.scene.picked import about
from fireplace_calc.scene.sky import sun_table
from fireplace_calc.scene.still.option_pictures import in_room, marks, one_standpoint
from fireplace_calc.scene.whole_scene import gather_scene
from fireplace_calc.survey.asked.entry import CANNOT_REACH
from fireplace_calc.survey.beside import beside_drawn, beside_words
from fireplace_calc.survey.doubts import doubt_rows
from fireplace_calc.survey.from_survey import surveyed

DESIGNS = ("laid", "of a set", "market_arch", "terrace_metric", "by lot 21", "by lot of a set 41")
BOTH = (FEET_INCHES, MILLIMETRES)
SNAPPED = (WIDTH, HEIGHT, EXTENSION, HEARTH)
OUT = np.array([-18.0, 0.0, 7.5]) + 273.15
"""Weather outside. [K]"""
KEPT_NOTES = '# of ours\nname = "as it was"\n\n[opening]  # agreed\nwidth = "3 ft"  # by tape\n\n[[surround.trim]]\nname = "shelf"  # oak\ndistance = "14 in"\n'
"""Invented: a file that somebody wrote by hand."""
OTHERWISE = (
    {**BRICK, "flue shape": "round", "flue width, one way": "11 in", "flue width, again": "unknown"},
    {k: v for k, v in BRICK.items() if not k.startswith(("throat", "ridge", "flue depth"))},
    {**BRICK, "opening width, top": "1003 mm", "throat height, left": "2 in", "throat height, right": "2 in",
     "smoke chamber height": "12 in", "ridge distance": "20 ft", "roof pitch": "12:12"},
)  # fmt: skip
"""Invented: the measured fireplace with another flue, with less of it reached, with a low throat."""
FURTHER = {
    "arch rise": "6 in", "firebox depth, left": "20 in", "firebox depth, right": "21 in", "jamb, left": "8 in",
    "breast, left": "12 in", "trim that burns": "yes", "mantel distance, left": "9 in", "mantel projection, left": "5 in",
    "side trim distance, left": "4 in", "side trim projection, right": "2 in", "hearth thickness": "4 in",
    "room length": "20 ft", "room width": "14 ft", "ceiling height": "8 ft", "hearth level": "12 in",
    "smoke chamber lean, front": "3 in", "corbel step, one course": "1 in", "liner wall": "1 in",
    "liner over the crown, one way": "3 in", "crown thickness, one way": "4 in", "lintel height": "4 in",
}  # fmt: skip
"""What else may be measured, invented."""
SLIPS = {
    "left out": (lambda line: "", 2),
    "another word": (lambda line: re.sub(r'"', '"zz ', line, count=1), 2),
    "another number": (lambda line: re.sub(r"\d+", "7777", line, count=1), 2),
    "a bare figure": (lambda line: re.sub(r'(= ".*?)\{', r"\g<1>28 inches {", line), 3),
    "another name": (lambda line: re.sub(r"^(\w+) =", r"\1x =", line), 3),
    "an empty list": (lambda line: re.sub(r"= \[.*\]$", "= []", line), 3),
}
"""What may become of a line of a lesson, and of how many lines of each lesson."""


def _tried(make, *told):
    """What comes of it, or how it is refused."""
    try:
        return make(*told)
    except InputError as why:
        return str(why), why.allowed


# -- of a design -----------------------------------------------------------------------------------
def of_thing(name):
    """Things of every kind that stand in the room, in both systems of units."""
    made, told = assessed(name), {}
    for thing in gather_scene(made).fireplace:
        told.setdefault((thing.part, thing.item, thing.stuff, thing.kind), thing)
    for at, thing in enumerate(told.values()):
        yield thing.key, about(made, thing, BOTH[at % 2])


def of_stop(name):
    """Stops of every slider, and where a hand near them ends."""
    for key in SNAPPED:
        for kinds in (*((kind,) for kind in SNAPS), SNAPS):
            stops = _tried(slider_stops, geometry(name), key, kinds)
            yield stops
            for value in (0.2, 0.77, 0.9144, 1.3):
                yield _tried(snapped, geometry(name), key, value, kinds)


def of_mark(name):
    """Where on a picture a check stands."""
    for key, (view, place) in MARKED.items():
        yield key, view, place(geometry(name))


def of_file(name):
    """A design written, and written over what somebody else wrote."""
    made = design(name)
    yield text_of(made)
    yield text_over(KEPT_NOTES, made)
    yield text_over(text_of(load_text(KEPT_NOTES)), made)
    yield text_over(text_of(made), change(made, {"name": "another", "note": "since"}))


# -- of weather ------------------------------------------------------------------------------------
def _scaled(values):
    """So that a flow of grams counts beside a pressure."""
    values = np.nan_to_num(np.asarray(values, float))
    return values / (np.abs(values).max() or 1.0), float(np.abs(values).max())


def of_weather():
    for weather in (
        stations(PLACES),
        stations(PLACES, mild=282.15),
        grid(OUT, [0.0, 1500.0, 600.0]),
    ):
        for rate in (None, np.array([1.0, 4.0]) / 3600):
            found = sweep(CATALOGUE, weather, burn_rate=rate)
            for name in found.data_vars:
                yield name, found[name].attrs, _scaled(found[name].values)
    for text in ("upper", "Toronto", "zzzz", "inuvik a", "OSLO"):
        yield [(p.name, p.country, p.winter) for p in places.find(text, 4)]
    yield [(p.name, p.winter) for p in places.nearest(60.0, -120.0, 3)]
    yield [places.site(place) for place in PLACES]


def of_sun():
    """Where it stands over some invented places, and over one that is not told."""
    for latitude in (None, "-41.5 deg", "0 deg", "52 deg", "69 deg"):
        told = sun_table(change(design("laid"), {"site.latitude": latitude}))
        yield {
            k: np.frombuffer(v, "<f4").reshape(-1, 4) if k == "ways" else v for k, v in told.items()
        }


# -- of what was measured --------------------------------------------------------------------------
def of_survey(told):
    found = surveyed(filled(told))
    yield list(found.changes.items()), found.said, (found.trouble, found.at), found.assumed
    yield [r.entry.key for r in found.signs]
    for key, one in found.readings.items():
        yield key, one.state, sorted(one.given.items()), one.taken, one.text, one.lacking
    if found.design is not None:
        yield text_of(found.design)
        for at, row in enumerate(beside_drawn(found, design("laid"))):
            yield beside_words(row, BOTH[at % 2])
        yield doubt_rows(assess(found.design))


def of_altered(seed):
    """The same with some of it measured otherwise, some out of reach and some left out."""
    lot, told = Random(f"survey {seed}"), {}
    for box, text in (BRICK | FURTHER).items():
        by_lot = lot.random()
        if by_lot < 0.12:
            continue
        if by_lot < 0.2:
            told[box] = CANNOT_REACH
        elif by_lot < 0.7 and (whole := re.fullmatch(r"(\d+)( in| ft)", text)):
            told[box] = f"{int(whole[1]) * lot.uniform(0.8, 1.25):.1f}{whole[2]}"
        else:
            told[box] = text
    if lot.random() < 0.5:
        told["flue shape"] = "round"
    yield from of_survey(told)


def of_sheet():
    """A sheet of measured pieces, entered otherwise."""
    sheet = as_sheet()
    for number, entry in enumerate(sheet.entries):
        keys = keys_of(sheet, entry)
        yield (
            keys,
            keys_of(sheet, entry, False),
            [(label_of(entry, k), choices_of(k)) for k in keys],
        )
        other = _tried(other_hand, sheet, number, f"Z{number}")
        yield [one for one in getattr(other, "entries", other)][-1]
    for form in FORMS:
        yield put(sheet, 3, "form", form).entries[3]
    yield begun(sheet, 2).entries, begun(sheet).entries[-1], without(sheet, 4).entries


# -- of a set --------------------------------------------------------------------------------------
def of_pole(name):
    made, up, _, built = standing(name)
    plan = up.plan
    yield pole_rows(plan), pole_text(plan), pole_table(plan), pole_notes(plan)
    yield pallet_rows(up.assembly)
    steps = order_of_setting(up.assembly, made.piece_set.lining)
    marks_of = list(dict.fromkeys(s.placed.piece.mark for s in steps if s.placed))
    for at, mark in enumerate(marks_of):
        yield [s.name for s in stopped_without(steps, {mark: at % 3})]
    for units in BOTH:
        text = as_built_text(built, units)
        yield text, as_built_text(read_as_built(text), units)
        rows = record_rows(plan.chain, (), built, units=units)
        yield record_table(rows, units)


def of_beds(seed):
    """What is left to set when lifts stand higher or lower than they were to."""
    lot = Random(f"beds {seed}")
    up = standing(SETS[seed % 3])[1]
    chain, tops = up.plan.chain, up.plan.tops
    wanted = [
        WantedLevel(
            chain[n].name,
            float(tops[n]) + lot.uniform(-0.02, 0.02),
            lot.choice((0.0, 0.003)),
            lot.choice((1, 2)),
        )
        for n in sorted(lot.sample(range(len(chain)), 3))
    ]
    stand = sorted(lot.sample(range(len(chain) - 1), lot.randint(1, 4)))
    off = [lot.choice((0, *HELD, 9, -11)) / 1000 for _ in stand]
    built = AsBuilt(
        "a job",
        tops=tuple(
            MeasuredTop(chain[n].name, float(tops[n]) + o, NOON)
            for n, o in zip(stand, off, strict=True)
        ),
    )
    found = _tried(replan, chain, wanted, built, 0.0, BOTH[seed % 2])
    yield found
    if not isinstance(found, tuple):
        yield found.next_beds, found.plan and (pole_rows(found.plan), pole_notes(found.plan))
    rises = np.array([r.least for r in chain])
    way = ("each piece leveled", "each piece parallel to the last")[seed % 2]
    turned = ("never", "every other piece", "every piece")[seed % 3]
    yield plumb_odds(
        rises,
        lot.uniform(0.2, 0.6),
        lot.uniform(2e-4, 2e-3),
        way,
        lot.choice((0.0, 1e-3)),
        turned,
        400,
    )
    yield plumb_words(
        rises,
        lot.uniform(0.2, 0.6),
        lot.uniform(2e-4, 2e-3),
        lot.choice((0.0, 1e-3)),
        BOTH[seed % 2],
    )


def of_read_set(seed):
    """A set as it is read from a file, and from one with a word taken out."""
    text = text_of_set(random_set(seed))
    yield set_of(random_set(seed))
    yield pallet_rows(stood(random_set(seed)))
    lot, lines = Random(f"set {seed}"), text.splitlines()
    for _ in range(12):
        n = lot.randrange(len(lines))
        for new in (lines[n].replace("=", "= -", 1), lines[n].replace("0", "9"), ""):
            told = "\n".join([*lines[:n], new, *lines[n + 1 :]])
            try:
                yield read_set(told)
            except InputError as why:
                yield str(why), why.allowed


# -- of lessons ------------------------------------------------------------------------------------
def of_lesson(key):
    """What a lesson lacks in which something is left out, named otherwise or beyond its range."""
    lines, lot = lesson_text(key).splitlines(), Random(key)
    for slip, (made, times) in SLIPS.items():
        others = [(n, other) for n, line in enumerate(lines) if (other := made(line)) != line]
        for n, other in lot.sample(others, min(times, len(others))):
            text = "\n".join([*lines[:n], other, *lines[n + 1 :]])
            with suppress(tomllib.TOMLDecodeError):  # how a file is no TOML is not ours to say
                tomllib.loads(text)
                yield slip, [str(one) for one in missing(text)]


# -- of two options --------------------------------------------------------------------------------
def of_options():
    """Where one picture is not as the other."""
    first = assessed("laid")
    other = assess(change(first.design, {"opening.width": "4 ft", "surround.trim": ()}))
    eye = one_standpoint((first, other))
    pictures = [in_room(one).drawn(eye, 60, 40) for one in (first, other)]
    yield eye.stands, [(m.names, m.left, m.top, m.right, m.bottom) for m in marks(*pictures)]


CASES = {
    **{
        f"{what} of {name}": (make, name)
        for make, what in (
            (of_thing, "things"),
            (of_stop, "stops"),
            (of_mark, "marks"),
            (of_file, "files"),
        )
        for name in DESIGNS
    },
    "weather": (of_weather,),
    "sun": (of_sun,),
    **{f"survey {n}": (of_survey, told) for n, told in enumerate((BRICK, *OTHERWISE))},
    **{f"survey altered {seed}": (of_altered, seed) for seed in range(24)},
    "sheet of pieces": (of_sheet,),
    **{f"pole of {name}": (of_pole, name) for name in SETS},
    **{f"beds {seed}": (of_beds, seed) for seed in range(18)},
    **{f"set read {seed}": (of_read_set, seed) for seed in range(12)},
    **{f"lesson {key}": (of_lesson, key) for key in lesson_keys()},
    "options": (of_options,),
}
"""By name, what tells it and of what."""


def figures_of(case):
    """All that is told, in four figures."""
    make, *of = CASES[case]
    return figures(list(make(*of)))


def kept():
    """By case, the figures of the file."""
    return held("as_told", 1)


def main():
    hold("as_told", ("case", *FIGURES), (((case,), figures_of(case)) for case in CASES))


if __name__ == "__main__":
    sys.exit(main())
