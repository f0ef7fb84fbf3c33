"""The lit scene on software GL: first frame, light, turning, a slider's step, and what a thousand changes leave behind.

Run: ``.venv/bin/python tests/bench/scene.py [CHANGES]``.
"""

from __future__ import annotations

import json
import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from scene_page import shown, traits

from fireplace_calc import assess, change, example, load
from fireplace_calc.panels.scene.scene_view import SceneView

STEP = """async (name) => { const told = await (await fetch(name)).json(), from = performance.now(), frames = scene.film.frames;
  await model.put(name); while (scene.film.frames === frames) await new Promise((done) => { setTimeout(done, 2); });
  return performance.now() - from; }"""
TURN = """async () => { scene.film.times.length = 0; for (let k = 0; k < 60; k++) { scene.eye.turn(.01, 0); scene.again();
  await new Promise((done) => { setTimeout(done, 50); }); } return scene.film.times.slice(-30); }"""
MEMORY = """() => [performance.memory.usedJSHeapSize / 1e6, scene.renderer.info.memory.geometries,
  scene.renderer.info.memory.textures, scene.renderer.info.programs.length]"""


def letters(value: object) -> int:
    """Bytes and letters of a message, as they go over."""
    if isinstance(value, bytes):
        return len(value)
    if isinstance(value, dict):
        return 2 + sum(len(key) + 4 + letters(held) for key, held in value.items())
    if isinstance(value, (list, tuple)):
        return 2 + sum(1 + letters(held) for held in value)
    return len(json.dumps(value))


def _two(values: list[float]) -> tuple[float, float]:
    return statistics.median(values), max(values)


def main(changes: int) -> None:
    """Print what was measured. [ms]"""
    design = load(example("boathouse-laid"))
    with shown(assess(design), args=("--js-flags=--expose-gc",)) as page:
        page.ready(180)
        told = page.ask("scene.timings")
        print({name: round(value) for name, value in told.items()})
        print("turning, median", round(statistics.median(page.ask(TURN))))
        names, kernel, sent, widget = [], [], [], SceneView(design)
        for k in range(60):
            began = time.process_time()
            widget.put(assess(change(design, {"opening.width": f"{28 + k / 2} in"})), moving=True)
            kernel.append(1000 * (time.process_time() - began))
            sent.append(letters(widget.fireplace) + letters(widget.layouts))
        print("kernel a change, of processor, median and most", *map(round, _two(kernel)))
        print("bytes a change, median and most", *map(round, _two(sent[1:])))
        for k in range(6):
            wider = assess(change(design, {"opening.width": f"{38 + k} in"}))
            names.append(f"step{k}.json")
            page.put(
                names[-1], {n: v for n, v in traits(wider).items() if n in ("fireplace", "layouts")}
            )
            page.view.wait_for_timeout(500)
        steps = [page.ask(STEP, names[k % 6]) for k in range(12)]
        print("sent to first frame, median", round(statistics.median(steps)))
        for count in range(0, changes + 1, max(1, changes // 5)):
            print(
                count, "changes:", [round(v, 1) for v in (page.ask("gc()"), *page.ask(MEMORY))[1:]]
            )
            for k in range(changes // 5 if count < changes else 0):
                page.ask("(name) => model.put(name)", names[k % 6])


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
