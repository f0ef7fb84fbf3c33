"""What must hold between inputs before anything can be drawn."""

from __future__ import annotations

from functools import lru_cache
from math import hypot

from fireplace_calc.base.printing import named
from fireplace_calc.base.tables.bars import reinforcing_bar
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.between import (
    require_at_least,
    require_at_most,
    require_bench,
    require_corner,
    require_wall,
)
from fireplace_calc.editing.mantel_fits import require_mantel
from fireplace_calc.editing.sets.set_consistency import require_set
from fireplace_calc.geometry.bore import flue_bore
from fireplace_calc.geometry.frame_builder import back_width, build_frame

STEEPEST = 2.0
"""A raked back leans forward no more than this per unit of its height; beyond, it is a ceiling and
not a back. [-]
"""

LEAST_OPENING = 12 * INCH
"""Left open under a hood: engineering judgement. [m]"""
LEAST_FLUE = 12 * INCH
"""Of the second flue, under the crown. [m]"""


@lru_cache(maxsize=64)
def require_consistent(design: Design) -> None:
    """Refuse a design whose parts would run through each other; what holds together is not asked
    again.

    Raises
    ------
    InputError
        Names the input to change, the most that fits, and why.
    """
    opening, firebox, base = design.opening, design.firebox, design.base
    hearth = max(base.hearth_level, design.hearth.drop)
    rake = min(firebox.rake, max(firebox.depth - firebox.breast - design.throat.depth, 0.0))
    back = back_width(design)
    splay = (opening.width - back) / 2 / firebox.depth
    require_at_most(
        "Back width", back, opening.width, "the sides splay inward from the opening to the back."
    )
    require_set(design)
    if design.piece_set is None:
        require_at_most(
            "Vertical back",
            firebox.vertical_back,
            opening.height + design.throat.height - rake / STEEPEST,
            "the back leans forward between here and the throat.",
        )
    require_at_most(
        "Throat depth",
        design.throat.depth,
        0.9 * firebox.depth,
        "the throat opens inside the firebox.",
    )
    require_at_most(
        "Lining thickness",
        firebox.lining_thickness,
        min(firebox.wall, firebox.jamb / hypot(1.0, splay)),
        "wall and jamb count the lining in.",
    )
    require_at_most(
        "Lintel bearing",
        design.lintel.bearing or 0.0,
        firebox.jamb,
        "the lintel rests on the jambs.",
    )
    if opening.head == "segmental":
        require_at_most(
            "Arch rise",
            opening.rise,
            min(opening.width / 2, opening.height),
            "a segment rises no more than half its span, and stays inside the opening.",
        )
    _require_doors(design)
    if opening.hood is not None:
        _require_hood(design, opening.hood)
    require_at_most(
        "Lintel height",
        design.lintel.height,
        design.throat.height,
        "the lintel stays below the throat.",
    )
    if design.lintel.material == "reinforced masonry" and opening.head != "segmental":
        require_at_most(
            "Lintel bars over the underside",
            design.lintel.bar_center or 0.0,
            0.9 * design.lintel.height,
            "they lie inside the lintel, in its lower part.",
        )
        _require_bars(design)
    require_at_most(
        "Transition",
        design.smoke_chamber.transition,
        design.smoke_chamber.height * 0.9,
        "it is the top of the smoke chamber.",
    )
    require_at_most(
        "Hearth slab with its floor",
        base.slab + firebox.floor,
        hearth + design.site.grade + base.footing_depth - base.footing_thickness,
        "they lie on the base above the footing; lower the footing or raise the hearth.",
    )
    if design.hearth.front > 0 and base.footing_projection > 0:
        bed = hearth - design.hearth.drop - design.hearth.thickness - design.hearth.bed
        require_at_most(
            "Footing thickness",
            base.footing_thickness,
            min(bed, 0.0) + design.site.grade + base.footing_depth,
            "it runs forward under the hearth extension and its bed; lower the footing or raise the"
            " hearth.",
        )
    flue_bore(design.flue)
    require_at_most(
        "Smoke chamber lining thickness",
        design.smoke_chamber.lining_thickness,
        (min(firebox.jamb, firebox.wall) + 1e-3) / 2,
        "half of the jamb, or of the back wall, is left for the wall beside it.",
    )
    frame = build_frame(design)
    rise = frame.liner_top - frame.block_top
    over = " over the ceiling" if frame.block_top > frame.flue_start else ""
    require_at_most(
        "Crown with its wash, shoulder and standing liner",
        design.chimney.crown
        + design.chimney.wash
        + design.chimney.liner_above
        + design.chimney.shoulder,
        rise,
        f"they share the height of the flue{over}.",
    )
    if design.flue.offset > 0:
        require_at_most(
            "Offset rise",
            design.flue.offset_rise,
            rise
            - design.chimney.shoulder
            - design.chimney.crown
            - design.chimney.wash
            - design.chimney.liner_above,
            "the flue has to finish its shift below the crown.",
        )
    if opening.head == "segmental":
        _require_seat(design)
    require_mantel(design)
    if design.breast.stands_out is not None:
        require_at_most(
            "Breast projection",
            design.breast.stands_out,
            frame.block_back + (design.clearance.back or 0.0),
            "farther out, the wall would stand behind everything that is built.",
        )
    require_wall(design, frame)
    require_corner(design, frame)
    if design.seat.drawn or design.seat.niche != "none":
        require_bench(design, frame.extension_top)
    if design.second_flue.drawn:
        _require_second_flue(design)


def _require_bars(design: Design) -> None:
    """Bars lie side by side in the lintel, each with as much grout as it is thick."""
    lintel, firebox = design.lintel, design.firebox
    if lintel.bars is None or lintel.bar is None:
        return
    thick = reinforcing_bar(lintel.bar).diameter
    wide = min(firebox.breast, firebox.depth - design.throat.depth)
    high = 2 * (lintel.bar_center or 0.0) or lintel.height
    if 2 * thick * lintel.bars > wide + ROUNDING or 2 * thick > min(high, lintel.height) + ROUNDING:
        size = f"{named(lintel.height, 'length')} high and {named(wide, 'length')} thick"
        raise InputError(
            f"Lintel bars are {lintel.bars} of {lintel.bar}, but the lintel is {size}: each bar"
            f" wants {named(2 * thick, 'length')} of it both ways.",
            "Lintel bars",
            "bars that fit side by side",
            lintel.bars,
        )


def _require_doors(design: Design) -> None:
    """The inlet of glass doors is less than the opening they stand before."""
    told, opening = design.fire.doors_inlet, design.opening
    most = opening.width * opening.clear_height
    if told is not None and told > most + ROUNDING:
        raise InputError(
            f"Glass doors' inlet is {named(told, 'area')}, but the opening they shut has"
            f" {named(most, 'area')}: give what stays free with the doors shut.",
            "Glass doors' inlet",
            f"at most {named(most, 'area')}",
            told,
        )


def _require_hood(design: Design, hood: float) -> None:
    """A hood leaves an opening to tend the fire through; its lower edge is straight, so that under
    an arch it hangs as low as the spring line.
    """
    require_at_most(
        "Metal hood", hood, design.opening.height - LEAST_OPENING, "a foot stays open under it."
    )
    if design.opening.head == "segmental":
        require_at_least(
            "Metal hood", hood, design.opening.rise, "it closes the arch to the spring line."
        )


def _require_seat(design: Design) -> None:
    """The ends of an arch's ring are cut on its radius, and lean outward over the jambs."""
    opening, depth = design.opening, design.lintel.height
    half = opening.width / 2
    lean = 2 * half * opening.rise / (half**2 + opening.rise**2)  # sine of half the arch's angle
    if depth * lean > design.firebox.jamb:
        require_at_most(
            "Lintel height",
            depth,
            (build_frame(design).block_half - half) / lean,
            "the ends of the arch's ring stay in the breast; widen the jamb or take a shallower"
            " ring.",
        )


def _require_second_flue(design: Design) -> None:
    """A second flue starts over the footing, ends over the crown, and is long enough to stand."""
    told, frame = design.second_flue, build_frame(design)
    if design.stack.one_appliance:
        raise InputError(
            "Adjoining flues serve one appliance is yes, but the second flue serves"
            f" {'an appliance' if told.serves == 'appliance' else 'a fireplace'} of its"
            " own; say no, or that there is no second flue.",
            "Adjoining flues serve one appliance",
            "no, beside a second flue",
            True,
        )
    if told.start is not None:
        require_at_least(
            "Second flue starts",
            told.start,
            frame.footing_top,
            "below that is the footing; a flue is carried from there.",
        )
        require_at_most(
            "Second flue starts",
            told.start,
            frame.crown_bottom - LEAST_FLUE,
            "above it there has to be a foot of flue under the crown.",
        )
    require_at_least(
        "Second flue's top over the first",
        told.top,
        -design.chimney.liner_above,
        "its liner ends no lower than the crown.",
    )
