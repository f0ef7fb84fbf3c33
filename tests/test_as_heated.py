"""The heat of a fire stays as it was, of invented designs drawn from a seed.

Nothing here says that it is right; that is asked in ``test_heat_cases``, ``test_heat_properties``, ``test_heat_designs`` and
their neighbors. How it is changed on purpose: ``tests/as_heated.py``.
"""

import pytest
from as_built import FIGURES
from as_heated import CASES, figures_of, kept
from held_figures import otherwise

SHARE = 1e-9
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("case", CASES)
def test_the_heat_stays_as_it_was(case):
    found = figures_of(case)
    was = {what: row for (name, what), row in kept().items() if name == case}
    assert set(found) == set(was)
    other = otherwise(found, was, FIGURES, lambda row: SHARE * max(row[-1], 1.0))
    assert not other, f"{case}: {other}; see tests/as_heated.py"
