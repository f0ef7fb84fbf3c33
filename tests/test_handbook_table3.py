"""All 19 fireplaces of an old government table as designs.

Source: USDA Farmers' Bulletin 1889 (1941), table 3, read twice through a scan whose slips were
mended by its own rule (vertical and inclined back make the opening height and six inches).
Confidence and notes stand in the file.
"""

from math import pi

import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.tables import rows
from fireplace_calc.base.tables.liners import rectangular_liner, round_liner
from fireplace_calc.base.units import INCH, SQIN
from fireplace_calc.design.records import Design

TABLE = rows("fb1889_table3.csv")
LINERS = ("rectangular", "round")
FLUE_RULES = {"FLU-10", "FLU-11", "FLU-12", "FLU-13"}

SHORT_TODAY = {
    "rectangular": {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 13, 14, 15, 16, 17, 18, 19},
    "round": {13, 16},
}
"""Rows whose flue is smaller than the 2021 code asks of its opening.

The bulletin took a twelfth of the opening by the liner's bare inside; today's code takes a twelfth
for round flues only, a tenth for square and oblong ones, an eighth from two to one on, and its own
net areas. Of the rectangular flues only row 11 still does: 173 in2 against 172.8. The round ones do
but for rows 13 and 16 (2160 in2 on a 15 in flue).
"""

OVER_TWELVE = {"rectangular": {2, 3, 5, 9, 14}, "round": {13, 16}}
"""Rows past the bulletin's own twelve to one, by the bare inside: 12.1 to 12.8, and row 14 with
13.3, which may be a slip of the print or of the scan. The walls of its rectangular liners are
recalled; the round ones are geometry.
"""


def number(row: dict, name: str) -> float:
    return float(row[name])


def inches(value: float) -> str:
    return f"{value} in"


def design(row: dict, liner: str, depth: str) -> Design:
    """One row as a design: what the table gives, and for the rest a plain laid fireplace with room
    for its throat.
    """
    size = (
        row["rect_flue_outside_in"] if liner == "rectangular" else row["round_flue_inside_dia_in"]
    )
    return change(
        Design(),
        {
            "name": f"Table row {row['row']}, {liner} flue",
            "opening.width": inches(number(row, "opening_width_w_in")),
            "opening.standard_height": inches(number(row, "opening_height_h_in")),
            "firebox.depth": inches(number(row, f"depth_d_{depth}_in")),
            "firebox.back_width": inches(number(row, "min_back_c_in")),
            "firebox.vertical_back": inches(number(row, "vertical_back_a_in")),
            "throat.height": "6 in",
            "throat.depth": "4 in",
            "firebox.breast": "4 in",
            "flue.shape": liner,
            "flue.size": size,
        },
    )


EVERY = [
    pytest.param(row, liner, depth, id=f"{row['row']}-{liner}-{depth}")
    for row in TABLE
    for liner in LINERS
    for depth in ("min", "max")
]


def test_the_table_is_whole():
    assert [int(row["row"]) for row in TABLE] == list(range(1, 20))


@pytest.mark.parametrize(("row", "liner", "depth"), EVERY)
def test_a_row_goes_in_and_levels_areas_checks_and_takeoff_come_out(row, liner, depth):
    result = assess(design(row, liner, depth))
    frame, levels = result.geometry.frame, result.levels
    height, vertical = number(row, "opening_height_h_in"), number(row, "vertical_back_a_in")
    inclined = number(row, "inclined_back_b_in")

    assert (levels["back bend"] - levels["hearth"]) / INCH == pytest.approx(vertical)
    assert (levels["throat"] - levels["back bend"]) / INCH == pytest.approx(inclined), (
        "a + b = h + 6"
    )
    assert (levels["throat"] - levels["opening top"]) / INCH == pytest.approx(6)
    assert (levels["opening top"] - levels["hearth"]) / INCH == pytest.approx(height)

    assert frame.opening_area / SQIN == pytest.approx(number(row, "opening_area_in2_calc"))
    assert frame.back_width / INCH == pytest.approx(number(row, "min_back_c_in"))
    assert frame.depth / INCH == pytest.approx(number(row, f"depth_d_{depth}_in"))
    assert frame.adjusted == () or all("set back" in said for said in frame.adjusted), (
        "drawn as the table has it"
    )

    assert sum(p.volume for p in result.parts) == pytest.approx(
        sum(r.volume for r in result.takeoff)
    )
    items = {r.item: r for r in result.takeoff}
    assert items["Clay flue liner"].net == 10
    width, deep, back = (
        number(row, n) for n in ("opening_width_w_in", f"depth_d_{depth}_in", "min_back_c_in")
    )
    floor = deep * (width + back) / 2
    upright = back * vertical + 2 * deep * vertical
    bricks = items["Firebrick, whole"].net + items["Firebrick, cut"].net
    assert bricks > floor / (9.125 * 4.625) + upright / (9.125 * 2.625), (
        "floor and upright walls, joints counted in"
    )
    assert {f.verdict for f in result.findings} <= {
        "meets",
        "falls short",
        "does not apply",
        "not checked",
    }
    assert sum(result.counts.values()) == len(result.findings) > 70


@pytest.mark.parametrize("liner", LINERS)
def test_ratio_of_opening_to_bare_flue_is_the_tables(liner):
    """Columns 'calc' of the file, two decimals; and which rows stand past the bulletin's own twelve
    to one.
    """
    past = set()
    for row in TABLE:
        frame = assess(design(row, liner, "min")).geometry.frame
        ratio = frame.opening_area / frame.bore.area
        column = (
            "opening_over_rect_inside_area_calc"
            if liner == "rectangular"
            else "opening_over_round_area_calc"
        )
        assert ratio == pytest.approx(number(row, column), abs=0.0051)
        assert ratio < 13.3, "7 percent over twelve, and row 14"
        past |= {int(row["row"])} if ratio > 12 else set()
    assert past == OVER_TWELVE[liner]


@pytest.mark.parametrize("depth", ["min", "max"])
@pytest.mark.parametrize("liner", LINERS)
def test_rows_whose_flue_is_smaller_than_todays_code_asks_are_these(liner, depth):
    found = {
        int(row["row"])
        for row in TABLE
        for f in assess(design(row, liner, depth), pack="US IRC 2021").findings
        if f.key in FLUE_RULES and f.verdict == "falls short"
    }
    assert found == SHORT_TODAY[liner]


@pytest.mark.parametrize("liner", LINERS)
def test_those_rows_are_so_by_the_codes_own_areas(liner):
    """The same list straight from the code's net areas (table R1003.14) and divisors, without our
    rules.
    """
    short = set()
    for row in TABLE:
        opening = number(row, "opening_area_in2_calc")
        if liner == "round":
            net, divisor = round_liner(row["round_flue_inside_dia_in"]).net_area / SQIN, 12
        else:
            flue = rectangular_liner(row["rect_flue_outside_in"])
            net, divisor = flue.net_area / SQIN, 8 if flue.outside_b >= 2 * flue.outside_a else 10
        short |= {int(row["row"])} if opening > net * divisor + 1e-6 else set()
    assert short == SHORT_TODAY[liner]


@pytest.mark.parametrize(
    ("row", "flue", "ratio"),
    [
        ("5", "8.5x18", 9.19),
        ("11", "13x18", 9.45),
        ("17", "18x18", 9.67),
    ],
)
def test_published_ratios(row, flue, ratio):
    """FB1889-T3-ratio-1 to -3: 36 x 28 on 8.5x18 (the next size up), 48 x 36 and 60 x 40 as
    printed; at most 12.
    """
    chosen = next(r for r in TABLE if r["row"] == row)
    frame = assess(change(design(chosen, "rectangular", "min"), {"flue.size": flue})).geometry.frame
    assert frame.opening_area / frame.bore.area == pytest.approx(ratio, abs=0.005)
    assert frame.opening_area / frame.bore.area <= 12


def test_round_areas_are_plain_circles():
    for row in TABLE:
        diameter = number(row, "round_flue_inside_dia_in")
        bore = assess(design(row, "round", "min")).geometry.frame.bore
        assert bore.area / SQIN == pytest.approx(pi * diameter**2 / 4)
