"""Every fold by the name a notebook asks for it, and the choice each reader begins with."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.papers.work_sheets import working
from fireplace_calc.drawing.papers.written_sheets import cutting, ordering
from fireplace_calc.panels import found, html
from fireplace_calc.panels.folds.checks import Assumed, Checks, Draft, Stands
from fireplace_calc.panels.folds.folds import (
    LONG_REST,
    REST,
    Body,
    Checklist,
    Fold,
    Guides,
    Inputs,
    Words,
)
from fireplace_calc.panels.folds.options import Options
from fireplace_calc.panels.folds.papers import Papers
from fireplace_calc.panels.folds.pieces_to_cast import PiecesToCast
from fireplace_calc.panels.folds.reach import HowFar
from fireplace_calc.panels.folds.remedies import Remedies
from fireplace_calc.panels.host import Host
from fireplace_calc.panels.jobs.history_list import HistoryList
from fireplace_calc.panels.jobs.my_jobs import MyJobs
from fireplace_calc.panels.jobs.start_mine import StartMine

Make = Callable[[Host], Fold]


def _words(said: Callable[[Assessment, str], str], rest: float = REST) -> Make:
    return lambda panel: Words(panel, said, rest)


def _survey(panel: Host) -> Fold:
    # here, so that whoever never unfolds it need not wait
    from fireplace_calc.panels.survey.survey_fold import MeasureWhatStands

    return MeasureWhatStands(panel)


FOLDS: dict[str, tuple[str, Make]] = {
    "checks": ("Checks", Checks),
    "remedies": ("What would fix it?", Remedies),
    "reach": ("How far can it be raised?", HowFar),
    "checklist": ("Site checklist", Checklist),
    "assumed": ("What was assumed", Assumed),
    "books": ("Every book", _words(found.books, LONG_REST)),
    "draft": ("Will it draw?", Draft),
    "structure": ("Will it stand?", Stands),
    "bricks": (
        "Brickwork and cuts",
        _words(lambda result, units: html.flow(cutting(result, units)), LONG_REST),
    ),
    "takeoff": ("Material takeoff", _words(html.takeoff)),
    "cost": (
        "Order and cost",
        _words(lambda result, units: html.flow(ordering(result, units)), LONG_REST),
    ),
    "work": (
        "Order of work",
        _words(lambda result, units: html.flow(working(result, units)), LONG_REST),
    ),
    "worked": ("Formula, numbers, result", _words(html.figures, LONG_REST)),
    "options": ("Options side by side", Options),
    "guides": ("Proportions", Guides),
    "body": ("In three dimensions", Body),
    "casting": ("Cast it yourself", PiecesToCast),
    "survey": ("Measure what stands", _survey),
    "papers": ("Save, open and print", Papers),
    "inputs": ("All other inputs", Inputs),
    "start": ("My jobs", MyJobs),
    "new": ("Start mine", StartMine),
    "history": ("What was done", HistoryList),
}
"""Title and maker of every fold, by the name a notebook asks for it."""

JOBS = ("start", "new", "history")
"""Folds about the reader's own jobs."""
TABS: dict[str, tuple[str, ...]] = {
    "My job": (*JOBS, "survey", "options"),
    "Checks": ("checks", "assumed", "checklist", "books"),
    "What mends it": ("remedies", "reach"),
    "Will it draw?": ("draft", "worked"),
    "Will it stand?": ("structure",),
    "Order": ("takeoff", "cost", "bricks", "casting"),
    "Order of work": ("work",),
    "Looks": ("guides", "body"),
    "Save and print": ("papers",),
    "All inputs": ("inputs",),
}
"""Which folds stand in which tab of the workbench."""


def tabs(named: Iterable[str]) -> list[list[Any]]:
    """Tabs that hold some folds: key, heading, and the folds in it with theirs."""
    wanted = set(named)
    kept = {
        title: [[name, FOLDS[name][0]] for name in folds if name in wanted]
        for title, folds in TABS.items()
    }
    return [[title, title, folds] for title, folds in kept.items() if folds]


DESIGNER = ("guides", "options", "body", "checks", "assumed", "cost", "papers", "inputs", *JOBS)
MASON = (
    "remedies",
    "reach",
    "worked",
    "checks",
    "assumed",
    "draft",
    "structure",
    "bricks",
    "takeoff",
    "body",
    "casting",
    "survey",
    "papers",
    "inputs",
    *JOBS,
)
CREW = (
    "work",
    "bricks",
    "takeoff",
    "cost",
    "structure",
    "checks",
    "assumed",
    "papers",
    "inputs",
    *JOBS,
)
