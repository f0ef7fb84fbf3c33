// The room's own axes: those of the fireplace, but where it stands across a corner. Then their nought is the corner that
// is cut off, the first runs along the wall at the right, the second, negative, along the wall at the left. The wall with
// the windows has axes too: into the room, and along it.

const HALF = Math.SQRT1_2; // sine and cosine of 45 degrees

const cut = ({ left, right, wall }) => [(left + right) / 2, wall + (right - left) / 2];

/** A place in the room's own axes. [m] */
export function ownOf({ corner }, at) {
  if (!corner) return at;
  const [a, b] = cut(corner), x = at[0] - a, y = at[1] - b;
  return [HALF * (x - y), HALF * (x + y), at[2]];
}

/** A place of the room's own axes in those of the fireplace. [m] */
export function fireOf({ corner }, [x, y, z]) {
  if (!corner) return [x, y, z];
  const [a, b] = cut(corner);
  return [a + HALF * (x + y), b + HALF * (y - x), z];
}

/** How the axes of the wall with the windows are turned, cosine and sine; where their nought lies, and its face. [m] */
function lit({ window_wall: wall, left }) {
  if (!wall) return { c: 1, s: 0, x: 0, y: 0, plane: left };
  const turn = wall.turn * Math.PI / 180;
  return { c: Math.cos(turn), s: Math.sin(turn), ...wall };
}

/** A direction of those axes in the fireplace's. */
export function turned(room, [x, y, z]) {
  const { c, s } = room ? lit(room) : { c: 1, s: 0 };
  return [c * x - s * y, s * x + c * y, z];
}

/** A place so far off the wall with the windows, and along it. [m] */
export function atWindows(room, off, along, up) {
  const { x, y, plane } = lit(room), [a, b] = turned(room, [plane + off, along, up]);
  return [x + a, y + b, up];
}

/** What a shader needs to turn into those axes: cosine, sine, nought; and the face of the wall. */
export function paneAxes(room) {
  const { c, s, x, y, plane } = lit(room);
  return { axes: [c, -s, x, y], plane };
}
