"""An assessment as sentences, tables and CSV files, in the reader's units."""

from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.report.plain_summary import summary
from fireplace_calc.report.sentences import CAUTION, SIGNS, sentence, tally, weight
from fireplace_calc.report.tables import (
    agreement_table,
    coverage_table,
    draft_table,
    findings_table,
    judgement_table,
    levels_table,
    parts_table,
    side_by_side_table,
    takeoff_table,
)

__all__ = [
    "CAUTION",
    "SIGNS",
    "agreement_table",
    "coverage_table",
    "draft_table",
    "findings_table",
    "judgement_table",
    "levels_table",
    "parts_table",
    "sentence",
    "side_by_side_table",
    "summary",
    "takeoff_table",
    "tally",
    "weight",
    "write_csv",
]
