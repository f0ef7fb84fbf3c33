// In the worker: the light of one hour out of what was traced. Bounces first, then evening out what few rays leave uneven,
// then what is sent: color by day and the fire's share, and from whence each mostly comes.
import { COLUMNS } from './samples.js';

const BOUNCES = 4, LEAN = 42; // steps of a byte for a direction as long as one
const FLAME = [0.7, 0.3]; // red and green of the fire's light, as far as what it lights throws it back

/** Straight light of an hour: four numbers a sample, red, green and blue of the day and lamp, and the fire. */
function straightLight(traced, hour) {
  const { n, live, direct: [sky, lamp, fire] } = traced, shown = new Float32Array(4 * n), thrown = new Float32Array(4 * n);
  const sun = hour.sun.some((v) => v > 0);
  for (const s of live) {
    if (traced.inside(s)) continue;
    const beam = sun ? traced.sunny(s, hour.way) : 0;
    for (let a = 0; a < 3; a++) {
      const v = hour.sky[a] * sky[4 * s] + hour.lamp[a] * lamp[4 * s];
      shown[4 * s + a] = v;
      thrown[4 * s + a] = v + hour.sun[a] * beam;
    }
    shown[4 * s + 3] = thrown[4 * s + 3] = fire[4 * s];
  }
  return { shown, thrown };
}

/** What comes to each sample from all that it sees, bounced a few times; what further bounces would bring is what the last
    one brought, over and over by the share that is left of it each time. */
function bounced(traced, thrown) {
  const { n, live, first, done, sees, tint } = traced;
  let more = new Float32Array(4 * n), before = more, gain = 0, left = 0;
  for (let turn = 0; turn < BOUNCES; turn++) {
    const out = new Float32Array(4 * n), next = new Float32Array(4 * n);
    for (const s of live) {
      const r = tint[3 * s], g = tint[3 * s + 1];
      out[4 * s] = r * (thrown[4 * s] + more[4 * s]);
      out[4 * s + 1] = g * (thrown[4 * s + 1] + more[4 * s + 1]);
      out[4 * s + 2] = tint[3 * s + 2] * (thrown[4 * s + 2] + more[4 * s + 2]);
      out[4 * s + 3] = (FLAME[0] * r + FLAME[1] * g) * (thrown[4 * s + 3] + more[4 * s + 3]);
    }
    for (const s of live) {
      let r = 0, g = 0, b = 0, f = 0;
      for (let k = first[s], end = k + done[s]; k < end; k++) {
        const t = 4 * sees[k];
        if (t < 0) continue;
        r += out[t]; g += out[t + 1]; b += out[t + 2]; f += out[t + 3];
      }
      const share = 1 / Math.max(1, done[s]);
      next[4 * s] = r * share; next[4 * s + 1] = g * share; next[4 * s + 2] = b * share; next[4 * s + 3] = f * share;
    }
    let sum = 0;
    for (const s of live) sum += next[4 * s + 1] - more[4 * s + 1] + next[4 * s + 3] - more[4 * s + 3];
    left = gain > 0 ? Math.min(0.9, Math.max(0, sum / gain)) : 0;
    gain = sum; before = more; more = next;
  }
  const rest = left / (1 - left);
  return more.map((v, k) => v + rest * Math.max(0, v - before[k]));
}

/** Evened out over as many texels as what is seen is far away: wide on an open wall, hardly at all where things touch. */
function evened(traced, from, widest) {
  const { job: { wide, charts }, live, chartOf, close, done, texels } = traced, out = new Float32Array(from);
  for (const s of live) {
    if (s >= texels || traced.inside(s)) continue;
    const c = chartOf[s], q = COLUMNS * c, step = charts[q + 11] / Math.max(1, charts[q + 16] - 1), x0 = charts[q + 14], y0 = charts[q + 15];
    const far = done[s] / Math.max(close[s], 1e-6), wish = Math.min(widest, 0.28 * far / Math.max(step, 0.01)), r = Math.ceil(wish);
    if (wish < 0.5) continue;
    const x = s % wide, y = (s - x) / wide, fall = -1 / (wish * wish);
    const low = Math.max(y0, y - r), high = Math.min(y0 + charts[q + 17] - 1, y + r), left = Math.max(x0, x - r), right = Math.min(x0 + charts[q + 16] - 1, x + r);
    let all = 0, a = 0, b = 0, e = 0, d = 0;
    for (let j = low; j <= high; j++) for (let i = left; i <= right; i++) {
      const t = j * wide + i;
      if (!done[t] || traced.inside(t)) continue;
      // A neighbor that has something close by says little about this one.
      const near = Math.min(1, done[t] / Math.max(close[t], 1e-6) / far), w = Math.exp(fall * ((i - x) ** 2 + (j - y) ** 2)) * near;
      all += w; a += w * from[4 * t]; b += w * from[4 * t + 1]; e += w * from[4 * t + 2]; d += w * from[4 * t + 3];
    }
    if (all > 0) { out[4 * s] = a / all; out[4 * s + 1] = b / all; out[4 * s + 2] = e / all; out[4 * s + 3] = d / all; }
  }
  return out;
}

/** Corners of smooth things take the mean of those of the faces they belong to. */
function softened(traced, light) {
  const { texels, n, job: { corners } } = traced;
  let from = light.slice(4 * texels);
  for (let pass = 0; pass < 2; pass++) {
    const sum = new Float32Array(from.length), count = new Float32Array(n - texels);
    for (let f = 0; f < corners.length; f += 3) for (let k = 0; k < 3; k++) {
      const to = corners[f + k];
      count[to] += 3;
      for (let m = 0; m < 3; m++) for (let a = 0; a < 4; a++) sum[4 * to + a] += from[4 * corners[f + m] + a];
    }
    from = sum.map((v, k) => (count[k >> 2] ? v / count[k >> 2] : from[k]));
  }
  light.set(from, 4 * texels);
}

/** Texels that lie inside something, or off their faces, take what their neighbors have. */
function filled(traced, light, good) {
  const { job: { wide, charts }, texels } = traced;
  const known = good.slice(0, texels);
  for (let c = 0; c < charts.length / COLUMNS; c++) {
    const [x0, y0, w, h] = charts.subarray(COLUMNS * c + 14, COLUMNS * c + 18);
    for (let pass = 0; pass < 40; pass++) {
      const found = [];
      for (let y = y0; y < y0 + h; y++) for (let x = x0; x < x0 + w; x++) {
        const s = y * wide + x;
        if (known[s]) continue;
        const sum = [0, 0, 0, 0];
        let all = 0;
        for (let j = Math.max(y0, y - 1); j <= Math.min(y0 + h - 1, y + 1); j++) for (let i = Math.max(x0, x - 1); i <= Math.min(x0 + w - 1, x + 1); i++) {
          const t = j * wide + i;
          if (!known[t]) continue;
          const weight = i === x || j === y ? 2 : 1;
          all += weight;
          for (let a = 0; a < 4; a++) sum[a] += weight * light[4 * t + a];
        }
        if (all) found.push([s, sum.map((v) => v / all)]);
      }
      if (!found.length) break;
      for (const [s, value] of found) { light.set(value, 4 * s); known[s] = 1; }
    }
  }
}

/** From whence most of the light comes, along the face: of the day in two bytes, of the fire in two. */
function leaning(traced, hour, more) {
  const { job: { charts }, live, chartOf, texels, direct: [sky, lamp, fire] } = traced, ways = new Uint8Array(4 * texels).fill(128);
  const bright = (v) => 0.3 * v[0] + 0.6 * v[1] + 0.1 * v[2], day = bright(hour.sky), night = bright(hour.lamp);
  for (const s of live) {
    if (s >= texels) continue;
    const q = COLUMNS * chartOf[s], along = (o, x, y, z) => charts[q + o] * x + charts[q + o + 1] * y + charts[q + o + 2] * z;
    const put = (at, x, y, z, even) => {
      const up = Math.max(along(6, x, y, z) + even, 1e-5);
      ways[at] = Math.max(0, Math.min(255, 128 + LEAN * along(0, x, y, z) / up));
      ways[at + 1] = Math.max(0, Math.min(255, 128 + LEAN * along(3, x, y, z) / up));
    };
    const [x, y, z] = [1, 2, 3].map((a) => day * sky[4 * s + a] + night * lamp[4 * s + a]);
    put(4 * s, x, y, z, bright(more.subarray(4 * s, 4 * s + 3)));
    put(4 * s + 2, fire[4 * s + 1], fire[4 * s + 2], fire[4 * s + 3], more[4 * s + 3]);
  }
  return ways;
}

/** The light of an hour: `hour.sky`, `hour.lamp` and `hour.sun` by color, `hour.way` to the sun. */
export function relit(traced, hour) {
  const { n, live, texels } = traced, { shown, thrown } = straightLight(traced, hour), more = bounced(traced, thrown);
  const good = new Uint8Array(n);
  for (const s of live) good[s] = traced.inside(s) ? 0 : 1;
  const soft = evened(traced, evened(traced, more, 5), 3), straight = evened(traced, shown, 1.2);
  const light = new Float32Array(4 * n);
  for (const s of live) if (good[s]) for (let a = 0; a < 4; a++) light[4 * s + a] = straight[4 * s + a] + soft[4 * s + a];
  filled(traced, light, good);
  softened(traced, light);
  return { atlas: light.slice(0, 4 * texels), corners: light.slice(4 * texels), ways: leaning(traced, hour, soft) };
}
