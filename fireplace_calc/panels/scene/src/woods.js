// Wood: boards of a floor, beams, bark, the end of a log.

import { at, between, cell, tile } from './noise.js';
import { fillJoints, halfJoint, layUnits } from './laid.js';
import { put, rgb } from './sheet.js';

/** Boards cut from logs, each from another place of another log; its rings show as flames along it. */
export function paintBoards(s, coat, { seed, bevel = 0.0016 }) {
  const tones = coat.tones.map(rgb), px = s.sx, whole = coat.rings.length > 0;
  const rings = whole ? coat.rings : [new Float32Array([-1, -1, coat.width + 1, -1, coat.width + 1, coat.height + 1, -1, coat.height + 1])];
  const warp = tile(seed + 1, [cell(0.3, px), cell(0.12, px), cell(0.05, px)], [1, 0.6, 0.3]), pore = tile(seed + 2, [1, 2, 4], [1, 0.9, 0.5]), cloud = tile(seed + 3, [cell(0.25, px), cell(0.08, px)], [1, 0.6]);
  const edge = layUnits(s, rings, { reach: 0.003, repeats: coat.repeats, seed }, (u, _, i, x, y, a, b, d) => {
    const look = u.look || (u.look = boardLook(u, tones, coat.vary));
    const X = x + u.shift[0], Y = y + u.shift[1], w = between(warp, X * 0.35, Y * 1.6);
    // Distance from the heart of the log: a flat cut through a cone gives the flames.
    // A beam is no wider than a log: without boards the cut comes again every hand's width, turned over.
    const across = whole ? b : Math.abs(((b + 9) % 0.44) - 0.22) - 0.11, off = across - look.heart + 0.006 * w, deep = look.deep + look.taper * a + 0.012 * between(warp, X * 0.12 + 90, Y * 0.5);
    const ring = Math.sqrt(off * off + deep * deep) * look.rings + 0.35 * w, part = ring - Math.floor(ring);
    const late = part < 0.72 ? part * part * 0.9 : (1 - part) * 3.2;
    const p = between(pore, X * 0.055, Y), streak = between(pore, X * 0.02, Y * 0.7 + 40), c = at(cloud, X, Y);
    let f = 1.03 - 0.17 * late * look.strong + 0.035 * p + 0.05 * streak + 0.045 * c;
    if (p > 0.62) f *= 0.88;
    const knot = look.knot;
    if (knot) { const kx = (a - knot[0]) / 2.2, ky = b - knot[1], kr = Math.hypot(kx, ky) / knot[2]; if (kr < 1.6) f *= kr < 0.55 ? 0.6 + 0.1 * Math.sin(kr * 30) : 1 - 0.22 * (1.6 - kr); }
    put(s, i, look.tone, f);
    s.height[i] = coat.relief * (0.4 * p - 0.35 * late) + (whole ? look.cup * (b / u.half[1]) ** 2 - (d < bevel ? (bevel - d) * 0.55 : 0) : 0);
    s.rough[i] = 255 * Math.min(Math.max(coat.rough + 0.1 * late - 0.05 * p + 0.06 * c, 0.08), 1);
  });
  if (whole) fillJoints(s, edge, { tone: rgb(coat.joint || '#3a2a1c'), recess: coat.recess, sand: 0.0001, half: halfJoint(edge), rough: 0.9, seed });
}

function boardLook(u, tones, vary) {
  const pick = tones[Math.floor(u.lot() * tones.length)], f = 1 + vary * (u.lot() * 2 - 1);
  return { tone: pick.map((v, k) => v * f * (1 + (k - 1) * 0.02 * (u.lot() - 0.5))), heart: (u.lot() - 0.5) * 0.16, deep: 0.01 + 0.05 * u.lot(), taper: (u.lot() < 0.5 ? -1 : 1) * (0.02 + 0.06 * u.lot()), rings: 80 + 80 * u.lot(), strong: 0.75 + 0.5 * u.lot(), cup: (u.lot() - 0.4) * 0.0006,
    knot: u.lot() < 0.16 ? [(u.lot() - 0.5) * u.half[0], (u.lot() - 0.5) * u.half[1], 0.006 + 0.008 * u.lot()] : null };
}

/** Bark: long furrows that part and meet. */
export function paintBark(s, coat, { seed }) {
  const tone = rgb(coat.tones[0]), { w, h } = s, furrow = tile(seed + 1, [128, 64, 32], [1, 0.8, 0.5]), fine = tile(seed + 2, [1, 2, 4, 8], [0.8, 0.9, 0.8, 0.6]);
  for (let y = 0, i = 0; y < h; y++) for (let x = 0; x < w; x++, i++) {
    // A whole number of times slower along the log, so that it still closes.
    const n = Math.abs(between(furrow, x * 512 / w, (y * 512 / h) * 5) + 0.3 * at(fine, x, y)), ridge = Math.min(n * 1.4, 1), g = at(fine, x, y);
    s.height[i] = coat.relief * (ridge + 0.12 * g);
    put(s, i, tone, (0.7 + 0.34 * ridge) * (1 + 0.16 * g));
  }
}

/** The sawn end of a log: rings and a few shakes. */
export function paintEndGrain(s, coat, { seed }) {
  const tone = rgb(coat.tones[0]), { w, h } = s, warp = tile(seed + 1, [128, 64, 32], [1, 0.5, 0.3]), fine = tile(seed + 2, [1, 2], [1, 1]);
  for (let y = 0, i = 0; y < h; y++) for (let x = 0; x < w; x++, i++) {
    const X = x / w - 0.5, Y = y / h - 0.5, r = Math.hypot(X, Y) * 46 + 0.9 * at(warp, x, y), late = (r - Math.floor(r)) ** 3, g = at(fine, x, y);
    put(s, i, tone, (1 - 0.25 * late) * (1 + 0.06 * g));
    s.height[i] = coat.relief * (0.5 * late + 0.3 * g);
  }
}
