"""Glass doors that are shut while the fire burns: what their inlet takes of the draft, what the fire
then draws, and what happens when they are opened.
"""

from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import designs
from test_draft_examples import reference
from test_draft_properties import closes, fires

from fireplace_calc import assess, change
from fireplace_calc.base.units import SQIN, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.draft import draft_result, draft_results, judgement, settle, spill
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.findings.smoke import SHUT
from fireplace_calc.draft.lighting_up import first_hour
from fireplace_calc.draft.operating import DOORS
from fireplace_calc.draft.physics.house_leaks import door_loss
from fireplace_calc.explore import pressure_steps
from fireplace_calc.explore.sketches import sketch
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.report.draft_report import likely, loss_rows

M, F, N, X = "meets", "falls short", "not checked", "does not apply"


def with_doors(area, **more):
    told = {"fire.doors_inlet": area} | {k.replace("__", "."): v for k, v in more.items()}
    return change(Design(), told)


def found(design):
    return {f.key: f for f in judgement(draft_result(build_geometry(design)))}


def test_an_inlet_is_a_sharp_hole():
    """Formula 7.10 of the draft figures (orifice, 0.6): 355 cm2 at 5 Pa and 1.27 kg/m3 pass 215 m3/h."""
    flow = 215 / 3600 * 1.27
    assert float(door_loss(0.0355, 1.27)) * flow**2 == pytest.approx(5.0, abs=0.03)
    assert float(door_loss(np.inf, 1.2)) == 0.0


@settings(max_examples=100, deadline=None)
@given(fires(), st.floats(5e-4, 0.2))
def test_mass_energy_and_pressure_close_behind_doors(case, area):
    """To a billionth, with the loss of the doors counted in; and that loss by hand: so many cubic
    meters through six tenths of the hole.
    """
    way, fire, around = replace(case[0], doors=area), *case[1:]
    flow = settle(way, fire, around)
    # A pull of less is a house as open as the outdoors: the search's last digit, 1e-12 of the flow,
    # moves its leaks by more than a billionth.
    if flow.stalled or flow.pull < 0.05:
        return
    closes(way, fire, around, flow)
    room = around.pressure / (287.05 * around.room)
    speed = float(flow.air) / (0.6 * area)
    assert float(flow.losses[DOORS]) == pytest.approx(room * speed**2 / 2, rel=1e-9)
    assert float(flow.face) == pytest.approx(float(flow.air) / min(area, way.opening_area))


@settings(max_examples=60, deadline=None)
@given(fires(), st.floats(1e-3, 0.1), st.floats(1.05, 4.0))
def test_less_inlet_less_air_and_hotter_gas(case, area, wider):
    way, fire, around = case
    tight, loose, open_ = (
        settle(replace(way, doors=a), fire, around) for a in (area, area * wider, 0.0)
    )
    if not (tight.stalled or loose.stalled or open_.stalled):
        assert tight.mass < loose.mass * (1 + 1e-9) and loose.mass < open_.mass * (1 + 1e-9)
        assert tight.foot > loose.foot - 1e-6 and loose.foot > open_.foot - 1e-6


def test_doors_as_wide_as_a_barns_are_no_doors():
    way, fire, around = reference([1, 5, 16])
    wide, none = (settle(replace(way, doors=a), fire, around) for a in (1e4, 0.0))
    assert wide.mass == pytest.approx(none.mass, rel=1e-9)
    assert (none.losses[DOORS] == 0).all()


def test_behind_doors_a_fire_needs_its_own_air_and_no_plumes():
    """20 in2 of inlet ask 0.151 m/s through them, 0.0023 kg/s; 3.5 kg/h of oak with a fifth water need
    5.97 times the dry wood, 0.00464 kg/s, by hand: the wood asks more.
    """
    design = with_doors("20 in2")
    out = draft_result(build_geometry(design))
    capture = float(out.spills.capture[1])
    least = 3.5 / 3600 * 0.8 * 5.97 / 1.2041 / (20 * SQIN)
    assert capture == pytest.approx(least, rel=0.003)
    embers = float(out.spills.capture[2])
    assert embers == pytest.approx(max(0.1, least * 0.65 / 3.5), rel=0.003)


def test_open_doors_draw_much_more():
    """A Canadian survey of five units (read in summary): far larger flows with open doors, and no
    smoke in normal burning behind shut ones.
    """
    result = assess(with_doors("20 in2"))
    shut, opened = result.draft.flows, result.draft.tended.flows
    assert (opened.air > 2 * shut.air).all() and (opened.pull > shut.pull).all()
    assert not result.draft.spills.smokes.any() and float(result.odds.smokes) < 0.01
    assert float(assess(Design()).odds.smokes) > 0.05
    assert likely(result).startswith(SHUT) and SHUT not in likely(assess(Design()))
    assert any(row[0] == DOORS for row in loss_rows(result))
    assert not any(row[0] == DOORS for row in loss_rows(assess(Design())))


SMOKES = {"opening__standard_height": "44 in", "opening__width": "48 in", "flue__size": "8.5x13"}


def test_opened_doors_are_judged_as_no_doors():
    """DRF-12 on both sides: it is what DRF-02 says of the same fireplace without doors."""
    for more, verdict in (({}, M), (SMOKES, F)):
        told = more | {"house__leakage": "20"}
        doors, bare = with_doors("20 in2", **told), with_doors(None, **told)
        opened, open_ = found(doors)["DRF-12"], found(bare)["DRF-02"]
        assert opened.verdict == open_.verdict == verdict
        assert (opened.provided, opened.required) == (open_.provided, open_.required)
        assert found(doors)["DRF-02"].verdict == M and SHUT in found(doors)["DRF-02"].note
        assert found(bare)["DRF-12"].verdict == X


def test_suction_counts_doors_open_and_shut():
    """Shut doors pull the room down less; they are opened all the same."""
    doors, bare = found(with_doors("20 in2"))["DRF-05"], found(Design())["DRF-05"]
    assert doors.provided == bare.provided and "open and shut" in doors.note


def test_too_small_an_inlet_is_not_checked():
    """Gas over 350 C is no open fire's: nothing passes on it."""
    for key in ("DRF-02", "DRF-03"):
        finding = found(with_doors("2 in2", house__leakage="7"))[key]
        assert finding.verdict == N and "too small" in finding.note


def test_doors_are_an_accessory():
    """R1001.13 (2021) asks accessories, doors among them, to be listed to UL 907."""
    assert {f.key: f for f in assess(Design()).findings}["CLR-11"].verdict == X
    told = {f.key: f for f in assess(with_doors("20 in2")).findings}["CLR-11"]
    assert told.verdict == N
    listed = with_doors("20 in2", clearance__accessory_ul907="yes")
    assert {f.key: f for f in assess(listed).findings}["CLR-11"].verdict == M
    unlisted = with_doors("20 in2", clearance__accessory_ul907="no")
    assert {f.key: f for f in assess(unlisted).findings}["CLR-11"].verdict == F


def test_an_inlet_larger_than_the_opening_is_refused():
    small = {"opening__width": "18 in", "opening__standard_height": "16 in"}
    assert with_doors("288 in2", **small).fire.doors_inlet == pytest.approx(288 * SQIN)
    with pytest.raises(InputError, match="Glass doors' inlet is 289"):
        with_doors("289 in2", **small)


def same(one, other):
    for field in fields(one):
        a, b = getattr(one, field.name), getattr(other, field.name)
        pairs = [(a[k], b[k]) for k in a] if isinstance(a, dict) else [(a, b)]
        assert all(np.array_equal(*pair) for pair in pairs), field.name


def test_designs_with_and_without_doors_settle_side_by_side():
    """One search for all of them gives each its own answer."""
    made = [sketch(d) for d in (Design(), with_doors("20 in2"), with_doors("5 in2"))]
    for one, together in zip(map(draft_result, made), draft_results(made), strict=True):
        same(one.flows, together.flows)
        same(one.spills, together.spills)
        assert (one.tended is None) == (together.tended is None)
        if one.tended:
            same(one.tended.flows, together.tended.flows)


@settings(max_examples=30, deadline=None)
@given(designs(), st.sampled_from(CASES), st.floats(2.0, 200.0))
def test_the_pressure_along_the_way_ends_in_the_open_air(design, case, area):
    made = build_geometry(change(design, {"fire.doors_inlet": f"{area:.2f} in2"}))
    out = draft_result(made)
    if not out.flows.stalled[CASES.index(case)]:
        steps = pressure_steps(out, made, case)
        assert steps[-1].pressure == pytest.approx(0.0, abs=1e-5 * float(out.flows.draft.max()))


def test_what_smokes_behind_doors_is_what_no_flow_carries():
    """A fire that gets less air than its wood needs stalls, and says so."""
    way, fire, around = reference(16.0, 7.0)
    starved = replace(way, doors=2e-4)
    flow = settle(starved, fire, around)
    assert bool(flow.stalled) and bool(spill(flow, starved, fire, around).smokes)


def test_a_judgement_on_doors_rests_on_what_it_reads():
    """Assumptions are named where something passes; that there are no doors is told, not assumed."""
    shut, bare = ({f.key: f for f in assess(d).judgement} for d in (with_doors("20 in2"), Design()))
    assert bare["DRF-12"].verdict == X and bare["DRF-12"].assumed == ()
    assert "flue.size" in shut["DRF-12"].assumed and shut["DRF-12"].verdict == M
    assert shut["DRF-02"].assumed == bare["DRF-02"].assumed != ()
    assert not any(key.startswith("abroad.") for key in shut["DRF-02"].assumed)


def test_a_fire_is_lit_with_its_doors_open():
    """The first hour of a fireplace with doors is that of the same one without them."""
    doors, bare = (first_hour(build_geometry(with_doors(area))) for area in ("20 in2", None))
    assert doors.face[-1] == pytest.approx(bare.face[-1], rel=1e-9)
    assert doors.least[-1] == pytest.approx(bare.least[-1], rel=1e-9)
