"""What is built and laid stays as it was: parts, mantels, sets, cast pieces, courses, cuts.

Nothing here says that it is right; that is asked in the tests of each (``test_geometry``, ``test_pins_set``,
``test_casting``, ``test_courses``, ``test_cutting``, ...). How it is changed on purpose: ``tests/as_built.py``.
"""

import dataclasses

import numpy as np
import pytest
from as_built import CASES, FIGURES, figures, geometry_of, kept, rows

SHARE = 1e-10
"""Of all that is summed, that one machine may find otherwise than another. [-]"""


@pytest.mark.parametrize("name", CASES)
def test_what_is_built_stays_as_it_was(name):
    for what, found in rows(name).items():
        wanted = kept()[name, what]
        other = [
            f"{n} {a:.9g}, was {b:.9g}" for n, a, b in zip(FIGURES, found, wanted, strict=True)
        ]
        said = f"{what} of {name}: {'; '.join(other)}; see tests/as_built.py"
        assert np.abs(found - wanted).max() <= SHARE * max(wanted[-1], 1.0), said


def test_every_case_of_the_file_is_built():
    assert {name for name, _ in kept()} == set(CASES)


def test_a_corner_moved_by_a_hundredth_of_a_millimeter_is_seen():
    made = geometry_of("design 0")
    part = made.by_name["footing"]
    (solid,) = part.adds
    (x, y), *others = solid.lower
    moved = dataclasses.replace(solid, lower=((x + 1e-5, y), *others))
    first, other = figures(made.parts), figures([solid, made.parts, part.name])
    assert (np.abs(first - other) > SHARE * first[-1]).any()
    assert (np.abs(figures(solid) - figures(moved)) > SHARE * first[-1]).any()
    assert (figures("sawn") != figures("whole")).any() and (figures(()) == 0).all()
    turned = dataclasses.replace(solid, lower=(*others, (x, y)))
    assert figures(turned) == pytest.approx(figures(solid))
