"""Which face every dot of a picture shows, and how far away it is."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array, IntArray
from fireplace_calc.scene.records import Thing
from fireplace_calc.scene.still.sight import NEAREST, Sight

STAMPS = (4, 8, 16, 32)
"""Triangles no larger than these are laid many at a time. [dots]"""
ROUND = 0.5
"""Cosine up to which faces that meet are one to the eye, where a thing is round. [-]"""
STAMPED = 400_000
"""Dots that are looked at together. [-]"""


@dataclass(frozen=True, eq=False)
class Faces:
    """Every face of some things.

    Attributes
    ----------
    corners : array
        Three points a face. [m]
    normals : array
        Square to each face, outward. [-]
    owner : array
        Place of its thing among the things. [-]
    rounded : array
        Direction at each corner of a face: its own, or of what is round to the eye the middle of
        all that meet there. [-]
    """

    corners: Array
    normals: Array
    owner: IntArray
    rounded: Array


@dataclass(frozen=True, eq=False)
class Seen:
    """What every dot shows.

    Attributes
    ----------
    face : array
        Place of the face, -1 where there is none. [-]
    away : array
        From the eye, along the middle of its sight; endless where there is nothing. [m]
    """

    face: IntArray
    away: Array


def faces_of(things: tuple[Thing, ...]) -> Faces:
    """Every face of some things, one behind the other."""
    corners = np.concatenate([np.asarray(t.points, dtype=float)[t.faces] for t in things])
    square = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    length = np.linalg.norm(square, axis=1, keepdims=True)
    owner = np.repeat(np.arange(len(things)), [len(t.faces) for t in things])
    normals = square / np.maximum(length, 1e-12)
    rounded, start = np.repeat(normals[:, None], 3, axis=1), 0
    for thing in things:
        part = slice(start, start := start + len(thing.faces))
        if thing.smooth:
            rounded[part] = _rounded(thing, square[part], normals[part])
    return Faces(corners, normals, owner, rounded)


def _rounded(thing: Thing, square: Array, normals: Array) -> Array:
    """Directions at the corners of a round thing; an edge sharper than that stays one. [-]"""
    _, same = np.unique(np.round(thing.points, 5), axis=0, return_inverse=True)
    corner = same.reshape(-1)[thing.faces]
    summed = np.zeros((corner.max() + 1, 3))
    for k in range(3):
        np.add.at(summed, corner[:, k], square)
    summed /= np.maximum(np.linalg.norm(summed, axis=1, keepdims=True), 1e-12)
    met: Array = summed[corner]
    sharp = np.einsum("ijk,ik->ij", met, normals) < ROUND
    met[sharp] = np.repeat(normals[:, None], 3, axis=1)[sharp]
    return met


def directions(faces: Faces, number: IntArray, points: Array) -> Array:
    """Direction of each dot's face where the dot lies on it. [-]

    Parameters
    ----------
    faces : Faces
    number : array
        Of the face that the dot shows. [-]
    points : array
        Of the dots. [m]
    """
    a, b, c = faces.corners[number].transpose(1, 0, 2)
    normal = faces.normals[number]

    def share(from_: Array, to: Array) -> Array:
        turned: Array = np.einsum("ij,ij->i", np.cross(to - from_, points - from_), normal)
        return np.maximum(turned, 0.0)

    shares = np.stack((share(b, c), share(c, a), share(a, b)), axis=1)
    shares /= np.maximum(shares.sum(axis=1, keepdims=True), 1e-15)
    met: Array = np.einsum("ij,ijk->ik", shares, faces.rounded[number])
    long = np.linalg.norm(met, axis=1, keepdims=True)
    return np.where(long > 1e-6, met / np.maximum(long, 1e-12), normal)


def look(faces: Faces, sight: Sight) -> Seen:
    """What of the faces is seen, and how far away.

    Parameters
    ----------
    faces : Faces
    sight : Sight

    Returns
    -------
    Seen
        The nearest face of every dot's middle.
    """
    turned = sight.turned(faces.corners.reshape(-1, 3)).reshape(-1, 3, 3)
    nearest = np.zeros((sight.height, sight.width))  # one over the distance
    face = np.full(nearest.shape, -1, dtype=int)
    ahead = (turned[:, :, 2] > NEAREST).sum(axis=1)
    dots, near, number = _in_sight(turned, ahead, sight)
    spans = np.ceil(dots.max(axis=1)) - np.floor(dots.min(axis=1)) + 1
    side, least = spans.max(axis=1), 0
    for most in STAMPS:
        some = np.flatnonzero((side > least) & (side <= most))
        step = max(STAMPED // most**2, 1)
        for start in range(0, len(some), step):
            part = some[start : start + step]
            _stamp(dots[part], near[part], number[part], most, nearest, face)
        least = most
    for k in np.flatnonzero(side > least):
        _fill(dots[k], near[k], int(number[k]), nearest, face)
    with np.errstate(divide="ignore"):
        return Seen(face, 1.0 / nearest)


def _in_sight(turned: Array, ahead: IntArray, sight: Sight) -> tuple[Array, Array, IntArray]:
    """Triangles that may be seen: their corners in dots, one over how far each is, their face."""
    whole = np.flatnonzero(ahead == 3)
    rings = [turned[whole]]
    numbers = [whole]
    for part in np.flatnonzero((ahead > 0) & (ahead < 3)):
        ring = _before_the_eye(turned[part])
        for k in range(1, len(ring) - 1):
            rings.append(ring[None, [0, k, k + 1]])
            numbers.append(np.full(1, part))
    corners, number = np.concatenate(rings), np.concatenate(numbers)
    dots = sight.dots(corners.reshape(-1, 3)).reshape(-1, 3, 2)
    size = (sight.width, sight.height)
    seen = ((dots.max(axis=1) > 0) & (dots.min(axis=1) < size)).all(axis=1)
    return dots[seen], 1.0 / corners[seen, :, 2], number[seen]


def _stamp(
    dots: Array, near: Array, number: IntArray, side: int, nearest: Array, face: IntArray
) -> None:
    """Lay many small triangles over what is behind them, each in a square of so many dots."""
    high, wide = nearest.shape
    corner = np.floor(dots.min(axis=1)).astype(int)
    steps = np.arange(side)
    column, row = corner[:, 0, None] + steps, corner[:, 1, None] + steps
    x, y = column[:, None, :] + 0.5, row[:, :, None] + 0.5
    (ax, ay), (bx, by), (cx, cy) = dots.transpose(1, 2, 0)[:, :, :, None, None]
    area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    with np.errstate(divide="ignore", invalid="ignore"):
        of_b = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / area
        of_c = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / area
        inside = (of_b >= -1e-9) & (of_c >= -1e-9) & (of_b + of_c <= 1 + 1e-9)
    inside &= (np.abs(area) > 1e-9) & (x > 0) & (x < wide) & (y > 0) & (y < high)
    which, down, across = np.nonzero(inside)
    if not len(which):
        return
    first, second, third = near[which].T
    of_b, of_c = of_b[inside], of_c[inside]
    here = first + of_b * (second - first) + of_c * (third - first)
    at = row[which, down] * wide + column[which, across]
    order = np.argsort(here)  # the nearest is laid last
    at, here, which = at[order], here[order], which[order]
    wins = here > nearest.ravel()[at] * (1 + 1e-6)
    nearest.ravel()[at[wins]] = here[wins]
    face.ravel()[at[wins]] = number[which[wins]]


def _before_the_eye(ring: Array) -> Array:
    """What of a face lies ahead, as a ring."""
    kept = []
    for here, there in zip(ring, np.roll(ring, -1, axis=0), strict=True):
        if here[2] > NEAREST:
            kept.append(here)
        if (here[2] > NEAREST) != (there[2] > NEAREST):
            share = (NEAREST - here[2]) / (there[2] - here[2])
            kept.append(here + share * (there - here))
    return np.array(kept)


def _fill(dots: Array, near: Array, number: int, nearest: Array, face: IntArray) -> None:
    """Lay one triangle over what is behind it."""
    (ax, ay), (bx, by), (cx, cy) = dots.tolist()
    height, width = nearest.shape
    low_x, high_x = max(int(min(ax, bx, cx) - 0.5), 0), min(int(max(ax, bx, cx) + 1.5), width)
    low_y, high_y = max(int(min(ay, by, cy) - 0.5), 0), min(int(max(ay, by, cy) + 1.5), height)
    area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    if low_x >= high_x or low_y >= high_y or abs(area) < 1e-9:
        return
    x = np.arange(low_x, high_x) + 0.5
    y = (np.arange(low_y, high_y) + 0.5)[:, None]
    of_b = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / area
    of_c = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / area
    inside = (of_b >= -1e-9) & (of_c >= -1e-9) & (of_b + of_c <= 1 + 1e-9)
    if not inside.any():
        return
    here = near[0] + of_b * (near[1] - near[0]) + of_c * (near[2] - near[0])
    window = nearest[low_y:high_y, low_x:high_x]
    wins = inside & (here > window * (1 + 1e-6))
    window[wins] = here[wins]
    face[low_y:high_y, low_x:high_x][wins] = number
