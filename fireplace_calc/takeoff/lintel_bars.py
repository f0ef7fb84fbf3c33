"""Bars of a lintel in reinforced masonry, as ordered."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tables.bars import reinforcing_bar
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.takeoff.share import Share


def bars_in_lintel(geometry: Geometry, part: Part) -> Iterator[Share]:
    """Bars as long as the lintel, where they are told.

    Parameters
    ----------
    geometry : Geometry
    part : Part
        The lintel.

    Yields
    ------
    Share
    """
    lintel = geometry.design.lintel
    if lintel.material != "reinforced masonry" or lintel.bars is None or lintel.bar is None:
        return
    long = 2 * geometry.frame.half_width + 2 * (lintel.bearing or 0.0)
    volume = lintel.bars * reinforcing_bar(lintel.bar).area * long
    note = f"{lintel.bar}, {feet_inches(long)} long, as long as the lintel"
    weight = volume * density("steel")
    yield Share(part.name, "Lintel bar", "steel", volume, weight, lintel.bars, note)
