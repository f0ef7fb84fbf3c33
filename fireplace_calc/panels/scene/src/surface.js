// How a stuff takes the light: color and relief of its coat, light from the atlas, the sun by its shadow map, soot, gloss.
import { Color, FrontSide, GLSL3, Matrix4, ShaderMaterial, Vector3, Vector4 } from 'three';

/** Uniforms that all surfaces share. */
export function sharedUniforms() {
  return {
    atlas: { value: null }, ways: { value: null }, atlasSize: { value: [1, 1] }, unlit: { value: 1 }, outside: { value: 0 },
    flame: { value: new Color(1, 0.38, 0.1) }, fire: { value: new Vector4(0, 0, 0, 1) }, lamp: { value: new Vector3() }, lampLight: { value: new Color(0, 0, 0) },
    sunWay: { value: new Vector3(0, 0, 1) }, sunLight: { value: new Color(0, 0, 0) }, sunMap: { value: null }, sunView: { value: new Matrix4() },
    panes: { value: [new Vector4(), new Vector4()] }, paneX: { value: 0 }, own: { value: new Vector4(1, 0, 0, 0) }, paneLight: { value: new Color(0, 0, 0) },
  };
}

const VERTEX = `
in vec4 along; uniform mat4 sunView;
#ifdef CORNERS
in vec4 glow; out vec4 vGlow;
#elif !defined(BARE)
in vec2 spot; out vec2 vSpot;
#endif
out vec3 vAt, vN, vT, vB; out vec2 vCoat;
void main() {
  vAt = (modelMatrix * vec4(position, 1.)).xyz; vN = normal; vT = along.xyz; vB = cross(normal, along.xyz) * along.w; vCoat = uv;
#ifdef CORNERS
  vGlow = glow;
#elif !defined(BARE)
  vSpot = spot;
#endif
  gl_Position = projectionMatrix * viewMatrix * vec4(vAt, 1.);
}`;

const UNLIT = 'mix(vec3(.30, .285, .27), vec3(.60, .62, .66), n.z * .5 + .5)'; // where no light has come yet, by which way a face looks
/** Tones alone: made at once where the whole takes long. */
const BARE = `uniform vec3 tone; in vec3 vN; out vec4 dot_; void main() { vec3 n = normalize(vN); dot_ = vec4(tone * ${UNLIT}, 1.); }`;

const FRAGMENT = `
uniform sampler2D atlas, ways, coat, relief; uniform highp sampler2D sunMap; uniform mat4 sunView;
uniform vec2 atlasSize; uniform float unlit, outside, rough, coated, selfLit; uniform vec3 flame, sunWay, sunLight, lamp, lampLight, paneLight, tone;
uniform vec4 fire, panes[2], own; uniform float paneX;
in vec3 vAt, vN, vT, vB; in vec2 vCoat;
#ifdef CORNERS
in vec4 vGlow;
#else
in vec2 vSpot;
#endif
out vec4 dot_;
float lot(vec2 p) { return fract(sin(dot(p, vec2(127.1, 311.7))) * 43758.5453); }
float cloud(vec2 p) { vec2 i = floor(p), f = p - i; f *= f * (3. - 2. * f); return mix(mix(lot(i), lot(i + vec2(1, 0)), f.x), mix(lot(i + vec2(0, 1)), lot(i + vec2(1, 1)), f.x), f.y); }
#ifdef SOOTY
vec3 sooted(vec3 c) {
  vec3 d = vAt - fire.xyz; float up = clamp(d.z / .8, 0., 1.), floor_ = step(.7, vN.z);
  float far = length(d.xy / vec2(fire.w * .75, .42)) - .6 * up + .35 * (cloud(vec2(vAt.x * 5. + vAt.y * 7., vAt.z * 4.)) - .5) + .12 * (cloud(vec2(vAt.x * 23., vAt.z * 21. + vAt.y * 19.)) - .5);
  float dark = (1. - smoothstep(.5, 1.7, far)) * mix(1.02, .6, floor_) * smoothstep(.01, .17, vAt.y);
  return mix(c, vec3(.016, .0145, .013), clamp(dark, 0., .975));
}
#endif
float sunshine() {
  vec4 p = sunView * vec4(vAt + vN * .006, 1.); vec3 q = p.xyz * .5 + .5;
  if (q.x < 0. || q.x > 1. || q.y < 0. || q.y > 1.) return outside;
  return texture(sunMap, q.xy).r + .0004 < q.z ? 0. : 1.;
}
void main() {
  vec3 N = normalize(vN), T = normalize(vT), B = normalize(vB), lean = vec3(0., 0., 1.), c = tone; float dull = rough;
  if (coated > 0.) {
    c = texture(coat, vCoat).rgb; vec4 r = texture(relief, vCoat);
    lean = (r.xyz * 255. - 128.) / 127.; lean.z = max(lean.z, .2); dull = r.a;
  }
#ifdef SOOTY
  if (outside == 0.) { c = sooted(c); dull = mix(dull, .95, .5); }
#endif
  vec3 n = normalize(T * lean.x + B * lean.y + N * lean.z), V = normalize(cameraPosition - vAt), light; vec4 E = vec4(0.), way = vec4(0.);
#ifdef CORNERS
  E = vGlow;
#else
  E = texture(atlas, vSpot / atlasSize); way = (texture(ways, vSpot / atlasSize) * 255. - 128.) / 42.;
#endif
  E.a /= 1. + 1.1 * E.a; // beside the fire the film gives way
  float day = clamp(lean.z + dot(lean.xy, way.xy), .15, 2.2), glow = clamp(lean.z + dot(lean.xy, way.zw), .1, 2.4);
  light = E.rgb * day + E.a * glow * flame;
  if (unlit + outside > 0.) light = ${UNLIT} * (outside > 0. ? 1. : unlit);
  if (sunLight.r > 0.) { float s = max(dot(n, sunWay), 0.) * step(.0, dot(N, sunWay)); if (s > 0.) light += sunLight * s * sunshine(); }
  vec3 seen = c * light;
#ifdef GLOSSY
  if (outside == 0.) {
    vec3 R = reflect(-V, n); float F = .04 + .96 * pow(1. - max(dot(n, V), 0.), 5.), sharp = 1. - dull; F *= sharp * sharp * 1.3;
    vec3 to = R, at = vAt - vec3(own.zw, 0.); to.xy = vec2(own.x * R.x - own.y * R.y, own.y * R.x + own.x * R.y); at.xy = vec2(own.x * at.x - own.y * at.y, own.y * at.x + own.x * at.y);
    if (to.x < -.01) { float t = (paneX - at.x) / to.x; vec2 h = at.yz + to.yz * t; float k = .04 + dull * .55 * t;
      for (int i = 0; i < 2; i++) { vec4 w = panes[i]; vec2 o = smoothstep(vec2(-k), vec2(k), h - w.xz) * smoothstep(vec2(-k), vec2(k), w.yw - h); seen += paneLight * F * o.x * o.y; } }
    vec3 toFire = fire.xyz + vec3(0., 0., .25) - vAt; float d = length(toFire), a = dot(R, toFire / d), wide = .25 / d + dull * .5;
    seen += flame * F * 5. * (1. - smoothstep(0., wide, acos(clamp(a, -1., 1.)))) * clamp(E.a * 25., 0., 1.);
    vec3 toLamp = lamp - vAt; d = length(toLamp); a = dot(R, toLamp / d); wide = .2 / d + dull * .45;
    seen += lampLight * F * 6. * (1. - smoothstep(0., wide, acos(clamp(a, -1., 1.))));
  }
#endif
  seen += selfLit * lampLight * c;
  dot_ = vec4(seen, 1.);
}`;

const GLOSS = 0.62; // duller than this shows nothing of what stands before it [-]

/** The surface of a stuff; `bare` is what can be shown first, until `wholly`. */
export function surfaceOf({ stuff, look, smooth }, shared, bare = false) {
  const defines = {};
  if (smooth) defines.CORNERS = 1;
  if (look.soot) defines.SOOTY = 1;
  if (look.rough < GLOSS) defines.GLOSSY = 1;
  const made = new ShaderMaterial({ vertexShader: VERTEX, fragmentShader: bare ? BARE : FRAGMENT, glslVersion: GLSL3, defines: bare ? { BARE: 1 } : defines, side: FrontSide, toneMapped: false });
  made.uniforms = {
    ...shared, coat: { value: null }, relief: { value: null }, coated: { value: 0 }, rough: { value: look.rough }, tone: { value: new Color(look.tones[0]) },
    selfLit: { value: /lamp|shade/.test(stuff) ? 1 : 0 },
  };
  made.userData.defines = defines;
  return made;
}

/** A bare surface as it is meant. */
export function wholly(material) {
  Object.assign(material, { fragmentShader: FRAGMENT, defines: material.userData.defines, needsUpdate: true });
}
