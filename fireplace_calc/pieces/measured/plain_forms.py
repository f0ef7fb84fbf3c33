"""Forms of one outline: box, wedge, wall, notched block, shelf, arched lintel."""

from __future__ import annotations

from fractions import Fraction

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.measured.form import (
    BLOCK,
    NOUGHT,
    Dim,
    Form,
    Shaped,
    Span,
    Values,
    less,
    made,
    no_more,
    rectangle,
    whole,
)


def _box(v: Values) -> Shaped:
    return made(v, rectangle(NOUGHT, NOUGHT, v["A"], v["B"]))


def _wedge(v: Values) -> Shaped:
    inset = v.get("E", NOUGHT)
    ring = [(NOUGHT, NOUGHT), (v["A"], NOUGHT), (inset + v["D"], v["B"]), (inset, v["B"])]
    spans = [Span("D", "plan", "above", inset, inset + v["D"])]
    if "E" in v:
        spans.append(Span("E", "plan", "above", NOUGHT, inset))
    return made(v, ring, tuple(spans))


def _wall(v: Values) -> Shaped:
    wide, deep = v["A"], v["B"]
    thick, straight = v.get("D", wide), v.get("E", NOUGHT)
    rear, lip, rebate = v.get("F", wide), v.get("G", NOUGHT), v.get("H", NOUGHT)
    held = {"D": thick, "E": straight, "F": rear, "G": lip, "H": rebate}
    no_more(held, "D", wide, "thickness in front", "A")
    no_more(held, "F", wide, "width at the back", "A")
    less(held, "E", deep, "straight part outside", "B")
    less(held, "G", rear, "width of the rebate", "the width at the back")
    less(held, "H", deep, "depth of the rebate", "B")
    if bool(lip) != bool(rebate):
        empty, told = ("H", "G") if lip else ("G", "H")
        raise InputError(f"{empty} belongs to {told}: a rebate has both.", empty, "a length", "")
    ring = [(wide - thick, NOUGHT), (wide, NOUGHT)]
    if straight and rear < wide:
        ring.append((wide, straight))
    ring.append((rear, deep))
    ring += [(lip, deep), (lip, deep - rebate)] if lip else []
    ring.append((NOUGHT, deep - rebate))
    spans = [
        Span("D", "plan", "below", wide - thick, wide),
        Span("F", "plan", "above", NOUGHT, rear),
    ]
    if straight:
        spans.append(Span("E", "plan", "right", NOUGHT, straight))
    if lip:
        spans.append(Span("G", "plan", "above", NOUGHT, lip))
        spans.append(Span("H", "plan", "left", deep - rebate, deep))
    return made(v, ring, tuple(spans))


def _notched(v: Values) -> Shaped:
    wide, deep, leg, other = v["A"], v["B"], v["D"], v.get("F", v["D"])
    less(v, "D", wide - other, "leg", "the width less the other leg")
    less(v, "E", deep, "depth of the notch", "B")
    ring = [
        (NOUGHT, NOUGHT),
        (leg, NOUGHT),
        (leg, v["E"]),
        (wide - other, v["E"]),
        (wide - other, NOUGHT),
        (wide, NOUGHT),
        (wide, deep),
        (NOUGHT, deep),
    ]
    spans = [Span("D", "plan", "below", NOUGHT, leg), Span("E", "plan", "right", NOUGHT, v["E"])]
    if "F" in v:
        spans.append(Span("F", "plan", "below", wide - other, wide))
    return made(v, ring, tuple(spans))


def _trough(v: Values) -> Shaped:
    wide, deep, rim, low = v["A"], v["B"], v["D"], v["F"]
    less(v, "D", wide / 2, "rim at each end", "half of A")
    less(v, "E", deep, "trough, front to back", "B")
    less(v, "F", v["C"], "bottom of the trough", "C")
    cut = {"outline": rectangle(rim, NOUGHT, wide - rim, v["E"]), "from": low, "to": v["C"]}
    spans = (
        Span("D", "plan", "below", NOUGHT, rim),
        Span("E", "plan", "right", NOUGHT, v["E"]),
        Span("F", "front", "right", NOUGHT, low),
    )
    return made(v, rectangle(NOUGHT, NOUGHT, wide, deep), spans, cut=[cut])


def _arched(v: Values) -> Shaped:
    less(v, "D", v["A"], "span", "A")
    no_more(v, "E", v["D"] / 2, "rise", "half the span")
    less(v, "E", v["C"], "rise", "C")
    half, end = v["A"] / 2, (v["A"] - v["D"]) / 2
    arch = {"span": v["D"], "rise": v["E"], "width": v["A"], "depth": v["B"]}
    spans = (
        *whole(v),
        Span("D", "front", "below", end, end + v["D"]),
        Span("E", "front", "right", NOUGHT, v["E"]),
    )
    return Shaped({"arch": arch, "height": v["C"]}, -half, NOUGHT, v["A"], spans)


SIMPLE = (
    Form("box", BLOCK, _box),
    Form(
        "wedge",
        (
            *BLOCK,
            Dim("D", "width at the back", Fraction(16)),
            Dim("E", "back set in", Fraction(2), True),
        ),
        _wedge,
    ),
    Form(
        "wall with a rebate",
        (
            Dim("A", "width", Fraction(9)),
            Dim("B", "depth", Fraction(24)),
            Dim("C", "height", Fraction(10)),
            Dim("D", "thickness in front", Fraction(4), True),
            Dim("E", "straight part outside", Fraction(3), True),
            Dim("F", "width at the back", Fraction(5), True),
            Dim("G", "width of the rebate", Fraction(3, 2), True),
            Dim("H", "depth of the rebate", Fraction(4), True),
        ),
        _wall,
    ),
    Form(
        "block with a notch",
        (
            Dim("A", "width", Fraction(48)),
            Dim("B", "depth", Fraction(9)),
            Dim("C", "height", Fraction(5)),
            Dim("D", "leg", Fraction(5)),
            Dim("E", "depth of the notch", Fraction(5)),
            Dim("F", "right leg, if not alike", Fraction(5), True),
        ),
        _notched,
    ),
    Form(
        "shelf with a trough",
        (
            Dim("A", "width", Fraction(48)),
            Dim("B", "depth", Fraction(10)),
            Dim("C", "height", Fraction(5)),
            Dim("D", "rim at each end", Fraction(5)),
            Dim("E", "trough, front to back", Fraction(6)),
            Dim("F", "bottom of the trough", Fraction(3)),
        ),
        _trough,
    ),
    Form(
        "arched lintel",
        (
            Dim("A", "width", Fraction(53)),
            Dim("B", "depth", Fraction(5)),
            Dim("C", "height", Fraction(9)),
            Dim("D", "span", Fraction(44)),
            Dim("E", "rise", Fraction(4)),
        ),
        _arched,
    ),
)
"""Forms of one outline, or little more."""
