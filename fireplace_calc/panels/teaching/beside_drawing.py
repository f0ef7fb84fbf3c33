"""What an exercise gives, as a page shows it beside its drawing."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from fireplace_calc.lessons.answers.given_figures import Pair, given_rows, given_table


def given_html(given: Sequence[Pair]) -> str:
    """All of it, for a page."""
    said, table = figure_list(given_rows(given)), given_table(given)
    if table is None:
        return said
    head = "".join(f'<th scope="col">{escape(name)}</th>' for name in table.columns)
    rows = "".join(
        f'<tr><th scope="row">{escape(name)}</th>'
        + "".join(f"<td>{escape(text)}</td>" for text in texts)
        + "</tr>"
        for name, texts in table.rows
    )
    told = f"<caption>in {table.unit}</caption>" if table.unit else ""
    top = f'{told}<tr><th scope="col">{escape(table.corner)}</th>{head}</tr>'
    return f'{said}<table class="given">{top}{rows}</table>'


def figure_list(rows: Sequence[Pair]) -> str:
    """Names with their figures as a list."""
    items = (f"<li>{escape(name)}: <b>{escape(figure)}</b></li>" for name, figure in rows)
    return f"<ul>{''.join(items)}</ul>"
