"""What a formula takes that works on one number or on many at once: names for type checkers.

The names are plain text when the package runs, so that numpy sleeps for whoever never asks for an
array.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Array: TypeAlias = "NDArray[np.float64]"
"""Many numbers; its shape and unit stand beside each field and parameter."""
IntArray: TypeAlias = "NDArray[np.int_]"
"""Many whole numbers: counts, or rows of another array."""
BoolArray: TypeAlias = "NDArray[np.bool_]"
"""Many yes or no."""
Number: TypeAlias = "float | NDArray[np.float64]"
"""One number or many; those that meet in one formula broadcast with one another."""
