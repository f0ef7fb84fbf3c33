// A view of the scene on a canvas: things, light, an eye, and a frame whenever something has changed.
import { BackSide, Color, GLSL3, Mesh, PerspectiveCamera, Scene, ShaderMaterial, SphereGeometry, WebGLRenderer } from 'three';
import { Atlas } from './atlas.js';
import { Body } from './body.js';
import { Coats, started } from './coats.js';
import { Film } from './film.js';
import { Flames } from './flames.js';
import { Eye } from './hands.js';
import { fireOf, paneAxes, turned } from './own.js';
import { outlineOf, Picking } from './picking.js';
import { StillFilm } from './still.js';
import { HOURS, hourOf, STUDIO, SunMap } from './sun.js';
import { sharedUniforms } from './surface.js';
import { opened, openLayouts, openThings } from './wire.js';
import light from 'worker:./light.js';

const REST = 260; // a hand rests, and light is followed anew [ms]
const PAPER = 0xf4f2ee; // behind what stands outside its room
const LENS = 1.5; // a picture wider than this shows no more in height

/** What stands outside the windows: sky, and ground below it. */
function outdoors() {
  const material = new ShaderMaterial({ glslVersion: GLSL3, side: BackSide, depthWrite: false, toneMapped: false, uniforms: { sky: { value: new Color() } },
    vertexShader: 'out vec3 way; void main() { way = position; gl_Position = projectionMatrix * mat4(mat3(viewMatrix)) * vec4(position, 1.); gl_Position.z = gl_Position.w * .99999; }',
    fragmentShader: `in vec3 way; out vec4 dot_; uniform vec3 sky; void main() { float up = normalize(way).z;
      vec3 high = sky * mix(vec3(1.12, 1.06, 1.), vec3(.62, .8, 1.05), smoothstep(0., .7, up)), low = sky * mix(vec3(.30, .34, .20), vec3(.16, .2, .11), smoothstep(0., -.5, up));
      dot_ = vec4(mix(low, high, smoothstep(-.06, .03, up)), 1.); }` });
  const made = new Mesh(new SphereGeometry(40, 24, 16).rotateX(Math.PI / 2), material);
  made.frustumCulled = false;
  made.renderOrder = -1;
  return made;
}

/** Whether the processor draws in place of a graphics card. */
function isSoft(renderer) {
  const gl = renderer.getContext(), told = gl.getExtension('WEBGL_debug_renderer_info');
  return /swiftshader|llvmpipe|basic render|softpipe/i.test(String(told && gl.getParameter(told.UNMASKED_RENDERER_WEBGL)));
}

/** What draws, or null where the browser has no WebGL. */
function rendererOf(canvas) {
  if (!document.createElement('canvas').getContext('webgl2')) return null;
  const made = new WebGLRenderer({ canvas, antialias: false, powerPreference: 'high-performance' });
  made.shadowMap.enabled = false;
  return made;
}

/** `eye` may be changed at will, `again()` after it. */
export class Stage {
  constructor({ canvas, model, root, arrived = () => {} }) {
    Object.assign(this, { canvas, model, root, arrived, taken: null, began: performance.now(), timings: {} });
    const renderer = this.renderer = rendererOf(canvas);
    this.soft = !renderer || isSoft(renderer);
    this.scene = new Scene();
    this.camera = new PerspectiveCamera(45, 1.6, 0.05, 90);
    this.camera.up.set(0, 0, 1);
    Object.assign(this, { looks: {}, layouts: [], held: new Map(), marks: [], standpoints: {}, room: model.get('fireplace')?.room || null, title: '', hours: HOURS, hour: 'Day', clock: null, table: null, burning: false, step: -1, eye: new Eye(), tracing: 0, fire: null, fireAt: '' });
    const shared = this.shared = sharedUniforms(), changed = () => this.again();
    this.film = renderer ? new Film(renderer, this, this.soft) : new StillFilm(this);
    this.sun = new SunMap(shared);
    this.atlas = new Atlas(shared);
    this.coats = new Coats({ fine: this.soft ? 1 : Math.min(8, renderer.capabilities.getMaxAnisotropy()), changed });
    this.body = new Body({ scene: this.scene, shared, atlas: this.atlas, coats: this.coats, told: () => ({ room: this.room, looks: this.looks, layouts: this.layouts, mode: this.mode, hatches: model.get('hatches') || {} }) });
    this.body.bare = !!renderer; // the first frame shows tones alone: programs of the whole take longer than all the rest
    this.picking = new Picking(() => this.things.map((thing) => ({ thing: this.step < 0 || thing.step <= this.step ? thing : null, move: this.moved(thing) })));
    this.outdoors = outdoors();
    this.scene.add(this.outdoors);
    this.worker = started(light);
    this.worker.onmessage = ({ data }) => this.lit(data);
  }

  get mode() { return this.model.get('mode') || 'room'; }

  get inside() { return this.mode === 'room'; }

  /** All that stands there, in the order of its numbers. */
  get things() { return this.body.things; }

  /** Light of the hour; the table tells the way to the sun as the wall with the windows sees it. */
  get now() {
    if (!this.inside) return STUDIO;
    const made = hourOf(this.table, this.clock || { name: this.hour });
    return { ...made, way: turned(this.room, made.way) };
  }

  moved(thing) { return this.inside ? [0, 0, 0] : thing.away; }

  /** Something else has been sent; what has changed is built once all of it is there. */
  take(name, value) {
    if (!this.taken) { this.taken = {}; queueMicrotask(() => { if (!this.film.gone) this.takeAll(); }); }
    this.taken[name] = value;
  }

  takeAll() {
    const from = performance.now(), { looks, layouts, setting, fireplace, sun } = this.taken;
    this.taken = null;
    if (looks) this.looks = looks;
    if (sun) this.table = { ...sun, table: opened(sun.ways, Float32Array) };
    if (fireplace) {
      this.room = fireplace.room;
      this.title = fireplace.title;
      this.standpoints = Object.fromEntries(fireplace.standpoints.map((s) => [s.name, s]));
    }
    const laid = layouts && this.layLayouts(layouts), { parts } = this.body;
    if (setting || looks || laid) this.body.put('setting', setting ? this.openedOf(setting, true) : parts.setting.things);
    if (fireplace || looks || layouts) this.body.put('fireplace', fireplace ? this.openedOf(fireplace, false) : parts.fireplace.things);
    if (setting || looks || layouts || fireplace) { this.body.laid(!!(setting || looks || laid)); this.follow(); } else this.relight();
    this.arrived();
    this.timings.put = performance.now() - from;
  }

  /** Things as they were sent; where forms went over before this page was there, all of it is asked for. */
  openedOf(packed, stays) {
    const things = openThings(stays ? packed : { ...this.model.get('columns'), ...packed }, this.forms ||= new Map(), stays);
    if (things.length < packed.form.length) this.model.send({ ask: 'ready' });
    return things;
  }

  /** Take layouts; whether any of them is another one for what stands in the room. */
  layLayouts(packed) {
    const own = new Set(this.body.parts.setting.things.map((t) => t.stuff)), names = (list) => JSON.stringify(list.filter((l) => own.has(l.stuff)).map(({ pattern, origin }) => [pattern, origin]));
    const before = names(this.layouts);
    this.layouts = openLayouts(packed, this.held);
    if (packed.laid.length > this.layouts.length) this.model.send({ ask: 'ready' }); // patterns were sent before this page was there
    return names(this.layouts) !== before;
  }

  /** Things have changed: light is followed anew when the hand rests. */
  follow() {
    this.picking.stale();
    this.mark([]);
    this.body.upTo(this.step);
    this.applied();
    clearTimeout(this.tracing);
    this.tracing = 0;
    this.worker.postMessage({ stop: true }); // a core that is busy with old light is missing for the new picture
    if (this.inside && this.room && this.things.length) this.tracing = setTimeout(() => this.trace(), this.atlas.lit ? REST : 0);
  }

  trace() {
    this.tracing = 0;
    Object.assign(this, { asked: false, askAgain: false });
    const job = this.body.job(this.room);
    this.worker.postMessage({ job, hour: this.now }, [job.tri.buffer, job.owner.buffer, job.charts.buffer, job.spots.buffer, job.corners.buffer]);
  }

  lit(data) {
    this.asked = false;
    if (this.askAgain) { this.askAgain = false; this.askLight(); }
    this.applied();
    if (data.serial !== this.body.serial || !this.inside) return;
    this.timings.lights = (this.timings.lights || 0) + 1;
    this.atlas.take(data);
    this.body.glow();
    this.timings.firstLight ??= performance.now() - this.began;
    if (data.complete) { this.timings.fullLight ??= performance.now() - this.began; this.root.dataset.lit = String(data.serial); }
    Object.assign(this.timings, { traced: data.traced, relit: data.relit, samples: data.samples });
    this.again();
  }

  /** One of `hours` by its name. */
  setHour(name) { Object.assign(this, { hour: name, clock: null }); this.relight(); }

  /** A month (from 0) and an hour of the sundial. */
  setClock(month, hour) { Object.assign(this, { hour: '', clock: { month, hour } }); this.relight(); }

  /** Ask for the light as it is now; while the worker works on one the last wish waits. */
  askLight() {
    if (!this.inside || !this.atlas.lit || this.tracing) return;
    if (this.asked) { this.askAgain = true; return; }
    this.asked = true;
    this.worker.postMessage({ hour: this.now });
  }

  /** The light has changed: where the worker has to answer first, the picture changes when it has. */
  relight() {
    this.askLight();
    if (!this.asked) this.applied();
  }

  /** All of the picture that goes by the hour, but for the atlas. */
  applied() {
    const { shared, now, room } = this;
    shared.outside.value = this.inside ? 0 : 1;
    shared.sunLight.value.setRGB(...now.sun);
    shared.lampLight.value.setRGB(...now.lamp);
    shared.paneLight.value.setRGB(...now.sky.map((v) => v * 0.45));
    this.outdoors.visible = this.inside;
    this.outdoors.material.uniforms.sky.value.setRGB(...now.sky.map((v) => v * 0.4));
    this.scene.background = this.inside ? null : new Color(PAPER);
    Object.assign(this.film, { exposure: now.exposure, plain: !this.inside });
    this.flame(1);
    if (room) {
      shared.fire.value.set(...room.fire, room.fire_width);
      shared.lamp.value.set(...room.lamp);
      const { axes, plane } = paneAxes(room);
      shared.paneX.value = plane;
      shared.own.value.set(...axes);
      room.windows.slice(0, 2).forEach(({ front, back, sill, head }, k) => shared.panes.value[k].set(front, back, sill, head));
    }
    this.light(room);
    this.sunStale = true;
    this.again();
  }

  /** The fire where it burns: laid anew where it has moved. */
  light(room) {
    const at = room && this.inside ? JSON.stringify([room.fire, room.fire_width]) : '';
    if (at !== this.fireAt) {
      if (this.fire && !at) { this.scene.remove(this.fire.object); this.fire.dispose(); this.fire = null; }
      if (at && !this.fire) { this.fire = new Flames(); this.scene.add(this.fire.object); this.fire.tick(1.7, { reduced: true }); }
      this.fire?.lay(room);
      this.fireAt = at;
    }
    this.fire?.setGain(1.5 / this.now.exposure);
  }

  flame(flicker) { const v = this.now.fire * flicker; this.shared.flame.value.setRGB(3.9 * v, 1.5 * v, 0.42 * v); }

  setBurning(on) { this.burning = on; this.again(); }

  setStep(step) { this.step = step; this.body.upTo(step); this.picking.stale(); this.sunStale = true; this.again(); }

  /** Whether the first light is still on its way, and whoever follows it needs the processor. */
  awaits() { return this.soft && this.inside && !!this.room && !this.timings.fullLight; }

  burns() { return this.burning && this.inside && !!this.fire; }

  /** Outline some of `things`, by their numbers. */
  mark(numbers) {
    for (const line of this.marks) { this.scene.remove(line); line.geometry.dispose(); line.material.dispose(); }
    this.marks = numbers.map((k) => outlineOf(this.things[k], this.moved(this.things[k]), this.inside ? this.now.exposure : 1));
    if (this.marks.length) this.scene.add(...this.marks);
    this.again();
  }

  /** To a standpoint by its name. */
  look(name) {
    if (this.standpoints[name]) { this.eye.go(this.standpoints[name], this.inside ? this.room : null); this.again(); }
  }

  again() { this.film.again(); }

  /** The camera to the eye; whether there is anything to see. */
  place(aspect = this.canvas.clientWidth / this.canvas.clientHeight) {
    const { camera, eye } = this;
    camera.aspect = aspect;
    camera.fov = 2 * Math.atan(Math.tan(eye.angle * Math.PI / 360) / Math.min(Math.max(aspect, 1), LENS)) * 180 / Math.PI;
    camera.position.set(...eye.stands);
    camera.lookAt(...eye.looks);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    return this.things.length > 0;
  }

  /** What a frame needs: the sun's map where it has moved, or another spot of its disc for each gathered frame. */
  prepare(k) {
    if (k >= 0) this.body.wholly();
    if (this.fire) this.fire.object.visible = !this.body.bare;
    if (this.body.bare) return;
    if (k < 0 && this.burns()) this.flame(this.fire.tick(performance.now() / 1000, { reduced: false }));
    const sunny = this.now.sun[0] > 0;
    if (!sunny || !this.room || k < 0 && !this.sunStale || k === 0 && !this.sunStale && this.sunSpot === 0) return;
    const { left, right, front, back, ceiling } = this.room, middle = this.inside ? fireOf(this.room, [(left + right) / 2, (front + back) / 2, ceiling / 2]) : [0, 0.5, 2.5];
    const radius = this.inside ? Math.hypot(right - left, back - front, ceiling) / 2 + 0.3 : 7;
    const quick = this.soft && k < 0;
    this.sunSpot = quick ? -1 : Math.max(0, k);
    this.sun.aim(this.now.way, middle, radius, k > 0 ? [2 * ((k * 0.7548776662) % 1) - 1, 2 * ((k * 0.5698402910) % 1) - 1] : [0, 0]);
    this.sun.draw(this.renderer, this.scene, quick);
    this.sunStale = k > 0;
  }

  drawn() {
    if (this.body.bare) {
      this.timings.first = performance.now() - this.began;
      this.body.wholly();
      this.renderer.compileAsync(this.scene, this.camera).then(() => this.again());
    } else this.timings.whole ??= performance.now() - this.began;
  }

  /** What a dot of the page shows: number of the thing and place [m]; null for nothing. */
  cast(clientX, clientY) {
    const box = this.canvas.getBoundingClientRect();
    this.place();
    return this.picking.at(this.camera, (clientX - box.left) / box.width * 2 - 1, 1 - (clientY - box.top) / box.height * 2);
  }

  /** Which of `things` a dot of the page shows; -1 for none. */
  hit(clientX, clientY) { return this.cast(clientX, clientY)?.number ?? -1; }

  /** Whether all light and all coats have come. */
  ready() { return !this.taken && !this.coats.waiting && !this.asked && (!this.inside || this.root.dataset.lit === String(this.body.serial)); }

  picture(width, height, gather) { return this.film.picture(width, height, gather); }

  /** A picture from another eye and in another hour, when all light and coats are there; one is then back where one was. */
  async pictureOf({ width, height, eye, hour }) {
    const before = { eye: this.eye, hour: this.hour, clock: this.clock }, wait = () => new Promise((done) => { setTimeout(done, 50); });
    if (hour && hour !== this.hour) this.setHour(hour);
    while (!this.ready() && !this.film.gone) await wait();
    if (eye) { this.eye = new Eye(); this.eye.go(typeof eye === 'string' ? this.standpoints[eye] : eye, null); }
    const made = await this.picture(width, height);
    this.eye = before.eye;
    if (hour && hour !== before.hour) { Object.assign(this, { hour: before.hour, clock: before.clock }); this.relight(); }
    this.again();
    return made;
  }

  dispose() {
    clearTimeout(this.tracing);
    this.worker.terminate();
    this.mark([]);
    this.fire?.dispose();
    for (const held of [this.film, this.coats, this.body, this.atlas, this.sun, this.outdoors.geometry, this.outdoors.material]) held.dispose();
    this.renderer?.dispose();
    this.renderer?.forceContextLoss();
  }
}
