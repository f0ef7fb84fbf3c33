"""What several tests share."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

from fireplace_calc import load

settings.register_profile("the same every time", derandomize=True)
if os.environ.get("CI"):
    settings.load_profile("the same every time")

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture(scope="session")
def boathouse():
    """The example design."""
    return load(ROOT / "data" / "designs" / "boathouse.toml")


@pytest.fixture
def no_full_collection(monkeypatch):
    """A new panel sweeps all memory once, which among thousands of tests takes half a second."""
    from fireplace_calc.panels import live_panel

    monkeypatch.setattr(live_panel, "settle_memory", lambda: None)


@pytest.fixture(autouse=True)
def no_fault_is_overheard(caplog):
    """A panel goes on after a fault of our own and logs it; a test that expects one clears the log."""
    yield
    faults = [r for r in caplog.get_records("call") if r.name.startswith("fireplace_calc")]
    assert not faults, faults
