"""The lit scene in a browser: its rays against the solids, its pixels against its stuffs and lights, what it gives back."""

import os

import numpy as np
import pytest
from bench.browser import chromium
from scene_page import shown, traits
from test_browser import REQUIRED
from test_walks import EVERY

from fireplace_calc import assess, change, example, load
from fireplace_calc.scene.whole_scene import gather_scene


@pytest.fixture(scope="module")
def boathouse():
    return load(example("boathouse-laid"))


@pytest.fixture(scope="module")
def lit(boathouse):
    """One page for all that only looks, with its light and its coats."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", "no Chromium, but it must be there"
        pytest.skip("no Chromium on this machine (Debian: apt-get install chromium)")
    # As small as its controls stand; pictures that are looked at have a size of their own.
    with shown(assess(boathouse), high=260, viewport={"width": 400, "height": 560}) as page:
        page.ready(180)
        yield page


def nearest(things, start, way):
    """Own ray against every triangle, by Cramer's rule in double precision: key of the thing and distance [m]."""
    best = ("", np.inf)
    for thing in things:
        if thing.stuff == "glass":
            continue
        a, b, c = (thing.points[thing.faces[:, k]] for k in range(3))
        p = np.cross(way, c - a)
        det = np.einsum("ij,ij->i", b - a, p)
        with np.errstate(divide="ignore", invalid="ignore"):
            s = start - a
            u = np.einsum("ij,ij->i", s, p) / det
            q = np.cross(s, b - a)
            v = q @ way / det
            t = np.einsum("ij,ij->i", c - a, q) / det
        hit = (np.abs(det) > 1e-14) & (u >= 0) & (v >= 0) & (u + v <= 1) & (t > 1e-4)
        if hit.any() and t[hit].min() < best[1]:
            best = (thing.key, t[hit].min())
    return best


def test_rays_of_the_page_meet_the_solids_where_they_are(lit, boathouse):
    scene = gather_scene(assess(boathouse))
    things = (*scene.setting, *scene.fireplace)
    draw = np.random.default_rng(17)
    start = np.array([0.4, -2.5, 1.3])
    ways = draw.normal(size=(150, 3)) * [1, 0.6, 0.7] + [0, 0.9, 0]
    ways /= np.linalg.norm(ways, axis=1)[:, None]
    told = lit.ask(
        "([from, ways]) => ways.map((way) => { const hit = scene.picking.ray(from, way);"
        " return hit && [scene.things[hit.number].key, hit.distance]; })",
        [start.tolist(), ways.tolist()],
    )
    met = 0
    for way, page in zip(ways, told, strict=True):
        key, far = nearest(things, start, way)
        if not page:
            assert far == np.inf
            continue
        met += 1
        assert page[1] == pytest.approx(far, abs=1e-3), (key, page)
        near = nearest([t for t in things if t.key == page[0]], start, way)[1]
        assert near == pytest.approx(far, abs=1e-3)  # where two meet either may be named
    assert met > 120


def region(lit, key, size=(480, 312), normal=None):
    """Which dots of the picture as it stands show a thing, every fourth each way."""
    told = lit.ask(
        "([w, h]) => { scene.place(w / h); const keys = []; for (let y = 2; y < h; y += 4) for (let x = 2; x < w; x += 4) {"
        " const hit = scene.picking.at(scene.camera, 2 * (x + .5) / w - 1, 1 - 2 * (y + .5) / h); keys.push(hit ? scene.things[hit.number].key : ''); } return keys; }",
        list(size),
    )
    grid = np.array(told).reshape(-(-(size[1] - 2) // 4), -(-(size[0] - 2) // 4))
    return [(2 + 4 * j, 2 + 4 * i) for j, i in np.argwhere(grid == key)]


def of(picture, dots):
    rows, columns = np.array(dots).T
    return picture[rows, columns]


def test_every_stuff_that_is_seen_has_its_coat(lit):
    """A stuff without its coat is one even tone: joints, grain and weave are gone."""
    picture = lit.picture("Standing", "Overcast")
    bare = lit.ask(
        "scene.body.meshes.filter((m) => m.visible && m.material.uniforms?.coated && !m.material.uniforms.coated.value)"
        ".map((m) => m.userData.group.stuff)"
    )
    assert bare == []
    face = of(picture, region(lit, "firebox walls"))
    assert len(face) > 100
    red, green, blue = face.mean(0)
    assert red > 1.15 * green > green > blue  # brick, and not gray
    assert face.mean(1).std() > 9  # joints and units
    lit.ask(
        "scene.body.meshes.forEach((m) => { if (m.material.uniforms.coated) m.material.uniforms.coated.value = 0; })"
    )
    plain = of(lit.picture("Standing"), region(lit, "firebox walls"))
    lit.ask(
        "scene.body.meshes.forEach((m) => { if (m.material.uniforms.coated) m.material.uniforms.coated.value = 1; })"
    )
    assert plain.mean(1).std() < 0.7 * face.mean(1).std()


def test_every_light_does_its_share(lit):
    """Each light alone, as the worker answers it: sky, sun, lamp and fire all reach the room."""
    pictures = {
        hour: lit.picture("Standing", hour) for hour in ("Day", "Overcast", "Dusk", "Night")
    }
    means = {hour: picture.mean() for hour, picture in pictures.items()}
    assert means["Day"] > 1.5 * means["Night"] and min(means.values()) > 12
    # The sun: some floor or wall is far brighter by day than under clouds, against the rest.
    gain = pictures["Day"].mean(2) - pictures["Overcast"].mean(2)
    assert np.percentile(gain, 99) > np.median(gain) + 25
    # Night is red by the fire, day is not.
    warm = {hour: p[..., 0].mean() / p[..., 2].mean() for hour, p in pictures.items()}
    assert warm["Night"] > 1.6 * warm["Overcast"]
    for uniform, low in (("flame", 0.93), ("atlas", 0.6)):
        lit.ask(
            "(name) => { window.kept = scene.shared[name].value; if (name === 'flame') { window.kept = kept.clone(); scene.shared.flame.value.setRGB(0, 0, 0); }"
            " else { const data = kept.image.data; window.half = data.slice(); data.fill(0); kept.needsUpdate = true; } }",
            uniform,
        )
        without = lit.picture("Standing").mean()
        lit.ask(
            "(name) => { if (name === 'flame') scene.shared.flame.value.copy(kept); else { kept.image.data.set(half); kept.needsUpdate = true; } }",
            uniform,
        )
        assert without < low * means["Night"], uniform


SEAMS = """() => { const found = []; for (const c of scene.body.charts) {
      if (c.hidden || !c.thing.key.startsWith('wall') || c.area < 1.2 || Math.abs(c.n[2]) > .1) continue;
      const at = (i, j) => scene.atlas.light[4 * ((c.y + j) * 1024 + c.x + i) + 3];
      let edge = 0, near = 0; for (let i = 2; i < c.w - 2; i++) { edge += at(i, c.h - 1); near += at(i, c.h - 4); }
      found.push([c.thing.key, edge, near]); } return found; }"""


def test_no_corner_leaks_light(lit):
    """By night, by the fire's light alone: the seam of wall and ceiling is no brighter than the wall below it."""
    lit.picture("Corner", "Night")
    assert len(seams := lit.ask(SEAMS)) >= 3
    for key, edge, near in seams:
        assert edge <= 1.15 * near + 1e-3, key


BLACK = """() => scene.body.charts.filter((c) => /cornice|skirting/.test(c.thing.key) && !c.hidden && c.area > .03 && c.n[2] < .3
  && (c.n[0] * -(c.corners.low[0] + c.corners.high[0]) / 2 + c.n[1] * (scene.room.front / 2 - (c.corners.low[1] + c.corners.high[1]) / 2)) > .2)
  .filter((c) => { for (let j = 0; j < c.h; j++) for (let i = 0; i < c.w; i++) if (scene.atlas.light[4 * ((c.y + j) * 1024 + c.x + i) + 1] > 0) return false; return true; })
  .map((c) => `${c.thing.key} ${c.n}`)"""


def test_no_strip_along_the_walls_is_black(lit):
    """Samples of a face that leans were put beside it, inside the wall: a black line ran under the ceiling."""
    lit.picture("Standing", "Overcast", gather=1)
    assert lit.ask(BLACK) == []


def test_nothing_is_drawn_at_rest(lit):
    lit.ask("scene.again()")
    lit.view.wait_for_function("scene.film.still", timeout=60_000)
    before = lit.ask("scene.film.frames")
    lit.view.wait_for_timeout(1200)
    assert lit.ask("scene.film.frames") == before


def test_what_moves_is_drawn_before_the_fine_picture(lit):
    """Also where the machine is busy for longer than a hand rests: the change would wait behind a
    frame that takes many times as long. Its sun's map is the quick one, at rest the fine one.
    """
    lit.ask("scene.setHour('Day')")
    lit.view.wait_for_function("scene.ready() && scene.film.still", timeout=120_000)
    lit.ask("""() => { const { film } = scene, draw = film.draw; window.drew = []; window.maps = [];
      film.draw = function (k = -1) { window.drew.push(k); draw.call(this, k);
        window.maps.push(scene.shared.sunMap.value === scene.sun.quick.depthTexture); };
      film.busy = true; scene.sunStale = true; scene.again(); }""")
    lit.view.wait_for_timeout(500)
    lit.ask("scene.film.busy = false")
    lit.view.wait_for_timeout(300)
    assert lit.ask("window.drew") == []
    lit.ask("scene.again()")
    lit.view.wait_for_function("scene.film.still", timeout=60_000)
    drew, maps = lit.ask("[window.drew, window.maps]")
    assert drew[0] == -1 and drew[-24:] == [*range(24)]
    assert lit.ask("scene.sun.quick.width") < lit.ask("scene.sun.target.width")
    assert maps == [k < 0 for k in drew]
    lit.ask("() => { delete scene.film.draw; }")


COUNTED = """() => { const gl = scene.renderer.getContext(), link = gl.linkProgram; window.linked = 0;
  gl.linkProgram = (program) => { window.linked++; link.call(gl, program); }; }"""
HALVES = """() => { const { atlas } = scene.body, from = 4 * 1024 * (atlas.tall >> 1), some = (all) => Array.from(all.slice(from, from + 40000));
  return [some(scene.shared.atlas.value.image.data), some(atlas.light)]; }"""
"""Light as the texture holds it, and as it is."""


def test_a_change_keeps_the_eye_and_never_goes_dark(lit, boathouse):
    before = lit.picture("Standing", "Overcast").mean()
    stood = lit.ask("scene.camera.position.toArray()")
    wider = assess(change(boathouse, {"opening.width": "46 in"}))
    told = {k: v for k, v in traits(wider).items() if k in ("fireplace", "layouts")}
    lit.ask(COUNTED)
    fire = lit.ask("scene.fireAt")
    lit.put("wider.json", told)
    lit.view.wait_for_function("!scene.taken")
    assert lit.ask("scene.fireAt") != fire, "the fire moved"
    half, light = (np.array(list(of), float) for of in lit.ask(HALVES))
    half = half.astype(np.uint16).view(np.float16).astype(float)
    assert light.max() > 0 and np.allclose(half, light, rtol=2**-10, atol=2**-24)
    at_once = lit.picture(gather=1).mean()
    assert at_once == pytest.approx(before, rel=0.12)
    assert np.allclose(lit.ask("scene.camera.position.toArray()"), stood, atol=0.35)
    lit.ready()
    assert lit.ask("window.linked") == 0, "without a graphics card a new program takes 100 ms"
    assert lit.picture(gather=1).mean() == pytest.approx(at_once, rel=0.12)


DARK = """() => { const { atlas } = scene.body, { light } = atlas, wide = light.length / 4 / atlas.tall, made = {};
  for (const { thing, n, x, y, w, h, hidden } of atlas.charts) {
    if (hidden || n[1] > -.9 || !/^(hearth extension|firebox walls)$/.test(thing.key)) continue;
    for (let j = y; j < y + h; j++) for (let i = x; i < x + w; i++) {
      const k = 4 * (j * wide + i), dark = !(light[k] + light[k + 1] + light[k + 2] + light[k + 3] > 0);
      const of = made[thing.key] ||= [0, 0]; of[0] += dark; of[1]++; } }
  return made; }"""
"""Dark texels and all, of the slab's front and of the face."""


def test_a_slab_that_lay_in_the_floor_has_light_as_soon_as_it_is_raised(lit, boathouse):
    """Its front was in the dark; and what hung before the face left a dark patch where it hung."""
    for level in ("0 in", "36 in"):
        raised = traits(assess(change(boathouse, {"base.hearth_level": level})))
        lit.put("level.json", {k: raised[k] for k in ("fireplace", "layouts", "setting")})
        lit.view.wait_for_function("!scene.taken")
        dark = lit.ask(DARK)
        if level == "0 in":
            lit.ready()
    assert set(dark) == {"hearth extension", "firebox walls"}
    assert all(count == 0 and texels > 4 for count, texels in dark.values()), dark
    first = traits(assess(boathouse))
    lit.put("level.json", {k: first[k] for k in ("fireplace", "layouts", "setting")})
    lit.ready()


def test_across_a_corner_the_sun_comes_in_by_the_windows(lit, boathouse):
    """The way to the sun is turned with the wall that has the windows. What the sun brightens most,
    dot by dot, sees it through a window and past everything else; and no seam leaks.
    """
    cornered = assess(change(boathouse, {"breast.place": "across a corner"}))
    told, scene = traits(cornered), gather_scene(cornered)
    lit.put("corner.json", {k: told[k] for k in ("fireplace", "layouts", "setting")})
    lit.view.wait_for_function("!scene.taken")
    lit.ready()
    pictures = [lit.picture("Corner", hour).mean(2) for hour in ("Overcast", "Day")]
    assert all(edge <= 1.15 * near + 1e-3 for _, edge, near in lit.ask(SEAMS))
    plain = np.array(lit.ask("scene.now.way"))
    month, hour, ways = told["sun"]["month"], told["sun"]["hour"], told["sun"]["ways"]
    own = np.frombuffer(ways, "<f4").reshape(12, 49, 4)[month, int(2 * hour), :3]
    turned = [(own[0] + own[1]) / 2**0.5, (own[1] - own[0]) / 2**0.5, own[2]]
    assert plain == pytest.approx(turned / np.linalg.norm(turned), abs=1e-6)
    gain = pictures[1] - pictures[0]
    high, wide = gain.shape
    brightest = np.argsort(gain.ravel())[::-1][: gain.size // 200 : 12]
    seen = lit.ask(
        "(dots) => dots.map(([x, y]) => { const hit = scene.picking.at(scene.camera, x, y);"
        " return hit && [scene.things[hit.number].key, hit.point]; })",
        [
            [2 * (k % wide + 0.5) / wide - 1, 1 - 2 * (k // wide + 0.5) / high]
            for k in brightest.tolist()
        ],
    )
    things = [t for t in (*scene.setting, *scene.fireplace) if t.stuff not in ("lamp", "shade")]
    windows, wall, through = scene.measures.windows, scene.measures.lit_from, 0
    turn = np.radians(wall.turn)
    into, along = np.array([np.cos(turn), np.sin(turn)]), np.array([-np.sin(turn), np.cos(turn)])
    for _, point in filter(None, seen):
        at = np.array(point)
        far = (wall.plane - (at[:2] - (wall.x, wall.y)) @ into) / (plain[:2] @ into)
        met = at + far * plain
        y = (met[:2] - (wall.x, wall.y)) @ along
        inside = any(w.front < y < w.back and w.sill < met[2] < w.head for w in windows)
        through += inside and nearest(things, at + 0.03 * plain, plain)[1] > far - 0.1
    assert len(brightest) > 40 and through > 0.85 * len(brightest)
    first = traits(assess(boathouse))
    lit.put("corner.json", {k: first[k] for k in ("fireplace", "layouts", "setting")})
    lit.ready()


@pytest.mark.skipif(
    not EVERY, reason="by hand, with KINDS=all; tests/bench/scene.py asks a thousand"
)
def test_twenty_views_give_everything_back(lit):
    lost = lit.ask(
        """async () => { off(); for (let k = 0; k < 20; k++) { const gone = show(); const s = document.querySelector('.fs').scene;
      await new Promise((done) => { setTimeout(done, 60); }); gone(); if (!s.renderer.getContext().isContextLost()) return k; }
      window.off = show(); window.scene = document.querySelector('.fs').scene; return [scene.renderer.getContext().isContextLost()]; }"""
    )
    assert lost == [False]
    lit.ready(180)
    assert lit.faults == []


def test_who_minds_motion_sees_a_still_fire(boathouse, lit):
    """``lit`` only so that one browser is open after the other."""
    assert not lit.ask("scene.burns()")
    lit.ask("scene.setBurning(true)")
    assert lit.ask("scene.burns()")
    lit.view.emulate_media(reduced_motion="reduce")
    lit.view.wait_for_timeout(400)
    assert not lit.ask("scene.burns()")
    lit.view.emulate_media(reduced_motion="no-preference")


def test_without_webgl_the_same_picture_stands_still(lit):
    """Region by region against the picture that WebGL drew, at the same eye and hour; and it says what it is."""
    drawn = lit.picture("Standing", "Overcast")
    lit.ask(
        "() => { off(); const own = HTMLCanvasElement.prototype.getContext; HTMLCanvasElement.prototype.getContext = function (kind, ...more) {"
        " return /webgl/.test(kind) ? null : own.call(this, kind, ...more); }; window.off = show(); window.scene = document.querySelector('.fs').scene; }"
    )
    assert "no WebGL" in lit.view.locator(".fs-none").inner_text()
    lit.ready(180)
    lit.ask("scene.look('Standing')")
    traced = lit.picture("Standing", "Overcast")
    coarse = [p[:312, :480].reshape(13, 24, 16, 30, 3).mean((1, 3)) for p in (drawn, traced)]
    apart = np.abs(coarse[0] - coarse[1]).mean(2)
    assert np.median(apart) < 9 and np.percentile(apart, 90) < 28
    before = lit.ask("scene.film.frames")
    lit.view.locator(".fs canvas").focus()
    lit.view.keyboard.press("ArrowLeft")
    lit.view.wait_for_function("(n) => scene.film.frames > n", arg=before, timeout=30_000)
    assert lit.faults == []
