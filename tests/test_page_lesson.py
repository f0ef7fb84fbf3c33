"""The lesson page in a real browser, on a wall, a tablet and a phone: picture, controls and words in
sight at once, letters that can be read from the back row, nothing without a fault of axe, by keyboard
alone, and not one request off the machine.
"""

import os

import pytest
from bench.browser import chromium, page, server
from sampled import sampled
from test_browser import REQUIRED, settles, write_notebook
from test_page_workbench import HELP, SMALL, faults
from test_walks import EVERY

from fireplace_calc.lessons.course.lesson_file import course
from fireplace_calc.panels.lesson.lesson_desk import SCREENS

ROOF = "height-over-the-roof"
WALLS = [(1280, 800), (1920, 1080), (1024, 768)]
"""Two projectors and a tablet. [px]"""
CAPITAL = 0.7
"""Height of a capital in heights of its font: less than of any usual one, so that a narrower letter
than ours passes too. [-]"""
OVER = """() => {
  const node = (name) => document.querySelector(name), over = (box) => box.scrollHeight - box.clientHeight;
  const lesson = node('.fl-lesson');
  return Math.max(over(node('.fl-words')), over(lesson), lesson.getBoundingClientRect().bottom - window.innerHeight,
    document.documentElement.scrollWidth - window.innerWidth, over(document.documentElement));
}"""
LEAST = """(names) => Math.min(...[...document.querySelectorAll(names)].filter((e) => e.offsetParent && e.textContent.trim())
  .map((e) => parseFloat(getComputedStyle(e).fontSize))) / window.innerHeight"""
DRAWN = "() => Math.min(...[...document.querySelectorAll('.fl-lesson .fp-sheet')].map((c) => Number(c.dataset.letter))) / window.innerHeight"
NOTEBOOK = [f"from fireplace_calc.panels.lesson.showing import show_lesson\nshow_lesson('{ROOF}')"]


@pytest.fixture(scope="module", params=["voila", "lab"] if EVERY else ["voila"])
def wall(request, tmp_path_factory):
    """A lesson as a page, or in a notebook, in one browser for every size; and what was fetched."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", "no Chromium, but it must be there"
        pytest.skip("no Chromium on this machine (Debian: apt-get install chromium)")
    root = tmp_path_factory.mktemp("lesson").resolve()
    write_notebook(root / "lesson.ipynb", NOTEBOOK)
    told = (root / "lesson.ipynb").read_text()  # code is out of sight, as in what is supplied
    hidden = told.replace('"metadata": {}', '"metadata": {"jupyter": {"source_hidden": true}}')
    (root / "lesson.ipynb").write_text(hidden)
    with server(request.param, root / "lesson.ipynb", root) as address, page(1280, 800) as view:
        view.fetched = []
        view.on("requestfinished", lambda asked: view.fetched.append(asked.url))
        view.goto(address, timeout=120_000)
        if request.param == "lab":
            # not one of the supplied notebooks: it asks
            view.get_by_role("button", name="Run all cells", exact=True).click(timeout=60_000)
        view.locator(".fl-lesson .fp-sheet").first.wait_for(timeout=120_000)
        view.evaluate(HELP)
        view.kind = request.param
        yield view


def sized(view, wide, high):
    view.set_viewport_size({"width": wide, "height": high})
    view.wait_for_timeout(700)


def opened(view, screen):
    view.locator(f".fl-tabs [data-name={screen}]").click()
    view.locator(f".fl-frame[data-screen={screen}]").wait_for(timeout=30_000)


def on_every_screen(view):
    """Open each screen, go as far as it goes, and say where that is."""
    for screen in SCREENS:
        opened(view, screen)
        if screen == "rule":
            view.locator("[data-f=try]").click()
        elif screen == "why":
            view.locator("[data-f=part-1]").click()
        elif screen == "worked":
            for told in range(view.locator(".fl-frame ol li").count(), 9):
                if view.locator("[data-f=onward]:disabled").count():
                    break
                view.locator("[data-f=onward]").click()
                view.locator(".fl-frame ol li").nth(told).wait_for(timeout=30_000)
        elif screen == "site":
            for at in range(3):
                if view.locator(f"[data-f=guess-{at}]:not(:disabled)").count():
                    view.locator(f"[data-f=guess-{at}]").click()
                    tried = "[data-f=guess-{}][aria-pressed=true], [data-f=guess-{}]:disabled"
                    view.locator(tried.format(at, at)).wait_for(timeout=30_000)
        elif screen == "check":
            view.locator("[data-f=answer-1]").click()
        else:
            view.locator("[data-f=hint]").click()
        view.wait_for_timeout(250)
        yield screen


def test_a_lesson_is_seen_at_once_read_from_the_back_and_without_fault(wall):
    """Capitals of 2 % of the screen's height, figures of 2.5 %: in Voila, and in JupyterLab, where a
    lesson opens over the window.
    """
    wrong = {}
    if wall.kind == "lab":
        sized(wall, 1280, 800)
        wall.get_by_text("Back to the notebook").click()
        for screen in on_every_screen(wall):
            if (over := wall.evaluate(OVER)) > 1:
                wrong["in its cell", screen] = over
        wall.get_by_text("Fill the window").click()
    for wide, high in WALLS:
        sized(wall, wide, high)
        for screen in on_every_screen(wall):
            at = (wide, screen)
            if (over := wall.evaluate(OVER)) > 1:
                wrong[at, "over"] = over
            if small := wall.evaluate(SMALL.replace(".fp-bench", ".fl-lesson")):
                wrong[at, "small"] = small
            words = CAPITAL * wall.evaluate(
                LEAST, ".fl-frame :is(p, b, button, select, li, td, th)"
            )
            drawn = wall.evaluate(DRAWN) * 0.73
            if min(words, drawn) < 0.02:
                wrong[at, "letters"] = (words, drawn)
            if screen == "rule":
                figure = CAPITAL * wall.evaluate(LEAST, ".fl-figure")
                if figure < 0.025:
                    wrong[at, "figure"] = figure
            if wide == 1280 and (found := faults(wall)):
                wrong[at, "axe"] = found
    assert wrong == {}


def test_in_a_notebook_a_lesson_opens_over_the_window(wall):
    """Letters of a cell are too small for the back row; who goes back to it stays there."""
    if wall.kind == "voila":
        assert not wall.get_by_text("Back to the notebook").count()
        return
    sized(wall, 1280, 800)
    assert wall.locator(".fl-lesson[popover]").count() == 1
    wall.get_by_text("Back to the notebook").click()
    sized(wall, 1279, 800)
    assert wall.locator(".fl-lesson[popover]").count() == 0
    wall.get_by_text("Fill the window").click()


def pressed(view, name):
    """Press what has a name, where it is there and may be pressed."""
    found = """(name) => { const e = document.querySelector(name);
      if (e && !e.disabled) e.click(); return Boolean(e && !e.disabled); }"""
    there = view.evaluate(found, name)
    view.wait_for_timeout(200)
    return there


def every_state(view):
    """Everything that a lesson shows, one after the other, and what that is."""
    opened(view, "rule")
    yield "rule"
    slid = """([at, end]) => { const e = document.querySelectorAll('.fl-control input')[at];
      e.value = e[end]; e.oninput(); }"""
    for at in range(view.locator(".fl-control").count()):
        for end in ("min", "max"):
            view.evaluate(slid, [at, end])
            view.wait_for_timeout(200)
            yield "control", at, end
    for at in range(3):
        pressed(view, "[data-f=try]")
        yield "try", at
    opened(view, "why")
    for at in range(4):
        pressed(view, f"[data-f=part-{at}]")
        yield "why", at
        for turn in range(9):
            if view.locator("[data-f=more]:visible").count() and turn < 8:
                pressed(view, "[data-f=more]")
                yield "why", at, "more", turn
    opened(view, "worked")
    while pressed(view, "[data-f=onward]"):
        pass
    yield "worked"
    opened(view, "site")
    for at in range(4):
        if pressed(view, f"[data-f=guess-{at}]"):
            yield "site", at
    opened(view, "check")
    for question in range(3):
        for at in range(4):
            if pressed(view, f"[data-f=answer-{at}]"):
                yield "check", question, at
        pressed(view, "[data-f=question]")
    opened(view, "exercises")
    for kind in range(max(view.locator("[data-f^=kind-]").count(), 1)):
        pressed(view, f"[data-f=kind-{kind}]")
        for level in (1, 2, 3) if EVERY else (3,):
            pressed(view, f"[data-f=level-{level}]")
            step, more = 0, True
            while more:
                for name in ("hint", "more", "working"):
                    pressed(view, f"[data-f={name}]")
                    yield "exercise", kind, level, step, name
                step, more = step + 1, pressed(view, "[data-f=onward]")


FULL = ("clearances-and-mantel", "heat-and-wood")
"""Lessons with the most words, and what is asked for with the most figures."""


@pytest.mark.parametrize("key", sampled([*FULL, *(k for k in course() if k not in FULL)], 1))
def test_picture_and_controls_stand_together_whatever_a_lesson_shows(wall, key):
    """Nothing is scrolled for: every control at its ends, every reply, hint and working."""
    wrong = {}
    for wide, high in (WALLS[0], WALLS[2]):
        sized(wall, wide, high)
        wall.get_by_text("All lessons").click()
        wall.locator(f"[data-f=lesson-{key}]").wait_for()
        if (over := wall.evaluate(OVER)) > 1:
            wrong[wide, "contents"] = over
        wall.locator(f"[data-f=lesson-{key}]").click()
        wall.locator(".fl-frame[data-screen=rule]").wait_for()
        for state in every_state(wall):
            if (over := wall.evaluate(OVER)) > 1:
                wrong[wide, state] = over
    wall.get_by_text("All lessons").click()
    wall.locator(f"[data-f=lesson-{ROOF}]").click()
    wall.locator(".fl-frame[data-screen=rule]").wait_for()
    assert wrong == {}


def test_on_a_tablet_held_upright_the_picture_stands_above_as_wide_as_the_page(wall):
    """Beside the words it had half of the width, and its own lower half stood empty."""
    sized(wall, 768, 1024)
    for screen in ("rule", "exercises", "worked"):
        opened(wall, screen)
        wall.wait_for_timeout(400)
        stage, words = (wall.locator(f".fl-{name}").bounding_box() for name in ("stage", "words"))
        assert stage["width"] > 0.95 * 768 - 24 and words["y"] >= stage["y"] + stage["height"] - 1
        assert stage["height"] > 1024 / 3 and wall.evaluate(OVER) <= 1
    sized(wall, 1280, 800)


def test_a_table_to_look_a_figure_up_in_stands_with_its_picture(wall):
    """Canada's flues, in both units: a cell with figures for every one that is told."""
    wrong, lists = {}, wall.locator(".fl-bar select")
    before = [lists.nth(k).evaluate("e => e.selectedIndex") for k in (0, 1)]
    lists.nth(0).select_option(label="Canada NBC")
    for units in (0, 1):
        lists.nth(1).select_option(index=units)
        for wide, high in (WALLS[0], WALLS[2]):
            sized(wall, wide, high)
            wall.get_by_text("All lessons").click()
            wall.locator("[data-f=lesson-opening-and-flue]").click()
            opened(wall, "exercises")
            pressed(wall, "[data-f=level-3]")
            step, more = 0, True
            while more:
                for name in ("hint", "more", "working"):
                    pressed(wall, f"[data-f={name}]")
                    if (over := wall.evaluate(OVER)) > 1:
                        wrong[wide, units, step, name] = over
                step, more = step + 1, pressed(wall, "[data-f=onward]")
            filled = wall.locator(".fl-given td").all_inner_texts()
            assert len([text for text in filled if text]) >= 3
    for k, at in enumerate(before):
        lists.nth(k).select_option(index=at)
    wall.get_by_text("All lessons").click()
    wall.locator(f"[data-f=lesson-{ROOF}]").click()
    wall.locator(".fl-frame[data-screen=rule]").wait_for()
    assert wrong == {}


def test_a_lesson_goes_by_keyboard_alone(wall):
    """Rule, fault and exercise; the focus stays where it was when words are made anew."""
    sized(wall, 1280, 800)
    wall.locator(".fl-tabs [data-name=rule]").focus()
    wall.keyboard.press("Enter")
    wall.locator(".fl-frame[data-screen=rule]").wait_for()
    for _ in range(40):
        wall.keyboard.press("Tab")
        if wall.evaluate("document.activeElement.type") == "range":
            break
    focused = "document.activeElement.getAttribute('aria-valuetext')"
    before = wall.evaluate(focused)
    name = wall.evaluate("document.activeElement.labels[0].textContent")
    assert name == "Flue sections" and before.isdigit()
    wall.keyboard.press("ArrowLeft")
    settles(wall, lambda: wall.evaluate(focused), str(int(before) - 1), "the slider says its place")
    wall.locator(".fl-tabs [data-name=site]").focus()
    wall.keyboard.press("Enter")
    wall.locator(".fl-frame[data-screen=site]").wait_for()
    if wall.locator("[data-f=again]").count():
        wall.locator("[data-f=again]").press("Enter")
    settles(wall, lambda: wall.locator("[data-f=again]").count(), 0, "no guess")
    wall.locator("[data-f=guess-0]").focus()
    wall.keyboard.press("Enter")
    wall.get_by_text("1 guess", exact=True).wait_for()
    assert wall.evaluate("document.activeElement.dataset.f") == "guess-0"
    wall.locator(".fl-tabs [data-name=exercises]").focus()
    wall.keyboard.press("Enter")
    wall.locator("[data-f=box]").focus()
    wall.keyboard.type("1 mm")
    wall.keyboard.press("Enter")
    wall.locator(".fl-reply.fl-bad").wait_for()
    assert wall.evaluate("document.activeElement.dataset.f") == "box"


def test_an_answer_that_is_begun_outlasts_what_the_page_is_told(wall):
    """A hint and a picture of another size make the words anew; the next exercise has an empty box."""
    sized(wall, 1280, 800)
    opened(wall, "exercises")
    box = wall.locator("[data-f=box]")
    box.fill("12 ft 3")
    wall.locator("[data-f=hint]").click()
    wall.locator(".fl-frame .fl-hint").wait_for()
    assert box.input_value() == "12 ft 3"
    box.press("End")
    wall.keyboard.type(" in")
    sized(wall, 1024, 768)
    assert box.input_value() == "12 ft 3 in"
    box.press("Control+a")
    sized(wall, 1280, 800)
    wall.keyboard.type("9 ft")
    assert box.input_value() == "9 ft"
    box.press("Enter")
    wall.locator(".fl-frame .fl-hint").wait_for(state="detached")
    wall.locator("[data-f=another]").click()
    settles(wall, box.input_value, "", "a box for another answer")


def test_a_dark_room_contents_and_a_phone(wall):
    sized(wall, 1280, 800)
    wall.get_by_text("Dark room").click()
    opened(wall, "rule")
    wall.wait_for_timeout(600)
    assert faults(wall) == []
    wall.get_by_text("Light room").click()
    wall.get_by_text("All lessons").click()
    settles(wall, lambda: wall.locator(".fl-course button").count(), len(course()), "all lessons")
    assert faults(wall) == [] and wall.evaluate(OVER) <= 1
    wall.locator(f"[data-f=lesson-{ROOF}]").click()
    wall.locator(".fl-frame[data-screen=rule]").wait_for()
    if wall.kind == "voila":
        sized(wall, 390, 844)
        assert faults(wall) == [] and wall.evaluate(SMALL.replace(".fp-bench", ".fl-lesson")) == []
        across = "document.documentElement.scrollWidth - window.innerWidth"
        assert wall.evaluate(across) <= 0
    elsewhere = [url for url in wall.fetched if not url.startswith(("data:", "blob:"))
                 and "://127.0.0.1:" not in url and "://localhost:" not in url]  # fmt: skip
    assert elsewhere == [], "the page asks another machine"
