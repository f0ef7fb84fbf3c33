"""Lessons, numbers to work out and planted faults: for a thousand seeds the key is what the checks
say.
"""

import re
from functools import cache

import pytest
from pypdf import PdfReader
from sampled import sampled

from fireplace_calc import assess, change
from fireplace_calc.base.units import FEET_INCHES, SYSTEMS, InputError, from_unit
from fireplace_calc.drawing.composed.marked_places import PLACES
from fireplace_calc.drawing.papers.class_papers import class_pages, class_sheet
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.explore import sketch
from fireplace_calc.geometry.bore import liners
from fireplace_calc.lessons import (
    FAULTS,
    KINDS,
    LESSONS,
    TAUGHT,
    check,
    exercise,
    exercises,
    figures,
    guess,
    planted,
    seeds_of,
    shown,
    suspects,
    valid_design,
    warned,
)
from fireplace_calc.lessons.reply import tolerance
from fireplace_calc.lessons.seven_lessons import LINER
from fireplace_calc.lessons.valid_designs import told
from fireplace_calc.report.books import side_by_side
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.comparing import FALLS_SHORT, NOT_CHECKED
from fireplace_calc.rules.gathering import gather_facts

SEEDS = 1000
PACK = "US IRC 2021"


FEW = 50
IN_PARTS = sampled([range(first, first + FEW) for first in range(0, SEEDS, FEW)], 1)
in_parts = pytest.mark.parametrize("seeds", IN_PARTS, ids=lambda seeds: str(seeds[0]))


@cache
def hunt(seed):
    """One fault for even seeds, two for odd ones."""
    return planted(seed, 1 + seed % 2)


@cache
def drawn(seed):
    return exercises(seed)


def hunts(seeds=range(SEEDS)):
    return tuple(hunt(seed) for seed in seeds)


def tasks(seeds=range(SEEDS)):
    return tuple(task for seed in seeds for task in drawn(seed))


def open_keys(found) -> dict[str, str]:
    return {f.key: f.verdict for f in found if f.verdict in (FALLS_SHORT, NOT_CHECKED)}


# -- planted faults ---------------------------------------------------------------------------------
@in_parts
def test_a_thousand_seeds_break_just_what_was_planted(seeds):
    book = PACKS[PACK]
    for fault_finding in hunts(seeds):
        meant = {f.key: FALLS_SHORT for f in fault_finding.findings}
        assert len(meant) == len(fault_finding.faults) == 1 + fault_finding.seed % 2
        assert open_keys(book.check(told(fault_finding.design))) == meant, fault_finding.seed
        for fault, finding in zip(fault_finding.faults, fault_finding.findings, strict=True):
            assert finding.key in fault.rules, (fault_finding.seed, fault.name)


@in_parts
def test_the_key_is_the_assessment(seeds):
    for fault_finding in hunts(seeds[::17]):
        found = {f.key: f for f in assess(fault_finding.design, fault_finding.pack).findings}
        assert open_keys(found.values()) == {f.key: FALLS_SHORT for f in fault_finding.findings}
        assert all(found[f.key] == f for f in fault_finding.findings)


def test_a_sound_design_leaves_nothing_open_in_any_pack():
    for pack in TAUGHT:
        for seed in range(3):
            assert open_keys(assess(valid_design(seed, pack), pack).findings) == {}, (pack, seed)


def test_the_same_seed_gives_the_same():
    assert (
        valid_design(4) == valid_design("4")
        and planted(4) == planted(4)
        and exercise("roof", 4) == exercise("roof", 4)
    )


@pytest.mark.parametrize("count", sampled([FEW, SEEDS], 1))
def test_another_seed_gives_another(count):
    assert len({fault_finding.design for fault_finding in hunts(range(count))}) == count
    given: dict[str, list] = {}
    for task in tasks(range(count)):
        given.setdefault(task.kind, []).append(task.given)
    assert all(len(set(figures)) > count / 4 for figures in given.values())
    assert len(set(zip(*given.values(), strict=True))) == count


@pytest.mark.whole
def test_every_fault_comes_up_somewhere():
    """At least one of the thousand plants each, and no single one is a tenth of all."""
    names = [fault.name for fault_finding in hunts() for fault in fault_finding.faults]
    assert len(FAULTS) >= 12 and set(names) == {fault.name for fault in FAULTS}
    assert max(names.count(name) for name in set(names)) < 0.1 * len(names)


@pytest.mark.parametrize("seed", sampled(range(5), 1))
def test_every_state_and_edition_can_be_practised(seed):
    for pack in TAUGHT:
        fault_finding = planted(seed, 2, pack)
        assert open_keys(assess(fault_finding.design, pack).findings) == {
            f.key: FALLS_SHORT for f in fault_finding.findings
        }, pack


@pytest.mark.parametrize("first", sampled(range(0, 200, 40), 1))
def test_what_is_wrong_can_be_seen_in_the_figures_told(first):
    """Each fault moves at least one figure that a reader is given: against the sound design of the
    same seed.
    """
    for fault_finding in hunts(range(first, first + 40, 2)):
        told = {text for *_, text in figures(fault_finding)}
        for finding in fault_finding.findings:
            if (
                isinstance(finding.provided, float)
                and finding.unit in ("in", "in2", "deg")
                and finding.key not in ("ROF-01", "ROF-02", "CLR-08")
            ):
                kind = {"in": "length", "in2": "area", "deg": "angle"}[finding.unit]
                provided = from_unit(finding.provided, finding.unit)
                lean = finding.key == "FLU-06"  # worked out from offset and rise
                assert lean or any(shown(provided, kind) in text for text in told), (
                    fault_finding.seed,
                    finding.key,
                )


@pytest.mark.parametrize("first", sampled(range(0, 60, 20), 1))
def test_a_guess_is_right_for_what_was_planted_and_for_nothing_else(first):
    for fault_finding in hunts(range(first, first + 20)):
        broken = {f.key for f in fault_finding.findings}
        choice = set(suspects(fault_finding.pack).values())
        assert broken <= choice and len(choice) > 25
        for key in choice:
            reply = guess(fault_finding, key)
            assert reply.right == (key in broken), (fault_finding.seed, key)
            assert (
                reply.text.startswith("Right" if reply.right else "Not that one")
                and len(reply.text) > 60
            )


def test_a_wrong_guess_is_told_why_that_one_stands():
    fault_finding = planted(3)
    found = {f.key: f for f in assess(fault_finding.design, fault_finding.pack).findings}
    for key in set(suspects(fault_finding.pack).values()) - {f.key for f in fault_finding.findings}:
        said = guess(fault_finding, key).text
        assert (
            (found[key].why in said and "provided" in said)
            if found[key].verdict == "meets"
            else found[key].note in said
        )


@pytest.mark.parametrize(
    ("wrong", "match"), [({"faults": 5}, "1 to 4"), ({"pack": "UK ADJ"}, "exercises are drawn for")]
)
def test_what_cannot_be_planted_is_said(wrong, match):
    with pytest.raises(InputError, match=match):
        planted(1, **wrong)


# -- numbers ----------------------------------------------------------------------------------------
def required(task, *keys):
    """What the rules of a task's own design ask for, where one applies. [SI]"""
    found = {f.key: f for f in PACKS[task.pack].check(gather_facts(sketch(task.design)), keys)}
    return next(
        from_unit(found[k].required, found[k].unit)
        for k in keys
        if k in found and found[k].verdict != "does not apply"
    )


def keyed(task):
    """What the checks and the geometry say, step by step; ``None`` where a step is a sum of others."""
    told = gather_facts(sketch(task.design))
    f = told.frame
    if task.kind == "flue":
        return (
            told.opening_area,
            required(task, "FLU-10", "FLU-11", "FLU-12", "FLU-13"),
            told.flue_net_area,
        )
    if task.kind == "hearth":
        return (
            told.opening_area,
            required(task, "HTH-05", "HTH-07"),
            required(task, "HTH-06", "HTH-08"),
            None,
        )
    if task.kind == "mantel":
        return required(task, "CLR-07"), required(task, "CLR-08"), None
    if task.kind == "roof":
        return f.highest_within_reach - f.uphill_contact, None, None, task.design.flue.sections
    if task.kind == "chamber":
        return None, None, None, required(task, "SMK-04")
    if task.kind == "wood":  # its wall is drawn, not read: worked with a pencil instead
        return None, None, None, None
    if task.kind == "throat":
        return (
            2 * f.half_at(f.throat_front),
            2 * f.half_at(f.throat_back),
            told.throat_area,
            told.throat_area - required(task, "THR-03"),
        )
    return f.liner_top - f.opening_top, None, None


@in_parts
def test_a_thousand_keys_are_what_geometry_and_checks_say(seeds):
    for task in tasks(seeds):
        for step, value in zip(task.steps, keyed(task), strict=True):
            assert value is None or step.expected == pytest.approx(value, rel=1e-9), (
                task.kind,
                task.seed,
                step.prompt,
            )


def verdict(design, key):
    return next(f.verdict for f in PACKS[PACK].check(gather_facts(sketch(design)), (key,)))


def test_an_answer_built_meets_and_a_little_less_does_not():
    """The design is set to the answer and assessed; then to a hair on the wrong side of it."""
    for seed in range(25):
        task = exercise("hearth", seed)
        _, front, side, width = (s.expected for s in task.steps)
        assert width == pytest.approx(task.design.opening.width + 2 * side)
        for key, value, rule in (
            ("hearth.front", front, task.steps[1].rule),
            ("hearth.side", side, task.steps[2].rule),
        ):
            assert verdict(change(task.design, {key: f"{value!r} m"}), rule) == "meets"
            assert verdict(change(task.design, {key: f"{value - 0.002!r} m"}), rule) == FALLS_SHORT
        task = exercise("flue", seed)
        rule, listed = task.steps[2].rule, {g.value for g in task.given if g.kind == "area"}
        assert verdict(task.design, rule) == "meets"
        smaller = [area for area in listed if area < task.steps[2].expected]
        assert all(area < task.steps[1].expected for area in smaller)
        task = exercise("roof", seed)
        assert {verdict(task.design, k) for k in ("ROF-01", "ROF-02")} == {"meets"}
        short = assess(change(task.design, {"flue.sections": task.design.flue.sections - 1}))
        assert FALLS_SHORT in {f.verdict for f in short.findings if f.key in ("ROF-01", "ROF-02")}
        over = task.steps[1].expected
        for much, good in ((over, True), (over - 0.01, False)):
            top = {
                "measured.over_contact": f"{much!r} m",
                "measured.over_nearby": f"{much - task.steps[0].expected!r} m",
            }
            assert (
                FALLS_SHORT
                not in {verdict(change(task.design, top), k) for k in ("ROF-01", "ROF-02")}
            ) == good


def test_trim_and_smoke_chamber_by_the_answer():
    for seed in range(25):
        task = exercise("mantel", seed)
        near, most, away = (s.expected for s in task.steps)
        out = next(g.value for g in task.given if "deeper" in g.name)
        given = next(g.value for g in task.given if "edge" in g.name)
        for distance, stands, good in (
            (given, most, True),
            (given, most + 0.001, False),
            (away, out, True),
            (away - 0.002, out, False),
        ):
            piece = {"distance": f"{distance!r} m", "projection": f"{stands!r} m"}
            assert (
                verdict(change(task.design, {"surround.trim": [piece]}), "CLR-08") == "meets"
            ) == good, (seed, distance)
        assert (
            verdict(
                change(
                    task.design,
                    {"surround.trim": [{"distance": f"{near!r} m", "projection": "0 in"}]},
                ),
                "CLR-07",
            )
            == "meets"
        )
        task = exercise("chamber", seed)
        run, rise, whole, tallest = (s.expected for s in task.steps)
        lean = change(task.design, {"smoke_chamber.height": f"{whole!r} m"})
        limit = required(task, task.steps[1].rule)
        assert sketch(lean).frame.chamber_slopes["sides"] == pytest.approx(limit, rel=1e-9)
        assert (
            verdict(change(task.design, {"smoke_chamber.height": f"{tallest!r} m"}), "SMK-04")
            == "meets"
        )
        assert (
            verdict(
                change(task.design, {"smoke_chamber.height": f"{tallest + 0.002!r} m"}), "SMK-04"
            )
            == FALLS_SHORT
        )
        assert rise + task.design.smoke_chamber.transition == pytest.approx(whole) and run > 0


def test_the_pull_is_the_density_formula():
    """Worked out here by pencil: g h (p/RT outdoors - p/RT in the flue)."""
    for seed in range(40):
        task = exercise("draft", seed)
        height, pull, more = (s.expected for s in task.steps)
        flue, outdoor = (
            next(g.value for g in task.given if word in g.name)
            for word in ("in the flue", "outdoors")
        )
        section = next(g.value for g in task.given if "section" in g.name)
        flue_ = task.design.flue
        assert section == pytest.approx(flue_.section_height + flue_.joint)
        each = 9.80665 * 101_325 / 287.05287 * (1 / outdoor - 1 / flue)
        assert pull == pytest.approx(each * height, rel=1e-5) and more == pytest.approx(
            each * section, rel=1e-5
        )
        path = assess(task.design).draft.path
        assert height == pytest.approx(float(path.height))


def test_a_right_answer_is_right_in_either_system():
    for task in tasks(range(FEW)):
        for step in task.steps:
            for units in SYSTEMS:
                assert check(step, shown(step.expected, step.kind, units)).right, (
                    task.kind,
                    task.seed,
                    step.prompt,
                    units,
                )


def text_of(value: float, kind: str) -> str:
    return (
        str(int(value))
        if kind == "count"
        else f"{value!r} "
        + {"length": "m", "area": "m2", "pressure": "Pa", "temperature": "K"}[kind]
    )


@in_parts
def test_every_declared_mistake_gets_its_own_reason_and_is_not_accepted(seeds):
    seen: dict[str, set[str]] = {}
    for task in tasks(seeds):
        for step in task.steps:
            for mistake in step.mistakes:
                reply = check(step, text_of(mistake.value, step.kind))
                assert (
                    not reply.right
                    and reply.mistake == mistake.reason
                    and mistake.reason in reply.text
                ), (task.kind, task.seed)
                assert abs(mistake.value - step.expected) > tolerance(step.expected, step.kind)
                seen.setdefault(task.kind, set()).add(mistake.reason)
    assert set(seen) == set(KINDS) and all(len(reasons) >= 3 for reasons in seen.values())


def test_known_mistakes_are_worked_out_honestly():
    """Three of them by pencil from the figures the reader is given."""
    for seed in range(60):
        task = exercise("flue", seed)
        width, standard, _ = (g.value for g in task.given[:3])
        assert "raised" in check(task.steps[0], f"{width * standard!r} m2").text
        task = exercise("roof", seed)
        pitch = float(task.given[0].value.split()[0]) / 12
        along = 3.048 * pitch / (1 + pitch**2) ** 0.5
        reply = check(task.steps[0], f"{along!r} m")
        assert (
            reply.right
            or "along the slope" in reply.text
            or abs(along - task.given[1].value * pitch) < 0.02
        )
        task = exercise("throat", seed)
        assert (
            "narrower than the opening"
            in check(task.steps[2], f"{task.given[0].value * task.given[4].value!r} m2").text
        )


def test_units_that_slip_are_recognised():
    step = exercise("hearth", 2).steps[3]
    inches = step.expected / 0.0254
    assert "feet and inches" in check(step, f"{inches} ft").text
    assert "centimeters and millimeters" in check(step, f"{step.expected * 100} mm").text
    area = exercise("hearth", 2).steps[0]
    assert "square feet and square inches" in check(area, f"{area.expected / 0.0254**2} ft2").text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("20 sq in", "That is an area; a length is in inches."),
        ("twenty inches", "cannot be read"),
        ("20 kg", "That is a weight; a length is in inches."),
        ("", "cannot be read"),
    ],
)
def test_an_answer_that_cannot_be_read_is_said_to_be_so(text, said):
    reply = check(exercise("hearth", 2).steps[1], text)
    assert not reply.right and reply.mistake == "unreadable" and said in reply.text


def test_a_wrong_answer_nobody_foresaw_gets_a_hint_and_never_the_answer():
    for task in tasks(range(FEW)):
        for step in task.steps:
            if step.kind == "count":
                continue
            reply = check(step, text_of(step.expected * 1.83 + 0.0131, step.kind))
            assert not reply.right
            assert shown(step.expected, step.kind) not in reply.text.replace(step.how, ""), (
                step.prompt
            )
    assert step.how in check(step, "0.777 Pa").text


# -- lessons ----------------------------------------------------------------------------------------
def test_a_lesson_points_only_at_what_is_there(boathouse):
    asked = {q.text for q in side_by_side(boathouse)}
    keys = {key for pack in TAUGHT for key in PACKS[pack].keys}
    assert list(LESSONS) == [
        "flue",
        "roof",
        "clearances",
        "hearths",
        "smoke chamber",
        "heat",
        "draft",
    ]
    for lesson in LESSONS.values():
        assert set(lesson.questions) <= asked and len(lesson.questions) >= 2
        assert set(lesson.marks) <= set(PLACES) and set(lesson.rules) <= keys
        assert all(key == LINER or key in all_inputs() for key in lesson.inputs)
        assert set(lesson.exercises) <= set(KINDS) and warned(lesson)
        assert len(" ".join(lesson.why)) > 400
    assert {kind for lesson in LESSONS.values() for kind in lesson.exercises} == set(KINDS)
    assert {fault.lesson for fault in FAULTS} <= {*LESSONS, ""}
    for kind in KINDS:
        assert kind in LESSONS[exercise(kind, 1).lesson].exercises


def test_every_input_of_a_lesson_moves_something_it_shows(boathouse):
    """Pulled to both ends, the lesson's checks or its draft say something else; the opening near
    six square feet to begin with.
    """
    boathouse = change(boathouse, {"opening.width": "28 in"})
    for lesson in LESSONS.values():
        for key in lesson.inputs:
            ends = (
                [liners()["round 8 in"], liners()["rectangular 20x24 in"]]
                if key == LINER
                else _ends(key)
            )
            results = []
            for end in ends:
                try:
                    results.append(assess(change(boathouse, end)))
                except InputError:
                    continue
            assert len(results) == 2, (lesson.key, key)
            said = [
                (
                    {
                        f.key: (f.verdict, f.provided, f.required)
                        for f in r.findings
                        if f.key in lesson.rules
                    },
                    str([f.provided for f in r.judgement]) if lesson.key == "draft" else "",
                )
                for r in results
            ]
            assert said[0] != said[1], (lesson.key, key)


def _ends(key):
    spec = all_inputs()[key]
    if spec.choices:
        return [{key: spec.choices[0]}, {key: spec.choices[1]}]
    low, high = {
        "throat.height": ("6 in", "12 in"),
        "throat.depth": ("3 in", "8 in"),
        "smoke_chamber.height": ("20 in", "50 in"),
        "hearth.drop": ("0 in", "12 in"),
        "firebox.wall": ("8 in", "12 in"),
        "smoke_chamber.wall": ("4 in", "10 in"),
        "flue.sections": (8, 30),
        "house.exhaust": ("0 L/s", "200 L/s"),
        "house.air_inlet": ("6 in2", "60 in2"),
        "opening.width": ("20 in", "60 in"),
        "opening.extension": ("0 in", "12 in"),
        "roof.ridge_level": ("18 ft", "30 ft"),
        "roof.ridge_distance": ("12 in", "240 in"),
    }.get(key, ("1 in", "40 in"))
    return [{key: low}, {key: high}]


# -- a class on paper -------------------------------------------------------------------------------
def words(path) -> str:
    return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in PdfReader(path).pages))


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
def test_sheets_hold_every_students_figures_and_no_answer(tmp_path, units):
    seeds = (3, 4)
    class_sheet(seeds, tmp_path / "sheet.pdf", units)
    class_sheet(seeds, tmp_path / "key.pdf", units, key=True)
    sheet, key = words(tmp_path / "sheet.pdf"), words(tmp_path / "key.pdf")
    hidden, listed = 0, [text for s in seeds for _, _, text in figures(planted(s), units)]
    for seed in seeds:
        assert f"Exercise {seed}" in sheet and f"Key {seed}" in key
        for task in exercises(seed):
            given = [g.shown(units) for g in task.given]
            assert all(text in sheet for text in given)
            for step in task.steps:
                answer = shown(step.expected, step.kind, units)
                assert answer in key and step.prompt in sheet and step.how not in sheet
                told = " ".join([*given, *listed])
                if (
                    step.kind in ("area", "pressure")
                    and answer not in told
                    and "opening" not in step.prompt
                ):
                    hidden += 1
                    assert not re.search(rf"(?<!\d)(?<!\d ){re.escape(answer)}", sheet), (
                        task.kind,
                        step.prompt,
                        answer,
                    )
        fault_finding = planted(seed)
        assert all(text in sheet for _, _, text in figures(fault_finding, units))
        assert fault_finding.faults[0].name in key and fault_finding.findings[0].clause in key
        assert (
            fault_finding.faults[0].name not in sheet and fault_finding.findings[0].why not in sheet
        )
    assert hidden >= 4


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
@pytest.mark.parametrize("key", [False, True])
def test_every_page_of_a_class_is_clean(units, key):
    for seed in (1, 2, 3, 17):
        for size in ("letter", "A4"):
            for sheet in class_pages(seed, units, key, faults=1 + seed % 3, size=size):
                assert collisions(sheet) == [], (seed, size)


def test_the_same_class_gives_the_same_file(tmp_path):
    for name in ("a", "b"):
        class_sheet([5], tmp_path / name)
    assert (tmp_path / "a").read_bytes() == (tmp_path / "b").read_bytes()


def test_seeds_of_a_class_are_read_or_refused(tmp_path):
    assert seeds_of(" 1-3, 7;9 ") == (1, 2, 3, 7, 9)
    for text in ("", "a-b", "5-2", "1-900", "1.5", "9" * 5000, "1-" + "9" * 30, "1234567890"):
        with pytest.raises(InputError):
            seeds_of(text)
    with pytest.raises(InputError, match="no seed"):
        class_sheet([], tmp_path / "none.pdf")
    with pytest.raises(InputError, match="letter or A4"):
        class_pages(1, FEET_INCHES, size="A3")


@pytest.mark.parametrize(
    "seed", ["", "a\nb", "s" * 70, pytest.param(10**5000, id="huge"), -(10**61), True, 1.5, None]
)
def test_a_seed_is_a_number_or_a_line_that_fits_a_sheet(seed):
    for draw in (valid_design, planted, lambda s: exercise("hearth", s)):
        with pytest.raises(InputError, match="Seed is "):
            draw(seed)
    assert valid_design(10**59 - 1).name == "Exercise " + "9" * 59


# -- panels -----------------------------------------------------------------------------------------
def test_a_lesson_is_live(boathouse):
    from fireplace_calc.panels.teaching.lesson_panel import lesson

    shown_ = lesson(boathouse, lesson="roof")
    low, picture = (
        shown_.checks.value,
        shown_.view_pane.board.widget.drawn,
    )
    assert (
        "falls short" in low
        and "Canada NBC" in shown_.books.value
        and "UK ADJ" in shown_.books.value
    )
    shown_.on_slider("flue.sections", boathouse.flue.sections + 3)
    assert shown_.checks.value != low and "falls short" not in shown_.checks.value
    assert shown_.view_pane.board.widget.drawn != picture
    shown_.set_input("flue.sections", "none")
    assert (
        'role="alert"' in shown_.said.value
        and shown_.design.flue.sections == boathouse.flue.sections + 3
    )
    for key, one in LESSONS.items():
        shown_.teach(key)
        assert (
            one.why[0][:40] in shown_.why.value
            and shown_.books.value.count("<tr>") == len(one.questions) + 1
        )
    assert "Engineering judgement" in shown_.checks.value
    shown_.teach("flue")
    assert "Engineering judgement" not in shown_.checks.value
    shown_._take_liner("rectangular 13x18 in")
    assert (shown_.design.flue.shape, shown_.design.flue.size) == ("rectangular", "13x18")


def test_the_desk_replies(tmp_path):
    from fireplace_calc.panels.teaching.exercise_panel import practice

    session = practice(11, folder=tmp_path, faults=2)
    numbers, search, sheets = session.numbers, session.search, session.sheets
    for kind in KINDS:
        numbers.chooser.value = kind
        shown_ = numbers.steps.children
        for box, reply, step in zip(shown_[::2], shown_[1::2], numbers.task.steps, strict=True):
            assert box.description == step.prompt and not box.value and not reply.value
            box.value = shown(step.expected, step.kind)
            assert "✓ Right" in reply.value and 'role="status"' in reply.value
            if step.mistakes:
                box.value = text_of(step.mistakes[0].value, step.kind)
                assert "✗" in reply.value
    first, second = (f.key for f in search.faults.findings)
    search.accuse(first)
    assert "1 more to find" in search.verdict.value
    search.accuse(second)
    assert "Nothing else is broken" in search.verdict.value
    assert (
        search.accuse("FND-12" if "FND-12" in suspects(session.student.pack).values() else "HTH-02")
        is not None
    )
    sheets.students.value = "1-2"
    assert sheets.write(False).is_file() and sheets.write(True).is_file()
    sheets.students.value = "nobody"
    sheets.write(True)
    assert 'role="alert"' in sheets.job.status.value


def test_designs_of_a_class_are_invented_and_say_so():
    assert all("Invented" in fault_finding.design.note for fault_finding in hunts(range(FEW)))
