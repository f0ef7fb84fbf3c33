"""What several tests share."""

from pathlib import Path

import pytest

from fireplace_calc import load

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture(scope="session")
def boathouse():
    """The example design."""
    return load(ROOT / "data" / "designs" / "boathouse.toml")
