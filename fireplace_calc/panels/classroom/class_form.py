"""What a trainer chooses for a class: roster, topics, count, level, code, units, help."""

from __future__ import annotations

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.lessons import KINDS, TAUGHT
from fireplace_calc.lessons.classroom.class_files import new_key
from fireplace_calc.lessons.classroom.class_records import (
    HELPS,
    LEVELS,
    MOST_EXERCISES,
    ClassTask,
    SchoolClass,
    topics_of,
)
from fireplace_calc.lessons.classroom.rosters import roster_of, student_name
from fireplace_calc.lessons.fault_hunt.search_of_class import SEARCH, TITLE
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import UNITS, dropdown, row

LABEL = {"description_width": "9em"}
USUAL = ("flue", "roof", "mantel", "hearth")
"""Topics of a class that is new."""
TOPICS = {kind: one.title for kind, one in KINDS.items()} | {SEARCH: TITLE}
"""Every topic by its key."""


class ClassForm:
    """The form; it keeps nothing by itself."""

    def __init__(self) -> None:
        def nothing(_: object) -> None:
            return

        # a box tells what it holds when it is left: a click could overtake the last letter
        how = {"layout": w.Layout(width="32em"), "style": LABEL, "continuous_update": False}
        self.title = w.Text(value="Class of today", description="Class", **how)
        self.names = w.Textarea(value="1-24", description="Names or numbers", rows=4, **how)
        self.topics = {
            kind: w.Checkbox(
                value=kind in USUAL, description=title, indent=False,
                layout=w.Layout(width="18em"),
            )
            for kind, title in TOPICS.items()
        }  # fmt: skip
        self.count = w.BoundedIntText(
            value=4, min=1, max=MOST_EXERCISES, description="Exercises each",
            layout=w.Layout(width="15em"), style=LABEL,
        )  # fmt: skip
        levels = {f"{n}: {words}": n for n, words in LEVELS.items()}
        self.level = dropdown("Level", levels, 3, nothing, "32em", "9em")
        self.pack = dropdown("Code", TAUGHT, DEFAULT_PACK, self._offer, "32em", "9em")
        self.units = dropdown("Units", UNITS, FEET_INCHES, nothing, "32em", "9em")
        helps = {words: key for key, words in HELPS.items()}
        self.helps = dropdown("The page tells", helps, "hints", nothing, "32em", "9em")
        self.lacking = w.HTML()
        who = w.VBox([self.title, self.names, self.count])
        what = w.VBox([self.level, self.pack, self.units, self.helps])
        beside = w.HBox([who, what])
        beside.add_class("beside")
        asked = [w.HTML("Topics, in turn"), row(self.topics.values()), self.lacking]
        self.widget = w.VBox([beside, *asked])

    def _offer(self, pack: str) -> None:
        """Topics that a code has figures for, and which it has none for."""
        lacking = [TOPICS[kind] for kind in TOPICS if kind not in topics_of(pack)]
        for kind, box in self.topics.items():
            box.layout.display = "" if TOPICS[kind] not in lacking else "none"
        said = f"No figure in {pack}, so no exercise: {', '.join(lacking)}." if lacking else ""
        self.lacking.value = html.remark(said) if said else ""

    def task(self) -> ClassTask:
        """What is chosen.

        Raises
        ------
        InputError
            When it cannot be set.
        """
        return ClassTask(
            student_name(self.title.value),
            new_key(),
            tuple(kind for kind in topics_of(self.pack.value) if self.topics[kind].value),
            self.count.value,
            self.level.value,
            self.pack.value,
            self.units.value,
            self.helps.value,
            made_by(),
        )

    def roster(self) -> tuple[str, ...]:
        """The names.

        Raises
        ------
        InputError
            When they cannot be used.
        """
        return roster_of(self.names.value)

    def show(self, school: SchoolClass) -> None:
        """Bring the form up to a class that is kept."""
        task = school.task
        self.title.value, self.names.value = task.title, "\n".join(school.places)
        for kind, box in self.topics.items():
            box.value = kind in task.kinds
        self.count.value, self.level.value = task.count, task.level
        self.pack.value, self.units.value, self.helps.value = task.pack, task.units, task.helps
