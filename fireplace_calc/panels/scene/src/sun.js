// Sun, sky, lamp and fire by the hour; and the map of what the sun reaches.
import { DepthTexture, DoubleSide, MeshBasicMaterial, NearestFilter, OrthographicCamera, UnsignedIntType, WebGLRenderTarget } from 'three';
import { unit } from './vectors.js';

export const CASTS = 1; // layer of what casts a shadow
const SIZE = 2048, DISC = 0.011; // dots of the map; half the sun's disc, with its haze [rad]

/** Light by the hour: of the sky as seen in the window, of sun, lamp and fire; how bright the picture is taken. */
export const HOURS = {
  Day: { sky: [6.4, 7.0, 7.9], sun: [8.6, 6.9, 4.8], way: [-0.8, -0.37, 0.35], lamp: [0, 0, 0], fire: 0.42, exposure: 1.7 },
  Overcast: { sky: [8.4, 8.8, 9.4], sun: [0, 0, 0], way: [-0.8, -0.37, 0.35], lamp: [0, 0, 0], fire: 0.42, exposure: 1.9 },
  Dusk: { sky: [0.9, 1.15, 2.0], sun: [0, 0, 0], way: [-0.8, -0.37, 0.35], lamp: [1.3, 0.84, 0.42], fire: 0.66, exposure: 2.3 },
  Night: { sky: [0.05, 0.06, 0.13], sun: [0, 0, 0], way: [-0.8, -0.37, 0.35], lamp: [0.22, 0.135, 0.062], fire: 0.86, exposure: 3.0 },
};
/** Outside the room a fireplace is shown as in a studio. */
export const STUDIO = { sky: [1, 1, 1], sun: [1.5, 1.44, 1.34], way: [-0.5, -0.75, 0.75], lamp: [0, 0, 0], fire: 0, exposure: 1.1 };

/** What the sun reaches, drawn once from where it stands. */
export class SunMap {
  constructor(shared) {
    this.shared = shared;
    this.target = new WebGLRenderTarget(SIZE, SIZE, { depthTexture: new DepthTexture(SIZE, SIZE, UnsignedIntType), magFilter: NearestFilter, minFilter: NearestFilter });
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

  draw(renderer, scene) {
    const before = scene.overrideMaterial, { background } = scene;
    this.shared.sunMap.value = null;
    scene.overrideMaterial = this.flat; scene.background = null;
    renderer.setRenderTarget(this.target);
    renderer.clear();
    renderer.render(scene, this.camera);
    renderer.setRenderTarget(null);
    scene.overrideMaterial = before; scene.background = background;
    this.shared.sunMap.value = this.target.depthTexture;
  }

  dispose() { this.target.depthTexture.dispose(); this.target.dispose(); this.flat.dispose(); }
}
