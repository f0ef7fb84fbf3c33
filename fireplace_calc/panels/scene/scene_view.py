"""The lit scene as a widget."""

from __future__ import annotations

from pathlib import Path

import anywidget
import traitlets

STYLE = """
.fs-canvas { display: block; width: 100%; height: var(--scene-height, 650px); cursor: grab;
  touch-action: pan-y; }
"""


class SceneView(anywidget.AnyWidget):
    """A fireplace in its room, lit; what it shows is packed by ``scene.wire``."""

    _esm = Path(__file__).with_name("scene.js")
    _css = STYLE
    setting = traitlets.Dict().tag(sync=True)
    fireplace = traitlets.Dict().tag(sync=True)
    layouts = traitlets.Dict().tag(sync=True)
    looks = traitlets.Dict().tag(sync=True)
    sun = traitlets.Dict().tag(sync=True)
    hour = traitlets.Dict().tag(sync=True)
