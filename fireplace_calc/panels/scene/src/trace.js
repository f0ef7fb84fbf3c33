// In the worker: what light comes straight from windows, lamp and fire, and who else is seen from each sample.
import { atWindows, turned } from './own.js';
import { COLUMNS, texelOf } from './samples.js';

const WINDOW = 8, LAMP = 4, FIRE = 6; // places of each that light is taken from
const WALL = 1, BUILT = 2; // what a chart is to who is left out
const NEAR = 0.5; // a back face nearer than this means: inside something [m]

/** Places that light comes from: kind (0 window, 1 lamp, 2 fire), place [m], weight, and for a window which way it looks. */
export function sourcesOf(room) {
  const made = [], looks = turned(room, [1, 0, 0]), share = (k, by) => (k * by) % 1;
  for (const { front, back, sill, head } of room.windows) {
    for (let k = 0; k < WINDOW; k++) {
      made.push({ kind: 0, at: atWindows(room, 0.01, front + (back - front) * share(k + 0.5, 0.7548776662), sill + (head - sill) * share(k + 0.5, 0.5698402909)), looks,
        weight: (back - front) * (head - sill) / WINDOW / Math.PI, soft: 0.02 });
    }
  }
  for (let k = 0; k < LAMP; k++) made.push({ kind: 1, at: [room.lamp[0] + 0.24 * Math.cos(k * 2.4), room.lamp[1] + 0.24 * Math.sin(k * 2.4), room.lamp[2] + (k % 4 - 1.5) * 0.1], weight: 1 / LAMP, soft: 0.08 });
  for (let k = 0; k < FIRE; k++) {
    made.push({ kind: 2, at: [room.fire[0] + room.fire_width * 0.34 * (2 * share(k, 0.618) - 1), room.fire[1] + 0.07 * Math.sin(k * 2.4) - 0.03, room.fire[2] + 0.1 + 0.4 * k / FIRE], weight: 1 / FIRE, soft: 0.1 });
  }
  return made;
}

/** A job while it is traced and after. */
export class Traced {
  constructor(job, samples, shoot) {
    Object.assign(this, { job, shoot, ...samples });
    const n = this.n;
    this.sources = sourcesOf(job.room);
    this.direct = [new Float32Array(4 * n), new Float32Array(4 * n), new Float32Array(4 * n)]; // of each kind: how much, and from whence
    this.first = new Uint32Array(n + 1);
    for (let s = 0; s < n; s++) this.first[s + 1] = this.first[s] + this.rays[s];
    this.sees = new Int32Array(this.first[n]).fill(-1);
    this.done = new Uint16Array(n);
    this.bad = new Uint8Array(n);
    this.close = new Float32Array(n); // sum of one over the distance of what is seen [1/m]
  }

  /** One more ray from a sample into the half space over its face, as likely as its cosine. */
  ray(s) {
    const { place, normal } = this, k = this.done[s], nx = normal[3 * s], ny = normal[3 * s + 1], nz = normal[3 * s + 2];
    const a = (k * 0.7548776662466927 + (s * 0.6180339887498949) % 1) % 1, b = (k * 0.5698402909980532 + (s * 0.4142135623730951) % 1) % 1;
    const turn = 2 * Math.PI * b, out = Math.sqrt(a), up = Math.sqrt(1 - a), sign = nz >= 0 ? 1 : -1, p = -1 / (sign + nz), q = nx * ny * p;
    const x = out * Math.cos(turn), y = out * Math.sin(turn);
    const hit = this.shoot(place[3 * s], place[3 * s + 1], place[3 * s + 2], x * (1 + sign * nx * nx * p) + y * q + up * nx, x * sign * q + y * (sign + ny * ny * p) + up * ny, up * nz - x * sign * nx - y * ny, 60, false);
    this.done[s]++;
    if (hit.face < 0) return;
    this.close[s] += 1 / Math.max(hit.far, 0.02);
    if (hit.back) { if (hit.far < NEAR) this.bad[s]++; } else this.sees[this.first[s] + k] = this.sampleAt(hit);
  }

  /** The sample that stands for the place of a hit. */
  sampleAt(hit) {
    const { tri, owner, charts, wide, corners } = this.job, c = owner[hit.face], t = 9 * hit.face;
    if (c < 0) {
      const w = 1 - hit.u - hit.v;
      return this.texels + corners[-1 - c + (w >= hit.u && w >= hit.v ? 0 : hit.u >= hit.v ? 1 : 2)];
    }
    const at = (k) => tri[t + k] + hit.u * (tri[t + 3 + k] - tri[t + k]) + hit.v * (tri[t + 6 + k] - tri[t + k]), q = COLUMNS * c;
    const [i, j] = texelOf(charts, q, at(0), at(1), at(2));
    return (charts[q + 15] + Math.round(j)) * wide + charts[q + 14] + Math.round(i);
  }

  /** Leave out who lies inside something; and of what is built all charts from which no wall, floor or ceiling of the
      room is seen: gaps between pieces, backs that lie against each other, the flue. They are dark, and nobody sees them. */
  cleared() {
    const { live, first, done, sees, chartOf, texels, job: { reached } } = this, seen = new Uint8Array(reached.length);
    for (const s of live) {
      const c = chartOf[s];
      if (s >= texels || seen[c] || this.bad[s] > 2) continue;
      for (let k = first[s], end = k + done[s]; k < end && !seen[c]; k++) if (sees[k] >= 0 && sees[k] < texels && reached[chartOf[sees[k]]] === WALL) seen[c] = 1;
    }
    this.live = live.filter((s) => this.bad[s] < 3 && (s >= texels || reached[chartOf[s]] !== BUILT || seen[chartOf[s]]));
  }

  /** Whether more than a few rays came from behind something close: the sample lies inside it. */
  inside(s) { return this.bad[s] > 0.12 * this.done[s] + 0.5; }

  /** Light that comes straight to a sample. */
  straight(s) {
    const { place, normal } = this, x = place[3 * s], y = place[3 * s + 1], z = place[3 * s + 2], nx = normal[3 * s], ny = normal[3 * s + 1], nz = normal[3 * s + 2];
    for (const { kind, at, weight, soft, looks } of this.sources) {
      const dx = at[0] - x, dy = at[1] - y, dz = at[2] - z, far2 = dx * dx + dy * dy + dz * dz, far = Math.sqrt(far2), cos = (dx * nx + dy * ny + dz * nz) / far;
      if (cos < 1e-3) continue;
      const much = cos * weight * (kind ? 1 / (far2 + soft) : Math.max(-(dx * looks[0] + dy * looks[1]) / far, 0) / Math.max(far2, soft));
      if (much < 1e-6 || this.shoot(x, y, z, dx / far, dy / far, dz / far, far - 0.01, true).face >= 0) continue;
      const to = this.direct[kind];
      to[4 * s] += much; to[4 * s + 1] += much * dx / far; to[4 * s + 2] += much * dy / far; to[4 * s + 3] += much * dz / far;
    }
  }

  /** Whether the sun comes to a sample, times its cosine. */
  sunny(s, way) {
    const { place, normal } = this, cos = way[0] * normal[3 * s] + way[1] * normal[3 * s + 1] + way[2] * normal[3 * s + 2];
    if (cos <= 0) return 0;
    return this.shoot(place[3 * s], place[3 * s + 1], place[3 * s + 2], ...way, 60, true).face < 0 ? cos : 0;
  }
}
