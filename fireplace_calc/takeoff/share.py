"""What one part asks of one kind of goods, for each way of building: poured, set in pieces or laid
in brick.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fireplace_calc.base.printing import feet_inches
from fireplace_calc.base.tables import density
from fireplace_calc.brickwork.courses.course import Course
from fireplace_calc.brickwork.unit import UnitMasonry
from fireplace_calc.geometry.parts import Part

LEAST_MORTAR = 1e-12
"""Mortar that is less is only what a float has lost: bricks laid dry have none. [m3]"""


@dataclass(frozen=True, slots=True)
class Share:
    """What one part asks of one kind of goods.

    Attributes
    ----------
    part, item, material : str
        Which part, what to order, and of what it is.
    volume : float
        In the part. [m3]
    weight : float
        [kg]
    count : float
        Pieces [-], or the area [ft2] of what is bought so.
    note : str
        How it was counted.
    """

    part: str
    item: str
    material: str
    volume: float
    weight: float
    count: float = 0.0
    note: str = ""


def poured(
    part: Part, item: str, material: str = "concrete", count: float = 1, note: str = ""
) -> Iterator[Share]:
    """All of a part in one material.

    Parameters
    ----------
    part : Part
    item, material : str
        What to order, and of what it is.
    count : float
        Pieces [-], or an area [ft2].
    note : str

    Yields
    ------
    Share
    """
    yield Share(
        part.name, item, material, part.volume, part.volume * density(material), count, note
    )


def joints(part: Part, volume: float, material: str = "mortar") -> Iterator[Share]:
    """Mortar of a part, when there is any.

    Parameters
    ----------
    part : Part
    volume : float
        Of the joints. [m3]
    material : str

    Yields
    ------
    Share
    """
    if volume > LEAST_MORTAR:
        yield Share(part.name, material.capitalize(), material, volume, volume * density(material))


def hand_set(
    part: Part,
    item: str,
    material: str,
    count: float,
    joint: float = 0.0,
    volume: float | None = None,
    note: str = "",
) -> Iterator[Share]:
    """Pieces set by hand in refractory mortar.

    Parameters
    ----------
    part : Part
    item, material : str
        What to order, and of what it is.
    count : float
        Pieces. [-]
    joint : float
        Share of the volume that is mortar. [-]
    volume : float, optional
        Of pieces and joints; the whole part when left out. [m3]
    note : str

    Yields
    ------
    Share
    """
    filled = part.volume if volume is None else volume
    bare = filled * (1 - joint)
    yield Share(part.name, item, material, bare, bare * density(material), count, note)
    yield from joints(part, filled * joint, "refractory mortar")


def count_sections(part: Part, courses: Sequence[Course]) -> tuple[int, float, str, str]:
    """How many courses of sections a part has, and what a yard has to know of them.

    Parameters
    ----------
    part : Part
    courses : sequence of Course
        Of that part.

    Returns
    -------
    tuple
        How many [-]; what share of the part's height is bed joint [-]; the height of a top one that
        is cut; the same, and how high a piece is along the slope where some lean.
    """
    bare, level = sum([course.top - course.bottom for course in courses]), ""
    if courses and courses[-1].cut:
        number = sum(course.cut for course in courses[-2:])
        which = "top one" if number == 1 else "top two"
        level = f"{which} of {len(courses)} courses cut to {feet_inches(courses[-1].height)}"
    most = max([course.along for course in courses], default=0.0)
    leaning = f"up to {feet_inches(most)} high along the slope" if most > 0 else ""
    joint = 1 - bare / (part.top - part.bottom)
    return len(courses), joint, level, "; ".join(filter(None, (level, leaning)))


def brick(
    part: Part,
    item: str,
    laid: UnitMasonry,
    material: str = "brick",
    mortar: str = "mortar",
    volume: float | None = None,
    note: str = "",
    count: float | None = None,
) -> Iterator[Share]:
    """Brick by volume, each with its joints.

    Parameters
    ----------
    part : Part
    item : str
        What to order.
    laid : UnitMasonry
        How it is laid.
    material, mortar : str
    volume : float, optional
        Of brick and joints; the whole part when left out. [m3]
    note : str
    count : float, optional
        Bricks, where they are laid one by one; by volume when left out. [-]

    Yields
    ------
    Share
    """
    filled = part.volume if volume is None else volume
    bare = filled * laid.share
    yield Share(
        part.name,
        item,
        material,
        bare,
        bare * density(material),
        filled * laid.per_volume if count is None else count,
        note,
    )
    yield from joints(part, filled - bare, mortar)


def crown(part: Part) -> Iterator[Share]:
    """The top of the chimney: a cap bought as it is, a stone, or cast.

    Parameters
    ----------
    part : Part

    Yields
    ------
    Share
    """
    if part.material == "metal":
        yield Share(part.name, "Metal cap", "metal", part.volume, 0.0, 1)
    elif part.material == "stone":
        yield from hand_set(part, "Crown stone", "stone", 1)
    else:
        yield from poured(part, f"Crown {part.material}", part.material)
