"""The whole set of random designs and sets of pieces, looked at as a draughtsman would: no text across
anything, none too small, nothing off the frame, every string to scale; and the PDF measured back.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from random import Random

import numpy as np
from pypdf import PdfReader
from set_strategies import random_set
from test_pieces_random import designed
from test_set_out import read

from fireplace_calc import assess
from fireplace_calc.base.units import INCH, SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.plates.title_block import CAUTION
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.pdf import PdfBook
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.changes import all_inputs
from fuzzing.chance import chance, near, random_design, stepped, value
from fuzzing.chance import held as held_by
from fuzzing.designs import sure

CLEAR = 0.7
"""Air between letters and any line. [mm]"""
OFF = 0.2
"""How far a place of the PDF may lie from where its scale puts it. [mm]"""
POINT = 25.4 / 72


def of_a_set(dice: Random, seed: int) -> Design | None:
    """A design of a random set, with a few other inputs moved."""
    design = designed(replace(random_set(seed), lining=seed % 2, flues=12))
    if design is None:
        return None
    spec = all_inputs()
    for key in dice.sample(sorted(spec), dice.randint(1, 12)):
        moved = value(dice, spec[key], 0.5) if dice.random() < 0.5 else None
        try:
            moved = near(dice, spec[key], held_by(design, key)) if moved is None else moved
        except TypeError:
            continue
        design = stepped(design, {key: moved})
    return design


def random_work(seed: str, number: int) -> Design:
    """A random design; of every fourth number one of a random set of pieces."""
    dice = chance(seed, number)
    made = of_a_set(dice, number) if number % 4 == 3 else None
    return random_design(seed, number) if made is None else made


def off_the_frame(sheet: Sheet, size: str, units: str) -> Iterator[str]:
    """What lies outside the frame, but for the caution and the maker's line under it."""
    frame = paper(units, size).frame
    under = [label for label in sheet.labels if label.y < frame.bottom]
    for label in sheet.labels:
        left, low, right, top = label.extent
        if label in under and (label.text.startswith(CAUTION) or label is under[-1]):
            continue
        if left < frame.left or right > frame.right or low < frame.bottom or top > frame.top:
            yield f"text {label.text!r} off the frame"
    low, high = np.array((frame.left, frame.bottom)), np.array((frame.right, frame.top))
    for (weight, _), lines in sheet.lines.items():
        for line in lines:
            if weight != "frame" and ((line < low - 0.01) | (line > high + 0.01)).any():
                yield f"a {weight} line off the frame"


def _length(text: str) -> float:
    """A figure of a string; those of the roof are in meters on metric sheets. [m]"""
    meters = re.fullmatch(r"([\d.]+) m", text)
    return float(meters[1]) if meters else read(text)


def _mark(text: str) -> float:
    """The last mark of a figure. [m]"""
    return INCH / 16 if '"' in text else 0.01 if text.endswith(" m") else 1e-3


def out_of_scale(sheet: Sheet, units: str, only: float | None) -> Iterator[str]:
    """Figures of strings that no gap of theirs measures, at any scale that the sheet may have."""
    for string in sheet.measured:
        told = [n for n in sheet.labels[slice(*string.written)] if n.ink != "soft"]
        sized = [n.text for n in told if re.search(r"\d", n.text)]
        gaps = [b - a for a, b in pairwise(string.stops)]
        scales = [only] if only else list(SCALES[units])
        wrong = {
            denominator: [
                text
                for text in sized
                if min(abs(g - _length(text) * 1000 / denominator) for g in gaps)
                > OFF + _mark(text) * 1000 / denominator
            ]
            for denominator in scales
        }
        if all(wrong.values()):
            yield f"a string is at no scale: {min(wrong.values(), key=len)}"


def moved_in_pdf(sheets: list[tuple[str, Sheet]]) -> Iterator[str]:
    """Places of lines that the page's stream, read by another library, does not have."""
    file = io.BytesIO()
    book = PdfBook(file, "Sheets", "Test")
    for _, sheet in sheets:
        book.add(sheet)
    book.save()
    for (name, sheet), page in zip(sheets, PdfReader(file).pages, strict=True):
        wide, high = (float(n) * POINT for n in page.mediabox[2:])
        if abs(wide - sheet.width) > OFF or abs(high - sheet.height) > OFF:
            yield f"page of {wide:.1f} by {high:.1f} mm: {name}"
        stream = page.get_contents().get_data().decode("latin-1")
        found = re.findall(r"([-\d.]+) ([-\d.]+) [ml]\b", stream)
        there = np.unique(np.round(np.array(found, dtype=float) * POINT / OFF).astype(int), axis=0)
        cells = {(x, y) for x, y in there.tolist()}
        for (weight, _), lines in sheet.lines.items():
            places = np.round(np.concatenate(lines) / OFF).astype(int)
            for x, y in np.unique(places, axis=0).tolist():
                if not any((x + i, y + k) in cells for i in (0, -1, 1) for k in (0, -1, 1)):
                    yield f"a {weight} line is elsewhere in the PDF: {name}"
                    break


def faults(design: Design, units: str, size: str) -> list[str]:
    """Everything that a draughtsman would send back, each with the sheet it stands on."""
    plates = []
    bound = whole_set.bound

    def kept(made, *rest):
        plates.extend(made)
        return bound(made, *rest)

    whole_set.bound = kept
    try:
        sheets = whole_set.sheets(assess(design), units, size)
    finally:
        whole_set.bound = bound
    found = []
    for (name, sheet), plate in zip(sheets, plates, strict=True):
        found += [f"{name}: {told}" for told in collisions(sheet, CLEAR)]
        found += [f"{name}: {told}" for told in off_the_frame(sheet, size, units)]
        found += [f"{name}: {told}" for told in out_of_scale(sheet, units, plate.denominator)]
    return found + list(moved_in_pdf(sheets))


def sort_of(number: int) -> tuple[str, str]:
    """Units and paper of a number: all eight, one after the other."""
    return SYSTEMS[number // 4 % 2], sorted(PAPERS)[(number + number // 8) % 4]


def try_one(seed: str, number: int) -> str:
    """The set of one design on one paper."""
    units, size = sort_of(number)
    design = random_work(seed, number)
    try:
        found = faults(design, units, size)
    except InputError as wrong:
        raise AssertionError(f"no set of sheets: {wrong}") from wrong
    sure(not found, re.sub(r"[\d'\"/ ]{2,}", " ", found[0])[:50] if found else "", found[:4])
    return f"clean on {size}"
