// Coats without units: plaster, paint, mortar, metal; cloth, rugs, leather.

import { at, between, cell, tile } from './noise.js';
import { layUnits } from './laid.js';
import { put, rgb } from './sheet.js';

const TAU = Math.PI * 2;

/** Plaster from the trowel: long shallow sweeps that overlap, and a fine sand. */
export function paintTroweled(s, coat, { seed }) {
  const tone = rgb(coat.tones[0]), { w, h } = s, sweep = tile(seed + 1, [128, 64, 32, 16], [1, 0.7, 0.4, 0.2]), warp = tile(seed + 2, [256, 128, 64], [1, 0.7, 0.4]), sand = tile(seed + 3, [1, 2, 4], [1, 0.8, 0.5]), cloud = tile(seed + 4, [256, 128, 64, 32], [1, 0.8, 0.6, 0.4]);
  const kx = 512 / w, ky = 512 / h;
  for (let y = 0, i = 0; y < h; y++) for (let x = 0; x < w; x++, i++) {
    const X = x * kx, Y = y * ky, a = between(warp, X, Y), b = between(warp, X + 171, Y + 77);
    // Each sweep breaks off at an edge: the fold of a wave.
    const one = between(sweep, X * 2 + 46 * a, Y * 3 + 46 * b), two = between(sweep, X * 4 - 60 * b + 200, Y * 3 + 50 * a + 90);
    const fold = Math.abs(one) * 0.9 + Math.abs(two) * 0.5, g = at(sand, x, y), c = between(cloud, X, Y);
    s.height[i] = coat.relief * (1.15 * fold + 0.4 * one + 0.07 * g);
    put(s, i, tone, 1 + 0.028 * c + 0.012 * g + 0.016 * (fold - 0.4));
    s.rough[i] = 255 * Math.min(coat.rough + 0.05 * c, 1);
  }
}

/** Paint from the roller on a wall, or brushed on wood. */
export function paintPainted(s, coat, { seed }) {
  const tone = rgb(coat.tones[0]), { w, h } = s, stipple = tile(seed + 1, [2, 4, 8], [0.7, 1, 0.6]), broad = tile(seed + 2, [256, 128], [1, 0.6]);
  for (let y = 0, i = 0; y < h; y++) for (let x = 0; x < w; x++, i++) {
    const g = at(stipple, x, y), c = between(broad, (x * 512) / w, (y * 512) / h);
    s.height[i] = coat.relief * (0.5 * g + 2.5 * c);
    put(s, i, tone, 1 + 0.006 * g + 0.008 * c);
  }
}

/** Sand and binder, metal, clay: an even ground with clouds and grit. */
export function paintPlain(s, coat, { seed, sand = 0.6, cloudy = 1 }) {
  const tone = rgb(coat.tones[0]), px = s.sx, { w, h } = s, grit = tile(seed + 1, [1, 2, 4, cell(0.02, px)], [1, 0.9, 0.6, 0.5]), cloud = tile(seed + 2, [256, 128, 64, 32], [1, 0.8, 0.6, 0.5]);
  for (let y = 0, i = 0; y < h; y++) for (let x = 0; x < w; x++, i++) {
    const g = at(grit, x, y), c = between(cloud, (x * 512) / w, (y * 512) / h);
    s.height[i] = coat.relief * (0.5 * g + 0.8 * c);
    put(s, i, tone, 1 + 0.09 * sand * g * (0.4 + coat.vary * 6) + coat.vary * 1.2 * cloudy * c);
    s.rough[i] = 255 * Math.min(Math.max(coat.rough + 0.12 * c + 0.04 * g, 0.04), 1);
  }
}

/** Woven cloth: threads over and under, none quite like the next. */
export function paintWeave(s, coat, { seed, thread = 0.0034 }) {
  const tone = rgb(coat.tones[0]), { w, h } = s, many = Math.max(Math.round(coat.width / thread / 2) * 2, 4), rows = Math.max(Math.round(coat.height / thread / 2) * 2, 4);
  const slub = tile(seed + 1, [4, 16, 64], [1, 0.8, 0.6]), cloud = tile(seed + 2, [256, 64], [1, 0.6]);
  for (let y = 0, i = 0; y < h; y++) {
    const v = (y / h) * rows, row = Math.floor(v), fv = v - row;
    for (let x = 0; x < w; x++, i++) {
      const u = (x / w) * many, col = Math.floor(u), fu = u - col, over = (row + col) % 2, n = at(slub, over ? x : col * 37, over ? row * 53 : y), c = between(cloud, (x * 512) / w, (y * 512) / h);
      const round = over ? Math.sin(fv * Math.PI) * (0.55 + 0.45 * Math.sin(fu * Math.PI)) : Math.sin(fu * Math.PI) * (0.55 + 0.45 * Math.sin(fv * Math.PI));
      s.height[i] = coat.relief * (round + 0.25 * n);
      put(s, i, tone, (0.86 + 0.15 * round) * (1 + 0.07 * n + coat.vary * c));
    }
  }
}

/** Pile: bands of a rug one inside the other, or a plain carpet; tufts in rows. */
export function paintPile(s, coat, { seed }) {
  const tones = coat.tones.map(rgb), { w, h, sx } = s, tuft = tile(seed + 1, [1, 2, 4], [0.8, 1, 0.6]), worn = tile(seed + 2, [256, 128, 32, 16], [1, 0.8, 0.5, 0.4]), band = new Uint8Array(w * h), deep = new Float32Array(w * h).fill(1);
  coat.rings.forEach((ring, number) => {
    layUnits(s, [ring], { reach: 0, wobble: 0.0022, square: tuft, seed: seed + number }, (u, _, i, x, y, a, b, d) => { band[i] = number % tones.length; deep[i] = d; });
  });
  const rows = Math.max(Math.round(coat.height / 0.0075), 1);
  for (let y = 0, i = 0; y < h; y++) {
    const rib = 0.5 + 0.5 * Math.cos(((y / h) * rows) * TAU);
    for (let x = 0; x < w; x++, i++) {
      const g = at(tuft, x, y), c = between(worn, (x * 512) / w, (y * 512) / h), groove = Math.min(deep[i] / 0.006, 1);
      s.height[i] = coat.relief * (0.55 * g + 0.3 * rib + 0.5 * c) - 0.0016 * (1 - groove);
      put(s, i, tones[band[i]], (0.93 + 0.1 * rib + 0.13 * g) * (1 + 0.06 * c) * (0.88 + 0.12 * groove));
    }
  }
}

/** Leather: fine cells with creases between, lighter where it is worn. */
export function paintHide(s, coat, { seed }) {
  const tone = rgb(coat.tones[0]), { w, h } = s, cells = tile(seed + 1, [4, 8, 16], [1, 0.7, 0.4]), fold = tile(seed + 2, [64, 32], [1, 0.5]), cloud = tile(seed + 3, [256, 128, 64], [1, 0.8, 0.6]);
  for (let y = 0, i = 0; y < h; y++) for (let x = 0; x < w; x++, i++) {
    const n = Math.abs(at(cells, x, y)), e = Math.abs(between(fold, (x * 512) / w, (y * 512) / h)), c = between(cloud, (x * 512) / w, (y * 512) / h), crease = Math.min(n * 2.4, 1) * Math.min(0.4 + e * 4, 1);
    s.height[i] = coat.relief * (0.6 * crease + 0.6 * c);
    put(s, i, tone, (0.86 + 0.14 * crease) * (1 + coat.vary * 1.8 * c));
    s.rough[i] = 255 * Math.min(Math.max(coat.rough + 0.14 * c, 0.1), 1);
  }
}
