// Sheets of lines and letters, each on a canvas of its own, drawn at the size and density that the
// canvas has (painting.js).

/** The sheets on the stage, each on a canvas of its own. */
class Stage {
  constructor(glyphs) {
    this.glyphs = glyphs;
    this.node = make('div', { className: 'fp-sheets' });
    this.held = new Map(); // name -> {canvas, sheet}
    this.paper = '#fff';
    this.sizes = new ResizeObserver((entries) => {
      for (const entry of entries) {
        const box = entry.devicePixelContentBoxSize?.[0], dense = window.devicePixelRatio;
        const exact = (told, size) => (Math.abs(told - size * dense) < 2 ? told : Math.round(size * dense));
        const wide = exact(box?.inlineSize, entry.contentRect.width), high = exact(box?.blockSize, entry.contentRect.height);
        const canvas = entry.target;
        if (!wide || !high || (canvas.width === wide && canvas.height === high)) continue;
        [canvas.width, canvas.height] = [wide, high];
        this.draw(canvas.dataset.name);
      }
    });
  }

  draw(name) {
    const held = this.held.get(name);
    if (!held || held.canvas.width < 2) return;
    const { canvas, sheet } = held, [, , wide, high] = sheet.box;
    // the font size of the smallest letter, as it stands on the screen; what nobody could read is left out [px]
    const dots = Math.min(canvas.width / wide, canvas.height / high) / window.devicePixelRatio;
    const letter = Math.min(...sheet.labels.map((label) => label[3])) * dots / 0.73;
    canvas.dataset.letter = letter;
    paintSheet(canvas, letter < 7 ? { ...sheet, labels: [] } : sheet, this.glyphs, this.paper);
  }

  /** Take the sheets that changed; `names` are all that are on the stage, the others leave it. */
  take({ sheets, names, paper }, bodies) {
    const repaint = this.paper !== paper;
    this.paper = paper;
    this.node.style.background = paper;
    sheets.forEach((sheet, k) => {
      const held = this.held.get(sheet.name) || this.add(sheet.name);
      Object.assign(this.glyphs, sheet.glyphs || {});
      held.sheet = unpackSheet(sheet, bodies[k]);
      const [left, top, wide, high] = sheet.at.map((share) => `${100 * share}%`);
      Object.assign(held.canvas.style, { left, top, width: wide, height: high });
      held.canvas.setAttribute('aria-label', sheet.words);
      this.draw(sheet.name);
    });
    for (const [name, { canvas }] of this.held) {
      if (names.includes(name)) { if (repaint) this.draw(name); continue; }
      this.sizes.unobserve(canvas);
      canvas.remove();
      this.held.delete(name);
    }
    const beyond = [...this.held.values()].some(({ canvas }) => parseFloat(canvas.style.left) >= 99.9);
    this.node.classList.toggle('fp-swept', beyond); // more views than fit: swept along with a finger or the arrow keys
    for (const [name, value] of [['tabindex', '0'], ['role', 'region'], ['aria-label', 'Views, side by side']]) {
      if (beyond) this.node.setAttribute(name, value); else this.node.removeAttribute(name);
    }
  }

  add(name) {
    const canvas = make('canvas', { className: 'fp-sheet', width: 1, height: 1 });
    canvas.dataset.name = name;
    canvas.setAttribute('role', 'img');
    this.node.append(canvas);
    try { this.sizes.observe(canvas, { box: 'device-pixel-content-box' }); } catch { this.sizes.observe(canvas); }
    const held = { canvas };
    this.held.set(name, held);
    return held;
  }

  close() { this.sizes.disconnect(); }
}

/** A place for the sheets of a model's `drawn`, kept up with it. */
function followSheets(model) {
  const stage = new Stage(structuredClone(model.get('glyphs')));
  stage.node.classList.replace('fp-sheets', 'fireplace-canvases');
  const take = () => {
    const { stage: told, bodies } = model.get('drawn');
    stage.node.hidden = !told;
    if (!told) return;
    stage.node.style.aspectRatio = told.ratio || ''; // of a sheet laid out for this place
    stage.take(told, bodies);
    if (told.stamp !== null) stage.node.dataset.stamp = told.stamp;
  };
  // tells how wide the place is, to whoever lays out a sheet for it
  const room = new ResizeObserver(() => {
    const wide = 10 * Math.round(stage.node.clientWidth / 10);
    if (!wide || wide === model.get('wide')) return;
    model.set('wide', wide);
    model.save_changes();
  });
  if (model.get('wide') !== undefined) room.observe(stage.node);
  model.on('change:drawn', take);
  take();
  return { node: stage.node, close: () => { model.off('change:drawn', take); room.disconnect(); stage.close(); } };
}
