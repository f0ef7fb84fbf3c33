"""The lit scene on software GL: first frame, light, turning, a slider's step, and what a thousand changes leave behind.

Run: ``.venv/bin/python tests/bench/scene.py [CHANGES]``.
"""

from __future__ import annotations

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from scene_page import shown, traits

from fireplace_calc import assess, change, example, load

STEP = """async (name) => { const told = await (await fetch(name)).json(), from = performance.now(), frames = scene.film.frames;
  await model.put(name); while (scene.film.frames === frames) await new Promise((done) => { setTimeout(done, 2); });
  return performance.now() - from; }"""
TURN = """async () => { scene.film.times.length = 0; for (let k = 0; k < 60; k++) { scene.eye.turn(.01, 0); scene.again();
  await new Promise((done) => { setTimeout(done, 50); }); } return scene.film.times.slice(-30); }"""
MEMORY = """() => [performance.memory.usedJSHeapSize / 1e6, scene.renderer.info.memory.geometries,
  scene.renderer.info.memory.textures, scene.renderer.info.programs.length]"""


def main(changes: int) -> None:
    """Print what was measured. [ms]"""
    design = load(example("boathouse-laid"))
    with shown(assess(design), args=("--js-flags=--expose-gc",)) as page:
        page.ready(180)
        told = page.ask("scene.timings")
        print({name: round(value) for name, value in told.items()})
        print("turning, median", round(statistics.median(page.ask(TURN))))
        names, kernel = [], []
        for k in range(6):
            began = time.perf_counter()
            wider = assess(change(design, {"opening.width": f"{38 + k} in"}))
            made = {n: v for n, v in traits(wider).items() if n in ("fireplace", "layouts")}
            kernel.append(1000 * (time.perf_counter() - began))
            names.append(f"step{k}.json")
            page.put(names[-1], made)
            page.view.wait_for_timeout(500)
            sent = made["fireplace"]
            print("bytes of numbers", len(sent["points"]) + len(sent["faces"]))
        print("kernel a change, median", round(statistics.median(kernel)))
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
