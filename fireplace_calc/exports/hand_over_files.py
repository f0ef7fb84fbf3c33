"""What a client is given, as files: two pages, the first as a picture, and the room that turns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign, Pictures, still_png
from fireplace_calc.drawing.client_pages.painted import as_pdf, as_png
from fireplace_calc.drawing.client_pages.two_pages import client_pages
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.exports.one_file import room_to_turn
from fireplace_calc.report.for_client.handed_over import Names
from fireplace_calc.takeoff.cost import Price

Told = Iterator[tuple[int, int, str]]


def write_hand_over(
    path: Path,
    chosen: NamedDesign,
    others: Sequence[NamedDesign] = (),
    names: Names | None = None,
    units: str = FEET_INCHES,
    size: str | None = None,
    priced: Mapping[str, Price] | None = None,
    pictures: Pictures = still_png,
) -> Told:
    """Write one file of what a client is given, by the end of its name: ``.pdf`` is both pages,
    ``.png`` the first as a picture, ``.html`` the room that turns.

    Parameters
    ----------
    path : path
        An earlier file is replaced only when the new one is whole.
    chosen : NamedDesign
        Shown large.
    others : sequence of NamedDesign
        Shown beside it, each called otherwise.
    names : Names, optional
        Client, designer and mark.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str, optional
        Paper; the one usual for the units when left out.
    priced : mapping, optional
        Price list by item; else the example list, which is invented.
    pictures : callable
        Makes each picture of the pages.

    Yields
    ------
    int, int, str
        How many of how many are done, and the name of the next.

    Raises
    ------
    InputError
        When there is no such paper.
    ValueError
        When the name ends otherwise.
    """
    kind = path.suffix
    yield 0, 1, "The room that turns" if kind == ".html" else "Pictures and pages"
    if kind == ".html":
        content = room_to_turn((chosen, *others), names, units, priced=priced).encode()
    elif kind in (".pdf", ".png"):
        pages = client_pages(chosen, others, names, units, size, priced, pictures)
        content = as_pdf(pages, chosen.name) if kind == ".pdf" else as_png(pages[0])
    else:
        raise ValueError(f"{path.name} ends in {kind!r}, but there are only .pdf, .png and .html.")
    write_whole(path, content)
    yield 1, 1, ""
