// Written by hand, no build: a module of JupyterLab's federated kind, loaded by JupyterLab and by Voila.
//
// 1. A notebook whose metadata says {"fireplace": {"run_on_open": true}} asks to be run when it is opened. It is run, with
//    the file list folded away, when the server says that its code came with the package, cell for cell; else a bar
//    above it says why it was not, and the reader decides. What the notebook says of itself never decides.
// 2. Inside our panels the notebook's single-letter commands are off, every slider handle carries its label's name, and
//    the keyboard opens and folds what a click does.
// 3. The widgets that a notebook has saved hold scripts, which run as soon as they are loaded. They stay unloaded until the
//    reader has trusted what they show (Jupyter itself asks for trust only before it shows them).
// 4. The picture's paper follows the page when that turns dark or light; print stays print.
(function () {
  let scope = null;

  async function shared(name) {
    const versions = scope && scope[name];
    if (!versions) return null;
    const factory = await versions[Object.keys(versions)[0]].get();
    return factory();
  }

  const NO_ANSWER = 'This notebook has not been run: whether it came with the workbook could not be found out.';
  const OTHER_KERNEL = 'This notebook has not been run: it asks for another kernel than the workbook\u2019s notebooks do.';

  const WIDGET_VIEW = 'application/vnd.jupyter.widget-view+json';
  const codeOf = (panel) =>
    [...panel.content.model.cells].filter((cell) => cell.type === 'code').map((cell) => cell.sharedModel.getSource());

  // A sentence that says why the notebook is not to run by itself; nothing when it may.
  async function whyNot(panel, kernel, lab) {
    if (!kernel || kernel.name !== 'python3' || (await kernel.info).language_info.name !== 'python') return OTHER_KERNEL;
    const { contents, serverSettings } = lab.app.serviceManager;
    const path = panel.context.path, cells = codeOf(panel);
    if (contents.driveName(path)) return NO_ANSWER;
    try {
      const url = serverSettings.baseUrl.replace(/\/*$/, '/') + 'fireplace-workbook/shipped';
      const asked = { method: 'POST', body: JSON.stringify({ path: contents.localPath(path), cells }) };
      const response = await lab.services.ServerConnection.makeRequest(url, asked, serverSettings);
      const answer = await response.json();
      if (!response.ok || typeof answer.why !== 'string') return NO_ANSWER;
      return answer.why || (JSON.stringify(codeOf(panel)) === JSON.stringify(cells) ? '' : NO_ANSWER);
    } catch (trouble) {
      return NO_ANSWER;
    }
  }

  async function runAll(panel, lab) {
    await lab.notebook.NotebookActions.runAll(panel.content, panel.sessionContext);
    // Running goes down with the cells; the reader begins at the top. The second time is for outputs that came in late.
    for (const wait of [0, 400]) {
      await new Promise((done) => setTimeout(done, wait));
      if (wait && panel.content.activeCellIndex !== 0) break; // the reader is already somewhere else
      panel.content.activeCellIndex = 0;
      (panel.content.outerNode || panel.content.node).scrollTop = 0;
    }
  }

  function ask(panel, lab, why) {
    const bar = new lab.widgets.Widget();
    bar.addClass('fireplace-asks');
    bar.node.setAttribute('role', 'alert');
    bar.node.style.cssText = 'display: flex; flex-wrap: wrap; gap: 8px; align-items: center; padding: 8px 12px; min-height: 56px; box-sizing: border-box; overflow: auto;' +
      'background: #ffe0b2; color: #000; font-size: 14px;';
    const words = document.createElement('span');
    words.textContent = why;
    words.style.flex = '1 1 300px';
    const button = (label, job) => {
      const made = document.createElement('button');
      made.textContent = label;
      made.addEventListener('click', job);
      return made;
    };
    const { NotebookActions } = lab.notebook;
    bar.node.append(words,
      button('Show its code', () => NotebookActions.showAllCode(panel.content)),
      button('Run all cells', () => { bar.dispose(); runAll(panel, lab); }),
      button('Do not run', () => bar.dispose()));
    panel.contentHeader.addWidget(bar);
  }

  function holdSavedWidgets(model) {
    const get = model.getMetadata.bind(model);
    const trusted = () => {
      const cells = [...model.cells].filter((cell) => cell.type === 'code');
      const shown = (cell) => cell.sharedModel.getOutputs().some((output) => output.data && WIDGET_VIEW in output.data);
      return cells.every((cell) => cell.trusted) && cells.some(shown);
    };
    model.getMetadata = (key) => (key === 'widgets' && !trusted() ? undefined : get(key));
  }

  async function runOnOpen(panel, lab) {
    await panel.context.ready;
    await panel.sessionContext.ready;
    const told = panel.content.model.getMetadata('fireplace');
    if (!told || !told.run_on_open) return;
    const why = await whyNot(panel, panel.sessionContext.session && panel.sessionContext.session.kernel, lab);
    if (panel.isDisposed) return;
    if (why) return ask(panel, lab, why);
    if (lab.app.shell.collapseLeft) lab.app.shell.collapseLeft();
    await runAll(panel, lab);
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
    const services = await shared('@jupyterlab/services');
    const widgets = await shared('@lumino/widgets');
    return {
      id: 'fireplace-workbook:plugin',
      autoStart: true,
      optional: notebook ? [notebook.INotebookTracker] : [],
      activate: (app, tracker) => {
        watch();
        const lab = { app, notebook, services, widgets };
        if (!tracker) return;
        tracker.widgetAdded.connect((_, panel) => {
          holdSavedWidgets(panel.context.model);
          runOnOpen(panel, lab);
        });
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
