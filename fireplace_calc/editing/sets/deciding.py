"""What a set of pieces decides of a design, and how: read off, snapped, or left to choose. [m]"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from itertools import compress
from operator import ne
from typing import TYPE_CHECKING, Any

from fireplace_calc.base.inputs import Input, inputs_of
from fireplace_calc.base.printing import named
from fireplace_calc.base.record import all_at
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import InputError
from fireplace_calc.design.pieces import TakenSet
from fireplace_calc.design.records import Design

if TYPE_CHECKING:
    from fireplace_calc.geometry.from_set.set_up import SetUp
    from fireplace_calc.pieces.choice import Choice
    from fireplace_calc.pieces.records import PieceSet

SNAPPED = ("opening.width", "opening.extension", "opening.head", "flue.sections")
"""Inputs that a set offers in steps of its own: what is asked takes the nearest."""
OF_SETS = ("vertical_back", "rake")
"""Of the firebox, what only a set has so: a back that stands upright to under a flat shelf."""


TAPE, NOMINAL = 0.0008, 0.0127
"""Lengths that differ by half a sixteenth of an inch read alike; a size of the set is asked for by
its name, which may be a joint off. [m]
"""


def decided(design: Design) -> Mapping[str, Any]:
    """Every input that the set decides, by dotted key, in SI; empty without a set.

    Parameters
    ----------
    design : Design

    Returns
    -------
    mapping

    Raises
    ------
    InputError
        When the set cannot be built.
    """
    if design.piece_set is None:
        return {}
    from fireplace_calc.geometry.from_set.set_up import take

    return _decided(design.piece_set, design.pieces, take(design))


@lru_cache(maxsize=256)
def _decided(made: PieceSet, around: TakenSet, choice: Choice) -> Mapping[str, Any]:
    """Kept by content: most inputs of a design move no piece."""
    from fireplace_calc.geometry.from_set.set_up import raises_of, set_up_of

    up = set_up_of(made, around, choice)
    read, lining = up.read, made.lining
    raised = raises_of(made, choice.width, choice.head)[choice.extensions]
    height = read.opening_top - read.plate_top - up.floor
    wall = (2 * read.flue_half - read.bore_width) / 2
    liner = read.liner or wall / 2
    depth = up.set_back + up.depth
    thick = lining.thickness + lining.joint if lining else 0.0
    found: dict[str, Any] = {
        "method": "modular",
        "opening.width": 2 * up.half,
        "opening.standard_height": height - raised,
        "opening.extension": raised,
        "opening.head": choice.head,
        "lintel.material": _lintel(up.assembly),
        "lintel.height": read.lintel_height,
        "lintel.bearing": read.lintel_bearing,
        "firebox.depth": depth,
        "firebox.splay": read.splay,
        "firebox.back_width": 2 * up.half_back,
        "firebox.vertical_back": read.throat_bottom - read.plate_top - up.floor,
        "firebox.rake": depth - up.set_back - read.throat_back,
        "firebox.breast": up.breast,
        "firebox.jamb": read.half_over_all + around.around - up.half,
        "firebox.wall": around.around + min(read.deep_over_all - up.depth, read.wall + thick),
        "firebox.lining": "firebrick" if lining else "refractory section",
        "firebox.section_height": next(
            p.piece.height for p in up.assembly.placed if p.piece.role == "wall"
        ),
        "throat.height": read.throat_bottom - read.opening_top,
        "throat.depth": read.throat_back - read.throat_front,
        "smoke_chamber.height": read.head_top - read.throat_bottom,
        "smoke_chamber.wall": _chamber_wall(up, around),
        "smoke_chamber.construction": "prefabricated lining",
        "flue.shape": "round" if read.round else "rectangular",
        "flue.size": "own",
        "flue.own_width": read.bore_width,
        "flue.own_depth": read.bore_depth,
        "flue.own_wall": liner,
        "flue.section_height": read.flue_height,
        "flue.joint": read.flue_bed,
        "flue.sections": choice.flues,
        "flue.casing": wall - liner,
        "flue.offset": 0.0,
    }
    if lining:
        found |= {
            "firebox.lining_thickness": lining.thickness,
            "firebox.joint": lining.joint,
            "firebox.floor": lining.floor,
        }
    else:
        found |= {"firebox.lining_thickness": read.wall, "firebox.floor": read.plate}
    if choice.head == "segmental":
        found["opening.rise"] = read.rise
    if kind := next((p.liner_kind for p in up.assembly.counted if p.role == "flue"), ""):
        found["flue.liner"] = kind
    return found


def _chamber_wall(up: SetUp, around: TakenSet) -> float:
    """Reducer and the masonry that follows it in, where they are thinnest: at the sides and behind
    that is the foot. The gap between them is no masonry. [m]
    """
    half, back = up.read.chamber_foot
    aside = up.read.half_over_all - half
    behind = up.read.deep_over_all - back
    return min(min(aside, behind) + around.around, _front_wall(up, around.gap))


def _front_wall(up: SetUp, gap: float) -> float:
    """Least of the reducer's front with what stands before it, no masonry within the gap. [m]"""
    turns = list(up.read.reducer_front)
    edge = gap - up.set_back  # so far back there is room for masonry before the gap
    for (out_0, in_0), (out_1, in_1) in zip(turns, turns[1:], strict=False):
        if (out_0 - edge) * (out_1 - edge) < 0:
            share = (edge - out_0) / (out_1 - out_0)
            turns.append((edge, in_0 + share * (in_1 - in_0)))
    return min(max(outside - edge, 0.0) + inside - outside for outside, inside in turns)


def _lintel(assembly: Any) -> str | None:
    """Material of the set's lintel in the words of the input; unknown unless reinforced."""
    material = next(p.piece.material for p in assembly.placed if p.piece.role == "lintel")
    return "reinforced concrete" if material.startswith("reinforced") else None


def decide(design: Design) -> Design:
    """The design with what its set decides put in; a design without one as it is.

    Parameters
    ----------
    design : Design

    Raises
    ------
    InputError
        When the set decides what no design may hold.
    """
    found = decided(design)
    if not found:
        return design
    groups: dict[str, dict[str, Any]] = {}
    top: dict[str, Any] = {}
    held = all_at(*found)(design)
    for key in compress(found, map(ne, held, found.values())):
        group, dot, name = key.partition(".")
        (groups.setdefault(group, {}) if dot else top)[name or group] = found[key]
    try:
        for group, values in groups.items():
            top[group] = replace(getattr(design, group), **values)
    except InputError as wrong:
        raise InputError(
            f"The set {design.pieces.set} cannot be taken: {wrong}",
            wrong.name,
            wrong.allowed,
            wrong.received,
        ) from None
    if not found.keys() <= design.told:
        top["told"] = design.told | frozenset(found)
    return design.with_read(top) if top else design


def let_go(before: Design, after: Design) -> Design:
    """A design that has left its set: sizes stay, but nobody has told them, and the back is a
    mason's again.

    Parameters
    ----------
    before, after : Design
        With the set, and without.
    """
    firebox = after.firebox.with_read({n: inputs_of(after.firebox)[n].default for n in OF_SETS})
    return after.with_read({"firebox": firebox, "told": after.told - frozenset(decided(before))})


def refuse_decided(before: Design, asked: Mapping[str, tuple[Input, Any, Any]]) -> None:
    """Refuse to change what the set decides, unless it is offered in steps.

    Parameters
    ----------
    before : Design
        As it was.
    asked : mapping
        By dotted key: the input, what it is, and what it was to be.

    Raises
    ------
    InputError
        One sentence: what the set says, and how to choose oneself.
    """
    locked = decided(before)
    for key, (spec, held, wanted) in asked.items():
        if key not in locked or key in SNAPPED:
            continue
        if not _same(held, wanted, ROUNDING * max(abs(held), 1.0) if _number(held) else 0.0):
            says, name = _words(held, spec), before.pieces.set
            raise InputError(
                f"{spec.label} is {says} by the pieces of the set {name}; take another set, or"
                " none, to choose it yourself.",
                spec.label,
                f"{says}, as the set has it",
                wanted,
            )


def overruled(taken: Design, asked: Mapping[str, tuple[Input, Any, Any]]) -> tuple[str, ...]:
    """What a file says otherwise than the set it names, beyond a nominal size and a tape's mark.

    Parameters
    ----------
    taken : Design
        As its set decides.
    asked : mapping
        By dotted key: the input, what it is, and what the file says.

    Returns
    -------
    tuple of str
        One sentence each.
    """
    locked = decided(taken)
    return tuple(
        f"{spec.label} is {_words(wanted, spec)} in the file, but the pieces of the set"
        f" {taken.pieces.set} make it {_words(held, spec)}."
        for key, (spec, held, wanted) in asked.items()
        if key in locked and wanted is not None and not _same(held, wanted, _give(key, spec))
    )


def _give(key: str, spec: Input) -> float:
    return 0.0 if spec.kind != "length" else NOMINAL if key in SNAPPED else TAPE


def _number(value: Any) -> bool:
    return isinstance(value, float | int)


def _same(held: Any, wanted: Any, within: float) -> bool:
    if _number(held) and _number(wanted):
        return bool(abs(held - wanted) <= within)
    return bool(held == wanted)


def _words(value: Any, spec: Input) -> str:
    if value is None:
        return "unknown"
    return value if isinstance(value, str) else named(value, spec.kind)
