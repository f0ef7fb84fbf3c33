// Units on a coat: which dots lie in which brick, stone, tile or board, how far from its edge, and the joints between.

import { at, lots, tile } from './noise.js';

/**
 * Walks over every dot of every unit.
 * @param {object} s sheet
 * @param {Float32Array[]} rings outlines [m], counter-clockwise
 * @param {object} how wobble [m] and its square, round [m] of the corners, reach [m] beyond the edge, seed, repeats
 * @param {(unit: object, s: object, i: number, x: number, y: number, d: number) => void} face paints a dot; x, y from the
 *   middle of the unit along its longest side, d from its edge [m]
 * @returns {Float32Array} how deep each dot lies in its unit; negative in a joint [m]
 */
export function layUnits(s, rings, how, face) {
  const { w, h, sx, sy } = s, edge = new Float32Array(w * h).fill(-1), { wobble = 0, square, round = 0, reach = 0.02, repeats = true } = how;
  rings.forEach((ring, number) => {
    const unit = measured(ring, number, how.seed), n = unit.sides.length / 3, sides = unit.sides;
    let x0 = Math.floor((unit.low[0] - reach) * sx), x1 = Math.ceil((unit.high[0] + reach) * sx), y0 = Math.floor((unit.low[1] - reach) * sy), y1 = Math.ceil((unit.high[1] + reach) * sy);
    if (!repeats) [x0, x1, y0, y1] = [Math.max(x0, 0), Math.min(x1, w), Math.max(y0, 0), Math.min(y1, h)];
    const [ox, oy] = unit.shift;
    for (let j = y0; j < y1; j++) {
      const row = ((j % h) + h) % h * w, Y = (j + 0.5) / sy;
      for (let k = x0; k < x1; k++) {
        const X = (k + 0.5) / sx;
        let first = 1e9, second = 1e9;
        for (let e = 0; e < n; e++) {
          const d = sides[e * 3] * X + sides[e * 3 + 1] * Y + sides[e * 3 + 2];
          if (d < first) { second = first; first = d; } else if (d < second) second = d;
        }
        if (unit.hollow) first = second = depthIn(ring, X, Y);
        if (first < -reach) continue;
        if (round > 0 && second < round) first = round - Math.hypot(round - first, round - second);
        if (wobble > 0) first += wobble * at(square, k + ox, j + oy);
        const i = row + ((k % w) + w) % w;
        if (first <= edge[i]) continue;
        edge[i] = first;
        if (first > 0) face(unit, s, i, k, j, (X - unit.middle[0]) * unit.way[0] + (Y - unit.middle[1]) * unit.way[1], (Y - unit.middle[1]) * unit.way[0] - (X - unit.middle[0]) * unit.way[1], first);
      }
    }
  });
  return edge;
}

/** How deep a point lies in an outline that turns inward somewhere, as a brick that is cut round a corner; negative outside. */
function depthIn(ring, X, Y) {
  let near = 1e9, inside = false;
  for (let e = 0, n = ring.length; e < n; e += 2) {
    const x = ring[e], y = ring[e + 1], dx = ring[(e + 2) % n] - x, dy = ring[(e + 3) % n] - y;
    const t = Math.min(Math.max(((X - x) * dx + (Y - y) * dy) / (dx * dx + dy * dy || 1), 0), 1);
    near = Math.min(near, Math.hypot(X - x - t * dx, Y - y - t * dy));
    if (y > Y !== y + dy > Y && X < x + ((Y - y) / dy) * dx) inside = !inside;
  }
  return inside ? near : -near;
}

/** Whether an outline turns to the right anywhere. */
function turnsInward(ring) {
  for (let e = 0, n = ring.length; e < n; e += 2) {
    const [x, y, X, Y, u, v] = [0, 1, 2, 3, 4, 5].map((k) => ring[(e + k) % n]);
    if ((X - x) * (v - Y) - (Y - y) * (u - X) < -1e-7) return true;
  }
  return false;
}

function measured(ring, number, seed) {
  const n = ring.length / 2, lot = lots(seed + number * 7331), low = [1e9, 1e9], high = [-1e9, -1e9], sides = new Float64Array(n * 3);
  let longest = 0, way = [1, 0], middle = [0, 0];
  for (let e = 0; e < n; e++) {
    const x = ring[e * 2], y = ring[e * 2 + 1], X = ring[((e + 1) % n) * 2], Y = ring[((e + 1) % n) * 2 + 1], dx = X - x, dy = Y - y, long = Math.hypot(dx, dy) || 1e-9;
    sides.set([-dy / long, dx / long, (dy * x - dx * y) / long], e * 3);
    low[0] = Math.min(low[0], x); low[1] = Math.min(low[1], y); high[0] = Math.max(high[0], x); high[1] = Math.max(high[1], y);
    middle = [middle[0] + x / n, middle[1] + y / n];
    if (long > longest + 1e-6) { longest = long; way = [dx / long, dy / long]; }
  }
  if (way[0] < 0) way = [-way[0], -way[1]];
  let long = 0, wide = 0;
  for (let e = 0; e < n; e++) {
    const dx = ring[e * 2] - middle[0], dy = ring[e * 2 + 1] - middle[1];
    long = Math.max(long, Math.abs(dx * way[0] + dy * way[1]));
    wide = Math.max(wide, Math.abs(dy * way[0] - dx * way[1]));
  }
  return { number, lot, hollow: turnsInward(ring), low, high, sides, way, middle, half: [long, wide], shift: [Math.floor(lot() * 512), Math.floor(lot() * 512)] };
}

/**
 * Fills what no unit covers: sand and lime, struck back between the units, its shoulders ragged.
 * @param {object} s sheet
 * @param {Float32Array} edge as layUnits gives it
 * @param {object} how tone, recess [m], sand [m], half [m] of a joint, rough, seed
 */
export function fillJoints(s, edge, { tone, recess, sand, half, rough, seed }) {
  const { w, h } = s, grain = tile(seed + 5, [1, 2, 4], [1, 0.8, 0.5]), cloud = tile(seed + 9, [16, 64, 128], [0.6, 1, 1]);
  for (let y = 0, i = 0; y < h; y++) {
    for (let x = 0; x < w; x++, i++) {
      if (edge[i] > 0) continue;
      const t = Math.min(-edge[i] / half, 1), g = at(grain, x, y), c = at(cloud, x, y);
      // Struck with a round iron: deepest in the middle, a lip at the unit.
      s.height[i] = -recess * (0.55 + 0.45 * t * (2 - t)) + sand * g * 0.8 + recess * 0.1 * c;
      const f = 1 + 0.085 * g + 0.06 * c, k = i * 4;
      s.color[k] = tone[0] * f;
      s.color[k + 1] = tone[1] * f;
      s.color[k + 2] = tone[2] * f;
      s.rough[i] = rough * 255;
    }
  }
}

/** Half of the usual joint, from how deep the joints' dots lie. [m] */
export function halfJoint(edge) {
  let deep = 0, sum = 0, n = 0;
  for (let i = 0; i < edge.length; i += 7) if (edge[i] <= 0 && edge[i] > -0.03) { sum -= edge[i]; n++; deep = Math.max(deep, -edge[i]); }
  return Math.max(n ? Math.min((sum / n) * 2, deep) : 0.005, 0.0005);
}
