// The light as it was last told, and what it becomes when things have changed: each chart keeps the light of the one that
// bore its name, until new light comes.
import { DataTexture, DataUtils, HalfFloatType, LinearFilter, RGBAFormat, UnsignedByteType } from 'three';
import { WIDE } from './charts.js';

/** From a thing's first point to its last: the same as long as it was only moved. [m] */
const spanOf = ({ points }) => [0, 1, 2].map((a) => points[points.length - 3 + a] - points[a]);

const halfOf = (v) => (v > 0 ? DataUtils.toHalfFloat(Math.min(v, 60000)) : 0);

/** Light of so many texels: as numbers, as the texture holds it, and from whence it comes. */
const blank = (count) => ({ light: new Float32Array(4 * count), half: new Uint16Array(4 * count), ways: new Uint8Array(4 * count).fill(128) });

/** Which texel of an old row stands for each of a new one. */
function stands(count, low, high, old, oldLow, oldHigh) {
  return Int32Array.from({ length: count }, (_, i) => Math.round(Math.min(1, Math.max(0, (low + i / (count - 1) * (high - low) - oldLow) / Math.max(oldHigh - oldLow, 1e-6))) * (old - 1)));
}

/** Light by chart and corner, kept on the page's side. */
export class Atlas {
  constructor(shared) {
    Object.assign(this, { shared, tall: 0, ...blank(0), corners: null, charts: [], things: [], lit: false });
  }

  /** New charts and things: light is carried over by name. */
  relaid(charts, things, spots, tall) {
    const made = blank(WIDE * tall), corners = new Float32Array(4 * spots);
    if (this.lit) {
      const named = new Map(), turned = new Map(), wayOf = ({ name }) => name.slice(name.lastIndexOf('|'));
      let any;
      for (const chart of this.charts) {
        const mean = this.meanOfChart(chart);
        if (!mean) continue; // in the dark, as the front of a slab let into the floor: it has nothing to hand on
        any ??= [chart, mean];
        (named.get(chart.name) || named.set(chart.name, []).get(chart.name)).push([chart, mean]);
        if (chart.thing.kind !== 'setting') turned.set(wayOf(chart), [chart, mean]);
      }
      for (const chart of charts) {
        const near = (named.get(chart.name) || []).reduce((best, one) => (!best || Math.abs(one[0].off - chart.off) < Math.abs(best[0].off - chart.off) ? one : best), null);
        this.carry(near || turned.get(wayOf(chart)) || any, chart, made);
      }
      this.carryCorners(things, corners);
    }
    Object.assign(this, made, { charts: charts.map((c) => ({ ...c })), things: things.map((thing) => ({ key: thing.key, spotCount: thing.spotCount, from: thing.firstSpot + (thing.spotBegin || 0), span: spanOf(thing) })), corners, tall });
    this.show();
  }

  /** Mean light of a chart where any fell, and from whence most of it comes; nothing where none did. */
  meanOfChart({ x, y, w, h }) {
    const { light } = this;
    let count = 0, r = 0, g = 0, b = 0, f = 0;
    for (let j = y; j < y + h; j++) for (let k = 4 * (j * WIDE + x), end = k + 4 * w; k < end; k += 4) {
      if (light[k] + light[k + 1] + light[k + 2] + light[k + 3] <= 0) continue;
      count++; r += light[k]; g += light[k + 1]; b += light[k + 2]; f += light[k + 3];
    }
    return count ? [r / count, g / count, b / count, f / count] : null;
  }

  /** Light of one chart onto another of its name. What stood against the old one, as a picture, left it dark there: the mean stands in. */
  carry([old, mean] = [], chart, made) {
    if (!old) return;
    const across = stands(chart.w, chart.low[0], chart.high[0], old.w, old.low[0], old.high[0]), up = stands(chart.h, chart.low[1], chart.high[1], old.h, old.low[1], old.high[1]);
    const { light, half, ways } = this, halves = mean.map(halfOf);
    for (let j = 0; j < chart.h; j++) for (let i = 0, to = 4 * ((chart.y + j) * WIDE + chart.x), row = (old.y + up[j]) * WIDE + old.x; i < chart.w; i++, to += 4) {
      const from = 4 * (row + across[i]), fell = light[from] + light[from + 1] + light[from + 2] + light[from + 3] > 0;
      for (let a = 0; a < 4; a++) {
        made.light[to + a] = fell ? light[from + a] : mean[a];
        made.half[to + a] = fell ? half[from + a] : halves[a];
        if (fell) made.ways[to + a] = ways[from + a];
      }
    }
  }

  carryCorners(things, corners) {
    const before = new Map(this.things.map((t) => [t.key, t]));
    for (const thing of things) {
      const { key, firstSpot, spotBegin, spotCount } = thing, old = before.get(key);
      if (!spotCount || !old?.spotCount) continue;
      const kept = spotCount === old.spotCount && spanOf(thing).every((v, a) => Math.abs(v - old.span[a]) < 1e-3);
      const mean = kept ? null : this.meanOf(old);
      for (let k = 0; k < spotCount; k++) corners.set(mean || this.corners.subarray(4 * (old.from + k), 4 * (old.from + k) + 4), 4 * (firstSpot + spotBegin + k));
    }
  }

  /** Light of a thing as a whole: what was turned round or shaped otherwise has its corners elsewhere. */
  meanOf({ from, spotCount }) {
    const mean = [0, 0, 0, 0];
    for (let k = 4 * from, end = k + 4 * spotCount; k < end; k++) mean[k % 4] += this.corners[k] / spotCount;
    return mean;
  }

  /** New light from the worker. */
  take({ atlas, ways, corners }) {
    Object.assign(this, { light: atlas, half: Uint16Array.from(atlas, halfOf), ways, corners, lit: true });
    this.show();
  }

  show() {
    const { shared, half, ways, tall } = this;
    for (const [name, data, type] of [['atlas', half, HalfFloatType], ['ways', ways, UnsignedByteType]]) {
      const old = shared[name].value;
      if (old && old.image.height === tall) { old.image.data = data; old.needsUpdate = true; continue; }
      old?.dispose();
      const made = new DataTexture(data, WIDE, tall, RGBAFormat, type);
      Object.assign(made, { magFilter: LinearFilter, minFilter: LinearFilter, needsUpdate: true });
      shared[name].value = made;
    }
    shared.atlasSize.value = [WIDE, tall];
    shared.unlit.value = this.lit ? 0 : 1;
  }

  dispose() { this.shared.atlas.value?.dispose(); this.shared.ways.value?.dispose(); }
}
