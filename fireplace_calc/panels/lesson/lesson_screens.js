// What stands beside the picture on each screen of a lesson. Every screen is a function of what the
// kernel told and of `say`; the rule alone is kept up in place, since a hand is on its controls.

/** A paragraph, or nothing where there is no text. */
const says = (text, className = '', aria = {}) => (text ? [make('p', { textContent: text, className, aria })] : []);

/** A button that the focus finds again by its name after the words were made anew. */
function press(name, label, act, props = {}) {
  const { className = '', aria = {}, ...rest } = props;
  const button = Object.assign(push(label, act, className), rest);
  button.dataset.f = name;
  for (const [key, value] of Object.entries(aria)) button.setAttribute(key, value);
  return button;
}

const rowOf = (...buttons) => make('div', { className: 'fl-row' }, ...buttons.filter(Boolean));

/** Right, not yet, or a hint: by sign, word and color, and read aloud. */
function replied(reply) {
  const node = make('p', { className: 'fl-reply', tabIndex: -1, aria: { role: 'status' } });
  node.dataset.f = 'reply';
  if (!reply) return node;
  const sign = { true: '✓ ', false: '✗ ' }[reply.right] || '';
  node.textContent = sign + reply.text;
  node.classList.add(reply.right === null ? 'fl-hint' : reply.right ? 'fl-good' : 'fl-bad');
  return node;
}

/** Options to choose from; those that were tried are told so. */
const optionsOf = (options, kind, say, closed = false) => make('div', { className: 'fl-options' }, ...options.map(({ say: words, tried }, at) =>
  press(`${kind}-${at}`, words, () => say({ do: kind, at }), { disabled: closed, className: tried ? 'fl-tried' : '', aria: { 'aria-pressed': String(tried) } })));

/** The rule, live. */
class RuleWords {
  constructor(told, say) {
    this.say = say;
    this.cards = make('div', { className: 'fl-cards' });
    this.verdict = make('p', { className: 'fl-reply', aria: { role: 'status' } });
    this.trouble = make('p', { className: 'fl-reply fl-bad', hidden: true, aria: { role: 'alert' } });
    this.controls = new Map();
    this.node = make('div', { className: 'fl-screen' }, this.cards, this.verdict, this.trouble,
      make('div', { className: 'fl-controls' }, ...told.controls.map((one) => this.control(one))),
      ...(told.tries.length ? [this.tries(told.tries)] : []));
    this.show(told);
  }

  control(one) {
    const id = `fl-${Math.random().toString(36).slice(2)}`, said = make('output');
    const name = make('label', { htmlFor: id, textContent: one.label });
    const range = make('input', { id, type: 'range', min: 0, max: one.most, step: 1 });
    range.oninput = () => this.say({ do: 'slide', name: one.name, at: Number(range.value) }, one.name);
    const by = (step, sign, words) => press(`${one.name}${step}`, sign, () => {
      range.value = Number(range.value) + step;
      range.oninput();
    }, { aria: { 'aria-label': `${one.label}: ${words}` } });
    this.controls.set(one.name, { range, said });
    return make('div', { className: 'fl-control' }, make('div', {}, name, said), by(-1, '−', 'less'), range, by(1, '+', 'more'));
  }

  /** One thing to try at a time, and then the next. */
  tries(words) {
    let at = 0;
    const button = press('try', '', () => { this.say({ do: 'try', at }); at = (at + 1) % words.length; write(); });
    const write = () => { button.textContent = `Try: ${words[at]}`; button.dataset.at = at; };
    write();
    return rowOf(button);
  }

  show(told) {
    const cards = JSON.stringify(told.cards), few = told.cards.length < 3 || !told.cards.some((card) => card.decides);
    if (this.written !== cards) {
      this.written = cards;
      this.cards.replaceChildren(...told.cards.map((card) => make('div', { className: card.decides ? 'fl-card fl-decides' : 'fl-card' },
        make('p', {}, make('b', { textContent: `${card.letter} `, className: 'fl-letter' }),
          ...(card.figure ? [make('b', { textContent: card.figure, className: 'fl-figure' }), ' '] : []), make('span', { textContent: card.text })),
        make('p', {}, [few || card.decides ? card.from : '', card.note].filter(Boolean).join(' '), ' ', make('span', { textContent: card.clause, className: 'fl-clause' })))));
    }
    const { text, short } = told.verdict;
    this.verdict.textContent = (short === null ? '' : short ? '✗ ' : '✓ ') + text;
    this.verdict.className = `fl-reply ${short === null ? 'fl-hint' : short ? 'fl-bad' : 'fl-good'}`;
    this.trouble.textContent = told.trouble;
    this.trouble.hidden = !told.trouble;
    for (const one of told.controls) {
      const { range, said } = this.controls.get(one.name);
      if (document.activeElement !== range || Math.abs(range.value - one.at) > 0) range.value = one.at;
      said.textContent = one.said;
      range.setAttribute('aria-valuetext', one.said);
    }
  }
}

/** A list that is longer than the screen: as many entries as there is room for, and a button that turns to the next. */
function turnList(words) {
  const list = words.querySelector('.fl-turned'), more = words.querySelector('[data-f=more]');
  if (!list) return;
  const entries = [...list.children], from = Number(list.dataset.from || 0), over = () => words.scrollHeight - words.clientHeight > 1;
  const show = (first, end) => entries.forEach((entry, at) => { entry.hidden = at < first || at >= end; });
  let end = entries.length;
  more.parentNode.hidden = from === 0;
  show(from, end);
  if (over()) more.parentNode.hidden = false;
  while (over() && end > from + 1) show(from, --end);
  more.textContent = end < entries.length ? 'More' : 'From the start';
  more.onclick = () => { list.dataset.from = end < entries.length ? end : 0; turnList(words); };
}

/** Choices between parts of a screen. */
const partsOf = (names, now, act) => rowOf(...names.map((words, at) => press(`part-${at}`, words, () => act(at), { aria: { 'aria-pressed': String(at === now) } })));

const SCREENS = {
  why(told, say) {
    const parts = partsOf(told.parts, told.part, (at) => say({ do: 'part', at }));
    if (told.list) {
      return [parts, make('dl', { className: 'fl-turned' }, ...told.list.map(([term, text]) => make('div', {}, make('dt', { textContent: term }), make('dd', { textContent: text })))),
        rowOf(press('more', 'More', () => {})), ...says(told.last)];
    }
    if (told.why) return [parts, ...told.why.map(({ letter, from, text, reading }) => make('p', {}, make('b', { textContent: `${letter} ` }), `${from} ${text}`, ...(reading ? [' ', make('i', { textContent: reading })] : [])))];
    const row = ([book, marks]) => make('tr', {}, make('th', { scope: 'row', textContent: book }),
      ...marks.map(([, figure, clause]) => make('td', {}, make('b', { textContent: figure }), ...(clause ? [make('span', { textContent: clause, className: 'fl-clause' })] : []))));
    const heads = (told.books[0]?.[1] || []).map(([letter]) => make('th', { scope: 'col', textContent: letter }));
    return [parts, make('table', {}, make('caption', { textContent: 'The same in three books', className: 'fp-unseen' }),
      make('thead', {}, make('tr', {}, make('th', { scope: 'col', textContent: 'Book' }), ...heads)), make('tbody', {}, ...told.books.map(row)))];
  },

  worked(told, say) {
    const to = (at) => () => say({ do: 'step', at });
    return [make('ol', {}, ...told.steps.map(({ say: words, sum }, at) => make('li', { className: at === told.at ? 'fl-now' : '', aria: at === told.at ? { 'aria-current': 'step' } : {} },
        words, ...(sum ? [make('b', { textContent: sum, className: 'fl-sum' })] : [])))),
      make('p', { className: 'fp-unseen', textContent: `Step ${told.at + 1} of ${told.count}`, aria: { role: 'status' } }),
      rowOf(press('onward', 'Next step', to(told.at + 1), { disabled: told.at + 1 >= told.count }),
        press('back', 'One step back', to(told.at - 1), { disabled: !told.at }), press('first', 'From the start', to(0), { disabled: !told.at }))];
  },

  site(told, say) {
    const count = `${told.guesses} ${told.guesses === 1 ? 'guess' : 'guesses'}`;
    return [...says(told.ask), optionsOf(told.options, 'guess', say, told.solved), replied(told.reply),
      ...(told.solved ? [...says(told.told), make('p', {}, make('b', { textContent: 'Cure: ' }), told.cure)] : []),
      rowOf(make('span', { textContent: told.solved ? `Found with ${count}.` : count, className: 'fl-clause' }),
        told.guesses ? press('again', 'Start again', () => say({ do: 'again' })) : null)];
  },

  check(told, say) {
    return [make('h3', { textContent: `Question ${told.at + 1} of ${told.count}` }), ...says(told.ask), optionsOf(told.options, 'answer', say), replied(told.reply),
      rowOf(press('question', told.at + 1 < told.count ? 'Next question' : 'First question', () => say({ do: 'question', at: told.at + 1 })))];
  },

  exercises(told, say) {
    const chosen = (on) => ({ aria: { 'aria-pressed': String(on) } });
    const levels = (told.levels.length > 1 ? told.levels : []).map((level) => press(`level-${level}`, String(level), () => say({ do: 'level', at: level }), { aria: { 'aria-pressed': String(level === told.level), 'aria-label': `Level ${level}` } }));
    const kinds = told.kinds > 1 ? Array.from({ length: told.kinds }, (_, at) => press(`kind-${at}`, `Task ${at + 1}`, () => say({ do: 'kind', at }), chosen(at === told.kind))) : [];
    const top = rowOf(...kinds, make('span', { textContent: 'Level' }), ...levels, press('another', 'Another one', () => say({ do: 'another' })));
    if (told.trouble || !told.ask) return [top, ...says(told.trouble || 'This lesson has no exercise.')];
    const typed = (text) => say({ do: 'typed', text });
    let answer;
    if (told.options.length) {
      answer = make('div', { className: 'fl-options fl-short' }, ...told.options.map((words, at) => press(`typed-${at}`, words, () => typed(words), chosen(told.typed === words))));
    } else {
      const box = make('input', { type: 'text', defaultValue: told.typed, autocomplete: 'off', spellcheck: false, aria: { 'aria-label': `Your answer${told.unit ? `, ${told.unit}` : ''}` } });
      Object.assign(box.dataset, { f: 'box', of: [told.kind, told.level, told.seed, told.step] });
      box.onkeydown = (event) => { if (event.key === 'Enter') typed(box.value); };
      answer = rowOf(box, make('span', { textContent: told.unit, className: 'fl-clause' }), press('typed', 'Check', () => typed(box.value)));
    }
    const help = (name, words) => press(name, words, () => say({ do: 'help', name }));
    return [top, ...says(told.given.join('; ')),
      make('p', {}, make('b', { textContent: `${told.steps > 1 ? `${told.step + 1} of ${told.steps}. ` : ''}${told.ask}` })), answer, replied(told.reply),
      rowOf(help('hint', 'Hint'), help('more', 'Bigger hint'), help('working', 'Full working'),
        told.step ? press('back', 'Step back', () => say({ do: 'onward', at: told.step - 1 })) : null,
        told.step + 1 < told.steps ? press('onward', 'Next step', () => say({ do: 'onward', at: told.step + 1 }), { disabled: !told.done }) : null)];
  },
};

/** A table that figures are looked up in by row and column. */
function lookedUp(table) {
  const head = (text, scope) => make('th', { textContent: text, scope });
  const row = ([name, texts]) => make('tr', {}, head(name, 'row'), ...texts.map((text) => make('td', { textContent: text })));
  return make('table', { className: 'fl-given' }, ...(table.unit ? [make('caption', { textContent: `in ${table.unit}` })] : []),
    make('tr', {}, head(table.corner, 'col'), ...table.columns.map((name) => head(name, 'col'))), ...table.rows.map(row));
}

/** The course as a list. */
function contentsWords(lessons, say) {
  return make('ol', { className: 'fl-course' }, ...lessons.map((one) => make('li', {},
    press(`lesson-${one.key}`, `${one.number}  ${one.title}, ${one.minutes} min`, () => say({ do: 'lesson', name: one.key })),
    make('p', { textContent: `${one.aim}${one.needs.length ? ` After ${one.needs.join(' and ')}.` : ''}${one.seen ? ` ${one.seen}/6 opened.` : ''}` }))));
}
