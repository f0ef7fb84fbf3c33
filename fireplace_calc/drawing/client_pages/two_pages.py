"""The two pages that a client is given: the chosen fireplace large, and what there is beside it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.drawing.client_pages.beside_it import second_page
from fireplace_calc.drawing.client_pages.leaf import (
    LEADING,
    POINT,
    RULE,
    SOFT,
    Leaf,
    Stroke,
    broken,
    measured,
)
from fireplace_calc.drawing.client_pages.page_plan import (
    LARGE,
    SMALL,
    TEXT,
    TITLE,
    NamedDesign,
    PagePlan,
    Pictures,
    lay_picture,
    still_png,
)
from fireplace_calc.drawing.plates.sizes import ON_A_TABLE, paper
from fireplace_calc.report.for_client.handed_over import Names
from fireplace_calc.report.for_client.three_sentences import client_sentences
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.sentences import require_units
from fireplace_calc.scene.records import Standpoint
from fireplace_calc.scene.still.option_pictures import one_standpoint
from fireplace_calc.takeoff.cost import Price


def client_pages(
    chosen: NamedDesign,
    others: Sequence[NamedDesign] = (),
    names: Names | None = None,
    units: str = FEET_INCHES,
    size: str | None = None,
    priced: Mapping[str, Price] | None = None,
    pictures: Pictures = still_png,
) -> tuple[Leaf, Leaf]:
    """Two pages in color.

    Parameters
    ----------
    chosen : NamedDesign
        Shown large.
    others : sequence of NamedDesign
        Shown small on the second page; without any the chosen one is seen from elsewhere there.
    names : Names, optional
        Client, designer and mark.
    units : str
        ``feet-inches`` or ``millimetres``.
    size : str, optional
        One of ``plates.sizes.PAPERS``; the one usual for the units when left out.
    priced : mapping, optional
        Price list by item; else the example list, which is invented.
    pictures : callable
        Makes each picture.

    Returns
    -------
    tuple of Leaf

    Raises
    ------
    InputError
        When there is no such paper or unit system.
    """
    on = paper(require_units(units), size, ON_A_TABLE)
    plan = PagePlan(on.width, on.height, units, priced, pictures)
    names = names or Names()
    eye = one_standpoint([chosen.result, *(one.result for one in others)])
    return _first(plan, chosen, names, eye), second_page(plan, chosen, others, eye)


def _first(plan: PagePlan, chosen: NamedDesign, names: Names, eye: Standpoint) -> Leaf:
    page, edge = Leaf(plan.wide, plan.high), plan.margin
    width = plan.wide - 2 * edge
    gap, left, middle = 0.03 * plan.wide, 0.27 * width, 0.42 * width
    _named(plan, page, chosen, names, (edge, 0.0, left))
    y = 0.0
    for sentence in client_sentences(chosen.result, plan.units):
        y = page.write(edge + left + gap, y, middle - gap, sentence, plan.size(TEXT)) + 1.2
    x, rest = edge + left + middle + gap, width - left - middle - gap
    words = option_words(chosen.result, plan.units, plan.priced)
    y = page.write(x, 0.0, rest, "Materials", plan.size(SMALL), color=SOFT)
    y = page.write(x, y, rest, words.price, plan.size(LARGE), "bold") + 0.8
    y = page.write(x, y, rest, words.without, plan.size(SMALL), color=SOFT) + 0.8
    page.write(x, y, rest, f"Low to high: {words.stands_on}", plan.size(SMALL), color=SOFT)
    # The words take what they need, the picture all the rest.
    tall = plan.high - 2 * edge - page.foot - plan.size(TEXT) * POINT
    page.lower(edge + tall + plan.size(TEXT) * POINT)
    lay_picture(plan, page, chosen, eye, (edge, edge, width, tall))
    return page


def _named(
    plan: PagePlan, page: Leaf, chosen: NamedDesign, names: Names, at: tuple[float, float, float]
) -> None:
    """Title, client, designer with the mark, and the day."""
    x, y, width = at
    step = next((s for s in (TITLE, 1.75, 1.5) if _lines(plan, chosen.name, s, width) < 2), LARGE)
    y = page.write(x, y, width, chosen.name, plan.size(step)) + 0.8
    if names.client:
        y = page.write(x, y, width, f"for {names.client}", plan.size(LARGE), "italic")
    page.rule(x, y + 1.6, 0.35 * width)
    y += 3.6
    mark = 1.9 * plan.size(TITLE) * POINT
    aside = _mark(plan, page, names, (x, y, mark))
    if names.designer:
        y = page.write(x + aside, y, width - aside, names.designer, plan.size(TEXT))
    invented = " Invented example." if "invented" in chosen.result.design.note.lower() else ""
    said = f"{date.today().isoformat()}. A plan, to be checked on site.{invented} {made_by()}"
    page.write(x + aside, y, width - aside, said, plan.size(SMALL), color=SOFT)


def _lines(plan: PagePlan, text: str, step: float, width: float) -> int:
    return len(broken(text, plan.size(step), width))


def _mark(plan: PagePlan, page: Leaf, names: Names, at: tuple[float, float, float]) -> float:
    """The designer's mark, or his initials in a ring; gives how much room it takes. [mm]"""
    x, y, side = at
    if names.mark:
        page.show(x, y, side, side, names.mark)
    elif names.initials:
        page.strokes.append(Stroke((x, y), (x + side, y + side), 0.35, RULE, ring=True))
        size = plan.size(LARGE)
        page.write(
            x + (side - measured(names.initials, size)) / 2,
            y + (side - LEADING * size * POINT) / 2,
            side,
            names.initials,
            size,
        )
    else:
        return 0.0
    return side + 3.0
