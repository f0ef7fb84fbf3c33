// From light to a picture: while something moves one frame at a time, as coarse as the machine needs; at rest many, each a
// hair aside, gathered into one that is fine. The next frame waits until the last is really done.
import { GLSL3, HalfFloatType, LinearFilter, Mesh, OrthographicCamera, PlaneGeometry, Scene, ShaderMaterial, WebGLRenderTarget } from 'three';

const GATHER = 24, REST = 180; // frames of a fine picture; after so long without a change [ms]
const MOST = 1.4e6, MOVING = 6.5e5; // dots at rest, and while moving without a graphics card
const SLOW = 38, QUICK = 20, COARSEST = 0.32; // a moving frame's time [ms], and the coarsest scale
const SHOWN = new Set([0, 1, 3, 7, 15, GATHER - 1]); // of the gathered frames, those that are put on the page

const VERTEX = 'out vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0., 1.); }';
const HEAD = 'in vec2 at; out vec4 dot_; uniform sampler2D map;';
const ADD = `${HEAD} uniform float most, share; void main() { vec3 c = texture(map, at).rgb; float high = max(c.r, max(c.g, c.b)); dot_ = vec4(c * min(1., most / max(high, 1e-5)), share); }`;
const BRIGHT = `${HEAD} uniform float exposure; uniform vec2 texel; void main() { vec3 c = vec3(0.); for (int y = -1; y < 2; y += 2) for (int x = -1; x < 2; x += 2) c += min(texture(map, at + vec2(x, y) * texel).rgb * exposure, vec3(12.));
  c *= .25; float high = max(c.r, max(c.g, c.b)); dot_ = vec4(c * smoothstep(1.1, 4., high), 1.); }`;
const BLUR = `${HEAD} uniform vec2 texel; void main() { vec3 c = texture(map, at).rgb * .2; for (int k = 1; k < 5; k++) { float w = .16 - .03 * float(k - 1); vec2 o = texel * (float(k) * 1.5); c += w * (texture(map, at + o).rgb + texture(map, at - o).rgb); } dot_ = vec4(c * .72, 1.); }`;
// The curve is the base of AgX (Blender's view transform of that name, in the polynomial form three.js gives it), then a
// little more contrast and color.
const TONE = `${HEAD} uniform sampler2D glow; uniform float exposure, plain;
vec3 agx(vec3 c) {
  const mat3 rec = mat3(vec3(.6274, .0691, .0164), vec3(.3293, .9195, .0880), vec3(.0433, .0113, .8956)), back = mat3(vec3(1.6605, -.1246, -.0182), vec3(-.5876, 1.1329, -.1006), vec3(-.0728, -.0083, 1.1187));
  const mat3 inset = mat3(vec3(.856627153315983, .137318972929847, .11189821299995), vec3(.0951212405381588, .761241990602591, .0767994186031903), vec3(.0482516061458583, .101439036467562, .811302368396859));
  const mat3 outset = mat3(vec3(1.1271005818144368, -.1413297634984383, -.14132976349843826), vec3(-.11060664309660323, 1.157823702216272, -.11060664309660294), vec3(-.016493938717834573, -.016493938717834257, 1.2519364065950405));
  c = inset * (rec * c); c = clamp((log2(max(c, 1e-10)) + 12.47393) / 16.5, 0., 1.);
  vec3 x2 = c * c, x4 = x2 * x2; c = 15.5 * x4 * x2 - 40.14 * x4 * c + 31.96 * x4 - 6.868 * x2 * c + .4298 * x2 + .1191 * c - .00232;
  return clamp(back * pow(max(outset * c, 0.), vec3(2.2)), 0., 1.);
}
float lot(vec2 p) { return fract(sin(dot(p, vec2(12.99, 78.23))) * 43758.5); }
void main() {
  vec3 c = texture(map, at).rgb * exposure + texture(glow, at).rgb * .1;
  if (plain > 0.) c = min(texture(map, at).rgb, 1.); else { c = agx(c); c = pow(c, vec3(1.14)) * 1.08; c = max(mix(vec3(dot(c, vec3(.25, .6, .15))), c, 1.2), 0.); }
  c = mix(c * 12.92, 1.055 * pow(c, vec3(1. / 2.4)) - .055, step(.0031308, c));
  dot_ = vec4(c + (lot(gl_FragCoord.xy) - .5) / 255., 1.);
}`;

const target = (depthBuffer) => new WebGLRenderTarget(1, 1, { type: HalfFloatType, depthBuffer, magFilter: LinearFilter, minFilter: LinearFilter });

/** Draws a stage; `stage.prepare(k)` sets what each gathered frame needs (sun's spot), `stage.camera` looks. */
export class Film {
  constructor(renderer, stage, soft) {
    Object.assign(this, { renderer, stage, soft, scale: soft ? 0.55 : 1, turn: 0, due: 0, resting: 0, busy: false, wanted: false, exposure: 1, plain: false, gone: false, still: false, times: [], frames: 0 });
    this.one = target(true); this.sum = target(false); this.glow = [target(false), target(false)];
    const pass = (fragmentShader, uniforms, more = {}) => new ShaderMaterial({ glslVersion: GLSL3, vertexShader: VERTEX, fragmentShader, depthTest: false, depthWrite: false, toneMapped: false,
      uniforms: Object.fromEntries(Object.entries({ map: null, ...uniforms }).map(([k, value]) => [k, { value }])), ...more });
    this.passes = { add: pass(ADD, { most: 4, share: 1 }, { transparent: true }), bright: pass(BRIGHT, { exposure: 1, texel: [0, 0] }), blur: pass(BLUR, { texel: [0, 0] }), tone: pass(TONE, { glow: null, exposure: 1, plain: 0 }) };
    this.flat = new OrthographicCamera(-1, 1, 1, -1, 0, 1);
    this.sheet = new Mesh(new PlaneGeometry(2, 2));
    this.sheet.frustumCulled = false;
    this.sheets = new Scene().add(this.sheet);
  }

  paint(name, to, uniforms) {
    const material = this.passes[name];
    for (const [k, value] of Object.entries(uniforms)) material.uniforms[k].value = value;
    this.sheet.material = material;
    this.renderer.setRenderTarget(to);
    this.renderer.render(this.sheets, this.flat);
  }

  /** So many dots to the page's own. */
  ratio(most) {
    const { clientWidth: w, clientHeight: h } = this.stage.canvas;
    return Math.min(window.devicePixelRatio || 1, 2, Math.sqrt(most / (w * h)));
  }

  size(width, height, ratio) {
    const w = Math.max(2, Math.round(width * ratio)), h = Math.max(2, Math.round(height * ratio));
    if (this.one.width === w && this.one.height === h && this.stage.canvas.width === w) return;
    this.one.setSize(w, h); this.sum.setSize(w, h);
    for (const glow of this.glow) glow.setSize(Math.max(1, w >> 3), Math.max(1, h >> 3));
    this.renderer.setSize(w, h, false);
  }

  /** One frame; or the k-th of those that are gathered. */
  draw(k = -1) {
    const { renderer, stage, one, sum } = this, { camera } = stage, { width: w, height: h } = one;
    if (k > 0) camera.setViewOffset(w, h, (k * 0.7548776662) % 1 - 0.5, (k * 0.5698402910) % 1 - 0.5, w, h);
    else if (camera.view?.enabled) camera.clearViewOffset();
    stage.prepare(k);
    renderer.setRenderTarget(one);
    renderer.render(stage.scene, camera);
    if (k >= 0) {
      renderer.autoClear = k === 0;
      this.paint('add', sum, { map: one.texture, share: 1 / (k + 1), most: 6 / this.exposure });
      renderer.autoClear = true;
    }
    this.frames++;
    if (k >= 0 && !SHOWN.has(k)) return;
    this.develop(k < 0 ? one : sum, !stage.body.bare);
  }

  /** What was gathered, onto the page; what is too bright glows. */
  develop(from, glows = true) {
    const [a, b] = this.glow, { exposure } = this;
    if (glows) this.paint('bright', a, { map: from.texture, exposure, texel: [2 / from.width, 2 / from.height] });
    for (let turn = 0; glows && turn < 2; turn++) {
      this.paint('blur', b, { map: a.texture, texel: [1 / a.width, 0] });
      this.paint('blur', a, { map: b.texture, texel: [0, 1 / a.height] });
    }
    this.paint('tone', null, { map: from.texture, glow: a.texture, exposure, plain: this.plain ? 1 : 0 });
  }

  /** Go on when what was drawn is done: a slow machine stays answerable. */
  paced(then) {
    const gl = this.renderer.getContext(), from = performance.now(), fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    this.busy = true;
    gl.flush();
    const poll = () => {
      if (this.gone) return;
      if (gl.clientWaitSync(fence, gl.SYNC_FLUSH_COMMANDS_BIT, 0) === gl.TIMEOUT_EXPIRED && performance.now() - from < 3000) { setTimeout(poll, 2); return; }
      gl.deleteSync(fence);
      this.busy = false;
      then(performance.now() - from);
      if (this.wanted && !this.due) { this.wanted = false; this.due = requestAnimationFrame(() => this.frame()); }
    };
    setTimeout(poll, 0);
  }

  frame() {
    this.due = 0;
    if (this.gone) return;
    if (this.busy) { this.wanted = true; return; }
    const { canvas } = this.stage;
    if (!canvas.clientWidth || !this.stage.place()) return;
    this.size(canvas.clientWidth, canvas.clientHeight, this.ratio(this.soft ? MOVING : MOST) * this.scale);
    const began = performance.now();
    this.draw();
    this.paced(() => {
      const took = performance.now() - began;
      this.times.push(took);
      if (this.times.length > 200) this.times.shift();
      this.stage.drawn();
      if (took > SLOW) this.scale = Math.max(COARSEST, this.scale * 0.88); else if (took < QUICK) this.scale = Math.min(1, this.scale * 1.08);
      if (this.stage.burns()) this.wanted = true;
      else if (!this.wanted && !this.due) this.rest();
    });
  }

  /** What moved has been shown: a while later the fine picture is gathered. */
  rest() {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => { if (!this.stage.burns()) this.fine(this.turn, 0); }, REST);
  }

  fine(turn, k) {
    if (turn !== this.turn || this.gone) return;
    const { canvas } = this.stage;
    if (!canvas.clientWidth) return;
    if (this.busy) { setTimeout(() => this.fine(turn, k), 12); return; }
    if (k === 0) { this.stage.place(); this.size(canvas.clientWidth, canvas.clientHeight, this.ratio(MOST)); }
    this.draw(k);
    this.paced(() => {
      if (this.stage.awaits()) return; // gathered when all light is there: until then the worker has the core
      if (k + 1 < GATHER) requestAnimationFrame(() => this.fine(turn, k + 1));
      else if (turn === this.turn) this.still = true;
    });
  }

  /** Something has changed. */
  again() {
    if (this.gone) return;
    this.turn++;
    this.still = false;
    if (!this.due) this.due = requestAnimationFrame(() => this.frame());
    clearTimeout(this.resting);
  }

  /** A fine picture of so many dots, as PNG. */
  async picture(width, height, gather = GATHER) {
    this.turn++;
    cancelAnimationFrame(this.due); this.due = 0;
    clearTimeout(this.resting);
    this.stage.place(width / height);
    this.size(width, height, 1);
    for (let k = 0; k < gather; k++) this.draw(k);
    this.develop(this.sum);
    const made = await new Promise((done) => { this.stage.canvas.toBlob(done, 'image/png'); });
    this.again();
    return made;
  }

  dispose() {
    this.gone = true;
    cancelAnimationFrame(this.due);
    clearTimeout(this.resting);
    for (const t of [this.one, this.sum, ...this.glow]) t.dispose();
    for (const pass of Object.values(this.passes)) pass.dispose();
    this.sheet.geometry.dispose();
  }
}
