"""The file that turns, opened from a disk in a browser without any network: it asks for nothing,
turns by key, and switches its options.
"""

import os

import pytest
from bench.browser import FLAGS, chromium
from test_room_to_turn import OPTIONS

from fireplace_calc.exports.one_file import room_to_turn
from fireplace_calc.report.for_client.under_a_picture import option_words

pytestmark = pytest.mark.skipif(
    chromium() is None and os.environ.get("FIREPLACE_BROWSER_TEST") != "required",
    reason="no Chromium",
)
WEBGL = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist"]
EYE = "[...document.querySelector('.fs').scene.eye.stands].map((v) => v.toFixed(3)).join()"


def wait(view, expression):
    """Until it is true: asked again and again, for the page itself may evaluate no text."""
    for _ in range(600):
        if view.evaluate(f"Boolean({expression})"):
            return
        view.wait_for_timeout(100)
    pytest.fail(f"It never came: {expression}")


def test_it_turns_from_a_disk_without_a_network(tmp_path):
    from playwright.sync_api import sync_playwright

    path = tmp_path / "fireplace.html"
    path.write_text(room_to_turn(OPTIONS, poster=(90, 60)), encoding="utf-8")
    asked, wrong = [], []
    with sync_playwright() as play:
        flags = [flag for flag in FLAGS if flag != "--disable-gpu"]
        browser = play.chromium.launch(executable_path=chromium(), args=[*flags, *WEBGL])
        view = browser.new_page(viewport={"width": 700, "height": 700})
        view.context.set_offline(True)
        view.on("request", lambda request: asked.append(request.url))
        view.on("pageerror", lambda fault: wrong.append(str(fault)))
        view.goto(path.as_uri())
        wait(view, "globalThis.handedOver")
        wait(view, "document.querySelector('.fs').scene.things?.length")
        assert not view.is_visible("#still")
        before = view.evaluate(EYE)
        view.focus(".fs canvas")
        for _ in range(3):
            view.keyboard.press("ArrowLeft")
        wait(view, f"{EYE} !== {before!r}")
        wide = "document.querySelector('.fs').scene.things.find((t) => t.key === 'lintel').points.filter((v, k) => k % 3 === 0)"
        narrow = view.evaluate(f"Math.max(...{wide})")
        view.click(".options button:nth-child(2)")
        wait(view, f"Math.max(...{wide}) > {narrow} + 0.1")
        assert option_words(OPTIONS[1].result).price in view.inner_text("#words")
        assert view.get_attribute(".options button:nth-child(2)", "aria-pressed") == "true"
        browser.close()
    assert [url for url in asked if not url.startswith(("blob:", "data:"))] == [path.as_uri()]
    assert wrong == []
