// The scene in a cell or on a page: takes what the kernel says, and gives everything back when the view goes.
import { CSS, controls } from './controls.js';
import { Stage } from './stage.js';

const TRAITS = { looks: 'setLooks', layouts: 'setLayouts', setting: 'setSetting', fireplace: 'setFireplace', step: 'setStep' };

/** Take the traits of a model as they are and as they change; gives back what stops it. */
function followed(model, stage, tools) {
  const offs = [];
  for (const [trait, method] of Object.entries(TRAITS)) {
    const take = () => {
      const value = model.get(trait);
      if (value === undefined || value === null || (typeof value === 'object' && !Object.keys(value).length)) return;
      stage[method](value);
      if (trait === 'fireplace') tools.follow();
    };
    take();
    model.on(`change:${trait}`, take);
    offs.push(() => model.off(`change:${trait}`, take));
  }
  return () => offs.forEach((off) => off());
}

function render({ model, el }) {
  const root = document.createElement('div'), canvas = document.createElement('canvas'), style = document.createElement('style');
  root.className = 'fs'; style.textContent = CSS;
  root.append(style, canvas); el.append(root);
  const stage = new Stage({ canvas, model, root });
  root.scene = stage;
  const tools = controls(stage), stop = followed(model, stage, tools);
  const watched = new ResizeObserver(() => stage.again());
  watched.observe(canvas);
  return () => { stop(); watched.disconnect(); tools.dispose(); stage.dispose(); };
}

export default { render };
