"""The flue against Canada's table of round flues."""

from __future__ import annotations

from math import pi, sqrt

from fireplace_calc.base.tables.canada import canada_round_flues
from fireplace_calc.draft.findings.register import SIZING, judged
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.rules.comparing import NOT_CHECKED, Compared, at_least, at_most


def canadas_flues(found: DraftResult) -> tuple[float | None, float | None, str]:
    """Canada's table of round flues for this opening and height.

    Parameters
    ----------
    found : DraftResult

    Returns
    -------
    tuple of float or None, and str
        Least and largest inside diameter, none where the table has none [m]; and why not.
    """
    area, height = float(found.path.opening_area), float(found.path.height)
    for cell in canada_round_flues():
        lowest = cell.height_low <= height if cell.height_low == 3.0 else cell.height_low < height
        if area <= cell.opening_high + 1e-9 and lowest and height <= cell.height_high:
            if cell.flue_low is None:
                return (
                    None,
                    None,
                    (
                        "Canada's table has a dash here: no flue suits so large an "
                        "opening and so low a chimney."
                    ),
                )
            return cell.flue_low, cell.flue_high, ""
    return None, None, "Outside Canada's round-flue table (opening to 2.2 m², chimney 3 to 12 m)."


def _as_round(found: DraftResult) -> float:
    return sqrt(4 * float(found.path.flue_area) / pi)


_NOTE = (
    "Round flue of the same area against Canada's table; where that table counts the height from"
    " was not read."
)
CANADA_TABLE = canada_round_flues()[0].source


@judged(
    "DRF-08", SIZING, "Flue large enough for the opening, by Canada's table", "in", CANADA_TABLE
)
def large_enough(found: DraftResult) -> Compared:
    """Too small a flue cannot take what the opening lets in."""
    least, _, word = canadas_flues(found)
    return (
        Compared(NOT_CHECKED, note=word)
        if least is None
        else at_least(_as_round(found), least, _NOTE)
    )


@judged(
    "DRF-09",
    SIZING,
    "Flue not too large for the opening, by Canada's table",
    "in",
    CANADA_TABLE,
    over=True,
)
def not_too_large(found: DraftResult) -> Compared:
    """Too large a flue stays cold: air falls down one side while smoke climbs the other."""
    _, most, word = canadas_flues(found)
    return (
        Compared(NOT_CHECKED, note=word) if most is None else at_most(_as_round(found), most, _NOTE)
    )
