"""What several tests share."""

import gc
import os
import sys
from contextlib import suppress
from importlib import import_module
from pathlib import Path

import pytest
from hypothesis import is_hypothesis_test, settings

from fireplace_calc import load

settings.register_profile("the same every time", derandomize=True)
if os.environ.get("CI"):
    settings.load_profile("the same every time")

ROOT = Path(__file__).resolve().parent.parent
BROWSER = ("test_browser", "test_hostile", "test_page", "test_walk")
"""Files of these names start servers, and browsers that wait for them: begun first, and no two at a time."""
LAST = ("test_hostile", "test_walks")
"""But these come last of all, when the other processes are done and would wait for the browsers."""


MADE = (
    "as_answered", "as_built", "as_drawn", "as_judged", "as_pressed", "as_printed", "as_reckoned", "as_shown", "as_told", "class", "cli", "controls", "cover", "cutting", "details", "drawing_air", "drill", "dxf",
    "exports", "fault_hunt", "field_ranges", "heat_fold", "heat_paper", "inspector", "job",
    "mending", "onesheet", "options", "panels", "papers", "pictures", "pieces_bare",
    "pieces_everywhere", "plan_sheets", "remedies", "rods", "room_to_turn", "room_view",
    "scene", "session", "set_out", "set_pictures", "setting_cards", "start_mine",
    "step_by_step", "still", "survey_fold", "survey_sheets", "sweep", "turning", "version",
    "visible", "whole_files", "work_chart", "writing", "yard",
)  # fmt: skip
"""Files of these names make whole sheets, files, panels or scenes, or search many designs: no unit
tests, but run with every change.
"""
EVERY = bool(os.environ.get("WHOLE"))
"""Whether cases marked ``whole`` run that have a few of the same test beside them."""


EXAMPLES = float(os.environ.get("EXAMPLES", "0.5"))
"""Share of the examples that a property test names: half of them where every change waits for the
answer, ``EXAMPLES=1`` or more by hand. [-]
"""
UNIT = 0.125
"""Share that ``pytest -m unit`` asks for. [-]"""


@pytest.hookimpl(tryfirst=True)
def pytest_collection(session):
    """Processes that begin together import each another share of the tests first: what one has
    made ready for a fresh tree the others find, where all would make all of it ready at once.
    """
    worker = getattr(session.config, "workerinput", None)
    if worker is None or not any(Path(arg).is_dir() for arg in session.config.args):
        return
    number, count = int(worker["workerid"].removeprefix("gw")), worker["workercount"]
    files = sorted(ROOT.glob("tests/test_*.py"), key=lambda path: -path.stat().st_size)
    for path in files[number::count]:
        with suppress(Exception, pytest.skip.Exception):  # told where the file is collected
            import_module(path.stem)


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config, items):
    for item in items:
        if item.path.name.startswith(BROWSER):
            item.add_marker("browser")
        elif item.path.name.removeprefix("test_").startswith(MADE):
            item.add_marker("made")
        elif item.path.suffix == ".py" and not marked(item, "install", "whole"):
            item.add_marker("unit")
    named = any("[" in arg for arg in config.args)
    if not EVERY and not named and "whole" not in config.option.markexpr:
        by_hand(config, items)
    items.sort(key=lambda item: (item.path.stem in LAST, not of_browsers(item.path)))
    share = UNIT if config.option.markexpr == "unit" else EXAMPLES
    tests = {getattr(item, "obj", None) for item in items}
    for test in filter(is_hypothesis_test, tests):
        asked = test._hypothesis_internal_use_settings
        tried = max(int(asked.max_examples * share), 1)
        test._hypothesis_internal_use_settings = settings(asked, max_examples=tried)


def of_browsers(path):
    """Whether a file waits its turn behind the other browsers."""
    return path.name.startswith(BROWSER) and path.stem not in LAST


def marked(item, *names):
    """Whether a test has one of these marks."""
    return not {mark.name for mark in item.iter_markers()}.isdisjoint(names)


def by_hand(config, items):
    """Leaves out the cases marked ``whole`` of tests that try a few others with every change."""
    tried = {item.nodeid.partition("[")[0] for item in items if not marked(item, "whole")}
    left = [
        item for item in items if marked(item, "whole") and item.nodeid.partition("[")[0] in tried
    ]
    if left:
        config.hook.pytest_deselected(items=left)
        out = set(map(id, left))
        items[:] = [item for item in items if id(item) not in out]


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers(config):
    """A file or two are quicker in one process than in several that each have to start; all of them
    take a process a core, and one for the browsers, which mostly wait.
    """
    asked = [config.invocation_params.dir / arg.partition("::")[0] for arg in config.args]
    if all(path.is_file() for path in asked):
        return 0
    return len(os.sched_getaffinity(0)) + (config.option.markexpr != "unit")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config, log):
    """A file stays in one process, and so do all browsers."""
    from xdist.scheduler import LoadFileScheduling

    class OneBrowser(LoadFileScheduling):
        def _split_scope(self, nodeid):
            scope = super()._split_scope(nodeid)
            return "browser" if of_browsers(Path(scope)) else scope

    return OneBrowser(config, log) if config.option.dist == "loadfile" else None


@pytest.fixture(scope="session")
def boathouse():
    """The example design."""
    return load(ROOT / "data" / "designs" / "boathouse-laid.toml")


@pytest.fixture(autouse=True)
def no_full_collection(monkeypatch):
    """A new panel sweeps all memory once, which among thousands of tests takes half a second."""
    if live_panel := sys.modules.get("fireplace_calc.panels.live_panel"):
        monkeypatch.setattr(live_panel, "settle_memory", lambda: None)


@pytest.fixture(autouse=True)
def no_fault_is_overheard(caplog):
    """A panel goes on after a fault of our own and logs it; a test that expects one clears the log."""
    yield
    faults = [r for r in caplog.get_records("call") if r.name.startswith("fireplace_calc")]
    assert not faults, faults


@pytest.hookimpl(trylast=True)
def pytest_collection_finish():
    """Modules and tests stay to the end: the collector need not walk them again and again."""
    gc.freeze()


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish():
    """Nor at the end, when pytest sweeps all memory several times."""
    gc.freeze()
