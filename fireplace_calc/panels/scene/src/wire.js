// Bytes of the kernel into numbers.

/** A run of bytes as numbers of a kind. */
export function opened(view, Kind) {
  return new Kind(view.buffer.slice(view.byteOffset, view.byteOffset + view.byteLength));
}

const FEW = 256; // corners that one byte counts
const KEPT = 16; // a form that so many messages have not named is let go

/** Things as they stand: each with its corners [m] and its faces. A form is sent once however often it stands, and
    named from then on: `held` keeps those that came before, and those of what stays for as long as it stays. A thing
    whose form is not there is left out. */
export function openThings(packed, held = new Map(), stays = false) {
  const taken = (view, from, count, Kind) => opened(new DataView(view.buffer, view.byteOffset + from, count * Kind.BYTES_PER_ELEMENT), Kind);
  const feet = opened(packed.at, Float32Array);
  let point = 0, face = 0;
  packed.sizes.forEach(([corners, count, step], k) => {
    const points = taken(packed.points, point, 3 * corners, step ? Int16Array : Float32Array), faces = taken(packed.faces, face, 3 * count, corners > FEW ? Uint16Array : Uint8Array);
    held.set(packed.forms[k], { points: step ? Float32Array.from(points, (v) => v * step) : points, faces: Uint16Array.from(faces) });
    point += points.byteLength; face += faces.byteLength;
  });
  const now = held.tick = (held.tick || 0) + 1;
  if (stays) {
    for (const name of held.stays || []) if (held.has(name)) held.get(name).named = now; // it may follow the fireplace from now on
    held.stays = new Set(packed.form);
  }
  const things = packed.key.map((key, k) => {
    const form = held.get(packed.form[k]), at = feet.subarray(3 * k, 3 * k + 3);
    if (!form) return null;
    form.named = now;
    return {
      key, name: packed.name[k], stuff: packed.stuff[k], kind: packed.kind[k], part: packed.part[k], item: packed.item[k],
      smooth: packed.smooth[k], away: packed.away[k], step: packed.step[k], cut: packed.cut[k],
      points: Float32Array.from(form.points, (v, i) => v + at[i % 3]), faces: form.faces,
    };
  });
  for (const [name, form] of held) if (now - form.named > KEPT && !held.stays?.has(name)) held.delete(name);
  return things.filter(Boolean);
}

/** Layouts in their order, with the outline of every unit [m]; `held` keeps the patterns that came before, by key. */
export function openLayouts(packed, held) {
  for (const [key, made] of Object.entries(packed.patterns)) {
    if (held.has(key)) continue;
    const counts = opened(made.counts, Uint16Array), steps = opened(made.rings, Int16Array), rings = [];
    let from = 0;
    for (const corners of counts) {
      rings.push(Float32Array.from(steps.subarray(2 * from, 2 * (from + corners)), (v) => v * made.step));
      from += corners;
    }
    held.set(key, { ...made, key, rings });
  }
  const all = packed.laid.map((pattern, k) => ({ ...held.get(pattern), pattern, ...Object.fromEntries(['origin', 'along', 'up', 'normal', 'things'].map((name) => [name, packed[name][k]])) }));
  return all.filter(({ pattern }) => held.has(pattern));
}
