"""What the code asks of a size, as a few words behind it."""

from __future__ import annotations

from functools import lru_cache

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.tables import rows
from fireplace_calc.base.units import from_unit
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT

LENGTHS = ("in", "ft", "mm", "m")
BOOKS = ("us", "canada", "uk", "practice", "others")


@lru_cache(maxsize=1)
def _keys() -> dict[str, tuple[str, ...]]:
    """Question to the keys that answer it, whatever the book."""
    return {
        row["question"]: tuple(key for book in BOOKS for key in row[book].split())
        for row in rows("questions.csv")
    }


def asked(result: Assessment, units: str, *wanted: str) -> str:
    """The limit of the first check that applies, ready to stand behind a size.

    Parameters
    ----------
    result : Assessment
    units : str
    *wanted : str
        Keys of checks, or questions of ``data/questions.csv``, in whose books they stand.

    Returns
    -------
    str
        With a comma before it; empty where no number is asked.
    """
    keys = [key for name in wanted for key in _keys().get(name, (name,))]
    found = {finding.key: finding for finding in result.findings}
    for key in keys:
        finding = found.get(key)
        if finding is None or finding.verdict == DOES_NOT_APPLY:
            continue
        if not isinstance(finding.required, float) or finding.required <= 0:
            continue
        at_most = {rule.key: rule.at_most for rule in PACKS[result.pack].rules}[key]
        if finding.unit in LENGTHS:
            figure = length(from_unit(finding.required, finding.unit), units)
        elif finding.unit == "deg":
            figure = f"{finding.required:.0f} deg"
        else:
            continue
        short = ": FALLS SHORT" if finding.verdict == FALLS_SHORT else ""
        return f", {'at most' if at_most else 'at least'} {figure}{short}"
    return ""
