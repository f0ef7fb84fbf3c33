// Bricks, stones, tiles, flags, block and cast sections: what one unit looks like.

import { at, cell, tile } from './noise.js';
import { fillJoints, halfJoint, layUnits } from './laid.js';
import { put, rgb } from './sheet.js';

const mixed = (a, b, t) => [0, 1, 2].map((k) => a[k] + (b[k] - a[k]) * t);

/** The tone of a unit: one of the family, a little off it. */
function toneOf(unit, tones, vary) {
  const pick = tones[Math.floor(unit.lot() * tones.length)], other = tones[Math.floor(unit.lot() * tones.length)], f = 1 + vary * (unit.lot() * 2 - 1);
  return mixed(pick, other, unit.lot() * 0.4).map((v) => v * f);
}

/** What is lost at an edge that is rounded by so much. [m] */
function arrisDrop(d, arris) {
  if (d >= arris) return 0;
  const t = 1 - Math.max(d, 0) / arris;
  return arris * 0.45 * t * t;
}

/** Brick: worn arrises, a face that is never quite flat, drag marks of the cut, chips, a burnt end here and there. */
export function paintBricks(s, coat, { worn = 1, streak = 1, seed }) {
  const tones = coat.tones.map(rgb), joint = rgb(coat.joint || '#999999'), px = s.sx;
  const rag = tile(seed + 1, [cell(0.012, px), cell(0.005, px), cell(0.002, px)], [1, 0.8, 0.5]);
  const grit = tile(seed + 2, [1, 2, 4], [1, 0.9, 0.7]), mottle = tile(seed + 3, [cell(0.06, px), cell(0.025, px), cell(0.01, px)], [1, 0.9, 0.7]);
  const { relief, arris, vary } = coat;
  const edge = layUnits(s, coat.rings, { wobble: 0.0011 * worn, square: rag, round: arris * 0.6, reach: 0.008, repeats: coat.repeats, seed }, (u, _, i, x, y, a, b, d) => {
    const look = u.look || (u.look = { tone: toneOf(u, tones, vary), proud: (u.lot() - 0.5) * 0.0016, lean: [(u.lot() - 0.5) * 0.012, (u.lot() - 0.5) * 0.02], bow: (u.lot() - 0.35) * 0.0012, burn: u.lot() < 0.22 ? 0.1 + 0.2 * u.lot() : 0, end: u.lot() < 0.5 ? -1 : 1,
      smear: u.lot() * 0.5, slope: (u.lot() - 0.5) * 0.24, marks: streak * (0.3 + u.lot()), pits: 0.95 + 0.4 * u.lot() });
    const X = x + u.shift[0], Y = y + u.shift[1], m = at(mottle, X, Y), g = at(grit, X, Y), r = at(rag, X, Y), t = a / u.half[0];
    // Drag marks run along the brick: the same square read far slower one way than the other.
    const drag = at(grit, (X * 0.09 + Y * look.slope) | 0, Y) * 0.6 + at(mottle, (X * 0.2) | 0, (Y * 2.2) | 0) * 0.5;
    let height = look.proud + look.lean[0] * a + look.lean[1] * b + look.bow * (1 - t * t) + relief * (0.35 * g + 0.45 * m * 0.7 + 0.3 * drag * look.marks) - arrisDrop(d + 0.0006 * r, arris);
    let f = 1 + 0.055 * g + 0.085 * m + 0.035 * drag * look.marks;
    const pit = at(mottle, X * 2 + 31, Y * 2 + 77) - look.pits;
    if (pit > 0 && d > 0.004) { height -= relief * Math.min(pit * 5, 1); f *= 1 - 0.16 * Math.min(pit * 5, 1); }
    const near = 1 - Math.min(d / 0.012, 1);
    if (near > 0) f *= 1 + 0.07 * near * (0.6 + r);
    if (look.burn) f *= 1 - look.burn * Math.max(0, Math.min(1, t * look.end * 1.1 + 0.35 + 0.5 * m));
    put(s, i, look.tone, f);
    // Mortar that was wiped over the edge.
    const wiped = worn * look.smear * Math.max(0, near * 1.2 - 0.35 + 0.55 * m + 0.3 * r);
    if (wiped > 0.02) { const k = i * 4, c = s.color, w = Math.min(wiped, 0.65); for (let q = 0; q < 3; q++) c[k + q] += (joint[q] * (1 + 0.06 * g) - c[k + q]) * w; }
    s.height[i] = height;
  });
  fillJoints(s, edge, { tone: joint, recess: coat.recess, sand: 0.0007, half: halfJoint(edge), rough: 0.97, seed });
}

/** Stone, dressed with the hammer: broken faces that lean each their own way, a ragged outline, beds, rust and specks. */
export function paintStones(s, coat, { seed }) {
  const tones = coat.tones.map(rgb), joint = rgb(coat.joint || '#999999'), rust = rgb('#a37a4d'), px = s.sx, { relief, arris, vary } = coat;
  const rag = tile(seed + 1, [cell(0.05, px), cell(0.02, px), cell(0.008, px), cell(0.003, px)], [1, 0.9, 0.6, 0.4]);
  const rough = tile(seed + 2, [cell(0.045, px), cell(0.018, px), cell(0.007, px), 2, 1], [1, 0.75, 0.5, 0.28, 0.22]), grit = tile(seed + 3, [1, 2, 4], [1, 0.9, 0.6]);
  const stain = tile(seed + 4, [cell(0.12, px), cell(0.05, px), cell(0.02, px)], [1, 0.8, 0.5]);
  const edge = layUnits(s, coat.rings, { wobble: 0.003, square: rag, round: 0.022, reach: 0.016, repeats: coat.repeats, seed }, (u, _, i, x, y, a, b, d) => {
    const look = u.look || (u.look = stoneLook(u, tones, vary));
    const X = x + u.shift[0], Y = y + u.shift[1], n = at(rough, X, Y), g = at(grit, X, Y), st = at(stain, X, Y);
    let face = 1e9;
    for (let p = 0; p < look.planes.length; p += 3) face = Math.min(face, look.planes[p] + look.planes[p + 1] * (a + 0.006 * n) + look.planes[p + 2] * (b + 0.006 * st));
    const rise = Math.min((d + 0.003 * n) / 0.03, 1), dome = Math.sqrt(Math.max(rise * (2 - rise), 0));
    let height = look.proud + relief * (1.1 * dome + Math.max(face, -1.2) * dome + 0.2 * n) + 0.0006 * g - arrisDrop(d, arris);
    // Beds of the stone: faint steps along its length.
    const bed = at(rough, (X * 0.12) | 0, (Y * 0.9 + look.tilt * X) | 0);
    height += look.beds * relief * 0.16 * bed;
    let f = 1 + 0.07 * g * look.grit + 0.075 * st + 0.05 * n + look.beds * 0.09 * bed + 0.035 * dome;
    if (look.specks && g > 0.75) f *= 0.78;
    put(s, i, look.tone, f);
    const red = look.rust * Math.max(0, st + 0.25 * n - 0.15);
    if (red > 0.01) { const k = i * 4, c = s.color, w = Math.min(red, 0.55); for (let q = 0; q < 3; q++) c[k + q] += (rust[q] * f - c[k + q]) * w; }
    s.height[i] = height;
  });
  fillJoints(s, edge, { tone: joint, recess: coat.recess * 0.55, sand: 0.0011, half: Math.min(halfJoint(edge), 0.012), rough: 0.97, seed });
}

function stoneLook(u, tones, vary) {
  const planes = [], many = 4 + Math.floor(u.lot() * 4), turn = u.lot() * 6.28, size = Math.max(Math.min(u.half[0], u.half[1]), 0.03);
  for (let p = 0; p < many; p++) {
    const way = turn + (p / many) * 6.28 + (u.lot() - 0.5) * 1.4, steep = (0.5 + u.lot() * 1.1) / size;
    planes.push(0.2 + u.lot() * 0.6, Math.cos(way) * steep, Math.sin(way) * steep);
  }
  return { tone: toneOf(u, tones, vary), planes, proud: (u.lot() - 0.4) * 0.006, beds: u.lot() < 0.45 ? 0.5 + u.lot() : 0.1, tilt: (u.lot() - 0.5) * 0.16, rust: u.lot() < 0.3 ? 0.9 * u.lot() : 0.12 * u.lot(), specks: u.lot() < 0.25, grit: 0.6 + 0.8 * u.lot() };
}

/** Smooth-faced units: tile with its glaze, flags, slabs, block, cast sections. */
export function paintPlainUnits(s, coat, { seed, wobble = 0.0005, glaze = 0, sand = 0.5, worn = 0, pits = 0, cloudy = 1 }) {
  const tones = coat.tones.map(rgb), px = s.sx, { relief, arris, vary } = coat, rings = coat.rings.length ? coat.rings : [new Float32Array([-1, -1, coat.width + 1, -1, coat.width + 1, coat.height + 1, -1, coat.height + 1])];
  const wave = tile(seed + 1, [cell(0.08, px), cell(0.03, px)], [1, 0.6]), grit = tile(seed + 2, [1, 2, 4, 8], [1, 0.9, 0.7, 0.5]), cloud = tile(seed + 3, [cell(0.2, px), cell(0.09, px), cell(0.035, px), cell(0.012, px), cell(0.005, px)], [1, 0.9, 0.7, 0.5, 0.4]), holes = tile(seed + 6, [cell(0.008, px), cell(0.004, px)], [1, 0.8]);
  const edge = layUnits(s, rings, { wobble, square: grit, round: arris, reach: 0.006, repeats: coat.repeats, seed }, (u, _, i, x, y, a, b, d) => {
    const look = u.look || (u.look = { tone: toneOf(u, tones, vary), lean: [(u.lot() - 0.5) * 0.01, (u.lot() - 0.5) * 0.01], proud: (u.lot() - 0.5) * 0.0008, pool: u.lot() });
    const X = x + u.shift[0], Y = y + u.shift[1], g = at(grit, X, Y), c = at(cloud, X, Y), v = at(wave, X, Y), lone = coat.rings.length ? 1 : 0;
    let height = lone * (look.proud + look.lean[0] * a + look.lean[1] * b) + relief * ((glaze ? 0.9 : 0.45) * v + sand * 0.4 * g + 0.25 * c) - lone * arrisDrop(d, arris);
    let f = 1 + (0.05 * sand) * g + (0.06 * cloudy) * c;
    if (glaze) f *= 1 + 0.1 * v - 0.16 * Math.max(0, 1 - d / 0.006) * 0.5 + 0.09 * Math.max(0, c * look.pool);
    else if (worn) f *= 1 + 0.06 * worn * Math.max(0, 1 - d / 0.02) * (0.5 + c);
    const hole = pits ? at(holes, X, Y) - pits : 0;
    if (hole > 0) { height -= 0.0016 * Math.min(hole * 6, 1); f *= 1 - 0.2 * Math.min(hole * 6, 1); }
    put(s, i, look.tone, f);
    s.height[i] = height;
    s.rough[i] = 255 * Math.min(Math.max(coat.rough + (glaze ? 0.05 : 0.08) * c + 0.03 * g, 0.04), 1);
  });
  if (coat.rings.length) fillJoints(s, edge, { tone: rgb(coat.joint || '#999999'), recess: coat.recess, sand: 0.0004, half: halfJoint(edge), rough: 0.95, seed });
}

