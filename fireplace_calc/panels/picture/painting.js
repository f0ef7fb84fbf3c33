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
    const wide = width * dots, odd = Math.ceil(wide) % 2 ? 0.5 : 0;
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

function paintLetters(context, sheet, glyphs, x0, y0, dots) {
  const inks = new Map(), [left, bottom] = sheet.box;
  for (const label of sheet.labels) {
    if (!inks.has(label[6])) inks.set(label[6], []);
    inks.get(label[6]).push(label);
  }
  for (const [ink, labels] of inks) {
    context.beginPath();
    for (const [x, y, text, size, turned, bold] of labels) {
      const m = size * dots / 1000, from = x0 + (x - left) * dots, base = y0 - (y - bottom) * dots;
      let along = 0;
      for (const letter of text) {
        const glyph = glyphs[(bold ? 'b' : 'r') + letter] || glyphs['r?'];
        for (let g = 1; g < glyph.length; g++) {
          const ring = glyph[g];
          for (let i = 0; i < ring.length; i += 2) {
            const u = (along + ring[i]) * m, v = ring[i + 1] * m;
            const across = turned ? from - v : from + u, down = turned ? base - u : base - v;
            if (i) context.lineTo(across, down); else context.moveTo(across, down);
          }
        }
        along += glyph[0];
      }
    }
    context.fillStyle = ink;
    context.fill();
  }
}
