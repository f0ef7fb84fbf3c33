// A laid fire that burns softly: tongues on upright sheets that cross one another, embers under them, all light and no smoke.

import { AddEquation, CustomBlending, DoubleSide, Group, InstancedBufferAttribute, InstancedBufferGeometry, Mesh, OneFactor, OneMinusSrcAlphaFactor, PlaneGeometry, ShaderMaterial } from 'three';
import { lots } from './noise.js';

/** A second at which the fire looks well when it stands still. */
const STILL = 41.3;
/** After so many seconds it burns as before: large numbers lose their small parts. */
const AGAIN = 900;

/** Width, depth and height of the bed of coals, of the fire's width. */
const BED = [0.56, 0.38, 0.06];

const NOISE = `
float lot(vec2 p) { p = fract(p * vec2(123.34, 345.45)); p += dot(p, p + 34.345); return fract(p.x * p.y); }
float soft(vec2 p) { vec2 i = floor(p), f = p - i; f *= f * (3. - 2. * f);
  return mix(mix(lot(i), lot(i + vec2(1, 0)), f.x), mix(lot(i + vec2(0, 1)), lot(i + vec2(1, 1)), f.x), f.y); }
float rough(vec2 p) { return soft(p) * .58 + soft(p * 2.13 + 7.1) * .28 + soft(p * 4.3 + 3.7) * .14; }`;

const TONGUE_CORNERS = `
attribute vec4 place, form; varying vec2 vAt; varying vec4 vForm; varying float vFacing;
void main() {
  vForm = form;
  vAt = vec2(uv.x * 2. - 1., uv.y);
  vec3 foot = place.xyz; float turn = place.w;
  vec3 along = vec3(cos(turn), sin(turn), 0.);
  vec3 p = foot + along * (position.x * form.x) + vec3(0., 0., position.y * form.y);
  // A sheet that is seen by its edge would show as a line: it fades.
  vec3 view = cameraPosition - (modelMatrix * vec4(p, 1.)).xyz;
  vFacing = smoothstep(.3, .8, abs(dot(normalize(view.xy), vec2(-sin(turn), cos(turn)))));
  gl_Position = projectionMatrix * modelViewMatrix * vec4(p, 1.);
}`;

// A sheet of flame: under a ragged hem that rises and falls, noise that goes up with the gas, drawn out tall and narrow, pulls
// tongues out of the body and tears their tips off.
const TONGUE = `
varying vec2 vAt; varying vec4 vForm; varying float vFacing; uniform float time, gain; ${NOISE}
void main() {
  float wide = vForm.x, high = vForm.y, seed = vForm.z, t = time * abs(vForm.w);
  float x = vAt.x * wide * .5, z = vAt.y * high, out_ = vAt.x * vAt.x;
  // The higher, the more it sways; near the wood it clings.
  float rise = smoothstep(0., .3, z);
  x += ((soft(vec2(x * 4. + seed, z * 3.2 - t * 1.1)) - .5) * .11 + (soft(vec2(x * 11. + seed * 3., z * 8. - t * 2.1)) - .5) * .04) * (.25 + rise);
  float hem = soft(vec2(x * 6.5 + seed * 9., t * .5)) * .66 + soft(vec2(x * 15. - seed * 5., t * 1. + seed)) * .34;
  float top = high * (.3 + .7 * smoothstep(.15, .8, hem)) * (1. - out_ * (.55 + .45 * out_));
  float h = z / max(top, .02);
  float n = rough(vec2(x * 11. + seed * 17., z * 3.9 - t * 1.6));
  float body = 1. - h + (n - .5) * (.35 + 1.15 * min(h, 1.));
  float thick = smoothstep(.02, .72, body) * smoothstep(1., .72, abs(vAt.x)) * smoothstep(0., vForm.w < 0. ? .2 : .05, z) * smoothstep(1., .78, vAt.y) * vFacing; // those among the logs begin softly
  if (thick < .004) discard;
  float hot = thick * thick * (1.15 - .6 * min(h, 1.2)) * (.72 + .5 * n);
  vec3 c = mix(vec3(1., .12, .006), vec3(1., .3, .035), smoothstep(.0, .42, hot));
  c = mix(c, vec3(1., .52, .13), smoothstep(.35, 1., hot));
  float deep = .3 + .7 * smoothstep(.0, .14, z);
  gl_FragColor = vec4((c * (thick * .22 + hot * .72) * deep + vec3(.02, .04, .12) * thick * (1. - smoothstep(.0, .07, z)) * .4) * gain, thick * .14 * gain);
}`;

const EMBER_CORNERS = 'varying vec2 vAt; varying vec2 vSize; uniform vec2 size; void main() { vAt = uv; vSize = size; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.); }';
// Coals with dark skins and bright cracks, brightest in the middle of the bed; they breathe slowly, each by itself.
const EMBER = `
varying vec2 vAt; varying vec2 vSize; uniform float time, gain; ${NOISE}
void main() {
  vec2 m = vAt * vSize, p = m * 34.; vec2 i = floor(p), f = p - i; float near = 9., next = 9., who = 0.;
  for (int y = -1; y <= 1; y++) for (int x = -1; x <= 1; x++) {
    vec2 c = vec2(float(x), float(y)); float a = lot(i + c), b = lot(i + c + 31.7); float d = length(c + vec2(a, b) * .9 - f);
    if (d < near) { next = near; near = d; who = a; } else if (d < next) next = d;
  }
  float crack = 1. - smoothstep(.0, .34, next - near), edge = length((vAt - .5) * vec2(2., 2.));
  float bed = 1. - smoothstep(.3, .95, edge + .4 * (soft(m * 9.) - .5)), breath = .62 + .38 * soft(vec2(who * 17., time * .5 + who * 9.));
  float glow = bed * (crack * .9 + .7 * smoothstep(.35, .95, who) * breath) * breath;
  vec3 c = mix(vec3(1., .1, .008), vec3(1., .4, .07), smoothstep(.25, 1.1, glow));
  gl_FragColor = vec4(c * glow * .5 * gain, smoothstep(.0, .5, bed) * .8);
}`;

/** The fire of a room: add `object` to the scene, call `tick` for every frame. */
export class Flames {
  constructor() {
    this.object = new Group();
    this.uniforms = { time: { value: STILL }, gain: { value: 1 } };
    this.size = { value: [1, 1] };
    this.tongues = new Mesh(undefined, this.material(TONGUE_CORNERS, TONGUE));
    this.tongues.frustumCulled = false;
    this.tongues.renderOrder = 6;
    this.embers = new Mesh(undefined, this.material(EMBER_CORNERS, EMBER, { size: this.size }));
    this.embers.renderOrder = 5;
    this.object.add(this.embers, this.tongues);
  }

  /** To another place and width; what draws it stays, a machine without a graphics card is long in making that.
   * @param {object} room its `fire` (middle of the fire's foot) and `fire_width` (of the laid logs) [m] */
  lay({ fire, fire_width: wide }) {
    this.object.position.set(...fire);
    this.size.value = [wide * BED[0], wide * BED[1]];
    for (const [mesh, made] of [[this.tongues, sheets(wide)], [this.embers, bedOf(wide)]]) { mesh.geometry.dispose(); mesh.geometry = made; }
  }

  material(vertexShader, fragmentShader, more = {}) {
    // Light is added; a little of what stands behind is taken away, as soot does.
    return new ShaderMaterial({ vertexShader, fragmentShader, uniforms: { ...this.uniforms, ...more }, transparent: true, depthWrite: false, side: DoubleSide, blending: CustomBlending, blendEquation: AddEquation, blendSrc: OneFactor, blendDst: OneMinusSrcAlphaFactor });
  }

  /**
   * The fire as it burns at a moment.
   * @param {number} clock seconds by any clock that goes on
   * @param {{reduced?: boolean}} how reduced: it stands still, as somebody asked for who minds motion
   * @returns {number} how bright it is then, about 1
   */
  tick(clock, { reduced = false } = {}) {
    const t = this.uniforms.time.value = reduced ? STILL : clock % AGAIN;
    if (reduced) return 1;
    return 1 + 0.06 * Math.sin(t * 5.3 + Math.sin(t * 2.1) * 1.7) + 0.04 * Math.sin(t * 11.7 + 1.3 * Math.sin(t * 3.7)) + 0.02 * Math.sin(t * 23.1);
  }

  /** How much of it burns, from 0 to 1. */
  setGain(gain) {
    this.uniforms.gain.value = gain;
    this.object.visible = gain > 0;
  }

  dispose() {
    for (const one of [this.tongues, this.embers]) {
      one.geometry.dispose();
      one.material.dispose();
    }
  }
}

/** The bed of coals: a low mound over the ashes. */
function bedOf(wide) {
  const bed = new PlaneGeometry(wide * BED[0], wide * BED[1], 20, 14), at = bed.attributes.position;
  for (let k = 0; k < at.count; k++) {
    const r = Math.hypot((2 * at.getX(k)) / (wide * BED[0]), (2 * at.getY(k)) / (wide * BED[1]));
    at.setZ(k, 0.004 + wide * BED[2] * Math.sqrt(Math.max(1 - r * r, 0)));
  }
  return bed;
}

/** Sheets before and behind one another, and a few across them, so that from every side they read as one body. */
function sheets(wide) {
  const plane = new PlaneGeometry(1, 1, 1, 1).translate(0, 0.5, 0), made = new InstancedBufferGeometry(), lot = lots(20), place = [], form = [];
  made.index = plane.index;
  made.setAttribute('position', plane.attributes.position);
  made.setAttribute('uv', plane.attributes.uv);
  const high = Math.min(wide * 1.15, 0.76);
  // How far back, to the right, turned, how wide and how high, of the whole; those among the logs run by a negative clock.
  const all = [[0.13, -0.02, 0.12, 0.92, 0.94], [0.08, 0.06, -0.2, 0.82, 1], [0.02, -0.08, 0.28, 0.7, 0.84], [-0.04, 0.05, -0.14, 0.76, 0.66], [-0.1, -0.04, 0.1, 0.66, 0.46], [0.06, -0.14, 1.15, 0.42, 0.8], [0.04, 0.12, -1.2, 0.42, 0.86], [0.05, 0, 1.57, 0.46, 0.95]];
  for (const [back, right, turn, w, h] of all) {
    place.push(right * wide, back, 0.03, turn);
    form.push(wide * w, high * h, lot() * 10, (0.85 + 0.3 * lot()) * (back < 0.07 ? -1 : 1));
  }
  made.setAttribute('place', new InstancedBufferAttribute(new Float32Array(place), 4));
  made.setAttribute('form', new InstancedBufferAttribute(new Float32Array(form), 4));
  made.instanceCount = all.length;
  plane.dispose();
  return made;
}
