"""How the files for other programs look when they are opened: where the views and their dimensions
stand in the DXF, on which layers and in which colors; how the spreadsheet is laid out and printed.
"""

import ezdxf
import numpy as np
import openpyxl
import pytest
import shapely

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH, MM
from fireplace_calc.design.records import Design
from fireplace_calc.exports import write_dxf, write_spreadsheet
from fireplace_calc.exports.dxf import COLOURS
from fireplace_calc.report.csv_files import FINDING_COLUMNS, harmless
from fireplace_calc.report.sentences import CAUTION
from fireplace_calc.takeoff import total_weight
from fireplace_calc.takeoff.cost import prices

UNITS = [("feet-inches", INCH), ("millimetres", MM)]
BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")


@pytest.fixture(scope="module")
def plain(tmp_path_factory):
    """The plain design's DXF in both systems, by the system's name."""
    folder = tmp_path_factory.mktemp("dxf")
    result = assess(Design())
    return {
        units: ezdxf.readfile(write_dxf(result, folder / f"{units}.dxf", units))
        for units, _ in UNITS
    }


# -- DXF -----------------------------------------------------------------------------------------
@pytest.mark.parametrize(("units", "unit"), UNITS)
def test_lettering_is_right_for_a_print_at_one_to_twenty(plain, units, unit):
    """On paper [mm]: letters 3, ticks and arrows half of that, extension lines 1 past and 1 off."""
    style = plain[units].dimstyles.get("workbook").dxf
    paper = {name: style.get(name) * unit / 20 / MM for name in ("dimtxt", "dimasz", "dimtsz")}
    assert paper == pytest.approx({"dimtxt": 3.0, "dimasz": 1.5, "dimtsz": 1.5})
    for name, wanted in {"dimexe": 1.0, "dimexo": 1.0, "dimgap": 0.75}.items():
        assert style.get(name) * unit / 20 / MM == pytest.approx(wanted)
    titles = plain[units].modelspace().query("TEXT")
    assert {round(t.dxf.height * unit / 20 / MM, 6) for t in titles} == {4.5}


@pytest.mark.parametrize(("units", "unit"), UNITS)
def test_dimensions_are_written_as_the_trade_writes_them(plain, units, unit):
    """DXF reference: $DIMLUNIT 4 is architectural, to 1/16 in (four halvings); 2 is decimal, to
    the whole millimetre. $DIMTAD 1 is over the line.
    """
    style = plain[units].dimstyles.get("workbook").dxf
    wanted = {"feet-inches": (4, 4), "millimetres": (2, 0)}[units]
    assert (style.dimlunit, style.dimdec) == wanted
    assert (style.dimtad, chr(style.dimdsep)) == (1, ".")
    for entity in plain[units].modelspace().query("DIMENSION"):
        assert (entity.dxf.dimstyle, entity.dxf.layer) == ("workbook", "dimensions")


def test_words_and_outlines_are_black_on_white_and_materials_in_color(plain):
    """DXF color index: 7 is white or black, whichever can be seen; 8 and 9 are grays, 1 to 6
    colors.
    """
    layers = {layer.dxf.name: layer.dxf.color for layer in plain["feet-inches"].layers}
    layers = {name: color for name, color in layers.items() if name not in ("0", "Defpoints")}
    assert {n: layers.pop(n) for n in ("dimensions", "words", "outline")} == {
        "dimensions": 7,
        "words": 7,
        "outline": 7,
    }
    assert layers.pop("joints") == 9 and COLOURS["air"] == 8
    assert len(layers) >= 6 and set(layers.values()) <= set(range(1, 7))
    assert len(set(layers.values())) >= 5, "told apart"


def views(document, unit):
    """Every dimension's two points and its line, and the titles, in metres."""
    space = document.modelspace()
    spans = []
    for entity in space.query("DIMENSION"):
        d = entity.dxf
        points = np.array([d.defpoint2.vec2, d.defpoint3.vec2, d.defpoint.vec2], float) * unit
        spans.append((round(d.angle), points))
    titles = {t.dxf.text: np.array(t.dxf.insert.vec2) * unit for t in space.query("TEXT")}
    rings = [
        np.array([(x, y) for x, y, *_ in line.get_points()]) * unit
        for line in space.query("LWPOLYLINE")
    ]
    return spans, titles, rings


FRONT = [  # in inches from the center line and the floor: opening 36 by 30, breast 60 wide
    (0, (-18, 0), (18, 0), -0.25),
    (0, (-30, 0), (30, 0), -0.45),
    (90, (18, 0), (18, 30), 30 * INCH + 0.2),
]
FRONT_TO_SECTION = 30 * INCH + 1.2 + 20 * INCH
"""Half the breast, the space between, and the hearth in front of the section's face. [m]"""
SECTION = [  # level of the footing's underside, its top and the slab's: grade 12 in down, 36 deep
    (0, (0, 0), (20, 0), -48 * INCH - 0.2),
    (0, (8, 38), (12.5, 38), -48 * INCH - 0.4),
    (90, (28.5, -48), (28.5, -36), 34.5 * INCH + 0.2),
    (90, (28.5, -36), (28.5, -6.5), 34.5 * INCH + 0.2),
    (90, (28.5, -6.5), (28.5, 0), 34.5 * INCH + 0.2),
    (90, (28.5, 0), (28.5, 30), 34.5 * INCH + 0.2),
    (90, (28.5, 30), (28.5, 38), 34.5 * INCH + 0.2),
    (90, (28.5, 38), (28.5, 66), 34.5 * INCH + 0.2),
]
SECTION_TO_PLAN = 28.5 * INCH + 1.2 + 1.0 + 30 * INCH
"""Behind the section the masonry's depth, its dimensions' room, the space, half the breast. [m]"""
PLAN = [  # sides splay 1 in 3: 36 - 2 * 20 / 3 = 22-2/3 in of back
    (90, (30, -20), (30, 0), 30 * INCH + 0.2),
    (0, (-18, 0), (18, 0), -20 * INCH - 0.25),
    (0, (-34 / 3, 20), (34 / 3, 20), 28.5 * INCH + 0.2),
    (90, (18, 0), (34 / 3, 20), 30 * INCH + 0.4),
]


@pytest.mark.parametrize(("units", "unit"), UNITS)
@pytest.mark.parametrize(
    ("name", "wanted", "moved"),
    [
        ("front", FRONT, 0.0),
        ("section", SECTION, FRONT_TO_SECTION),
        ("plan", PLAN, FRONT_TO_SECTION + SECTION_TO_PLAN),
    ],
)
def test_dimensions_stand_where_a_draftsman_puts_them(plain, units, unit, name, wanted, moved):
    """Ends and lines worked out from the plain design's own sizes."""
    found, _, _ = views(plain[units], unit)
    for angle, a, b, line in wanted:
        ends = np.array([a, b]) * INCH + (moved, 0)
        near = [
            points
            for turned, points in found
            if turned == angle and np.abs(points[:2] - ends).max() < 0.5 * MM
        ]
        axis = 0 if angle else 1
        at = line + moved if angle else line
        assert any(abs(points[2][axis] - at) < 0.5 * MM for points in near), (a, b, near)


def test_the_whole_height_stands_outside_its_parts(plain):
    """From hearth to flue top, 0.35 m beyond the chain of levels, which ends at the crown."""
    spans, _, _ = views(plain["feet-inches"], INCH)
    levels = assess(Design()).geometry.frame
    upright = [points - (FRONT_TO_SECTION, 0) for turned, points in spans if turned == 90]
    whole = [p for p in upright if abs(p[2][0] - (34.5 * INCH + 0.55)) < MM]
    assert len(whole) == 1
    assert [*whole[0][:2, 1]] == pytest.approx([0.0, levels.liner_top])
    chain = [p for p in upright if abs(p[2][0] - (34.5 * INCH + 0.2)) < MM]
    ends = sorted((p[0][1], p[1][1]) for p in chain)
    assert len(chain) == 7 and ends[-1][1] == pytest.approx(levels.crown_top)
    assert [e[1] for e in ends[:-1]] == pytest.approx([e[0] for e in ends[1:]])


@pytest.mark.parametrize(("units", "unit"), UNITS)
def test_each_view_has_its_title_under_its_left_edge(plain, units, unit):
    _, titles, _ = views(plain[units], unit)
    plan = FRONT_TO_SECTION + SECTION_TO_PLAN
    wanted = {
        "Front elevation": (-30 * INCH, -0.8),
        "Section on the center line": (FRONT_TO_SECTION - 20 * INCH, -48 * INCH - 0.8),
        "Plan at the hearth": (plan - 30 * INCH, -20 * INCH - 0.75),
    }
    assert titles.keys() == wanted.keys()
    for name, place in wanted.items():
        assert titles[name] == pytest.approx(place, abs=MM)


def test_lines_of_dimensions_run_clear_of_the_drawing(tmp_path):
    """Of a raised, arched design too: no line crosses an outline, and none lies on another."""
    design = change(
        BOATHOUSE, {"opening.head": "segmental", "opening.rise": "5 in", "hearth.side": "48 in"}
    )
    document = ezdxf.readfile(write_dxf(assess(design), tmp_path / "set.dxf"))
    spans, titles, rings = views(document, INCH)
    solids = shapely.union_all([shapely.Polygon(ring).buffer(0) for ring in rings])
    lines = []
    for turned, (a, b, at) in spans:
        ends = ((at[0], a[1]), (at[0], b[1])) if turned else ((a[0], at[1]), (b[0], at[1]))
        lines.append(shapely.LineString(ends))
        assert lines[-1].distance(solids) > 0.15, (turned, a, b)
    for k, one in enumerate(lines):
        assert all(one.intersection(other).length < MM for other in lines[:k])
    for place in titles.values():
        assert all(shapely.Point(place).distance(line) > 0.2 for line in lines)
        assert place[1] < min(ring[:, 1].min() for ring in rings if ring[:, 0].min() < 1.5) + 2.5


def test_only_what_there_is_is_drawn(tmp_path):
    """No hearth in front, no dimension of it, and no ring for it in front and plan."""
    bare = ezdxf.readfile(
        write_dxf(assess(change(Design(), {"hearth.front": "0 in"})), tmp_path / "bare.dxf")
    )
    whole = ezdxf.readfile(write_dxf(assess(Design()), tmp_path / "whole.dxf"))
    count = [len(d.modelspace().query("DIMENSION")) for d in (bare, whole)]
    assert count[1] == count[0] + 1
    rings = [len(d.modelspace().query("LWPOLYLINE")) for d in (bare, whole)]
    assert rings[1] >= rings[0] + 4, "in front, section and plan, and its bed"


# -- spreadsheet ---------------------------------------------------------------------------------
@pytest.fixture(scope="module")
def book(tmp_path_factory):
    """The example's order, and what it was made from; two items are without a price."""
    result = assess(BOATHOUSE)
    known = {item: p for item, p in prices().items() if item not in ("Mortar", "Hearth stone")}
    path = tmp_path_factory.mktemp("xlsx") / "order.xlsx"
    return result, openpyxl.load_workbook(write_spreadsheet(result, known, path))


def test_the_order_begins_with_name_caution_and_what_is_not_in_it(book):
    result, opened = book
    sheet = opened["Order"]
    assert (sheet["A1"].value, sheet["A1"].font.b, sheet["A1"].font.sz) == (
        "Boathouse club room, laid",
        True,
        14,
    )
    assert sheet["A2"].value == CAUTION
    assert sheet["A3"].value == (
        "Every price is an invented example: put in your own. Currency: USD. Labor, equipment,"
        f" freight and tax are not in it. Written by {made_by()}."
    )
    assert [sheet.cell(5, 1).value, sheet.cell(5, 14).value] == ["Item", "How counted"]
    for cell in sheet[5]:
        assert cell.font.b and cell.alignment.wrap_text and cell.alignment.vertical == "top"
    last = 5 + len(result.takeoff)
    assert sheet.cell(last + 2, 1).value == (
        "Without a price, and not in the cost: Hearth stone, Mortar."
    )
    assert (opened.properties.creator, opened.properties.title) == (
        made_by(),
        "Boathouse club room, laid",
    )


def test_each_column_is_shown_as_what_it_is(book):
    """Counts to two places, waste in whole per cents, weight in whole kilograms, volume in liters."""
    result, opened = book
    sheet = opened["Order"]
    last = 5 + len(result.takeoff)
    wanted = {
        4: "#,##0.00",
        5: "0 %",
        6: "General",
        7: "#,##0.00",
        8: "#,##0.00",
        9: "#,##0.00",
        10: "#,##0",
        11: "0.000",
        12: "General",
    }
    for row, number in zip(result.takeoff, range(6, last + 1), strict=True):
        assert {k: sheet.cell(number, k).number_format for k in wanted} == wanted
        assert sheet.cell(number, 2).value == row.material
        assert sheet.cell(number, 3).value == row.unit
        assert sheet.cell(number, 4).value == pytest.approx(row.net)
        assert sheet.cell(number, 10).value == pytest.approx(row.weight_kg)
        assert sheet.cell(number, 11).value == pytest.approx(row.volume)
        assert sheet.cell(number, 14).value == (row.note or None)
        known = row.item not in ("Mortar", "Hearth stone")
        assert (sheet.cell(number, 8).value is not None) == known
    assert sheet.cell(last + 1, 1).value == "Whole" and sheet.cell(last + 1, 1).font.b
    for column in (9, 10, 11):
        total = sheet.cell(last + 1, column)
        assert total.font.b and total.number_format == wanted[column]
        letter = "ABCDEFGHIJKL"[column - 1]
        assert total.value == f"=SUM({letter}6:{letter}{last})"
    assert total_weight(result.takeoff) == pytest.approx(result.weight)


def test_the_order_prints_on_pages_one_wide_under_its_headings(book):
    """Landscape, as many pages high as it takes, headings on each; the names stay when one scrolls."""
    sheet = book[1]["Order"]
    assert sheet.page_setup.orientation == "landscape"
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert (sheet.page_setup.fitToHeight, sheet.page_setup.fitToWidth) in ((0, None), (0, 1))
    assert sheet.print_title_rows == "$5:$5" and sheet.freeze_panes == "B6"


def test_no_word_of_the_order_is_hidden_by_a_narrow_column(book):
    """A letter takes about one unit of width; headings wrap, so their longest word counts."""
    result, opened = book
    sheet = opened["Order"]
    longest = {
        "A": [row.item for row in result.takeoff],
        "B": [row.material for row in result.takeoff],
        "C": [row.unit for row in result.takeoff],
    }
    for column, letter in enumerate("ABCDEFGHIJKLMN", 1):
        wide = sheet.column_dimensions[letter].width
        heading = sheet.cell(5, column).value
        needed = max(map(len, [*heading.split(), *longest.get(letter, [])]))
        assert needed <= wide <= max(2.5 * needed, 60), (letter, needed, wide)
    widths = [sheet.column_dimensions[letter].width for letter in "ABCDEFGHIJKLMN"]
    assert widths == [26, 28, 12, 10, 8, 9, 11, 11, 12, 12, 10, 8, 13, 60]


def test_packs_are_worked_out_where_there_are_packs(book):
    result, opened = book
    sheet, known = opened["Order"], prices()
    for number, row in enumerate(result.takeoff, 6):
        price = known.get(row.item)
        pack = price.per_pack if row.item not in ("Mortar", "Hearth stone") else None
        formula = sheet.cell(number, 12).value
        assert formula == (f"=ROUNDUP(G{number}/{pack},0)" if pack else None)
        assert bool(sheet.cell(number, 13).value) == bool(pack)


def test_every_finding_has_its_row(book):
    result, opened = book
    sheet = opened["Findings"]
    assert [cell.value for cell in sheet[1]] == [*FINDING_COLUMNS]
    assert all(cell.font.b for cell in sheet[1]) and sheet.freeze_panes == "B2"
    for number, finding in enumerate(result.findings, 2):
        for cell, name in zip(sheet[number], FINDING_COLUMNS, strict=True):
            value = getattr(finding, name)
            value = harmless(" ".join(value) if isinstance(value, tuple) else value)
            assert cell.value == (None if value == "" else value)
    assert sheet.max_row == 1 + len(result.findings)
