"""Orders of random designs worked out anew by LibreOffice, against the values that the product stores.
Run by hand, where ``soffice`` is installed (Debian: ``libreoffice-calc-nogui``):

``.venv/bin/python tests/bench/recalculated.py 500 --seed one``

The stored values are taken out of the files first, so that whatever comes back was worked out there.
Exit status 1 when any differs.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parent))

import openpyxl
import test_exports
from fuzzing.sheets import random_work

from fireplace_calc import assess
from fireplace_calc.takeoff.cost import prices

BATCH = 50
"""Files that the office program is started for. [-]"""
Stored = dict[str, dict[str, Any]]


def written(seed: str, number: int, path: Path) -> Stored:
    """Write the order of one design without a value beside its formulas; the values are given."""
    made = test_exports.order_book(assess(random_work(seed, number)), prices())
    path.write_bytes(made.content())
    openpyxl.load_workbook(path).save(path)
    return {title: dict(values) for title, values in made.values.items()}


def worked_out(folder: Path, paths: list[Path]) -> Path:
    """Have every formula worked out; gives the folder of the files that come back."""
    out = folder / "out"
    asked = ["soffice", f"-env:UserInstallation={(folder / 'profile').as_uri()}", "--headless"]
    asked += ["--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(out)]
    subprocess.run([*asked, *map(str, paths)], check=True, capture_output=True)
    return out


def apart(stored: Stored, path: Path) -> Iterator[str]:
    """Cells where both do not agree to nine digits."""
    book = openpyxl.load_workbook(path, data_only=True)
    for title, values in stored.items():
        for place, value in values.items():
            got = book[title][place].value
            same = (got or "") == (value or "")
            if isinstance(got, (int, float)) and isinstance(value, (int, float)):
                same = abs(got - value) <= 1e-9 * max(1.0, abs(value))
            if not same:
                yield f"{title}!{place}: {value} is stored, {got} worked out"


def main() -> int:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("count", type=int, help="of designs")
    parser.add_argument("--seed", default="one")
    asked = parser.parse_args()
    cells, wrong = 0, 0
    for first in range(0, asked.count, BATCH):
        with TemporaryDirectory() as name:
            folder, numbers = Path(name), range(first, min(first + BATCH, asked.count))
            paths = [folder / f"{number}.xlsx" for number in numbers]
            stored = [written(asked.seed, n, path) for n, path in zip(numbers, paths, strict=True)]
            out = worked_out(folder, paths)
            for number, values, path in zip(numbers, stored, paths, strict=True):
                cells += sum(map(len, values.values()))
                for told in apart(values, out / path.name):
                    wrong += 1
                    print(f"{number}: {told}", flush=True)
        print(f"{numbers.stop} orders, {cells} values, {wrong} apart", flush=True)
    return 1 if wrong or not cells else 0


if __name__ == "__main__":
    sys.exit(main())
