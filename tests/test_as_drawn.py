"""Pictures stay as they were: views, sheets, cards, lessons, exercises, sketches.

Nothing here says that a picture is right; what it has to show is asked in the tests of its own kind
(``test_views``, ``test_plan_sheets``, ``test_set_out``, ...). How a picture is changed on purpose:
``tests/as_drawn.py``.
"""

import numpy as np
import pytest
from as_drawn import PICTURES, columns, figures, kept, kept_columns, moved

from fireplace_calc.drawing.sheets.sheet import Sheet


@pytest.mark.parametrize("name", PICTURES)
def test_a_picture_stays_as_it_was(name):
    other = list(moved(name, figures(name), kept()))
    assert not other, f"{other}; see tests/as_drawn.py"


def test_every_picture_of_the_file_is_drawn():
    assert {name for name, _ in kept()} == set(PICTURES)


def test_columns_of_tables_are_as_wide_as_they_were_looked_at():
    found = columns()
    assert len(found) > 40 and found == kept_columns(), "see tests/as_drawn.py"


def test_a_line_moved_by_a_tenth_of_a_millimeter_is_seen(monkeypatch):
    def drawn(x, pen="cut", text="A"):
        sheet = Sheet(100.0, 80.0)
        sheet.line([(x, 10.0), (20.0, 30.0)], pen)
        sheet.fill([[(0.0, 0.0), (x, 0.0), (5.0, 5.0)]], "brick")
        sheet.text(x, 7.0, text)
        monkeypatch.setitem(PICTURES, "one", lambda: [sheet])
        return figures("one")

    first = drawn(10.0)
    for what, found in drawn(10.1).items():
        assert (np.abs(found - first[what]).max() > 0.2) == (what != "paper"), what
    assert (drawn(10.0, pen="seen")["lines"] != first["lines"]).any()
    assert (drawn(10.0, text="B")["words"] != first["words"]).any()
