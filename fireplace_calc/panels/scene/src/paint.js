// How a coat is painted: a layout and a stuff in, color, relief and roughness out. Runs in a worker; the same every time.

import { paintBricks, paintPlainUnits, paintStones } from './bricks.js';
import { seedOf } from './noise.js';
import { finish, sheet } from './sheet.js';
import { paintHide, paintPainted, paintPile, paintPlain, paintTroweled, paintWeave } from './soft.js';
import { paintBark, paintBoards, paintEndGrain } from './woods.js';

/** By the stuff's painter: what paints it, with what, and how its hollows are shaded. */
const PAINTERS = {
  brick: [paintBricks, {}, [0.006, 0.008, 0.22]],
  stone: [paintStones, {}, [0.016, 0.014, 0.42]],
  block: [paintPlainUnits, { sand: 1.4, pits: 1.05, wobble: 0.001 }, [0.006, 0.008]],
  tile: [paintPlainUnits, { glaze: 1, sand: 0.12, wobble: 0.0003 }, [0.003, 0.005]],
  flag: [paintPlainUnits, { sand: 0.7, worn: 1, wobble: 0.002 }, [0.01, 0.01, 0.15]],
  slab: [paintPlainUnits, { sand: 1.2, worn: 0.6, cloudy: 0.9 }, [0.01, 0.01]],
  cast: [paintPlainUnits, { sand: 0.9, pits: 1.35 }, [0.005, 0.006]],
  board: [paintBoards, {}, [0.002, 0.003]],
  wood: [paintBoards, {}, [0.002, 0.003]],
  bark: [paintBark, {}, [0.008, 0.008]],
  endgrain: [paintEndGrain, {}, [0.003, 0.004]],
  trowel: [paintTroweled, {}, [0.02, 0.006, 0.25]],
  mortar: [paintPlain, {}, [0.004, 0.004]],
  paint: [paintPainted, {}, [0.01, 0.02]],
  metal: [paintPlain, { sand: 0.3 }, [0.01, 0.02]],
  pile: [paintPile, {}, [0.006, 0.006]],
  weave: [paintWeave, {}, [0.003, 0.002]],
  hide: [paintHide, {}, [0.004, 0.004]],
  plain: [paintPlain, { sand: 0.2 }, [0.01, 0.02]],
};
/** Stuffs that are painted otherwise than their painter's usual way. */
const OWN = { firebrick: { worn: 0.45, streak: 0.4 } };

/**
 * Paints one coat.
 * @param {object} coat
 *   stuff: a row of stuffs (name, painter, tones, vary, joint, recess, relief, arris, rough, dots, patch; lengths in m);
 *   width, height [m] of what is painted, from the layout, else the stuff's patch;
 *   rings: Float32Array each, two numbers a corner [m], counter-clockwise;
 *   repeats: whether what reaches over an end comes again at the other;
 *   joint: color of the joints where it is not the stuff's own; dots: as fine as wanted [1/m], else the stuff's.
 * @returns {{w: number, h: number, colour: Uint8Array, relief: Uint8Array}}
 *   colour: sRGB and 255; relief: normal (x right, y up, z out) times 127 and 128 more, and roughness. The first row is the
 *   lowest. Both come again to all sides.
 */
export function paintCoat({ stuff, width, height, rings = [], joint, dots, repeats = true }) {
  const coat = { ...stuff, width: width || stuff.patch, height: height || stuff.patch, rings, repeats, joint: joint || stuff.joint, dots: dots || stuff.dots };
  const [paint, usual, hollows] = PAINTERS[stuff.painter] || PAINTERS.plain, s = sheet(coat);
  paint(s, coat, { ...usual, ...OWN[stuff.name], seed: seedOf(stuff.name) & ~15 });
  return finish(s, ...hollows);
}
