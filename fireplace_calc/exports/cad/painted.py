"""Figures of the sheets in a drawing file: what a figure paints on paper, at true size again."""

from __future__ import annotations

from collections.abc import Iterator

from fireplace_calc.assessment import Assessment
from fireplace_calc.exports.cad.true_view import TrueView


def figure_views(result: Assessment, units: str) -> Iterator[TrueView]:
    """Details and the chimney against the roof, as the sheets show them.

    Yields
    ------
    TrueView
    """
    yield from ()
