"""Twenty whole designs: where everything stands and how large it is, against a second reckoning by hand (``tests/naive``).

Positions agree to a millionth of a millimetre. Round cuts are compared as the outline of 72 corners that the package draws.
"""

import math
from itertools import pairwise

import pytest
from naive.solids import Disc, Ring, Solid, Under
from naive.sums import gauss, shoelace
from naive.whole import NAMES, assessed, differs, naive
from naive.work import arch_plan

CORNERS = 36 * math.sin(math.pi / 36) / math.pi
"""Area of 72 corners over that of their circle."""


def test_there_are_twenty_designs_and_they_are_marked_as_invented():
    assert len(NAMES) >= 20
    assert all("nvented" in naive(name).d.note for name in NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_levels(name):
    mine, theirs = naive(name).s, assessed(name)
    from naive.levels import names

    assert differs(names(mine), theirs.levels) == {}
    assert list(theirs.levels.values()) == sorted(theirs.levels.values())


@pytest.mark.parametrize("name", NAMES)
def test_what_is_drawn_otherwise_than_asked_is_said(name):
    from naive.levels import drawn_otherwise

    said = assessed(name).geometry.frame.adjusted
    wanted = drawn_otherwise(naive(name).s)
    assert [line[: len(words)] for line, words in zip(said, wanted, strict=True)] == wanted


@pytest.mark.parametrize("name", NAMES)
def test_parts_and_voids_their_volume_material_foot_and_head(name):
    mine, theirs = naive(name), assessed(name)
    for solids, told in ((mine.parts, theirs.parts), (mine.voids, theirs.geometry.voids)):
        assert [part.name for part in told] == list(solids)
        assert {part.name: part.material for part in told} == {
            key: part.material for key, part in solids.items()
        }
        assert (
            differs(
                {key: part.volume for key, part in solids.items()},
                {p.name: p.volume for p in told},
                rel=1e-10,
                least=1e-13,
            )
            == {}
        )
        assert (
            differs(
                {key: part.bottom for key, part in solids.items()},
                {part.name: part.bottom for part in told},
            )
            == {}
        )
        assert (
            differs(
                {key: part.top for key, part in solids.items()},
                {part.name: part.top for part in told},
            )
            == {}
        )


def under_plan(arch: Under, z: float) -> tuple[float, float, float]:
    """Area and first moments of the air under an arch, strips front to back on either side of where it meets the sides."""
    wide = arch.half(z)
    bend = (
        min(max((arch.span / 2 - wide) / arch.splay, 0.0), arch.thick) if arch.splay else arch.thick
    )
    area = deep = 0.0
    for a, b in ((0.0, bend), (bend, arch.thick)):
        area += gauss(lambda y: 2 * min(wide, arch.span / 2 - arch.splay * y), a, b, 4)
        deep += gauss(lambda y: 2 * y * min(wide, arch.span / 2 - arch.splay * y), a, b, 4)
    return area, 0.0, deep


def plan_of(part: Solid, z: float) -> dict[str, float]:
    """Area, first moments, and the four sides of what is added at a level."""
    sums, sides = [0.0, 0.0, 0.0], []
    inside = part.breaks and min(part.breaks) < z < max(part.breaks)
    for sign, shapes in ((1, part.adds(z)), (-1, part.holes(z))) if inside else ():
        for shape in shapes:
            for k, value in enumerate(
                [v * CORNERS for v in shape.sums] if isinstance(shape, Disc) else shoelace(shape)
            ):
                sums[k] += sign * value
            if sign > 0:
                corners = (
                    [(shape.x - shape.r, shape.y - shape.r), (shape.x + shape.r, shape.y + shape.r)]
                    if isinstance(shape, Disc)
                    else shape
                )
                sides += corners
    for sign, arch in part.arches:
        if arch.spring < z < arch.top:
            cuts = (
                [under_plan(arch, z)]
                if isinstance(arch, Under)
                else [shoelace(outline) for outline in arch_plan(arch, z)]
            )
            for cut in cuts:
                for k, value in enumerate(cut):
                    sums[k] += sign * value
            if sign > 0:
                sides += [p for outline in arch_plan(arch, z) for p in outline]
    found = dict(zip(("area", "along", "deep"), sums, strict=True))
    if sides:
        xs, ys = zip(*sides, strict=True)
        found |= {"left": min(xs), "right": max(xs), "front": min(ys), "back": max(ys)}
    return found


def plan_told(part, z: float) -> dict[str, float]:
    """The same of the package's polygons."""
    adds, holes = part.plan(z)
    sums = [
        sum(shoelace(list(p))[k] for p in adds) - sum(shoelace(list(p))[k] for p in holes)
        for k in range(3)
    ]
    found = dict(zip(("area", "along", "deep"), sums, strict=True))
    if adds:
        xs, ys = zip(*(p for outline in adds for p in outline), strict=True)
        found |= {"left": min(xs), "right": max(xs), "front": min(ys), "back": max(ys)}
    return found


def stops(part: Solid) -> list[float]:
    """Levels where a part bends, arches counted in."""
    return sorted(
        {*part.breaks, *(z for _, a in part.arches for z in (a.spring, a.spring + a.rise, a.top))}
    )


@pytest.mark.parametrize("name", NAMES)
def test_every_part_lies_where_it_should_at_every_level(name):
    """Level cuts between all bends: area, first moments, and how far left, right, front and back they reach."""
    mine, theirs = naive(name), assessed(name).geometry.by_name
    wrong = {}
    for key, part in (mine.parts | mine.voids).items():
        levels = stops(part)
        for a, b in pairwise(levels):
            for share in (0.03, 0.41, 0.97):
                z = a + share * (b - a)
                if b - a > 1e-9 and (
                    bad := differs(plan_of(part, z), plan_told(theirs[key], z), least=1e-9)
                ):
                    wrong[key, z] = bad
    assert wrong == {}


def cut_upright(part: Solid, z: float) -> list[tuple[float, float]]:
    """Where a line front to back on each shape's own middle runs inside a part."""

    def run(shape) -> tuple[float, float]:
        if isinstance(shape, Disc):
            return shape.y - shape.r, shape.y + shape.r
        return min(y for _, y in shape), max(y for _, y in shape)

    inside = part.breaks and min(part.breaks) < z < max(part.breaks)
    adds, holes = (
        ([run(p) for p in part.adds(z)], [run(p) for p in part.holes(z)]) if inside else ([], [])
    )
    for sign, arch in part.arches:
        low = arch.spring + arch.rise if isinstance(arch, Ring) else arch.spring
        if low < z < arch.top:
            (adds if sign > 0 else holes).append((0.0, arch.thick))
    for c, d in holes:
        adds = [
            piece
            for a, b in adds
            for piece in ((a, min(b, c)), (max(a, d), b))
            if piece[1] > piece[0]
        ]
    return adds


def upright_sums(part: Solid) -> dict[str, float]:
    """Area of a part in the section, and its first moments front to back and up."""
    found = {"area": 0.0, "deep": 0.0, "up": 0.0}
    for a, b in pairwise(stops(part)):
        found["area"] += gauss(lambda z: sum(d - c for c, d in cut_upright(part, z)), a, b, 4)
        found["deep"] += gauss(
            lambda z: sum((d * d - c * c) / 2 for c, d in cut_upright(part, z)), a, b, 4
        )
        found["up"] += gauss(lambda z: z * sum(d - c for c, d in cut_upright(part, z)), a, b, 4)
    return found


@pytest.mark.parametrize("name", NAMES)
def test_the_upright_cut_on_the_centre_line(name):
    """Area of every part in the section, and its first moments. The cut follows a flue that steps aside."""
    mine, theirs, wrong = naive(name).parts, {part.name: part for part in assessed(name).parts}, {}
    for key, part in mine.items():
        told = [shoelace(list(p)) for p in theirs[key].section()]
        found = {what: sum(cut[k] for cut in told) for k, what in enumerate(("area", "deep", "up"))}
        if bad := differs(upright_sums(part), found, least=1e-9):
            wrong[key] = bad
    assert wrong == {}


@pytest.mark.parametrize("name", NAMES)
def test_the_whole_as_one_solid(name):
    """What stands, with all its air, from footing to liner; the hearth in front goes down to the floor."""
    mine, outer = naive(name), assessed(name).geometry.outer
    filled = sum(part.volume for part in (mine.parts | mine.voids).values())
    assert outer.volume == pytest.approx(filled, rel=1e-10)
    assert (outer.bottom, outer.top) == pytest.approx(
        (mine.s.footing_foot, mine.s.flue_top), abs=1e-9
    )
