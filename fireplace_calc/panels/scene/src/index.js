// The scene in a cell or on a page: takes what the kernel says, and gives everything back when the view goes.
import { CSS, controls } from './controls.js';
import { Stage } from './stage.js';
import { NO_WEBGL } from './still.js';

const TRAITS = ['looks', 'layouts', 'setting', 'fireplace', 'sun'];

/** Take the traits of a model as they are and as they change; gives back what stops it. */
function followed(model, stage) {
  const heard = Object.fromEntries(TRAITS.map((trait) => [`change:${trait}`, () => {
    const value = model.get(trait);
    if (value && Object.keys(value).length) stage.take(trait, value);
  }]));
  heard['change:step'] = () => stage.setStep(model.get('step') ?? -1);
  heard['change:hour'] = () => { if (stage.hours.includes(model.get('hour'))) stage.setHour(model.get('hour')); };
  for (const [name, act] of Object.entries(heard)) { act(); model.on(name, act); }
  return () => { for (const [name, act] of Object.entries(heard)) model.off(name, act); };
}

/** Answer the kernel's wish for a picture; gives back what stops it. */
function answering(model, stage) {
  const heard = async ({ ask, id, width, height, eye, hour }) => {
    if (ask !== 'picture') return;
    const made = await stage.pictureOf({ width, height, eye, hour });
    model.send({ picture: id }, undefined, [await made.arrayBuffer()]);
  };
  model.on('msg:custom', heard);
  return () => model.off('msg:custom', heard);
}

function render({ model, el }) {
  const root = document.createElement('div'), canvas = document.createElement('canvas'), style = document.createElement('style');
  root.className = 'fs'; style.textContent = CSS;
  root.append(style, canvas); el.append(root);
  let tools = null;
  const stage = root.scene = new Stage({ canvas, model, root, arrived: () => tools.follow() });
  tools = controls(stage);
  if (!stage.renderer) { root.dataset.none = 'true'; root.append(Object.assign(document.createElement('p'), { className: 'fs-none', textContent: NO_WEBGL })); }
  const stops = [followed(model, stage), answering(model, stage)], watched = new ResizeObserver(() => stage.again());
  watched.observe(canvas);
  return () => { stops.forEach((stop) => stop()); watched.disconnect(); tools.dispose(); stage.dispose(); };
}

export default { render };
