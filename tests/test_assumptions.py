"""Told, drawn, assumed: what passes on a default that nobody entered says so.

No outside source: what silence may mean is this project's own rule (issue of *not checked*).
"""

import re
from dataclasses import fields
from random import Random
from types import SimpleNamespace

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from strategies import designs
from test_missing import HOUSES, partly_answered, told, unknown_keys

from fireplace_calc import PACKS, assess, change, load, save
from fireplace_calc.assessment import assess_all
from fireplace_calc.base.units import InputError
from fireplace_calc.design.mantel import TOLD
from fireplace_calc.design.records import Design
from fireplace_calc.draft.findings.follows import GROUNDS as DRAFT
from fireplace_calc.editing.assumptions import assumed, tell, tell_everything
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import HEADER, OLD_HEADER, text_of
from fireplace_calc.lessons.answered import ANSWERS
from fireplace_calc.report import plain_summary, summary
from fireplace_calc.report.assumed_inputs import assumptions, named, not_entered
from fireplace_calc.report.sentences import sign, tally
from fireplace_calc.rules.comparing import MEETS
from fireplace_calc.rules.core import PASSING
from fireplace_calc.rules.facts import Facts
from fireplace_calc.rules.tracing.follows import FOLLOWS, MEASURED, TURNS, follows_from
from fireplace_calc.rules.tracing.traced import NESTED, Assumptions
from fireplace_calc.structure.findings.follows import GROUNDS as STRUCTURE

SIZES = ("own", "8.5x8.5", "8.5x13", "12x16", "13x18", "20x20")


def another(key, design, dice):
    """Some other value of an input, as a change takes it."""
    spec, now = all_inputs()[key], value_of(design, key)
    if spec.kind == "text":
        return dice.choice([size for size in SIZES if size != now])
    if spec.kind == "yes-no":
        return not now
    if spec.kind == "choice":
        return dice.choice([word for word in spec.choices if word != now])
    low, high = spec.bounds
    if spec.kind == "count":
        return dice.randint(int(low), int(high))
    return low + (high - low) * dice.random()


def old_text(design):
    """As a file was written before the marks: every default stands in it, told or not."""
    told = tell(design, assumed(design) - {"surround.trim", "roof.nearby"})
    return text_of(told).replace(HEADER, OLD_HEADER)


def moved(design, key, dice):
    """The design with one input elsewhere, or nothing where it does not hold together."""
    spec, value = all_inputs()[key], another(key, design, dice)
    if isinstance(value, float):
        group, dot, name = key.partition(".")
        record = getattr(design, group) if dot else design
        return design.with_read({group: record.with_read({name: value})})
    assert spec.kind != "length"
    return change(design, {key: value})


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.integers(0, 10**6), st.sampled_from(sorted(PACKS)))
def test_a_finding_names_every_assumption_that_another_value_would_turn(design, seed, pack):
    dice = Random(seed)
    serves = dice.choice((None, None, "fireplace", "appliance"))
    try:
        design = change(design, {"second_flue.serves": serves}) if serves else design
    except InputError:
        assume(False)
    if dice.random() < 0.2:
        try:
            design = change(design, {"flue.size": "own"})
        except InputError:
            assume(False)
    key = dice.choice(sorted(k for k in assumed(design) if k in all_inputs()))
    try:
        other = assess(moved(design, key, dice), pack)
    except InputError:
        assume(False)
    # A family is the other way to answer what trim there is: where nobody has, the trim is named for
    # both; where its pieces were told, or a family chosen, the rest follows and is drawn.
    if key.startswith("mantel."):
        key = "surround.trim"
        assume(key in assumed(design) and design.mantel.family == TOLD)
    after = {f.key: f for f in other.findings}
    for finding in assess(design, pack).findings:
        then = after[finding.key].verdict
        turned = then not in PASSING if key in TURNS else then != finding.verdict
        if finding.verdict in PASSING and turned:
            assert key in finding.assumed, (finding.key, key, finding.assumed)
            assert finding.on_assumption


def judged(design, pack):
    result = assess(design, pack)
    return {f.key: f for f in (*result.judgement, *result.structure.findings)}


@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.integers(0, 10**6), st.sampled_from(HOUSES))
def test_a_judgement_names_every_assumption_that_another_value_would_turn(design, seed, pack):
    """And those that would move its figures; unknown inputs for which something is taken too."""
    dice = Random(seed)
    design = partly_answered(design, dice)
    before, inputs = judged(design, pack), all_inputs()
    taken = sorted(assumed(design) & set(inputs))
    for key in dice.sample(taken, 4) + dice.sample(unknown_keys(design), 1):
        known = value_of(design, key) is not None
        try:
            other = moved(design, key, dice) if known else next(told(design, key, dice), design)
            after = judged(other, pack)
        except InputError:
            continue
        for finding in before.values():
            then = after[finding.key]
            if finding.verdict not in PASSING:
                assert finding.assumed == ()
            elif then.verdict not in PASSING or (known and figures(then) != figures(finding)):
                assert key in finding.assumed, (finding.key, key)


def figures(finding):
    return finding.verdict, finding.provided, finding.required


@pytest.mark.parametrize("rooms", [DRAFT, STRUCTURE], ids=["draft", "structure"])
def test_judgements_follow_from_inputs_that_there_are(rooms):
    keys = {
        *rooms.taken,
        *rooms.always,
        *(key for found in rooms.follows.values() for key in found),
    }
    assert keys <= {*all_inputs(), "surround.trim", "roof.nearby"}


def test_a_field_that_nobody_has_listed_follows_from_every_input():
    assert DRAFT.behind("something new") == frozenset(all_inputs())
    assert DRAFT.behind("path.roughness") > DRAFT.behind("path.flue_area")
    assert STRUCTURE.behind("design.loads.mortar") == {"loads.mortar"}


def test_a_judgement_on_nothing_assumed_says_nothing():
    told = tell_everything(change(Design(), {"throat.damper_area": "127 in2"}))
    found = judged(told, "US IRC 2021")
    assert found["DRF-08"].assumed == () and found["DRF-08"].said == "meets"
    assert found["STR-21"].assumed == ()
    plain = judged(Design(), "US IRC 2021")
    assert plain["STR-21"].assumed == ("base.footing_projection",)
    assert "stack.connector" in plain["DRF-08"].assumed
    assert plain["STR-14"].assumed == ("opening.head",)
    assert "house.leakage" in plain["DRF-02"].assumed
    assert "house.leakage" not in plain["DRF-01"].assumed


@pytest.mark.parametrize(
    ("key", "input_", "worse", "told"),
    [
        ("DRF-01", "throat.damper_area", "20 in2", {}),
        ("DRF-06", "house.highest_ceiling", "40 ft", {}),
        ("STR-19", "ground.bearing_stratum", "other", {"site.soil": "crystalline bedrock"}),
    ],
)
def test_what_is_taken_while_nobody_knows_is_named_too(key, input_, worse, told):
    """Another answer turns the pass: less than the throat, a taller house, ground without a
    figure.
    """
    design = change(Design(), told)
    finding = judged(design, "US IRC 2021")[key]
    assert finding.verdict == MEETS and input_ in finding.assumed
    assert judged(change(design, {input_: worse}), "US IRC 2021")[key].verdict not in PASSING


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.booleans())
def test_an_answer_is_left_out_only_where_the_other_turns_no_pass(design, answered):
    """Every book and every other answer to the questions that most clauses leave out."""
    if answered:  # more clauses pass, and can be turned
        told = {key: value for key, value in ANSWERS.items() if key not in TURNS}
        try:
            design = change(design, told)
        except InputError:
            assume(False)
    before = assess_all(design)
    for key in assumed(design) & set(TURNS):
        spec, now = all_inputs()[key], value_of(design, key)
        for other in [not now] if spec.kind == "yes-no" else set(spec.choices) - {now}:
            try:
                after = assess_all(change(design, {key: other}))
            except InputError:
                continue
            for pack, found in after.items():
                turned = {f.key for f in found if f.verdict not in PASSING}
                for finding in before[pack]:
                    if finding.verdict in PASSING and finding.key in turned:
                        assert key in finding.assumed, (pack, finding.key, key, other)


@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.sampled_from(sorted(PACKS)))
def test_nothing_is_assumed_where_all_is_told(design, pack):
    result = assess(tell_everything(design), pack)
    assert not any(f.assumed for f in result.findings)
    assert "on an assumption" not in tally(result)


def test_the_plain_file_meets_nothing_but_on_assumptions():
    result = assess(load("data/designs/plain.toml"))
    met = [f for f in result.findings if f.verdict == MEETS]
    assert len(met) > 30
    entered = [f.key for f in met if not f.on_assumption]
    assert entered == []


def test_every_fact_follows_from_inputs_that_there_are():
    known = {*all_inputs(), "surround.trim", "roof.nearby"}
    names = {field.name for field in fields(Facts)} - set(NESTED)
    for name in names | set(FOLLOWS):
        assert follows_from(name) <= known, name
    assert set(MEASURED.values()) <= known


def test_clearances_of_two_and_four_inches_that_nobody_entered():
    found = {f.key: f for f in assess(Design()).findings}
    assert found["CLR-01"].said == "meets, on an assumption"
    assert {"clearance.front", "clearance.side"} & set(found["CLR-01"].assumed)
    told = change(
        Design(),
        {
            "clearance.front": "2 in",
            "clearance.side": "2 in",
            "clearance.back": "4 in",
        },
    )
    found = {f.key: f for f in assess(told).findings}
    assert found["CLR-01"].said == "meets"
    assert sign(found["CLR-01"]) == "✓"


def test_an_answer_to_whether_something_is_there_is_told_or_assumed_too():
    before = {f.key: f for f in assess(Design()).findings}["CHM-10"]
    assert (before.verdict, before.assumed) == ("does not apply", ("stack.connector",))
    after = assess(change(Design(), {"stack.connector": False})).findings
    assert {f.key: f for f in after}["CHM-10"].assumed == ()


def test_a_figure_measured_on_site_leaves_nothing_assumed():
    design = change(Design(), {"measured.over_contact": "4 ft"})
    found = {f.key: f for f in assess(design).findings}
    assert "roof.pitch" not in found["ROF-01"].assumed


def test_no_trim_is_an_answer():
    key = "surround.trim"
    assert key in assumed(Design())
    told = change(Design(), {key: []})
    assert key not in assumed(told)
    assert load_text(text_of(told)) == told


def test_a_file_keeps_which_were_entered(tmp_path):
    design = change(Design(), {"clearance.back": "4 in", "flue.sections": 10, "roof.nearby": []})
    save(design, tmp_path / "d.toml")
    text = (tmp_path / "d.toml").read_text()
    assert 'back = "4 in"\n' in text
    assert 'front = "2 in (assumed)"\n' in text
    assert "sections = 10\n" in text
    assert load(tmp_path / "d.toml") == design
    assert assumed(load(tmp_path / "d.toml")) == assumed(design)


def test_taking_the_mark_away_is_entering(tmp_path):
    text = text_of(Design()).replace('front = "2 in (assumed)"', 'front = "2 in"')
    assert "clearance.front" not in assumed(load_text(text))


def test_a_file_from_before_the_marks_tells_no_default():
    design = change(Design(), {"clearance.back": "6 in"})
    old = old_text(design)
    assert "(assumed)" not in old.replace(OLD_HEADER, "")
    assert load_text(old) == design


def test_a_commented_file_from_before_the_marks_is_marked_when_it_is_saved(tmp_path):
    old = old_text(Design())
    path = tmp_path / "d.toml"
    path.write_text(old.replace('front = "2 in"', 'front = "2 in"  # ask the framer'))
    design = change(load(path), {"clearance.back": "4 in"})
    save(design, path)
    assert "# ask the framer" in path.read_text()
    assert load(path) == design


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_every_assumption_is_listed_with_its_value_and_the_checks_on_it(units):
    result = assess(Design())
    listed = {one.key: one for one in assumptions(result, units)}
    named = {key for f in result.findings if f.on_assumption for key in f.assumed}
    assert set(listed) == named
    assert listed["clearance.front"].value == ('2"' if units == "feet-inches" else "51 mm")
    assert "CLR-01" in listed["clearance.front"].passed
    assert listed["stack.connector"].value == "no"


def test_one_told_is_one_less():
    result = assess(Design())
    first = assumptions(result)[0]
    after = assess(tell(Design(), [first.key]))
    assert first.key not in {one.key for one in assumptions(after)}
    assert len(assumptions(after)) == len(assumptions(result)) - 1


def test_a_summary_counts_them_apart_and_names_some():
    text = summary(assess(Design()))
    assert "of them on an assumption" in text
    assert "Assumed, nobody has entered it:" in text


@pytest.mark.parametrize("count", [1, 3, 4, 8, 9, 40])
def test_a_line_names_three_inputs_and_counts_the_rest(count):
    """Up to eight by their labels, three of them; more are counted by where they stand."""
    keys = list(all_inputs())[:: len(all_inputs()) // 40][:count]
    labels = [all_inputs()[key].label for key in keys]
    few, more = labels[:3], len(labels) - 3
    if count <= 8:
        assert not_entered(keys) == f"Nobody has entered: {', '.join(few)}" + (
            f" and {more} more." if more > 0 else "."
        )
        assert all(f"{label} (under " in named(keys) for label in few)
        assert (f" and {more} more" in named(keys)) == (more > 0)
    else:
        told = re.findall(r"(\d+) under ", not_entered(keys))
        assert not_entered(keys).startswith(f"Nobody has entered {count} inputs: ")
        assert sum(map(int, told)) == count and not_entered(keys).endswith(f"{named(keys)}.")


def test_only_a_list_with_something_unknown_in_it_is_waited_for():
    """Trim of which all is told is waited for by nobody; of which a projection is not, it is."""
    whole = {"name": "shelf", "distance": "13 in", "projection": "6 in"}
    for trim, waits in ((whole, False), ({"name": "shelf", "distance": "13 in"}, True)):
        design = change(Design(), {"surround.trim": [trim]})
        unmeasured = Assumptions(assess(design).facts).standing.unmeasured
        assert ("surround.trim" in unmeasured) is waits


@pytest.mark.parametrize(
    ("count", "ends"),
    [(11, "input 11 one."), (12, "input 12 one."), (13, "input 12 one and 1 more.")],
)
def test_a_summary_lists_twelve_and_counts_the_others(monkeypatch, count, ends):
    made = [SimpleNamespace(label=f"Input {n}", value="one") for n in range(1, count + 1)]
    monkeypatch.setattr(plain_summary, "assumptions", lambda *_: made)
    lines = summary(assess(Design()), width=10_000).splitlines()
    (line,) = (
        line for line in lines if line.startswith("Assumed, nobody has entered it: input 1 ")
    )
    assert line.endswith(ends)
