// What a ray from the eye meets, and the outline of what was picked.
import { BufferAttribute, BufferGeometry, EdgesGeometry, LineBasicMaterial, LineSegments, Vector3 } from 'three';
import { treeOf } from './tree.js';

const MARK = 0x1e90ff;

/** Rays against the things as they are shown; the tree is built when first asked for. */
export class Picking {
  constructor(shown) { this.shown = shown; this.tree = null; }

  /** Things have changed. */
  stale() { this.tree = null; }

  build() {
    const tri = [], owner = [];
    this.shown().forEach(({ thing, move }, number) => {
      if (!thing || thing.stuff === 'glass') return;
      for (const corner of thing.faces) for (let a = 0; a < 3; a++) tri.push(thing.points[3 * corner + a] + move[a]);
      for (let f = 0; f < thing.faces.length / 3; f++) owner.push(number);
    });
    this.tree = { shoot: treeOf(Float32Array.from(tri)), owner };
  }

  /** Number of the thing that a ray meets first, and where [m]; null for none. */
  ray(from, way) {
    if (!this.tree) this.build();
    const { face, far } = this.tree.shoot(...from, ...way, 200, false);
    return face < 0 ? null : { number: this.tree.owner[face], distance: far, point: from.map((v, k) => v + far * way[k]) };
  }

  /** What a place of the picture shows, from -1 to 1 to the right and up. */
  at(camera, x, y) {
    const way = new Vector3(x, y, 0.5).unproject(camera).sub(camera.position).normalize();
    return this.ray(camera.position.toArray(), way.toArray());
  }
}

/** Lines round a thing that show through all before it. */
export function outlineOf(thing, move, exposure) {
  const own = new BufferGeometry();
  own.setAttribute('position', new BufferAttribute(thing.points, 3));
  own.setIndex(new BufferAttribute(thing.faces, 1));
  const line = new LineSegments(new EdgesGeometry(own, 20), new LineBasicMaterial({ color: MARK, depthTest: false, transparent: true, toneMapped: false }));
  own.dispose();
  line.material.color.multiplyScalar(1.6 / exposure);
  line.position.set(...move);
  line.renderOrder = 9;
  return line;
}
