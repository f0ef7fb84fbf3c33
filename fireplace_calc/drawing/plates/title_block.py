"""Frame and title block: whose job, which sheet, at what scale, from which inputs."""

from __future__ import annotations

from datetime import date

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES, FOOT
from fireplace_calc.drawing.plates.marks import LARGE, MIDDLE, SMALL
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.lettering import fitting, in_rows, width
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.file_text import fingerprint

CAUTION = (
    "For planning only. Local code, its official and licensed practice decide. Do not build from"
    " what is not checked."
)
COLUMNS = (0.0, 74.0, 112.0, 144.0)
"""Where the columns of small fields begin. [mm]"""
ROW = 9.0
"""Height of a row of small fields. [mm]"""
BAR_ROOM = 82.0
"""Width kept for the scale bar. [mm]"""


def elided(text: str, room: float, size: float, bold: bool = False) -> str:
    """A text that fits a width, its end left out where it must be. [mm]

    Examples
    --------
    >>> elided("A very long name of a small hut", 30.0, 2.5)
    'A very long na…'
    """
    if width(text, size, bold) <= room:
        return text
    kept = fitting(text, room - width("…", size, bold), size, bold)
    return f"{text[:kept].rstrip()}…"


def in_room(
    text: str, room: float, sizes: tuple[float, ...], rows: int, bold: bool = False
) -> tuple[list[str], float]:
    """A text in the largest of some sizes in which it needs no more rows than there are.

    Parameters
    ----------
    text : str
    room : float
        Width of a row. [mm]
    sizes : tuple of float
        Letter heights, the largest first. [mm]
    rows : int
        At most so many in the smallest size; one in the others.
    bold : bool

    Returns
    -------
    list of str, float
        The rows, and their letter height [mm]. Of a text that is longer still the end is left out.
    """
    for size in sizes[:-1]:
        if width(text, size, bold) <= room:
            return [text], size
    size = sizes[-1]
    split = in_rows(text, room, size, bold)
    kept = [*split[: rows - 1], " ".join(split[rows - 1 :])] if len(split) > rows else split
    return [elided(row, room, size, bold) for row in kept], size


def dress(
    sheet: Sheet,
    paper: Paper,
    result: Assessment,
    units: str,
    name: str,
    number: str = "1 of 1",
    scale: str = "none",
    denominator: float | None = None,
) -> None:
    """Put frame and title block on a sheet.

    Parameters
    ----------
    sheet : Sheet
    paper : Paper
    result : Assessment
    units : str
    name : str
        What the sheet shows.
    number : str
        Where it stands in the set, as ``3 of 12``.
    scale : str
        As the trade writes it; ``as shown`` where there are several.
    denominator : float or None
        Of that scale, for the bar; none is drawn without.
    """
    f, b = paper.frame, paper.block
    sheet.line(
        [(f.left, f.bottom), (f.right, f.bottom), (f.right, f.top), (f.left, f.top)],
        "frame",
        closed=True,
    )
    sheet.line([(b.left, b.bottom), (b.left, b.top), (b.right, b.top)], "cut")
    for n in (1, 2):
        sheet.line([(b.left, b.bottom + n * ROW), (b.right, b.bottom + n * ROW)], "seen")
    for x in COLUMNS[1:]:
        sheet.line([(b.left + x, b.bottom), (b.left + x, b.bottom + 2 * ROW)], "seen")
    design, job = result.design, result.design.job
    fields = (
        ("Sheet", name, f"Scale on {paper.name}", scale, "Date", date.today().isoformat())
        + ("Number", number),
        ("Client", job.client or "not named", "Drawn", job.drawn or "not named")
        + ("Checked", job.checked or "nobody", "Inputs", fingerprint(design)),
    )
    for row, told in enumerate(fields):
        y = b.bottom + (1 - row) * ROW
        for n, x in enumerate(COLUMNS):
            room = (*COLUMNS, b.right - b.left)[n + 1] - x - 3.0
            sheet.text(b.left + x + 1.6, y + 5.6, told[2 * n], size=SMALL, ha="left")
            text = elided(told[2 * n + 1], room, SMALL, True)
            sheet.text(b.left + x + 1.6, y + 1.7, text, size=SMALL, ha="left", bold=True)
    _name(sheet, paper, result, BAR_ROOM if denominator else 0.0)
    invented = (
        " Invented example." if "invented" in (design.note + design.site.place).lower() else ""
    )
    sheet.text(f.left, f.bottom - 4.4, CAUTION + invented, size=SMALL, ha="left")
    sheet.text(f.right, f.bottom - 8.6, made_by(), size=SMALL, ha="right")
    if denominator:
        _bar(sheet, paper, units, denominator)


def _name(sheet: Sheet, paper: Paper, result: Assessment, taken: float) -> None:
    """Name of the job, its place and the book it was checked against."""
    b, design = paper.block, result.design
    room = b.right - b.left - 6.0 - taken
    rows, size = in_room(design.name, room, (LARGE, MIDDLE, SMALL), 2, True)
    y = b.top - 3.0 - size
    for row in rows:
        sheet.text(b.left + 3.0, y, row, size=size, ha="left", bold=True)
        y -= size * 1.5
    place = design.site.place or "place not named"
    told = [f"{place}. Checked against {result.pack}.", f"{place}. {result.pack}.", f"{place}."]
    about = next((text for text in told if width(text, SMALL) <= room), told[-1])
    for n, row in enumerate(in_room(about, room, (SMALL,), 1)[0]):
        sheet.text(b.left + 3.0, b.bottom + 2 * ROW + 2.6 - n * 4.0, row, size=SMALL, ha="left")


def _bar(sheet: Sheet, paper: Paper, units: str, denominator: float) -> None:
    """Scale bar, and what it must measure on the paper: a shrunk print is found out."""
    b = paper.block
    american = units == FEET_INCHES
    unit, word = (FOOT, "ft") if american else (1.0, "m")
    step = unit * 1000 / denominator
    if step > 60.0:
        unit, word = (unit / 12, "in") if american else (0.01, "cm")
        step = unit * 1000 / denominator
    inches = denominator / 12 if american else 0.0
    count = max(int(60.0 / step), 1)
    if american and word == "ft" and count * 12 / denominator > 1:  # whole inches on the paper
        count = next((n for n in range(count, 0, -1) if (n / inches) % 1 == 0), count)
    long = count * step / 25.4 if american else count * step
    measured = f"{long:.0f} in" if american and abs(long - round(long)) < 1e-9 else ""
    measured = measured or ("" if american else f"{long:.0f} mm")
    left, y = b.right - 6.0 - count * step, b.bottom + 2 * ROW + 3.4
    apart = 6.0 if count < 100 else 8.5
    every = next(n for n in (1, 2, 4, 5, 10, 20, 25, 50, 100) if n * step >= apart)
    box_of = every if step < 1.0 else 1
    for n in range(0, count, box_of):
        x, end = left + n * step, left + min(n + box_of, count) * step
        box = [(x, y), (end, y), (end, y + 1.8), (x, y + 1.8)]
        if n // box_of % 2 == 0:
            sheet.fill([box], "ink", layer=2)
        sheet.line(box, "seen", closed=True)
    for n in range(0, count + 1, every):
        sheet.text(left + n * step, y + 3.0, f"{n}", size=SMALL)
    sheet.text(left - 2.4, y + 3.0, word, size=SMALL, ha="right")
    if measured:
        said = f"Check: {count} {word} measures {measured} on the paper."
        sheet.text(b.right - 3.0, y + 8.6, said, size=SMALL, ha="right")
