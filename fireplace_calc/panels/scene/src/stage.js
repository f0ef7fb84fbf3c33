// What is seen: things of the kernel as meshes, an eye, and a frame whenever something has changed.
import { BufferAttribute, BufferGeometry, Color, DirectionalLight, EdgesGeometry, HemisphereLight, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial, PerspectiveCamera, Raycaster, Scene, Vector2, WebGLRenderer } from 'three';
import { Eye } from './hands.js';
import { dress, undress } from './studio.js';
import { openLayouts, openThings } from './wire.js';

const UNKNOWN = ['#aaa59b']; // a stuff without a row

/** A view of the scene on a canvas. `eye` may be changed at will; `again()` after. */
export class Stage {
  constructor({ canvas, model, root }) {
    Object.assign(this, { canvas, model, root });
    this.renderer = new WebGLRenderer({ canvas, antialias: true });
    this.scene = new Scene();
    this.scene.background = new Color(0xd8d6d2);
    this.camera = new PerspectiveCamera(45, 1.6, 0.05, 80);
    this.camera.up.set(0, 0, 1);
    const sun = new DirectionalLight(0xffffff, 1.6);
    sun.position.set(-3, -6, 4);
    this.scene.add(sun, new HemisphereLight(0xffffff, 0x998877, 1.8));
    this.setting = []; this.fireplace = []; this.layouts = []; this.held = new Map(); this.looks = {};
    this.meshes = []; this.marks = []; this.standpoints = {}; this.room = null; this.title = '';
    this.eye = new Eye();
    this.hours = ['Day', 'Overcast', 'Dusk', 'Night']; this.hour = 'Day'; this.burning = false; this.step = -1;
    this.due = 0; this.frames = 0;
  }

  /** All that stands there. */
  get things() { return [...this.setting, ...this.fireplace]; }

  setSetting(packed) { this.setting = openThings(packed); this.build(); }

  setFireplace(packed) {
    this.fireplace = openThings(packed);
    Object.assign(this, { room: packed.room, title: packed.title });
    this.standpoints = Object.fromEntries(packed.standpoints.map((s) => [s.name, s]));
    this.build();
  }

  setLayouts(packed) { this.layouts = openLayouts(packed, this.held); this.again(); }

  setLooks(looks) { this.looks = looks; this.build(); }

  setHour(name) { this.hour = name; this.again(); }

  setBurning(on) { this.burning = on; this.again(); }

  /** Only what is set by this step; all where it is below nought. */
  setStep(step) {
    this.step = step;
    for (const mesh of this.meshes) mesh.visible = step < 0 || mesh.userData.thing.step <= step;
    this.again();
  }

  /** Outline some of `things`, by their numbers. */
  mark(numbers) {
    for (const line of this.marks) { this.scene.remove(line); line.geometry.dispose(); line.material.dispose(); }
    this.marks = numbers.map((k) => {
      const line = new LineSegments(new EdgesGeometry(this.meshes[k].geometry, 20), new LineBasicMaterial({ color: 0x1e90ff, depthTest: false, transparent: true }));
      line.renderOrder = 9;
      line.position.copy(this.meshes[k].position);
      this.scene.add(line);
      return line;
    });
    this.again();
  }

  build() {
    for (const mesh of this.meshes) { undress(mesh); this.scene.remove(mesh); mesh.geometry.dispose(); mesh.material.dispose(); }
    this.meshes = this.things.map((thing) => {
      const made = new BufferGeometry();
      made.setAttribute('position', new BufferAttribute(thing.points, 3));
      made.setIndex(new BufferAttribute(thing.faces, 1));
      const [tone] = this.looks[thing.stuff]?.tones || UNKNOWN;
      const mesh = new Mesh(thing.smooth ? made : made.toNonIndexed(), new MeshLambertMaterial({ color: new Color(tone) }));
      mesh.geometry.computeVertexNormals();
      mesh.userData.thing = thing;
      if (this.model.get('mode') !== 'room') dress(mesh, thing, this.model.get('hatches') || {});
      this.scene.add(mesh);
      return mesh;
    });
    this.setStep(this.step);
  }

  /** To a standpoint by its name. */
  look(name) {
    if (this.standpoints[name]) { this.eye.go(this.standpoints[name], this.model.get('mode') === 'room' ? this.room : null); this.again(); }
  }

  /** A frame is due. */
  again() { if (!this.due) this.due = requestAnimationFrame(() => this.frame()); }

  place() {
    const { camera, canvas, eye } = this, aspect = canvas.clientWidth / canvas.clientHeight || 1;
    camera.aspect = aspect;
    camera.fov = 2 * Math.atan(Math.tan(eye.angle * Math.PI / 360) / Math.min(Math.max(aspect, 1), 1.5)) * 180 / Math.PI;
    camera.position.set(...eye.stands);
    camera.lookAt(...eye.looks);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  }

  frame() {
    this.due = 0;
    if (!this.canvas.clientWidth) return;
    this.place();
    this.renderer.setSize(this.canvas.clientWidth, this.canvas.clientHeight, false);
    this.renderer.render(this.scene, this.camera);
    this.frames++;
  }

  /** What a dot of the page shows: the thing, and where the ray meets it [m]; null for nothing. */
  cast(clientX, clientY) {
    const box = this.canvas.getBoundingClientRect(), ray = new Raycaster();
    this.place();
    ray.setFromCamera(new Vector2((clientX - box.left) / box.width * 2 - 1, 1 - (clientY - box.top) / box.height * 2), this.camera);
    const [hit] = ray.intersectObjects(this.meshes, false);
    return hit ? { thing: hit.object.userData.thing, point: hit.point.toArray(), distance: hit.distance } : null;
  }

  /** Which of `things` a dot of the page shows; -1 for none. */
  hit(clientX, clientY) { return this.things.indexOf(this.cast(clientX, clientY)?.thing); }

  /** As a picture of so many dots. */
  async picture(width, height) {
    this.place();
    this.camera.aspect = width / height; this.camera.updateProjectionMatrix();
    this.renderer.setSize(width, height, false);
    this.renderer.render(this.scene, this.camera);
    const made = await new Promise((done) => { this.canvas.toBlob(done, 'image/png'); });
    this.again();
    return made;
  }

  dispose() {
    cancelAnimationFrame(this.due);
    for (const mesh of this.meshes) { mesh.geometry.dispose(); mesh.material.dispose(); }
    this.renderer.dispose(); this.renderer.forceContextLoss();
  }
}
