// The worker of a browser without WebGL: rays from the eye, the light of the atlas, the painted coats, the sun by a ray of
// its own. Coarse at once, fine when it is left alone.
import { develop } from './tone.js';
import { treeOf } from './tree.js';

const BAND = 40, PASSES = 4; // rows between two messages; pictures gathered into a fine one
const LINEAR = Float32Array.from({ length: 256 }, (_, k) => (k / 255 <= 0.04045 ? k / 255 / 12.92 : ((k / 255 + 0.055) / 1.055) ** 2.4));
let scene = null, shoot = null, turn = 0, reached = 0; // how far the last ray from the eye went [m]

const breath = () => new Promise((done) => { const channel = new MessageChannel(); channel.port1.onmessage = done; channel.port2.postMessage(0); });
const hold = (v, low, high) => Math.min(high, Math.max(low, v));

/** Color of a coat at a place, of the level whose dots are as large as the picture's [linear light]. */
function coatAt(coat, u, v, size) {
  let level = Math.max(0, Math.floor(Math.log2(Math.max(1, size * coat.levels[0].w))));
  level = Math.min(level, coat.levels.length - 1);
  const { w, h, data } = coat.levels[level], x = Math.floor((u - Math.floor(u)) * w) % w, y = Math.floor((v - Math.floor(v)) * h) % h, k = 4 * (y * w + x);
  return [LINEAR[data[k]], LINEAR[data[k + 1]], LINEAR[data[k + 2]]];
}

/** Light of the atlas at a place [texels]. */
function atlasAt(x, y) {
  const { light, wide } = scene, i = Math.floor(x - 0.5), j = Math.floor(y - 0.5), a = x - 0.5 - i, b = y - 0.5 - j, out = [0, 0, 0, 0];
  for (const [p, q, weight] of [[i, j, (1 - a) * (1 - b)], [i + 1, j, a * (1 - b)], [i, j + 1, (1 - a) * b], [i + 1, j + 1, a * b]]) {
    const k = 4 * (q * wide + p);
    if (weight > 0) for (let c = 0; c < 4; c++) out[c] += weight * (light[k + c] || 0);
  }
  return out;
}

function sooted(c, at, up, fire) {
  const d = [at[0] - fire[0], at[1] - fire[1], at[2] - fire[2]], high = hold(d[2] / 0.8, 0, 1), far = Math.hypot(d[0] / (fire[3] * 0.75), d[1] / 0.42) - 0.6 * high;
  const t = hold((far - 0.5) / 1.2, 0, 1), dark = hold((1 - t * t * (3 - 2 * t)) * (up > 0.7 ? 0.6 : 1.02) * hold((at[1] - 0.01) / 0.16, 0, 1), 0, 0.975);
  return c.map((v) => v + dark * (0.015 - v));
}

/** What a ray sees. [linear light] */
function seen(look, ox, oy, oz, dx, dy, dz) {
  const hit = shoot(ox, oy, oz, dx, dy, dz, 100, false), f = hit.face;
  reached = hit.far;
  if (f < 0) return look.outdoors ? look.sky.map((v, a) => v * (dz < 0 ? [0.3, 0.34, 0.2][a] : [1.1, 1.04, 1][a] - hold(dz / 0.7, 0, 1) * [0.5, 0.26, 0][a])) : look.paper;
  const { groups, owner, uv, spot, glow, normal } = scene, group = groups[owner[f]], far = hit.far, v = hit.v, u = hit.u, w = 1 - u - v;
  const mix = (list, size, k) => w * list[size * 3 * f + k] + u * list[size * (3 * f + 1) + k] + v * list[size * (3 * f + 2) + k];
  const n = [0, 1, 2].map((k) => mix(normal, 3, k)), at = [ox + far * dx, oy + far * dy, oz + far * dz];
  const slant = Math.max(0.2, Math.abs(n[0] * dx + n[1] * dy + n[2] * dz));
  let c = group.coat ? coatAt(group.coat, mix(uv, 2, 0), mix(uv, 2, 1), far * look.dot / slant / group.coat.width) : group.tone;
  let light;
  if (look.outdoors) {
    if (group.sooty) c = sooted(c, at, n[2], look.fire);
    const E = group.smooth ? [0, 1, 2, 3].map((k) => mix(glow, 4, k)) : atlasAt(mix(spot, 2, 0), mix(spot, 2, 1)), fire = E[3] / (1 + 1.1 * E[3]);
    light = [0, 1, 2].map((a) => E[a] + fire * look.flame[a] + group.selfLit * look.lamp[a]);
  } else light = [0.3, 0.285, 0.27].map((v, a) => v + ([0.6, 0.62, 0.66][a] - v) * (n[2] * 0.5 + 0.5));
  const cos = n[0] * look.way[0] + n[1] * look.way[1] + n[2] * look.way[2];
  if (look.sun[0] > 0 && cos > 0 && shoot(...at.map((p, k) => p + 0.004 * n[k]), ...look.way, 60, true).face < 0) light = light.map((v, a) => v + look.sun[a] * cos);
  return c.map((v, a) => v * light[a]);
}

/** The flames as a sheet that faces the eye, added to what lies behind. */
function burning(look, c, ox, oy, dx, dy, dz, oz) {
  const [fx, fy, fz, wide] = look.fire, far = Math.hypot(fx - ox, fy - oy), t = far / Math.hypot(dx, dy), z = oz + t * dz - fz;
  if (z < 0.06 || z > 0.62 || t > reached) return c;
  const x = ((ox + t * dx - fx) * (oy - fy) - (oy + t * dy - fy) * (ox - fx)) / far / wide, up = (z - 0.06) / 0.56;
  const sway = 0.07 * Math.sin(8 * up + 5) * up + 0.03 * Math.sin(21 * up + 9 * x), p = x + sway;
  const hem = 0.5 + 0.22 * Math.sin(15 * p + 1) + 0.16 * Math.sin(29 * p + 4) + 0.1 * Math.sin(53 * p), body = (1 - (2 * p) ** 2) * hem - up;
  const soft = hold(body * 3, 0, 1), hot = soft * soft * (1 - 0.5 * up);
  return soft > 0 ? [c[0] + look.gain * (0.5 * soft + 1.5 * hot), c[1] + look.gain * (0.1 * soft + 0.85 * hot), c[2] + look.gain * 0.32 * hot * hot] : c;
}

/** A picture of what is looked at, told of in bands when it is coarse, gathered when it is fine. */
async function picture(look) {
  const mine = ++turn, { width: w, height: h, eye, right, up, ahead, wideness } = look, sum = new Float32Array(3 * w * h), out = new Uint8ClampedArray(4 * w * h);
  for (let pass = 0; pass < (look.fine ? PASSES : 1); pass++) {
    const jx = (pass * 0.7549 + 0.5) % 1, jy = (pass * 0.5698 + 0.5) % 1;
    for (let y = 0; y < h; y++) {
      if (y % BAND === 0) { await breath(); if (mine !== turn) return; }
      for (let x = 0; x < w; x++) {
        const a = (2 * (x + jx) / w - 1) * wideness, b = (1 - 2 * (y + jy) / h) * wideness * h / w;
        const d = [0, 1, 2].map((k) => ahead[k] + a * right[k] + b * up[k]), long = Math.hypot(...d);
        let c = seen(look, ...eye, d[0] / long, d[1] / long, d[2] / long);
        if (look.burns) c = burning(look, c, eye[0], eye[1], d[0] / long, d[1] / long, d[2] / long, eye[2]);
        const k = y * w + x;
        for (let e = 0; e < 3; e++) sum[3 * k + e] += Math.min(c[e], 6 / look.exposure);
      }
    }
    const much = look.exposure / (pass + 1);
    for (let k = 0; k < w * h; k++) develop(sum[3 * k] * much, sum[3 * k + 1] * much, sum[3 * k + 2] * much, look.plain, out, 4 * k);
    postMessage({ serial: look.serial, width: w, height: h, fine: look.fine, last: pass === PASSES - 1, picture: out.slice() });
  }
}

/** Coats at half their size, and half of that, down to one dot. */
function levelsOf({ w, h, data }) {
  const levels = [{ w, h, data }];
  while (levels.at(-1).w > 1 && levels.at(-1).h > 1) {
    const from = levels.at(-1), to = { w: from.w >> 1, h: from.h >> 1, data: new Uint8Array(4 * (from.w >> 1) * (from.h >> 1)) };
    for (let y = 0; y < to.h; y++) for (let x = 0; x < to.w; x++) for (let a = 0; a < 3; a++) {
      const k = 4 * (2 * y * from.w + 2 * x) + a;
      to.data[4 * (y * to.w + x) + a] = (from.data[k] + from.data[k + 4] + from.data[k + 4 * from.w] + from.data[k + 4 * from.w + 4]) / 4;
    }
    levels.push(to);
  }
  return levels;
}

onmessage = ({ data }) => {
  if (data.scene) {
    scene = data.scene;
    for (const coat of new Set(scene.groups.map((g) => g.coat).filter(Boolean))) coat.levels = levelsOf(coat);
    shoot = treeOf(scene.tri);
  }
  if (data.light) scene.light = data.light;
  if (data.glow) scene.glow = data.glow;
  if (data.look && scene) picture(data.look);
};
