// All that stands there as meshes: the room once, the fireplace at each change. What has not changed keeps its mesh.
import { Mesh } from 'three';
import { chartsOf, cornersOf, placed } from './charts.js';
import { jobOf } from './job.js';
import { glowed, groupsOf, skinOf } from './skins.js';
import { dress, undress } from './studio.js';
import { CASTS } from './sun.js';
import { surfaceOf, wholly } from './surface.js';

const SPARE = 32; // rows of the atlas that are added at a time
const NO_SHADOW = new Set(['glass', 'lamp', 'shade']);

const none = () => ({ things: [], charts: [], spots: [], nears: [], meshes: new Map() });

export class Body {
  /** `told` gives `looks`, `layouts`, `mode` and `hatches` as they are. */
  constructor({ scene, shared, atlas, coats, told }) {
    Object.assign(this, { scene, shared, atlas, coats, told, parts: { setting: none(), fireplace: none() }, rows: 0, tall: 0, serial: 0, bare: false });
  }

  get things() { return [...this.parts.setting.things, ...this.parts.fireplace.things]; }

  get meshes() { return [...this.parts.setting.meshes.values(), ...this.parts.fireplace.meshes.values()]; }

  get charts() { return [...this.parts.setting.charts, ...this.parts.fireplace.charts]; }

  /** Other things in one part, or others' layouts for them; `laid` must follow. */
  put(name, things) {
    const { looks, layouts, room, mode } = this.told();
    Object.assign(this.parts[name], { things, charts: chartsOf(things, layouts, looks, mode === 'room' ? room : null) }, cornersOf(things, looks));
  }

  /** Places in the atlas for the charts, and meshes; those of the room stay unless `all` is new. */
  laid(all) {
    const { setting, fireplace } = this.parts;
    if (all) this.rows = placed(setting.charts, 0);
    const end = placed(fireplace.charts, this.rows);
    if (end > this.tall || end < this.tall - 4 * SPARE) this.tall = Math.max(SPARE, Math.ceil(end / SPARE) * SPARE);
    let first = 0;
    for (const part of [setting, fireplace]) {
      for (const thing of part.things) {
        thing.spotCount = thing.smooth ? thing.spotEnd - thing.spotBegin : 0;
        thing.firstSpot = first;
      }
      first += part.spots.length;
    }
    if (all) this.meshed('setting');
    this.meshed('fireplace');
    this.atlas.relaid(this.charts, this.things, first, this.tall);
    this.glow();
    this.serial++;
  }

  meshed(name) {
    const part = this.parts[name], { looks, mode, hatches } = this.told(), before = part.meshes, inside = mode === 'room';
    part.meshes = new Map();
    for (const group of groupsOf(part.things, part.charts, looks, !inside)) {
      const old = inside ? before.get(group.name) : null, mesh = old || new Mesh(undefined, surfaceOf(group, this.shared, this.bare));
      before.delete(old ? group.name : null);
      mesh.geometry.dispose();
      mesh.geometry = skinOf(group, part.spots);
      mesh.userData.group = group;
      if (NO_SHADOW.has(group.stuff)) mesh.layers.disable(CASTS); else mesh.layers.enable(CASTS);
      mesh.visible = group.stuff !== 'glass';
      if (!inside) dress(mesh, group.thing, hatches);
      this.coats.wear(mesh.material, group, looks);
      part.meshes.set(group.name, mesh);
      if (!old) this.scene.add(mesh);
    }
    for (const mesh of before.values()) this.drop(mesh);
    this.coats.sweep();
  }

  /** Surfaces as they are meant, where they were bare. */
  wholly() {
    if (this.bare) for (const { material } of this.meshes) if (material.userData.defines) wholly(material);
    this.bare = false;
  }

  drop(mesh) {
    undress(mesh);
    this.scene.remove(mesh);
    this.coats.off(mesh.material);
    mesh.geometry.dispose();
    mesh.material.dispose();
  }

  /** Only what is set by a step; everything where it is below nought. */
  upTo(step) {
    for (const mesh of this.meshes) {
      const { faces } = mesh.userData.group, count = step < 0 ? faces.length : faces.findIndex(({ thing }) => thing.step > step);
      mesh.geometry.setDrawRange(0, 3 * (count < 0 ? faces.length : count));
      mesh.visible = count !== 0 && mesh.userData.group.stuff !== 'glass';
    }
  }

  /** The light of smooth things, as the atlas has it. */
  glow() {
    for (const mesh of this.meshes) if (mesh.userData.group.smooth) glowed(mesh.userData.group, mesh.geometry, this.atlas.corners);
  }

  job(room) { return jobOf(Object.values(this.parts), { tall: this.tall, room, serial: this.serial }); }

  dispose() { for (const mesh of this.meshes) this.drop(mesh); }
}
