"""Notebooks are tests through nbval, which is slow to import: it is left out where no notebook is
asked for.
"""

import sys

import pytest

ASKED = " ".join(sys.argv[1:])
"""A worker has the arguments of the process that started it."""

# A grammar of web addresses that jsonschema can do without, and nothing here is checked by.
sys.modules.setdefault("rfc3987_syntax", None)  # type: ignore[arg-type]

pytest_plugins = (
    ["nbval.plugin"] if ".ipynb" in ASKED or not ("-m unit" in ASKED or ".py" in ASKED) else []
)


def pytest_configure(config: pytest.Config) -> None:
    """Notebooks are collected wherever nbval is loaded."""
    if config.pluginmanager.has_plugin("nbval.plugin"):
        config.option.nbval = True
