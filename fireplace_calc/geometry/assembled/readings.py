"""What the pieces decide, read off them: every length that a design would otherwise choose. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import hypot

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.base.units import InputError
from fireplace_calc.geometry.assembled.assembly import Assembly, Placed
from fireplace_calc.geometry.assembled.passage import lift_section, passage, walled
from fireplace_calc.geometry.assembled.seats import bearing_lengths
from fireplace_calc.geometry.assembled.sections import apart, contact
from fireplace_calc.geometry.assembled.solids import extent, piece_part
from fireplace_calc.geometry.polygons import Polygon, signed_area
from fireplace_calc.pieces.records import ArchCut, FirebrickLining, Round, SetPiece
from fireplace_calc.pieces.roles import FIREBOX

FINE = 7
"""Decimals of a meter that a section keeps. [-]"""


@dataclass(frozen=True, slots=True)
class ReadOff:
    """Lengths of a set as it stands; y counts from the front of its pieces, levels from its start.

    Attributes
    ----------
    plate_top, opening_top, throat_bottom, throat_top, head_top, flue_top : float
        Levels: of the base plates, the lintel's soffit at the center line, and so on up. [m]
    rise : float
        Of an arched lintel; nought when straight. [m]
    half_width, half_back, depth : float
        Of the firebox between its pieces, no lining. [m]
    splay : float
        How far a side closes in per unit of depth. [-]
    lintel_depth, lintel_height, lintel_bearing : float
        Bearing at the end that has less. [m]
    throat_front, throat_back, throat_width : float
        Of the narrowest section over the lintel. [m]
    round : bool
        Whether the bore is.
    bore_width, bore_depth, liner : float
        Clear inside, and the wall of the liner cast in. [m]
    bore_y : float
        Middle of the bore. [m]
    flue_half, flue_deep : float
        Half the width and half the depth of a flue piece. [m]
    flue_height, flue_bed : float
        Of one, bed to bed, and the mean joint. [m]
    half_over_all, deep_over_all : float
        How far the pieces reach sideways from the center line and back, to the flue. [m]
    wall, plate : float
        Of the pieces round the fire where they are thinnest, square to their faces; and height of
        the base plates. [m]
    slopes : tuple of float
        Run over rise of the reducer's sides, front and back. [-]
    chamber_foot : tuple of float
        Of the smoke's way where the reducer begins and it is widest: half the width, and the back.
        [m]
    reducer_front : tuple of (float, float)
        How far back its front stands, outside and inside, wherever that turns. [m]
    """

    plate_top: float
    opening_top: float
    throat_bottom: float
    throat_top: float
    head_top: float
    flue_top: float
    rise: float
    half_width: float
    half_back: float
    depth: float
    splay: float
    lintel_depth: float
    lintel_height: float
    lintel_bearing: float
    throat_front: float
    throat_back: float
    throat_width: float
    round: bool
    bore_width: float
    bore_depth: float
    liner: float
    bore_y: float
    flue_half: float
    flue_deep: float
    flue_height: float
    flue_bed: float
    half_over_all: float
    deep_over_all: float
    wall: float
    plate: float
    slopes: tuple[float, float, float]
    chamber_foot: tuple[float, float]
    reducer_front: tuple[tuple[float, float], ...]


def read_off(made: Assembly) -> ReadOff:
    """Read a set that fits.

    Parameters
    ----------
    made : Assembly

    Returns
    -------
    ReadOff

    Raises
    ------
    InputError
        When a role without which there is no fireplace is missing, or its pieces close round no way
        for the smoke.
    """
    plates = _first(made, "base plate")
    walls = _first(made, "wall")
    lintel = next(p for p in _first(made, "lintel") if p.piece.role == "lintel")
    throat = _first(made, "throat front", "throat back")
    reducer = _first(made, "reducer")
    flues = [p for p in made.placed if p.piece.role == "flue"]
    if not flues:
        raise _missing("flue")
    box = _box(_way(tuple(p.piece for p in walls)))
    rise = next((s.rise for s in lintel.piece.cuts if isinstance(s, ArchCut)), 0.0)
    slot = _bounds(_way(tuple(p.piece for p in throat)))
    flue = flues[0].piece
    bore = _bounds(_way((flue,)))
    liner = next((s for s in flue.cuts if isinstance(s, Round)), None)
    x0, x1, y0, y1, _, _ = extent(flue)
    foot = _bounds(_way(tuple(p.piece for p in reducer), 0.0))
    last = max(p.lift for p in made.placed if p.piece.role == "reducer")
    head = _bounds(_way(tuple(p.piece for p in made.by_lift[last]), 1.0))
    high = made.by_lift[last][0].top - reducer[0].level
    below = [p for p in made.placed if p.piece.role not in ("flue", "collar")]
    reach = [extent(p.piece) for p in below]
    return ReadOff(
        plate_top=plates[0].top,
        opening_top=lintel.level + rise,
        throat_bottom=throat[0].level - throat[0].bed,
        throat_top=throat[0].top,
        head_top=flues[0].level - flues[0].bed,
        flue_top=flues[-1].top,
        rise=rise,
        half_width=box[0],
        half_back=box[1],
        depth=box[2],
        splay=box[3],
        lintel_depth=extent(lintel.piece)[3],
        lintel_height=lintel.piece.height - rise,
        lintel_bearing=_bearing(made, lintel),
        throat_front=slot[2],
        throat_back=slot[3],
        throat_width=slot[1] - slot[0],
        round=liner is not None,
        bore_width=bore[1] - bore[0],
        bore_depth=bore[3] - bore[2],
        liner=flue.liner,
        bore_y=(bore[2] + bore[3]) / 2,
        flue_half=(x1 - x0) / 2,
        flue_deep=(y1 - y0) / 2,
        flue_height=flue.height,
        flue_bed=sum(p.bed for p in flues) / len(flues),
        half_over_all=max(max(-e[0], e[1]) for e in reach),
        deep_over_all=max(e[3] for e in reach),
        wall=min(map(_thinnest, _round_the_fire(made))),
        plate=min(p.piece.height for p in plates if p.piece.role == "base plate"),
        slopes=(
            abs(foot[1] - head[1]) / high,
            abs(foot[2] - head[2]) / high,
            abs(foot[3] - head[3]) / high,
        ),
        chamber_foot=(max(-foot[0], foot[1]), foot[3]),
        reducer_front=_reducer_front(made),
    )


def _reducer_front(made: Assembly) -> tuple[tuple[float, float], ...]:
    found = []
    for lift in made.by_lift:
        pieces = tuple(p.piece for p in lift)
        if all(p.role != "reducer" for p in pieces):
            continue
        ends = ((p, z) for p in pieces for s in piece_part(p).adds for z in (s.bottom, s.top))
        for share in sorted({z / p.height for p, z in ends if z <= p.height}):
            outside = round(lift_section(pieces, share).bounds()[1], FINE)
            found.append((outside, _bounds(_way(pieces, share))[2]))
    return tuple(found)


def _round_the_fire(made: Assembly) -> Iterator[tuple[SetPiece, ...]]:
    """Walls and backs of each lift that has some, the lintel left out."""
    for here in made.by_lift:
        kinds = tuple(p.piece for p in here if p.piece.role in FIREBOX)
        if kinds:
            yield kinds


@lru_cache(maxsize=1024)
def _thinnest(pieces: tuple[SetPiece, ...]) -> float:
    """Least distance from the fire to what is outside, at foot and head. [m]"""
    found = []
    for share in (0.0, 1.0):
        shell = walled(lift_section(pieces, share))
        rings = [tuple((float(x), float(y)) for x, y in ring) for ring in shell.to_polygons()]
        outer = max(rings, key=signed_area)
        found += [apart(inner, outer) for inner in passage(pieces, share)[:1]]
    return round(min(found, default=0.0), FINE)


def _missing(role: str) -> InputError:
    return InputError(f"The set has no {role}.", "role", f"a {role}", None)


def _first(made: Assembly, *roles: str) -> tuple[Placed, ...]:
    """The lowest lift with a piece of one of these roles."""
    number = made.first(*roles)
    if number is None:
        raise _missing(" or ".join(roles))
    return made.by_lift[number]


def _way(pieces: tuple[SetPiece, ...], share: float = 0.5) -> Polygon:
    """The smoke's way through a lift, at a share of its height. [m]"""
    found = passage(pieces, share)
    if not found:
        marks = " and ".join(p.mark for p in pieces)
        raise InputError(
            f"No way for the smoke is closed in by {marks}; check places, joints and bore.",
            "Set of pieces",
            "pieces that close round the smoke",
            marks,
        )
    return found[0]


def _bounds(ring: Polygon) -> tuple[float, float, float, float]:
    """Least and greatest x, then y. [m]"""
    xs, ys = [round(x, FINE) for x, _ in ring], [round(y, FINE) for _, y in ring]
    return min(xs), max(xs), min(ys), max(ys)


def _box(ring: Polygon) -> tuple[float, float, float, float]:
    """Half the width in front and at the back, the depth, and the splay of its sides, corner of a
    rebate or not. [m, m, m, -]
    """
    _, _, front, rear = _bounds(ring)
    half = round(max(x for x, y in ring if y < front + CONTACT_GAP), FINE)
    narrow = round(max(x for x, y in ring if y > rear - CONTACT_GAP), FINE)
    deep = rear - front
    # The side runs from the front corner to the farthest one back that is not the back's own.
    side = [(x, y) for x, y in ring if x > 0 and y > front + deep / 3 and x >= narrow]
    x, y = min(side, key=lambda p: (p[1] > rear - CONTACT_GAP, p[0])) if side else (narrow, rear)
    return half, narrow, deep, round((half - x) / (y - front), FINE) + 0.0


def _bearing(made: Assembly, lintel: Placed) -> float:
    """Along the lintel, at the end that has less. [m]"""
    below = made.by_lift[lintel.lift - 1]
    return min(bearing_lengths([contact(lintel.piece, b.piece) for b in below]).values())


def lined(made: ReadOff, lining: FirebrickLining | None) -> tuple[float, float, float]:
    """The firebox with its firebrick lining in.

    Parameters
    ----------
    made : ReadOff
    lining : FirebrickLining or None

    Returns
    -------
    tuple of float
        Half the width in front and at the back, and the depth. [m]
    """
    thick = lining.thickness + lining.joint if lining else 0.0
    aside = thick * hypot(1.0, made.splay)
    depth = made.depth - thick
    half = made.half_width - aside
    return half, half - made.splay * depth, depth
