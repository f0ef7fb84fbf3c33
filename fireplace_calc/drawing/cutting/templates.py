"""Templates at full size: a bevel for every slope that is cut, and the taper of an arch's bricks.
Their dimensions are what a print is checked by.
"""

from __future__ import annotations

from collections.abc import Sequence

from fireplace_calc.brickwork.cutting.bevel_cuts import Bevel
from fireplace_calc.brickwork.cutting.set_arch import ArchSetting, VoussoirRing
from fireplace_calc.drawing.cutting.list_rows import tape
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.words_round import Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.geometry.polygons import Polygon

FULL = (1.0,)
"""The one denominator. [-]"""


def bevel_figure(bevel: Bevel, units: str) -> Figure:
    """The template of a bevel.

    Parameters
    ----------
    bevel : Bevel
    units : str
    """
    off, over = (tape(size, units) for size in bevel.fall)
    way = "" if bevel.steep else " along the brick"
    return _figure(f"Bevel {bevel.number}", bevel.template, units, f"{off} in {over}{way}")


def taper_figure(ring: VoussoirRing, number: int, units: str) -> Figure:
    """The template of the bricks of an arch that are cut to a taper.

    Parameters
    ----------
    ring : VoussoirRing
    number : int
        Of the ring from the soffit out; nought where there is one. [-]
    units : str
    """
    (low, high), deep = ring.taper, ring.depth
    rest = (high - low) / 2
    outline = ((rest, 0.0), (rest + low, 0.0), (high, deep), (0.0, deep))
    name = f"Taper of ring {number}" if number else "Taper of the arch"
    return _figure(name, outline, units, f"soffit {tape(low, units)}, back {tape(high, units)}")


def template_figures(found: Sequence[Bevel], arch: ArchSetting | None, units: str) -> list[Figure]:
    """Every template.

    Parameters
    ----------
    found : sequence of Bevel
    arch : ArchSetting or None
    units : str
    """
    rings = arch.rings if arch else ()
    return [bevel_figure(bevel, units) for bevel in found] + [
        taper_figure(ring, n if len(rings) > 1 else 0, units)
        for n, ring in enumerate(rings, 1)
        if ring.tapered
    ]


def _figure(name: str, outline: Polygon, units: str, note: str) -> Figure:
    wide, high = max(x for x, _ in outline), max(y for _, y in outline)
    low = min(x for x, y in outline if y == 0.0), max(x for x, y in outline if y == 0.0)

    def draw(view: View) -> None:
        view.path([*outline, outline[0]], "seen")

    made = annotated(
        "templates",
        (0.0, 0.0, wide, high),
        draw,
        units,
        FULL,
        below=(Sizes(low, 0.0),),
        beside=(Sizes((0.0, high), wide),),
        note=note,
    )
    return Figure(
        made.key, made.mark, name, made.box, made.margins, made.paint, made.scales, made.note
    )
