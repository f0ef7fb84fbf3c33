"""Where everything stands: levels from the room floor up, y from the opening back, x from the centre line. [m]

Written from what the inputs say of themselves, one line a quantity, and nothing shared with the package.
"""

from __future__ import annotations

import math
from types import SimpleNamespace

from naive.reading import FT, IN
from naive.sums import gauss

ROUND = {
    "6": (6, 5 / 8, 28),
    "8": (8, 3 / 4, 50),
    "10": (10, 7 / 8, 78),
    "10.75": (10.75, 15 / 16, 90),
    "12": (12, 1, 113),
    "15": (15, 9 / 8, 176),
}
"""Inside, wall [in] and net area [in2]: 2021 International Residential Code, Table R1003.14(1); walls of clay flue lining by C315."""
OBLONG = {
    "8x8": (8, 8, 0.760, 42),
    "8.5x13": (8.5, 13, 0.75, 76),
    "13x13": (13, 13, 0.875, 127),
    "12x16": (12, 16, 1.191, 131),
    "13x18": (13, 18, 0.875, 173),
    "16x16": (16, 16, 1.273, 181),
    "16x20": (16, 20, 1.483, 222),
    "8.5x18": (8.5, 18, 0.875, 101),
    "20x20": (20, 20, 1.369, 298),
    "20x24": (20, 24, 1.794, 335),
}
"""Both outsides, wall [in] and net area [in2]: the same code, Table R1003.14(2); some walls worked out of the area."""


def flue(d) -> SimpleNamespace:
    """The hole of the flue: round or not, left to right, front to back, liner wall [m], the table's net area [m2]."""
    f = d.flue
    if f.size == "own":
        deep = f.own_width if f.shape == "round" else f.own_depth
        wide, deep, wall, net = f.own_width, deep, f.own_wall, None
    elif f.shape == "round":
        wide, wall, net = (IN * ROUND[f.size][0], IN * ROUND[f.size][1], IN**2 * ROUND[f.size][2])
        deep = wide
    else:
        a, b, wall, net = OBLONG[f.size]
        a, b = IN * (a - 2 * wall), IN * (b - 2 * wall)
        # the long side left to right, unless somebody wants it front to back
        deep, wide = (max(a, b), min(a, b)) if "back" in f.long_side else (min(a, b), max(a, b))
        wall, net = IN * wall, IN**2 * net
    bare = math.pi * (wide / 2) ** 2 if f.shape == "round" else wide * deep
    return SimpleNamespace(
        round=f.shape == "round", wide=wide, deep=deep, wall=wall, net=net, bare=bare
    )


def mouth_of(flue) -> float:
    """Where the smoke chamber ends in the flue: of a tabled rectangular liner its net area as
    printed. [m2]
    """
    return flue.wide * flue.deep if flue.round or flue.net is None else flue.net


def levels(d) -> SimpleNamespace:
    """Every level, every line in plan and every slope of one design."""
    s = SimpleNamespace(d=d)
    # upright
    s.grade = -d.site.grade
    s.hearth = max(
        d.base.hearth_level, d.hearth.drop
    )  # the extension may not sink into the room's floor
    s.apron = s.hearth - d.hearth.drop
    s.head = s.hearth + d.opening.standard_height + d.opening.extension
    s.edge = s.head - d.opening.hood if d.opening.hood else s.head
    s.spring = s.head - d.opening.rise if d.opening.head == "segmental" else s.head
    s.bend = s.hearth + d.firebox.vertical_back
    s.throat = s.head + d.throat.height
    s.flue_foot = s.throat + d.smoke_chamber.height
    s.taper_top = s.flue_foot - d.smoke_chamber.transition
    s.flue_top = s.flue_foot
    for _ in range(d.flue.sections):
        s.flue_top += d.flue.section_height + d.flue.joint
    s.crown_top = s.flue_top - d.chimney.liner_above
    s.crown_edge = s.crown_top - d.chimney.wash
    s.crown_foot = s.crown_edge - d.chimney.crown
    s.shoulder_top = s.flue_foot + d.chimney.shoulder
    s.footing_foot = s.grade - d.base.footing_depth
    s.footing_top = s.footing_foot + d.base.footing_thickness
    s.paving = s.hearth - d.firebox.floor
    s.slab_foot = s.paving - d.base.slab
    # plan of the firebox
    s.half = d.opening.width / 2
    s.depth = d.firebox.depth
    told = d.firebox.back_width
    s.back = (
        max(d.opening.width / 3, d.opening.width - 2 * d.firebox.splay * s.depth)
        if told is None
        else told
    )
    s.splay = (s.half - s.back / 2) / s.depth
    room = (
        s.depth - d.firebox.breast - d.throat.depth
    )  # what breast and throat leave of the depth goes to the rake
    s.rake = min(d.firebox.rake, room) if min(d.firebox.rake, room) > 1e-9 else 0.0
    s.throat_back = s.depth - s.rake
    s.throat_front = s.throat_back - d.throat.depth
    s.breast = min(d.firebox.breast, s.throat_front)
    s.lean = s.rake / (s.throat - s.bend) if s.throat > s.bend else 0.0
    # flue, unit, cavity, stack: half widths and half depths
    s.flue = flue(d)
    cast = d.flue.casing if d.method == "modular" else 0.0
    s.unit = (s.flue.wide / 2 + s.flue.wall + cast, s.flue.deep / 2 + s.flue.wall + cast)
    s.cavity = tuple(side + d.chimney.gap for side in s.unit)
    s.stack = tuple(side + d.chimney.wall for side in s.cavity)
    s.flue_y = max(
        s.depth - s.flue.deep / 2, s.stack[1]
    )  # over the back of the box, unless the stack would stand out in front
    if s.flue_y - s.stack[1] < IN - 1e-9:
        s.flue_y = s.stack[1]  # an edge under an inch is not laid: the front is one plane
    s.block = (
        max(s.half + d.firebox.jamb, s.stack[0]),
        max(s.depth + d.firebox.wall, s.flue_y + s.stack[1]),
    )
    s.shift_foot, s.shift = s.shoulder_top, d.flue.offset
    s.shift_top = s.shoulder_top + (d.flue.offset_rise if s.shift else 0.0)
    # roof
    roof = d.roof
    along = 2 * (s.stack[1] if roof.ridge_runs == "along the opening" else s.stack[0])
    if roof.position == "through the ridge":
        s.ridge_off = 0.0
        s.uphill, s.downhill = roof.ridge_level, roof.ridge_level - roof.pitch * along / 2
    else:
        s.ridge_off = roof.ridge_distance
        s.uphill = roof.ridge_level - roof.pitch * roof.ridge_distance
        s.downhill = s.uphill - roof.pitch * along
    return s


def half_at(s, y: float) -> float:
    """Half the width between the splayed sides at a depth."""
    return s.half + (s.back / 2 - s.half) * y / s.depth


def back_at(s, z: float) -> float:
    """Depth of the back of the firebox at a level: upright to the bend, then leaning forward."""
    return s.depth if z < s.bend else s.depth - s.lean * (z - s.bend)


def front_at(s, z: float) -> float:
    """Front of the firebox over the opening: from the breast to the front of the throat, straight."""
    return s.breast + (s.throat_front - s.breast) * (z - s.head) / (s.throat - s.head)


def shift_at(s, z: float) -> float:
    """How far the flue has moved sideways at a level."""
    if s.shift == 0 or z <= s.shift_foot:
        return 0.0
    return (
        s.shift if z >= s.shift_top else s.shift * (z - s.shift_foot) / (s.shift_top - s.shift_foot)
    )


def throat_width(s) -> float:
    """Between the sides, at the front of the throat."""
    return 2 * half_at(s, s.throat_front)


def throat_area(s) -> float:
    """Of the trapezoid between the sides, front to back. [m2]"""
    return (s.throat_back - s.throat_front) * (
        half_at(s, s.throat_front) + half_at(s, s.throat_back)
    )


def opening_area(s) -> float:
    """Clear: the box up to the spring line, and upright strips of air under the arch, if any. [m2]"""
    rise = s.head - s.spring
    if rise <= 0:
        return 2 * s.half * (s.head - s.hearth)
    radius = (s.half**2 + rise**2) / (2 * rise)
    skew = math.asin(min(s.half / radius, 1.0))
    under = gauss(
        lambda t: (radius * math.cos(t) - radius + rise) * radius * math.cos(t), -skew, skew
    )
    return 2 * s.half * (s.spring - s.hearth) + under


def left_open(s) -> float:
    """What stays open under a hood, which reaches the spring line at least. [m2]"""
    return opening_area(s) if s.edge == s.head else s.d.opening.width * (s.edge - s.hearth)


def chamber_angles(s) -> dict[str, float]:
    """Of each inside face of the smoke chamber from the vertical. [rad]"""
    rise = s.taper_top - s.throat
    return {
        "side": math.atan2(abs(throat_width(s) - s.flue.wide) / 2, rise),
        "front": math.atan2(abs(s.flue_y - s.flue.deep / 2 - s.throat_front), rise),
        "back": math.atan2(abs(s.flue_y + s.flue.deep / 2 - s.depth), rise),
    }


def names(s) -> dict[str, float]:
    """The levels by the names that the drawing gives them."""
    found = {
        "footing bottom": s.footing_foot,
        "footing top": s.footing_top,
        "grade": s.grade,
        "floor": 0.0,
        "hearth extension": s.apron,
        "hearth": s.hearth,
        "back bend": s.bend,
        "opening top": s.head,
        "throat": s.throat,
        "smoke chamber top": s.taper_top,
        "flue start": s.flue_foot,
        "shoulder top": s.shoulder_top,
        "roof contact": s.uphill,
        "ridge": s.d.roof.ridge_level,
        "crown": s.crown_top,
        "flue top": s.flue_top,
    }
    found |= {} if s.edge == s.head else {"hood": s.edge}
    return found | ({"spring line": s.spring} if s.spring < s.head else {})


def drawn_otherwise(s) -> list[str]:
    """First words of what is said where the parts would not fit as asked."""
    fb, sc = s.d.firebox, s.d.smoke_chamber
    front = s.flue_y - s.flue.deep / 2
    coat = sc.lining_thickness * math.hypot(
        1, (front - s.throat_front) / (sc.height - sc.transition)
    )
    said = {
        "The back is raked less": fb.rake - s.rake,
        "The breast is drawn thinner": fb.breast - s.breast,
        "The hearth is drawn higher": s.hearth - s.d.base.hearth_level,
        "The flue is set back": s.flue_y - (s.depth - s.flue.deep / 2),
        "The breast is drawn wider": s.block[0] - s.half - fb.jamb,
        "The chamber's lining": coat - s.throat_front,
    }
    return [words for words, over in said.items() if over > 1e-9]


def highest_within(s, reach: float) -> tuple[float, str]:
    """Highest part of the building no farther than a level distance from the uphill face of the chimney. [m]"""
    roof = s.d.roof
    near = [
        (s.uphill + roof.pitch * s.ridge_off, "ridge")
        if s.ridge_off <= reach + 1e-8
        else (s.uphill + roof.pitch * reach, "roof")
    ]
    near += [(part.level, part.name) for part in roof.nearby if part.distance <= reach + 1e-8]
    return max(near, key=lambda pair: pair[0])


TEN_FEET = 10 * FT
