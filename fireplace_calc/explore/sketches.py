"""Designs worked out only as far as checks and draft read them: a frame without its parts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.geometry.frame_builder import build_frame


@dataclass(frozen=True, slots=True)
class Sketch:
    """A design and its frame, without its parts: all that checks and draft read, at a tenth of the
    cost.
    """

    design: Design
    frame: Frame


def sketch(design: Design) -> Sketch:
    """A design with its frame.

    Parameters
    ----------
    design : Design

    Returns
    -------
    Sketch

    Raises
    ------
    InputError
        When it cannot be drawn.
    """
    return Sketch(design, build_frame(design))


def try_change(design: Design, changes: Mapping[str, object]) -> Design | None:
    """A changed design, or nothing when it cannot be drawn so.

    Parameters
    ----------
    design : Design
    changes : mapping of str to object
        As for ``change``.

    Returns
    -------
    Design or None
    """
    try:
        return change(design, changes)
    except InputError:
        return None
