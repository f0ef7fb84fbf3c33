// The page of the file that is mailed: a model that nobody stands behind, options to switch, words that follow.
(() => {
  const told = JSON.parse(document.getElementById('told').textContent, (key, value) => {
    if (!value || typeof value.$bytes !== 'string') return value;
    return new DataView(Uint8Array.from(atob(value.$bytes), (letter) => letter.charCodeAt(0)).buffer);
  });
  const patterns = (layouts) => ({ ...layouts, patterns: Object.fromEntries(layouts.laid.map((pattern) => [pattern, told.patterns[pattern]])) });

  /** Bytes of some forms, one behind the other. */
  const joined = (names, which) => new DataView(names.reduce((all, name) => {
    const { buffer } = told.forms[name][which], made = new Uint8Array(all.byteLength + buffer.byteLength);
    made.set(all); made.set(new Uint8Array(buffer), all.byteLength);
    return made;
  }, new Uint8Array(0)).buffer);
  const withForms = (packed) => {
    const names = [...new Set(packed.form)];
    return { ...packed, forms: names, sizes: names.map((name) => told.forms[name].size), points: joined(names, 'points'), faces: joined(names, 'faces') };
  };
  const traitsOf = ({ traits, layouts }) => ({ ...traits, layouts: patterns(layouts),
    setting: withForms(traits.setting), fireplace: withForms(traits.fireplace) });

  /** What a kernel's model gives and takes, with the answers on hand. */
  class Told {
    constructor(values) { this.values = values; this.heard = {}; this.about = {}; }
    get(name) { return this.values[name]; }
    set(name, value) { this.values[name] = value; this.tell(`change:${name}`); }
    save_changes() {}
    on(name, act) { (this.heard[name] ||= []).push(act); }
    off(name, act) { this.heard[name] = (this.heard[name] || []).filter((one) => one !== act); }
    tell(name, message) { for (const act of this.heard[name] || []) act(message, []); }
    send({ ask, key }) {
      if (ask === 'about' && this.about[key]) queueMicrotask(() => this.tell('msg:custom', { tell: 'about', ...this.about[key] }));
    }
  }

  const [first] = told.options, el = document.getElementById('scene');
  const model = new Told({ ...told.shared, ...traitsOf(first) });
  model.about = first.about;
  const put = document.getElementById('words');

  /** Show an option: what has changed of the picture, and its words. */
  function show(option) {
    model.about = option.about;
    const traits = traitsOf(option);
    Object.assign(model.values, traits);
    for (const name of Object.keys(traits)) model.tell(`change:${name}`);
    say(option);
  }

  function say(option) {
    put.innerHTML = option.words;
    document.getElementById('poster').src = option.poster;
    document.getElementById('poster').alt = `${option.name}, in its room`;
    for (const button of document.querySelectorAll('.options button')) button.setAttribute('aria-pressed', String(button.value === option.name));
  }

  for (const button of document.querySelectorAll('.options button')) {
    button.addEventListener('click', () => show(told.options.find(({ name }) => name === button.value)));
  }
  say(first);
  try {
    const stop = globalThis.litScene.render({ model, el });
    document.documentElement.classList.add('turns');
    globalThis.handedOver = { model, show, options: told.options, stop };
  } catch (fault) {
    document.getElementById('still').hidden = false;
    console.error(fault);
  }
})();
