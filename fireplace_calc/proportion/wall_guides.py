"""Breast and mantel against the wall: like shapes, golden section, thirds, heads of doors."""

from __future__ import annotations

from fireplace_calc.geometry.in_room.cut_corner import corner_of
from fireplace_calc.geometry.mantel.edges import mantel_edge
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.proportion.figures import proportion_figures, shapes
from fireplace_calc.proportion.guide import GOLDEN, Guide, LengthText, percent
from fireplace_calc.proportion.opening_guides import opening_size


def shelf_top(geometry: Geometry) -> tuple[str, float]:
    """The highest edge of the mantel; without a mantel, the top of the opening.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of str and float
        Its name, and its level. [m]
    """
    return mantel_edge(geometry) or ("opening", geometry.frame.opening_top)


def wall_ends(geometry: Geometry) -> float:
    """Half the length of the wall where it is known, never less than the masonry or the hearth.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        From the center line. [m]
    """
    f, d = geometry.frame, geometry.design
    corner = corner_of(d, f)
    if corner is not None:
        return corner.width / 2
    own = max(f.block_half, f.half_width + d.hearth.side)
    return max((d.house.room_length or 2 * own + 2.4) / 2, own)


def wall_sides(geometry: Geometry) -> tuple[float, float]:
    """Both ends of the wall, seen from a fireplace that may stand off its middle. A wall of unknown
    length is taken as long to either side. Across a corner it is the wall that cuts the corner.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of float
        Left and right of the center line. [m]
    """
    half, design = wall_ends(geometry), geometry.design
    off = design.breast.off_center
    if design.house.room_length is None and not design.breast.cornered:
        off = 0.0
    return -half - off, half - off


def wall_top(geometry: Geometry) -> float:
    """Ceiling, never lower than the masonry over the opening.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    float
        Level. [m]
    """
    return max(geometry.design.house.ceiling, geometry.frame.opening_top + 0.3)


def like_shapes(geometry: Geometry) -> Guide:
    """Opening and breast as like figures: their diagonals run alongside.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    Guide
    """
    (width, height), f = opening_size(geometry), geometry.frame
    name, top = shelf_top(geometry)
    if name == "opening":
        name, top = (
            "shoulder" if f.block_top < wall_top(geometry) else "ceiling",
            min(f.block_top, wall_top(geometry)),
        )
    whole, own = 2 * f.block_half / top, width / height
    lines = (
        ((-width / 2, f.hearth), (width / 2, f.clear_top)),
        ((-f.block_half, 0.0), (f.block_half, top)),
    )
    return Guide(
        "like shapes",
        f"Breast up to the {name}: width over height {whole:.2f}, the opening's {own:.2f}; "
        f"{percent(whole / own - 1)}. Like shapes have diagonals side by side.",
        whole,
        "the opening",
        own,
        lines,
        proportion_figures()["like shapes"][1],
    )


def golden_section(geometry: Geometry, text: LengthText) -> Guide:
    """Floor to ceiling divided in the golden section, both ways up.

    Parameters
    ----------
    geometry : Geometry
    text : LengthText
        Prints a length.

    Returns
    -------
    Guide
    """
    name, level = shelf_top(geometry)
    top, (left, right) = wall_top(geometry), wall_sides(geometry)
    part = 1 / shapes()[GOLDEN]
    ideal = min((part, 1 - part), key=lambda share: abs(share - level / top))
    lines = tuple(((left, share * top), (right, share * top)) for share in (1 - part, part))
    return Guide(
        GOLDEN,
        f"Top of the {name} at {level / top:.2f} of the wall's height; the section is at"
        f" {ideal:.2f}, {text(ideal * top)} up; {percent(level / top / ideal - 1)}.",
        level / top,
        f"{ideal:.2f} of the wall",
        ideal,
        lines,
        proportion_figures()[GOLDEN][1],
    )


def thirds(geometry: Geometry) -> Guide:
    """The wall in three, side to side, and the breast's share of it.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    Guide
    """
    length, source = geometry.design.house.room_length, proportion_figures()["third"][1]
    if length is None and not geometry.design.breast.cornered:
        return Guide(
            "thirds of the wall",
            "Not checked: the length of the room is unknown.",
            None,
            "a third",
            None,
            (),
            source,
        )
    length, top = 2 * wall_ends(geometry), wall_top(geometry)
    found = 2 * geometry.frame.block_half / length
    middle = sum(wall_sides(geometry)) / 2
    lines = tuple(((x, 0.0), (x, top)) for x in (middle - length / 6, middle + length / 6))
    return Guide(
        "thirds of the wall",
        f"The breast takes {found:.2f} of the wall's length; a third is 0.33,"
        f" {percent(found * 3 - 1)}.",
        found,
        "a third",
        1 / 3,
        lines,
        source,
    )


def door_head(geometry: Geometry, text: LengthText) -> Guide:
    """A shelf in line with the heads of the doors.

    Parameters
    ----------
    geometry : Geometry
    text : LengthText
        Prints a length.

    Returns
    -------
    Guide
    """
    (head, source), (left, right) = proportion_figures()["door head"], wall_sides(geometry)
    name, level = shelf_top(geometry)
    lines = (((left, head), (right, head)),) if head < wall_top(geometry) else ()
    return Guide(
        "door head",
        f"Usual door head at {text(head)}; top of the {name} at {text(level)},"
        f" {percent(level / head - 1)}.",
        level / head,
        "in line",
        1.0,
        lines,
        source,
    )
