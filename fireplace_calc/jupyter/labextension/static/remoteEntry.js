// Written by hand, no build: a module of JupyterLab's federated kind, loaded by JupyterLab and by Voila.
//
// 1. A notebook whose metadata says {"fireplace": {"run_on_open": true}} is run once when it is opened, with the file
//    list folded away.
// 2. Inside our panels the notebook's single-letter commands are off, every slider handle carries its label's name, and
//    the keyboard opens and folds what a click does.
// 3. The picture's paper follows the page when that turns dark or light; print stays print.
(function () {
  let scope = null;

  async function shared(name) {
    const versions = scope && scope[name];
    if (!versions) return null;
    const factory = await versions[Object.keys(versions)[0]].get();
    return factory();
  }

  async function runOnOpen(panel, NotebookActions, shell) {
    await panel.context.ready;
    await panel.sessionContext.ready;
    const told = panel.content.model.getMetadata('fireplace');
    if (!told || !told.run_on_open) return;
    if (shell.collapseLeft) shell.collapseLeft();
    const kernel = panel.sessionContext.session && panel.sessionContext.session.kernel;
    if (!kernel) return;
    await kernel.info;
    await NotebookActions.runAll(panel.content, panel.sessionContext);
    // Running goes down with the cells; the reader begins at the top. The second time is for outputs that came in late.
    for (const wait of [0, 400]) {
      await new Promise((done) => setTimeout(done, wait));
      if (wait && panel.content.activeCellIndex !== 0) break; // the reader is already somewhere else
      panel.content.activeCellIndex = 0;
      (panel.content.outerNode || panel.content.node).scrollTop = 0;
    }
  }

  function care(panel) {
    for (const slider of panel.querySelectorAll('.widget-slider')) {
      const label = slider.querySelector('.widget-label');
      const handle = slider.querySelector('[role="slider"]');
      if (!label || !handle) continue;
      handle.setAttribute('aria-label', label.textContent);
      const row = slider.closest('.widget-hbox');
      const box = row && row.querySelector('.fireplace-tied input');
      if (box) box.setAttribute('aria-label', label.textContent);
    }
    folds(panel);
    paper(panel);
    for (const image of panel.querySelectorAll('.fireplace-picture')) {
      const view = [...image.classList].find((name) => name.startsWith('fireplace-view-')).slice('fireplace-view-'.length);
      image.alt = `Drawing of the fireplace, ${view === 'left' ? 'front elevation and plan' : view}; the sentence below it says what it shows.`;
    }
  }

  // Dark page, dark paper. What the reader chose since the page last turned is left alone.
  const seen = new WeakMap();
  function paper(panel) {
    const dark = document.body.dataset.jpThemeLight === 'false';
    for (const list of panel.querySelectorAll('.fireplace-paper select')) {
      if (seen.get(list) === dark) continue;
      seen.set(list, dark);
      const wanted = [...list.options].find((option) => option.text === (dark ? 'Dark' : 'Light'));
      if (!wanted || wanted.selected || list.selectedOptions[0].text === 'Print') continue;
      list.value = wanted.value;
      list.dispatchEvent(new Event('change', { bubbles: true }));
    }
  }

  // The heading of a folded group is a bare div: make it a button that Tab reaches and that says whether it is open.
  function folds(panel) {
    for (const heading of panel.querySelectorAll('.jupyter-widget-Collapse-header')) {
      const open = heading.parentElement.classList.contains('jupyter-widget-Collapse-open');
      heading.setAttribute('aria-expanded', String(open));
      if (heading.tabIndex === 0) continue;
      heading.tabIndex = 0;
      heading.setAttribute('role', 'button');
      heading.setAttribute('aria-label', heading.textContent); // without the glyph of its arrow
      heading.addEventListener('click', () => setTimeout(() => folds(panel)));
      heading.addEventListener('keydown', (event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        heading.click();
      });
    }
  }

  // A notebook's commands are looked up by the focused element itself, so that element has to say no. Ctrl with a letter
  // (save, the palette) still goes through; Ctrl with Enter would run the cell and throw the panel away.
  function keep(event) {
    const at = event.target;
    if (!at.closest || !at.closest('.fireplace-panel')) return;
    const through = (event.ctrlKey || event.metaKey) && event.key !== 'Enter';
    at.toggleAttribute('data-lm-suppress-shortcuts', !through);
  }

  function watch() {
    window.addEventListener('keydown', keep, true);
    const look = () => document.querySelectorAll('.fireplace-panel').forEach(care);
    let due = false;
    new MutationObserver((records) => {
      if (due || !records.some((r) => r.addedNodes.length)) return;
      due = true;
      setTimeout(() => { due = false; look(); }, 50);
    }).observe(document.body, { childList: true, subtree: true });
    new MutationObserver(look).observe(document.body, { attributes: true, attributeFilter: ['data-jp-theme-light'] });
    look();
  }

  async function plugin() {
    const notebook = await shared('@jupyterlab/notebook');
    return {
      id: 'fireplace-workbook:plugin',
      autoStart: true,
      optional: notebook ? [notebook.INotebookTracker] : [],
      activate: (app, tracker) => {
        watch();
        if (tracker) tracker.widgetAdded.connect((_, panel) => runOnOpen(panel, notebook.NotebookActions, app.shell));
      },
    };
  }

  window._JUPYTERLAB = window._JUPYTERLAB || {};
  window._JUPYTERLAB['fireplace-workbook'] = {
    init: (given) => { scope = given; },
    get: async () => {
      const made = await plugin();
      return () => ({ __esModule: true, default: made });
    },
  };
})();
