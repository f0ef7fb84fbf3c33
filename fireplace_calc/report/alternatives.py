"""Designs side by side: what each is, draws, breaks, weighs, costs and takes, and in what it
differs from the first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from typing import TYPE_CHECKING

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.inputs import UNKNOWN, is_record, pieces_of
from fireplace_calc.base.printing import grouped, show
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.report.sentences import weight
from fireplace_calc.report.wide_tables import whole
from fireplace_calc.rules import Finding
from fireplace_calc.takeoff.cost import Price, bill, prices

if TYPE_CHECKING:
    import pandas

Row = tuple[str, tuple[str, ...]]
"""What is told, and one text for each design."""
WORDS = ("choice", "text", "count")


def differences(first: Design, other: Design, units: str = FEET_INCHES) -> tuple[str, ...]:
    """In what a design differs from another, input by input, each as label and new value.

    >>> from fireplace_calc.editing.changes import change
    >>> differences(Design(), change(Design(), {"flue.sections": 12}))
    ('Flue sections 12',)
    """
    said = [f"{label} {new}" for label, _, new in changed_inputs(first, other, units)]
    for field in fields(Design):
        record, former = getattr(other, field.name), getattr(first, field.name)
        for name, piece in (pieces_of(record) if is_record(record) else {}).items():
            if getattr(record, name) != getattr(former, name):
                said.append(
                    f"{piece.metadata['label']}: {len(getattr(record, name))} pieces, changed"
                )
    return tuple(said)


def changed_inputs(
    first: Design, other: Design, units: str = FEET_INCHES
) -> tuple[tuple[str, str, str], ...]:
    """Every input that two designs have otherwise: its label, what it was, what it is.

    >>> from fireplace_calc.editing.changes import change
    >>> changed_inputs(Design(), change(Design(), {"flue.sections": 12}))
    (('Flue sections', '10', '12'),)
    """
    found = []
    for key, spec in all_inputs().items():
        group, dot, name = key.partition(".")
        old, new = (
            (getattr(getattr(d, group), name) if dot else getattr(d, group)) for d in (first, other)
        )
        if old != new and key not in ("name", "note"):
            found.append(
                (
                    spec.label,
                    _written(old, spec.kind, units),
                    _written(new, spec.kind, units),
                )
            )
    return tuple(found)


def _written(value: float | str | None, kind: str, units: str) -> str:
    if value is None:
        return UNKNOWN
    if kind == "yes-no":
        return "yes" if value else "no"
    if kind in WORDS or isinstance(value, str):
        return str(value)
    return show(value, kind, units)


def side_by_side(
    results: Sequence[Assessment],
    units: str = FEET_INCHES,
    priced: Mapping[str, Price] | None = None,
) -> tuple[Row, ...]:
    """Everything a client asks of a few designs, a row a question.

    Parameters
    ----------
    results : sequence of Assessment
        The first is what the others are told against.
    units : str
        ``feet-inches`` or ``millimetres``.
    priced : mapping, optional
        Price list by item; else the example list, which is invented.

    Returns
    -------
    tuple of Row
        Each with as many texts as there are designs.
    """
    known = prices() if priced is None else priced
    told = [dict(_told(result, results[0], len(results) > 1, units, known)) for result in results]
    return tuple((name, tuple(one[name] for one in told)) for name in (told[0] if told else ()))


def _told(
    result: Assessment, first: Assessment, several: bool, units: str, known: Mapping[str, Price]
) -> Iterator[tuple[str, str]]:
    d, f = result.design, result.geometry.frame

    def long(value: float) -> str:
        return show(value, "length", units)

    def wide(value: float) -> str:
        return show(value, "area", units)

    apart = differences(first.design, d, units)
    if several:
        yield (
            "Differs from the first in",
            "; ".join(apart) or ("" if result is first else "nothing"),
        )
    yield (
        "Opening",
        f"{long(d.opening.width)} wide, {long(d.opening.clear_height)} high, {wide(f.clear_area)}",
    )
    yield "Raised by", long(d.opening.extension)
    yield (
        "Flue",
        (
            f"{d.flue.shape} {f.bore.label}, {d.flue.sections} sections, "
            f"1/{f.clear_area / f.bore.area:.1f} of the opening"
        ),
    )
    yield "Chimney top over floor", long(f.crown_top)
    yield "Face velocity, sizing mode", show(result.draft.sizing_velocity, "air speed", units)
    yield "Odds, operating mode", f"{result.odds.words}; {result.odds.dying_words}"
    short = shortfall(result)
    yield f"Falls short of {result.pack}", _broken(short.code)
    yield "Falls short in draft", _broken(short.draft)
    yield "Falls short in structure", _broken(short.structure)
    yield "Not checked", str(short.open)
    yield "Weight, footing included", weight(result.weight, units)
    yield "Material costs", _cost(result, known, units)
    yield "Hours, one mason", f"{result.work.hours:.0f}"


def _broken(findings: Sequence[Finding]) -> str:
    return "; ".join(f"{f.title} ({f.key})" for f in findings) or "nothing"


def _cost(result: Assessment, known: Mapping[str, Price], units: str) -> str:
    found = bill(result.takeoff, known)
    said = [f"{grouped(found.total, units=units)} {found.currency}"]
    said += ["invented example prices"] if found.invented else []
    said += [f"without a price for {', '.join(found.unpriced).lower()}"] if found.unpriced else []
    return ", ".join(said)


def side_by_side_table(
    results: Sequence[Assessment], names: Sequence[str], units: str = FEET_INCHES
) -> pandas.DataFrame:
    """The same as a table, a column each under its name."""
    rows = side_by_side(results, units)
    return whole([texts for _, texts in rows], names, [name for name, _ in rows])
