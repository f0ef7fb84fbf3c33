// The worker that paints coats, one after the other.
import { forget } from './noise.js';
import { paintCoat } from './paint.js';

const IDLE = 4000; // after so long without a coat what they are painted from is let go [ms]
let idle = 0;

onmessage = ({ data: { key, coat } }) => {
  clearTimeout(idle);
  const { w, h, colour, relief } = paintCoat(coat);
  postMessage({ key, w, h, colour, relief }, [colour.buffer, relief.buffer]);
  idle = setTimeout(forget, IDLE);
};
