// The tools round the picture: from where, in which light, in which state, step by step; and what is said of a part.

import { clockTool } from './clock.js';
import { glide, takeHold } from './hands.js';
import { HELP, Parts, spoken, whence } from './parts.js';

const STATES = { room: 'In its room', whole: 'Whole', cut: 'Cut open', apart: 'Drawn apart', built: 'Step by step' };
const OUTSIDE = { whole: 'Cut', cut: 'Cut', apart: 'Apart', built: 'Cut' }; // the standpoint of each state outside the room
const SPEAK = 700; // a picture that still moves is not described [ms]

const make = (tag, told = {}, ...inside) => {
  const made = Object.assign(document.createElement(tag), told);
  made.append(...inside);
  return made;
};

/** Make the tools of a view and let hands turn it; gives back what follows a change and what puts all away. */
export function controls(view) {
  const { model, canvas, eye } = view, still = matchMedia('(prefers-reduced-motion: reduce)');
  const tools = make('div', { className: 'fs-tools' }), foot = make('div', { className: 'fs-foot' });
  const where = make('p', { className: 'fs-where' }), said = make('div', { className: 'fs-said' }), heard = make('div', { className: 'fs-heard' });
  heard.setAttribute('aria-live', 'polite');
  foot.append(where, said, heard);
  canvas.before(tools);
  canvas.after(foot);
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'application');
  canvas.setAttribute('aria-roledescription', 'picture that turns');

  const state = () => model.get('mode'), inRoom = () => state() === 'room', set = (name, value) => { model.set(name, value); model.save_changes(); };
  const room = () => (inRoom() ? view.room : null);
  const stand = (name) => glide(eye, view.standpoints[name], room(), changed, still.matches);
  const buttons = [];
  const group = (label, options, act, on, shown = () => true) => {
    const box = make('div', { className: 'fs-group' }, make('span', { textContent: label }));
    box.setAttribute('role', 'group');
    box.setAttribute('aria-label', label);
    for (const [key, text] of options) {
      const button = make('button', { type: 'button', textContent: text, onclick: () => { act(key); refresh(); } });
      buttons.push({ button, box, on: () => on(key), shown: () => shown(key) });
      box.append(button);
    }
    tools.append(box);
  };
  const bare = () => model.get('bare');
  group('Show', Object.entries(STATES), (name) => set('mode', name), (name) => state() === name,
    (name) => !bare() && (name !== 'built' || model.get('steps') > 0));
  group('Seen', ['Standing', 'Seated', 'Corner', 'Close'].map((n) => [n, n]), stand, (name) => !eye.moved && eye.name === name, inRoom);
  group('Light', view.hours.map((n) => [n, n]), (name) => view.setHour(name), (name) => view.hour === name, inRoom);
  const clock = clockTool(view, tools, () => refresh());
  group('Fire', [[true, 'Burns'], [false, 'Still']], (on) => view.setBurning(on), (on) => view.burning === on, () => inRoom() && !still.matches);

  const parts = new Parts(view, tell), list = make('select', { ariaLabel: 'Parts', onchange: () => parts.pick(list.value) });
  const listBox = make('label', { className: 'fs-group' }, make('span', { textContent: 'Part' }), list);
  const slider = make('input', { type: 'range', min: 0, step: 1, ariaLabel: 'Step', oninput: () => set('step', Number(slider.value)) });
  const count = make('output'), steps = make('label', { className: 'fs-group' }, make('span', { textContent: 'Step' }), slider, count);
  tools.append(listBox, steps);

  let speak = 0;
  function changed() { view.again(); refresh(); }

  /** Buttons, lists and words as things stand. */
  function refresh() {
    for (const { button, box, on, shown } of buttons) {
      button.setAttribute('aria-pressed', String(on()));
      button.hidden = !shown();
      box.hidden = [...box.querySelectorAll('button')].every((b) => b.hidden);
    }
    const units = model.get('units'), words = model.get('words') || {};
    listBox.hidden = bare();
    clock.refresh(inRoom());
    steps.hidden = state() !== 'built' || bare();
    const most = model.get('steps'), step = model.get('step');
    Object.assign(slider, { max: most, value: step < 0 ? most : step });
    count.textContent = `${slider.value} of ${most}`;
    const told = whence(eye, state(), units);
    where.textContent = `${told[0].toUpperCase()}${told.slice(1)}.`;
    const tale = { eye, state: state(), hour: view.hour, burning: view.burning && !still.matches, words, units, step };
    clearTimeout(speak);
    speak = setTimeout(() => canvas.setAttribute('aria-label', `${spoken(tale)} ${HELP}`), canvas.hasAttribute('aria-label') ? SPEAK : 0);
  }

  /** The list of parts anew. */
  function relist() {
    const option = (t) => make('option', { value: t.key, textContent: t.name[0].toUpperCase() + t.name.slice(1) });
    list.replaceChildren(make('option', { value: '', textContent: 'None picked' }), ...parts.listed.map(option));
    list.value = parts.key;
  }

  /** What is known of the picked thing. */
  function tell(thing, about) {
    list.value = thing ? parts.key : '';
    said.hidden = !thing;
    if (!thing) { said.replaceChildren(); heard.textContent = ''; return; }
    const name = thing.name[0].toUpperCase() + thing.name.slice(1);
    if (!about) {
      said.replaceChildren(make('strong', { textContent: name }));
      if (thing.kind === 'setting') { said.append(' stands for scale; it is no part of the design.'); heard.textContent = said.textContent; }
      return;
    }
    const facts = [about.size, about.weight, about.price, ...about.goods].filter(Boolean).join(' · ');
    const checks = about.checks.map((c) => make('li', {}, make('span', { className: 'fs-sign', textContent: c.sign, ariaHidden: 'true' }), ` ${c.title}: ${c.verdict} (${c.key})`));
    const more = about.more ? [make('li', { textContent: `and ${about.more} more` })] : [];
    said.replaceChildren(make('strong', { textContent: about.name }), make('p', { textContent: facts }), make('ul', { ariaLabel: 'Checks that speak of it' }, ...checks, ...more));
    heard.textContent = about.said;
  }

  /** Another state: look from where it shows. */
  function restate() {
    parts.pick('');
    glide(eye, view.standpoints[inRoom() ? (eye.lastInside || 'Standing') : OUTSIDE[state()]], room(), changed, true);
    refresh();
  }

  const home = () => stand(inRoom() ? 'Standing' : OUTSIDE[state()]);
  const more = { '[': () => parts.next(-1), ']': () => parts.next(1), Escape: () => parts.pick(''), Home: home };
  const letGo = takeHold(canvas, eye, { changed, picked: (x, y) => parts.at(x, y), more });
  const still_changed = () => { if (still.matches) view.setBurning(false); refresh(); };
  still.addEventListener('change', still_changed);
  const followed = { 'change:mode': restate, 'change:words': refresh, 'change:units': refresh, 'change:bare': refresh, 'change:steps': refresh,
    'change:step': () => { refresh(); relist(); } };
  for (const [name, act] of Object.entries(followed)) model.on(name, act);
  const message = (told) => {
    if (told.tell === 'about') parts.heard(told);
  };
  model.on('msg:custom', message);

  return {
    /** Other things or another room have come: stand where one stood, in the room as it is. */
    follow() {
      if (!eye.name) eye.go(view.standpoints[inRoom() ? 'Standing' : OUTSIDE[state()]], room());
      else if (!eye.moved && view.standpoints[eye.name]) eye.go(view.standpoints[eye.name], room());
      else eye.room = room();
      relist();
      parts.again();
      refresh();
    },
    parts,
    refresh,
    dispose() {
      letGo();
      clearTimeout(speak);
      still.removeEventListener('change', still_changed);
      for (const [name, act] of Object.entries(followed)) model.off(name, act);
      model.off('msg:custom', message);
    },
  };
}

/** How the tools look. */
export const CSS = `
.fs { font-size: 14px; display: flex; flex-direction: column; min-width: 0; container: fs / inline-size; }
.fs canvas { display: block; width: 100%; height: var(--fs-height, 560px); touch-action: pan-y; cursor: grab; box-sizing: border-box; outline-offset: -3px; }
.fs canvas:active { cursor: grabbing; }
.fs-tools { display: flex; flex-wrap: wrap; gap: 6px 18px; align-items: center; margin-bottom: 6px; }
.fs-group { display: flex; align-items: center; flex-wrap: wrap; }
.fs-group[hidden] { display: none; }
.fs-group > span { margin-right: 8px; opacity: .8; }
.fs button, .fs select { font: inherit; color: inherit; background: transparent; border: 1px solid color-mix(in srgb, currentColor 45%, transparent);
  min-height: 44px; min-width: 44px; padding: 0 12px; cursor: pointer; box-sizing: border-box; }
.fs button { border-left-width: 0; }
.fs .fs-group > span + button, .fs button[hidden] + button { border-left-width: 1px; }
.fs button[hidden] { display: none; }
.fs select { max-width: 20em; background: var(--jp-layout-color1, Canvas); color: inherit; }
.fs button:hover { background: color-mix(in srgb, currentColor 9%, transparent); }
.fs button[aria-pressed="true"] { font-weight: 700; box-shadow: inset 0 -3px 0 currentColor; }
.fs :is(button, select, canvas, input):focus-visible { outline: 3px solid #0b5c8a; }
[data-jp-theme-light="false"] .fs :is(button, select, canvas, input):focus-visible { outline-color: #7cc1ea; }
.fs input[type="range"] { height: 44px; width: min(22em, 60vw); }
.fs-foot { line-height: 1.45; margin-top: 4px; }
.fs-where { margin: 0; opacity: .85; }
.fs-said p { margin: 0; }
.fs-said ul { margin: 0; padding: 0; list-style: none; columns: 24em auto; }
.fs-heard { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@container fs (max-width: 760px) { /* names give way: each group has its own for who listens */
  .fs-tools { gap: 4px 8px; margin-bottom: 4px; } .fs-group > span { display: none; } .fs-group > span + button { border-left-width: 1px; }
  .fs button { padding: 0 8px; } .fs input[type="range"] { width: min(12em, 24vw); } .fs select { max-width: 8.5em; }
}
@media print { .fs-tools { display: none; } }
`;
