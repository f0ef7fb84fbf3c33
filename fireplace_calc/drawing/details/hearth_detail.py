"""Hearth extension in section: its layers, the joint at the floor, what it joins behind."""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.drawing.details.limits import asked
from fireplace_calc.drawing.details.window import draw_window
from fireplace_calc.drawing.plates.figure import Extent, Figure
from fireplace_calc.drawing.plates.words_round import Note, Sizes, annotated
from fireplace_calc.drawing.sheets.sheet import View
from fireplace_calc.drawing.views.layout import length
from fireplace_calc.geometry.parts import Geometry

FLOOR, INTO, UNDER, OVER = 0.2, 0.3, 0.1, 0.1
"""How much is shown of the floor before it, of the firebox behind, and under and over it. [m]"""


def hearth_window(geometry: Geometry) -> Extent | None:
    """What is shown: front, bottom, back, top; none without an extension. [m]"""
    f, d = geometry.frame, geometry.design
    if d.hearth.front <= 0:
        return None
    bed = f.extension_top - d.hearth.thickness - d.hearth.bed
    low = max(min(f.slab_bottom, bed, 0.0) - UNDER, f.footing_top)
    low = min(low, bed - 0.02, -0.02)
    return -d.hearth.front - FLOOR, low, min(INTO, f.depth * 0.8), f.hearth + OVER


def hearth_figure(result: Assessment, units: str, scales: tuple[float, ...]) -> Figure | None:
    """The figure of the hearth extension; the room is at the left.

    Parameters
    ----------
    result : Assessment
    units : str
    scales : tuple of float
        Denominators, the largest scale first. [-]

    Returns
    -------
    Figure or None
        Nothing where there is no extension.
    """
    geometry = result.geometry
    window = hearth_window(geometry)
    if window is None:
        return None
    f, d = geometry.frame, geometry.design
    front = -d.hearth.front

    def draw(view: View) -> None:
        draw_window(view, geometry, window)
        view.path([(window[0], 0.0), (front, 0.0)], "ground")
        view.path([(0.0, f.hearth), (0.0, window[3])], "seen")

    top = f.extension_top
    bed, base = top - d.hearth.thickness, top - d.hearth.thickness - d.hearth.bed
    stops = ((0.0,) if base > 0 else ()) + (base, bed, top)
    return annotated(
        "hearth_detail",
        window,
        draw,
        units,
        scales,
        right=_words(result, units, window),
        beside=[Sizes(stops, front)],
        strings_left=True,
        note="on the center line",
    )


def _words(result: Assessment, units: str, window: Extent) -> list[Note]:
    geometry = result.geometry
    f, d = geometry.frame, geometry.design
    front, top = -d.hearth.front, f.extension_top
    bed = top - d.hearth.thickness
    base = bed - d.hearth.bed
    out = asked(result, units, "HTH-07", "HTH-05", "Hearth in front")
    least = asked(result, units, "HTH-04", "HTH-03")
    forms = {
        True: "form removed",
        False: "FORM LEFT UNDER IT: take it out",
        None: "form under it: take it out; not told whether it is",
    }[d.hearth.forms_removed]
    finish = geometry.parts_by_name["hearth extension"].material
    held = {
        "noncombustible": "carried by what does not burn",
        "combustible": "CARRIED BY WHAT BURNS",
    }.get(d.hearth.support or "", "what carries it: not told")
    words: list[Note] = [
        ((front * 0.8, top - d.hearth.thickness * 0.5), f"{finish}{least}"),
        ((front * 0.65, (bed + base) / 2), f"concrete bed, bars not told; {forms}"),
        ((front, 0.0), f"joint to {d.house.floor}: usual, left open for movement"),
        ((front * 0.5, top), f"extension in front{out}" if out else "hearth extension"),
    ]
    if "hearth extension base" in geometry.parts_by_name:
        words.append(((front * 0.4, base / 2), f"block to the floor, {held}"))
    else:
        words.append(((front * 0.3, base), held))
    floor = geometry.under_fire
    words.append(((window[2] * 0.6, f.hearth - (f.hearth - f.slab_top) * 0.5), _floor(floor.name)))
    slab = geometry.parts_by_name.get("hearth slab")
    if slab is not None:
        thick = length(slab.top - slab.bottom, units)
        place = (window[2] * 0.4, (slab.top + slab.bottom) / 2)
        words.append((place, f"hearth slab, concrete, {thick}"))
    return [n for n in words if window[1] < n[0][1] < window[3]]


def _floor(name: str) -> str:
    return "base plate" if name == "base plates" else "firebox floor"
