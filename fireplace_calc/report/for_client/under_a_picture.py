"""What stands under the picture of an option: price band, weight, draft, what falls short."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.report.for_client.fallen_short import short_words, shortfall
from fireplace_calc.report.sentences import require_units, weight
from fireplace_calc.report.yard.by_supplier import YardOrder, yard_order
from fireplace_calc.report.yard.money import beside_words, left_out
from fireplace_calc.takeoff.cost import Price, prices


@dataclass(frozen=True, slots=True)
class OptionWords:
    """An option in plain words; every figure is the assessment's.

    Attributes
    ----------
    headline : str
        How many checks fall short, by code and in draft and structure, and how many are open.
    short : tuple of str
        What falls short, a line each, as many as the headline counts.
    price : str
        The materials, from low to high, in the price list's currency.
    without : str
        What is not in the price.
    stands_on : str
        Where low and high come from.
    weight : str
        As it stands, footing included.
    draft : str
        Odds that it smokes.
    """

    headline: str
    short: tuple[str, ...]
    price: str
    without: str
    stands_on: str
    weight: str
    draft: str

    @property
    def lines(self) -> tuple[str, ...]:
        """All of it, a sentence or a line each."""
        return (
            f"Materials {self.price}. {self.without}",
            f"{self.weight} as it stands.",
            self.draft,
            f"{self.headline}{':' if self.short else '.'}",
            *self.short,
        )


def option_words(
    result: Assessment, units: str = FEET_INCHES, priced: Mapping[str, Price] | None = None
) -> OptionWords:
    """What a client asks of one option.

    Parameters
    ----------
    result : Assessment
        Draft, odds, structure and work are worked out for it.
    units : str
        ``feet-inches`` or ``millimetres``.
    priced : mapping, optional
        Price list by item; else the example list, which is invented.

    Returns
    -------
    OptionWords

    Raises
    ------
    InputError
        When there is no such unit system.

    Examples
    --------
    >>> from fireplace_calc import Design, assess
    >>> option_words(assess(Design())).price
    '3,000 to 5,000 USD at example prices'
    """
    require_units(units)
    known = prices() if priced is None else priced
    found, short = yard_order(result, known), shortfall(result)
    band = found.band
    return OptionWords(
        headline=short.headline,
        short=tuple(short_words(finding, units) for finding in short.all),
        price=band.said(units),
        without=_without(found, units),
        stands_on=band.stands_on,
        weight=weight(result.weight, units),
        draft=f"Draft, as worked out: {result.odds.words}; {result.odds.dying_words}.",
    )


def _without(found: YardOrder, units: str) -> str:
    """What the price leaves out: work first, then whatever the list does not name."""
    said = " ".join(filter(None, (beside_words(found, units), left_out(found))))
    unpriced = found.bill.unpriced
    if not unpriced:
        return f"{said}."
    if len(unpriced) <= 3:
        return f"{said}; {', '.join(item.lower() for item in unpriced)}: no price yet."
    return f"{said}; {len(unpriced)} lines of the order: no price yet."
