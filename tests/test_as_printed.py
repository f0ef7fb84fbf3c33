"""Papers, charts and files stay as they were: how a page is told, how a book holds its lines, where ink falls.

Nothing here says that one is right; what each has to show is asked in the tests of its own kind (``test_papers``,
``test_drawn_page``, ``test_class_papers``, ``test_client_pages``, ...). How one is changed on purpose: ``tests/as_printed.py``.
"""

import pytest
from as_drawn import moved
from as_printed import PICTURES, figures, kept


@pytest.mark.parametrize("name", PICTURES)
def test_a_paper_stays_as_it_was(name):
    other = list(moved(name, figures(name), kept()))
    assert not other, f"{other}; see tests/as_printed.py"


def test_every_paper_of_the_file_is_drawn():
    assert {name for name, _ in kept()} == set(PICTURES)
