/** What is measured on a fireplace that stands: one card for each entry, in the order of the walk.
 *
 * Python holds everything; this page shows it and sends what was typed. Enter goes to the next box,
 * Shift and Enter back.
 */

let made = 0;

function render({ model, el }) {
  const own = `survey-${made += 1}`;
  const cards = new Map();
  let station = null;

  const button = (label, act) => make('button', { type: 'button', textContent: label, onclick: act });
  const where = make('select', { id: `${own}-where`, onchange: () => model.send({ do: 'at', station: where.value }) });
  const name = make('input', { id: `${own}-name`, type: 'text', autocomplete: 'off', spellcheck: false,
    onchange: () => model.send({ do: 'name', text: name.value }) });
  const sketch = make('select', { id: `${own}-sketch`, onchange: () => model.send({ do: 'sketch', name: sketch.value }) });
  const sketches = followSheets(model);
  const labelled = (label, input) => make('div', { className: 'survey-field' }, make('label', { htmlFor: input.id, textContent: label }), input);
  const take = button('Work on the measured fireplace', () => model.send({ do: 'take' }));
  const print = button('Print what was found (PDF)', () => model.send({ do: 'print', what: 'found' }));
  const back = button('Take the last entry back', () => model.send({ do: 'back' }));
  const head = make('div', { className: 'survey-head' }, labelled('Station', where), labelled('Sketch', sketch), labelled('Name of the job', name),
    button('Print the sheets (PDF)', () => model.send({ do: 'print', what: 'sheets' })), print, take, back);
  const said = make('p', { className: 'survey-said', aria: { role: 'status' } });
  const list = make('ol', { className: 'survey-list' });
  const root = make('div', { className: 'survey' }, head, said, sketches.node, list);
  el.append(root);

  const boxes = () => [...list.querySelectorAll('input[type=text], select')].filter((b) => !b.disabled);
  function step(input, by) {
    const all = boxes(), next = all[all.indexOf(input) + by];
    if (next) { next.focus(); if (next.select) next.select(); } else input.blur();
  }

  function box(told) {
    const id = `${own}-${told.box.replace(/[^a-z0-9]/gi, '-')}`;
    const words = told.choices.length > 0;
    const input = words ? make('select', { id }, ...['', ...told.choices].map((c) => make('option', { value: c, textContent: c || '\u2014' })))
      : make('input', { id, type: 'text', autocomplete: 'off', spellcheck: false, placeholder: told.hint });
    const wrong = make('p', { className: 'survey-wrong', id: `${id}-wrong` });
    const cell = { input, wrong, sent: '', row: make('div', { className: 'survey-box' },
      make('label', { htmlFor: id, textContent: told.label }), input, wrong) };
    input.setAttribute('aria-label', told.aria);
    const send = () => {
      if (input.value === cell.sent) return;
      cell.sent = input.value;
      model.send({ do: 'put', box: told.box, text: input.value });
    };
    input.addEventListener('change', send);
    input.addEventListener('blur', send);
    input.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      send();
      step(input, event.shiftKey ? -1 : 1);
    });
    return cell;
  }
  function card(told) {
    const cells = new Map(told.boxes.map((b) => [b.box, box(b)]));
    const tick = make('input', { type: 'checkbox', id: `${own}-${told.number}-out`,
      onchange: () => model.send({ do: 'out', key: told.key, on: tick.checked }) });
    const found = make('p', { className: 'survey-found' });
    const row = make('li', { aria: { 'aria-label': told.title } },
      make('div', { className: 'survey-title' }, make('b', {}, `${told.number}  ${told.title}`), make('span', {}, told.hold)),
      ...[...cells.values()].map((c) => c.row),
      make('div', { className: 'survey-out' }, tick, make('label', { htmlFor: tick.id, textContent: 'cannot reach' })), found);
    return { cells, tick, found, row };
  }
  function tell(card, told) {
    card.tick.checked = told.out;
    card.found.textContent = told.found;
    for (const b of told.boxes) {
      const { input, wrong } = card.cells.get(b.box), cell = card.cells.get(b.box);
      const typing = input === document.activeElement && input.value !== cell.sent;
      if (!typing && input.value !== b.text) input.value = b.text;
      if (!typing) cell.sent = b.text;
      wrong.textContent = b.wrong;
      input.setAttribute('aria-invalid', String(Boolean(b.wrong)));
      if (b.wrong) input.setAttribute('aria-describedby', wrong.id); else input.removeAttribute('aria-describedby');
    }
  }
  function show() {
    const shown = model.get('shown');
    where.replaceChildren(...shown.stations.map((s) => make('option', { value: s.name, textContent: s.label, selected: s.name === shown.station })));
    sketch.replaceChildren(...shown.sketches.map(([value, label]) => make('option', { value, textContent: label, selected: value === shown.sketch })));
    if (name !== document.activeElement) name.value = shown.name;
    take.disabled = print.disabled = !shown.whole;
    back.disabled = !shown.back;
    said.textContent = shown.said;
    if (station !== shown.station) {
      station = shown.station;
      cards.clear();
      for (const told of shown.entries) cards.set(told.key, card(told));
      list.replaceChildren(...[...cards.values()].map((c) => c.row));
      list.scrollTop = 0;
    }
    list.hidden = !shown.entries.length;
    for (const told of shown.entries) tell(cards.get(told.key), told);
  }
  root.addEventListener('keydown', (event) => { if (event.key !== 'Tab') event.stopPropagation(); });
  model.on('change:shown', show);
  show();
  return () => {
    model.off('change:shown', show);
    sketches.close();
  };
}

export default { render };
