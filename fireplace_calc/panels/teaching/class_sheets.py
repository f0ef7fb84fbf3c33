"""The sheets of a class and the key to them, written beside the notebook."""

from __future__ import annotations

from pathlib import Path

import ipywidgets as w

from fireplace_calc.drawing.papers.class_papers import class_writing
from fireplace_calc.lessons import seeds_of
from fireplace_calc.panels import html
from fireplace_calc.panels.controls.choices import button, row
from fireplace_calc.panels.job import Job, Steps

SHEET, KEY = "chimney-rules-sheets.pdf", "chimney-rules-key.pdf"
WORDS = (
    "One sheet a student, each with other numbers and another fault; the key holds every answer."
    " The files are written beside this notebook, in the units, code and number of faults chosen"
    " here."
)


class ClassSheets:
    """Two buttons that write a PDF, student by student.

    Parameters
    ----------
    folder : path
        Where the files are written.
    pack, units : str
        Code and unit system.
    faults : int
        Planted for each student. [-]
    """

    def __init__(self, folder: Path, pack: str, units: str, faults: int) -> None:
        self.folder, self.pack, self.units, self.faults = folder, pack, units, faults
        self.job = Job("students")
        self.students = w.Text(
            value="1-24",
            description="Seeds of the class",
            layout=w.Layout(width="24em"),
            continuous_update=False,  # a click on a button could overtake the last letter
            style={"description_width": "10em"},
        )
        buttons = [
            button("Write class sheets", lambda: self.write(key=False)),
            button("Write the key", lambda: self.write(key=True)),
        ]
        self.widget = w.VBox(
            [w.HTML(html.remark(WORDS)), row([self.students, *buttons]), self.job.widget]
        )

    def write(self, key: bool) -> Path:
        """Write the sheets, or the key to them; gives the path they will be found at."""
        path = self.folder / (KEY if key else SHEET)
        told, pack, units, faults = self.students.value, self.pack, self.units, self.faults

        def steps() -> Steps:
            yield from class_writing(seeds_of(told), path, units, key, pack, faults=faults)

        def finished() -> str:
            return f"{path.name} is written: {len(seeds_of(told))} students, one seed each."

        self.job.run(steps, finished)
        return path
