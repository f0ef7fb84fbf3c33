"""Designs worked out only as far as checks and draft read them: a frame without its parts."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.frame_builder import build_frame


@dataclass(frozen=True, slots=True)
class Sketch:
    """A design and its frame, without its parts: all that checks and draft read, at a tenth of the
    price.
    """

    design: Design
    frame: Frame


def sketch(design: Design) -> Sketch:
    """A design with its frame."""
    return Sketch(design, build_frame(design))


def moved(design: Design, changes: dict) -> Design | None:
    """A changed design, or nothing when it cannot be drawn so."""
    try:
        return change(design, changes)
    except InputError:
        return None
