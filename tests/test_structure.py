"""The structure of whole designs: both sides of every finding, what is missing never passes, and
what must hold for any design.
"""

import csv
import math
import re
from dataclasses import fields, is_dataclass, replace
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import PACKS, assess
from fireplace_calc.base.tables import DATA, density
from fireplace_calc.base.units import FOOT, INCH, PSF, G, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.arches import ArchRing, ArchVoid
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.first_moments import _moments, moments
from fireplace_calc.geometry.polygons import box
from fireplace_calc.geometry.solids import Cylinder, Loft, prism
from fireplace_calc.structure import Structure, assess_structure
from fireplace_calc.structure.angle_of_facing import facing_angle
from fireplace_calc.structure.arch_thrust import (
    THIRD,
    Load,
    Ring,
    parabola_thrust,
    third_thrust,
    thrust_line,
)
from fireplace_calc.structure.figures import PSI, figure
from fireplace_calc.structure.findings.bearing import (
    footing_pressure,
    footing_pressure_in_wind,
    footing_thickness,
)
from fireplace_calc.structure.findings.register import RULES
from fireplace_calc.structure.loads.hill import hill_at
from fireplace_calc.structure.loads.sections import ring, with_holes
from fireplace_calc.structure.loads.stack import _section
from fireplace_calc.structure.loads.weights import weigh
from fireplace_calc.structure.loads.wind import strips, wind_load
from fireplace_calc.takeoff import share_out, take_off, total_weight

M, F, X, N = "meets", "falls short", "does not apply", "not checked"
SLOW = settings(deadline=None, max_examples=60, suppress_health_check=list(HealthCheck))

TOLD = {
    "site.wind": "115 mph",
    "loads.exposure": "C",
    "loads.mortar": "N",
    "loads.in_triangle": "no",
    "loads.sds": "0.2",
    "loads.support": "15 ft",
    "site.soil": "sand",
    "site.seismic": "B",
    "anchorage.chimney_reinforced": "no",
    "abroad.braced": "no",
}
ARCHED = TOLD | {
    "opening.head": "segmental",
    "opening.rise": "4 in",
    "lintel.height": "8 in",
    "firebox.jamb": "20 in",
}


def worked(**changes) -> Structure:
    return assess_structure(
        build_geometry(
            change(Design(), {key.replace("__", "."): value for key, value in changes.items()})
        )
    )


def verdict(changes: dict, key: str):
    return {f.key: f for f in assess_structure(build_geometry(change(Design(), changes))).findings}[
        key
    ]


# -- findings on both sides -------------------------------------------------------------------------
BORNE = {
    "loads.in_triangle": "yes",
    "loads.floor_over_head": "400 lbf",
    "loads.beam_over_head": "0 lbf",
}
BARRED = TOLD | {
    "lintel.material": "reinforced masonry",
    "lintel.height": "7-5/8 in",
    "lintel.bars": 2,
    "lintel.bar": "No. 4",
    "lintel.bar_center": "2-1/2 in",
    "lintel.bar_grade": "grade 60",
    "loads.masonry_strength": "1500 psi",
}
HEAVY = BORNE | {"loads.beam_over_head": "20000 lbf"}
RIDGE = {
    "loads.hill": "ridge",
    "loads.hill_height": "60 ft",
    "loads.hill_length": "120 ft",
    "loads.hill_distance": "0 ft",
}
SIZE = ("height", "length", "distance")
ADRIFT = TOLD | {"loads.support": None}
FREE = {**TOLD, "loads.support": "23.5 ft"}
WIDE = {"pieces.set": "wide", "flue.sections": 20}
"""Its maker allows a raise of 300 mm and a flue 9 m over the hearth: data/sets/wide.toml."""
ANGLED = WIDE | {"pieces.facing_head": "steel angle"}

BENCH = TOLD | {"base.hearth_level": "17 in", "seat.left": "4 ft"}
STORED = BENCH | {"seat.niche": "left"}
LIGHT = STORED | {
    "seat.height": "8 in",
    "seat.niche_width": "30 in",
    "seat.carried_by": "floor framing",
    "hearth.material": "tile",
    "hearth.thickness": "1/8 in",
    "hearth.bed": "1 in",
}
"""By hand: 1.3 lb/ft2 of tile, 12.5 of concrete and 6-7/8 in of hollow block under 3/8 of it."""
CASES = [
    ("STR-01", TOLD, M),
    ("STR-01", TOLD | {"loads.mortar": "N, masonry cement", "site.wind": "125 mph"}, F),
    ("STR-01", TOLD | {"loads.mortar": None}, N),
    ("STR-01", TOLD | {"chimney.masonry": "stone"}, N),
    ("STR-01", TOLD | {"chimney.masonry": "block"}, N),
    ("STR-01", TOLD | {"site.wind": None}, N),
    ("STR-01", TOLD | {"loads.exposure": None}, N),
    ("STR-01", TOLD | {"loads.support": "30 ft"}, X),
    ("STR-01", TOLD | RIDGE, F),
    ("STR-01", TOLD | RIDGE | {"loads.hill_distance": "900 ft"}, M),
    *(("STR-01", TOLD | RIDGE | {f"loads.hill_{of}": None}, N) for of in SIZE),
    *(("STR-20", ADRIFT | RIDGE | {f"loads.hill_{of}": None}, N) for of in SIZE),
    ("STR-02", FREE, M),
    ("STR-02", TOLD, F),
    ("STR-02", {}, N),
    ("STR-02", TOLD | {"loads.support": "30 ft"}, X),
    ("STR-03", FREE, M),
    ("STR-03", TOLD, F),
    ("STR-03", {}, N),
    ("STR-04", TOLD | {"flue.sections": 9}, M),
    ("STR-04", TOLD, F),
    ("STR-04", TOLD | {"chimney.masonry": "block"}, N),
    ("STR-05", TOLD, M),
    ("STR-05", TOLD | {"flue.sections": 12}, F),
    ("STR-05", {"flue.sections": 12}, N),
    ("STR-05", {"flue.sections": 12, "abroad.braced": "yes"}, X),
    ("STR-04", TOLD | {"flue.sections": 6}, M),  # 10-3/4 in over the roof, 22 in wide
    ("STR-04", {"flue.sections": 4}, X),
    ("STR-05", {"flue.sections": 4}, X),
    ("STR-06", TOLD, M),
    ("STR-06", TOLD | {"flue.size": "8.5x8.5", "chimney.wall": "3 in"}, F),
    ("STR-23", TOLD | {"loads.masonry_strength": "1500 psi"}, M),
    ("STR-23", TOLD | {"loads.masonry_strength": "1500 psi", "site.wind": None}, N),
    ("STR-23", {"loads.masonry_strength": "1500 psi", "loads.support": "30 ft"}, M),
    ("STR-23", TOLD | {"loads.masonry_strength": "1500 psi", "flue.sections": 40}, F),
    ("STR-23", {"loads.masonry_strength": "250 psi", "flue.sections": 40}, F),
    ("STR-23", TOLD, N),
    ("STR-07", FREE, M),
    ("STR-07", TOLD | {"loads.sds": "1.0"}, F),
    ("STR-07", TOLD | {"loads.sds": None}, N),
    ("STR-07", TOLD | {"loads.sds": "1.0", "anchorage.chimney_reinforced": "yes"}, X),
    ("STR-07", TOLD | {"site.seismic": "D1"}, F),
    ("STR-07", TOLD | {"site.seismic": "D1", "anchorage.chimney_reinforced": None}, N),
    ("STR-07", TOLD | {"loads.mortar": None}, N),
    ("STR-08", {"site.seismic": "D0", "anchorage.vertical_bars_no4": 4}, M),
    ("STR-08", {"site.seismic": "D0", "anchorage.vertical_bars_no4": 3}, F),
    ("STR-08", {"site.seismic": "D0", "anchorage.vertical_bars_no4": 4, "anchorage.n_flues": 2}, F),
    ("STR-08", {"site.seismic": "D0"}, N),
    (
        "STR-08",
        {"site.seismic": "D0", "anchorage.vertical_bars_no4": 9, "anchorage.n_flues": None},
        N,
    ),
    ("STR-08", {}, N),
    ("STR-08", {"site.seismic": "C"}, X),
    ("STR-08", {"site.seismic": "E"}, N),
    ("STR-09", TOLD, M),
    (
        "STR-09",
        TOLD
        | {
            "opening.width": "72 in",
            "lintel.height": "1-1/2 in",
            "lintel.thickness": "1/8 in",
        },
        F,
    ),
    ("STR-09", TOLD | {"loads.in_triangle": None}, N),
    ("STR-09", TOLD | {"loads.in_triangle": "yes"}, N),
    ("STR-09", TOLD | {"lintel.bearing": None}, N),
    ("STR-09", ARCHED, X),
    ("STR-09", TOLD | {"lintel.material": "reinforced concrete"}, N),
    ("STR-09", TOLD | {"lintel.material": "masonry arch"}, N),
    ("STR-09", TOLD | {"lintel.material": None}, N),
    ("STR-09", TOLD | {"lintel.material": "timber"}, N),
    (
        "STR-09",
        TOLD | {"lintel.material": "stone", "lintel.height": "8 in", "loads.stone": "granite"},
        M,
    ),
    (
        "STR-09",
        TOLD
        | {
            "lintel.material": "stone",
            "lintel.height": "4 in",
            "loads.stone": "limestone, low density",
        },
        F,
    ),
    ("STR-09", TOLD | {"lintel.material": "stone", "lintel.height": "8 in"}, N),
    ("STR-10", TOLD, M),
    (
        "STR-10",
        TOLD
        | {
            "opening.width": "60 in",
            "lintel.height": "1-1/2 in",
            "lintel.thickness": "1/8 in",
        },
        F,
    ),
    ("STR-10", TOLD | {"lintel.material": "stone"}, X),
    ("STR-10", TOLD | {"loads.in_triangle": None}, N),
    ("STR-11", TOLD, M),
    ("STR-11", TOLD | {"opening.width": "72 in"}, M),
    ("STR-11", TOLD | {"opening.width": "73 in"}, F),
    ("STR-11", TOLD | {"lintel.height": "2 in"}, N),
    ("STR-11", TOLD | {"lintel.material": "stone"}, X),
    ("STR-12", TOLD, M),
    ("STR-12", TOLD | {"lintel.bearing": "4 in"}, M),
    ("STR-12", TOLD | {"lintel.bearing": "3-7/8 in"}, F),
    ("STR-12", TOLD | {"lintel.bearing": None}, N),
    ("STR-12", TOLD | {"lintel.material": "stone", "opening.width": "60 in"}, M),
    ("STR-12", TOLD | {"lintel.material": "stone", "opening.width": "61 in"}, F),
    ("STR-13", TOLD, M),
    ("STR-13", TOLD | {"lintel.bearing": "1/2 in"}, F),
    ("STR-13", TOLD | {"lintel.bearing": "0 in"}, F),
    ("STR-14", ARCHED, M),
    ("STR-14", ARCHED | {"opening.width": "72 in"}, M),
    ("STR-14", ARCHED | {"opening.width": "73 in"}, F),
    ("STR-14", TOLD, X),
    ("STR-15", ARCHED | {"opening.width": "40 in", "opening.rise": "6 in"}, M),
    ("STR-15", ARCHED | {"opening.width": "40 in", "opening.rise": "6-1/8 in"}, F),
    ("STR-15", TOLD, X),
    ("STR-16", ARCHED, M),
    ("STR-16", ARCHED | {"opening.rise": "18 in", "lintel.height": "2 in"}, F),
    ("STR-16", ARCHED | {"loads.in_triangle": None}, N),
    ("STR-17", ARCHED, M),
    (
        "STR-17",
        ARCHED | {"firebox.jamb": "8 in", "opening.width": "60 in", "opening.rise": "2 in"},
        F,
    ),
    ("STR-17", TOLD, X),
    ("STR-18", ARCHED, M),
    ("STR-18", ARCHED | {"firebox.jamb": "8 in"}, F),
    ("STR-18", ARCHED | {"loads.in_triangle": "yes"}, F),
    ("STR-18", ARCHED | {"loads.in_triangle": None}, N),
    ("STR-16", ARCHED | BORNE | {"loads.beam_over_head": "10 lbf"}, N),
    ("STR-09", TOLD | BORNE, M),
    *((key, BARRED, M) for key in ("STR-09", "STR-24", "STR-25")),
    *((key, BARRED | HEAVY, F) for key in ("STR-09", "STR-24", "STR-25")),
    *(
        ("STR-24", BARRED | {key: None}, N)
        for key in (
            "lintel.bars",
            "lintel.bar",
            "lintel.bar_center",
            "lintel.bar_grade",
            "loads.masonry_strength",
            "lintel.bearing",
            "loads.in_triangle",
            "lintel.material",
        )
    ),
    ("STR-09", BARRED | {"lintel.bars": None}, N),
    ("STR-25", BARRED | {"lintel.bars": None}, N),
    ("STR-24", TOLD, X),
    ("STR-25", TOLD, X),
    ("STR-24", ARCHED, X),
    ("STR-09", TOLD | BORNE | {"loads.beam_over_head": None}, N),
    ("STR-09", TOLD | BORNE | {"loads.floor_over_head": None}, N),
    ("STR-09", TOLD | BORNE | {"loads.beam_over_head": "4000 lbf"}, F),
    ("STR-11", TOLD | BORNE, N),
    ("STR-19", TOLD, M),
    (
        "STR-19",
        TOLD
        | {
            "flue.sections": 40,
            "site.soil": "clay",
            "base.footing_projection": "0 in",
            "chimney.wall": "8 in",
        },
        F,
    ),
    ("STR-19", TOLD | {"site.soil": None}, N),
    ("STR-19", TOLD | {"ground.bearing_stratum": "other"}, N),
    ("STR-20", TOLD | {"loads.support": None, "site.soil": "crystalline bedrock"}, M),
    ("STR-20", TOLD | {"loads.support": None, "site.soil": "clay"}, F),
    ("STR-20", TOLD, X),
    ("STR-20", {"site.soil": "clay"}, N),
    ("STR-20", TOLD | {"loads.support": None, "site.soil": None}, N),
    (
        "STR-20",
        TOLD
        | {
            "loads.support": None,
            "flue.sections": 40,
            "site.wind": "90 m/s",
            "site.soil": "crystalline bedrock",
        },
        F,
    ),
    ("STR-21", TOLD, M),
    ("STR-21", TOLD | {"base.footing_projection": "5-7/8 in"}, F),
    ("STR-22", TOLD, M),
    ("STR-22", TOLD | {"base.footing_thickness": "11-7/8 in"}, F),
    ("STR-22", TOLD | {"base.footing_projection": "13 in"}, F),
    *((key, TOLD, X) for key in ("STR-34", "STR-35", "STR-36")),
    ("STR-34", BENCH | {"seat.carried_by": "floor framing"}, F),
    ("STR-34", LIGHT, M),
    ("STR-34", BENCH, N),
    ("STR-35", STORED | {"seat.niche_bars": "yes"}, M),
    ("STR-35", STORED | {"seat.niche_bars": "no"}, F),
    ("STR-35", STORED, N),
    ("STR-36", STORED | {"seat.left": "68 in"}, M),
    ("STR-36", STORED | {"seat.left": "67-7/8 in"}, F),
    ("STR-30", TOLD, X),
    ("STR-30", WIDE | {"opening.extension": "160 mm"}, M),
    ("STR-30", WIDE | {"opening.extension": "320 mm"}, F),
    ("STR-31", TOLD, X),
    ("STR-31", WIDE, M),
    ("STR-31", WIDE | {"flue.sections": 34}, F),
    *((key, TOLD, X) for key in ("STR-32", "STR-33")),
    *((key, WIDE | {"pieces.facing": "0 in"}, X) for key in ("STR-32", "STR-33")),
    *((key, WIDE, N) for key in ("STR-32", "STR-33")),
    *((key, ANGLED, M) for key in ("STR-32", "STR-33")),
    *((key, ANGLED | {"pieces.angle_bearing": None}, N) for key in ("STR-32", "STR-33")),
    *((key, ANGLED | {"pieces.angle_height": "1 in"}, F) for key in ("STR-32", "STR-33")),
    *((key, ANGLED | {"pieces.facing_head": "something else"}, N) for key in ("STR-32", "STR-33")),
]


@pytest.mark.parametrize(("key", "changes", "expected"), CASES)
def test_finding(key, changes, expected):
    """Verdicts by hand: figures with their sources in data/structure_*.csv."""
    found = verdict(changes, key)
    assert found.verdict == expected, found
    assert expected != N or found.note
    if expected in (M, F) and found.margin is not None:
        assert (found.margin >= 0) == (expected == M), found
    assert found.edition == "engineering judgement" and found.source and found.confidence


@pytest.mark.parametrize(
    ("unknown", "said"),
    [
        (("site.wind",), "The wind speed is not known yet."),
        (("loads.exposure",), "The wind exposure is not known yet."),
        (("site.wind", "loads.exposure", "loads.hill_height"), "The wind speed is not known yet."),
        (("loads.exposure", "loads.hill_height"), "The wind exposure is not known yet."),
        *(((f"loads.hill_{of}",), "The size of the hill is not known yet.") for of in SIZE),
        (tuple(f"loads.hill_{of}" for of in SIZE), "The size of the hill is not known yet."),
    ],
)
def test_what_the_wind_waits_for_is_named(unknown, said):
    found = verdict(TOLD | RIDGE | dict.fromkeys(unknown), "STR-01")
    assert found.note.startswith(said) and set(found.missing) >= set(unknown)


NOT_KNOWN = {
    "No support is known": "loads.support",
    "The soil is not known yet": "site.soil",
    "spectral response is not known": "loads.sds",
    "seismic category is not known": "site.seismic",
    "chimney's mortar is not known": "loads.mortar",
    "kind of stone is not known": "loads.stone",
    "lintel's material is not known": "lintel.material",
    "Whether a floor or beam bears in the triangle is not known": "loads.in_triangle",
    "Whether the chimney is reinforced is not known": "anchorage.chimney_reinforced",
    "wind speed is not known": "site.wind",
    "wind exposure is not known": "loads.exposure",
}
"""Words of a note, and the input that they speak of."""


def test_what_a_note_calls_not_known_nobody_told():
    """Over every design of this table, findings and the engineer's list alike: such words stand
    where the input is open, and nowhere else; a chimney judged without a support says so always.
    """
    used = set()
    for changes in {str(changes): changes for _, changes, _ in CASES}.values():
        made = worked(**_under(changes))
        notes = [found.note for found in made.findings] + list(made.engineer)
        for words, key in NOT_KNOWN.items():
            section, _, name = key.partition(".")
            if any(words in note for note in notes):
                used.add(words)
                assert getattr(getattr(made.design, section), name) is None, (changes, words)
        judged = [found for found in made.findings if found.key == "STR-01"]
        if judged[0].verdict in (M, F):
            assert ("No support is known" in judged[0].note) == (made.design.loads.support is None)
    assert used == set(NOT_KNOWN)


def test_what_a_finding_waits_for_nobody_told():
    """Over every design of this table."""
    waited = set()
    for changes in {str(changes): changes for _, changes, _ in CASES}.values():
        made = worked(**_under(changes))
        for found in made.findings:
            for key in found.missing:
                section, _, name = key.partition(".")
                assert getattr(getattr(made.design, section), name) is None, (found.key, key)
                waited.add((found.key, key))
    assert ("STR-08", "anchorage.vertical_bars_no4") in waited


@pytest.mark.parametrize(
    ("material", "said"),
    [
        ("reinforced concrete", "maker's table"),
        ("reinforced masonry", "the masonry's strength"),
        ("masonry arch", "held by its abutments"),
        ("timber", "never accepted over a fire"),
        (None, "The lintel's material is not known yet."),
    ],
)
def test_bending_that_cannot_be_worked_out_says_why(material, said):
    changes = {"lintel.material": material, "lintel.height": "8 in"}
    assert said in verdict(TOLD | changes, "STR-09").note


def test_every_finding_is_tried_both_ways():
    keys = {rule.key for rule in RULES}
    assert len(keys) == len(RULES) == 32
    for want in (M, F):
        assert {key for key, _, expected in CASES if expected == want} == keys


UNTOLD = [
    "site.wind",
    "loads.exposure",
    "loads.mortar",
    "loads.in_triangle",
    "loads.sds",
    "site.soil",
    "site.seismic",
    "lintel.bearing",
    "lintel.material",
    "anchorage.n_flues",
    "anchorage.vertical_bars_no4",
]


SHAKEN = TOLD | {"site.seismic": "D2", "anchorage.vertical_bars_no4": 8}


@pytest.mark.parametrize("base", [TOLD, ARCHED, SHAKEN], ids=["lintel", "arch", "shaken"])
@pytest.mark.parametrize("key", UNTOLD)
def test_what_is_missing_never_passes(base, key):
    """Take away one told thing after another: nothing goes to *meets* that did not meet before, and
    what rested on it is not checked.
    """
    before = {f.key: f for f in assess_structure(build_geometry(change(Design(), base))).findings}
    after = {
        f.key: f
        for f in assess_structure(build_geometry(change(Design(), base | {key: None}))).findings
    }
    for name, found in after.items():
        assert found.verdict != M or before[name].verdict == M, name
    rests = {
        "site.wind": "STR-01",
        "loads.exposure": "STR-01",
        "loads.mortar": "STR-01",
        "loads.sds": "STR-07",
        "site.soil": "STR-19",
        "site.seismic": "STR-08",
        "loads.in_triangle": "STR-09" if base is not ARCHED else "STR-16",
    }
    if key in rests and not (key == "loads.sds" and base.get("site.seismic") == "D2"):
        assert after[rests[key]].verdict == N


def test_only_an_assessment_names_what_a_pass_rests_on():
    """A search that works out many structures does not pay for it."""
    result = assess(Design())
    alone = {f.key: f for f in assess_structure(result.geometry, result.pack).findings}
    assert any(f.assumed for f in result.structure.findings)
    assert not any(f.assumed for f in alone.values())
    assert {f.key: f.verdict for f in result.structure.findings} == {
        key: f.verdict for key, f in alone.items()
    }


def test_no_support_is_the_harder_case():
    """An unknown support counts as none: free from the shoulder."""
    known, unknown = worked(**_under(TOLD)), worked(**_under(TOLD | {"loads.support": None}))
    assert (
        unknown.stack.base
        == unknown.frame.shoulder_top
        < known.stack.base
        == pytest.approx(15 * FOOT)
    )
    assert unknown.stack.worst.moment > known.stack.worst.moment
    low = worked(**_under(TOLD | {"loads.support": "1 ft"}))
    assert low.stack.base == low.frame.shoulder_top


def _under(changes: dict) -> dict:
    return {key.replace(".", "__"): value for key, value in changes.items()}


# -- wind on a drawn chimney ------------------------------------------------------------------------
@pytest.mark.parametrize("mixed", ["1:1:6", "type M", "type S", "type N", "type O"])
@pytest.mark.parametrize("told", [None, "M or S", "N", "N, masonry cement"])
def test_the_list_mixes_what_the_chimney_is_told_to_have(mixed, told):
    """A list that mixes another mortar than the bed joints count on says so."""
    made = worked(**_under(TOLD | {"work.mortar_mix": mixed, "loads.mortar": told}))
    said = any("but the list mixes" in remark for remark in made.remarks)
    fits = {"type M": "M or S", "type S": "M or S", "type N": "N"}
    assert said == (mixed != "1:1:6" and told is not None and fits.get(mixed) != told)


def test_a_crest_makes_the_wind_stronger_and_says_so():
    """ASCE 7-16 26.8: at the level of the chimney's middle the ridge's factor, by its own formula;
    what it does to the pressure it does to the force.
    """
    flat, made = worked(**_under(TOLD)), worked(**_under(TOLD | RIDGE))
    one, other = (m.stack.worst.wind_load for m in (flat, made))
    high = one.middle - made.frame.grade
    factor = (1 + 1.45 * 0.5 * math.exp(-3 * high / (120 * FOOT))) ** 2
    assert other.pressure == pytest.approx(one.pressure * factor)
    assert other.structure_force == pytest.approx(one.structure_force * factor)
    assert any("ridge makes its pressure" in said for said in made.remarks)
    assert any("taken as flat" in said for said in flat.remarks)
    assert not any("taken as flat" in said for said in made.remarks)


def test_wind_by_hand():
    """The plain design held at 15 ft, by hand from the figures of ASCE 7-16: both ways, and the
    larger in use (W5).
    """
    made = worked(**_under(TOLD))
    frame, side = made.frame, made.stack.worst
    lowest = max(15 * FOOT, frame.downhill_contact)
    wall = (frame.crown_bottom - lowest) * 22 * INCH
    crown, liner = (
        (frame.crown_top - frame.crown_bottom) * 26 * INCH,
        (frame.liner_top - frame.crown_top) * 13 * INCH,
    )
    area = wall + crown + liner
    assert side.wind_load.area == pytest.approx(area)
    middle = (
        (
            wall * (frame.crown_bottom + lowest)
            + crown * (frame.crown_top + frame.crown_bottom)
            + liner * (frame.liner_top + frame.crown_top)
        )
        / 2
        / area
    )
    tall = (frame.liner_top + FOOT) / (22 * INCH)
    shape = 1.4 + 0.6 * (tall - 7) / 18
    kz = 2.01 * ((middle + FOOT) / (900 * FOOT)) ** (2 / 9.5)
    qz = 0.613 * kz * 0.9 * (115 * 0.44704) ** 2
    assert side.wind_load.structure_force == pytest.approx(qz * 0.85 * shape * area, rel=1e-6)
    roof = (9 * FOOT + 22 * FOOT) / 2 + FOOT
    qh = 0.613 * 2.01 * (roof / (900 * FOOT)) ** (2 / 9.5) * 0.9 * (115 * 0.44704) ** 2
    assert side.wind_load.rooftop_force == pytest.approx(qh * 1.9 * area, rel=1e-6)
    assert side.moment == pytest.approx(0.6 * qh * 1.9 * area * (middle - 15 * FOOT), rel=1e-6)
    assert side.wind_load.governs == "rooftop structure"
    assert any(
        "another structure" in remark and "rooftop structure" in remark for remark in made.remarks
    )


def test_section_by_hand():
    """22 in square with a 14 in hole; weight of walls and crown only (W11); tension as M/S - 0.6
    P/A.
    """
    made = worked(**_under(TOLD))
    side, shared = made.stack.worst, made.weights
    assert side.area == pytest.approx((22**2 - 14**2) * INCH**2)
    assert side.modulus == pytest.approx((22**4 - 14**4) / 12 / 11 * INCH**3)
    frame = made.frame
    walls = (
        shared.masses["chimney walls"]
        * (frame.crown_bottom - 15 * FOOT)
        / (frame.crown_bottom - frame.shoulder_top)
    )
    assert made.stack.weight == pytest.approx(G * (walls + shared.masses["crown"]))
    assert side.tension == pytest.approx(
        side.moment / side.modulus - 0.6 * made.stack.weight / side.area
    )
    assert side.overturning == pytest.approx(made.stack.weight * 11 * INCH / side.moment)
    assert side.eccentricity == pytest.approx(side.moment / (0.6 * made.stack.weight))


def test_the_liner_gives_neither_weight_nor_section():
    """W11: a heavier liner changes nothing in wind, but shakes along."""
    thin = worked(
        **_under(
            TOLD
            | {
                "flue.size": "own",
                "flue.own_width": "11 in",
                "flue.own_depth": "11 in",
                "flue.own_wall": "1 in",
            }
        )
    )
    thick = worked(
        **_under(
            TOLD
            | {
                "flue.size": "own",
                "flue.own_width": "9 in",
                "flue.own_depth": "9 in",
                "flue.own_wall": "2 in",
            }
        )
    )
    assert thick.stack.weight == pytest.approx(thin.stack.weight)
    assert thick.stack.worst.tension == pytest.approx(thin.stack.worst.tension)
    assert thick.seismic_load.force > thin.seismic_load.force


def test_older_maps_count_in_full():
    """W2: the same speed off an older map pushes 1/0.6 as hard at service level."""
    new, old = worked(**_under(TOLD)), worked(**_under(TOLD | {"loads.wind_map": "allowable"}))
    assert old.stack.worst.moment == pytest.approx(new.stack.worst.moment / 0.6)


def test_shape_goes_by_the_height_from_the_ground():
    """W6: a stub of three widths alone would have 1.33; from the ground it gets more, which is
    safe.
    """
    made = worked(**_under(TOLD))
    assert made.stack.worst.wind_load.coefficient > 1.4


@pytest.mark.parametrize("key", ["chimney.rain_cap", "chimney.arrester"])
@pytest.mark.parametrize("value", ["yes", None])
def test_a_cap_adds_area_at_the_longest_arm(key, value):
    """W7: fitted, or not known to be left off."""
    plain, capped = worked(**_under(TOLD)), worked(**_under(TOLD | {key: value}))
    assert capped.stack.worst.wind_load.area == pytest.approx(
        plain.stack.worst.wind_load.area + 12 * INCH * 13 * INCH
    )
    assert capped.stack.worst.moment > plain.stack.worst.moment


def test_an_outside_chimney_stands_in_more_wind():
    inside, outside = (
        worked(**_under(TOLD | {"loads.support": None})),
        worked(**_under(TOLD | {"loads.support": None, "chimney.location": "exterior"})),
    )
    assert outside.stack.worst.wind_load.area > 1.5 * inside.stack.worst.wind_load.area
    assert outside.stack.worst.moment > inside.stack.worst.moment


def test_a_wide_building_does_not_take_more():
    """The rooftop factor falls only where the chimney is large beside the front."""
    known = worked(**_under(TOLD | {"loads.building_width": "40 ft"}))
    assert known.stack.worst.wind_load.rooftop_factor == 1.9
    small = worked(**_under(TOLD | {"loads.building_width": "6 ft", "roof.eaves_level": "7 ft"}))
    assert small.stack.worst.wind_load.rooftop_factor < 1.9


def test_high_country_is_kinder():
    assert (
        worked(**_under(TOLD | {"site.altitude": "1500 m"})).stack.worst.moment
        < worked(**_under(TOLD)).stack.worst.moment
    )


def test_a_shifted_flue_leans_on_its_foot():
    """Weight beside the middle of the section bends it even in still air."""
    changes = TOLD | {"loads.support": None, "flue.offset": "10 in"}
    straight, shifted = worked(**_under(TOLD | {"loads.support": None})), worked(**_under(changes))
    assert (
        straight.stack.sides[0].offset == 0
        and 0.5 * 10 * INCH < shifted.stack.sides[0].offset < 10 * INCH
    )
    assert shifted.stack.sides[1].offset == 0
    assert shifted.stack.sides[0].tension > straight.stack.sides[0].tension
    assert shifted.stack.sides[0].overturning < straight.stack.sides[0].overturning


def test_diagonal_is_a_remark():
    """A corner meets 2 x 1.1x / 1.4x of the face's bending, about half as much again."""
    made = worked(**_under(TOLD))
    side = made.stack.worst
    pressed = 0.6 * made.stack.weight / side.area
    assert (side.corner + pressed) / (side.tension + pressed) == pytest.approx(1.5, abs=0.08)
    assert any("diagonal" in remark for remark in made.remarks)


def test_the_code_is_silent_on_wind():
    """W8: the sentence is there whatever is known."""
    for made in (worked(), worked(**_under(TOLD))):
        assert any("no wind rule" in remark for remark in made.remarks)


# -- earthquake -------------------------------------------------------------------------------------
def test_bracing_above_the_centre_of_mass():
    """ap 2.5 below it, 1.0 above it: at the roof 1.2 and 0.48 of SDS."""
    whole = worked(**_under(TOLD)).weights.point_mass(
        ("chimney walls", "crown", "flue liner"), worked().frame.shoulder_top
    )
    low = worked(**_under(TOLD | {"loads.support": f"{whole.z - 0.01} m"})).seismic_load
    high = worked(**_under(TOLD | {"loads.support": f"{whole.z + 0.01} m"})).seismic_load
    assert not low.braced and low.ratio == pytest.approx(1.2 * 0.2)
    assert high.braced and high.ratio == pytest.approx(0.48 * 0.2)
    assert not worked(loads__sds="0.2").seismic_load.braced


def test_steel_by_rule():
    """Ties every 18 in over the full height, two straps at each level more than 6 ft over grade
    (IRC R1003.3, R1003.4, read twice).
    """
    inside, outside = worked().steel, worked(chimney__location="exterior").steel
    assert inside.bars == 4 and inside.straps == 0
    assert (outside.levels, outside.straps) == (2, 4)  # ceiling and roof
    raised = worked(chimney__location="exterior", site__grade="73 in").steel
    assert raised.levels == 3
    assert worked(chimney__location="exterior", site__grade="72 in").steel.levels == 2
    assert (
        inside.bar_length / (inside.ties - 1) <= 18 * INCH < inside.bar_length / (inside.ties - 2)
    )


# -- lintel, arch, footing of a design --------------------------------------------------------------
def test_lintel_by_hand():
    """36 in clear and 6 in bearing: 42 in; the wall as thick as it gets before the flue; L2: the
    span is stated.
    """
    made = worked(**_under(TOLD))
    held = made.lintel
    assert held.span == pytest.approx(42 * INCH)
    wall = G * made.weights.density("firebox walls", 0.0) * 8.75 * INCH
    assert held.carried == pytest.approx(wall * (42 * INCH) ** 2 / 4)
    assert held.moment == pytest.approx(held.carried * held.span / 6 + held.own * held.span**2 / 8)
    assert held.bearing_stress == pytest.approx(2 * held.shear / (3.5 * INCH * 6 * INCH))
    assert held.needed == pytest.approx(held.moment / (22_000 * PSI))
    assert any("clear opening and one bearing" in remark for remark in made.remarks)


def test_what_bears_over_the_opening_counts_in_full():
    """UFC 3-310-05A and Beall: what enters the triangle counts in full, and nothing arches past it.
    With a pencil: the wall as a rectangle, w L^2 / 8, and a beam P L / 4 and beside either end.
    """
    loads = BORNE | {"loads.beam_over_head": "300 lbf"}
    made, pound = worked(**_under(TOLD | loads)), 0.45359237 * G
    free, held = worked(**_under(TOLD)).lintel, made.lintel
    even = held.wall * held.span * held.cover + 400 * pound
    assert held.bears and held.carried == pytest.approx(even + 300 * pound)
    assert held.carried > free.carried
    own = held.own * held.span
    assert held.moment == pytest.approx((even + own) * held.span / 8 + 300 * pound * held.span / 4)
    assert held.shear == pytest.approx((even + own) / 2 + 300 * pound)
    assert any("bears within the triangle" in said for said in made.engineer)
    ignored = worked(**_under(TOLD | loads | {"loads.in_triangle": "no"})).lintel
    assert ignored.moment == free.moment


def test_a_floor_over_an_arch_pushes_its_jambs():
    """An even load by the parabola: H = W L / 8 r."""
    floor = worked(**_under(ARCHED | BORNE)).arch
    bare = worked(**_under(ARCHED | BORNE | {"loads.floor_over_head": "0 lbf"})).arch
    more = 400 * 0.45359237 * G
    assert floor.load.uniform - bare.load.uniform == pytest.approx(more)
    assert floor.load.triangular == bare.load.triangular == 0
    assert floor.parabola_thrust - bare.parabola_thrust == pytest.approx(
        more * floor.ring.span / (8 * floor.ring.rise)
    )


def test_bars_of_a_lintel_are_weighed_counted_and_drawn_to_its_ends():
    """Two No. 4 as long as the lintel, 48 in: 0.668 lb a foot (ASTM A615, memory)."""
    made = build_geometry(change(Design(), BARRED))
    row = {r.item: r for r in take_off(made)}["Lintel bar"]
    assert row.net == row.order == 2 and "No. 4, 4'-0\" long" in row.note
    assert row.weight_kg / 0.45359237 == pytest.approx(2 * 4 * 0.668, rel=0.03)
    shares = [s for s in share_out(made) if s.part == "lintel"]
    assert sum(s.volume for s in shares) == pytest.approx(made.by_name["lintel"].volume)
    silent = build_geometry(change(Design(), BARRED | {"lintel.bars": None}))
    assert "Lintel bar" not in {r.item for r in take_off(silent)}


def test_bars_outside_the_lintel_are_refused():
    with pytest.raises(InputError, match="they lie inside the lintel"):
        change(Design(), BARRED | {"lintel.bar_center": "7 in"})


def test_a_low_breast_is_sent_to_an_engineer():
    """L3: no brick over the apex, no triangle."""
    wide = TOLD | {
        "opening.width": "90 in",
        "smoke_chamber.height": "20 in",
        "lintel.height": "6 in",
        "lintel.thickness": "1/2 in",
    }
    made = assess_structure(build_geometry(change(Design(), wide)))
    assert made.lintel.low_cover and any("runs out of the breast" in said for said in made.engineer)
    assert {f.key: f.verdict for f in made.findings}["STR-09"] == N
    assert not worked(**_under(TOLD)).lintel.low_cover


def test_an_angle_with_unequal_legs_is_the_handbooks():
    """Steel manual, from memory: 5 x 3-1/2 x 5/16 with the long leg up has S 1.94 in3 and I
    6.60 in4; laid down I is 2.72, and that is said.
    """
    angle = {"lintel.height": "5 in", "lintel.level_leg": "3-1/2 in", "lintel.thickness": "5/16 in"}
    made = worked(**_under(TOLD | angle))
    assert made.lintel.modulus / INCH**3 == pytest.approx(1.94, rel=0.006)
    assert not any("lies level" in said for said in made.remarks)
    lying = {"lintel.height": "3-1/2 in", "lintel.level_leg": "5 in", "lintel.thickness": "5/16 in"}
    laid = worked(**_under(TOLD | lying))
    assert any("longer leg lies level" in said for said in laid.remarks)
    assert laid.lintel.modulus < 0.55 * made.lintel.modulus
    assert laid.lintel.deflection / made.lintel.deflection == pytest.approx(6.60 / 2.72, rel=0.01)


@pytest.mark.parametrize("number", [2, 3])
def test_angles_side_by_side_share_the_breast(number):
    """By plain statics each takes its share; drawn, counted and weighed as so many."""
    thick = TOLD | {"firebox.breast": "12 in", "firebox.depth": "30 in", "lintel.height": "5 in"}
    one = worked(**_under(thick))
    made = build_geometry(change(Design(), thick | {"lintel.angles": number}))
    several = assess_structure(made)
    assert several.lintel.modulus == pytest.approx(number * one.lintel.modulus)
    assert several.lintel.seat == pytest.approx(number * one.lintel.seat)
    assert several.lintel.stress == pytest.approx(several.lintel.moment / several.lintel.modulus)
    assert several.lintel.deflection < one.lintel.deflection
    assert several.lintel.veneer_span == one.lintel.veneer_span
    assert several.weights.masses["lintel"] == pytest.approx(number * one.weights.masses["lintel"])
    row = {r.item: r for r in take_off(made)}["Steel lintel"]
    assert row.net == number and "level leg 3 1/2" in row.note
    legs = [s for s in made.by_name["lintel"].adds if s.bottom == made.frame.opening_top]
    fronts = sorted(min(y for _, y in s.lower) / INCH for s in legs)
    assert fronts == pytest.approx([12 / number * k for k in range(number)])
    under = any("of a breast" in said for said in several.remarks)
    assert under == (3.5 * number < 12)


def test_plain_precast_remark():
    made = worked(
        **_under(TOLD | {"lintel.material": "reinforced concrete", "lintel.height": "8 in"})
    )
    assert any("needs its bars" in remark for remark in made.remarks) and made.lintel.stress > 0


def test_a_stone_lintel_bends_over_its_height():
    """A rectangle b wide and h high has the section modulus b h^2 / 6: 8 in of breast, 6 in of
    stone, 8 x 36 / 6 = 48 in3; its shear goes over 48 in2.
    """
    stone = {"lintel.material": "stone", "loads.stone": "granite", "lintel.height": "6 in"}
    lintel = worked(**_under(TOLD | stone)).lintel
    assert lintel.modulus / INCH**3 == pytest.approx(48)
    assert lintel.stress == pytest.approx(lintel.moment / (48 * INCH**3))
    assert lintel.shear_stress == pytest.approx(lintel.shear / (48 * INCH**2))


@pytest.mark.parametrize(("width", "low"), [("60 in", False), ("72 in", True)])
def test_a_wide_arch_under_a_low_breast_has_no_triangle(width, low):
    """32 in of masonry from the spring line to where the breast draws in: the triangle over 60 in
    is 30 in high and stands in it, over 72 in it is 36 in high and does not.
    """
    made = worked(**_under(ARCHED | {"opening.width": width, "smoke_chamber.height": "20 in"}))
    assert (made.frame.flue_start - made.frame.spring) / INCH == pytest.approx(32)
    assert made.arch.low_cover == low and (made.arch.load.triangular == 0) == low


def test_weight_beyond_the_edge_of_the_footing_falls_short():
    """Asked of the rules themselves: no design that can be drawn gets there in still air."""
    made = worked(**_under(TOLD))
    off = replace(made, footing=replace(made.footing, pressure=None))
    assert footing_pressure(off).verdict == F and "beyond the edge" in footing_pressure(off).note
    blown = replace(made.footing, supported=False, wind_known=True, overturns=True)
    tipped = footing_pressure_in_wind(replace(made, footing=blown))
    assert tipped.verdict == F and "tips over" in tipped.note


def test_arch_of_a_design():
    """The geometry's own ring: the same radius and skewback; the line is drawn from the room floor."""
    made = assess_structure(build_geometry(change(Design(), ARCHED)))
    drawn = build_geometry(made.design).by_name["arch"].adds[0]
    assert isinstance(drawn, ArchRing)
    assert made.arch.ring.radius == pytest.approx(
        drawn.radius
    ) and made.arch.ring.skew == pytest.approx(drawn.half_angle)
    assert made.lintel is None and worked().arch is None
    xs = [x for x, _ in made.arch.line_points]
    assert xs == sorted(xs) and xs[0] == pytest.approx(-xs[-1])
    assert max(z for _, z in made.arch.line_points) == pytest.approx(
        made.frame.opening_top + 2 / 3 * 8 * INCH
    )
    assert made.arch.abutment_thrust == made.arch.parabola_thrust > made.arch.third_thrust


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        (ARCHED | {"opening.width": "73 in"}, "major arch"),
        (TOLD | {"loads.in_triangle": "yes"}, "bears within the triangle"),
        (TOLD | {"site.seismic": "D0"}, "category D0"),
        (TOLD | {"site.seismic": "C"}, "category C"),
        ({}, "seismic category is not known"),
        (TOLD, "more slender"),
        ({}, "soil is not known"),
        (TOLD | {"ground.bearing_stratum": "other"}, "soil is not known"),
        (TOLD, "Wind is too much"),
        (TOLD | {"loads.support": None}, "falls under another chapter"),
        (TOLD | {"loads.sds": "1"}, "Earthquake is too much"),
        (ARCHED | {"firebox.jamb": "8 in"}, "too much for a jamb"),
        (TOLD | {"lintel.bearing": "0 in"}, "lintel is too weak"),
        (TOLD | {"loads.support": None, "site.soil": "clay"}, "presses harder"),
    ],
)
def test_when_to_send_for_an_engineer(changes, words):
    said = assess_structure(build_geometry(change(Design(), changes))).engineer
    assert any(words in sentence for sentence in said), said


def test_a_sound_design_needs_nobody():
    sound = FREE | {"site.soil": "sand", "flue.sections": 9}
    assert assess_structure(build_geometry(change(Design(), sound))).engineer == ()


def test_footing_by_hand():
    """F2: everything that stands, the footing once; still air and the plain design is off its
    middle by a hair only.
    """
    made = worked(**_under(TOLD))
    order = take_off(build_geometry(made.design))
    assert made.footing.load == pytest.approx(G * total_weight(order))
    area = (60 + 12) * INCH * (28.5 + 12) * INCH
    assert made.footing.mean == pytest.approx(made.footing.load / area)
    assert made.footing.mean <= made.footing.pressure < 1.2 * made.footing.mean
    assert 500 * PSF < made.footing.mean < 2000 * PSF
    blown = worked(**_under(TOLD | {"loads.support": None})).footing
    assert blown.wind_pressure > blown.pressure and made.footing.wind_pressure is None


# -- weights ----------------------------------------------------------------------------------------
def test_middles_of_plain_solids():
    """Frustum of a pyramid: h/4 (A + 2 sqrt(AB) + 3B) / (A + sqrt(AB) + B) over its base; leaning
    cylinder; half ring.
    """
    tapered = Loft(1.0, 3.0, box(-2, 2, -2, 2), box(-1, 1, -1, 1))
    volume, x, y, z = _moments(tapered)
    assert volume == pytest.approx(tapered.volume) and (x, y) == (
        pytest.approx(0),
        pytest.approx(0),
    )
    assert z / volume == pytest.approx(1 + 2 / 4 * (16 + 2 * 8 + 3 * 4) / (16 + 8 + 4))
    leaning = Loft(0.0, 1.0, box(0, 1, 0, 1), box(2, 3, 0, 1))
    assert [value / leaning.volume for value in _moments(leaning)[1:]] == pytest.approx(
        [1.5, 0.5, 0.5]
    )
    wedge = Loft(0.0, 1.0, box(0, 1, 0, 1), box(1, 1, 0, 1))
    assert [value / 0.5 for value in _moments(wedge)[1:]] == pytest.approx([2 / 3, 0.5, 1 / 3])
    tube = Cylinder(0.0, 2.0, 0.5, (1.0, 3.0), 0.4)
    assert [value / tube.volume for value in _moments(tube)[1:]] == pytest.approx([1.2, 3.0, 1.0])
    ring = ArchRing(2.0, 1.0, 2.0, 1e-6, 0.2)
    assert _moments(ring)[3] / ring.volume == pytest.approx(
        2 + 2 / math.pi, rel=1e-5
    )  # a thin half circle
    under = ArchVoid(0.0, 1.0, 2.0, 0.3, 0.0)
    assert _moments(under)[3] / under.volume == pytest.approx(4 / (3 * math.pi))  # a half disc


@SLOW
@given(designs(), st.floats(-2, 30))
def test_weights_add_up_and_split_at_any_level(design, level):
    """All of a design is what the takeoff weighs, and what lies above a level is never more than
    the whole nor less than nothing.
    """
    made = build_geometry(design)
    known = weigh(made)
    assert known.total == pytest.approx(total_weight(take_off(made)))
    whole, over = known.point_mass(), known.point_mass(level=level)
    assert -1e-9 <= over.mass <= whole.mass * (1 + 1e-9)
    assert whole.mass == pytest.approx(known.total)
    assert made.frame.footing_bottom < whole.z < made.frame.liner_top
    if over.mass > 1e-6:
        assert over.z >= max(level - 0.35, whole.z - 1e-9)  # an arch is not cut
    for part in made.parts:
        assert moments(part)[0] == pytest.approx(part.volume, rel=1e-9, abs=1e-12)
        assert moments(part, part.bottom)[0] == pytest.approx(part.volume, rel=1e-9, abs=1e-12)
        assert moments(part, part.top)[0] == pytest.approx(0, abs=1e-9)
        if part.volume > 1e-9:
            assert part.bottom - 1e-6 <= moments(part)[3] / part.volume <= part.top + 1e-6


# -- what must hold for any design ------------------------------------------------------------------
LOADED = st.fixed_dictionaries(
    {
        "site.wind": st.sampled_from([None, "30 m/s", "70 m/s", "100 m/s"]),
        "loads.exposure": st.sampled_from([None, "B", "C", "D"]),
        "loads.wind_map": st.sampled_from(["ultimate", "allowable"]),
        "loads.sds": st.sampled_from([None, "0", "0.4", "4"]),
        "loads.support": st.sampled_from([None, "0 ft", "9 ft", "20 ft", "120 ft"]),
        "loads.mortar": st.sampled_from([None, "M or S", "N, masonry cement"]),
        "loads.building_width": st.sampled_from([None, "6 ft", "40 ft"]),
        "loads.in_triangle": st.sampled_from([None, "yes", "no"]),
        "loads.stone": st.sampled_from([None, "granite", "quartz sandstone"]),
        "site.soil": st.sampled_from([None, "clay", "crystalline bedrock"]),
        "site.seismic": st.sampled_from([None, "A", "C", "D2", "E"]),
        "site.grade": st.sampled_from(["12 in", "-60 in", "100 in"]),
        "site.altitude": st.sampled_from(["0 m", "-400 m", "4500 m"]),
        "lintel.material": st.sampled_from(
            [
                "steel",
                "reinforced concrete",
                "reinforced masonry",
                "stone",
                "masonry arch",
                "timber",
                None,
            ]
        ),
        "chimney.location": st.sampled_from(["interior", "exterior", "within exterior wall", None]),
        "chimney.masonry": st.sampled_from(["brick", "block", "stone", "concrete"]),
        "chimney.cap_material": st.sampled_from(["concrete", "metal", None]),
        "chimney.rain_cap": st.sampled_from(["yes", "no", None]),
        "anchorage.chimney_reinforced": st.sampled_from([None, "yes", "no"]),
        "anchorage.n_flues": st.sampled_from([None, 1, 3]),
    }
)


def numbers(thing):
    """Every float in a record, however deep."""
    if isinstance(thing, float):
        yield thing
    elif is_dataclass(thing) and not isinstance(thing, (Design, type)):
        for field in fields(thing):
            yield from numbers(getattr(thing, field.name))
    elif isinstance(thing, dict):
        yield from numbers(tuple(thing.values()))
    elif isinstance(thing, (tuple, list)):
        for one in thing:
            yield from numbers(one)


@settings(deadline=None, max_examples=200, suppress_health_check=list(HealthCheck))
@given(designs(), LOADED)
def test_any_design_gets_a_finite_answer(design, loaded):
    """Never an error, never a number that is none; every finding said once, with a reason where it
    is not checked.
    """
    try:
        design = change(design, loaded)
    except InputError:
        assume(False)
    made = assess_structure(build_geometry(design))
    assert all(
        math.isfinite(value) for value in numbers(replace(made, weights=made.weights.masses))
    )
    assert len(made.findings) == len({f.key for f in made.findings}) == len(RULES)
    for found in made.findings:
        assert found.verdict in (M, F, X, N)
        assert found.verdict not in (X, N) or found.note
        assert found.verdict != M or (found.provided is not None and found.required is not None)
        if found.margin is not None and found.verdict in (M, F):
            assert (found.margin >= 0) == (found.verdict == M)
    assert all(sentence.endswith(".") for sentence in (*made.engineer, *made.remarks))
    if made.arch is not None:
        assert made.arch.abutment_thrust >= made.arch.line.thrust > 0
        assert made.arch.line.inside == (made.arch.line.eccentricity <= THIRD * (1 + 1e-6))


@SLOW
@given(st.floats(0.4, 2.0), st.floats(0.02, 0.15), st.floats(0.05, 0.5), st.floats(0.0, 1.0))
def test_the_line_of_a_minor_arch_keeps_to_the_middle_third(span, ratio, depth, triangular):
    """BIA 31A: under even load a minor arch holds its line. Under a triangle too, as far as tried;
    its ring no thinner than a tenth.
    """
    span = min(span, 6 * FOOT)
    ring = Ring(span, ratio * span, max(depth, span / 10), 0.1)
    even = thrust_line(ring, Load(span, 0.0, 1000.0))
    assert even.inside
    assert parabola_thrust(ring, Load(span, 0.0, 1000.0)) > third_thrust(
        ring, Load(span, 0.0, 1000.0)
    )
    mixed = Load(span, 1000.0 * triangular, 1000.0 * (1 - triangular) + 1.0)
    line = thrust_line(ring, mixed)
    end, crown = line.points[-1], line.points[len(line.points) // 2]
    assert line.thrust * (crown[1] - end[1]) == pytest.approx(
        mixed.moment(end[0])
    )  # moments about the crown agree
    for x, z in line.points:
        assert abs(ring.eccentricity(x, z)) <= line.eccentricity + 1e-9


@pytest.mark.parametrize("sideways", [True, False])
def test_a_liner_that_ends_in_the_crown_shows_the_wind_nothing(sideways):
    flush = change(
        Design(),
        {"chimney.liner_above": "0 in", "chimney.rain_cap": False, "chimney.arrester": False},
    )
    frame = build_geometry(flush).frame
    assert frame.liner_top == pytest.approx(frame.crown_top)
    assert all(strip.top - strip.bottom > 0.01 for strip in strips(flush, frame, sideways))


@SLOW
@given(designs(), st.floats(20, 90))
def test_more_wind_pushes_more(design, speed):
    """Forces go by the square of the speed; strips never overlap and reach from the shoulder to the
    top.
    """
    slow = change(design, {"loads.exposure": "C", "site.wind": f"{speed} m/s"})
    fast = change(design, {"loads.exposure": "C", "site.wind": f"{speed * 1.1} m/s"})
    frame = build_geometry(slow).frame
    for sideways in (True, False):
        weak, strong = (wind_load(d, frame, sideways, frame.shoulder_top) for d in (slow, fast))
        assert strong.structure_force == pytest.approx(1.21 * weak.structure_force)
        assert strong.rooftop_force == pytest.approx(1.21 * weak.rooftop_force)
        stacked = strips(design, frame, sideways)
        assert stacked[0].bottom == frame.shoulder_top
        assert all(strip.top > strip.bottom for strip in stacked)
        assert max(strip.top for strip in stacked) == pytest.approx(frame.highest)
        if frame.second is not None and not sideways:
            continue  # two liners side by side: see below
        assert all(
            a.top == pytest.approx(b.bottom) for a, b in zip(stacked, stacked[1:], strict=False)
        )


def test_two_flues_are_two_in_the_wind_and_two_holes_in_the_wall():
    """Over the crown the wind on the front sees both liners; area and stiffness of the wall by
    slices a tenth of a millimetre thick, from a drawing of our own: stack 36 x 16 in, holes of
    13 x 9 and 8 x 8 in. Parallel-axis theorem, any book on statics.
    """
    inch = 0.0254
    made = build_geometry(
        change(
            Design(),
            {
                "second_flue.serves": "appliance",
                "second_flue.size": "8x12",
                "second_flue.top": "6 in",
                "chimney.rain_cap": "no",
                "chimney.arrester": "no",
            },
        )
    )
    front = strips(made.design, made.frame, False)
    over = sum(strip.area for strip in front if strip.bottom >= made.frame.crown_top - 1e-9)
    assert over == pytest.approx((13 * 2 + 12 * 8) * inch**2)
    side = strips(made.design, made.frame, True)
    assert max(strip.top for strip in side) == pytest.approx(made.frame.liner_top + 6 * inch)

    holes = ((-8 * inch, 9 * inch, 13 * inch), (9 * inch, 8 * inch, 8 * inch))
    area, modulus, middle = with_holes(16 * inch, 36 * inch, holes)
    step = 1e-4
    places = np.arange(-18 * inch + step / 2, 18 * inch, step)
    wide = np.full_like(places, 16 * inch)
    for x, across, along in holes:
        wide -= across * (np.abs(places - x) < along / 2)
    assert area == pytest.approx(float(wide.sum() * step), rel=1e-3)
    assert middle == pytest.approx(float((wide * places).sum() / wide.sum()), abs=1e-4)
    inertia = float((wide * (places - middle) ** 2).sum() * step)
    assert modulus == pytest.approx(inertia / (18 * inch + abs(middle)), rel=1e-3)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_second_flue_weakens_the_stack_where_it_stands_and_from_where_it_begins(side):
    """By slices of the stack as its plan shows it, from left to right; under its start there is one hole."""
    told = {"second_flue.serves": "appliance", "second_flue.size": "8x12", "second_flue.side": side}
    f = build_geometry(change(Design(), told)).frame
    step = 1e-4
    places = np.arange(
        f.stack_middle - f.stack_half + step / 2, f.stack_middle + f.stack_half, step
    )
    wide = np.full_like(places, 2 * f.stack_depth)
    wide -= 2 * f.cavity_depth * (np.abs(places) < f.cavity_half)
    one = float(wide.sum() * step)
    wide -= 2 * f.second.cavity_depth * (np.abs(places - f.second.x) < f.second.cavity_half)
    sizes = 2 * f.stack_depth, 2 * f.stack_half
    area, modulus, middle = _section(f, True, f.shoulder_top, *sizes)
    off = float((wide * places).sum() / wide.sum()) - f.stack_middle
    assert area == pytest.approx(float(wide.sum() * step), rel=1e-3)
    assert middle == pytest.approx(off, abs=1e-4) and abs(off) > 1e-3
    inertia = float((wide * (places - f.stack_middle - off) ** 2).sum() * step)
    assert modulus == pytest.approx(inertia / (f.stack_half + abs(off)), rel=1e-3)
    assert _section(f, True, f.second.start - 0.01, *sizes)[0] == pytest.approx(one, rel=1e-3)
    assert with_holes(1.0, 2.0, ((0.0, 0.3, 0.5),))[:2] == pytest.approx(ring(1.0, 2.0, 0.3, 0.5))


def test_data_rows_have_a_source():
    """Every figure with where it comes from and how well it is known."""
    files = sorted(DATA.glob("structure_*.csv"))
    assert len(files) == 8
    for file in files:
        with file.open(newline="", encoding="utf-8") as opened:
            for row in csv.DictReader(opened):
                assert row["source"] and row["confidence"] in (
                    "read twice",
                    "read",
                    "derived",
                    "memory",
                ), row


def test_every_figure_is_used():
    """No number lies about unread: each name stands in the package."""
    package = DATA.parent / "fireplace_calc" / "structure"
    code = " ".join(file.read_text() for file in package.rglob("*.py"))
    with (DATA / "structure_figures.csv").open(newline="", encoding="utf-8") as opened:
        for row in csv.DictReader(opened):
            told = re.search("[\"']" + re.escape(row["name"]) + "[\"']", code)
            assert told or row["name"].startswith(("service wind", "bar steel")), row["name"]
            assert math.isfinite(figure(row["name"]))


def test_density_of_a_part_as_built():
    known = weigh(build_geometry(Design()))
    assert known.density("no such part", 7.0) == 7.0
    assert known.density("firebox walls", 0.0) == pytest.approx(density("brick"), rel=0.05)
    assert sum(point_mass.mass for _, point_mass in known.each()) == pytest.approx(known.total)
    assert prism(0.0, 1.0, box(0, 1, 0, 1)).volume == 1.0


@pytest.mark.parametrize("sections", [4, 9, 12, 20])
@pytest.mark.parametrize("braced", ["yes", "no", None])
@pytest.mark.parametrize("pack", sorted(PACKS))
def test_a_rule_of_another_country_is_no_shortfall_of_the_job(pack, braced, sections):
    """The British height over width stood as a shortfall of American jobs, and remedies were
    sought for it. Past it the stack is to be figured, and that is said. The trade's handbooks are
    of no country.
    """
    more = {"flue.sections": sections, "abroad.braced": braced}
    design = change(Design(), TOLD | more)
    found = {f.key: f for f in assess(design, pack).structure.findings}
    anywhere = {f.key: f for f in assess_structure(build_geometry(design)).findings}
    for key, country in (("STR-04", "UK"), ("STR-05", "Canada"), ("STR-06", "Canada")):
        if pack.startswith(country) or pack == "Trade practice":
            assert found[key].verdict == anywhere[key].verdict
        elif key == "STR-04" and anywhere[key].verdict == F:
            assert found[key].verdict == N and "figured for wind" in found[key].note
        else:
            assert found[key].verdict in (X, N)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"loads.mortar": None}, "mortar is not known"),
        ({"loads.mortar": "N", "chimney.masonry": "block"}, "chimney of block has to be designed"),
    ],
)
@pytest.mark.parametrize("key", ["STR-01", "STR-07"])
def test_a_finding_that_cannot_answer_names_the_one_input_it_waits_for(key, changes, words):
    """STR-07 said that mortar is unknown or the chimney not of brick, whichever it was."""
    told = TOLD | {"flue.sections": 9, "loads.sds": "1", "site.seismic": "C"} | changes
    found = {f.key: f for f in assess_structure(build_geometry(change(Design(), told))).findings}
    assert found[key].verdict == N and words in found[key].note, found[key]
    assert " or " not in found[key].note


def test_the_angle_under_the_facing_by_hand():
    """A wythe of 3-5/8 in brick, 45 degrees over 42 in and a bearing of 6 in, on 3-1/2 by 3-1/2 by
    1/4 in of steel. Triangle: W L / 6, even load: w L2 / 8; W L3 / 60 E I and 5 w L4 / 384 E I
    (beam tables, from memory).
    """
    design = change(
        Design(),
        {"pieces.set": "middling", "opening.width": "42 in", "pieces.facing_head": "steel angle"},
    )
    made = assess_structure(build_geometry(design))
    bent = facing_angle(design, made.frame, design.pieces.facing_angle("straight"))
    span = design.opening.width + 6 * 0.0254
    leg, thin, deep = 3.5 * 0.0254, 0.25 * 0.0254, 3.625 * 0.0254
    flat, upright = leg * thin, (leg - thin) * thin
    heel = (flat * thin / 2 + upright * (thin + (leg - thin) / 2)) / (flat + upright)
    inertia = (
        leg * thin**3 / 12
        + flat * (heel - thin / 2) ** 2
        + thin * (leg - thin) ** 3 / 12
        + upright * ((leg + thin) / 2 - heel) ** 2
    )
    wall = 9.80665 * density("brick") * deep * span**2 / 4
    own = 9.80665 * density("steel") * (flat + upright)
    assert bent.stress == pytest.approx(
        (wall * span / 6 + own * span**2 / 8) * (leg - heel) / inertia, rel=1e-9
    )
    stiff = 29e6 * 6894.757 * inertia
    assert bent.deflection == pytest.approx(
        wall * span**3 / 60 / stiff + 5 * own * span**4 / 384 / stiff, rel=1e-4
    )
    assert bent.stress / 6894.757 == pytest.approx(1627, abs=1)  # psi


def test_an_escarpment_is_taken_from_behind_its_crest_unless_told_otherwise():
    """Behind the crest the wind stays strong for longer (ASCE 7, topographic factor: mu 4, not 1.5)."""
    told = {"loads.hill": "escarpment", "loads.exposure": "C", "loads.hill_height": "60 ft",
            "loads.hill_length": "100 ft", "loads.hill_distance": "100 ft"}  # fmt: skip
    here = [
        hill_at(change(Design(), told | {"loads.hill_behind": behind}).loads, 9.0)
        for behind in ("unknown", "yes", "no")
    ]
    assert here[0] == here[1] > here[2] > 1.0


@pytest.mark.parametrize(("kind", "tenth"), [("stone", True), ("steel", False)])
def test_a_tenth_of_the_span_is_asked_of_a_stone_lintel_alone(kind, tenth):
    told = {"method": "laid", "lintel.material": kind, "lintel.bearing": "6 in"}
    found = {f.key: f for f in assess(change(Design(), told)).structure.findings}["STR-12"]
    assert ("A tenth of the span" in found.note) == tenth


def test_only_a_foot_that_stands_out_further_than_the_code_asks_is_told_to_be_as_thick():
    """Twelve inches are asked of every foot (IRC R1001.2); of one that stands out 14 in, 14."""
    for out, said in ((12.0, False), (14.0, True)):
        foot = SimpleNamespace(footing=SimpleNamespace(projection=out * INCH, thickness=1.0))
        found = footing_thickness(foot)
        assert found.required == pytest.approx(out * INCH) and ("it projects" in found.note) is said
