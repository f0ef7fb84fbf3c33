"""Pictures and lit scenes of every kind in a few figures each: how many points its lines, its tones and its words
have, and where they lie taken together, each weighed by its pen, its tone or its own text.

Whoever changes a picture on purpose looks at it (light, dark, print, both unit systems) and writes
the figures anew: ``.venv/bin/python tests/as_drawn.py``; the change stands in
``tests/pins/as_drawn.csv`` (and ``columns.csv``) then, a row for each picture and what of it.
"""

import csv
import re
import sys
from dataclasses import replace
from datetime import UTC, datetime
from functools import cache, partial
from importlib import import_module
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from zlib import crc32

import numpy as np
from as_built import drawn, with_a_set
from built_works import WORKS
from held_figures import PINS, held, hold
from measured_sheet import HEAD
from PIL import Image

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS, lesson_keys, made_by
from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.classroom.class_book import ClassPapers
from fireplace_calc.drawing.classroom.class_tables import table_sheets
from fireplace_calc.drawing.classroom.search_sheet import list_sheet
from fireplace_calc.drawing.classroom.ticket_slips import slip_sheets
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
from fireplace_calc.drawing.client_pages.two_pages import client_pages
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.composed.compose import CELLS, draw_view, single
from fireplace_calc.drawing.composed.marked_check import can_show, marked
from fireplace_calc.drawing.heat.one_sheet_of_heat import WIDTH, heat_sheet
from fireplace_calc.drawing.lessons.exercise_pictures import exercise_picture
from fireplace_calc.drawing.lessons.lesson_pictures import lesson_picture
from fireplace_calc.drawing.page.message import page_message
from fireplace_calc.drawing.page.stage import stage_cells, stage_views
from fireplace_calc.drawing.papers.casting_list import forms_sheets
from fireplace_calc.drawing.pieces.built_picture import built_sheet
from fireplace_calc.drawing.pieces.card_picture import card_sheet
from fireplace_calc.drawing.pieces.growing import build_sheet
from fireplace_calc.drawing.pieces.measured_picture import measured_view
from fireplace_calc.drawing.pieces.pallet_picture import pallet_sheets
from fireplace_calc.drawing.pieces.pole_picture import pole_sheet
from fireplace_calc.drawing.pieces.set_pictures import SetPictures
from fireplace_calc.drawing.pieces.staging_picture import staging_sheet
from fireplace_calc.drawing.plates.sizes import paper
from fireplace_calc.drawing.plates.title_block import dress
from fireplace_calc.drawing.plates.whole_set import COVER, MAKERS, _maker
from fireplace_calc.drawing.sheets.lists import Column
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.survey.as_measured import measured_sheets
from fireplace_calc.drawing.survey.invented import sketched
from fireplace_calc.drawing.survey.numbered import arrow_sketch
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.drawing.survey.to_take_along import survey_sheets
from fireplace_calc.drawing.yard.blocks import OrderBlock, laid_out
from fireplace_calc.exports import write_dxf
from fireplace_calc.exports.stored_formulas import ColumnKind
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.casting.cutting import cut_into_pieces
from fireplace_calc.geometry.casting.wish import CastingWish
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.heat.conduction.grading import COARSE
from fireplace_calc.heat.cuts.section_run import burn_section
from fireplace_calc.lessons import LEVELS, exercise, kinds_of
from fireplace_calc.lessons.course.countries import country_of
from fireplace_calc.lessons.course.lesson_file import course_lesson
from fireplace_calc.lessons.course.moments import moment
from fireplace_calc.lessons.course.records import BOOKS
from fireplace_calc.pieces.choice import choose
from fireplace_calc.pieces.measured.hollow_forms import FORMS
from fireplace_calc.pieces.measured.sheet import MeasuredSheet, begun, other_hand, put
from fireplace_calc.pieces.measured.sketch import sketch_of
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.scene.shown_masonry import STATES
from fireplace_calc.scene.whole_scene import WholeScene, gather_scene
from fireplace_calc.survey.asked.walk import WALK
from fireplace_calc.survey.from_survey import surveyed

ROOT = PINS.parent.parent
COLUMNS = PINS / "columns.csv"
FIGURES = ("points", "across", "up", "spread", "turn")
"""Of all points: how many, weights times x, y, their squares and their product. [mm, mm2]"""
SHIPPED = {"plain": DESIGNS / "plain.toml", "laid": DESIGNS / "boathouse-laid.toml",
           "of a set": DESIGNS / "boathouse.toml"}  # fmt: skip
INVENTED = ("corner_study", "market_arch", "terrace_metric", "chapel_ridge", "barn_outside",
            "reading_room", "offset_loft", "long_room")  # fmt: skip
SECTIONS = {"method": "modular", "firebox.lining": "refractory section"}
CHANGED = {name: told for name, told in WORKS.items() if told} | {
    "in sections, wide": {**SECTIONS, "opening.width": "84 in"},
    "in sections, deep": {**SECTIONS, "opening.width": "50 in", "firebox.depth": "30 in"},
}
"""Designs that are a plain one but for some changes."""
BY_LOT = {f"by lot {n}": n for n in range(20, 26)} | {
    f"by lot of a set {n}": n for n in (40, 41, 42)
}
"""Designs of random answers, by what they are drawn from."""
SETS = ("small", "middling", "wide")
NOON = datetime(2027, 5, 3, 12, 0, tzinfo=UTC)
HELD = (0, 1, -2, 3, 16)
"""How far from what is wanted lift after lift of a job stands. [mm]"""
ON_PAPER = tuple(
    name for name in MAKERS if name not in (COVER, "checks.inspector", "yard.order_sheets")
)
"""Whose sheets are pictures; what findings, prices and counts say is held elsewhere."""
SOME = frozenset(
    (
        *("CLR-08", "THR-03", "AIR-07", "CLR-02", "FLU-04", "FLU-15", "FND-10", "LIN-02", "ROF-01"),
        *("ROF-10", "THR-02", "CHM-05", "CLR-21", "FBX-04", "FLU-03", "FLU-12", "HTH-07", "SMK-07"),
        *("FLU-10", "SEI-05", "TWO-04", "CLR-01", "FLU-16", "FND-17"),
    )
)
"""Findings that stand on a sheet of checks here: every kind of verdict, and of quantity."""
SHOWN = 219.0, 171.0
"""Of a lesson's picture. [mm]"""


@cache
def design(name):
    if name in CHANGED:
        return change(Design(), CHANGED[name])
    if name in BY_LOT:
        return (with_a_set if "set" in name else drawn)(BY_LOT[name])
    return load(SHIPPED.get(name) or PINS / f"{name}.toml")


@cache
def geometry(name):
    return build_geometry(design(name))


@cache
def assessed(name):
    return assess(design(name))


@cache
def standing(name):
    """A set as it is chosen, its pictures, and some lifts of it measured."""
    made = change(Design(), {"pieces.set": name, "flue.sections": 12})
    up = set_up(made)
    tops = zip(up.plan.chain, up.plan.tops, HELD, strict=False)
    built = AsBuilt(
        "a job", tops=tuple(MeasuredTop(r.name, top + n / 1000, NOON) for r, top, n in tops)
    )
    return made, up, SetPictures(up.assembly, made.piece_set.lining), built


@cache
def cast():
    made = cut_into_pieces(
        change(Design(), {"flue.shape": "round", "flue.size": "12"}), CastingWish()
    )
    return as_wanted(choose(made.made, made.choice))


def of_view(view, name, units):
    """Alone on a sheet, and as one of four."""
    yield single(view, geometry(name), units)
    if view in CELLS:
        yield draw_view(view, CELLS[view], geometry(name), units)


def of_maker(maker, name, units):
    for plate in _maker(maker).plates(assessed(name), units, paper(units), None):
        yield plate.sheet


def with_few(name):
    """An assessment with some findings alone: a rule more changes no picture."""
    made = assessed(name)
    return replace(made, findings=tuple(f for f in made.findings if f.key in SOME))


def of_words(maker, name, units):
    """Sheets that are mostly words, on two papers."""
    for size in (None, "letter"):
        on = paper(units, size)
        inside = [*_maker("details.sheet").plates(with_few(name), units, on, None)]
        listed = (inside,) if maker == COVER else ()
        for plate in _maker(maker).plates(with_few(name), units, on, None, *listed):
            yield plate.sheet


def of_set(name, units):
    made, up, pictures, built = standing(name)
    yield pole_sheet(pictures, up.plan, units)
    yield built_sheet(pictures, up.plan, built, units)
    yield built_sheet(pictures, up.plan, AsBuilt("a job"), units)
    yield from pallet_sheets(up.assembly, units)
    yield staging_sheet(made, units)


def of_step(name, step, units):
    pictures = standing(name)[2]
    last = len(pictures.cards)
    at = max(1, round(step * last))
    yield card_sheet(pictures, at, units)
    yield build_sheet(pictures, at, units)


def of_form(form, hand):
    """A piece as it is measured: with every length told, with those that have to be, and with none."""
    for told in (lambda dim: True, lambda dim: not dim.optional, lambda dim: False):
        sheet = put(put(begun(MeasuredSheet(HEAD)), 0, "form", form), 0, "mark", "A1")
        for dim in filter(told, FORMS[form].dims):
            text = "0, 0; 9, 0; 5, 23; 0, 23" if dim.corners else str(dim.typical or "")
            sheet = put(sheet, 0, dim.key, "" if dim.corners and dim.optional else text)
        sheet = other_hand(sheet, 0, "A2") if hand else sheet
        sketch = sketch_of(sheet, len(sheet.entries) - 1)
        if sketch is not None:
            drawn = Sheet(300.0, 186.0)
            measured_view(drawn, Cell(4.0, 4.0, 296.0, 182.0), sketch)
            yield drawn


def of_casting(units):
    yield from forms_sheets(cast(), (), units)


def of_exercise(kind, pack):
    for level in LEVELS:
        units = (FEET_INCHES, MILLIMETRES)[level % 2]
        for seed in range(2):
            task = exercise(kind, f"drawn {seed}", pack, level, units)
            yield exercise_picture(task, 120.0, 90.0)
            for step in range(len(task.steps)):
                yield exercise_picture(task, 120.0, 90.0, step, True)


def of_lesson(key, book):
    units = FEET_INCHES if book == BOOKS[0] else MILLIMETRES
    lesson = course_lesson(key, country_of(book))
    looks = [
        ({}, lesson.shows),
        (lesson.fault.values, (lesson.fault.draw, *lesson.fault.shows)),
        *((lesson.worked.values, step.shows) for step in lesson.worked.step),
    ]
    for values, shows in looks:
        for _, sheet in lesson_picture(moment(key, dict(values), book, units), shows, *SHOWN):
            yield sheet


def of_survey(size, units):
    from test_survey import BRICK, filled

    yield from survey_sheets(size, units)
    measured = surveyed(filled(BRICK).cannot_reach("lintel bearing"))
    yield from measured_sheets(measured, Design(), units=units, paper=size)


def of_sketch(name):
    for made in (sketched(), geometry("market_arch"), geometry("terrace_metric")):
        sheet = Sheet(140.0, 195.0)
        arrow_sketch(sheet, Cell(2.0, 2.0, 138.0, 193.0), name, made, WALK)
        yield sheet


def of_class(kinds, count, units, size):
    from school import school_of

    school = school_of(kinds, count, units)
    papers = ClassPapers(school, size)
    for name in list(school.places)[-1:]:
        yield from papers.quiz(name)
    for table in papers.tables():
        yield from table_sheets(table, papers.stamp)
    yield from slip_sheets(school, papers.stamp)
    yield list_sheet(papers.stamp)


def of_stage(name, units):
    """As a page shows them: all four, and each alone on a small one; a message for each."""
    made = assessed(name)
    for view, wide, high in (("all", 980, 640), ("all", 724, 608), ("section", 390, 420)):
        stage = stage_cells(view, wide, high)
        for _, cell, sheet in stage_views(view, made.geometry, units, made.findings, (), stage):
            told, body = page_message(sheet, "light", cell)
            sheet.line([(len(body) / 1e3, cell.right), (len(str(told)) / 1e3, cell.top)], "told")
            yield sheet


def of_marked(name, units):
    made = assessed(name)
    for first in {f.key: f for f in made.findings if can_show(f)}.values():
        yield marked(first, made.geometry, units)


def of_file(name, units):
    """Everything of a drawing file by its layer, each block of it for itself."""
    import ezdxf

    with TemporaryDirectory() as folder:
        document = ezdxf.readfile(write_dxf(assessed(name), Path(folder) / "one.dxf", units))
    spaces = [("", document.modelspace())]
    spaces += [(b.name, b) for b in document.blocks if not b.name.startswith("*")]
    sheet = Sheet(1.0, 1.0)
    for where, space in spaces:
        for entity in space:
            kind, d = entity.dxftype(), entity.dxf
            pen = f"{where} {kind} {d.layer}"
            if kind == "LWPOLYLINE":
                sheet.line([point[:2] for point in entity.get_points()], f"{pen} {entity.closed}")
            elif kind == "LINE":
                sheet.line([d.start.vec2, d.end.vec2], f"{pen} {d.linetype}")
            elif kind == "DIMENSION":
                three = (d.defpoint, d.defpoint2, d.defpoint3)
                sheet.line([point.vec2 for point in three], f"{pen} {round(d.angle)}")
            elif kind == "HATCH":
                for path in entity.paths:
                    points = [point[:2] for point in path.vertices]
                    sheet.line(points, f"{pen} {d.pattern_name} {d.solid_fill}")
            elif kind == "INSERT":
                sheet.line([d.insert.vec2], f"{pen} {d.name}")
                for tag in entity.attribs:
                    sheet.text(*tag.dxf.insert.vec2, tag.dxf.text, tag.dxf.height)
            elif kind in ("TEXT", "ATTDEF"):
                sheet.text(*d.insert.vec2, d.text or d.tag, d.height, turned=round(d.rotation))
    yield sheet


def of_scene(name, state):
    yield gather_scene(assessed(name), state)


INVENTED_ROWS = tuple(
    (f"row {n}", f"{n * 7} of it\nand a second line" * (n % 3), "") for n in range(60)
)


def of_order(size):
    """Blocks of invented rows, long enough to go over column and page."""
    columns = (
        Column("What", 40),
        Column("How much of it", 30, "right"),
        Column("Price", 20, "right"),
    )
    blocks = [
        OrderBlock(
            "First", "aside", ("Before it. " * 9,), columns, INVENTED_ROWS, boxed=1, tick=True
        ),
        OrderBlock(
            "Second", "Beside it. " * 20, (), columns, INVENTED_ROWS[:5], ("After it. " * 9,)
        ),
        OrderBlock("Third", "", (), columns, INVENTED_ROWS * 2, flows=True),
        OrderBlock(
            "Fourth", "x", ("A", "B"), columns[:2], tuple(r[:2] for r in INVENTED_ROWS[:30])
        ),
    ]
    for plate in laid_out("Order", blocks, paper(FEET_INCHES, size)):
        yield plate.sheet


def of_title(name, units, size):
    """A frame with its title block."""
    on = paper(units, size)
    sheet = Sheet(on.width, on.height)
    dress(sheet, on, assessed(name), units, "Front and section", "3 of 9", "1:20", 20)
    yield sheet


def client_leaves(units, size, how_many, names=None):
    """Both pages for a client, with others beside and named; a picture in a room is a dot."""
    dot = BytesIO()
    Image.new("RGB", (4, 3)).save(dot, "PNG")
    others = [
        NamedDesign(name, assessed(name)) for name in ("plain", "terrace_metric", "market_arch")
    ]
    return client_pages(
        NamedDesign("As it is", assessed("laid")), others[:how_many], names, units, size,
        pictures=lambda *asked: dot.getvalue(),
    )  # fmt: skip


def of_client(units, size, how_many):
    """Both pages in color: what is written, ruled and shown where."""
    for page in client_leaves(units, size, how_many):
        sheet = Sheet(page.width, page.height)
        for one in page.strokes:
            sheet.line([one.start, one.end], f"{one.width} {one.ring}", one.color)
        for one in page.pictures:
            sheet.line([(one.x, one.y), (one.width, one.height)], "picture")
        for one in page.words:
            sheet.text(one.x, one.y, "words", one.size, one.font, one.color)
        yield sheet


def of_heat(name, units):
    made = assessed(name)
    yield heat_sheet(made.geometry, made.heat.evening, 1, 11.0, units)
    yield heat_sheet(made.geometry, made.heat.evening, 0, 2.0, units, None, 100.0)
    section = burn_section(made.geometry, wall_fires()["hard"], 3.0, 5.0, cells=COARSE)
    for wide in (WIDTH, 100.0):
        yield heat_sheet(made.geometry, made.heat.evening, 2, 3.0, units, section, wide)


def _pictures():
    """By name, what makes it."""
    both = (FEET_INCHES, MILLIMETRES)
    for at, name in enumerate((*SHIPPED, *INVENTED, *BY_LOT)):
        for view, known in CATALOGUE.items():
            if known.suits(geometry(name)):
                for units in both if name in SHIPPED else both[at % 2 :][:1]:
                    yield f"{view} of {name}, {units}", partial(of_view, view, name, units)
    for maker in ON_PAPER:
        for name, units in (
            ("laid", FEET_INCHES),
            ("of a set", MILLIMETRES),
            ("market_arch", MILLIMETRES),
            *zip(BY_LOT, both * 4, strict=False),
        ):
            yield f"{maker} of {name}", partial(of_maker, maker, name, units)
    for maker in MAKERS:
        if maker not in ON_PAPER:
            for name, units in (("laid", FEET_INCHES), ("of a set", MILLIMETRES)):
                yield f"{maker} of {name}", partial(of_words, maker, name, units)
    for at, name in enumerate(SETS):
        yield f"sheets of set {name}", partial(of_set, name, both[at % 2])
        for step in (0.0, 0.3, 0.5, 0.8, 1.0):
            yield f"step {step} of set {name}", partial(of_step, name, step, both[at % 2])
    for form in FORMS:
        for hand in (False, True):
            yield f"measured {form}{', other hand' * hand}", partial(of_form, form, hand)
    for units in both:
        yield f"forms, {units}", partial(of_casting, units)
    for pack in ("US IRC 2021", "Canada NBC", "UK ADJ"):
        for kind in kinds_of(pack):
            yield f"exercise {kind}, {pack}", partial(of_exercise, kind, pack)
    for at, key in enumerate(lesson_keys()):
        for book in (BOOKS[at % len(BOOKS)], BOOKS[(at + 1) % len(BOOKS)]):
            yield f"lesson {key}, {book}", partial(of_lesson, key, book)
    for size, units in zip(("letter", "a4"), both, strict=True):
        yield f"survey on {size}", partial(of_survey, size, units)
    for name in SKETCHES:
        yield f"sketch {name}", partial(of_sketch, name)
    yield "class in feet", partial(of_class, ("hearth", "roof"), 2, FEET_INCHES, None)
    yield (
        "class in millimeters",
        partial(of_class, ("lintel", "draft"), 2, MILLIMETRES, "A4"),
    )
    for name, units in (
        ("laid", FEET_INCHES),
        ("of a set", MILLIMETRES),
        ("chapel_ridge", FEET_INCHES),
        *zip(BY_LOT, both * 4, strict=False),
    ):
        yield f"stage of {name}", partial(of_stage, name, units)
        yield f"checks where they are measured, {name}", partial(of_marked, name, units)
    for size in ("letter", "A3", "11x17"):
        yield f"order on {size}", partial(of_order, size)
        yield f"title on {size}", partial(of_title, "laid", both[size == "A3"], size)
        for many in (0, 1, 3):
            yield (
                f"client's pages on {size}, {many}",
                partial(of_client, both[size == "A3"], size, many),
            )
    for name, units in (
        ("laid", FEET_INCHES),
        ("of a set", MILLIMETRES),
        ("market_arch", MILLIMETRES),
        *zip(BY_LOT, both * 4, strict=False),
    ):
        yield f"drawing file of {name}", partial(of_file, name, units)
    for name in (*SHIPPED, *INVENTED, *CHANGED, *BY_LOT):
        for state in STATES:
            yield f"scene of {name}, {state}", partial(of_scene, name, state)
    for name, units in (("plain", FEET_INCHES), ("barn_outside", MILLIMETRES)):
        yield f"heat of {name}", partial(of_heat, name, units)


PICTURES = dict(_pictures())


def _weight(*of):
    return crc32(repr(of).encode()) % 97 + 1.0


def _summed(parts):
    """Of points with a weight each part: their sums."""
    found = np.zeros(len(FIGURES))
    for weight, points in parts:
        x, y = np.asarray(points, float).reshape(-1, 2).T
        found += (len(x), *(weight * float(v.sum()) for v in (x, y, x * x + y * y, x * y)))
    return found


def _lines(sheet):
    for pen, lines in sheet.lines.items():
        for line in lines:
            yield _weight(pen), line
    for string in sheet.measured:
        yield _weight(string.along), [(stop, string.line) for stop in string.stops]
        yield _weight(string.along), [(foot, string.line) for foot in string.feet]


def _tones(sheet):
    for tone, polygons in sheet.fills.items():
        for ring in (ring for rings in polygons for ring in rings):
            yield _weight(tone), ring
    for name, rings in sheet.hatched.items():
        for ring in rings:
            yield _weight(name, sheet.hatch_size), ring
    for lines in sheet.hatches:
        yield _weight("hatch"), lines


def undated(text):
    """A text without the day it was printed, the version that printed it and a class's stamp."""
    text = re.sub(r"\d{4}-\d\d-\d\d", "a day", text).replace(made_by(), "a version")
    return re.sub(r"exercises [0-9a-f]{8}", "exercises", text)


def _words(sheet):
    for n in sheet.labels:
        yield _weight(undated(n.text), n.ha, n.va, n.turned, n.bold, n.ink), [(n.x, n.y)]
        yield _weight("size"), [(n.size, 1.0)]


def _standing(things, up=2):
    """Things from above, or from the front; how their faces are divided is nobody's business."""
    for thing in things:
        weight = _weight(thing.key, thing.name, thing.stuff, thing.kind, thing.part, thing.item,
                         thing.smooth, thing.cut, thing.step)  # fmt: skip
        points = np.unique(np.round(np.asarray(thing.points, float), 6), axis=0)
        yield weight, 1000 * (points + thing.away)[:, [0, up]]


def _laid(layouts):
    """Units of every face, where the face begins, and how it runs."""
    for one in layouts:
        weight = _weight(one.stuff, one.things, one.repeats, one.joint)
        for ring in one.rings:
            yield weight, 1000 * np.asarray(ring, float)[:, :2]
        frame = [v for v in (one.origin, one.along, one.up, one.normal) if v is not None]
        yield (
            weight,
            [(one.width, one.height), *((1000 * x + 7 * z, 1000 * y) for x, y, z in frame)],
        )


def _room(scene):
    """From where one looks, the room, its windows, lamp and fire."""
    for eye in scene.standpoints:
        yield (
            _weight(eye.name),
            [(1000 * a, 1000 * b) for a, b in zip(eye.stands, eye.looks, strict=True)],
        )
        yield _weight("angle"), [(eye.angle, 1.0)]
    room = scene.measures
    yield 1.0, [(room.left, room.right), (room.front, room.back), (room.ceiling, room.fire_width)]
    yield 2.0, [(1000 * a, 1000 * b) for a, b in zip(room.lamp, room.fire, strict=True)]
    for one in room.windows:
        yield 3.0, [(1000 * one.front, 1000 * one.back), (1000 * one.sill, 1000 * one.head)]


def _scene_figures(scene):
    return {
        "built, from above": _summed(_standing(scene.fireplace, 1)),
        "built, from the front": _summed(_standing(scene.fireplace)),
        "setting, from above": _summed(_standing(scene.setting, 1)),
        "setting, from the front": _summed(_standing(scene.setting)),
        "faces": _summed(_laid(scene.layouts)),
        "room": _summed(_room(scene)),
    }


def figures(name):
    """A row each for the lines, tones and words of a picture, by what it is of."""
    sheets = list(PICTURES[name]())
    return _scene_figures(sheets[0]) if isinstance(sheets[0], WholeScene) else of_sheets(sheets)


def of_sheets(sheets):
    """The same of sheets."""
    rows = {"paper": _summed((n, [(s.width, s.height)]) for n, s in enumerate(sheets, 1))}
    for what, parts in (("lines", _lines), ("tones", _tones), ("words", _words)):
        rows[what] = sum(
            (n * _summed(parts(s)) for n, s in enumerate(sheets, 1)), np.zeros(len(FIGURES))
        )
    return rows


def moved(name, found, was):
    """What of a picture is no longer as the file has it, in words."""
    for what, row in found.items():
        wanted = was[name, what]
        if not np.isclose(row, wanted, rtol=1e-8, atol=0.11).all():
            pairs = zip(FIGURES, row, wanted, strict=True)
            yield f"{what} of {name}: {'; '.join(f'{n} {a:.1f}, was {b:.1f}' for n, a, b in pairs)}"


def kept():
    """By picture and what of it, the figures of the file."""
    return held("as_drawn")


def columns():
    """Headings and widths of every table that a module declares, by its name."""
    found = {}
    for path in sorted((ROOT / "fireplace_calc").rglob("*.py")):
        if re.search(r"\bColumn(Kind)?\(", path.read_text()):
            dotted = ".".join(path.relative_to(ROOT).with_suffix("").parts)
            for name, held in vars(import_module(dotted)).items():
                made = held.values() if isinstance(held, dict) else held
                if isinstance(held, (dict, tuple, list)) and all(
                    isinstance(one, (Column, ColumnKind)) for one in made
                ):
                    wide = [one.wide if isinstance(one, ColumnKind) else one.share for one in made]
                    heads = (f"{one.heading} {w:g}" for one, w in zip(made, wide, strict=True))
                    if made:
                        found[f"{dotted.partition('.')[2]}.{name}"] = "; ".join(heads)
    return found


def kept_columns():
    """The same as the file has it."""
    with COLUMNS.open(newline="") as file:
        return dict(csv.reader(file))


def main():
    with COLUMNS.open("w", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows(columns().items())
    found = (((name, what), row) for name in PICTURES for what, row in figures(name).items())
    hold("as_drawn", ("picture", "of", *FIGURES), found, ".1f")


if __name__ == "__main__":
    sys.exit(main())
