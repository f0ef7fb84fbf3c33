// A tree of boxes over triangles, and the nearest triangle that a ray meets. No library: it runs in workers too.

const BINS = 12, LEAF = 4, EPSILON = 1e-5;

/** Least and greatest corner of each triangle. */
function bounds(tri) {
  const n = tri.length / 9, low = new Float32Array(3 * n), high = new Float32Array(3 * n);
  for (let k = 0; k < n; k++) {
    for (let a = 0; a < 3; a++) {
      const p = tri[9 * k + a], q = tri[9 * k + 3 + a], r = tri[9 * k + 6 + a];
      low[3 * k + a] = Math.min(p, q, r);
      high[3 * k + a] = Math.max(p, q, r);
    }
  }
  return { n, low, high };
}

const half = (b, k) => (b[k + 3] - b[k]) * (b[k + 4] - b[k + 1]) + (b[k + 4] - b[k + 1]) * (b[k + 5] - b[k + 2]) + (b[k + 5] - b[k + 2]) * (b[k + 3] - b[k]);

function grow(box, at, low, high, k) {
  for (let a = 0; a < 3; a++) {
    if (low[3 * k + a] < box[at + a]) box[at + a] = low[3 * k + a];
    if (high[3 * k + a] > box[at + 3 + a]) box[at + 3 + a] = high[3 * k + a];
  }
}

const empty = () => Float32Array.of(Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity);

/** Where to part a run of triangles: the plane between bins of least surface times number. */
function parting({ low, high }, order, from, to, box, b) {
  let best = Infinity, axis = -1, place = 0;
  for (let a = 0; a < 3; a++) {
    const start = box[b + a], wide = box[b + 3 + a] - start;
    if (wide < 1e-6) continue;
    const count = new Uint32Array(BINS), bins = Array.from({ length: BINS }, empty);
    for (let i = from; i < to; i++) {
      const k = order[i], s = Math.min(BINS - 1, Math.floor(BINS * ((low[3 * k + a] + high[3 * k + a]) / 2 - start) / wide));
      count[s]++;
      grow(bins[s], 0, low, high, k);
    }
    const cost = new Float64Array(BINS);
    for (const [first, step] of [[0, 1], [BINS - 1, -1]]) {
      const all = empty();
      let sum = 0;
      for (let s = first; s !== (step > 0 ? BINS - 1 : 0); s += step) {
        sum += count[s];
        for (let c = 0; c < 3; c++) { all[c] = Math.min(all[c], bins[s][c]); all[c + 3] = Math.max(all[c + 3], bins[s][c + 3]); }
        cost[step > 0 ? s : s - 1] += sum ? sum * half(all, 0) : 0;
      }
    }
    for (let s = 0; s < BINS - 1; s++) if (cost[s] < best) { best = cost[s]; axis = a; place = start + (s + 1) * wide / BINS; }
  }
  return [axis, place];
}

/** Build the tree of `tri`, nine numbers a triangle [m]. The ray it gives back is
    `shoot(ox, oy, oz, dx, dy, dz, far, any)`: the nearest hit before `far` [m], or any at all; `face` is -1 for none,
    `back` whether it came from behind. The same object is given each time. */
export function treeOf(tri) {
  const sizes = bounds(tri), { n, low, high } = sizes, order = Uint32Array.from({ length: n }, (_, k) => k);
  const box = new Float32Array(12 * n + 6), next = new Int32Array(2 * n + 1), count = new Int32Array(2 * n + 1), todo = [[0, 0, n]];
  let used = 1;
  while (todo.length) {
    const [at, from, to] = todo.pop(), b = 6 * at;
    box.set(empty(), b);
    for (let i = from; i < to; i++) grow(box, b, low, high, order[i]);
    const [axis, place] = to - from > LEAF ? parting(sizes, order, from, to, box, b) : [-1, 0];
    let mid = from;
    if (axis >= 0) for (let i = from; i < to; i++) {
      const k = order[i];
      if ((low[3 * k + axis] + high[3 * k + axis]) / 2 < place) { order[i] = order[mid]; order[mid++] = k; }
    }
    if (mid === from || mid === to) { next[at] = from; count[at] = to - from; continue; }
    next[at] = used;
    used += 2;
    todo.push([next[at], from, mid], [next[at] + 1, mid, to]);
  }
  return shooter(tri, order, box, next, count);
}

function shooter(tri, order, box, next, count) {
  const stack = new Int32Array(96), near = new Float64Array(96), hit = { face: -1, far: 0, u: 0, v: 0, back: false };
  const reach = (at, ox, oy, oz, ix, iy, iz, far) => {
    const b = 6 * at;
    let p = (box[b] - ox) * ix, q = (box[b + 3] - ox) * ix, enter = p < q ? p : q, leave = p < q ? q : p;
    p = (box[b + 1] - oy) * iy; q = (box[b + 4] - oy) * iy;
    if (p > q) { const t = p; p = q; q = t; }
    if (p > enter) enter = p;
    if (q < leave) leave = q;
    p = (box[b + 2] - oz) * iz; q = (box[b + 5] - oz) * iz;
    if (p > q) { const t = p; p = q; q = t; }
    if (p > enter) enter = p;
    if (q < leave) leave = q;
    return leave >= enter && leave >= 0 && enter <= far ? enter : Infinity;
  };
  return (ox, oy, oz, dx, dy, dz, far, any) => {
    const ix = 1 / (dx || 1e-30), iy = 1 / (dy || 1e-30), iz = 1 / (dz || 1e-30);
    let top = 0;
    hit.face = -1; hit.far = far;
    if (reach(0, ox, oy, oz, ix, iy, iz, far) === Infinity) return hit;
    stack[top] = 0; near[top++] = 0;
    while (top) {
      const at = stack[--top];
      if (near[top] > hit.far) continue;
      if (!count[at]) {
        const l = next[at], a = reach(l, ox, oy, oz, ix, iy, iz, hit.far), b = reach(l + 1, ox, oy, oz, ix, iy, iz, hit.far), first = a < b;
        if (first ? b !== Infinity : a !== Infinity) { stack[top] = first ? l + 1 : l; near[top++] = first ? b : a; }
        if (first ? a !== Infinity : b !== Infinity) { stack[top] = first ? l : l + 1; near[top++] = first ? a : b; }
        continue;
      }
      for (let i = next[at], end = i + count[at]; i < end; i++) {
        const t = 9 * order[i], x = tri[t], y = tri[t + 1], z = tri[t + 2];
        const ax = tri[t + 3] - x, ay = tri[t + 4] - y, az = tri[t + 5] - z, bx = tri[t + 6] - x, by = tri[t + 7] - y, bz = tri[t + 8] - z;
        const px = dy * bz - dz * by, py = dz * bx - dx * bz, pz = dx * by - dy * bx, det = ax * px + ay * py + az * pz;
        if (det > -1e-14 && det < 1e-14) continue;
        const inv = 1 / det, sx = ox - x, sy = oy - y, sz = oz - z, u = (sx * px + sy * py + sz * pz) * inv;
        if (u < -1e-7 || u > 1 + 1e-7) continue;
        const qx = sy * az - sz * ay, qy = sz * ax - sx * az, qz = sx * ay - sy * ax, v = (dx * qx + dy * qy + dz * qz) * inv;
        if (v < -1e-7 || u + v > 1 + 1e-7) continue;
        const d = (bx * qx + by * qy + bz * qz) * inv;
        if (d > EPSILON && d < hit.far) {
          hit.far = d; hit.face = order[i]; hit.u = u; hit.v = v; hit.back = det < 0;
          if (any) return hit;
        }
      }
    }
    return hit;
  };
}
