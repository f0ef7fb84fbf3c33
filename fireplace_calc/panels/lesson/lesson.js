// The lesson's page: heading and screens above, the picture at the left, words at the right.

/** A list with a name for whoever hears it. */
function listed(label, act) {
  const list = make('select', { aria: { 'aria-label': label } });
  list.onchange = () => act(list.value);
  return {
    list,
    show({ options, value }) {
      list.replaceChildren(...options.map(([name, words]) => make('option', { value: name, textContent: words })));
      list.value = value;
    },
  };
}

/** An answer that somebody has begun stays in the box made anew for the same question. */
function keepBegun(old, box) {
  if (old && box && old.dataset.of === box.dataset.of && old.value !== old.defaultValue) box.value = old.value;
}

/** Whether it has filled the window once: whoever goes back to the notebook stays there. */
let opened = false;

function render({ model, el }) {
  el.classList.add('fp-bench', 'fl-lesson');
  const { say, done } = fewAtATime(model), stage = new Stage(structuredClone(model.get('glyphs')));
  const title = make('h2'), aim = make('p', { className: 'fl-aim' });
  const screens = make('div', { className: 'fl-tabs', aria: { role: 'group', 'aria-label': 'Screens of the lesson' } });
  const words = make('div', { className: 'fl-words', tabIndex: 0, aria: { role: 'region', 'aria-label': 'Beside the picture' } });
  const lead = make('p', { className: 'fl-lead', aria: { role: 'status' } });
  const looked = make('div'), room = make('div', { className: 'fl-stage' }, lead, looked, stage.node);
  const book = listed('Code', (name) => say({ do: 'book', name })), units = listed('Units', (name) => say({ do: 'units', name }));
  const bar = make('div', { className: 'fl-bar' }, screens, book.list, units.list);
  const whole = push('Fill the window', () => fillWindow(el, whole));
  const paper = push('Dark room', () => tellPaper(dark ? 'light' : 'dark'));
  const contents = push('All lessons', () => say({ do: 'screen', name: 'contents' }));
  const frame = make('div', { className: 'fl-frame' },
    make('div', { className: 'fl-head' }, make('div', { className: 'fl-title' }, title, aim), contents, paper, whole),
    bar, room, words);
  el.append(frame);

  // -- a dark page, or a dark room
  let dark = false;
  const tellPaper = (name) => {
    dark = name === 'dark';
    el.classList.toggle('fl-dark', dark);
    document.body.classList.toggle('fl-night', dark);
    paper.textContent = dark ? 'Light room' : 'Dark room';
    say({ do: 'paper', name });
  };

  // -- words: made anew, the focus where it was
  let rule = null, shown = '';
  const fill = (nodes, fresh) => {
    const held = words.contains(document.activeElement) ? document.activeElement.dataset.f : null;
    const { selectionStart: from, selectionEnd: to } = document.activeElement || {};
    const begun = words.querySelector('input[type=text]');
    words.replaceChildren(...nodes);
    keepBegun(begun, words.querySelector('input[type=text]'));
    words.classList.toggle('fl-anew', fresh);
    turnList(words);
    if (fresh) words.scrollTop = 0;
    if (!held) return;
    const again = words.querySelector(`[data-f="${held}"]:not(:disabled)`) || words.querySelector('[data-f="reply"], [data-f="onward"]:not(:disabled), button:not(:disabled)');
    again?.focus({ preventScroll: true });
    if (again?.type === 'text' && Number.isInteger(from)) again.setSelectionRange(from, to);
  };
  const showScreen = (told) => {
    const now = `${told.screen} ${told.key} ${told.book.value}`, fresh = now !== shown;
    shown = now;
    frame.classList.toggle('fl-listing', told.screen === 'contents');
    room.hidden = bar.hidden = told.screen === 'contents';
    lead.replaceChildren(...(told.lead?.[0] ? [make('b', { textContent: told.lead[0] }), ' '] : []), told.lead?.[1] || '');
    looked.replaceChildren(...(told.shown?.table ? [lookedUp(told.shown.table)] : []));
    if (told.screen === 'contents') {
      fill([contentsWords(told.contents, say)], fresh);
      return;
    }
    if (told.screen !== 'rule') {
      rule = null;
      fill([make('div', { className: 'fl-screen' }, ...SCREENS[told.screen](told.shown, say), ...onward(told))], fresh);
    } else if (rule && !fresh) rule.show(told.shown);
    else {
      rule = new RuleWords(told.shown, say);
      fill([rule.node], fresh);
    }
  };
  /** From the last screen on to the next lesson. */
  const onward = ({ screen, next }) => (screen === 'exercises' && next.length
    ? [rowOf(press('lesson', 'Next lesson', () => say({ do: 'lesson', name: next[0] }), { title: next[1] }))] : []);

  const take = (told, bodies) => {
    if (told.stage) stage.take(told.stage, bodies);
    title.textContent = told.screen === 'contents' ? 'The course' : `${told.number} · ${told.title}`;
    aim.textContent = told.screen === 'contents' ? 'Take the lessons in this order.' : '';
    if (screens.children.length !== told.screens.length) {
      screens.replaceChildren(...told.screens.map(([name, label], at) => {
        const button = push('', () => say({ do: 'screen', name }));
        button.append(make('span', { className: 'fl-no', textContent: `${at + 1} ` }), label);
        button.dataset.name = name;
        return button;
      }));
    }
    for (const button of screens.children) {
      if (button.dataset.name === told.screen) button.setAttribute('aria-current', 'page'); else button.removeAttribute('aria-current');
    }
    book.show(told.book);
    units.show(told.units);
    showScreen(told);
    frame.dataset.screen = told.screen;
    if (told.done) done();
  };
  take(model.get('first'), model.get('first').bodies);
  model.on('msg:custom', take);

  // -- the size of the picture, and of the screen by which its letters are measured
  let rest = 0;
  const fitting = keepFitting(() => (el.isConnected ? el : null), () => {
    whole.hidden = !el.closest('.jp-WindowedPanel-outer');
    if (!whole.hidden && !opened) fillWindow(el, whole); // in a cell letters are too small for the back row
    opened = true;
  });
  const measure = new ResizeObserver(() => {
    fitting.fit();
    turnList(words);
    clearTimeout(rest);
    rest = setTimeout(() => {
      const { width, height } = stage.node.getBoundingClientRect();
      if (width > 40 && height > 40) say({ do: 'size', wide: width, high: height, screen: parseFloat(getComputedStyle(frame).getPropertyValue('font-size')) / 0.0298 });
    }, 120);
  });
  measure.observe(stage.node);
  say({ do: 'hello' });
  tellPaper(document.body.dataset.jpThemeLight === 'false' ? 'dark' : 'light');
  return () => {
    for (const one of [fitting, measure, stage]) (one.disconnect || one.close).call(one);
    document.body.classList.remove('fl-night');
  };
}

export default { render };
