"""The first workbook in a real JupyterLab, as a reader meets it: opened, run by itself, moved by
keyboard alone.
"""

import base64
import json
import os
import re
import shutil

import pytest
from bench.browser import ROOT, chromium, page, server

from fireplace_calc import assess, change
from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.drawing.page.stage import stage_cells, stage_views
from fireplace_calc.report.sentences import asked, compared, quantity, sign

REQUIRED = "FIREPLACE_BROWSER_TEST"
"""Set to ``required`` where the test must not be skipped."""
MOVES = [  # label, key of the input, role of the box beside it, keys to press, value they lead to
    (
        "Opening width",
        "opening.width",
        "textbox",
        ["ArrowRight"] * 3 + ["ArrowUp", "ArrowLeft"],
        "+1.5 in",
    ),
    ("Firebox extension", "opening.extension", "textbox", ["Home", "PageUp", "ArrowRight"], "3 in"),
    ("Flue sections", "flue.sections", "textbox", ["ArrowDown", "ArrowDown", "ArrowLeft"], "-3"),
]
STAGE = """() => {
  const { width, height } = document.querySelector('.fp-stage').getBoundingClientRect();
  return [width, height];
}"""
WORDS = """() => Object.fromEntries([...document.querySelectorAll('.fp-sheet')]
  .map((canvas) => [canvas.dataset.name, canvas.ariaLabel]))"""
INKED = """() => [...document.querySelectorAll('.fp-sheet')].map((canvas) => {
  const data = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data, seen = new Set();
  for (let k = 0; k < data.length; k += 4) seen.add(data[k] << 16 | data[k + 1] << 8 | data[k + 2]);
  return seen.size;
})"""
TABLE = """(caption) => {
  const tables = [...document.querySelectorAll('.fireplace-panel table')];
  const table = tables.find((t) => t.caption && t.caption.textContent.startsWith(caption));
  return !table ? [] : [...table.rows].slice(1).map((row) => [...row.cells].map((cell) => cell.textContent.trim()));
}"""
FINDINGS = """() => [...document.querySelectorAll('.fireplace-findings table')]
  .map((table) => [...table.rows].at(-1)).filter((row) => row.querySelector('td'))
  .map((row) => [...row.cells].slice(0, 5).map((cell) => (cell.querySelector('b') || cell).textContent.trim()))"""
UNSEEN = """() => [...document.querySelectorAll('.fireplace-findings .unseen')]
  .every((row) => row.getBoundingClientRect().height < 2)"""

NAMELESS = """() => {
  const all = [...document.querySelectorAll('.fp-bench :is(input, select, button, textarea):not([role=tab]):not(:disabled)')];
  const label = (e) => [...(e.labels || [])].map((l) => l.textContent).join('');
  const name = (e) => e.getAttribute('aria-label') || label(e) || (e.tagName === 'BUTTON' ? e.textContent : '');
  return all.filter((e) => !name(e).trim() || e.tabIndex < 0).map((e) => e.outerHTML);
}"""
FOCUSED = """() => {
  const e = document.activeElement;
  return e.matches('input, select') && Boolean(e.closest('.jupyter-widget-Collapse-contents'));
}"""


def words_of(result, size) -> dict[str, str]:
    """What stands on each view of a stage of some size, in words. [px]"""
    cut = stage_cells("all", *size)
    views = stage_views("all", result.geometry, FEET_INCHES, result.findings, (), cut)
    return {name: ", ".join(n.text for n in sheet.labels) for name, _, sheet in views}


def checks_of(result) -> list[list[str]]:
    return [
        [f"{sign(f)} {f.said}", f.title, compared(f)[0], asked(f), compared(f)[2]]
        for f in result.findings
        if f.verdict != "does not apply"
    ]


def order_of(result) -> list[list[str]]:
    return [[row.item, quantity(row.net, row), quantity(row.order, row)] for row in result.takeoff]


def checks_shown(view) -> list[list[str]]:
    """Verdict, title and the three figures, top to bottom; the sentence under the title is left
    out.
    """
    return view.evaluate(FINDINGS)


def order_shown(view) -> list[list[str]]:
    return [[row[0], row[2], row[3]] for row in view.evaluate(TABLE, "Material takeoff")[:-1]]


def settles(view, look, wanted, what):
    """Wait for what a reader sees to become what it has to be."""
    for _ in range(600):
        seen = look()
        if seen == wanted:
            return
        view.wait_for_timeout(50)
    assert seen == wanted, what


def open_tab(view, *names):
    """Open a tab by keyboard, and what is within it."""
    for name, which in zip(names, (0, -1), strict=False):
        tab = view.get_by_role("tab", name=name, exact=True).nth(which)
        tab.focus()
        tab.press("Enter")
        settles(view, lambda tab=tab: tab.get_attribute("aria-selected"), "true", name)


def unfold(view, heading):
    """Open a group of inputs by keyboard."""
    fold = view.get_by_role("button", name=heading, exact=True)
    assert fold.get_attribute("aria-expanded") == "false"
    fold.press("Enter")
    settles(view, lambda: fold.get_attribute("aria-expanded"), "true", heading)


def shows(view, result):
    """Picture, checks and order list are those of this assessment."""
    settles(view, lambda: view.evaluate(WORDS), words_of(result, view.evaluate(STAGE)), "picture")
    open_tab(view, "Checks", "Checks")
    settles(view, lambda: checks_shown(view), checks_of(result), "checks")
    open_tab(view, "Order", "Material takeoff")
    settles(view, lambda: order_shown(view), order_of(result), "takeoff")
    open_tab(view, "Drawing")
    settles(view, lambda: view.evaluate(WORDS), words_of(result, view.evaluate(STAGE)), "picture")


def moved(design, key, value):
    """The design after a move: a signed value is a difference."""
    if not re.match(r"[+-]", value):
        return change(design, {key: value})
    group, name = key.split(".")
    now = getattr(getattr(design, group), name)
    if isinstance(now, int):
        return change(design, {key: now + int(value)})
    return change(design, {key: f"{now / INCH + float(value.split()[0]):g} in"})


def test_three_sliders_move_picture_checks_and_takeoff(boathouse, tmp_path):
    """Opened from a copy, so that nothing is saved into the repository."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip(
            "no Chromium on this machine: the browser test is left out (Debian: apt-get install"
            " chromium)"
        )
    root = tmp_path.resolve()
    shutil.copytree(ROOT / "data", root / "data")
    shutil.copytree(ROOT / "notebooks", root / "notebooks", ignore=shutil.ignore_patterns(".*"))
    with server("lab", root / "notebooks" / "three-books.ipynb", root) as address, page() as view:
        view.goto(address)
        view.locator(".fp-sheet").first.wait_for(timeout=120_000)  # nobody pressed run
        assert view.locator(".jp-Notebook .cm-content:visible").count() == 0, "code in the way"
        assert min(view.evaluate(INKED)) > 20, "blank"
        cells = view.locator(".jp-Notebook .jp-Cell").count()
        design, result = boathouse, assess(boathouse)
        shows(view, result)
        for label, key, role, keys, value in MOVES:
            handle = view.get_by_role("slider", name=label, exact=True)
            assert view.get_by_role(role, name=label, exact=True).count() == 1, (
                f"the box of {label} has no name"
            )
            handle.focus()
            for pressed in keys:
                handle.press(pressed)
            before, design = result, moved(design, key, value)
            result = assess(design)
            size = view.evaluate(STAGE)
            assert words_of(result, size) != words_of(before, size), key
            assert checks_of(result) != checks_of(before) and order_of(result) != order_of(
                before
            ), key
            shows(view, result)
            for letter in "mydd0bx":  # a notebook's own commands, were they let through
                handle.press(letter)
            assert view.locator(".jp-Notebook .jp-Cell").count() == cells, (
                "a letter reached the notebook"
            )
            assert handle.is_visible(), "a letter reached the notebook"
        open_tab(view, "All inputs")
        unfold(view, "Fire")
        view.get_by_role("textbox", name="Burn rate", exact=True).wait_for(
            timeout=30_000
        )  # controls are made when a group is first opened
        view.keyboard.press("Tab")
        nameless = view.evaluate(NAMELESS)
        assert view.evaluate(FOCUSED), "the keyboard does not reach into an opened group"
        assert nameless == [], "controls without a name"
        open_tab(view, "Checks", "Checks")
        wide = view.viewport_size
        for across in (768, wide["width"]):
            view.set_viewport_size({"width": across, "height": wide["height"]})
            settles(view, lambda: view.evaluate(UNSEEN), True, "headings over each finding")
        box = view.get_by_role("textbox", name="Opening width", exact=True)
        box.fill("4 bananas")
        box.press("Enter")
        trouble = view.locator(".fp-wrong .fp-why")
        trouble.wait_for(timeout=30_000)
        assert "Opening width" in trouble.text_content() and "bananas" in trouble.text_content()
        shows(view, result)  # the last good one stands
        box.fill("44 in")
        box.press("Enter")
        shows(view, assess(change(design, {"opening.width": "44 in"})))
        assert view.locator(".fp-wrong").count() == 0
        view.get_by_role("combobox", name="Units", exact=True).select_option(label="Millimeters")
        box = view.get_by_role("textbox", name="Opening width", exact=True)
        view.locator('input[type=range][aria-label="Opening width"][max="2430"]').wait_for()
        for pressed, last in (("End", "2430 mm"), ("Home", "460 mm"), ("ArrowRight", "470 mm")):
            view.get_by_role("slider", name="Opening width", exact=True).press(pressed)
            settles(view, box.input_value, last, f"box after {pressed}")


# -- the view that turns ----------------------------------------------------------------------------
INK = """(canvas) => {
  const data = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data, seen = new Set();
  for (let k = 0; k < data.length; k += 4) seen.add(data[k] << 16 | data[k + 1] << 8 | data[k + 2]);
  return seen.size;
}"""
NOTEBOOK = [
    (
        "from fireplace_calc import Design, change\nfrom fireplace_calc.panels.picture.turning"
        " import Turning\nimport ipywidgets as w\nview = Turning(Design())\nwider ="
        " w.Button(description='Another design')\nwider.on_click(lambda _:"
        " view.put(change(Design(), {'opening.width': '60 in', 'name': 'A wide"
        " one'})))\nw.VBox([wider, view])"
    ),
]


def write_notebook(path, sources):
    """A notebook of these cells that asks to be run."""
    cells = [
        {
            "cell_type": "code",
            "execution_count": None,
            "id": f"c{k}",
            "metadata": {},
            "outputs": [],
            "source": text,
        }
        for k, text in enumerate(sources)
    ]
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    told = {"fireplace": {"run_on_open": True}, "kernelspec": kernel}
    path.write_text(
        json.dumps({"cells": cells, "metadata": told, "nbformat": 4, "nbformat_minor": 5})
    )


def test_a_reader_turns_cuts_and_changes_it(tmp_path):
    """By keyboard in JupyterLab. The picture must not be blank, each act must change it and say so."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip(
            "no Chromium on this machine: the browser test is left out (Debian: apt-get install"
            " chromium)"
        )
    root = tmp_path.resolve()
    write_notebook(root / "turn.ipynb", NOTEBOOK)
    with server("lab", root / "turn.ipynb", root) as address, page() as view:
        failed = []
        view.on("pageerror", lambda error: failed.append(str(error)))
        view.goto(address)
        # not one of the supplied notebooks: it asks
        view.get_by_role("button", name="Run all cells", exact=True).click(timeout=60_000)
        canvas = view.locator("canvas.turning-canvas")
        canvas.wait_for(timeout=60_000)
        said = view.locator(".turning-said span").first

        def on_idle(words):
            view.wait_for_function(
                "([words]) => document.querySelector('.turning-said"
                " span').textContent.includes(words)",
                arg=[words],
                timeout=30_000,
            )
            return base64.b64decode(canvas.evaluate("(c) => c.toDataURL()").split(",")[1])

        assert canvas.get_attribute(
            "role"
        ) == "img" and "A plain fireplace" in canvas.get_attribute("aria-label")
        pictures = [on_idle("30° round to the left")]
        assert canvas.evaluate(INK) > 20, "blank"
        canvas.focus()
        canvas.press("ArrowRight")
        pictures.append(on_idle("20° round to the left"))
        assert "20° round to the left" in canvas.get_attribute("aria-label")
        canvas.press("+")
        pictures.append(on_idle("times as large"))
        for letter in "mydd0bx":  # a notebook's own commands, were they let through
            canvas.press(letter)
        assert (
            view.locator(".jp-Notebook .jp-Cell").count() == len(NOTEBOOK) and canvas.is_visible()
        ), "a letter reached the notebook"
        canvas.press("3")
        pictures.append(on_idle("from straight above"))
        cut = view.get_by_role("button", name="Left half", exact=True)
        cut.press("Enter")
        pictures.append(on_idle("left half cut away"))
        assert cut.get_attribute("aria-pressed") == "true"
        view.get_by_role("button", name="Another design", exact=True).press("Enter")
        view.wait_for_function(
            "() => document.querySelector('.turning-canvas').ariaLabel.includes('A wide one')",
            timeout=30_000,
        )
        view.wait_for_timeout(400)
        pictures.append(on_idle("left half cut away"))  # the reader's place is kept
        assert len(set(pictures)) == len(pictures), "an act changed nothing"
        names = view.evaluate(
            "() => [...document.querySelectorAll('.turning button')].map((b) => b.ariaLabel ||"
            " b.textContent)"
        )
        assert len(set(names)) == len(names) and all(names)
        assert said.text_content().startswith("The fireplace") and failed == []


# -- a set built on the screen ----------------------------------------------------------------------
STEPS = [
    "from fireplace_calc import Design, change\n"
    "from fireplace_calc.panels.step_by_step import StepByStep\n"
    "StepByStep(change(Design(), {'pieces.set': 'small'}))",
]
MARKED = """(canvas) => {
  const { width, height } = canvas;
  const data = canvas.getContext('2d').getImageData(0, 0, width, height).data;
  let dots = 0;
  for (let k = 0; k < data.length; k += 4) dots += data[k] - data[k + 2] > 60;
  return dots;
}"""


def test_a_set_is_built_piece_by_piece_and_a_piece_is_picked(tmp_path):
    """By keyboard and by mouse in JupyterLab. Every step is another picture with something marked
    in it; a picked piece is told with its mark, name and weight; geometry comes over once.
    """
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip("no Chromium on this machine (Debian: apt-get install chromium)")
    root = tmp_path.resolve()
    write_notebook(root / "steps.ipynb", STEPS)
    with server("lab", root / "steps.ipynb", root) as address, page() as view:
        failed, large = [], []
        view.on("pageerror", lambda error: failed.append(str(error)))
        view.on(
            "websocket",
            lambda socket: socket.on(
                "framereceived",
                lambda frame: large.append(frame) if GEOMETRY in data_of(frame) else None,
            ),
        )
        view.goto(address)
        view.get_by_role("button", name="Run all cells", exact=True).click(timeout=60_000)
        canvas = view.locator("canvas.turning-canvas")
        canvas.wait_for(timeout=60_000)
        said = view.locator(".turning-said span").first
        slider = view.get_by_role("slider").first

        def painted(step):
            view.wait_for_function(
                "([n]) => document.querySelector('.turning-canvas').dataset.step === String(n)",
                arg=[step],
                timeout=30_000,
            )
            view.wait_for_timeout(300)  # the fine picture follows
            return base64.b64decode(canvas.evaluate("(c) => c.toDataURL()").split(",")[1])

        pictures, marked = [painted(0)], [canvas.evaluate(MARKED)]
        assert large, "the geometry came over"
        large.clear()
        slider.focus()
        for step in range(1, 13):
            slider.press("ArrowRight")
            pictures.append(painted(step))
            marked.append(canvas.evaluate(MARKED))
        assert len(set(pictures)) == len(pictures), "a step that changes nothing"
        assert marked[0] == 0 and min(marked[1:]) > 50, "what is new is marked"
        assert "after step 12" in said.text_content()
        assert large == [], "the geometry was sent again"
        canvas.focus()
        told = []
        for letter in "nnnp":
            canvas.press(letter)
            view.wait_for_timeout(300)
            told.append(said.text_content().split(":")[0])
        assert told[0] != told[1] != told[2] and told[3] == told[1], told
        canvas.press("Escape")
        view.wait_for_timeout(300)
        assert said.text_content().startswith("The fireplace")
        box = canvas.bounding_box()
        for share in (0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7):  # down the middle to what stands there
            view.mouse.click(box["x"] + box["width"] / 2, box["y"] + share * box["height"])
            view.wait_for_timeout(250)
            if not said.text_content().startswith("The fireplace"):
                break
        assert re.match(r"\w+\.\d+, [a-z0-9, ]+: \d+ lb \(\d+ kg\)\. ", said.text_content())
        chosen = view.get_by_label("Piece", exact=True)
        assert chosen.input_value() == said.text_content().split(",")[0]
        chosen.select_option("F8.1")
        view.wait_for_timeout(300)
        assert "set in step" in said.text_content(), "it does not stand yet"
        assert failed == []


GEOMETRY = b'"forms"'
"""What a message has in it that brings the geometry of a set."""


def data_of(frame):
    """A frame of the socket as bytes."""
    return frame if isinstance(frame, bytes) else frame.encode()
