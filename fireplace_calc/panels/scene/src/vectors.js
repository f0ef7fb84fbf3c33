// Three numbers as a point or a direction.

export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const minus = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const unit = (a) => { const long = Math.hypot(...a) || 1; return a.map((v) => v / long); };
/** One row of a table of points. */
export const row = (points, k) => [points[3 * k], points[3 * k + 1], points[3 * k + 2]];
/** A color of sRGB, `#rrggbb`, as linear light. */
export const linear = (hex) => [1, 3, 5].map((k) => { const v = parseInt(hex.slice(k, k + 2), 16) / 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
