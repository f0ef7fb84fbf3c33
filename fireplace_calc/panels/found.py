"""What was found, as HTML for the panel: findings, what the air says, every book's answer."""

from __future__ import annotations

from html import escape

from fireplace_calc.assessment import Assessment
from fireplace_calc.draft import MODES
from fireplace_calc.draft.cases import CASES
from fireplace_calc.drawing.papers.written_sheets import airing
from fireplace_calc.panels import html
from fireplace_calc.report import draft_report
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.report.books import books_beside, side_by_side
from fireplace_calc.report.sentences import (
    answer,
    answers_rest,
    asked,
    compared,
    judged_tally,
    sign,
)
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT
from fireplace_calc.rules.core import JUDGEMENT as JUDGED

SHARES = (11, 43, 12, 13, 8, 13)
"""Widths of the columns of findings. [%]"""


def _head(origin: str) -> tuple[str, ...]:
    return "Verdict", "Check, and why it exists", "Provided", "Required", "To spare", origin


def finding_head(caption: str, origin: str) -> str:
    """Caption and headings over findings, each of which is a table of one row."""
    return html.table(caption, SHARES, _head(origin), ())


def finding_row(f: Finding, units: str, origin: str) -> str:
    """One finding: sign and word, what is there, what is asked, what is to spare, where it is
    written and why. Its headings are there for whoever does not see them above.
    """
    provided, _, margin = compared(f, units)
    css = ' class="short"' if f.verdict == FALLS_SHORT else ""
    note = f" {escape(f.note[0].upper() + f.note[1:])}" if f.note else ""
    note += f" {escape(asks)}" if (asks := to_enter(f)) else ""
    rests = f" Based on: {escape(f.source)}." if f.edition == JUDGED else ""
    cells = (
        f"<tr><td{css}>{sign(f)} {f.said}</td><td><b>{escape(f.title)}</b><br><span"
        f" class='why'>{escape(f.why)}{note}{rests}</span></td><td"
        f" class=n>{escape(str(provided))}</td><td class=n>{escape(asked(f, units))}</td><td"
        f" class=n>{escape(str(margin))}</td><td>{f.key}, {escape(f.clause)}<br><span"
        f" class='why'>{f.edition}, {escape(f.confidence)}</span></td></tr>"
    )
    return html.table("", SHARES, _head(origin), [cells], one=True)


def draft_sentence(result: Assessment, units: str) -> str:
    """What the air does, in a few sentences. Every number with its mode, the whole as judgement."""
    said = (
        f"<b>{escape(draft_report.LABEL)}</b> {escape(draft_report.sized(result, units))}"
        f" {escape(draft_report.likely(result, units))}"
        f" {escape(judged_tally(result.judgement))}. <span"
        f" class='why'>{escape(draft_report.BAND)}</span>"
    )
    return f'<div class="sentence">{said}</div>'


def draft(result: Assessment, units: str) -> str:
    """Evening by evening, and where the draft goes."""
    evenings = [html.row(row) for row in draft_report.case_rows(result, units)]
    losses = [html.row(row) for row in draft_report.loss_rows(result)]
    mode = MODES["operating"].capitalize()
    return (
        html.table(f"Evenings. {mode}", (12,) + (11,) * 8, draft_report.COLUMNS, evenings)
        + html.table(
            "Where the draft goes, in Pa. Operating mode",
            (20, *(20,) * len(CASES)),
            ("", *CASES),
            losses,
        )
        + html.flow(airing(result, units))
    )


def books(result: Assessment, units: str) -> str:
    """The same question to several books, the reader's own among them."""
    chosen = books_beside(result.pack)
    asked_all = side_by_side(result.design, chosen)
    lines = [html.row((q.text, *(answer(a, units) for a in q.answers), q.why)) for q in asked_all]
    head, each = ("Question", *chosen.values(), "Why they differ"), 68 / len(chosen)
    shares = (14, *(each for _ in chosen), 18)
    return html.table("The same question to several books", shares, head, lines) + html.remark(
        answers_rest(a for q in asked_all for a in q.answers)
    )
