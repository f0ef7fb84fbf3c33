"""The drawing file: read back by ezdxf, measured, and drawn again from its dimensions alone."""

import re
from collections import Counter, defaultdict
from types import SimpleNamespace

import built_works
import ezdxf
import numpy as np
import pytest
import shapely
from ezdxf import bbox
from sampled import sampled
from shapely import LineString, Polygon, unary_union

from fireplace_calc import assess, change
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH, MM, InputError
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.brickwork.seen.stone_face import stone_joints
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.set_out.sheets import figures as set_out_figures
from fireplace_calc.drawing.sheets.style import HATCHES
from fireplace_calc.drawing.views.front_elevation import breast_ring
from fireplace_calc.editing.designfile import load
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.exports import write_dxf
from fireplace_calc.exports.cad import cut_views
from fireplace_calc.exports.cad.cut_views import hearth_plan
from fireplace_calc.exports.cad.document import pattern
from fireplace_calc.exports.cad.front_bricks import _face, _face_region, _stone
from fireplace_calc.exports.cad.painted import AT_TRUE_SIZE, on_paper, sheet_figures
from fireplace_calc.exports.cad.pen import LEVEL, TRIANGLE, DxfPen, _Reached
from fireplace_calc.exports.cad.tied_places import half_of, span_rows
from fireplace_calc.exports.cad.true_view import LETTERS, TrueView, ring_corners
from fireplace_calc.geometry.bodies import plan_rings
from fireplace_calc.geometry.builder import build_geometry

UNIT = {"feet-inches": INCH, "millimetres": MM}
WORKS = built_works.WORKS | {
    "seat": {
        "base.hearth_level": "17 in",
        "seat.left": "4 ft",
        "seat.niche": "left",
        "breast.projection": "10 in",
    },
    "hood": {"opening.hood": "6 in"},
    "a set": {"pieces.set": "middling"},
}
TOLD = {}
"""What ``told`` of a work's file, by its name and its unit."""


def read(design, folder, units="feet-inches"):
    """The assessment, and its file as ezdxf reads it."""
    result = assess(design)
    return result, ezdxf.readfile(write_dxf(result, folder / f"{units}.dxf", units))


@pytest.fixture(scope="module", params=sampled([f"{n}; {u}" for n in WORKS for u in UNIT], 2))
def work(request, tmp_path_factory):
    """Name, assessment, file, and one unit of it in meters."""
    name, units = request.param.split("; ")
    result, document = read(change(Design(), WORKS[name]), tmp_path_factory.mktemp("dxf"), units)
    TOLD[name, UNIT[units]] = told(document, UNIT[units])
    return name, result, document, UNIT[units]


def rings_of(document, unit):
    """Closed outlines by layer, in meters."""
    found = defaultdict(list)
    for line in document.modelspace().query("LWPOLYLINE"):
        if line.closed:
            ring = np.array([(x, y) for x, y, *_ in line.get_points()]) * unit
            found[line.dxf.layer].append(ring)
    return found


def spans(document, unit):
    """Every dimension: whether it is upright, its two points, where its line stands, in meters."""
    found = []
    for entity in document.modelspace().query("DIMENSION"):
        d = entity.dxf
        points = [np.array(p.vec2, float) * unit for p in (d.defpoint2, d.defpoint3, d.defpoint)]
        found.append((round(d.angle) == 90, *points, entity))
    return found


def names(document, unit):
    """Where each view's name stands, in meters."""
    return {
        text.dxf.text: np.array(text.dxf.insert.vec2) * unit
        for text in document.modelspace().query("TEXT")
        if text.dxf.height * unit == pytest.approx(0.1) and text.dxf.rotation == 0
    }


def place_of(rings, expected, low=-1e9):
    """How far a ring of the geometry was moved, found by its form on its layer; its own ring."""
    wanted = np.array(expected)
    for ring in rings:
        if len(ring) == len(wanted):
            apart = ring - wanted
            if np.ptp(apart, axis=0).max() < 1e-6 and apart[0][0] > low:
                return apart[0]
    raise AssertionError(f"not in the file: {expected}")


# -- the file -------------------------------------------------------------------------------------
def test_nothing_is_to_be_mended_and_nothing_is_unused(work):
    """ezdxf's audit; every layer, style, line type and block of ours is used. ``0``, ``Defpoints``,
    ``Standard`` and the three line types are the format's own.
    """
    _, _, document, _ = work
    checked = document.audit()
    assert not checked.errors and not checked.fixes
    used, inserted, kinds = set(), set(), set()
    spaces = [document.modelspace(), *document.blocks]
    for space in spaces:
        for entity in space:
            used.add(entity.dxf.layer)
            if entity.dxftype() == "INSERT":
                inserted.add(entity.dxf.name)
                used |= {attribute.dxf.layer for attribute in entity.attribs}
    layers = {layer.dxf.name for layer in document.layers} - {"0", "Defpoints"}
    assert layers <= used
    ours = {b.name for b in document.blocks if not b.name.startswith("*")}
    arrows = {name for name in ours if name.startswith("_")}  # ticks of dimensions
    assert ours - arrows == inserted - arrows
    kinds = {layer.dxf.linetype for layer in document.layers}
    ours = {t.dxf.name for t in document.linetypes} - {"ByLayer", "ByBlock", "Continuous"}
    assert ours <= kinds
    styles = {s.dxf.name for s in document.dimstyles} - {"Standard"}
    assert styles == {d.dxf.dimstyle for d in document.modelspace().query("DIMENSION")}
    assert {s.dxf.name for s in document.styles} == {"Standard"}


@pytest.mark.parametrize(
    ("units", "header"), [("feet-inches", (1, 0, 4)), ("millimetres", (4, 1, 2))]
)
def test_the_header_says_which_unit_is_one(units, header, tmp_path):
    """DXF reference: $INSUNITS 1 is inches, 4 millimeters; $MEASUREMENT 1 is metric; $LUNITS 4 is
    architectural, 2 decimal; so is $DIMLUNIT, to a sixteenth or to the whole millimeter. $DIMZIN 3
    leaves zero feet out and keeps zero inches.
    """
    _, document = read(Design(), tmp_path, units)
    found = tuple(document.header[k] for k in ("$INSUNITS", "$MEASUREMENT", "$LUNITS"))
    assert found == header
    assert document.header["$LTSCALE"] == 1, "dashes are as long as they are written"
    (name,) = {d.dxf.dimstyle for d in document.modelspace().query("DIMENSION")}
    style = document.dimstyles.get(name).dxf
    wanted = (4, 4, 3) if units == "feet-inches" else (2, 0, 8)
    assert (style.dimlunit, style.dimdec, style.dimzin) == wanted
    sizes = (
        style.dimtxt,
        style.dimasz,
        style.dimtsz,
        style.dimexe,
        style.dimexo,
        style.dimgap,
        style.dimfxl,
    )
    one = 1 / INCH if units == "feet-inches" else 1000  # [1/m]
    assert [size / one for size in sizes] == pytest.approx(
        [LETTERS, 0.03, 0.02, 0.02, 0.02, 0.012, 0.06]
    )


def told(document, unit):
    """What is drawn from the solids, in meters, in the order of the file; after it come figures of
    sheets, whose scales and words are those of their unit system.
    """
    found = []
    for entity in document.modelspace():
        d = entity.dxf
        if entity.dxftype() == "LWPOLYLINE":
            places = [v for x, y, *_ in entity.get_points() for v in (x, y)]
        elif entity.dxftype() in ("INSERT", "TEXT"):
            places = [*d.insert]
        elif entity.dxftype() == "DIMENSION":
            places = [v for p in (d.defpoint2, d.defpoint3, d.defpoint) for v in p]
        elif entity.dxftype() == "LINE":
            places = [v for p in (d.start, d.end) for v in p]
        else:
            assert entity.dxftype() == "HATCH"
            places = [v for p in entity.paths for q in p.vertices for v in q[:2]]
        found.append((entity.dxftype(), d.layer, np.array(places) * unit))
        if entity.dxftype() == "TEXT" and d.text == "Plan at the flue":
            break
    return found


# -- drawn again ----------------------------------------------------------------------------------
def tied(places, gaps, start):
    """Places that gaps reach from a start, each by adding and taking away what is measured."""
    known = {round(start, 4): start}
    left = list(gaps)
    while left:
        done = []
        for gap in left:
            a, b = gap
            for one, other in ((a, b), (b, a)):
                near = next((k for k in known.values() if abs(k - one) < 3e-4), None)
                if near is not None:
                    known[round(other, 4)] = near + (other - one)
                    done.append(gap)
                    break
        if not done:
            return sorted(known.values()), left
        left = [gap for gap in left if gap not in done]
    return sorted(known.values()), []


def drawn_again(document, unit, corner, rings, start):
    """Points of a view that its dimensions do not fix to a sixteenth, across and up, with what hangs loose.

    ``corner`` is where the view's origin stands, ``rings`` are those of the geometry that it shows,
    ``start`` its lowest and highest place. [m]
    """
    points = np.array([p for ring in rings for p in ring_corners(ring)])
    (left, low), (right, top) = points.min(axis=0) - 0.5, points.max(axis=0) + 1.5
    missing = []
    for axis in (0, 1):
        gaps = []
        for upright, a, b, line, _ in spans(document, unit):
            a, b, line = a - corner, b - corner, line - corner
            inside = left < a[0] < right and low < a[1] < top and left < b[0] < right
            if inside and upright == (axis == 1):
                gaps.append((a[axis], b[axis]))
        known, loose = tied([], gaps, start[axis])
        known = np.array(known)
        if axis == 0 and start[2]:
            known = np.concatenate([known, -known])
        wanted = points[:, axis]
        off = np.abs(wanted[:, None] - known[None, :]).min(axis=1)
        missing += [(axis, float(w)) for w, o in zip(wanted, off, strict=True) if o > INCH / 16]
        missing += [(axis, "loose", gap) for gap in loose]
    return missing


def sections(result):
    return [
        (p.material.replace(" ", "-"), ring) for p in result.geometry.parts for ring in p.section()
    ]


def section_corner(result, document, unit):
    """Where the section's face and floor stand in the file: by the footing's ring."""
    footing = result.geometry.by_name["footing"]
    (ring,) = footing.section()
    return place_of(rings_of(document, unit)["concrete"], ring, low=0.5)


def front_rings(result, document, unit):
    """Every closed outline that stands in the front, as the file has it, in meters."""
    f = result.geometry.frame
    (left, _), (right, _) = (
        np.min(breast_ring(result.geometry, 99.0), axis=0),
        np.max(breast_ring(result.geometry, 99.0), axis=0),
    )
    seat, beside = result.design.seat, f.half_width + result.design.hearth.side
    low = min(left, -beside - seat.left) - 0.3
    high = max(right, beside + seat.right) + 0.3
    every = [ring for layer in rings_of(document, unit).values() for ring in layer]
    shown = [
        r for r in every if low < r[:, 0].min() and r[:, 0].max() < high and r[:, 1].min() > -0.6
    ]
    if f.spring >= f.opening_top:
        return shown
    # An arch is drawn through its spring, its crown and its depth; what it cuts off follows.
    head = f.opening_top + result.design.lintel.height
    arch = [(f.half_width, f.spring), (0.0, f.opening_top), (0.0, head)]
    curved = [((r[:, 1] > f.spring + 1e-6) & (r[:, 1] < head + 1e-6)).any() for r in shown]
    return [arch, *(r for r, bent in zip(shown, curved, strict=True) if not bent)]


def test_front_and_section_are_drawn_again_from_their_dimensions(work):
    """Every corner to a sixteenth, from a place that is known: face and floor, center line and floor."""
    name, result, document, unit = work
    corner = section_corner(result, document, unit)
    rings = [ring for _, ring in sections(result)]
    assert drawn_again(document, unit, corner, rings, (0.0, 0.0, False)) == []
    front = front_rings(result, document, unit)
    assert len(front) >= 5
    assert drawn_again(document, unit, np.zeros(2), front, (0.0, 0.0, True)) == []


def said(text, unit):
    """A length as it is painted, in meters."""
    return float(text) * MM if unit == MM else to_si(text, "length")


def summed(document, unit, corner, rings, start):
    """Corners that come out more than a sixteenth off where what is painted is added up. [m]"""
    points = np.array([p for ring in rings for p in ring_corners(ring)])
    (left, low), (right, top) = points.min(axis=0) - 0.5, points.max(axis=0) + 1.5
    off = []
    for axis in (0, 1):
        gaps = []
        for upright, a, b, _, entity in spans(document, unit):
            a, b = a - corner, b - corner
            inside = left < a[0] < right and low < a[1] < top and left < b[0] < right
            if inside and upright == (axis == 1):
                text = entity.get_geometry_block().query("TEXT MTEXT")[0]
                words = text.text if text.dxftype() == "MTEXT" else text.dxf.text
                way = 1 if b[axis] > a[axis] else -1
                gaps.append((a[axis], b[axis], way * said(words, unit)))
        known, reached = [(start[axis], start[axis])], True
        while reached:
            reached = False
            for a, b, long in gaps:
                for one, other, way in ((a, b, long), (b, a, -long)):
                    near = next((v for k, v in known if abs(k - one) < 3e-4), None)
                    if near is not None and all(abs(k - other) >= 3e-4 for k, _ in known):
                        known.append((other, near + way))
                        reached = True
        off += [(axis, place, value) for place, value in known if abs(place - value) > INCH / 16]
    return off


def test_what_is_painted_adds_up_to_every_corner(work):
    """Somebody with a pencil, who sees no more than the letters."""
    _, result, document, unit = work
    corner = section_corner(result, document, unit)
    rings = [ring for _, ring in sections(result)]
    assert summed(document, unit, corner, rings, (0.0, 0.0)) == []
    assert (
        summed(document, unit, np.zeros(2), front_rings(result, document, unit), (0.0, 0.0)) == []
    )


def painted_true(document, unit):
    """Every dimension measures what its points are apart, and paints that in the reader's units."""
    for upright, a, b, _, entity in spans(document, unit):
        long = abs(b[1] - a[1] if upright else b[0] - a[0])
        assert entity.get_measurement() * unit == pytest.approx(long, abs=1e-9)
        assert entity.dxf.actual_measurement * unit == pytest.approx(long, abs=1e-9)
        assert entity.dxf.text == "<>" and long > 1e-4
        painted = [
            e.text if e.dxftype() == "MTEXT" else e.dxf.text
            for e in entity.get_geometry_block().query("TEXT MTEXT")
        ]
        assert len(painted) == 1
        mark = INCH / 16 if unit == INCH else MM
        assert abs(said(painted[0], unit) - long) <= mark + 1e-6, "each end to its nearest mark"


def test_dimensions_are_measured_and_painted_in_the_readers_units(work):
    painted_true(*work[2:])


def test_no_dimension_crosses_what_is_cut(work):
    """Lines and ticks as painted, against the section's outlines."""
    _, result, document, unit = work
    corner = section_corner(result, document, unit)
    solids = shapely.union_all(
        [shapely.Polygon(np.array(ring) + corner) for _, ring in sections(result) if len(ring) > 2]
    ).buffer(-1e-4)
    for *_, entity in spans(document, unit):
        for line in entity.get_geometry_block().query("LINE"):
            ends = [np.array(p.vec2, float) * unit for p in (line.dxf.start, line.dxf.end)]
            assert not shapely.LineString(ends).intersects(solids)


# -- what it shows --------------------------------------------------------------------------------
def test_every_outline_of_the_section_is_the_geometrys(work):
    name, result, document, unit = work
    if name == "a set":
        return  # its pieces are blocks: tests/test_exports.py
    found, corner = rings_of(document, unit), section_corner(result, document, unit)
    for layer, ring in sections(result):
        apart = [np.abs(r - corner - ring).max() for r in found[layer] if r.shape == np.shape(ring)]
        assert min(apart, default=1.0) < 1e-6, layer


@pytest.mark.parametrize("material", [name for name, hatch in HATCHES.items() if hatch.pair])
def test_a_double_hatch_is_as_large_as_the_units_of_the_file_ask(material):
    """In millimeters every figure of it is a thousand times what it is in meters."""
    small, large = (np.array(figures_of(pattern(material, scale))) for scale in (1.0, 1000.0))
    assert np.any(small) and large == pytest.approx(1000.0 * small)


def figures_of(lines):
    return [[*base, *offset] for _, base, offset, _ in lines]


def test_what_is_cut_is_hatched_in_its_material(work):
    """One hatch to each part and view, its edges those of the part, as large as its area."""
    name, result, document, unit = work
    area = defaultdict(float)
    for hatch in document.modelspace().query("HATCH"):
        if hatch.dxf.layer == "leaders":  # arrows and dots of a figure
            continue
        assert hatch.dxf.layer == "hatching"
        rings = [shapely.Polygon([v[:2] for v in path.vertices]) for path in hatch.paths]
        whole = shapely.Polygon()
        for ring in rings:
            whole = whole.symmetric_difference(ring.buffer(0))
        area[hatch.dxf.pattern_name] += whole.area * unit * unit
    wanted = defaultdict(float)
    for material, ring in sections(result):
        if material not in ("steel", "metal"):
            wanted[material.upper()] += shapely.Polygon(ring).area
    known = {key.upper().replace(" ", "-") for key in HATCHES}
    if name != "a set":
        for material, size in wanted.items():
            if material in known:
                assert area[material] > size * 0.999, material
    assert area.keys() - {"SOLID"} <= known


def inserts(document, layer):
    return [i for i in document.modelspace().query("INSERT") if i.dxf.layer == layer]


def test_every_brick_of_the_floor_is_an_insert_where_it_is_laid(tmp_path):
    """Counted, and in its place: the plan stands on the front's center line."""
    result, document = read(Design(), tmp_path)
    floor = lay_brickwork(result.geometry).floor
    found = Counter()
    for insert in inserts(document, "pieces"):
        x, y = np.array(insert.dxf.insert.vec2) * INCH
        found[round(x, 5), round(y, 5), insert.dxf.name.rstrip("0123456789 ")] += 1
    low = [(min(x for x, _ in p.ring), min(y for _, y in p.ring)) for p in floor.pieces]
    plan = place_of(
        rings_of(document, INCH)["firebrick"],
        ring := next(r for r in plan_rings(result.geometry.by_name["firebox lining"], 0.2)),
        low=-1e-6,
    )
    assert plan[0] == pytest.approx(0.0, abs=1e-9), "on the center line"
    assert len(ring) >= 4
    for x, y in low:
        assert found[round(x + plan[0], 5), round(y + plan[1], 5), "firebrick"] == 1


def test_the_base_plan_shows_its_block_as_it_is_laid(tmp_path):
    """Every block of the first course once, inside the outline of the walls."""
    result, document = read(Design(), tmp_path)
    (course, *_) = lay_brickwork(result.geometry).block_courses
    found = [i for i in inserts(document, "pieces") if i.dxf.name.rstrip("0123456789 ") == "block"]
    assert len(found) == len(course.blocks) > 5
    footing = place_of(
        rings_of(document, INCH)["concrete"],
        result.geometry.by_name["footing"].plan(result.geometry.frame.footing_top - 0.1)[0][0],
    )
    wanted = sorted(
        (round(min(x for x, _ in ring), 4), round(min(y for _, y in ring), 4))
        for ring, _ in course.blocks
    )
    stood = sorted(
        tuple(np.round(np.array(i.dxf.insert.vec2, float) * INCH - footing, 4).tolist())
        for i in found
    )
    assert np.abs(np.array(stood) - np.array(wanted)).max() < 2e-4


def test_every_course_that_the_section_cuts_is_a_piece(tmp_path):
    """As high as the one list of courses has it."""
    result, document = read(Design(), tmp_path)
    corner = section_corner(result, document, INCH)
    high = defaultdict(set)
    for insert in inserts(document, "pieces"):
        kind = insert.dxf.name.rstrip("0123456789 ")
        box = bbox.extents([insert])
        high[kind].add((box.extmin.y * INCH - corner[1], box.size.y * INCH))
    for part in ("base walls", "firebox lining", "flue liner", "chimney walls"):
        cut = [ring for ring in result.geometry.by_name[part].section()]
        low, top = min(z for r in cut for _, z in r), max(z for r in cut for _, z in r)
        for course in course_list(result.geometry).of(part):
            if low - 1e-6 <= course.bottom and course.top <= top + 1e-6:
                wanted = np.array((course.bottom, course.height))
                near = min(np.abs(np.array(one) - wanted).max() for one in high[part])
                assert near < 1e-5, course


def test_levels_are_inserts_that_tell_name_and_height(work):
    _, result, document, unit = work
    f = result.geometry.frame
    found = {}
    for insert in inserts(document, "levels"):
        said = {a.dxf.tag: a.dxf.text for a in insert.attribs}
        for name in said["NAME"].split(", "):
            found[name] = (said["LEVEL"], insert.dxf.insert.y * unit)
    for name, z in {
        "hearth": f.hearth,
        "throat": f.throat,
        "underside": f.footing_bottom,
    }.items():
        assert found[name][1] == pytest.approx(z, abs=1e-3), name
    assert found["floor"][0] in ("0'-0\"", "0")


@pytest.mark.parametrize("long", ["Lake house", "A name with no end " * 30, "W" * 300])
def test_the_title_block_says_whose_it_is_and_keeps_within_its_frame(long, tmp_path):
    design = change(Design(), {"name": long, "job.client": long, "job.drawn": "Somebody"})
    result, document = read(design, tmp_path)
    (insert,) = inserts(document, "title-block")
    said = {a.dxf.tag: a.dxf.text for a in insert.attribs}
    assert said["JOB"][:6] == long[:6] and said["INPUTS"] == f"Inputs {fingerprint(design)}"
    assert said["CLIENT"].startswith(f"Client: {long[:5]}") and said["DRAWN"] == "Drawn: Somebody"
    frame = bbox.extents(insert.virtual_entities())
    for attribute in insert.attribs:
        if not attribute.dxf.text:
            continue
        text = document.modelspace().add_text(attribute.dxf.text, height=attribute.dxf.height)
        text.set_placement(attribute.dxf.insert)
        assert bbox.extents([text]).extmax.x < frame.extmax.x, attribute.dxf.text


def test_views_do_not_lie_on_each_other(work):
    """Everything that hangs on one view's place keeps clear of the others' outlines."""
    _, _, document, unit = work
    stood = list(names(document, unit).values())
    for k, one in enumerate(stood):
        assert all(np.abs(one - other).max() > 0.5 for other in stood[:k])
    rings = [r for layer in rings_of(document, unit).values() for r in layer]
    solids = shapely.union_all([shapely.Polygon(r).buffer(0) for r in rings if len(r) > 2])
    for _, a, b, line, entity in spans(document, unit):
        text = entity.get_geometry_block().query("TEXT MTEXT")[0]
        spot = np.array(text.dxf.insert.vec2, float) * unit
        assert not solids.contains(shapely.Point(spot)), (a, b, line)


# -- figures of the sheets ------------------------------------------------------------------------
LENGTH = {
    "feet-inches": re.compile(r"-?(\d+'-)?\d*( ?\d+/\d+)?\"|-?\d+'-0\""),
    "millimetres": re.compile(r"\d[\d\s]*"),
}


def disagreements(result, units):
    """Lengths written in dimension strings, those of the set-out sheet too, that are not what their
    string measures, to the last mark at each end.
    """
    wrong, mark = [], INCH / 16 if units == "feet-inches" else MM
    set_out = (
        placed.figure for placed in set_out_figures(result.geometry, units, 48 if mark > MM else 50)
    )
    for figure in (*set_out, *sheet_figures(result, units)):
        made = on_paper(figure)
        for string in made.sheet.measured:
            gaps = np.diff(string.stops) / made.view.scale
            for n in range(*string.written):
                text = made.sheet.labels[n].text
                if LENGTH[units].fullmatch(text):
                    value = said(re.sub(r"\s", "", text) if mark == MM else text, UNIT[units])
                    if np.abs(gaps - value).min() > mark + 1e-6:
                        wrong.append((figure.key, text, gaps))
    return wrong


def test_what_figures_say_is_what_the_file_measures(work):
    """To a sixteenth, and to a millimeter."""
    assert disagreements(work[1], {unit: name for name, unit in UNIT.items()}[work[3]]) == []


def test_every_figure_of_the_sheets_stands_in_the_file_once(work):
    """By its mark and name, but for those that are drawn from the solids."""
    _, result, document, unit = work
    units = "feet-inches" if unit == INCH else "millimetres"
    wanted = [
        f"{f.mark} {f.name}".strip()
        for f in sheet_figures(result, units)
        if f.key not in AT_TRUE_SIZE
    ]
    assert len(wanted) >= 5
    found = Counter(
        text.dxf.text
        for text in document.modelspace().query("TEXT")
        if text.dxf.height * unit == pytest.approx(0.1)
    )
    assert {name: found[name] for name in wanted} == Counter(wanted)


# -- which dimensions -----------------------------------------------------------------------------
def test_rows_of_dimensions_tie_every_place_once():
    """A tree has one edge less than it has places, and reaches all of them."""
    places = [0.0, 0.02, 0.3, 0.31, 0.32, 0.9, 1.5, 1.51]
    rows = span_rows(places, [0.9], 0.24)
    gaps = [gap for row in rows for gap in row]
    assert len(gaps) == len(places) - 1
    known, loose = tied(places, gaps, 0.9)
    assert known == pytest.approx(places) and not loose
    for row in rows[1:]:
        for k, (low, high) in enumerate(row):
            assert all(high < a or b < low for a, b in row[:k])


def test_of_a_pair_across_the_center_line_one_is_enough():
    assert half_of([-0.5, 0.5, 0.7, -0.3, 0.0]) == [-0.3, 0.0, 0.5, 0.7]


def test_a_unit_system_nobody_has_is_refused(tmp_path):
    with pytest.raises(InputError, match="feet-inches"):
        write_dxf(assess(load(DATA / "designs" / "plain.toml")), tmp_path / "a.dxf", "cubits")


# -- against the set-out sheet ---------------------------------------------------------------------
def strays(result, document, unit):
    """Ticks of the set-out sheet's front and section that the file dimensions nowhere: key of the
    figure, direction, place. [m]
    """
    corners = {"front": np.zeros(2), "section": section_corner(result, document, unit)}
    wrong = []
    for placed in set_out_figures(result.geometry, "feet-inches", 24):
        if placed.figure.key not in corners:
            continue
        made, corner = on_paper(placed.figure), corners[placed.figure.key]
        for string in made.sheet.measured:
            upright = string.along == "y"
            axis = 1 if upright else 0
            known = [
                p[axis] - corner[axis]
                for turned, a, b, _, _ in spans(document, unit)
                for p in (a, b)
                if turned == upright
            ]
            known = np.array([*known, 0.0])
            known = np.concatenate([known, -known]) if placed.figure.key == "front" else known
            for stop in string.stops:
                at = made.true((0.0, stop) if upright else (stop, 0.0))[axis]
                if np.abs(known - at).min() > 0.001:
                    wrong.append((placed.figure.key, string.along, round(at, 4)))
    return wrong


def test_sheet_and_file_dimension_the_same_places(work):
    """Whatever the set-out sheet measures between, the file measures between, within 1 mm."""
    _, result, document, unit = work
    assert strays(result, document, unit) == []


def file_agrees(result, units, folder):
    """Everything that is asked of a file above, of any design."""
    unit = UNIT[units]
    document = ezdxf.readfile(write_dxf(result, folder / f"{units}.dxf", units))
    checked = document.audit()
    assert not checked.errors and not checked.fixes
    corner = section_corner(result, document, unit)
    rings, front = [ring for _, ring in sections(result)], front_rings(result, document, unit)
    assert drawn_again(document, unit, corner, rings, (0.0, 0.0, False)) == []
    assert drawn_again(document, unit, np.zeros(2), front, (0.0, 0.0, True)) == []
    assert summed(document, unit, corner, rings, (0.0, 0.0)) == []
    assert summed(document, unit, np.zeros(2), front, (0.0, 0.0)) == []
    painted_true(document, unit)
    assert strays(result, document, unit) == []
    assert disagreements(result, units) == []
    drawn = Counter(
        a.dxf.text
        for insert in document.modelspace().query("INSERT")
        for a in insert.attribs
        if a.dxf.tag == "MARK"
    )
    ordered = {row.item: row.net for row in result.takeoff if row.item.startswith("Piece ")}
    assert {item[6:].partition(", ")[0]: net for item, net in ordered.items()} == drawn


@pytest.mark.parametrize("name", sampled(WORKS, 2))
def test_millimeters_and_inches_read_the_same(name, tmp_path):
    """Last in this file: what ``work`` has read is not read again."""
    design = change(Design(), WORKS[name])
    for units, unit in UNIT.items():
        if (name, unit) not in TOLD:
            TOLD[name, unit] = told(read(design, tmp_path, units)[1], unit)
    for one, other in zip(*(TOLD[name, unit] for unit in UNIT.values()), strict=True):
        assert one[:2] == other[:2] and one[2] == pytest.approx(other[2], abs=1e-6)


@pytest.mark.parametrize("turned", [0.0, 0.4])
def test_a_curve_has_no_corners_but_where_it_reaches_farthest(turned):
    """A box of four corners keeps them; a circle of 72 keeps four; an arch of a half circle on two
    legs keeps its two feet beside those of the curve.
    """

    def at(points):
        spin = complex(np.cos(turned), np.sin(turned))
        return [((complex(*p) * spin).real, (complex(*p) * spin).imag) for p in points]

    box = at([(1, 1), (4, 1), (4, 3), (1, 3)])
    assert sorted(ring_corners(box)) == sorted(box)
    circle = at([(5 + np.cos(a), 5 + np.sin(a)) for a in np.arange(72) * np.pi / 36])
    assert len(list(ring_corners(circle))) == 4
    for axis in (0, 1):
        kept = [point[axis] for point in ring_corners(circle)]
        every = [point[axis] for point in circle]
        assert (min(kept), max(kept)) == (min(every), max(every))
    arch = at([(-1, -2), (1, -2), *[(np.cos(a), np.sin(a)) for a in np.arange(37) * np.pi / 36]])
    kept = list(ring_corners(arch))
    assert {arch[0], arch[1]} <= set(kept) and len(set(kept)) <= 6


def test_a_dimension_begins_at_the_nearest_point_of_its_place():
    """The lowest of those at that place, or the highest; farthest right of those at that level."""
    spots = [(0.0, 1.0), (0.0, -2.0), (5.0, 7.0), (3.0, -2.0)]
    assert _Reached(spots, 0)(0.0) == -2.0 and _Reached(spots, 0, high=True)(0.0) == 1.0
    assert _Reached(spots, 1)(-2.0) == 3.0 and _Reached(spots, 0)(9.0) == 0.0


def test_a_level_mark_stands_on_its_level_in_any_unit(work):
    """A triangle on its point, as wide as it is high; height and name beside it, to the right."""
    _, _, document, unit = work
    block = document.blocks[LEVEL]
    (ring,) = block.query("LWPOLYLINE")
    corners = np.array([(x, y) for x, y, *_ in ring.get_points()]) * unit
    half = TRIANGLE / 2
    assert corners == pytest.approx(np.array([(0, 0), (-half, TRIANGLE), (half, TRIANGLE)]))
    spots = {tag.dxf.tag: np.array(tag.dxf.insert.vec2) * unit for tag in block.query("ATTDEF")}
    assert spots["LEVEL"] == pytest.approx((0.02 + TRIANGLE, 0.02))
    assert spots["NAME"] == pytest.approx((0.02 + TRIANGLE, -0.07))
    for mark in document.modelspace().query("INSERT"):
        if mark.dxf.name == LEVEL:
            foot = np.array(mark.dxf.insert.vec2)
            for tag in mark.attribs:
                apart = (np.array(tag.dxf.insert.vec2) - foot) * unit
                assert apart == pytest.approx(spots[tag.dxf.tag], abs=1e-6)
                assert tag.dxf.height * unit == pytest.approx(LETTERS)


def test_a_place_on_the_split_is_dimensioned_from_below():
    """By hand: 0.1 at the foot, 0.2 on the split, 0.3 over it."""
    spots = ((0.1, 0.0), (0.2, 1.0), (0.3, 1.5))
    view = TrueView("one", "One", (0.0, 0.0, 0.3, 1.5), spots=spots, split=1.0)

    def ends(rows):
        return {round(end, 6) for row in rows for gap in row for end in gap[:2]}

    assert ends(view.rows_across()) == {0.1, 0.2}
    assert 0.3 in ends(view.rows_over()) and not {0.1, 0.2} & ends(view.rows_over())


@pytest.mark.parametrize("bond", ["coursed rubble", "random rubble"])
@pytest.mark.parametrize("hearth", ["0 in", "12 in"])
def test_stones_of_the_file_are_those_of_the_sheet_and_of_the_scene(bond, hearth):
    """Set out from the hearth: over a raised one the file had other stones than the elevation."""
    told = {"surround.face": "stone", "surround.stone_bond": bond, "base.hearth_level": hearth}
    geometry = build_geometry(change(Design(), told))
    face, holes = _face_region(geometry)
    found = _stone(geometry)
    assert len(found) > 100 and len([*_face(geometry)]) == 0
    (left, low), (right, top) = np.min(face, axis=0), np.max(face, axis=0)
    up = to_si(hearth, "length")
    whole = stone_joints(bond, (left, right, low - up, top - up)) + (0.0, up)
    region = Polygon(face).difference(unary_union([Polygon(hole) for hole in holes]))
    inside = unary_union([LineString(line) for line in whole]).intersection(region)
    drawn = unary_union([LineString(line) for line in found])
    assert drawn.length == pytest.approx(inside.length, rel=1e-3)
    assert drawn.difference(inside.buffer(1e-6)).length < 1e-6


def test_a_face_of_plaster_has_no_bricks_and_one_of_brick_no_stones():
    for face, unit in (("plaster", None), ("brick", "facing brick"), ("tile", "tile")):
        geometry = build_geometry(change(Design(), {"surround.face": face}))
        assert {piece.name for piece in _face(geometry)} == ({unit} if unit else set())
        assert _stone(geometry).shape == (0, 2, 2)


def test_what_has_no_hatch_is_not_hatched():
    assert pattern("air", 1.0) is None and pattern("brick", 1.0)
    asked = SimpleNamespace(scale=1.0)
    DxfPen.hatch(asked, SimpleNamespace(material="air", rings=()))  # asks nothing of a pen


def test_a_seat_is_seen_in_the_plan_at_the_hearth():
    """Beyond a hearth of 36 in with 12 in beside it: 40 and 20 in, 20 in deep as the extension."""
    told = {"seat.left": "40 in", "seat.right": "20 in", "base.hearth_level": "16 in"}
    seen = hearth_plan(build_geometry(change(Design(), told))).seen
    boxes = [(name, *np.min(ring, axis=0), *np.max(ring, axis=0)) for name, ring in seen]
    stone = np.array([box[1:] for box in boxes if box[0] == "stone"]) / INCH
    assert np.allclose(stone, [(-30, -20, 30, 0), (-70, -20, -30, 0), (30, -20, 50, 0)])
    bare = hearth_plan(build_geometry(Design())).seen
    assert [name for name, _ in bare] == ["firebrick", "stone"]


def test_a_level_that_cuts_nothing_has_no_plan(monkeypatch):
    geometry, cut = build_geometry(Design()), cut_views._cut
    monkeypatch.setattr(cut_views, "_cut", lambda g, z, more: [] if 0 < z < 2 else cut(g, z, more))
    assert [view.name for _, view in cut_views.level_plans(geometry)] == [
        "Plan at the base", "Plan at the flue",
    ]  # fmt: skip
