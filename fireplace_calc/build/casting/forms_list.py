"""Forms to build, mix to cast and bags to buy for the pieces of a set. [m, m3, kg]"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from math import pi

from fireplace_calc.base.tables.castable import castable
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.solids import extent, piece_volume, piece_weight
from fireplace_calc.pieces.records import Outline, Round, SetPiece, Shape, Tapered
from fireplace_calc.pieces.shape_text import mirrored
from fireplace_calc.takeoff.rows import Row, to_order

FINE = 6
"""Decimals of a meter by which two forms are told apart. [-]"""


@dataclass(frozen=True, slots=True)
class FormRow:
    """The form of one mark.

    Attributes
    ----------
    piece : SetPiece
    form : str
        Mark whose form it is cast in: its own, or that of an earlier piece of the same shape.
    turned : bool
        Whether it leaves that form as the other hand, and is turned over.
    count : int
        How many are cast. [-]
    wide, deep, high : float
        Inside of the form, left to right, front to back and up; a tongue is counted in. [m]
    foot, head : Outline
        Corners inside at the foot and at the head, from the left front corner of that box. [m]
    mix : float
        To fill it once; a liner that is cast in is no mix. [m3]
    weight : float
        Of one piece. [kg]
    bags : float
        For all of them, waste left out. [-]
    """

    piece: SetPiece
    form: str
    turned: bool
    count: int
    wide: float
    deep: float
    high: float
    foot: Outline
    head: Outline
    mix: float
    weight: float
    bags: float


def liner_volume(piece: SetPiece) -> float:
    """Volume of the liner that is cast in, bed to bed.

    Parameters
    ----------
    piece : SetPiece

    Returns
    -------
    float
        Nought where there is none. [m3]
    """
    if not piece.liner or piece.plain is None:
        return 0.0
    bore = piece.plain[1][-1]
    if isinstance(bore, Round):
        area = pi * ((bore.radius + piece.liner) ** 2 - bore.radius**2)
    elif isinstance(bore, Tapered):
        (x0, y0), _, (x1, y1), _ = bore.lower
        wide, deep = x1 - x0, y1 - y0
        area = (wide + 2 * piece.liner) * (deep + 2 * piece.liner) - wide * deep
    else:
        return 0.0
    return area * piece.height


def form_rows(made: Assembly) -> tuple[FormRow, ...]:
    """A row for every mark that stands, in the order of the assembly.

    Parameters
    ----------
    made : Assembly

    Returns
    -------
    tuple of FormRow
    """
    bought = castable()
    counts = Counter(one.piece for one in made.placed)
    shapes: dict[object, str] = {}
    rows = []
    for piece, count in counts.items():
        own, other = _shape(piece.adds, piece.cuts), None
        if _upright(piece):
            hands = tuple(tuple(map(mirrored, s)) for s in (piece.adds, piece.cuts))
            other = _shape(*hands)
        form, turned = shapes.get(own), False
        if form is None and other in shapes:
            form, turned = shapes[other], True
        if form is None:
            form = shapes[own] = piece.mark
        x0, x1, y0, y1, z0, z1 = extent(piece)
        body = next(s for s in piece.adds if not isinstance(s, Round))
        ends = (body.lower, body.upper) if isinstance(body, Tapered) else ((), ())
        foot, head = (tuple((x - x0, y - y0) for x, y in ring) for ring in ends)
        mix = piece_volume(piece) - liner_volume(piece)
        bags = count * mix * bought.dry / bought.bag
        size = (x1 - x0, y1 - y0, z1 - z0)
        weight = piece_weight(piece)
        rows.append(FormRow(piece, form, turned, count, *size, foot, head, mix, weight, bags))
    return tuple(rows)


def castable_row(rows: tuple[FormRow, ...]) -> Row:
    """What the forms take, as a line of the takeoff.

    Parameters
    ----------
    rows : tuple of FormRow

    Returns
    -------
    Row
        In bags, its waste counted in and rounded up. [-]
    """
    bought = castable()
    net = sum(row.bags for row in rows)
    volume = sum(row.count * row.mix for row in rows)
    return Row(
        item="Refractory castable",
        material="refractory",
        net=net,
        order=to_order(net, bought.waste, 1),
        unit="bag",
        weight_kg=sum(row.count * row.mix * row.piece.density for row in rows),
        volume=volume,
        piece_kg=bought.bag,
        note=bought.note,
    )


def _upright(piece: SetPiece) -> bool:
    """Whether it is the same at its foot and at its head: turned over, it is its other hand."""
    return all(
        isinstance(s, Tapered) and s.lower == s.upper and s.bottom == 0.0 and s.top == piece.height
        for s in (*piece.adds, *piece.cuts)
    )


def _shape(adds: tuple[Shape, ...], cuts: tuple[Shape, ...]) -> object:
    """What tells two forms apart, wherever their pieces stand."""
    corners = [c for s in adds if isinstance(s, Tapered) for c in (*s.lower, *s.upper)]
    x0, y0 = min(x for x, _ in corners), min(y for _, y in corners)

    def there(point: tuple[float, float]) -> tuple[float, float]:
        return round(point[0] - x0, FINE), round(point[1] - y0, FINE)

    def one(shape: Shape) -> object:
        if isinstance(shape, Tapered):
            rings = (tuple(sorted(map(there, ring))) for ring in (shape.lower, shape.upper))
            return round(shape.bottom, FINE), round(shape.top, FINE), *rings
        if isinstance(shape, Round):
            level = round(shape.bottom, FINE), round(shape.top, FINE)
            return *level, round(shape.radius, FINE), there(shape.center)
        return shape

    return tuple(map(one, adds)), tuple(map(one, cuts))
