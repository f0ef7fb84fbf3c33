"""An assessment as HTML for the panel: one sentence, the findings worst first, the order list."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from html import escape, unescape

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.brickwork.work import split_brick
from fireplace_calc.drawing.sheets.lists import Table
from fireplace_calc.proportion import Guide, width_sentence
from fireplace_calc.report.assumed_inputs import Assumption
from fireplace_calc.report.for_client.under_a_picture import OptionWords
from fireplace_calc.report.sentences import quantity, read_in_part
from fireplace_calc.rules.told_areas import not_used

WORD = 0.7
"""Width of a bold letter: the longest word of every heading has to fit its column, or the table
scrolls sideways. [em]
"""
STYLE = """<style>
.fireplace-panel { font-size: 13px; max-width: 1100px; }
.fireplace-panel .widget-label { white-space: normal; line-height: 1.2; }
.fireplace-panel .widget-inline-hbox > .widget-label { display: flex; align-items: center; justify-content: flex-end; }
.fireplace-panel .sentence { margin: .3em 0; line-height: 1.45; }
.fireplace-panel .trouble { border-left: 4px solid #a63603; padding: .35em .7em; margin: .3em 0; font-weight: 600; }
.fireplace-panel table.sheet { border-collapse: collapse; width: 100%; font-size: 12.5px; }
.fireplace-panel table.sheet th { text-align: left; border-bottom: 2px solid currentColor; padding: .25em .6em .25em 0; }
.fireplace-panel table.sheet td { vertical-align: top; border-bottom: 1px solid var(--jp-border-color2, #ccc);
  padding: .25em .6em .25em 0; line-height: 1.35; }
.fireplace-panel table.sheet { table-layout: fixed; min-width: var(--least, 46em); }
.fireplace-panel table.sheet th { line-height: 1.3; vertical-align: bottom; }
.fireplace-panel table.sheet caption { text-align: left; font-weight: 600; padding: .2em 0 .4em; line-height: 1.3; }
.fireplace-panel table.sheet td { overflow-wrap: anywhere; }
.fireplace-panel table.sheet td.n { font-variant-numeric: tabular-nums; }
.fireplace-panel table.sheet .why { opacity: .82; }
.fireplace-panel .short { font-weight: 700; }
.fireplace-panel .widget-html-content { flex: 1 1 auto; min-width: 0; }
.fireplace-panel .wide { overflow-x: auto; contain: inline-size; content-visibility: auto; contain-intrinsic-size: auto 800px; }
.fireplace-panel .one { contain-intrinsic-size: auto 70px; }
.fireplace-panel table.sheet tr.unseen th { height: 0; padding: 0; border: 0; line-height: 0; font-size: 0; color: transparent; }
.fireplace-findings, .fireplace-findings > .widget-vbox { overflow: visible; }
.fireplace-panel :is(.fireplace-ask, .fireplace-questions) { margin-left: 11%; }
.fireplace-shelf { display: grid !important; grid-template-columns: repeat(auto-fill, minmax(min(30em, 100%), 1fr)); gap: 1.2em; max-width: 1100px; }
.fireplace-option { position: relative; line-height: 0; }
.fireplace-shelf img { width: 100%; height: auto; border: 1px solid var(--jp-border-color2, #d5d8da); }
.fireplace-panel .jupyter-widget-Collapse-header, .fireplace-panel .jupyter-widget-Collapse-header span {
  color: var(--jp-ui-font-color1, #111); }
.fireplace-panel [role="button"]:focus-visible { outline: 3px solid #0b5c8a; outline-offset: -3px; }
@media (max-width: 900px) { .fireplace-panel table.sheet { min-width: var(--least, 44em); font-size: 12px; }
  .fireplace-panel table.sheet th { font-size: 11.5px; } .fireplace-panel table.sheet :is(td, th) { padding-right: .35em; } }
@media print { .fireplace-panel table.sheet { font-size: 9pt; } .fireplace-controls { display: none; } }
</style>"""


def sentence(result: Assessment, units: str) -> str:
    """What the picture shows, in one breath, for whoever cannot see it."""
    f, d = result.geometry.frame, result.design
    counts = result.counts

    def size(value: float) -> str:
        return escape(show(value, "length", units), quote=False)

    parts = [
        (
            f"<b>{escape(d.name)}</b>: opening {size(d.opening.width)} wide,"
            f" {size(d.opening.clear_height)} high, {d.flue.sections} flue sections, chimney top"
            f" {size(f.crown_top)} above the floor, {escape(show(result.weight, 'mass', units))} as"
            " it stands."
        ),
        f"{escape(result.pack)}: "
        + ", ".join(
            f"<b>{counts.get(verdict, 0)}</b> {word}" + _apart(result, verdict)
            for verdict, word in (
                ("falls short", "fall short"),
                ("not checked", "not checked"),
                ("meets", "meet"),
                ("does not apply", "do not apply"),
            )
        )
        + ".",
        escape(read_in_part(result.pack)),
        *(escape(note) for note in (*f.adjusted, *not_used(result.design, f))),
        escape(split_brick(result.geometry), quote=False),
    ]
    return '<div class="sentence">' + " ".join(filter(None, parts)) + "</div>"


def _apart(result: Assessment, verdict: str) -> str:
    """How many of a verdict stand on an assumption."""
    number = result.assumed.get(verdict, 0)
    return f" (<b>{number}</b> of them on an assumption)" if number else ""


def plain(words: str) -> str:
    """HTML without its marks, as a screen reader says it."""
    return unescape(re.sub(r"<[^>]*>", "", words))


def trouble(message: str) -> str:
    """What was wrong with an input; the last good picture stays."""
    return (
        f'<div class="trouble" role="alert">Not changed. {escape(message)}</div>' if message else ""
    )


def remark(message: str) -> str:
    """Something to know that is not a mistake."""
    return f'<div class="sentence">{escape(message)}</div>'


def heard(message: str) -> str:
    """Something that has happened, said aloud by a screen reader when it comes."""
    return f'<div class="sentence" role="status">{escape(message)}</div>'


def _columns(*shares: float) -> str:
    return (
        "<colgroup>"
        + "".join(f'<col style="width:{share:.3g}%">' for share in shares)
        + "</colgroup>"
    )


def row(texts: Iterable[str]) -> str:
    """A row of a table: what it is about, and its cells."""
    first, *others = texts
    return (
        f"<tr><td><b>{escape(first)}</b></td>"
        + "".join(f"<td class=n>{escape(text)}</td>" for text in others)
        + "</tr>"
    )


def table(
    caption: str,
    shares: Iterable[float],
    head: Iterable[str],
    rows: Iterable[str],
    least: float = 0.0,
    one: bool = False,
) -> str:
    """Rows of cells, already written, under a caption and headings; shares of the width in per
    cent, its least width in em. ``one`` of many below each other shows no headings of its own.
    """
    told = f"<caption>{escape(caption)}</caption>" if caption else ""
    names = (
        f"{told}{_columns(*shares)}<tr{' class=unseen' if one else ''}>"
        + "".join(f"<th>{escape(name)}" if name else "<td>" for name in head)
        + "</tr>"
    )
    style = f' style="--least:{least:.0f}em"' if least else ""
    css = "wide one" if one else "wide"
    return f'<div class="{css}"{style}><table class="sheet">{names}{"".join(rows)}</table></div>'


def takeoff(result: Assessment, units: str) -> str:
    """What to order and what each line weighs."""
    rows = [
        f"<tr><td><b>{escape(r.item)}</b></td><td>{escape(r.material)}</td><td"
        f" class=n>{escape(quantity(r.net, r, units))}</td><td"
        f" class=n>{escape(quantity(r.order, r, units))}</td><td"
        f" class=n>{escape(show(r.weight_kg, 'mass', units))}</td><td"
        f" class=why>{escape(r.note)}</td></tr>"
        for r in result.takeoff
    ]
    total = (
        "<tr><td><b>The whole as it stands</b><td><td><td><td"
        f" class=n><b>{escape(show(result.weight, 'mass', units))}</b><td></tr>"
    )
    head = ("Item", "Material", "Net", "To order", "Weight", "How it was counted")
    return table("Material takeoff", (18, 13, 12, 13, 10, 34), head, [*rows, total])


def guided(found: Iterable[Guide], result: Assessment, units: str) -> str:
    """What every guide says of the design, with its source, and which widths suit the room."""
    rows = [
        row((g.name.capitalize(), g.sentence, f"{g.source.text}, {g.source.confidence}"))
        for g in found
    ]
    return remark(width_sentence(result.geometry, units)) + table(
        "Guides, not rules", (16, 56, 28), ("Guide", "Says", "Based on"), rows
    )


def figures(result: Assessment, units: str) -> str:
    """The figures a mason might be asked about, to follow with a pencil."""
    from fireplace_calc.explore.worked_figures import work_figures  # wakes drafts and structure

    rows = [
        row((one.name, one.formula, one.numbers, one.result, one.source))
        for one in work_figures(result, units)
    ]
    return table(
        "Formula, numbers, result",
        (16, 23, 25, 12, 24),
        ("Figure", "Formula", "With the numbers", "Comes to", "Based on"),
        rows,
    )


def flow(parts: Iterable[str | Table]) -> str:
    """Paragraphs and tables as they stand on paper."""
    return "".join(
        f'<div class="sentence">{escape(part)}</div>' if isinstance(part, str) else _sheet(part)
        for part in parts
    )


def options(rows: Sequence[tuple[str, Sequence[str]]], names: Sequence[str]) -> str:
    """Designs side by side, a column each."""
    lines = [row((name, *texts)) for name, texts in rows]
    return table("Side by side", (16, *(84 / len(names) for _ in names)), ("", *names), lines)


def option(words: OptionWords) -> str:
    """What stands under the picture of an option; what falls short as a list."""
    price, weight, draft, headline, *short = (escape(line) for line in words.lines)
    listed = f"<ul>{''.join(f'<li>{line}</li>' for line in short)}</ul>" if short else ""
    return (
        f'<div class="sentence" title="{escape(words.stands_on)}">{price}</div>'
        f'<div class="sentence">{weight} {draft}</div>'
        f'<div class="sentence"><b>{headline}</b>{listed}</div>'
    )


def _sheet(shown: Table) -> str:
    whole = sum(column.share for column in shown.columns)
    before = f'<div class="sentence">{escape(shown.before)}</div>' if shown.before else ""
    shares = [100 * column.share / whole for column in shown.columns]
    words = [max(map(len, column.heading.split()), default=0) for column in shown.columns]
    least = max(
        46.0,
        *((WORD * word + 0.6) * 100 / share for word, share in zip(words, shares, strict=True)),
    )
    box = "☐ " if shown.tick else ""
    rows = [
        "<tr>"
        + "".join(
            f"<td class={'why' if column.share > 40 else 'n'}>{box * (k == 0)}{escape(text)}</td>"
            for k, (column, text) in enumerate(zip(shown.columns, row, strict=True))
        )
        + "</tr>"
        for row in shown.rows
    ]
    return before + table(
        shown.title, shares, (column.heading for column in shown.columns), rows, least
    )


def assumed_hint(taken: Sequence[Assumption]) -> str:
    """What the questions are for."""
    if not taken:
        return remark("Nothing is assumed: all that the passing checks rest on was entered.")
    many = f"<b>{len(taken)}</b> inputs stand" if len(taken) > 1 else "<b>One</b> input stands"
    return (
        f'<div class="sentence">{many} at a default that nobody has looked at, and checks pass on'
        " it. Look; say that it is so, or enter what is.</div>"
    )


def checklist_hint(pack: str, left: int) -> str:
    """What the list is for."""
    return (
        f'<div class="sentence">What {escape(pack)} asks and no drawing shows. <b>{left}</b> not'
        " answered yet; what is not answered is not checked.</div>"
    )
