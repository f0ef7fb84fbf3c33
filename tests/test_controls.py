"""Controls, remedies and the session without a page: what a box shows, what a slider takes, which
words come back, and what one step back is.
"""

import html as entities
import re
from dataclasses import replace
from types import SimpleNamespace

import pytest

from fireplace_calc import assess, change, load
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import INCH, SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs, value_of
from fireplace_calc.explore import (
    find_remedies,
    highest_raise,
    liner_raises,
    rejected_remedies,
)
from fireplace_calc.explore.mending.remedy import ranked
from fireplace_calc.explore.raising import every_finding
from fireplace_calc.explore.together.combined import looking_for_combinations
from fireplace_calc.panels import html, work_in_hand
from fireplace_calc.panels.controls.controls import Control
from fireplace_calc.panels.controls.reader_units import typed, with_unit
from fireplace_calc.panels.folds.reach import HowFar, liner_words, reach_words
from fireplace_calc.panels.folds.remedies import (
    Remedies,
    RemedyLine,
    listed_words,
    refused_words,
    remedy_words,
)
from fireplace_calc.panels.live_design import LiveDesign
from fireplace_calc.panels.live_panel import Panel
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.workbench.field_box import FieldBox
from fireplace_calc.report.sentences import sentence

BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")
RAISED = change(BOATHOUSE, {"flue.size": "12", "flue.sections": 22, "opening.extension": "14 in"})
INPUTS = all_inputs()
METRIC = "millimetres"


def plain_text(text):
    return entities.unescape(re.sub("<[^>]+>", "", text))


# -- boxes -----------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("key", "value", "american", "metric"),
    [
        ("opening.width", 36.25 * INCH, "3'-0 1/4\"", "921 mm"),
        ("opening.width", 36 * INCH + INCH / 64, "3'-0 1/64\"", "915 mm"),
        ("house.air_inlet", 12 * INCH**2, "12 in2", "0.007742 m2"),
        ("flue.sections", 12, "12", "12"),
        ("firebox.splay", 1 / 3, "4 in 12", "4 in 12"),
        ("roof.pitch", 7.5 / 12, "7 1/2 in 12", "7 1/2 in 12"),
        ("fire.moisture", 0.18, "18 %", "18 %"),
        ("waste.mortar", 0.2, "20 %", "20 %"),
        ("site.altitude", 1609.344, "5280 ft", "1609.34 m"),
        ("ground.soil_bearing_assumed", 3000 * 47.880259, "3000 psf", "143.641 kPa"),
        ("ground.concrete_fc", 3000 * 6894.757293, "3000 psi", "20.6843 MPa"),
        ("stack.imposed_load_on_chimney", 444.82216, "100 lbf", "0.44482 kN"),
        ("site.winter", 263.15, "14 degF", "-10 degC"),
        ("site.wind", 44.704, "100 mph", "44.704 m/s"),
        ("house.volume", 14000 * 0.0283168466, "14000 ft3", "396.44 m3"),
        ("house.exhaust", 0.0471947443, "100 cfm", "47.195 L/s"),
        ("fire.burn_rate", 0.45359237 * 11 / 3600, "11 lb/h", "4.9895 kg/h"),
        ("measured.chamber_slope", 0.523598776, "30 deg", "30 deg"),
        ("site.frost_depth", None, "unknown", "unknown"),
    ],
)
def test_a_box_shows_what_a_reader_would_type(key, value, american, metric):
    """1 lbf is 4.4482216 N, 1 lbf/ft2 47.880259 Pa, 1 in2 6.4516 cm2, 1 ft3 0.0283168466 m3, 1 lb
    0.45359237 kg, 1 mph 0.44704 m/s (NIST Special Publication 811, appendix B).
    """
    spec = INPUTS[key]
    assert (typed(spec, value, "feet-inches", key), typed(spec, value, METRIC, key)) == (
        american,
        metric,
    )


@pytest.mark.parametrize(
    ("key", "text", "american", "metric"),
    [
        ("opening.width", "44", "44 in", "44 mm"),
        ("opening.width", "12-3/8", "12-3/8 in", "12-3/8 mm"),
        ("opening.width", "12 3/8", "12 3/8 in", "12 3/8 mm"),
        ("opening.width", "44 mm", "44 mm", "44 mm"),
        ("opening.width", "3'-8\"", "3'-8\"", "3'-8\""),
        ("site.altitude", "5280", "5280 ft", "5280 m"),
        ("loads.hill_height", "60", "60 ft", "60 m"),
        ("site.winter", "-4", "-4 degF", "-4 degC"),
        ("site.wind", "115", "115 mph", "115 m/s"),
        ("house.exhaust", "150", "150 cfm", "150 L/s"),
        ("house.volume", "20000", "20000 ft3", "20000 m3"),
        ("roof.pitch", "8", "8:12", "8:12"),
        ("roof.pitch", "0.5", "0.5", "0.5"),
        ("roof.pitch", "7:12", "7:12", "7:12"),
        ("fire.moisture", "18", "18 %", "18 %"),
        ("fire.moisture", ".18", ".18", ".18"),
        ("house.leakage", "6", "6", "6"),
        ("site.altitude", "5,280", "5,280 ft", "5,280 m"),
        ("opening.width", "1,067", "1,067 in", "1,067 mm"),
        ("opening.width", "1,06", "1,06", "1,06"),
        ("flue.sections", "6", "6", "6"),
        ("site.wind", "unknown", "unknown", "unknown"),
        ("name", "1", "1", "1"),
    ],
)
def test_a_bare_number_is_in_the_readers_units(key, text, american, metric):
    spec = INPUTS[key]
    assert (with_unit(text, spec, "feet-inches", key), with_unit(text, spec, METRIC, key)) == (
        american,
        metric,
    )


NUMBERS = [key for key, spec in INPUTS.items() if spec.low is not None and spec.kind != "count"]


@pytest.mark.parametrize("units", SYSTEMS)
def test_what_a_box_shows_reads_back(units):
    """To what is shown of it: a mark of the tape, a foot of altitude, or five figures."""
    for key in NUMBERS:
        spec = INPUTS[key]
        for share in (0.0, 0.37, 1.0):
            value = spec.low + share * (spec.high - spec.low)
            text = typed(spec, value, units, key)
            back = to_si(text, spec.kind)
            off = INCH / 32 + 1e-9 if spec.kind == "length" else 2e-3 * abs(value) + 6e-3
            if text.endswith((" ft", " m")):
                off = 0.1525
            assert abs(back - value) <= off, (key, value, back)
            if (bare := text.split(" ")[0]) and text.endswith(
                (" degF", " cfm", " mph", " in2", " kPa")
            ):
                assert to_si(with_unit(bare, spec, units, key), spec.kind) == back, key


def test_a_box_of_the_panel_takes_a_bare_number():
    told = Told()
    box = Control("opening.extension", INPUTS["opening.extension"], told)
    box.show(0.0, "feet-inches")
    box.widget.value = "6 3/8"
    box.show(0.0, METRIC)
    box.widget.value = "160"
    assert told == [("opening.extension", "6 3/8 in"), ("opening.extension", "160 mm")]


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        ("count", "12", 12),
        ("count", " -3 ", -3),
        ("count", "12.5", "12.5"),
        ("count", "unknown", "unknown"),
        ("count", 7, 7),
        ("text", "12", "12"),
    ],
)
def test_a_count_that_is_typed_is_a_whole_number(kind, text, value):
    box = FieldBox(kind=kind)
    box.value = text
    assert box.value == value and type(box.value) is type(value)


class Told(list):
    """Everything that was reported."""

    def __call__(self, key, value):
        self.append((key, value))


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("opening.head", ("straight", "segmental")),
        ("chimney.rain_cap", ("yes", "no", "unknown")),
        ("hearth.material", ("concrete", "masonry", "brick", "stone", "tile", "wood", "unknown")),
    ],
)
def test_a_list_offers_its_words_and_unknown_where_it_may_be(key, words):
    told = Told()
    one = Control(key, INPUTS[key], told)
    assert tuple(one.widget.options) == words
    assert one.widget.description == INPUTS[key].label
    assert one.widget.tooltip == f"{INPUTS[key].help} Allowed: {INPUTS[key].allowed()}."
    one.show(value_of(Design(), key), "feet-inches")
    assert told == [], "what is shown is not reported back"
    one.widget.value = words[-1]
    assert told == [(key, words[-1])]


def test_a_box_reports_what_is_typed_without_its_blanks():
    told = Told()
    length, name = (Control(k, INPUTS[k], told) for k in ("firebox.depth", "name"))
    length.show(20 * INCH, "feet-inches")
    assert (
        length.widget.value == "1'-8\""
        and length.widget.placeholder == INPUTS["firebox.depth"].allowed()
    )
    length.widget.value = "  22 in "
    name.show("A", "feet-inches")
    name.widget.value = " B "
    assert told == [("firebox.depth", "22 in"), ("name", " B ")]
    rain = Control("chimney.rain_cap", INPUTS["chimney.rain_cap"], told)
    for value, word in ((True, "yes"), (False, "no"), (None, "unknown")):
        rain.show(value, METRIC)
        assert rain.widget.value == word
    soil = Control("site.soil", INPUTS["site.soil"], told)
    soil.show(None, METRIC)
    assert soil.widget.value == "unknown"
    soil.show("sand", METRIC)
    assert soil.widget.value == "sand" and len(told) == 2
    count = (
        Control("build.masons", INPUTS["build.masons"], told) if "build.masons" in INPUTS else None
    )
    assert count is None or count.widget.value >= INPUTS["build.masons"].low


# -- session ---------------------------------------------------------------------------------------
@pytest.fixture
def clock(monkeypatch):
    now = SimpleNamespace(at=100.0)
    monkeypatch.setattr(work_in_hand, "monotonic", lambda: now.at)
    return now


def widths(designs):
    return [round(d.opening.width / INCH) for d in designs]


def test_moves_of_one_hand_within_a_second_are_one_step_back(clock):
    """A pause of a second, another slider or a typed value begins a step of its own."""
    work = Session(Design(), "US IRC 2021", "feet-inches")
    for wait, width in ((0, 37), (0.99, 38), (0.99, 39), (1.0, 40), (0.5, 41)):
        clock.at += wait
        work.take({"opening.width": f"{width} in"}, run="opening.width")
    assert widths(work.past) == [36, 39]
    work.take({"opening.extension": "2 in"}, run="opening.extension")
    work.take({"opening.width": "42 in"})
    work.take({"opening.width": "43 in"})
    assert widths(work.past) == [36, 39, 41, 41, 42]
    assert work.undo() and work.undo() and widths([work.design]) == [41]
    assert widths(work.coming) == [43, 42] and work.redo() and widths([work.design]) == [42]
    work.take({"opening.width": "50 in"})
    assert not work.redo() and work.coming == []
    while work.undo():
        pass
    assert work.design == Design() and not work.undo()


def test_after_a_step_back_or_an_option_the_hand_begins_anew(clock):
    work = Session(Design(), "US IRC 2021", "feet-inches")
    work.take({"opening.width": "37 in"}, run="opening.width")
    work.put_aside()
    work.take({"opening.width": "38 in"}, run="opening.width")
    assert widths(work.past) == [36, 37, 37] and widths(work.options) == [37]
    work.undo()
    work.take({"opening.width": "39 in"}, run="opening.width")
    assert widths(work.past) == [36, 37, 37]


def test_the_past_is_five_hundred_steps_long(clock):
    work = Session(Design(), "US IRC 2021", "feet-inches")
    designs = [replace(Design(), name=str(k)) for k in range(502)]
    for one in designs:
        work.put(one)
    assert len(work.past) == 500 and work.past[0].name == "1" or work.past[0].name == "0"
    assert work.past[-1].name == "500"


def test_a_design_without_one_input_is_told_apart_by_everything_else():
    work = Session(change(Design(), {"name": "A", "note": "n"}), "US IRC 2021", "feet-inches")
    before = work.without("opening.extension")
    work.take({"opening.extension": "9 in", "name": "B"})
    assert work.without("opening.extension") == before and before.name == before.note == ""
    work.take({"opening.width": "40 in"})
    assert work.without("opening.extension") != before


# -- remedies --------------------------------------------------------------------------------------
@pytest.fixture(scope="module")
def found():
    return find_remedies(BOATHOUSE), every_finding(assess(BOATHOUSE))


def test_a_remedy_tells_what_it_fixes_leaves_costs_and_weighs(found):
    remedies, named = found
    for units in SYSTEMS:
        for one in remedies:
            text = plain_text(remedy_words(one, named, units))
            assert text.startswith(one.sentence(units))
            fixes = ", ".join(f"{named[k].title} ({k})" for k in one.mends)
            assert f"Fixes {fixes}." in text
            assert ("Still short: " in text) == bool(one.stays)
    taller = next(one for one in remedies if one.lever.key == "flue.sections")
    for cost, weight, said in (
        (1234.4, 10.0, "+1,234 USD, example prices, +22 lb."),
        (-50.0, -10.0, "-50 USD, example prices, -22 lb."),
        (0.0, 0.4, " 0 USD, example prices, same weight."),
        (None, 0.6, "cost not known, +1 lb."),
    ):
        one = replace(taller, cost=cost, weight=weight, currency="USD", invented=True)
        assert said in plain_text(remedy_words(one, named, "feet-inches")), said
    own = replace(taller, cost=5.0, weight=0.0, currency="USD", invented=False)
    assert "+5 USD, same weight." in plain_text(remedy_words(own, named, METRIC))
    stays = replace(taller, stays=("CLR-08",))
    assert f"Still short: {named['CLR-08'].title} (CLR-08)." in plain_text(
        remedy_words(stays, named, METRIC)
    )


def test_a_button_takes_its_remedy(found):
    remedies, named = found
    taken = []
    panel = SimpleNamespace(units="feet-inches", set_inputs=taken.append)
    line = RemedyLine(panel)
    line.button.click()
    assert taken == [], "nothing is shown yet"
    line.show(remedies[0], named)
    assert line.button.description == f"Use remedy {remedies[0].rank}"
    line.button.click()
    assert taken == [remedies[0].change]
    assert line.words.value == remedy_words(remedies[0], named, "feet-inches")


class Hand:
    """As much of a panel as the fold of remedies asks for."""

    def __init__(self, design, pack="US IRC 2021", units="feet-inches"):
        self.session = SimpleNamespace(words={})
        self.units, self.taken, self.kept = units, [], 0
        self.lay(design, pack)

    def lay(self, design, pack="US IRC 2021"):
        self.design, self.pack, self.result = design, pack, assess(design, pack)

    def set_inputs(self, changes):
        self.taken.append(changes)

    def keep(self):
        self.kept += 1

    def show_inputs(self, every=False):
        assert every, "a lock stands at the controls too"


def shown(listed):
    return [line.children[1].value for line in listed.widget.children]


def test_every_remedy_can_be_reached_from_the_fold():
    """``find_remedies`` gave 24 for the raised example and the panel showed twelve and what they
    leave: the others had no button anywhere.
    """
    panel = Hand(RAISED)
    fold, whole = Remedies(panel), find_remedies(RAISED)
    fold.update()
    assert f"There are {len(whole)} of them." in plain_text(fold.said.value) and len(whole) > 12
    named = every_finding(panel.result)
    assert shown(fold.single) == [remedy_words(one, named, "feet-inches") for one in whole]
    for line in fold.single.widget.children:
        line.children[0].click()
    assert panel.taken == [one.change for one in whole]
    lines = fold.single.widget.children
    panel.lay(change(Design(), {"name": "another"}))
    fold.update()
    assert fold.single.widget.children == lines[: len(find_remedies(panel.design))]


def test_what_is_kept_is_ticked_kept_with_the_job_and_never_moved():
    panel = Hand(RAISED)
    fold = Remedies(panel)
    fold.update()
    for name in ("width", "raise"):
        fold.boxes[name].value = True
    assert panel.session.words == {"kept": "width raise"} and panel.kept == 2
    assert [one.change for one in fold.known[1]] == [
        one.change for one in find_remedies(RAISED, locks=("width", "raise"))
    ]
    again = Remedies(panel)
    assert [name for name, box in again.boxes.items() if box.value] == ["width", "raise"]
    panel.session.words = {"kept": "look nonsense"}  # another job is opened
    fold.update()
    assert [name for name, box in fold.boxes.items() if box.value] == ["look"]
    assert panel.session.words == {"kept": "look nonsense"} and panel.kept == 2


def test_least_work_comes_first_when_the_reader_wants_it():
    panel = Hand(change(Design(), {"hearth.front": "14 in", "hearth.side": "6 in"}))
    fold = Remedies(panel)
    fold.update()
    assert "hours of work" not in "".join(shown(fold.single))
    fold.first.value = "work"
    assert panel.session.words["first"] == "work"
    named = every_finding(panel.result)
    inorder = ranked(find_remedies(panel.design), "work")
    hours = [(bool(r.warns), -len(r.mends), r.hours) for r in inorder]
    assert hours == sorted(hours)
    assert shown(fold.single) == [remedy_words(r, named, "feet-inches", "work") for r in inorder]
    assert all("hours of work, " in plain_text(words) for words in shown(fold.single))
    with pytest.raises(InputError, match="beauty"):
        ranked((), "beauty")


def test_two_or_three_changes_are_looked_for_on_request(monkeypatch):
    ran = []

    def looking(design, pack, locks, prices=None):
        """The search itself, gone through once and not twice."""
        found = yield from looking_for_combinations(design, pack, locks=locks, prices=prices)
        ran.append((design, pack, locks, found))
        return found

    monkeypatch.setattr("fireplace_calc.panels.folds.remedies.looking_for_combinations", looking)
    panel = Hand(change(Design(), {"hearth.front": "14 in", "hearth.side": "6 in"}))
    fold = Remedies(panel)
    fold.update()
    assert shown(fold.together) == []
    fold.ask.click()
    ((design, pack, locks, found),) = ran
    assert (design, pack, locks) == (panel.design, panel.pack, ())
    named = every_finding(panel.result)
    assert found and shown(fold.together) == [
        remedy_words(one, named, "feet-inches") for one in found
    ]
    assert f"{len(found)} ways found" in plain_text(fold.job.status.value)
    fold.together.lines[0].button.click()
    assert panel.taken == [found[0].change]
    assert fold.together.lines[0].button.description == "Use changes 1"
    panel.lay(RAISED)
    fold.update()
    assert shown(fold.together) == []


def test_a_search_for_another_design_is_not_told(monkeypatch):
    panel = Hand(change(Design(), {"hearth.front": "14 in", "hearth.side": "6 in"}))
    fold = Remedies(panel)
    fold.update()
    single = shown(fold.single)

    def looking(design, pack, locks, prices=None):
        panel.lay(RAISED)
        yield 1, 1, "a pair"
        return find_remedies(design)[:2]

    monkeypatch.setattr("fireplace_calc.panels.folds.remedies.looking_for_combinations", looking)
    fold.ask.click()
    assert "The design has changed: look again." in plain_text(fold.job.status.value)
    assert shown(fold.together) == [] and shown(fold.single) == single
    fold.update()
    assert shown(fold.together) == [] and shown(fold.single) != single


def test_where_nothing_falls_short_that_is_said():
    found = assess(RAISED).findings
    short = [f for f in found if f.verdict == "falls short"]
    met = [f for f in found if f.verdict != "falls short"]
    keys = frozenset(f.key for f in short)
    assert short and listed_words(met, (), (), frozenset()) == "Nothing falls short."
    assert listed_words(found, (), (), keys) == "Nothing falls short."
    one = listed_words((short[0],), (), (), frozenset())
    assert one.startswith("1 check falls short. Each line below is the smallest single change")


def test_why_a_liner_stops_where_it_does():
    """It cannot be drawn; something is short without any raise; the range ends; or a check."""
    table = liner_raises(RAISED)
    held = next(one for one in table.rows if one.stop and one.stop.findings)
    refused = replace(held, refusal="Too wide < it fits.", raised=None)
    free = replace(held, stop=None)
    text = liner_words(replace(table, rows=(refused, free)), METRIC, "US IRC 2021")
    assert "<td class=n>none</td><td>Too wide &lt; it fits.</td></tr>" in text
    assert "<td>Nothing: the workable range ends here.</td></tr>" in text


def test_canadas_table_is_said_beside_an_american_remedy():
    one = next(one for one in find_remedies(RAISED) if one.warns)
    text = plain_text(remedy_words(one, every_finding(assess(RAISED)), "feet-inches"))
    assert f"Another country's book says no: {sentence(one.warns[0])}" in text


FEW_LINERS = {"8", "12", "12x16", "8.5x13"}


def test_the_fold_of_the_raise_tells_of_every_liner_on_request(monkeypatch):
    """Of a few liners; ``test_mending`` works out the whole table."""
    for table in (round_liners, rectangular_liners):
        listed = {size: row for size, row in table().items() if size in FEW_LINERS}
        name = f"fireplace_calc.explore.liners.{table.__name__}"
        monkeypatch.setattr(name, lambda listed=listed: listed)
    panel = Hand(RAISED)
    panel.session.without = lambda key: change(panel.design, {key: "0 in"})
    fold = HowFar(panel)
    fold.update()
    assert fold.table.value == ""
    fold.ask.click()
    text, table = plain_text(fold.table.value), liner_raises(RAISED)
    assert "round 12, yours" in text and text == plain_text(
        liner_words(table, "feet-inches", panel.pack)
    )
    for one in table.rows:
        assert f"{one.shape} {one.size}" in text
        for f in one.short if one.short else one.stop.findings if one.stop else ():
            book = (
                panel.pack if f.key.startswith(("FLU", "ROF", "THR")) else "engineering judgement"
            )
            assert f"{book}, {f.clause}: {f.title} ({f.key})" in text
    assert "Short without any raise, so not counted" in text
    panel.lay(change(RAISED, {"flue.sections": 20}))
    fold.update()
    assert fold.table.value == ""


def test_what_is_refused_is_told_with_what_it_would_break():
    design = change(BOATHOUSE, {"flue.size": "12", "opening.extension": "10 in"})
    rejected, named = rejected_remedies(design, "US IRC 2021"), every_finding(assess(design))
    assert refused_words((), named, METRIC) == ""
    text = plain_text(refused_words(rejected, named, METRIC))
    assert bool(rejected) == ("These look right but break something else:" in text)
    for one in rejected:
        mends = ", ".join(f"{named[k].title} ({k})" for k in one.mends)
        breaks = " ".join(sentence(f, METRIC) for f in one.breaks)
        assert f"{one.sentence(METRIC)} It would fix {mends}, but then: {breaks}" in text


def test_how_far_the_firebox_can_be_raised_in_words():
    reach = highest_raise(BOATHOUSE)
    assert reach.stop is not None and reach.broken
    text = plain_text(reach_words(reach, 6 * INCH, "feet-inches"))
    raised = reach.raised / INCH
    assert text.startswith("The firebox can be raised by ")
    told = re.match(r"The firebox can be raised by (.+?) over its standard height", text)[1]
    assert to_si(told, "length") == pytest.approx(reach.raised, abs=INCH / 30)
    gap = re.search(r"It is raised by 6\" now, (.+?) (below|above) that\.", text)
    assert to_si(gap[1], "length") == pytest.approx(abs(reach.raised - 6 * INCH), abs=INCH / 30)
    assert gap[2] == ("below" if raised >= 6 else "above")
    assert " ".join(sentence(f) for f in reach.stop.findings) in text
    assert text.count("What stops it, and where") == 1
    for stop in reach.stops:
        assert stop.kind in text
    broken = "; ".join(f"{f.title} ({f.key})" for f in reach.broken)
    assert text.endswith(f"Short without any raise, so not counted: {broken}.")
    over = plain_text(reach_words(reach, reach.raised + INCH, "feet-inches"))
    assert 'now, 1" above that.' in over
    free = replace(reach, stop=None, stops=(), broken=())
    words = plain_text(reach_words(free, 6 * INCH, "feet-inches"))
    assert "the end of the workable range, and nothing new falls short." in words
    assert "What stops it" not in words and "so not counted" not in words
    metric = plain_text(reach_words(free, 6 * INCH, METRIC))
    assert "It is raised by 152 mm now" in metric
    refused = replace(reach, stop=replace(reach.stop, findings=(), refusal="Too high < 3."))
    assert "Any higher, and: Too high < 3." in plain_text(reach_words(refused, 0.0, METRIC))


# -- what follows a change -------------------------------------------------------------------------
class Page(LiveDesign):
    """A page without anything on it, that tells what was done."""

    def __init__(self, work):
        super().__init__(work, "all")
        self.done = []

    def followers(self):
        return ((0.06, self.first), (0.25, self.second))

    def first(self):
        self.done.append("first")

    def second(self):
        self.done.append("second")

    def show_inputs(self, every=False):
        self.done.append(("inputs", every))

    def __str__(self):
        return "page"


def test_after_a_change_the_controls_and_then_the_words_follow():
    page = Page(Session(Design(), "US IRC 2021", "feet-inches"))
    assert page.set_inputs({"opening.width": "40 in"}) is True
    assert page.done == ["first", "second", ("inputs", False)] and page.answer == ""
    page.done.clear()
    assert page.set_inputs({"opening.width": "400 in"}) is False
    assert page.done == [] and "Not changed. Opening width is 400 in" in page.said.value
    page.set_units(METRIC)
    assert page.done == [("inputs", True), "first", "second"] and page.units == METRIC
    page.done.clear()
    page.on_slider("opening.width", "41 in")
    page.on_slider("opening.width", "42 in")
    assert widths([page.design]) == [42] and len(page.session.past) == 2
    assert page.result.design is page.design and page.result is page.result
    before = page.result
    page.session.pack = "Canada NBC"
    assert page.result is not before and page.result.pack == "Canada NBC"


def test_one_input_alone_and_a_step_that_is_refused():
    page = Page(Session(Design(), "US IRC 2021", "feet-inches"))
    page.set_input("opening.width", "40 in")
    assert widths([page.design]) == [40] and page.done == ["first", "second", ("inputs", False)]
    page.undo()
    assert widths([page.design]) != [40]
    page.done.clear()
    page.undo()
    assert page.done == [] and plain_text(page.said.value) == "Nothing left to undo."
    page.redo()
    page.done.clear()
    page.redo()
    assert page.done == [] and plain_text(page.said.value) == "Nothing to redo."

    def gone():
        raise InputError("That step cannot be read any more.")

    page.session.undo = gone
    page.undo()
    assert page.done == [] and widths([page.design]) == [40]
    assert plain_text(page.said.value) == "Not changed. That step cannot be read any more."


def test_what_there_is_to_say_of_a_job_stands_before_the_answer():
    page = Page(Session(Design(), "US IRC 2021", "feet-inches"))
    page.show_job()
    assert page.done == [("inputs", True), "first", "second"] and page.said.value == ""
    page.session.said = "Picked up where you left off."
    page.view_pane.view = "front"
    page.redraw()
    front = page.view_pane.board.widget.drawn
    page.view_pane.view = "arch"
    page.show_job()
    remark = "The opening of this design has a straight head; the front elevation is shown."
    assert page.answer == html.remark("Picked up where you left off.") + html.remark(remark)
    assert page.view_pane.board.widget.drawn["bodies"] == front["bodies"]


def test_a_board_shows_views_charts_and_a_check_on_the_paper_that_is_chosen():
    """Where a page has no stage of its own."""
    page = Page(Session(BOATHOUSE, "US IRC 2021", "feet-inches"))
    pane = page.view_pane
    page.redraw()
    assert list(pane.board.stage.shown) == ["front", "section", "roof", "plan"]
    assert pane.theme == "light" and pane.resize(800.0, 600.0) is False
    page.set_paper("dark")
    assert pane.theme == pane.board.stage.theme == "dark"
    page.set_marked("HTH-07")
    assert list(pane.board.stage.shown) == ["whole"] and page.answer == ""
    page.set_marked("")
    pane.view = "draft"
    page.redraw()
    assert sorted(pane.board.stage.shown) == ["front", "plan", "roof", "section"]


def test_a_fault_of_ours_is_said_and_logged_and_ends_nothing(caplog):
    page = Page(Session(Design(), "US IRC 2021", "feet-inches"))

    def broken():
        raise RuntimeError("x")

    page._follow(broken)
    assert plain_text(page.said.value) == (
        "What is written below is of an earlier design (RuntimeError). Your change is taken."
    )
    assert caplog.records[-1].exc_info[1].args == ("x",)
    made = Panel(Design(), folds=("checks",))
    made.open("checks")
    made.folds["checks"].lead = broken
    made.set_input("opening.width", "40 in")
    assert plain_text(made.said.value) == (
        "What is open shows an earlier design (RuntimeError). Your change is taken."
    )
    caplog.clear()


def test_what_a_set_decides_takes_no_answer_and_says_why():
    panel = Panel(change(Design(), {"pieces.set": "middling"}))
    depth = panel.everything.control("throat.depth")
    assert depth.widget.disabled and "set middling" in depth.widget.tooltip
    assert not panel.everything.control("clearance.back").widget.disabled
    assert "small" in panel.everything.control("pieces.set").widget.options
    panel.set_input("pieces.set", "")
    panel.everything.show("throat.depth")
    assert not depth.widget.disabled and "set" not in depth.widget.tooltip
