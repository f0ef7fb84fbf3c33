// Unevenness that comes again without a seam: squares of numbers, made once and read at any place.

export const SIDE = 512;
const MASK = SIDE - 1;

/** Numbers from 0 to 1 by lot, the same ones for the same seed. */
export function lots(seed) {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A number for a text: the same text always gives the same. */
export function seedOf(text) {
  let h = 2166136261;
  for (let k = 0; k < text.length; k++) h = Math.imul(h ^ text.charCodeAt(k), 16777619);
  return h >>> 0;
}

const kept = new Map();

/**
 * A square of unevenness from about -1 to 1.
 * @param {number} seed only its last four bits count, so that stuffs share what is dear to make; what sets them apart is where
 *   each unit of them reads
 * @param {number[]} cells sizes of its bumps [dots], powers of two up to SIDE
 * @param {number[]} weights of each
 */
export function tile(seed, cells, weights = cells.map(() => 1)) {
  const kind = seed & 15, key = [kind, ...cells, ...weights].join();
  if (!kept.has(key)) kept.set(key, made(kind, cells, weights));
  return kept.get(key);
}

/** Lets go of all squares. */
export function forget() {
  kept.clear();
}

function made(seed, cells, weights) {
  const sum = new Float32Array(SIDE * SIDE), full = Math.hypot(...weights) * 0.75;
  cells.forEach((cell, o) => {
    const n = SIDE / cell, lot = lots(seed + 7919 * o), at = Float32Array.from({ length: n * n }, () => lot() * 2 - 1);
    const soft = Float32Array.from({ length: cell }, (_, k) => { const t = k / cell; return t * t * (3 - 2 * t); });
    const weight = weights[o] / full;
    for (let j = 0, i = 0; j < SIDE; j++) {
      const row = Math.floor(j / cell), fy = soft[j % cell], top = row * n, low = ((row + 1) % n) * n;
      for (let k = 0; k < n; k++) {
        const k1 = (k + 1) % n, a = at[top + k] + (at[low + k] - at[top + k]) * fy, b = at[top + k1] + (at[low + k1] - at[top + k1]) * fy;
        for (let c = 0; c < cell; c++, i++) sum[i] += weight * (a + (b - a) * soft[c]);
      }
    }
  });
  return sum;
}

/** What stands nearest to a place of a square. [dots] */
export function at(square, x, y) {
  return square[(x & MASK) | ((y & MASK) << 9)];
}

/** What lies between: for squares that are drawn larger than they are. */
export function between(square, x, y) {
  const i = Math.floor(x), j = Math.floor(y), u = x - i, v = y - j, r = (j & MASK) << 9, s = ((j + 1) & MASK) << 9, k = i & MASK, l = (i + 1) & MASK;
  const a = square[k | r], b = square[l | r], c = square[k | s], d = square[l | s];
  return a + (b - a) * u + (c - a + (a - b - c + d) * u) * v;
}

/** The power of two that is nearest to a length, in dots. */
export function cell(length, dots) {
  return Math.min(Math.max(2 ** Math.round(Math.log2(Math.max(length * dots, 1))), 1), SIDE / 2);
}
