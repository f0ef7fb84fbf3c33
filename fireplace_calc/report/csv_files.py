"""Takeoff and findings as CSV files."""

from __future__ import annotations

import csv
import io
import os
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.resources import made_by
from fireplace_calc.editing.whole_files import write_whole
from fireplace_calc.rules import Finding

TAKEOFF_COLUMNS = (
    "item",
    "material",
    "net",
    "order",
    "unit",
    "weight_kg",
    "piece_kg",
    "volume_m3",
    "note",
)
FINDING_COLUMNS = (
    "key",
    "clause",
    "title",
    "verdict",
    "provided",
    "required",
    "margin",
    "unit",
    "why",
    "note",
    "edition",
    "confidence",
    "source",
    "assumed",
    "missing",
)
MADE_BY = "made_by"
"""Last column of every table of figures: name and version of the program."""


def harmless(value: Any) -> Any:
    """Text that a spreadsheet would take for a formula gets a quote in front."""
    return (
        "'" + value if isinstance(value, str) and value.startswith(("=", "+", "-", "@")) else value
    )


def csv_text(columns: Sequence[str], rows: Iterable[Sequence[Any]]) -> bytes:
    """A table as a CSV file, with the program's name and version behind every row.

    Parameters
    ----------
    columns : sequence of str
        Headings.
    rows : iterable of sequence
        Cells of each.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow([*columns, MADE_BY])
    writer.writerows([*map(harmless, row), made_by()] for row in rows)
    return text.getvalue().encode()


def finding_row(found: Finding) -> list[Any]:
    """A row under ``FINDING_COLUMNS``; keys of inputs with a space between."""
    row = (getattr(found, name) for name in FINDING_COLUMNS)
    return [" ".join(value) if isinstance(value, tuple) else value for value in row]


def write_csv(assessment: Assessment, folder: str | os.PathLike[str]) -> tuple[Path, Path, Path]:
    """Write ``takeoff.csv``, ``findings.csv`` and ``draft.csv``: bare figures, their unit in the
    heading or in the row.

    Parameters
    ----------
    assessment : Assessment
        What to write.
    folder : str or path
        A folder that is there.

    Returns
    -------
    tuple of path
        All three files.
    """
    order, checks, air = (
        Path(folder) / name for name in ("takeoff.csv", "findings.csv", "draft.csv")
    )
    write_whole(
        order,
        csv_text(
            TAKEOFF_COLUMNS,
            (
                (
                    r.item,
                    r.material,
                    r.net,
                    r.order,
                    r.unit,
                    r.weight_kg,
                    r.piece_kg,
                    r.volume,
                    r.note,
                )
                for r in assessment.takeoff
            ),
        ),
    )
    for path, findings in ((checks, assessment.findings), (air, assessment.judgement)):
        write_whole(
            path,
            csv_text(FINDING_COLUMNS, map(finding_row, findings)),
        )
    return order, checks, air
