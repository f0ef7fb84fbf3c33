// The client's bar: his fields, what a slider stops at, and one line of what falls short, price and weight.

function render({ model, el }) {
  el.classList.add('fc-page');
  const fields = new Map(), { say, done } = fewAtATime(model);

  const bar = make('div', { className: 'fc-bar' }), line = make('div', { className: 'fc-line' });
  bar.setAttribute('role', 'group');
  bar.setAttribute('aria-label', 'What you decide');
  const stops = make('div', { className: 'fc-stops' }), answer = make('div', { className: 'fc-said', hidden: true });
  stops.setAttribute('role', 'group');
  stops.setAttribute('aria-label', 'Sliders stop at');
  answer.setAttribute('aria-live', 'polite');
  const steps = make('div', { className: 'fc-steps' }, push('Undo', () => say({ do: 'undo' })), push('Redo', () => say({ do: 'redo' })));
  el.append(line, answer, bar, make('div', { className: 'fc-below' }, stops, steps));

  const showFields = (all) => {
    for (const one of all) {
      const held = fields.get(one.key);
      if (held) { held.show(one); continue; }
      fields.set(one.key, new Field(one, say));
      bar.append(fields.get(one.key).node);
    }
  };
  const buttons = new Map();
  const showStops = (all) => {
    if (!buttons.size) stops.append(make('span', { textContent: 'Sliders stop at' }));
    for (const [name, on] of all) {
      if (!buttons.has(name)) {
        const button = push(name[0].toUpperCase() + name.slice(1), () => say({ do: 'stop', name, on: button.getAttribute('aria-pressed') !== 'true' }));
        buttons.set(name, button);
        stops.append(button);
      }
      buttons.get(name).setAttribute('aria-pressed', String(on));
    }
  };
  const more = make('details', {}, make('summary', { textContent: 'More' }), make('p'));
  const told = make('p');
  line.append(told, more);
  line.setAttribute('role', 'status');
  const showLine = ({ short, price, weight, planning, more: words }) => {
    const parts = [make('strong', { textContent: short }), ` ${price} ${weight} `, make('em', { textContent: planning })];
    if (told.textContent !== [short, price, weight, planning].join(' ')) told.replaceChildren(...parts);
    more.querySelector('p').textContent = words;
  };
  const showSaid = () => { answer.innerHTML = model.get('said'); answer.hidden = !answer.textContent.trim(); };
  const take = (message) => {
    if (message.fields) showFields(message.fields);
    if (message.stops) showStops(message.stops);
    if (message.line) showLine(message.line);
    for (const [key, why] of Object.entries(message.wrong || {})) fields.get(key)?.wrong(why);
    if (message.done) done();
  };

  const fit = () => {
    const page = el.closest('.fc'), outer = page?.closest('.jp-WindowedPanel-outer');
    page?.style.setProperty('--fc-high', `${outer ? outer.clientHeight - 16 : window.innerHeight - 32}px`);
    page?.closest('.jp-Cell')?.classList.add('fc-cell');
  };
  const watch = new ResizeObserver(fit);
  watch.observe(document.body);
  /** The notebook's own shortcuts stay away from what is typed here. */
  const hold = (event) => event.target.closest?.('.fc')?.setAttribute('data-lm-suppress-shortcuts', 'true');
  window.addEventListener('keydown', hold, true);
  model.on('msg:custom', take);
  model.on('change:said', showSaid);
  take(model.get('first') || {});
  showSaid();
  fit();
  say({ do: 'hello' });
  return () => {
    watch.disconnect();
    window.removeEventListener('keydown', hold, true);
    model.off('msg:custom', take);
    model.off('change:said', showSaid);
  };
}

export default { render };
