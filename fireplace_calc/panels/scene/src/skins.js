// From charts and smooth things to what is drawn: one mesh to each stuff and way of laying.
import { BufferAttribute, BufferGeometry } from 'three';
import { lookOf } from './charts.js';
import { cross, dot, minus, row, unit } from './vectors.js';

/** Where a point lies in its coat, a whole number of patches being one. */
function coatPlace(chart, p) {
  const { layout, look, u, v } = chart, [a, b] = [dot(p, u), dot(p, v)];
  if (!layout) return [a / look.patch, b / look.patch];
  return [(a - dot(layout.origin, u)) / layout.width, (b - dot(layout.origin, v)) / layout.height];
}

/** Where a point lies in the atlas of light [texels]. */
export function atlasPlace(chart, a, b) {
  const { low, high } = chart;
  return [chart.x + 0.5 + (a - low[0]) / Math.max(high[0] - low[0], 1e-6) * (chart.w - 1),
    chart.y + 0.5 + (b - low[1]) / Math.max(high[1] - low[1], 1e-6) * (chart.h - 1)];
}

/** Faces by stuff, pattern and whether they hold their light corner by corner, early steps first; `apart`: each thing by
    itself. */
export function groupsOf(things, charts, looks, apart) {
  const groups = new Map();
  const into = (name, told) => groups.get(name) || groups.set(name, { name, faces: [], ...told }).get(name);
  for (const chart of charts) {
    const { thing, layout, look } = chart;
    const group = into(`${apart ? thing.key : ''}|${thing.stuff}|${layout?.key || ''}`, { thing: apart ? thing : null, stuff: thing.stuff, layout, look, smooth: false, cut: thing.cut });
    for (const f of chart.faces) group.faces.push({ thing, chart, f });
  }
  for (const thing of things) {
    thing.round.forEach((round, f) => {
      if (round) into(`${apart ? thing.key : ''}|${thing.stuff}|smooth`, { thing: apart ? thing : null, stuff: thing.stuff, layout: null, look: lookOf(looks, thing.stuff), smooth: true, cut: false }).faces.push({ thing, chart: null, f });
    });
  }
  for (const group of groups.values()) group.faces.sort((a, b) => a.thing.step - b.thing.step);
  return [...groups.values()];
}

/** The geometry of a group; `spots` are the corners of smooth things. */
export function skinOf(group, spots) {
  const n = 3 * group.faces.length, at = new Float32Array(3 * n), turned = new Float32Array(3 * n), uv = new Float32Array(2 * n);
  const along = new Float32Array(4 * n), spot = group.smooth ? null : new Float32Array(2 * n), glow = group.smooth ? new Float32Array(4 * n) : null;
  group.faces.forEach(({ thing, chart, f }, j) => {
    const three = [0, 1, 2].map((k) => row(thing.points, thing.faces[3 * f + k])), flat = chart ? chart.n : unit(cross(minus(three[1], three[0]), minus(three[2], three[0])));
    three.forEach((p, k) => {
      const i = 3 * j + k;
      at.set(p, 3 * i);
      if (chart) {
        turned.set(flat, 3 * i);
        uv.set(coatPlace(chart, p), 2 * i);
        spot.set(atlasPlace(chart, dot(p, chart.u), dot(p, chart.v)), 2 * i);
        along.set([...chart.u, dot(cross(chart.n, chart.u), chart.v) < 0 ? -1 : 1], 4 * i);
      } else {
        turned.set(spots[thing.spotOf[3 * f + k]].n, 3 * i);
        uv.set(wrapped(thing, p, flat).map((x) => x / group.look.patch), 2 * i);
        along.set([1, 0, 0, 1], 4 * i);
      }
    });
  });
  const made = new BufferGeometry();
  for (const [name, data, size] of [['position', at, 3], ['normal', turned, 3], ['uv', uv, 2], ['along', along, 4], ['spot', spot, 2], ['glow', glow, 4]]) {
    if (data) made.setAttribute(name, new BufferAttribute(data, size));
  }
  return made;
}

/** A coat round something smooth, seen along the axis that the face looks along most. */
function wrapped(thing, p, normal) {
  const size = normal.map(Math.abs), most = size.indexOf(Math.max(...size)), axis = thing.long.indexOf(1);
  const rest = [0, 1, 2].filter((a) => a !== most), first = rest.includes(axis) ? axis : rest[0], other = rest.find((a) => a !== first);
  return [p[first], p[other]];
}

/** Put the light of corners into a smooth group's geometry; `light` holds four numbers a corner. */
export function glowed(group, geometry, light) {
  const to = geometry.attributes.glow;
  group.faces.forEach(({ thing, f }, j) => {
    for (let k = 0; k < 3; k++) {
      const from = 4 * (thing.firstSpot + thing.spotOf[3 * f + k]);
      for (let a = 0; a < 4; a++) to.array[4 * (3 * j + k) + a] = light[from + a];
    }
  });
  to.needsUpdate = true;
}
