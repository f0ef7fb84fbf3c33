/** The sheet of a pallet: fields, what is said of them, the drawing, and the table of pieces.
 *
 * Python holds everything; this page shows it and sends what was typed. Enter goes on before the
 * answer comes, so a quick hand never waits: what is typed meanwhile is kept.
 */

/** Whether the page round us is dark. */
function dark() {
  const told = document.body.dataset.jpThemeLight;
  return told ? told === 'false' : !document.body.dataset.vscodeThemeKind && matchMedia('(prefers-color-scheme: dark)').matches;
}

const REST = 600;
let made = 0;

function render({ model, el }) {
  const own = `measuring-${made += 1}`;
  const cells = new Map();
  let id = null, sent = 0, rest = 0, serial = model.get('shown').ask.serial, quiet = false, waiting = 0, entered = false, saidAlready = '';

  const title = make('h3'), fields = make('div', { className: 'measuring-fields' });
  const said = make('div', { className: 'measuring-said', aria: { role: 'status', 'aria-live': 'polite' } });
  const drawing = followSheets(model);
  const button = (label, act) => make('button', { type: 'button', textContent: label, onclick: act });
  const hand = button('Other hand ( / )', () => ask('hand', {}));
  const done = button('Piece done (Ctrl + Enter)', () => finish(null));
  const more = button('More fields', () => send({ do: 'more', id }));
  const drop = button('Take off the sheet', () => send({ do: 'drop', id }));
  const fresh = button('New piece', () => ask('new', {}));
  const whole = button('The set as a whole', () => send({ do: 'open', number: -1 }));
  const buttons = make('div', { className: 'measuring-buttons' }, hand, done, more, drop, fresh, whole);
  const rows = make('tbody'), table = make('div', { className: 'measuring-table' },
    make('table', {}, make('caption', {}, 'Pieces so far'),
      make('thead', {}, make('tr', {}, ...['Mark', 'Role', 'Lift', 'How many', 'Weight', 'As it is'].map((t) => make('th', { scope: 'col' }, t)))), rows));
  const list = make('ul'), lacking = make('section', { className: 'measuring-misfits', aria: { 'aria-label': 'What does not meet, or is missing' } }, make('h4', {}, 'So far'), list);
  const kept = make('p', { className: 'measuring-kept' });
  const keys = make('p', { className: 'measuring-keys' },
    'Enter: next field. Shift + Enter: back. Ctrl + Enter: piece done. / in the mark: other hand of the piece before.');
  const root = make('div', { className: 'measuring fireplace-panel' }, title, keys, fields, buttons, said, drawing.node, lacking, table, kept);
  el.append(root);

  /** Send, and say that an answer is due until it has come. */
  function send(message) {
    model.send({ ...message, count: sent += 1, dark: dark() });
    root.setAttribute('aria-busy', 'true');
  }
  const order = () => model.get('shown').fields.map((f) => f.key);
  const text = (cell) => cell.input.value;

  /** Send a field if it was changed; with it, which one is asked for next. */
  function put(key, next) {
    const cell = cells.get(key);
    if (cell && text(cell) !== cell.sent) {
      cell.sent = text(cell);
      send({ do: 'put', id, key, text: cell.sent, next });
    } else if (next) send({ do: 'at', id, key: next });
  }
  function focus(key) {
    const cell = cells.get(key);
    if (!cell) return;
    quiet = true;
    cell.input.focus();
    if (cell.input.select) cell.input.select();
    quiet = false;
  }
  function step(key, by) {
    if (waiting) { entered = by > 0; return; } // the new piece is on its way; it goes on then
    const all = order(), next = all[all.indexOf(key) + by];
    if (!next) return by > 0 ? finish(key) : undefined;
    put(key, next);
    focus(next);
  }
  /** Ask for another piece; the mark is typed into at once, before it is there. */
  function ask(what, more) {
    send({ do: what, id, ...more });
    waiting = sent;
    entered = false;
    const cell = cells.get('mark');
    if (!cell) return;
    cell.input.value = cell.sent = '';
    focus('mark');
  }
  function finish(key) {
    if (key) put(key);
    if (model.get('shown').whole) send({ do: 'done', id }); else ask('done', {});
  }

  function field(told) {
    const name = `${own}-${told.key}`;
    const input = told.choices.length ? make('select', { id: name }, ...told.choices.map((c) => make('option', { value: c, textContent: c || '\u2014' })))
      : make('input', { id: name, type: 'text', autocomplete: 'off', spellcheck: false });
    const wrong = make('p', { className: 'measuring-wrong', id: `${name}-wrong` });
    const label = make('label', { htmlFor: name });
    const cell = { input, wrong, label, sent: '', box: make('div', { className: 'measuring-field' }, label, input, wrong) };
    input.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') {
        event.preventDefault();
        if (event.ctrlKey || event.metaKey) finish(told.key); else step(told.key, event.shiftKey ? -1 : 1);
      } else if (event.key === '/' && told.key === 'mark') {
        event.preventDefault();
        const typed = text(cell) === cell.sent ? '' : text(cell);
        ask('hand', { mark: typed });
      }
    });
    // A list is sent when the hand rests: what it is moved past takes no length away.
    input.addEventListener('change', () => {
      clearTimeout(rest);
      if (input.tagName === 'SELECT') rest = setTimeout(() => { if (!waiting) put(told.key); }, REST);
      else if (!waiting) put(told.key);
    });
    input.addEventListener('blur', () => { if (!waiting && cells.get(told.key) === cell) put(told.key); });
    input.addEventListener('focus', () => { if (!quiet) { send({ do: 'at', id, key: told.key }); if (input.select) input.select(); } });
    return cell;
  }
  function tell(cell, told, fresh) {
    const { input } = cell, typing = !fresh && input === document.activeElement && text(cell) !== cell.sent;
    if (cell.label.textContent !== told.label) cell.label.textContent = told.label;
    input.placeholder = told.hint;
    if (!typing && (fresh || text(cell) !== told.text)) {
      input.value = told.text;
      if (input === document.activeElement && input.select) input.select();
    }
    cell.sent = told.text;
    cell.wrong.textContent = told.wrong;
    input.setAttribute('aria-invalid', String(Boolean(told.wrong)));
    if (told.wrong) input.setAttribute('aria-describedby', cell.wrong.id); else input.removeAttribute('aria-describedby');
  }
  function take() {
    const shown = model.get('shown'), other = shown.id !== id;
    const at = document.activeElement, key = [...cells].find(([, c]) => c.input === at)?.[0];
    const answered = waiting && shown.heard >= waiting, early = waiting && !answered;
    const typed = waiting && key === 'mark' ? at.value : '';
    quiet = true;
    if (other) cells.clear();
    for (const k of cells.keys()) if (!shown.fields.some((f) => f.key === k)) cells.delete(k);
    for (const told of shown.fields) {
      const known = cells.get(told.key), same = known && (known.input.tagName === 'SELECT') === Boolean(told.choices.length);
      if (!same) cells.set(told.key, field(told));
    }
    const boxes = shown.fields.map((f) => cells.get(f.key).box);
    if (boxes.length !== fields.children.length || boxes.some((b, k) => fields.children[k] !== b)) fields.replaceChildren(...boxes);
    for (const told of shown.fields) {
      if (!(early && told.key === 'mark')) tell(cells.get(told.key), told, other || (answered && told.key === 'mark'));
    }
    if (key && document.activeElement !== cells.get(key)?.input && cells.has(key)) {
      const input = cells.get(key).input;
      input.focus();
      if (other && key === 'mark') { input.value = typed; } else if (input.select && text(cells.get(key)) === cells.get(key).sent) input.select();
    }
    quiet = false;
    const goOn = answered && other && entered && typed;
    if (answered) { waiting = 0; entered = false; }
    id = shown.id;
    title.textContent = shown.title;
    hand.hidden = drop.hidden = more.hidden = drawing.node.hidden = shown.whole;
    done.textContent = shown.whole ? 'Go on to the pieces (Ctrl + Enter)' : 'Piece done (Ctrl + Enter)';
    more.setAttribute('aria-pressed', String(shown.more));
    more.textContent = shown.more ? 'Fewer fields' : 'More fields';
    if (shown.said.join('\n') !== saidAlready) {
      saidAlready = shown.said.join('\n');
      said.replaceChildren(...shown.said.map((t) => make('p', {}, t)));
    }
    list.replaceChildren(...shown.misfits.map((t) => make('li', {}, t)));
    kept.textContent = shown.kept;
    tabulate(shown);
    const wanted = shown.ask;
    if (wanted.serial !== serial) { serial = wanted.serial; if (!typed || wanted.key !== 'mark') focus(wanted.key); }
    if (goOn) step('mark', 1);
    root.setAttribute('aria-busy', String(shown.heard < sent));
  }
  function tabulate(shown) {
    const at = document.activeElement?.dataset?.piece;
    rows.replaceChildren(...shown.rows.map((row) => {
      const go = make('button', { type: 'button', textContent: row.mark, onclick: () => send({ do: 'open', number: row.number }), aria: { 'aria-label': `Go back to ${row.mark}` } });
      go.dataset.piece = row.number;
      return make('tr', { className: row.open ? 'open' : '' }, make('th', { scope: 'row' }, go),
        ...row.cells.map((t) => make('td', {}, t)));
    }));
    if (at !== undefined) rows.querySelector(`[data-piece="${at}"]`)?.focus();
  }
  root.addEventListener('keydown', (event) => {
    if (event.key !== 'Tab') event.stopPropagation();
  });
  const look = () => drawing.node.firstElementChild?.setAttribute('aria-label', model.get('seen'));
  const looks = new MutationObserver(() => send({ do: 'look' }));
  looks.observe(document.body, { attributes: true, attributeFilter: ['data-jp-theme-light'] });
  model.on('change:shown', take);
  model.on('change:drawn change:seen', look);
  take();
  look();
  send({ do: 'look' });
  return () => {
    looks.disconnect();
    model.off('change:shown', take);
    model.off('change:drawn change:seen', look);
    drawing.close();
  };
}

export default { render };
