"""Twenty whole designs: flow, temperatures and draft on four evenings, against a second reckoning by hand (``tests/naive/fire.py``).

Both take the smoke as one gas, the liner as clay whatever it is, and the friction factor by one step of Colebrook: the known
simplifications. The flow is found by halving here and by Ridders' method there.
"""

import math
from types import SimpleNamespace

import numpy as np
import pytest
from naive import fire
from naive.whole import NAMES, assessed, differs, naive

from fireplace_calc.draft import roof_wind, smoke_odds

WAY = {
    "opening": "opening_area",
    "opening_high": "opening_height",
    "flue": "flue_area",
    "round_it": "flue_perimeter",
    "high": "height",
    "long": "length",
    "rough": "roughness",
    "mouth": "mouth",
    "throat": "throat",
    "chamber": "chamber",
    "bends": "bends",
    "cap": "cap",
    "screen": "screen",
    "u": "transmittance",
    "indoors": "indoors",
    "bottom": "bottom",
    "top": "top",
    "bed": "fire_bed",
    "gap": "doors",
}


@pytest.mark.parametrize("name", NAMES)
def test_the_way_of_the_smoke(name):
    mine, theirs = naive(name).fire["way"], assessed(name).draft.path
    assert (
        differs(
            {key: getattr(mine, key) for key in WAY} | {"gap": mine.gap or 0.0},
            {key: getattr(theirs, known) for key, known in WAY.items()},
        )
        == {}
    )


@pytest.mark.parametrize("name", NAMES)
def test_four_evenings(name):
    """Winter, mild, dying down, windy; each with its flow, its temperatures, its losses, and how far it is from smoking."""
    mine, theirs = naive(name).fire, assessed(name).draft
    flows, spills = theirs.flows, theirs.spills
    columns = {
        "mass": flows.mass,
        "air": flows.air,
        "face": flows.face,
        "speed": flows.speed,
        "foot": flows.foot,
        "mean": flows.mean,
        "top": flows.top,
        "draft": flows.draft,
        "pull": flows.pull,
        "wind": flows.wind,
        "stalled": flows.stalled,
        "air ratio": flows.air_ratio,
        "dew": theirs.dew_points,
        "liner": theirs.linings,
        "capture": spills.capture,
        "margin": spills.margin,
        "share": spills.share,
        "tipping fan": spills.tipping_fan,
        "inlet": spills.inlet,
        "own": spills.stack,
        "smokes": spills.smokes,
    }
    wanted = {(what, k): mine[what][k] for what in columns for k in range(4)}
    wanted |= {(what, k): mine["losses"][k][what] for k in range(4) for what in mine["losses"][k]}
    found = {
        (what, k): np.broadcast_to(column, 4)[k]
        for what, column in (columns | flows.losses).items()
        for k in range(4)
    }
    assert differs(wanted, found, rel=1e-7, least=1e-9) == {}


@pytest.mark.parametrize("name", NAMES)
def test_sizing_lighting_and_wind(name):
    mine, theirs = naive(name).fire, assessed(name).draft
    lit = {
        (what, k): np.broadcast_to(getattr(theirs.lighting, known), 2)[k]
        for what, known in (
            ("draft", "draft"),
            ("stack", "stack"),
            ("fans", "fans"),
            ("left", "excess"),
        )
        for k in range(2)
    }
    assert differs({(what, k): mine["lit"][k][what] for what, k in lit}, lit) == {}
    assert theirs.sizing_velocity == pytest.approx(mine["sizing"], rel=1e-9)
    assert theirs.wind_case.startswith(mine["wind case"])


@pytest.mark.parametrize("name", NAMES)
def test_findings_on_the_draft(name):
    mine = fire.findings(naive(name).s, naive(name).fire)
    theirs = {f.key: f for f in assessed(name).judgement}
    wrong = {}
    for key, (provided, required, verdict) in mine.items():
        found = theirs.pop(key)
        if bad := differs(
            {"provided": provided, "required": required, "verdict": verdict},
            {"provided": found.provided, "required": found.required, "verdict": found.verdict},
            rel=1e-7,
            least=1e-8,
        ):
            wrong[key] = bad
    assert wrong == {} and theirs == {}


@pytest.mark.parametrize(
    ("name", "turned"),
    [
        *(
            (name, False)
            for name in ("plain_room", "tall_stack", "shallow_kitchen", "barn_outside")
        ),
        ("plain_room", True),
    ],
)
def test_odds_of_two_dozen_fires(name, turned):
    """The same doubtful figures are drawn from the same ranges in the same turn; every fire is then settled by itself."""
    d, known = naive(name).d, assessed(name)
    told = (d.house.leakage is not None, d.chimney.rain_cap is not None)
    told = tuple(one != turned for one in told)  # what is known of one is not of the other
    from fireplace_calc.draft import fire as meant
    from fireplace_calc.draft import roof_wind, surroundings, wind_range

    theirs = smoke_odds(
        known.draft.path,
        meant(known.design),
        surroundings(known.design),
        d.site.mild,
        wind_range(roof_wind(known.geometry)),
        *told,
        draws=24,
        seed=7,
    )
    mine = fire.odds(naive(name).s, *told, 24, 7)
    for what in ("face", "pull", "air"):
        assert np.asarray(getattr(theirs, what)).ravel() == pytest.approx(mine[what], rel=1e-7), (
            what
        )
    assert (
        float(theirs.smokes),
        float(theirs.dying),
        float(theirs.below),
        theirs.draws,
    ) == pytest.approx((mine["smokes"], mine["dying"], mine["below"], 24))


@pytest.mark.parametrize(
    ("degrees", "over", "case", "low", "high"),
    [
        (0, 1, "over a low roof", -0.8, -0.4),
        (9.99, -1, "over a low roof", -0.8, -0.4),
        (10.01, 1, "over a pitched roof", -0.7, -0.3),
        (29.99, 0, "over a pitched roof", -0.7, -0.3),
        (30.01, 0, "over a steep roof", -0.7, -0.3),
        (10.01, -1, "below the ridge on a pitched windward slope", -0.7, 0.3),
        (24.99, -0.001, "below the ridge on a pitched windward slope", -0.7, 0.3),
        (25.01, -0.001, "below the ridge on a steep windward slope", -0.2, 0.4),
        (60, -1, "below the ridge on a steep windward slope", -0.2, 0.4),
        (60, 0, "over a steep roof", -0.7, -0.3),
        # where two rows meet, the one that presses harder
        (10, 0, "over a pitched roof", -0.7, -0.3),
        (25, -1, "below the ridge on a steep windward slope", -0.2, 0.4),
        (30, 0, "over a pitched roof", -0.7, -0.3),
    ],
)
def test_the_wind_at_a_top_goes_by_slope_and_ridge(degrees, over, case, low, high):
    """Both ends of every row of the published pressures; a top level with the ridge is over it."""
    roof = SimpleNamespace(pitch=math.tan(math.radians(degrees)), ridge_level=6.0)
    frame = SimpleNamespace(liner_top=6.0 + over)
    row = roof_wind(SimpleNamespace(frame=frame, design=SimpleNamespace(roof=roof)))
    assert (row.case, row.low, row.high) == (case, low, high)
