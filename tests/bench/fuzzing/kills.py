"""A child that writes without end is killed at a random moment: every file is then whole, the old
one or the new one.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import redirect_stdout
from functools import partial
from itertools import cycle
from pathlib import Path

from fireplace_calc import assess, change, load, save
from fireplace_calc.__main__ import main
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
from fireplace_calc.drawing.papers.class_papers import class_writing
from fireplace_calc.drawing.papers.full_papers import paper_set
from fireplace_calc.drawing.papers.one_sheet import hand_over
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.designfile import load_words
from fireplace_calc.editing.jobs.history_file import read_history
from fireplace_calc.exports import write_dxf, write_spreadsheet
from fireplace_calc.exports.hand_over_files import write_hand_over
from fireplace_calc.panels.session import Session
from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.takeoff.cost import prices
from fuzzing.chance import ROOT, chance
from fuzzing.designs import sure
from fuzzing.papers import whole

LONGEST = 60.0
"""For a child to begin. [s]"""


def two() -> tuple[Design, Design]:
    """The designs that are written in turn; their texts differ much in length."""
    plain = load(ROOT / "data" / "designs" / "plain.toml")
    longer = change(
        plain,
        {
            "name": "longer " * 200,
            "opening.width": "50 in",
            "surround.trim": [{"name": f"step {n}"} for n in range(20)],
        },
    )
    return plain, longer


def _session(folder: Path, turns: Iterator[Design]) -> Iterator[None]:
    session = Session(two()[0], "US IRC 2021", "feet-inches", folder)
    for number, design in enumerate(turns):
        session.put(design)
        if number % 7 == 3 and len(session.options) < 4:
            session.put_aside()
        if number % 11 == 5:
            session.units = "millimetres" if session.units == "feet-inches" else "feet-inches"
        session.keep()
        yield


def _each(
    write: Callable[[Design, Path], object],
) -> Callable[[Path, Iterator[Design]], Iterator[None]]:
    def writes(folder: Path, turns: Iterator[Design]) -> Iterator[None]:
        for design in turns:
            write(design, folder)
            yield

    return writes


def _command(design: Design, folder: Path) -> None:
    save(design, folder / "given.toml")
    with open(os.devnull, "w") as nowhere, redirect_stdout(nowhere):
        main([str(folder / "given.toml"), "--out", str(folder)])


def _class_papers(design: Design, folder: Path) -> None:
    seeds = range(2 if len(design.name) < 99 else 3)
    list(class_writing([str(seed) for seed in seeds], folder / "class.pdf"))


def _site_book(design: Design, folder: Path) -> None:
    sheets = [Sheet(200.0, 100.0) for _ in design.name[:40]]
    write_book(sheets, folder / "book.pdf", design.name, "book", "foot")


def _for_client(kind: str, design: Design, folder: Path) -> None:
    chosen = NamedDesign("chosen", assess(design))
    list(write_hand_over(folder / f"for-the-client.{kind}", chosen))


JOBS: dict[str, tuple[Callable[[Path, Iterator[Design]], Iterator[None]], float]] = {
    "session": (_session, 0.3),
    "save": (_each(lambda d, f: save(d, f / "design.toml")), 0.1),
    "csv": (_each(lambda d, f: write_csv(assess(d), f)), 0.2),
    "spreadsheet": (
        _each(lambda d, f: write_spreadsheet(assess(d), prices(), f / "order.xlsx")),
        0.5,
    ),
    "dxf": (_each(lambda d, f: write_dxf(assess(d), f / "drawings.dxf")), 1.0),
    "hand over": (_each(lambda d, f: list(hand_over(assess(d), [], f / "hand-over.pdf"))), 1.0),
    "papers": (_each(lambda d, f: paper_set(assess(d), f / "papers.pdf")), 3.0),
    "command": (_each(_command), 4.0),
    "class papers": (_each(_class_papers), 1.0),
    "site book": (_each(_site_book), 0.3),
    "turning room": (_each(partial(_for_client, "html")), 1.5),
    "client's pages": (_each(partial(_for_client, "pdf")), 6.0),
    "client's picture": (_each(partial(_for_client, "png")), 6.0),
}
"""What the child does, and how long after its first file it may live. [s]"""


def child(job: str, folder: str) -> None:
    """Write until killed; a line goes out after the first two rounds, when every file is there in
    both lengths.
    """
    out = sys.stdout
    for number, _ in enumerate(JOBS[job][0](Path(folder), cycle(two()))):
        if number == 1:
            print("begun", file=out, flush=True)


def held(path: Path) -> bool:
    """Whether a file is whole: one of the two designs, or the end of its kind."""
    if path.suffix != ".toml":
        return whole(path)
    if path.name == "reader.toml":
        return set(load_words(path)) == {"pack", "units"}
    if path.name == "history.toml":
        return read_history(path, lambda before, after: "", path.parent) is not None
    try:
        return load(path) in two()
    except InputError:
        return False


def try_one(seed: str, number: int) -> str:
    """One child, one kill."""
    dice, job = chance(seed, number), sorted(JOBS)[number % len(JOBS)]
    with tempfile.TemporaryDirectory() as folder:
        code = f"from fuzzing.kills import child; child({job!r}, {folder!r})"
        paths = os.pathsep.join([str(Path(__file__).resolve().parents[1]), str(ROOT)])
        started = subprocess.Popen(
            [sys.executable, "-c", code],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": paths},
        )
        try:
            begun = started.stdout.readline()
            sure(
                begun == b"begun\n",
                f"the child did not begin: {job}",
                begun or started.stderr.read()[-500:],
            )
            time.sleep(dice.uniform(0, JOBS[job][1]))
        finally:
            started.send_signal(signal.SIGKILL)
            started.communicate()
        files = [path for path in Path(folder).iterdir()]
        beside = [path for path in files if path.name.startswith(".") and path.suffix == ".tmp"]
        for path in files:
            sure(path in beside or path.stat().st_size > 0, f"0 bytes left by {job}", path.name)
            sure(path in beside or held(path), f"half a file left by {job}", path.name)
    return f"{job}, whole" + (", a file beside it" if beside else "")
