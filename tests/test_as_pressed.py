"""What the pages show when every control is used once stays as it was.

Nothing here says that it is right; that is asked in ``test_panels``, ``test_start_mine``, ``test_class_pages``, ``test_measuring``,
``test_survey_fold`` and their neighbors. How it is changed on purpose: ``tests/as_pressed.py``.
"""

import pytest
from as_built import FIGURES
from as_pressed import WALKS, figures_of, kept
from held_figures import otherwise

SHARE = 1e-9
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("walk", WALKS)
def test_a_page_shows_what_it_showed(walk):
    found = figures_of(walk)
    was = {step: row for (name, step), row in kept().items() if name == walk}
    assert set(found) == set(was)
    other = otherwise(found, was, FIGURES, lambda row: SHARE * max(row[-1], 1.0))
    assert not other, f"{walk}: {other}; see tests/as_pressed.py"
