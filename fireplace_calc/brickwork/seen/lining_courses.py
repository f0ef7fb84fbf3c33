"""Levels of the joints of a lining that is not laid in firebrick."""

from __future__ import annotations

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.brickwork.courses import course_list
from fireplace_calc.geometry.parts import Geometry


def section_joints(geometry: Geometry) -> list[float]:
    """Level of every joint of the lining over the hearth, by the list of courses.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    list of float
        The beds of a set, or the top of each course. [m]
    """
    f = geometry.frame
    tops = (
        [high for _, high in f.beds]
        if f.beds
        else [course.top for course in course_list(geometry).of("firebox lining")]
    )
    return [z for z in tops if f.hearth + CONTACT_GAP < z < f.throat - CONTACT_GAP]
