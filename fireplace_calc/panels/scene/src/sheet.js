// A coat while it is painted: height, color and roughness of every dot, and how they become what a material needs.

export const MOST = 2048;

/** An empty coat of one tone. */
export function sheet(coat) {
  const w = Math.max(Math.min(Math.round(coat.width * coat.dots), MOST), 8), h = Math.max(Math.min(Math.round(coat.height * coat.dots), MOST), 8);
  const made = { w, h, sx: w / coat.width, sy: h / coat.height, height: new Float32Array(w * h), color: new Uint8ClampedArray(w * h * 4), rough: new Uint8ClampedArray(w * h) };
  made.rough.fill(coat.rough * 255);
  return made;
}

/** A color as three numbers. */
export function rgb(text) {
  return [1, 3, 5].map((k) => parseInt(text.slice(k, k + 2), 16));
}

/** One dot: a tone, lighter or darker by a factor. */
export function put(s, i, tone, factor) {
  const c = s.color, k = i * 4;
  c[k] = tone[0] * factor;
  c[k + 1] = tone[1] * factor;
  c[k + 2] = tone[2] * factor;
}

/**
 * Relief from the heights, hollows a little darker than what stands out.
 * @param {object} s sheet
 * @param {number} reach how far a hollow is shaded by what stands round it [m]
 * @param {number} depth of a hollow that is shaded most [m]
 * @param {number} form how much lighter is what leans up than what leans down: a room's light comes from above more than from
 *   below, and near a face that is all the light from one side there is
 */
export function finish(s, reach = 0.006, depth = 0.008, form = 0) {
  const { w, h, height, color, rough } = s, relief = new Uint8Array(w * h * 4), r = Math.max(Math.round(reach * s.sx), 1);
  const kx = s.sx / 2, ky = s.sy / 2, shade = 0.34 / depth;
  for (let y = 0, i = 0; y < h; y++) {
    const up = (y + 1 === h ? 0 : y + 1) * w, down = (y === 0 ? h - 1 : y - 1) * w, far = ((y + r) % h) * w, near = ((y - r + h) % h) * w;
    for (let x = 0; x < w; x++, i++) {
      const right = x + 1 === w ? 0 : x + 1, left = x === 0 ? w - 1 : x - 1, here = height[i];
      const nx = (height[y * w + left] - height[y * w + right]) * kx, ny = (height[down + x] - height[up + x]) * ky;
      const long = 127 / Math.sqrt(nx * nx + ny * ny + 1), k = i * 4;
      relief[k] = 128 + nx * long;
      relief[k + 1] = 128 + ny * long;
      relief[k + 2] = 128 + long;
      relief[k + 3] = rough[i];
      // What stands over a hollow shades it twice as much as what stands beside it.
      const a = height[far + x] - here, b = height[near + x] - here, c = height[y * w + (x + r) % w] - here, d = height[y * w + (x - r + w) % w] - here;
      const dark = ((a > 0 ? 2 * a : a * 0.25) + (b > 0 ? b : b * 0.25) + (c > 0 ? c : c * 0.25) + (d > 0 ? d : d * 0.25)) * 0.2 * shade, f = (1 - Math.min(Math.max(dark, -0.08), 0.5)) * (1 + form * Math.min(Math.max(ny * long / 127, -0.7), 0.7));
      color[k] *= f;
      color[k + 1] *= f;
      color[k + 2] *= f;
      color[k + 3] = 255;
    }
  }
  return { w, h, colour: new Uint8Array(color.buffer), relief };
}
