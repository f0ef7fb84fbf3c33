"""Key press to painted picture, in a real browser: ours, a blank rectangle, and plain interact with
pyplot.

Run: ``.venv/bin/python tests/bench/latency.py [lab] [voila] [1280x800@2 ...] [view ...]``. Prints the tables that
stand in DEVELOPERS.md: the four views, or with names of views each of them large, in turns with the
blank one. The blank picture carries a number in its lowest left corner, read back off the painted
picture; the workbench's stage tells the number of what it has painted. ``steps`` is the slider that sets a set piece by piece: the picture beside the
blank one, and the view that turns, whose canvas tells which step it shows when it has painted it.
``heat`` is the map of the heat under the slider of its hours, ``heat design`` under a slider of the design.
``set`` is the example as it is laid and of a set, both under the slider of the chimney's wall.
Also how long after *Run all cells* the first one stands.
"""

from __future__ import annotations

import json
import re
import statistics
import sys
import tempfile
import time
from pathlib import Path

import nbformat
from playwright.sync_api import Error

sys.path.insert(0, str(Path(__file__).parent))
from browser import ROOT, Alone, server

SETUP = f"""
import io, numpy as np
import ipywidgets as w
from fireplace_calc import load, change, assess
from fireplace_calc.base.units import INCH
boathouse = load(r"{ROOT}/data/designs/boathouse-laid.toml")
stamp = lambda design: int(round(design.opening.width / INCH * 2))
"""
OURS = """
from fireplace_calc.panels import panel
panel(boathouse, stamp=stamp)
"""
BLANK = """
from matplotlib.figure import Figure
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.patches import Rectangle
import io
from PIL import Image
from fireplace_calc.drawing import WIDTH, HEIGHT
def put_stamp(dots, number):
    for k in range(16):
        dots[-8:, 8 * k : 8 * (k + 1), :3] = 255 * (number >> k & 1)
def pack(dots):
    out = io.BytesIO()
    high, wide = dots.shape[:2]
    Image.frombuffer("RGBX", (wide, high), dots, "raw", "RGBX", 0, 1).save(out, "JPEG", quality=55, subsampling=2)
    return out.getvalue()
figure = Figure(figsize=(WIDTH / 25.4, HEIGHT / 25.4), dpi=88.9)
canvas = FigureCanvasAgg(figure)
ax = figure.add_axes((0, 0, 1, 1)); ax.set_axis_off(); ax.set_xlim(0, 100); ax.set_ylim(0, 100)
rectangle = ax.add_patch(Rectangle((20, 20), 40, 40))
image = w.Image(format="jpeg", layout=w.Layout(width="1050px", max_width="none")); image.add_class("fireplace-picture")
slider = w.FloatSlider(description="Opening width", min=18, max=96, step=0.5, value=42, readout=False)
def draw(event=None):
    rectangle.set_width(slider.value / 2)
    canvas.draw()
    dots = np.asarray(canvas.buffer_rgba())
    put_stamp(dots, int(round(slider.value * 2)))
    image.value = pack(dots)
slider.observe(draw, "value"); draw()
w.VBox([slider, image])
"""
INTERACT = """
%matplotlib inline
%config InlineBackend.print_figure_kwargs = {"bbox_inches": None}
import matplotlib.pyplot as plt
from fireplace_calc.drawing import elevations, paint, WIDTH, HEIGHT
from fireplace_calc.geometry.builder import build_geometry
def show(width):
    design = change(boathouse, {"opening.width": f"{width} in"})
    result = assess(design)
    fig = plt.figure(figsize=(WIDTH / 25.4, HEIGHT / 25.4), dpi=88.9)
    ax = fig.add_axes((0, 0, 1, 1))
    paint(ax, elevations(result.geometry))
    n = stamp(design)
    for k in range(16):
        tone = str(float(n >> k & 1))
        fig.add_artist(plt.Rectangle((8 * k / 1050, 0), 8 / 1050, 8 / 651, facecolor=tone, edgecolor="none",
                                     transform=fig.transFigure, zorder=99))
    plt.show()
w.interact(show, width=w.FloatSlider(description="Opening width", min=18, max=96, step=0.5, value=42, readout=False))
None
"""
STEPS = f"""
from fireplace_calc.panels.step_by_step import StepByStep
grown = StepByStep(load(r"{ROOT}/data/designs/boathouse.toml"))
show = grown.board.show
grown.board.show = lambda views: show(views, stamp=grown.slider.value)
grown.show()
grown
"""
"""The example, from a set."""
SHORT = BLANK.replace(
    "min=18, max=96, step=0.5, value=42", "min=0, max=60, step=1, value=2"
).replace("int(round(slider.value * 2))", "int(slider.value)")
"""A slider as short as that of the steps."""
HEAT = f"""
from fireplace_calc.panels import panel
heated = panel(load(r"{ROOT}/data/designs/plain.toml"), folds=("heat",))
heated.open("heat")
fold = heated.folds["heat"]
fold.length.value, fold.hour.value = (24.0, 1), 2.0
show = fold.board.show_whole
fold.board.show_whole = lambda sheet: show(sheet, int(2 * fold.hour.value))
fold.widget
"""
"""The map of the heat, scrubbed by hour."""
HOURS = BLANK.replace("min=18, max=96, step=0.5, value=42", "min=0, max=30, step=0.5, value=2")
"""A slider as long as that of the hours."""
DESIGNED = f"""
from fireplace_calc.panels import panel
heated = panel(load(r"{ROOT}/data/designs/plain.toml"), folds=("heat",))
heated.open("heat")
fold = heated.folds["heat"]
show = fold.board.show_whole
fold.board.show_whole = lambda sheet: show(sheet, stamp(heated.design))
heated
"""
"""The same map beside the workbench's controls, while the opening's width moves."""
WALL = OURS.replace(
    "(boathouse, stamp=stamp)",
    '(load(r"%s"), leads=("chimney.wall",), stamp=lambda one: int(round(one.chimney.wall / INCH * 2)))',
)
"""Of a design that is read from a file, under the slider of its chimney's wall."""
CONTESTANTS = {"blank": BLANK, "ours": OURS, "interact": INTERACT}
WATCH = r"""
() => {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const pictures = () => document.querySelectorAll('.fireplace-picture, .jp-OutputArea-output img, .jp-RenderedImage img');
  const stamp = (image) => {
    context.drawImage(image, 0, image.naturalHeight - 8, 128, 8, 0, 0, 128, 8);
    const data = context.getImageData(0, 0, 128, 8).data;
    let n = 0;
    for (let k = 0; k < 16; k++) if (data[(4 * 128 + 8 * k + 4) * 4] > 127) n |= 1 << k;
    return n;
  };
  canvas.width = 128; canvas.height = 8;
  window.seen = []; window.presses = []; window.last = null;
  // A step of the width is sent as one image in every view.
  const known = new WeakMap();
  const look = () => {
    const stage = document.querySelector('[data-stamp]'), now = performance.now();
    if (stage?.dataset.stamp !== undefined && Number(stage.dataset.stamp) !== window.last)
      window.seen.push([window.last = Number(stage.dataset.stamp), now]);
    for (const image of pictures()) {
      if (!image.complete || !image.naturalWidth || known.get(image) === image.src) continue;
      known.set(image, image.src);
      const n = stamp(image);
      if (n !== window.last) window.seen.push([n, now]);
      window.last = n;
    }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  document.addEventListener('keydown', () => window.presses.push(performance.now()), true);
}
"""

WATCH_SPACE = """
() => {
  window.seen = []; window.presses = []; window.last = null;
  const look = () => {
    const step = document.querySelector('.turning-canvas').dataset.step;
    if (step !== undefined && Number(step) !== window.last) window.seen.push([window.last = Number(step), performance.now()]);
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  document.addEventListener('keydown', () => window.presses.push(performance.now()), true);
}
"""
HELD = """() => {
  const handle = document.activeElement;
  setTimeout(async () => {
    const t0 = performance.now();
    for (let k = 0; k < 30; k++) {
      while (performance.now() < t0 + k * 1000 / 30) await new Promise((r) => setTimeout(r, 1));
      const key = { key: 'ArrowRight', code: 'ArrowRight', bubbles: true };
      handle.dispatchEvent(new KeyboardEvent('keydown', key));
      if (handle.type === 'range') { // its own steps follow no key but a hand's
        handle.stepUp();
        handle.dispatchEvent(new Event('input', { bubbles: true }));
      }
    }
    window.held = performance.now();
  }, 2000);
}"""


FIRST = """([space]) => {
  const canvas = document.querySelector('.turning-canvas'), picture = document.querySelector('.fireplace-picture');
  if (space) return canvas?.dataset.step !== undefined;
  if (document.querySelector('.fp-sheet')?.width > 1) return true;
  return (picture?.complete && picture.naturalWidth > 0) || document.querySelector('.jp-RenderedImage img');
}"""
IN_SPACE = "steps, in space"


def notebook(folder: Path, name: str, source: str) -> Path:
    cells = [nbformat.v4.new_code_cell(SETUP), nbformat.v4.new_code_cell(source)]
    kernel = {"name": "python3", "display_name": "Python 3 (ipykernel)", "language": "python"}
    made = nbformat.v4.new_notebook(
        cells=cells, metadata={"fireplace": {"run_on_open": True}, "kernelspec": kernel}
    )
    path = folder / f"{name}.ipynb"
    nbformat.write(made, path)
    return path


def measure(
    kind: str, folder: Path, name: str, source: str, screen: tuple, presses: int = 20
) -> dict:
    """Single presses, then a key held at 30 Hz for a second."""
    space = name == IN_SPACE
    path = notebook(folder, name, source)
    with server(kind, path, folder) as address, Alone(*screen) as chromium:
        view = chromium.look_in()
        for left in range(
            12, -1, -1
        ):  # Voila now and then never ends a page with the output area of interact
            try:
                view.goto(address, timeout=25_000)
                break
            except Error:
                if not left:
                    raise
        if kind == "lab":  # not one of the supplied notebooks: it asks
            view.get_by_role("button", name="Run all cells", exact=True).click(timeout=120_000)
        asked = time.perf_counter()
        handle = view.locator('[role="slider"], input[type="range"]').first
        handle.wait_for(timeout=120_000)
        view.wait_for_function(FIRST, arg=[space], timeout=120_000, polling=10)
        first = time.perf_counter() - asked
        view.wait_for_timeout(3000)
        view.evaluate(WATCH_SPACE if space else WATCH)
        view.wait_for_timeout(500)
        handle.focus()
        waits = []
        for i in range(presses):
            view.evaluate("() => { window.seen.length = 0; window.presses.length = 0; }")
            view.keyboard.press("ArrowRight" if i < presses // 2 else "ArrowLeft")
            view.wait_for_function("() => window.seen.length > 0", timeout=20_000, polling=5)
            waits.append(view.evaluate("() => window.seen[0][1] - window.presses[0]"))
            view.wait_for_timeout(120)
        view.wait_for_timeout(800)
        start = view.evaluate(
            "() => { window.seen.length = 0; window.presses.length = 0; return window.last; }"
        )
        view.evaluate(HELD)
        chromium.leave(6)  # a debugger that listens takes a tenth of both cores
        held, seen = chromium.look_in().evaluate("() => [window.held, window.seen]")
    last = next((t - held for n, t in seen if n == start + 30), None)
    return {
        "waits": waits,
        "first": first,
        "frames": len(seen),
        "last": last,
        "right": bool(seen) and seen[-1][0] == start + 30,
    }


def pooled(rounds: list[dict]) -> dict:
    """Every press of all rounds together; of the held keys the middle one, and the worst last
    picture.
    """
    waits = sorted(wait for one in rounds for wait in one["waits"])
    lasts = [one["last"] for one in rounds]
    return {
        "median": statistics.median(waits),
        "p95": waits[int(0.95 * (len(waits) - 1))],
        "first": max(one["first"] for one in rounds),
        "frames": statistics.median_low([one["frames"] for one in rounds]),
        "last": None if None in lasts else max(lasts),
        "right": all(one["right"] for one in rounds),
    }


def contestants(views: list[str]) -> dict[str, str]:
    """Source of each one's cell."""
    if not views:
        return CONTESTANTS
    if views == ["steps"]:
        return {"blank": SHORT, "steps, picture": STEPS, IN_SPACE: STEPS}
    if views == ["set"]:
        designs = f"{ROOT}/data/designs"
        laid, of_set = (WALL % f"{designs}/{name}.toml" for name in ("boathouse-laid", "boathouse"))
        return {"blank": BLANK, "laid": laid, "of a set": of_set}
    if views == ["heat", "design"]:
        return {"blank": BLANK, "heat, by design": DESIGNED}
    if views == ["heat"]:
        return {"blank": HOURS, "heat, by hour": HEAT}
    return {"blank": BLANK} | {
        view: OURS.replace("stamp=stamp", f'stamp=stamp, view="{view}"') for view in views
    }


def main(kinds: list[str], views: list[str], screen: tuple, rounds: int = 3) -> None:
    """The contestants take turns, so that a machine which is busy for a while is busy for all of
    them.
    """
    for kind in kinds:
        turns = contestants(views)
        runs = {name: [] for name in turns}
        with tempfile.TemporaryDirectory() as folder:
            for name, source in list(turns.items()) * rounds:
                runs[name].append(measure(kind, Path(folder).resolve(), name, source, screen))
                print(json.dumps({kind: {name: pooled(runs[name])}}), file=sys.stderr)
        found = {name: pooled(each) for name, each in runs.items()}
        print(f"\n{'JupyterLab' if kind == 'lab' else 'Voila'}, {time.strftime('%Y-%m-%d')}\n")
        print(
            "| | median [ms] | 95 % [ms] | median, of blank | 95 %, of blank "
            "| frames of 30 | last right after [ms], worst | first [s], worst |"
            "\n|---|---|---|---|---|---|---|---|"
        )
        for name, m in found.items():
            last = "never" if m["last"] is None or not m["right"] else f"{m['last']:.0f}"
            print(
                f"| {name} | {m['median']:.1f} | {m['p95']:.1f} |"
                f" {m['median'] / found['blank']['median']:.2f} |"
                f" {m['p95'] / found['blank']['p95']:.2f} | {m['frames']} | {last} |"
                f" {m['first']:.1f} |"
            )


if __name__ == "__main__":
    asked = [kind for kind in ("lab", "voila") if kind in sys.argv]
    screens = [word for word in sys.argv[1:] if re.fullmatch(r"\d+x\d+(@\d)?", word)]
    words = [word for word in sys.argv[1:] if word not in asked + screens]
    for screen in screens or ["1280x1000"]:
        wide, high, dense = re.fullmatch(r"(\d+)x(\d+)(?:@(\d))?", screen).groups("1")
        print(f"\n{screen}")
        main(asked or ["lab", "voila"], words, (int(wide), int(high), int(dense)))
