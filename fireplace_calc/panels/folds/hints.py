"""What two lists of questions are for, said over them."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from fireplace_calc.panels import html
from fireplace_calc.report.assumed_inputs import Assumption


def assumed_hint(taken: Sequence[Assumption]) -> str:
    """What the questions are for."""
    if not taken:
        return html.remark("Nothing is assumed: all that the passing checks rest on was entered.")
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
