"""Random sets of pieces, valid by construction: the text of a set's file, and what stands.

``random_set(seed)`` draws one from a seed, ``set_recipes()`` is the same for hypothesis, ``text(recipe)``
writes the file of either, ``stood(recipe)`` reads it, settles its choices and stands it up. A recipe
counts lengths in sixteenths of an inch; a metric set takes 1.5 mm for each, so that every number of
the file is short. All pieces of a recipe meet: ``geometry.assembled.fit`` finds nothing. Change one
field to break it on purpose.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, fields

from hypothesis import strategies as st

from fireplace_calc.geometry.assembled.assembly import Assembly, as_wanted
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.records import PieceSet
from fireplace_calc.pieces.set_text import read_set

IN = 16

RANGES: dict[str, tuple[int, int]] = {
    "metric": (0, 1),
    "half": (13 * IN, 28 * IN),
    "lip_at": (14 * IN, 24 * IN),
    "splay": (0, 30),
    "rebate": (0, 2 * IN),
    "front": (4 * IN, 7 * IN),
    "rear": (3 * IN, 6 * IN),
    "left_more": (0, 2 * IN),
    "back": (2 * IN, 4 * IN),
    "joint": (3, 6),
    "bed": (5, 9),
    "plates": (1, 2),
    "plate": (2 * IN, 5 * IN),
    "courses": (1, 5),
    "course": (6 * IN, 14 * IN),
    "extensions": (0, 3),
    "extension": (3 * IN, 8 * IN),
    "top": (7 * IN, 12 * IN),
    "lintel": (4 * IN, 6 * IN),
    "arch": (0, 4),
    "throats": (1, 3),
    "throat": (3 * IN, 8 * IN),
    "slot": (3 * IN, 6 * IN),
    "trough": (0, 1),
    "reducers": (1, 2),
    "reducer": (10 * IN, 24 * IN),
    "bore": (7 * IN, 11 * IN),
    "round": (0, 1),
    "nest": (0, IN),
    "flue": (6 * IN, 24 * IN),
    "flues": (1, 12),
    "lining": (0, 1),
    "weighed": (0, 1),
    "uneven": (0, 3),
}
"""Least and most of every field. Lengths in sixteenths, counts and switches as they are."""


@dataclass(frozen=True)
class SetRecipe:
    """What a random set is made of.

    ``half`` is half the opening between the pieces, ``lip_at`` how far back the walls' rebate
    begins, ``splay`` what a side closes in, in hundredths of that; ``rebate`` how far the back
    stands behind the walls' lips (under an inch it stands whole behind the walls), ``left_more`` how
    much thicker the left wall is, ``nest`` the tongue of a flue piece (none: it only stands),
    ``arch`` rise of the lintel in inches (none: straight), ``trough`` a hollow in the shelf,
    ``uneven`` how much higher the backs are than the walls beside them, on a thinner bed.
    """

    metric: int
    half: int
    lip_at: int
    splay: int
    rebate: int
    front: int
    rear: int
    left_more: int
    back: int
    joint: int
    bed: int
    plates: int
    plate: int
    courses: int
    course: int
    extensions: int
    extension: int
    top: int
    lintel: int
    arch: int
    throats: int
    throat: int
    slot: int
    trough: int
    reducers: int
    reducer: int
    bore: int
    round: int
    nest: int
    flue: int
    flues: int
    lining: int
    weighed: int
    uneven: int


assert tuple(f.name for f in fields(SetRecipe)) == tuple(RANGES)


def random_set(seed: int) -> SetRecipe:
    """A recipe from a seed, the same every time."""
    draw = random.Random(seed)
    return SetRecipe(**{name: draw.randint(*ends) for name, ends in RANGES.items()})


def set_recipes() -> st.SearchStrategy[SetRecipe]:
    """Recipes for hypothesis, each field between its ends."""
    return st.builds(SetRecipe, **{name: st.integers(*ends) for name, ends in RANGES.items()})


def made(recipe: SetRecipe) -> PieceSet:
    """The set of a recipe, read from its text."""
    return read_set(text(recipe))


def stood(recipe: SetRecipe) -> Assembly:
    """The set as it stands, every extension and every flue piece taken, each joint as wanted."""
    choice = Choice(extensions=recipe.extensions, flues=recipe.flues)
    return as_wanted(choose(made(recipe), choice))


class _Writer:
    """Tables of a set's file, lengths in the recipe's grid."""

    def __init__(self, recipe: SetRecipe) -> None:
        self.metric = bool(recipe.metric)
        self.lines: list[str] = []

    def size(self, grid: float) -> str:
        return f"{round(grid * (1.5 if self.metric else 1 / IN), 6):g}"

    def ring(self, corners: list[tuple[float, float]]) -> str:
        return "[" + ", ".join(f"[{self.size(x)}, {self.size(y)}]" for x, y in corners) + "]"

    def piece(self, mark: str, role: str, height: float, *rows: str, **rings: object) -> None:
        self.lines += ["", "[[piece]]", f'mark = "{mark}"', f'role = "{role}"']
        self.lines += [f"{name} = {self.ring(ring)}" for name, ring in rings.items()]  # type: ignore[arg-type]
        self.lines += [f"height = {self.size(height)}", *rows]

    def lift(self, name: str, *marks: str, more: str = "") -> None:
        held = ", ".join(f'"{m}"' for m in marks)
        self.lines += ["", "[[lift]]", f'name = "{name}"', f"pieces = [{held}]"]
        if more:
            self.lines.append(more)


def _box(x0: float, x1: float, y0: float, y1: float) -> list[tuple[float, float]]:
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def _flipped(ring: list[tuple[float, float]]) -> list[tuple[float, float]]:
    return [(-x, y) for x, y in reversed(ring)]


def _round_the_fire(w: _Writer, r: SetRecipe) -> tuple[float, float]:
    """Walls, backs, extensions, top walls and lintel; gives half the width over all and the depth."""
    g, kept = r.joint, r.rebate >= IN
    run = r.splay / 100 * r.lip_at
    corner = r.half - run
    deep = r.lip_at + g + r.back
    edge = corner + r.rebate if kept else corner
    set_back = r.lintel + g

    def inner(y: float) -> float:
        return r.half - run * y / r.lip_at

    def wall(start: float, more: float) -> list[tuple[float, float]]:
        end = deep if kept else r.lip_at
        full = r.half + r.front + more
        outer = [(full, start)] if start else [(full, 0.0), (full, set_back)]
        outer.append((edge + r.rear + more, end))
        if not kept:
            return [(inner(start), start), *outer, (corner, end)]
        tail = [(edge, end), (edge, r.lip_at), (corner, r.lip_at)]
        return [(inner(start), start), *outer, *tail]

    half_back = edge - g if kept else corner + r.rear
    back = _box(-half_back, half_back, r.lip_at + g, deep)
    weighed = ["weight = 31.5"] if r.weighed else []
    for first, role, high, start in (
        ("W", "", r.course, 0.0),
        *((("X", "extension ", r.extension, 0.0),) if r.extensions else ()),
        ("T", "top ", r.top, set_back),
    ):
        right = wall(start, 0.0)
        w.piece(f"{first}R", f"{role}wall", high, outline=right)
        if r.left_more:
            w.piece(f"{first}L", f"{role}wall", high, outline=_flipped(wall(start, r.left_more)))
        else:
            w.lines += ["", "[[piece]]", f'mark = "{first}L"', f'mirror = "{first}R"']
        w.piece(f"{first}B", f"{role}back", high + r.uneven, *weighed, outline=back)
    reach = r.half + r.front
    after = ['after = ["lining"]'] if r.lining else []
    if r.arch:
        size = {"span": 2 * r.half, "rise": r.arch * IN, "width": 2 * reach, "depth": r.lintel}
        told = ", ".join(f"{name} = {w.size(v)}" for name, v in size.items())
        w.piece("LS", "lintel", r.top, f"arch = {{ {told} }}", *after)
    else:
        w.piece("LS", "lintel", r.top, *after, outline=_box(-reach, reach, 0, r.lintel))
    return max(reach, edge + r.rear) + r.left_more, deep


def _head(w: _Writer, r: SetRecipe, reach: float, deep: float) -> tuple[list[str], list[str]]:
    """Throat, shelf and reducer; gives the marks of both lifts."""
    g, after = r.joint, ['after = ["lining"]'] if r.lining else []
    clear = max(r.half - 2 * IN - r.splay / 100 * r.lip_at, 5 * IN)
    rear = r.lintel + g + r.slot
    if r.throats == 1:
        told = f"cut = [{{ outline = {w.ring(_box(-clear, clear, r.lintel, rear))} }}]"
        w.piece("N", "throat back", r.throat, told, outline=_box(-reach, reach, 0, deep))
        throat = ["N"]
    else:
        end = deep if r.throats == 2 else rear + 3 * IN
        if r.throats == 3 and abs(end - r.lip_at) < 3 * g:
            end = r.lip_at - 3 * g  # two joints in one line, one over the other, do not close
        outline = [
            (-reach, r.lintel + g),
            (-clear, r.lintel + g),
            (-clear, rear),
            (clear, rear),
            (clear, r.lintel + g),
            (reach, r.lintel + g),
            (reach, end),
            (-reach, end),
        ]
        w.piece("NB", "throat back", r.throat, outline=outline)
        w.piece("NF", "throat front", r.throat, *after, outline=_box(-reach, reach, 0, r.lintel))
        throat = ["NB", "NF"]
        if r.throats == 3:
            told = []
            if r.trough and deep - end - g > 4 * IN:
                hollow = w.ring(_box(-clear, clear, end + g + IN, deep - 2 * IN))
                top, foot = w.size(r.throat), w.size(r.throat - IN)
                told = [f"cut = [{{ outline = {hollow}, from = {foot}, to = {top} }}]"]
            w.piece(
                "SH", "smoke shelf", r.throat, *told, outline=_box(-reach, reach, end + g, deep)
            )
            throat.append("SH")
    return throat, _reducer(w, r, reach, deep, clear)


def _flue_half(r: SetRecipe) -> float:
    """Half the width of a flue piece: bore, tongue's wall, clearance, and what it stands on."""
    return r.bore / 2 + (IN + 4 if r.nest >= 4 else 0) + 2 * IN


def _reducer(w: _Writer, r: SetRecipe, reach: float, deep: float, clear: float) -> list[str]:
    out, bore, middle = _flue_half(r), r.bore / 2, deep / 2
    low, high = r.lintel, deep - 2 * IN
    if r.reducers == 1:
        told = (
            f"cut = [{{ outline = {w.ring(_box(-clear, clear, low, high))},"
            f" top = {w.ring(_box(-bore, bore, middle - bore, middle + bore))} }}]"
        )
        w.piece(
            "R",
            "reducer",
            r.reducer,
            told,
            outline=_box(-reach, reach, 0, deep),
            top=_box(-out, out, middle - out, middle + out),
        )
        return ["R"]

    def half(x: float, y0: float, y1: float, ix: float, iy0: float, iy1: float) -> list:
        s = r.joint / 2
        return [(s, y0), (x, y0), (x, y1), (s, y1), (s, iy1), (ix, iy1), (ix, iy0), (s, iy0)]

    w.piece(
        "RR",
        "reducer",
        r.reducer,
        outline=half(reach, 0, deep, clear, low, high),
        top=half(out, middle - out, middle + out, bore, middle - bore, middle + bore),
    )
    w.lines += ["", "[[piece]]", 'mark = "RL"', 'mirror = "RR"']
    return ["RL", "RR"]


def _flue(w: _Writer, r: SetRecipe, deep: float) -> list[str]:
    """Flue pieces, and a collar under those that nest; gives the collar's mark."""
    out, nests = _flue_half(r), r.nest >= 4
    at = f"at = [0, {w.size(deep / 2)}]"
    bore = w.size(r.bore) if r.round else f"[{w.size(r.bore)}, {w.size(r.bore)}]"
    outline = _box(-out, out, -out, out)
    wall, room = w.size(IN), w.size(4)
    if nests:
        told = f"nest = {{ tongue = {w.size(r.nest)}, wall = {wall} }}"
        w.piece("C", "collar", 4 * IN, at, f"bore = {bore}", told, outline=outline)
    nest = (
        f"nest = {{ tongue = {w.size(r.nest)}, socket = {w.size(r.nest + 4)},"
        f" wall = {wall}, clearance = {room} }}"
    )
    w.piece("F", "flue", r.flue, at, f"bore = {bore}", *[nest] * nests, outline=outline)
    return ["C"] * nests


def text(recipe: SetRecipe) -> str:
    """The file of a recipe's set."""
    r, w = recipe, _Writer(recipe)
    reach, deep = _round_the_fire(w, r)
    if r.plates == 1:
        w.piece("P", "base plate", r.plate, outline=_box(-reach, reach, 0, deep))
    else:
        w.piece("PR", "base plate", r.plate, outline=_box(r.joint / 2, reach, 0, deep))
        w.lines += ["", "[[piece]]", 'mark = "PL"', 'mirror = "PR"']
    throat, reducer = _head(w, r, reach, deep)
    collar = _flue(w, r, deep)
    w.lift("plate", *(["P"] if r.plates == 1 else ["PL", "PR"]))
    for n in range(r.courses):
        w.lift(f"course {n + 1}", "WL", "WR", "WB")
    for n in range(r.extensions):
        w.lift(f"extension {n + 1}", "XL", "XR", "XB", more="extension = true")
    w.lift("top walls", "TL", "TR", "TB", "LS")
    w.lift("throat", *throat)
    w.lift("reducer", *reducer)
    if collar:
        w.lift("collar", *collar)
    w.lift("flue", "F", more=f"repeat = [1, {max(r.flues, 2)}]")
    after = ["NB"] if r.throats > 1 else ["TL", "TR", "TB"]
    head = ['name = "Random set"', f'unit = "{"mm" if r.metric else "in"}"', "density = 2050"]
    g = r.joint
    head += [
        f"bed = [{', '.join(w.size(n) for n in (r.bed - 2, r.bed, r.bed + 3))}]",
        f"perpend = [{', '.join(w.size(n) for n in (g - 2, g, g + 3))}]",
    ]
    if r.lining:
        held = ", ".join(f'"{m}"' for m in after)
        told = {"thickness": 20, "joint": 2, "floor": 40}
        head += ["", "[lining]", *(f"{name} = {w.size(n)}" for name, n in told.items())]
        head.append(f"after = [{held}]")
    return "\n".join([*head, *w.lines, ""])
