"""Start mine: a fireplace from a dozen answers, by the engine and by the page's own boxes; and the
page that asks which job it is to be.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fireplace_calc import PACKS, assess, load
from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import FOOT, INCH, InputError
from fireplace_calc.design.mantel import FAMILIES
from fireplace_calc.design.records import Design
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import text_of
from fireplace_calc.editing.starting.answers import liner, liner_choices, two_lengths
from fireplace_calc.editing.starting.outcomes import came_of
from fireplace_calc.editing.starting.questions import BY_KEY, QUESTIONS
from fireplace_calc.editing.starting.start import Start
from fireplace_calc.editing.starting.worked_out import sections_for
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.panels import html, panel
from fireplace_calc.panels.options import picture_desk
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.scene.setting.furnished import room_measures
from fireplace_calc.scene.setting.shell import shell_things
from fireplace_calc.scene.still.option_pictures import InRoom

EXAMPLE = load(DESIGNS / "boathouse-laid.toml")
TASK = (
    ("name", "Lake house"),
    ("place", "5,280 ft"),
    ("storeys", "one"),
    ("width", "42"),
    ("raised", "14"),
    ("head", "arch"),
    ("liner", "12x16"),
    ("top", "24 ft"),
)
"""42 in unit raised 14 in, arch, 12x16 liner, 24 ft, one story, 5,280 ft."""
REST = (
    ("book", "US IRC 2021"),
    ("ceiling", "9"),
    ("room", "20 x 14"),
    ("stands", "within an outside wall"),
    ("pitch", "8"),
    ("ridge", "8"),
    ("method", "laid in brick"),
    ("height", "30"),
    ("face", "stone"),
    ("mantel", "shelf"),
)


def answered(*answers, units="feet-inches") -> Start:
    start = Start(units=units)
    for key, text in answers:
        start = start.answer(key, text, PACKS)
    return start


def as_asked(design) -> None:
    """The task's figures, from the words of the task alone."""
    assert design.site.altitude == pytest.approx(5280 * FOOT)
    assert design.opening.width == pytest.approx(42 * INCH)
    assert design.opening.extension == pytest.approx(14 * INCH)
    assert design.opening.head == "segmental" and design.lintel.material == "masonry arch"
    assert (design.flue.shape, design.flue.size) == ("rectangular", "12x16")
    top = build_frame(design).crown_top
    each = design.flue.section_height + design.flue.joint
    assert abs(top - 24 * FOOT) <= each / 2 + 1e-6, "as near as whole sections bring it"
    assert design.roof.eaves_level == design.house.ceiling


def test_the_task_is_answered_from_a_plain_fireplace_with_nothing_inherited():
    design = answered(*TASK).design
    as_asked(design)
    assert design.surround.trim == () and design.roof.nearby == () and design.house.exhaust == 0
    everything = answered(*TASK, *REST)
    as_asked(everything.design)
    assert everything.left() == ()
    told = {"house.ceiling", "house.room_length", "roof.ridge_distance", "method", "roof.pitch"}
    assert not told & assumed(everything.design), "an answer at the default is told"
    assert "flue.sections" in dict(everything.worked_out())


def test_the_order_of_the_answers_does_not_matter():
    """Sections are counted anew when the raise lifts the flue."""
    one, other = answered(*TASK, *REST), answered(*reversed((*TASK, *REST)))
    assert one.design == other.design


@settings(max_examples=24, deadline=None)
@given(
    st.lists(
        st.one_of(
            st.tuples(
                st.just("width"), st.sampled_from(["42", "20 in", "96", "8 ft", "9 ft", "x"])
            ),
            st.tuples(st.just("height"), st.sampled_from(["30", "16", "60 in", "-1", "1e99 in"])),
            st.tuples(st.just("raised"), st.sampled_from(["0", "14", "24", "30"])),
            st.tuples(st.just("top"), st.sampled_from(["24 ft", "8 m", "14", "2 in", "500", ""])),
            st.tuples(st.just("head"), st.sampled_from(["arch", "straight", "Arch", "gothic"])),
            st.tuples(st.just("liner"), st.sampled_from(["12x16", "8", "24x24", "16 x 12", "9"])),
            st.tuples(
                st.just("method"), st.sampled_from(["laid in brick", "set in pieces: small"])
            ),
            st.tuples(st.just("storeys"), st.sampled_from(["one", "two", "three", "nine"])),
            st.tuples(st.just("pitch"), st.sampled_from(["8", "0", "12 in 12", "7:12", "flat"])),
            st.tuples(st.just("ridge"), st.sampled_from(["8", "80 ft", "0", "99 ft"])),
            st.tuples(st.just("room"), st.sampled_from(["20 x 14", "6 by 4 m", "20", "x"])),
            st.tuples(st.just("name"), st.text(max_size=8)),
        ),
        max_size=12,
    )
)
def test_after_any_answers_the_design_is_whole_and_a_refusal_is_one_sentence(answers):
    start = Start()
    for key, text in answers:
        try:
            start = start.answer(key, text, PACKS)
        except InputError as why:
            assert len(str(why)) > 20 and "\n" not in str(why)
            continue
        assert text.strip() == "" or key in start.answers
        for question in QUESTIONS:
            read = start.became(question)
            assert read.endswith(".") or question.key not in start.answers, question.key
    assert load_text(text_of(start.design)) == start.design
    assess(start.design)


@pytest.mark.parametrize("top", [14.6, 20.0, 24.0, 24.6, 29.0, 33.3, 60.0, 86.9])
def test_no_other_count_of_sections_comes_nearer_to_the_height(top):
    """Against the frames of every other count, each built anew."""
    design = answered(*TASK).design
    count = sections_for(design, top * FOOT)
    off = {
        other: abs(build_frame(change(design, {"flue.sections": other})).crown_top - top * FOOT)
        for other in range(4, 41)
    }
    assert off[count] == pytest.approx(min(off.values()), abs=1e-6)


def test_of_two_counts_that_are_as_near_the_higher_is_taken():
    design = answered(*TASK).design
    low, high = (
        build_frame(change(design, {"flue.sections": count})).crown_top for count in (9, 10)
    )
    assert sections_for(design, (low + high) / 2) == 10
    assert sections_for(design, (low + high) / 2 - 0.001) == 9


def test_what_was_asked_of_the_height_and_what_came_of_it_stand_side_by_side():
    """In the words of the tape: with 14 sections the top stands as many inches off as is said."""
    start = answered(*TASK, ("top", "29 ft"))
    said, top = start.became(BY_KEY["top"]), build_frame(start.design).crown_top
    count, each = start.design.flue.sections, start.design.flue.section_height
    off, way = abs(top - 29 * FOOT), "under" if top < 29 * FOOT else "over"
    other = count + (1 if way == "under" else -1)
    then = build_frame(change(start.design, {"flue.sections": other})).crown_top
    assert f"{count} sections of {feet_inches(each)} bring the top to {feet_inches(top)}" in said
    assert f"{feet_inches(off)} {way} what was asked" in said
    assert f"With {other} it is {feet_inches(then)}." in said
    exact = start.answer("top", f"{top} m").became(BY_KEY["top"])
    assert exact.endswith("as asked.")


def test_a_height_that_no_count_reaches_is_refused_with_what_does():
    for top in ("3 ft", "200 ft"):
        with pytest.raises(InputError, match=r"4 to 40 sections bring its top to"):
            answered(("top", top))
    with pytest.raises(InputError, match="Chimney height"):
        answered(("top", "tall"))


def test_levels_of_the_roof_are_worked_out_by_hand():
    """Two stories of 9 ft and a floor of a foot between them: eaves at 19 ft. A chimney of 8:12 roof
    outside, 8 ft from the ridge: eaves, and 8:12 over 8 ft and the chimney's own depth.
    """
    start = answered(
        ("storeys", "two"),
        ("ceiling", "9 ft"),
        ("stands", "outside"),
        ("pitch", "8"),
        ("ridge", "8 ft"),
    )
    assert start.design.roof.eaves_level == pytest.approx(19 * FOOT)
    assert start.design.house.highest_ceiling == pytest.approx(19 * FOOT)
    depth = build_frame(start.design).stack_depth
    exact = 19 * FOOT + (8 * FOOT + depth) * 8 / 12
    assert exact <= start.design.roof.ridge_level < exact + INCH
    inside = start.answer("stands", "inside the house").answer("room", "20 x 12 ft")
    assert inside.design.roof.ridge_level == pytest.approx(
        start.design.roof.ridge_level + 8 * FOOT, abs=INCH
    ), "12 ft of room at 8:12 is 8 ft"


def test_a_liner_is_one_choice_with_its_area():
    """Areas are the code's printed ones: 131 sq in for 12x16, 113 for 12 in round (IRC 2021,
    tables R1003.14(1) and (2)).
    """
    listed = liner_choices("feet-inches")
    assert "12x16 rectangular, 131 sq in net" in listed and "12 round, 113 sq in net" in listed
    assert len(listed) == len(rectangular_liners()) + len(round_liners())
    assert len(liner_choices("millimetres")) == len(listed)
    for words, value in listed.items():
        assert " ".join(liner(words, "feet-inches")) == value
    for text, found in (
        ("16 x 12", ("rectangular", "12x16")),
        ('12"', ("round", "12")),
        ("12 in round", ("round", "12")),
        ("8.5 by 13", ("rectangular", "8.5x13")),
        ("10.75", ("round", "10.75")),
    ):
        assert liner(text, "feet-inches") == found
    for wrong in ("", "11", "x", "12x", "12x16x2", "big", "1e3"):
        with pytest.raises(InputError, match="the tables have"):
            liner(wrong, "feet-inches")


def test_two_lengths_and_their_units():
    assert two_lengths("20x14", "millimetres", ("ft", "m"), "R") == ("20 m", "14 m")
    assert two_lengths("20 ft by 14 ft", "feet-inches", ("ft", "m"), "R") == ("20 ft", "14 ft")
    with pytest.raises(InputError, match="two lengths"):
        two_lengths("20", "feet-inches", ("ft", "m"), "The room")


def test_a_town_sets_altitude_and_winter_and_a_length_only_the_altitude():
    town = answered(("place", "Denver"))
    assert 1500 < town.design.site.altitude < 1800 and town.design.site.winter < 265
    assert "up, winter" in town.became(BY_KEY["place"])
    high = town.answer("place", "5,280 ft")
    assert high.design.site.altitude == pytest.approx(5280 * FOOT) and not high.design.site.place
    assert "5,280 ft" in high.became(BY_KEY["place"])
    with pytest.raises(InputError, match="no weather station"):
        answered(("place", "qqqqzzzz"))


def test_a_set_decides_what_it_decides_and_says_so():
    start = answered(("method", "set in pieces: middling"))
    assert "middling decides this" in start.decided_by_set(BY_KEY["liner"])
    assert not start.decided_by_set(BY_KEY["width"])
    with pytest.raises(InputError, match="middling decides this"):
        start.answer("liner", "12x16")
    laid = start.answer("method", "laid in brick").answer("liner", "12x16")
    assert laid.design.flue.size == "12x16" and laid.design.piece_set is None


def test_an_answer_taken_out_is_nobodys_any_more():
    start = answered(("ceiling", "9 ft"))
    assert "house.ceiling" not in assumed(start.design)
    out = start.answer("ceiling", " ")
    assert out.design.house.ceiling == start.design.house.ceiling
    assert "house.ceiling" in assumed(out.design) and "ceiling" not in out.answers


# -- the page --------------------------------------------------------------------------------------
@pytest.fixture
def page(tmp_path):
    return panel(EXAMPLE, jobs=tmp_path, folds=("checks", "start", "new", "history", "options"))


def pressed(widget, words) -> None:
    """Press the button of these words, wherever it is."""
    found = [made for made in everything_in(widget) if getattr(made, "description", "") == words]
    assert len(found) == 1, words
    found[0].click()


def everything_in(widget):
    yield widget
    for child in getattr(widget, "children", ()):
        yield from everything_in(child)


def test_the_task_on_the_page_takes_no_more_than_25_entries(page, tmp_path):
    """Every button, box and list that is touched counts as an entry."""
    entries = 0
    page.open("start")
    pressed(page.folds["start"].widget, "Start mine")
    entries += 1
    rows = page.folds["new"].rows
    assert page.folds["new"].out.value == "", "nothing is worked out of no answer"
    for key, text in (*TASK, *REST):
        rows[key].box.value = text
        entries += 1
        assert not rows[key].box.wrong
        assert rows[key].box.note.endswith("."), "every answer is read back"
    as_asked(page.design)
    assert entries <= 25
    assert page.session.job == "lake-house" and page.design.name == "Lake house"
    assert "All answered" in page.folds["new"].hint.value
    assert "sections" in rows["top"].box.note
    assert "Worked out from your answers: " in page.folds["new"].out.value
    assert load(tmp_path / "lake-house" / "design.toml") == page.design
    again = panel(Design(), jobs=tmp_path, folds=("new",))
    assert again.design == page.design
    again.open("new")
    assert again.folds["new"].rows["width"].box.value == "42", "the answers are kept too"


def test_a_wrong_answer_is_said_at_its_question_and_nothing_is_lost(page):
    page.open("new")
    rows = page.folds["new"].rows
    rows["width"].box.value = "42"
    before = page.design
    rows["height"].box.value = "12 ft"
    assert "Not changed" in rows["height"].box.wrong and page.design == before
    assert rows["height"].box.value == "12 ft", "to be mended"
    rows["raised"].box.value = "14"
    assert page.design.opening.extension == pytest.approx(14 * INCH)


def test_undo_brings_the_answers_back_too(page):
    page.open("new")
    rows = page.folds["new"].rows
    rows["name"].box.value = "Lake"
    rows["width"].box.value = "42"
    rows["width"].box.value = "48"
    page.undo()
    assert page.design.opening.width == pytest.approx(42 * INCH)
    assert rows["width"].box.value == "42"
    page.redo()
    assert rows["width"].box.value == "48"


def test_the_example_stays_and_another_one_can_be_started(page, tmp_path):
    assert page.question() is not None
    page.open("start")
    fold = page.folds["start"]
    assert page.question() is None, "found by the reader himself"
    assert "looking at the example" in fold.hint.value and page.session.asks
    page.set_input("opening.width", "50 in")
    assert "job of your own" in page.said.value
    first = page.session.job
    page.open("new")
    page.folds["new"].rows["width"].box.value = "42"
    assert page.session.job == "my-fireplace" != first
    page.folds["new"].rows["name"].box.value = "Hill house"
    assert page.session.jobs.named("my-fireplace") == "Hill house"
    assert page.session.asks, "one of two"
    page.open("start")
    assert "working on Hill house" in fold.hint.value
    fold.list.value = first
    pressed(fold.widget, "Open")
    assert page.design.opening.width == pytest.approx(50 * INCH)
    page.open("new")
    assert page.folds["new"].rows["width"].box.value == "", "that job was not asked for"
    pressed(fold.widget, "Look at the example")
    assert page.design == EXAMPLE and page.session.looking


def test_the_list_copies_renames_compares_bins_and_puts_back(page):
    page.session.start_job("Lake", change(Design(), {"opening.width": "42 in"}))
    page.show_job()
    page.open("start")
    fold = page.folds["start"]
    pressed(fold.widget, "Copy")
    assert [label.partition(" (")[0] for label, _ in fold.list.options] == [
        "Lake, copy",
        "Lake",
    ]
    fold.list.value = "lake-copy"
    fold.name.value = "Lake, arch"
    pressed(fold.widget, "Rename")
    assert fold.list.options[0][0].startswith("Lake, arch (changed")
    pressed(fold.widget, "Compare with this design")
    assert "Lake, arch" in fold.compared.value and "Differs from the first" in fold.compared.value
    fold.list.value = "lake"
    pressed(fold.widget, "Put into the bin")
    assert page.session.looking and len(fold.list.options) == 1
    pressed(fold.widget, "Put back")
    assert len(fold.list.options) == 2 and fold.emptied.layout.display == "none"


def test_the_page_asks_whose_fireplace_it_is_to_be_and_does_what_is_chosen(page):
    """At first what to begin with; with jobs to go on with the last one; on a job to stay there."""
    new, listed = ["new", "Start mine"], ["start", "All my jobs"]
    words = "Whose fireplace is it to be?"
    look = ["stay", "Look at the example"]
    assert page.question() == {"words": words, "choices": [new, listed, look]}
    for name in ("Lake", "Hill"):
        page.session.start_job(name, change(Design(), {"name": name}))
        page.asking = True
        assert (page.question() is None) == (name == "Lake"), "the only one is on the table"
    choices = [["stay", "Go on with Hill"], new, listed]
    assert page.question() == {"words": words, "choices": choices}
    page.session.look_at_example()
    choices = [["go on", "Go on with Hill"], new, listed, look]
    assert page.question() == {"words": words, "choices": choices}
    sent = []
    page.page.send = lambda message, bodies=None: sent.append(message)
    page.answer_question("go on")
    assert (page.session.job, page.design.name, page.opened) == ("hill", "Hill", "")
    assert sent[0] == {"question": None} and page.question() is None
    page.answer_question("new")
    assert page.opened == "new"
    page.asking = True
    sent.clear()
    page.answer_question("stay")
    assert page.opened == "new" and page.session.job == "hill"
    assert sent == [{"question": None}] and not page.asking


def test_a_page_with_few_folds_offers_no_more_than_it_has(tmp_path):
    made = panel(EXAMPLE, jobs=tmp_path, folds=("start",))
    assert made.question()["choices"] == [["start", "All my jobs"], ["stay", "Look at the example"]]
    made.session.start_job("Lake", Design())
    made.open("start")
    pressed(made.folds["start"].widget, "Start mine")
    assert made.session.looking and made.design == EXAMPLE, "there it begins with the first change"


def test_one_goes_on_with_the_last_job_and_the_list_gives_way(page):
    page.session.start_job("Lake", change(Design(), {"name": "Lake"}))
    page.show_job()
    page.open("start")
    fold = page.folds["start"]
    assert fold.go_on.description == "Go on with Lake"
    pressed(fold.widget, "Look at the example")
    assert page.session.looking and page.opened == "start"
    fold.go_on.click()
    assert (page.session.job, page.design.name, page.opened) == ("lake", "Lake", "")
    page.open("start")
    before = page.design
    fold.go_on.click()
    assert page.design is before and page.opened == "" and page.session.job == "lake"


def test_the_job_that_is_open_is_renamed_on_its_sheets_too(page):
    page.session.start_job("Lake", change(Design(), {"name": "Lake"}))
    page.show_job()
    page.open("start")
    fold = page.folds["start"]
    sent = []
    page.page.send = lambda message, bodies=None: sent.append(message)
    fold.name.value = "Lake house"
    pressed(fold.widget, "Rename")
    assert page.design.name == "Lake house" and page.session.jobs.named("lake") == "Lake house"
    assert fold.name.value == "" and fold.list.options[0][0].startswith("Lake house (open")
    assert [one["lists"]["name"] for one in sent if "lists" in one] == ["Lake house"]
    fold.name.value = " "
    pressed(fold.widget, "Rename")
    assert page.design.name == "Lake house" and fold.name.value == " ", "to be mended"
    assert page.said.value.startswith('<div class="trouble" role="alert">Not changed.')


def test_a_job_that_cannot_be_left_is_not_thrown_away(page, monkeypatch):
    page.session.start_job("Lake", Design())
    page.show_job()
    page.open("start")
    fold = page.folds["start"]

    def kept():
        raise InputError("Not kept.", "folder", "", "")

    monkeypatch.setattr(page.session, "look_at_example", kept)
    pressed(fold.widget, "Put into the bin")
    assert page.session.job == "lake" and page.session.jobs.binned() == ()
    assert "Not kept." in page.said.value and fold.list.value == "lake"


def test_another_one_is_begun_from_no_answer_and_what_was_open_stays(page, monkeypatch):
    page.open("new")
    fold = page.folds["new"]
    assert fold.again.layout.display == "none"
    fold.rows["width"].box.value = "42"
    first = page.session.job
    assert fold.again.layout.display == "" and not fold.fresh and len(fold.known) == 1
    pressed(fold.widget, "Start another one")
    assert fold.fresh and fold.known == [] and fold.start == Start(units="feet-inches")
    assert fold.rows["width"].box.value == "" and page.session.job == first
    assert fold.again.layout.display == "none" and fold.out.value == ""

    def kept(name, design):
        raise InputError("Not kept.", "folder", "", "")

    before = page.design
    monkeypatch.setattr(page.session, "start_job", kept)
    fold.rows["width"].box.value = "44"
    assert fold.fresh and page.session.job == first and page.design is before
    assert fold.start == Start(units="feet-inches") and "Not kept." in page.said.value


def test_lists_are_in_the_readers_units_and_a_word_that_is_gone_is_no_answer(page):
    page.open("new")
    fold = page.folds["new"]
    feet = fold.rows["liner"].box.options
    page.set_units("millimetres")
    fold.update()
    metric = fold.rows["liner"].box.options
    assert len(metric) == len(feet) > 20 and not set(metric) & set(feet)
    assert feet[1] == "6 round, 28 sq in net" and metric[1] == "6 round, 181 cm² net"
    row = fold.rows["method"]
    row.box.value = "set in pieces: small"
    fold.update()
    assert row.box.value == "set in pieces: small"
    old = Start(Design(), {"method": "set in pieces: grandfather's"}, "millimetres")
    row.show(old)
    assert row.box.value == "" and row.box.options[1] == "laid in brick"


def test_a_page_that_keeps_one_design_says_that_it_has_no_list(tmp_path):
    made = panel(EXAMPLE, keep=tmp_path, folds=("start", "new"))
    made.open("start")
    assert "no list of jobs" in made.folds["start"].hint.value
    made.open("new")
    made.folds["new"].rows["width"].box.value = "42"
    assert made.design == answered(("width", "42")).design


def test_the_history_goes_to_any_step(page):
    page.open("history")
    for width in ("44 in", "46 in", "48 in"):
        page.set_input("opening.width", width)
    page.folds["history"].update()
    steps = page.folds["history"].list
    assert len(steps.options) == 4 and "(here)" in steps.options[0][0]
    steps.value = 1
    pressed(page.folds["history"].widget, "Go to this step")
    assert page.design.opening.width == pytest.approx(44 * INCH)
    pressed(page.folds["history"].widget, "One step forward")
    assert page.design.opening.width == pytest.approx(46 * INCH)


def test_options_are_named_renamed_removed_and_put_back_on_the_page(page, monkeypatch):
    """Their pictures are tried in ``test_options``: here of the room without a fireplace."""

    def blank(result, standpoint, *_):
        g = result.geometry
        return InRoom(result, tuple(shell_things(g)), (), room_measures(g)).drawn(
            standpoint, 24, 16
        )

    monkeypatch.setattr(picture_desk, "option_picture", blank)
    page.open("options")
    fold = page.folds["options"]
    fold.name.value = "With an arch"
    pressed(fold.widget, "Keep this design as an option")
    pressed(fold.widget, "Keep this design as an option")
    assert [card.name.value for card in fold.cards] == ["With an arch", "Option 2"]
    assert "With an arch, in its room" in fold.cards[0].image.value
    under = html.plain(fold.cards[0].words.value)
    assert all(line in under for line in option_words(page.result, page.units).lines)
    fold.cards[0].name.value = "Low arch"
    assert "Low arch" in fold.table.value and "Option 2" in fold.table.value
    assert "Low arch, in its room" in fold.cards[0].image.value, "without drawing it anew"
    pressed(fold.widget, "Remove Low arch")
    assert "Low arch" not in fold.table.value
    pressed(fold.widget, "Put back Low arch")
    assert fold.cards[0].name.value == "Low arch" and not fold.removed.children
    page.undo()
    fold.update()
    assert "Low arch" not in fold.table.value, "undo goes over options"
    page.redo()
    pressed(fold.widget, "Bring back Low arch")
    assert page.design == page.session.options[0]


def test_stations_of_one_name_are_a_list_that_stays_while_one_is_chosen(page):
    """Five of the index have the town in their name: the first is taken, another one may be, and a
    length has no list.
    """
    page.open("new")
    row = page.folds["new"].rows["place"]
    assert row.stations.layout.display == "none"
    row.box.value = "Springfield"
    offered = row.stations.options
    assert (
        offered[0] == "another station"
        and row.stations.value == offered[0]
        and len(offered) == len(set(offered)) > 2
    )
    assert all("Springfield" in one for one in offered[1:]) and row.stations.layout.display == ""
    first = page.design.site
    assert offered[1].startswith(first.place)
    row.stations.value = offered[2]
    assert offered[2].startswith(page.design.site.place) and page.design.site.place != first.place
    assert page.design.site.altitude != first.altitude
    assert row.stations.options == offered and row.stations.layout.display == ""
    row.box.value = "5,280 ft"
    assert row.stations.options == ("another station",) and row.stations.layout.display == "none"
    assert not page.design.site.place


@pytest.mark.parametrize("family", FAMILIES[1:])
def test_every_mantel_can_be_asked_for_and_none_is_an_answer(family):
    begun = answered(*TASK, ("mantel", family))
    assert begun.design.mantel.family == family
    said = came_of("mantel", begun.design, dict((*TASK, ("mantel", family))), "feet-inches")
    assert said == "No mantel." if family == "none" else family in said


def test_a_question_without_an_example_is_answered_from_a_list():
    assert [q.key for q in QUESTIONS if q.only] == [q.key for q in QUESTIONS if not q.hint]


@pytest.mark.parametrize("units", ["feet-inches", "millimetres"])
def test_a_list_to_choose_from_is_there_and_each_of_it_is_taken(units):
    listed = {question.key: question.choices(units) for question in QUESTIONS}
    asked = {q.key for q in QUESTIONS if q.only} - {"book"}  # asked beside the list
    assert {key for key, words in listed.items() if words} >= asked
    assert {key: len(words) for key, words in listed.items() if words} == {
        key: len(set(words)) for key, words in listed.items() if words
    }
    for question in QUESTIONS:
        for words, value in listed[question.key].items():  # of some only lengths follow
            assert value and question.read(words, units) is not None, (question.key, words)


def test_of_a_room_that_nobody_told_nothing_is_said():
    for key in ("house.room_length", "house.room_width"):
        untold = change(Design(), {key: "unknown"})
        assert came_of("room", untold, {}, "feet-inches") == ""
