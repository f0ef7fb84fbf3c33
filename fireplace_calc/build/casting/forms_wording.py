"""The list of forms as rows of words, and what can hurt while casting."""

from __future__ import annotations

from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, MM
from fireplace_calc.build.casting.forms_list import FormRow, castable_row, form_rows
from fireplace_calc.build.curing_schedule import curing
from fireplace_calc.build.notes import Caution, cautions, dust
from fireplace_calc.build.setting.wording import volume_text, weight_text
from fireplace_calc.design.work import Work
from fireplace_calc.geometry.assembled.assembly import Assembly
from fireplace_calc.pieces.records import ArchCut, Outline, Round, Tapered

HEADINGS = (
    "mark",
    "form",
    "inside: left to right, front to back",
    "count",
    "mix each",
    "weight each",
    "bags",
)
TOPICS = ("silica", "lifting", "who decides")
STEAM = (
    "Castable: mix, cure and dry it as its bag says. Damp castable that is heated fast bursts;"
    " common practice, from memory."
)
NOT_ASKED = (
    "Bars, anchors, strength and how hot it may get are not checked here: ask the maker of the"
    " castable and an engineer."
)


def corner_words(ring: Outline, units: str) -> str:
    """Corners of a form, each across and set back from the left front corner; no length is broken
    over two lines. [m]

    Parameters
    ----------
    ring : Outline
        [m]
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    return " ".join(f"({_mark(x, units)},{_mark(y, units)})" for x, y in ring)


def _mark(value: float, units: str) -> str:
    if units == MILLIMETRES:
        return f"{value / MM:.0f}"
    return _size(value, units).replace(" ", "-")


def _size(value: float, units: str) -> str:
    return show(value, "length", units)


def inside_words(row: FormRow, units: str = FEET_INCHES) -> str:
    """Inside of a form: its box, and its corners where it is no box.

    Parameters
    ----------
    row : FormRow
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    sides = f"{_size(row.wide, units)} x {_size(row.deep, units)}, {_size(row.high, units)} high"
    said = [sides]
    if len(row.foot) != 4 or row.head != row.foot or not _square(row):
        said.append(f"Corners {corner_words(row.foot, units)}")
    if row.head != row.foot:
        said.append(f"At the head {corner_words(row.head, units)}")
    if row.piece.plain is not None:
        said.append(_core(row, units))
    said += [
        f"under it an arch of {_size(s.span, units)}, {_size(s.rise, units)} high"
        for s in row.piece.cuts
        if isinstance(s, ArchCut)
    ]
    if row.piece.plain is None and any(not isinstance(s, ArchCut) for s in row.piece.cuts):
        said.append("less what its drawing shows cut out")
    return ". ".join(said)


def _square(row: FormRow) -> bool:
    xs, ys = {round(x, 6) for x, _ in row.foot}, {round(y, 6) for _, y in row.foot}
    return len(xs) == len(ys) == 2


def _core(row: FormRow, units: str) -> str:
    """The core of a bore, and what stands over or lies inside the bed for the nest."""
    piece = row.piece
    bore = piece.plain[1][-1] if piece.plain else None
    if isinstance(bore, Round):
        said = f"core {_size(2 * bore.radius, units)} across"
    elif isinstance(bore, Tapered):
        (x0, y0), _, (x1, y1), _ = bore.lower
        said = f"core {_size(x1 - x0, units)} x {_size(y1 - y0, units)}"
    else:
        return ""
    if piece.liner:
        said += f" inside a liner {_size(piece.liner, units)} thick"
    tongue = row.high - piece.height
    if tongue > 0:
        said += f"; tongue {_size(tongue, units)} over the bed"
    for socket in (s for s in piece.cuts if not isinstance(s, ArchCut) and s.top < piece.height):
        said += f"; socket {_size(socket.top, units)} deep"
    return said


def form_words(made: Assembly, units: str = FEET_INCHES) -> tuple[tuple[str, ...], ...]:
    """The list of forms, a row for each mark, as long as ``HEADINGS``.

    Parameters
    ----------
    made : Assembly
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    found = []
    for row in form_rows(made):
        form = "its own" if row.form == row.piece.mark else f"that of {row.form}"
        if row.turned:
            form += ", turned over"
        inside = inside_words(row, units) if row.form == row.piece.mark else "the same"
        amounts = volume_text(row.mix, units), weight_text(row.weight, units)
        found.append((row.piece.mark, form, inside, str(row.count), *amounts, grouped(row.bags, 1)))
    return tuple(found)


def forms_summary(made: Assembly, units: str = FEET_INCHES) -> str:
    """How many forms, pieces and bags, and how the list is read.

    Parameters
    ----------
    made : Assembly
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    rows = form_rows(made)
    row = castable_row(rows)
    forms = len({one.form for one in rows})
    heaviest = max(rows, key=lambda one: one.weight)
    weight, count = weight_text(heaviest.weight, units), sum(one.count for one in rows)
    return (
        f"{forms} forms for {count} pieces. The heaviest is {heaviest.piece.mark}, {weight}."
        f" Castable, waste counted in: {row.order:.0f} bags; {row.note}."
        " Corners run round the form, each so far to the right and so far back of its left front"
        " corner."
    )


def _caution(one: Caution, units: str) -> str:
    topic = "" if one.topic == "who decides" else f"{one.topic.capitalize()}: "
    return f"{topic}{one.figured(units)}"


def casting_cautions(work: Work | None = None, units: str = FEET_INCHES) -> tuple[str, ...]:
    """What can hurt while casting, lifting and at the first fires.

    Parameters
    ----------
    work : Work, optional
        Days of curing; the usual ones when left out.
    units : str
        ``feet-inches`` or ``millimetres``.
    """
    said = [STEAM]
    said += [_caution(one, units) for one in cautions() if one.topic in TOPICS]
    mixing = next(one for one in dust() if "mixing" in one.task)
    said.append(f"Mixing dry castable: {mixing.control}.")
    times = curing(work or Work())
    shares = ", ".join(f"{fire.share:.0%}" for fire in times.fires)
    said.append(
        f"First fires: none before {times.calendar} days, then {shares} of a full load, one a day."
        f" {times.note}"
    )
    said.append(NOT_ASKED)
    return tuple(said)
