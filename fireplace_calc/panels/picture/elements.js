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

/** What a page says to the kernel. Two steps of a slider are on their way at a time, so that one is worked while the other
    travels; the newest place of a hand that is faster goes when `done` is called, once a step, those before it are dropped.
    An answer that is lost holds nothing up for more than 2 s. */
function fewAtATime(model) {
  let away = [], next = null; // when each set out [ms]
  const say = (message, run) => {
    if (run) {
      away = away.filter((since) => performance.now() - since < 2000);
      if (away.length > 1) { next = message; return; }
      away.push(performance.now());
    }
    model.send(message);
  };
  const done = () => {
    away.shift();
    if (!next) return;
    const message = next;
    next = null;
    say(message, message.key);
  };
  return { say, done };
}
