"""What comes of an entry stays as it was, of invented designs drawn from a seed.

Nothing here says that it is right; that is asked in ``test_consistency``, ``test_start_mine`` and their neighbors, on both sides of
each limit. How it is changed on purpose: ``tests/as_entered.py``.
"""

import numpy as np
import pytest
from as_built import FIGURES
from as_entered import CASES, figures_of, kept

SHARE = 1e-10
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_comes_of_an_entry_stays_as_it_was(case):
    found = figures_of(case)
    assert set(found) == {what for name, what in kept() if name == case}
    other = {
        what: dict(zip(FIGURES, row - kept()[case, what], strict=True))
        for what, row in found.items()
        if np.abs(row - kept()[case, what]).max() > SHARE * max(kept()[case, what][-1], 1.0)
    }
    assert not other, f"{case}: {other}; see tests/as_entered.py"
