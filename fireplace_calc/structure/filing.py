"""How a finding on the structure is filed: what is shared by all of them."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from fireplace_calc.rules.core import Compared, Rule
from fireplace_calc.tables import Source

if TYPE_CHECKING:
    from fireplace_calc.structure.record import Structure

EDITION = "engineering judgement"


def filing(rules: list[Rule]) -> Callable:
    """A decorator that files functions of the structure among ``rules`` and hands them back; a docstring is the reason of its rule."""

    def judged(key: str, mode: str, title: str, unit: str, known: Source, over: bool = False) -> Callable:
        def file(function: Callable[[Structure], Compared]) -> Callable[[Structure], Compared]:
            why = " ".join((function.__doc__ or "").split())
            rules.append(Rule(key, mode, title, unit, title, over, (EDITION,), why, known.confidence, known.text, function))
            return function

        return file

    return judged
