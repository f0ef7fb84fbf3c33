// A sheet of lines and letters on a canvas, sharp at whatever size and density the canvas has.
// Written for `fireplace_calc/drawing/page`, which says what is in a message.

/** Points and runs of a sheet, unpacked once; `view` is a DataView of the message's bytes. */
function unpackSheet(told, view) {
  let { buffer, byteOffset: at } = view;
  if (at % 2) { // a typed array begins at an even address
    buffer = buffer.slice(at, at + view.byteLength);
    at = 0;
  }
  const points = new Int16Array(buffer, at, 2 * told.count);
  const runs = new Uint16Array(buffer, at + 4 * told.count, (view.byteLength - 4 * told.count) / 2);
  return { ...told, points, runs };
}

/** Draw a sheet into the middle of a canvas, as large as it goes. */
function paintSheet(canvas, sheet, glyphs, paper) {
  const [, , wide, high] = sheet.box, context = canvas.getContext('2d', { alpha: false });
  const dots = Math.min(canvas.width / wide, canvas.height / high);
  const x0 = (canvas.width - wide * dots) / 2, y0 = (canvas.height + high * dots) / 2;
  context.fillStyle = paper;
  context.fillRect(0, 0, canvas.width, canvas.height);
  paintLines(context, sheet, x0, y0, dots);
  paintLetters(context, sheet, sheet.glyphs ? { ...glyphs, ...sheet.glyphs } : glyphs, x0, y0, dots);
}

function paintLines(context, sheet, x0, y0, dots) {
  const { points, runs, grain } = sheet, k = dots / grain, [left, bottom] = sheet.box;
  context.miterLimit = 4;
  context.lineJoin = 'miter';
  let p = 0, r = 0;
  for (const [face, edge, width, dashes, cap, crisp, clip, count, each] of sheet.pens) {
    // the dots that a line fills: one at least, and one and a faint edge before two gray ones
    const wide = width * dots, odd = Math.max(1, Math.round(wide)) % 2 ? 0.5 : 0;
    if (clip) {
      context.save();
      context.beginPath();
      context.rect(x0 + (clip[0] - left) * dots, y0 - (clip[3] - bottom) * dots,
        (clip[2] - clip[0]) * dots, (clip[3] - clip[1]) * dots);
      context.clip();
    }
    context.beginPath();
    for (let run = 0; run < count; run++) {
      for (let n = each || runs[r++], first = true; n > 0; n--, p += 2, first = false) {
        let x = x0 + points[p] * k, y = y0 - points[p + 1] * k;
        if (crisp) {
          x = Math.floor(x + 0.5) + odd;
          y = Math.floor(y + 0.5) + odd;
        }
        if (first) context.moveTo(x, y); else context.lineTo(x, y);
      }
    }
    if (face) {
      context.fillStyle = face;
      context.fill();
    }
    if (edge) {
      context.strokeStyle = edge;
      context.lineWidth = wide;
      context.lineCap = cap;
      context.setLineDash(dashes ? dashes.map((length) => length * dots) : []);
      context.stroke();
    }
    if (clip) context.restore();
  }
}

/** Words as dots, by what they are and how they lie between two dots: letters cost more than all lines of a sheet. */
const words = new Map();
const WORDS = 1000;

/** Words: painted letter by letter the first time, kept as dots from the second on. */
function paintLetters(context, sheet, glyphs, x0, y0, dots) {
  const [left, bottom] = sheet.box;
  for (const [x, y, text, size, turned, bold, ink] of sheet.labels) {
    // to a quarter of a dot, so that dots that are kept do for many places
    const across = Math.round(4 * (x0 + (x - left) * dots)), down = Math.round(4 * (y0 - (y - bottom) * dots));
    const word = { text, turned, glyphs, bold, ink, scale: size * dots / 1000, u: (across & 3) / 4, v: (down & 3) / 4 };
    const key = [word.scale.toFixed(7), word.u, word.v, turned, bold, ink, text].join();
    let kept = words.get(key);
    if (kept === null) words.set(key, kept = keptWord(word));
    if (kept === undefined) {
      if (words.size >= WORDS) words.clear();
      words.set(key, null);
    }
    if (kept) context.drawImage(kept.dots, (across >> 2) + kept.left, (down >> 2) + kept.top);
    else paintWord(context, word, across >> 2, down >> 2);
  }
}

/** Rings of a word's letters, in dots from where it begins. */
function* ringsOf({ text, turned, bold, glyphs, scale, u, v }) {
  let along = 0;
  for (const letter of text) {
    const glyph = glyphs[(bold ? 'b' : 'r') + letter] || glyphs['r?'];
    for (const ring of glyph.slice(1)) {
      const places = [];
      for (let i = 0; i < ring.length; i += 2) {
        const on = (along + ring[i]) * scale, up = ring[i + 1] * scale;
        places.push(turned ? u - up : u + on, turned ? v - on : v - up);
      }
      yield places;
    }
    along += glyph[0];
  }
}

function paintWord(context, word, left, top) {
  context.beginPath();
  for (const ring of ringsOf(word)) {
    for (let i = 0; i < ring.length; i += 2) {
      if (i) context.lineTo(left + ring[i], top + ring[i + 1]); else context.moveTo(left + ring[i], top + ring[i + 1]);
    }
  }
  context.fillStyle = word.ink;
  context.fill();
}

/** A word as dots, and where they lie from where it begins; false where there are none, or no way to keep them. */
function keptWord(word) {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of ringsOf(word)) {
    for (let i = 0; i < ring.length; i += 2) {
      left = Math.min(left, ring[i]);
      right = Math.max(right, ring[i]);
      top = Math.min(top, ring[i + 1]);
      bottom = Math.max(bottom, ring[i + 1]);
    }
  }
  if (!(right > left) || typeof OffscreenCanvas === 'undefined') return false;
  left = Math.floor(left) - 1;
  top = Math.floor(top) - 1;
  const canvas = new OffscreenCanvas(Math.ceil(right) + 1 - left, Math.ceil(bottom) + 1 - top);
  paintWord(canvas.getContext('2d'), word, -left, -top);
  return { dots: canvas.transferToImageBitmap(), left, top };
}
