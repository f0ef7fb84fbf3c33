// The workbench's page: bar, tabs, controls, stage and strip. A sheet comes as lines and letters and
// is drawn here (painting.js) at whatever size and density the screen has.

/** A list with a name: options are [[value, words]], or {group: [[value, words]]}. */
function choice(label, act) {
  const list = make('select');
  const node = make('label', { className: 'fp-choice' }, make('span', { textContent: label }), list);
  list.onchange = () => act(list.value);
  const option = ([value, words]) => make('option', { value, textContent: words });
  const show = (options, value) => {
    const written = JSON.stringify(options);
    if (list.written !== written) {
      list.written = written;
      const groups = Array.isArray(options) ? [['', options]] : Object.entries(options);
      list.replaceChildren(...groups.flatMap(([name, inside]) =>
        (name ? [make('optgroup', { label: name }, ...inside.map(option))] : inside.map(option))));
    }
    list.value = value;
  };
  return { node, show };
}

/** A row of tabs: the arrow keys go along it, Enter or Space opens, since what is opened may take a moment. */
function tabRow(label, className, act) {
  const node = make('div', { className });
  node.setAttribute('role', 'tablist');
  node.setAttribute('aria-label', label);
  const mark = (chosen) => {
    for (const tab of node.children) {
      const on = tab.dataset.name === chosen;
      tab.setAttribute('aria-selected', String(on));
      tab.tabIndex = on ? 0 : -1;
      if (on) tab.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    }
  };
  const fill = (named) => node.replaceChildren(...named.map(([name, title]) => {
    const tab = push(title, () => act(name));
    tab.dataset.name = name;
    tab.setAttribute('role', 'tab');
    return tab;
  }));
  node.onkeydown = (event) => {
    const all = [...node.children], at = all.indexOf(document.activeElement);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: all.length - 1 }[event.key];
    if (to === undefined || at < 0) return;
    event.preventDefault();
    all[(to + all.length) % all.length].focus();
  };
  return { node, fill, mark };
}

/** Verdicts counted, the worst three, and what it costs and weighs. */
class Strip {
  constructor(act) {
    this.node = make('section', { className: 'fp-strip' });
    this.node.setAttribute('aria-label', 'Checks, cost and weight');
    this.said = make('p', { className: 'fp-unseen' });
    this.said.setAttribute('role', 'status');
    this.counts = make('div', { className: 'fp-counts' });
    this.worst = make('div', { className: 'fp-worsts' });
    this.bill = make('div', { className: 'fp-bill' });
    this.node.append(this.counts, this.worst, this.bill, this.said);
    this.act = act;
  }

  show({ counts, worst, bill, said }) {
    this.fill(this.counts, counts.map(({ sign, number, words, fold, bad }) => {
      const count = push('', () => this.act({ do: 'tab', name: fold }), bad ? 'fp-bad' : '');
      count.append(make('b', { textContent: `${sign} ${number}` }), make('span', { textContent: words }));
      return count;
    }));
    this.fill(this.worst, worst.map(({ key, sign, title, figures, help, shown }) => {
      const one = push('', () => this.act({ do: 'jump', key }));
      one.append(make('b', { textContent: `${sign} ${title}` }), make('span', { textContent: figures }));
      one.title = help;
      one.setAttribute('aria-pressed', String(shown));
      return one;
    }));
    this.fill(this.bill, bill.map(([name, text]) => {
      const one = push('', () => this.act({ do: 'tab', name }));
      one.append(make('b', { textContent: text[0] }), make('span', { textContent: text[1] }));
      return one;
    }));
    if (this.said.textContent !== said) this.said.textContent = said;
  }

  /** The same number of buttons keeps the focus where it is. */
  fill(node, made) {
    const at = [...node.children].indexOf(document.activeElement);
    node.replaceChildren(...made);
    if (at >= 0) (node.children[at] || node.lastElementChild)?.focus();
  }
}

function render({ model, el }) {
  el.classList.add('fp-frame');
  const fields = new Map(), stage = new Stage(structuredClone(model.get('glyphs')));
  const root = () => el.closest('.fp-bench'), grid = () => el.closest('.fp-grid');

  const { say, done } = fewAtATime(model);

  // -- tabs: some hold several folds, which then have a row of their own
  let groups = [], open = '', fresh = false;
  const last = new Map();
  const mark = (fold) => {
    open = fold;
    const group = groups.find(([, , folds]) => folds.some(([name]) => name === fold)) || ['', '', []];
    if (fold) last.set(group[0], fold);
    tabs.mark(group[0]);
    const several = group[2].length > 1;
    inner.node.hidden = !several;
    inner.fill(several ? group[2] : []);
    inner.mark(fold);
    grid()?.classList.toggle('fp-open', Boolean(fold));
    grid()?.classList.toggle('fp-grows', fold === 'new');
  };
  const go = (fold) => {
    mark(fold);
    grid()?.classList.toggle('fp-waits', Boolean(fold));
    say({ do: 'tab', name: fold });
  };
  const tabs = tabRow('What stands beside the controls', 'fp-tabs', (name) => {
    const [, , folds] = groups.find(([known]) => known === name) || ['', '', [['']]];
    go(last.get(name) || folds[0]?.[0] || '');
  });
  const inner = tabRow('Within this tab', 'fp-tabs fp-inner', go);
  inner.node.hidden = true;
  const act = (message) => {
    if (message.do === 'tab') go(message.name);
    else {
      if (open && !wideEnough()) go('');
      grid()?.classList.add('fp-waits');
      say(message);
    }
  };
  const wideEnough = () => grid()?.clientWidth >= 1500;

  /** Something beside the drawing, as soon as it stands there. */
  const beside = async (what) => {
    for (let k = 0; k < 40; k++) {
      const found = grid()?.querySelector(`.fp-content :is(${what})`);
      if (found) return found;
      await new Promise((done) => setTimeout(done, 50));
    }
    return null;
  };

  // -- the bar
  const title = make('b');
  const lists = {
    view: choice('View', (name) => { if (open && !wideEnough()) go(''); say({ do: 'view', name }); }),
    units: choice('Units', (name) => say({ do: 'units', name })),
    pack: choice('Code', (name) => say({ do: 'pack', name })),
    paper: choice('Paper', (name) => { paper = name; tellPaper(); }),
  };
  lists.paper.show([['page', 'As the page'], ['light', 'Light'], ['dark', 'Dark'], ['print', 'Print']], 'page');
  const whole = push('Fill the window', () => fillWindow(root(), whole));
  const again = push('Start again', () => say({ do: 'again' }));
  const bar = make('div', { className: 'fp-bar' }, title, ...Object.values(lists).map((list) => list.node),
    push('Undo', () => say({ do: 'undo' })), push('Redo', () => say({ do: 'redo' })), again, whole);

  // -- dark page, dark paper, unless the reader chose another
  let paper = 'page', told = '';
  const tellPaper = () => {
    const wanted = paper === 'page' ? (document.body.dataset.jpThemeLight === 'false' ? 'dark' : 'light') : paper;
    if (wanted !== told) say({ do: 'paper', name: (told = wanted) });
  };
  const turned = new MutationObserver(tellPaper);
  turned.observe(document.body, { attributes: true, attributeFilter: ['data-jp-theme-light'] });

  // -- controls, stage, strip
  const controls = make('div', { className: 'fp-controls' });
  const answer = make('div', { className: 'fp-said' }), words = make('div');
  answer.append(words, push('Close', () => { answer.hidden = true; }));
  answer.hidden = true;
  const question = make('div', { className: 'fp-question', hidden: true });
  question.setAttribute('role', 'group');
  const ask = (asked) => {
    question.hidden = !asked;
    if (!asked) return;
    question.setAttribute('aria-label', asked.words);
    question.replaceChildren(make('b', { textContent: asked.words }), ...asked.choices.map(([name, label]) => push(label, () => {
      question.hidden = true;
      fresh = true;
      controls.querySelector('input')?.focus();
      say({ do: 'answer', name });
    })));
  };
  const room = make('div', { className: 'fp-stage' }, answer, stage.node);
  controls.append(question);
  const strip = new Strip(act);

  const showFields = (all) => {
    for (const one of all) {
      const held = fields.get(one.key);
      if (held) held.show(one);
      else {
        fields.set(one.key, new Field(one, say));
        controls.append(fields.get(one.key).node);
      }
    }
  };
  const showLists = (shown) => {
    title.textContent = title.title = shown.name;
    again.hidden = !shown.again;
    for (const name of ['view', 'units', 'pack']) lists[name].show(shown[name].options, shown[name].value);
  };
  const showSaid = () => {
    words.innerHTML = model.get('said');
    answer.hidden = !words.textContent.trim();
  };
  const take = (message, bodies) => {
    if (message.stage) {
      stage.take(message.stage, bodies);
      if (!open) grid()?.classList.remove('fp-waits');
      if (message.stage.stamp !== null) room.dataset.stamp = message.stage.stamp;
    }
    if (message.lists) showLists(message.lists);
    if (message.fields) showFields(message.fields);
    if (message.wrong) for (const [key, why] of Object.entries(message.wrong)) fields.get(key)?.wrong(why);
    if (message.strip) strip.show(message.strip);
    if (message.opened !== undefined) {
      if (message.opened !== open) mark(message.opened);
      grid()?.classList.remove('fp-waits');
      if (message.opened && fresh) beside('input, select').then((first) => first?.focus());
      fresh = false;
    }
    if (message.line) beside(`.fp-line-${message.line}`).then((line) => {
      line?.scrollIntoView({ block: 'start' });
      line?.classList.add('fp-found');
      setTimeout(() => line?.classList.remove('fp-found'), 4000);
    });
    if (message.question !== undefined) ask(message.question);
    if (message.done) done();
  };
  const first = model.get('first');
  groups = first.tabs;
  tabs.fill([['', 'Drawing'], ...groups]);
  tabs.mark('');
  el.append(bar, tabs.node, inner.node, controls, room, strip.node);
  take(first, first.bodies);
  showSaid();
  model.on('change:said', showSaid);
  model.on('msg:custom', take);

  let rest = 0;
  const frame = keepFitting(root, (bench) => {
    const beside = bench.querySelector('.fp-content');
    for (const [name, value] of [['tabindex', '0'], ['role', 'region'], ['aria-label', 'Beside the drawing']]) beside?.setAttribute(name, value);
  });
  const measure = new ResizeObserver(([entry]) => {
    frame.fit();
    clearTimeout(rest);
    const { width, height } = entry.contentRect;
    if (width > 40 && height > 40) rest = setTimeout(() => say({ do: 'size', wide: width, high: height }), 120);
  });
  measure.observe(stage.node);
  say({ do: 'hello' });
  tellPaper();
  return () => {
    for (const one of [frame, measure, turned, stage]) (one.disconnect || one.close).call(one);
  };
}

export default { render };
