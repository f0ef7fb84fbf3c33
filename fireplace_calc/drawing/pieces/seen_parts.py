"""What is seen of a set, put on a sheet: faces toned by how they lie, what is set now marked."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence

from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.geometry.from_set.lining_piece import LINING
from fireplace_calc.geometry.visible.stages import SeenPart

UPWARD, FORWARD = 0.5, 0.6
"""A face is a top from this much up, and a front from this much toward the room. [-]"""
NOW_LAYER = 1
BRICK = f"{LINING}.1"
"""Name of the lining among what is seen."""


def put_parts(view: View, parts: Iterable[SeenPart], now: Collection[str] = ()) -> None:
    """Draw faces, each with its outline; what is set now in a tone and a line of its own.

    Parameters
    ----------
    view : View
    parts : iterable of SeenPart
    now : collection of str
        Names of pieces.
    """
    for part in parts:
        rings = [view.ring(ring) for ring in part.rings]
        marked = part.name in now
        cast = "firebrick" if part.name == BRICK else "refractory"
        material = cast if part.cut and part.kind == "piece" else None
        view.sheet.fill(rings, _tone(part, marked), material, layer=NOW_LAYER if marked else 0)
        if part.kind == "mortar":
            continue  # the pieces' own lines bound it
        weight = "flag" if marked else "seen" if part.cut else "fine"
        for ring in rings:
            view.sheet.line(ring, weight, closed=True)


def put_outlines(view: View, parts: Iterable[SeenPart]) -> None:
    """Draw faces as outlines alone: what is not there yet.

    Parameters
    ----------
    view : View
    parts : iterable of SeenPart
    """
    for part in parts:
        if part.kind != "mortar":
            for ring in part.rings:
                view.sheet.line(view.ring(ring), "hidden", "soft", closed=True)


def bounds_of(parts: Sequence[SeenPart]) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of what is drawn. [m]

    Parameters
    ----------
    parts : sequence of SeenPart
        At least one.
    """
    low = [ring.min(axis=0) for part in parts for ring in part.rings]
    high = [ring.max(axis=0) for part in parts for ring in part.rings]
    return (
        float(min(p[0] for p in low)),
        float(min(p[1] for p in low)),
        float(max(p[0] for p in high)),
        float(max(p[1] for p in high)),
    )


def _tone(part: SeenPart, marked: bool) -> str:
    if part.kind == "mortar":
        return "mortar"
    way = "top" if part.normal[2] > UPWARD else "front" if part.normal[1] < -FORWARD else "side"
    return f"set {way}" if marked else f"piece {way}"
