"""Papers and files of random designs and sets of pieces against each other: what is drawn, marked on
the rod, cut, ordered, written to the drawing file and summed in the spreadsheet is of one fireplace.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

import test_cutting
import test_dxf
import test_exports
import test_rods
import test_set_out

from fireplace_calc import assess
from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.plates.whole_set import sheets
from fireplace_calc.takeoff.cost import prices
from fuzzing.designs import Unsound
from fuzzing.sheets import random_work, sort_of


def dimensions(result: Assessment, units: str, size: str) -> None:
    """Front, section and plans drawn again from what is written on the set-out sheet."""
    test_set_out.drawn_again(result.geometry, units)


def rod(result: Assessment, units: str, size: str) -> None:
    """The rod against its own scale, the list of courses and the takeoff."""
    test_rods.rod_agrees(result, units, size)


def cuts(result: Assessment, units: str, size: str) -> None:
    """Cut list, layouts and takeoff, and the list as it is printed."""
    test_cutting.firebrick_agrees(result.geometry)
    test_cutting.block_agrees(result.geometry)
    test_cutting.order_agrees(result.geometry)
    made = [sheet for _, sheet in sheets(result, units, size, makers=test_cutting.MAKER)]
    test_cutting.printed_agrees(result.geometry, made)


def file(result: Assessment, units: str, size: str) -> None:
    """The drawing file, audited, measured and drawn again; figures of the sheets against it."""
    with TemporaryDirectory() as folder:
        test_dxf.file_agrees(result, units, Path(folder))


def sums(result: Assessment, units: str, size: str) -> None:
    """Stored values of the spreadsheet against another program's."""
    test_exports.worked_out(result, prices())


Check = Callable[[Assessment, str, str], None]
PAPERS: tuple[Check, ...] = (dimensions, rod, cuts)
"""On paper, quickly tried; a drawing file and a spreadsheet take a second each."""


def compared(checks: tuple[Check, ...], seed: str, number: int) -> str:
    """One design through some checks, in the units and on the paper of its number."""
    units, size = sort_of(number)
    design = random_work(seed, number)
    result = assess(design)
    found = []
    for check in checks:
        try:
            check(result, units, size)
        except AssertionError as wrong:
            found.append((check.__name__, " ".join(str(wrong).split())[:400] or repr(wrong)))
    if found:
        raise Unsound(f"{' and '.join(name for name, _ in found)} apart: {found}")
    return f"a set, {units}" if design.piece_set else f"no set, {units}"


def try_papers(seed: str, number: int) -> str:
    """Dimensions, rod, cut list, layouts and takeoff of one design."""
    return compared(PAPERS, seed, number)


def try_file(seed: str, number: int) -> str:
    """The drawing file of one design."""
    return compared((file,), seed, number)


def try_sums(seed: str, number: int) -> str:
    """The spreadsheet of one design."""
    return compared((sums,), seed, number)
