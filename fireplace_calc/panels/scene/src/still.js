// Where the browser has no WebGL: the same scene as a picture that is traced in a worker, coarse while it is turned, fine
// when it rests. It stands in for the film.
import { Vector3 } from 'three';
import { WIDE } from './charts.js';
import { started } from './coats.js';
import tracer from 'worker:./still_tracer.js';

const REST = 250, COARSE = 22000, FINE = 650000, LARGEST = 512; // [ms]; dots of a coarse and a fine picture; of a coat
export const NO_WEBGL = 'This browser draws no WebGL: the same scene is shown as a still picture, coarse while it is turned.';

/** A coat with no more dots than a still needs. */
function smaller({ image: { data, width, height } }) {
  const by = Math.max(1, Math.ceil(Math.max(width, height) / LARGEST)), w = Math.floor(width / by), h = Math.floor(height / by), made = new Uint8Array(4 * w * h);
  for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) for (let a = 0; a < 3; a++) {
    let sum = 0;
    for (let j = 0; j < by; j++) for (let i = 0; i < by; i++) sum += data[4 * ((y * by + j) * width + x * by + i) + a];
    made[4 * (y * w + x) + a] = sum / by / by;
  }
  return { w, h, data: made };
}

export class StillFilm {
  constructor(stage) {
    Object.assign(this, { stage, pen: stage.canvas.getContext('2d'), turn: 0, gone: false, still: false, exposure: 1, plain: false, frames: 0, times: [], resting: 0, sent: '', waiting: null, small: new WeakMap() });
    this.worker = started(tracer);
    this.worker.onmessage = ({ data }) => this.put(data);
  }

  /** Triangles with what each corner needs, and the coats, as the worker wants them. */
  scene() {
    const { body } = this.stage, groups = [], lists = { tri: [], normal: [], uv: [], spot: [], glow: [], owner: [] };
    for (const mesh of body.meshes) {
      const { geometry, material, userData: { group } } = mesh, { position, normal, uv, spot, glow } = geometry.attributes, u = material.uniforms;
      if (!mesh.visible) continue;
      const count = Math.min(position.count, geometry.drawRange.count), move = mesh.position.toArray();
      const texture = u?.coated.value ? u.coat.value : null;
      if (texture && !this.small.has(texture)) this.small.set(texture, { ...smaller(texture), width: group.layout?.width || group.look.patch });
      for (let k = 0; k < count; k++) {
        for (let a = 0; a < 3; a++) { lists.tri.push(position.array[3 * k + a] + move[a]); lists.normal.push(normal.array[3 * k + a]); }
        lists.uv.push(uv.array[2 * k], uv.array[2 * k + 1]);
        lists.spot.push(...(spot ? [spot.array[2 * k], spot.array[2 * k + 1]] : [0, 0]));
        for (let a = 0; a < 4; a++) lists.glow.push(glow ? glow.array[4 * k + a] : 0);
        if (k % 3 === 0) lists.owner.push(groups.length);
      }
      groups.push({ coat: texture ? this.small.get(texture) : null, tone: (u?.tone.value || material.color).toArray(), smooth: !!glow, sooty: group.look.soot, selfLit: u?.selfLit.value || 0 });
    }
    return { ...Object.fromEntries(Object.entries(lists).map(([name, list]) => [name, name === 'owner' ? Uint16Array.from(list) : Float32Array.from(list)])), groups, light: this.stage.atlas.light, wide: WIDE };
  }

  look(width, height, fine) {
    const { stage } = this, { camera, now, shared } = stage, right = new Vector3(), up = new Vector3(), back = new Vector3();
    stage.place(width / height);
    camera.matrixWorld.extractBasis(right, up, back);
    const tall = Math.tan(camera.fov * Math.PI / 360), long = Math.hypot(...now.way);
    return { serial: this.turn, width, height, fine, eye: camera.position.toArray(), right: right.toArray(), up: up.toArray(), ahead: back.negate().toArray(), wideness: tall * width / height, dot: 2 * tall / height,
      exposure: this.plain ? 1 : this.exposure, plain: this.plain, outdoors: stage.inside, sky: now.sky.map((v) => v * 0.4), paper: [0.9, 0.89, 0.87], sun: now.sun, way: now.way.map((v) => v / long),
      flame: shared.flame.value.toArray(), lamp: now.lamp, fire: shared.fire.value.toArray(), burns: stage.inside, gain: 1.5 / this.exposure };
  }

  ask(dots, fine, size = null) {
    const { clientWidth: w, clientHeight: h } = this.stage.canvas, [wide, high] = size || [w, h];
    if (this.gone || !wide || !this.stage.things.length) return;
    const scale = size ? 1 : Math.min(1, Math.sqrt(dots / (wide * high))), told = { look: this.look(Math.max(2, Math.round(wide * scale)), Math.max(2, Math.round(high * scale)), fine) };
    const state = [this.stage.body.serial, this.stage.step, this.stage.coats.made.size, this.stage.timings.lights, this.stage.mode].join();
    if (state !== this.sent) { told.scene = this.scene(); this.sent = state; }
    this.worker.postMessage(told);
  }

  /** A picture has come: onto the canvas, as large as that is. */
  put({ serial, width, height, fine, last, picture }) {
    if (serial !== this.turn || this.gone) return;
    const image = new ImageData(picture, width, height), own = new OffscreenCanvas(width, height), { canvas } = this.stage;
    own.getContext('2d').putImageData(image, 0, 0);
    const w = fine ? width : Math.max(width, canvas.clientWidth), h = fine ? height : Math.max(height, canvas.clientHeight);
    if (canvas.width !== w || canvas.height !== h) { canvas.width = w; canvas.height = h; }
    this.pen.drawImage(own, 0, 0, w, h);
    this.frames++;
    this.still = fine && last;
    this.stage.drawn();
    if (this.still && this.waiting) { this.waiting(); this.waiting = null; }
  }

  again() {
    if (this.gone) return;
    this.turn++;
    this.still = false;
    if (!this.due) this.due = requestAnimationFrame(() => { this.due = 0; this.ask(COARSE, false); });
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.ask(FINE, true), REST);
  }

  async picture(width, height) {
    this.turn++;
    clearTimeout(this.resting);
    const made = new Promise((done) => { this.waiting = done; });
    this.ask(0, true, [width, height]);
    await made;
    const blob = await new Promise((done) => { this.stage.canvas.toBlob(done, 'image/png'); });
    this.again();
    return blob;
  }

  dispose() {
    this.gone = true;
    cancelAnimationFrame(this.due);
    clearTimeout(this.resting);
    this.worker.terminate();
  }
}
