"""Files for other programs: read back by the libraries that know them."""

from math import ceil

import ezdxf
import openpyxl
import pytest

from fireplace_calc import assess, change
from fireplace_calc.design import Design
from fireplace_calc.exports import write_dxf, write_spreadsheet
from fireplace_calc.takeoff import bill, goods, prices, second_opinion
from fireplace_calc.units import CUFT, INCH, MM, SQFT, InputError


@pytest.mark.parametrize(("units", "unit"), [("feet-inches", INCH), ("millimetres", MM)])
def test_dxf_read_back_measures_the_same(boathouse, tmp_path, units, unit):
    """Dimension entities of the file, measured by ezdxf, against the frame; $INSUNITS 1 is inches, 4 millimetres."""
    result = assess(boathouse)
    document = ezdxf.readfile(write_dxf(result, tmp_path / "set.dxf", units))
    assert document.units == {"feet-inches": 1, "millimetres": 4}[units]
    assert not document.audit().has_errors
    measured = [d.get_measurement() * unit for d in document.modelspace().query("DIMENSION")]
    f = result.geometry.frame
    for wanted in (2 * f.half_width, f.opening_top - f.hearth, f.depth, f.throat_back - f.throat_front, f.back_width,
                   f.liner_top - f.hearth, f.flue_start - f.throat):
        assert min(abs(m - wanted) for m in measured) < 1e-6
    materials = {part.material.replace(" ", "-") for part in result.parts if part.section()}
    assert materials <= {layer.dxf.name for layer in document.layers}


def test_the_spreadsheet_adds_up_by_its_own_formulas(boathouse, tmp_path):
    """Its three formulas, worked here from the cells they name, give the order and the cost of the bill."""
    for design in (boathouse, Design()):
        result = assess(design)
        sheet = openpyxl.load_workbook(write_spreadsheet(result, prices(), tmp_path / "order.xlsx"))["Order"]
        total = 0.0
        for number, row in enumerate(result.takeoff, 6):
            assert sheet.cell(number, 7).value == f"=ROUNDUP(ROUND(D{number}*(1+E{number})/F{number},9),0)*F{number}"
            assert sheet.cell(number, 9).value == f'=IF(H{number}="",0,G{number}*H{number})'
            net, waste, step, price = (sheet.cell(number, column).value for column in (4, 5, 6, 8))
            order = ceil(round(net * (1 + waste) / step, 9)) * step
            assert order == pytest.approx(row.order) and step == goods()[row.item].step
            total += order * price
        last = 5 + len(result.takeoff)
        assert sheet.cell(last + 1, 9).value == f"=SUM(I6:I{last})"
        assert total == pytest.approx(bill(result.takeoff, prices()).total)


def test_an_item_without_a_price_is_named_and_not_free():
    result = assess(Design())
    known = {item: price for item, price in prices().items() if item != "Mortar"}
    found = bill(result.takeoff, known)
    assert found.unpriced == ("Mortar",)
    assert found.total < bill(result.takeoff, prices()).total


def test_text_that_looks_like_a_formula_stays_text(tmp_path):
    design = change(Design(), {"name": "=1+1"})
    sheet = openpyxl.load_workbook(write_spreadsheet(assess(design), prices(), tmp_path / "order.xlsx"))["Order"]
    assert sheet["A1"].data_type == "s" and sheet["A1"].value == "'=1+1"


def test_a_price_list_of_your_own(tmp_path):
    path = tmp_path / "mine.csv"
    head = "item,unit,price,currency,per_pack,pack,confidence\n"
    path.write_text(f"{head}Mortar,80-lb bag,12,crown,40,pallet,mine\nCommon brick,piece,9,crown,,,mine\n")
    found = bill(assess(Design()).takeoff, prices(str(path)))
    line = next(line for line in found.lines if line.row.item == "Mortar")
    assert (found.total, found.currency, found.invented) == (12 * line.row.order, "crown", False)
    assert line.packs == ceil(line.row.order / 40)
    assert "Common brick" in found.unpriced, "a price by the piece is no price by the brick"
    path.write_text(f"{head}Mortar,80-lb bag,twelve,crown,,,mine\n")
    with pytest.raises(InputError, match="Line 2"):
        prices(str(path))


def test_a_rule_of_thumb_is_worked_from_its_own_figure():
    """22.5 brick to the cubic foot (USDA FB 1889), 112.5 block to 100 square feet (NCMA TEK 14), from volumes and faces."""
    result = assess(Design())
    said = {o.what: o for o in second_opinion(result.geometry, result.takeoff)}
    net = {row.item: row.net for row in result.takeoff}
    work = sum(p.volume for p in result.parts if p.material == "brick" and p.name not in ("lintel", "arch")) / CUFT
    assert said["Brick by wall measure"].thumb == pytest.approx(22.5 * work)
    assert said["Brick by wall measure"].counted == net["Common brick"] + net["Facing brick"]
    assert said["Mortar, one wythe"].thumb == pytest.approx(11.7 * said["Brick by wall measure"].counted / 1000)
    assert said["Refractory mortar"].thumb == pytest.approx(350 * said["Firebrick"].counted / 1000)
    lined = sum(result.geometry.by_name[name].volume for name in ("firebox lining", "firebox floor")) / CUFT
    assert said["Firebrick"].thumb == pytest.approx(17 * lined)
    assert said["Mortar, thick walls"].thumb == pytest.approx(18 * said["Brick by wall measure"].counted / 1000)
    f, walls = result.geometry.frame, result.geometry.by_name["base walls"]
    assert said["Base block"].thumb == pytest.approx(1.125 * 2 * (2 * f.block_half + f.block_back) * (walls.top - walls.bottom) / SQFT)
