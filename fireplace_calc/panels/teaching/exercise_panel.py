"""Find the fault by oneself: a design of one's own seed to look through, in any code and units."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import ipywidgets as w

from fireplace_calc.assessment import DEFAULT_PACK
from fireplace_calc.base.units import FEET_INCHES, InputError
from fireplace_calc.drawing.classroom.class_paper import CAUTION
from fireplace_calc.lessons import SEARCHED, FaultFinding, planted
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import UNITS, dropdown, row
from fireplace_calc.panels.teaching.fault_search import FaultSearch
from fireplace_calc.panels.teaching.look import STYLE

MOST_FAULTS = 4
"""To find in one design. [-]"""


@dataclass(frozen=True, slots=True)
class Student:
    """What the design of one student is drawn from.

    Attributes
    ----------
    seed : str
        Tells one student from the next.
    units, pack : str
    faults : int
        Planted in the design to look through. [-]
    """

    seed: str
    units: str
    pack: str
    faults: int

    def planted(self) -> FaultFinding:
        """The design to look through."""
        return planted(self.seed, self.faults, self.pack)


class Practice:
    """A design to look through, and what it is drawn from.

    Parameters
    ----------
    seed : int or str
        Tells one student from the next.
    units : str
        ``feet-inches`` or ``millimetres``.
    pack : str
        One of ``SEARCHED``.
    faults : int
        Planted in the design, 1 to 4. [-]
    """

    def __init__(
        self,
        seed: int | str = 1,
        units: str = FEET_INCHES,
        pack: str = DEFAULT_PACK,
        faults: int = 1,
    ) -> None:
        self.student = student = Student(str(seed), units, pack, faults)
        self.trouble = w.HTML()
        many = w.BoundedIntText(
            value=faults,
            min=1,
            max=MOST_FAULTS,
            description="Faults",
            layout=w.Layout(width="10em"),
            style={"description_width": "4em"},
        )
        many.observe(lambda event: self.set(faults=event["new"]), "value")
        self.search = FaultSearch(student.planted(), units, many)
        self.widget = self._lay_out()

    def set(self, **chosen: Any) -> None:
        """Take another seed, unit system, code or number of faults; what cannot be drawn changes
        nothing.
        """
        wanted = replace(self.student, **chosen)
        try:
            faults = wanted.planted()
        except InputError as error:
            self.trouble.value = html.trouble(str(error))
            return
        self.student, self.trouble.value = wanted, ""
        self.search.show(faults, wanted.units)

    def _lay_out(self) -> w.Widget:
        student = self.student
        seed = w.Text(
            value=student.seed,
            description="Your seed",
            continuous_update=False,
            layout=w.Layout(width="15em"),
            style={"description_width": "6em"},
        )
        seed.observe(lambda event: self.set(seed=event["new"].strip()), "value")
        top = row(
            [
                seed,
                dropdown("Units", UNITS, student.units, lambda u: self.set(units=u), "16em", "4em"),
                dropdown("Code", SEARCHED, student.pack, lambda pack: self.set(pack=pack)),
            ]
        )
        caution = w.HTML(html.remark(CAUTION))
        page = w.VBox([w.HTML(html.STYLE + STYLE), top, self.trouble, self.search.widget, caution])
        page.add_class("fireplace-panel")
        page.add_class("fireplace-lesson")
        return page

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        shown = self.widget._repr_mimebundle_(**kwargs)
        return {**shown, "text/plain": f"Find the fault, seed {self.student.seed}"}


def practice(seed: int | str = 1, **how: Any) -> Practice:
    """A fault to find in a design of one's own seed; put it last in a cell."""
    return Practice(seed, **how)
