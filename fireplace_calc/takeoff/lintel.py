"""A lintel as ordered: in one piece, as angles, or laid in brick with its bars."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.base.tables.bars import reinforcing_bar
from fireplace_calc.brickwork.unit import UnitMasonry
from fireplace_calc.geometry.parts import Geometry, Part
from fireplace_calc.takeoff.share import Share, brick, hand_set


def _long(geometry: Geometry) -> float:
    """Of a lintel and its bars: the opening and a bearing on either side. [m]"""
    return 2 * geometry.frame.half_width + 2 * (geometry.design.lintel.bearing or 0.0)


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
    long = _long(geometry)
    volume = lintel.bars * reinforcing_bar(lintel.bar).area * long
    note = f"{lintel.bar}, {feet_inches(long)} long, as long as the lintel"
    weight = volume * density("steel")
    yield Share(part.name, "Lintel bar", "steel", volume, weight, lintel.bars, note)


def lintel_shares(geometry: Geometry, part: Part, laid: UnitMasonry, note: str) -> Iterator[Share]:
    """What a lintel asks for.

    Parameters
    ----------
    geometry : Geometry
    part : Part
        The lintel.
    laid : UnitMasonry
        Brick that one in reinforced masonry is laid in.
    note : str
        Of that brick.

    Yields
    ------
    Share
    """
    lintel = geometry.design.lintel
    if part.material == "brick":
        steel = list(bars_in_lintel(geometry, part))
        left = part.volume - sum(share.volume for share in steel)
        yield from brick(part, "Lintel brick", laid, volume=left, note=note)
        yield from steel
        return
    long = _long(geometry)
    size, number = f"{feet_inches(lintel.height)} high, {feet_inches(long)} long", 1
    if part.material == "steel":
        number, legs = lintel.angles, lintel.legs(geometry.frame.breast)
        thin, level = feet_inches(legs.thickness), feet_inches(legs.level)
        size = f"angle {thin} thick, level leg {level}, {size}"
    item = f"{part.material.capitalize()} lintel"
    yield from hand_set(part, item, part.material, number, note=size)
