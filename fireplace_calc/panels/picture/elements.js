// Elements of a page.

/** An element with its properties, other attributes (role, aria-label) under `aria`, and what stands in it. */
function make(name, props = {}, ...inside) {
  const { aria = {}, ...rest } = props;
  const made = Object.assign(document.createElement(name), rest);
  for (const [key, value] of Object.entries(aria)) made.setAttribute(key, value);
  made.append(...inside);
  return made;
}

function push(label, act, className = '') {
  const button = make('button', { type: 'button', textContent: label, className });
  button.onclick = act;
  return button;
}
