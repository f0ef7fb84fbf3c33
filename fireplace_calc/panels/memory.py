"""Keeping collector and threads from stopping a moving hand."""

from __future__ import annotations

import gc
import sys

TURN = 0.0005
"""How long one thread of the kernel may go on while another waits: the one that sends pictures
waits for ours. [s]
"""


def settle_memory() -> None:
    """Set what is loaded by now apart, so that no full collection looks through it again: that
    takes 60 ms and more.

    Whatever was set apart before and is held by nobody any more, such as a panel that was shown
    again, is freed first.
    """
    gc.unfreeze()
    gc.collect()
    gc.freeze()


def send_promptly() -> None:
    """Let the thread that sends have its turn sooner than Python's 5 ms."""
    sys.setswitchinterval(min(sys.getswitchinterval(), TURN))
