"""Every fold by the name a notebook asks for it, and the choice each reader begins with."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from importlib import import_module
from typing import TYPE_CHECKING, Any, TypeAlias

if TYPE_CHECKING:
    from fireplace_calc.panels.folds.folds import Fold
    from fireplace_calc.panels.host import Host

Make: TypeAlias = "Callable[[Host], Fold]"


def _of(module: str, name: str) -> Any:
    """What a module of the package holds; it is read only when somebody opens its fold."""
    return getattr(import_module(f"fireplace_calc.{module}"), name)


def _fold(module: str, name: str) -> Make:
    def make(panel: Host) -> Fold:
        made: Fold = _of(f"panels.{module}", name)(panel)
        return made

    return make


def _words(module: str, name: str, long: bool = False, laid_out: bool = False) -> Make:
    """A fold of words from a function of an assessment and the units: markup, or, laid out first,
    paragraphs and tables; with a long rest before it is written where that takes long.
    """

    def make(panel: Host) -> Fold:
        from fireplace_calc.panels import html
        from fireplace_calc.panels.folds.folds import LONG_REST, REST, Words

        said = _of(module, name)
        told = (lambda result, units: html.flow(said(result, units))) if laid_out else said
        return Words(panel, told, LONG_REST if long else REST)

    return make


FOLDS: dict[str, tuple[str, Make]] = {
    "checks": ("Checks", _fold("folds.checks", "Checks")),
    "remedies": ("What would fix it?", _fold("folds.remedies", "Remedies")),
    "reach": ("How far can it be raised?", _fold("folds.reach", "HowFar")),
    "checklist": ("Site checklist", _fold("folds.folds", "Checklist")),
    "assumed": ("What was assumed", _fold("folds.checks", "Assumed")),
    "books": ("Every book", _words("panels.found", "books", long=True)),
    "draft": ("Will it draw?", _fold("folds.checks", "Draft")),
    "structure": ("Will it stand?", _fold("folds.checks", "Stands")),
    "heat": ("How hot does the wood get?", _fold("heat.heat_fold", "Heat")),
    "bricks": (
        "Brickwork and cuts",
        _words("drawing.papers.written_sheets", "cutting", long=True, laid_out=True),
    ),
    "takeoff": ("Material takeoff", _words("panels.html", "takeoff")),
    "cost": (
        "Order and cost",
        _fold("folds.order_and_cost", "OrderAndCost"),
    ),
    "work": (
        "Order of work",
        _words("drawing.papers.work_sheets", "working", long=True, laid_out=True),
    ),
    "worked": ("Formula, numbers, result", _words("panels.html", "figures", long=True)),
    "options": ("Options side by side", _fold("folds.options", "Options")),
    "guides": ("Proportions", _fold("folds.folds", "Guides")),
    "body": ("In its room, lit", _fold("folds.folds", "InItsRoom")),
    "casting": ("Cast it yourself", _fold("folds.pieces_to_cast", "PiecesToCast")),
    "survey": ("Measure what stands", _fold("survey.survey_fold", "MeasureWhatStands")),
    "papers": ("Save, open and print", _fold("folds.papers", "Papers")),
    "inputs": ("All other inputs", _fold("folds.folds", "Inputs")),
    "start": ("My jobs", _fold("jobs.my_jobs", "MyJobs")),
    "new": ("Start mine", _fold("jobs.start_mine", "StartMine")),
    "history": ("What was done", _fold("jobs.history_list", "HistoryList")),
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
    "How hot?": ("heat",),
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
    "heat",
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
