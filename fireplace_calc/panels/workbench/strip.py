"""The strip under the stage: verdicts counted, the worst three, what it costs and weighs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import grouped, show
from fireplace_calc.drawing.composed.marked_check import can_show
from fireplace_calc.report.for_client.fallen_short import JUDGED, by_code, figures, shortfall
from fireplace_calc.report.sentences import PLURALS, SIGNS, sign
from fireplace_calc.rules import Finding
from fireplace_calc.rules.comparing import FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.takeoff.cost import Price, bill

WORST = 3
"""How many of the worst stand in the strip. [-]"""


def told_strip(
    result: Assessment,
    units: str,
    priced: Mapping[str, Price],
    marked: str = "",
    judged: bool = False,
) -> dict[str, Any]:
    """Verdicts, the worst of them, cost and weight, as ``workbench.js`` shows them.

    Parameters
    ----------
    result : Assessment
    units : str
        The reader's.
    priced : mapping of str to Price
        The price list.
    marked : str
        Key of the check that the stage shows where it is measured.
    judged : bool
        Whether draft and structure are counted too, which takes a moment longer.

    Returns
    -------
    dict
        ``counts``, ``worst`` and ``bill``, each a list of what one button says.
    """
    return {
        "counts": [*_counts(result), *(_judged(result) if judged else ())],
        "worst": [_told(f, units, marked) for f in worst(result, judged)],
        "bill": _bill(result, units, priced),
    }


def worst(result: Assessment, judged: bool = False) -> list[Finding]:
    """Those that lack most of what is wanted, the code's before draft and structure; then those not
    checked, then those that meet on an assumption.
    """
    found = result.findings
    short = sorted((f for f in found if f.verdict == FALLS_SHORT), key=_lacking)
    others = sorted(shortfall(result).judged, key=_lacking) if judged else []
    open_ones = [f for f in found if f.verdict == NOT_CHECKED]
    assumed = [f for f in found if f.verdict == MEETS and f.on_assumption]
    return [*short, *others, *open_ones, *assumed][:WORST]


def _lacking(finding: Finding) -> float:
    """What is lacking over what is wanted, most first; a kind or a yes lacks all of it. [-]"""
    numbers, margin = finding.numbers, finding.margin
    return -abs(margin / numbers[1]) if numbers and numbers[1] and margin else -1.0


def _counts(result: Assessment) -> list[dict[str, Any]]:
    assumed, counts = result.assumed.get(MEETS, 0), result.counts
    told = [
        {
            "sign": SIGNS[verdict],
            "number": counts.get(verdict, 0),
            "words": (
                by_code(counts.get(verdict, 0)) if verdict == FALLS_SHORT else PLURALS[verdict]
            ),
            "fold": "checks",
            "bad": verdict == FALLS_SHORT and bool(counts.get(verdict)),
        }
        for verdict in (FALLS_SHORT, NOT_CHECKED)
    ]
    meets = counts.get(MEETS, 0) - assumed
    return [
        *told,
        {
            "sign": f"({SIGNS[MEETS]})",
            "number": assumed,
            "words": "on an assumption",
            "fold": "assumed",
            "bad": False,
        },
        {
            "sign": SIGNS[MEETS],
            "number": meets,
            "words": PLURALS[MEETS],
            "fold": "checks",
            "bad": False,
        },
    ]


def _judged(result: Assessment) -> list[dict[str, Any]]:
    short = shortfall(result)
    told = {"sign": SIGNS[FALLS_SHORT], "number": len(short.judged), "words": JUDGED}
    return [told | {"fold": "draft" if short.draft else "structure", "bad": bool(short.judged)}]


def _told(finding: Finding, units: str, marked: str) -> dict[str, Any]:
    where = "Draws it where it is measured." if can_show(finding) else "Opens the checks."
    return {
        "key": finding.key,
        "sign": sign(finding),
        "title": finding.title,
        "figures": figures(finding, units),
        "help": f"{finding.key}, {finding.clause}: {finding.said}. {where}",
        "shown": finding.key == marked,
    }


def _bill(result: Assessment, units: str, priced: Mapping[str, Price]) -> list[list[Any]]:
    found = bill(result.takeoff, priced)
    unpriced = sum(line.price is None for line in found.lines)
    words = "example prices" if found.invented else "the order"
    if unpriced:
        words += f", {unpriced} not priced"
    return [
        ["cost", [f"{grouped(found.total, units=units)} {found.currency}", words]],
        ["takeoff", [show(result.weight, "mass", units), "as it stands"]],
    ]
