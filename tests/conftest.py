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
