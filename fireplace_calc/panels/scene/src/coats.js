// Coats as textures: painted in a worker when first wanted, kept while they may come back, the old one shown until the
// new one is there.
import { DataTexture, LinearFilter, LinearMipmapLinearFilter, LinearMipmapNearestFilter, RepeatWrapping, RGBAFormat, SRGBColorSpace, UnsignedByteType } from 'three';
import { lookOf } from './charts.js';
import painter from 'worker:./painter.js';

const KEPT = 24; // coats that nothing wears any more

/** Start a worker from its source. */
export function started(source) {
  const address = URL.createObjectURL(new Blob([source], { type: 'text/javascript' })), made = new Worker(address);
  URL.revokeObjectURL(address);
  return made;
}

export class Coats {
  constructor({ fine, changed }) {
    Object.assign(this, { fine, changed, made: new Map(), asked: new Set(), worn: new Map(), latest: new Map() });
    this.worker = started(painter);
    this.worker.onmessage = ({ data }) => this.painted(data);
  }

  /** Dress a surface: now if the coat is there, else as soon as it is painted. */
  wear(material, group, looks) {
    const { stuff, layout } = group, key = `${stuff}|${layout?.key || ''}`;
    if (!looks[stuff] || !material.uniforms) return; // a cut face has its hatch
    this.worn.set(material, { key, stuff });
    this.put(material, this.made.get(key) || this.made.get(this.latest.get(stuff)));
    if (this.made.has(key) || this.asked.has(key)) return;
    this.asked.add(key);
    const coat = { stuff: lookOf(looks, stuff), width: layout?.width, height: layout?.height, rings: layout?.rings || [], joint: layout?.joint, repeats: layout?.repeats };
    this.worker.postMessage({ key, coat });
  }

  put(material, coat) {
    const { uniforms } = material;
    uniforms.coated.value = coat ? 1 : 0;
    uniforms.coat.value = coat?.colour || null;
    uniforms.relief.value = coat?.relief || null;
  }

  painted({ key, w, h, colour, relief }) {
    const texture = (data, sRGB) => {
      const made = new DataTexture(data, w, h, RGBAFormat, UnsignedByteType);
      Object.assign(made, { wrapS: RepeatWrapping, wrapT: RepeatWrapping, magFilter: LinearFilter, minFilter: this.fine > 1 ? LinearMipmapLinearFilter : LinearMipmapNearestFilter,
        generateMipmaps: true, anisotropy: this.fine, needsUpdate: true });
      if (sRGB) made.colorSpace = SRGBColorSpace;
      return made;
    };
    this.asked.delete(key);
    this.made.set(key, { colour: texture(colour, true), relief: texture(relief, false) });
    this.latest.set(key.split('|')[0], key);
    for (const [material, told] of this.worn) if (told.key === key) this.put(material, this.made.get(key));
    this.changed();
  }

  /** A surface has gone. */
  off(material) { this.worn.delete(material); }

  /** Let go of coats that nothing wears, but for the last few. */
  sweep() {
    const worn = new Set([...this.worn.values()].map((told) => told.key)), idle = [...this.made.keys()].filter((key) => !worn.has(key));
    for (const key of idle.slice(0, Math.max(0, idle.length - KEPT))) {
      const { colour, relief } = this.made.get(key);
      colour.dispose(); relief.dispose();
      this.made.delete(key);
      if (this.latest.get(key.split('|')[0]) === key) this.latest.delete(key.split('|')[0]);
    }
  }

  get waiting() { return this.asked.size; }

  dispose() {
    this.worker.terminate();
    for (const { colour, relief } of this.made.values()) { colour.dispose(); relief.dispose(); }
  }
}
