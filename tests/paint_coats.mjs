// Paints coats as the page does and hands them over: jobs as JSON on standard input; the folder for the results is named.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { paintCoat } from '../fireplace_calc/panels/scene/src/paint.js';

const [folder] = process.argv.slice(2);
const sizes = {};
for (const [name, job] of Object.entries(JSON.parse(readFileSync(0, 'utf8')))) {
  const coat = paintCoat({ ...job, rings: (job.rings || []).map((ring) => new Float32Array(ring.flat())) });
  writeFileSync(`${folder}/${name}.colour`, coat.colour);
  writeFileSync(`${folder}/${name}.relief`, coat.relief);
  sizes[name] = [coat.w, coat.h, createHash('sha256').update(coat.colour).update(coat.relief).digest('hex')];
}
console.log(JSON.stringify(sizes));
