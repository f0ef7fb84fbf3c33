"""From a design to its frame: what follows from what, and what is drawn otherwise because it
would not fit. [m]
"""

from __future__ import annotations

from functools import lru_cache
from math import hypot

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.bore import flue_bore
from fireplace_calc.geometry.frame import LEAST_SETBACK, Frame
from fireplace_calc.geometry.roofline import roof_contacts
from fireplace_calc.geometry.second_flue.placing import Beside, beside, stack_across, unit_depth


def _flush(flue_y: float, stack_depth: float) -> float:
    """The flue moved so that the stack stands flush with the breast, where it would stand out of it
    or back by a mere edge. [m]
    """
    return flue_y if flue_y - stack_depth >= LEAST_SETBACK - ROUNDING else stack_depth


def back_width(design: Design) -> float:
    """Width of the back at the hearth: as given, or following the splay but never under a third of
    the opening.

    Parameters
    ----------
    design : Design

    Returns
    -------
    float
        Between the sides. [m]
    """
    firebox = design.firebox
    if firebox.back_width is not None:
        return firebox.back_width
    width = design.opening.width
    return max(width - 2 * firebox.splay * firebox.depth, width / 3)


@lru_cache(maxsize=64)
def build_frame(design: Design) -> Frame:
    """Hang every level and line of a design on the room floor, the opening plane and the center
    line.

    Parameters
    ----------
    design : Design
        Consistent: nothing is refused here, what does not quite fit is drawn otherwise and named in
        ``Frame.adjusted``.

    Returns
    -------
    Frame
    """
    o, fb, b, sc, fl, ch = (
        design.opening,
        design.firebox,
        design.base,
        design.smoke_chamber,
        design.flue,
        design.chimney,
    )
    # Levels, from the hearth up to the crown and down to the footing.
    hearth = max(b.hearth_level, design.hearth.drop)
    opening_top = hearth + o.height
    throat = opening_top + design.throat.height
    flue_start = throat + sc.height
    liner_top = flue_start + fl.sections * (fl.section_height + fl.joint)
    crown_top = liner_top - ch.liner_above
    footing_bottom = -design.site.grade - b.footing_depth
    slab_top = hearth - fb.floor
    # Breast, throat and rake share the depth of the firebox; the rake gives way, then the breast.
    width, back = o.width, back_width(design)
    rake = min(fb.rake, fb.depth - fb.breast - design.throat.depth)
    rake = rake if rake > ROUNDING else 0.0
    throat_back = fb.depth - rake
    breast = min(fb.breast, throat_back - design.throat.depth)

    # From the flue outward: unit, gap and wall make the stack; the block below carries it all.
    inside = flue_bore(fl)
    casing = fl.casing if design.method == "modular" else 0.0
    unit_half = inside.width / 2 + inside.wall + casing
    first_depth = inside.depth / 2 + inside.wall + casing
    straight = design.breast.form == "straight"
    block_top = max(flue_start, design.house.ceiling) if straight else flue_start
    shoulder_top = block_top + ch.shoulder
    stack_depth = max(first_depth, unit_depth(design)) + ch.gap + ch.wall
    flue_y = _flush(fb.depth - inside.depth / 2, stack_depth)
    front = throat_back - design.throat.depth
    slope = (width - back) / 2 / fb.depth
    lining = _lining(design, width / 2 - slope * front, front, flue_y)
    second = beside(
        design,
        unit_half + ch.gap,
        flue_y,
        (slab_top - b.slab, slab_top, throat, flue_start, liner_top),
        lining[0],
        slope,
        breast,
    )
    stack_half, stack_middle = stack_across(unit_half + ch.gap, ch.wall, second)
    block_half, block_back = (
        max(width / 2 + fb.jamb, stack_half + abs(stack_middle)),
        max(fb.depth + fb.wall, flue_y + stack_depth),
    )
    offset_top = shoulder_top + (fl.offset_rise if fl.offset else 0.0)

    contact, downhill, highest, what = roof_contacts(design, 2 * stack_half, 2 * stack_depth)
    made = Frame(
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
        block_top=block_top,
        shoulder_top=shoulder_top,
        crown_bottom=crown_top - ch.wash - ch.crown,
        crown_top=crown_top,
        liner_top=liner_top,
        half_width=width / 2,
        side_slope=slope,
        back_width=back,
        breast=breast,
        depth=fb.depth,
        throat_front=front,
        throat_back=throat_back,
        block_half=block_half,
        block_back=block_back,
        bore=inside,
        unit_half=unit_half,
        unit_depth=first_depth,
        cavity_half=unit_half + ch.gap,
        cavity_depth=first_depth + ch.gap,
        stack_half=stack_half,
        stack_depth=stack_depth,
        stack_middle=stack_middle,
        flue_y=flue_y,
        offset=fl.offset,
        offset_bottom=shoulder_top,
        offset_top=offset_top,
        uphill_contact=contact,
        downhill_contact=downhill,
        highest_within_reach=highest,
        highest_within_reach_is=what,
        hood=o.hood or 0.0,
        second=second,
        adjusted=_adjustments(
            design,
            rake=rake,
            breast=breast,
            hearth=hearth,
            flue_y=flue_y,
            block=(block_half, block_back),
            lining=lining,
            second=second,
        ),
    )
    if design.piece_set is None:
        return made
    from fireplace_calc.geometry.from_set.frame_of_set import set_frame  # wakes manifold3d

    return set_frame(design, made)


def _adjustments(
    design: Design,
    rake: float,
    breast: float,
    hearth: float,
    flue_y: float,
    block: tuple[float, float],
    lining: tuple[float, float, float],
    second: Beside | None,
) -> tuple[str, ...]:
    """One sentence for everything that is drawn otherwise than asked; ``block`` is half as wide,
    and as deep, as the masonry is drawn.
    """
    (block_half, block_back), (sides, front, behind) = block, lining
    fb, notes = design.firebox, []
    if rake < fb.rake - ROUNDING:
        notes.append(
            "The back is raked less than asked: breast, throat and rake share the firebox depth."
        )
    if breast < fb.breast - ROUNDING:
        notes.append("The breast is drawn thinner than asked: the throat needs the depth.")
    if hearth > design.base.hearth_level:
        notes.append(
            "The hearth is drawn higher than asked: its extension cannot lie below the room floor."
        )
    if flue_y > fb.depth - flue_bore(design.flue).depth / 2 + ROUNDING:
        notes.append(
            "The flue is set back behind the firebox: over so shallow a box it would stand out of"
            " the breast."
        )
    if block_half > design.opening.width / 2 + fb.jamb + ROUNDING:
        notes.append("The breast is drawn wider than asked: it carries the chimney.")
    if second is not None and second.set_out:
        notes.append(
            "The second flue is drawn farther out than asked: it passes the firebox and the smoke"
            " chamber."
        )
    if front < -ROUNDING:
        notes.append(
            "The chamber's lining is drawn thinner in front than asked: it would come out of the"
            " breast."
        )
    if sides > block_half + ROUNDING or behind > block_back + ROUNDING:
        notes.append(
            "The chamber's lining is drawn thinner at the sides or the back than asked: it would"
            " come out of the masonry."
        )
    return tuple(notes)


def _lining(
    design: Design, throat_half: float, throat_front: float, flue_y: float
) -> tuple[float, float, float]:
    """How far the smoke chamber's lining reaches sideways, forward and back when it is laid square
    to the faces that lean. [m]
    """
    chamber, inside, depth = design.smoke_chamber, flue_bore(design.flue), design.firebox.depth
    rise, half, deep = chamber.height - chamber.transition, inside.width / 2, inside.depth / 2

    def thick(run: float) -> float:
        return chamber.lining_thickness * hypot(1.0, run / rise)

    return (
        max(throat_half, half) + thick(throat_half - half),
        min(throat_front, flue_y - deep) - thick(flue_y - deep - throat_front),
        max(depth, flue_y + deep) + thick(flue_y + deep - depth),
    )
