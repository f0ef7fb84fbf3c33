"""A mason enters what he measured on a fireplace that stands, by keyboard alone, in a browser."""

import os

import pytest
from bench.browser import chromium, page, server
from test_browser import write_notebook
from test_walks import REQUIRED, Walker, faults

from fireplace_calc.survey.kept import read_survey

CELL = """from fireplace_calc.design.records import Design
from fireplace_calc.panels import panel
panel(Design(), folds=("survey", "takeoff"), keep="kept")"""
FOCUS = "() => document.activeElement.getAttribute('aria-label') || document.activeElement.id"
SMALL = """() => [...document.querySelectorAll('.survey :is(button, select, input[type=text])')]
  .filter((e) => e.offsetParent && e.getBoundingClientRect().height < 43.5)
  .map((e) => e.outerHTML)"""


def test_a_survey_is_entered_by_keyboard_alone(tmp_path):
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip("no Chromium on this machine: the browser test is left out")
    root = tmp_path.resolve()
    write_notebook(root / "own.ipynb", [CELL])
    with server("voila", root / "own.ipynb", root) as address, page() as view:
        failed = []
        view.on("pageerror", lambda error: failed.append(str(error)))
        view.goto(address, timeout=120_000)
        view.locator(".fp-bench").first.wait_for(timeout=120_000)
        Walker(view).tab("My job")
        view.locator(".survey-list li").first.wait_for(timeout=30_000)
        keys = view.keyboard
        view.get_by_label("Opening width, top").focus()  # where Tab leads to
        for text in ("39-1/2", "40", "44", "43-3/4", "29"):
            keys.type(text)
            keys.press("Enter")
        assert view.evaluate(FOCUS) == "Head, answer"
        keys.press("Shift+Enter")
        assert view.evaluate(FOCUS) == "Height before raising, reading"
        keys.press("Tab")  # cannot reach
        keys.press("Space")
        read = view.locator(".survey-found", has_text="the greatest is taken")
        read.nth(1).wait_for(timeout=30_000)
        view.get_by_label("Jamb, left").focus()
        keys.type("4000")
        keys.press("Enter")
        wrong = view.locator(".survey-wrong", has_text="workable range")
        wrong.wait_for(timeout=30_000)
        assert view.evaluate(FOCUS) == "Jamb, right"
        assert view.evaluate(SMALL) == []
        assert faults(view) == []
        view.get_by_label("Station").focus()
        keys.press("End")  # Measured beside drawn
        view.get_by_text("Measured beside drawn", exact=False).nth(1).wait_for(timeout=30_000)
        view.locator("td", has_text="as drawn").or_(
            view.locator("td", has_text="more")
        ).first.wait_for(timeout=30_000)
        assert faults(view) == []
        view.get_by_label("Sketch").focus()
        keys.type("A")
        view.locator(".survey canvas[aria-label*='1b: ']").wait_for(timeout=30_000)
        assert faults(view) == []
        if os.environ.get("SURVEY_PICTURE"):
            view.wait_for_timeout(1000)
            view.screenshot(path=os.environ["SURVEY_PICTURE"])
        assert failed == []
    kept = read_survey((root / "kept" / "survey.toml").read_text())
    assert kept.told["opening width, bottom"] == "40 in"
    assert kept.told["height before raising"] == "cannot reach"
    assert kept.told["jamb, left"] == "4000 in"  # kept as typed, and told where it stands
