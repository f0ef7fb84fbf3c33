"""A check that is not made names the inputs it waits for, and telling them answers it.

No outside source: what silence may mean is this project's own rule (issue of *not checked*).
"""

from random import Random

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc import PACKS, assess, change
from fireplace_calc.assessment import assess_all
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.design.surround import Trim
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.editing.consistency import require_consistent
from fireplace_calc.lessons.answered import ANSWERS
from fireplace_calc.report.assumed_inputs import GROUP_NAMES, group_of, label_of, to_enter
from fireplace_calc.report.sentences import sentence
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.tracing.follows import MEASURED

AS_DRAWN = {
    *MEASURED.values(),
    *("firebox.back_width", "opening.hood"),
    *(key for key in all_inputs() if key.startswith("brick.")),
}
"""Unknown, they leave the drawing's own figure: nothing is missing without them."""
OFFICIAL = "SMK-07"
"""It warns of another chapter's limit and waits for the building official, for no input."""
HOUSES = ("US IRC 2021", "UK ADJ", "Canada NBC")
QUIET = {
    "deadline": None,
    "suppress_health_check": list(HealthCheck),
    "phases": (Phase.explicit, Phase.reuse, Phase.generate),
}
"""Without making a failing case smaller: each takes a second."""


def values(spec, dice):
    """Answers somebody might give: every word, both ends, and two between."""
    if spec.kind == "yes-no":
        return [True, False]
    if spec.kind == "choice":
        return list(spec.choices)
    if spec.kind == "text":
        return []
    low, high = spec.bounds
    if spec.kind == "count":
        return [int(low), int(high), dice.randint(int(low), int(high))]
    return [low, high, *(low + (high - low) * dice.random() ** power for power in (1, 2))]


def put(design, key, value):
    """A design with one input told, floats in SI; refused like any change."""
    if not isinstance(value, float):
        return change(design, {key: value})
    group, _, name = key.partition(".")
    made = design.with_read({group: getattr(design, group).with_read({name: value})})
    require_consistent(made)
    return made


def unknown_keys(design):
    keys = (key for key in all_inputs() if key not in AS_DRAWN)
    return sorted(key for key in keys if value_of(design, key) is None)


def partly_answered(design, dice):
    """Some of what is unknown told, so that rules come to ask for the rest."""
    share = dice.choice((0.0, 0.5, 0.9))
    for key in unknown_keys(design):
        told = [ANSWERS[key]] if key in ANSWERS else values(all_inputs()[key], dice)
        if told and dice.random() < share:
            try:
                design = put(design, key, dice.choice(told))
            except InputError:
                continue
    return design


def judged(design, pack):
    result = assess(design, pack)
    return {f.key: f for f in (*result.judgement, *result.structure.findings)}


def told(design, key, dice):
    """The design with every answer there may be to one question."""
    for value in values(all_inputs()[key], dice):
        try:
            yield put(design, key, value)
        except InputError:
            continue


@settings(max_examples=5, **QUIET)
@given(designs(), st.integers(0, 10**6))
def test_a_code_finding_names_every_input_that_would_answer_it(design, seed):
    dice = Random(seed)
    design = partly_answered(design, dice)
    before, unknown = assess_all(design), unknown_keys(design)
    for key in dice.sample(unknown, min(10, len(unknown))):
        for after in map(assess_all, told(design, key, dice)):
            for pack, found in before.items():
                then = {f.key: f.verdict for f in after[pack]}
                for finding in found:
                    if finding.key == OFFICIAL:
                        continue
                    if finding.verdict == NOT_CHECKED != then[finding.key]:
                        assert key in finding.missing, (pack, finding.key, key)


@settings(max_examples=4, **QUIET)
@given(designs(), st.integers(0, 10**6), st.sampled_from(HOUSES))
def test_a_judgement_names_every_input_that_would_answer_it(design, seed, pack):
    dice = Random(seed)
    design = partly_answered(design, dice)
    before, unknown = judged(design, pack), unknown_keys(design)
    asked = {"loads", "site", "house", "fire", "anchorage", "lintel", "throat", "chimney"}
    unknown = [key for key in unknown if key.partition(".")[0] in asked]
    for key in dice.sample(unknown, min(10, len(unknown))):
        for after in (judged(d, pack) for d in told(design, key, dice)):
            for finding in before.values():
                if finding.verdict == NOT_CHECKED != after[finding.key].verdict:
                    assert key in finding.missing, (finding.key, key)


@settings(max_examples=5, **QUIET)
@given(designs(), st.integers(0, 10**6), st.sampled_from(sorted(PACKS)))
def test_telling_what_is_named_answers_or_asks_for_something_else(design, seed, pack):
    dice = Random(seed)
    design = partly_answered(design, dice)
    found = {f.key: f for f in assess(design, pack).findings} | judged(design, pack)
    waiting = [f for f in found.values() if f.missing]
    for finding in dice.sample(waiting, min(4, len(waiting))):
        assert finding.verdict == NOT_CHECKED
        for key in set(finding.missing) & set(all_inputs()):
            moved = [
                ({f.key: f for f in assess(d, pack).findings} | judged(d, pack))[finding.key]
                for d in told(design, key, dice)
            ]
            # Where every answer tried is refused for the rest of the design, nothing is shown.
            answered = [f for f in moved if f.verdict != NOT_CHECKED or key not in f.missing]
            assert answered or not moved, (
                finding.key,
                key,
            )


def test_it_is_named_by_its_label_and_where_it_stands():
    found = {f.key: f for f in assess(Design()).findings}
    frost = found["FND-03"]
    assert frost.missing == ("site.frost_depth",)
    label = all_inputs()["site.frost_depth"].label
    assert to_enter(frost) == f"Enter: {label} (under Site)."
    assert f"Enter: {label} (under Site)." in sentence(frost)
    assert to_enter(found["CLR-01"]).startswith("Nobody has entered")


def test_every_group_of_the_panel_has_a_heading():
    assert {group_of(key) for key in all_inputs()} >= set(GROUP_NAMES.values())
    assert group_of("surround.trim") == "Surround" and label_of("surround.trim")


def test_a_piece_nobody_has_measured_is_asked_for():
    shelf = change(Design(), {"surround.trim": [Trim(name="shelf")]})
    found = {f.key: f for f in assess(shelf).findings}
    assert found["CLR-07"].verdict == NOT_CHECKED
    assert found["CLR-07"].missing == ("surround.trim",)


def test_an_air_inlet_of_nought_is_one_that_nobody_has_told():
    supply = {"air.exterior_air_supply": True}
    found = {f.key: f for f in assess(change(Design(), supply)).findings}
    assert found["AIR-07"].verdict == NOT_CHECKED
    assert "house.air_inlet" in found["AIR-07"].missing


def test_a_lintel_of_unknown_material_meets_nothing():
    """Stone asks for a longer seat than steel, and a steel leg is narrower than the breast."""
    unknown = change(
        Design(),
        {
            "lintel.material": "unknown",
            "lintel.bearing": "4 in",
            "loads.in_triangle": False,
        },
    )
    found = judged(unknown, "US IRC 2021")
    for key in ("STR-10", "STR-11", "STR-12", "STR-13"):
        assert found[key].verdict == NOT_CHECKED
        assert found[key].missing == ("lintel.material",), key
    steel = judged(change(unknown, {"lintel.material": "steel"}), "US IRC 2021")
    assert steel["STR-12"].verdict == MEETS
    short = judged(change(unknown, {"lintel.bearing": "2 in"}), "US IRC 2021")
    assert short["STR-12"].verdict == FALLS_SHORT
