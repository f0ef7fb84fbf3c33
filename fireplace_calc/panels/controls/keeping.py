"""What the customer wants to keep, shown at the controls themselves."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

KEPT = "kept"
"""Among the reader's words: names of what stays as it is."""
NOTE = "Kept as it is: no mend moves it."


def kept_inputs(words: Mapping[str, str]) -> frozenset[str]:
    """Inputs that stay as they are whatever is mended, by dotted key.

    Parameters
    ----------
    words : mapping
        Of the reader, as they are kept with the job.
    """
    named = words.get(KEPT, "")
    return _locked(named) if named else frozenset()


@lru_cache(maxsize=64)
def _locked(named: str) -> frozenset[str]:
    from fireplace_calc.explore.mending.locks import LOOKS, locked_inputs

    return locked_inputs(name for name in named.split() if name in LOOKS)
