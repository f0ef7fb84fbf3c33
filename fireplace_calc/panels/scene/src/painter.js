// The worker that paints coats, one after the other.
import { paintCoat } from './paint.js';

onmessage = ({ data: { key, coat } }) => {
  const { w, h, colour, relief } = paintCoat(coat);
  postMessage({ key, w, h, colour, relief }, [colour.buffer, relief.buffer]);
};
