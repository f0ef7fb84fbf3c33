"""A set of one's own, measured: what stands on the pallet is typed piece by piece, and drawn."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from typing import Any

import ipywidgets as w

from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.composed.compose import WHOLE as SHEET
from fireplace_calc.drawing.pieces.measured_picture import measured_view
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.editing.sets.measured_files import MeasuredFiles
from fireplace_calc.editing.sets.so_far import fit_so_far
from fireplace_calc.geometry.assembled.fitting import Misfit
from fireplace_calc.panels.measuring.measuring_page import MeasuringPage
from fireplace_calc.panels.measuring.telling import WHOLE, fields_of, of_mark, rows_of
from fireplace_calc.panels.picture.board import Board
from fireplace_calc.pieces.measured.lifts import lifts_of, still_missing
from fireplace_calc.pieces.measured.reading import read_sheet
from fireplace_calc.pieces.measured.sheet import (
    HEAD,
    MORE,
    MeasuredSheet,
    begun,
    keys_of,
    other_hand,
    put,
    put_head,
    without,
)
from fireplace_calc.pieces.measured.sketch import sketch_of
from fireplace_calc.pieces.measured.told import ReadSheet
from fireplace_calc.pieces.set_text import MOST_PIECES

MARGIN = 4.0
"""Round the picture. [mm]"""
LONGEST = 2000
"""Letters that are taken from a field. [-]"""


class MeasureSet:
    """A sheet to enter a set on; every field is kept in the folder as soon as it is left.

    Parameters
    ----------
    path : str or path
        Of the set file; the sheet is kept beside it.

    Raises
    ------
    InputError
        For a name that no design could ask for.

    Attributes
    ----------
    sheet : MeasuredSheet
        As it stands.
    number : int
        Of the piece that is open; ``WHOLE`` for what is told once. [-]
    page : MeasuringPage
    """

    def __init__(self, path: str | os.PathLike[str] = "my-set.toml") -> None:
        self.files = MeasuredFiles(path)
        self.sheet, self.kept = self.files.take_up()
        self.more = self.pressed = False
        self.asked, self.remark = "", ""
        self._known: tuple[MeasuredSheet, ReadSheet] | None = None
        self.page = MeasuringPage()
        self.board = Board(self.page)
        self.heard = 0
        self.ask: dict[str, Any] = {"key": "", "serial": 0}
        self.widget = w.VBox([self.page])
        self.page.on_msg(lambda _, content, __: self.hear(content))
        read = self.read()
        self.number = WHOLE if read.head.missing or read.head.wrong else len(read.told) - 1
        self.show()

    def read(self) -> ReadSheet:
        """The sheet as it reads, worked out once for each state of it."""
        if self._known is None or self._known[0] is not self.sheet:
            self._known = self.sheet, read_sheet(self.sheet)
        return self._known[1]

    # ---- what comes from the page ----

    def hear(self, told: Mapping[str, Any]) -> None:
        """Take one message; what is refused is said, and nothing that was typed is lost.

        Parameters
        ----------
        told : mapping
            ``do`` what, for which ``id``, with which ``key`` and ``text``.
        """
        if "dark" in told:
            self.board.set_theme("dark" if told["dark"] else "light")
        acts: dict[str, Callable[[Mapping[str, Any]], None]] = {
            "put": self._put,
            "at": self._at,
            "done": lambda _: self._done(),
            "new": lambda _: self._like(),
            "hand": self._hand,
            "open": self._open,
            "drop": lambda _: self._drop(),
            "more": lambda _: self._more(),
        }
        self.remark, self.heard = "", told.get("count", 0)
        try:
            acts.get(str(told.get("do")), lambda _: None)(told)
        except InputError as wrong:
            self.remark = str(wrong)
            self._ask(self.asked or "mark")
        self.show()

    def _put(self, told: Mapping[str, Any]) -> None:
        key, text = str(told.get("key")), str(told.get("text", ""))[:LONGEST]
        text = "".join(c for c in text if c.isprintable())
        if told.get("id") != self._id() or key not in self._keys():
            return  # of a piece that has been left meanwhile
        if self.number == WHOLE:
            metric = self.sheet.metric
            self._keep(put_head(self.sheet, key, text))
            if self.sheet.metric != metric and self.sheet.entries:
                unit = "inches and pounds" if metric else "millimeters and kilograms"
                self.remark = f"Every bare number on the sheet is now read in {unit}."
        else:
            self._keep(put(self.sheet, self.number, key, text))
        self.asked = str(told.get("next") or self.asked)

    def _at(self, told: Mapping[str, Any]) -> None:
        if told.get("id") == self._id():
            self.asked = str(told.get("key"))

    def _done(self) -> None:
        read = self.read()
        told = read.head if self.number == WHOLE else read.told[self.number]
        open_to = [key for key in self._keys() if key in told.missing or key in told.wrong]
        if open_to:
            self.pressed = True
            self._ask(open_to[0])
            return
        self._begin(self.number if self.number != WHOLE else None)

    def _begin(self, after: int | None) -> None:
        """Go to a new piece: the one that is begun already, or a copy of the last."""
        last = len(self.sheet.entries) - 1
        fresh = bool(self.sheet.entries) and "mark" not in self.sheet.entries[last]
        if not fresh or after == last:
            if len(self.sheet.entries) >= MOST_PIECES:
                words = f"A set has at most {MOST_PIECES} pieces."
                raise InputError(words, "piece", str(MOST_PIECES), len(self.sheet.entries))
            self._keep(begun(self.sheet))
        self._go(len(self.sheet.entries) - 1)

    def _like(self) -> None:
        """Go to a new piece that begins as a copy of the one that is open."""
        number, last = self.number, len(self.sheet.entries) - 1
        fresh = "mark" not in self.sheet.entries[last]
        if number in (WHOLE, last):
            self._begin(None)
            return
        kept = self.sheet.entries[: last if fresh else last + 1]
        self._keep(begun(MeasuredSheet(self.sheet.head, kept), number))
        self._go(len(self.sheet.entries) - 1)

    def _hand(self, told: Mapping[str, Any]) -> None:
        """The other hand of the piece that is open, or of the one before a new one."""
        if self.number == WHOLE:
            return
        sheet, number, last = self.sheet, self.number, len(self.sheet.entries) - 1
        if number == last and "mark" not in sheet.entries[number]:
            if not number:
                words = "There is no piece yet to be the other hand of."
                raise InputError(words, "mark", "a piece", "")
            sheet, number = MeasuredSheet(sheet.head, sheet.entries[:-1]), number - 1
        mark = str(told.get("mark") or "").strip()[:LONGEST]
        self._keep(other_hand(sheet, number, mark))
        if "mark" in self.sheet.entries[-1]:
            self._begin(len(self.sheet.entries) - 1)
        else:
            self._go(len(self.sheet.entries) - 1)

    def _open(self, told: Mapping[str, Any]) -> None:
        number = told.get("number")
        if isinstance(number, int) and WHOLE <= number < len(self.sheet.entries):
            self._go(number)

    def _drop(self) -> None:
        if self.number != WHOLE:
            left = without(self.sheet, self.number)
            self._keep(left if left.entries else begun(left))
            self._go(min(self.number, len(self.sheet.entries) - 1))

    def _more(self) -> None:
        self.more = not self.more
        self._ask(next(iter(MORE)) if self.more else "mark")

    def _go(self, number: int) -> None:
        self.number, self.pressed = number, False
        told = () if number == WHOLE else self.sheet.entries[number]
        self.more = any(key in told for key in MORE)
        self._ask(self._keys()[0])

    def _ask(self, key: str) -> None:
        self.asked = key
        self.ask = {"key": key, "serial": self.ask["serial"] + 1}

    def _keep(self, sheet: MeasuredSheet) -> None:
        self.sheet = sheet
        try:
            self.kept = self.files.keep(sheet)
        except InputError as trouble:
            self.kept = f"Not kept: {trouble}"

    # ---- what the page shows ----

    def _id(self) -> str:
        return f"{self.number} of {len(self.sheet.entries)}"

    def _keys(self) -> tuple[str, ...]:
        if self.number == WHOLE:
            return tuple(HEAD)
        return keys_of(self.sheet, self.sheet.entries[self.number], self.more)

    def show(self) -> None:
        """Bring the page up to the sheet."""
        read = self.read()
        lifts = lifts_of(read)
        missing = still_missing(read, lifts)
        units = MILLIMETRES if self.sheet.metric else FEET_INCHES
        misfits = fit_so_far(lifts, not missing, units)
        fields = fields_of(self.sheet, read, self.number, self.more, self.pressed)
        whole = self.number == WHOLE
        self._draw(units)
        self.page.shown = {
            "id": self._id(),
            "whole": whole,
            "more": self.more,
            "ask": self.ask,
            "heard": self.heard,
            "title": "The set as a whole" if whole else f"Piece {self.number + 1}",
            "fields": fields,
            "said": self._said(read.head.wrong if whole else read.told[self.number].wrong, misfits),
            "rows": rows_of(self.sheet, read, misfits, self.number),
            "misfits": [*missing, *(m.says for m in misfits)] or ["Everything meets."],
            "kept": self.kept,
        }

    def _said(self, wrong: Mapping[str, str], misfits: tuple[Misfit, ...]) -> list[str]:
        mark = "" if self.number == WHOLE else self.sheet.entries[self.number].get("mark", "")
        said = [self.remark, wrong.get("", ""), *(m.says for m in of_mark(misfits, mark))]
        return [words for words in said if words]

    def _draw(self, units: str) -> None:
        sheet = Sheet(WIDTH, HEIGHT)
        sketch = None
        if self.number != WHOLE:
            sketch = sketch_of(self.sheet, self.number, self.asked)
        if sketch is not None:
            cell = Cell(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN)
            measured_view(sheet, cell, sketch, self._beside(), self.asked, units)
        self.board.show([(SHEET, sheet)])
        self.page.seen = sketch.words() if sketch is not None else "No piece is open."

    def _beside(self) -> list[Any]:
        """Pieces that stand in the first lift of the one that is open."""
        read = self.read()
        here = read.told[self.number]
        first = here.lifts[:1]
        return [
            t.piece
            for t in read.told
            if t is not here and t.piece is not None and first and first[0] in t.lifts
        ]

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        return {**self.widget._repr_mimebundle_(**kwargs), "text/plain": str(self)}

    def __str__(self) -> str:
        count, kept = len(self.sheet.entries), self.files.sheet.name
        return f"A sheet of {count} {'piece' if count == 1 else 'pieces'}, kept in {kept}"
