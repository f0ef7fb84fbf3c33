"""What every rule of every book says stays as it was, of invented designs drawn from a seed.

Nothing here says that it is right; that is asked in ``test_rules_limits`` and its neighbors, on both sides of
each limit. How a rule is changed on purpose: ``tests/as_judged.py``.
"""

import numpy as np
import pytest
from as_built import FIGURES, figures
from as_judged import CASES, figures_of, kept
from held_figures import otherwise

SHARE = 1e-10
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_what_is_judged_stays_as_it_was(case):
    found, was = (
        figures_of(case),
        {what: row for (name, what), row in kept().items() if name == case},
    )
    assert set(found) == set(was)
    other = otherwise(found, was, FIGURES, lambda row: SHARE * max(row[-1], 1.0))
    assert not other, f"{case}: {other}; see tests/as_judged.py"


def test_another_verdict_or_figure_or_word_is_seen():
    told = [("meets", 36.0, 30.0, 6.0, ""), ("falls short", 20.0, 30.0, -10.0, "Lower it.")]
    first = figures(told)
    for place, value in ((0, "falls short"), (1, 36.001), (2, None), (4, "Raise it.")):
        changed = [tuple(value if n == place else v for n, v in enumerate(told[0])), told[1]]
        assert (np.abs(figures(changed) - first) > 1e-6).any()
