"""The skeleton of a fireplace: every level, line and slope that its parts are hung on. [m]
throughout.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, hypot

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.bore import Bore, bore
from fireplace_calc.geometry.roofline import _roof


@dataclass(frozen=True, slots=True)
class Frame:
    """Levels count from the finished room floor, y from the opening plane away from the room, x
    from the centre line.
    """

    # levels, bottom to top
    footing_bottom: float
    footing_top: float
    grade: float
    slab_bottom: float
    slab_top: float
    hearth: float
    extension_top: float
    back_bend: float
    spring: float
    opening_top: float
    throat: float
    taper_top: float
    flue_start: float
    shoulder_top: float
    crown_bottom: float
    crown_top: float
    liner_top: float
    # plan
    half_width: float
    side_slope: float
    back_width: float
    breast: float
    depth: float
    throat_front: float
    throat_back: float
    block_half: float
    block_back: float
    # flue
    bore: Bore
    unit_half: float
    unit_depth: float
    cavity_half: float
    cavity_depth: float
    stack_half: float
    stack_depth: float
    flue_y: float
    offset: float
    offset_bottom: float
    offset_top: float
    # roof, at the chimney
    uphill_contact: float
    downhill_contact: float
    highest_within_reach: float
    highest_within_reach_is: str
    adjusted: tuple[str, ...] = ()
    """What was drawn otherwise than asked, because the parts would not fit: one sentence each."""

    def half_at(self, y: float) -> float:
        """Half the width between the splayed sides at depth ``y``."""
        return self.half_width - self.side_slope * y

    @property
    def lean(self) -> float:
        """Forward lean of the raked back per unit of height. [-]"""
        raked = self.throat - self.back_bend
        return (self.depth - self.throat_back) / raked if raked > 0 else 0.0

    def back_at(self, z: float) -> float:
        """Depth of the back at level ``z``, from hearth to throat."""
        return self.depth - self.lean * max(z - self.back_bend, 0.0)

    @property
    def throat_width(self) -> float:
        """Width between the sides at the front of the throat."""
        return 2 * self.half_at(self.throat_front)

    @property
    def throat_area(self) -> float:
        """Real free area of the throat between splayed sides. [m2]"""
        return (self.throat_back - self.throat_front) * (
            self.half_at(self.throat_front) + self.half_at(self.throat_back)
        )

    @property
    def opening_area(self) -> float:
        """Clear area at the face, true under an arch. [m2]"""
        full = 2 * self.half_width * (self.opening_top - self.hearth)
        rise = self.opening_top - self.spring
        if rise <= 0:
            return full
        radius = (self.half_width**2 + rise**2) / (2 * rise)
        half_angle = 2 * atan(rise / self.half_width)
        segment = radius**2 * half_angle - self.half_width * (radius - rise)
        return full - 2 * self.half_width * rise + segment

    @property
    def chamber_slopes(self) -> dict[str, float]:
        """Lean of each inside face of the smoke chamber from the vertical. [rad]"""
        rise = self.taper_top - self.throat
        flue_front = self.flue_y - self.bore.depth / 2
        side = abs(self.throat_width - self.bore.width) / 2
        flue_back = self.flue_y + self.bore.depth / 2
        return {
            "sides": atan(side / rise),
            "front": atan(abs(flue_front - self.throat_front) / rise),
            "back": atan(abs(flue_back - self.depth) / rise),
        }

    @property
    def chamber_least_section(self) -> float:
        """Smallest level section of the smoke chamber, bottom or top. [m2]"""
        bottom = self.throat_width * (self.depth - self.throat_front)
        return min(bottom, self.bore.width * self.bore.depth)

    @property
    def offset_slope(self) -> float:
        """Lean of the offset part of the flue from the vertical. [rad]"""
        rise = self.offset_top - self.offset_bottom
        return atan(self.offset / rise) if rise > 0 else 0.0

    @property
    def flue_length(self) -> float:
        """Along the centre line of the flue, start to top."""
        rise = self.offset_top - self.offset_bottom
        return self.liner_top - self.flue_start - rise + hypot(rise, self.offset)

    def shift_at(self, z: float) -> float:
        """Sideways shift of the flue's centre line at level ``z``."""
        rise = self.offset_top - self.offset_bottom
        return (
            0.0 if rise <= 0 else self.offset * min(max((z - self.offset_bottom) / rise, 0.0), 1.0)
        )


def back_width(design: Design) -> float:
    """Width of the back at the hearth: as told, or following the splay but never under a third of
    the opening.
    """
    firebox = design.firebox
    if firebox.back_width is not None:
        return firebox.back_width
    width = design.opening.width
    return max(width - 2 * firebox.splay * firebox.depth, width / 3)


def build_frame(design: Design) -> Frame:
    """Hang every level and line of a design on the room floor, the opening plane and the centre
    line.
    """
    o, fb, b, sc, fl, ch = (
        design.opening,
        design.firebox,
        design.base,
        design.smoke_chamber,
        design.flue,
        design.chimney,
    )
    hearth = max(b.hearth_level, design.hearth.drop)
    opening_top = hearth + o.height
    throat = opening_top + design.throat.height
    flue_start = throat + sc.height
    liner_top = flue_start + fl.sections * (fl.section_height + fl.joint)
    crown_top = liner_top - ch.liner_above
    footing_bottom = -design.site.grade - b.footing_depth
    slab_top = hearth - fb.floor
    width, back = o.width, back_width(design)
    rake = min(fb.rake, fb.depth - fb.breast - design.throat.depth)
    rake = rake if rake > ROUNDING else 0.0
    throat_back = fb.depth - rake
    breast = min(fb.breast, throat_back - design.throat.depth)

    inside = bore(fl)
    casing = fl.casing if design.method == "modular" else 0.0
    unit_half = inside.width / 2 + inside.wall + casing
    unit_depth = inside.depth / 2 + inside.wall + casing
    shoulder_top = flue_start + ch.shoulder
    stack_half, stack_depth = unit_half + ch.gap + ch.wall, unit_depth + ch.gap + ch.wall
    flue_y = max(fb.depth - inside.depth / 2, stack_depth)
    block_half, block_back = (
        max(width / 2 + fb.jamb, stack_half),
        max(fb.depth + fb.wall, flue_y + stack_depth),
    )
    offset_top = shoulder_top + (fl.offset_rise if fl.offset else 0.0)
    front = throat_back - design.throat.depth
    coat = sc.lining_thickness * hypot(
        1.0, (flue_y - inside.depth / 2 - front) / (sc.height - sc.transition)
    )

    contact, downhill, highest, what = _roof(design, 2 * stack_half, 2 * stack_depth)
    return Frame(
        footing_bottom=footing_bottom,
        footing_top=footing_bottom + b.footing_thickness,
        grade=-design.site.grade,
        slab_bottom=slab_top - b.slab,
        slab_top=slab_top,
        hearth=hearth,
        extension_top=hearth - design.hearth.drop,
        back_bend=hearth + fb.vertical_back,
        spring=opening_top - (o.rise if o.head == "segmental" else 0.0),
        opening_top=opening_top,
        throat=throat,
        taper_top=flue_start - sc.transition,
        flue_start=flue_start,
        shoulder_top=shoulder_top,
        crown_bottom=crown_top - ch.wash - ch.crown,
        crown_top=crown_top,
        liner_top=liner_top,
        half_width=width / 2,
        side_slope=(width - back) / 2 / fb.depth,
        back_width=back,
        breast=breast,
        depth=fb.depth,
        throat_front=front,
        throat_back=throat_back,
        block_half=block_half,
        block_back=block_back,
        bore=inside,
        unit_half=unit_half,
        unit_depth=unit_depth,
        cavity_half=unit_half + ch.gap,
        cavity_depth=unit_depth + ch.gap,
        stack_half=stack_half,
        stack_depth=stack_depth,
        flue_y=flue_y,
        offset=fl.offset,
        offset_bottom=shoulder_top,
        offset_top=offset_top,
        uphill_contact=contact,
        downhill_contact=downhill,
        highest_within_reach=highest,
        highest_within_reach_is=what,
        adjusted=_adjustments(
            design,
            rake=rake,
            breast=breast,
            hearth=hearth,
            flue_y=flue_y,
            block_half=block_half,
            bare=front - coat,
        ),
    )


def _adjustments(
    design: Design,
    rake: float,
    breast: float,
    hearth: float,
    flue_y: float,
    block_half: float,
    bare: float,
) -> tuple[str, ...]:
    """One sentence for everything that is drawn otherwise than asked."""
    fb, said = design.firebox, []
    if rake < fb.rake - ROUNDING:
        said.append(
            "The back is raked less than asked: breast, throat and rake share the firebox depth."
        )
    if breast < fb.breast - ROUNDING:
        said.append("The breast is drawn thinner than asked: the throat needs the depth.")
    if hearth > design.base.hearth_level:
        said.append(
            "The hearth is drawn higher than asked: its extension cannot lie below the room floor."
        )
    if flue_y > fb.depth - bore(design.flue).depth / 2 + ROUNDING:
        said.append(
            "The flue is set back behind the firebox: over so shallow a box it would stand out of"
            " the breast."
        )
    if block_half > design.opening.width / 2 + fb.jamb + ROUNDING:
        said.append("The breast is drawn wider than asked: it carries the chimney.")
    if bare < -ROUNDING:
        said.append(
            "The chamber's lining is drawn thinner in front than asked: it would come out of the"
            " breast."
        )
    return tuple(said)
