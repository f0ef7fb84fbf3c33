"""What comes of an entry stays as it was, of invented designs drawn from a seed.

Nothing here says that it is right; that is asked in ``test_consistency``, ``test_start_mine`` and their neighbors, on both sides of
each limit. How it is changed on purpose: ``tests/as_entered.py``.
"""

import pytest
from as_built import FIGURES
from as_entered import CASES, figures_of, kept
from held_figures import otherwise

SHARE = 1e-10
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_comes_of_an_entry_stays_as_it_was(case):
    found, was = (
        figures_of(case),
        {what: row for (name, what), row in kept().items() if name == case},
    )
    assert set(found) == set(was)
    other = otherwise(found, was, FIGURES, lambda row: SHARE * max(row[-1], 1.0))
    assert not other, f"{case}: {other}; see tests/as_entered.py"
