"""What four books ask in numbers, clause by clause: what the design has, what is asked, both in the unit of print.

The limits are those of the books' own text: International Residential Code 2021 and 2024 chapters 3, 4, 9 and 10, the National
Building Code of Canada 9.21 and 9.22 (copies of 2005 to 2012) and Approved Documents J and A of England with the house builders'
standard. ``most`` marks a limit that is not to be passed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from naive import levels, mantels
from naive.levels import mouth_of
from naive.order import DENSITY, Order
from naive.reading import FT, IN, PSF, G

DEG = math.pi / 180


@dataclass(frozen=True)
class Asked:
    """One clause in numbers, in SI; ``unit`` is what the book prints in."""

    key: str
    provided: float
    required: float
    unit: float = IN
    most: bool = False
    verdict: str | None = None  # where the comparison alone does not decide

    @property
    def numbers(self) -> tuple[float, float, float]:
        """Provided, required, and what is to spare, negative for what lacks."""
        have, want = self.provided / self.unit, self.required / self.unit
        spare = want - have if self.most else have - want
        return have, want, 0.0 if abs(spare) < 1e-7 * max(abs(have), abs(want)) else spare

    @property
    def said(self) -> str:
        """Meets or falls short; a limit that print also gives in whole millimetres may be met in those."""
        if self.verdict:
            return self.verdict
        return "meets" if self.numbers[2] >= 0 else "falls short"


class Work:
    """One design with everything the clauses look at."""

    def corbelled(self, name: str, masonry: str | None) -> float | None:
        """A size of the corbelled unit: entered, or of the brick or block behind it; stone and concrete have none. [m]"""
        brick = {"course": 2.75 * IN, "unit_height": 2.25 * IN, "unit_bed": 3.75 * IN}
        base, told = self.d.base, self.d.smoke_chamber[name]
        if told is None or abs(told - brick[name]) > 1e-9:
            return told
        if masonry in ("stone", "concrete"):
            return None
        high = base.block_height
        hollow = {"course": high + base.bed, "unit_height": high, "unit_bed": base.block_width}
        return (hollow if masonry in ("block",) or "hollow" in str(masonry) else brick)[name]

    def __init__(self, s):
        self.s, self.d = s, s.d
        d, m = s.d, s.d.measured
        self.area = levels.left_open(s) if m.opening_area is None else m.opening_area
        self.throat = levels.throat_area(s) if m.throat_area is None else m.throat_area
        angles = levels.chamber_angles(s)
        self.lean = max(angles.values()) if m.chamber_slope is None else m.chamber_slope
        low = levels.throat_width(s) * (s.depth - s.throat_front)
        self.passage = min(low, mouth_of(s.flue)) if m.passage is None else m.passage
        self.net = (
            m.flue_area
            if m.flue_area is not None
            else {"table": s.flue.net, "own sum": s.flue.bare}.get(d.flue.area_from)
        )
        self.tall = s.flue_top - s.hearth if m.chimney_height is None else m.chimney_height
        self.tilt = math.atan2(s.shift, s.shift_top - s.shift_foot) if s.shift else 0.0
        self.tilt = self.tilt if m.liner_slope is None else m.liner_slope
        self.hearth = (
            d.base.slab + d.firebox.floor if m.hearth_thickness is None else m.hearth_thickness
        )
        jamb = (s.block[0] - s.half) / math.hypot(1, s.splay)
        self.wall = min(d.firebox.wall, jamb)
        front = s.flue_y - s.flue.deep / 2
        left = [
            s.throat_front,
            s.block[1] - s.depth,
            s.block[0] - levels.throat_width(s) / 2,
            front if front > 0 else s.throat_front,
        ]
        self.chamber_wall = min(d.smoke_chamber.wall, *left)
        course = self.corbelled("course", d.firebox.masonry)
        self.corbel = (
            (None if course is None else course * math.tan(self.lean))
            if m.corbel is None
            else m.corbel
        )
        self.over_contact = s.crown_top - s.uphill if m.over_contact is None else m.over_contact
        self.over_near = (
            s.crown_top - levels.highest_within(s, levels.TEN_FEET)[0]
            if m.over_nearby is None
            else m.over_nearby
        )
        side = s.stack[0] if d.roof.ridge_runs == "along the opening" else s.stack[1]
        self.along_ridge = 2 * side if m.along_ridge is None else m.along_ridge
        self.least_side = 2 * min(s.stack)
        self.square = abs(s.flue.wide - s.flue.deep) < 0.01 * IN and not s.flue.round
        self.shallow = d.opening.type == "shallow"
        self.large = self.area >= 6 * FT**2 * (1 - 1e-7)
        self.step = s.hearth - s.apron
        self.lintel = "masonry arch" if d.opening.head == "segmental" else d.lintel.material

    def pressure(self) -> float:
        """Weight of all that is ordered over the plan of the footing: joints, empty cores, no metal cap."""
        s, out = self.s, self.d.base.footing_projection
        weight = G * sum(Order(s).masses.values())
        return weight / (2 * (s.block[0] + out) * (s.block[1] + 2 * out))


def _inside_width(w: Work) -> float:
    return (
        w.s.flue.wide
        if w.d.measured.flue_area is None
        else 2 * math.sqrt(w.d.measured.flue_area / math.pi)
    )


# -- United States ----------------------------------------------------------------------------------------
SOIL = {
    "crystalline bedrock": 12000,
    "sedimentary or foliated rock": 4000,
    "sandy gravel or gravel": 3000,
    "sand": 2000,
    "clay": 1500,
}
"""IRC table R401.4.1. [psf]"""


def united_states(w: Work, edition: str) -> Iterator[Asked]:
    """Chapter 10 of the residential code and what it calls up."""
    yield from _us_box(w)
    yield from _us_throat(w)
    yield from _us_chamber(w, edition)
    yield from _us_hearth(w)
    yield from _us_flue(w)
    yield from _us_stack(w)
    yield from _us_roof(w)
    yield from _us_clear(w, edition)
    yield from _us_ground(w, edition)
    yield from _us_shaking(w)
    yield from _us_air(w)


def _us_box(w: Work) -> Iterator[Asked]:
    fb = w.d.firebox
    counts = {"firebrick": fb.lining_thickness >= 2 * IN - 1e-9, "none": False, None: None}.get(
        fb.lining, fb.lining_approved
    )
    if counts is not None:
        yield Asked("FBX-01", w.wall, 8 * IN) if counts else Asked("FBX-02", w.wall, 10 * IN)
    if fb.lining == "firebrick":
        yield Asked("FBX-03", fb.lining_thickness, 2 * IN)
        if fb.joint is not None:
            yield Asked("FBX-04", fb.joint, IN / 4, most=True)
    if w.shallow:
        yield Asked("FBX-10", fb.depth, max(12 * IN, w.d.opening.width / 3))
    else:
        yield Asked("FBX-09", fb.depth, 20 * IN)


def _us_throat(w: Work) -> Iterator[Asked]:
    t = w.d.throat
    if not w.shallow:
        yield Asked("THR-01", t.height, 8 * IN)
        yield Asked("THR-02", t.depth, 4 * IN)
        least = min(
            a
            for a in (w.throat, w.passage, t.damper_area if t.damper == "throat" else None)
            if a is not None
        )
        if w.net is not None:
            missing = t.damper is None or (t.damper == "throat" and t.damper_area is None)
            good = least >= w.net * (1 - 1e-7)
            yield Asked(
                "THR-03", least, w.net, IN**2, verdict="not checked" if missing and good else None
            )
    else:
        yield Asked("THR-05", t.height, 12 * IN)
        yield Asked("THR-06", w.throat, w.area / 20, IN**2)
    blade = t.height if t.damper_height is None else t.damper_height
    yield Asked("THR-04", min(t.height, blade) if t.damper == "throat" else t.height, 8 * IN)
    if t.damper == "throat":
        yield Asked("THR-07", blade, 8 * IN)
    if w.lintel != "masonry arch" and w.d.lintel.bearing is not None:
        yield Asked("LIN-01", w.d.lintel.bearing, 4 * IN)
        if w.d.surround.face == "brick":
            yield Asked("LIN-03", w.d.lintel.bearing, 4 * IN)


def _us_chamber(w: Work, edition: str) -> Iterator[Asked]:
    sc = w.d.smoke_chamber
    if sc.lining is not None:
        thin = {"firebrick": 2 * IN, "vitrified clay": 5 / 8 * IN}.get(sc.lining)
        lined = thin is not None and sc.lining_thickness >= thin - 1e-9
        yield (
            Asked("SMK-02", w.chamber_wall, 6 * IN)
            if lined
            else Asked("SMK-01", w.chamber_wall, 8 * IN)
        )
        if thin is not None:
            yield Asked("SMK-03", sc.lining_thickness, thin)
    yield Asked("SMK-04", sc.height, w.d.opening.width, most=True)
    if sc.construction == "corbelled":
        yield Asked("SMK-06", w.lean, 30 * DEG, DEG, most=True)
        high = w.corbelled("unit_height", w.d.firebox.masonry)
        if (
            edition == "2021" and w.corbel is not None and high is not None
        ):  # more than that warns, but the chapter on fireplaces does not call it up
            limit = min(high / 2, w.corbelled("unit_bed", w.d.firebox.masonry) / 3)
            yield Asked(
                "SMK-07",
                w.corbel,
                limit,
                most=True,
                verdict=None if w.corbel <= limit * (1 + 1e-7) else "not checked",
            )
    elif sc.construction is not None:
        yield Asked("SMK-05", w.lean, 45 * DEG, DEG, most=True)


def _us_hearth(w: Work) -> Iterator[Asked]:
    h = w.d.hearth
    yield Asked("HTH-02", w.hearth, 4 * IN)
    yield (
        Asked("HTH-04", h.thickness, 3 / 8 * IN)
        if w.step >= 8 * IN - 1e-9
        else Asked("HTH-03", h.thickness, 2 * IN)
    )
    front, side, keys = (20, 12, ("HTH-07", "HTH-08")) if w.large else (16, 8, ("HTH-05", "HTH-06"))
    yield Asked(keys[0], h.front, front * IN)
    yield Asked(keys[1], h.side, side * IN)


def _us_flue(w: Work) -> Iterator[Asked]:
    f, ch, flue = w.d.flue, w.d.chimney, w.s.flue
    yield Asked(
        "FLU-05", ch.liner_above, 0.0, verdict="meets" if ch.liner_above > 0 else "falls short"
    )  # anything over nothing
    yield Asked("FLU-06", w.tilt, 30 * DEG, DEG, most=True)
    if f.liner == "ASTM C315 clay":
        yield Asked("FLU-07", ch.gap, flue.wall, most=True)
    if f.route == "ratio" and w.net is not None:
        flat = max(flue.wide, flue.deep) / min(flue.wide, flue.deep) >= 2 * (1 - 1e-7)
        key, part = (
            ("FLU-10", 12)
            if flue.round
            else ("FLU-11", 10)
            if w.square
            else ("FLU-13", 8)
            if flat
            else ("FLU-12", 10)
        )
        yield Asked(key, w.net, w.area / part, IN**2)


def _us_stack(w: Work) -> Iterator[Asked]:
    st, ch = w.d.stack, w.d.chimney
    if st.corbelled:
        yield Asked(
            "CHM-01", st.corbel_total, ch.wall * (1.0 if st.upper_storey else 0.5), most=True
        )
        if st.one_sided:
            yield Asked("CHM-02", st.supporting_wall_thickness, 12 * IN)
        yield Asked(
            "CHM-03",
            w.d.measured.corbel if st.corbel_step is None else st.corbel_step,
            min(
                w.corbelled("unit_height", ch.masonry) / 2,
                (st.unit_bed_depth or w.corbelled("unit_bed", ch.masonry)) / 3,
            ),
            most=True,
        )
    if w.s.shift > 0 and st.offset_carried is False and w.d.flue.liner == "ASTM C315 clay":
        yield Asked("CHM-05", w.s.shift, w.s.unit[0] + ch.gap + ch.wall / 2, most=True)
    nominal = 4 * IN if 3.625 * IN - 1e-9 <= ch.wall < 4 * IN else ch.wall
    yield Asked("CHM-07", nominal, 4 * IN)
    if w.d.anchorage.n_flues > 1 and st.wythe_between_flues is not None and not st.one_appliance:
        yield Asked("CHM-08", st.wythe_between_flues, 4 * IN)


def _us_roof(w: Work) -> Iterator[Asked]:
    ch, roof = w.d.chimney, w.d.roof
    yield Asked("ROF-01", w.over_contact, 3 * FT, FT)
    yield Asked("ROF-02", w.over_near, 2 * FT, FT)
    if ch.arrester and ch.arrester_area is not None and w.net is not None:
        yield Asked("ROF-04", ch.arrester_area, 4 * w.net, IN**2)
    if ch.rain_cap and ch.rain_cap_area is not None and w.net is not None:
        yield Asked("ROF-07", ch.rain_cap_area, 4 * w.net, IN**2)
    wide = w.along_ridge > 30 * IN * (1 + 1e-7) and roof.position != "through the ridge"
    if wide and 0.25 <= roof.pitch <= 1 and roof.cricket_height is not None:
        yield Asked("ROF-09", roof.cricket_height, w.along_ridge * roof.pitch / 2)


def _us_clear(w: Work, edition: str) -> Iterator[Asked]:
    cl, wood = w.d.clearance, [t for t in mantels.pieces(w.s) if t.combustible]
    inside = cl.fireplace_listed or cl.in_masonry_wall
    if not inside and cl.front is not None and cl.side is not None:
        yield Asked("CLR-01", min(cl.front, cl.side), 2 * IN)
    if not inside:
        yield Asked("CLR-02", cl.back, 4 * IN)
    if cl.in_masonry_wall:
        yield Asked("CLR-05", cl.to_firebox_lining, 12 * IN)
        yield (
            Asked("CLR-23a", cl.to_flue_lining, 12 * IN)
            if edition == "2021"
            else Asked("CLR-23b", cl.to_flue_lining, 8 * IN)
        )
    if cl.edge_trim:
        if edition == "2021":
            yield Asked("CLR-06a", cl.to_firebox_lining, 12 * IN)
        else:
            yield (
                Asked("CLR-06c", cl.to_firebox_lining, 12 * IN)
                if w.large
                else Asked("CLR-06b", cl.to_firebox_lining, 8 * IN)
            )
        yield Asked("CLR-24b" if edition == "2021" else "CLR-24c", cl.to_flue_lining, 8 * IN)
    if wood:
        yield Asked("CLR-07", min(t.distance for t in wood), 6 * IN)
        near = [t for t in wood if 6 * IN - 1e-9 <= t.distance <= 12 * IN + 1e-9]
        if near:
            worst = max(near, key=lambda t: t.projection - t.distance / 8)
            yield Asked("CLR-08", worst.projection, worst.distance / 8, most=True)
    where = w.d.chimney.location
    if where is not None and not (cl.liner_listed or cl.in_masonry_wall):
        yield (
            Asked("CLR-21", cl.chimney, IN)
            if where == "exterior"
            else Asked("CLR-20", cl.chimney, 2 * IN)
        )
    if cl.liner_listed:
        yield Asked("CLR-22", cl.chimney, 0.0)


def _us_ground(w: Work, edition: str) -> Iterator[Asked]:
    b, g, site = w.d.base, w.d.ground, w.d.site
    yield Asked("FND-01", b.footing_thickness, 12 * IN)
    yield Asked("FND-02", b.footing_projection, 6 * IN)
    if site.frost_depth:
        yield Asked("FND-03", b.footing_depth, site.frost_depth)
    elif site.frost_depth == 0:
        yield Asked("FND-04", b.footing_depth - b.footing_thickness, 12 * IN)
    if g.own_footing:
        yield Asked("FND-05", b.footing_thickness, 12 * IN)
        yield Asked("FND-06", b.footing_projection, 6 * IN)
    if site.soil is not None:
        yield Asked("FND-08", w.pressure(), SOIL[site.soil] * PSF, PSF, most=True)
    if g.soil_bearing_assumed is not None:
        weak = g.soil_bearing_assumed < 1500 * PSF * (1 - 1e-7)
        yield Asked(
            "FND-09",
            g.soil_bearing_assumed,
            1500 * PSF,
            PSF,
            verdict="not checked" if weak else None,
        )
    if g.footing_depth_below_undisturbed_ground is not None:
        yield Asked("FND-10", g.footing_depth_below_undisturbed_ground, 12 * IN)
    yield Asked("FND-12", b.footing_projection, b.footing_thickness, most=True)
    s, out = w.s, b.footing_projection
    yield Asked("FND-13", min(2 * (s.block[0] + out), s.block[1] + 2 * out), 12 * IN)
    if edition == "2021":
        if g.footing_bottom_slope is not None:
            yield Asked("FND-14", g.footing_bottom_slope, 0.1, 1.0, most=True)
        if g.rebar_cover_earth is not None:
            yield Asked("FND-15", g.rebar_cover_earth, 3 * IN)
        if g.concrete_fc is not None:
            yield Asked("FND-16", g.concrete_fc, 2500 * 144 * PSF, 144 * PSF)


def _us_shaking(w: Work) -> Iterator[Asked]:
    a = w.d.anchorage
    if w.d.site.seismic not in ("D0", "D1", "D2"):
        return
    wide = 2 * max(w.s.stack) if a.chimney_width is None else a.chimney_width
    steps, left = 0, wide - 40 * IN
    while left > 1e-9:
        steps, left = steps + 1, left - 40 * IN
    bars = (
        [("SEI-03", 4 + 2 * steps), ("SEI-04", 4 + 2 * max(a.n_flues - 1, steps))]
        if steps
        else [("SEI-02", 4)]
    )
    for key, number in bars:
        yield Asked(key, a.vertical_bars_no4, number, 1.0)
    yield Asked("SEI-05", a.tie_diameter, IN / 4)
    yield Asked("SEI-06", a.tie_spacing_vertical, 18 * IN, most=True)
    if a.ties_per_bend is not None:
        yield Asked("SEI-07", a.ties_per_bend, 2, 1.0)
    if (
        w.d.chimney.location != "interior"
    ):  # levels over 6 ft above grade: ceiling or roof always is, in these designs
        for key, told, number, unit in (
            ("SEI-09", a.strap_count, 2, 1.0),
            ("SEI-10", a.strap_embedment, 12 * IN, IN),
            ("SEI-11", a.strap_hook_extension, 6 * IN, IN),
            ("SEI-12", a.joists_per_strap, 4, 1.0),
            ("SEI-13", a.bolts_half_inch_per_strap, 2, 1.0),
        ):
            if told is not None:
                yield Asked(key, told, number, unit)
        if a.steel_framing:
            yield Asked("SEI-14", a.plate_side, 3 * IN)


def _us_air(w: Work) -> Iterator[Asked]:
    area = w.d.house.air_inlet
    if area:  # 6 to 55 in2: what is outside is held against the end it is past
        yield (
            Asked("AIR-07", area, 6 * IN**2, IN**2)
            if area <= 55 * IN**2
            else Asked("AIR-07", area, 55 * IN**2, IN**2, most=True)
        )


# -- Canada --------------------------------------------------------------------------------------------------
ROUND_FLUES = {  # table 9.21.2.5.A: opening up to [m2]; least flue for chimneys of 3 to 4.5, to 5.9, to 8.9 and to 12 m [mm]
    0.15: (110, 100, 90, 90),
    0.25: (150, 130, 130, 120),
    0.35: (180, 160, 150, 140),
    0.5: (220, 200, 190, 170),
    0.65: (260, 230, 220, 200),
    0.8: (290, 260, 240, 220),
    1.0: (330, 290, 270, 250),
    1.2: (360, 320, 300, 270),
    1.4: (390, 350, 330, 300),
    1.6: (420, 380, 350, 320),
    1.8: (None, 400, 370, 340),
    2.0: (None, None, 400, 360),
    2.2: (None, None, None, 380),
}
"""A dash where print has one; every band is 60 mm wide."""


SQUARE_FLUES = {  # table 9.21.2.5.B, the same columns: smallest to largest [cm]
    0.15: ("20x20 20x20", "10x20 10x20", "10x20 10x20", "10x20 10x20"),
    0.25: ("20x20 20x20", "20x20 20x20", "20x20 20x20", "20x20 20x20"),
    0.35: ("20x30 20x30", "20x20 20x30", "20x20 20x20", "20x20 20x20"),
    0.5: ("30x30 30x30", "20x30 20x30", "20x30 20x30", "20x20 20x30"),
    0.65: ("30x30 30x40", "30x30 30x30", "30x30 30x30", "20x30 20x30"),
    0.8: ("30x40 30x40", "30x30 30x40", "30x30 30x30", "30x30 30x30"),
    1.0: ("40x40 40x40", "30x40 30x40", "30x40 30x40", "30x30 30x30"),
    1.2: ("40x40 40x40", "40x40 40x40", "30x40 30x40", "30x40 30x40"),
    1.4: ("", "40x40 40x40", "40x40 40x40", "30x40 30x40"),
    1.6: ("", "", "40x40 40x40", "40x40 40x40"),
    1.8: ("", "", "", "40x40 40x40"),
    2.0: ("", "", "", "40x40 40x40"),
}


def _wrong(flue: list[float], ends: str) -> tuple[float, float, bool] | None:
    """First side of a flue [cm] that is past a cell: what it is, what it should be, whether at most."""
    small, large = ([float(side) for side in end.split("x")] for end in ends.split())
    for have, least in zip(flue, small, strict=True):
        if have < least - 1e-6:
            return have, least, False
    for have, most in zip(flue, large, strict=True):
        if have > most + 1e-6:
            return have, most, True
    return None


def _square_flue(w: Work) -> Iterator[Asked]:
    """By the inside, and by the hundreds of millimetres over the walls; both have to say the same."""
    rows = [row for most, row in SQUARE_FLUES.items() if w.area <= most + 1e-9]
    if not rows or not 3.0 - 1e-9 <= w.tall <= 12.0 + 1e-9:
        return
    ends = rows[0][[w.tall <= high + 1e-9 for high in (4.5, 5.9, 8.9, 12.0)].index(True)]
    if not ends:
        return
    sides = sorted((w.s.flue.wide * 100, w.s.flue.deep * 100))
    called = [10.0 * round((side + 200 * w.s.flue.wall) / 10) for side in sides]
    inside, over = _wrong(sides, ends), _wrong(called, ends)
    if inside is None and over is None:
        yield Asked("CA-007", sides[0] / 100, float(ends[:2]) / 100, 0.001)
    elif inside and over:
        yield Asked("CA-007", inside[0] / 100, inside[1] / 100, 0.001, most=inside[2])


def canada(w: Work) -> Iterator[Asked]:
    """9.21 and 9.22, and the guide beside them."""
    d, s, mm = w.d, w.s, 0.001
    yield Asked(
        "CA-001",
        w.tall,
        12.0,
        1.0,
        most=True,
        verdict="not checked" if w.tall > 12 * (1 + 1e-7) else None,
    )
    yield Asked("CA-004", w.tilt, 45 * DEG, DEG, most=True)
    if s.flue.round:
        column = next(k for k, high in enumerate((4.5, 5.9, 8.9, 12.0)) if w.tall <= high + 1e-9)
        least = next(row for most, row in ROUND_FLUES.items() if w.area <= most + 1e-9)[column] * mm
        across = _inside_width(w)
        if across > (least + 60 * mm) * (1 + 1e-7):
            yield Asked("CA-006", across, least + 60 * mm, mm, most=True)
        else:
            yield Asked("CA-006", across, least, mm)
    else:
        yield from _square_flue(w)
    if w.net is not None:
        yield Asked("CA-008", w.net / w.area, 0.1, 0.01)
    yield Asked("CA-009", min(s.flue.wide, s.flue.deep), 200 * mm, mm)
    yield Asked("CA-013", d.chimney.gap, 10 * mm, mm)
    if d.flue.liner == "ASTM C315 clay":  # 5/8 in is 15.875 mm and printed 15.9
        yield Asked("CA-071", float(f"{s.flue.wall * 1000:.1f}") / 1000, 15.9 * mm, mm)
    yield Asked("CA-016", d.chimney.liner_above, 50 * mm, mm)
    yield Asked("CA-017", d.chimney.liner_above, 100 * mm, mm, most=True)
    yield Asked(
        "CA-019",
        s.flue_top - s.uphill if d.measured.over_contact is None else d.measured.over_contact,
        900 * mm,
        mm,
    )
    over = (
        s.flue_top - levels.highest_within(s, 3.0)[0]
        if d.measured.over_nearby is None
        else d.measured.over_nearby
    )
    yield Asked("CA-020", over, 600 * mm, mm)
    yield Asked("CA-022", w.least_side, 400 * mm, mm)
    if w.over_contact > 0:
        tall = w.over_contact > 3600 * mm * (1 + 1e-7)
        yield Asked(
            "CA-023",
            w.over_contact,
            3600 * mm,
            mm,
            most=True,
            verdict="not checked" if tall else None,
        )
    yield Asked("CA-024", d.chimney.overhang, 25 * mm, mm)
    yield Asked("CA-026", d.chimney.wall, 70 * mm, mm)
    yield Asked("CA-027", d.chimney.wall, 75 * mm, mm)
    if d.anchorage.n_flues > 1:
        yield Asked("CA-028", d.stack.wythe_between_flues, 70 * mm, mm)
    outside = d.chimney.location == "exterior"
    if d.chimney.location is not None:
        yield (
            Asked("CA-032", d.clearance.chimney, 12 * mm, mm)
            if outside
            else Asked("CA-031", d.clearance.chimney, 50 * mm, mm)
        )
    yield from _canada_answers(w)
    yield from _canada_fireplace(w)


def _canada_answers(w: Work) -> Iterator[Asked]:
    """What no drawing shows."""
    a, mm = w.d.abroad, 0.001
    if a.soot_door:
        yield Asked("CA-033", a.cleanout_clearance, 150 * mm, mm)
    if a.flooring_clearance is not None:
        yield Asked("CA-034", a.flooring_clearance, 12 * mm, mm)
    if a.joists_on_wall:
        yield Asked("CA-036", a.joist_masonry, 290 * mm, mm)
    if a.cantilevered:
        yield Asked("CA-055", a.slab_edge, 50 * mm, mm)
    if a.metal_clearance is not None:
        yield Asked("CA-063", a.metal_clearance, 50 * mm, mm)


def _canada_fireplace(w: Work) -> Iterator[Asked]:
    d, mm = w.d, 0.001
    if d.firebox.lining is not None:
        yield Asked("CA-042", d.firebox.lining_thickness, 50 * mm, mm)
    yield Asked("CA-043", d.firebox.floor, 25 * mm, mm)
    if d.firebox.lining_thickness < 51 * mm:
        yield Asked("CA-046", w.wall, 190 * mm, mm)
    yield Asked("CA-049", d.firebox.depth, 300 * mm, mm)
    if w.step <= 150 * mm + 1e-9:
        yield Asked("CA-050", d.hearth.front, 400 * mm, mm)
    elif w.step <= 300 * mm + 1e-9:
        yield Asked("CA-052", d.hearth.front, 450 * mm, mm)
    else:
        wanted, at = 450 * mm, 300 * mm
        while w.step > at + 1e-9:
            wanted, at = wanted + 25 * mm, at + 50 * mm
        yield Asked("CA-053", d.hearth.front, wanted, mm)
    yield Asked("CA-051", d.hearth.side, 200 * mm, mm)
    yield Asked("CA-054", min(d.base.slab, d.hearth.bed), 100 * mm, mm)
    if d.hearth.support == "combustible":
        yield Asked("CA-056", w.s.hearth, 200 * mm, mm)
    yield Asked("CA-058", w.lean, 45 * DEG, DEG, most=True)
    where, cl = d.chimney.location, d.clearance
    if where == "exterior":
        yield Asked("CA-060", w.chamber_wall, 140 * mm, mm)
    else:
        yield Asked("CA-059", w.chamber_wall, 190 * mm, mm)
    wood = [t for t in mantels.pieces(w.s) if t.combustible]
    if wood:
        yield Asked("CA-061", min(t.distance for t in wood), 150 * mm, mm)
    proud = [t.distance for t in wood if t.place == "above" and t.projection > 38 * mm + 1e-9]
    if proud:
        yield Asked("CA-062", min(proud), 300 * mm, mm)
    gaps = [gap for gap in (cl.back, cl.side) if gap is not None]
    if where is not None:
        for key, inside, limit in (
            ("CA-064", True, 100),
            ("CA-065", False, 50),
            ("CA-066", True, 50),
            ("CA-067", False, 25),
        ):
            if (where == "interior") == inside and (len(gaps) == 2 or min(gaps) < limit * mm):
                yield Asked(key, min(gaps), limit * mm, mm)


# -- England ---------------------------------------------------------------------------------------------------
def england(w: Work) -> Iterator[Asked]:
    """Approved Documents J and A, and the house builders' standard."""
    d, s, mm = w.d, w.s, 0.001
    flue, roof, over_ridge = s.flue, d.roof, s.flue_top - d.roof.ridge_level
    small = d.opening.width <= 500 * mm + 1e-9 and s.edge - s.hearth <= 550 * mm + 1e-9
    if small and flue.round:
        yield Asked("UK-001", flue.wide, 200 * mm, mm)
    if small and not flue.round:
        yield Asked("UK-002", w.net, 31416 * mm**2, mm**2)
        yield Asked("UK-003", min(flue.wide, flue.deep), 175 * mm, mm)
    if not small and not flue.round:
        yield Asked("UK-056", min(flue.wide, flue.deep), 200 * mm, mm)
    if w.net is not None:
        if not small:
            yield Asked("UK-004", w.net / w.area, 0.15, 0.01)
        vast = w.net > 0.12 * (1 + 1e-7)
        yield Asked(
            "UK-005", w.net, 0.12, mm**2, most=True, verdict="not checked" if vast else None
        )
    yield Asked("UK-007", s.flue_top - s.edge, 4500 * mm, mm)
    over = s.flue_top - s.uphill
    if s.ridge_off <= 0.6 + 1e-9:
        yield Asked("UK-008", over_ridge, 600 * mm, mm)
    else:
        if over_ridge >= 0 or roof.pitch == 0:  # the roof does not reach so high
            yield Asked("UK-010", 2300 * mm, 2300 * mm, mm)
        else:
            yield Asked("UK-010", over / roof.pitch, 2300 * mm, mm)
        by_ridge = over < 1 - 1e-9 and over_ridge >= 0
        yield Asked("UK-011", *((over_ridge, 0.0) if by_ridge else (over, 1000 * mm)), mm)
    if d.abroad.rooflight:
        yield Asked("UK-013", d.abroad.above_rooflight, 1000 * mm, mm)
    near = [part.level for part in roof.nearby if part.distance <= 2.3 + 1e-6]
    if near:
        yield Asked("UK-014", s.flue_top - max(near), 600 * mm, mm)
    if over > 0:
        yield Asked("UK-016", over / w.least_side, 4.5, 1.0, most=True)
    dense = DENSITY[d.chimney.masonry]
    yield Asked("UK-017", dense, 1500.0, 1.0, verdict="meets" if dense > 1500 else "not checked")
    yield Asked("UK-018", w.tilt, 45 * DEG, DEG, most=True)
    yield Asked("UK-019", 2.0 if s.shift else 0.0, 2.0, 1.0, most=True)
    yield Asked("UK-020", w.tilt, 45 * DEG, DEG, most=True)
    yield from _england_details(w)


def _england_details(w: Work) -> Iterator[Asked]:
    d, a, mm = w.d, w.d.abroad, 0.001
    gap, through = (
        d.clearance.chimney if a.to_chimney_face is None else a.to_chimney_face,
        d.clearance.to_flue_lining,
    )
    if gap >= 40 * mm - 1e-9:
        yield Asked("UK-023", gap, 40 * mm, mm)
    elif through is None:
        yield Asked("UK-023", gap, 40 * mm, mm, verdict="not checked")
    else:
        yield Asked("UK-023", through, 200 * mm, mm)
    if a.metal_fixing is not None:
        yield Asked("UK-025", a.metal_fixing, 50 * mm, mm)
    yield Asked("UK-027", d.chimney.wall, 100 * mm, mm)
    yield Asked("UK-032", d.chimney.liner_above, 20 * mm, mm)
    yield Asked("UK-033", d.chimney.overhang, 50 * mm, mm)
    if a.drip_distance is not None:
        yield Asked("UK-034", a.drip_distance, 30 * mm, mm)
    if d.house.air_inlet:
        yield Asked("UK-035", d.house.air_inlet / w.throat, 0.5, 0.01)
    yield Asked("UK-042", w.hearth, 125 * mm, mm)
    if d.hearth.support == "combustible":
        yield Asked("UK-043", a.wood_below, 250 * mm, mm)
    yield Asked("UK-045", d.hearth.front, 500 * mm, mm)
    yield Asked("UK-046", d.hearth.side, 150 * mm, mm)
    yield Asked("UK-047", d.hearth.front, 300 * mm, mm)
    yield Asked("UK-048", d.hearth.side, 150 * mm, mm)
    yield Asked("UK-050", w.wall, 200 * mm, mm)


BOOKS = {
    "US IRC 2021": lambda w: united_states(w, "2021"),
    "US IRC 2024": lambda w: united_states(w, "2024"),
    "Canada NBC": canada,
    "UK ADJ": england,
}
