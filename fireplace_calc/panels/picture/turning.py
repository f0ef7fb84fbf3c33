"""The fireplace as a body that turns, whole or cut open: the parts' own triangles, drawn by
``turning.js`` beside this file.
"""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import Any

import anywidget
import traitlets

from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.style import HATCHES, THEMES
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mesh import CUT_NORMALS, Mesh, cut_plane, meshes
from fireplace_calc.geometry.parts import Geometry

STYLE = """
.turning { max-width: 1100px; font-size: 13px; }
.turning-tools { display: flex; flex-wrap: wrap; gap: .35em 1.4em; margin-bottom: .45em; }
.turning-group { display: flex; align-items: center; }
.turning-group > span { margin-right: .5em; opacity: .82; }
.turning-group button { font: inherit; color: inherit; background: transparent;
  border: 1px solid var(--jp-border-color1, #999);
  border-left-width: 0; padding: .3em .75em; min-height: 2.1em; cursor: pointer; }
.turning-group span + button { border-left-width: 1px; }
.turning-group button:hover { background: color-mix(in srgb, currentColor 10%, transparent); }
.turning-group button[aria-pressed="true"] { font-weight: 700;
  box-shadow: inset 0 -3px 0 currentColor; }
.turning button:focus-visible, .turning-canvas:focus-visible { outline: 3px solid #0b5c8a;
  outline-offset: 1px; }
[data-jp-theme-light="false"] .turning :is(button, canvas):focus-visible { outline-color: #7cc1ea; }
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

BONDED = ("firebox walls", "smoke chamber walls", "shoulder", "chimney walls")
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
    """

    _esm = Path(__file__).with_name("turning.js")
    _css = STYLE
    shown = traitlets.Dict().tag(sync=True)
    themes = traitlets.Dict().tag(sync=True)
    hatches = traitlets.Dict().tag(sync=True)
    title = traitlets.Unicode().tag(sync=True)
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
        with a half cut away.
    """
    f, number = made.frame, {part.name: k for k, part in enumerate(made.parts)}
    whole = meshes(made)
    ends = [e for low, high in zip(*_ends(whole), strict=True) for e in (low, high)]
    hearth = [
        ends[0],
        ends[1],
        ends[2],
        f.block_back,
        f.slab_bottom - MARGIN,
        f.flue_start + MARGIN,
    ]
    states = {"": _packed(whole, number)}
    for away in CUT_NORMALS:
        states[away] = _packed(meshes(made, away), number, cut_plane(made, away))
    return {
        "parts": [
            {
                "name": part.name,
                "material": part.material,
                "one": part.material if part.name in BONDED else part.name,
            }
            for part in made.parts
        ],
        "boxes": {"whole": ends, "fireplace": hearth},
        "states": states,
    }


def _ends(skins: tuple[Mesh, ...]) -> tuple[list[float], list[float]]:
    low = [min(float(skin.points[:, k].min()) for skin in skins) for k in range(3)]
    return low, [max(float(skin.points[:, k].max()) for skin in skins) for k in range(3)]


def _packed(
    skins: tuple[Mesh, ...], number: dict[str, int], plane: tuple[Any, Any] | None = None
) -> dict[str, bytes]:
    """Several skins as one run of numbers: corners, faces, normals, whose a face is, which were
    cut, and edges with their faces.
    """
    import numpy as np

    corners = np.cumsum([0, *(len(skin.points) for skin in skins)])
    faces = np.cumsum([0, *(len(skin.faces) for skin in skins)])
    edges = [skin.edges + [c, c, f, f] for skin, c, f in zip(skins, corners, faces, strict=False)]
    cap = np.zeros(faces[-1], bool)
    if plane is not None:
        normal, at = plane
        first = np.concatenate([skin.points[skin.faces[:, 0]] for skin in skins])
        turned = np.concatenate([skin.normals for skin in skins])
        cap = (turned @ normal < -0.9999) & (np.abs(first @ normal - at) < 1e-6)
    return {
        "points": np.concatenate([skin.points for skin in skins]).astype("<f4").tobytes(),
        "faces": (
            np.concatenate([skin.faces + c for skin, c in zip(skins, corners, strict=False)])
            .astype("<u4")
            .tobytes()
        ),
        "normals": np.concatenate([skin.normals for skin in skins]).astype("<f4").tobytes(),
        "owner": (
            np.repeat([number[skin.name] for skin in skins], np.diff(faces)).astype("<u2").tobytes()
        ),
        "cap": cap.astype("u1").tobytes(),
        "edges": np.concatenate(edges).astype("<u4").tobytes(),
        "sharp": np.concatenate([skin.sharp for skin in skins]).astype("u1").tobytes(),
    }
