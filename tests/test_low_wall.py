"""A head under too little masonry for its triangle: the whole wall over it bears down evenly."""

import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.units import INCH, SQIN
from fireplace_calc.design.records import Design


@pytest.mark.parametrize(
    ("width", "low"), [("36 in", False), ("58 in", False), ("59-1/2 in", True), ("72 in", True)]
)
def test_a_wide_opening_runs_its_triangle_out_of_the_breast(width, low):
    """From the lintel's top at 33-1/2 in to the shoulder at 66: 32-1/2 in; a span of opening and one
    bearing of 6 in has a triangle half as high.
    """
    found = assess(change(Design(), {"opening.width": width})).structure.lintel
    assert found.cover == pytest.approx(32.5 * INCH)
    assert found.low_cover == low == (found.span / 2 > found.cover)


def test_a_low_wall_bears_evenly():
    """Moment w L^2 / 8 and shear w L / 2 of everything that stands between, and the lintel's own."""
    found = assess(change(Design(), {"opening.width": "72 in"})).structure.lintel
    assert found.span == pytest.approx(78 * INCH)
    even = found.own + found.carried / found.span
    assert found.moment == pytest.approx(even * found.span**2 / 8)
    assert found.shear == pytest.approx(even * found.span / 2)
    area = found.span * found.cover - found.cover**2
    assert found.carried == pytest.approx(found.wall * area)
    leg, bearing = 3.5, 6
    assert found.bearing_stress == pytest.approx(2 * found.shear / (leg * bearing * SQIN))


def test_under_a_high_wall_only_the_triangle_bears():
    """45 degrees: weight of w L^2 / 4, moment W L / 6, with w L^2 / 8 of the lintel itself."""
    found = assess(Design()).structure.lintel
    weight = found.wall * found.span**2 / 4
    assert found.carried == pytest.approx(weight)
    assert found.moment == pytest.approx(weight * found.span / 6 + found.own * found.span**2 / 8)
    assert found.shear == pytest.approx(weight / 2 + found.own * found.span / 2)
