// Bytes of the kernel into numbers.

/** A run of bytes as numbers of a kind. */
export function opened(view, Kind) {
  return new Kind(view.buffer.slice(view.byteOffset, view.byteOffset + view.byteLength));
}

/** Things as they stand: each with its corners [m] and its faces; a form is sent once however often it stands. */
export function openThings(packed) {
  const points = opened(packed.points, Float32Array), faces = opened(packed.faces, Uint16Array);
  const forms = [];
  let corner = 0, face = 0;
  for (const [corners, count] of packed.sizes) {
    forms.push({ points: points.subarray(3 * corner, 3 * (corner + corners)), faces: faces.subarray(3 * face, 3 * (face + count)) });
    corner += corners; face += count;
  }
  return packed.key.map((key, k) => {
    const { points: own, faces: joined } = forms[packed.form[k]];
    const at = packed.at.slice(3 * k, 3 * k + 3);
    return {
      key, name: packed.name[k], stuff: packed.stuff[k], kind: packed.kind[k], part: packed.part[k], item: packed.item[k],
      smooth: packed.smooth[k], away: packed.away[k], step: packed.step[k], cut: packed.cut[k],
      points: Float32Array.from(own, (v, i) => v + at[i % 3]), faces: joined,
    };
  });
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
  return packed.laid.filter(({ pattern }) => held.has(pattern)).map((laid) => ({ ...held.get(laid.pattern), ...laid }));
}
