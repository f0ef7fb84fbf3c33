"""Each reader's task from opening to result, by keyboard alone, in JupyterLab and in Voila; and axe
over what they see.
"""

import base64
import io
import os
import re
import shutil

import pytest
from axe_playwright_python.sync_playwright import Axe
from bench.browser import ROOT, chromium, page, server
from pypdf import PdfReader

from fireplace_calc import assess, change
from fireplace_calc.base.printing import show
from fireplace_calc.editing.file_text import fingerprint
from fireplace_calc.explore import find_remedies, highest_raise
from fireplace_calc.lessons import checklist, exercise, planted, suspects
from fireplace_calc.report.alternatives import side_by_side

REQUIRED = "FIREPLACE_BROWSER_TEST"
NAME = """() => {
  const e = document.activeElement;
  const label = [...(e.labels || [])].map((l) => l.textContent).join('') || e.getAttribute('aria-label');
  return (label || e.textContent || '').trim();
}"""
ROW = "() => document.activeElement.closest('[role=tablist]')?.ariaLabel || ''"
SLIDER = "() => document.activeElement.type === 'range'"
KINDS = ["lab", "voila"]
"""The mason walks in one, designer and trainer in the other; ``KINDS=all`` sends all
to both, by hand.
"""
EVERY = os.environ.get("KINDS") == "all"


class Walker:
    """Somebody with a keyboard and no mouse, in front of one panel."""

    def __init__(self, view, number=0):
        self.view, self.panel = view, view.locator(".fp-bench, .fireplace-panel").nth(number)

    def start(self):
        """Stand on the panel's first control, where Tab from the page's top leads to in the end."""
        self.panel.locator("[role=slider], select, input").first.focus()

    def tab(self, *names):
        """Open a tab, and what is within it: along the row with the arrow keys."""
        for name, row in zip(names, ("stands beside", "Within"), strict=False):
            self.start()
            tab = self.panel.locator(f"[role=tablist][aria-label*='{row}'] [tabindex='0']")
            for _ in range(40):
                if self.view.evaluate(ROW).find(row) >= 0:
                    break
                self.press("Tab")
            for _ in range(20):
                if self.view.evaluate(NAME) == name:
                    break
                self.press("ArrowRight")
            assert self.view.evaluate(NAME) == name, tab.count()
            self.press("Enter")
            self.view.locator(".fp-open:not(.fp-waits)").first.wait_for()

    def to(self, name, most=90):
        """Press Tab until the thing of this name has the focus."""
        for _ in range(most):
            if self.view.evaluate(NAME) == name:
                return
            self.view.keyboard.press("Tab")
        raise AssertionError(
            f"{name} is not reached by Tab; the focus is on {self.view.evaluate(NAME)!r}"
        )

    def slider(self, name):
        """Tab to a slider: the box of the same name comes first."""
        self.start()
        for _ in range(40):
            if self.view.evaluate(NAME) == name and self.view.evaluate(SLIDER):
                return
            self.press("Tab")
        raise AssertionError(f"the slider {name} is not reached by Tab")

    def press(self, *keys):
        for key in keys:
            self.view.keyboard.press(key)

    def unfold(self, name):
        self.start()
        self.to(name)
        self.press("Enter")

    def push(self, name):
        """A button under what was unfolded."""
        self.to(name)
        self.press("Enter")

    def says(self, words, timeout=30_000):
        """Wait for words on the panel."""
        self.panel.get_by_text(words).first.wait_for(timeout=timeout)

    def undo_to(self, words, most=12):
        """Press Undo until the panel says so: on a slow machine a run of presses has pauses in it,
        and each part is a step of its own.
        """
        self.start()
        self.to("Undo")
        for _ in range(most):
            self.press("Enter")
            self.view.wait_for_timeout(800)
            if self.panel.get_by_text(words).count():
                return
        told = self.panel.locator(".fp-strip").first.text_content()
        raise AssertionError(
            f"undone {most} times, and still not {words} but {told}; focus on"
            f" {self.view.evaluate(NAME)}"
        )

    def pictures(self):
        return self.view.evaluate(
            "() => [...document.querySelectorAll('.fp-sheet')].map((c) => c.toDataURL())"
        )

    def looks_otherwise(self, before):
        for _ in range(600):
            if self.pictures() != before:
                return
            self.view.wait_for_timeout(50)
        raise AssertionError("the picture has not changed")

    def paper(self):
        """The PDF behind the link."""
        link = self.panel.locator("a[download]").first
        link.wait_for(timeout=30_000)
        return PdfReader(io.BytesIO(base64.b64decode(link.get_attribute("href").partition(",")[2])))


def faults(view):
    """What axe finds serious on the panels, each with where."""
    found = Axe().run(view, context=".fp-bench, .fireplace-panel").response["violations"]
    return [
        (v["id"], [node["html"][:160] for node in v["nodes"]][:4])
        for v in found
        if v["impact"] in ("serious", "critical")
    ]


@pytest.fixture
def opened(tmp_path):
    """Open a notebook from a copy, as JupyterLab or Voila shows it."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip(
            "no Chromium on this machine: the browser test is left out (Debian: apt-get install"
            " chromium)"
        )
    root, closing = tmp_path.resolve(), []
    shutil.copytree(ROOT / "data", root / "data")
    shutil.copytree(
        ROOT / "notebooks", root / "notebooks", ignore=shutil.ignore_patterns(".*", "kept")
    )

    def go(kind, name):
        running, looking = server(kind, root / "notebooks" / name, root), page()
        closing.append(running)
        address = running.__enter__()
        closing.append(looking)
        view = looking.__enter__()
        view.goto(address, timeout=120_000)
        view.locator(".fp-sheet").first.wait_for(timeout=120_000)
        view.wait_for_timeout(1500)
        return view, root / "notebooks"

    yield go
    for one in reversed(closing):
        one.__exit__(None, None, None)


@pytest.mark.parametrize("kind", KINDS if EVERY else KINDS[1:])
def test_the_designer_lays_two_options_side_by_side_and_hands_over_a_sheet(kind, opened, boathouse):
    view, folder = opened(kind, "with-a-client.ipynb")
    walker = Walker(view)
    before = walker.pictures()
    walker.slider("Opening width")
    walker.press(*["ArrowRight"] * 4)
    walker.looks_otherwise(before)
    wider = change(boathouse, {"opening.width": "44 in"})
    walker.says(re.compile("opening 3'-8\" wide"))
    walker.tab("My job", "Options side by side")
    walker.push("Keep this design as an option")
    walker.says("Bring back Option 1")
    walker.slider("Opening width")
    walker.press(*["ArrowRight"] * 8)
    other = change(boathouse, {"opening.width": "48 in"})
    told = dict(side_by_side([assess(wider), assess(other)]))
    walker.says(told["Material costs"][0])
    walker.says(told["Material costs"][1])
    walker.says(told["Differs from the first in"][1])
    assert faults(view) == []
    walker.tab("Looks", "Proportions")
    before = walker.pictures()
    walker.to("Golden section")
    walker.press("Space")
    walker.looks_otherwise(before)
    assert faults(view) == []
    walker.tab("Save and print")
    walker.push("Sheet to hand over")
    text = "".join(sheet.extract_text() for sheet in walker.paper().pages)
    assert (
        fingerprint(other) in text
        and "Option 1" in text
        and told["Material costs"][0].partition(" USD")[0] in text
    )
    assert faults(view) == []
    walker.undo_to(re.compile("opening 3'-8\" wide"))
    (job,) = (folder / "kept").glob("*/design.toml")
    names = {path.name for path in job.parent.glob("*.toml")}
    assert names >= {"design.toml", "history.toml", "option-1.toml", "reader.toml"}, names


@pytest.mark.parametrize("kind", KINDS if EVERY else KINDS[:1])
def test_the_mason_asks_how_far_takes_a_remedy_and_prints_the_check_sheet(kind, opened, boathouse):
    view, _ = opened(kind, "a-raised-firebox.ipynb")
    raised = change(
        boathouse, {"flue.size": "12", "flue.sections": 22, "opening.extension": "14 in"}
    )
    walker = Walker(view)
    best = find_remedies(raised)[0]
    walker.tab("What mends it")
    walker.says(best.sentence())
    assert faults(view) == []
    walker.tab("What mends it", "How far can it be raised?")
    walker.says(f"The firebox can be raised by {show(highest_raise(raised).raised, 'length')}")
    walker.tab("What mends it", "What would fix it?")
    walker.push("Use remedy 1")
    mended = change(raised, best.change)
    counts = assess(mended).counts
    walker.says(
        re.compile(f"{counts['falls short']} fall short, {counts['not checked']} not checked")
    )
    walker.tab("Will it draw?", "Formula, numbers, result")
    walker.says("Face velocity, sizing mode")
    assert faults(view) == []
    walker.tab("Save and print")
    walker.push("Check sheet")
    text = "".join(sheet.extract_text() for sheet in walker.paper().pages)
    assert fingerprint(mended) in text and "Inspected on site" in text
    walker.push("Look before you print")
    looked = view.locator("[role=region] img[alt*='as it is printed']")
    looked.wait_for(timeout=60_000)
    walker.push("Next")
    view.locator("[role=region] img[alt^='Sheet 2 of']").wait_for(timeout=30_000)
    assert faults(view) == []
    short = assess(raised).counts["falls short"]
    walker.undo_to(re.compile(f"{short} fall short"))


TONES = """() => [...document.querySelectorAll('.jp-RenderedHTMLCommon :is(h1, h2, p)')].filter((e) => e.offsetParent)
  .map((e) => Math.min(...getComputedStyle(e).color.match(/[0-9]+/g).slice(0, 3).map(Number)))"""


PAPERS = """() => [...document.querySelectorAll('.jp-OutputArea-output:has(.jupyter-widgets):not(:has(.fl-lesson))')]
  .map((e) => getComputedStyle(e).backgroundColor)"""


@pytest.mark.parametrize("kind", KINDS if EVERY else KINDS[1:])
def test_the_trainer_shows_a_lesson_and_hears_right_and_wrong(kind, opened, boathouse):
    view, folder = opened(kind, "chimney-rules.ipynb")
    desk = Walker(view, -1)
    page = view.locator(".fl-frame")
    page.get_by_text("short", exact=False).first.wait_for(timeout=60_000)
    slider = page.get_by_role("slider").first
    slider.focus()
    view.keyboard.press("ArrowRight")
    page.get_by_text("That is enough", exact=False).first.wait_for(timeout=30_000)
    assert faults(view) == []
    page.get_by_role("button", name="Dark room", exact=True).click()
    tones = view.evaluate(TONES)
    assert tones and min(tones) > 150, "what stands over the lesson is read in a dark room too"
    assert set(view.evaluate(PAPERS)) == {"rgb(255, 255, 255)"}, "the fault is looked for on paper"
    page.get_by_role("button", name="Light room", exact=True).click()
    page.locator(".fl-tabs [data-name=exercises]").focus()
    view.keyboard.press("Enter")
    step = exercise("roof", 1, level=1).steps[0]
    for value, sign in ((step.mistakes[-1].value, "fl-bad"), (step.expected, "fl-good")):
        box = page.locator("[data-f=box]")
        box.focus()
        view.keyboard.press("Control+a")
        view.keyboard.type(f"{value!r} m")
        view.keyboard.press("Enter")
        page.locator(f".fl-reply.{sign}").wait_for(timeout=30_000)
    hunt = planted(7)
    broken = hunt.findings[0].key
    names = {key: name for name, key in suspects(hunt.pack).items()}
    for number, key in enumerate((next(k for k in names if k != broken), broken), 1):
        part = next(p for p, held in checklist(hunt.pack) if key in dict(held))
        listed = desk.panel.get_by_label("Which rule is broken?")
        listed.select_option(f"{part}: {names[key]}")
        listed.focus()
        desk.push("Check my answer")
        desk.says(f"Guess {number}.")
    desk.panel.locator(".reply.right").first.wait_for(timeout=30_000)
    assert faults(view) == []
