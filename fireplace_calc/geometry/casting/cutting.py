"""A laid fireplace cut into pieces that somebody casts himself, as the text of a set's file.
[m, kg]
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from fireplace_calc.base.printing import length_text
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.geometry.casting.cast_lines import CastLines, refuse_uncut
from fireplace_calc.geometry.casting.cast_piece import CastPiece, SetWriter
from fireplace_calc.geometry.casting.over_the_lintel import chamber, flue, throat
from fireplace_calc.geometry.casting.round_the_fire import CastLift
from fireplace_calc.geometry.casting.under_the_throat import FireLifts, fire_lifts
from fireplace_calc.geometry.casting.wish import CastingWish
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.records import PieceSet
from fireplace_calc.pieces.set_text import read_set

UPRIGHT = (
    "The back stands upright to under a flat shelf, where the laid one leans; the throat is where"
    " it was."
)
FINE = 9
"""Decimals of a meter that a level keeps. [-]"""
MOST_REDUCERS = 6
"""Courses of the reducer that are tried while one would tip. [-]"""
EQUAL = "its pieces are of one height. Plan the joints for the level that is wanted."


@dataclass(frozen=True, slots=True)
class CastSet:
    """A fireplace cut into pieces.

    Attributes
    ----------
    text : str
        Of the set's file.
    made : PieceSet
        The same, read.
    choice : Choice
        Which of its lifts make the fireplace it was cut from.
    said : tuple of str
        What differs from that fireplace, one sentence each.
    levels : tuple of float, or None
        Opening height and flue top over the hearth, for the joints to be planned for; none where
        the pieces bring them by themselves. [m]
    """

    text: str
    made: PieceSet
    choice: Choice
    said: tuple[str, ...]
    levels: tuple[float, float] | None = None

    def changes(self, name: str) -> Mapping[str, str | int | None]:
        """What to change in the laid design, so that it stands on these pieces.

        Parameters
        ----------
        name : str
            Of the set's file, without ``.toml``.

        Returns
        -------
        mapping
            For ``change``: the pieces stand in the opening plane, without a facing, and the joints
            are planned for the levels of the laid design where equal pieces miss them. [m]
        """
        made: dict[str, str | int | None] = {
            "pieces.set": name,
            "pieces.facing": "0 in",
            "pieces.opening_wanted": None,
            "pieces.top_wanted": None,
            "flue.sections": self.choice.flues,
        }
        if self.levels is not None:
            keys = ("pieces.opening_wanted", "pieces.top_wanted")
            made |= {
                key: length_text(level, self.made.metric)
                for key, level in zip(keys, self.levels, strict=True)
            }
        return made


def cut_into_pieces(
    design: Design, wish: CastingWish | None = None, name: str = "Cast set"
) -> CastSet:
    """Cut a laid fireplace into pieces of at most a weight.

    Walls and back are as few and as equal courses as the heaviest piece lets them be; a base, a
    back, throat, shelf and reducer that stay too heavy are cut into strips, halves or quarters, a
    lintel into beams one behind the other. Upright joints of halves stand over each other: what is
    built round the pieces ties them.

    Every length of a piece is on the tape that was asked for. Read off the set, its joints as
    wanted, these agree with the design: opening width, back width and the run of the splay within
    two marks of that tape; depth, lines of throat and bore, bore and its middle within one; levels
    up to the flue's foot within two, and the flue's top within another half a mark for every flue
    piece. The back stands upright, where a laid one may lean. What differs by more stands in
    ``CastSet.said``.

    Parameters
    ----------
    design : Design
        Laid or in sections, straight head, one upright flue.
    wish : CastingWish, optional
        Weight, joints, thicknesses, tape; pieces of at most 60 kg when left out.
    name : str
        Of the set.

    Returns
    -------
    CastSet
        Its pieces meet (``geometry.assembled.fit`` finds nothing).

    Raises
    ------
    InputError
        When the design cannot be cut, a piece stays too heavy, or there is no room for one.
    """
    refuse_uncut(design)
    lines = CastLines(design, wish or CastingWish())
    fire = fire_lifts(lines)
    flues, count = flue(lines)
    choice = Choice(extensions=fire.extensions, flues=count)
    for fewest in range(1, MOST_REDUCERS + 1):
        text = _text(lines, (*fire.lifts, *_head(lines, fewest), flues), name)
        made = read_set(text)
        faults = fit(as_wanted(choose(made, choice)))
        if not any(fault.kind == "tips" for fault in faults):
            break
    if faults:
        raise InputError(
            f"Cut like this the pieces would not meet: {faults[0].says} Take other thicknesses, or"
            " another shape.",
            "design",
            "a fireplace whose pieces meet",
            None,
        )
    f = lines.frame
    off = count * (flues.pieces[0].height + lines.bed[1]) - lines.marks(f.liner_top - f.flue_start)
    over = (f.opening_top - f.hearth, f.liner_top - f.hearth)
    levels = (round(over[0], FINE), round(over[1], FINE)) if off or fire.off else None
    return CastSet(text, made, choice, tuple(_differs(lines, fire, count, off)), levels)


def _head(lines: CastLines, fewest: int) -> tuple[CastLift, ...]:
    """Throat, reducer and collar."""
    made = throat(lines)
    used = made.pieces[0].height + lines.bed[1]
    rise = lines.marks(lines.design.smoke_chamber.height) - used
    return (made, *chamber(lines, rise, fewest))


def _differs(lines: CastLines, fire: FireLifts, count: int, off: int) -> Iterator[str]:
    """What comes out otherwise than laid: one sentence each; ``off`` by how much the flue ends too
    high.
    """
    wish = lines.wish
    if lines.frame.lean > 0:
        yield UPRIGHT
    if fire.folded:
        low = wish.text(lines.marks(lines.design.opening.extension))
        yield f"The extension of {low} is too low for a course; the walls are cast higher."
    if fire.off:
        way = "lower" if fire.off > 0 else "higher"
        yield f"Joints as wanted, the opening is {wish.text(abs(fire.off))} {way}: {EQUAL}"
    if count != lines.design.flue.sections:
        yield f"The flue is {count} pieces in place of {lines.design.flue.sections} sections."
    if off:
        way = "higher" if off > 0 else "lower"
        yield f"Joints as wanted, the flue ends {wish.text(abs(off))} {way}: {EQUAL}"


def _text(lines: CastLines, lifts: Iterable[CastLift], name: str) -> str:
    """The set's file."""
    wish = lines.wish
    out = SetWriter(wish.metric)
    out.lines = [
        "# Cut from a laid fireplace, for somebody who casts his own pieces. Nobody has cast them.",
        "# Have an engineer look at the lintel's bars, and weigh the first piece of every mark.",
        "",
        f'name = "{name}"',
        f'note = "Pieces of at most {wish.most:g} kg by volume and density; none was weighed."',
        f'unit = "{"mm" if wish.metric else "in"}"',
        f"density = {wish.density:.1f}",
        f"bed = {out.numbers(lines.bed)}",
        f"perpend = {out.numbers(lines.perpend)}",
    ]
    if lines.lining:
        thick, joint, floor = (out.number(m) for m in lines.lining)
        told = (f"thickness = {thick}", f"joint = {joint}", f"floor = {floor}", 'after = ["N2"]')
        out.lines += ["", "[lining]", *told]
    seen: dict[str, CastPiece] = {}
    for lift in lifts:
        for one in lift.pieces:
            if one.mark not in seen:
                seen[one.mark] = one
                out.piece(one)
    for lift in lifts:
        headed = any(row.startswith("heads") for row in lift.rows)
        marks = [p.mark for p in lift.pieces]
        out.lift(lift.name, marks[:-1] if headed else marks, *lift.rows)
    return "\n".join(out.lines) + "\n"
