"""A bookcase with its books. [m]"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import TYPE_CHECKING

from fireplace_calc.scene.setting.forms import block, turned
from fireplace_calc.scene.setting.stood import Furniture, gathered, made

if TYPE_CHECKING:
    from manifold3d import Manifold

DEEP, BOARD = 0.27, 0.024
"""Of a bookcase: its depth, and the thickness of its boards. [m]"""
BAY = 0.33
"""From one shelf to the next. [m]"""
COVERS = ("wool", "leather", "linen", "glaze", "paper")
"""What books are bound in."""
GOLDEN = 0.6180339887
"""Steps of this much, of one, never fall into a pattern."""


@lru_cache(maxsize=8)
def bookcase(wide: float, bays: int) -> Furniture:
    """A bookcase of painted wood, not quite filled.

    Parameters
    ----------
    wide : float
        [m]
    bays : int
        Shelves of books, one over the other. [-]
    """
    foot, half = 0.08, wide / 2
    high = foot + bays * BAY + BOARD
    front, rear = -DEEP / 2, DEEP / 2
    between, crown = (-half + BOARD, half - BOARD), high - 0.02
    inside = (front + 0.01, rear - 0.012)
    boards = [
        block((-half, -half + BOARD), (front, rear), (0.0, crown)),
        block((half - BOARD, half), (front, rear), (0.0, crown)),
        block(between, (rear - 0.012, rear), (0.0, crown)),
        block(between, (front + 0.015, rear - 0.012), (0.0, foot - BOARD)),
        *(
            block(between, inside, (foot + k * BAY - BOARD, foot + k * BAY))
            for k in range(bays + 1)
        ),
        block((-half - 0.02, half + 0.02), (front - 0.02, rear), (crown, high)),
    ]
    books: dict[str, list[Manifold]] = {}
    for k in range(bays):
        for cover, body in _row(k, -half + BOARD + 0.01, half - BOARD - 0.01, front + 0.02):
            books.setdefault(cover, []).append(body.translate((0.0, 0.0, foot + k * BAY)))
    jar = turned(
        [(0, 0), (0.05, 0), (0.085, 0.06), (0.08, 0.13), (0.045, 0.17), (0.05, 0.19), (0, 0.19)], 12
    )
    return gathered(
        made("bookcase", "bookcase", "painted wood", boards),
        *(
            made(f"books in {cover}", "books", cover, bodies)
            for cover, bodies in sorted(books.items())
        ),
        made("jar", "jar", "clay", jar.translate((half - 0.25, 0.0, high)), smooth=True),
    )


def _row(k: int, left: float, right: float, front: float) -> Iterator[tuple[str, Manifold]]:
    """Books on one shelf, from one end, with a gap at the other; some lie."""
    at, n = left, 17 * k
    end = right - 0.1 - 0.14 * ((k * GOLDEN) % 1)
    while True:
        draw = [(n * GOLDEN * p) % 1 for p in (1.0, 2.3, 4.7)]
        thick, high, deep = 0.03 + 0.034 * draw[0], 0.19 + 0.09 * draw[1], 0.14 + 0.05 * draw[2]
        if at + thick > end:
            break
        set_back = 0.012 * draw[1]
        y = (front + set_back, front + set_back + deep)
        yield COVERS[int(len(COVERS) * draw[2])], block((at, at + thick), y, (0.0, high))
        at, n = at + thick + 0.002, n + 1
    if k % 2 == 0 and right - at > 0.2:
        for m in range(3):
            low = 0.031 * m
            x = (right - 0.19 + 0.012 * m, right - 0.01 * m)
            yield COVERS[(k + m) % 5], block(x, (front + 0.01, front + 0.15), (low, low + 0.03))
