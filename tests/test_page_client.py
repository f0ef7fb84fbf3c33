"""The client's page and the lit scene in a real browser: a desk, a tablet, a phone; by keyboard
alone, without a fault of axe, nothing for a finger under 44 px.
"""

import os
import shutil

import pytest
from axe_playwright_python.sync_playwright import Axe
from bench.browser import ROOT, chromium, page, server
from test_browser import REQUIRED, settles, write_notebook
from test_page_workbench import HELP, SMALL

SIZES = [(1280, 800), (1024, 768), (390, 844)]
"""A small desk, a tablet by touch, a phone. [px]"""
NOTEBOOK = [
    "from fireplace_calc import example, load\nfrom fireplace_calc.panels import client\n"
    "client(load(example('boathouse-laid')))"
]
TINY = SMALL.replace(".fp-bench", ".fc")
INSIDE = """() => [...document.querySelectorAll('.fc canvas, .fc-line, .fc-bar .fp-field:first-child')]
  .map((e) => e.getBoundingClientRect()).map((b) => [b.left, b.top, b.right - innerWidth, b.bottom - innerHeight, b.width, b.height])"""
SAID = "() => document.querySelector('.fc canvas').getAttribute('aria-label') || ''"


def faults(view):
    found = Axe().run(view, context=".fc").response["violations"]
    return [(v["id"], [node["html"][:140] for node in v["nodes"]][:3]) for v in found]


@pytest.fixture(scope="module")
def client_page(tmp_path_factory):
    """The page, in one browser for every size."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", "no Chromium, but it must be there"
        pytest.skip("no Chromium on this machine (Debian: apt-get install chromium)")
    root = tmp_path_factory.mktemp("client").resolve()
    shutil.copytree(ROOT / "data", root / "data")
    write_notebook(root / "client.ipynb", NOTEBOOK)
    with server("voila", root / "client.ipynb", root) as address, page() as view:
        view.goto(address, timeout=120_000)
        view.locator(".fc canvas").wait_for(timeout=120_000)
        view.locator(".fc-bar .fp-field").first.wait_for(timeout=60_000)
        view.evaluate(HELP)
        yield view


@pytest.mark.parametrize(("wide", "high"), SIZES)
def test_nothing_but_the_scene_and_what_is_decided(client_page, wide, high):
    client_page.set_viewport_size({"width": wide, "height": high})
    client_page.wait_for_timeout(900)
    if folder := os.environ.get("SHOTS"):
        client_page.screenshot(path=f"{folder}/client-{wide}.png")
    canvas, line, field = client_page.evaluate(INSIDE)
    for box in (canvas, line):
        assert box[0] >= 0 and box[1] >= 0 and box[2] <= 0 and box[3] <= 0, box
    assert field[0] >= 0 and field[1] >= 0 and field[1] + 44 < high
    assert canvas[4] * canvas[5] >= (0.45 if wide > 820 else 0.22) * wide * high
    assert client_page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    assert faults(client_page) == []
    assert client_page.evaluate(TINY) == []


def test_by_keyboard_alone(client_page):
    """From the top of the page to the eyes, round the fire, through its parts, to a slider."""
    view = client_page
    view.set_viewport_size({"width": 1280, "height": 800})
    view.locator(".fc-scene button", has_text="Seated").focus()
    view.keyboard.press("Enter")
    settles(view, lambda: "seated" in view.evaluate(SAID), True, "the eye is spoken of")
    view.locator(".fc canvas").focus()
    view.keyboard.press("ArrowLeft")
    view.keyboard.press("ArrowLeft")
    settles(view, lambda: "round to the" in view.evaluate(SAID), True, "turned")
    before = view.evaluate(SAID)
    view.keyboard.press("-")
    view.keyboard.press("-")
    settles(view, lambda: view.evaluate(SAID) != before, True, "farther away")
    view.keyboard.press("]")
    told = view.locator(".fc-scene .fs-said")
    settles(view, lambda: "lb" in told.inner_text(), True, "a part is told of")
    first = told.inner_text()
    view.keyboard.press("]")
    settles(view, lambda: "lb" in told.inner_text() != first, True, "the next one")
    view.keyboard.press("Escape")
    settles(view, lambda: told.is_hidden(), True, "none picked")
    slider = view.locator(".fc-bar input[type=range]").first
    slider.focus()
    opening = view.evaluate(SAID).split("The opening is ")[1]
    view.keyboard.press("ArrowRight")
    settles(
        view, lambda: view.evaluate(SAID).split("The opening is ")[1] != opening, True, "followed"
    )


def test_a_slider_stops_at_courses(client_page):
    view = client_page
    view.get_by_role("button", name="Whole courses").click()
    slider = view.get_by_label("Height", exact=False).locator("css=[type=range]").first
    slider = view.locator(".fc-bar .fp-field").nth(1).locator("input[type=range]")
    slider.focus()
    view.keyboard.press("ArrowRight")
    why = view.locator(".fc-bar .fp-field").nth(1).locator(".fp-why")
    settles(view, lambda: "courses" in why.inner_text(), True, "why it stops")
    view.get_by_role("button", name="Whole courses").click()


def swiped(view, dx, dy):
    """One finger over the middle of the picture."""
    box = view.locator(".fc canvas").bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    finger = view.context.new_cdp_session(view)
    finger.send("Emulation.setTouchEmulationEnabled", {"enabled": True})
    touch = "Input.dispatchTouchEvent"
    finger.send(touch, {"type": "touchStart", "touchPoints": [{"x": x, "y": y}]})
    for k in range(1, 7):
        at = {"x": x + dx * k / 6, "y": y + dy * k / 6}
        finger.send(touch, {"type": "touchMove", "touchPoints": [at]})
    finger.send(touch, {"type": "touchEnd", "touchPoints": []})
    finger.send("Emulation.setTouchEmulationEnabled", {"enabled": False})
    finger.detach()


def test_one_finger_turns_and_leaves_the_page_its_scrolling(client_page):
    view = client_page
    view.set_viewport_size({"width": 1024, "height": 768})
    view.wait_for_timeout(500)
    view.locator(".fc-scene button", has_text="Standing").click()
    settles(view, lambda: "seen standing" in view.evaluate(SAID).lower(), True, "standing")
    assert view.evaluate("getComputedStyle(document.querySelector('.fc canvas')).touchAction") == (
        "pan-y"
    )
    swiped(view, 160, 0)
    settles(view, lambda: "round to the" in view.evaluate(SAID), True, "turned by a finger")


def test_less_motion(client_page):
    """Whoever asks for less motion is offered no fire that burns."""
    view = client_page
    view.emulate_media(reduced_motion="reduce")
    settles(
        view,
        lambda: view.locator(".fc-scene button", has_text="Burns").is_hidden(),
        True,
        "no fire to light",
    )
    assert "the fire stands still" in view.evaluate(SAID)
    view.emulate_media(reduced_motion="no-preference")
