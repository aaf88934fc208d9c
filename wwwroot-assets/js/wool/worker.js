// Paints away from the page. What is asked last is painted; an older picture that is still being painted is dropped.
import { Painter } from './paint.js';

let painter = null, laying = null, asked = 0;
const pause = () => new Promise(done => setTimeout(done));

async function run(steps, mine) {
  for (let step = steps.next(), since = performance.now(); ; step = steps.next()) {
    if (step.done) return step.value;
    if (performance.now() - since > 12) {
      await pause();
      if (mine !== asked) return null;
      since = performance.now();
    }
  }
}

async function work({ model, view, quick, flat }) {
  const mine = ++asked;
  if (model) {
    painter = new Painter(model);
    laying = null;
  }
  if (view) {
    const since = performance.now(), sheet = quick ? painter.paint(view, true) : await run(painter.painting(view), mine);
    if (!sheet) return;
    postMessage({ ...sheet, view, quick: !!quick, ms: performance.now() - since }, [sheet.pixels.buffer, sheet.areas.buffer]);
  }
  // Laying flat goes on from where it was left.
  if (flat) laying ??= painter.laying();
  if (laying) await run(laying, mine);
}

onmessage = ({ data }) => work(data);
