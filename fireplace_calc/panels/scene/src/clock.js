// Month and hour of the sun, as two entries: a list and a slider.

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

const make = (tag, told, ...inside) => { const made = Object.assign(document.createElement(tag), told); made.append(...inside); return made; };
const spoken = (hour) => `${Math.floor(hour)}:${String(Math.round(hour % 1 * 60)).padStart(2, '0')}`;

/** Put the clock among the tools; `changed` is told after a move. Gives back what brings it up to date. */
export function clockTool(view, tools, changed) {
  const month = make('select', { ariaLabel: 'Month' }, ...MONTHS.map((name, k) => make('option', { value: String(k), textContent: name })));
  const hour = make('input', { type: 'range', min: '0', max: '24', step: '0.25', ariaLabel: 'Hour of the sun' }), told = make('output', {});
  const box = make('div', { className: 'fs-group' }, make('span', { textContent: 'Sun' }), month, hour, told);
  box.setAttribute('role', 'group');
  box.setAttribute('aria-label', 'Month and hour of the sun');
  tools.append(box);
  const moved = () => { view.setClock(Number(month.value), Number(hour.value)); changed(); };
  month.onchange = moved;
  hour.oninput = moved;
  return {
    refresh(shown) {
      box.hidden = !shown || !view.table;
      const { table, clock } = view, at = clock || table;
      if (!at) return;
      month.value = String(at.month);
      hour.value = String(at.hour);
      told.textContent = spoken(at.hour);
      hour.setAttribute('aria-valuetext', `${spoken(at.hour)}, ${table.told ? '' : 'latitude unknown, taken as '}${Math.abs(table.latitude).toFixed(0)} degrees ${table.latitude < 0 ? 'south' : 'north'}`);
      box.title = table.told ? '' : `Latitude unknown: the sun of ${Math.abs(table.latitude)} degrees`;
    },
  };
}
