"""Levels that follow from the mantel: its upper edge, and where the face of the breast ends."""

from __future__ import annotations

from fireplace_calc.geometry.frame import Framed
from fireplace_calc.geometry.mantel.on_face import mantel_parts


def mantel_edge(framed: Framed) -> tuple[str, float] | None:
    """The highest edge over the opening of shelf, beam or trim; an overmantel stands over that.

    Parameters
    ----------
    framed : Framed

    Returns
    -------
    tuple of str and float, or None
        Its name, and its level. [m]
    """
    top = framed.frame.opening_top
    over = [
        (run.bounds[4], part.name)
        for part in mantel_parts(framed)
        for run in part.group.runs
        if not part.name.startswith("overmantel")
        and (part.told.place == "above" if part.told else run.bounds[3] >= top)
    ]
    if not over:
        return None
    level, name = max(over)
    return name, level


def face_end(framed: Framed, drawn: float | None = None) -> float:
    """Up to which level the breast has its face; plaster goes on from there to the ceiling.

    Parameters
    ----------
    framed : Framed
    drawn : float, optional
        Ceiling as it is drawn, where that is another. [m]

    Returns
    -------
    float
        [m]
    """
    ceiling, edge = framed.design.house.ceiling if drawn is None else drawn, None
    if framed.design.surround.face_height == "to the mantel":
        edge = mantel_edge(framed)
    return ceiling if edge is None else min(edge[1], ceiling)
