"""Two options, one wiped over the other, drawn by ``wipe.js`` beside this file."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget
import traitlets

STYLE = """
.wipe { max-width: 1100px; font-size: 14px; line-height: 1.35; margin: .6em 0; }
.wipe-head { display: flex; flex-wrap: wrap; gap: .4em 1em; align-items: end; }
.wipe-head label { display: flex; flex-direction: column; }
.wipe-head select { font: inherit; font-size: 16px; color: inherit; min-height: 44px;
  min-width: 12em; max-width: 100%; background: var(--jp-layout-color1, transparent);
  border: 1px solid var(--jp-border-color1, #8a8a8a); border-radius: 4px; padding: 0 .5em; }
.wipe-head select option { color: #111; background: #fff; }
.wipe-head .wipe-tick { flex-direction: row; align-items: center; min-height: 44px; gap: .5em; }
.wipe-tick input { width: 22px; height: 22px; margin: 11px 0; }
.wipe-stage { position: relative; aspect-ratio: 3 / 2; margin-top: .5em; overflow: hidden;
  touch-action: pan-y; cursor: ew-resize; background: var(--jp-layout-color2, #eee);
  border-radius: 4px; --wipe: 50%; }
.wipe-stage img { position: absolute; inset: 0; width: 100%; height: 100%; display: block;
  user-select: none; -webkit-user-drag: none; pointer-events: none; }
.wipe-stage img[hidden] { display: none; }
.wipe-over { clip-path: inset(0 calc(100% - var(--wipe)) 0 0); }
.wipe-edge { position: absolute; top: 0; bottom: 0; left: var(--wipe); width: 2px;
  margin-left: -1px; background: #fff; box-shadow: 0 0 0 1px #0009; }
.wipe-marks { position: absolute; inset: 0; clip-path: inset(0 0 0 var(--wipe)); }
.wipe-marks[hidden] { display: none; }
.wipe-mark { position: absolute; box-sizing: border-box; border: 2px solid #ffd54a;
  outline: 1px solid #0009; border-radius: 3px; }
.wipe-slide { display: block; width: 100%; height: 44px; margin: 0; cursor: pointer; }
.wipe :is(select, input):focus-visible { outline: 3px solid #0b5c8a; outline-offset: 1px; }
[data-jp-theme-light="false"] .wipe :is(select, input):focus-visible { outline-color: #7cc1ea; }
.wipe-wait { margin: .2em 0; min-height: 1.35em; }
.wipe-said { margin: .2em 0; padding-left: 1.3em; }
.wipe-said:empty { display: none; }
"""


class Wipe(anywidget.AnyWidget):
    """Two pictures from one standpoint and a slider between them.

    Attributes
    ----------
    names : list
        Key and name of every option there is to choose from.
    left_key, right_key : str
        Which two are shown; the page sets them.
    left, right : str
        Addresses of their pictures; empty while one is made.
    marks : list of dict
        Where the right one differs: names, and edges of the place, of width and height. [-]
    said : list of str
        In what it differs, a line each.
    """

    _esm = Path(__file__).with_name("wipe.js")
    _css = STYLE
    names: Any = traitlets.List().tag(sync=True)
    left_key = traitlets.Unicode().tag(sync=True)
    right_key = traitlets.Unicode().tag(sync=True)
    left = traitlets.Unicode().tag(sync=True)
    right = traitlets.Unicode().tag(sync=True)
    marks: Any = traitlets.List().tag(sync=True)
    said: Any = traitlets.List().tag(sync=True)
