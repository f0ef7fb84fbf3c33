"""Behind the inspector's page: draft, structure and heat, formulas with their numbers, what was
assumed, and what the air does.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.checks.found_rows import (
    JUDGED,
    LEVELS,
    ON_SMALL,
    Fullness,
    head,
    listed,
)
from fireplace_calc.drawing.plates.bands import Bands, Together, heading, row, words
from fireplace_calc.drawing.plates.sizes import Paper
from fireplace_calc.drawing.sheets.lists import Column, wrapped
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.heat.cuts.behind import STANDS
from fireplace_calc.report import draft_report
from fireplace_calc.report.assumed_inputs import Assumption, assumptions
from fireplace_calc.report.books import books_beside, side_by_side
from fireplace_calc.report.heat.heat_report import evening_found
from fireplace_calc.report.sentences import answer, answers_rest, judged_tally
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.tracing.known import known_judgement

OVER_TITLE = 0.6
"""Over a heading. [mm]"""
SMALL_PAPER = 400.0
"""Paper under this width takes one column. [mm]"""
TAKEN = (Column("", 5.5), Column("What", 70), Column("Taken to be", 44), Column("Checks", 66))
WORKED = (Column("", 33), Column("", 156))
OPINIONS = tuple(map(Column, draft_report.OPINIONS, (54, 34, 30, 36, 30)))
SOURCED = tuple(map(Column, draft_report.OPINIONS, (44, 26, 24, 30, 76)))
LIGHTINGS = tuple(map(Column, draft_report.LIGHTINGS, (54, 30, 22, 23, 23, 21, 21)))
CASES = tuple(map(Column, draft_report.COLUMNS, (22, 20, 22, 16, 20, 26, 28, 18, 22)))


@dataclass(frozen=True, slots=True)
class Behind:
    """How much stands behind the page; less where a sheet is short of room.

    Attributes
    ----------
    books : bool
        How the other books answer.
    evenings : bool
        Draft and losses, evening by evening.
    ticks : bool
        What was assumed as rows with a box, not as running words.
    sources : bool
        Where each rule of thumb for the flue was read.
    say : Fullness
        Of the findings.
    """

    books: bool = True
    evenings: bool = True
    ticks: bool = True
    sources: bool = True
    say: Fullness = LEVELS[0]


LEAST = Fullness(False, False, False, 99, False, False, False)
STEPS = (
    Behind(),
    Behind(books=False),
    Behind(False, evenings=False),
    Behind(False, False, True, True, LEVELS[5]),
    Behind(False, False, False, True, LEVELS[5]),
    Behind(False, False, False, False, LEVELS[5]),
    Behind(False, False, False, False, LEVELS[6]),
    Behind(False, False, False, False, LEVELS[7]),
    Behind(False, False, False, False, LEAST),
)
"""From all there is to say to what must be said."""


def behind(result: Assessment, units: str, paper: Paper) -> list[Sheet]:
    """The back, as full as one sheet holds it; more sheets where they are needed.

    Parameters
    ----------
    result : Assessment
    units : str
    paper : Paper

    Returns
    -------
    list of Sheet
    """
    if paper.width < SMALL_PAPER:
        return _filled(result, units, paper, Behind(False, True, True, True, ON_SMALL), 1)
    best, chosen = _filled(result, units, paper, STEPS[0], 2), STEPS[0]
    for step in STEPS[1:]:
        if len(best) == 1:
            return best
        made = _filled(result, units, paper, step, 2)
        if len(made) < len(best):
            best, chosen = made, step
    for more in (replace(chosen, evenings=True), replace(chosen, evenings=True, books=True)):
        made = _filled(result, units, paper, more, 2)
        best = made if len(made) == len(best) else best
    return best


def _filled(result: Assessment, units: str, paper: Paper, step: Behind, count: int) -> list[Sheet]:
    bands = Bands(paper)
    wide = bands.column(count)
    blocks = [
        *_judged(result, units, wide, step.say),
        *_formulas(result, units, wide, step.say.every),
        *_assumed(result, units, wide, step.ticks),
        *_flue_opinions(result, units, wide, step.sources),
        *_lightings(result, units, wide),
    ]
    if step.evenings:
        blocks += _evenings(result, units, wide)
    if step.books:
        blocks += _books(result, units, wide)
    beside = count > 1
    if not beside:
        blocks += [block for said in _odds(result, units) for block in words(said, wide)]
    bands.band(blocks, count)
    if beside:
        _in_strip(bands.sheets[-1], paper.strip, _odds(result, units))
    return bands.sheets


def _in_strip(sheet: Sheet, strip: Cell, texts: Sequence[str]) -> None:
    """Paragraphs beside the title block. [mm]"""
    y, wide = strip.top + 4.5, strip.right - strip.left
    for text in texts:
        for block in words(text, wide):
            block.paint(sheet, strip.left, y)
            y -= block.high


def _odds(result: Assessment, units: str) -> tuple[str, ...]:
    """How it draws, in sentences."""
    return (
        f"HOW IT DRAWS. {draft_report.likely(result, units)} {draft_report.air_doubted(result)}",
        f"THE FIRST FIRE. {draft_report.FIRST_FIRE}",
    )


def _judged(result: Assessment, units: str, wide: float, say: Fullness) -> Iterator[Together]:
    """Findings on draft, structure and heat, counts, and what there is to say of the structure.

    Over what the heat says stands that the code's clearance stands.
    """
    draft, stands = result.judgement, result.structure
    heat = evening_found(result, units)
    named = "DRAFT, STRUCTURE AND HEAT" if heat else "DRAFT AND STRUCTURE"
    yield heading(f"{named}, engineering judgement, not code", wide, over=OVER_TITLE)
    for reason in stands.engineer:
        yield from words(f"Call an engineer. {reason}", wide, bold=True)
    counted = f"Draft: {judged_tally(draft)}. Structure: {judged_tally(stands.findings)}."
    warm = f"Heat: {STANDS[:1].lower()}{STANDS[1:]}" if heat else ""
    yield from words(" ".join((counted, *stands.remarks, warm)).strip(), wide)
    yield from head(wide, JUDGED)
    judged = (*draft, *stands.findings, *heat)
    known = {f.key: known_judgement(f) for f in judged}
    for verdict in (FALLS_SHORT, NOT_CHECKED, MEETS):
        found = [f for f in judged if f.verdict == verdict]
        yield from listed(verdict.upper(), found, known, units, wide, say, JUDGED)


def _formulas(result: Assessment, units: str, wide: float, every: int) -> Iterator[Together]:
    """Figures a mason might be asked about."""
    yield heading("FORMULAS AND NUMBERS", wide, over=OVER_TITLE)
    figures = work_figures(result, units)
    for n, one in enumerate(figures, 1):
        source = one.source[:1].upper() + one.source[1:]
        worked = f"{one.formula} = {one.numbers} = {one.result}. {source}."
        weight = "fine" if n % every == 0 or n == len(figures) else ""
        yield from row(WORKED, (one.name, worked), wide, weight=weight)


def _assumed(result: Assessment, units: str, wide: float, ticks: bool) -> Iterator[Together]:
    """What nobody has entered, with the checks that pass on it."""
    taken = assumptions(result, units)
    if not taken:
        return
    yield heading("ASSUMED: nobody has entered it, look before you sign", wide, over=OVER_TITLE)
    if not ticks:
        lines = wrapped(f"In brackets, how many checks pass on it. {_run_on(taken)}", wide)
        for n in range(0, len(lines), 3):  # so that a column may end within them
            yield from words(" ".join(lines[n : n + 3]), wide)
        return
    yield from row(TAKEN, [c.heading for c in TAKEN], wide, bold=True, weight="seen", leads=True)
    for one in taken:
        texts = ("", one.label, one.value, ", ".join(one.passed))
        yield from row(TAKEN, texts, wide, weight="fine", box=True)


def _run_on(taken: Sequence[Assumption]) -> str:
    """What was assumed in running words; at the end, under its check, what only one passes on."""
    said, alone = [], defaultdict(list)
    for one in taken:
        told = f"{one.label} {one.value}".strip()
        if len(one.passed) == 1:
            alone[one.passed[0]].append(told)
        else:
            said.append(f"{told} ({len(one.passed)})")
    said += [f"for {key} alone: {', '.join(told)}" for key, told in alone.items()]
    return f"{'; '.join(said)}."


def _table(
    title: str,
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    wide: float,
    before: str = "",
) -> Iterator[Together]:
    """Rows under their heading and the names of their columns."""
    yield heading(title, wide, over=OVER_TITLE)
    if before:
        yield from words(before, wide)
    names = [column.heading for column in columns]
    yield from row(columns, names, wide, bold=True, weight="seen", leads=True)
    for n, texts in enumerate(rows, 1):
        last = n % 3 == 0 or n == len(rows)
        yield from row(columns, texts, wide, weight="fine" if last else "")


def _flue_opinions(
    result: Assessment, units: str, wide: float, sources: bool
) -> Iterator[Together]:
    """What published rules make of the flue."""
    rows = draft_report.opinion_rows(result, units)
    columns = SOURCED
    if not sources:
        columns, rows = OPINIONS[:-1], [texts[:-1] for texts in rows]
    title = "SECOND OPINIONS ON THE FLUE, sizing mode"
    yield from _table(title, columns, rows, wide, draft_report.OPINION)


def _lightings(result: Assessment, units: str, wide: float) -> Iterator[Together]:
    """The first fire, from a cold flue."""
    rows = draft_report.first_hour_rows(result, units)
    title = "THE FIRST HOUR OF THE FIRST FIRE, operating mode"
    yield from _table(title, LIGHTINGS, rows, wide)


def _evenings(result: Assessment, units: str, wide: float) -> Iterator[Together]:
    """Four evenings, and where the draft of each goes."""
    rows = draft_report.case_rows(result, units)
    yield from _table("FOUR EVENINGS, operating mode", CASES, rows, wide)
    losses = draft_report.loss_rows(result)
    names = [texts[0] for texts in rows]
    columns = (Column("Of the draft [Pa]", 70), *(Column(name, 28) for name in names))
    yield from _table("WHERE THE DRAFT GOES", columns, losses, wide)


def _books(result: Assessment, units: str, wide: float) -> Iterator[Together]:
    """The same questions to several books."""
    packs = books_beside(result.pack)
    asked = side_by_side(result.design, packs)
    share = 150 / len(packs)
    columns = (Column("Question", 40), *(Column(pack, share) for pack in packs.values()))
    rows = [(q.text, *(answer(one, units) for one in q.answers)) for q in asked]
    rest = answers_rest(one for q in asked for one in q.answers)
    yield from _table("THE BOOKS SIDE BY SIDE", columns, rows, wide, rest)
