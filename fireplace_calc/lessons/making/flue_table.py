"""Canada's table of round flues as an exercise: find the row of the opening and the column of the
chimney.
"""

from __future__ import annotations

from fireplace_calc.base.tables.canada import RoundFlueCell, canada_round_flues
from fireplace_calc.base.units import INCH, MM
from fireplace_calc.lessons.making.task_maker import TaskMaker, Way

BANDS = ("chimney to 4.5 m", "chimney to 5.9 m", "chimney to 8.9 m", "chimney to 12 m")
HEIGHTS = ((3.2, 4.3), (4.7, 5.7), (6.1, 8.7), (9.1, 11.8))
"""Heights that lie plainly in each column. [m]"""


def _cells() -> list[RoundFlueCell]:
    return [c for c in canada_round_flues() if c.flue_low is not None and c.flue_high is not None]


def flue_by_table(task: TaskMaker, width: float, high: float, area: float) -> float:
    """Ask for the least and the greatest flue; gives the least. [m]"""
    column = BANDS.index(task.branch)
    low, top = HEIGHTS[column]
    tall = task.on_tape(low + (top - low) * task.rng.randrange(11) / 10, 50)
    task.give("Chimney height, from the firebox floor", tall)
    cells = _cells()
    rows = sorted({c.opening_high for c in cells})
    row = next(k for k, most in enumerate(rows) if area <= most * (1 - 1e-6))
    lows = sorted({c.height_low for c in cells})
    code = task.limit(
        ("CA-006",),
        {
            "opening.width": task.text(width),
            "opening.standard_height": task.text(high),
            "flue.shape": "round",
            "flue.size": "10",
            "measured.flue_area": "0.05 m2",
        },
    )
    by_place = {(rows.index(c.opening_high), lows.index(c.height_low)): c for c in cells}
    mine = by_place[row, column]
    near = [
        (row + r, column + c)
        for r, c in ((0, 0), (-1, 0), (1, 0), (0, -1), (0, 1))
        if (row + r, column + c) in by_place
    ]
    for place in sorted(near):
        cell = by_place[place]
        task.give(
            f"Table: opening {_area(task, cell.opening_high)}, chimney {_tall(task, cell)}",
            f"{_size(task, cell.flue_low)} to {_size(task, cell.flue_high)}",
            "word",
        )
    others = [(by_place[p], _missed(p, row, column)) for p in near if p != (row, column)]
    for key, name, value, field, at in (
        ("across", "narrowest", mine.flue_low, "flue_low", (1, 2, 3)),
        ("most", "widest", mine.flue_high, "flue_high", (3,)),
    ):
        limit = "least" if key == "across" else "most"
        end = {"least": mine.flue_high, "most": mine.flue_low}[limit]
        task.ask(
            key,
            f"What is the {name} round flue the table allows, across the inside?",
            float(value or 0.0),
            "length",
            Way(
                "Find the row of the opening and the column of the chimney.",
                f"Row: opening {_area(task, mine.opening_high)}. Column: {_tall(task, mine)}.",
                f"That cell says {_size(task, mine.flue_low)} to {_size(task, mine.flue_high)}.",
            ),
            [(float(end or 0.0), "You took the other end of the cell.")]
            + [(getattr(cell, field), said) for cell, said in others],
            at=at,
            limit=limit,
            code=code,
        )
    return float(mine.flue_low or 0.0)


def _missed(place: tuple[int, int], row: int, column: int) -> str:
    if place[0] != row:
        return "You took the row of another opening."
    return f"You took the column of a {'taller' if place[1] > column else 'shorter'} chimney."


def _area(task: TaskMaker, most: float) -> str:
    return f"to {most:.2f} m²" if not task.feet else f"to {most / INCH**2:.0f} in²"


def _tall(task: TaskMaker, cell: RoundFlueCell) -> str:
    if task.feet:
        return f"{task.show(cell.height_low)} to {task.show(cell.height_high)}"
    return f"{cell.height_low:g} to {cell.height_high:g} m"


def _size(task: TaskMaker, value: float | None) -> str:
    told = float(value or 0.0)
    return f"{told / MM:.0f} mm" if not task.feet else task.show(told)
