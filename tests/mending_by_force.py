"""Every setting of two levers, one after the other, each worked out whole: what the search for
mends is held against. It asks nothing of that search but the table of levers.
"""

from __future__ import annotations

from itertools import product

from fireplace_calc import PACKS, Design, change
from fireplace_calc.base.units import InputError
from fireplace_calc.draft import draft_results, judgement
from fireplace_calc.editing.changes import value_of
from fireplace_calc.explore.mending.lever_settings import settings_of
from fireplace_calc.explore.mending.levers import LEVERS
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.gathering import gather_facts
from fireplace_calc.structure import assess_structure
from fireplace_calc.takeoff import take_off, total_weight
from fireplace_calc.takeoff.cost import bill, prices

CANADAS = ("DRF-08", "DRF-09")
"""Held against Canada's table: no aim, and no break, of a job under another code."""


def worked(designs, pack):
    """Verdict of every finding and the bill, design by design."""
    made = [build_geometry(one) for one in designs]
    airs = [judgement(one) for one in draft_results(made)]
    found = []
    for one, air in zip(made, airs, strict=True):
        order = take_off(one)
        all_of_it = (
            *PACKS[pack].check(gather_facts(one, total_weight(order))),
            *air,
            *assess_structure(one, pack).findings,
        )
        found.append(({f.key: f.verdict for f in all_of_it}, bill(order, prices())))
    return found


def own(verdicts, pack):
    """Without what another country's table says."""
    skip = () if pack.startswith("Canada") or pack == "Trade practice" else CANADAS
    return {key: verdict for key, verdict in verdicts.items() if key not in skip}


def mended(before, after):
    return frozenset(
        k for k, v in before.items() if v == FALLS_SHORT and after[k] in (MEETS, DOES_NOT_APPLY)
    )


def spoilt(before, after):
    return any(
        after[k] == FALLS_SHORT != v or after[k] == NOT_CHECKED and v in (MEETS, DOES_NOT_APPLY)
        for k, v in before.items()
    )


def drawn(design: Design, changes, locked=()):
    """The design changed, or nothing where it cannot be or where something locked would move."""
    try:
        other = change(design, changes)
    except InputError:
        return None
    return None if any(value_of(design, k) != value_of(other, k) for k in locked) else other


def known_cost(was, now, extras):
    """What the order costs more; unknown where the list does not hold all of it."""

    def without_price(of):
        return {line.row.item: line.row.order for line in of.lines if line.price is None}

    return (
        None if any(extras) or without_price(was) != without_price(now) else now.total - was.total
    )


def rows_of(design):
    """Every lever that takes hold of something, with its settings."""
    return [(lever, row) for lever in LEVERS for row in settings_of(design, lever) if row]


def least_pairs(design, pack, one, other, locked=()):
    """Of all settings of two levers those that mend something, break nothing, and of which no step
    can be taken back without losing some of it: what is mended, the cost, the changes.
    """
    (before, was), *_ = worked([design], pack)
    before = own(before, pack)
    grid = [[None, *row] for _, row in (one, other)]
    places, designs = [], []
    for i, k in product(range(len(grid[0])), range(len(grid[1]))):
        parts = [s for s in (grid[0][i], grid[1][k]) if s is not None]
        made = drawn(design, {key: v for s in parts for key, v in s.change.items()}, locked)
        if made is not None:
            places.append((i, k))
            designs.append(made)
    seen = {}
    for at, (verdicts, now) in zip(places, worked(designs, pack), strict=True):
        after = own(verdicts, pack)
        fixes = frozenset() if spoilt(before, after) else mended(before, after)
        seen[at] = fixes, known_cost(was, now, [one[0].extra, other[0].extra])
    found = []
    for (i, k), (fixes, cost) in seen.items():
        less = [
            seen.get((i - 1, k), (frozenset(), 0))[0],
            seen.get((i, k - 1), (frozenset(), 0))[0],
        ]
        if i and k and fixes and not any(fixes <= one_less for one_less in less):
            found.append((fixes, cost, grid[0][i].change | grid[1][k].change))
    return found
