// One input under a hand: its name, a box, a slider where it has ends, what is allowed, and what was
// wrong with the last answer, at the field itself.

// Letters of a name and what it takes that stand in one row.
const LONG = 34;

const KEYED = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

class Field {
  /**
   * told: key, label, help, kind ('measure', 'count', 'choice' or 'text'), text, allowed, locked;
   * a choice has options [[value, words]]; with a slider it has low, high, step and place.
   * say: called with {do: 'slide' | 'type', key, value}.
   */
  constructor(told, say) {
    [this.key, this.say, this.kind] = [told.key, say, told.kind];
    this.id = `fp-${Math.random().toString(36).slice(2)}`; // fields of several modules stand on one page
    this.why = make('p', { id: `${this.id}-why`, className: 'fp-why' });
    this.why.setAttribute('aria-live', 'polite');
    this.node = make('div', { className: 'fp-field' });
    this.named = told.label.length;
    this.ends = make('span', { id: `${this.id}-ends`, className: 'fp-ends' });
    this.node.append(make('label', { htmlFor: this.id, textContent: told.label }), this.ends);
    if (told.kind === 'choice') this.list();
    else this.typing(told);
    this.node.append(this.why);
    this.node.title = told.help;
    this.show(told);
  }

  list() {
    this.box = make('select', { id: this.id });
    this.box.onchange = () => this.say({ do: 'type', key: this.key, value: this.box.value });
    this.described();
    this.node.append(this.box);
  }

  typing(told) {
    this.box = make('input', { id: this.id, type: 'text', autocomplete: 'off', spellcheck: false });
    this.described();
    const take = () => {
      if (this.slide && !this.box.value.trim()) return this.back();
      if (this.box.value === this.told) return;
      this.told = this.box.value;
      this.say({ do: 'type', key: this.key, value: this.box.value });
    };
    this.box.onchange = take;
    this.box.onkeydown = (event) => {
      if (event.key === 'Enter') take();
      if (event.key === 'Escape' && this.box.value !== this.held) { this.back(); event.stopPropagation(); }
    };
    if (told.suggestions) this.suggest(told.suggestions);
    if (told.low === undefined) { this.node.append(this.box); return; }
    this.slide = make('input', { type: 'range', className: 'fp-slide' });
    this.slide.setAttribute('aria-label', told.label);
    this.slide.oninput = () => this.moved(this.way);
    this.slide.onkeydown = (event) => { this.way = KEYED[event.key] || 0; };
    this.slide.onkeyup = this.slide.onpointerdown = () => { this.way = 0; };
    const step = (way, sign, words) => {
      const button = push(sign, () => { way > 0 ? this.slide.stepUp() : this.slide.stepDown(); this.moved(way); });
      button.setAttribute('aria-label', `${told.label}, ${words}`);
      return button;
    };
    this.steps = [step(-1, '−', 'less'), step(1, '+', 'more')];
    this.node.classList.add('fp-sliding');
    this.node.append(this.steps[0], this.box, this.steps[1], this.slide);
  }

  /** What stands in the design again, in place of what was typed. */
  back() {
    this.box.value = this.told = this.held;
    this.wrong('');
  }

  described() { this.box.setAttribute('aria-describedby', `${this.ends.id} ${this.why.id}`); }

  suggest(words) {
    const list = make('datalist', { id: `${this.id}-known` }, ...words.map((value) => make('option', { value })));
    this.box.setAttribute('list', list.id);
    this.node.append(list);
  }

  /** A hand has moved the slider; `way` is one step up or down by a button or a key. */
  moved(way = 0) {
    this.hand = performance.now();
    this.say({ do: 'slide', key: this.key, value: Number(this.slide.value), way }, this.key);
  }

  show(told) {
    this.node.classList.toggle('fp-locked', Boolean(told.locked));
    for (const part of [this.box, this.slide, ...(this.steps || [])]) if (part) part.disabled = Boolean(told.locked);
    if (this.ends.textContent !== told.allowed) this.ends.textContent = told.allowed;
    this.locked = told.locked || told.note || '';
    this.ends.title = told.allowed;
    this.node.classList.toggle('fp-long', this.named + told.allowed.length > LONG);
    if (told.kind === 'choice') this.options(told);
    else if (this.box.value !== told.text) this.box.value = told.text;
    this.told = this.held = told.text;
    if (this.slide) {
      const range = [told.low, told.high, told.step].join();
      if (this.range !== range) Object.assign(this.slide, { min: told.low, max: told.high, step: told.step });
      this.range = range;
      this.place = told.place;
      this.settle();
      this.slide.setAttribute('aria-valuetext', told.text);
    }
    this.wrong(told.wrong || '');
  }

  /** Put the slider where the design is, but not under a moving hand. */
  settle() {
    clearTimeout(this.later);
    const left = 400 - (performance.now() - (this.hand ?? -400));
    if (left > 0) this.later = setTimeout(() => this.settle(), left + 10);
    else this.slide.value = this.place;
  }

  options(told) {
    const written = JSON.stringify(told.options);
    if (this.written !== written) {
      this.box.replaceChildren(...told.options.map(([value, words]) => make('option', { value, textContent: words })));
      this.written = written;
    }
    this.box.value = told.text;
  }

  /** What was wrong, or what decides it; an answer that was refused stays to be mended. */
  wrong(why) {
    const said = why || this.locked || '';
    if (this.why.textContent !== said) this.why.textContent = said;
    this.node.classList.toggle('fp-wrong', Boolean(why));
    if (why) this.box.setAttribute('aria-invalid', 'true'); else this.box.removeAttribute('aria-invalid');
  }
}
