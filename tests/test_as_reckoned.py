"""What is reckoned of a design stays as it was: draft, first hour, odds, structure, order, days of work.

Nothing here says that it is right; that is asked in ``test_draft_examples``, ``test_structure_examples``, ``test_pins_order``
and their neighbors. How a formula is changed on purpose: ``tests/as_reckoned.py``.
"""

import numpy as np
import pytest
from as_reckoned import CASES, figures_of, kept

CLOSE = 1e-5
"""Of the sums, what a root found a little otherwise on another machine may move. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_is_reckoned_stays_as_it_was(case):
    found, wanted = figures_of(case), kept()[case]
    off = found - wanted
    assert np.abs(off).max() <= CLOSE, f"{case}: off by {off}; see tests/as_reckoned.py"


def test_every_case_of_the_file_is_reckoned():
    assert set(kept()) == set(CASES)
