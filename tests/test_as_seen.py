"""What stands in a room, and what a still shows, stay as they were, of invented designs drawn from a seed.

Nothing here says that it is right; that is asked in ``test_scene_room``, ``test_still`` and their neighbors. How it is
changed on purpose: ``tests/as_seen.py``.
"""

import pytest
from as_built import FIGURES
from as_seen import CASES, STILLS, figures_of, kept
from held_figures import otherwise

SHARE = 1e-9
"""Of all that is summed, that one machine may find otherwise than another. [-]"""
COLOR = 1.0
"""By which a ninth of a picture may be another, of 255. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_is_seen_stays_as_it_was(case):
    found, was = (
        figures_of(case),
        {what: row for (name, what), row in kept().items() if name == case},
    )
    assert set(found) == set(was)
    other = otherwise(
        found, was, FIGURES, lambda row: COLOR if case in STILLS else SHARE * max(row[-1], 1.0)
    )
    assert not other, f"{case}: {other}; see tests/as_seen.py"
