// Elements of a page, and how it tells the kernel what was done.

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

/** What a page says to the kernel. One step of a slider is on its way at a time; the newest place of a hand that is faster
    goes when `done` is called, which is once a step and at its end; those before it are dropped. An answer that is lost
    holds nothing up for more than 2 s. */
function oneAtATime(model) {
  let busy = 0, next = null;
  const say = (message, run) => {
    if (run && busy && performance.now() - busy < 2000) { next = message; return; }
    if (run) busy = performance.now();
    model.send(message);
  };
  const done = () => {
    busy = 0;
    if (!next) return;
    const message = next;
    next = null;
    say(message, message.key);
  };
  return { say, done };
}
