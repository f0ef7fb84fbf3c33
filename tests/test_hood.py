"""A metal hood in the opening: what stays open, what every reader of the opening makes of it, and
what it costs.
"""

from pathlib import Path

import ezdxf
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.units import INCH, SQIN, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.draft import DATUMS, trace_flow_path
from fireplace_calc.drawing import single
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.views.face import hood_ring
from fireplace_calc.drawing.views.front_elevation import opening_ring
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.exports.cad.front_bricks import front_view
from fireplace_calc.exports.dxf import write_dxf
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.polygons import area
from fireplace_calc.report.plain_summary import summary
from fireplace_calc.rules.gathering import gather_facts

PLAIN, HOODED = Design(), change(Design(), {"opening.hood": "6 in"})
SHIPPED = Path(__file__).resolve().parents[1] / "data" / "designs"
M, F, N, X = "meets", "falls short", "not checked", "does not apply"


def found(design, pack="US IRC 2021"):
    return {f.key: f for f in assess(design, pack).findings}


def test_the_opening_is_what_stays_open():
    """36 by 30 in under a hood of 6 in is 36 by 24, 864 in2, by hand; the masonry stays as it is."""
    facts = gather_facts(sketch(HOODED))
    assert facts.opening_area == pytest.approx(864 * SQIN, rel=1e-12)
    f = facts.frame
    assert f.opening_area == pytest.approx(1080 * SQIN) and f.clear_area == facts.opening_area
    assert f.opening_top - f.clear_top == pytest.approx(6 * INCH)
    plain = gather_facts(sketch(PLAIN))
    assert facts.throat_height_above_opening == plain.throat_height_above_opening
    assert facts.throat_area == plain.throat_area
    assert '2\'-0" high, 864.0 in² under a metal hood of 6"' in summary(assess(HOODED))
    worked = {w.name: w for w in work_figures(assess(HOODED))}["Opening area"]
    assert worked.formula == "width × height under the hood" and worked.result.startswith("864")


@pytest.mark.parametrize(
    ("pack", "key", "low", "high"),
    [
        ("US IRC 2021", "HTH-07", "5.9 in", "6.1 in"),  # 6 ft2 and over ask for 20 in, 864 in2
        ("US IRC 2021", "HTH-08", "5.9 in", "6.1 in"),
    ],
)
def test_the_class_of_the_opening_goes_by_what_stays_open(pack, key, low, high):
    """R1001.10 parts at 6 ft2, which 36 by 24 in is."""
    assert found(change(PLAIN, {"opening.hood": low}), pack)[key].verdict == M
    assert found(change(PLAIN, {"opening.hood": high}), pack)[key].verdict == X


def test_a_flue_too_small_for_the_opening_does_under_a_hood():
    """8.5 by 13 in has 76 in2 (Table R1003.14), which is 1/10 of 760 in2: 36 in by 21.1."""
    small = {"flue.size": "8.5x13"}
    assert found(change(PLAIN, small | {"opening.hood": "8-7/8 in"}))["FLU-12"].verdict == F
    assert found(change(PLAIN, small | {"opening.hood": "9 in"}))["FLU-12"].verdict == M


def test_england_counts_the_height_from_the_edge_of_the_canopy():
    """4.5 m from the highest point where air can enter: a canopy's edge (read)."""
    plain, hooded = (found(d, "UK ADJ")["UK-007"] for d in (PLAIN, HOODED))
    assert hooded.provided - plain.provided == pytest.approx(152.4)


@pytest.mark.parametrize(("datum", "taller"), [*zip(DATUMS, (6.0, 3.0, 0.0), strict=True)])
def test_the_draft_counts_from_the_hood(datum, taller):
    plain, hooded = (trace_flow_path(build_geometry(d), datum) for d in (PLAIN, HOODED))
    assert hooded.height - plain.height == pytest.approx(taller * INCH, abs=1e-12)
    assert plain.top - hooded.top == pytest.approx(-taller * INCH, abs=1e-12) or taller == 0
    assert hooded.opening_height == pytest.approx(24 * INCH)
    assert (hooded.throat, hooded.chamber) == (plain.throat, plain.chamber)


def test_a_smoking_fireplace_smokes_less_under_a_hood():
    """The old remedy: less opening, less smoke to catch and more speed through the face."""
    wide = change(PLAIN, {"opening.standard_height": "40 in", "flue.size": "12x12"})
    bare, hooded = (assess(d) for d in (wide, change(wide, {"opening.hood": "10 in"})))
    assert hooded.draft.sizing_velocity > bare.draft.sizing_velocity
    assert float(hooded.odds.smokes) < float(bare.odds.smokes)


@settings(max_examples=40, deadline=None)
@given(designs(), st.floats(1.0, 18.0))
def test_what_stays_open_and_the_hood_are_the_opening(design, inches):
    """Whatever the head: areas of the drawn rings add up, and nothing of the masonry moves."""
    try:
        hooded = change(design, {"opening.hood": f"{inches:.3f} in"})
    except InputError as trouble:
        assert "Metal hood" in str(trouble)
        assume(False)
    made, bare = build_geometry(hooded), build_geometry(design)
    opening = opening_ring(made)
    f = made.frame
    ring = area(hood_ring(made, opening))
    assert area(opening) == pytest.approx(ring + f.clear_area, rel=1e-9)
    assert [(p.name, p.volume) for p in made.parts] == [(p.name, p.volume) for p in bare.parts]
    assert assess(hooded).weight == pytest.approx(assess(design).weight, rel=1e-12)


@pytest.mark.parametrize(
    ("changes", "word"),
    [
        ({"opening.standard_height": "20 in", "opening.hood": "9 in"}, "a foot stays open"),
        ({"opening.head": "segmental", "opening.rise": "6 in", "opening.hood": "5 in"}, "spring"),
    ],
)
def test_a_hood_that_cannot_be_is_refused(changes, word):
    with pytest.raises(InputError, match="Metal hood") as refused:
        change(PLAIN, changes)
    assert word in str(refused.value)


def test_one_hood_is_ordered_and_hung_last():
    bare, hooded = assess(PLAIN), assess(HOODED)
    row = next(r for r in hooded.takeoff if r.item == "Metal hood")
    assert (row.net, row.order, row.unit, row.weight_kg) == (1, 1, "piece", 0.0)
    assert '3\'-0" by 6"' in row.note and "not counted" in row.note
    assert [r for r in hooded.takeoff if r is not row] == list(bare.takeoff)
    last = hooded.work.steps[-1]
    assert last.name == "Metal hood" and any("hot" in said for said in last.cautions)
    assert len(hooded.work.steps) == len(bare.work.steps) + 1


@pytest.mark.parametrize("name", ["plain.toml", "boathouse-laid.toml"])
@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_every_view_stays_clean(name, units):
    for hood in ("1 in", "12 in"):
        made = build_geometry(change(load(SHIPPED / name), {"opening.hood": hood}))
        for key in (k for k, view in CATALOGUE.items() if view.suits(made)):
            assert not collisions(single(key, made, units)), (key, hood)


@pytest.mark.parametrize("head", [{}, {"opening.head": "segmental", "opening.rise": "5 in"}])
def test_the_hood_is_drawn_in_front_section_and_file(head, tmp_path):
    """A filled ring on the front, a line down from the head in the section, both on a layer of
    their own in the file.
    """
    design = change(HOODED, head)
    made = build_geometry(design)
    drawing = ezdxf.readfile(write_dxf(assess(design), tmp_path / "drawn.dxf"))
    drawn = drawing.modelspace().query('LWPOLYLINE[layer=="metal"]')
    tall = sorted(max(p[1] for p in ring) - min(p[1] for p in ring) for ring in drawn)
    assert len(drawn) == 2 and tall[0] == pytest.approx(tall[1])
    for key in ("front", "room"):
        filled = [
            sum(
                len(rings)
                for (_, tone), rings in single(key, one, "feet-inches").fills.items()
                if tone == "metal"
            )
            for one in (made, build_geometry(change(PLAIN, head)))
        ]
        assert filled == [1, 0], key
    assert made.levels["hood"] == pytest.approx(made.frame.clear_top)
    words = [text.text for text in single("section", made, "feet-inches").labels]
    assert any("metal hood" in word for word in words)


@pytest.mark.parametrize("hood", ["6 in", "8 in"])
def test_dimensions_of_the_front_reach_the_lower_edge_of_a_hood_under_an_arch(hood):
    """By hand: the lower edge is as far under the crown of the opening as the hood is high."""
    arched = change(PLAIN, {"opening.head": "segmental", "opening.hood": hood})
    made = build_geometry(arched)
    corner = (made.frame.half_width, made.frame.opening_top - arched.opening.hood)
    assert corner in [pytest.approx(spot) for spot in front_view(made).spots]
