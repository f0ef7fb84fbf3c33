"""A matplotlib backend for a web page: it hands on a Figure's lines and letters instead of dots."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

import numpy as np
from matplotlib.backend_bases import FigureCanvasBase, GraphicsContextBase, RendererBase
from matplotlib.colors import to_hex
from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.transforms import Affine2D, Transform

from fireplace_calc.drawing.page.glyphs import CAP

POINTS_TO_MM = 25.4 / 72
FINE = 64
"""Steps to a millimeter. [1/mm]"""
CAPS = {"butt": "butt", "round": "round", "projecting": "square"}
"""What the page calls the ends of a line."""
_BOLD = 600


@dataclass
class Drawn:
    """What a Figure has drawn, in millimeters from its lower left corner.

    Attributes
    ----------
    pens : list
        Of each path: fill, ink, width [mm], on and off lengths [mm], cap, whether its lines may be
        moved onto whole dots, clip as left, bottom, right, top [mm], number of its runs, and their
        length where all are alike, else nought.
    points : list of array (k, 2)
        Of all paths. [mm]
    runs : list of array
        Lengths of the runs that the points make, of paths whose runs are not alike. [-]
    labels : list
        Of each text: where its base line begins [mm], itself, height of its capitals [mm], whether
        it reads from the right, whether it is bold, ink.
    """

    pens: list[list[Any]] = field(default_factory=list)
    points: list[np.ndarray] = field(default_factory=list)
    runs: list[np.ndarray] = field(default_factory=list)
    labels: list[list[Any]] = field(default_factory=list)

    def add(self, pen: list[Any], points: np.ndarray, starts: np.ndarray) -> None:
        """Add a path, all of whose pen is told but its runs, which begin at these points."""
        runs = np.append(starts[1:], len(points)) - starts
        each = int(runs[0]) if len(runs) == 1 or (runs == runs[0]).all() else 0
        self.pens.append([*pen, len(runs), each])
        self.points.append(points)
        if not each:
            self.runs.append(runs)


class PageRenderer(RendererBase):
    """Takes what a Figure draws; one of its dots is a millimeter.

    Notes
    -----
    Curves become chords. Clips are rectangles; texts lie over everything and stand level or turned
    by a quarter to the left. A path is moved onto whole dots only where it asks for it. Images are
    refused.
    """

    dpi = 25.4

    def __init__(self, width: float, height: float) -> None:
        super().__init__()
        self.width, self.height, self.drawn = width, height, Drawn()

    def get_canvas_width_height(self) -> tuple[float, float]:
        """Of the Figure. [mm]"""
        return self.width, self.height

    def points_to_pixels(self, points: Any) -> Any:
        """Millimeters of some points. [mm]"""
        return points * POINTS_TO_MM

    def flipy(self) -> bool:
        """Heights count from below."""
        return False

    def draw_path(
        self,
        gc: GraphicsContextBase,
        path: Path,
        transform: Transform,
        rgbFace: Any = None,  # matplotlib's own name
    ) -> None:
        """Take a path with its pen."""
        face = None if rgbFace is None else _hex(tuple(rgbFace))
        width = gc.get_linewidth() * POINTS_TO_MM
        edge = _hex(tuple(gc.get_rgb())) if width > 0 else None
        points, starts = _chords(path, transform)
        if not len(points) or not (face or edge):
            return
        clip: Any = gc.get_clip_rectangle()
        dashes: Any = gc.get_dashes()[1]
        pen = [
            face,
            edge,
            round(width, 3),
            None if dashes is None else [round(d * POINTS_TO_MM, 3) for d in dashes],
            CAPS[str(gc.get_capstyle())],
            bool(gc.get_snap()),
            None if clip is None else [round(float(side), 2) for side in clip.extents],
        ]
        self.drawn.add(pen, points, starts)

    def draw_text(
        self,
        gc: GraphicsContextBase,
        x: float,
        y: float,
        s: str,
        prop: FontProperties,
        angle: float,
        ismath: Any = False,
        mtext: Any = None,
    ) -> None:
        """Take a text with its place."""
        size = prop.get_size_in_points() * POINTS_TO_MM * CAP
        weight = prop.get_weight()
        bold = weight == "bold" or (isinstance(weight, int) and weight >= _BOLD)
        self.drawn.labels.append(
            [
                round(x, 2),
                round(y, 2),
                s,
                round(size, 3),
                angle != 0,
                bold,
                _hex(tuple(gc.get_rgb())),
            ]
        )

    def draw_image(self, *_: Any, **__: Any) -> None:
        """There are no dots in a drawing."""
        raise NotImplementedError("A page is sent lines and letters; this Figure holds an image.")


class PageCanvas(FigureCanvasBase):
    """What a Figure is drawn on for a page."""

    def drawn(self) -> Drawn:
        """The Figure's lines and letters."""
        figure = self.figure
        width, height = (25.4 * float(side) for side in figure.get_size_inches())
        renderer, before = PageRenderer(width, height), figure.dpi
        figure.set_dpi(25.4)
        try:
            figure.draw(renderer)
        finally:
            figure.set_dpi(before)
        return renderer.drawn


@lru_cache(maxsize=256)
def _hex(ink: Any) -> str | None:
    """An ink as the page calls it; nothing where it covers nothing."""
    alpha = ink[3] if len(ink) > 3 else 1.0
    return str(to_hex(ink, keep_alpha=alpha < 1)) if alpha > 0 else None


def _chords(path: Path, transform: Transform) -> tuple[np.ndarray, np.ndarray]:
    """Points of a path and where its runs begin; a run that is closed ends where it began."""
    codes: Any = path.codes
    if codes is None:
        points = np.asarray(transform.transform(path.vertices))
        return points, np.zeros(min(1, len(points)), int)
    kinds = set() if codes.max(initial=0) <= Path.LINETO else set(codes.tolist())
    if kinds & {Path.CURVE3, Path.CURVE4}:
        fine: Any = path.cleaned(transform + Affine2D().scale(FINE))
        keep = fine.codes != Path.STOP
        points, codes = fine.vertices[keep] / FINE, fine.codes[keep]
    else:
        points = np.asarray(transform.transform(path.vertices))
    starts = np.flatnonzero(codes == Path.MOVETO)
    if Path.CLOSEPOLY in kinds:
        ends = np.flatnonzero(codes == Path.CLOSEPOLY)
        points[ends] = points[starts[np.searchsorted(starts, ends) - 1]]
    return points, starts
