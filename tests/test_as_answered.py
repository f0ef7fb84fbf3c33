"""What the public functions answer stays as it was, of invented designs drawn from a seed and of numbers by lot.

Nothing here says that it is right; that is asked in the tests of each one's own kind. How it is changed on purpose:
``tests/as_answered.py``.
"""

import pytest
from as_answered import asked, figures_of, kept
from as_built import FIGURES
from held_figures import otherwise

SHARE = 1e-9
"""Of all that is summed, that one machine may find otherwise than another. [-]"""
ROOMS = sorted({name.partition(".")[0] for name in asked()})


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_answers_as_it_did(room):
    names = [name for name in asked() if name.partition(".")[0] == room]
    found = {name: row for name in names if (row := figures_of(name)) is not None}
    was = {name: row for name, row in kept().items() if name.partition(".")[0] == room}
    assert set(found) == set(was), "see tests/as_answered.py"
    other = otherwise(found, was, FIGURES, lambda row: SHARE * max(row[-1], 1.0))
    assert not other, f"{other}; see tests/as_answered.py"


def test_nothing_is_held_that_is_no_longer_there():
    assert {name.partition(".")[0] for name in kept()} == set(ROOMS)
