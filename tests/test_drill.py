"""Exercises: answers against a second working from the printed figures alone, branches balanced
over a class, givens within what is built, and sheets that stay as they were drawn.
"""

import ast
import hashlib
import os
import re
from collections import Counter
from dataclasses import replace
from functools import cache
from importlib import import_module
from math import pi
from pathlib import Path

import pytest
from naive.drill import answers
from naive.slips import slips

from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.drawing.classroom.quiz_sheet import least_picture
from fireplace_calc.drawing.lessons.exercise_pictures import exercise_picture
from fireplace_calc.drawing.sheets import lettering
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.lessons import KINDS, LEVELS, TAUGHT, check, exercise, kinds_of
from fireplace_calc.lessons.course.lesson_file import course
from fireplace_calc.lessons.exercise_kinds import known_kinds

FEW, MANY = 40, int(os.environ.get("DRILL", "0"))
"""Seeds in CI; by hand ``DRILL=2000``."""
PACKS = ("US IRC 2021", "Canada NBC", "UK ADJ")
ALL = [(kind, pack) for pack in PACKS for kind in kinds_of(pack)]
each = pytest.mark.parametrize(("kind", "pack"), ALL, ids=lambda v: v.replace(" ", "-"))


@cache
def drawn(kind, pack):
    """Every level and unit system, over the seeds."""
    count = max(MANY, FEW) // (1 if MANY else 6) + 1
    return [
        exercise(kind, seed, pack, level, units)
        for level in LEVELS
        for units in SYSTEMS
        for seed in range(count)
    ]


@each
def test_answers_are_those_of_a_pencil(kind, pack):
    for task in drawn(kind, pack):
        for step, worked in zip(task.steps, answers(task), strict=True):
            told = (task.seed, task.level, task.units, step.ask)
            if step.kind == "choice":
                assert step.answer() == worked, told
            else:
                assert step.expected == pytest.approx(worked, rel=2e-4, abs=2e-4), told
                assert check(step, typed(worked, step.kind), task.units).right, told


def typed(value, kind):
    unit = {"length": "m", "area": "m2", "mass": "kg", "pressure": "Pa", "temperature": "K"}
    return str(round(value)) if kind == "count" else f"{value:.9f} {unit[kind]}"


@each
def test_the_printed_answer_is_right_and_every_mistake_is_told(kind, pack):
    for task in drawn(kind, pack):
        for step in task.steps:
            told = (task.seed, task.level, task.units, step.ask)
            assert check(step, step.answer(task.units), task.units).right, told
            for mistake in step.mistakes:
                text = (
                    step.options[round(mistake.value)]
                    if step.kind == "choice"
                    else typed(mistake.value, step.kind)
                )
                reply = check(step, text, task.units)
                assert (reply.right, reply.mistake) == (False, mistake.reason), told


def reasons(kind):
    """What the file of a kind says to usual mistakes, as patterns: pairs of a sum and a sentence."""
    module = import_module(f"fireplace_calc.lessons.exercises.{kind}")
    for node in ast.walk(ast.parse(Path(module.__file__).read_text())):
        if isinstance(node, ast.Tuple) and len(node.elts) == 2:
            said = node.elts[1]
            parts = said.values if isinstance(said, ast.JoinedStr) else [said]
            texts = [getattr(part, "value", None) for part in parts]
            if isinstance(texts[-1], str) and texts[-1].endswith("."):
                yield "".join(re.escape(t) if isinstance(t, str) else ".*" for t in texts)


@pytest.mark.parametrize("kind", KINDS)
def test_every_usual_mistake_of_the_file_is_told_to_somebody(kind):
    """One that always comes too near the answer or another mistake would be a sentence nobody
    reads, or a slip in its sum."""
    told = {
        mistake.reason
        for name, pack in ALL
        if name == kind
        for task in drawn(kind, pack)
        for step in task.steps
        for mistake in step.mistakes
    }
    written = list(reasons(kind))
    assert len(written) >= 3
    for pattern in written:
        assert any(re.fullmatch(pattern, reason) for reason in told), pattern


@each
def test_every_mistake_has_the_figure_that_its_sentence_tells(kind, pack):
    """Each by what its sentence says was done, from what is printed: all of them on the sheets of
    the whole job, and elsewhere all but those that take what only that sheet prints.
    """
    for task in drawn(kind, pack):
        told = slips(task)
        for step in task.steps:
            for mistake in step.mistakes if step.kind != "choice" else ():
                where = (task.seed, task.level, task.units, step.key, mistake.reason)
                fits = [n for n in told if f"{step.key}: {mistake.reason}".startswith(n)]
                assert fits, where
                worked = told[max(fits, key=len)]
                assert task.level < 3 or worked is not None, where
                if worked is not None:
                    values = worked if isinstance(worked, list) else [worked]
                    assert any(
                        mistake.value == pytest.approx(value, rel=2e-4, abs=2e-4)
                        for value in values
                    ), where


FREE = {
    "flue": [("Opening width", "foot")],
    "hearth": [("Opening width", "foot")],
    "lintel": [("Span", "foot")],
    "throat": [("Opening width", "foot"), ("Back width", "depth")],
    "chamber": [("Width at the throat", "foot"), ("Flue, inside width", "head")],
}
"""Givens that masonry leaves free, and at which level of the figure."""


def clear(figure, level):
    """Free width between cut solids about the middle, at a level. [m]"""
    crossings = []
    for line in figure.lines:
        if line.hatch:
            ends = zip(line.points, (*line.points[1:], line.points[0]), strict=True)
            crossings += [a[0] + (b[0] - a[0]) * (level - a[1]) / (b[1] - a[1])
                          for a, b in ends if (a[1] - level) * (b[1] - level) < 0]  # fmt: skip
    right, left = (min(s * x for x in crossings if s * x > 0) for s in (1, -1))
    return right + left


@pytest.mark.parametrize(("kind", "pack"), [one for one in ALL if one[0] in FREE])
def test_masonry_of_a_figure_leaves_free_what_is_given(kind, pack):
    """A hair over the foot of the solids, under their head, or at the depth that is told."""
    for task in drawn(kind, pack):
        given = {g.name: g.value for g in task.given}
        levels = [y for line in task.figure.lines if line.hatch for _, y in line.points]
        at = {"foot": min(levels) + 1e-6, "head": max(levels) - 1e-6}
        at["depth"] = given.get("Firebox depth", 0) - 1e-6
        for name, level in FREE[kind]:
            if name in given:
                where = (task.seed, task.level, task.units, name)
                assert clear(task.figure, at[level]) == pytest.approx(given[name], abs=1e-5), where


def bare(points):
    """Area of a ring, by the shoelace formula. [m2]"""
    ends = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in ends)) / 2


@pytest.mark.parametrize(
    ("kind", "pack"), [one for one in ALL if one[0] in ("flue", "throat", "lifting")]
)
def test_what_is_drawn_beside_is_as_large_as_it_is_asked_for(kind, pack):
    """Flue, vent and piece at the scale of the rest; a circle of 48 corners lacks 0.3 in 100."""
    for task in drawn(kind, pack):
        worked = dict(zip([step.key for step in task.steps], answers(task), strict=True))
        given = {g.name: g.value for g in task.given}
        across = worked.get("across")
        wanted = {
            "flue": pi / 4 * across**2 if across else worked.get("least"),
            "throat": worked.get("vent") or given.get("Net area of the flue"),
            "lifting": given.get("Length of the piece", 0) * given.get("Width of the piece", 0),
        }[kind]
        rings = [line.points for line in task.figure.lines
                 if line.closed and line.weight == "cut" and not line.hatch]  # fmt: skip
        if wanted:
            where = (task.seed, task.level, task.units)
            assert bare(rings[-1]) == pytest.approx(wanted, rel=0.004), where


@pytest.mark.parametrize("pack", PACKS)
def test_a_roof_goes_on_beyond_its_chimney_on_either_side(pack):
    for task in drawn("roof", pack):
        slope, chimney = (line.points for line in task.figure.lines[:2])
        ends, sides = [x for x, _ in slope], [x for x, _ in chimney]
        assert min(ends) < min(sides) < max(sides) < max(ends) and ends == sorted(ends)


def test_kinds_come_in_the_order_of_the_lessons():
    lessons = [known_kinds()[kind].lesson for kind in KINDS]
    assert lessons == sorted(lessons, key=[*course()].index), (
        "a kind's place is the number of its lesson, or just after it (5.1, 5.2)"
    )
    assert set(lessons) <= set(course())


@each
def test_a_least_figure_has_to_be_reached_and_a_most_one_kept(kind, pack):
    """A sixteenth, or a millimetre, on the wrong side is short, and the reply says so."""
    for task in drawn(kind, pack):
        for step in task.steps:
            if not step.limit or step.kind != "length" or step.expected < 0.3:
                continue
            off = -0.0009 if step.limit == "least" else 0.0009
            reply = check(step, f"{step.expected + off:.6f} m", task.units)
            assert not reply.right and "rounded" in reply.text.lower(), (task.seed, step.ask)
            assert check(step, f"{step.expected - off:.6f} m", task.units).right


@each
def test_no_branch_comes_up_twice_as_often_as_another(kind, pack):
    """A class of 24 by its places; by seeds that are numbers in a row too."""
    for made in (
        [exercise(kind, f"student {k}", pack, 1, place=k) for k in range(24)],
        [exercise(kind, k, pack, 2) for k in range(1, 25)],
    ):
        count = Counter(task.branch for task in made)
        branches = KINDS[kind].branches[{"US": "US", "Ca": "CA", "UK": "UK"}[pack[:2]]]
        assert set(count) == set(branches) and max(count.values()) <= 2 * min(count.values())


@each
def test_each_level_has_its_steps(kind, pack):
    """One; two or three; the whole job. The figure asks for each number, or its options do."""
    steps = {level: set() for level in LEVELS}
    for task in drawn(kind, pack):
        steps[task.level].add(len(task.steps))
        asked = {item.step for item in (*task.figure.sizes, *task.figure.words)} - {-1}
        numbers = {k for k, s in enumerate(task.steps) if s.kind not in ("choice", "count")}
        missing = [task.steps[k].ask for k in numbers - asked]
        assert not missing, f"level {task.level}: the figure marks none of them with asks="
        assert task.figure.said and task.branch
    assert steps[1] == {1} and steps[2] <= {2, 3} and min(steps[3]) >= max(steps[2])


@each
def test_prompts_are_questions_and_sentences_are_short(kind, pack):
    """Every prompt asks; every reason says what was done; no sentence has over twenty words."""
    for task in drawn(kind, pack):
        for step in task.steps:
            assert step.ask.endswith("?")
            reasons = [m.reason for m in step.mistakes]
            assert all(r.startswith(("You ", "Your ", "That is ")) for r in reasons), reasons
            for text in (step.ask, step.hint, step.more, step.working, *reasons, task.story):
                for sentence in re.split(r"(?<=[.?!:]) ", text):
                    words = [w for w in sentence.split() if re.search("[A-Za-z]{2}", w)]
                    assert len(words) <= 20, sentence
            assert len({step.hint, step.more, step.working}) == 3


RANGES = {
    "Opening width": (0.40, 1.25), "Opening height": (0.40, 0.9), "Span": (0.75, 1.4),
    "Roof at the uphill face": (2.134, 6.5), "Top as it stands": (2.2, 14.0),
    "Level to the ridge": (0.3, 5.6), "Chimney height": (3.0, 12.0), "Back width": (0.4, 1.0),
    "Firebox depth": (0.5, 0.62), "One person may lift": (10.0, 24.0), "Reach": (0.3, 0.52),
    "Weight of the piece": (4.0, 60.0), "Top of the opening": (0.6, 1.05), "Room": (290.0, 296.0),
    "Inner face": (440.0, 680.0), "Load of the beam": (90.0, 410.0), "Top of the flue": (4.5, 7.4),
    "Thinnest bed": (0.0045, 0.0055), "Thickest bed": (0.0155, 0.0165), "Projection": (0.01, 0.23),
    "Wall over the lintel": (0.85, 1.55), "Firebox floor, above the hearth": (0.0, 0.46),
}  # fmt: skip
"""What is built; the roof is at least 7 ft over the floor. [SI]"""


@each
def test_givens_lie_within_what_is_built(kind, pack):
    for task in drawn(kind, pack):
        for given in task.given:
            for start, (low, high) in RANGES.items():
                if given.name.startswith(start) and isinstance(given.value, float):
                    assert low <= given.value <= high, (task.seed, given.name, given.value)


@each
def test_another_seed_gives_another(kind, pack):
    for level in LEVELS:
        made = {str(exercise(kind, seed, pack, level, place=0).given) for seed in range(30)}
        assert len(made) > 5, level


def test_a_book_without_a_figure_says_so():
    for kind, pack in (("mantel", "UK ADJ"), ("throat", "Canada NBC"), ("chamber", "UK ADJ")):
        with pytest.raises(InputError, match="gives no figure for"):
            exercise(kind, 1, pack)
    for wrong in ({"kind": "soup"}, {"level": 4}, {"pack": "Trade practice"}, {"units": "ells"}):
        with pytest.raises(InputError, match="but"):
            exercise(**{"kind": "roof", "seed": 1} | wrong)


@pytest.mark.parametrize("pack", TAUGHT)
def test_every_pack_has_exercises(pack):
    assert len(kinds_of(pack)) >= 8
    for kind in kinds_of(pack):
        assert exercise(kind, 3, pack).pack == pack


# -- drawings ---------------------------------------------------------------------------------------
ROOMS = ((100.0, 80.0), (120.0, 62.0), (88.0, 70.0))
"""A page's picture, a wide one, and the room on a quiz sheet. [mm]"""


@each
def test_a_figure_is_clean_at_every_step(kind, pack):
    """Letters over nothing, for every level and step, asked, worked and on paper."""
    turn = (kinds_of(pack).index(kind) + TAUGHT.index(pack)) % len(LEVELS)
    for level in LEVELS if MANY else LEVELS[turn:][:1]:
        for units in SYSTEMS if MANY else SYSTEMS[level % 2 :][:1]:
            for seed in range(max(1, MANY // 40)):
                task = exercise(kind, seed, pack, level, units)
                for wide, high in ROOMS if MANY else ROOMS[level - 1 : level]:
                    for step in (None, *range(len(task.steps))):
                        for worked in (False, True)[: 2 if step is not None else 1]:
                            sheet = exercise_picture(task, wide, high, step, worked)
                            told = (seed, level, units, wide, step, worked)
                            assert collisions(sheet) == [], told
                            texts = [label.text for label in sheet.labels]
                            assert told_as_asked(task, step, worked, texts), (told, texts)


TABLET = (147.0, 153.0, 4.7)
"""What a tablet of 1024 by 768 has for a picture, and a letter there that is read from the back of
the room. [mm]
"""


@each
def test_a_drawing_stays_large_and_a_name_is_led_to_its_thing(kind, pack):
    """On a tablet too: a quarter of the sheet at least, one way or the other. A name that stands
    aside of something drawn has a line to it, unless a text is in the way.
    """
    wide, high, letters = TABLET
    for seed in range(max(1, MANY // 40)):
        for units in SYSTEMS:
            task = exercise(kind, seed, pack, 3, units)
            sheet = exercise_picture(task, wide, high, 0, False, letters)
            drawn = [p for pens in ("cut", "seen") for p in inked(sheet, pens)]
            across = [max(p[k] for p in drawn) - min(p[k] for p in drawn) for k in (0, 1)]
            assert max(across[0] / wide, across[1] / high) > 0.22, (seed, units, across)
            assert collisions(sheet) == [], (seed, units)


def inked(sheet, pen):
    return [
        point for (weight, *_), lines in sheet.lines.items() for line in lines
        if weight == pen for point in line
    ]  # fmt: skip


@pytest.mark.parametrize("units", SYSTEMS)
def test_flue_gas_is_led_to_the_flue(units):
    """The flue is too narrow for the letters; the line ends within it, and crosses no text."""
    wide, high, letters = TABLET
    led = 0
    for seed in range(12):
        task = exercise("draft", seed, level=3, units=units)
        figure = task.figure
        sheet = exercise_picture(task, wide, high, 0, False, letters)
        (name,) = [label for label in sheet.labels if label.text == "flue gas"]
        leaders = [line for line in sheet.lines.get(("fine", "dimension"), ()) if len(line) == 2]
        walls = [line for line in figure.lines if line.hatch]
        assert walls
        near = [line for line in leaders if near_to(line[0], name, letters)]
        led += len(near)
        for line in near:
            assert not any(near_to(line[-1], label, 0) for label in sheet.labels)
    assert led >= 6


def near_to(point, label, more):
    x, y = point
    half = lettering.width(label.text, label.size, label.bold) / 2 + more
    return (
        abs(x - label.x) <= half
        and label.y - 2 * more - label.size <= y <= label.y + label.size + more
    )


def told_as_asked(task, step, worked, texts):
    """A question mark at what is asked; no answer before its step is worked."""
    numbers = [k for k, s in enumerate(task.steps) if s.kind not in ("choice", "count")]
    if step is None:
        return all(f"{'abcdefgh'[k]} ?" in texts for k in numbers)
    asked = step in numbers and not worked
    return (texts.count("?") == asked) and not any(" ?" in text for text in texts)


def test_working_comes_only_as_far_as_the_step():
    """More lines when a step is worked than when it is asked, and more still at the next."""
    task = exercise("roof", 1, level=3)
    count = [
        sum(map(len, exercise_picture(task, 100, 80, step, worked).lines.values()))
        for step, worked in ((0, False), (0, True), (1, False), (1, True))
    ]
    assert count == sorted(count) and count[0] < count[1] < count[3]


def test_sizes_are_drawn_to_scale():
    """Ends of two strings of one drawing are as far apart on paper as the figures say."""
    task = exercise("hearth", 4, level=3)
    step = {s.key: s.expected for s in task.steps}
    lines = exercise_picture(task, 100, 80, 3, True).lines["dimension", "dimension"]
    level = [abs(a[0] - b[0]) for a, b in lines if a[1] == b[1]]
    upright = [abs(a[1] - b[1]) for a, b in lines if a[0] == b[0]]
    scale = max(level) / step["whole"]
    for key, drawn_as in (("front", upright), ("side", level), ("whole", level)):
        assert any(d == pytest.approx(step[key] * scale) for d in drawn_as), key


# -- sheets stay as they were drawn -----------------------------------------------------------------
def digest(kind, pack):
    """What three students are handed and asked at each level, as it is printed."""
    text = []
    for level in LEVELS if kind != "wood" else LEVELS[:2]:  # its table follows the model of heat
        for k in range(3):
            task = exercise(kind, f"digest {k}", pack, level, place=k)
            given = [f"{g.name}: {g.shown(task.units)}" for g in task.given]
            text += [task.branch, *given, *(f"{s.key} {s.answer()}" for s in task.steps)]
    return hashlib.sha256("\n".join(text).encode()).hexdigest()[:8]


DRAWN = {
    ("flue", "US IRC 2021"): "3cfe7fbe",
    ("roof", "US IRC 2021"): "f20c6a70",
    ("mantel", "US IRC 2021"): "cd01f3e3",
    ("hearth", "US IRC 2021"): "eea350d3",
    ("lintel", "US IRC 2021"): "175f2f79",
    ("throat", "US IRC 2021"): "a4b21fe0",
    ("chamber", "US IRC 2021"): "50330a21",
    ("draft", "US IRC 2021"): "62926aa1",
    ("wood", "US IRC 2021"): "2fea8c63",
    ("setting", "US IRC 2021"): "071389df",
    ("lifting", "US IRC 2021"): "ec37a9c9",
    ("flue", "Canada NBC"): "ebb8b0b7",
    ("roof", "Canada NBC"): "9e758cb6",
    ("mantel", "Canada NBC"): "ca900458",
    ("hearth", "Canada NBC"): "3aaac8c1",
    ("lintel", "Canada NBC"): "23f11237",
    ("chamber", "Canada NBC"): "1e6e791b",
    ("draft", "Canada NBC"): "a8c31401",
    ("wood", "Canada NBC"): "a309c470",
    ("setting", "Canada NBC"): "9087da09",
    ("lifting", "Canada NBC"): "3af71ca3",
    ("flue", "UK ADJ"): "770df7b9",
    ("roof", "UK ADJ"): "24385f03",
    ("hearth", "UK ADJ"): "498dbfb0",
    ("lintel", "UK ADJ"): "9b772d87",
    ("throat", "UK ADJ"): "8a0e4308",
    ("draft", "UK ADJ"): "2fb6275f",
    ("wood", "UK ADJ"): "3df9b969",
    ("setting", "UK ADJ"): "f107eed4",
    ("lifting", "UK ADJ"): "e94d7a54",
}
"""Digests of what was drawn on 2026-11-29. A sheet already handed out would differ from its key if
one of them changed: adding an exercise must not change them, and whoever changes one on purpose
says so in CHANGELOG.
"""


@each
def test_sheets_stay_as_they_were_drawn(kind, pack):
    found = digest(kind, pack)
    assert DRAWN.get((kind, pack), found) == found, "sheets that were handed out no longer match"
    assert (kind, pack) in DRAWN, f'add ("{kind}", "{pack}"): "{found}" to DRAWN'


def test_a_stream_is_named_by_its_own_exercise_alone(monkeypatch):
    """Another kind on the list, one taken off: the rest is drawn as before."""
    from dataclasses import replace

    import fireplace_calc.lessons.exercise_kinds as room

    before, known = digest("roof", "UK ADJ"), room.known_kinds()
    more = {"new": replace(known["flue"], key="new")} | {
        k: v for k, v in known.items() if k != "hearth"
    }
    monkeypatch.setattr(room, "known_kinds", lambda: more)
    assert digest("roof", "UK ADJ") == before


def test_a_lesson_more_changes_no_sheet(monkeypatch, tmp_path):
    """A lesson that stands first and has all kinds: exercises and the other lessons are as before."""
    from fireplace_calc.base import resources
    from fireplace_calc.lessons.course.lesson_file import course_lesson

    def all_of_it():
        drawn = {pack: digest("hearth", pack) for pack in PACKS}
        return drawn, {key: course_lesson(key) for key in course() if key != "new"}

    course.cache_clear(), course_lesson.cache_clear()
    before = all_of_it()
    for path in resources.LESSONS.glob("*.toml"):
        (tmp_path / path.name).write_text(path.read_text())
    text = (tmp_path / "hearths.toml").read_text()
    new = re.sub(r"(?m)^number = \d+$", "number = 0", text).replace(
        'key = "hearths"', 'key = "new"'
    )
    new = re.sub(r"(?m)^exercises = .*$", f"exercises = {list(KINDS)}".replace("'", '"'), new)
    (tmp_path / "new.toml").write_text(new)
    monkeypatch.setattr(resources, "LESSONS", tmp_path)
    course.cache_clear(), course_lesson.cache_clear()
    try:
        assert course()[0] == "new" and course_lesson("new").exercises == tuple(KINDS)
        assert all_of_it() == before
    finally:
        course.cache_clear(), course_lesson.cache_clear()


def test_an_exercise_without_a_drawing_has_an_empty_sheet_and_no_picture_in_a_quiz():
    task = exercise("hearth", "a", "US IRC 2021", 1, "feet-inches")
    assert exercise_picture(task, 120.0, 90.0).lines
    bare = exercise_picture(replace(task, figure=None), 120.0, 90.0)
    assert (bare.width, bare.height) == (120.0, 90.0)
    assert not (bare.lines or bare.labels or bare.fills)
    assert least_picture(replace(task, figure=None), 80.0) is None
    least = least_picture(task, 80.0)
    assert (least.width, least.height) == (80.0, 42.0) and not collisions(least)
