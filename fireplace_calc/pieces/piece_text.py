"""One piece, read from its table. [m, kg]"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from fireplace_calc.base.messages import shown
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.pieces.fields import MILLIMETER, Fields
from fireplace_calc.pieces.liner_kinds import LINERS
from fireplace_calc.pieces.records import JointRange, SetPiece, Shape
from fireplace_calc.pieces.roles import MATERIALS, ROLES
from fireplace_calc.pieces.shape_text import arch, block, bored, bounds, mirrored, solids

FIELDS = (
    "mark",
    "name",
    "role",
    "like",
    "mirror",
    "at",
    "outline",
    "top",
    "arch",
    "bore",
    "nest",
    "liner",
    "liner_kind",
    "add",
    "cut",
    "height",
    "over_all",
    "bed",
    "perpend",
    "bearing",
    "density",
    "weight",
    "after",
    "pallet",
    "material",
)
BEARING = 1 * INCH
"""Least width of what a piece rests on, where its file says nothing; our own habit. [m]"""
LINTEL_BEARING = 3 * INCH
"""The same under a lintel; our own habit, the code has its own figure. [m]"""
LEAST_WEIGHT, MOST_WEIGHT = 0.05, 2000.0
"""Of a piece that is set by hand or hoisted. [kg]"""


@dataclass(frozen=True, slots=True)
class Defaults:
    """What the file says for all pieces at once: joints, and density. [m, kg/m3]"""

    bed: JointRange | None
    perpend: JointRange | None
    density: float | None


def read_piece(
    raw: Mapping[str, Any],
    known: Mapping[str, tuple[Mapping[str, Any], SetPiece]],
    whole: Defaults,
    unit: float,
) -> tuple[Mapping[str, Any], SetPiece]:
    """Read one piece.

    Parameters
    ----------
    raw : mapping
        Its table.
    known : mapping
        Pieces read before, by mark, each with its full table: for ``like`` and ``mirror``.
    whole : Defaults
    unit : float
        What a bare number is worth. [m]

    Returns
    -------
    tuple
        Its full table, and the piece.

    Raises
    ------
    InputError
        Names the piece, the field, what is wanted and what came.
    """
    mark = _mark(raw, known)
    fields = Fields(f"Piece {mark}", raw, unit)
    fields.only(FIELDS)
    source = _source(fields, known)
    full = {**source, **raw}
    for word in ("like", "mirror"):
        if word not in raw:
            full.pop(word, None)
    fields = Fields(f"Piece {mark}", full, unit)
    role = fields.words("role").lower()
    if role not in ROLES:
        raise fields.wrong("role", f"one of {', '.join(ROLES)}")
    height, adds, cuts, plain = _solid(fields)
    if "mirror" in raw:
        adds, cuts = [mirrored(s) for s in adds], [mirrored(s) for s in cuts]
        plain = plain and ([mirrored(s) for s in plain[0]], [mirrored(s) for s in plain[1]])
    density = fields.number("density", 200, 8000, "kg/m3") or whole.density
    weight = fields.number("weight", LEAST_WEIGHT, MOST_WEIGHT, "kg")
    if density is None and weight is None:
        raise fields.wrong("weight", "a weight, or a density for the whole set")
    pallet = fields.number("pallet", 1, 1000, "pieces")
    default = LINTEL_BEARING if role == "lintel" else BEARING
    return full, SetPiece(
        mark,
        fields.words("name", role),
        role,
        height,
        tuple(adds),
        tuple(cuts),
        fields.joint("bed", whole.bed),
        fields.joint("perpend", whole.perpend),
        density or 0.0,
        weight,
        fields.length("bearing", default),
        fields.listed("after", ()),
        None if pallet is None else int(pallet),
        fields.length("liner", 0.0),
        raw.get("mirror", ""),
        _material(fields),
        (tuple(plain[0]), tuple(plain[1])) if plain else None,
        _liner_kind(fields),
    )


def _liner_kind(fields: Fields) -> str:
    if "liner_kind" not in fields.raw:
        return ""
    kind = fields.words("liner_kind")
    if kind not in LINERS:
        raise fields.wrong("liner_kind", f"one of {', '.join(LINERS)}")
    return kind


def _mark(raw: Mapping[str, Any], known: Mapping[str, Any]) -> str:
    mark = raw.get("mark")
    wanted = "a mark of one to eight letters and figures"
    if not isinstance(mark, str) or not 1 <= len(mark) <= 8 or not mark.isalnum():
        came = shown(mark) if mark is not None else "missing"
        raise InputError(
            f"A piece's mark is {came}, but {wanted} is wanted; it stands on the piece.",
            "mark",
            wanted,
            mark,
        )
    if mark in known:
        raise InputError(
            f"Two pieces have the mark {mark}; give each kind its own.", "mark", wanted, mark
        )
    return mark


def _source(
    fields: Fields, known: Mapping[str, tuple[Mapping[str, Any], SetPiece]]
) -> dict[str, Any]:
    """Fields taken over from another piece, its weight and its own making left out."""
    if "like" in fields.raw and "mirror" in fields.raw:
        raise fields.wrong("like", "either like or mirror")
    for word in ("like", "mirror"):
        if word in fields.raw:
            mark = fields.words(word)
            if mark not in known:
                raise fields.wrong(word, "the mark of a piece that stands before it in the file")
            drop = {"mark"} if word == "mirror" else {"mark", "weight", "pallet"}
            return {k: v for k, v in known[mark][0].items() if k not in drop}
    return {}


def _solid(
    fields: Fields,
) -> tuple[float, list[Shape], list[Shape], tuple[list[Shape], list[Shape]] | None]:
    """Height from bed to bed, the solids of a piece, and those of it without tongue and socket."""
    raw, unit = fields.raw, fields.unit
    at = fields.point("at", raw["at"]) if "at" in raw else (0.0, 0.0)
    tongue = _tongue(fields)
    if "height" in raw:
        height = fields.length("height", low=unit / 4)
        if "over_all" in raw and abs(fields.length("over_all") - tongue - height) > 1e-6:
            raise fields.wrong("over_all", "bed to bed and the tongue together", "or leave one out")
    elif "over_all" in raw:
        height = fields.length("over_all", low=unit / 4) - tongue
        if height <= 0:
            raise fields.wrong("over_all", "more than the tongue")
    else:
        raise fields.wrong("height", "a height from bed to bed, or over_all with the tongue")
    adds: list[Shape] = []
    cuts: list[Shape] = []
    if "arch" in raw:
        if "outline" in raw:
            raise fields.wrong("arch", "either an arch or an outline")
        body, gone = arch(fields, height, at)
        adds, cuts = [body], [gone]
    elif "outline" in raw:
        adds = [block(fields, at, 0.0, height)]
    else:
        raise fields.wrong("outline", "the corners of its outline, or an arch")
    for table in fields.tables("add"):
        made, hole = solids(fields, table, at, height, "add")
        adds += made
        cuts += hole
    for table in fields.tables("cut"):
        made, hole = solids(fields, table, at, height, "cut")
        cuts += made
        adds += hole
    plain = None
    if "bore" in raw:
        more, less, whole = bored(fields, at, height)
        plain = [*adds], [*cuts, whole]
        adds += more
        cuts += less
    elif "nest" in raw:
        raise fields.wrong("nest", "a bore to nest round")
    _require_cuts_within(fields, adds, cuts)
    return height, adds, cuts, plain


def _require_cuts_within(fields: Fields, adds: list[Shape], cuts: list[Shape]) -> None:
    """Refuse a cut that reaches out of the box around the piece: it would take away what is not
    there, and volume and weight with it.
    """
    box = bounds(adds)
    for one in cuts:
        here = bounds([one])
        under = [low - mine for low, mine in zip(box[:3], here[:3], strict=True)]
        over = [mine - high for high, mine in zip(box[3:], here[3:], strict=True)]
        out = max(*under, *over)
        if out > ROUNDING:
            field = next(f for f in ("cut", "nest", "bore", "arch", "add") if f in fields.raw)
            unit = "mm" if fields.unit == MILLIMETER else "in"
            by = f"{out / fields.unit:.3g} {unit}"
            raise fields.wrong(field, "a cut within the piece", f"it reaches {by} out of it")


def _material(fields: Fields) -> str:
    told = fields.words("material", MATERIALS[0])
    if told not in MATERIALS:
        raise fields.wrong("material", f"one of {', '.join(MATERIALS)}")
    return told


def _tongue(fields: Fields) -> float:
    nest = fields.raw.get("nest")
    if isinstance(nest, Mapping):
        return Fields(f"{fields.where}, nest", nest, fields.unit).length("tongue", 0.0)
    return 0.0
