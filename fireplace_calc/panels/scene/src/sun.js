// Sun, sky, lamp and fire by the hour; and the map of what the sun reaches.
import { DepthTexture, DoubleSide, MeshBasicMaterial, NearestFilter, OrthographicCamera, UnsignedIntType, WebGLRenderTarget } from 'three';
import { unit } from './vectors.js';

export const CASTS = 1; // layer of what casts a shadow
const SIZE = 2048, QUICK = 768, DISC = 0.011; // dots of the map, and of one that must be there at once; half the sun's disc, with its haze [rad]

const RISEN = [-0.8, -0.37, 0.35]; // the way to the sun where no table has been sent
/** Light as the sun rises: by the sine of how high it stands; color of sky and lamp, how much the fire is seen to light,
    and how bright the picture is taken. */
const RISING = [
  { up: -0.24, sky: [0.05, 0.06, 0.13], lamp: [0.22, 0.135, 0.062], fire: 0.8, exposure: 2.9 },
  { up: -0.06, sky: [0.8, 1.05, 1.95], lamp: [1.3, 0.84, 0.42], fire: 0.62, exposure: 2.2 },
  { up: 0.03, sky: [2.4, 2.5, 3.0], lamp: [0.9, 0.58, 0.29], fire: 0.5, exposure: 2.3 },
  { up: 0.1, sky: [4.2, 4.4, 4.9], lamp: [0, 0, 0], fire: 0.45, exposure: 2.2 },
  { up: 0.34, sky: [6.4, 7.0, 7.9], lamp: [0, 0, 0], fire: 0.42, exposure: 2.0 },
  { up: 1, sky: [7.6, 8.4, 9.6], lamp: [0, 0, 0], fire: 0.42, exposure: 1.85 },
];
/** Of a low sun less blue comes through than of a high one: loss for each air mass, by color. [-] */
const LOSS = [0.05, 0.12, 0.24], STRONG = [11.2, 10.4, 9.6];

export const HOURS = ['Day', 'Overcast', 'Dusk', 'Night'];

const between = (a, b, t) => (Array.isArray(a) ? a.map((v, k) => v + t * (b[k] - v)) : a + t * (b - a));

/** Light of a sun that stands `way`, of a strength. [kW/m2] */
function lightOf(way, strong) {
  const up = Math.min(1, Math.max(RISING[0].up, way[2])), k = Math.max(1, RISING.findIndex((r) => r.up >= up)), [a, b] = [RISING[k - 1], RISING[k]], t = (up - a.up) / (b.up - a.up);
  const made = Object.fromEntries(['sky', 'lamp', 'fire', 'exposure'].map((name) => [name, between(a[name], b[name], t)]));
  const mass = 1 / Math.max(up, 0.03);
  return { ...made, way, sun: up > 0 ? STRONG.map((v, c) => v * Math.min(1, strong * 1.35) * Math.exp(-LOSS[c] * mass)) : [0, 0, 0] };
}

/** Light of a month (from 0) and an hour by the kernel's table, or of a name. */
export function hourOf(table, { name, month, hour }) {
  const ways = table?.table, at = (m, h) => { const k = 4 * (m * 49 + Math.min(48, h)); return ways.subarray(k, k + 4); };
  const stands = (m, h) => { const low = Math.floor(2 * h); return between(Array.from(at(m, low)), Array.from(at(m, low + 1)), 2 * h - low); };
  if (name === 'Dusk') return lightOf([RISEN[0], RISEN[1], -0.06], 0);
  if (name === 'Night') return lightOf([RISEN[0], RISEN[1], -0.3], 0);
  const [x, y, z, strong] = !ways ? [...RISEN, 0.65] : name ? stands(table.month, table.hour) : stands(month, hour), made = lightOf(unit([x, y, z]), strong);
  return name === 'Overcast' ? { ...made, sky: [8.4, 8.8, 9.4], sun: [0, 0, 0], exposure: 2.2 } : made;
}

/** Outside the room a fireplace is shown as in a studio. */
export const STUDIO = { sky: [1, 1, 1], sun: [1.5, 1.44, 1.34], way: [-0.5, -0.75, 0.75], lamp: [0, 0, 0], fire: 0, exposure: 1.1 };

const mapOf = (size) => new WebGLRenderTarget(size, size, { depthTexture: new DepthTexture(size, size, UnsignedIntType), magFilter: NearestFilter, minFilter: NearestFilter });

/** What the sun reaches, drawn once from where it stands: finely at rest, quickly while something moves and no graphics card helps. */
export class SunMap {
  constructor(shared) {
    Object.assign(this, { shared, target: mapOf(SIZE), quick: mapOf(QUICK) });
    this.camera = new OrthographicCamera(-1, 1, 1, -1, 1, 60);
    this.camera.up.set(0, 0, 1);
    this.camera.layers.set(CASTS);
    this.flat = new MeshBasicMaterial({ side: DoubleSide, colorWrite: false });
    shared.sunMap.value = this.target.depthTexture;
  }

  /** Look from the sun at a ball round `middle` [m]; `aside` picks a spot of its disc, two numbers from -1 to 1. */
  aim(way, middle, radius, aside = [0, 0]) {
    const { camera, shared } = this, [x, y, z] = unit(way), across = unit([-y, x, 0.0001]), up = [y * across[2] - z * across[1], z * across[0] - x * across[2], x * across[1] - y * across[0]];
    const from = [x, y, z].map((v, k) => v + DISC * (aside[0] * across[k] + aside[1] * up[k]));
    const wide = radius * (1 + 0.003 * (aside[0] - aside[1])); // another grid each time: no steps in the edge of a shadow
    Object.assign(camera, { left: -wide, right: wide, top: wide, bottom: -wide, near: 1, far: 2 * radius + 20 });
    camera.position.set(...middle.map((v, k) => v + from[k] * (radius + 10)));
    camera.lookAt(...middle);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    shared.sunWay.value.set(x, y, z);
    shared.sunView.value.multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse);
  }

  draw(renderer, scene, quick = false) {
    const before = scene.overrideMaterial, { background } = scene, target = quick ? this.quick : this.target;
    this.shared.sunMap.value = null;
    scene.overrideMaterial = this.flat; scene.background = null;
    renderer.setRenderTarget(target);
    renderer.clear();
    renderer.render(scene, this.camera);
    renderer.setRenderTarget(null);
    scene.overrideMaterial = before; scene.background = background;
    this.shared.sunMap.value = target.depthTexture;
  }

  dispose() { for (const target of [this.target, this.quick]) { target.depthTexture.dispose(); target.dispose(); } this.flat.dispose(); }
}
