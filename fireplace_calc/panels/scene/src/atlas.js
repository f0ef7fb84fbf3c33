// The light as it was last told, and what it becomes when things have changed: each chart keeps the light of the one that
// bore its name, until new light comes.
import { DataTexture, DataUtils, HalfFloatType, LinearFilter, RGBAFormat, UnsignedByteType } from 'three';
import { WIDE } from './charts.js';

/** Light by chart and corner, kept on the page's side. */
export class Atlas {
  constructor(shared) {
    Object.assign(this, { shared, tall: 0, light: null, ways: null, corners: null, charts: [], things: [], lit: false });
  }

  /** New charts and things: light is carried over by name. */
  relaid(charts, things, spots, tall) {
    const light = new Float32Array(4 * WIDE * tall), ways = new Uint8Array(4 * WIDE * tall).fill(128), corners = new Float32Array(4 * spots);
    if (this.lit) {
      const named = new Map(), turned = new Map();
      for (const chart of this.charts) {
        const mine = named.get(chart.name) || named.set(chart.name, []).get(chart.name), way = chart.name.slice(chart.name.lastIndexOf('|'));
        mine.push(chart);
        if (chart.thing.kind !== 'setting') turned.set(way, chart);
      }
      for (const chart of charts) {
        const near = (named.get(chart.name) || []).reduce((best, c) => (!best || Math.abs(c.off - chart.off) < Math.abs(best.off - chart.off) ? c : best), null);
        const old = near || turned.get(chart.name.slice(chart.name.lastIndexOf('|'))) || this.charts[0];
        this.carry(old, chart, light, ways);
      }
      this.carryCorners(things, corners);
    }
    Object.assign(this, { charts, things: things.map(({ key, firstSpot, spotBegin, spotCount }) => ({ key, spotCount, from: firstSpot + (spotBegin || 0) })), light, ways, corners, tall });
    this.charts = charts.map((c) => ({ ...c }));
    this.show();
  }

  carry(old, chart, light, ways) {
    for (let j = 0; j < chart.h; j++) for (let i = 0; i < chart.w; i++) {
      const at = [chart.low[0] + i / (chart.w - 1) * (chart.high[0] - chart.low[0]), chart.low[1] + j / (chart.h - 1) * (chart.high[1] - chart.low[1])];
      const [x, y] = at.map((v, k) => Math.round(Math.min(1, Math.max(0, (v - old.low[k]) / Math.max(old.high[k] - old.low[k], 1e-6))) * ((k ? old.h : old.w) - 1)));
      const from = 4 * ((old.y + y) * WIDE + old.x + x), to = 4 * ((chart.y + j) * WIDE + chart.x + i);
      for (let a = 0; a < 4; a++) { light[to + a] = this.light[from + a]; ways[to + a] = this.ways[from + a]; }
    }
  }

  carryCorners(things, corners) {
    const before = new Map(this.things.map((t) => [t.key, t]));
    for (const { key, firstSpot, spotBegin, spotCount } of things) {
      const old = before.get(key);
      if (!spotCount || !old?.spotCount) continue;
      for (let k = 0; k < spotCount; k++) {
        const from = 4 * (old.from + Math.min(old.spotCount - 1, Math.floor(k * old.spotCount / spotCount)));
        corners.set(this.corners.subarray(from, from + 4), 4 * (firstSpot + spotBegin + k));
      }
    }
  }

  /** New light from the worker. */
  take({ atlas, ways, corners }) {
    Object.assign(this, { light: atlas, ways, corners, lit: true });
    this.show();
  }

  show() {
    const { shared, light, ways, tall } = this, half = new Uint16Array(light.length);
    for (let k = 0; k < half.length; k++) half[k] = light[k] > 0 ? DataUtils.toHalfFloat(Math.min(light[k], 60000)) : 0;
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
