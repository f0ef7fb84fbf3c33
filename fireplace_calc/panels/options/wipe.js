// Two pictures from one standpoint, one laid over the other up to where the slider stands.
const make = (tag, at = {}) => Object.assign(document.createElement(tag), at);

function choice(model, side, label) {
  const node = make('label'), list = make('select');
  node.append(make('span', { textContent: label }), list);
  list.addEventListener('change', () => { model.set(`${side}_key`, list.value); model.save_changes(); });
  const show = () => {
    list.replaceChildren(...model.get('names').map(([key, name]) => make('option', { value: key, textContent: name })));
    list.value = model.get(`${side}_key`);
  };
  return { node, show };
}

function marked(model) {
  return model.get('marks').map(({ names, left, top, right, bottom }) => {
    const mark = make('span', { className: 'wipe-mark', title: names.join(', ') });
    Object.assign(mark.style, { left: `${100 * left}%`, top: `${100 * top}%`,
      width: `${100 * (right - left)}%`, height: `${100 * (bottom - top)}%` });
    return mark;
  });
}

function render({ model, el }) {
  const root = make('section', { className: 'wipe' }), head = make('div', { className: 'wipe-head' });
  root.setAttribute('aria-label', 'Two options, one over the other');
  const left = choice(model, 'left', 'Left'), right = choice(model, 'right', 'Right');
  const tick = make('label', { className: 'wipe-tick' }), ticked = make('input', { type: 'checkbox', checked: true });
  tick.append(ticked, make('span', { textContent: 'Mark what changed' }));
  head.append(left.node, right.node, tick);
  const stage = make('div', { className: 'wipe-stage' }), over = make('img'), under = make('img');
  const marks = make('div', { className: 'wipe-marks' }), edge = make('div', { className: 'wipe-edge' });
  over.className = 'wipe-over';
  stage.append(under, over, marks, edge);
  const slide = make('input', { type: 'range', min: 0, max: 100, step: 1, value: 50, className: 'wipe-slide' });
  slide.setAttribute('aria-label', 'How much of the left option lies over the right one');
  const wait = make('p', { className: 'wipe-wait' }), said = make('ul', { className: 'wipe-said' });
  wait.setAttribute('role', 'status');
  root.append(head, stage, slide, wait, said);
  el.append(root);

  const name = (side) => (model.get('names').find(([key]) => key === model.get(`${side}_key`)) || ['', ''])[1];
  const move = () => {
    stage.style.setProperty('--wipe', `${slide.value}%`);
    slide.setAttribute('aria-valuetext', `${slide.value} % ${name('left')}, ${100 - slide.value} % ${name('right')}`);
  };
  const pull = (event) => {
    const box = stage.getBoundingClientRect();
    slide.value = Math.round(100 * Math.min(Math.max((event.clientX - box.left) / box.width, 0), 1));
    move();
  };
  stage.addEventListener('pointerdown', (event) => { stage.setPointerCapture(event.pointerId); pull(event); });
  stage.addEventListener('pointermove', (event) => { if (stage.hasPointerCapture(event.pointerId)) pull(event); });
  slide.addEventListener('input', move);
  ticked.addEventListener('change', () => { marks.hidden = !ticked.checked; });

  const show = () => {
    left.show(); right.show();
    for (const [image, side] of [[over, 'left'], [under, 'right']]) {
      const picture = model.get(side);
      image.hidden = !picture;
      if (picture && image.src !== picture) image.src = picture;
      image.alt = picture ? `${name(side)}, in its room` : '';
    }
    const coming = !(model.get('left') && model.get('right'));
    root.hidden = model.get('names').length < 2;
    stage.classList.toggle('wipe-coming', coming);
    wait.textContent = coming && !root.hidden ? 'The picture is being made.' : '';
    marks.replaceChildren(...marked(model));
    said.replaceChildren(...model.get('said').map((text) => make('li', { textContent: text })));
    move();
  };
  const traits = ['names', 'left', 'right', 'left_key', 'right_key', 'marks', 'said'];
  const heard = traits.map((trait) => `change:${trait}`);
  heard.forEach((event) => model.on(event, show));
  show();
  return () => heard.forEach((event) => model.off(event, show));
}

export default { render };
