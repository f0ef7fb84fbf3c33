"""Levels of the joints of a lining that is not laid brick by brick."""

from __future__ import annotations

import numpy as np

from fireplace_calc.base.tolerances import CONTACT_GAP
from fireplace_calc.brickwork.unit import common_brick
from fireplace_calc.geometry.parts import Geometry


def lining_course(geometry: Geometry) -> float:
    """Height of a course of a lining where no firebrick is laid.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        Of a section, or of common brick. [m]
    """
    d = geometry.design
    return d.firebox.section_height if d.method == "modular" else common_brick(d).course


def section_joints(geometry: Geometry) -> list[float]:
    """Level of every joint between refractory sections over the hearth.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    list of float
        The beds of a set, or one a section. [m]
    """
    f = geometry.frame
    if f.beds:
        return [high for _, high in f.beds if f.hearth < high < f.throat - CONTACT_GAP]
    height = lining_course(geometry)
    return [float(z) for z in np.arange(f.hearth + height, f.throat, height)]
