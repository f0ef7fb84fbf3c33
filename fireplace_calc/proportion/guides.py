"""The guides: every one tells the ratio it found, the nearest one that has a name, how far off that
is, and its source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fireplace_calc.base.printing import show
from fireplace_calc.base.tables import Source
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.geometry.polygons import Point, box
from fireplace_calc.proportion.figures import (
    nearest_published,
    nearest_shape,
    proportion_figures,
    shapes,
)
from fireplace_calc.proportion.widths import suited_widths, width_sentence

GOLDEN = "golden section"
NAMES = (
    "opening shape",
    "published opening",
    "height of the opening",
    "like shapes",
    GOLDEN,
    "thirds of the wall",
    "door head",
    "width for the room",
)
"""Guides that can be switched on, in the order in which they are told."""

Line = tuple[Point, ...]
Told = Callable[[float], str]


@dataclass(frozen=True, slots=True)
class Guide:
    """One proportion held against a design.

    Attributes
    ----------
    name : str
        One of ``NAMES``.
    says : str
        What it says of this design, in the reader's units.
    found : float or None
        The design's own ratio; ``None`` when something is unknown. [-]
    nearest : str
        Name of the ratio it is held against.
    ideal : float or None
        That ratio. [-]
    lines : tuple of Line
        In the plane of the face: x from the centre line, z from the floor. [m]
    source : Source
        Where the figures come from, and how well they are known.
    """

    name: str
    says: str
    found: float | None
    nearest: str
    ideal: float | None
    lines: tuple[Line, ...]
    source: Source

    @property
    def off(self) -> float | None:
        """How far the ratio found is over the named one, as a share of it. [-]"""
        return None if self.found is None or self.ideal is None else self.found / self.ideal - 1


def shelf_top(geometry: Geometry) -> tuple[str, float]:
    """The highest edge of the mantel and its name; without a mantel, the top of the opening. [m]"""
    top, trim = geometry.frame.opening_top, geometry.design.surround.trim
    over = [
        (top + piece.distance + piece.height, piece.name)
        for piece in trim
        if piece.place == "above"
    ]
    return max(over)[::-1] if over else ("opening", top)


def wall_ends(geometry: Geometry) -> float:
    """Half the length of the wall as far as it is told, never less than the masonry or the hearth.
    [m]
    """
    f, d = geometry.frame, geometry.design
    own = max(f.block_half, f.half_width + d.hearth.side)
    return max((d.house.room_length or 2 * own + 2.4) / 2, own)


def wall_top(geometry: Geometry) -> float:
    """Ceiling, never lower than the masonry over the opening. [m]"""
    return max(geometry.design.house.ceiling, geometry.frame.opening_top + 0.3)


def find_guides(geometry: Geometry, units: str = FEET_INCHES) -> tuple[Guide, ...]:
    """Every guide held against one design.

    Parameters
    ----------
    geometry : Geometry
    units : str
        ``feet-inches`` or ``millimetres``.

    Returns
    -------
    tuple of Guide
        In the order of ``NAMES``.
    """

    def told(value: float) -> str:
        return show(value, "length", units)

    return (
        _opening_shape(geometry, told),
        _published(geometry, told),
        _height(geometry, told),
        _like_shapes(geometry),
        _golden(geometry, told),
        _thirds(geometry),
        _door_head(geometry, told),
        _width(geometry, units),
    )


def percent(off: float, over: str = "over", under: str = "under") -> str:
    """How far off, in whole per cents and words.

    Examples
    --------
    >>> percent(0.031), percent(-0.25), percent(0.001)
    ('3 % over', '25 % under', 'the same')
    """
    whole = round(100 * abs(off))
    return "the same" if whole == 0 else f"{whole} % {over if off > 0 else under}"


def _rectangle(half: float, low: float, high: float) -> Line:
    ring = box(-half, half, low, high)
    return (*ring, ring[0])


def _opening(geometry: Geometry) -> tuple[float, float]:
    return 2 * geometry.frame.half_width, geometry.frame.opening_top - geometry.frame.hearth


def _opening_shape(geometry: Geometry, told: Told) -> Guide:
    """The opening against the rectangles that have a name, on its own width."""
    width, height = _opening(geometry)
    found, low = width / height, geometry.frame.hearth
    name, ideal = nearest_shape(found)
    high = low + width / ideal
    lines = (_rectangle(width / 2, low, high), ((-width / 2, low), (width / 2, high)))
    return Guide(
        "opening shape",
        f"{told(width)} by {told(height)}, width over height {found:.2f}; nearest: {name}"
        f" {ideal:.2f}, {percent(found / ideal - 1)}.",
        found,
        name,
        ideal,
        lines,
        proportion_figures().get(name.removesuffix(" upright"))[1],
    )


def _published(geometry: Geometry, told: Told) -> Guide:
    """The nearest opening of the old table, standing on the same hearth."""
    width, height = _opening(geometry)
    near, low = nearest_published(width, height), geometry.frame.hearth
    found, ideal = width / height, near.width / near.height
    deep = f"{told(near.depth_low)} to {told(near.depth_high)}"
    return Guide(
        "published opening",
        f"Nearest of the table: {told(near.width)} by {told(near.height)}, {deep} deep (here"
        f" {told(geometry.frame.depth)}); width over height {ideal:.2f}, this one is"
        f" {percent(found / ideal - 1)}.",
        found,
        f"row {near.row}",
        ideal,
        (_rectangle(near.width / 2, low, low + near.height),),
        near.source,
    )


def _height(geometry: Geometry, told: Told) -> Guide:
    """High enough to tend the fire, and no higher than usual."""
    (_, height), f = _opening(geometry), geometry.frame
    low, source = proportion_figures()["lowest opening for tending the fire"]
    high, _ = proportion_figures()["highest opening as a rule"]
    end = min(max(height, low), high)
    says = (
        "between them"
        if end == height
        else percent(height / end - 1, "over the higher", "under the lower")
    )
    lines = tuple(
        ((-f.half_width, f.hearth + h), (f.half_width, f.hearth + h)) for h in (low, high)
    )
    return Guide(
        "height of the opening",
        f"{told(low)} to tend the fire, {told(high)} at most as a rule; here {told(height)},"
        f" {says}.",
        height / (2 * f.half_width),
        f"{told(end)} high",
        end / (2 * f.half_width),
        lines,
        source,
    )


def _like_shapes(geometry: Geometry) -> Guide:
    """Opening and breast as like figures: their diagonals run alongside."""
    (width, height), f = _opening(geometry), geometry.frame
    name, top = shelf_top(geometry)
    if name == "opening":
        name, top = (
            "shoulder" if f.flue_start < wall_top(geometry) else "ceiling",
            min(f.flue_start, wall_top(geometry)),
        )
    whole, own = 2 * f.block_half / top, width / height
    lines = (
        ((-width / 2, f.hearth), (width / 2, f.opening_top)),
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


def _golden(geometry: Geometry, told: Told) -> Guide:
    """Floor to ceiling divided in the golden section, both ways up."""
    name, level = shelf_top(geometry)
    top, far = wall_top(geometry), wall_ends(geometry)
    part = 1 / shapes()[GOLDEN]
    ideal = min((part, 1 - part), key=lambda share: abs(share - level / top))
    lines = tuple(((-far, share * top), (far, share * top)) for share in (1 - part, part))
    return Guide(
        GOLDEN,
        f"Top of the {name} at {level / top:.2f} of the wall's height; the section is at"
        f" {ideal:.2f}, {told(ideal * top)} up; {percent(level / top / ideal - 1)}.",
        level / top,
        f"{ideal:.2f} of the wall",
        ideal,
        lines,
        proportion_figures()[GOLDEN][1],
    )


def _thirds(geometry: Geometry) -> Guide:
    """The wall in three, side to side, and the breast's share of it."""
    length, source = geometry.design.house.room_length, proportion_figures()["third"][1]
    if length is None:
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
    lines = tuple(((x, 0.0), (x, top)) for x in (-length / 6, length / 6))
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


def _door_head(geometry: Geometry, told: Told) -> Guide:
    """A shelf in line with the heads of the doors."""
    (head, source), far = proportion_figures()["door head"], wall_ends(geometry)
    name, level = shelf_top(geometry)
    lines = (((-far, head), (far, head)),) if head < wall_top(geometry) else ()
    return Guide(
        "door head",
        f"Usual door head at {told(head)}; top of the {name} at {told(level)},"
        f" {percent(level / head - 1)}.",
        level / head,
        "in line",
        1.0,
        lines,
        source,
    )


def _width(geometry: Geometry, units: str) -> Guide:
    """Widths the table gives for the room, on the opening."""
    f, house = geometry.frame, geometry.design.house
    widths = suited_widths(house.room_length, house.room_width)
    says, found = width_sentence(geometry, units), 2 * f.half_width
    if widths.low is None:
        return Guide("width for the room", says, None, "the table", None, (), widths.source)
    end = min(max(found, widths.low), widths.high)
    at = sorted({s * w / 2 for s in (-1, 1) for w in (widths.low, widths.high)})
    return Guide(
        "width for the room",
        says,
        found / house.room_length,
        "the table",
        end / house.room_length,
        tuple(((x, f.hearth), (x, f.opening_top)) for x in at),
        widths.source,
    )
