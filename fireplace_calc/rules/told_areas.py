"""Areas of the smoke's way as somebody tells them: believed only where the masonry that is drawn
has room for them.
"""

from __future__ import annotations

from typing import NamedTuple

from fireplace_calc.base.printing import show
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.rules.comparing import reaches
from fireplace_calc.rules.net_area import possible_area, why_no_such_area


class BelievedAreas(NamedTuple):
    """What checks and draft take; a told area that cannot be gives way to the drawing's own.

    Attributes
    ----------
    opening, throat, passage : float
        Told, else drawn. [m2]
    damper : float or None
        Free area; unknown where nobody has told one that can be. [m2]
    flue : float or None
        Told; the drawing's own has several sources and is the caller's. [m2]
    """

    opening: float
    throat: float
    passage: float
    damper: float | None
    flue: float | None


class DoubtedArea(NamedTuple):
    """A told area that cannot be.

    Attributes
    ----------
    told : float
        [m2]
    why : str
        The two figures that disagree, and what to do.
    """

    told: float
    why: str


def _told(design: Design, frame: Frame) -> dict[str, tuple[str, float | None, float, str]]:
    """By fact: name, area told, most there is room for, and what has that room."""
    measured = design.measured
    breast = 2 * frame.block_half * (frame.throat - frame.hearth)
    firebox = 2 * frame.half_width * frame.depth
    below, around = "the firebox under it", "the breast up to the throat"
    return {
        "opening_area": ("opening area", measured.opening_area, breast, around),
        "throat_area": ("throat area", measured.throat_area, firebox, below),
        "smoke_chamber_min_section": ("chamber section", measured.passage, firebox, below),
        "damper_free_area": ("damper's free area", design.throat.damper_area, firebox, below),
    }


def believed_areas(design: Design, frame: Frame) -> BelievedAreas:
    """The areas that checks and draft go by.

    Parameters
    ----------
    design : Design
    frame : Frame

    Returns
    -------
    BelievedAreas
    """
    told = {
        fact: area if area is not None and reaches(most, area) else None
        for fact, (_, area, most, _) in _told(design, frame).items()
    }
    return BelievedAreas(
        told["opening_area"] or frame.opening_area,
        told["throat_area"] or frame.throat_area,
        told["smoke_chamber_min_section"] or frame.chamber_least_section,
        told["damper_free_area"],
        possible_area(design.measured.flue_area, frame.bore, design.flue.area_from),
    )


def doubted_areas(design: Design, frame: Frame) -> dict[str, DoubtedArea]:
    """Told areas that cannot be.

    Parameters
    ----------
    design : Design
    frame : Frame

    Returns
    -------
    dict of str to DoubtedArea
        By the fact; a flue's area has its own sentence, see ``rules.net_area``.
    """
    return {
        fact: DoubtedArea(
            area,
            f"The {name} told, {show(area, 'area')}, is more than {what} has room for,"
            f" {show(most, 'area')}. Look again.",
        )
        for fact, (name, area, most, what) in _told(design, frame).items()
        if area is not None and not reaches(most, area)
    }


def not_used(design: Design, frame: Frame) -> tuple[str, ...]:
    """One sentence for every told area that checks and draft leave aside.

    Parameters
    ----------
    design : Design
    frame : Frame

    Returns
    -------
    tuple of str
    """
    said = [doubted.why for doubted in doubted_areas(design, frame).values()]
    told = design.measured.flue_area
    if told is not None and possible_area(told, frame.bore, design.flue.area_from) is None:
        said.append(why_no_such_area(design.flue.area_from))
    return tuple(said)
