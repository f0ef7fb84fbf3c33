"""The cover: the fireplace large, what is to be built, what falls short, what was assumed, what
nobody has checked, and where to find the rest.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.cover_sheet.cover_words import (
    built,
    by_whom,
    cautions,
    first_of,
    found_lists,
    listed_sheets,
    reach,
)
from fireplace_calc.drawing.plates.bands import BETWEEN, Bands, Together, heading, words
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.marks import LARGE, MIDDLE, SMALL
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.plates.title_block import in_room
from fireplace_calc.drawing.room.room_scene import scene
from fireplace_calc.drawing.room.room_view import draw_room
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.layout import fit
from fireplace_calc.takeoff.cost import Price

NAME = 8.0
"""Letters of the job's name where it has room. [mm]"""
SMALL_PAPER = 400.0
"""Paper under this width has the picture on one sheet and the words on another. [mm]"""
SHOWN = (12, 10, 8, 6, 5, 4, 3, 2, 1)
"""How many of each list are named, the most that fit. [-]"""
AIR = 3.0
"""Between picture and words, beyond the frame's own. [mm]"""


def plates(
    result: Assessment,
    units: str,
    paper: Paper,
    prices: Mapping[str, Price] | None = None,
    others: Sequence[Plate] = (),
) -> list[Plate]:
    """The cover, and on small paper a second sheet for its words.

    Parameters
    ----------
    result : Assessment
    units : str
    paper : Paper
    prices : dict or None
        Price list by item; else the example list, which is invented.
    others : sequence of Plate
        The sheets that follow.

    Returns
    -------
    list of Plate
    """
    count = 1 if paper.width >= SMALL_PAPER else 2
    made = _made(result, units, paper, prices, others, count + 1)
    if len(made) != count:  # more than was reckoned with: the others are numbered anew
        made = _made(result, units, paper, prices, others, len(made) + 1)
    return made


def _made(
    result: Assessment,
    units: str,
    paper: Paper,
    prices: Mapping[str, Price] | None,
    others: Sequence[Plate],
    before: int,
) -> list[Plate]:
    """Sheets of the cover, where the others are numbered from a number on."""
    cover, field = Sheet(paper.width, paper.height), paper.field
    large = paper.width >= SMALL_PAPER
    place = paper.tall if large else field
    _picture(cover, place, result, units)
    cell = Cell(place.right + BETWEEN + AIR, field.bottom, field.right, field.top)
    sheets = _written(result, units, paper, prices, others, cell if large else field, before)
    if large:
        cover.add(sheets.pop(0))
    return [Plate("Cover", cover), *(Plate("What is to be built", sheet) for sheet in sheets)]


def _picture(sheet: Sheet, place: Cell, result: Assessment, units: str) -> None:
    """The fireplace in its room, without a word, as large as its place. [mm]"""
    s = scene(result.geometry, (place.right - place.left) / (place.top - place.bottom))
    (x0, z0), (x1, z1) = s.window[0], s.window[2]
    scale = min((place.right - place.left) / (x1 - x0), (place.top - place.bottom) / (z1 - z0))
    view, _ = fit(sheet, place, (x0, z0, x1, z1), (0.0, 0.0, 0.0, 0.0), (1000 / scale,))
    draw_room(view, result.geometry, s, units, leveled=False)


def _written(
    result: Assessment,
    units: str,
    paper: Paper,
    prices: Mapping[str, Price] | None,
    others: Sequence[Plate],
    cell: Cell,
    before: int,
) -> list[Sheet]:
    """Everything in words, on one sheet with as many of each list as it holds."""
    made: list[Sheet] = []
    for most in SHOWN:
        bands = Bands(paper, cell)
        wide = bands.wide
        bands.band(_named(result, wide))
        bands.band(built(result, units, wide, prices))
        for title, lines, sheet, each in found_lists(result, units, others, before):
            first = first_of(lines, most, wide, sheet, each)
            bands.band([heading(title, wide, over=0.5), *first])
        if others:
            half = bands.column(2)
            bands.band([heading("SHEETS, and marks of their figures", wide, over=0.5)], after=0.0)
            bands.band(listed_sheets(others, before, half), 2)
        bands.band(
            [
                heading("CAUTIONS", wide, over=0.5),
                *cautions(units, result.pack, wide),
                *reach(result, wide),
            ]
        )
        made = bands.sheets
        if len(made) == 1:
            break
    return made


def _named(result: Assessment, wide: float) -> list[Together]:
    """Name of the job as large as it fits, where it stands, for whom and by whom."""
    design = result.design
    lines, size = in_room(design.name, wide, (NAME, LARGE, MIDDLE), 2, bold=True)
    made = [block for line in lines for block in words(line, wide, size, bold=True)]
    for text in filter(None, (design.site.place, by_whom(result))):
        lines, size = in_room(text, wide, (MIDDLE, SMALL), 2)
        made += [block for line in lines for block in words(line, wide, size)]
    return made
