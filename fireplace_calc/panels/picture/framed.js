// A page that has a notebook's cell, or the whole window, to itself.

/** A notebook looks its commands up by the focused element itself: inside the workbench that element has to say no.
    Ctrl with a letter still goes through; Ctrl with Enter would run the cell and throw the workbench away. */
function holdLetters(event) {
  const at = event.target;
  if (!at.closest?.('.fp-bench')) return;
  const through = (event.ctrlKey || event.metaKey) && event.key !== 'Enter';
  at.toggleAttribute('data-lm-suppress-shortcuts', !through);
}

/** Over everything else, by the browser's top layer, and back: neither the notebook's scrolling nor its clipping reaches there. */
function fillWindow(root, button) {
  const over = root.hasAttribute('popover');
  if (over) { root.hidePopover(); root.removeAttribute('popover'); }
  else { root.setAttribute('popover', 'manual'); root.showPopover(); }
  root.onkeydown = (event) => { if (event.key === 'Escape' && root.hasAttribute('popover')) fillWindow(root, button); };
  button.textContent = over ? 'Fill the window' : 'Back to the notebook';
  button.focus();
}

/** As high as what scrolls round it, the notebook or the window, at every size. `find` gives the root as soon as it stands on
    the page; `also` is called with it each time. */
function keepFitting(find, also = () => {}) {
  let seen = null;
  const fit = () => {
    const root = find();
    if (!root) return;
    const outer = root.closest('.jp-WindowedPanel-outer');
    root.style.setProperty('--fp-high', `${outer ? outer.clientHeight - 16 : window.innerHeight - 32}px`);
    root.closest('.jp-Cell')?.classList.add('fp-cell');
    also(root);
    if (outer && outer !== seen) watch.observe(seen = outer);
  };
  const watch = new ResizeObserver(fit);
  window.addEventListener('resize', fit);
  window.addEventListener('keydown', holdLetters, true);
  return {
    fit,
    close() {
      watch.disconnect();
      window.removeEventListener('resize', fit);
      window.removeEventListener('keydown', holdLetters, true);
    },
  };
}
