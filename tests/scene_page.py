"""The lit scene on a page of its own: the built module with a model that stands in for the widget's, in a headless Chromium
on software GL.
"""

import base64
import contextlib
import functools
import http.server
import io
import json
import tempfile
import threading
from dataclasses import asdict
from pathlib import Path

import numpy as np
from bench.browser import chromium
from PIL import Image

import fireplace_calc
from fireplace_calc.panels.scene.scene_view import _hatches, _plain
from fireplace_calc.scene.sky import sun_table
from fireplace_calc.scene.stuffs import stuffs
from fireplace_calc.scene.whole_scene import gather_scene
from fireplace_calc.scene.wire import pack_fireplace, pack_layouts, pack_setting

SCENE = Path(fireplace_calc.__file__).parent / "panels" / "scene" / "scene.js"
FLAGS = [
    "--no-sandbox",
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
    "--ignore-gpu-blocklist",
]
PAGE = """<!doctype html><meta charset=utf-8><style>body{margin:0}.fs{--fs-height:HIGHpx}</style><div id=box></div>
<script type=module>
const read = (v) => v && v.$bytes !== undefined ? new DataView(Uint8Array.from(atob(v.$bytes), (c) => c.charCodeAt(0)).buffer)
  : Array.isArray(v) ? v.map(read) : v && typeof v === 'object' ? Object.fromEntries(Object.entries(v).map(([k, x]) => [k, read(x)])) : v;
const ons = {}, state = read(await (await fetch('first.json')).json());
window.model = {
  get: (k) => state[k], save_changes() {}, sent: [], send(m) { this.sent.push(m); },
  set: (k, v) => { state[k] = v; (ons['change:' + k] || []).forEach((f) => f()); },
  on: (k, f) => (ons[k] ||= []).push(f), off: (k, f) => { ons[k] = (ons[k] || []).filter((g) => g !== f); },
  async put(name) { Object.entries(read(await (await fetch(name)).json())).forEach(([k, v]) => this.set(k, v)); },
};
window.module = (await import('./scene.js')).default;
window.show = () => { const el = document.createElement('div'); document.getElementById('box').replaceChildren(el); return window.module.render({ model, el }); };
window.off = window.show();
window.scene = document.querySelector('.fs').scene;
window.png = async (w, h, gather) => { const b = await scene.picture(w, h, gather), a = new Uint8Array(await b.arrayBuffer()); let s = '';
  for (let k = 0; k < a.length; k += 32768) s += String.fromCharCode(...a.subarray(k, k + 32768)); return btoa(s); };
</script>"""


def traits(result, mode="room"):
    """All that a widget of an assessment would hold."""
    scene = gather_scene(result, mode)
    return {
        "setting": pack_setting(scene.setting),
        "fireplace": pack_fireplace(scene.fireplace, scene.measures, scene.standpoints, "Trial"),
        "layouts": pack_layouts(scene.layouts),
        "looks": {name: _plain(asdict(stuff)) for name, stuff in stuffs().items()},
        "sun": sun_table(result.design),
        "hatches": _hatches(),
        "mode": mode,
        "step": -1,
        "steps": 0,
        "units": "feet-inches",
        "words": {},
        "bare": False,
        "hour": "Day",
    }


def written(value):
    """Plain values and bytes as what JSON can hold."""
    if isinstance(value, bytes):
        return {"$bytes": base64.b64encode(value).decode()}
    if isinstance(value, dict):
        return {k: written(v) for k, v in value.items()}
    if isinstance(value, (list, tuple)):
        return [written(v) for v in value]
    return value.item() if hasattr(value, "item") else value


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


class ScenePage:
    """A page that shows a scene; ``faults`` are its errors."""

    def __init__(self, browser, folder, address, **how):
        self.folder, self.faults = folder, []
        self.view = browser.new_page(**how)
        self.view.on("pageerror", lambda error: self.faults.append(str(error)))
        self.view.goto(address)
        self.view.wait_for_function("window.scene", timeout=60_000)

    def ask(self, js, told=None):
        return self.view.evaluate(js, told)

    def ready(self, patience=120):
        """Wait for all light and all coats."""
        self.view.wait_for_function("scene.ready()", timeout=1000 * patience)

    def put(self, name, told):
        """Send other traits."""
        (self.folder / name).write_text(json.dumps(written(told)))
        self.view.evaluate("(name) => model.put(name)", name)

    def picture(self, eye="", hour="", size=(480, 312), gather=4):
        """A picture in sRGB, rows from above; the light of its hour waited for."""
        self.ask(
            "([eye, hour]) => { if (eye) scene.look(eye); if (hour) scene.setHour(hour); }",
            [eye, hour],
        )
        if hour:
            self.ready()
        data = self.ask("([w, h, g]) => png(w, h, g)", [*size, gather])
        return np.asarray(Image.open(io.BytesIO(base64.b64decode(data))).convert("RGB")).astype(
            float
        )


@contextlib.contextmanager
def shown(result, mode="room", args=(), high=520, **how):
    """A page that shows an assessment in a picture of this height. [px]"""
    from playwright.sync_api import sync_playwright

    folder = Path(tempfile.mkdtemp())
    (folder / "scene.js").write_bytes(SCENE.read_bytes())
    (folder / "index.html").write_text(PAGE.replace("HIGH", str(high)))
    (folder / "first.json").write_text(json.dumps(written(traits(result, mode))))
    server = http.server.ThreadingHTTPServer(
        ("127.0.0.1", 0), functools.partial(_Quiet, directory=str(folder))
    )
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        with sync_playwright() as play:
            browser = play.chromium.launch(executable_path=chromium(), args=[*FLAGS, *args])
            how = {"viewport": {"width": 820, "height": 700}, **how}
            yield ScenePage(
                browser, folder, f"http://127.0.0.1:{server.server_port}/index.html", **how
            )
            browser.close()
    finally:
        server.shutdown()
