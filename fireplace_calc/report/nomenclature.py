"""The one list of names: every input with its key, its label, its name in the code tables, and what
it may be; every rule; and how much of each book is covered.

``python -m fireplace_calc.report.nomenclature > NOMENCLATURE.md`` writes the page; a test keeps
page and code alike.
"""

from __future__ import annotations

from fireplace_calc.base.inputs import UNKNOWN, Input
from fireplace_calc.base.printing import show
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.report.books import coverage_table, uncovered_table
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.core import Rule
from fireplace_calc.rules.facts import Facts


def _default(spec: Input) -> str:
    if spec.default is None:
        return UNKNOWN
    if spec.kind == "yes-no":
        return "yes" if spec.default else "no"
    if spec.kind in ("text", "choice", "count"):
        return str(spec.default) or "empty"
    return show(spec.default, spec.kind)


def inputs_table() -> str:
    """Every input as a Markdown table, in reading order."""
    rows = [
        "| key | label | name in the code tables | kind | default | allowed |",
        "|---|---|---|---|---|---|",
    ]
    rows += [
        f"| `{key}` | {spec.label} | {f'`{spec.book}`' if spec.book else ''} | {spec.kind} |"
        f" {_default(spec)} | {spec.allowed()} |"
        for key, spec in all_inputs().items()
    ]
    return "\n".join(rows)


def rules_table() -> str:
    """Every rule as a Markdown table: key, clause, title, quantity, editions."""
    seen: dict[str, Rule[Facts]] = {}
    for pack in PACKS.values():
        for rule in pack.rules:
            seen.setdefault(f"{rule.key} {','.join(rule.editions)}", rule)
    rows = [
        "| key | clause | title | quantity | unit | editions | confidence |",
        "|---|---|---|---|---|---|---|",
    ]
    rows += [
        f"| {r.key} | {r.clause} | {r.title} | `{r.quantity}` | {r.unit} | {', '.join(r.editions)}"
        f" | {r.confidence} |"
        for _, r in sorted(seen.items())
    ]
    return "\n".join(rows)


def page() -> str:
    """The whole page, as Markdown."""
    return f"""# Names

Written by `python -m fireplace_calc.report.nomenclature > NOMENCLATURE.md`.

## Inputs

By dotted key. `change` takes the key or the name in the code tables; a design file has the key's
two halves as table and entry.

{inputs_table()}

## Rules

{rules_table()}

## What the books cover

*Computed* needs nothing but the drawing. *Asked of the reader* waits for an answer that no drawing
gives: a label, a material, a bar. *Not covered* are rows of the table without a rule, or
whose rule can only say that it does not apply.

{coverage_table()}

Why, row by row; a row that another one answers is not counted as not covered:

{uncovered_table()}
"""


if __name__ == "__main__":
    print(page(), end="")
