"""Pieces from the base plates to the lintel, cut along the lines of a fireplace. [-]"""

from __future__ import annotations

from dataclasses import dataclass, replace

from fireplace_calc.geometry.casting.cast_lines import CastLines
from fireplace_calc.geometry.casting.cast_piece import CastPiece, Ring, box, other_hand
from fireplace_calc.geometry.casting.equal_courses import heavy

KINDS = {"W": ("wall", ""), "X": ("extension", "extension "), "T": ("top wall", "top ")}
"""First letter of a mark: what a wall of it is called, and what stands before its role."""
LAID_AFTER = 'after = ["lining"]'
STRIP = 2
"""A strip of a base plate is at least so many times as wide as the lowest piece is high. [-]"""


@dataclass(frozen=True, slots=True)
class CastLift:
    """Pieces whose tops come level, and further lines of their table."""

    name: str
    pieces: tuple[CastPiece, ...]
    rows: tuple[str, ...] = ()


def both_hands(right: CastPiece, mark: str, name: str) -> tuple[CastPiece, CastPiece]:
    """A right-hand piece, and the left one of its shape."""
    top = other_hand(right.top) if right.top else ()
    outline = other_hand(right.outline)
    return right, replace(right, mark=mark, name=name, mirror=right.mark, outline=outline, top=top)


def halves(whole: CastPiece, lines: CastLines) -> tuple[CastPiece, CastPiece]:
    """A rectangular piece astride the center line, in two. [-]"""
    (_, front), (right, _), (_, back), _ = whole.outline
    half = replace(
        whole,
        mark=f"{whole.mark}R",
        name=f"right half of the {whole.name}",
        outline=box(lines.half_joint, right, front, back),
    )
    return both_hands(half, f"{whole.mark}L", f"left half of the {whole.name}")


def strips(lines: CastLines, count: int) -> tuple[int, list[tuple[int, int]]]:
    """The width of the base in so many strips.

    Parameters
    ----------
    lines : CastLines
    count : int
        Two at least. [-]

    Returns
    -------
    tuple
        Half the one astride the center line, nought for an even count; left and right of those
        beside it. [-]
    """
    joint, middle, left = 2 * lines.half_joint, 0, lines.half_joint
    if count % 2:
        middle = round((2 * lines.reach - (count - 1) * joint) / count / 2)
        left = middle + joint
    found = []
    for rest in range(count // 2, 0, -1):
        width = (lines.reach - left - (rest - 1) * joint) // rest
        found.append((left, left + width))
        left += width + joint
    return middle, found


def plates(lines: CastLines) -> tuple[CastPiece, ...]:
    """Base plates under the whole, in as few strips as their weight allows.

    Raises
    ------
    InputError
        When even a narrow strip is too heavy.
    """
    height, count = lines.marks(lines.wish.plate), 2
    while True:
        middle, right = strips(lines, count)
        widths = [2 * middle] * (count % 2) + [b - a for a, b in right]
        volume = max(widths) * lines.rear * height
        if lines.wish.weight(volume) <= lines.wish.most:
            break
        if min(widths) < STRIP * lines.least:
            why = "narrower strips are not cut, so take a thinner plate"
            raise heavy("A strip of the base plate", lines, volume, why)
        count += 1
    made: list[CastPiece] = []
    if middle:
        outline = box(-middle, middle, 0, lines.rear)
        made.append(CastPiece("PM", "middle base plate", "base plate", outline, height))
    for number, (start, end) in enumerate(right, 1):
        tail = "" if len(right) == 1 else str(number)
        one = CastPiece(
            f"PR{tail}",
            f"right base plate {tail}".strip(),
            "base plate",
            box(start, end, 0, lines.rear),
            height,
        )
        made += both_hands(one, f"PL{tail}", f"left base plate {tail}".strip())
    return tuple(made)


def wall_outline(lines: CastLines, start: int) -> Ring:
    """Right wall, from a depth back to the end of its rebate for the back.

    Parameters
    ----------
    lines : CastLines
    start : int
        Depth at which it begins, in marks of the tape. [-]

    Returns
    -------
    Ring
        [-]
    """
    inside, edge = lines.side(start), lines.narrow + lines.rebate
    out = lines.narrow + lines.thick
    return (
        (inside, start),
        (inside + lines.thick, start),
        (out, lines.lip),
        (out, lines.rear),
        (edge, lines.rear),
        (edge, lines.lip),
        (lines.narrow, lines.lip),
    )


def course(
    lines: CastLines, kind: str, height: int, parts: int, start: int = 0, rows: tuple[str, ...] = ()
) -> tuple[CastPiece, ...]:
    """Both walls and the back of one course.

    Parameters
    ----------
    lines : CastLines
    kind : str
        A key of ``KINDS``.
    height, parts : int
        Bed to bed; and in how many parts the back is cast, one or two. [-]
    start : int
        How far back its walls begin. [-]
    rows : tuple of str
        Further lines of the tables.
    """
    word, before = KINDS[kind]
    right = CastPiece(
        f"{kind}R",
        f"right {word}",
        f"{before}wall",
        wall_outline(lines, start),
        height,
        rows=rows,
    )
    half = lines.narrow + lines.rebate - lines.perpend[1]
    back = CastPiece(
        f"{kind}B",
        f"{before}back",
        f"{before}back",
        box(-half, half, lines.deep, lines.rear),
        height,
        rows=rows,
    )
    stands = (back,) if parts == 1 else halves(back, lines)
    return (*both_hands(right, f"{kind}L", f"left {word}"), *stands)


def lintels(lines: CastLines, height: int, rows: tuple[str, ...]) -> tuple[CastPiece, ...]:
    """The lintel in one beam, or in beams one behind the other, the rear one first.

    Parameters
    ----------
    lines : CastLines
    height : int
        In marks of the tape. [-]
    rows : tuple of str
        Further lines of the tables.

    Raises
    ------
    InputError
        When even a thin beam is too heavy: a straight lintel is not cut across.
    """
    depth, joint = lines.breast, lines.perpend[1]
    count = 1
    while True:
        thick = (depth - (count - 1) * joint) // count
        volume = 2 * lines.reach * (depth - (count - 1) * (thick + joint)) * height
        if lines.wish.weight(volume) <= lines.wish.most:
            break
        if (depth - count * joint) // (count + 1) < lines.least:
            why = "a straight lintel is not cut across, so allow more or lower the throat"
            name = "The lintel" if count == 1 else "A beam of the lintel"
            raise heavy(name, lines, volume, why)
        count += 1
    made = []
    for number in range(count):
        front = number * (thick + joint)
        back = depth if number == count - 1 else front + thick
        one = CastPiece(
            "LS" if count == 1 else f"LS{number + 1}",
            "lintel" if count == 1 else f"lintel, beam {number + 1} from the front",
            "lintel",
            box(-lines.reach, lines.reach, front, back),
            height,
            rows=('material = "reinforced refractory concrete"', LAID_AFTER, *rows)
            if lines.lining
            else ('material = "reinforced refractory concrete"', *rows),
        )
        made.append(one)
    return tuple(made[::-1])
