"""A steel firebox unit in masonry: IRC R1001.5.1 (rows FBX-06 to FBX-08 of data/us_irc_sources.csv,
read twice) and Canada 9.22.3.1 (CA-046 to CA-048), both sides of every limit; and that it is drawn,
weighed and ordered as plate and air.
"""

import pytest
from hypothesis import HealthCheck, assume, given, settings
from strategies import designs

from fireplace_calc import assess, change
from fireplace_calc.base.tables import density
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.build.order import order_of_work
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import single
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.takeoff import take_off

M, F, N, X = "meets", "falls short", "not checked", "does not apply"
STEEL = {"firebox.lining": "steel unit", "firebox.lining_thickness": "2 in"}
BUILT = {**STEEL, "firebox.unit_listed": "no"}
THICK = {**BUILT, "firebox.wall": "8 in", "firebox.jamb": "24 in"}
CASES = [
    ("FBX-06", {}, X),
    ("FBX-06", {"firebox.lining": None}, N),
    ("FBX-06", STEEL, N),
    ("FBX-06", {**STEEL, "firebox.unit_listed": "yes"}, X),
    ("FBX-06", BUILT, N),
    ("FBX-06", {**BUILT, "firebox.plate": "1/4 in"}, M),
    ("FBX-06", {**BUILT, "firebox.plate": "6 mm"}, M),
    ("FBX-06", {**BUILT, "firebox.plate": "3/16 in"}, F),
    ("FBX-07", {}, X),
    ("FBX-07", THICK, M),
    ("FBX-07", {**THICK, "firebox.wall": "7.9 in"}, F),
    ("FBX-07", {**THICK, "firebox.unit_listed": None}, N),
    ("FBX-08", {}, X),
    ("FBX-08", {**THICK, "firebox.lining_thickness": "4 in"}, M),
    ("FBX-08", {**THICK, "firebox.lining_thickness": "4-1/8 in"}, F),
    ("FBX-08", {**THICK, "firebox.masonry": "hollow ungrouted"}, F),
    ("FBX-08", {**THICK, "firebox.masonry": None}, N),
    ("FBX-01", STEEL, X),
    ("FBX-02", STEEL, X),
    ("FBX-03", STEEL, X),
]
CANADA = [
    ("CA-041", {**STEEL}, N),
    ("CA-041", {**STEEL, "firebox.unit_listed": "yes"}, M),
    ("CA-041", BUILT, F),
    ("CA-042", STEEL, X),
    ("CA-046", {**STEEL, "firebox.wall": "190 mm"}, M),
    ("CA-046", {**STEEL, "firebox.wall": "189 mm"}, F),
    ("CA-047", {}, X),
    ("CA-047", {"firebox.lining": None}, N),
    ("CA-047", {**STEEL, "firebox.masonry": None}, N),
    ("CA-047", {**STEEL, "firebox.lining_thickness": "50 mm", "firebox.wall": "140 mm"}, M),
    ("CA-047", {**STEEL, "firebox.lining_thickness": "50 mm", "firebox.wall": "139 mm"}, F),
    ("CA-047", {**STEEL, "firebox.masonry": "hollow ungrouted"}, X),
    ("CA-048", STEEL, X),
    (
        "CA-048",
        {
            **STEEL,
            "firebox.masonry": "hollow ungrouted",
            "firebox.lining_thickness": "50 mm",
            "firebox.wall": "240 mm",
        },
        M,
    ),
    (
        "CA-048",
        {
            **STEEL,
            "firebox.masonry": "hollow ungrouted",
            "firebox.lining_thickness": "50 mm",
            "firebox.wall": "239 mm",
        },
        F,
    ),
]


@pytest.mark.parametrize(
    ("pack", "key", "changes", "verdict"),
    [("US IRC 2021", *case) for case in CASES] + [("Canada NBC", *case) for case in CANADA],
)
def test_each_side_of_each_limit(pack, key, changes, verdict):
    finding = {f.key: f for f in assess(change(Design(), changes), pack).findings}[key]
    assert finding.verdict == verdict, finding
    if verdict == M and finding.margin is not None:
        assert finding.margin >= 0


@settings(deadline=None, max_examples=60, suppress_health_check=list(HealthCheck))
@given(designs())
def test_plate_and_air_fill_what_the_lining_fills(design):
    """Whatever the box: the masonry round it is the same as round a firebrick lining as thick, the
    plate weighs its volume of steel, and it is ordered once.
    """
    try:
        brick = build_geometry(change(design, {"firebox.lining_thickness": "3 in"}))
        made = build_geometry(
            change(
                design,
                {
                    "firebox.lining_thickness": "3 in",
                    "firebox.lining": "steel unit",
                    "firebox.plate": "3/8 in",
                },
            )
        )
    except InputError:
        assume(False)
    plate, air = made.by_name["firebox lining"], made.by_name["air chamber"]
    assert plate.material == "steel" and plate.volume > 0 and air.volume > 0
    assert plate.volume + air.volume == pytest.approx(
        brick.by_name["firebox lining"].volume, rel=1e-9
    )
    assert sum(p.volume for p in made.parts + made.voids) == pytest.approx(
        made.outer.volume, rel=1e-9
    )
    row = {r.item: r for r in take_off(made)}["Steel firebox unit"]
    assert row.net == row.order == 1
    assert row.weight_kg == pytest.approx(plate.volume * density("steel"))
    order_of_work(made)


def test_the_plate_of_a_plain_box_by_hand():
    """A box 36 in wide, 20 in deep, without splay or rake, 38 in from slab to throat and a plate of
    1/4 in: two sides, the back, and the floor paving inside them taken out of none.
    """
    made = build_geometry(
        change(
            Design(),
            {
                **STEEL,
                "firebox.splay": "0",
                "firebox.rake": "0 in",
                "firebox.breast": "8 in",
                "firebox.vertical_back": "30 in",
            },
        )
    )
    f = made.frame
    high = f.throat - f.slab_top
    full = (36.5 * 20.25 - 36 * 20) * INCH**2
    # Over the opening the front of the box is the breast, which leans back to the throat.
    lost = 2 * INCH / 4 * f.breast * (f.throat - f.opening_top)
    lost += 2 * INCH / 4 * (f.throat_front - f.breast) * (f.throat - f.opening_top) / 2
    assert made.by_name["firebox lining"].volume == pytest.approx(full * high - lost)


@pytest.mark.parametrize("view", ["front", "section", "plan", "room"])
def test_no_brick_is_drawn_where_there_is_steel(view):
    sheet = single(view, build_geometry(change(Design(), STEEL)), "feet-inches")
    assert "firebrick" not in {tone for _, tone in sheet.fills} or view in ("section", "plan")
    assert "steel" in {tone for _, tone in sheet.fills} or view == "room"
