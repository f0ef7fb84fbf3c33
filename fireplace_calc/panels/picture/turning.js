// The fireplace as a body that turns, on a plain 2-D canvas. Faces go into a depth buffer of our own; edges are ruled
// over them as real lines, heavier where the knife went through and round the outline, as on the other drawings. No
// graphics card is asked for: ten views on one page are as welcome as one, and every machine shows the same picture.

const DEGREE = Math.PI / 180;
const WEIGHTS = { seen: 0.9, outline: 1.5, cut: 2.1 }; // [px]
const MM = 96 / 25.4; // [px]
const REACH = 6; // how far past a part its lines and what is asked beside them go [dots]
const PLACES = { front: [0, 0], side: [-90, 0], above: [0, 90], corner: [-30, 20] }; // turned to the right, up [deg]
const NAMES = { front: 'Front', side: 'Side', above: 'Above', corner: 'Corner' };
const CUTS = { '': 'Nothing', 'left half': 'Left half', 'front half': 'Front half' };
const SEEN = { '': [-30, 20], 'left half': [-50, 10], 'front half': [-20, 20] }; // where a cut shows best [deg]
const ROUND = { '': 'Masonry', pieces: 'No masonry' };
const AIMS = { fireplace: 'Fireplace', whole: 'Whole' };

const read = (view, Kind) => new Kind(view.buffer.slice(view.byteOffset, view.byteOffset + view.byteLength));
const dot = (v, p, k) => v[0] * p[k] + v[1] * p[k + 1] + v[2] * p[k + 2];
const rgb = (hex) => [1, 3, 5].map((k) => parseInt(hex.slice(k, k + 2), 16));

const KINDS = { points: Float32Array, normals: Float32Array, faces: Uint32Array, edges: Uint32Array, owner: Uint16Array,
  cap: Uint8Array, sharp: Uint8Array };
const opened = (packed) => Object.fromEntries(Object.entries(KINDS).map(([name, Kind]) => [name, read(packed[name], Kind)]));

/** Corners, faces and edges of one state, unpacked, with the plane of each face. A form of a set is sent once and put
    down wherever a piece or a bed of that form stands. */
function unpack(shown, state) {
  const forms = shown.forms.map((form) => form[state] && opened(form[state]));
  const runs = [{ ...opened(shown.states[state]), at: [0, 0, 0] }];
  for (const [form, part, ...at] of shown.stands) {
    if (forms[form]) runs.push({ ...forms[form], owner: new Uint16Array(forms[form].owner.length).fill(part), at });
  }
  const body = Object.fromEntries(Object.entries(KINDS).map(([name, Kind]) =>
    [name, new Kind(runs.reduce((long, run) => long + run[name].length, 0))]));
  const end = Object.fromEntries(Object.keys(KINDS).map((name) => [name, 0]));
  for (const run of runs) {
    const corner = end.points / 3, face = end.owner;
    for (const name of ['normals', 'owner', 'cap', 'sharp']) body[name].set(run[name], end[name]);
    run.points.forEach((v, k) => { body.points[end.points + k] = v + run.at[k % 3]; });
    run.faces.forEach((v, k) => { body.faces[end.faces + k] = v + corner; });
    run.edges.forEach((v, k) => { body.edges[end.edges + k] = v + (k % 4 < 2 ? corner : face); });
    for (const name of Object.keys(KINDS)) end[name] += run[name].length;
  }
  return Object.assign(body, { parts: shown.parts, one: shown.parts.map((p) => p.one), offsets: Float32Array.from(body.owner, (_, f) => dot(body.normals.subarray(3 * f), body.points, 3 * body.faces[3 * f])) });
}

/** Where the eye is: right, up and towards the viewer. */
function camera(turned, raised) {
  const [s, c, t, d] = [Math.sin(turned), Math.cos(turned), Math.sin(raised), Math.cos(raised)];
  return { right: [c, s, 0], up: [-s * t, c * t, d], near: [s * d, -c * d, t] };
}

/** Scale and middle that fit a box, as seen, into a picture. */
function fit(box, eye, width, height) {
  const across = [Infinity, -Infinity], along = [Infinity, -Infinity];
  for (let k = 0; k < 8; k++) {
    const p = [box[k & 1], box[2 + ((k >> 1) & 1)], box[4 + (k >> 2)]];
    for (const [range, way] of [[across, eye.right], [along, eye.up]]) {
      const at = dot(way, p, 0);
      range[0] = Math.min(range[0], at); range[1] = Math.max(range[1], at);
    }
  }
  const scale = Math.min(0.92 * width / (across[1] - across[0]), 0.92 * height / (along[1] - along[0]));
  return { scale, x: (across[0] + across[1]) / 2, y: (along[0] + along[1]) / 2 };
}

/** Where a side of a face crosses a level; nowhere is infinitely far. */
function across(X, Y, p, q, level) {
  return (Y[p] <= level) === (Y[q] <= level) ? Infinity : X[p] + (level - Y[p]) * (X[q] - X[p]) / (Y[q] - Y[p]);
}

/** Faces of the parts that stand into a depth buffer: for each dot, which face is nearest. Seen from where one stood
    before, only what is new goes in, as long as nothing has gone; `dirty` is then the box of dots that may change. */
function fill(body, stands, marked, eye, place, width, height, theme, before) {
  const key = JSON.stringify([eye, place, width, height, theme.paper, theme.ink]);
  if (before && before.body === body && before.key === key && before.stands.every((stood, k) => stands[k] || !stood)) {
    const fresh = stands.map((now, k) => now && !before.stands[k]), turned = marked.map((now, k) => now !== before.marked[k]);
    put(body, before, fresh, eye);
    return Object.assign(before, { stands, marked, dirty: reached(body, before, fresh.map((now, k) => now || turned[k])) });
  }
  const { points } = body, corners = points.length / 3;
  const X = new Float32Array(corners), Y = new Float32Array(corners), Z = new Float32Array(corners);
  for (let p = 0; p < corners; p++) {
    X[p] = width / 2 + place.scale * (dot(eye.right, points, 3 * p) - place.x);
    Y[p] = height / 2 - place.scale * (dot(eye.up, points, 3 * p) - place.y);
    Z[p] = dot(eye.near, points, 3 * p);
  }
  const depth = new Float32Array(width * height).fill(-Infinity), face = new Int32Array(width * height).fill(-1);
  const seen = { X, Y, Z, depth, face, facing: new Uint8Array(body.owner.length), width, height, body, key, stands, marked,
    runs: [], dirty: [0, 0, width, height] };
  put(body, seen, stands, eye);
  return seen;
}

/** Faces of some parts into a depth buffer. */
function put(body, seen, parts, eye) {
  const { faces, normals, owner } = body, { X, Y, Z, depth, face, facing, width, height } = seen, count = owner.length;
  for (let f = 0; f < count; f++) {
    if (!parts[owner[f]] || dot(eye.near, normals, 3 * f) < 1e-4) continue;
    facing[f] = 1;
    const [a, b, c] = [faces[3 * f], faces[3 * f + 1], faces[3 * f + 2]];
    const area = (X[b] - X[a]) * (Y[c] - Y[a]) - (X[c] - X[a]) * (Y[b] - Y[a]);
    if (Math.abs(area) < 1e-6) continue;
    const dx = ((Z[b] - Z[a]) * (Y[c] - Y[a]) - (Z[c] - Z[a]) * (Y[b] - Y[a])) / area;
    const dy = ((Z[c] - Z[a]) * (X[b] - X[a]) - (Z[b] - Z[a]) * (X[c] - X[a])) / area;
    const last = Math.min(height - 1, Math.floor(Math.max(Y[a], Y[b], Y[c]) - 0.5));
    for (let y = Math.max(0, Math.ceil(Math.min(Y[a], Y[b], Y[c]) - 0.5)); y <= last; y++) {
      const level = y + 0.5;
      const ab = across(X, Y, a, b, level), bc = across(X, Y, b, c, level), ca = across(X, Y, c, a, level);
      const left = Math.min(ab, bc, ca), right = Math.max(ab < Infinity ? ab : -Infinity, bc < Infinity ? bc : -Infinity, ca < Infinity ? ca : -Infinity);
      const end = Math.min(width - 1, Math.floor(right - 0.499));
      for (let x = Math.max(0, Math.ceil(left - 0.501)); x <= end; x++) {
        const z = Z[a] + dx * (x + 0.5 - X[a]) + dy * (level - Y[a]), at = y * width + x;
        if (z > depth[at]) { depth[at] = z; face[at] = f; }
      }
    }
  }
}

/** Box of the dots that some parts reach, and what is ruled round them: left, top, right, bottom. */
function reached(body, seen, parts) {
  const { faces, owner } = body, { X, Y, facing, width, height } = seen, box = [width, height, 0, 0];
  for (let f = 0; f < owner.length; f++) {
    if (!parts[owner[f]] || !facing[f]) continue;
    for (let k = 3 * f; k < 3 * f + 3; k++) {
      const x = X[faces[k]], y = Y[faces[k]];
      if (x < box[0]) box[0] = x;
      if (y < box[1]) box[1] = y;
      if (x > box[2]) box[2] = x;
      if (y > box[3]) box[3] = y;
    }
  }
  return [Math.max(0, Math.floor(box[0]) - REACH), Math.max(0, Math.floor(box[1]) - REACH),
    Math.min(width, Math.ceil(box[2]) + REACH), Math.min(height, Math.ceil(box[3]) + REACH)];
}

/** How much ink a hatch lays on a dot: straight lines, paired lines, or dots in a quincunx. */
function hatching(hatch, grain) {
  if (!hatch) return () => 0;
  const gap = Math.max(1.3 * hatch.gap * MM, 4.5) * grain, wide = 0.45 * grain;
  const ways = hatch.angles.map((angle) => [Math.sin(angle * DEGREE) / gap, Math.cos(angle * DEGREE) / gap]);
  const lines = hatch.pair ? [0, 1.3 * hatch.pair * MM * grain / gap] : [0];
  return (x, y) => {
    let ink = 0;
    for (const [i, j] of ways) {
      for (const start of lines) {
        const t = x * i + y * j + start;
        ink = Math.max(ink, 1 - Math.max(0, Math.abs(t - Math.round(t)) * gap - wide));
      }
    }
    if (hatch.dots) {
      const row = Math.round(y / gap), u = x / gap + (row & 1 ? 0.5 : 0);
      ink = Math.max(ink, 1.3 - Math.max(0, Math.hypot((u - Math.round(u)) * gap, y - row * gap) - 0.7 * grain));
    }
    return Math.min(Math.max(ink, 0), 1);
  };
}

/** Colour every dot: a material's tone, lit from over the right shoulder; a cut face in its full tone, hatched; a marked
    part in a tone of its own. */
function colour(image, body, marked, seen, eye, theme, hatches, parts, grain) {
  const out = new Uint32Array(image.data.buffer), paper = rgb(theme.paper), ink = rgb(theme.ink);
  const pack = (c) => (255 << 24) | (c[2] << 16) | (c[1] << 8) | c[0];
  const sun = [0, 1, 2].map((k) => 0.25 * eye.right[k] + 0.55 * eye.up[k] + 0.8 * eye.near[k]);
  const plain = pack(paper), flat = new Uint32Array(body.owner.length), tones = [], ways = [], kinds = {};
  const own = parts.map((part, k) => rgb(theme.tones[marked[k] ? 'set front' : part.material] || theme.soft));
  for (let f = 0; f < flat.length; f++) {
    if (!seen.facing[f]) continue;
    const tone = own[body.owner[f]];
    const light = theme.flat || body.cap[f] ? 1 : 0.8 + 0.24 * Math.max(0, dot(sun, body.normals, 3 * f));
    tones[f] = tone.map((v) => Math.min(255, Math.round(v * light)));
    flat[f] = pack(tones[f]);
    const kind = parts[body.owner[f]].material;
    if (body.cap[f]) ways[f] = kinds[kind] ||= hatching(hatches[kind], grain);
  }
  const [left, above, right, below] = seen.dirty;
  for (let y = above; y < below; y++) {
    for (let x = left, at = y * seen.width + left; x < right; x++, at++) {
      const f = seen.face[at];
      if (f < 0) { out[at] = plain; continue; }
      const laid = ways[f] ? 0.45 * ways[f](x, y) : 0;
      if (!laid) { out[at] = flat[f]; continue; }
      const [r, g, b] = tones[f];
      out[at] = (255 << 24) | ((b + (ink[2] - b) * laid) << 16) | ((g + (ink[1] - g) * laid) << 8) | (r + (ink[0] - r) * laid);
    }
  }
}

/** Edges as runs of line, by weight. A piece is seen where one of its own faces is seen beside it. A
    marked one has a heavy outline. */
function rule(body, marked, seen) {
  const { edges, sharp, cap, normals, offsets, owner } = body, { X, Y, face, facing, width, height } = seen;
  const flush = (f, g) => f === g || (f >= 0 && g >= 0 && Math.abs(offsets[f] - offsets[g]) < 5e-4 &&
    normals[3 * f] * normals[3 * g] + normals[3 * f + 1] * normals[3 * g + 1] + normals[3 * f + 2] * normals[3 * g + 2] > 0.9999);
  const at = (x, y) => (x < 0 || y < 0 || x >= width || y >= height ? -1 : face[Math.floor(y) * width + Math.floor(x)]);
  const [left, above, right, below] = seen.dirty, apart = (p, q, low, high) => Math.max(p, q) < low || Math.min(p, q) > high;
  for (let e = 0; e < sharp.length; e++) {
    const l = edges[4 * e + 2], r = edges[4 * e + 3];
    if (sharp[e] ? !facing[l] && !facing[r] : facing[l] === facing[r]) continue;
    const a = edges[4 * e], b = edges[4 * e + 1], dx = X[b] - X[a], dy = Y[b] - Y[a], long = Math.hypot(dx, dy);
    if (long < 0.3 || apart(X[a], X[b], left, right) || apart(Y[a], Y[b], above, below)) continue;
    const own = (f) => f >= 0 && ((facing[l] && flush(f, l) && owner[f] === owner[l]) || (facing[r] && flush(f, r) && owner[f] === owner[r]));
    const steps = Math.max(1, Math.ceil(long / 1.5)), nx = -dy / long, ny = dx / long;
    const line = [];
    for (let k = 0; k < steps; k++) {
      const t = (k + 0.5) / steps, x = X[a] + t * dx, y = Y[a] + t * dy;
      const one = at(x + 1.3 * nx, y + 1.3 * ny), other = at(x - 1.3 * nx, y - 1.3 * ny);
      let now = '';
      if (own(one) || own(other) || own(at(x, y))) {
        const alike = flush(one, other) && body.one[owner[one]] === body.one[owner[other]];
        now = alike ? '' : marked[owner[l]] || (one >= 0 && cap[one]) || (other >= 0 && cap[other]) ? 'cut' : one < 0 || other < 0 ? 'outline' : 'seen';
      }
      const last = line[line.length - 1];
      if (last && last[0] === now) last[2] = k + 1;
      else line.push([now, k, k + 1]);
    }
    // A short gap in a line is a face too thin for the dots; a short line in a gap is a dot at the end of another face.
    const kept = line.filter(([w, from, to], k) => {
      const before = line[k - 1]?.[0], after = line[k + 1]?.[0];
      return w ? before || after || steps < 5 || to - from > 2 : !before || !after || to - from > 6;
    });
    seen.runs[e] = [];
    kept.forEach(([w, from, to], k) => {
      if (!w) return;
      const next = kept[k + 1], end = next ? next[1] : to;
      seen.runs[e].push([w, X[a] + dx * from / steps, Y[a] + dy * from / steps, X[a] + dx * end / steps, Y[a] + dy * end / steps]);
    });
  }
}

/** One picture, on a canvas of so many dots to a pixel; tells which part is seen at each dot. */
function draw(canvas, body, stands, marked, view, theme, hatches, box, grain) {
  const width = Math.max(1, Math.round(canvas.clientWidth * grain)), height = Math.max(1, Math.round(canvas.clientHeight * grain));
  if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  const eye = camera(view.turned * DEGREE, view.raised * DEGREE), place = fit(box, eye, width, height);
  place.scale *= view.size;
  place.y += view.lift * (box[5] - box[4]) * Math.cos(view.raised * DEGREE);
  const seen = view.seen = fill(body, stands, marked, eye, place, width, height, theme, view.seen);
  const [left, above, right, below] = seen.dirty, pen = canvas.getContext('2d');
  const told = (x, y) => body.parts[body.owner[seen.face[Math.floor(y * grain) * width + Math.floor(x * grain)]]];
  if (left >= right || above >= below) return told;
  seen.image ||= pen.createImageData(width, height);
  colour(seen.image, body, marked, seen, eye, theme, hatches, body.parts, grain);
  rule(body, marked, seen);
  pen.save();
  pen.putImageData(seen.image, 0, 0, left, above, right - left, below - above);
  pen.beginPath();
  pen.rect(left, above, right - left, below - above);
  pen.clip();
  pen.strokeStyle = theme.ink;
  pen.lineCap = 'round';
  const fine = Math.min(Math.max(place.scale / grain / 140, 0.5), 1); // a chimney shown whole asks for a finer pen
  for (const [name, weight] of Object.entries(WEIGHTS)) {
    pen.lineWidth = weight * grain * fine;
    pen.beginPath();
    seen.runs.forEach((line) => line.forEach(([kind, x, y, u, w]) => {
      if (kind !== name || Math.max(x, u) < left - REACH || Math.min(x, u) > right + REACH || Math.max(y, w) < above - REACH ||
        Math.min(y, w) > below + REACH) return;
      pen.moveTo(x, y);
      pen.lineTo(u, w);
    }));
    pen.stroke();
  }
  pen.restore();
  return told;
}

/** The box of the fireplace, moved up by thirds of its height while the flue grows out of it. */
function growing(box, top) {
  const third = (box[5] - box[4]) / 3, up = Math.max(0, Math.ceil((top + 0.1 - box[5]) / third)) * third;
  return [...box.slice(0, 4), box[4] + up, box[5] + up];
}

/** Where one stands, in words. */
function whence({ turned, raised }) {
  const round = Math.abs(turned), side = turned > 0 ? 'right' : 'left';
  const level = round < 1 ? 'from the front' : round > 179 ? 'from behind' : Math.abs(round - 90) < 1 ? `from the ${side} side`
    : round < 90 ? `from the front, ${Math.round(round)}° round to the ${side}` : `from behind, ${Math.round(180 - round)}° round to the ${side}`;
  if (raised > 89) return 'from straight above';
  return raised ? `${level}, ${Math.abs(Math.round(raised))}° ${raised > 0 ? 'from above' : 'from below'}` : level;
}

const make = (tag, told = {}, ...inside) => {
  const made = Object.assign(document.createElement(tag), told);
  made.append(...inside);
  return made;
};

/** A material as it looks where it is cut. */
function swatch(material, theme, hatch) {
  const grain = 2, made = make('canvas', { width: 30 * grain, height: 16 * grain, ariaHidden: 'true' }), pen = made.getContext('2d');
  const lay = hatching(hatch, grain);
  pen.fillStyle = theme.tones[material] || theme.soft;
  pen.fillRect(0, 0, made.width, made.height);
  pen.fillStyle = theme.ink;
  for (let y = 0; y < made.height; y++) {
    for (let x = 0; x < made.width; x++) {
      pen.globalAlpha = 0.45 * lay(x, y);
      pen.fillRect(x, y, 1, 1);
    }
  }
  return made;
}

/** Whether the page round us is dark. */
function dark() {
  const told = document.body.dataset.jpThemeLight;
  return told ? told === 'false' : !document.body.dataset.vscodeThemeKind && matchMedia('(prefers-color-scheme: dark)').matches;
}

function render({ model, el }) {
  const start = () => ({ turned: PLACES.corner[0], raised: PLACES.corner[1], size: 1, lift: 0 });
  let view = start(), cut = model.get('cut'), aim = 'fireplace', bodies = {}, alone = '', name = () => null, due = 0, rest = 0, paper = '';
  const canvas = make('canvas', { className: 'turning-canvas', tabIndex: 0 });
  canvas.setAttribute('role', 'img');
  const said = make('span'), pointed = make('span', { className: 'turning-pointed' }), legend = make('ul', { className: 'turning-legend' });
  said.setAttribute('aria-live', 'polite');
  const buttons = [], pieces = () => model.get('shown').parts.filter((p) => p.mark), building = () => model.get('step') >= 0 && pieces().length > 0,
    bare = () => alone && pieces().length > 0;
  const group = (label, choices, act, on) => {
    const made = make('div', { className: 'turning-group' }, make('span', {}, label));
    made.setAttribute('role', 'group');
    made.setAttribute('aria-label', label);
    for (const [key, text] of Object.entries(choices)) {
      const button = make('button', { type: 'button', textContent: text, onclick: () => act(key) });
      if (on) buttons.push([button, () => on(key)]);
      made.append(button);
    }
    return made;
  };
  const go = (key) => { [view.turned, view.raised] = PLACES[key]; show(); };
  const scale = (by) => { view.size = Math.min(Math.max(view.size * by, 0.4), 12); show(); };
  const open = (key) => { cut = key; [view.turned, view.raised] = SEEN[key]; show(); };
  const sizes = group('Size', { '-': '\u2212', '+': '+' }, (key) => scale(key === '+' ? 1.25 : 0.8));
  sizes.querySelectorAll('button').forEach((b, k) => b.setAttribute('aria-label', k ? 'Larger' : 'Smaller'));
  const tools = make('div', { className: 'turning-tools' },
    group('Cut away', CUTS, open, (key) => cut === key), group('Show', AIMS, (key) => { aim = key; Object.assign(view, { size: 1, lift: 0 }); show(); }, (key) => aim === key),
    group('Seen from', NAMES, go), sizes);
  const around = group('Around the pieces', ROUND, (key) => { alone = key; show(); }, (key) => alone === key);
  const list = make('select', { ariaLabel: 'Piece', onchange: () => pick(list.value) }), asked = make('label', { className: 'turning-group' }, make('span', {}, 'Piece'), list);
  tools.append(around, asked);
  const root = make('div', { className: 'turning fireplace-panel' }, tools, canvas, make('div', { className: 'turning-said' }, said, pointed), legend);
  el.append(root);

  function theme() {
    const all = model.get('themes'), asked = paper || model.get('theme');
    return all[asked] || all[dark() ? 'dark' : 'light'];
  }
  function paint(grain) {
    due = 0;
    const shown = model.get('shown'), step = model.get('step'), picked = model.get('picked');
    if (!canvas.clientWidth) return;
    const stands = shown.parts.map((p) => (building() ? p.step !== null && p.step <= step : !bare() || p.step !== null));
    const marked = shown.parts.map((p) => p.name === picked || (step > 0 && p.step === step && p.material !== 'mortar'));
    const body = bodies[cut] ||= unpack(shown, cut), box = shown.boxes[building() && aim === 'fireplace' ? 'set' : aim];
    const top = Math.max(...shown.parts.map((p, k) => (stands[k] && p.top ? p.top : -Infinity)));
    const framed = building() && aim === 'fireplace' ? growing(box, top) : box;
    name = draw(canvas, body, stands, marked, view, theme(), model.get('hatches'), framed, grain);
    canvas.dataset.step = step;
  }
  /** What a part is: of a piece its mark, what it is called, and its weight. */
  function words(part) {
    return part.mark ? `${part.name}, ${part.called}: ${part.weight[model.get('units')]}` : `${part.name}: ${part.material}`;
  }
  function pick(name) {
    model.set('picked', name);
    model.save_changes();
  }
  function onward(by) {
    const names = pieces().filter((p) => !building() || p.step <= model.get('step')).sort((a, b) => a.step - b.step).map((p) => p.name);
    const now = names.indexOf(model.get('picked'));
    if (names.length) pick(names[now < 0 ? (by > 0 ? 0 : names.length - 1) : (now + by + names.length) % names.length]);
  }
  function show() {
    view.turned = ((view.turned + 540) % 360) - 180;
    view.raised = Math.min(Math.max(view.raised, -30), 90);
    buttons.forEach(([button, on]) => button.setAttribute('aria-pressed', String(on())));
    around.hidden = !pieces().length || building();
    asked.hidden = !pieces().length;
    list.value = model.get('picked');
    const picked = pieces().find((p) => p.name === model.get('picked'));
    const told = picked ? words(picked) + (building() && picked.step > model.get('step') ? `, set in step ${picked.step}` : '') + '. ' : '';
    const sight = `${aim === 'whole' ? 'The whole' : 'The fireplace'}${cut ? `, ${cut} cut away` : ''}, seen ${whence(view)}` +
      (view.size === 1 ? '' : `, ${Number(view.size.toPrecision(2))} times as large`) +
      (building() ? `, after step ${model.get('step')}` : bare() ? ', the pieces alone' : '');
    canvas.setAttribute('aria-label', `${model.get('title')} in three dimensions. ${told}${sight}. Arrow keys turn it${
      pieces().length ? '; N and P pick the next piece and the one before' : ''}.`);
    if (!due) due = requestAnimationFrame(() => paint(1));
    clearTimeout(rest);
    rest = setTimeout(() => { said.textContent = `${told}${sight}.`; paint(Math.min(window.devicePixelRatio || 1, 2)); }, 160);
  }
  function key(materials) {
    legend.replaceChildren(...materials.map((m) => make('li', {}, swatch(m, theme(), model.get('hatches')[m]), m)));
  }
  function take() {
    const { parts } = model.get('shown');
    bodies = {};
    list.replaceChildren(make('option', { value: '', textContent: 'none' }),
      ...pieces().sort((a, b) => a.step - b.step).map((p) => make('option', { value: p.name, textContent: `${p.name}, ${p.called}` })));
    key([...new Set(parts.filter((p) => !building() || p.step !== null).map((p) => p.material))]);
    show();
  }
  const KEYS = {
    n: () => onward(1), p: () => onward(-1), Escape: () => pick(''),
    ArrowLeft: () => { view.turned -= 10; }, ArrowRight: () => { view.turned += 10; },
    ArrowUp: () => { view.raised += 10; }, ArrowDown: () => { view.raised -= 10; },
    PageUp: () => { view.lift += 0.08 / view.size; }, PageDown: () => { view.lift -= 0.08 / view.size; },
    Home: () => { view = start(); }, '+': () => scale(1.25), '=': () => scale(1.25), '-': () => scale(0.8),
    1: () => go('front'), 2: () => go('side'), 3: () => go('above'), 4: () => go('corner'),
  };
  root.addEventListener('keydown', (event) => {
    if (event.key !== 'Tab') event.stopPropagation();
    if (event.target !== canvas || !KEYS[event.key] || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    KEYS[event.key]();
    show();
  });
  let held = null, down = null;
  canvas.addEventListener('pointerdown', (event) => { held = down = [event.clientX, event.clientY]; canvas.setPointerCapture(event.pointerId); });
  canvas.addEventListener('pointermove', (event) => {
    const part = held ? null : name(event.offsetX, event.offsetY);
    pointed.textContent = part ? words(part) : '';
    if (!held) return;
    view.turned -= (event.clientX - held[0]) * 0.4;
    view.raised += (event.clientY - held[1]) * 0.3;
    held = [event.clientX, event.clientY];
    show();
  });
  canvas.addEventListener('pointerup', (event) => {
    if (!down || Math.hypot(event.clientX - down[0], event.clientY - down[1]) > 4) return;
    const part = name(event.offsetX, event.offsetY);
    if (part?.mark || model.get('picked')) pick(part?.mark ? part.name : '');
  });
  for (const kind of ['pointerup', 'pointercancel']) canvas.addEventListener(kind, () => { held = null; });
  const again = () => take(), printing = () => { paper = 'print'; paint(2); }, printed = () => { paper = ''; show(); };
  const size = new ResizeObserver(show), looks = new MutationObserver(again);
  size.observe(canvas);
  looks.observe(document.body, { attributes: true, attributeFilter: ['data-jp-theme-light'] });
  window.addEventListener('beforeprint', printing);
  window.addEventListener('afterprint', printed);
  model.on('change:shown change:theme', again);
  model.on('change:step change:picked change:units', show);
  take();
  return () => {
    size.disconnect(); looks.disconnect(); clearTimeout(rest); cancelAnimationFrame(due);
    window.removeEventListener('beforeprint', printing); window.removeEventListener('afterprint', printed);
    model.off('change:shown change:theme', again);
    model.off('change:step change:picked change:units', show);
  };
}

export default { render };
