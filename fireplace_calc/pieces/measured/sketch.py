"""A piece as far as it has been typed: what is not told yet is drawn at a size that is invented."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial
from typing import Any

from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.pieces.measured.form import Form, Shaped, Span
from fireplace_calc.pieces.measured.hollow_forms import FORMS
from fireplace_calc.pieces.measured.reading import read_lengths
from fireplace_calc.pieces.measured.sheet import Entry, MeasuredSheet, source_of
from fireplace_calc.pieces.measured.told import Told, plain, unit_of_sheet
from fireplace_calc.pieces.measured.typed import read_length
from fireplace_calc.pieces.piece_text import Defaults, read_piece
from fireplace_calc.pieces.records import JointRange, SetPiece
from fireplace_calc.pieces.shape_text import mirrored

WHOLE = Defaults(JointRange(0.0, 0.0, 0.1), JointRange(0.0, 0.0, 0.1), 2000.0)
"""What a sketch needs to be a piece at all; nothing of it is drawn."""
MARK = "sketch"
CORNERS = ((0, 0), (9, 0), (5, 23), (0, 23))
"""An outline that is drawn while none is typed; in inches, invented."""


@dataclass(frozen=True, slots=True)
class SketchedLength:
    """One length on the drawing.

    Attributes
    ----------
    key, words : str
        Its letter, and what was typed; empty where nothing was.
    view, edge : str
        As in ``Span``.
    low, high : float
        [m]
    """

    key: str
    words: str
    view: str
    edge: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class PieceSketch:
    """A piece to draw.

    Attributes
    ----------
    piece : SetPiece
        Its middle on the center line, its front at the front.
    placed : SetPiece
        Where it stands.
    lengths : tuple of SketchedLength
    place : tuple of str
        What was typed for X and Y.
    guessed : bool
        Whether a length that is drawn is not told yet.
    says : str
        Why what was typed cannot be drawn; empty where it can.
    """

    piece: SetPiece
    placed: SetPiece
    lengths: tuple[SketchedLength, ...]
    place: tuple[str, str]
    guessed: bool
    says: str

    def words(self) -> str:
        """The drawing in words, for whoever cannot see it."""
        told = ", ".join(f"{one.key} {one.words or 'not told yet'}" for one in self.lengths)
        return f"The piece from the front, from its right side and from above: {told}."


def sketch_of(sheet: MeasuredSheet, number: int, asked: str = "") -> PieceSketch | None:
    """A piece of a sheet, as far as it has been typed.

    Parameters
    ----------
    sheet : MeasuredSheet
    number : int
        Of the entry, from nought. [-]
    asked : str
        Letter of the length that is being typed: drawn although it may stay empty.

    Returns
    -------
    PieceSketch or None
        None without a form.
    """
    entry = sheet.entries[number]
    source = source_of(sheet, entry)
    form = FORMS.get(source.get("form", ""))
    if form is None:
        return None
    unit = unit_of_sheet(sheet)
    typed = dict(read_lengths(Told(""), form, source, unit))
    says = ""
    try:
        shaped = form.shape(_filled(form, typed, unit, asked))
        alone = _standing(shaped, -shaped.width / 2, Fraction(0), unit)
    except InputError as wrong:
        says = str(wrong).removeprefix(f"Piece {MARK}, ")
        shaped = form.shape(_filled(form, {}, unit, asked))
        alone = _standing(shaped, -shaped.width / 2, Fraction(0), unit)
    across, back = _place(source, unit)
    placed = _standing(shaped, -shaped.width / 2 if across is None else across, back, unit)
    half = float(shaped.width) * unit / 2
    lengths = tuple(_length(span, source, unit, half) for span in shaped.spans)
    if "mirror" in entry:
        lengths = tuple(map(_other_length, lengths))
        alone, placed = _other(alone), _other(placed)
    lacking = any(not d.optional and d.key not in typed for d in form.dims)
    place = source.get("X", ""), source.get("Y", "")
    return PieceSketch(alone, placed, lengths, place, lacking or bool(says), says)


def _filled(form: Form, typed: dict[str, Any], unit: float, asked: str) -> dict[str, Any]:
    """Lengths that are typed, and the others in proportion to the width or depth that is. What may
    stay empty is drawn while it is asked for, and while nothing at all is typed.
    """
    worth = Fraction(1) if unit == INCH else Fraction(254, 10)
    shown = {d.key for d in form.dims if not d.optional or not typed or d.key == asked}
    usual = {d.key: d.typical * worth for d in form.dims if d.typical}
    ratios = [typed[k] / usual[k] for k in ("A", "B") if k in typed and usual.get(k)]
    scale = min(ratios, default=Fraction(1))
    sized = {key: size * scale for key, size in usual.items()}
    values: dict[str, Any] = {key: sized[key] for key in sized if key in shown}
    if any(d.corners for d in form.dims):
        values["A"] = [(Fraction(x) * worth, Fraction(y) * worth) for x, y in CORNERS]
    values |= typed
    try:
        form.shape(values)
    except InputError as wrong:
        if asked and wrong.name in sized.keys() - values.keys():
            values[wrong.name] = sized[wrong.name]  # one that belongs to what is asked for
    return values


def _standing(shaped: Shaped, across: Fraction, back: Fraction, unit: float) -> SetPiece:
    """The piece with its left front corner there, from the center line and from the front."""
    at = [across - shaped.left, back - shaped.front]
    place = {} if "arch" in shaped.table else {"at": at}  # an arch has but one place
    table = {"mark": MARK, "role": "wall", **shaped.table, **place}
    _, piece = read_piece(plain(table), {}, WHOLE, unit)
    return piece


def _place(entry: Entry, unit: float) -> tuple[Fraction | None, Fraction]:
    """X and Y as far as they can be read; without X it stands on the center line."""
    told = Told("")
    found = [
        told.take(key, partial(read_length, entry.get(key, ""), unit, key, key, -1))
        for key in ("X", "Y")
    ]
    return found[0], found[1] or Fraction(0)


def _length(span: Span, entry: Entry, unit: float, half: float) -> SketchedLength:
    aside = half if span.edge in ("below", "above") and span.view != "side" else 0.0
    low, high = (float(end) * unit - aside for end in (span.low, span.high))
    return SketchedLength(span.key, entry.get(span.key, ""), span.view, span.edge, low, high)


def _other_length(one: SketchedLength) -> SketchedLength:
    """A length of the other hand: seen from the side, both hands are drawn alike."""
    if one.view == "side":
        return one
    if one.edge in ("below", "above"):
        return replace(one, low=-one.high, high=-one.low)
    return replace(one, edge="right" if one.edge == "left" else "left")


def _other(piece: SetPiece) -> SetPiece:
    adds, cuts = (tuple(mirrored(s) for s in shapes) for shapes in (piece.adds, piece.cuts))
    return replace(piece, adds=adds, cuts=cuts, plain=None)
