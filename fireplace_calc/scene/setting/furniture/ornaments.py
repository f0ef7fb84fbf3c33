"""Vases, candlesticks, a clock, books, a picture, a plant. [m]"""

from __future__ import annotations

from functools import lru_cache
from math import cos, pi, sin
from typing import TYPE_CHECKING

from fireplace_calc.scene.setting.forms import block, circle, extruded, joined, rod, turned
from fireplace_calc.scene.setting.furniture.tables import book
from fireplace_calc.scene.setting.stood import Furniture, Made, gathered, made

if TYPE_CHECKING:
    from manifold3d import Manifold

LATHE = 11
"""Facets of what is turned. [-]"""


@lru_cache(maxsize=2)
def vase(key: str, stuff: str, high: float, wide: float) -> Made:
    """A vase with a narrow neck.

    Parameters
    ----------
    key, stuff : str
    high, wide : float
        [m]
    """
    shape = [(0.0, 0.0), (0.32, 0.0), (0.36, 0.02), (0.49, 0.3), (0.5, 0.42), (0.44, 0.58),
             (0.26, 0.74), (0.15, 0.84), (0.15, 0.92), (0.21, 1.0), (0.17, 1.0), (0.11, 0.9),
             (0.0, 0.88)]  # fmt: skip
    body = turned([(r * wide, z * high) for r, z in shape], LATHE)
    return made(key, "vase", stuff, body, smooth=True)


def candlestick(key: str, high: float) -> tuple[Made, Made]:
    """A candlestick of brass, and its candle.

    Parameters
    ----------
    key : str
    high : float
        Of the stick. [m]
    """
    shape = [(0, 0), (0.048, 0), (0.05, 0.006), (0.03, 0.016), (0.011, 0.028), (0.009, 0.05),
             (0.017, 0.06), (0.009, 0.072)]  # fmt: skip
    top = [(0.009, high - 0.04), (0.018, high - 0.03), (0.009, high - 0.022),
           (0.024, high - 0.008), (0.024, high), (0, high)]  # fmt: skip
    candle = turned([(0, high), (0.0105, high), (0.0105, high + 0.15), (0.004, high + 0.157),
                     (0, high + 0.157)], 8)  # fmt: skip
    return (
        made(key, "candlestick", "brass", turned([*shape, *top], 8), smooth=True),
        made(f"{key} candle", "candle", "paper", candle, smooth=True),
    )


def clock() -> tuple[Made, ...]:
    """A clock for a mantel, with a round head; its front toward negative y."""
    half, deep, spring = 0.1, 0.09, 0.15
    bend = [(half * cos(t), spring + half * sin(t)) for t in (pi * k / 12 for k in range(13))]
    outline = [(-half, 0.02), (half, 0.02), *bend]
    case = extruded(outline, deep).rotate((90, 0, 0)).translate((0, deep / 2, 0))
    foot = block(
        (-half - 0.02, half + 0.02), (-deep / 2 - 0.012, deep / 2 + 0.005), (0, 0.02), 0.003
    )
    front = -deep / 2
    ring = extruded(circle(0.073, 20), 0.008) - extruded(circle(0.064, 20), 0.02)
    face = extruded(circle(0.064, 20), 0.003)
    hands = joined(
        [
            block((-0.002, 0.002), (0.0, 0.05), (0.0, 0.0015)),
            block((-0.003, 0.003), (0.0, 0.034), (0.0, 0.0015)).rotate((0, 0, -62)),
        ]
    )

    def upright(body: Manifold, off: float) -> Manifold:
        return body.rotate((90, 0, 0)).translate((0, front - off, spring + 0.005))

    return (
        made("clock", "clock", "walnut", joined([case, foot])),
        made("clock ring", "clock", "brass", upright(ring, 0.0), smooth=True),
        made("clock face", "clock", "paper", upright(face, 0.0)),
        made("clock hands", "clock", "dark", upright(hands, 0.0035)),
    )


def pile_of_books() -> tuple[Made, ...]:
    """Three books that lie on each other."""
    sizes = ((0.23, 0.15, 0.03, 3, "leather"), (0.21, 0.14, 0.024, -5, "linen"),
             (0.18, 0.13, 0.022, 8, "wool"))  # fmt: skip
    level, lying = 0.0, []
    for k, (high, deep, thick, turn, cover) in enumerate(sizes):
        body = book(high, deep, thick).rotate((0, 0, turn)).translate((0, 0, level))
        lying.append(made(f"book {k + 1} on the mantel", "book", cover, body))
        level += thick + 0.0005
    return tuple(lying)


def picture(key: str, wide: float, high: float) -> tuple[Made, ...]:
    """A framed landscape of our own, hung with its back at nought, its middle at nought.

    Parameters
    ----------
    key : str
    wide, high : float
        Over the frame. [m]
    """
    bar, deep = min(0.035, wide / 10), 0.028
    x, z = (-wide / 2, wide / 2), (-high / 2, high / 2)

    def off(by: float, y0: float, y1: float) -> Manifold:
        return block((x[0] + by, x[1] - by), (-y1, -y0), (z[0] + by, z[1] - by))

    frame = off(0.0, 0.0, deep) - off(bar, 0.008, 1.0)
    mat = bar + min(0.07, wide / 8)
    sheet = off(bar, 0.008, 0.012) - off(mat, 0.0, 1.0)
    w, h = wide / 2 - mat, high / 2 - mat
    far = [(-w, -0.1 * h), (-0.5 * w, 0.22 * h), (-0.15 * w, 0.06 * h), (0.3 * w, 0.38 * h),
           (0.7 * w, 0.12 * h), (w, 0.2 * h)]  # fmt: skip
    near = [(-w, -0.3 * h), (-0.45 * w, -0.16 * h), (0.1 * w, -0.42 * h), (0.6 * w, -0.25 * h),
            (w, -0.4 * h)]  # fmt: skip

    def hills(ridge: list[tuple[float, float]], y0: float, y1: float) -> Manifold:
        outline = [(-w, -h), (w, -h), *reversed(ridge)]
        return extruded(outline, y1 - y0).rotate((90, 0, 0)).translate((0, -y0, 0))

    return (
        made(f"{key} frame", "picture", "walnut", frame),
        made(f"{key} mat", "picture", "paper", sheet),
        made(f"{key} sky", "picture", "picture sky", off(mat, 0.008, 0.009)),
        made(f"{key} hills", "picture", "picture hills", hills(far, 0.009, 0.0097)),
        made(f"{key} field", "picture", "picture field", hills(near, 0.0097, 0.0104)),
    )


@lru_cache(maxsize=1)
def plant() -> Furniture:
    """A plant in a pot."""
    pot = turned([(0, 0), (0.12, 0), (0.165, 0.25), (0.175, 0.25), (0.178, 0.28), (0.15, 0.28),
                  (0.147, 0.24), (0, 0.24)], LATHE)  # fmt: skip
    stems: list[Manifold] = []
    leaves: list[Manifold] = []
    for k in range(3):
        way = 2.1 * k + 0.4
        head = (0.13 * cos(way), 0.13 * sin(way), 1.25 - 0.18 * k)
        foot = (0.03 * cos(way), 0.03 * sin(way), 0.252)
        stems.append(rod([foot, head], 0.009, 5))
        for m in range(5):
            share = 0.3 + 0.7 * m / 4
            at = tuple(a + share * (b - a) for a, b in zip(foot, head, strict=True))
            turn, rise = 137.5 * m + 70 * k, 28 + 40 * m / 4
            leaf = _leaf(0.27 - 0.08 * m / 4, 0.13).translate((0.01, 0, 0))
            leaves.append(leaf.rotate((0, -rise, turn)).translate((at[0], at[1], at[2])))
    return gathered(
        made("pot", "plant pot", "clay", pot, smooth=True),
        made("stems", "plant", "bark", stems, smooth=True),
        made("leaves", "plant", "leaf", joined(leaves) - joined(stems)),
    )


def _leaf(long: float, wide: float) -> Manifold:
    """A leaf that hangs over at its tip, from nought along x."""
    from manifold3d import Manifold

    def bend(at: float) -> float:
        return -0.9 * at * at / long

    def piece(a: float, wa: float, b: float, wb: float) -> Manifold:
        corners = [(x, s * w, bend(x) + 0.25 * w) for x, w in ((a, wa), (b, wb)) for s in (-1, 1)]
        corners += [(a, 0, bend(a) - 0.002), (b, 0, bend(b) - 0.002)]
        return Manifold.hull_points(corners)

    half, widest = wide / 2, 0.4 * long
    return joined([piece(0.0, 0.006, widest, half), piece(widest, half, long, 0.004)])
