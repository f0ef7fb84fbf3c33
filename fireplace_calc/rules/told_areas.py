"""Areas of the smoke's way as somebody tells them: believed only where the masonry that is drawn
has room for them.
"""

from __future__ import annotations

from math import pi
from typing import NamedTuple

from fireplace_calc.base.printing import show
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.bore import Bore
from fireplace_calc.geometry.frame import Frame
from fireplace_calc.rules.comparing import reaches
from fireplace_calc.rules.facts import Facts


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
        told["opening_area"] or frame.clear_area,
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
        By the fact; a flue's area has its own sentence, ``why_no_such_area``.
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


def possible_area(told: float | None, bore: Bore, source: str | None) -> float | None:
    """The told area, or none where the liner has no room for it.

    Parameters
    ----------
    told : float or None
        [m2]
    bore : Bore
        As drawn.
    source : str or None
        Where the area comes from. A table's figure is no larger than the bore, any other no larger
        than the liner itself, wall and all.

    Returns
    -------
    float or None
        [m2]
    """
    wide, deep = bore.width + 2 * bore.wall, bore.depth + 2 * bore.wall
    most = pi * wide**2 / 4 if bore.round else wide * deep
    if source == "table":
        most = max(bore.area, bore.table_area or 0.0)
    return told if told is not None and reaches(most, told) else None


def why_unknown(facts: Facts) -> str:
    """Why the net area of the fireplace's flue is not known."""
    if facts.design.measured.flue_area is None:
        return "The net area of the flue is not known yet."
    return why_no_such_area(facts.flue_area_source)


def why_no_such_area(source: str | None) -> str:
    """Why a told flue area cannot be."""
    if source == "table":
        return "The flue area told is larger than the bore: no table says so. Look again."
    return "The flue area told is larger than the liner itself. Measure again."
