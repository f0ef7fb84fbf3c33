"""Make ``data/person.npz`` once: somebody 1.75 m tall who stands, in plain clothes, a hand in the
pocket. Rounded cones and cross sections of our own, joined smoothly as a field of distances; sizes
by the usual shares of stature (head 1/7.6, shoulder 0.82, hip 0.53, knee 0.28 of it), from memory.

    pip install fast-simplification manifold3d numpy
    python tests/bench/person.py
"""

from math import exp, log, sqrt
from pathlib import Path

import fast_simplification
import numpy as np
from manifold3d import Manifold, Mesh64

OUT = Path(__file__).resolve().parents[2] / "data" / "person.npz"
FINE = 0.015
"""Grid of the field. [m]"""
FACES = {"jumper": 500, "trousers": 430, "shoes": 190, "hair": 150, "skin": 460}
"""About so many are left of each piece."""
CUT = {"jumper": (0.895, 3.0), "trousers": (0.045, 0.893)}
"""Hems: lowest and highest. [m]"""


def cone(a, b, ra, rb, flat=1.0):
    """Distance to a rounded cone between two points, squeezed front to back."""
    a, b = np.array(a, float), np.array(b, float)
    way = b - a
    square = float(way @ way)

    def field(x, y, z):
        dx, dy, dz = x - a[0], y - a[1], z - a[2]
        t = min(max((dx * way[0] + dy * way[1] + dz * way[2]) / square, 0.0), 1.0)
        ex, ey, ez = dx - t * way[0], (dy - t * way[1]) / flat, dz - t * way[2]
        return sqrt(ex * ex + ey * ey + ez * ez) - (ra + t * (rb - ra))

    return field


def ball(at, sizes):
    """Distance to an ellipsoid, nearly."""

    def field(x, y, z):
        k = sqrt(sum(((p - q) / s) ** 2 for p, q, s in zip((x, y, z), at, sizes, strict=True)))
        return (k - 1) * min(sizes)

    return field


def stacked(levels):
    """Distance to a body of ellipses: level, half width, half depth, how far forward."""
    z0, a0, b0, y0 = (np.array(c, float) for c in zip(*levels, strict=True))

    def field(x, y, z):
        at = min(max(z, z0[0]), z0[-1])
        a, b, off = (float(np.interp(at, z0, c)) for c in (a0, b0, y0))
        k = sqrt((x / a) ** 2 + ((y - off) / b) ** 2)
        return max((k - 1) * b, z0[0] - z, z - z0[-1])

    return field


def smooth(k, *fields):
    def field(x, y, z):
        d = [f(x, y, z) for f in fields]
        least = min(d)
        if max(d) - least > 8 * k and sorted(d)[1] - least > 8 * k:
            return least
        return least - k * log(sum(exp((least - v) / k) for v in d))

    return field


def less(one, *others, by=0.0):
    return lambda x, y, z: max(one(x, y, z), *(by - o(x, y, z) for o in others))


def between(one, low, high):
    return lambda x, y, z: max(one(x, y, z), low - z, z - high)


def worn():
    """Every piece by name, with its box."""
    hips = stacked([(0.80, 0.15, 0.11, 0.005), (0.9, 0.168, 0.118, 0.01), (1.0, 0.148, 0.105, 0.0),
                    (1.08, 0.14, 0.1, 0.0)])  # fmt: skip
    standing = smooth(0.012, cone((0.085, 0, 0.9), (0.088, -0.01, 0.49), 0.098, 0.071),
                      cone((0.088, -0.01, 0.49), (0.09, 0.015, 0.07), 0.071, 0.058))  # fmt: skip
    loose = smooth(0.012, cone((-0.085, 0, 0.9), (-0.115, -0.055, 0.49), 0.098, 0.071),
                   cone((-0.115, -0.055, 0.49), (-0.135, 0.0, 0.07), 0.071, 0.058))  # fmt: skip
    trousers = smooth(0.014, hips, standing, loose)

    torso = stacked([(0.84, 0.178, 0.134, 0.008), (0.9, 0.177, 0.133, 0.008), (1.0, 0.166, 0.122, 0.002), (1.1, 0.152, 0.112, 0.0),
                     (1.22, 0.168, 0.118, 0.0), (1.32, 0.178, 0.118, 0.008),
                     (1.385, 0.165, 0.1, 0.018), (1.42, 0.12, 0.08, 0.022),
                     (1.48, 0.06, 0.06, 0.02)])  # fmt: skip
    right = smooth(0.012, cone((0.168, 0.02, 1.38), (0.232, 0.05, 1.13), 0.066, 0.052),
                   cone((0.232, 0.05, 1.13), (0.238, -0.025, 0.955), 0.052, 0.041))  # fmt: skip
    left = smooth(0.012, cone((-0.168, 0.02, 1.38), (-0.252, 0.07, 1.14), 0.064, 0.05),
                  cone((-0.252, 0.07, 1.14), (-0.19, -0.045, 0.955), 0.052, 0.043))  # fmt: skip
    yoke = smooth(
        0.012,
        *(cone((s * 0.03, 0.02, 1.43), (s * 0.15, 0.02, 1.392), 0.052, 0.06) for s in (-1, 1)),
    )
    jumper = smooth(0.014, torso, yoke, right, left)

    head = smooth(0.012, ball((0, 0.0, 1.655), (0.074, 0.094, 0.098)),
                  ball((0, -0.03, 1.59), (0.054, 0.06, 0.07)),
                  ball((0, -0.092, 1.615), (0.012, 0.018, 0.02)),
                  ball((0.073, 0.008, 1.625), (0.01, 0.02, 0.032)),
                  ball((-0.073, 0.008, 1.625), (0.01, 0.02, 0.032)))  # fmt: skip
    neck = cone((0, 0.02, 1.44), (0, 0.008, 1.58), 0.054, 0.05)
    face = smooth(0.012, head, neck)
    hand = smooth(0.008, cone((0.238, -0.028, 0.96), (0.236, -0.055, 0.845), 0.03, 0.036),
                  cone((0.236, -0.055, 0.845), (0.232, -0.072, 0.765), 0.03, 0.018),
                  cone((0.236, -0.078, 0.865), (0.226, -0.098, 0.81), 0.014, 0.011))  # fmt: skip
    hair = less(
        smooth(0.014, ball((0, 0.012, 1.668), (0.085, 0.1, 0.1)),
               ball((0, 0.062, 1.615), (0.066, 0.05, 0.07)),
               ball((0, 0.105, 1.655), (0.042, 0.04, 0.042))),
        lambda x, y, z: max(y + 0.062 + 0.5 * (z - 1.7), -0.2),
        ball((0, -0.095, 1.61), (0.075, 0.09, 0.09)),
    )  # fmt: skip

    def shoe(x, y, turn):
        c, s = np.cos(turn), np.sin(turn)
        toe = (x + 0.16 * s, y - 0.16 * c, 0.028)
        return between(
            smooth(0.012, cone((x, y + 0.03, 0.042), toe, 0.046, 0.034),
                   cone((x, y + 0.03, 0.05), (x, y + 0.02, 0.1), 0.046, 0.042)), 0.0, 0.11)  # fmt: skip

    shoes = (shoe(0.092, 0.01, 0.15), shoe(-0.137, -0.005, -0.3))
    both = lambda x, y, z: min(shoes[0](x, y, z), shoes[1](x, y, z))  # noqa: E731
    skin = lambda x, y, z: min(face(x, y, z), hand(x, y, z))  # noqa: E731
    return {
        "shoes": (both, (-0.3, -0.28, -0.03, 0.26, 0.16, 0.16)),
        "jumper": (jumper, (-0.36, -0.22, 0.8, 0.36, 0.22, 1.56)),
        "trousers": (trousers, (-0.26, -0.2, -0.04, 0.26, 0.2, 1.12)),
        "hair": (hair, (-0.13, -0.16, 1.48, 0.13, 0.2, 1.82)),
        "skin": (skin, (-0.13, -0.2, 0.68, 0.32, 0.18, 1.8)),
    }


def fewer(body, many):
    """The body with so many faces, by quadrics of error."""
    mesh = body.to_mesh64()
    points, faces = fast_simplification.simplify(
        np.array(mesh.vert_properties)[:, :3], mesh.tri_verts.astype("i4"), target_count=many
    )
    left = Manifold(Mesh64(np.ascontiguousarray(points, float), faces.astype("uint64")))
    assert left.status().name == "NoError"
    return left


def main():
    kept, low, high = {}, 9.0, -9.0
    made = {}
    for name, (field, box) in worn().items():
        fine = FINE * (0.6 if name in ("skin", "hair") else 1.0)
        body = Manifold.level_set(lambda x, y, z, f=field: -f(x, y, z), box, fine)
        low_cut, high_cut = CUT.get(name, (-1.0, 3.0))
        body = body.trim_by_plane((0, 0, 1), low_cut).trim_by_plane((0, 0, -1), -high_cut)
        body = fewer(body, FACES[name])
        for over in made.values():
            body = body - over
        parts = [b for b in body.decompose() if b.volume() > 2e-5]
        body = Manifold.compose(parts).simplify(0.001)
        made[name] = body
        low, high = min(low, body.bounding_box()[2]), max(high, body.bounding_box()[5])
        print(name, body.num_tri(), [round(v, 3) for v in body.bounding_box()])
    for name, body in made.items():
        stood = body.translate((0, 0, -low)).scale((1.75 / (high - low),) * 3).to_mesh64()
        kept[f"{name} points"] = np.round(stood.vert_properties[:, :3] * 1e4).astype("<i2")
        kept[f"{name} faces"] = stood.tri_verts.astype("<u2")
    np.savez_compressed(OUT, **kept)
    print(OUT.stat().st_size, "bytes")


if __name__ == "__main__":
    main()
