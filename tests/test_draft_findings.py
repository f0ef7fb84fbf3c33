"""What the air says of a design: each finding on both sides of its figure, the words round it, and
what is explored from it.
"""

import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.draft import (
    DATUMS,
    MODES,
    draft_result,
    draft_results,
    judgement,
    trace_flow_path,
)
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.findings import ALONE, RULES
from fireplace_calc.draft.physics.air import pressure_at
from fireplace_calc.explore import face_curve, limit_map, pressure_steps
from fireplace_calc.explore.limits import (
    CODE,
    FREE,
    IMPOSSIBLE,
    LIMITS,
    RATIO,
    RATIO_RULES,
    STABILITY,
    VELOCITY,
)
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.report.draft_report import (
    COLUMNS,
    air_doubted,
    air_drawn,
    beside,
    case_rows,
    likely,
    loss_rows,
    sized,
)
from fireplace_calc.report.plain_summary import summary
from fireplace_calc.report.tables import draft_table, judgement_table
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, NOT_CHECKED

BOATHOUSE = load(Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse-laid.toml")
FOUND = draft_result(build_geometry(BOATHOUSE))


def verdict(found, key: str) -> str:
    return next(f for f in judgement(found) if f.key == key).verdict


def with_flows(case: str, **fields):
    """The boathouse's draft result with one evening's figures put in by hand."""
    k, changed = CASES.index(case), {}
    for name, value in fields.items():
        array = np.array(np.broadcast_to(getattr(FOUND.flows, name), len(CASES)), dtype=type(value))
        array[k] = value
        changed[name] = array
    return replace(FOUND, flows=replace(FOUND.flows, **changed))


@pytest.mark.parametrize(
    ("speed", "expected"), [(0.2439, FALLS_SHORT), (0.244, MEETS), (0.2441, MEETS)]
)
def test_face_velocity_of_sizing_mode(speed, expected):
    """0.8 ft/s, printed beside 0.244 m/s; handbook, memory."""
    assert verdict(replace(FOUND, sizing_velocity=speed), "DRF-01") == expected


@pytest.mark.parametrize(
    ("key", "case"),
    [
        ("DRF-02", "mild"),
        ("DRF-03", "winter"),
        ("DRF-04", "dying down, mild"),
        ("DRF-11", "windy, mild"),
    ],
)
def test_smoke_is_carried_off_or_not(key, case):
    capture = float(FOUND.spills.capture[CASES.index(case)])
    for factor, expected in ((0.999, FALLS_SHORT), (1.0, MEETS), (1.001, MEETS)):
        assert verdict(with_flows(case, face=capture * factor), key) == expected
    assert verdict(with_flows(case, stalled=True), key) == FALLS_SHORT


@settings(max_examples=25, deadline=None)
@given(st.floats(0.3, 40.0), st.floats(0.0, 30.0), st.floats(0.5, 9.27))
def test_an_opening_far_too_wide_smokes_whatever_the_house_leaks(leakage, inlet, burn):
    """96 in by 30 on a 13 x 13 flue is 1/23 of the opening; handbooks give 1/8
    to 1/12. Rates up to a test of an ordinary brick fireplace: 9.27 kg/h (California Polytechnic,
    modified CARB Method 5).
    """
    wide = {"opening.width": "96 in", "flue.size": "13x13", "fire.burn_rate": f"{burn!r} kg/h"}
    house = {"house.leakage": leakage, "house.air_inlet": f"{inlet!r} in2"}
    result = assess(change(Design(), wide | house))
    for key in ("DRF-02", "DRF-04", "DRF-11"):
        assert next(f for f in result.judgement if f.key == key).verdict == FALLS_SHORT
    assert result.odds.smokes > 0.5


@pytest.mark.parametrize(("pull", "expected"), [(4.99, MEETS), (5.0, MEETS), (5.01, FALLS_SHORT)])
def test_the_room_is_not_pulled_down_more_than_five_pascals(pull, expected):
    """CSA F326 and F300:2013; over what the warm house pulls by itself."""
    pull = pull + FOUND.spills.stack
    assert verdict(replace(FOUND, flows=replace(FOUND.flows, pull=pull)), "DRF-05") == expected


@pytest.mark.parametrize(("key", "evening"), [("DRF-06", 1), ("DRF-07", 0)])
def test_a_flue_that_does_not_pull_before_it_is_lit(key, evening):
    for excess, expected in ((-0.01, FALLS_SHORT), (0.0, MEETS), (0.01, MEETS)):
        both = np.array([1.0, 1.0])
        both[evening] = excess
        assert (
            verdict(replace(FOUND, lighting=replace(FOUND.lighting, excess=both)), key) == expected
        )


def canada(area: float, height: float, diameter: float, key: str) -> str:
    way = replace(FOUND.path, opening_area=area, height=height, flue_area=np.pi * diameter**2 / 4)
    return verdict(replace(FOUND, path=way), key)


@pytest.mark.parametrize(
    ("area", "height", "least", "most"),
    [
        (0.5, 3.0, 0.220, 0.280),
        (0.5, 4.5, 0.220, 0.280),
        (0.5, 4.51, 0.200, 0.260),
        (0.501, 4.5, 0.260, 0.320),
        (1.0, 8.9, 0.270, 0.330),
        (2.2, 12.0, 0.380, 0.440),
        (0.10, 6.0, 0.090, 0.150),
    ],
)
def test_flue_against_canadas_table(area, height, least, most):
    """NBC 9.21.2.5.A: both edges of a cell, and the cells on both sides of a band's border."""
    assert (
        canada(area, height, least - 1e-4, "DRF-08") == FALLS_SHORT
        and canada(area, height, least, "DRF-08") == MEETS
    )
    assert (
        canada(area, height, most, "DRF-09") == MEETS
        and canada(area, height, most + 1e-4, "DRF-09") == FALLS_SHORT
    )


@pytest.mark.parametrize(
    ("area", "height"), [(2.21, 12.0), (1.0, 12.01), (1.0, 2.99), (1.9, 5.0), (2.1, 8.0)]
)
def test_outside_canadas_table_nothing_is_guessed(area, height):
    assert canada(area, height, 0.3, "DRF-08") == canada(area, height, 0.3, "DRF-09") == NOT_CHECKED


@pytest.mark.parametrize("case", ["winter", "dying down, mild"])
def test_smoke_that_wets_the_liner(case):
    """The liner's face against the dew point, on the worse of two evenings."""
    k = CASES.index(case)
    for over, expected in ((-0.1, FALLS_SHORT), (0.0, MEETS), (0.1, MEETS)):
        linings = FOUND.dew_points + 50.0
        linings[k] = FOUND.dew_points[k] + over
        assert verdict(replace(FOUND, linings=linings), "DRF-10") == expected
    assert verdict(with_flows("winter", stalled=True), "DRF-10") == NOT_CHECKED
    assert (FOUND.linings < FOUND.flows.top).all()
    assert (FOUND.linings > FOUND.surroundings.outdoor).all()


FAILS = {
    "DRF-01": {"flue.size": "8.5x8.5"},
    "DRF-02": {"house.exhaust": "400 L/s"},
    "DRF-03": {"house.leakage": "1", "house.exhaust": "200 L/s"},
    "DRF-04": {"house.leakage": "2", "house.exhaust": "60 L/s"},
    "DRF-05": {"house.exhaust": "300 L/s"},
    "DRF-06": {"house.exhaust": "300 L/s"},
    "DRF-07": {"chimney.location": "exterior"},
    "DRF-08": {"flue.size": "8.5x8.5"},
    "DRF-09": {"flue.size": "20x20"},
    "DRF-10": {
        "chimney.location": "exterior",
        "site.winter": "-60 degC",
        "fire.moisture": "65 %",
        "fire.burn_rate": "2 kg/h",
        "flue.sections": 40,
        "chimney.wall": "4 in",
    },
    "DRF-11": {"house.exhaust": "250 L/s"},
    "DRF-12": {"fire.doors_inlet": "20 in2", "house.exhaust": "400 L/s"},
}
"""For each finding a design that fails it: one that none can fail says nothing."""


@pytest.mark.parametrize("key", [rule.key for rule in RULES])
def test_every_finding_can_fail_and_can_be_met(key):
    failing = draft_result(build_geometry(change(Design(), FAILS[key])))
    assert verdict(failing, key) == FALLS_SHORT
    airy = {"house.leakage": "15", "flue.shape": "round", "flue.size": "10"}
    doors = airy | {"fire.doors_inlet": "20 in2"}
    met = [build_geometry(change(Design(), changes)) for changes in ({}, airy, doors)]
    assert MEETS in [verdict(draft_result(made), key) for made in met]


def test_an_input_that_runs_away_is_said():
    """A house with leakage 0.1 and fans of 2,000 L/s would be pulled down by a hundred thousand
    pascals: there is no such house, and no figure is printed.
    """
    result = assess(change(Design(), {"house.leakage": "0.1", "house.exhaust": "2000 L/s"}))
    found = {f.key: f for f in result.judgement}
    for key, said in (
        ("DRF-05", "over 100 Pa"),
        ("DRF-06", "over 100 Pa against it"),
        ("DRF-07", "over 100 Pa against it"),
    ):
        assert (found[key].verdict, found[key].provided) == (FALLS_SHORT, said)
        assert "no fan of a house pulls so hard" in found[key].note
    printed = " ".join(" ".join(row) for row in (*case_rows(result), *loss_rows(result)))
    assert "over 100" in printed and not re.search(
        r"\d{4}", printed.replace("10,000", "").replace(",", "")
    )


def test_gas_too_hot_for_an_open_fire_is_said():
    put = {"fire.burn_rate": "30 kg/h", "opening.width": "24 in", "flue.size": "8.5x8.5"}
    hot = draft_result(build_geometry(change(Design(), put)))
    assert float(hot.flows.foot[CASES.index("mild")]) > 623.15
    notes = {f.key: f.note for f in judgement(hot)}
    assert "350 °C" in notes["DRF-02"] and "350 °C" not in notes["DRF-04"]
    assert not any("350 °C" in f.note for f in judgement(FOUND))


def test_the_page_says_how_much_air_is_drawn_and_what_was_measured():
    """10 to 20 times more than needed was measured (M05, second hand): 11 to 21 times."""
    said = air_doubted(assess(BOATHOUSE))
    ratios = np.delete(FOUND.flows.air_ratio, CASES.index("dying down, mild"))
    assert f"{ratios.min():.0f} to {ratios.max():.0f} times" in said and "11 to 21" in said
    assert said.startswith(air_drawn(assess(BOATHOUSE))) and "no measurement was found" in said
    assert said in " ".join(summary(assess(BOATHOUSE)).split())
    fierce = assess(change(BOATHOUSE, {"fire.burn_rate": "16 kg/h"}))
    assert "no measurement was found" not in air_doubted(fierce)
    still = change(Design(), {"house.leakage": "0.1", "house.exhaust": "2000 L/s"})
    assert air_drawn(assess(still)) == "No fire draws here."


def test_every_finding_says_what_it_is_and_what_it_rests_on():
    for finding in judgement(FOUND):
        assert finding.edition == "engineering judgement"
        assert finding.clause in ("draft, sizing mode", "draft, operating mode")
        assert (
            finding.confidence in ("read twice", "read", "computed", "derived", "memory")
            and len(finding.source) > 15
        )
        assert len(finding.why) > 20 and finding.title
    assert len({rule.key for rule in RULES}) == len(RULES) == len(judgement(FOUND))


def test_it_stands_apart_from_the_code():
    result = assess(BOATHOUSE)
    assert not {f.key for f in result.findings} & {f.key for f in result.judgement}
    assert "Engineering judgement, not code" in " ".join(summary(result).split())


# -- what a change of the design does --------------------------------------------------------------
def result_of(**changes):
    return draft_result(
        build_geometry(
            change(BOATHOUSE, {key.replace("__", "."): value for key, value in changes.items()})
        )
    )


def test_a_cold_chimney_and_a_fan_are_found():
    cold = result_of(chimney__location="exterior")
    assert verdict(cold, "DRF-07") == FALLS_SHORT and verdict(FOUND, "DRF-07") == MEETS
    assert float(cold.flows.top[0]) < float(FOUND.flows.top[0])
    tight = result_of(house__leakage="1", house__exhaust="150 L/s")
    assert float(tight.flows.pull[1]) > float(FOUND.flows.pull[1])
    inlet = result_of(house__leakage="1", house__exhaust="150 L/s", house__air_inlet="200 in2")
    assert float(inlet.flows.pull[1]) < float(tight.flows.pull[1])
    assert "air inlet of" in next(f for f in judgement(tight) if f.key == "DRF-05").note


def test_the_inlet_that_is_named_mends_it():
    needed = float(FOUND.spills.inlet.max())
    mended = result_of(house__air_inlet=f"{needed!r} m2")
    assert float((mended.flows.pull - mended.spills.stack).max()) == pytest.approx(5.0, abs=1e-6)


def test_an_unknown_leakage_takes_the_published_middle():
    told, untold = (
        result_of(house__leakage=str(coefficient("air changes at 50 Pa"))),
        result_of(house__leakage="unknown"),
    )
    assert float(untold.flows.face[0]) == pytest.approx(float(told.flows.face[0]))


def test_an_unknown_leakage_lets_nothing_pass_that_hangs_on_it():
    """It condemns with the middle of houses, but a pass waits for the house's own test; lighting
    hangs on it only with a fan or an air inlet.
    """
    told = result_of(
        house__leakage=str(coefficient("air changes at 50 Pa")), house__air_inlet="0 in2"
    )
    for fans in (False, True):
        lit = replace(told.lighting, fans=told.lighting.fans * fans)
        known, unknown = (
            {f.key: f for f in judgement(replace(told, lighting=lit, tested=tested))}
            for tested in (True, False)
        )
        hang = {"DRF-02", "DRF-03", "DRF-04", "DRF-05", "DRF-11"} | (
            {"DRF-06", "DRF-07"} if fans else set()
        )
        assert (
            {k for k in known if known[k].verdict != unknown[k].verdict}
            == {k for k in hang if known[k].verdict == MEETS}
            >= {"DRF-02"}
        )
        assert all(unknown[k].verdict in (NOT_CHECKED, FALLS_SHORT) for k in hang)
        assert all(
            "leakage is not known" in unknown[k].note for k in hang if known[k].verdict == MEETS
        )
    assert not result_of(house__leakage="unknown").tested and told.tested
    one, other = (
        build_geometry(change(BOATHOUSE, {"house.leakage": leak})) for leak in ("unknown", "5")
    )
    assert [found.tested for found in draft_results([one, other])] == [False, True]


def test_a_damper_narrower_than_the_throat_counts():
    assert result_of(throat__damper_area="60 in2").sizing_velocity < FOUND.sizing_velocity


def test_a_damper_part_closed_and_a_raised_grate():
    """The free area goes with the opening of the damper: half of it is four times the throat's loss (K = 2 (flue/throat)^2). A
    higher grate makes the plume shorter; nobody's old file changes.
    """
    way = FOUND.path
    half = draft_result(build_geometry(change(BOATHOUSE, {"throat.damper_open": "50 %"})))
    assert half.path.throat == pytest.approx(4 * way.throat)
    assert (half.flows.face < FOUND.flows.face).all()
    none = {"throat.damper": "none", "throat.damper_open": "50 %"}
    assert trace_flow_path(build_geometry(change(BOATHOUSE, none))).throat == way.throat
    hot = {"fire.burn_rate": "16 kg/h"}
    low, told, high = (
        draft_result(build_geometry(change(BOATHOUSE, hot | more))).spills.capture
        for more in ({}, {"fire.bed_height": "150 mm"}, {"fire.bed_height": "300 mm"})
    )
    assert (low == told).all() and high[0] < low[0] and high[2] == low[2]


def test_cap_screen_and_offset_cost_something():
    assert result_of(chimney__rain_cap="yes").path.cap == 1.5
    assert result_of(chimney__rain_cap="yes", chimney__rain_cap_area="2000 in2").path.cap == 0.5
    assert result_of(chimney__arrester="yes").path.screen == 0.5
    assert result_of(flue__offset="16 in", flue__offset_rise="40 in").path.bends > 0.1


def test_where_the_height_counts_from_is_a_choice():
    heights = [trace_flow_path(build_geometry(BOATHOUSE), datum).height for datum in DATUMS]
    assert heights == sorted(heights) and heights[2] - heights[0] == pytest.approx(
        BOATHOUSE.opening.height
    )


def test_a_top_under_the_ridge_is_pressed():
    """ASCE 7, windward slope: +0.4 from 25 degrees, +0.3 under it; in the lee -0.18 on the room. At
    5 m/s, sea level and 8 C 15.7 Pa.
    """
    windy = CASES.index("windy, mild")
    pressure = float(pressure_at(BOATHOUSE.site.altitude))
    dynamic = pressure / 287.05 / BOATHOUSE.site.mild * 5.0**2 / 2
    low, pitched = result_of(flue__sections=6), result_of(flue__sections=6, roof__pitch="4:12")
    for found, case, share in (
        (FOUND, "over a steep roof", 0.18),
        (low, "below the ridge on a steep", 0.58),
        (pitched, "below the ridge on a pitched", 0.48),
        (result_of(roof__pitch="1:12"), "over a low roof", 0.18),
    ):
        assert found.wind_case.startswith(case)
        assert found.flows.wind[windy] == pytest.approx(-share * dynamic, rel=1e-3), case


@settings(max_examples=60, deadline=None)
@given(designs())
def test_the_windy_evening_is_one_that_hurts(design):
    """Wind that can only help is no stress: at its worst it takes air away, at its best it gives
    some, and both are told.
    """
    found = draft_result(build_geometry(design))
    worst, best = found.wind_range
    assert worst < 0 < best and found.flows.wind[CASES.index("windy, mild")] == worst
    assert found.face("windy, mild") <= found.face("mild")
    note = next(f for f in judgement(found) if f.key == "DRF-11").note
    assert f"{best:.0f} Pa" in note and f"{-worst:.0f} Pa" in note


@settings(max_examples=40, deadline=None)
@given(designs(), st.sampled_from(CASES))
def test_the_pressure_along_the_way_ends_in_the_open_air(design, case):
    made = build_geometry(design)
    found = draft_result(made)
    steps = pressure_steps(found, made, case)
    assert steps[0].pressure == pytest.approx(-float(found.flows.pull[CASES.index(case)]))
    if not found.flows.stalled[CASES.index(case)]:
        assert steps[-1].pressure == pytest.approx(
            0.0, abs=1e-5 * max(1.0, float(found.flows.draft.max()))
        )
    assert [s.level for s in steps] == sorted(s.level for s in steps)


def test_the_words_carry_the_mode():
    result = assess(BOATHOUSE)
    assert MODES["sizing"] in sized(result) and "10,000 evenings" in likely(result)
    assert [row[0] for row in case_rows(result)] == list(CASES)
    assert all(len(row) == len(COLUMNS) for row in case_rows(result, "millimetres"))
    assert {len(row) for row in loss_rows(result)} == {1 + len(CASES)}
    assert len(draft_table(result)) == len(CASES) and len(
        judgement_table(result, "millimetres")
    ) == len(RULES)
    stalled = assess(change(BOATHOUSE, {"house.exhaust": "2000 L/s", "house.leakage": "0.5"}))
    assert any("smokes with no fan on" in row for row in case_rows(stalled))


def test_a_margin_that_rounds_to_nought_has_no_sign():
    result, hair = assess(BOATHOUSE), np.full(len(CASES), -0.004)
    vars(result)["draft"] = replace(
        FOUND, spills=replace(FOUND.spills, margin=hair, share=hair / 10)
    )
    assert {row[5] for row in case_rows(result)} == {"0.0 Pa, 0 %"}


# -- curves and the map -------------------------------------------------------------------------------
def test_a_curve_is_the_designs_own_figures():
    counts = [10, 20, 30]
    curve = face_curve(BOATHOUSE, "flue.sections", counts, draws=300)
    for k, count in enumerate(counts):
        own = assess(change(BOATHOUSE, {"flue.sections": count}))
        assert curve.sizing[k] == pytest.approx(own.draft.sizing_velocity, rel=1e-12)
    assert (
        (curve.low < curve.middle).all() and (curve.middle < curve.high).all() and curve.here == 20
    )
    assert (np.diff(curve.sizing) > 0).all() and (np.diff(curve.middle) > 0).all()
    raised = face_curve(BOATHOUSE, "opening.extension", np.array([0.0, 12, 24]) * INCH, draws=300)
    assert (np.diff(raised.sizing) < 0).all() and (np.diff(raised.middle) < 0).all()


def test_the_map_is_what_assess_says():
    """Cells picked by hand and by rule: each against the full assessment of that very design."""
    extensions, sections = (
        np.array([0, 6, 18, 22, 24]) * INCH,
        np.array([4, 14, 20, 22, 24, 30, 40]),
    )
    drawn = limit_map(BOATHOUSE, extensions=extensions, sections=sections)
    seen = set()
    for i, extension in enumerate(extensions):
        for k, count in enumerate(sections):
            own = assess(
                change(
                    BOATHOUSE,
                    {"opening.extension": f"{float(extension)!r} m", "flue.sections": int(count)},
                )
            )
            broken = {f.key for f in own.findings if f.verdict == FALLS_SHORT} - set(
                drawn.everywhere
            )
            f = own.geometry.frame
            tall = (f.crown_top - f.uphill_contact) / (2 * min(f.stack_half, f.stack_depth)) > 4.5
            expected = (
                RATIO
                if broken & set(RATIO_RULES)
                else (
                    CODE
                    if broken
                    else (
                        VELOCITY
                        if own.draft.sizing_velocity < coefficient("face velocity")
                        else STABILITY
                        if tall
                        else FREE
                    )
                )
            )
            assert drawn.limit[i, k] == expected, (extension, count, broken)
            seen.add(int(drawn.limit[i, k]))
    assert {FREE, RATIO, CODE, STABILITY} <= seen and drawn.here == (
        BOATHOUSE.opening.extension,
        20,
    )
    assert len(LIMITS) == 6


def test_what_cannot_be_drawn_is_said_and_left_out():
    """An offset that needs more height than a short chimney has."""
    shifted = change(BOATHOUSE, {"flue.offset": "16 in", "flue.offset_rise": "40 in"})
    drawn = limit_map(shifted, extensions=[0.0, 6 * INCH], sections=range(4, 12))
    assert drawn.limit[0, 0] == IMPOSSIBLE and drawn.limit[0, -1] != IMPOSSIBLE
    assert face_curve(shifted, "flue.sections", range(4, 12), draws=50).values[0] > 4


def test_the_map_knows_a_slow_face():
    """A round flue of 12 in and a short chimney in a plain design: the ratio of the code still
    holds, the air does not.
    """
    slow = change(
        Design(),
        {
            "flue.shape": "round",
            "flue.size": "12",
            "opening.width": "36 in",
            "opening.standard_height": "30 in",
            "throat.depth": "3 in",
            "roof.ridge_level": "9 ft",
            "roof.pitch": "1:12",
        },
    )
    drawn = limit_map(slow, extensions=[0.0, 4 * INCH, 8 * INCH], sections=range(4, 12))
    assert VELOCITY in drawn.limit


# -- the warm house ----------------------------------------------------------------------------------
def test_a_cold_attic_cools_the_flue():
    """From the flue's foot to the roof 10 ft and more, of which the ceiling leaves less warm; an
    attic that is heated gives it back, and so does a ceiling under the rafters.
    """
    f = build_geometry(BOATHOUSE).frame
    run = f.liner_top - f.flue_start
    cold, warm = result_of(), result_of(house__attic_heated="yes")
    assert warm.path.indoors == pytest.approx((f.uphill_contact - f.flue_start) / run)
    assert cold.path.indoors == pytest.approx((BOATHOUSE.roof.eaves_level - f.flue_start) / run)
    assert (cold.lighting.excess < warm.lighting.excess).all()
    assert float(cold.flows.top[0]) < float(warm.flows.top[0])
    vaulted = result_of(house__highest_ceiling="60 ft")
    assert vaulted.path.indoors == warm.path.indoors
    low = result_of(house__ceiling="8 ft", house__highest_ceiling="8 ft")
    assert low.path.indoors < cold.path.indoors
    for changes in ({}, {"house__attic_heated": "yes"}):
        assert result_of(chimney__location="exterior", **changes).path.indoors == 0.0


@settings(max_examples=40, deadline=None)
@given(designs(), st.integers(6, 60), st.booleans())
def test_no_more_of_the_flue_is_warm_than_stands_under_ceiling_and_roof(design, feet, attic):
    put = {"house.highest_ceiling": f"{feet} ft", "house.attic_heated": attic}
    made = build_geometry(change(design, put | {"chimney.location": "interior"}))
    f = made.frame
    top = f.uphill_contact if attic else max(feet * 0.3048, design.house.ceiling)
    warm = min(max(min(top, f.uphill_contact) - f.flue_start, 0.0), f.liner_top - f.flue_start)
    assert trace_flow_path(made).indoors * (f.liner_top - f.flue_start) == pytest.approx(warm)


def test_the_house_pulls_by_the_level_of_its_hearth():
    """A hearth in a basement is pulled down by the storeys over it, one under the roof is pushed, at
    lighting and while it burns; the taller the house and the colder it is, the more.
    """
    places = {
        "basement": {"house__highest_ceiling": "30 ft"},
        "middle": {"house__lowest_floor": "-9 ft", "house__highest_ceiling": "21 ft"},
        "attic": {"house__lowest_floor": "-18 ft", "house__highest_ceiling": "12 ft"},
    }
    found = {name: result_of(house__air_inlet="0 in2", **put) for name, put in places.items()}
    for evening in (0, 1):
        stack = [float(found[name].lighting.stack[evening]) for name in places]
        pull = [float(found[name].flows.pull[evening]) for name in places]
        assert stack[0] > stack[1] > stack[2] and pull[0] > pull[1] > pull[2]
        assert stack[0] > 0 > stack[2]
        air = [float(found[name].flows.air[evening]) for name in places]
        assert air[0] < air[1] < air[2]
    low = found["basement"]
    assert low.lighting.stack[0] > low.lighting.stack[1] > 0, (
        "winter pulls more than a mild evening"
    )
    assert (low.flows.pull > low.spills.stack).all()
    warm = result_of(site__winter="20 degC", site__mild="20 degC", house__indoor="20 degC")
    assert warm.lighting.stack.tolist() == pytest.approx([0.0, 0.0], abs=1e-9)


@settings(max_examples=40, deadline=None)
@given(designs(), st.integers(-30, 0), st.integers(8, 40))
def test_the_same_house_pulls_the_more_the_lower_its_hearth(design, floor, ceiling):
    """Both levels a foot higher over the hearth: the winter evening's pull at the hearth grows."""
    put = {"house.highest_ceiling": f"{ceiling} ft", "house.ceiling": "7 ft"}
    higher, lower = (
        draft_result(
            build_geometry(
                change(
                    design,
                    put
                    | {
                        "house.lowest_floor": f"{min(floor + up, 0)} ft",
                        "house.highest_ceiling": f"{ceiling + up} ft",
                    },
                )
            )
        )
        for up in (0, 1)
    )
    assert lower.lighting.stack[0] > higher.lighting.stack[0]
    assert lower.lighting.excess[0] < higher.lighting.excess[0] or lower.path.indoors > 0


def test_the_odds_know_where_the_top_stands():
    """The same fire under two tops: one clears the roof, one lies under a steep windward ridge. The
    figures that are drawn are the same, so every quantile of the pressed one is lower.
    """
    from fireplace_calc.draft import fire, smoke_odds, surroundings, wind_range
    from fireplace_calc.draft.physics.weather import roof_winds

    tops = {row.case[:12]: wind_range(row) for row in roof_winds()}
    assert tops["over a steep"] == pytest.approx((-0.18, 0.88))
    odds = [
        smoke_odds(FOUND.path, fire(BOATHOUSE), surroundings(BOATHOUSE), 282.15, wind, draws=500)
        for wind in (tops["over a steep"], wind_range(roof_winds()[-1]), (0.0, 0.0))
    ]
    assert (odds[0].face > odds[1].face).all()
    # half of 0.88 - 0.18 of the mean velocity pressure: Rayleigh's mean square is 4 / pi of the square
    mean = 0.35 * 0.66 * 3.05**2 * 4 / np.pi * 1.25 / 2
    assert 1.0 < mean < 2.0, "1.5 Pa was an engineer's guess (notes of the draft figures)"
    assert odds[0].face[1] > odds[2].face[1]


@settings(max_examples=60, deadline=None)
@given(designs(), st.sampled_from(["0.3", "5", "25"]), st.sampled_from(["0 L/s", "90 L/s"]))
def test_no_verdict_on_the_draft_contradicts_its_margin(design, leakage, exhaust):
    """What meets has something to spare, what falls short lacks something."""
    put = {"house.leakage": leakage, "house.exhaust": exhaust}
    for finding in judgement(draft_result(build_geometry(change(design, put)))):
        if finding.margin is not None:
            assert finding.margin >= 0 if finding.verdict == MEETS else finding.margin < 0, finding
            assert finding.verdict in (MEETS, FALLS_SHORT)


@pytest.mark.parametrize(
    ("key", "area", "source"),
    [
        ("measured.flue_area", "400 in2", "field measured"),
        ("measured.flue_area", "168 in2", "table"),
        ("measured.throat_area", "3000 in2", "table"),
        ("measured.opening_area", "9000 in2", "table"),
        ("throat.damper_area", "3000 in2", "table"),
    ],
)
def test_the_draft_takes_no_area_that_cannot_be(key, area, source):
    """The smoke goes the way that is drawn, and the summary says what was left aside; an area that
    can be is taken.
    """
    drawn = change(Design(), {"flue.area_from": source})
    told = change(drawn, {key: area})
    assert trace_flow_path(build_geometry(told)) == trace_flow_path(build_geometry(drawn))
    assert "Not used: The" in summary(assess(told)) and "Not used" not in summary(assess(drawn))
    less = change(drawn, {key: "100 in2"})
    assert trace_flow_path(build_geometry(less)) != trace_flow_path(build_geometry(drawn))
    assert "Not used" not in summary(assess(less))


def test_a_flue_shared_with_an_appliance_passes_nothing():
    """Canada, England and the trade forbid it; what was read of the US code does not say, and says
    so. What the fire alone would pass is not checked, what it fails it fails.
    """
    alone, shared = (
        assess(change(BOATHOUSE, {"stack.connector": there})) for there in (False, True)
    )
    for before, after in zip(
        sorted(alone.judgement, key=lambda f: f.key),
        sorted(shared.judgement, key=lambda f: f.key),
        strict=True,
    ):
        assert after.verdict == (NOT_CHECKED if before.verdict == MEETS else before.verdict)
        assert (ALONE in after.note) == (before.verdict == MEETS)
    assert any(f.verdict == MEETS for f in alone.judgement)
    assert ALONE in likely(shared) and ALONE in beside(shared) and ALONE not in likely(alone)
    for pack, key in (("Canada NBC", "CA-003"), ("UK ADJ", "UK-021"), ("Trade practice", "PRA-22")):
        checked = {f.key: f for f in assess(shared.design, pack).findings}
        assert checked[key].verdict == FALLS_SHORT
    notes = {f.note for f in shared.findings if f.key in ("FLU-03", "FLU-09", "FLU-17")}
    assert len(notes) == 1 and "CA-003, UK-021, PRA-22" in notes.pop()
