// A hat one can turn. The element holds the program's picture of it; from the first touch on, this paints the same hat, turned.
//
//   const hat = mountWool(element, model, { label, front, sides, dark, dragTurns, yaw, tilt });
//   hat.turn(angle)  hat.look('front' | 'half' | 'above')  hat.bringToFront(area)  hat.light(area or null)
//   hat.areaAt(clientX, clientY)  hat.change(model)  hat.stop()
//
// It tells the element: wool-front { area, words } when another part comes to the front, wool-over { area } under the pointer,
// wool-tap { area, parts } on a tap. Areas are named as in the model: "stripe 3", "braid 1", "brim".
const ROUND = Math.PI * 2, STEP = ROUND / 12, NOTHING = 255;
const TILTS = { front: 17 * Math.PI / 180, half: 50 * Math.PI / 180, above: 76 * Math.PI / 180 };
const LONGEST = 60, QUICKEST = 30, DIMMED = 0.38;

const clamp = (x, low, high) => Math.min(high, Math.max(low, x));

export function mountWool(element, model, options = {}) {
  return new Wool(element, model, options);
}

class Wool {
  constructor(element, model, options) {
    this.element = element;
    this.options = { label: 'Turn the hat', front: 'in front: ', sides: ['front', 'right side', 'back', 'left side'], dragTurns: true, ...options };
    this.yaw = options.yaw ?? -0.26;
    this.tilt = options.tilt ?? TILTS.front;
    this.resolution = 1;
    this.lit = null;
    this.busy = this.stale = false;
    this.worker = new Worker(new URL('./wool/worker.js', import.meta.url), { type: 'module' });
    this.worker.onmessage = ({ data }) => this.painted(data);
    this.canvas = document.createElement('canvas');
    this.canvas.setAttribute('aria-hidden', 'true');
    this.canvas.className = 'wool-canvas';
    this.canvas.hidden = true;
    element.append(this.canvas);
    this.listening = new AbortController();
    this.listen();
    this.change(model);
  }

  // Another hat, or the same with other yarn; the view stays.
  change(model) {
    this.model = model;
    this.rows = model.areas.flatMap((a, i) => Array(a.rows).fill(i));
    this.worker.postMessage({ model });
    this.flat = false;
    if (!this.canvas.hidden) this.settle();
    this.tell(true);
  }

  stop() {
    this.listening.abort();
    this.worker.terminate();
    this.canvas.remove();
    clearTimeout(this.settling);
  }

  turn(angle) {
    this.go(this.yaw + angle, this.tilt);
  }

  look(name) {
    this.go(this.yaw, TILTS[name]);
  }

  bringToFront(name) {
    const at = this.model.areas.findIndex(a => a.name === name);
    if (at < 0) return;
    const rows = this.rows.flatMap((a, i) => (a === at ? [i] : [])), middle = rows.length ? (rows[0] + rows.length / 2) / this.rows.length : 0;
    if (this.model.sideways && rows.length) this.go((0.5 - middle) * ROUND, Math.min(this.tilt, TILTS.half));
    else this.go(this.yaw, rows.length && middle > 0.55 ? TILTS.front + (TILTS.above - TILTS.front) * (middle - 0.55) / 0.45 : TILTS.front);
  }

  light(name) {
    const at = name === null ? null : this.model.areas.findIndex(a => a.name === name);
    this.lit = at === -1 ? null : at;
    if (this.sheet) this.show();
    else if (this.lit !== null) this.settle();
  }

  // The area at a place of the window; null where no wool is, or before anything was painted.
  areaAt(x, y) {
    const { map } = this, box = this.element.getBoundingClientRect();
    if (!map || !box.width) return null;
    const i = Math.floor((x - box.left) / box.width * map.width), j = Math.floor((y - box.top) / box.height * map.height);
    const at = i < 0 || j < 0 || i >= map.width || j >= map.height ? NOTHING : map.areas[j * map.width + i];
    return at === NOTHING ? null : this.model.areas[at].name;
  }

  // ---- turning
  go(yaw, tilt) {
    tilt = clamp(tilt, 4 * Math.PI / 180, 80 * Math.PI / 180);
    const from = [this.yaw, this.tilt], by = yaw - this.yaw - ROUND * Math.round((yaw - this.yaw) / ROUND), began = performance.now();
    cancelAnimationFrame(this.moving);
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.yaw += by;
      this.tilt = tilt;
      this.settle();
      return;
    }
    const step = now => {
      const t = clamp((now - began) / 420, 0, 1), e = t * t * (3 - 2 * t);
      this.yaw = from[0] + by * e;
      this.tilt = from[1] + (tilt - from[1]) * e;
      this.frame();
      if (t < 1) this.moving = requestAnimationFrame(step);
    };
    this.moving = requestAnimationFrame(step);
  }

  size() {
    const box = this.element.getBoundingClientRect();
    return { width: Math.max(16, Math.round(box.width)), height: Math.max(16, Math.round(box.height)) };
  }

  // One frame of a turning hat; while one is painted the next waits, and only the latest is.
  frame() {
    this.tell();
    clearTimeout(this.settling);
    this.settling = setTimeout(() => this.settle(), 160);
    this.stale = true;
    this.next();
  }

  next() {
    if (this.busy || !this.stale) return;
    this.busy = true;
    this.stale = false;
    const { width, height } = this.size(), r = this.resolution;
    this.ask({ width: Math.max(16, Math.round(width * r)), height: Math.max(16, Math.round(height * r)) }, true);
  }

  // The hat at rest, as fine as the screen.
  settle() {
    clearTimeout(this.settling);
    this.tell();
    const { width, height } = this.size(), dense = Math.min(devicePixelRatio || 1, 2);
    this.ask({ width: Math.round(width * dense), height: Math.round(height * dense), samples: dense >= 1.75 ? 1 : 2 }, false);
  }

  ask(size, quick) {
    const dark = this.options.dark ?? matchMedia('(prefers-color-scheme: dark)').matches;
    this.worker.postMessage({ view: { ...size, yaw: this.yaw, tilt: this.tilt, dark }, quick });
  }

  painted(sheet) {
    if (sheet.quick) {
      this.busy = false;
      if (sheet.ms > LONGEST) this.resolution = Math.max(0.4, this.resolution * 0.85);
      else if (sheet.ms < QUICKEST) this.resolution = Math.min(1.25, this.resolution * 1.08);
      this.lastMs = sheet.ms;
    }
    this.map = sheet;
    if (!sheet.view.unseen) {
      this.sheet = sheet;
      this.show();
    }
    this.next();
  }

  show() {
    const { canvas, sheet, lit } = this;
    let { pixels } = sheet;
    if (lit !== null) {
      pixels = pixels.slice();
      for (let i = 0; i < sheet.areas.length; i++) if (sheet.areas[i] !== lit) pixels[i * 4 + 3] *= DIMMED;
    }
    canvas.width = sheet.width;
    canvas.height = sheet.height;
    canvas.getContext('2d').putImageData(new ImageData(pixels, sheet.width, sheet.height), 0, 0);
    canvas.hidden = false;
    this.element.classList.add('wool-alive');
  }

  // ---- words
  frontArea() {
    if (!this.model.sideways) return null;
    const n = this.rows.length, at = Math.floor((((-this.yaw / ROUND + 0.5) % 1) + 1) % 1 * n);
    for (let off = 0; off < n; off++) for (const row of [(at + off) % n, (at - off + n) % n]) {
      if (this.model.areas[this.rows[row]].fabric !== 'Braid') return this.model.areas[this.rows[row]];
    }
    return null;
  }

  tell(again = false) {
    const area = this.frontArea(), side = Math.round(((-this.yaw / ROUND % 1) + 1) % 1 * 4) % 4;
    const words = area ? this.options.front + area.words : this.options.sides[side], { element } = this;
    element.setAttribute('aria-valuenow', Math.round((((this.yaw / ROUND) % 1) + 1) % 1 * 360) % 360);
    if (words === this.words && !again) return;
    this.words = words;
    element.setAttribute('aria-valuetext', words);
    this.say('wool-front', { area: area ? area.name : null, words });
  }

  say(name, detail) {
    this.element.dispatchEvent(new CustomEvent(name, { detail, bubbles: true }));
  }

  // ---- hands
  wake() {
    if (!this.map) {
      const { width, height } = this.size(), small = Math.min(1, 240 / width);
      this.worker.postMessage({ view: { width: Math.max(16, Math.round(width * small)), height: Math.max(16, Math.round(height * small)), yaw: this.yaw,
        tilt: this.tilt, unseen: true }, quick: true });
    }
    if (!this.flat) this.worker.postMessage({ flat: true });
    this.flat = true;
  }

  listen() {
    const { element, options } = this, on = (name, act) => element.addEventListener(name, act, { signal: this.listening.signal });
    for (const [name, value] of [['role', 'slider'], ['tabindex', '0'], ['aria-label', options.label], ['aria-valuemin', '0'],
      ['aria-valuemax', '360']]) element.setAttribute(name, value);
    let held = null, over = null;
    on('pointerenter', () => this.wake());
    on('focus', () => this.wake());
    on('pointerdown', e => {
      this.wake();
      held = { x: e.clientX, y: e.clientY, yaw: this.yaw, tilt: this.tilt, moved: false };
    });
    on('pointermove', e => {
      const area = this.areaAt(e.clientX, e.clientY);
      if (area !== over) this.say('wool-over', { area: over = area });
      if (!held || !options.dragTurns) return;
      if (!held.moved && Math.hypot(e.clientX - held.x, e.clientY - held.y) < 6) return;
      if (!held.moved) element.setPointerCapture(e.pointerId);
      held.moved = true;
      cancelAnimationFrame(this.moving);
      this.yaw = held.yaw + (e.clientX - held.x) / 150;
      this.tilt = clamp(held.tilt + (e.clientY - held.y) / 230, 4 * Math.PI / 180, 80 * Math.PI / 180);
      this.frame();
    });
    on('pointerup', e => {
      const area = held && !held.moved ? this.areaAt(e.clientX, e.clientY) : null;
      held = null;
      if (area) this.say('wool-tap', { area, parts: this.model.areas.find(a => a.name === area).parts });
    });
    on('pointercancel', () => { held = null; });
    on('pointerleave', () => {
      if (over !== null) this.say('wool-over', { area: over = null });
    });
    on('keydown', e => {
      const by = { ArrowLeft: [-STEP, 0], ArrowRight: [STEP, 0], ArrowUp: [0, 0.21], ArrowDown: [0, -0.21] }[e.key];
      if (!by || e.target !== element || e.altKey || e.ctrlKey || e.metaKey) return;
      e.preventDefault();
      this.wake();
      this.go(this.yaw + by[0], this.tilt + by[1]);
    });
  }
}
