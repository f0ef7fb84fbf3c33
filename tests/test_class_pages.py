"""The pages of a class without a browser: what a hand does, and what is kept and shown."""

import os
from dataclasses import replace

import ipywidgets as w
import pytest
from test_class import NAMES, reached

from fireplace_calc.base.units import InputError
from fireplace_calc.editing.visitor import FOLDER, VISITOR
from fireplace_calc.lessons import KINDS
from fireplace_calc.lessons.answers.exercise_records import Exercise, ExerciseStep
from fireplace_calc.lessons.classroom.class_files import read_class
from fireplace_calc.lessons.classroom.desk import AskedStep
from fireplace_calc.lessons.classroom.kept_work import WORK
from fireplace_calc.lessons.classroom.student_work import StepStanding
from fireplace_calc.panels import html
from fireplace_calc.panels.classroom import trainer_page
from fireplace_calc.panels.classroom.answer_rows import AnswerRow
from fireplace_calc.panels.classroom.student_page import StudentPage, student
from fireplace_calc.panels.classroom.trainer_page import trainer
from fireplace_calc.panels.teaching.beside_drawing import given_html
from fireplace_calc.panels.teaching.replies import prompt_html


@pytest.fixture
def teacher(tmp_path, monkeypatch):
    """A class handed out, in a folder of its own."""
    monkeypatch.chdir(tmp_path)
    made = trainer()
    made.form.names.value = "\n".join(NAMES)
    made.form.title.value = "Tuesday (invented)"
    made.keep()
    assert made.school is not None, made.trouble.value
    return made


def sat_down(teacher, name):
    made = student()
    made.name.value, made.ticket.value = name, teacher.school.tickets[name]
    made.begin()
    assert made.trouble.value == "", made.trouble.value
    return made


def seen(widget):
    """All that a browser is sent of a page."""
    states = [one.get_state() for one in reached([widget]) if isinstance(one, w.Widget)]
    return repr(states)


def test_a_student_answers_and_comes_back(teacher):
    first = sat_down(teacher, "Ann Lee")
    drawn = teacher.school.task.draw(teacher.school.seed("Ann Lee"), 1)
    for number, step in enumerate(drawn.steps, 1):
        line = first.rows[number - 1]
        line.box.value = step.answer("feet-inches")
        assert "✓" in line.reply.value
        ticked = [name.endswith("✓") for name, _ in first.turner.options]
        assert ticked == [n <= number for n in range(1, len(drawn.steps) + 1)]
    assert "1 of 4 exercises done" in first.heard.value
    again = sat_down(teacher, "Ann Lee")
    assert "1 of 4 exercises done" in again.heard.value
    assert all("Answered right" in line.reply.value for line in again.rows)
    assert next(iter(again.chooser.options)).endswith(
        f"{len(drawn.steps)} of {len(drawn.steps)} answered"
    )
    again.chooser.value = 3
    assert again.rows[0].box.value == "" and again.number == 3


def test_what_cannot_be_begun_is_said_in_one_sentence(teacher, tmp_path, monkeypatch):
    one = student()
    one.name.value, one.ticket.value = "Ann Lee", teacher.school.tickets["Bo Ray"]
    one.begin()
    assert "not for the name" in one.trouble.value and one.desk is None
    assert one.work.layout.display == "none"
    monkeypatch.chdir(tmp_path.parent)
    one.begin()
    assert "No class is handed out" in one.trouble.value


def test_two_students_and_a_trainer_in_one_kernel_never_meet(teacher):
    ann, bo = sat_down(teacher, "Ann Lee"), sat_down(teacher, "Bo Ray")
    for one in (ann, bo, ann):
        one.rows[0].box.value = f"{id(one) % 97 + 2} in2"
        one.rows[0].box.value = f"{id(one) % 89 + 1} in2"
    files = sorted(path.parent.name for path in (teacher.students).glob(f"*/{WORK}"))
    assert files == ["ann-lee", "bo-ray"]
    assert "Bo Ray" not in seen(ann.widget) and "Ann Lee" not in seen(bo.widget)
    teacher.gather()
    assert "2 of 5 students have begun" in teacher.heard.value


def test_a_students_page_holds_and_sends_nothing_of_the_key(teacher):
    page = sat_down(teacher, "Ann Lee")
    for number in range(1, 5):
        page.chooser.value = number
        page.answer(1, "1 in2")
        page.help_with(1, "bigger hint")
    space = {"page": page, "shown": page.widget}
    held = list(reached([space]))
    assert any(isinstance(one, StudentPage) for one in held)
    assert not [one for one in held if isinstance(one, (Exercise, ExerciseStep))]
    sent = seen(page.widget)
    assert teacher.school.secret not in sent
    page.chooser.value = 1
    drawn = teacher.school.task.draw(teacher.school.seed("Ann Lee"), 1)
    given = {one.shown("feet-inches") for one in drawn.given}
    for answer in {step.answer("feet-inches") for step in drawn.steps if not step.options} - given:
        assert len(answer) < 4 or answer not in page.story.value
    trainers = list(reached([{"page": teacher}]))  # the same search does find the trainer's
    assert any(teacher.school.secret == one for one in trainers)


def test_on_a_tablet_the_same_hand_goes_on_and_another_begins_anew(teacher, tmp_path, monkeypatch):
    """As the page's server tells every kernel: one folder for all, and whose this is."""
    monkeypatch.setenv(FOLDER, str(tmp_path / "visitors"))
    monkeypatch.setenv(VISITOR, "visitor-1")
    one = sat_down(teacher, "Zoë")
    one.rows[0].box.value = "7 in2"
    assert (tmp_path / "visitors" / "visitor-1" / "students" / "zoë" / WORK).exists()
    back = student()
    assert back.desk is not None and back.rows[0].box.value == "7 in2"
    monkeypatch.setenv(VISITOR, "visitor-2")
    assert student().desk is None
    for name in (FOLDER, VISITOR):
        monkeypatch.delenv(name)
    teacher.gather()
    assert "1 of 5 students have begun" in teacher.heard.value


def test_the_trainer_finds_the_class_again_and_everybody_keeps_his_ticket(teacher):
    tickets, again = teacher.school.tickets, trainer()
    assert again.school == teacher.school and again.form.names.value == "\n".join(NAMES)
    again.form.names.value = "New\n" + "\n".join(NAMES)
    again.form.level.value = 1
    again.keep()
    assert {**again.school.tickets, **tickets} == again.school.tickets
    assert read_class(teacher.folder).task.level == 1
    again.show_tickets()
    assert all(ticket in again.tickets.value for ticket in again.school.tickets.values())
    again.show_tickets()
    assert again.tickets.value == ""


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda form: setattr(form.names, "value", "Ann\nann"), "stands on the roster twice"),
        (lambda form: setattr(form.title, "value", " "), "a name or a number"),
        (lambda form: [setattr(box, "value", False) for box in form.topics.values()], "Topic"),
    ],
)
def test_a_class_that_cannot_be_set_changes_nothing(change, said, teacher):
    before = (teacher.folder / "class.toml").read_bytes()
    change(teacher.form)
    teacher.keep()
    assert said in teacher.trouble.value
    assert (teacher.folder / "class.toml").read_bytes() == before


def test_papers_and_results_are_written_beside_the_secret(teacher):
    teacher.write()
    assert "are written to" in teacher.job.status.value
    teacher.gather()
    names = set(os.listdir(teacher.folder))
    assert names == {"class.toml", "quiz.pdf", "answer-grid.pdf", "key.pdf", "tickets.pdf"} | {
        "results.csv",
        "results.xlsx",
    }
    assert os.listdir(teacher.students) == ["class.toml"]


def test_a_table_that_cannot_be_written_is_said(teacher, monkeypatch):
    def refuse(rows, folder):
        raise InputError(f"{folder.name} cannot be written.", "folder", "", "")

    monkeypatch.setattr(trainer_page, "write_results", refuse)
    teacher.gather()
    said = html.trouble(f"{teacher.folder.name} cannot be written.")
    assert teacher.trouble.value == said and teacher.results.value == ""
    assert "written to" not in teacher.heard.value


def test_nothing_is_answered_before_somebody_has_begun(teacher):
    page = student()
    page.answer(1, "20 in")
    page.help_with(1, "hint")
    page._list()
    page.choose(2)
    assert (page.desk, page.rows, page.number, page.chooser.options) == (None, [], 1, ())
    assert page.trouble.value == page.heard.value == page.story.value == ""


def test_work_that_cannot_be_kept_is_said_at_its_page_and_the_answer_does_not_count(teacher):
    page = sat_down(teacher, "Ann Lee")
    line = page.rows[0]
    before = page.chooser.options
    path = page.desk.folder / WORK
    kept = path.read_text()
    path.write_text("attempts = [")
    page.answer(1, "20 in")
    first = page.trouble.value
    assert "work.toml" in first and first.startswith('<div class="trouble" role="alert">')
    assert line.reply.value == "" and page.chooser.options == before
    page.trouble.value = ""
    page.help_with(1, "hint")
    assert page.trouble.value == first and line.said.value == ""
    path.write_text(kept)
    page.answer(1, "20 in2")
    assert page.trouble.value == "" and line.reply.value


def test_an_answer_and_a_hint_are_for_the_exercise_that_is_shown(teacher):
    page = sat_down(teacher, "Ann Lee")
    page.chooser.value = 3
    drawn = teacher.school.task.draw(teacher.school.seed("Ann Lee"), 3)
    page.help_with(1, "hint")
    assert page.rows[0].said.value == prompt_html(drawn.steps[0].hint)
    page.answer(1, drawn.steps[0].answer("feet-inches"))
    assert "\u2713" in page.rows[0].reply.value
    (given,) = [one for one in page.desk.work.attempts if one.what == "right"]
    assert given.step == 1 and [page.desk.asked(n).done for n in range(1, 5)] == [0, 0, 1, 0]


def test_an_exercise_without_a_figure_has_an_empty_board(teacher):
    page = sat_down(teacher, "Ann Lee")
    assert page.board.widget.drawn["bodies"]
    asked = page.desk.asked(1)
    page._draw(asked)
    given = given_html([one[1:] for one in asked.given])
    assert page.given.value == f'<div class="why">{given}</div>'
    page._draw(replace(asked, figure=None))
    assert page.board.widget.drawn == {} and page.board.stage.shown == {}
    assert page.beside.children[1].children == (page.turner, page.steps)


def test_a_broken_class_file_is_told_and_left(teacher):
    (teacher.folder / "class.toml").write_text("title = 1")
    again = trainer()
    assert "is missing or is not as the workbook writes it" in again.trouble.value
    again.keep()
    assert (teacher.folder / "class.toml").read_text() == "title = 1"


def test_nothing_is_printed_or_gathered_before_there_is_a_class(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    made = trainer()
    for act in (made.write, made.gather, made.show_tickets):
        act()
        assert "Keep the class first" in made.heard.value
    assert list(tmp_path.iterdir()) == []


def test_a_search_is_chosen_by_the_trainer_and_looked_through_by_the_student(teacher):
    """Drawing, figures and a list with a button: looking down the list is no guess."""
    for kind, box in teacher.form.topics.items():
        box.value = kind == "faults"
    teacher.form.count.value = 2
    teacher.keep()
    assert teacher.school.task.kinds == ("faults",)
    one = sat_down(teacher, "Bo Ray")
    drawn = teacher.school.task.draw(teacher.school.seed("Bo Ray"), 1)
    (line,) = one.rows
    assert one.views.widget in one.beside.children and one.views.board.widget.drawn["bodies"]
    assert drawn.given[0].name in one.figures.text.value
    check = next(
        b for b in reached([line.widget]) if getattr(b, "description", "") == "Check my answer"
    )
    broken = [step.answer() for step in drawn.steps]
    wrong = next(name for name in line.box.options[1:] if name not in broken)
    line.box.value = wrong
    assert one.desk.work.attempts == ()
    check.click()
    assert "Guess 1. Not yet." in line.reply.value
    for name in broken[::-1]:
        line.box.value = name
        check.click()
        assert "\u2713" in line.reply.value
    assert "Nothing else is broken" in line.reply.value
    assert "1 of 2 exercises done" in one.heard.value
    assert "Answered right" in sat_down(teacher, "Bo Ray").rows[0].reply.value
    teacher.gather()
    assert wrong in teacher.results.value


def test_topics_of_another_book_are_those_it_has_figures_for(teacher):
    teacher.form.pack.value = "UK ADJ"
    shown = {kind for kind, box in teacher.form.topics.items() if box.layout.display != "none"}
    assert "faults" in shown and not {"mantel", "chamber"} & shown
    said = teacher.form.lacking.value
    assert "No figure in UK ADJ" in said and all(
        KINDS[k].title in said for k in KINDS if k not in shown
    )
    teacher.form.pack.value = "US IRC 2021"
    assert teacher.form.lacking.value == ""


def test_every_page_of_a_cell_is_shown_and_has_a_line_where_it_cannot_be(tmp_path):
    """What a notebook shows, and what a viewer without widgets reads in its place."""
    from fireplace_calc import Design, change
    from fireplace_calc.panels import panel
    from fireplace_calc.panels.measuring.measure_set import MeasureSet
    from fireplace_calc.panels.step_by_step import StepByStep
    from fireplace_calc.panels.teaching.exercise_panel import practice

    pages = {
        "The page of a student: name, ticket, exercises": student(tmp_path / "students"),
        "The page of a trainer: class, papers, results": trainer(tmp_path / "class"),
        "Find the fault, seed 1": practice(1),
        "A set of ": StepByStep(change(Design(), {"pieces.set": "small"})),
        "A sheet of ": MeasureSet(tmp_path / "set.toml"),
        "": panel(Design()),
    }
    for line, page in pages.items():
        shown = page._repr_mimebundle_()
        assert shown["text/plain"].startswith(line) and len(shown["text/plain"]) > 10, line
        assert "application/vnd.jupyter.widget-view+json" in shown, line


@pytest.mark.parametrize(
    ("unit", "says"),
    [("in", "in inches"), ("mm", "in mm"), ("sq in", "in sq in"), ("", "a whole number")],
)
def test_an_empty_box_says_what_a_bare_number_is_read_in(unit, says):
    step = AskedStep("How wide?", unit, (), StepStanding(False, False, 0, 0, 0, (), ""))
    assert AnswerRow("a", step, (), print, print, False).box.placeholder == says
