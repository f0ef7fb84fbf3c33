"""What is told beside checks and pictures stays as it was: of things that are picked, stops of sliders, weather, surveys, poles,
files that are read back, and lessons that lack something.

Nothing here says that it is right; that is asked in the tests of its own kind (``test_scene_masonry``, ``test_proportion``,
``test_sweep``, ``test_survey``, ``test_pieces_as_built``, ``test_course``, ...). How it is changed on purpose:
``tests/as_told.py``.
"""

import numpy as np
import pytest
from as_told import CASES, figures_of, kept

SHARE = 1e-10
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_is_told_stays_as_it_was(case):
    found, was = figures_of(case), kept()[case]
    assert np.abs(found - was).max() <= SHARE * max(was[-1], 1.0), (
        f"{found - was}; see tests/as_told.py"
    )


def test_every_case_of_the_file_is_told():
    assert set(kept()) == set(CASES)
