// The film's curve in numbers, for pictures that no graphics card develops; the same as in film.js.

const REC = [0.6274, 0.3293, 0.0433, 0.0691, 0.9195, 0.0113, 0.0164, 0.088, 0.8956];
const BACK = [1.6605, -0.5876, -0.0728, -0.1246, 1.1329, -0.0083, -0.0182, -0.1006, 1.1187];
const INSET = [0.856627153315983, 0.0951212405381588, 0.0482516061458583, 0.137318972929847, 0.761241990602591, 0.101439036467562, 0.11189821299995, 0.0767994186031903, 0.811302368396859];
const OUTSET = [1.1271005818144368, -0.11060664309660323, -0.016493938717834573, -0.1413297634984383, 1.157823702216272, -0.016493938717834257, -0.14132976349843826, -0.11060664309660294, 1.2519364065950405];

const by = (m, r, g, b) => [m[0] * r + m[1] * g + m[2] * b, m[3] * r + m[4] * g + m[5] * b, m[6] * r + m[7] * g + m[8] * b];
const hold = (v) => Math.min(1, Math.max(0, v));

function curve(v) {
  const x = hold((Math.log2(Math.max(v, 1e-10)) + 12.47393) / 16.5), x2 = x * x, x4 = x2 * x2;
  return 15.5 * x4 * x2 - 40.14 * x4 * x + 31.96 * x4 - 6.868 * x2 * x + 0.4298 * x2 + 0.1191 * x - 0.00232;
}

const encoded = (v) => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);

/** Light as it falls on the film, times its exposure, as bytes of sRGB into `to` from `k`. `plain`: without the curve. */
export function develop(r, g, b, plain, to, k) {
  let c = [r, g, b];
  if (!plain) {
    c = by(INSET, ...by(REC, r, g, b)).map(curve);
    c = by(BACK, ...by(OUTSET, ...c).map((v) => Math.max(v, 0) ** 2.2)).map((v) => hold(v) ** 1.14 * 1.08);
    const gray = 0.25 * c[0] + 0.6 * c[1] + 0.15 * c[2];
    c = c.map((v) => Math.max(0, gray + 1.2 * (v - gray)));
  }
  for (let a = 0; a < 3; a++) to[k + a] = 255 * encoded(hold(c[a])) + 0.5;
  to[k + 3] = 255;
}
