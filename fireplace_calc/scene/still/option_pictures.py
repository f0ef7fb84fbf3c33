"""Options in one picture each, all from one standpoint, and where two of them differ."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO

import numpy as np

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.arrays import BoolArray
from fireplace_calc.scene.eyes import INSIDE, standpoints
from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing
from fireplace_calc.scene.still.still_picture import Still, still
from fireplace_calc.scene.whole_scene import gather_scene

SAME = 5e-4
"""Corners nearer to each other than this are the same. [m]"""
LEAST_SEEN = 2e-4
"""What shows less of a changed thing is not marked, as a share of the picture. [-]"""
MOST_MARKS = 6
"""Places that are marked, the largest first. [-]"""


@dataclass(frozen=True, eq=False)
class OptionPicture:
    """One option as it is seen.

    Attributes
    ----------
    result : Assessment
    things : tuple of Thing
    drawn : Still
    """

    result: Assessment
    things: tuple[Thing, ...]
    drawn: Still

    @property
    def png(self) -> bytes:
        """The picture as a file, to the dot."""
        return self._file("PNG", optimize=True)

    @property
    def jpeg(self) -> bytes:
        """The picture as a small file."""
        return self._file("JPEG", quality=88)

    def _file(self, kind: str, **how: int) -> bytes:
        from PIL import Image  # here, so that whoever never looks need not wait

        file = BytesIO()
        Image.fromarray(self.drawn.dots).save(file, kind, **how)
        return file.getvalue()


@dataclass(frozen=True, slots=True)
class Mark:
    """Where something has changed.

    Attributes
    ----------
    names : tuple of str
        The things in it.
    left, top, right, bottom : float
        Edges, of the picture's width and height, from the left and from the top. [-]
    """

    names: tuple[str, ...]
    left: float
    top: float
    right: float
    bottom: float


def one_standpoint(results: Sequence[Assessment], name: str = "Standing") -> Standpoint:
    """From where all options are seen, so that one can be laid over the other: of their own
    standpoints of a name the one farthest from the wall.

    Parameters
    ----------
    results : sequence of Assessment
    name : str
        One of ``eyes.INSIDE``.

    Raises
    ------
    ValueError
        When there is no option, or no such standpoint in the room.
    """
    if not results or name not in INSIDE:
        raise ValueError(
            f"{len(results)} options from {name!r}, but one at least is seen from one of"
            f" {', '.join(INSIDE)}."
        )
    own = [s for r in results for s in standpoints(r.geometry) if s.name == name]
    return min(own, key=lambda s: s.stands[1])


@dataclass(frozen=True, eq=False)
class InRoom:
    """All that is seen of an option in its room, to be drawn on any thread.

    Attributes
    ----------
    result : Assessment
    things : tuple of Thing
    layouts : tuple of FaceLayout
    measures : RoomMeasures
    """

    result: Assessment
    things: tuple[Thing, ...]
    layouts: tuple[FaceLayout, ...]
    measures: RoomMeasures

    def drawn(self, standpoint: Standpoint, width: int, height: int) -> OptionPicture:
        """Its picture from a standpoint, of so many dots."""
        made = still(self.things, self.measures, standpoint, width, height, self.layouts)
        return OptionPicture(self.result, self.things, made)


def in_room(result: Assessment) -> InRoom:
    """All that is seen of an option in its room."""
    whole = gather_scene(result)
    return InRoom(result, (*whole.fireplace, *whole.setting), whole.layouts, whole.measures)


def option_picture(
    result: Assessment, standpoint: Standpoint, width: int = 720, height: int = 480
) -> OptionPicture:
    """One option from a standpoint.

    Parameters
    ----------
    result : Assessment
    standpoint : Standpoint
        As ``one_standpoint`` gives it.
    width, height : int
        Of the picture. [-]

    Returns
    -------
    OptionPicture
    """
    return in_room(result).drawn(standpoint, width, height)


def changed_keys(first: Sequence[Thing], other: Sequence[Thing]) -> frozenset[str]:
    """Keys of the things that are not alike, or are in one of both alone; of what only stands in
    the room none.
    """
    mine, theirs = (
        {thing.key: thing for thing in things if thing.kind != "setting"}
        for things in (first, other)
    )
    return frozenset(
        key
        for key in mine.keys() | theirs.keys()
        if key not in mine or key not in theirs or not _alike(mine[key], theirs[key])
    )


def _alike(one: Thing, other: Thing) -> bool:
    return (
        one.stuff == other.stuff
        and one.points.shape == other.points.shape
        and np.array_equal(one.faces, other.faces)
        and bool(np.abs(one.points - other.points).max(initial=0.0) < SAME)
    )


def marks(first: OptionPicture, other: OptionPicture) -> tuple[Mark, ...]:
    """Where on the other picture something is not as on the first, the largest place first.

    Parameters
    ----------
    first, other : OptionPicture
        From one standpoint, of one size.

    Returns
    -------
    tuple of Mark
        Places that lie over each other are one; what nobody sees from there has none.
    """
    changed = changed_keys(first.things, other.things)
    if not changed:
        return ()
    high, wide = other.drawn.owner.shape
    found = []
    for number, thing in enumerate(other.things):
        if thing.key in changed:
            seen = other.drawn.owner == number
            if seen.sum() > LEAST_SEEN * high * wide:
                found.append(_around(seen, thing.name))
    joined: list[Mark] = []
    for mark in sorted(found, key=_size, reverse=True):
        over = next((m for m in joined if _within(mark, m)), None)
        if over is None:
            joined.append(mark)
        else:
            joined[joined.index(over)] = Mark(
                tuple(dict.fromkeys((*over.names, *mark.names))),
                over.left,
                over.top,
                over.right,
                over.bottom,
            )
    return tuple(joined[:MOST_MARKS])


def _around(seen: BoolArray, name: str) -> Mark:
    high, wide = seen.shape
    rows, columns = np.flatnonzero(seen.any(axis=1)), np.flatnonzero(seen.any(axis=0))
    return Mark(
        (name,),
        float(columns[0] / wide),
        float(rows[0] / high),
        float((columns[-1] + 1) / wide),
        float((rows[-1] + 1) / high),
    )


def _size(mark: Mark) -> float:
    return (mark.right - mark.left) * (mark.bottom - mark.top)


def _within(mark: Mark, other: Mark) -> bool:
    """Whether nearly all of a mark lies in another."""
    across = min(mark.right, other.right) - max(mark.left, other.left)
    down = min(mark.bottom, other.bottom) - max(mark.top, other.top)
    return across > 0 and down > 0 and across * down > 0.9 * _size(mark)
