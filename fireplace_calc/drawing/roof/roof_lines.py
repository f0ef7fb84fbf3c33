"""Where roof, ridge and eaves lie as the roof view cuts them."""

from __future__ import annotations

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.roofline import REACH


def _named(geometry: Geometry) -> dict[str, float]:
    f, d = geometry.frame, geometry.design
    named = {
        "footing": f.footing_bottom,
        "grade": f.grade,
        "floor": 0.0,
        "flue start": f.flue_start,
        "roof contact": f.uphill_contact,
        "crown": f.crown_top,
        "flue top": f.liner_top,
    }
    if d.roof.ridge_level <= max(f.liner_top, f.highest_within_reach + 1.0):
        named["ridge"] = d.roof.ridge_level
    return named


def along(geometry: Geometry) -> tuple[float, float, float]:
    """Left and right end of the masonry block, and width of the stack, seen along the ridge. [m]

    Places count from the uphill face of the chimney.
    """
    f = geometry.frame
    if geometry.design.roof.ridge_runs == "along the opening":
        face = f.flue_y - f.stack_depth
        return face - f.block_back, face, 2 * f.stack_depth
    middle = -f.stack_half - f.offset - f.stack_middle
    return middle - f.block_half, middle + f.block_half, 2 * f.stack_half


def _shift(geometry: Geometry, z: float) -> float:
    """How far the stack stands aside at a level from where it leaves the roof, seen along the
    ridge. [m]
    """
    f = geometry.frame
    return (
        0.0 if geometry.design.roof.ridge_runs == "along the opening" else f.shift_at(z) - f.offset
    )


def _ridge(geometry: Geometry) -> float:
    """Where the ridge stands, from the uphill chimney face. [m]"""
    roof = geometry.design.roof
    return -along(geometry)[2] / 2 if roof.position == "through the ridge" else roof.ridge_distance


def _width(geometry: Geometry, spare: float) -> tuple[float, float]:
    """Ends of what is drawn; with room to spare the slopes run down to their eaves. [m]"""
    low, high, _ = along(geometry)
    near = [
        part.drawn_distance
        for part in geometry.design.roof.nearby
        if part.drawn_distance <= REACH * (1 + 1e-9)
    ]
    ridge = _ridge(geometry)
    left, right = (
        low - 1.0,
        max(min(max(ridge, 0.0) + 0.5, REACH + 0.4), max([0.0, *near]) + 1.0, high + 0.5),
    )
    down, up = _eaves(geometry)
    if spare > right - left:
        left = max(min(left, down - 0.3), right - spare)
        right = min(max(right, up + 0.3), left + spare)
    return left, right


def _eaves(geometry: Geometry) -> tuple[float, float]:
    """Where the two slopes end, downhill and uphill of the chimney; beyond any drawing for a flat
    roof. [m]
    """
    roof, ridge = geometry.design.roof, _ridge(geometry)
    if roof.pitch <= 0 or roof.eaves_level >= roof.ridge_level:
        return -1e3, 1e3
    run = (roof.ridge_level - roof.eaves_level) / roof.pitch
    return ridge - run, ridge + run


def roof_at(geometry: Geometry, u: float) -> float:
    """Level of the roof over a place, both slopes alike. [m]

    Parameters
    ----------
    geometry : Geometry
    u : float
        From the uphill chimney face, uphill positive. [m]
    """
    roof = geometry.design.roof
    return roof.ridge_level - roof.pitch * abs(_ridge(geometry) - u)
