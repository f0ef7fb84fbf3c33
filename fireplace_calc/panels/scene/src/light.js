// The worker that follows light through the room: traced once, answered again for each hour.
import { relit } from './relight.js';
import { samplesOf } from './samples.js';
import { Traced } from './trace.js';
import { treeOf } from './tree.js';

const PAUSE = 40, FIRST = 7, SORTED = 4; // let messages in so often [ms]; the first light is shown after so many rays; after so many who need no light is left out
let traced = null, hour = null, run = 0, tracing = false;

const breath = () => new Promise((done) => { const channel = new MessageChannel(); channel.port1.onmessage = done; channel.port2.postMessage(0); });

function tell(complete) {
  if (!traced || !hour) return;
  const began = performance.now(), { atlas, corners, ways } = relit(traced, hour);
  postMessage({ serial: traced.job.serial, complete, atlas, corners, ways, samples: traced.live.length, relit: performance.now() - began, traced: began - traced.began }, [atlas.buffer, corners.buffer, ways.buffer]);
}

/** Rays from all samples in turns; who lies inside something is left out after the first few. */
async function trace(job) {
  const mine = ++run, began = performance.now(), made = new Traced(job, samplesOf(job), treeOf(job.tri));
  made.began = began;
  tracing = true;
  let last = performance.now();
  const goOn = async () => {
    if (performance.now() - last > PAUSE) { await breath(); last = performance.now(); }
    return mine === run;
  };
  const most = made.rays.reduce((a, b) => Math.max(a, b), 0);
  for (let k = 0; k < most; k++) {
    if (k === SORTED) {
      made.cleared();
      for (const [i, s] of made.live.entries()) { made.straight(s); if ((i & 63) === 0 && !await goOn()) return; }
    }
    for (const [i, s] of made.live.entries()) {
      if (made.done[s] < made.rays[s]) made.ray(s);
      if ((i & 127) === 0 && !await goOn()) return;
    }
    if (k === FIRST) { traced = made; tell(false); last = performance.now(); }
  }
  traced = made;
  tracing = false;
  tell(true);
}

onmessage = ({ data }) => {
  if (data.stop) { run++; tracing = false; }
  if (data.job) trace(data.job);
  if (data.hour) { hour = data.hour; if (!data.job) tell(!tracing); }
};
