"""The opening against named rectangles, a published table, usual heights, and its room."""

from __future__ import annotations

from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import box
from fireplace_calc.proportion.figures import nearest_published, nearest_shape, proportion_figures
from fireplace_calc.proportion.guide import Guide, LengthText, Polyline, percent
from fireplace_calc.proportion.widths import suited_widths, width_sentence


def _rectangle(half: float, low: float, high: float) -> Polyline:
    """Its four sides, closed; ``half`` of its width and its levels. [m]"""
    ring = box(-half, half, low, high)
    return (*ring, ring[0])


def opening_size(geometry: Geometry) -> tuple[float, float]:
    """Width and height of the opening.

    Parameters
    ----------
    geometry : Geometry

    Returns
    -------
    tuple of float
        [m]
    """
    return 2 * geometry.frame.half_width, geometry.frame.clear_top - geometry.frame.hearth


def opening_shape(geometry: Geometry, text: LengthText) -> Guide:
    """The opening against the rectangles that have a name, on its own width.

    Parameters
    ----------
    geometry : Geometry
    text : LengthText
        Prints a length.

    Returns
    -------
    Guide
    """
    width, height = opening_size(geometry)
    found, low = width / height, geometry.frame.hearth
    name, ideal = nearest_shape(found)
    high = low + width / ideal
    lines = (_rectangle(width / 2, low, high), ((-width / 2, low), (width / 2, high)))
    return Guide(
        "opening shape",
        f"{text(width)} by {text(height)}, width over height {found:.2f}; nearest: {name}"
        f" {ideal:.2f}, {percent(found / ideal - 1)}.",
        found,
        name,
        ideal,
        lines,
        proportion_figures()[name.removesuffix(" upright")][1],
    )


def published_opening(geometry: Geometry, text: LengthText) -> Guide:
    """The nearest opening of the old table, standing on the same hearth.

    Parameters
    ----------
    geometry : Geometry
    text : LengthText
        Prints a length.

    Returns
    -------
    Guide
    """
    width, height = opening_size(geometry)
    near, low = nearest_published(width, height), geometry.frame.hearth
    found, ideal = width / height, near.width / near.height
    deep = f"{text(near.depth_low)} to {text(near.depth_high)}"
    return Guide(
        "published opening",
        f"Nearest of the table: {text(near.width)} by {text(near.height)}, {deep} deep (here"
        f" {text(geometry.frame.depth)}); width over height {ideal:.2f}, this one is"
        f" {percent(found / ideal - 1)}.",
        found,
        f"row {near.row}",
        ideal,
        (_rectangle(near.width / 2, low, low + near.height),),
        near.source,
    )


def opening_height(geometry: Geometry, text: LengthText) -> Guide:
    """High enough to tend the fire, and no higher than usual.

    Parameters
    ----------
    geometry : Geometry
    text : LengthText
        Prints a length.

    Returns
    -------
    Guide
    """
    (_, height), f = opening_size(geometry), geometry.frame
    low, source = proportion_figures()["lowest opening for tending the fire"]
    high, _ = proportion_figures()["highest opening as a rule"]
    end = min(max(height, low), high)
    sentence = (
        "between them"
        if end == height
        else percent(height / end - 1, "over the higher", "under the lower")
    )
    lines = tuple(
        ((-f.half_width, f.hearth + h), (f.half_width, f.hearth + h)) for h in (low, high)
    )
    return Guide(
        "height of the opening",
        f"{text(low)} to tend the fire, {text(high)} at most as a rule; here {text(height)},"
        f" {sentence}.",
        height / (2 * f.half_width),
        f"{text(end)} high",
        end / (2 * f.half_width),
        lines,
        source,
    )


def width_for_room(geometry: Geometry, units: str) -> Guide:
    """Widths the table gives for the room, on the opening.

    Parameters
    ----------
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    Guide
    """
    f, house = geometry.frame, geometry.design.house
    cornered = geometry.design.breast.cornered
    widths = suited_widths(house.room_length, house.room_width, cornered)
    sentence, found = width_sentence(geometry, units), 2 * f.half_width
    if widths.low is None or widths.high is None or house.room_length is None:
        return Guide("width for the room", sentence, None, "the table", None, (), widths.source)
    end = min(max(found, widths.low), widths.high)
    at = sorted({s * w / 2 for s in (-1, 1) for w in (widths.low, widths.high)})
    return Guide(
        "width for the room",
        sentence,
        found / house.room_length,
        "the table",
        end / house.room_length,
        tuple(((x, f.hearth), (x, f.clear_top)) for x in at),
        widths.source,
    )
