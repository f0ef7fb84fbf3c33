"""The panel without a browser: what it takes, what it refuses, what it shows; the browser test
looks at the rest.
"""

import asyncio
import base64
import html
import re
from pathlib import Path

import ipywidgets as w
import pytest
from ipywidgets.widgets.widget import _instances as live_widgets
from sampled import sampled

from fireplace_calc import change, example, load
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import view_sheet
from fireplace_calc.drawing.papers.work_sheets import LIFTS, STEPS
from fireplace_calc.drawing.papers.written_sheets import FOUND
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.lists import Table
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons import figures
from fireplace_calc.panels import html as html_of
from fireplace_calc.panels import panel
from fireplace_calc.panels.controls.lookup import Lookup
from fireplace_calc.panels.fireside.client_page import ClientPage
from fireplace_calc.panels.folds import checks
from fireplace_calc.panels.folds.contents import FOLDS
from fireplace_calc.panels.html import flow
from fireplace_calc.panels.lesson.lesson_page import LessonPage
from fireplace_calc.panels.measuring.measuring_page import MeasuringPage
from fireplace_calc.panels.options.wipe import Wipe
from fireplace_calc.panels.picture.sheet_page import SheetPage
from fireplace_calc.panels.picture.turning import Turning
from fireplace_calc.panels.survey.survey_page import SurveyPage
from fireplace_calc.panels.teaching.design_views import PAPER, VIEWS
from fireplace_calc.panels.teaching.exercise_panel import practice
from fireplace_calc.panels.workbench.bench_page import BenchPage
from fireplace_calc.panels.workbench.field_box import FieldBox
from fireplace_calc.proportion import NAMES, find_guides

DEAR = ("options", "remedies", "reach", "body", "draft")
"""Folds that take long to follow a change."""
ROOM = {"house.room_length": "20 ft", "house.room_width": "14 ft"}
BOATHOUSE = load(Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse-laid.toml")


def told(made, fold: str) -> str:
    """What a fold says once it is open."""
    made.open(fold)
    return words_in(made.folds[fold].widget)


def words_in(widget) -> str:
    """All that is written in a widget, as HTML."""
    if isinstance(widget, w.HTML):
        return widget.value
    return "".join(map(words_in, getattr(widget, "children", ())))


def pictures(made) -> dict:
    """What stands on the stage, by the name of its view."""
    return {name: (sent.told, sent.body) for name, sent in made.stage.shown.items()}


def hear(made, **message) -> None:
    """What the page sends when a hand does something."""
    made.page._handle_custom_msg(message, [])


def chosen(made) -> str:
    """Which view the bar says is shown."""
    return made.told()["lists"]["view"]["value"]


def field(made, key) -> dict:
    """An input in front, as the page is told it."""
    return next(one for one in made.told()["fields"] if one["key"] == key)


@pytest.mark.parametrize("view", ["all", "draft", "front", "section", "plan", "roof"])
def test_every_view_opens_and_follows(view):
    made = panel(BOATHOUSE, view=view)
    shown = pictures(made)
    assert shown
    made.set_input("opening.extension", "10 in")
    assert made.design.opening.extension == pytest.approx(0.254)
    after = pictures(made)
    if view != "plan":  # a plan at the hearth does not show how high the opening is
        assert shown != after
    assert "10 in" not in made.said.value and made.result.design is made.design


def test_the_draft_tells_modes_and_odds():
    made = panel(BOATHOUSE, view="draft")
    for words in (
        "sizing mode",
        "Operating mode",
        "of 100",
        "judgement, not code",
        "DRF-05",
        "dying down",
        "velocity head",
    ):
        assert words in told(made, "draft"), words
    before = told(made, "draft")
    made.set_input("house.exhaust", "0 L/s")
    assert told(made, "draft") != before


def test_a_bad_input_changes_nothing():
    made = panel(BOATHOUSE, view="draft")
    before = pictures(made)
    made.set_input("opening.width", "banana")
    assert "banana" in made.refused["opening.width"] and made.design is BOATHOUSE
    assert before == pictures(made)


def test_views_units_papers_and_codes_change_and_come_back():
    made = panel(BOATHOUSE)
    start = pictures(made)
    for move, back in (
        (lambda: made.set_units("millimetres"), lambda: made.set_units("feet-inches")),
        (lambda: made.set_paper("dark"), lambda: made.set_paper("light")),
        (lambda: made.set_view("draft"), lambda: made.set_view("all")),
    ):
        move()
        assert start != pictures(made)
        back()
        assert start == pictures(made)
    made.set_pack("US IRC 2015")
    assert "US IRC 2015" in told(made, "checks")


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_a_fault_is_looked_for_on_any_view_and_every_figure_is_told(units):
    """One view at a time, no label on another; figures by the page, none of them lost."""
    search = practice(3, units=units).search
    for view in VIEWS.values():
        search.views.look(view)
        (told,) = search.views.board.widget.drawn["stage"]["sheets"]
        assert told["name"] == "whole"
        sheet = view_sheet(view, PAPER, build_geometry(search.faults.design), units, own_paper=True)
        assert collisions(sheet) == []
    read = []
    for page in search.figures.chooser.options:
        search.figures.chooser.value = page
        text = html.unescape(re.sub("<[^>]+>", "\n", search.figures.text.value))
        read += [line for line in text.split("\n") if line]
    for part, name, figure in figures(search.faults, units):
        assert {part, f"{name}: ", figure} <= set(read)
    search.views.board.clear()
    assert search.views.board.widget.drawn == {}


def test_a_place_is_looked_up_and_set():
    put = {}
    box = Lookup(put.update)
    box.search("qqxxzzvv")
    assert box.list.options == ("no station of that name",)
    box.search("Intl")
    assert len(box.list.options) > 1
    box.choose(box.list.options[1])
    assert set(put) >= {"site.place", "site.altitude"}
    made = panel(BOATHOUSE)
    made.set_inputs({"site.altitude": "1500 m", "site.winter": "-15 degC"})
    assert made.design.site.altitude == 1500
    made.set_inputs({"site.altitude": "1600 m", "site.winter": "-1500 degC"})
    assert made.design.site.altitude == 1500, "all or nothing"


def test_a_check_is_shown_where_it_is_measured():
    made = panel(BOATHOUSE)
    assert list(pictures(made)) == ["front", "section", "roof", "plan"]
    hear(made, do="jump", key="HTH-07")
    first = pictures(made)
    assert len(first) == 1 and chosen(made) == "HTH-07"
    made.set_input("hearth.front", "18 in")
    assert pictures(made) != first
    hear(made, do="view", name="HTH-05")  # for small openings
    assert "does not apply" in made.said.value
    hear(made, do="view", name="all")
    assert made.view_pane.marked == "" and chosen(made) == "all" and len(pictures(made)) == 4
    hear(made, do="jump", key="HTH-07")
    hear(made, do="jump", key="HTH-07")
    assert chosen(made) == "all", "a second click puts the view back"
    made.set_pack("UK ADJ")
    checks = made.told()["lists"]["view"]["options"]["Where a check is measured"]
    assert "UK-045" in dict(checks)


def test_what_was_assumed_is_asked_and_one_click_answers():
    made = panel(BOATHOUSE, pack="Trade practice")
    made.open("assumed")
    fold = made.folds["assumed"]
    before, asked = made.result.assumed["meets"], len(fold.questions.children)
    assert f"<b>{asked}</b> inputs stand" in fold.hint.value
    button = fold.buttons["stack.connector"]
    assert button.tooltip == "It is so: Appliance connected to the flue, no"
    button.click()
    fold.update()
    assert "stack.connector" in made.design.told
    assert len(fold.questions.children) == asked - 1
    assert made.result.assumed["meets"] <= before
    made.set_input("flue.offset", "0 in")  # entered, though it is the default
    fold.update()
    assert len(fold.questions.children) == asked - 2


def line_of(made, fold, key):
    """The line of one finding in an open fold."""
    made.open(fold)
    return made.folds[fold].list.lines[key]


def test_one_click_at_a_finding_asks_what_it_rests_on_and_the_next_answers():
    made = panel(BOATHOUSE)
    met = [f for f in made.result.findings if f.verdict == "meets" and f.on_assumption]
    key = min(met, key=lambda f: len(f.assumed)).key
    line = line_of(made, "checks", key)
    asked = line.asked
    assert asked and "on an assumption" in line.words.value
    assert line.button in line.widget.children and line.rows not in line.widget.children
    line.button.click()
    assert line.rows in line.widget.children and "Put the questions away" in line.button.description
    assert len(line.rows.children) == len(asked[:12]) + 1
    made.folds["checks"].list.questions.buttons[asked[0]].click()
    assert asked[0] in made.design.told
    made.folds["checks"].update()
    assert line_of(made, "checks", key) is line and line.asked == asked[1:]
    assert line.open == bool(line.asked)


def test_a_check_that_waits_has_the_field_right_there():
    made = panel(BOATHOUSE)
    line = line_of(made, "checks", "CLR-03")
    assert line.asked == ("clearance.fill",)
    assert line.button.description == "Answer it here"
    assert line.button.tooltip == "Answer it here: Nothing in the air space"
    line.button.click()
    question, _ = line.rows.children
    field, confirm = question.children
    assert field is made.everything.control("clearance.fill").widget
    assert confirm.layout.display == "none", "what nobody knows cannot be so"
    field.value = "none"
    made.folds["checks"].update()
    assert "✓ meets" in line.words.value and line.button not in line.widget.children
    assert not line.open and line.rows not in line.widget.children


@pytest.mark.parametrize(("fold", "key"), [("draft", "DRF-02"), ("structure", "STR-22")])
def test_what_draft_and_structure_rest_on_is_asked_there_too(fold, key):
    made = panel(Design())
    line = line_of(made, fold, key)
    many = len(line.asked)
    assert many and "on an assumption" in line.words.value
    line.button.click()
    assert len(line.rows.children) == min(many, 12) + 1
    assert (f"{many - 12} more come" in line.more.value) == (many > 12)


def test_a_finding_that_nobody_has_to_answer_has_no_button():
    made = panel(BOATHOUSE)
    made.open("checks")
    for finding in made.result.findings:
        if finding.verdict == "falls short":
            line = made.folds["checks"].list.lines[finding.key]
            assert line.widget.children == (line.words,)


def test_the_checklist_is_the_packs_own_and_counts_down():
    made = panel(BOATHOUSE, pack="Trade practice")
    made.open("checklist")
    ticks = made.folds["checklist"].ticks
    assert [c.description for c in ticks.children] == [
        "Laid out from the center line",
        "No more mortar spread than is covered at once",
    ]
    assert "<b>2</b> not answered" in made.folds["checklist"].hint.value
    ticks.children[0].value = "yes"
    assert (
        made.design.abroad.centre_line is True
        and "<b>1</b> not answered" in made.folds["checklist"].hint.value
    )
    assert "✓ meets</td><td><b>Laid out from the center line" in told(made, "checks")


def test_where_nothing_is_assumed_that_is_said():
    said = "Nothing is assumed: all that the passing checks rest on was entered."
    assert html_of.assumed_hint(()) == html_of.remark(said)
    for count, many in ((1, "<b>One</b> input stands"), (2, "<b>2</b> inputs stand")):
        assert html_of.assumed_hint((None,) * count) == (
            f'<div class="sentence">{many} at a default that nobody has looked at, and checks pass'
            " on it. Look; say that it is so, or enter what is.</div>"
        )


def test_what_stands_begins_with_its_table(monkeypatch):
    made = panel(BOATHOUSE, folds=("structure",))
    fold = checks.Stands(made)
    monkeypatch.setattr(checks, "standing", lambda *_: iter(["Call an engineer."]))
    with pytest.raises(TypeError) as wrong:
        fold.update()
    assert str(wrong.value) == "What stands on paper begins with the table of its findings."


def test_several_books_answer_in_one_table():
    made = panel(BOATHOUSE)
    for words in (
        "The same question to several books",
        "Canada NBC",
        "UK ADJ",
        "silent",
        "CA-006",
        "Why they differ",
    ):
        assert words in told(made, "books")


def test_a_slider_reaches_the_ends_its_input_allows(boathouse):
    """18 and 96 in for the width; in whole centimetres the first and last inside them."""
    shown = panel(boathouse)

    def ends(key):
        told = field(shown, key)
        return told["low"], told["high"], told["step"]

    assert ends("opening.width") == (18, 96, 0.5)
    shown.set_units("millimetres")
    assert ends("opening.width") == (460, 2430, 10)
    assert ends("opening.extension") == (0, 600, 10)
    assert ends("flue.sections") == (4, 40, 1)


def test_a_closed_fold_costs_nothing_and_an_open_one_follows(boathouse):
    made = panel(boathouse)
    assert told(made, "checks") and list(made.folds) == ["checks"]
    for name, word in (
        ("takeoff", "Material takeoff"),
        ("structure", "STR-"),
        ("bricks", "Block under the hearth"),
        ("cost", "invented"),
        ("work", "Staging"),
        ("books", "Canada NBC"),
    ):
        assert word in told(made, name), name
    before = told(made, "work")
    made.set_input("opening.extension", "14 in")
    assert told(made, "work") != before


def test_only_the_folds_asked_for():
    made = panel(BOATHOUSE, folds=("structure", "takeoff"))
    assert made.named == ("structure", "takeoff") and "STR-" in told(made, "structure")


def test_undo_and_redo_go_back_and_forth():
    made = panel(BOATHOUSE)
    made.redo()
    assert made.design == BOATHOUSE and "Nothing to redo" in made.said.value
    made.set_input("opening.width", "44 in")
    made.set_input("house.ceiling", "10 ft")
    wide, high = made.design, made.everything.control("house.ceiling").widget
    assert high.value == "10'-0\""
    made.undo()
    assert (
        made.design.opening.width == wide.opening.width
        and high.value == "12'-0\""
        and not made.said.value
    )
    made.undo()
    assert made.design == BOATHOUSE and not made.said.value
    made.undo()
    assert made.design == BOATHOUSE and "Nothing left to undo" in made.said.value, (
        "nothing before the first"
    )
    made.redo()
    made.redo()
    assert made.design == wide and made.result.design == wide and not made.said.value
    made.undo()
    made.set_input("opening.width", "50 in")
    made.redo()
    assert made.design.opening.width == pytest.approx(1.27), "a new change ends what was to come"


def test_one_run_of_a_slider_is_one_step_back(monkeypatch):
    monkeypatch.setattr("fireplace_calc.panels.work_in_hand.monotonic", lambda: 0.0)  # a quick hand
    made = panel(BOATHOUSE)
    for width in range(42, 60):
        made.on_slider("opening.width", f"{width} in")
    made.on_slider("flue.sections", 24)
    made.undo()
    assert (
        made.design.opening.width == pytest.approx(59 * 0.0254)
        and made.design.flue.sections == BOATHOUSE.flue.sections
    )
    made.undo()
    assert made.design == BOATHOUSE


def test_an_option_put_aside_is_a_place_to_undo_to():
    made = panel(BOATHOUSE)
    made.on_slider("opening.width", "44 in")
    made.session.put_aside()
    made.on_slider("opening.width", "48 in")
    made.undo()
    assert made.design == made.session.options[0]


def test_the_example_comes_back_in_one_click_and_that_can_be_undone():
    made = panel(BOATHOUSE)
    made.set_input("opening.width", "50 in")
    mine = made.design
    made.put(made.session.first)
    assert made.design == BOATHOUSE
    made.undo()
    assert made.design == mine


def test_lists_of_pieces_grow_change_and_shrink():
    made = panel(BOATHOUSE)
    trim = made.everything.control("surround.trim")
    had = len(BOATHOUSE.surround.trim)
    add = trim.widget.children[-1]
    add.click()
    assert len(made.design.surround.trim) == had + 1 and len(trim.rows) == had + 1
    distance = next(c for c in trim.rows[-1] if c.spec.kind == "length").widget
    distance.value = "3 bananas"
    assert "bananas" in distance.wrong and len(made.design.surround.trim) == had + 1
    wanted = made.design.surround.trim[:-1]
    trim.list.children[-1].children[-1].click()
    assert made.design.surround.trim == wanted and len(trim.list.children) == had
    near = made.everything.control("roof.nearby")
    near.widget.children[-1].click()
    near.rows[0][1].widget.value = "5 ft"
    assert made.design.roof.nearby[0].distance == pytest.approx(1.524)


def test_three_hundred_controls_are_made_only_when_their_group_is_unfolded():
    """Each is shown with the design's own value, and follows it from then on."""
    made = panel(BOATHOUSE)
    assert not made.everything.controls
    made.set_input("house.ceiling", "11 ft")
    made.open("inputs")
    groups = made.everything.widget
    groups.selected_index = groups.titles.index("House")
    assert (
        "house.ceiling" in made.everything.controls and "fire.burn" not in made.everything.controls
    )
    box = made.everything.control("house.ceiling").widget
    assert box.value == "11'-0\"" and box in groups.children[groups.selected_index].children
    made.undo()
    assert box.value == "12'-0\""
    for number in range(len(groups.children)):
        groups.selected_index = number
        assert groups.children[number].children
    assert set(made.everything.controls) | set(made.leads) >= set(all_inputs())


def buttons(widget) -> dict:
    """Every button under a widget by its words."""
    found = {}
    for child in getattr(widget, "children", ()):
        found |= buttons(child) | (
            {child.description: child} if isinstance(child, w.Button) else {}
        )
    return found


def test_papers_come_as_a_link_and_lie_beside_what_is_kept(tmp_path):
    made = panel(BOATHOUSE, folds=("papers",), keep=tmp_path)
    made.open("papers")
    fold = made.folds["papers"]
    shown = buttons(fold.widget)
    for words, name, begins in (
        ("Paper set", "papers.pdf", b"%PDF"),
        ("Sheet to hand over", "hand-over.pdf", b"%PDF"),
        ("Check sheet", "check-sheet.pdf", b"%PDF"),
        ("Order as a spreadsheet", "order.xlsx", b"PK"),
        ("Drawing file (DXF)", "drawings.dxf", b"  0"),
        ("Design file", "design.toml", b"# A fireplace"),
    ):
        shown[words].click()
        kept = tmp_path / f"boathouse-club-room-laid-{name}"
        data = base64.b64decode(re.search(r'href="data:[^;]+;base64,([^"]+)"', fold.link.value)[1])
        assert data.startswith(begins) and kept.read_bytes() == data, words
        assert kept.name in fold.link.value and "Done" in fold.job.status.value
    assert load(tmp_path / "boathouse-club-room-laid-design.toml") == BOATHOUSE


def test_papers_are_written_while_the_panel_lives_on(tmp_path):
    """In a kernel the button returns at once and the work goes on after it."""
    made = panel(BOATHOUSE, folds=("papers",))
    made.open("papers")
    fold = made.folds["papers"]

    async def reader():
        buttons(fold.widget)["Check sheet"].click()
        await asyncio.sleep(0)
        assert not fold.link.value and not fold.job.stop.disabled
        await fold.job.task

    asyncio.run(reader())
    assert "check-sheet.pdf" in fold.link.value and "Done" in fold.job.status.value


def test_a_design_file_is_opened_whole_or_refused(tmp_path):
    made = panel(BOATHOUSE, folds=("papers",))
    made.open("papers")
    other = change(BOATHOUSE, {"opening.width": "50 in"})
    made.folds["papers"]._opened(
        ({"name": "mine.toml", "content": memoryview(text_of(other).encode())},)
    )
    assert made.design == other
    for name, content, words in (
        ("torn.toml", text_of(BOATHOUSE).encode()[:400] + b"[[[", "torn.toml"),
        ("photo.toml", b"\xff\xd8\xff", "text file"),
        ("wide.toml", b'[opening]\nwidth = "900 in"\n', "Opening width"),
    ):
        made.folds["papers"]._opened(({"name": name, "content": memoryview(content)},))
        assert words in made.said.value and made.design == other
    made.undo()
    assert made.design == BOATHOUSE


def test_a_slider_gives_the_readers_own_units():
    made = panel(BOATHOUSE)
    made.set_units("millimetres")
    told = field(made, "opening.width")
    assert told["place"] == pytest.approx(1066.8) and told["text"] == "1066.8 mm"
    hear(made, do="slide", key="opening.width", value=1080)
    assert made.design.opening.width == pytest.approx(1.08)
    hear(made, do="units", name="feet-inches")
    hear(made, do="slide", key="opening.width", value=44.5)
    assert made.design.opening.width == pytest.approx(44.5 * 0.0254)
    hear(made, do="slide", key="flue.sections", value=24)
    assert made.design.flue.sections == 24


def test_a_slider_that_a_set_puts_back_is_told_where_it_stands():
    """The middling set comes in one width: the hand's end of the slider is not the design's."""
    made, sent = panel(load(example("boathouse"))), []
    made.page.send = lambda message, bodies=None: sent.append(message)
    before = field(made, "opening.width")
    hear(made, do="slide", key="opening.width", value=96)
    (told,) = [one for m in sent for one in m.get("fields", ())]
    assert told == before | {"note": "The nearest that the set middling gives."}
    hear(made, do="slide", key="flue.sections", value=20)
    assert {one["note"] for m in sent[-1:] for one in m.get("fields", ())} == {""}


def test_what_was_refused_leaves_its_box_with_the_next_change():
    made, sent = panel(BOATHOUSE), []
    made.page.send = lambda message, bodies=None: sent.append(message)
    hear(made, do="type", key="opening.extension", value="36 in")
    assert "Not changed" in made.refused["opening.extension"]
    assert sent[-1]["wrong"] == made.refused and not made.said.value
    hear(made, do="type", key="opening.width", value="44")
    assert made.design.opening.width == pytest.approx(44 * 0.0254)
    told = {one["key"]: one["text"] for m in sent for one in m.get("fields", ())}
    assert told["opening.extension"] == '6"' and not made.refused
    hear(made, do="type", key="flue.sections", value="99")
    assert "99" in made.refused["flue.sections"] and made.design.flue.sections == 20


def test_a_refusal_stands_at_its_own_field_wherever_that_is():
    made = panel(BOATHOUSE)
    box = made.everything.control("house.ceiling").widget
    box.value = "90 ft"
    assert "Ceiling" in box.wrong and "\\" not in box.wrong and not made.said.value
    assert made.design == BOATHOUSE and box.value == "90 ft"
    box.value = "10"
    assert "Ceiling" in box.wrong and "10 in" in box.wrong, "read in the reader's units"
    box.value = "10 ft"
    assert box.wrong == "" and made.design.house.ceiling == pytest.approx(3.048)


def test_a_refusal_stands_over_a_list_or_over_the_stage_where_no_box_is_made():
    made = panel(BOATHOUSE)
    far = ({"distance": "900 ft"},)
    why = (
        'Mantel and trim, piece 1: Trim distance is 900 ft, but 0" to 5\'-0" is the'
        " workable range (0 mm to 1 524 mm); check the unit."
    )
    said = f'<div class="trouble" role="alert">Not changed. {html.escape(why)}</div>'
    made.set_input("surround.trim", far)
    assert made.said.value == said and made.refused == {"surround.trim": f"Not changed. {why}"}
    trim = made.everything.control("surround.trim")
    made.set_input("opening.width", "42 in")
    assert (made.said.value, trim.wrong.value, made.refused) == ("", "", {})
    made.set_input("surround.trim", far)
    assert trim.wrong.value == said and made.said.value == ""
    liner = made.everything.control("flue.size")
    made.set_input("flue.size", "77")
    assert liner.widget.wrong == made.refused["flue.size"]
    assert liner.widget.wrong.startswith("Not changed. Flue size is '77', but the table holds")
    before = made.design
    made.undo()
    assert made.design is before and made.refused == {}, "first what was refused"
    assert liner.widget.wrong == trim.wrong.value == ""
    made.undo()
    assert made.design.opening.width == BOATHOUSE.opening.width


def test_a_slider_at_a_place_that_cannot_be_is_refused_at_its_field():
    made, sent = panel(BOATHOUSE), []
    made.page.send = lambda message, bodies=None: sent.append(message)
    hear(made, do="slide", key="opening.extension", value=36)
    why = (
        'Not changed. Firebox extension is 36 in, but 0" to 2\'-0" is the workable range (0 mm to'
        " 610 mm); check the unit."
    )
    assert sent == [{"wrong": {"opening.extension": why}, "done": True}]
    assert made.design == BOATHOUSE and made.refused == {"opening.extension": why}


def test_a_page_that_says_hello_is_told_everything():
    made, sent = panel(BOATHOUSE), []
    made.page.send = lambda message, bodies=None: sent.append((message, bodies))
    hear(made, do="hello")
    ((first, bodies),) = sent
    assert made.stage.heard and len(bodies) == 4
    assert list(first) == ["tabs", "lists", "fields", "strip", "stage", "opened", "question"]


def test_what_is_not_measured_on_a_view_leads_to_where_it_is_said():
    made, sent = panel(BOATHOUSE), []
    hear(made, do="jump", key="HTH-07")
    assert chosen(made) == "HTH-07"
    made.page.send = lambda message, bodies=None: sent.append(message)
    for key, fold in (("DRF-05", "draft"), ("STR-12", "structure"), ("FND-09", "checks")):
        hear(made, do="jump", key=key)
        assert made.opened == fold and sent[-1] == {"line": key}
        assert made.view_pane.marked == "" and chosen(made) == "all"


def test_a_guide_is_switched_on_from_its_box_over_the_view_in_its_room():
    made = panel(change(BOATHOUSE, ROOM), folds=("guides",))
    text = told(made, "guides")
    assert made.folds["guides"].said.value in text
    fold = made.folds["guides"]
    hint = "Switch a guide on to see it over the view in its room. Guides, not rules."
    assert html_of.remark(hint) in text
    found = find_guides(made.result.geometry, "feet-inches")
    assert fold.said.value == html_of.guided(found, made.result, "feet-inches")
    assert list(fold.boxes) == list(NAMES)
    assert [box.description for box in fold.boxes.values()] == [n.capitalize() for n in NAMES]
    first, second, *_ = NAMES
    assert made.view_pane.view == "all" and made.view_pane.guides == set()
    fold.boxes[first].value = True
    assert made.view_pane.view == "room" and made.view_pane.guides == {first}
    one = pictures(made)
    fold.boxes[second].value = True
    assert made.view_pane.guides == {first, second} and pictures(made) != one
    fold.boxes[second].value = False
    assert made.view_pane.guides == {first} and pictures(made) == one
    made.set_view("front")
    fold.boxes[first].value = False
    assert made.view_pane.guides == set() and made.view_pane.view == "front"
    made.set_units("millimetres")
    fold.update()
    metric = find_guides(made.result.geometry, "millimetres")
    assert fold.said.value == html_of.guided(metric, made.result, "millimetres")
    assert fold.said.value != html_of.guided(metric, made.result, "feet-inches")


def test_shape_and_size_of_the_liner_are_one_choice():
    """12 in round: 113.1 sq in, pi 36."""
    made = panel(BOATHOUSE)
    liner = made.everything.control("flue.size")
    assert made.everything.control("flue.shape") is liner
    words = next(word for word in liner.widget.options if word.startswith("round 12 in"))
    assert "113" in words
    liner.widget.value = words
    assert (made.design.flue.shape, made.design.flue.size) == ("round", "12")
    liner.widget.value = next(w for w in liner.widget.options if w.startswith("rectangular 12x16"))
    assert (made.design.flue.shape, made.design.flue.size) == ("rectangular", "12x16")
    made.undo()
    assert liner.widget.value == words
    made.set_inputs({"flue.size": "own", "flue.own_width": "13 in"})
    assert liner.widget.value.startswith("a size of its own")


def test_the_strip_counts_and_names_the_worst(boathouse):
    made = panel(boathouse)
    told = made.told()["strip"]
    result = made.result
    assumed = result.assumed["meets"]
    numbers = [result.counts[v] for v in ("falls short", "not checked")]
    assert [one["number"] for one in told["counts"]] == [
        *numbers,
        assumed,
        result.counts["meets"] - assumed,
        sum(f.verdict == "falls short" for f in (*result.judgement, *result.structure.findings)),
    ]
    assert [one["key"] for one in told["worst"]] == ["ROF-02", "CLR-08", "DRF-06"], (
        "10 1/2 of 24 in lacking, then 3/8 of 1 1/8, then the draft's"
    )
    assert told["bill"][1][1][0] == "37,937 lb"
    made.set_input("flue.sections", 24)
    assert made.told()["strip"]["bill"] != told["bill"]


def test_a_tab_opens_its_fold_and_only_that(boathouse):
    made = panel(boathouse)
    assert made.content.children == () and not made.folds
    hear(made, do="tab", name="takeoff")
    assert made.content.children == (made.folds["takeoff"].widget,)
    hear(made, do="tab", name="")
    assert made.content.children == ()
    for _, _, folds in made.tabs:
        for name, _ in folds:
            assert name in made.named


def test_the_stage_lays_its_views_out_for_its_size(boathouse):
    made = panel(boathouse)
    before = pictures(made)
    hear(made, do="size", wide=1500, high=900)
    assert {n: told["box"] for n, (told, _) in pictures(made).items()} != {
        n: told["box"] for n, (told, _) in before.items()
    }
    hear(made, do="size", wide=380, high=420)  # one at a time, the others further on
    places = [told["at"] for told, _ in pictures(made).values()]
    assert [at[0] for at in places] == [0, 1, 2, 3]


def test_a_table_of_many_columns_is_wide_enough_for_its_headings():
    """The longest word of each heading, by the bold letters of the drawings (capitals 0.729 of an
    em), fits the column it stands in.
    """
    for columns in (STEPS, LIFTS, FOUND):
        least = int(re.search(r"--least:(\d+)em", flow([Table("t", columns, ())]))[1])
        whole = sum(column.share for column in columns)
        for column in columns:
            for word in column.heading.split():
                assert lettering.width(word, 0.729, True) < least * column.share / whole, word


def counted(act, times: int) -> list[int]:
    """How many widgets there are after each time."""
    counts = []
    for k in range(times):
        act(k)
        counts.append(len(live_widgets))
    return counts


@pytest.mark.parametrize("fold", sampled(FOLDS, 6))
def test_no_widget_is_left_behind_by_changes(fold):
    """Folds, remedies and options are shown again in the widgets they have: new ones at every rest
    would stay in the kernel for ever.
    """
    made = panel(BOATHOUSE, folds=(fold,))
    made.session.put_aside()
    moves = ["36 in", "44 in", "52 in", "60 in"]

    def move(k):
        made.set_input("opening.width", moves[k % len(moves)])

    counts = counted(move, 12 if fold in DEAR else 50)
    settled = counts[len(moves) :]
    assert settled == [settled[0]] * len(settled), counts


@pytest.mark.whole
def test_no_widget_is_left_behind_by_lists_units_options_and_exercises():
    made = panel(BOATHOUSE, folds=("options", "inputs"))
    made.everything.control("surround.trim")
    made.open("options")
    session = practice(3)

    def use(k):
        few = made.design.surround.trim[: 1 + k % 2]
        made.set_input("surround.trim", few)
        made.set_units(("millimetres", "feet-inches")[k % 2])
        if k < 2:
            made.session.put_aside()
        else:
            (made.session.remove_option, made.session.put_back_option)[k % 2](1)
        made.folds["options"].update()
        session.set(seed=str(k % 2))

    counts = counted(use, 12)
    assert counts[6:] == [counts[6]] * 6, counts


def test_a_step_of_a_slider_releases_the_page_once_and_at_its_end():
    """The page lets the next step go at each release: two would let the kernel fall behind."""

    async def slid():
        made, sent = panel(BOATHOUSE), []
        made.stage.heard = True
        made.page.send = lambda message, buffers=None: sent.append(message)
        made.on_slider("opening.width", 40.0)
        await asyncio.sleep(0.02)
        return sent

    sent = asyncio.run(slid())
    assert any("stage" in message for message in sent)
    releases = [n for n, message in enumerate(sent) if message.get("done")]
    assert len(releases) == 1
    assert not any("stage" in message for message in sent[releases[0] + 1 :])


@pytest.mark.parametrize(
    "made",
    [
        BenchPage,
        ClientPage,
        FieldBox,
        LessonPage,
        MeasuringPage,
        SheetPage,
        SurveyPage,
        Turning,
        Wipe,
    ],
)
def test_what_a_page_asks_its_widget_for_is_sent(made):
    """Every name that a page's code reads of its widget is one that is sent to it."""
    asked = [set(re.findall(r"model\.get\('(\w+)'\)", str(one._esm))) for one in (made, SheetPage)]
    read = asked[0] if made in (SheetPage, FieldBox, Turning, Wipe) else asked[0] - asked[1]
    assert read <= set(made.class_traits(sync=True)) and (read or made in (BenchPage, ClientPage))


def test_pictures_that_are_looked_at_are_turned_forth_and_back():
    made = panel(BOATHOUSE)
    made.open("papers")
    look = made.folds["papers"].look
    look.which.options, look.which.value = ["first", "second", "third"], "first"
    turn = buttons(look.widget)
    for name, shown in (("Next", "second"), ("Previous", "first"), ("Previous", "third")):
        turn[name].click()
        assert look.which.value == shown
