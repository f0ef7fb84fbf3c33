"""Plan of a chimney with two flues and the masonry between them, cut over the shoulder."""

from __future__ import annotations

from fireplace_calc.drawing.plan_sheets.level_cut import center_lines, cut_level
from fireplace_calc.drawing.plates.figure import Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.chimney_plan import WHOSE
from fireplace_calc.drawing.views.chimney_plan import cut_level as chimney_level
from fireplace_calc.drawing.views.layout import cut_at, flue_size
from fireplace_calc.geometry.parts import Geometry


def two_flue_figure(geometry: Geometry, units: str, scales: tuple[float, ...]) -> Figure | None:
    """The figure of both flues; none where there is one.

    Parameters
    ----------
    geometry : Geometry
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]
    """
    f, d = geometry.frame, geometry.design
    if f.second is None:
        return None
    z = chimney_level(geometry)
    at = f.shift_at(z)
    middle, other = at + f.stack_middle, at + f.second.x
    left, right = middle - f.stack_half, middle + f.stack_half
    front, back = f.flue_y - f.stack_depth, f.flue_y + f.stack_depth
    extent = (left, front, right, back)

    def draw(view: View) -> None:
        cut_level(view, geometry, z)
        center_lines(view, [at, other], [f.flue_y], extent)

    halves = ((at, f.cavity_half), (other, f.second.cavity_half))
    edges = [x + side * half for x, half in halves for side in (-1, 1)]
    words: list[Note] = []
    for x, bore, whose in (
        (at, f.bore, "this fireplace"),
        (other, f.second.bore, WHOSE[d.second_flue.serves]),
    ):
        words.append(((x, f.flue_y + bore.depth * 0.25), f"{whose}: flue {flue_size(bore)}"))
    words.append(
        (
            ((min(edges[1], edges[3]) + max(edges[0], edges[2])) / 2, front + (back - front) * 0.4),
            {
                True: "masonry between, bonded",
                False: "masonry between, not bonded",
                None: "masonry between, bond not told",
            }[d.second_flue.bonded],
        )
    )
    return annotated(
        "chimney_plan",
        extent,
        draw,
        units,
        scales,
        left=words,
        below=[Sizes((left, *sorted(edges), right), front)],
        beside=[Sizes((front, back), right)],
        note=cut_at(z, units),
    )
