"""What stands in a room, and what a still shows, stay as they were, of invented designs drawn from a seed.

Nothing here says that it is right; that is asked in ``test_scene_room``, ``test_still`` and their neighbors. How it is
changed on purpose: ``tests/as_seen.py``.
"""

import numpy as np
import pytest
from as_built import FIGURES
from as_seen import CASES, STILLS, figures_of, kept

SHARE = 1e-9
"""Of all that is summed, that one machine may find otherwise than another. [-]"""
COLOR = 1.0
"""By which a ninth of a picture may be another, of 255. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_is_seen_stays_as_it_was(case):
    found = figures_of(case)
    assert set(found) == {what for name, what in kept() if name == case}
    other = {}
    for what, row in found.items():
        was = kept()[case, what]
        if np.abs(row - was).max() > (COLOR if case in STILLS else SHARE * max(was[-1], 1.0)):
            other[what] = dict(zip(FIGURES, row - was, strict=True))
    assert not other, f"{case}: {other}; see tests/as_seen.py"
