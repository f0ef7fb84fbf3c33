// Flat faces and their place in the atlas of light. A chart is all of a thing that lies in one plane; smooth things have
// none, they hold their light corner by corner.
import { fireOf, ownOf } from './own.js';
import { cross, dot, linear, minus, row, unit } from './vectors.js';

export const WIDE = 1024; // of the atlas [texels]
const MOST = 256; // across one chart [texels]
const GRAINY = new Set(['wood', 'board', 'bark']); // painted along the thing's length
const SPARE = 6; // times its own area that the rectangle round a frame has
const FLAT = 1.2; // smaller is a thing, not a wall, floor or ceiling [m2]
const OUT = 0.02, DEEP = 1.2; // past a wall's face, and past the wall behind the fire [m]
const SOFT = 0.6; // least cosine between faces that are shaded as one
const PLAIN = { tones: ['#aaa59b'], rough: 0.9, soot: false, patch: 1, painter: 'plain' };

/** What a stuff looks like; one without a row is plain. */
export const lookOf = (looks, stuff) => looks[stuff] || PLAIN;

/** Share of the light that a stuff throws back, by color. [-] */
export function albedo(looks, stuff) {
  const { tones, soot } = lookOf(looks, stuff), sum = [0, 0, 0];
  for (const tone of tones) linear(tone).forEach((v, a) => { sum[a] += v / tones.length; });
  return sum.map((v) => Math.min(0.84, v * (soot ? 0.35 : 1)));
}

/** The layout a face is laid by: the first that fits. */
export function layoutOf(layouts, thing, normal) {
  return layouts.find((made) => made.stuff === thing.stuff && (!made.things.length || made.things.includes(thing.key)) && (!made.normal || dot(made.normal, normal) > 0.99)) || null;
}

/** Directions along and up a face, by its layout, by the thing's length, or level and upward. */
function axes(thing, layout, normal, look) {
  const level = Math.abs(normal[2]) > 0.94;
  let u = level ? [1, 0, 0] : unit(cross([0, 0, 1], normal));
  if (!layout && GRAINY.has(look.painter)) {
    const flat = minus(thing.long, normal.map((v) => v * dot(thing.long, normal)));
    if (Math.hypot(...flat) > 0.3) u = unit(flat);
  }
  if (layout?.along) u = layout.along;
  const v = layout?.up || (level && u[0] === 1 ? [0, 1, 0] : cross(normal, u));
  return [u, v];
}

/** The axis a thing is longest in. */
function longest(points) {
  const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  points.forEach((v, k) => { low[k % 3] = Math.min(low[k % 3], v); high[k % 3] = Math.max(high[k % 3], v); });
  const size = minus(high, low), most = size.indexOf(Math.max(...size));
  return [0, 1, 2].map((a) => (a === most ? 1 : 0));
}

/** Which faces of a smooth thing bend softly into a neighbor; the others are flat. */
function roundFaces(thing) {
  const { points, faces } = thing, count = faces.length / 3, round = new Uint8Array(count), edges = new Map(), ways = [];
  if (!thing.smooth) return round;
  for (let f = 0; f < count; f++) {
    const [a, b, c] = [0, 1, 2].map((k) => row(points, faces[3 * f + k]));
    ways.push(unit(cross(minus(b, a), minus(c, a))));
    for (let k = 0; k < 3; k++) {
      const p = faces[3 * f + k], q = faces[3 * f + (k + 1) % 3], name = p < q ? p * 65536 + q : q * 65536 + p, other = edges.get(name);
      if (other === undefined) { edges.set(name, f); continue; }
      const bend = dot(ways[f], ways[other]);
      if (bend < 0.9999 && bend > SOFT) round[f] = round[other] = 1;
    }
  }
  return round;
}

/** How many texels a chart has along and up: closer on what is built and on floors, where contacts show; few on small
    things and along strips; none too many on what fills little of its own rectangle. */
function texelsOf({ thing, n, area, low, high }) {
  const size = [0, 1].map((k) => high[k] - low[k]), fair = Math.sqrt(area);
  let counts;
  if (thing.kind !== 'setting') counts = size.map((s) => 1 + s / Math.min(0.06, Math.max(0.035, fair / 36)));
  else if (area > FLAT) counts = size.map((s) => 1 + s / (n[2] > 0.9 ? Math.max(0.05, Math.min(0.11, fair / 50)) : Math.min(n[2] < -0.9 ? 0.2 : 0.15, fair / 24)));
  else counts = size.map((s) => 2 + s / (n[2] > 0.9 && area > 0.1 ? 0.08 : 0.22));
  const spare = Math.sqrt(Math.max(1, size[0] * size[1] / Math.max(area, 1e-6) / 4));
  return counts.map((c) => Math.min(MOST, Math.max(2, Math.ceil(c / spare))));
}

/** Whether nobody in the room sees a chart: it lies wholly outside and looks away, or far outside. `corners` are those of
    the room's own axes. */
function hidden({ n, off, corners: { low, high }, deep }, room) {
  const { left, right, front, back, ceiling, corner } = room, middle = fireOf(room, [(left + right) / 2, (front + back) / 2, ceiling / 2]);
  const past = (by) => corner && deep > corner.wall + by || low[0] > right + by || high[0] < left - by || high[1] < front - by || low[1] > back + by || high[2] < -by || low[2] > ceiling + by;
  return past(DEEP) || low[2] > ceiling + OUT || past(OUT) && dot(n, middle) < off;
}

/** Every chart of some things; of each: its thing, plane, directions, layout, faces and least and greatest place along
    the two directions [m], and how many texels it wants. */
export function chartsOf(things, layouts, looks, room) {
  const charts = [];
  for (const thing of things) {
    thing.long = longest(thing.points);
    thing.round = roundFaces(thing);
    const look = lookOf(looks, thing.stuff), found = new Map();
    for (let f = 0; f < thing.faces.length / 3; f++) {
      if (thing.round[f]) continue;
      const [a, b, c] = [0, 1, 2].map((k) => row(thing.points, thing.faces[3 * f + k]));
      const turned = cross(minus(b, a), minus(c, a)), area = Math.hypot(...turned) / 2;
      if (area < 1e-10) continue;
      const normal = unit(turned), off = dot(normal, a), name = `${normal.map((v) => Math.round(v * 300) + 0)}|${Math.round(off * 1000)}`;
      let chart = found.get(name);
      if (!chart) {
        const layout = thing.cut ? null : layoutOf(layouts, thing, normal), [u, v] = axes(thing, layout, normal, look);
        chart = started({ thing, layout, look, n: normal, u, v, off, name: `${thing.key}|${normal.map((x) => Math.round(x * 3) + 0)}` });
        found.set(name, chart);
      }
      taken(chart, f, [a, b, c], area, room);
    }
    for (const chart of found.values()) charts.push(...(isFrame(chart) ? byFace(chart, room) : [chart]));
  }
  for (const chart of charts) {
    chart.hidden = !!room && hidden(chart, room);
    [chart.w, chart.h] = chart.hidden ? [2, 2] : texelsOf(chart);
    chart.tint = albedo(looks, chart.thing.stuff);
  }
  return charts;
}

const started = (told) => ({ ...told, area: 0, faces: [], low: [Infinity, Infinity], high: [-Infinity, -Infinity], deep: Infinity, corners: { low: [Infinity, Infinity, Infinity], high: [-Infinity, -Infinity, -Infinity] } });

/** One more face of a chart. */
function taken(chart, f, three, area, room) {
  chart.faces.push(f);
  chart.area += area;
  for (const p of three) {
    const own = room ? ownOf(room, p) : p;
    chart.deep = Math.min(chart.deep, p[1]);
    for (let k = 0; k < 3; k++) { chart.corners.low[k] = Math.min(chart.corners.low[k], own[k]); chart.corners.high[k] = Math.max(chart.corners.high[k], own[k]); }
    [dot(p, chart.u), dot(p, chart.v)].forEach((x, k) => { chart.low[k] = Math.min(chart.low[k], x); chart.high[k] = Math.max(chart.high[k], x); });
  }
}

/** A strip that runs round something fills little of its own rectangle: no row of samples would meet it. */
function isFrame({ area, faces, low, high }) {
  return faces.length > 2 && (high[0] - low[0]) * (high[1] - low[1]) > SPARE * area;
}

/** A chart for each face of a frame. */
function byFace(chart, room) {
  const { thing, layout, look, n, u, v, off, name } = chart;
  return chart.faces.map((f) => {
    const three = [0, 1, 2].map((k) => row(thing.points, thing.faces[3 * f + k])), made = started({ thing, layout, look, n, u, v, off, name });
    taken(made, f, three, Math.hypot(...cross(minus(three[1], three[0]), minus(three[2], three[0]))) / 2, room);
    return made;
  });
}

/** Give each chart its place from row `from` of the atlas down, the tallest first; gives back the row after the last. */
export function placed(charts, from) {
  let x = 0, y = from, tall = 0;
  for (const chart of [...charts].sort((a, b) => b.h - a.h)) {
    if (x + chart.w > WIDE) { x = 0; y += tall; tall = 0; }
    chart.x = x; chart.y = y;
    x += chart.w;
    tall = Math.max(tall, chart.h);
  }
  return y + tall;
}

/** Corners of smooth things that share a normal, each a sample of light of its own. */
export function cornersOf(things, looks) {
  const spots = [], nears = [];
  for (const thing of things) {
    if (!thing.smooth) continue;
    const at = new Map(), tint = albedo(looks, thing.stuff);
    thing.spotOf = new Int32Array(thing.faces.length);
    thing.spotBegin = spots.length;
    for (let f = 0; f < thing.faces.length / 3; f++) {
      if (!thing.round[f]) continue;
      const three = [0, 1, 2].map((k) => row(thing.points, thing.faces[3 * f + k])), turned = cross(minus(three[1], three[0]), minus(three[2], three[0])), way = unit(turned);
      three.forEach((p, k) => {
        const place = p.map((v) => Math.round(v * 5000)).join(), mine = at.get(place) || at.set(place, []).get(place);
        let spot = mine.find((s) => dot(unit(spots[s].n), way) > SOFT);
        if (spot === undefined) { spot = spots.length; mine.push(spot); spots.push({ p, n: [0, 0, 0], tint }); }
        for (let a = 0; a < 3; a++) spots[spot].n[a] += turned[a];
        thing.spotOf[3 * f + k] = spot;
      });
      nears.push(...[0, 1, 2].map((k) => thing.spotOf[3 * f + k]));
    }
    thing.spotEnd = spots.length;
  }
  for (const spot of spots) spot.n = unit(spot.n);
  return { spots, nears };
}
