"""Mantels by hand: every level slice of what hangs on the face, its volume, and how near the opening it comes. Two families, with
every size told: a beam on two corbels, and pilasters with a frieze under a shelf.

Corbels are as high as the beam is deep or thick, whichever is less: over 82 % of that an S from 20 % of the beam's depth to 81 %
(0.95 of 0.85), above it 85 %. Of a pilaster the plinth is 1.4 of its width high (a fifth of the whole at most), the cap half its
width (a tenth at most), the shaft stands out three quarters of base and cap, the board of the frieze six tenths. A shelf has a
hollow in its lower half that goes four fifths of the way out. Curves are eight chords.
"""

from __future__ import annotations

import math
from types import SimpleNamespace


def pieces(s) -> list:
    """Every slice: as a code asks about it, with its volume. [m, m3]"""
    mantel = s.d.mantel
    if mantel.family == "piece by piece":
        return list(s.d.surround.trim)
    found = beam(s, mantel) if mantel.family == "beam on corbels" else pilasters(s, mantel)
    burns = mantel.material in ("wood", "painted wood")
    return [
        SimpleNamespace(
            distance=apart(s, inner, low, high),
            projection=max(out_low, out_high),
            place="above" if low > s.head - 1e-9 else "beside",
            combustible=burns,
            volume=volume,
        )
        for inner, out_low, out_high, low, high, volume in found
    ]


def slice_(inner, wide_low, wide_high, out_low, out_high, low, high):
    """Simpson's rule is exact for the product of two straight lines."""
    mid = (wide_low + wide_high) / 2 * (out_low + out_high) / 2
    volume = (high - low) * (wide_low * out_low + 4 * mid + wide_high * out_high) / 6
    return inner, out_low, out_high, low, high, volume


def beam(s, m) -> list:
    low = s.head + m.over_opening
    found = [slice_(0.0, *[2 * (s.half + m.beyond)] * 2, m.depth, m.depth, low, low + m.thickness)]
    tall, foot = min(m.depth, m.thickness), low - min(m.depth, m.thickness)
    for _ in "lr":
        inner = s.half + m.beside
        for k in range(8):
            out = [
                m.depth * (0.2 + (0.8075 - 0.2) * math.sin(math.pi * n / 16) ** 2)
                for n in (k, k + 1)
            ]
            a, b = (foot + 0.82 * tall * n / 8 for n in (k, k + 1))
            found.append(slice_(inner, m.support, m.support, *out, a, b))
        block = (0.85 * m.depth,) * 2
        found.append(slice_(inner, m.support, m.support, *block, foot + 0.82 * tall, low))
    return found


def pilasters(s, m) -> list:
    d, p, wide = s.d, m.projection, m.support
    near, far = s.half + m.beside, s.half + m.beside + wide
    low = s.head + m.over_opening
    on_hearth = d.hearth.front > 0 and s.apron > 0 and near < s.half + d.hearth.side
    foot = s.apron if on_hearth else 0.0
    assert not on_hearth or far <= s.half + d.hearth.side  # else it would stand half on the floor
    plinth = min(1.4 * wide, (low - foot) / 5)
    cap = min(wide / 2, (low - foot) / 10)
    found = []
    for _ in "lr":
        found.append(slice_(near, wide, wide, p, p, foot, foot + plinth))
        found.append(slice_(near, wide, wide, 0.75 * p, 0.75 * p, foot + plinth, low - cap))
        found += hollow(near, lambda out: wide, 0.75 * p, p, low - cap, low)
        found.append(slice_(near, wide, wide, p, p, low, low + m.frieze))
    found.append(slice_(0.0, 2 * near, 2 * near, 0.6 * p, 0.6 * p, low, low + m.frieze))
    top, half = low + m.frieze, s.half + m.beyond
    lip = p + 0.8 * (m.depth - p)

    def long(
        out,
    ):  # from the pilasters' edges at the pilasters' depth to the ends of the shelf at its own
        return 2 * (far + (half - far) * (out - p) / (m.depth - p))

    found += hollow(0.0, long, p, lip, top, top + m.thickness / 2)
    board = (m.depth, m.depth, top + m.thickness / 2, top + m.thickness)
    return [*found, slice_(0.0, 2 * half, 2 * half, *board)]


def hollow(inner, long, start, end, low, high) -> list:
    """A quarter of an ellipse, upright below and level above."""
    turn = [math.radians(11.25 * k) for k in range(9)]
    out = [end - (end - start) * math.cos(t) for t in turn]
    up = [low + (high - low) * math.sin(t) for t in turn]
    return [
        slice_(inner, long(out[k]), long(out[k + 1]), out[k], out[k + 1], up[k], up[k + 1])
        for k in range(8)
    ]


def apart(s, inner: float, low: float, high: float) -> float:
    """To the nearest of many points along the edge of the opening."""
    if s.hearth <= high and low <= s.spring:
        return max(inner - s.half, 0.0)
    if high < s.hearth:
        return math.hypot(max(inner - s.half, 0.0), s.hearth - high)
    rise = s.head - s.spring
    if rise <= 0:
        return math.hypot(max(inner - s.half, 0.0), low - s.head)
    radius = s.half**2 / 2 / rise + rise / 2
    reach, middle = math.asin(min(s.half / radius, 1.0)), s.head - radius

    def away(turn):
        return math.hypot(inner - radius * math.sin(turn), low - middle - radius * math.cos(turn))

    a, b = 0.0, reach  # the way to the arch falls and then rises: thirds
    for _ in range(200):
        third = (b - a) / 3
        a, b = (a, b - third) if away(a + third) < away(b - third) else (a + third, b)
    return away((a + b) / 2)
