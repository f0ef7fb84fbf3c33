"""The plan at the flue of a composed sheet: from the flue's center out."""

from __future__ import annotations

from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.marked_figures import marked
from fireplace_calc.drawing.plates.marks import (
    center_line,
)
from fireplace_calc.drawing.set_out.columns import (
    ROW,
    fits,
)
from fireplace_calc.drawing.set_out.cut_marks import flue_cut
from fireplace_calc.drawing.set_out.tape_marks import gap_texts
from fireplace_calc.drawing.sheets.dimensions import chain
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.views.chimney_plan import CUT as CHIMNEY
from fireplace_calc.drawing.views.layout import cut_at, length
from fireplace_calc.geometry.parts import Geometry


def flue_figure(geometry: Geometry, units: str, denominator: float) -> Figure:
    """The plan at the flue with its strings, at one scale; its origin is the flue's center.

    Parameters
    ----------
    geometry : Geometry
    units : str
    denominator : float
        [-]
    """
    f, k = geometry.frame, 1000 / denominator
    z, deep = flue_cut(geometry, denominator), f.stack_depth
    shift = f.shift_at(z)
    ends = f.stack_middle - f.stack_half, f.stack_middle + f.stack_half
    second = f.second if f.second is not None and f.second.start < z else None
    xs = sorted([*ends, 0.0, *([second.x] if second else [])])
    ys = [-deep, 0.0]  # as deep behind its middle; a flush face has its place from the other's
    across = gap_texts(xs, units)
    along = [] if any(_flush(geometry)) else gap_texts(ys, units)
    listed = _flue_sizes(geometry, units, z)
    turned = 0.0 if not along else 5.6 if fits(ys, along, k) else 11.2
    string = 8.0 if fits(xs, across, k) else 12.4
    spread = max(sum(width(text, SMALL) + 2.0 for text in along) - deep * k, 0.0)
    mark, name = marked("flue_plan")

    def paint(view: View) -> None:
        sheet = view.sheet
        moved = View(sheet, view.x0 - shift * k, view.y0 - f.flue_y * k, k)
        for part_name in CHIMNEY:
            if (part := geometry.parts_by_name.get(part_name)) is not None:
                adds, holes = part.plan(z)
                heavy = "cut" if part_name == "chimney walls" else "seen"
                moved.cut([*adds, *holes], part.material, heavy)
        (x0, low), (x1, high) = view.at(ends[0], -deep), view.at(ends[1], deep)
        x, y = view.at(0.0, 0.0)
        center_line(sheet, (x, high + 3.0), (x, low - spread - 7.0))
        center_line(sheet, (x0 - 3.0, y), (x1 + 6.0, y))
        chain(
            sheet, [view.at(a, 0.0)[0] for a in xs], across, low - 6.0 - spread,
            feet=[low - 0.6] * len(xs), limits=(x0 - 8.0, x1 + turned + 4.0), composed=True,
        )  # fmt: skip
        if along:
            chain(
                sheet, [view.at(0.0, b)[1] for b in ys], along, x1 + 6.0, "y", 1,
                feet=[x1 + 0.6] * 2, limits=(low - spread, high + spread), composed=True,
            )  # fmt: skip
        for n, row in enumerate(listed):
            sheet.text(x0, low - spread - string - 3.4 - n * ROW, row, size=SMALL, ha="left")

    size = width(max(listed, key=len), SMALL) - (ends[1] - ends[0]) * k
    return Figure(
        "flue_plan",
        mark,
        name,
        (ends[0], -deep, ends[1], deep),
        (4.0, spread + string + len(listed) * ROW + 3.0, max(6.0 + turned, size), 4.0 + spread),
        paint,
        (denominator,),
    )


FLUSH = 5e-4
"""What stands nearer to another face is flush with it. [m]"""


def _flush(geometry: Geometry) -> tuple[bool, bool]:
    """Whether the chimney is flush with the breast in front, and behind."""
    f = geometry.frame
    ahead, behind = f.flue_y - f.stack_depth, f.flue_y + f.stack_depth
    return abs(ahead) < FLUSH, abs(behind - f.block_back) < FLUSH


def _flue_sizes(geometry: Geometry, units: str, z: float) -> list[str]:
    """Bore, liner, casing and wall, from the middle out."""
    f, d = geometry.frame, geometry.design
    bore = f.bore
    casing = f.unit_half - bore.width / 2 - bore.wall
    size = length(bore.width, units)
    size += " round" if bore.round else f" x {length(bore.depth, units)} deep"
    rows = [cut_at(z, units), f"bore {size}"]
    if bore.wall > 0:
        rows.append(f"clay {length(bore.wall, units)}")
    if casing > 1e-6:
        rows.append(f"casing {length(casing, units)}")
    rows.append(f"{d.chimney.masonry} {length(d.chimney.wall, units)}")
    if d.chimney.gap > 0:
        rows.append("gap kept clear")
    front, back = _flush(geometry)
    flush = " and ".join(word for word, so in (("front", front), ("back", back)) if so)
    if flush:
        rows.append(f"flush with the breast, {flush}")
    return rows
