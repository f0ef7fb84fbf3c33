"""What a formula takes that works on one number or on many at once.

numpy stands here only as text that a type checker reads, so that it sleeps for whoever never asks
for an array. ``Union`` keeps the text a type: ``Number | None`` works when the package runs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeAlias, Union

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Array: TypeAlias = Union["NDArray[np.float64]"]
"""Many numbers; shape and unit stand beside each field and parameter."""
IntArray: TypeAlias = Union["NDArray[np.int_]"]
"""Many whole numbers: counts, or rows of another array."""
BoolArray: TypeAlias = Union["NDArray[np.bool_]"]
"""Many yes or no."""
Number: TypeAlias = Union[float, "NDArray[np.float64]"]
"""One number or many; those that meet in one formula broadcast with one another."""
