"""What color every dot's face has by itself: the stuff's tone, brick by brick where it is laid."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.scene.records import FaceLayout, Thing
from fireplace_calc.scene.still.seen_dots import Faces, Seen
from fireplace_calc.scene.still.sight import Sight
from fireplace_calc.scene.stuffs import Stuff, stuffs

FINE = 260.0
"""A layout is painted as fine as that. [1/m]"""
SAME_WAY = 0.99
"""Cosine within which a face looks the way of a layout. [-]"""
UP = np.array((0.0, 0.0, 1.0))


def linear(tone: str) -> Array:
    """Light that a color ``#rrggbb`` sends back: red, green, blue. [-]"""
    coded = np.array([int(tone[k : k + 2], 16) for k in (1, 3, 5)]) / 255
    light: Array = np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)
    return light


def coats(
    things: Sequence[Thing],
    layouts: Sequence[FaceLayout],
    faces: Faces,
    seen: Seen,
    sight: Sight,
) -> Array:
    """Color of every dot.

    Parameters
    ----------
    things : sequence of Thing
    layouts : sequence of FaceLayout
    faces : Faces
        Of the things.
    seen : Seen
        What every dot shows.
    sight : Sight
        From where.

    Returns
    -------
    array
        Light it sends back: red, green, blue, row by row. [-]
    """
    known = stuffs()
    plain = np.array([_plain(known.get(thing.stuff)) for thing in things])
    color: Array = plain[faces.owner][seen.face]
    for layout in reversed(layouts):  # of several that fit a face the first counts
        mine = np.array([_wears(thing, layout) for thing in things])[faces.owner]
        if layout.normal is not None:
            mine &= np.abs(faces.normals @ np.asarray(layout.normal)) > SAME_WAY
        rows, columns = np.nonzero(mine[seen.face] & (seen.face >= 0))
        if not len(rows) or layout.stuff not in known:
            continue
        painted = _paint(layout, known[layout.stuff])
        points = sight.points(rows, columns, seen.away[rows, columns])
        for some, along, up in _ways(layout, faces.normals, seen.face[rows, columns]):
            color[rows[some], columns[some]] = _looked_up(layout, painted, points[some], along, up)
    return color


def _plain(stuff: Stuff | None) -> Array:
    """The middle of a stuff's tones; gray where nobody has said."""
    if stuff is None:
        return np.full(3, 0.4)
    middle: Array = np.mean([linear(tone) for tone in stuff.tones], axis=0)
    return middle


def _wears(thing: Thing, layout: FaceLayout) -> bool:
    return thing.stuff == layout.stuff and (not layout.things or thing.key in layout.things)


def _ways(
    layout: FaceLayout, normals: Array, shown: IntArray
) -> Iterator[tuple[IntArray, Array, Array]]:
    """Dots of one direction together, with the layout's two directions on their faces."""
    if layout.along is not None and layout.up is not None:
        yield np.arange(len(shown)), np.asarray(layout.along), np.asarray(layout.up)
        return
    ways, which = np.unique(np.round(normals, 2), axis=0, return_inverse=True)
    of_dot = which.reshape(-1)[shown]
    for number in np.unique(of_dot):
        normal, some = ways[number], np.flatnonzero(of_dot == number)
        if abs(normal[2]) > SAME_WAY:
            yield some, np.array((1.0, 0.0, 0.0)), np.array((0.0, 1.0, 0.0))
            continue
        along = np.cross(UP, normal)
        along /= np.linalg.norm(along)
        up = np.cross(normal, along)
        yield some, along, up / np.linalg.norm(up)


def _paint(layout: FaceLayout, stuff: Stuff) -> Array:
    """A layout in dots, rows from its foot up: light sent back."""
    from PIL import Image, ImageDraw  # here, so that whoever never looks need not wait

    wide, high = (max(round(side * FINE), 1) for side in (layout.width, layout.height))
    units = Image.new("I", (wide, high), 0)
    pen = ImageDraw.Draw(units)
    for number, ring in enumerate(layout.rings, 1):
        corners = np.asarray(ring, dtype=float) * (wide / layout.width, high / layout.height)
        for shift in _over_the_edge(corners, wide, high) if layout.repeats else ((0, 0),):
            pen.polygon([tuple(corner) for corner in (corners + shift).tolist()], fill=number)
    drawn = np.random.default_rng(len(layout.rings))
    tones = np.array([linear(tone) for tone in stuff.tones])
    chosen = tones[drawn.integers(0, len(tones), len(layout.rings))]
    chosen = chosen * (1 + stuff.vary * drawn.uniform(-1, 1, (len(layout.rings), 1)))
    joint = linear(layout.joint or stuff.joint or stuff.tones[0]) * 0.75
    light: Array = np.concatenate((joint[None], chosen))[np.asarray(units, dtype=int)]
    return light * drawn.uniform(0.94, 1.06, (high, wide, 1))


def _over_the_edge(corners: Array, wide: int, high: int) -> list[tuple[int, int]]:
    """Where a unit is drawn, so that what reaches over one edge comes in at the other. [dots]"""
    (left, low), (right, top) = corners.min(axis=0), corners.max(axis=0)
    across = [n * wide for n in range(-int(right // wide), 1 - int(left // wide))]
    over = [n * high for n in range(-int(top // high), 1 - int(low // high))]
    return [(x, y) for x in across for y in over]


def _looked_up(layout: FaceLayout, painted: Array, points: Array, along: Array, up: Array) -> Array:
    """The layout's color at points of the room."""
    there = points - np.asarray(layout.origin)
    high, wide = painted.shape[:2]
    across = np.floor(there @ along / layout.width * wide).astype(int)
    over = np.floor(there @ up / layout.height * high).astype(int)
    if layout.repeats:
        over, across = over % high, across % wide
    found: Array = painted[np.clip(over, 0, high - 1), np.clip(across, 0, wide - 1)]
    return found
