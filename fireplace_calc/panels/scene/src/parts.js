// What can be picked: walking through it, marking it, and what is said of it and of the whole picture.

const FOOT = 0.3048;
const SEEN = { Standing: 'seen standing', Seated: 'seen seated', Corner: 'seen from the corner', Close: 'seen close up',
  Cut: 'cut open', Apart: 'drawn apart' };
const STATES = { room: 'in its room', whole: 'shown whole', cut: 'cut open through the middle', apart: 'drawn apart', built: 'built step by step' };

/** Whether a thing is one of what is built or fixed to it. */
export const isBuilt = (thing) => thing.kind !== 'setting';

/** The things that can be picked, one after the other: what is built, then what is fixed to it. What the knife laid
    bare belongs to the thing it was cut from. */
export class Parts {
  /** `view` shows things and marks them; `tell` is given what is known of the picked one, or nothing. */
  constructor(view, tell) {
    Object.assign(this, { view, tell, key: '', told: null });
  }

  get listed() {
    const { things, step = -1 } = this.view;
    return things.filter((t) => isBuilt(t) && !t.cut && (step < 0 || t.step <= step));
  }

  /** Pick by key; nothing puts the mark away. */
  pick(key) {
    this.key = key;
    this.told = null;
    const own = this.view.things.map((t, k) => [t, k]).filter(([t]) => t.key === key || t.key === `${key}, cut`);
    this.view.mark(own.map(([, k]) => k));
    const thing = own[0]?.[0];
    if (thing && isBuilt(thing)) this.view.model.send({ ask: 'about', key });
    this.tell(thing || null, null);
  }

  /** Pick what stands at a place of the picture. */
  at(x, y) {
    const thing = this.view.things[this.view.hit(x, y)];
    this.pick(thing ? thing.key.replace(/, cut$/, '') : '');
  }

  /** The next of the list, or the one before. */
  next(by) {
    const { listed } = this, at = listed.findIndex((t) => t.key === this.key);
    if (!listed.length) return;
    const from = at < 0 ? (by > 0 ? -1 : 0) : at;
    this.pick(listed[(from + by + listed.length) % listed.length].key);
  }

  /** What the kernel says of the picked one. */
  heard(about) {
    if (about.key !== this.key) return; // another has been picked since
    this.told = about;
    this.tell(this.view.things.find((t) => t.key === this.key), about);
  }

  /** After a change: the mark stays on the same thing, if it is still there. */
  again() {
    if (this.key) this.pick(this.view.things.some((t) => t.key === this.key) ? this.key : '');
  }
}

/** A distance as one speaks of it: whole feet, or meters to one decimal. */
export function away(meters, units) {
  if (units === 'millimetres') return `${meters.toFixed(1)} m`;
  const feet = Math.max(1, Math.round(meters / FOOT));
  return `${feet} ${feet === 1 ? 'foot' : 'feet'}`;
}

/** From where it is seen, in words: `seen standing, from 9 feet, 20 degrees round to the left`. */
export function whence(eye, state, units) {
  const degrees = Math.round(eye.round * 18 / Math.PI) * 10;
  const side = degrees ? `${Math.abs(degrees)} degrees round to the ${degrees < 0 ? 'left' : 'right'}` : '';
  const where = eye.moved || !SEEN[eye.name] ? 'seen' : SEEN[eye.name];
  return [state === 'room' ? '' : STATES[state], state !== 'room' && !eye.moved ? '' : where, `from ${away(eye.far, units)}`,
    eye.moved ? side : ''].filter(Boolean).join(', ');
}

/** All that somebody who does not see the picture is told of it; it changes with the eye. */
export function spoken({ eye, state, hour, burning, words, units, step }) {
  const light = { Day: 'by daylight', Overcast: 'under a gray sky', Dusk: 'at dusk', Night: 'by night' }[hour] || '';
  const fire = burning ? 'the fire burns' : 'the fire stands still';
  const said = [whence(eye, state, units), ...(state === 'room' ? [light, fire] : []),
    state === 'built' && step >= 0 ? `after step ${step}` : '', words.short || ''].filter(Boolean).join('; ');
  return `${words.title || 'The fireplace'}. ${said[0].toUpperCase()}${said.slice(1)}. ${words.opening || ''}`.trim();
}

export const HELP = 'Arrow keys turn it, plus and minus go nearer and farther, Page Up and Page Down look higher and lower, '
  + 'Home goes back, square brackets name its parts one by one.';
