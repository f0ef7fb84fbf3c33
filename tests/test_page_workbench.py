"""The workbench in a real browser, from a desk's screen to a phone: everything in sight on opening,
every tab without a fault of axe, nothing for a finger smaller than 44 px, letters that can be read.
"""

import os
import shutil

import pytest
from axe_playwright_python.sync_playwright import Axe
from bench.browser import ROOT, chromium, page, server
from test_browser import REQUIRED, settles, write_notebook

from fireplace_calc.panels.folds.contents import TABS

SIZES = [(1280, 800), (1440, 900), (1920, 1080), (1024, 768), (768, 1024), (390, 844)]
"""Desks, a tablet both ways, a phone. [px]"""
SMALL = """() => [...document.querySelectorAll('.fp-bench :is(button, select, input, a[href], [role=tab], summary)')]
  .filter((e) => e.offsetParent && !e.closest('[hidden]') && e.type !== 'hidden')
  .map((e) => [e.getBoundingClientRect(), e])
  .filter(([box, e]) => box.width && (box.height < 43.5 || box.width < 43.5) && !inLabel(e, box))
  .map(([box, e]) => `${Math.round(box.width)}x${Math.round(box.height)} ${e.outerHTML.slice(0, 110)}`)"""
HELP = """() => { window.inLabel = (e, box) => { // a tick may be small where its label is not
  const label = e.closest('label') || (e.labels && e.labels[0]);
  if (!label) return false;
  const around = label.getBoundingClientRect();
  return around.height >= 43.5 && around.width >= 43.5;
}; }"""
SHARES = """() => {
  const area = (box) => box.width * box.height, at = (name) => document.querySelector(name).getBoundingClientRect();
  const bench = at('.fp-bench'), stage = at('.fp-stage'), strip = at('.fp-strip'), high = window.innerHeight;
  return { stage: area(stage) / area(bench), below: Math.max(stage.bottom, strip.bottom, at('.fp-controls').bottom) - high, across: document.documentElement.scrollWidth - window.innerWidth };
}"""
LETTERS = (
    """() => [...document.querySelectorAll('.fp-sheet')].map((c) => Number(c.dataset.letter))"""
)
NOTEBOOK = [
    "from fireplace_calc import example, load\nfrom fireplace_calc.panels import panel\n"
    "panel(load(example('boathouse')), jobs='kept')"
]


def faults(view) -> list:
    """What axe finds in the workbench, each with where."""
    found = Axe().run(view, context=".fp-bench").response["violations"]
    return [(v["id"], [node["html"][:140] for node in v["nodes"]][:3]) for v in found]


@pytest.fixture(scope="module")
def bench_page(tmp_path_factory):
    """The workbench as a page, in one browser for every size."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", "no Chromium, but it must be there"
        pytest.skip("no Chromium on this machine (Debian: apt-get install chromium)")
    root = tmp_path_factory.mktemp("bench").resolve()
    shutil.copytree(ROOT / "data", root / "data")
    write_notebook(root / "bench.ipynb", NOTEBOOK)
    with server("voila", root / "bench.ipynb", root) as address, page() as view:
        view.goto(address, timeout=120_000)
        view.locator(".fp-sheet").first.wait_for(timeout=120_000)
        view.evaluate(HELP)
        yield view


def sized(view, wide, high):
    view.set_viewport_size({"width": wide, "height": high})
    view.wait_for_timeout(900)


@pytest.mark.parametrize(("wide", "high"), SIZES)
def test_everything_is_in_sight_on_opening(bench_page, wide, high):
    sized(bench_page, wide, high)
    shares = bench_page.evaluate(SHARES)
    assert shares["below"] <= 0 and shares["across"] <= 0, shares
    if wide >= 1280:
        assert shares["stage"] >= 0.5, shares
    assert min(bench_page.evaluate(LETTERS)) >= (12 if wide > 400 else 9.5)
    assert faults(bench_page) == []
    assert bench_page.evaluate(SMALL) == []


@pytest.mark.parametrize(
    ("wide", "high"), SIZES if os.environ.get("SIZES") == "all" else SIZES[-1:]
)
def test_every_tab_is_without_fault_and_fit_for_a_finger(bench_page, wide, high):
    """A phone; at every size by hand, with ``SIZES=all``."""
    sized(bench_page, wide, high)
    wrong = {}
    for tab in [*TABS, "Drawing"]:
        bench_page.get_by_role("tab", name=tab, exact=True).first.click()
        inner = bench_page.locator(".fp-inner [role=tab]")
        bench_page.locator(".fp-grid:not(.fp-waits)").wait_for(timeout=60_000)
        for k in range(max(1, inner.count())):
            if inner.count():
                inner.nth(k).click()
                bench_page.locator(".fp-grid:not(.fp-waits)").wait_for(timeout=60_000)
            bench_page.wait_for_timeout(300)
            found = [*faults(bench_page), *bench_page.evaluate(SMALL)]
            if found:
                wrong[tab, k] = found
    settles(bench_page, lambda: bench_page.locator(".fp-open").count(), 0, "the drawing again")
    assert wrong == {}
