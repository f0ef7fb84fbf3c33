// What the light worker is told: every triangle, every chart, every corner of smooth things, and the room.
import { WIDE } from './charts.js';
import { COLUMNS } from './samples.js';

const CLEAR = new Set(['glass', 'lamp', 'shade']); // light goes through
const RAYS = { shell: 44, built: 26, standing: 14, corner: 14 }; // from one sample

/** How many rays a sample of a chart sends out: most where a wide even face shows every unevenness. */
function raysOf(chart) {
  if (chart.hidden) return 0;
  if (chart.thing.kind !== 'setting') return RAYS.built;
  return chart.area > 1.2 ? RAYS.shell : RAYS.standing;
}

/** The job, with arrays of its own that may be handed over. `parts` is a list of `{things, charts, spots, nears}`. */
export function jobOf(parts, { tall, room, serial }) {
  const faces = [], owner = [], charts = [], spots = [], corners = [];
  let firstSpot = 0;
  for (const part of parts) {
    const first = charts.length, of = new Map();
    part.charts.forEach((chart, k) => chart.faces.forEach((f) => { let own = of.get(chart.thing); if (!own) of.set(chart.thing, own = new Map()); own.set(f, first + k); }));
    charts.push(...part.charts);
    for (const thing of part.things) {
      thing.firstSpot = firstSpot;
      if (CLEAR.has(thing.stuff)) continue;
      const own = of.get(thing);
      for (let f = 0; f < thing.faces.length / 3; f++) {
        if (thing.round[f]) { owner.push(-1 - corners.length); for (let k = 0; k < 3; k++) corners.push(firstSpot + thing.spotOf[3 * f + k]); }
        else if (own?.has(f)) owner.push(own.get(f));
        else continue;
        for (let k = 0; k < 3; k++) { const i = 3 * thing.faces[3 * f + k]; faces.push(thing.points[i], thing.points[i + 1], thing.points[i + 2]); }
      }
    }
    spots.push(...part.spots);
    firstSpot += part.spots.length;
  }
  const rows = new Float32Array(COLUMNS * charts.length);
  charts.forEach((c, k) => rows.set([...c.u, ...c.v, ...c.n, ...c.low, Math.max(c.high[0] - c.low[0], 1e-6), Math.max(c.high[1] - c.low[1], 1e-6), c.off, c.x, c.y, c.w, c.h, ...c.tint, raysOf(c)], COLUMNS * k));
  const flat = new Float32Array(9 * spots.length);
  spots.forEach((s, k) => flat.set([...s.p, ...s.n, ...s.tint], 9 * k));
  const reached = Uint8Array.from(charts, (c) => (c.thing.kind !== 'setting' ? 2 : c.area > 1.2 && !c.hidden ? 1 : 0)); // as trace.js counts them
  return { reached, tri: Float32Array.from(faces), owner: Int32Array.from(owner), charts: rows, spots: flat, corners: Int32Array.from(corners), spotRays: RAYS.corner, wide: WIDE, tall, room, serial };
}

