"""The key of a class: every answer with its working."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fireplace_calc.drawing.sheets.lists import Column, Table, TextFlow
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.lessons import Exercise, FaultFinding
from fireplace_calc.report.sentences import compared

KEY = (
    Column("To work out", 44),
    Column("Answer", 19),
    Column("How", 46),
    Column("Rule", 16),
    Column("Usual mistakes", 58),
)


FAULTS = (
    Column("Fault", 30),
    Column("Check", 34),
    Column("Provided", 15),
    Column("Required", 17),
    Column("Clause", 24),
    Column("Why", 56),
)


def _key(
    tasks: Sequence[Exercise],
    fault_finding: FaultFinding,
    units: str,
    wide: float,
    high: float,
    cell: Cell,
) -> list[Sheet]:
    flow = TextFlow(wide, high, cell)
    for number, task in enumerate(tasks, 1):
        flow.table(Table(f"{number}. {task.title}", KEY, tuple(_keyed(task, units))))
    rows = tuple(
        (
            fault.name,
            f"{f.title} ({f.key})",
            *compared(f, units)[:2],
            f"{f.clause}, {f.edition}",
            " ".join(t for t in (f.why, f.note) if t),
        )
        for fault, f in zip(fault_finding.faults, fault_finding.findings, strict=True)
    )
    flow.table(
        Table(
            "What is wrong with the design",
            FAULTS,
            rows,
            before=f"Everything else {fault_finding.pack} asks is met or does not apply.",
        )
    )
    return flow.sheets


def _keyed(task: Exercise, units: str) -> Iterator[tuple[str, ...]]:
    for letter, step in zip("abcdefgh", task.steps, strict=False):
        wrong = " ".join(f"{step.told(m.value, units)}: {m.reason}" for m in step.mistakes[:3])
        yield (
            f"{letter})  {step.prompt}",
            step.answer(units),
            step.how,
            step.rule,
            wrong,
        )
