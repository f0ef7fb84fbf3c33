// One ES module, nothing fetched at run time: npm ci, then node build.mjs. A file named `worker:./x.js` is bundled by
// itself and handed over as text, so that a worker starts without another file.
import { build } from 'esbuild';
import { copyFile, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const common = { bundle: true, minify: true, target: 'es2022', legalComments: 'none' };
const workers = {
  name: 'workers',
  setup(run) {
    run.onResolve({ filter: /^worker:/ }, ({ path }) => ({ path: here(`src/${path.slice('worker:./'.length)}`), namespace: 'worker' }));
    run.onLoad({ filter: /.*/, namespace: 'worker' }, async ({ path }) => {
      const made = await build({ ...common, entryPoints: [path], format: 'iife', write: false });
      return { contents: made.outputFiles[0].text, loader: 'text' };
    });
  },
};
const to = process.argv[2] || here('scene.js');
await build({ ...common, entryPoints: [here('src/index.js')], format: 'esm', outfile: to, plugins: [workers],
  banner: { js: '/* Built from src/ by build.mjs. Holds three, (c) three.js authors, MIT: see three-LICENSE. */' } });
if (!process.argv[2]) await copyFile(here('node_modules/three/LICENSE'), here('three-LICENSE'));
console.log(`${to}: ${gzipSync(await readFile(to), { level: 9 }).length} bytes gzipped`);
