"""Twenty whole designs: where everything stands and how large it is, against a second reckoning by hand (``tests/naive``).

Positions agree to a millionth of a millimetre. Round cuts are compared as the outline of 72 corners that the package draws.
"""

import math
from itertools import pairwise

import pytest
from naive import levels
from naive.levels import mouth_of
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
    assert differs(levels.names(mine), theirs.levels) == {}
    assert list(theirs.levels.values()) == sorted(theirs.levels.values())


@pytest.mark.parametrize("name", NAMES)
def test_every_line_of_the_plan_and_every_slope(name):
    """Firebox, throat, chamber, flue, stack and roof: what the parts are hung on."""
    s, frame = naive(name).s, assessed(name).geometry.frame
    angles = levels.chamber_angles(s)
    low = levels.throat_width(s) * (s.depth - s.throat_front)
    shifted = s.shift_top - s.shift_foot
    highest, what = levels.highest_within(s, levels.TEN_FEET)
    wanted = {
        "half_width": s.half,
        "side_slope": s.splay,
        "back_width": s.back,
        "breast": s.breast,
        "depth": s.depth,
        "throat_front": s.throat_front,
        "throat_back": s.throat_back,
        "lean": s.lean,
        "throat_width": levels.throat_width(s),
        "throat_area": levels.throat_area(s),
        "opening_area": levels.opening_area(s),
        "block_half": s.block[0],
        "block_back": s.block[1],
        "unit_half": s.unit[0],
        "unit_depth": s.unit[1],
        "cavity_half": s.cavity[0],
        "cavity_depth": s.cavity[1],
        "stack_half": s.stack[0],
        "stack_depth": s.stack[1],
        "flue_y": s.flue_y,
        "offset": s.shift,
        "offset_bottom": s.shift_foot,
        "offset_top": s.shift_top,
        "offset_slope": math.atan2(s.shift, shifted) if s.shift else 0.0,
        "flue_length": s.flue_top - s.flue_foot - shifted + math.hypot(shifted, s.shift),
        "chamber_least_section": min(low, mouth_of(s.flue)),
        "uphill_contact": s.uphill,
        "downhill_contact": s.downhill,
        "highest_within_reach": highest,
        "slab_bottom": s.slab_foot,
        "slab_top": s.paving,
        "crown_bottom": s.crown_foot,
    }
    assert differs(wanted, {key: getattr(frame, key) for key in wanted}) == {}
    assert what in frame.highest_within_reach_is
    assert (
        differs(
            {key + "s" * (key == "side"): value for key, value in angles.items()},
            frame.chamber_slopes,
        )
        == {}
    )
    bore = frame.bore
    assert (bore.width, bore.depth, bore.wall, bore.round) == pytest.approx(
        (s.flue.wide, s.flue.deep, s.flue.wall, s.flue.round), abs=1e-9
    )
    assert bore.area == pytest.approx(s.flue.bare, rel=1e-12)
    assert bore.aspect == pytest.approx(
        max(s.flue.wide, s.flue.deep) / min(s.flue.wide, s.flue.deep), rel=1e-12
    )
    assert (bore.table_area or 0) == pytest.approx(s.flue.net or 0, rel=1e-9)
    for share in (0.1, 0.5, 0.93):
        y, z = share * s.depth, s.hearth + share * (s.throat - s.hearth)
        assert frame.half_at(y) == pytest.approx(levels.half_at(s, y), abs=1e-12)
        assert frame.back_at(z) == pytest.approx(levels.back_at(s, z), abs=1e-12)
        z = s.flue_foot + share * (s.flue_top - s.flue_foot)
        assert frame.shift_at(z) == pytest.approx(levels.shift_at(s, z), abs=1e-12)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_drawn_otherwise_than_asked_is_said(name):
    said = assessed(name).geometry.frame.adjusted
    wanted = levels.drawn_otherwise(naive(name).s)
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


def turns_left(outline: list) -> bool:
    """Whether an outline runs counter-clockwise, as everything that clips or fills it takes it to."""
    return sum(a * d - b * c for (a, b), (c, d) in pairwise([*outline, outline[0]])) > 0


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
        for a, b in pairwise(stops(part)):
            for share in (0.03, 0.41, 0.97):
                z = a + share * (b - a)
                assert all(turns_left(p) for found in theirs[key].plan(z) for p in found), key
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
