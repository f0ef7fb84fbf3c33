"""The frame of a fireplace from a set: its pieces speak in place of the design's sizes. [m]"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from functools import lru_cache
from math import atan

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.pieces import ANGLE
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.geometry.assembled.readings import ReadOff
from fireplace_calc.geometry.frame import LEAST_SETBACK, Frame
from fireplace_calc.geometry.from_set.set_up import set_up

FACING = "The facing over the opening needs an angle or an arch of its own, which is not drawn."
FLUSH = (
    "The chimney's wall is drawn thicker in front and behind than asked: it stands flush with the"
    " breast, where a mere edge would be left."
)
BARE = "A brick face is drawn, but no facing stands before the pieces: tell how thick it is."


@dataclass(frozen=True, slots=True)
class SetFrame(Frame):
    """A frame whose firebox begins behind a facing, and whose throat is a slot of its own.

    Attributes
    ----------
    set_back : float
        Of the front of the pieces from the opening plane; up to there the jambs are square. [m]
    throat_across : float
        Width of the throat's slot. [m]
    slopes : tuple of float
        Run over rise of the reducer's sides, front and back. [-]
    plate_bottom : float
        Level of what the base plates' bed lies on. [m]
    lift_beds : tuple of (float, float)
        Bottom and top of every bed under the flue. [m]
    """

    set_back: float = 0.0
    throat_across: float = 0.0
    slopes: tuple[float, float, float] = (0.0, 0.0, 0.0)
    plate_bottom: float = 0.0
    lift_beds: tuple[tuple[float, float], ...] = ()

    def half_at(self, y: float) -> float:
        """Half the width between the sides: square through the facing, then splayed. [m]

        Parameters
        ----------
        y : float
            Depth from the opening plane. [m]
        """
        return self.half_width - self.side_slope * max(y - self.set_back, 0.0)

    @property
    def beds(self) -> tuple[tuple[float, float], ...]:
        """Bottom and top of every bed under the flue. [m]"""
        return self.lift_beds

    @property
    def lining_front(self) -> float:
        """At the front of the pieces. [m]"""
        return self.set_back

    @property
    def throat_width(self) -> float:
        """Of the throat's slot. [m]"""
        return self.throat_across

    @property
    def throat_area(self) -> float:
        """Of the throat's slot. [m2]"""
        return (self.throat_back - self.throat_front) * self.throat_across

    @property
    def chamber_slopes(self) -> dict[str, float]:
        """Lean of each inside face of the reducer from the vertical. [rad]"""
        return dict(zip(("sides", "front", "back"), map(atan, self.slopes), strict=True))


def set_frame(design: Design, frame: Frame) -> SetFrame:
    """Put what the set's pieces say into a frame made of the design's own sizes.

    Parameters
    ----------
    design : Design
        With a set, its decided inputs in it.
    frame : Frame
        Of that design.

    Returns
    -------
    SetFrame
    """
    up, around = set_up(design), design.pieces
    read, made = up.read, up.assembly
    start = frame.hearth - up.floor - read.plate_top
    back = up.set_back + read.deep_over_all + around.gap + around.around
    flue_y = up.set_back + read.bore_y
    unit_half, unit_depth = read.flue_half, read.flue_deep
    chimney = design.chimney
    stack_half = unit_half + chimney.gap + chimney.wall
    stack_depth = unit_depth + chimney.gap + chimney.wall
    edge = 0.0 < flue_y - stack_depth < LEAST_SETBACK - ROUNDING
    stack_depth = flue_y if edge else stack_depth  # the pieces hold the flue: the wall takes it up
    block_half = max(read.half_over_all + around.gap + around.around, stack_half)
    block_back = max(back, flue_y + stack_depth)
    held = {f.name: getattr(frame, f.name) for f in fields(Frame)}
    held |= {
        "slab_top": start + read.plate_top,
        "slab_bottom": start - design.base.slab,
        "spring": start + read.opening_top - read.rise,
        "opening_top": start + read.opening_top,
        "throat": start + read.throat_bottom,
        "back_bend": start + read.throat_bottom,
        "taper_top": start + read.head_top,
        "flue_start": start + read.head_top,
        "block_top": max(frame.block_top, start + read.head_top),
        "liner_top": start + read.flue_top,
        "half_width": up.half,
        "side_slope": read.splay,
        "back_width": 2 * up.half_back,
        "depth": up.set_back + up.depth,
        "breast": up.breast,
        "throat_front": up.set_back + read.throat_front,
        "throat_back": up.set_back + read.throat_back,
        "block_half": block_half,
        "block_back": block_back,
        "unit_half": unit_half,
        "unit_depth": unit_depth,
        "cavity_half": unit_half + chimney.gap,
        "cavity_depth": unit_depth + chimney.gap,
        "stack_half": stack_half,
        "stack_depth": stack_depth,
        "stack_middle": 0.0,
        "flue_y": flue_y,
        "bore": replace(frame.bore, label=_bore_label(read, design)),
        "adjusted": (*_said(design, up.set_back), *((FLUSH,) if edge else ())),
    }
    return SetFrame(
        **held,
        set_back=up.set_back,
        throat_across=read.throat_width,
        slopes=read.slopes,
        plate_bottom=start,
        lift_beds=tuple([(start + low, start + high) for low, high in _beds(made)]),
    )


@lru_cache(maxsize=64)
def _beds(made: Assembly) -> tuple[tuple[float, float], ...]:
    """Bottom and top of every bed under the flue, over the assembly's start. [m]"""
    return tuple(
        (under, max(p.level for p in here))
        for under, here in zip((made.start, *made.tops), made.by_lift, strict=False)
        if all(p.piece.role != "flue" for p in here)
    )


def _said(design: Design, set_back: float) -> tuple[str, ...]:
    """What is drawn otherwise than it can be built."""
    if set_back > 0:
        carried = design.pieces.facing_head is not None and (
            design.pieces.facing_head != ANGLE
            or design.pieces.facing_angle(design.opening.head) is not None
        )
        return design.overruled if carried else (*design.overruled, FACING)
    return (*design.overruled, BARE) if design.surround.face == "brick" else design.overruled


def _bore_label(read: ReadOff, design: Design) -> str:
    """Size of the bore as the set's own file tells it."""
    metric = design.piece_set is not None and design.piece_set.metric
    sides = (read.bore_width,) if read.round else (read.bore_width, read.bore_depth)
    texts = (f"{s * 1000:.0f}" if metric else feet_inches(s, inches_only=True) for s in sides)
    return " x ".join(texts)
