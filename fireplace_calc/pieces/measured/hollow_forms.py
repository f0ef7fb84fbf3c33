"""Forms that are hollow, tapered, or measured corner by corner; and all forms together."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.form import (
    BLOCK,
    NOUGHT,
    Dim,
    Form,
    Ring,
    Shaped,
    Span,
    Values,
    less,
    made,
    rectangle,
    whole,
)
from fireplace_calc.pieces.measured.plain_forms import SIMPLE


def _tapered(v: Values) -> Shaped:
    wide, deep = v["D"], v["E"]
    left, front = v.get("F", (v["A"] - wide) / 2), v.get("G", (v["B"] - deep) / 2)
    top = rectangle(left, front, left + wide, front + deep)
    spans = [
        Span("D", "front", "above", left, left + wide),
        Span("E", "side", "above", front, front + deep),
    ]
    if "F" in v:
        spans.append(Span("F", "front", "above", NOUGHT, left))
    if "G" in v:
        spans.append(Span("G", "side", "above", NOUGHT, front))
    return made(v, rectangle(NOUGHT, NOUGHT, v["A"], v["B"]), tuple(spans), top=top)


def _ends(v: Values) -> tuple[dict[str, Fraction], tuple[Span, ...]]:
    """A reducer's top, as at the bottom where nothing is told, and its lengths on the drawing."""
    top = {
        "G": v.get("G", v["A"]),
        "H": v.get("H", v["B"]),
        "J": v.get("J", v["D"]),
        "K": v.get("K", v["E"]),
        "L": v.get("L", v["F"]),
    }
    top["I"] = v.get("I", (v["B"] - top["H"]) / 2)
    less(v, "E", v["B"] - v["F"], "front wall", "the depth less the back wall")
    less(top, "K", top["H"] - top["L"], "front wall at the top", "the depth less the back wall")
    return top, (
        Span("E", "plan", "right", NOUGHT, v["E"]),
        Span("F", "plan", "right", v["B"] - v["F"], v["B"]),
        Span("I", "side", "above", NOUGHT, top["I"]),
        Span("H", "side", "above", top["I"], top["I"] + top["H"]),
        Span("K", "side", "above", top["I"], top["I"] + top["K"]),
        Span("L", "side", "above", top["I"] + top["H"] - top["L"], top["I"] + top["H"]),
    )


def _half_reducer(v: Values) -> Shaped:
    top, spans = _ends(v)
    less(v, "D", v["A"], "side wall", "A")
    less(top, "J", top["G"], "side wall at the top", "the width there")

    def half(wide: Fraction, front: Fraction, back: Fraction, walls: tuple[Fraction, ...]) -> Ring:
        side, ahead, behind = walls
        return [
            *rectangle(NOUGHT, front, wide, back),
            (NOUGHT, back - behind),
            (wide - side, back - behind),
            (wide - side, front + ahead),
            (NOUGHT, front + ahead),
        ]

    return made(
        v,
        half(v["A"], NOUGHT, v["B"], (v["D"], v["E"], v["F"])),
        (
            *spans,
            Span("D", "plan", "below", v["A"] - v["D"], v["A"]),
            Span("G", "front", "above", NOUGHT, top["G"]),
            Span("J", "front", "above", top["G"] - top["J"], top["G"]),
        ),
        top=half(top["G"], top["I"], top["I"] + top["H"], (top["J"], top["K"], top["L"])),
    )


def _whole_reducer(v: Values) -> Shaped:
    top, spans = _ends(v)
    less(v, "D", v["A"] / 2, "side wall", "half of A")
    less(top, "J", top["G"] / 2, "side wall at the top", "half the width there")
    wide, left = top["G"], (v["A"] - top["G"]) / 2
    front, back = top["I"], top["I"] + top["H"]
    inside = {
        "outline": rectangle(v["D"], v["E"], v["A"] - v["D"], v["B"] - v["F"]),
        "top": rectangle(
            left + top["J"], front + top["K"], left + wide - top["J"], back - top["L"]
        ),
    }
    return made(
        v,
        rectangle(NOUGHT, NOUGHT, v["A"], v["B"]),
        (
            *spans,
            Span("D", "plan", "below", NOUGHT, v["D"]),
            Span("G", "front", "above", left, left + wide),
            Span("J", "front", "above", left, left + top["J"]),
        ),
        top=rectangle(left, front, left + wide, back),
        cut=[inside],
    )


def _ring(v: Values) -> Shaped:
    wide, deep, across = v["A"], v["B"], v["D"]
    less(v, "D", wide, "bore", "A")
    back = v.get("E", across)
    if back >= deep:
        key = "E" if "E" in v else "D"
        raise InputError(f"{key}, the bore, is not less than B.", key, "less than B", str(back))
    ring = rectangle(-wide / 2, -deep / 2, wide / 2, deep / 2)
    table: dict[str, Any] = {"outline": ring, "height": v["C"]}
    table["bore"] = [across, back] if "E" in v else across
    if "F" in v:
        table["liner"] = v["F"]
    nest = {"tongue": v.get("G"), "socket": v.get("H"), "wall": v.get("I"), "clearance": v.get("J")}
    told = {name: size for name, size in nest.items() if size is not None}
    if told:
        if "I" not in v:
            words = "I, the wall of the tongue, is missing: what nests has one."
            raise InputError(words, "I", "a length", "")
        rim = v["I"] + (v.get("J", NOUGHT) if "H" in v else NOUGHT)
        if 2 * rim >= min(wide - across, deep - back):
            words = "I, the wall of the tongue, leaves nothing of the block around it."
            raise InputError(words, "I", "less than the block around the bore", str(v["I"]))
        if "H" in v:
            less(v, "H", v["C"], "socket", "C")
        table["nest"] = told
    spans = [*whole(v), Span("D", "plan", "above", (wide - across) / 2, (wide + across) / 2)]
    if "E" in v:
        spans.append(Span("E", "plan", "right", (deep - back) / 2, (deep + back) / 2))
    if v.get("G"):
        spans.append(Span("G", "front", "right", v["C"], v["C"] + v["G"]))
    if v.get("H"):
        spans.append(Span("H", "front", "right", NOUGHT, v["H"]))
    if v.get("I") and v.get("G"):
        start = (wide - across) / 2 - v["I"]
        spans.append(Span("I", "front", "above", start, start + v["I"]))
    return Shaped(table, -wide / 2, -deep / 2, wide, tuple(spans))


def _corners(v: Values) -> Shaped:
    ring = v["A"]
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    table = {"outline": ring, "height": v["C"]}
    if "B" in v:
        table["top"] = v["B"]
    if "D" in v:
        cut = {"outline": v["D"]}
        cut |= {name: v[key] for name, key in (("from", "E"), ("to", "F")) if key in v}
        table["cut"] = [cut]
    spans = (Span("C", "front", "left", NOUGHT, v["C"]),)
    return Shaped(table, min(xs), min(ys), max(xs) - min(xs), spans)


REDUCER_TOP = (
    Dim("G", "top: width", Fraction(10), True),
    Dim("H", "top: depth", Fraction(20), True),
    Dim("I", "top: front set in", Fraction(2), True),
    Dim("J", "top: side wall", Fraction(5, 2), True),
    Dim("K", "top: front wall", Fraction(5, 2), True),
    Dim("L", "top: back wall", Fraction(5, 2), True),
)
"""What a reducer is at its top; as at the bottom where it stays empty."""


def _reducer(name: str, width: int, wall: str, shape: Any) -> Form:
    bottom = (
        Dim("A", "width", Fraction(width)),
        Dim("B", "depth", Fraction(24)),
        Dim("C", "height", Fraction(16)),
        Dim("D", wall, Fraction(5)),
        Dim("E", "front wall", Fraction(5)),
        Dim("F", "back wall", Fraction(4)),
    )
    return Form(name, (*bottom, *REDUCER_TOP), shape)


FORMS = {
    form.name: form
    for form in (
        *SIMPLE,
        Form(
            "tapered block",
            (
                *BLOCK,
                Dim("D", "width at the top", Fraction(16)),
                Dim("E", "depth at the top", Fraction(8)),
                Dim("F", "top set in at the left", Fraction(3), True),
                Dim("G", "top set in at the front", Fraction(3, 2), True),
            ),
            _tapered,
        ),
        _reducer("half of a reducer", 24, "side wall", _half_reducer),
        _reducer("reducer in one piece", 48, "side walls", _whole_reducer),
        Form(
            "block with a bore",
            (
                Dim("A", "width", Fraction(20)),
                Dim("B", "depth", Fraction(20)),
                Dim("C", "height, bed to bed", Fraction(8)),
                Dim("D", "bore, across", Fraction(15)),
                Dim("E", "bore, front to back, if not round", optional=True),
                Dim("F", "wall of a liner cast in", optional=True),
                Dim("G", "tongue, over the bed", Fraction(3, 4), True),
                Dim("H", "socket, under it", Fraction(1), True),
                Dim("I", "wall of the tongue", Fraction(1), True),
                Dim("J", "clearance around the tongue", Fraction(1, 4), True),
            ),
            _ring,
        ),
        Form(
            "corner by corner",
            (
                Dim("A", "corners: right, back; right, back; ...", corners=True),
                Dim("C", "height", Fraction(8)),
                Dim("B", "corners at the top", optional=True, corners=True),
                Dim("D", "corners of a cut", optional=True, corners=True),
                Dim("E", "cut from", optional=True),
                Dim("F", "cut to", optional=True),
            ),
            _corners,
        ),
    )
}
"""All forms by name, in the order they are offered."""
USUAL = {
    "wall": "wall with a rebate",
    "extension wall": "wall with a rebate",
    "top wall": "wall with a rebate",
    "throat back": "block with a notch",
    "smoke shelf": "shelf with a trough",
    "reducer": "half of a reducer",
    "collar": "block with a bore",
    "flue": "block with a bore",
}
"""The form a role mostly has; a box for the others."""
