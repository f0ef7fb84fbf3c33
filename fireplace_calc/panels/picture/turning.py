"""The fireplace as a body that turns, whole or cut open: the parts' own triangles, drawn by
``turning.js`` beside this file.
"""

from __future__ import annotations

from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

import anywidget
import traitlets

from fireplace_calc.base.units import FEET_INCHES
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.style import HATCHES, THEMES
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mesh import CUT_NORMALS, Mesh, cut_plane, meshes
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.panels.picture.packing import packed_skins
from fireplace_calc.panels.picture.turning_set import packed_set, steps_of_parts
from fireplace_calc.takeoff.shares_of_set import is_of_set

STYLE = """
.turning { max-width: 1100px; font-size: 13px; }
.turning-tools { display: flex; flex-wrap: wrap; gap: .35em 1.4em; margin-bottom: .45em; }
.turning-group { display: flex; align-items: center; }
.turning-group[hidden] { display: none; }
.turning-group select { font: inherit; min-height: 2.1em; }
.turning-group > span { margin-right: .5em; opacity: .82; }
.turning-group button { font: inherit; color: inherit; background: transparent;
  border: 1px solid var(--jp-border-color1, #999);
  border-left-width: 0; padding: .3em .75em; min-height: 2.1em; cursor: pointer; }
.turning-group span + button { border-left-width: 1px; }
.turning-group button:hover { background: color-mix(in srgb, currentColor 10%, transparent); }
.turning-group button[aria-pressed="true"] { font-weight: 700;
  box-shadow: inset 0 -3px 0 currentColor; }
.turning :is(button, select, canvas):focus-visible { outline: 3px solid #0b5c8a;
  outline-offset: 1px; }
[data-jp-theme-light="false"] .turning :is(button, select, canvas):focus-visible {
  outline-color: #7cc1ea; }
.turning-canvas { display: block; width: 100%; height: var(--turning-height, 560px); cursor: grab;
  touch-action: pan-y;
  border: 1px solid var(--jp-border-color2, #d5d8da); box-sizing: border-box; }
.turning-canvas:active { cursor: grabbing; }
.turning-said { display: flex; justify-content: space-between; gap: 1em; min-height: 1.5em;
  margin-top: .3em; line-height: 1.45; }
.turning-legend { display: flex; flex-wrap: wrap; gap: .2em 1.2em; list-style: none;
  margin: .2em 0 0; padding: 0; }
.turning-legend li { display: flex; align-items: center; gap: .4em; margin: 0; }
.turning-legend canvas { width: 30px; height: 16px; border: 1px solid currentColor; }
@media print { .turning-tools { display: none; } }
"""
MARGIN = 0.15
"""Room left round the fireplace when it is shown without its chimney. [m]"""

BONDED = ("firebox walls", "smoke chamber walls", "breast walls", "shoulder", "chimney walls")
"""Parts that a mason runs through in one bond: no line is drawn between two of one material."""


class Turning(anywidget.AnyWidget):
    """A view in three dimensions; put it last in a cell, or among the children of a panel.

    Parameters
    ----------
    what : Design or Geometry
        Whose parts to show.
    theme : str
        ``light``, ``dark`` or ``print``; ``auto`` follows the page.
    cut : str
        What is cut away at first: nothing, ``left half`` or ``front half``.
    units : str
        ``feet-inches`` or ``millimetres``, for weights.
    step : int
        Of the setting of a set: what stands after it is shown, what is new is marked. Nought is
        the bare footing; -1 shows the whole fireplace. Only the number is sent. [-]

    Attributes
    ----------
    picked : str
        Name of the piece that the reader has picked, or nothing.
    """

    _esm = Path(__file__).with_name("turning.js")
    _css = STYLE
    shown = traitlets.Dict().tag(sync=True)
    themes = traitlets.Dict().tag(sync=True)
    hatches = traitlets.Dict().tag(sync=True)
    title = traitlets.Unicode().tag(sync=True)
    units = traitlets.Unicode(FEET_INCHES).tag(sync=True)
    step = traitlets.Int(-1).tag(sync=True)
    picked = traitlets.Unicode().tag(sync=True)
    theme = traitlets.Enum(("auto", *THEMES), "auto").tag(sync=True)
    cut = traitlets.Enum(("", *CUT_NORMALS), "").tag(sync=True)

    def __init__(self, what: Design | Geometry, **how: Any) -> None:
        made = _built(what)
        super().__init__(
            shown=packed(made),
            title=made.design.name,
            hatches={name: asdict(hatch) for name, hatch in HATCHES.items()},
            themes={
                name: {**asdict(look), "flat": name == "print"} for name, look in THEMES.items()
            },
            **how,
        )

    def put(self, what: Design | Geometry) -> None:
        """Show another design from where the reader stands; only its corners, faces and edges are
        sent.
        """
        made = _built(what)
        self.title, self.shown = made.design.name, packed(made)


def _built(what: Design | Geometry) -> Geometry:
    return what if isinstance(what, Geometry) else build_geometry(what)


def packed(made: Geometry) -> dict[str, Any]:
    """What the page is sent: the names of the parts, the boxes to look at, and the triangles of
    each state as bytes.

    Parameters
    ----------
    made : Geometry
        Of one design.

    Returns
    -------
    dict
        ``parts``, ``boxes`` (left, right, front, back, bottom, top [m]) and ``states``: whole, and
        with a half cut away. Of a set every piece is a part of its own: ``forms`` are what its
        pieces and its mortar look like in each state, ``stands`` where each of them stands.
    """
    shown = replace(made, parts=tuple(p for p in made.parts if not is_of_set(made, p)))
    number = {part.name: k for k, part in enumerate(shown.parts)}
    step = steps_of_parts(made)
    parts = [
        {
            "name": part.name,
            "material": part.material,
            "one": part.material if part.name in BONDED else part.name,
            "step": step.get(part.name),
        }
        for part in shown.parts
    ]
    whole = meshes(shown)
    states = {"": packed_skins(whole, number)}
    for away in CUT_NORMALS:
        states[away] = packed_skins(meshes(shown, away), number, cut_plane(made, away))
    of_set = packed_set(made, len(parts))
    return {
        "parts": parts + of_set["parts"],
        "forms": of_set["forms"],
        "stands": of_set["stands"],
        "boxes": _boxes(made, whole) | {"set": of_set["box"]},
        "states": states,
    }


def _boxes(made: Geometry, skins: tuple[Mesh, ...]) -> dict[str, list[float]]:
    """Left, right, front, back, bottom and top of the whole, and of the fireplace alone. [m]"""
    f = made.frame
    low = [min(float(skin.points[:, k].min()) for skin in skins) for k in range(3)]
    high = [max(float(skin.points[:, k].max()) for skin in skins) for k in range(3)]
    high[2] = max(high[2], f.liner_top)
    whole = [e for ends in zip(low, high, strict=True) for e in ends]
    return {
        "whole": whole,
        "fireplace": [*whole[:3], f.block_back, f.slab_bottom - MARGIN, f.flue_start + MARGIN],
    }
