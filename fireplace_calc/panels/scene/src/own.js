// The room's own axes: those of the fireplace, but where it stands across a corner. Then their nought is the corner that
// is cut off, the first runs along the wall at the right, the second, negative, along the wall at the left.

const HALF = Math.SQRT1_2; // sine and cosine of 45 degrees

const cut = ({ left, right, wall }) => [(left + right) / 2, wall + (right - left) / 2];

/** A place in the room's own axes. [m] */
export function ownOf(room, at) {
  if (!room.corner) return at;
  const [a, b] = cut(room.corner), x = at[0] - a, y = at[1] - b;
  return [HALF * (x - y), HALF * (x + y), at[2]];
}

/** A direction of the room's own axes in those of the fireplace. */
export const turned = (room, [x, y, z]) => (room?.corner ? [HALF * (x + y), HALF * (y - x), z] : [x, y, z]);

/** A place of the room's own axes in those of the fireplace. [m] */
export function fireOf(room, at) {
  if (!room.corner) return at;
  const [a, b] = cut(room.corner), [x, y, z] = turned(room, at);
  return [x + a, y + b, z];
}

/** How the axes are turned, cosine and sine, and where their nought lies. */
export const axesOf = (room) => (room.corner ? [HALF, HALF, ...cut(room.corner)] : [1, 0, 0, 0]);
