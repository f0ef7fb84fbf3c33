// What is shown outside its room: edges ruled like a drawing's, what the knife laid bare hatched as on the section,
// and everything moved apart where it is drawn apart.
import { Color, EdgesGeometry, LineBasicMaterial, LineSegments, MeshBasicMaterial } from 'three';

const PAPER = 0.016; // so much of the fireplace is a millimeter of the section's hatch [m]
const LINE = 0.0028, DOT = 0.0045; // half a line, half a dot [m]
const SHARP = 24; // faces that meet at more show an edge [deg]
const INK = 0x2a2622;

/** Dress a mesh for a state outside the room: `hatches` are the kernel's, by material. */
export function dress(mesh, thing, hatches) {
  mesh.position.set(...(thing.away || [0, 0, 0]));
  if (thing.cut && hatches[thing.stuff]) {
    mesh.material.dispose();
    mesh.material = cutMaterial(hatches[thing.stuff]);
  }
  Object.assign(mesh.material, { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 }); // edges lie before their faces
  const edges = new LineSegments(new EdgesGeometry(mesh.geometry, SHARP), new LineBasicMaterial({ color: INK, transparent: true, opacity: thing.cut ? 0.9 : 0.45 }));
  edges.raycast = () => {}; // a hand picks what it sees, not its edge
  mesh.add(edges);
}

/** Give back what `dress` made. */
export function undress(mesh) {
  for (const edges of mesh.children) { edges.geometry.dispose(); edges.material.dispose(); }
  mesh.clear();
}

/** A material hatched in the plane of the knife, right at any distance: lines at angles, in pairs, or dots. */
export function cutMaterial({ angles, gap, pair, dots, tone, ink }) {
  const made = new MeshBasicMaterial({ color: tone }), step = gap * PAPER, number = (v) => v.toFixed(6);
  const starts = pair ? [0, pair * PAPER] : [0];
  const lines = angles.flatMap((angle) => {
    const [s, c] = [Math.sin(angle * Math.PI / 180), Math.cos(angle * Math.PI / 180)];
    return starts.map((start) => `ink = max(ink, line(dot(p, vec2(${number(-s)}, ${number(c)})) + ${number(start)}, ${number(step)}));`);
  });
  if (dots) lines.push(`ink = max(ink, dotted(p, ${number(step)}));`);
  const color = new Color(ink);
  made.onBeforeCompile = (shader) => {
    shader.vertexShader = `varying vec2 vCut;\n${shader.vertexShader}`.replace('#include <begin_vertex>', '#include <begin_vertex>\nvCut = position.yz;');
    shader.fragmentShader = `varying vec2 vCut;
float soft(float far, float half_) { float w = fwidth(far); return 1. - smoothstep(half_ - w, half_ + w, far); }
float line(float t, float gap) { return soft(abs(t - gap * round(t / gap)), ${number(LINE)}); }
float dotted(vec2 p, float gap) { float row = round(p.y / gap), x = p.x + gap * .5 * mod(row, 2.);
  return soft(length(vec2(x - gap * round(x / gap), p.y - gap * row)), ${number(DOT)}); }
float laid(vec2 p) { float ink = 0.; ${lines.join(' ')} return ink; }
${shader.fragmentShader}`.replace('#include <color_fragment>', `#include <color_fragment>
diffuseColor.rgb = mix(diffuseColor.rgb, vec3(${[color.r, color.g, color.b].map(number).join(', ')}), .62 * laid(vCut));`);
  };
  made.customProgramCacheKey = () => JSON.stringify([angles, gap, pair, dots, ink]);
  return made;
}
