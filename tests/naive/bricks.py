"""Bricks counted by laying them: each one drawn as a rectangle, cut by the outline of its face, and looked at."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import shapely
from shapely import affinity

from naive.levels import back_at, half_at
from naive.reading import IN

GAP = IN / 8
"""No piece is cut thinner than this: the joints take it up. [m]"""
KERF = IN / 8
"""Lost to the saw. [m]"""
SAWN = 3 * IN / 8
"""What is wider than a joint takes up, and no thicker than this, no saw gives. [m]"""


@dataclass(frozen=True)
class Laid:
    """A unit as it lies: along the course, up, into the wall, its joint [m]; and how many stand one behind the other."""

    long: float
    high: float
    deep: float
    joint: float
    rows: int = 1
    bed: float | None = None
    lowest: float | None = None

    @property
    def step(self) -> float:
        """From course to course. [m]"""
        return self.high + (self.joint if self.bed is None else self.bed)

    @property
    def cell(self) -> float:
        """Face of one with its joints. [m2]"""
        return (self.long + self.joint) * (self.high + self.joint)


def in_wall(unit: Laid, thick: float) -> Laid:
    """As many behind one another as come nearest to a thickness, each split down when that is too little for it."""
    rows = max(round((thick + unit.joint) / (unit.deep + unit.joint)), 1)
    return Laid(
        unit.long,
        unit.high,
        min(unit.deep, (thick - (rows - 1) * unit.joint) / rows),
        unit.joint,
        rows,
    )


def density_in_wall(laid: Laid, thick: float) -> tuple[float, float]:
    """Units to the cubic metre of a wall [1/m3], and what part of it they fill [-]."""
    number = laid.rows / (laid.cell * thick)
    return number, number * laid.long * laid.high * laid.deep


def density_in_mass(unit: Laid) -> tuple[float, float]:
    """The same in work many units thick, joints on every side."""
    number = 1 / (unit.cell * (unit.deep + unit.joint))
    return number, number * unit.long * unit.high * unit.deep


def firebrick(name: str, thick: float, joint: float | None) -> Laid:
    """Flat, on edge, or end on: whichever comes nearest to the thickness of the lining."""
    joint = IN / 8 if joint is None else joint
    long, wide, thin = (
        {"9": 9, "4-1/2": 4.5, "2-1/2": 2.5, "3": 3, "2": 2}[side.strip()] * IN
        for side in name.removesuffix("in").split("x")
    )
    ways = [
        Laid(long, thin, wide, joint),
        Laid(long, wide, thin, joint),
        Laid(wide, thin, long, joint),
    ]
    off = []
    for way in ways:
        rows = max(round((thick + joint) / (way.deep + joint)), 1)
        off.append(round(abs(rows * way.deep + (rows - 1) * joint - thick), 6))
    return in_wall(ways[off.index(min(off))], thick)


# -- faces ----------------------------------------------------------------------------------------------
def faces(s) -> dict[str, tuple[list, int, bool]]:
    """Outline of each face of the lining in its own plane, how many there are alike, whether it is set out from its middle,
    and over what its courses stand on where pieces of them end."""
    wide, low, slant = half_at(s, s.depth), s.paving, math.hypot(1, s.splay)
    knee = min(s.bend, s.throat)
    ends = [min(z, s.throat) - low for z in (s.spring, s.bend, s.throat)]
    found = {"back": ([(-wide, low), (wide, low), (wide, knee), (-wide, knee)], 1, True, ends)}
    if s.throat - s.bend > 1e-6:
        long, top = math.hypot(s.throat - s.bend, s.rake), half_at(s, s.throat_back)
        found["raked back"] = ([(-wide, 0), (wide, 0), (top, long), (-top, long)], 1, True, [long])
    rear = [(slant * back_at(s, z), z) for z in (low, s.bend, s.throat) if z <= s.throat]
    front = [
        (slant * s.throat_front, s.throat),
        (slant * s.breast, s.head),
        (slant * s.breast, s.spring),
        (0, s.spring),
        (0, low),
    ]
    found["side"] = (rear + front, 2, False, ends)
    return found


def floor(s) -> tuple[list, int, bool]:
    """The paving in plan."""
    back = half_at(s, s.depth)
    return [(-s.half, 0), (s.half, 0), (back, s.depth), (-back, s.depth)], 1, True, [s.depth]


# -- bonds ------------------------------------------------------------------------------------------------
def weave(unit: Laid) -> tuple[int, float] | None:
    """Bricks side by side in one square of basketweave and the joint that fills it out; nothing when it will not close to 1/16 in."""
    number = max(round((unit.long + unit.joint) / (unit.high + unit.joint)), 1)
    if number < 2:
        return None
    between = (unit.long - number * unit.high) / (number - 1)
    fits = between >= -1e-12 and abs(between - unit.joint) * (number - 1) <= IN / 16 + 1e-12
    return (number, between) if fits else None


def lattice(
    bond: str, unit: Laid, area: tuple, x: float, y: float
) -> list[tuple[float, float, float, float]]:
    """Left, bottom, right and top of every brick that may touch an area; ``x`` and ``y`` are the corner of one brick."""
    a, b, j = unit.long + unit.joint, unit.high + unit.joint, unit.joint
    left, low, right, top = area
    found = []
    if bond in ("running", "stack"):
        b = unit.step
        for row in range(math.floor((low - y) / b) - 1, math.ceil((top - y) / b) + 1):
            start = x + (a / 2 if bond == "running" and row % 2 else 0.0)
            for column in range(
                math.floor((left - start) / a) - 1, math.ceil((right - start) / a) + 1
            ):
                found.append(
                    (
                        start + column * a,
                        y + row * b,
                        start + column * a + unit.long,
                        y + row * b + unit.high,
                    )
                )
        return found
    if bond == "basketweave":
        number, between = weave(unit)
        for row in range(math.floor((low - y) / a) - 1, math.ceil((top - y) / a) + 1):
            for column in range(math.floor((left - x) / a) - 1, math.ceil((right - x) / a) + 1):
                u, v = x + column * a, y + row * a
                for k in range(number):
                    at = k * (unit.high + between)
                    lying = (u, v + at, u + unit.long, v + at + unit.high)
                    found.append(
                        lying
                        if (row + column) % 2 == 0
                        else (u + at, v, u + at + unit.high, v + unit.long)
                    )
        return found
    reach = int((max(right - left, top - low) + abs(x) + abs(y)) / b) + 4
    for m in range(-3 * reach, 3 * reach):
        for n in range(-reach, reach):
            u, v = x + m * b + n * a, y + m * b - n * a
            if left - 2 * a < u < right + 2 * a and low - 2 * a < v < top + 2 * a:
                found.append((u, v, u + unit.long, v + unit.high))
                found.append(
                    (u + a, v + b - a, u + a + unit.high, v + b - a + unit.long)
                )  # on end, past the head of the one that lies
    return [
        brick
        for brick in found
        if brick[2] > left - j
        and brick[0] < right + j
        and brick[3] > low - j
        and brick[1] < top + j
    ]


def starts(
    face: list, unit: Laid, bond: str, centred: bool, paving: bool = False
) -> list[tuple[float, float, float]]:
    """Corners to begin from, and how far each lies off the plain one. Courses of a wall begin over a bed; paving lies flat."""
    a, b = unit.long + unit.joint, unit.high + unit.joint
    left, low = min(x for x, _ in face), min(y for _, y in face)
    if bond in ("running", "stack"):
        low += (0.0 if paving else unit.step - unit.high) - (unit.high - (unit.lowest or unit.high))
    x = -unit.long / 2 if centred else left
    moves = {
        "running": (0, a / 4) if centred else (0, a / 8, a / 4, 3 * a / 8),
        "stack": (0, a / 2) if centred else (0, a / 4, a / 2),
    }
    if bond in moves:
        return [(x - move, low, move) for move in moves[bond]]
    if bond == "basketweave":
        return [(x + move, low, move) for move in (0, a / 2)]
    return [
        (x + over, low - down, math.hypot(over, down))
        for over, down in ((0, 0), (b, 0), (0, b / 2), (b, b / 2))
    ]


@dataclass(frozen=True)
class Piece:
    """One brick: whether it is whole, its face [m2], how much of a brick's length it takes [m], its middle in the face [m],
    whether no saw gives it, and from where to where it goes as it is drawn. [m]"""

    whole: bool
    face: float
    long: float
    middle: tuple[float, float]
    thin: bool = False
    span: tuple[float, float] = (0.0, 0.0)


def lay(
    face: list, unit: Laid, bond: str, corner: tuple[float, float], paving: bool = False
) -> list[Piece]:
    """Every brick of one face from one start. For a bond at 45 degrees the face is turned, and the bricks lie straight."""
    x, y = corner
    outline, pin = shapely.Polygon(face), (x - unit.joint / 2, y - unit.joint / 2)
    if unit.lowest and unit.lowest < unit.high:  # nothing of a cut lowest course hangs into its bed
        low = outline.bounds[1] + (0.0 if paving else unit.step - unit.high)
        outline = outline.intersection(shapely.box(-99, low, 99, 99))
    turn = 45 if bond == "herringbone 45" else 0
    outline = affinity.rotate(outline, -turn, origin=pin)
    drawn = lattice(
        "herringbone" if bond.startswith("herring") else bond, unit, outline.bounds, x, y
    )
    if bond in ("running", "stack"):
        drawn = closed(drawn, outline, unit)
    return [piece for brick in drawn for piece in sawn(brick, outline, unit, turn, pin)]


def sawn(brick: tuple, outline, unit: Laid, turn: float = 0, pin: tuple = (0, 0)) -> list[Piece]:
    """What of one brick lies in a face."""
    left, low, right, top = brick
    full, found = unit.long * unit.high, []
    shape = shapely.intersection(shapely.box(*brick), outline)
    for part in getattr(shape, "geoms", [shape]):
        if part.area <= 0:
            continue
        u, v, w, z = part.bounds
        lies = right - left >= top - low
        # a gap of just so much goes into the joints, and so does a crumb
        if min(w - u, z - v) > GAP + 1e-9 and part.area >= GAP**2:
            whole = part.area > full * (1 - 1e-6)
            middle = affinity.rotate(part.centroid, turn, origin=pin)
            found.append(
                Piece(
                    whole,
                    full if whole else part.area,
                    w - u if lies else z - v,
                    (middle.x, middle.y),
                    min(w - u, z - v) <= SAWN + 1e-9,
                    (u, w),
                )
            )
    return found


def closed(drawn: list[tuple], outline, unit: Laid) -> list[tuple]:
    """Bricks of courses, the ends that no saw gives laid anew with the brick beside them: three quarters of a brick and the
    rest; one brick where both are no longer; two alike where less than a quarter would be left. Only where that mends it."""
    made = {brick: sawn(brick, outline, unit) for brick in drawn}
    made = {brick: pieces for brick, pieces in made.items() if pieces}
    for end in [brick for brick, pieces in made.items() if any(p.thin for p in pieces)]:
        step = unit.long + unit.joint
        beside = [
            brick
            for brick, pieces in made.items()
            if abs(brick[1] - end[1]) < 1e-9
            and abs(abs(brick[0] - end[0]) - step) < 1e-9
            and not any(p.thin for p in pieces)
        ]
        if end not in made or not beside:
            continue
        other = beside[0]
        spans = [p.span for brick in (end, other) for p in made[brick]]
        start, stop = min(u for u, _ in spans), max(w for _, w in spans)
        length = 0.75 * unit.long
        if stop - start - length - unit.joint < unit.long / 4:
            length = stop - start
            if length > unit.long:
                length = (stop - start - unit.joint) / 2
        if other[0] > end[0]:
            inner, rest = (stop - length, stop), stop - length - unit.joint
            outer = (rest - unit.long, rest)
        else:
            inner, rest = (start, start + length), start + length + unit.joint
            outer = (rest, rest + unit.long)
        anew = {
            (u, end[1], w, end[3]): sawn((u, end[1], w, end[3]), outline, unit)
            for u, w in (inner, outer)
        }
        if not any(p.thin for pieces in anew.values() for p in pieces):
            del made[end], made[other]
            made |= {brick: pieces for brick, pieces in anew.items() if pieces}
    return list(made)


def near(joint: float, step: float) -> list[float]:
    """Joints by how far they are off the chosen one, the narrower of two first: 1/16 in less to 1/4 in, or 1/16 in more."""
    least, most = max(joint - IN / 16, 0.0) - 1e-9, max(joint + IN / 16, IN / 4) + 1e-9
    tried = [joint]
    for k in range(1, 40):
        tried += [joint - k * step, joint + k * step]
    return [one for one in tried if least <= one <= most]


def ends_under(ends: list[float], unit: Laid, bed: float, lowest: float, paving: bool) -> list:
    """How high the piece under each level is, the courses laid one by one."""
    found = []
    for level in ends:
        foot, high = (0.0 if paving else bed), lowest
        while level > foot + high + bed:
            foot, high = foot + high + bed, unit.high
        found.append(min(max(level - foot, 0.0), high))
    return found


def put_on(ends: list[float], unit: Laid, paving: bool) -> Laid:
    """A unit with the bed, and else with the lowest course, that leaves no piece under a level that no saw gives."""

    def bad(bed: float, most: float) -> bool:
        return any(GAP + 1e-9 < h <= most for h in ends_under(ends, unit, bed, unit.high, paving))

    if not bad(unit.joint, SAWN + 1e-6):
        return replace(unit, bed=unit.joint)
    for most in (unit.high / 4, SAWN + 1e-6):
        for bed in near(unit.joint, IN / 32):
            if not bad(bed, most):
                return replace(unit, bed=bed)
    best, lowest = -1.0, unit.high
    for k in range(1, int((unit.high - SAWN) / (IN / 16))):
        high = unit.high - k * IN / 16
        under = ends_under(ends, unit, unit.joint, high, paving)
        if (score := min([high, *(h for h in under if h > GAP)])) > best:
            best, lowest = score, high
    return replace(unit, bed=unit.joint, lowest=lowest)


def thin(pieces: list[Piece], unit: Laid) -> int:
    """Pieces under a quarter brick."""
    return sum(piece.face < unit.long * unit.high / 4 * (1 - 1e-9) for piece in pieces)


def thin_ends(face: list, unit: Laid, bond: str, corner: tuple[float, float]) -> int:
    """Ends of courses, looked at half-way up each, that are under a quarter brick and yet no mere joint."""
    outline = shapely.Polygon(face)
    left, _, right, _ = outline.bounds
    found, rows = 0, {}
    for u, v, w, _ in lattice(bond, unit, outline.bounds, *corner):
        if v not in rows:
            middle = v + unit.high / 2
            rows[v] = (
                shapely.LineString([(left - 1, middle), (right + 1, middle)])
                .intersection(outline)
                .bounds
            )
        if ends := rows[v]:
            found += GAP < min(w, ends[2]) - max(u, ends[0]) < unit.long / 4
    return found


def best(
    face: list, unit: Laid, bond: str, centred: bool, ends: list[float], paving: bool = False
) -> tuple[list[Piece], float, str]:
    """The pieces, how far the start was moved, and the bond as laid: with the chosen joint, else the nearest that leaves
    nothing that no saw gives; what still is so is left out."""
    if bond == "basketweave" and weave(unit) is None:
        bond = "running"
    coursed = bond in ("running", "stack")
    if coursed:
        unit = put_on(ends, unit, paving)
    found = None
    for joint in near(unit.joint, IN / 16):
        tried = replace(unit, joint=joint)
        if bond == "basketweave" and weave(tried) is None:
            continue
        made = from_start(face, tried, bond, centred, paving)
        if found is None or poor(made[0], unit)[0] < poor(found[0], unit)[0]:
            found = made
        if not poor(found[0], unit)[0]:
            break
    pieces, move = found
    return [piece for piece in pieces if not piece.thin], move, bond


def poor(pieces: list[Piece], unit: Laid) -> tuple[int, int]:
    """Pieces that no saw gives, and those under a quarter brick."""
    return sum(piece.thin for piece in pieces), thin(pieces, unit)


def from_start(
    face: list, unit: Laid, bond: str, centred: bool, paving: bool
) -> tuple[list[Piece], float]:
    """The start with the fewest thin pieces, the plainer first, and how far it was moved.

    In courses only the plain start is tried and the one with the fewest thin ends, which has to halve them: a thin course
    on top is thin from any start.
    """
    tried = starts(face, unit, bond, centred, paving)
    coursed = bond in ("running", "stack")
    if coursed:
        ends = [thin_ends(face, unit, bond, (x, y)) for x, y, _ in tried]
        tried = [tried[0], tried[ends.index(min(ends))]]
    found = None
    for x, y, move in tried:
        pieces = lay(face, unit, bond, (x, y), paving)
        if found is None:
            found = pieces, move
            continue
        (worse, more), (least, most) = poor(pieces, unit), poor(found[0], unit)
        fewer = (2 * more <= most if coursed else more < most) and most
        if most and (worse < least or (worse == least and fewer)):
            found = pieces, move
    return found


def bricks_for(lengths: list[float], brick: float) -> int:
    """Longest first, each out of the first brick that still has so much left."""
    rests: list[float] = []
    for wanted in sorted(lengths, reverse=True):
        at = next((k for k, rest in enumerate(rests) if rest + 1e-9 >= wanted), None)
        if at is None:
            rests.append(brick)
            at = len(rests) - 1
        rests[at] -= wanted + KERF
    return len(rests)


def counted(laid: list[tuple[list[Piece], int]], unit: Laid) -> dict[str, float]:
    """Of several faces: whole bricks, cut pieces, the bricks those come from, and both faces. [-, m2]"""
    whole = [piece for pieces, alike in laid for piece in pieces * alike if piece.whole]
    cut = [piece for pieces, alike in laid for piece in pieces * alike if not piece.whole]
    return {
        "whole": len(whole),
        "pieces": len(cut),
        "from": bricks_for([p.long for p in cut], unit.long),
        "whole face": sum(p.face for p in whole),
        "cut face": sum(p.face for p in cut),
    }


def nearest(value: float) -> int:
    """Halves go up: a firebrick of 63.5 mm is one of 64, though it may come to 63.4999999."""
    return int(round(value, 5) + 0.5)


def shape(ring: list) -> tuple:
    """A piece by its sides [mm] and the corner after each [deg], written from the corner and the way round that come first."""
    found = []
    for way in (list(ring), list(ring)[::-1]):
        number = len(way)
        told = []
        for k in range(number):
            (ax, ay), (bx, by), (cx, cy) = way[k], way[(k + 1) % number], way[(k + 2) % number]
            back, on = math.atan2(ay - by, ax - bx), math.atan2(cy - by, cx - bx)
            inner = abs(math.degrees(back - on)) % 360
            told.append(
                (nearest(1000 * math.hypot(bx - ax, by - ay)), nearest(min(inner, 360 - inner)))
            )
        found += [tuple(told[k:] + told[:k]) for k in range(number)]
    return min(found)
