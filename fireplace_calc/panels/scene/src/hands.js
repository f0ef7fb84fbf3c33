// Turning by mouse, finger and keyboard: an eye that looks at a point, held between the walls of its room.
import { ownOf } from './own.js';

const STEEP = [-0.3, 1.45]; // how far down and up one looks at the point from [rad]
const ROUND = 1.35; // in a room, how far to either side of straight ahead [rad]
const OFF_WALL = 0.25, OFF_FLOOR = 0.2, OFF_SHELVES = 0.45; // nobody's eye is nearer [m]; across a corner shelves stand at walls that it comes along
const REACH = [0.35, 40]; // how near and how far it goes [m]
const TURN = 0.006, RAISE = 0.005; // of a hand's way [rad/px]
const STILL = 6; // a press that moved less is a pick [px]
const GLIDE = 380; // from one standpoint to another [ms]

const hold = (v, low, high) => Math.min(Math.max(v, low), high);

/** Where somebody stands and what is looked at, in meters. */
export class Eye {
  constructor() {
    Object.assign(this, { looks: [0, 0, 1], arm: [0, -4, 0.6], angle: 55, room: null, moved: false, name: '' });
  }

  /** Stand at a standpoint; `room` holds the walls, or nothing where one looks from outside. */
  go(standpoint, room = null) {
    const { name, stands, looks, angle } = standpoint;
    Object.assign(this, { name, looks: [...looks], arm: stands.map((v, k) => v - looks[k]), angle, room, moved: false });
  }

  /** Where the eye is: as far out along its arm as the room allows. */
  get stands() {
    const at = (share) => this.arm.map((v, k) => this.looks[k] + share * v);
    return at(this.room ? this.share() : 1);
  }

  /** How much of the arm stays in the room. */
  share() {
    const { left, right, front, back, ceiling, corner } = this.room, looks = ownOf(this.room, this.looks);
    const [along, away] = corner ? [right - OFF_SHELVES, back - OFF_SHELVES] : [right - OFF_WALL, Infinity];
    const stands = ownOf(this.room, this.arm.map((v, k) => this.looks[k] + v));
    const ends = [[left + OFF_WALL, along], [front + OFF_WALL, away], [OFF_FLOOR, ceiling - OFF_WALL]];
    return ends.reduce((most, [low, high], k) => {
      const end = stands[k], arm = end - looks[k];
      if (end < low) return Math.min(most, (low - looks[k]) / arm);
      return end > high ? Math.min(most, (high - looks[k]) / arm) : most;
    }, 1);
  }

  /** How far the eye is from what it looks at. [m] */
  get far() { return Math.hypot(...this.stands.map((v, k) => v - this.looks[k])); }

  /** How far round to the right of straight ahead it stands. [rad] */
  get round() { return Math.atan2(this.arm[0], -this.arm[1]); }

  /** Walk round what is looked at. [rad] */
  turn(right, up) {
    const far = Math.hypot(...this.arm), most = this.room ? ROUND : Infinity;
    const round = hold(this.round + right, -most, most);
    const high = hold(Math.asin(this.arm[2] / far) + up, ...STEEP);
    this.arm = [far * Math.cos(high) * Math.sin(round), -far * Math.cos(high) * Math.cos(round), far * Math.sin(high)];
    this.moved = true;
  }

  /** Go nearer, or farther, by a factor of the distance as it is. */
  nearer(by) {
    const now = this.room ? this.share() : 1, far = now * Math.hypot(...this.arm);
    const factor = now * hold(far * by, ...REACH) / far;
    this.arm = this.arm.map((v) => v * factor);
    this.moved = true;
  }

  /** Look at a point higher up, or lower down. [m] */
  rise(by) {
    const top = this.room ? this.room.ceiling - 0.3 : 15;
    this.looks[2] = hold(this.looks[2] + by, this.room ? 0.1 : -3, top);
    this.moved = true;
  }
}

/** Go to a standpoint, gliding there unless less motion is asked for; `changed` draws. */
export function glide(eye, standpoint, room, changed, still) {
  const from = { looks: [...eye.looks], stands: eye.stands, angle: eye.angle }, sameRoom = eye.room === room && eye.name;
  eye.go(standpoint, room);
  const to = { looks: [...eye.looks], stands: eye.stands, angle: eye.angle }, began = performance.now(), own = eye.run = {};
  if (still || !sameRoom) { changed(); return; }
  const step = () => {
    if (eye.run !== own || eye.moved) return;
    const t = hold((performance.now() - began) / GLIDE, 0, 1), s = t * t * (3 - 2 * t);
    const mix = (name) => to[name].map((v, k) => from[name][k] + s * (v - from[name][k]));
    eye.looks = mix('looks');
    eye.arm = mix('stands').map((v, k) => v - eye.looks[k]);
    eye.angle = from.angle + s * (to.angle - from.angle);
    changed();
    if (t < 1) requestAnimationFrame(step);
  };
  step();
}

/** What each key does to an eye. */
export const KEYS = {
  ArrowLeft: (eye) => eye.turn(-0.12, 0), ArrowRight: (eye) => eye.turn(0.12, 0),
  ArrowUp: (eye) => eye.turn(0, 0.08), ArrowDown: (eye) => eye.turn(0, -0.08),
  '+': (eye) => eye.nearer(0.88), '=': (eye) => eye.nearer(0.88), '-': (eye) => eye.nearer(1 / 0.88),
  PageUp: (eye) => eye.rise(0.15), PageDown: (eye) => eye.rise(-0.15),
};

/** Let hands turn an eye. `more` holds what other keys do; `picked` is told of a press that did not move. */
export function takeHold(canvas, eye, { changed, picked, more = {} }) {
  const held = new Map(); // where each finger was last
  let gone = 0, apart = 0;
  const down = (e) => {
    if (e.button > 0) return;
    if (!held.size) gone = 0;
    held.set(e.pointerId, [e.clientX, e.clientY]);
    apart = spread(held);
    if (e.pointerType === 'mouse') canvas.setPointerCapture(e.pointerId);
  };
  const move = (e) => {
    const last = held.get(e.pointerId);
    if (!last) return;
    const [dx, dy] = [e.clientX - last[0], e.clientY - last[1]];
    held.set(e.pointerId, [e.clientX, e.clientY]);
    gone += Math.abs(dx) + Math.abs(dy);
    if (gone < STILL) return; // not a turn yet, perhaps a pick
    if (held.size === 2) {
      const now = spread(held);
      if (apart > 0 && now > 0) eye.nearer(apart / now);
      apart = now;
      eye.turn(-dx * TURN / 2, dy * RAISE / 2);
    } else {
      // One finger up or down is the page's own scrolling (touch-action: pan-y).
      eye.turn(-dx * TURN, e.pointerType === 'touch' ? 0 : dy * RAISE);
    }
    changed();
  };
  const up = (e) => {
    if (held.delete(e.pointerId) && !held.size && gone < STILL) picked(e.clientX, e.clientY);
    apart = spread(held);
  };
  const cancel = (e) => { held.delete(e.pointerId); gone = Infinity; };
  const wheel = (e) => { // a page that is scrolled past is not turned
    if (canvas.ownerDocument.activeElement !== canvas && canvas.getRootNode().activeElement !== canvas) return;
    e.preventDefault();
    eye.nearer(Math.exp(hold(e.deltaY, -120, 120) * 0.001));
    changed();
  };
  const key = (e) => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const act = more[e.key] || KEYS[e.key];
    if (!act) return;
    e.preventDefault();
    e.stopPropagation(); // the notebook has shortcuts of its own
    act(eye);
    if (!more[e.key]) changed();
  };
  const heard = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: cancel, keydown: key };
  for (const [name, act] of Object.entries(heard)) canvas.addEventListener(name, act);
  canvas.addEventListener('wheel', wheel, { passive: false });
  return () => {
    for (const [name, act] of Object.entries(heard)) canvas.removeEventListener(name, act);
    canvas.removeEventListener('wheel', wheel);
  };
}

function spread(held) {
  if (held.size !== 2) return 0;
  const [[a, b], [c, d]] = held.values();
  return Math.hypot(a - c, b - d);
}
