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
