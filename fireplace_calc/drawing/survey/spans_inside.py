"""Where the tape is held in the room and up the throat: from which point to which. [m]"""

from __future__ import annotations

from fireplace_calc.drawing.survey.tape import Held, TapeSpan, across, both, upright
from fireplace_calc.geometry.parts import Geometry


def _trim(g: Geometry, place: str) -> tuple[float, float]:
    """Distance and projection of the first piece at a place, as drawn. [m]"""
    for piece in g.design.surround.trim:
        if piece.place == place:
            return piece.drawn_distance, piece.drawn_projection
    return 0.3, 0.04


def _width(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    low, high = f.hearth + 0.06, f.spring - 0.06
    w = f.half_width
    return ((-w, high), (w, high)), ((-w, low), (w, low))


def _height(g: Geometry) -> TapeSpan:
    f = g.frame
    x = f.half_width * 0.86
    top = f.opening_top if f.spring >= f.opening_top else f.spring
    return (x, f.hearth), (x, top)


def _before(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    x = -f.half_width * 0.45
    return (((x, f.hearth), (x, f.opening_top - g.design.opening.extension)),)


def _hearth_front(g: Geometry) -> tuple[TapeSpan, ...]:
    w, deep = g.frame.half_width, -g.design.hearth.front
    return tuple(((x, 0.0), (x, deep)) for x in (-w * 0.8, w * 0.1, w * 0.8))


def _throat(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    return (((f.throat_front, f.throat), (f.throat_back, f.throat)),)


def _throat_length(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    return tuple(((-f.half_at(y), y), (f.half_at(y), y)) for y in (f.throat_front, f.throat_back))


def _throat_height(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    y = (f.throat_front + f.throat_back) / 2
    return (((y, f.opening_top), (y, f.throat)),)


def _damper_height(g: Geometry) -> tuple[TapeSpan, ...]:
    f, d = g.frame, g.design
    over = d.throat.height if d.throat.damper_height is None else d.throat.damper_height
    y = f.throat_back + (f.depth - f.throat_back) * 0.3
    return (((y, f.opening_top), (y, f.opening_top + over)),)


def _chamber(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    return (((f.flue_y, f.throat), (f.flue_y, f.flue_start)),)


def _lean(g: Geometry) -> tuple[TapeSpan, ...]:
    f = g.frame
    foot, head = (f.throat_front, f.throat), (f.flue_y - f.bore.depth / 2, f.taper_top)
    at = [
        (foot[0] + t * (head[0] - foot[0]), foot[1] + t * (head[1] - foot[1])) for t in (0.3, 0.9)
    ]
    return ((at[0], at[1]),)


def _depth(g: Geometry) -> TapeSpan:
    x = g.frame.back_width / 2 * 0.75
    return (x, 0.0), (x, g.frame.depth)


INSIDE: dict[str, Held] = {
    "opening width": (("front", _width),),
    "opening height": (("front", both(_height)),),
    "height before raising": (("front", _before),),
    "arch rise": (("front", lambda g: (((0.0, g.frame.spring), (0.0, g.frame.opening_top)),)),),
    "firebox depth": (("plan", both(_depth)),),
    "back width": (
        ("plan", across(lambda g: g.frame.depth - 0.05, lambda g: g.frame.back_width / 2)),
    ),
    "vertical back": (
        ("section", lambda g: upright(g.frame.depth - 0.06, g.frame.hearth, g.frame.back_bend)),
    ),
    "jamb": (
        (
            "front",
            both(
                lambda g: (
                    (g.frame.half_width, g.frame.hearth + 0.3),
                    (g.frame.half_width + g.design.firebox.jamb, g.frame.hearth + 0.3),
                )
            ),
        ),
    ),
    "breast": (
        (
            "section",
            lambda g: (
                ((0.0, g.frame.opening_top - 0.05), (g.frame.breast, g.frame.opening_top - 0.05)),
            ),
        ),
    ),
    "lintel height": (
        (
            "front",
            lambda g: upright(
                g.frame.half_width * 0.5,
                g.frame.opening_top,
                g.frame.opening_top + g.design.lintel.height,
            ),
        ),
    ),
    "lintel bearing": (
        (
            "front",
            both(
                lambda g: (
                    (g.frame.half_width, g.frame.opening_top + g.design.lintel.height / 2),
                    (
                        g.frame.half_width + max(g.design.lintel.bearing or 0.0, 0.05),
                        g.frame.opening_top + g.design.lintel.height / 2,
                    ),
                )
            ),
        ),
    ),
    "hearth level": (
        ("section", lambda g: upright(-g.design.hearth.front - 0.12, 0.0, g.frame.hearth)),
    ),
    "hearth step": (("section", lambda g: upright(-0.06, g.frame.extension_top, g.frame.hearth)),),
    "hearth in front": (("plan", _hearth_front),),
    "hearth beside": (
        (
            "plan",
            both(
                lambda g: (
                    (g.frame.half_width, -g.design.hearth.front * 0.3),
                    (g.frame.half_width + g.design.hearth.side, -g.design.hearth.front * 0.3),
                )
            ),
        ),
    ),
    "hearth thickness": (
        (
            "section",
            lambda g: upright(
                -g.design.hearth.front * 0.7,
                g.frame.extension_top - g.design.hearth.thickness,
                g.frame.extension_top,
            ),
        ),
    ),
    "mantel distance": (
        (
            "front",
            both(
                lambda g: (
                    (g.frame.half_width * 0.7, g.frame.opening_top),
                    (g.frame.half_width * 0.7, g.frame.opening_top + _trim(g, "above")[0]),
                )
            ),
        ),
    ),
    "mantel projection": (
        (
            "section",
            lambda g: (
                (
                    (0.0, g.frame.opening_top + _trim(g, "above")[0] - 0.03),
                    (-_trim(g, "above")[1], g.frame.opening_top + _trim(g, "above")[0] - 0.03),
                ),
            ),
        ),
    ),
    "side trim distance": (
        (
            "front",
            both(
                lambda g: (
                    (g.frame.half_width, g.frame.hearth + 0.12),
                    (g.frame.half_width + _trim(g, "beside")[0], g.frame.hearth + 0.12),
                )
            ),
        ),
    ),
    "side trim projection": (
        (
            "plan",
            both(
                lambda g: (
                    (g.frame.half_width + _trim(g, "beside")[0] + 0.045, 0.0),
                    (g.frame.half_width + _trim(g, "beside")[0] + 0.045, -_trim(g, "beside")[1]),
                )
            ),
        ),
    ),
    "ceiling height": (
        ("front", lambda g: upright(-g.frame.block_half - 0.06, 0.0, g.design.house.ceiling)),
    ),
    "throat height": (("section", _throat_height),),
    "throat depth": (("section", _throat),),
    "throat length": (("plan", _throat_length),),
    "damper height": (("section", _damper_height),),
    "smoke chamber height": (("section", _chamber),),
    "smoke chamber lean": (("section", _lean),),
}
"""By the key of the entry."""
