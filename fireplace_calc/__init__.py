"""Design of an open masonry fireplace and its chimney: drawings, code checks and takeoff from one
record.
"""

from fireplace_calc.assessment import Assessment, assess
from fireplace_calc.base.resources import example, version
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load, save
from fireplace_calc.rules import PACKS

__all__ = [
    "PACKS",
    "Assessment",
    "Design",
    "InputError",
    "assess",
    "change",
    "example",
    "load",
    "save",
]


def __getattr__(name: str) -> str:
    """``__version__``, read when it is asked for."""
    if name == "__version__":
        return version()
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
