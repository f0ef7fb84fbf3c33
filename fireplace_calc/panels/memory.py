"""Keeping the collector of garbage from stopping a moving hand."""

from __future__ import annotations

import gc


def settle_memory() -> None:
    """Set what is loaded by now apart, so that no full collection looks through it again: that takes 60 ms and more.

    Whatever was set apart before and is held by nobody any more, such as a panel that was shown again, is freed first.
    """
    gc.unfreeze()
    gc.collect()
    gc.freeze()
