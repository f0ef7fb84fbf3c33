"""Paper sets and exports of random designs: none ends in an exception, each file is whole."""

from __future__ import annotations

import csv
import io
import tempfile
from pathlib import Path
from random import Random

from fireplace_calc import PACKS, assess
from fireplace_calc.assessment import Assessment
from fireplace_calc.base.units import SYSTEMS
from fireplace_calc.drawing.papers.full_papers import printing
from fireplace_calc.drawing.papers.one_sheet import check_sheet, hand_over
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.sizes import PAPERS
from fireplace_calc.exports import write_dxf, write_spreadsheet
from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.takeoff.cost import prices
from fuzzing.chance import chance, random_design
from fuzzing.designs import NOT_A_NUMBER, sure


def whole(path: Path) -> bool:
    """Whether a file has its end, by what its kind ends in."""
    content = path.read_bytes()
    if path.suffix == ".pdf":
        return content.startswith(b"%PDF-") and content.rstrip().endswith(b"%%EOF")
    if path.suffix == ".dxf":
        return content.rstrip().endswith(b"EOF") and content.count(b"ENDSEC") >= 5
    if path.suffix == ".xlsx":
        return _adds_up(path)
    if path.suffix == ".png":
        return content.startswith(b"\x89PNG") and content.endswith(b"IEND\xaeB`\x82")
    if path.suffix in (".html", ".svg"):
        return content.rstrip().endswith(b"</" + path.suffix[1:].encode() + b">")
    rows = list(csv.reader(io.StringIO(content.decode())))
    return (
        len(rows) > 1 and content.endswith(b"\n") and all(len(row) == len(rows[0]) for row in rows)
    )


def _adds_up(path: Path) -> bool:
    import zipfile

    try:
        with zipfile.ZipFile(path) as packed:
            return packed.testzip() is None and "xl/workbook.xml" in packed.namelist()
    except zipfile.BadZipFile:
        return False


def written(result: Assessment, folder: Path, dice: Random) -> None:
    """Everything that can be put on paper or into a file."""
    units, size = dice.choice(SYSTEMS), dice.choice(sorted(PAPERS))
    write_csv(result, folder)
    write_spreadsheet(result, prices(), folder / "order.xlsx")
    write_dxf(result, folder / "drawings.dxf", units)
    sheets = whole_set.sheets(result, units, size)
    for name, sheet in sheets:
        for label in sheet.labels:
            sure(not NOT_A_NUMBER.search(label.text), f"nan or inf on the sheet {name}", label.text)
    for _ in printing(sheets, folder / "papers.pdf", result):
        pass
    for _ in hand_over(result, [result] * dice.randrange(3), folder / "hand-over.pdf", units, size):
        pass
    for _ in check_sheet(result, folder / "check-sheet.pdf", units, size):
        pass


def try_one(seed: str, number: int) -> str:
    """One design on paper."""
    dice = chance(seed, number)
    result = assess(random_design(seed, number), dice.choice(sorted(PACKS)))
    with tempfile.TemporaryDirectory() as folder:
        written(result, Path(folder), dice)
        files = sorted(Path(folder).iterdir())
        sure(len(files) == 8, "a file is missing or left over", [f.name for f in files])
        for file in files:
            sure(whole(file), f"half a file: {file.suffix}", file.name)
            text = file.read_bytes() if file.suffix in (".csv", ".dxf") else b""
            sure(
                not any(word in text for word in (b",nan,", b",inf,", b"\nnan\n", b"\ninf\n")),
                f"nan or inf in {file.name}",
            )
    return "written"
