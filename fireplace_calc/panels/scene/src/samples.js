// In the worker: where light is sampled. A sample for each texel that a chart reaches, and one for each corner of smooth
// things, a little off the face.

import { cross, dot } from './vectors.js';

export const COLUMNS = 24; // of a chart: along 0-2, up 3-5, normal 6-8, low 9-10, size 11-12, off 13, x y w h 14-17, tint 18-20, rays 21
const OFF = 0.002, IN = 0.004; // how far a sample stands off its face, and inside its edge [m]

/** Samples of a job: texels of the atlas first, then corners. */
export function samplesOf(job) {
  const { charts, tall, wide, spots } = job, texels = wide * tall, n = texels + spots.length / 9;
  const made = { n, texels, place: new Float32Array(3 * n), normal: new Float32Array(3 * n), tint: new Float32Array(3 * n), chartOf: new Int32Array(n).fill(-1), rays: new Uint16Array(n), live: [] };
  const taken = new Uint8Array(texels);
  for (let f = 0; f < job.owner.length; f++) {
    const c = job.owner[f];
    if (c >= 0 && charts[COLUMNS * c + 21] > 0) covered(job, made, taken, f, c);
  }
  for (let c = 0; c < charts.length / COLUMNS; c++) {
    const [x, y, w, h] = charts.subarray(COLUMNS * c + 14, COLUMNS * c + 18);
    for (let j = 0; j < h; j++) made.chartOf.fill(c, (y + j) * wide + x, (y + j) * wide + x + w);
  }
  slivers(job, made, taken);
  for (let k = 0, s = texels; s < n; k++, s++) {
    for (let a = 0; a < 3; a++) {
      made.normal[3 * s + a] = spots[9 * k + 3 + a];
      made.place[3 * s + a] = spots[9 * k + a] + 0.006 * spots[9 * k + 3 + a];
      made.tint[3 * s + a] = spots[9 * k + 6 + a];
    }
    made.rays[s] = job.spotRays;
    made.live.push(s);
  }
  return made;
}

/** Texels that one triangle of a chart reaches. */
function covered(job, made, taken, f, c) {
  const { tri, charts, wide } = job, q = COLUMNS * c, w = charts[q + 16], h = charts[q + 17];
  const at = [0, 1, 2].map((k) => texelOf(charts, q, tri[9 * f + 3 * k], tri[9 * f + 3 * k + 1], tri[9 * f + 3 * k + 2]));
  const [[ax, ay], [bx, by], [cx, cy]] = at, area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (Math.abs(area) < 1e-9) return;
  const [left, right] = [Math.max(0, Math.floor(Math.min(ax, bx, cx))), Math.min(w - 1, Math.ceil(Math.max(ax, bx, cx)))];
  const [low, high] = [Math.max(0, Math.floor(Math.min(ay, by, cy))), Math.min(h - 1, Math.ceil(Math.max(ay, by, cy)))];
  for (let j = low; j <= high; j++) for (let i = left; i <= right; i++) {
    const s = (charts[q + 15] + j) * wide + charts[q + 14] + i;
    if (taken[s]) continue;
    const u = ((i - ax) * (cy - ay) - (cx - ax) * (j - ay)) / area, v = ((bx - ax) * (j - ay) - (i - ax) * (by - ay)) / area;
    if (u < -0.02 || v < -0.02 || u + v > 1.02) continue;
    taken[s] = 1;
    made.live.push(s);
    made.rays[s] = charts[q + 21];
    put(charts, q, made, i / (w - 1), j / (h - 1), s);
  }
}

/** Faces so thin that no texel meets them: the texel next to their middle is sampled there. */
function slivers(job, made, taken) {
  const { tri, charts, owner, wide } = job, met = new Uint8Array(charts.length / COLUMNS);
  for (const s of made.live) met[made.chartOf[s]] = 1;
  for (let f = 0; f < owner.length; f++) {
    const c = owner[f], q = COLUMNS * c;
    if (c < 0 || met[c] || !(charts[q + 21] > 0)) continue;
    const middle = [0, 1, 2].map((a) => (tri[9 * f + a] + tri[9 * f + 3 + a] + tri[9 * f + 6 + a]) / 3), [i, j] = texelOf(charts, q, ...middle).map(Math.round);
    const s = (charts[q + 15] + j) * wide + charts[q + 14] + i;
    if (taken[s]) continue;
    taken[s] = 1;
    made.live.push(s);
    made.rays[s] = charts[q + 21];
    for (let k = 0; k < 3; k++) {
      made.normal[3 * s + k] = charts[q + 6 + k];
      made.place[3 * s + k] = middle[k] + OFF * charts[q + 6 + k];
      made.tint[3 * s + k] = charts[q + 18 + k];
    }
  }
}

function put(charts, q, made, u, v, s) {
  const inside = (t, size) => { const e = Math.min(IN / size, 0.5); return Math.min(Math.max(t, e), 1 - e); };
  const a = charts[q + 9] + inside(u, charts[q + 11]) * charts[q + 11], b = charts[q + 10] + inside(v, charts[q + 12]) * charts[q + 12], o = charts[q + 13] + OFF;
  // Along and up need not stand square on the face: the point is the one that measures so along both, and along the normal.
  const [along, up, n] = [q, q + 3, q + 6].map((k) => [charts[k], charts[k + 1], charts[k + 2]]), [p, r, t] = [cross(up, n), cross(n, along), cross(along, up)], whole = dot(along, p);
  for (let k = 0; k < 3; k++) {
    made.place[3 * s + k] = (p[k] * a + r[k] * b + t[k] * o) / whole;
    made.normal[3 * s + k] = n[k];
    made.tint[3 * s + k] = charts[q + 18 + k];
  }
}

/** Place of a point in its chart [texels]. */
export function texelOf(charts, q, x, y, z) {
  const a = charts[q] * x + charts[q + 1] * y + charts[q + 2] * z, b = charts[q + 3] * x + charts[q + 4] * y + charts[q + 5] * z;
  return [(a - charts[q + 9]) / charts[q + 11] * (charts[q + 16] - 1), (b - charts[q + 10]) / charts[q + 12] * (charts[q + 17] - 1)];
}
