"""What a mason can pull to mend a design: one table of levers, each with the smallest step he would
take.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from functools import lru_cache
from math import inf
from typing import Any

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import SI_UNIT, SQIN
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.geometry.bore import flue_bore

NEXT = "next"
"""Step of a lever that goes from one standard liner to the next by net area."""


@dataclass(frozen=True, slots=True)
class Lever:
    """Something that can be changed by steps.

    Attributes
    ----------
    key : str
        Dotted name of the input; ``surround.trim`` for the pieces round the opening.
    step : str
        Smallest step with its sign and unit, a count, a word to take instead, or ``NEXT``.
    words : str
        What is done, as an order.
    air : bool
        Whether it is pulled for the draft's sake. A hint where to look, never a verdict.
    bears : tuple of str
        For the sake of which loads it is pulled, by the clause of the structure's findings. Also a
        hint.
    most : int
        Steps that are tried. [-]
    takes : str
        What it takes that the order does not list; empty where the order holds all of it.
    serves : tuple of str
        How the keys begin that it is honestly for; empty where it is for any. Nobody raises a
        throat to make a chimney taller.
    """

    key: str
    step: str
    words: str
    air: bool = False
    bears: tuple[str, ...] = ()
    most: int = 24
    takes: str = ""
    serves: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Try:
    """One setting of a lever: number of steps [-], what to change, the value before and after, and
    the change over what was [-].
    """

    lever: Lever
    steps: int
    change: dict
    before: Any
    after: Any
    relative: float
    piece: str = ""


STACK = ("wind, code mode", "wind, cautious mode", "slenderness", "earthquake")
HEAD, FOOT = ("lintel", "arch"), ("footing",)
DUCT, FRAMING, JOINERY, BARS = (
    "duct and grille",
    "moved framing",
    "joiner's work",
    "bars, ties and straps",
)
LEVERS = (
    Lever("flue.sections", "+1", "Add flue sections", air=True, bears=STACK),
    Lever("flue.sections", "-1", "Leave out flue sections", bears=STACK),
    Lever("flue.size", "+" + NEXT, "Take a larger liner", air=True, bears=STACK, most=6),
    Lever("flue.size", "-" + NEXT, "Take a smaller liner", air=True, bears=STACK, most=6),
    Lever("flue.own_width", "+1/2 in", "Widen the flue", air=True, bears=STACK),
    Lever("flue.own_width", "-1/2 in", "Narrow the flue", air=True, bears=STACK),
    Lever("flue.offset", "-1/2 in", "Shift the flue less", air=True, bears=STACK),
    Lever("flue.offset_rise", "+2 in", "Shift the flue more gently"),
    Lever("opening.extension", "-1/2 in", "Raise the firebox less", air=True, most=48),
    Lever("opening.width", "-1 in", "Narrow the opening", air=True, bears=HEAD + FOOT),
    Lever("opening.standard_height", "-1 in", "Lower the opening", air=True),
    Lever("opening.rise", "+1/2 in", "Give the arch more rise", bears=HEAD),
    Lever("opening.rise", "-1/2 in", "Flatten the arch", bears=HEAD),
    Lever("throat.depth", "+1/2 in", "Deepen the throat", air=True),
    Lever(
        "throat.height",
        "+1/2 in",
        "Set the throat higher",
        serves=("THR", "SMK", "PRA", "CA-", "UK-"),
    ),
    Lever(
        "house.air_inlet", "+6 in2", "Give the fire more outdoor air", air=True, most=40, takes=DUCT
    ),
    Lever(
        "house.exhaust",
        "-5 L/s",
        "Let the fans draw less",
        air=True,
        most=40,
        takes="other fans, or a lock between fans and fire",
    ),
    Lever(
        "smoke_chamber.height",
        "+1 in",
        "Make the smoke chamber taller",
        serves=("THR", "SMK", "PRA", "CA-", "UK-"),
    ),
    Lever(
        "smoke_chamber.height",
        "-1 in",
        "Make the smoke chamber lower",
        serves=("THR", "SMK", "PRA", "CA-", "UK-"),
    ),
    Lever("smoke_chamber.wall", "+1/2 in", "Thicken the smoke chamber wall"),
    Lever("smoke_chamber.lining_thickness", "+1/8 in", "Thicken the smoke chamber lining"),
    Lever(
        "smoke_chamber.lining",
        "vitrified clay",
        "Line the smoke chamber with vitrified clay",
        takes="clay lining",
    ),
    Lever("firebox.depth", "+1/2 in", "Deepen the firebox"),
    Lever("firebox.wall", "+1/2 in", "Thicken the firebox wall"),
    Lever("firebox.jamb", "+1/2 in", "Widen the jambs", bears=HEAD),
    Lever("firebox.lining_thickness", "+1/4 in", "Thicken the lining"),
    Lever("firebox.joint", "-1/16 in", "Lay the firebrick with thinner joints"),
    Lever("firebox.floor", "+1/4 in", "Thicken the firebrick floor"),
    Lever("firebox.lining", "firebrick", "Line the firebox with firebrick"),
    Lever("firebox.masonry", "solid units", "Build with solid units"),
    Lever("lintel.bearing", "+1/2 in", "Let the lintel bear further", bears=HEAD),
    Lever("lintel.height", "+1/2 in", "Take a deeper lintel", bears=HEAD),
    Lever("lintel.thickness", "+1/16 in", "Take a thicker angle", bears=HEAD),
    Lever("lintel.material", "steel", "Take a steel lintel", bears=HEAD),
    Lever("hearth.front", "+1/2 in", "Bring the hearth further out in front", most=40),
    Lever("hearth.side", "+1/2 in", "Bring the hearth further out at the sides"),
    Lever("hearth.thickness", "+1/4 in", "Thicken the hearth extension"),
    Lever("base.slab", "+1/2 in", "Thicken the hearth slab"),
    Lever("hearth.material", "stone", "Lay the hearth extension in stone"),
    Lever(
        "hearth.support",
        "noncombustible",
        "Carry the hearth on what does not burn",
        takes="another support",
    ),
    Lever(
        "hearth.forms_removed",
        "yes",
        "Take the forms out from under the hearth",
        takes="a man under the hearth",
    ),
    Lever("chimney.wall", "+1/2 in", "Thicken the chimney wall", bears=STACK),
    Lever("chimney.gap", "-1/8 in", "Close the gap round the liner", bears=STACK),
    Lever("chimney.gap", "+1/8 in", "Open the gap round the liner", bears=STACK),
    Lever("chimney.liner_above", "+1/4 in", "Let the liner stand further out"),
    Lever("chimney.liner_above", "-1/4 in", "Let the liner stand less far out"),
    Lever("chimney.overhang", "+1/2 in", "Let the crown stand further out"),
    Lever("chimney.cap_material", "concrete", "Cast the crown in concrete"),
    Lever("chimney.drip", "yes", "Give the crown a drip edge"),
    Lever("chimney.bond_break", "yes", "Part the crown from the liner"),
    Lever("chimney.arrester", "no", "Leave out the spark arrester", air=True),
    Lever("chimney.rain_cap", "no", "Leave out the rain cap", air=True),
    Lever("flue.liner", "ASTM C315 clay", "Line the flue with clay"),
    Lever("clearance.front", "+1/4 in", "Leave more air in front", takes=FRAMING),
    Lever("clearance.side", "+1/4 in", "Leave more air beside", takes=FRAMING),
    Lever("clearance.back", "+1/4 in", "Leave more air behind", takes=FRAMING),
    Lever("clearance.chimney", "+1/4 in", "Leave more air round the chimney", takes=FRAMING),
    Lever("clearance.fill", "none", "Clear out the air space", takes="a hand in the air space"),
    Lever(
        "clearance.fireblock",
        "noncombustible",
        "Block the fire with what does not burn",
        takes="fireblock",
    ),
    Lever(
        "surround.trim", "+1/2 in", "Set trim that burns further from the opening", takes=JOINERY
    ),
    Lever("surround.trim", "-1/8 in", "Pull back", takes=JOINERY),
    Lever("base.footing_thickness", "+1 in", "Thicken the footing", bears=FOOT),
    Lever("base.footing_projection", "+1 in", "Widen the footing", bears=FOOT),
    Lever("base.footing_depth", "+2 in", "Found it deeper", takes="more digging"),
    Lever("roof.cricket", "yes", "Build a cricket behind the chimney", takes="roofer's work"),
    Lever("roof.cricket_height", "+1/4 in", "Raise the cricket", takes="roofer's work", most=48),
    Lever(
        "throat.damper_material",
        "ferrous",
        "Take a damper of iron or steel",
        takes="another damper",
    ),
    Lever(
        "loads.support",
        "+6 in",
        "Hold the chimney higher up",
        bears=STACK,
        most=40,
        takes="a tie that really holds it",
    ),
    Lever("anchorage.vertical_bars_no4", "+1", "Add upright bars", bears=STACK, takes=BARS),
    Lever("anchorage.tie_spacing_vertical", "-1 in", "Set the ties closer", takes=BARS),
    Lever("anchorage.strap_count", "+1", "Add straps at each level", takes=BARS),
    Lever(
        "anchorage.strap_embedment", "+1 in", "Run the straps further into the chimney", takes=BARS
    ),
    Lever("air.intake_screen_mesh", "-1/16 in", "Screen the air intake more finely", takes=DUCT),
    Lever("air.outlet_closable", "yes", "Make the air outlet close", takes=DUCT),
    Lever("air.ember_guard", "yes", "Guard the air outlet", takes=DUCT),
)
"""Everything that is tried; steps are our own habit. A figure measured on site is no lever, nor is
an answer nobody has given yet.
"""


def tries(design: Design, lever: Lever) -> list[list[Try]]:
    """Every setting of a lever in one design, by steps; a list for each thing it takes hold of.

    Parameters
    ----------
    design : Design
    lever : Lever

    Returns
    -------
    list of list of Try
        Empty where the design has nothing to take hold of, or does not know it.
    """
    if lever.key == "surround.trim":
        return _trim(design, lever)
    if lever.key == "flue.size":
        return [list(_liners(design, lever))]
    if lever.key == "flue.own_width":
        return [list(_own(design, lever))] if design.flue.size.strip().lower() == "own" else []
    group, name = lever.key.split(".")
    now = getattr(getattr(design, group), name)
    if now is None or lever.key == "opening.rise" and design.opening.head == "straight":
        return []
    return [list(_plain(lever, now))]


def _si(value: float, kind: str) -> str:
    return f"{value!r} {SI_UNIT[kind].replace('**', '')}".strip()


def _plain(lever: Lever, now: Any) -> Iterator[Try]:
    spec = all_inputs()[lever.key]
    if spec.kind in ("choice", "yes-no"):
        word = spec.read(lever.step)
        if word != now:
            yield Try(lever, 1, {lever.key: word}, now, word, 1.0)
        return
    step = int(lever.step) if spec.kind == "count" else to_si(lever.step, spec.kind)
    for k in range(1, lever.most + 1):
        value = now + k * step
        if not spec.low <= value <= spec.high:
            return
        yield Try(
            lever,
            k,
            {lever.key: value if spec.kind == "count" else _si(value, spec.kind)},
            now,
            value,
            abs(k * step / now) if now else inf,
        )


@lru_cache(maxsize=2)
def _by_area(shape: str) -> tuple:
    rows = round_liners() if shape == "round" else rectangular_liners()
    return tuple(sorted(rows.values(), key=lambda row: row.net_area))


def _liners(design: Design, lever: Lever) -> Iterator[Try]:
    area = flue_bore(design.flue).table_area
    if area is None:
        return
    larger = [row for row in _by_area(design.flue.shape) if row.net_area > area + SQIN / 2]
    smaller = [row for row in _by_area(design.flue.shape) if row.net_area < area - SQIN / 2][::-1]
    for k, row in enumerate((larger if lever.step[0] == "+" else smaller)[: lever.most], 1):
        yield Try(
            lever,
            k,
            {lever.key: row.size},
            design.flue.size,
            row.size,
            abs(row.net_area / area - 1),
        )


def _own(design: Design, lever: Lever) -> Iterator[Try]:
    flue, step = design.flue, to_si(lever.step, "length")
    for one in _plain(lever, flue.own_width):
        deep = (
            {}
            if flue.shape == "round"
            else {"flue.own_depth": _si(flue.own_depth + one.steps * step, "length")}
        )
        yield Try(lever, one.steps, one.change | deep, one.before, one.after, one.relative)


def _trim(design: Design, lever: Lever) -> list[list[Try]]:
    """All that burns set further off together, as a mantel is moved whole; or one piece pulled
    back.
    """
    pieces, step = design.surround.trim, to_si(lever.step, "length")
    burning = [n for n, piece in enumerate(pieces) if piece.combustible]
    if not burning:
        return []
    if step > 0:
        near = min(pieces[n].distance for n in burning)
        return [
            [
                Try(
                    lever,
                    k,
                    {
                        lever.key: _pieces(
                            pieces, "distance", {n: pieces[n].distance + k * step for n in burning}
                        )
                    },
                    near,
                    near + k * step,
                    k * step / near if near else inf,
                )
                for k in range(1, lever.most + 1)
            ]
        ]
    return [
        [
            Try(
                lever,
                k,
                {lever.key: _pieces(pieces, "projection", {n: pieces[n].projection + k * step})},
                pieces[n].projection,
                pieces[n].projection + k * step,
                -k * step / pieces[n].projection,
                pieces[n].name,
            )
            for k in range(1, lever.most + 1)
            if pieces[n].projection + k * step > 0
        ]
        for n in burning
    ]


def _pieces(pieces: tuple, field: str, to: dict[int, float]) -> tuple[dict, ...]:
    """The list of pieces as ``change`` reads it, some with one field set otherwise."""
    told = []
    for n, piece in enumerate(pieces):
        said = asdict(piece) | ({field: to[n]} if n in to else {})
        told.append(
            {
                name: _si(value, "length") if isinstance(value, float) else value
                for name, value in said.items()
            }
        )
    return tuple(told)
