"""What writes files: each kind of file of the package, written over and over with two designs in
turn.
"""

from __future__ import annotations

import atexit
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import redirect_stdout
from datetime import UTC, datetime
from functools import cache, partial
from pathlib import Path
from random import Random
from typing import Any

from measured_sheet import as_sheet
from school import school_of

from fireplace_calc import assess, change, load, save
from fireplace_calc.__main__ import main
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.classroom.class_book import class_papers_writing
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
from fireplace_calc.drawing.papers.casting_list import print_forms
from fireplace_calc.drawing.papers.full_papers import paper_set
from fireplace_calc.drawing.papers.one_sheet import check_sheet, hand_over
from fireplace_calc.drawing.papers.setting_cards import print_cards
from fireplace_calc.drawing.papers.site_book import write_book
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.designfile import load_words
from fireplace_calc.editing.jobs.history_file import read_history
from fireplace_calc.editing.kept_folder import KeptFolder
from fireplace_calc.editing.sets.measured_files import MeasuredFiles
from fireplace_calc.exports import write_dxf, write_spreadsheet
from fireplace_calc.exports.hand_over_files import write_hand_over
from fireplace_calc.exports.picture_files import write_pictures
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.casting.cutting import cut_into_pieces
from fireplace_calc.geometry.casting.wish import CastingWish
from fireplace_calc.panels.session import Session
from fireplace_calc.panels.setting.kept_record import AS_BUILT
from fireplace_calc.pieces.choice import choose
from fireplace_calc.pieces.measured.kept_words import read_sheet_text
from fireplace_calc.pieces.measured.sheet import put_head
from fireplace_calc.pieces.set_text import read_set
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop
from fireplace_calc.pieces.standing.as_built_file import as_built_text, read_as_built
from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.takeoff.cost import prices
from fuzzing.chance import ROOT
from fuzzing.designs import sure
from fuzzing.papers import whole

WHEN = datetime(2027, 5, 3, 10, 40, tzinfo=UTC)


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
    names = ("1", "2", "3")[: 2 if len(design.name) < 99 else 3]
    list(class_papers_writing(school_of(("hearth",), 2, "feet-inches", names), folder))


def _site_book(design: Design, folder: Path) -> None:
    sheets = [Sheet(200.0, 100.0) for _ in design.name[:40]]
    write_book(sheets, folder / "book.pdf", design.name, "book", "foot")


def _measured(folder: Path, turns: Iterator[Design]) -> Iterator[None]:
    """The sheet as it is typed and the set made from it: the maker's number of the set changes."""
    files, typed = MeasuredFiles(folder / "set.toml"), as_sheet()
    files.take_up()
    for number, _ in enumerate(turns):
        files.keep(put_head(typed, "name", "long " * (number % 2 * 200) + "set"))
        yield


def _as_built(folder: Path, turns: Iterator[Design]) -> Iterator[None]:
    kept = KeptFolder(folder, AS_BUILT.__eq__)
    kept.known = kept.look()
    for design in turns:
        tops = [MeasuredTop("flue", 0.1 * n, WHEN) for n in range(len(design.name) // 9)]
        kept.keep({AS_BUILT: as_built_text(AsBuilt(design.name[:40], tops=tuple(tops))).encode()})
        yield


def _set_of(design: Design) -> Design:
    small = {"pieces.set": "small", "flue.sections": 10, "name": design.name}
    return change(Design(), small)


@cache
def _cut() -> tuple[Any, str]:
    made = cut_into_pieces(two()[0], CastingWish(), "own")
    return as_wanted(choose(made.made, made.choice)), made.said


def _forms(design: Design, folder: Path) -> None:
    stood, said = _cut()
    print_forms(stood, folder / "forms.pdf", said * (1 + len(design.name) // 99))


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
    "measured set": (_measured, 0.3),
    "as built": (_as_built, 0.1),
    "check sheet": (_each(lambda d, f: list(check_sheet(assess(d), f / "check-sheet.pdf"))), 1.0),
    "forms": (_each(_forms), 0.5),
    "setting cards": (_each(lambda d, f: print_cards(_set_of(d), f / "cards.pdf")), 3.0),
    "pictures": (_each(lambda d, f: list(write_pictures(assess(d), f, "svg"))), 6.0),
    "client's pages": (_each(partial(_for_client, "pdf")), 6.0),
    "client's picture": (_each(partial(_for_client, "png")), 6.0),
}
"""What is done, and how long whoever does it over an old file may live. [s]"""

DEAR = ("client's pages", "client's picture")
"""A lit picture each: they have their turn every fifth time."""


def job_of(dice: Random, number: int) -> str:
    """Which job a try does: all of them, one after the other."""
    turn, which = divmod(number, len(JOBS))
    job = sorted(JOBS)[which]
    if job in DEAR and turn % 5:
        return dice.choice([name for name in sorted(JOBS) if name not in DEAR])
    return job


@cache
def old_files(job: str) -> Path:
    """A folder with the files of the first design, written once."""
    place = tempfile.mkdtemp(prefix="old-files-")
    atexit.register(shutil.rmtree, place, ignore_errors=True)
    next(JOBS[job][0](Path(place), iter(two()[:1])))
    return Path(place)


def held(path: Path) -> bool:
    """Whether a file is whole: one of the two designs, or the end of its kind."""
    if path.suffix != ".toml":
        return whole(path)
    readers: dict[str, Callable[[str], object]] = {
        "set.toml": read_set,
        "set-sheet.toml": read_sheet_text,
        AS_BUILT: read_as_built,
    }
    try:
        if path.name in readers:
            return bool(readers[path.name](path.read_text("utf-8")))
        if path.name == "reader.toml":
            return set(load_words(path)) == {"pack", "units"}
        if path.name == "history.toml":
            return read_history(path, lambda before, after: "", path.parent) is not None
        return load(path) in two()
    except InputError:
        return False


def all_held(folder: Path, job: str) -> bool:
    """Complain about half a file; whether a hidden one was left beside the others."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    beside = [path for path in files if path.name.startswith(".") and path.suffix == ".tmp"]
    for path in files:
        sure(path in beside or path.stat().st_size > 0, f"0 bytes left by {job}", path.name)
        sure(path in beside or held(path), f"half a file left by {job}", path.name)
    return bool(beside)
