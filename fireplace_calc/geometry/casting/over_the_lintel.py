"""Pieces from the throat to the flue, cut along the lines of a fireplace. [-]"""

from __future__ import annotations

from math import ceil

from fireplace_calc.base.units import InputError
from fireplace_calc.geometry.casting.cast_lines import CastLines
from fireplace_calc.geometry.casting.cast_piece import CastPiece, Nest, Ring, box
from fireplace_calc.geometry.casting.equal_courses import (
    LEAST_FLUES,
    MOST_FLUES,
    courses,
    heavy,
    low,
    lowest,
)
from fireplace_calc.geometry.casting.round_the_fire import (
    LAID_AFTER,
    CastLift,
    both_hands,
    halves,
)

INCH_MARKS = {False: 16, True: 25}
"""About an inch, in marks of the tape, by whether it is metric. [-]"""
Sides = tuple[int, int, int]


def throat(lines: CastLines) -> CastLift:
    """Throat in two parts and the smoke shelf, as thick as was asked, or as their weight allows.

    Raises
    ------
    InputError
        When a part stays too heavy at its lowest.
    """
    height = lines.marks(lines.wish.shelf)
    while True:
        back, whole_back = _throat_back(lines, height)
        others = [_light(one, lines) for one in (_throat_front(lines, height), *whole_back)]
        kept = [back] + [one for some in others for one in some]
        worst = max(kept, key=lambda one: one.volume)
        if lines.wish.weight(worst.volume) <= lines.wish.most:
            return CastLift("throat", tuple(kept))
        if height <= lines.least:
            why = "it is not cut further, so allow more or take a smaller opening"
            raise heavy(f"The {worst.name}", lines, worst.volume, why)
        height = max(height - 1, lines.least)


def _light(one: CastPiece, lines: CastLines) -> tuple[CastPiece, ...]:
    """A piece as it is, or in halves where it is too heavy."""
    return (one,) if lines.wish.weight(one.volume) <= lines.wish.most else halves(one, lines)


def _half_throat(lines: CastLines) -> int:
    """Half the width of throat and shelf: out to the walls under the slot's front. [-]"""
    return lines.side(lines.slot[0]) + lines.thick


def _throat_front(lines: CastLines, height: int) -> CastPiece:
    half, rows = _half_throat(lines), (LAID_AFTER,) if lines.lining else ()
    outline = box(-half, half, 0, lines.slot[0])
    return CastPiece("N1", "throat, front part", "throat front", outline, height, rows=rows)


def _throat_back(lines: CastLines, height: int) -> tuple[CastPiece, list[CastPiece]]:
    """Back part of the throat with its two cheeks; the shelf behind it where there is room. [-]"""
    (front, back, slot), half = lines.slot, _half_throat(lines)
    start, end = front + lines.perpend[1], lines.rear
    shelf: list[CastPiece] = []
    if end - back > 2 * lines.least + lines.perpend[1]:
        behind = back + lines.least + lines.perpend[1]
        outline = box(-half, half, behind, end)
        shelf = [CastPiece("SH", "smoke shelf", "smoke shelf", outline, height)]
        end = back + lines.least
    ring: Ring = (
        (-half, start),
        (-slot, start),
        (-slot, back),
        (slot, back),
        (slot, start),
        (half, start),
        (half, end),
        (-half, end),
    )
    return CastPiece("N2", "throat, back part", "throat back", ring, height), shelf


def chamber(lines: CastLines, rise: int, fewest: int = 1) -> tuple[CastLift, ...]:
    """Reducer and collar.

    Parameters
    ----------
    lines : CastLines
    rise : int
        From the throat's top to the flue's foot. [-]
    fewest : int
        Courses of the reducer, at least; a lower piece leans less over its seat. [-]

    Returns
    -------
    tuple of CastLift

    Raises
    ------
    InputError
        When there is no room for them, or a part stays too heavy.
    """
    bed = lines.bed[1]
    collar = max(lines.marks(lines.design.smoke_chamber.transition) - bed, lines.least)
    rest = rise - collar - bed
    found = None
    for parts in (2, 4):

        def fits(height: int, parts: int = parts) -> bool:
            return lines.wish.weight(_heaviest(lines, rest, height, parts)) <= lines.wish.most

        fitted = courses(lines, rest, fits, fewest=fewest)
        if fitted and (found is None or parts * fitted.count < found[0] * found[1].count):
            found = parts, fitted
    if found is None:
        if rest < lines.least + bed:
            least = lines.marks(lines.design.smoke_chamber.height) + lines.least + bed - rest
            came = lines.marks(lines.design.smoke_chamber.height)
            raise low("Smoke chamber height", lines, came, least, "Smoke chamber height")
        volume = _heaviest(lines, rest, lowest(lines, rest), 4)
        raise heavy("A quarter of the reducer", lines, volume, "lower parts are not cast")
    parts, fitted = found
    lifts = []
    for number in range(1, fitted.count + 1):
        tail = "" if fitted.count == 1 else str(number)
        shares = (number - 1) / fitted.count, number / fitted.count
        pieces = _reducer(lines, tail, shares, fitted.height, parts)
        lifts.append(CastLift(f"reducer {tail}".strip(), pieces))
    return (*lifts, CastLift("collar", _collar(lines, collar + fitted.left)))


def _heaviest(lines: CastLines, rise: int, height: int, parts: int) -> float:
    """Volume of the largest part of any course of the reducer. [-]"""
    count = max(round(rise / (height + lines.bed[1])), 1)
    shares = [((n - 1) / count, n / count) for n in range(1, count + 1)]
    return max(p.volume for s in shares for p in _reducer(lines, "", s, height, parts))


def _reducer(
    lines: CastLines, tail: str, shares: tuple[float, float], height: int, parts: int
) -> tuple[CastPiece, ...]:
    """One course of the reducer, in halves or in quarters. [-]"""
    (out_0, in_0), (out_1, in_1) = (_reducer_rings(lines, share) for share in shares)
    if parts == 2:
        cut = _half(lines, out_0, in_0), _half(lines, out_1, in_1)
        right = CastPiece(
            f"RR{tail}",
            f"right half of the reducer {tail}".strip(),
            "reducer",
            cut[0],
            height,
            cut[1],
        )
        return both_hands(right, f"RL{tail}", f"left half of the reducer {tail}".strip())
    made: list[CastPiece] = []
    for letter, word in (("F", "front"), ("B", "back")):
        lower, upper = (
            _quarter(lines, out, inn, letter == "F") for out, inn in ((out_0, in_0), (out_1, in_1))
        )
        right = CastPiece(
            f"R{letter}R{tail}",
            f"right {word} quarter of the reducer {tail}".strip(),
            "reducer",
            lower,
            height,
            upper,
        )
        name = f"left {word} quarter of the reducer {tail}".strip()
        made += both_hands(right, f"R{letter}L{tail}", name)
    return tuple(made)


def _reducer_rings(lines: CastLines, share: float) -> tuple[Sides, Sides]:
    """Outside and inside of the reducer at a share of its height: half, front, back. [-]"""
    front, _, half = lines.slot
    wall, depth = lines.marks(lines.wish.wall), lines.marks(lines.frame.depth)
    outside = (half + wall, max(front - wall, 0), min(depth + wall, lines.rear))
    inside = (half, front, depth)
    return (
        _between(outside, lines.around_bore(lines.shell), share),
        _between(inside, lines.around_bore(0), share),
    )


def _between(lower: Sides, upper: Sides, share: float) -> Sides:
    half, front, back = (
        round(low + (high - low) * share) for low, high in zip(lower, upper, strict=True)
    )
    return half, front, back


def _half(lines: CastLines, outside: Sides, inside: Sides) -> Ring:
    """Right half of a ring. [-]"""
    start, (x, front, back), (inner, near, far) = lines.half_joint, outside, inside
    return (
        *((start, front), (x, front), (x, back), (start, back)),
        *((start, far), (inner, far), (inner, near), (start, near)),
    )


def _quarter(lines: CastLines, outside: Sides, inside: Sides, front: bool) -> Ring:
    """Right quarter of a ring, the one in front or the one behind. [-]"""
    gap = lines.half_joint
    (x, low, high), (inner, near, far) = outside, inside
    middle = (near + far) // 2
    if front:
        cut = middle - gap
        return (gap, low), (x, low), (x, cut), (inner, cut), (inner, near), (gap, near)
    cut = middle + gap
    return (inner, cut), (x, cut), (x, high), (gap, high), (gap, far), (inner, far)


def _nest(lines: CastLines) -> Nest | None:
    """Tongue and socket of a flue piece; none where its wall is too thin. [-]"""
    inch = INCH_MARKS[lines.wish.metric]
    room = inch // 4
    wall = min((lines.shell - room) // 2, inch)
    # What is left outside the socket has to bear an inch.
    if lines.shell - wall - room < inch + 2:
        wall = lines.shell - room - inch - 2
    if wall < inch // 2:
        return None
    return Nest(tongue=3 * inch // 4, socket=inch, wall=wall, clearance=room)


def _collar(lines: CastLines, height: int) -> tuple[CastPiece]:
    """Round hole on a square one: what the flue stands on. [-]"""
    half, front, back = lines.around_bore(lines.shell)
    nest = _nest(lines)
    tongue = Nest(nest.tongue, 0, nest.wall, 0) if nest else None
    made = CastPiece(
        "CT",
        "collar",
        "collar",
        box(-half, half, front, back),
        height,
        bore=lines.bore,
        middle=(0, lines.flue_middle),
        nest=tongue,
    )
    if lines.wish.weight(made.volume) > lines.wish.most:
        raise heavy("The collar", lines, made.volume, "it is cast in one, so lower the transition")
    return (made,)


def flue(lines: CastLines) -> tuple[CastLift, int]:
    """The flue piece, and how many stand on each other.

    Parameters
    ----------
    lines : CastLines

    Returns
    -------
    tuple of CastLift and int
        The count. [-]

    Raises
    ------
    InputError
        When there would be more than a design counts.
    """
    told = lines.design.flue
    rise = told.sections * (told.section_height + told.joint) / lines.wish.tick
    half, front, back = lines.around_bore(lines.shell)
    liner = min(lines.marks(lines.frame.bore.wall), lines.shell - 1)
    for count in range(told.sections, MOST_FLUES + 1):
        made = CastPiece(
            "F",
            "flue piece",
            "flue",
            box(-half, half, front, back),
            round(rise / count) - lines.bed[1],
            bore=lines.bore,
            middle=(0, lines.flue_middle),
            nest=_nest(lines),
            liner=liner,
        )
        if lines.wish.weight(made.volume) <= lines.wish.most and made.height >= lines.least:
            return CastLift("flue", (made,), (f"repeat = [{LEAST_FLUES}, {MOST_FLUES}]",)), count
    weight = ceil(lines.wish.weight(made.volume) * 10) / 10
    raise InputError(
        f"The flue would be more than {MOST_FLUES} pieces of at most {lines.wish.most:g} kg, and a"
        f" design counts no more; of {MOST_FLUES} each weighs {weight:.1f} kg.",
        "Heaviest piece",
        f"at least {weight:.1f} kg",
        lines.wish.most,
    )
