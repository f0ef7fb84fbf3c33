"""Files for other programs: read back by the libraries that know them."""

import os
import re
import zipfile
from collections import Counter, defaultdict
from dataclasses import replace
from math import ceil
from pathlib import Path
from tempfile import TemporaryDirectory

import ezdxf
import formulas
import numpy as np
import openpyxl
import pytest
import shapely
from built_works import WORKS
from sampled import sampled
from shapely.ops import unary_union

from fireplace_calc import assess, change
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import CUFT, INCH, MM, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.full_papers import paper_set
from fireplace_calc.editing.designfile import load
from fireplace_calc.exports import spreadsheet, write_dxf, write_spreadsheet
from fireplace_calc.exports.order_table import COLUMNS, FIRST, write_order
from fireplace_calc.exports.stored_formulas import StoredBook, _Archive
from fireplace_calc.geometry.assembled.sections import section
from fireplace_calc.geometry.assembled.solids import (
    extent,
    piece_part,
    piece_volume,
    piece_weight,
)
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.report.yard.by_supplier import yard_order
from fireplace_calc.takeoff import goods_for, total_weight
from fireplace_calc.takeoff.cost import bill, prices
from fireplace_calc.takeoff.rules_of_thumb import second_opinion
from fireplace_calc.takeoff.yard.price_list import unit_of

HEADINGS = {cell: key for key, (cell, _, _) in COLUMNS.items()}


def places(sheet):
    """Columns of the order by what they hold, and rows by item, as its own headings say."""
    columns = {HEADINGS[cell.value]: cell.column_letter for cell in sheet[FIRST - 1]}
    rows = {sheet[f"{columns['item']}{n}"].value: n for n in range(FIRST, sheet.max_row + 1)}
    return columns, {item: n for item, n in rows.items() if item}


def test_the_spreadsheet_adds_up_by_its_own_formulas(boathouse, tmp_path):
    """Worked here from the cells they name, formulas give the order and the cost of the bill."""
    for design in (boathouse, Design()):
        result = assess(design)
        sheet = openpyxl.load_workbook(
            write_spreadsheet(result, prices(), tmp_path / "order.xlsx")
        )["Order"]
        at, number = places(sheet)
        total = 0.0
        for row in result.takeoff:
            n = number[row.item]
            net, waste, step, spare, price = (
                sheet[f"{at[key]}{n}"].value for key in ("net", "waste", "step", "spare", "price")
            )
            assert sheet[f"{at['order']}{n}"].value == (
                "=MAX(ROUNDUP(ROUND({net}{n}*(1+{waste}{n})/{step}{n},9),0)*{step}{n},"
                "{net}{n}+{spare}{n})".format(
                    n=n, **{k.replace(" ", "_"): v for k, v in at.items()}
                )
            )
            order = max(ceil(round(net * (1 + waste) / step, 9)) * step, net + spare)
            assert order == pytest.approx(row.order) and step == goods_for(row.item).step
            total += order * (price or 0)
        last = FIRST + len(result.takeoff)
        cost = at["cost"]
        assert sheet[f"{cost}{last}"].value == f"=SUM({cost}{FIRST}:{cost}{last - 1})"
        assert total == pytest.approx(bill(result.takeoff, prices()).total)


def evaluated(path):
    """Every cell as another program works it out: the library ``formulas`` reads the file and runs
    its formulas; by sheet in capitals, column and row.
    """
    model = formulas.ExcelModel().loads(str(path)).finish()
    found = {}
    for key, ranges in model.calculate().items():
        place = re.fullmatch(r"'\[.+\](.+)'!([A-Z]+)(\d+)", str(key))
        if place:
            found[place[1], place[2], int(place[3])] = ranges.value[0, 0]
    return found


def cells_of(design, path, known=None):
    """The order's file as openpyxl has it, with its assessment."""
    result = assess(design)
    known = prices() if known is None else known
    return result, openpyxl.load_workbook(write_spreadsheet(result, known, path))


def same(found, result, known, sheet):
    """Totals and every line as evaluated, against takeoff and bill."""
    at, number = places(sheet)

    def cell(key, n):
        return found["ORDER", at[key], n]

    priced = bill(result.takeoff, known)
    for line in priced.lines:
        n = number[line.row.item]
        assert cell("item", n) == line.row.item
        assert cell("order", n) == pytest.approx(line.row.order, abs=1e-9), line.row.item
        if line.amount is None:
            assert cell("cost", n) == "", line.row.item
        else:
            assert cell("cost", n) == pytest.approx(line.amount), line.row.item
        if line.packs:
            assert cell("packs", n) == line.packs, line.row.item
    last = FIRST + len(priced.lines)
    assert cell("cost", last) == pytest.approx(priced.total)
    assert cell("standing", last) == pytest.approx(total_weight(result.takeoff))
    trim = "Mantel and trim, wood"
    before = sum(row.volume for row in result.takeoff if row.item == trim)
    assert cell("meters", last) == pytest.approx(sum(part.volume for part in result.parts) + before)


@pytest.mark.parametrize("name", sampled(WORKS, 1))
def test_another_program_works_out_the_same_totals(name, tmp_path):
    """Order, cost, packs, weight and volume, evaluated from the file alone."""
    result, book = cells_of(change(Design(), WORKS[name]), tmp_path / "order.xlsx")
    same(evaluated(tmp_path / "order.xlsx"), result, prices(), book["Order"])


RATED = {"Labor, mason": 60.0, "Sales tax": 7.5, "Flashing": 320.0}


@pytest.mark.parametrize("name", ["boathouse", *sampled(["plain", "boathouse-laid"], 0)])
def test_stored_values_are_what_another_program_works_out(name, tmp_path):
    """Every formula of every sheet; two items without a price, some rates beside the list."""
    known = {item: p for item, p in prices().items() if item not in ("Mortar", "Hearth stone")}
    known |= {
        item: replace(known["Footing concrete"], item=item, unit=unit_of(item), price=price)
        for item, price in RATED.items()
    }
    path = tmp_path / "order.xlsx"
    _, book = cells_of(load(DESIGNS / f"{name}.toml"), path, known)
    stored, found = openpyxl.load_workbook(path, data_only=True), evaluated(path)
    tried = 0
    for sheet in book:
        for line in sheet.iter_rows():
            for cell in line:
                if cell.data_type != "f":
                    continue
                value = stored[sheet.title][cell.coordinate].value
                theirs = found[sheet.title.upper(), cell.column_letter, cell.row]
                if value is None or theirs == "":
                    assert (value or "") == theirs == "", (sheet.title, cell.coordinate)
                else:
                    assert theirs == pytest.approx(value, rel=1e-12), (sheet.title, cell.coordinate)
                tried += 1
    assert tried > 200 and {"Order", "By supplier", "Beside the list"} <= set(book.sheetnames)


def order_book(result, known):
    """Order, sums by supplier and what stands beside the list, without the sheets of findings."""
    made = StoredBook()
    found = yard_order(result, known)
    last = write_order(made, result, found, known)
    spreadsheet._by_supplier(made, found, last)
    spreadsheet._besides(made, found, last)
    return made


def worked_out(result, known):
    """What is stored in the book of the order is what another program gets."""
    made = order_book(result, known)
    with TemporaryDirectory() as folder:
        path = Path(folder) / "order.xlsx"
        path.write_bytes(made.content())
        theirs = evaluated(path)
    for title, values in made.values.items():
        for place, value in values.items():
            letter, number = re.fullmatch(r"([A-Z]+)(\d+)", place).groups()
            got = theirs[title.upper(), letter, int(number)]
            wanted = "" if value is None else pytest.approx(value, rel=1e-9, abs=1e-9)
            assert got == wanted, (title, place)
    assert sum(map(len, made.values.values())) > 50


def test_no_formula_is_left_without_its_value(tmp_path):
    """Whoever looks at the file on a phone sees figures: in its own text no formula stands alone."""
    write_spreadsheet(assess(Design()), prices(), tmp_path / "order.xlsx")
    with zipfile.ZipFile(tmp_path / "order.xlsx") as parts:
        text = "".join(
            parts.read(name).decode() for name in parts.namelist() if "worksheets/" in name
        )
    assert text.count("<f>") > 200
    assert len(re.findall(r"</f><v>[-0-9.e]+</v>", text)) == text.count("<f>") - text.count(
        't="str"'
    )
    assert "<v />" not in text and "<v/>" not in text


@pytest.mark.whole
def test_change_a_price_a_waste_or_a_quantity_and_the_totals_follow(boathouse, tmp_path):
    """Cells changed in the file; what another program then gets is the bill of that price, and the
    takeoff of that waste.
    """
    result, book = cells_of(boathouse, tmp_path / "order.xlsx")
    at, number = places(book["Order"])
    last, mortar = FIRST + len(result.takeoff), number["Mortar"]
    before = evaluated(tmp_path / "order.xlsx")
    for title in ("Findings", "Draft", "Structure"):
        del book[title]  # no formula stands there; without them the rest is read quicker
    order = book["Order"]
    order[f"{at['price']}{mortar}"].value = 31.75
    book.save(tmp_path / "price.xlsx")
    dearer = {
        item: replace(price, price=31.75) if item == "Mortar" else price
        for item, price in prices().items()
    }
    after = evaluated(tmp_path / "price.xlsx")
    same(after, result, dearer, order)
    total = ("ORDER", at["cost"], last)
    assert after[total] != pytest.approx(before[total])

    wasteful = change(boathouse, {"waste.mortar": "37 %", "waste.firebrick": "21 %"})
    for row in result.takeoff:
        waste = {"mortar": 0.37, "firebrick": 0.21}.get(goods_for(row.item).waste)
        if waste is not None:
            order[f"{at['waste']}{number[row.item]}"].value = waste
    book.save(tmp_path / "waste.xlsx")
    same(evaluated(tmp_path / "waste.xlsx"), assess(wasteful), dearer, order)

    order[f"{at['price']}{mortar}"].value = None
    net = next(row.net for row in result.takeoff if row.item == "Mortar")
    order[f"{at['net']}{mortar}"].value = 2 * net
    book.save(tmp_path / "none.xlsx")
    found = evaluated(tmp_path / "none.xlsx")
    assert found["ORDER", at["cost"], mortar] == ""
    assert found["ORDER", at["order"], mortar] > 1.9 * after["ORDER", at["order"], mortar]


def test_an_item_without_a_price_is_named_and_not_free():
    result = assess(Design())
    known = {item: price for item, price in prices().items() if item != "Mortar"}
    found = bill(result.takeoff, known)
    assert found.unpriced == ("Mortar",)
    assert found.total < bill(result.takeoff, prices()).total


WIDE = {
    "Order": [20, 30, 30, 30, 26, 12, 10, 8, 9, 9, 11, 11, 9, 11, 12, 12, 12, 11, 11, 11, 10, 10, 8, 14, 8, 8, 70],
    "By supplier": [26, 8, 8, 12, 12, 12],
    "Beside the list": [28, 24, 50, 10, 16, 12, 12, 44],
    "Findings": [9, 16, 36, 14, *[18] * 10, 60, 60, *[18] * 5],
}  # fmt: skip
"""As they were looked at. [letters]"""


def test_columns_are_as_wide_as_they_were_looked_at(boathouse, tmp_path):
    book = cells_of(boathouse, tmp_path / "order.xlsx")[1]
    for title, wide in (
        *WIDE.items(),
        ("Draft", WIDE["Findings"]),
        ("Structure", WIDE["Findings"]),
    ):
        letters = map(openpyxl.utils.get_column_letter, range(1, len(wide) + 1))
        assert [book[title].column_dimensions[letter].width for letter in letters] == wide, title


def test_text_that_looks_like_a_formula_stays_text(tmp_path):
    design = change(Design(), {"name": "=1+1"})
    sheet = openpyxl.load_workbook(
        write_spreadsheet(assess(design), prices(), tmp_path / "order.xlsx")
    )["Order"]
    assert sheet["A1"].data_type == "s" and sheet["A1"].value == "'=1+1"


def test_a_price_list_of_your_own(tmp_path):
    path = tmp_path / "mine.csv"
    head = "item,unit,price,currency,per_pack,pack,confidence\n"
    path.write_text(f"{head}Mortar,80-lb bag,12,crown,40,pallet,mine\n")
    found = bill(assess(Design()).takeoff, prices(str(path)))
    line = next(line for line in found.lines if line.row.item == "Mortar")
    assert (found.total, found.currency, found.invented) == (12 * line.row.order, "crown", False)
    assert line.packs == ceil(line.row.order / 40)
    assert "Common brick" in found.unpriced


def test_a_rule_of_thumb_is_worked_from_its_own_figure():
    """22.5 brick to the cubic foot (USDA FB 1889), 112.5 block to 100 square feet (NCMA TEK 14),
    from volumes and faces.
    """
    result = assess(Design())
    said = {o.what: o for o in second_opinion(result.geometry, result.takeoff)}
    net = {row.item: row.net for row in result.takeoff}
    work = (
        sum(
            p.volume
            for p in result.parts
            if p.material == "brick" and p.name not in ("lintel", "arch")
        )
        / CUFT
    )
    assert said["Brick by wall measure"].by_rule == pytest.approx(22.5 * work)
    assert said["Brick by wall measure"].counted == net["Common brick"] + net["Facing brick"]
    assert said["Mortar, one wythe"].by_rule == pytest.approx(
        11.7 * said["Brick by wall measure"].counted / 1000
    )
    assert said["Refractory mortar"].by_rule == pytest.approx(
        350 * said["Firebrick"].counted / 1000
    )
    lined = (
        sum(result.geometry.by_name[name].volume for name in ("firebox lining", "firebox floor"))
        / CUFT
    )
    assert said["Firebrick"].by_rule == pytest.approx(17 * lined)
    assert said["Mortar, thick walls"].by_rule == pytest.approx(
        18 * said["Brick by wall measure"].counted / 1000
    )
    assert said["Base block"].by_rule == pytest.approx(1.125 * 2 * (60 + 28.5) * 3 * 8 / 144)
    assert said["Base block"].counted == 3 * (6 + 4)  # three full courses, as they are drawn


@pytest.mark.parametrize("name", ["order.xlsx", "drawings.dxf", "papers.pdf", "takeoff.csv"])
def test_whoever_is_killed_while_writing_leaves_the_old_file(
    boathouse, tmp_path, monkeypatch, name
):
    """The new file is put in place in one step; until then only a hidden one stands beside the old
    one, and nobody takes that for a paper.
    """
    result = assess(boathouse)
    (tmp_path / name).write_bytes(b"old")

    class Killed(BaseException):
        pass

    def seen(source, target):
        if Path(target).name == name:
            beside = Path(source)
            assert beside.stat().st_size > 100 and (tmp_path / name).read_bytes() == b"old"
            assert beside.parent == tmp_path
            assert beside.name.startswith(".") and beside.suffix == ".tmp"
            raise Killed

    monkeypatch.setattr(os, "replace", seen)
    with pytest.raises(Killed):
        write_spreadsheet(result, prices(), tmp_path / "order.xlsx")
        write_dxf(result, tmp_path / "drawings.dxf")
        paper_set(result, tmp_path / "papers.pdf")
        write_csv(result, tmp_path)
    assert (tmp_path / name).read_bytes() == b"old"


def test_a_folder_that_is_not_there_is_said(boathouse, tmp_path):
    for write in (
        lambda path: write_spreadsheet(assess(boathouse), prices(), path),
        lambda path: write_dxf(assess(boathouse), path),
    ):
        with pytest.raises(InputError, match="cannot be written: No such file"):
            write(tmp_path / "nowhere" / "file")


# -- pieces of a set in the DXF ---------------------------------------------------------------------
SETS = {
    "small, in inches": ({"pieces.set": "small"}, "feet-inches", INCH),
    "middling, raised, arched": (
        {"pieces.set": "middling", "opening.extension": "12 in", "opening.head": "segmental"},
        "feet-inches",
        INCH,
    ),
    "wide, faced, in millimeters": (
        {"pieces.set": "wide", "pieces.facing": "3-5/8 in"},
        "millimetres",
        MM,
    ),
}


@pytest.fixture(scope="module", params=SETS)
def set_in_dxf(request, tmp_path_factory):
    """A design with a set, its file as ezdxf reads it, and one unit of the file. [m]"""
    told, units, unit = SETS[request.param]
    design = change(Design(), told)
    path = tmp_path_factory.mktemp("dxf") / "set.dxf"
    return design, ezdxf.readfile(write_dxf(assess(design), path, units)), unit


def in_space(document):
    """Inserts that tell of a piece, and what they tell."""
    found = [
        (i, {a.dxf.tag: a.dxf.text for a in i.attribs})
        for i in document.modelspace().query("INSERT")
    ]
    return [(insert, told) for insert, told in found if "MARK" in told]


def corners_of(insert, unit):
    """Corners of every face of an insert where it stands. [m]"""
    faces = [e for e in insert.virtual_entities() if e.dxftype() == "3DFACE"]
    return np.array([[(p.x, p.y, p.z) for p in f.wcs_vertices()] for f in faces]) * unit


def test_every_piece_is_an_insert_of_the_block_of_its_mark(set_in_dxf):
    """Mark and number once; what is told of it is what the set's file says; nothing to mend."""
    design, document, _ = set_in_dxf
    checked = document.audit()
    assert not checked.errors and not checked.fixes
    placed = {(p.piece.mark, str(p.number)): p.piece for p in set_up(design).assembly.placed}
    found = {}
    for insert, told in in_space(document):
        assert insert.dxf.name == told["MARK"] and (told["MARK"], told["NUMBER"]) not in found
        assert insert.dxf.layer == "set-" + told["ROLE"].replace(" ", "-")
        found[told["MARK"], told["NUMBER"]] = told
    assert found.keys() == placed.keys()
    for key, piece in placed.items():
        told = found[key]
        assert (told["NAME"], told["ROLE"], told["MATERIAL"]) == (
            piece.name,
            piece.role,
            piece.material,
        )
        assert float(told["KILOGRAMS"]) == pytest.approx(piece_weight(piece), abs=5.001e-4)
    steps = sorted(int(told["STEP"]) for told in found.values())
    assert len(set(steps)) == len(steps) and steps[-1] == len(steps) + 1, "one step is the lining"


def test_a_block_is_the_pieces_true_form_where_it_stands(set_in_dxf):
    """Volume inside the faces (divergence theorem) that of the closed form, as far as round things
    are faceted: 72 facets hold 0.13 % less. Box as the piece reaches, over the base it stands on.
    """
    design, document, unit = set_in_dxf
    up = set_up(design)
    placed = {p.name: p for p in up.assembly.placed}
    start = assess(design).geometry.frame.plate_bottom
    shifts = set()
    for insert, told in in_space(document):
        one = placed[f"{told['MARK']}.{told['NUMBER']}"]
        corners = corners_of(insert, unit)
        a, b, c = (corners[:, k] for k in range(3))
        volume = np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6
        assert volume == pytest.approx(piece_volume(one.piece), rel=1.5e-3)
        x0, x1, y0, y1, z0, z1 = extent(one.piece)
        low, high = corners.reshape(-1, 3).min(axis=0), corners.reshape(-1, 3).max(axis=0)
        over = one.level + start
        assert [low[2], high[2]] == pytest.approx([z0 + over, z1 + over], abs=1e-6)
        assert [low[1], high[1]] == pytest.approx([y0 + up.set_back, y1 + up.set_back], abs=1e-6)
        assert high[0] - low[0] == pytest.approx(x1 - x0, abs=1e-6)
        shifts.add(round(low[0] - x0, 5))
    assert len(shifts) == 1, "all moved alike"


def test_what_a_block_asks_for_is_answered_in_letters_of_one_height(set_in_dxf):
    """1.5 to 6 mm on paper at 1:20, whether it is asked or answered."""
    _, document, unit = set_in_dxf
    asked = {
        (block.name, entity.dxf.tag): entity.dxf.height * unit
        for block in document.blocks
        for entity in block.query("ATTDEF")
    }
    assert asked and all(0.03 - 1e-9 <= high <= 0.12 for high in asked.values())
    inserts = document.modelspace().query("INSERT")
    told = [(i.dxf.name, a.dxf.tag, a.dxf.height * unit) for i in inserts for a in i.attribs]
    assert told and all(asked[name, tag] == pytest.approx(high) for name, tag, high in told)


def test_only_real_edges_of_a_block_show(set_in_dxf):
    """A plate is a box: twelve edges, each between two of its faces. DXF reference, 3DFACE, code
    70: bit 1 hides the first edge, 2 the second, 4 the third, 8 the fourth.
    """
    _, document, _ = set_in_dxf
    shown = Counter()
    for face in document.blocks.get("PL" if "PL" in document.blocks else "PL30"):
        if face.dxftype() != "3DFACE":
            continue
        corners = [tuple(round(v, 6) for v in p) for p in face.wcs_vertices()]
        corners += [corners[-1]] * (4 - len(corners))
        for k in range(4):
            if not face.dxf.invisible_edges & (1 << k):
                shown[frozenset((corners[k], corners[(k + 1) % 4]))] += 1
    assert len(shown) == 12 and set(shown.values()) == {2}


def test_a_cut_shows_the_pieces_that_it_meets(set_in_dxf):
    """On the center line and at the hearth's level: area of each piece's outline there, by
    shapely from the piece's chords; every piece that is met has its name in it once.
    """
    design, document, unit = set_in_dxf
    up = set_up(design)
    frame = assess(design).geometry.frame
    cuts = [
        (i, i.attribs[0].dxf.text)
        for i in document.modelspace().query("INSERT")
        if [a.dxf.tag for a in i.attribs] == ["PIECE"]
    ]
    z = frame.hearth + min(0.25, max((frame.back_bend - frame.hearth) / 2, 0.01))
    wanted = {}
    for one in up.assembly.placed:
        x0, x1, *_ = extent(one.piece)
        if x0 < -1e-6 and x1 > 1e-6:
            chords = piece_part(one.piece).section()  # line by line, with no mesh
            wanted[one.name, "upright"] = unary_union([shapely.Polygon(r) for r in chords]).area
        over = z - one.level - frame.plate_bottom
        if 0 < over < one.piece.height:
            wanted[one.name, "level"] = float(section(one.piece, over).area())
    found = {}
    for insert, name in cuts:
        rings = [
            shapely.Polygon([(x * unit, y * unit) for x, y, *_ in line.get_points()])
            for line in document.blocks.get(insert.dxf.name).query("LWPOLYLINE")
        ]
        rings.sort(key=lambda ring: -ring.area)
        area = shapely.Polygon()
        for ring in rings:
            area = area.symmetric_difference(ring)
        key = name, insert.dxf.name.split()[-1]
        assert key not in found
        found[key] = area.area
    assert found.keys() == wanted.keys()
    assert found == pytest.approx(wanted, rel=1e-6)


def test_two_marks_that_differ_in_capitals_keep_a_block_each(tmp_path):
    """Names of blocks are the same in capitals and small letters (DXF reference)."""
    text = (DATA / "sets" / "middling.toml").read_text()
    text = text.replace('"WL"', '"wr"')
    (tmp_path / "twins.toml").write_text(text)
    (tmp_path / "job.toml").write_text('[pieces]\nset = "twins"\n')
    design = load(tmp_path / "job.toml")
    document = ezdxf.readfile(write_dxf(assess(design), tmp_path / "twins.dxf"))
    blocks = defaultdict(set)
    for insert, told in in_space(document):
        blocks[told["MARK"]].add(insert.dxf.name)
    assert all(len(names) == 1 for names in blocks.values())
    assert blocks["WR"] != blocks["wr"]


def test_metric_units_of_the_order_are_exact():
    """NIST Handbook 44: a foot is 0.3048 m, a yard 3 of them, a pound 0.45359237 kg."""
    from fireplace_calc.exports.order_table import METRIC

    wanted = {"ft2": 0.3048**2, "ft3": 0.3048**3, "yd3": 27 * 0.3048**3, "ton": 0.90718474}
    wanted |= {"80-lb bag": 80 * 0.45359237, "50-lb pail": 50 * 0.45359237}
    assert {unit: METRIC[unit][0] for unit in wanted} == pytest.approx(wanted)


def test_a_part_of_the_book_that_is_no_sheet_of_values_is_taken_as_it_is(tmp_path):
    (tmp_path / "part").write_text('<c r="A1"><f>1+1</f><v></v></c>')
    (tmp_path / "sheet").write_text(
        '<c r="A1" s="3"><f>1+1</f><v /></c><c r="A2"><f>B1</f><v></v></c>'
    )
    with _Archive(tmp_path / "book.zip", "w") as book:
        book.values = {"xl/sheet1.xml": {"A1": 2.0, "A2": None}}
        book.write(tmp_path / "part", "xl/media/picture.xml")
        book.write(tmp_path / "sheet", "xl/sheet1.xml")
    with zipfile.ZipFile(tmp_path / "book.zip") as read:
        assert read.read("xl/media/picture.xml").decode() == '<c r="A1"><f>1+1</f><v></v></c>'
        told = read.read("xl/sheet1.xml").decode()
    assert '<c r="A1" s="3"><f>1+1</f><v>2.0</v></c>' in told and 't="str"' in told
