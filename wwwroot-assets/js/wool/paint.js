// Paints a hat as wool, pixel for pixel as the program does: the form cut into small fields, the nearest seen at each sample, then light.
import { ROUND, hash, mix, clamp, smooth, byte } from './grain.js';
import { Form, BODY, CUFF, POMPOM } from './form.js';
import { Spot, ready } from './spot.js';

export const NOTHING = 255;
const GHOST = 0.30, KEY = [-0.4584, 0.6577, 0.5979], ROOM = 0.35, USUAL = 23, MOST_FIBRES = 5200;

class Mesh {
  constructor(form, surface, round, up) {
    const profile = form.of(surface), to = profile.end - (surface === BODY ? 0.02 : 0), n = (round + 1) * (up + 1), o = [0, 0, 0, 0];
    Object.assign(this, { surface, round, up, from: profile.start, step: (to - profile.start) / up });
    [this.x, this.y, this.z, this.dip, this.nx, this.ny, this.nz] = Array.from({ length: 7 }, () => new Float32Array(n));
    for (let i = 0, q = 0; i <= round; i++) for (let j = 0; j <= up; j++, q++) {
      form.at(surface, this.angle(i), this.from + this.step * j, o);
      this.x[q] = o[0]; this.y[q] = o[1]; this.z[q] = o[2]; this.dip[q] = o[3];
    }
    for (let i = 0; i <= round; i++) for (let j = 0; j <= up; j++) this.normal(i, j);
  }

  angle(i) {
    return (i / this.round - 0.5) * ROUND;
  }

  normal(i, j) {
    const { x, y, z, up, round } = this, row = up + 1, q = i * row + j;
    const a = (i === 0 ? round - 1 : i - 1) * row + j, b = (i === round ? 1 : i + 1) * row + j, c = j === 0 ? q : q - 1, d = j === up ? q : q + 1;
    const ax = x[b] - x[a], ay = y[b] - y[a], az = z[b] - z[a], bx = x[d] - x[c], by = y[d] - y[c], bz = z[d] - z[c];
    let nx = ay * bz - az * by, ny = az * bx - ax * bz, nz = ax * by - ay * bx, long = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (long < 1e-7) { nx = 0; ny = 1; nz = 0; long = 1; }
    this.nx[q] = nx / long; this.ny[q] = ny / long; this.nz[q] = nz / long;
  }
}

const even = n => ((n / 2 + 0.5) | 0) * 2;

function meshesOf(form, hat, perCm, rough = 1) {
  const fine = clamp(perCm / 28, 0.25, 1) * rough, ribs = hat.brim ? hat.brim.ribs * (fine < 0.6 ? 5 : 8) : 0;
  const all = [new Mesh(form, BODY, even(Math.max(360 * fine, hat.brim && !hat.brim.folded ? ribs : 0)), even(120 * fine))];
  if (form.cuff) all.push(new Mesh(form, CUFF, even(Math.max(360 * fine, ribs)), even(40 * fine)));
  if (form.pomPom) all.push(new Mesh(form, POMPOM, even(90 * fine), even(40 * fine)));
  return all;
}

// Pixels to a centimetre and the pixel of the form's own origin: the same however the hat is turned.
function frameOf(meshes, view) {
  const sin = Math.sin(view.tilt), cos = Math.cos(view.tilt);
  let far = 0, low = Infinity, high = -Infinity;
  for (const m of meshes) for (let q = 0; q < m.x.length; q++) {
    const r = Math.sqrt(m.x[q] * m.x[q] + m.z[q] * m.z[q]);
    far = Math.max(far, r);
    high = Math.max(high, m.y[q] * cos + r * sin);
    low = Math.min(low, m.y[q] * cos - r * sin);
  }
  const needed = high - low + 2 * ROOM, perCm = view.perCm || Math.min(view.width / (2 * (far + ROOM)), view.height ? view.height / needed : Infinity);
  const above = view.height ? (view.height - needed * perCm) / 2 : 0;
  return { width: view.width, height: view.height || Math.ceil(needed * perCm), perCm, x: view.width / 2, y: (high + ROOM) * perCm + above };
}

let pooled = null; // the samples' arrays are large: kept from one picture to the next

class Samples {
  constructor(meshes, view, frame, fine) {
    const n = frame.width * fine * frame.height * fine;
    Object.assign(this, { frame, fine, width: frame.width * fine, height: frame.height * fine });
    this.sy = Math.sin(view.yaw); this.cy = Math.cos(view.yaw); this.st = Math.sin(view.tilt); this.ct = Math.cos(view.tilt);
    if (!pooled || pooled.n < n) pooled = { n, f: Array.from({ length: 7 }, () => new Float32Array(n)), s: new Uint8Array(n) };
    [this.depth, this.angle, this.s, this.dip, this.nx, this.ny, this.nz] = pooled.f;
    this.surface = pooled.s;
    this.depth.fill(-3e38, 0, n);
    this.surface.fill(0, 0, n);
    for (const mesh of meshes) this.draw(mesh);
  }

  seen(x, y, z, o) {
    const near = z * this.cy - x * this.sy;
    o[0] = Math.fround(x * this.cy + z * this.sy);
    o[1] = Math.fround(y * this.ct - near * this.st);
    o[2] = Math.fround(y * this.st + near * this.ct);
  }

  draw(m) {
    const n = m.x.length, row = m.up + 1, scale = this.frame.perCm * this.fine, o = [0, 0, 0];
    const [px, py, pz, mx, my, mz] = Array.from({ length: 6 }, () => new Float32Array(n));
    for (let q = 0; q < n; q++) {
      this.seen(m.x[q], m.y[q], m.z[q], o);
      px[q] = this.frame.x * this.fine + o[0] * scale; py[q] = this.frame.y * this.fine - o[1] * scale; pz[q] = o[2];
      this.seen(m.nx[q], m.ny[q], m.nz[q], o);
      mx[q] = o[0]; my[q] = o[1]; mz[q] = o[2];
    }
    this.m = { px, py, pz, mx, my, mz, dip: m.dip, surface: m.surface };
    for (let i = 0; i < m.round; i++) {
      const u0 = m.angle(i), u1 = m.angle(i + 1);
      for (let j = 0; j < m.up; j++) {
        const a = i * row + j, b = a + row, v0 = m.from + m.step * j, v1 = m.from + m.step * (j + 1);
        this.triangle(a, b, b + 1, u0, u1, u1, v0, v0, v1);
        this.triangle(a, b + 1, a + 1, u0, u1, u0, v0, v1, v1);
      }
    }
  }

  triangle(a, b, c, ua, ub, uc, va, vb, vc) {
    const { px, py, pz, mx, my, mz, dip, surface } = this.m;
    const x0 = px[a], y0 = py[a], x1 = px[b], y1 = py[b], x2 = px[c], y2 = py[c], area = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
    if (area >= -1e-9) return; // it faces away
    const w = this.width, left = Math.max(0, Math.floor(Math.min(x0, x1, x2) - 0.5)), right = Math.min(w - 1, Math.ceil(Math.max(x0, x1, x2) - 0.5));
    const top = Math.max(0, Math.floor(Math.min(y0, y1, y2) - 0.5)), bottom = Math.min(this.height - 1, Math.ceil(Math.max(y0, y1, y2) - 0.5));
    const a0 = (y1 - y2) / area, b0 = (x2 - x1) / area, c0 = (x1 * y2 - x2 * y1) / area, a1 = (y2 - y0) / area, b1 = (x0 - x2) / area,
      c1 = (x2 * y0 - x0 * y2) / area;
    for (let y = top; y <= bottom; y++) for (let x = left; x <= right; x++) {
      const e0 = a0 * (x + 0.5) + b0 * (y + 0.5) + c0, e1 = a1 * (x + 0.5) + b1 * (y + 0.5) + c1, e2 = 1 - e0 - e1;
      if (e0 < -1e-4 || e1 < -1e-4 || e2 < -1e-4) continue;
      const z = e0 * pz[a] + e1 * pz[b] + e2 * pz[c], q = y * w + x;
      if (Math.fround(z) <= this.depth[q]) continue;
      this.depth[q] = z;
      this.angle[q] = e0 * ua + e1 * ub + e2 * uc;
      this.s[q] = e0 * va + e1 * vb + e2 * vc;
      this.nx[q] = e0 * mx[a] + e1 * mx[b] + e2 * mx[c];
      this.ny[q] = e0 * my[a] + e1 * my[b] + e2 * my[c];
      this.nz[q] = e0 * mz[a] + e1 * mz[b] + e2 * mz[c];
      this.dip[q] = e0 * dip[a] + e1 * dip[b] + e2 * dip[c];
      this.surface[q] = surface;
    }
  }
}

// Light from the upper left and a sky, fixed to whoever looks. `spot` tells what lies at a place, or what was laid flat beforehand.
class Light {
  constructor(painter, view, frame, spot, rough) {
    Object.assign(this, { hat: painter.hat, form: painter.form, spot, rough, r: 0, g: 0, b: 0 });
    this.deep = mix(0.66, 0.50, smooth(18, 44, frame.perCm));
    this.veiled = mix(0.12, 0.22, smooth(18, 44, frame.perCm));
    this.detail = smooth(16, 46, frame.perCm);
    this.rimLight = view.dark ? 0.24 : 0.17;
    this.sy = Math.sin(view.yaw); this.cy = Math.cos(view.yaw); this.st = Math.sin(view.tilt); this.ct = Math.cos(view.tilt);
  }

  fall(samples, at) {
    const { spot } = this, surface = samples.surface[at], angle = samples.angle[at], s = samples.s[at];
    spot.look(surface, angle, s, this.rough ? 0 : this.form.of(surface).radius(s));
    let nx = samples.nx[at], ny = samples.ny[at], nz = samples.nz[at];
    const long = Math.sqrt(nx * nx + ny * ny + nz * nz);
    nx /= long; ny /= long; nz /= long;
    if (nz < 0.05 && spot.height < 0.30) return false;
    this.light(surface, angle, s, Math.min(1, samples.dip[at]), nx, ny, nz);
    return true;
  }

  light(surface, angle, s, dip, nx, ny, nz) {
    const { spot, hat, form } = this, halo = spot.yarn.halo, ink = spot.ink;
    const sin = spot.sin * this.cy + spot.cos * this.sy, cos = spot.cos * this.cy - spot.sin * this.sy;
    let tx = cos, ty = sin * this.st, tz = -sin * this.ct;
    const off = tx * nx + ty * ny + tz * nz;
    tx -= off * nx; ty -= off * ny; tz -= off * nz;
    const l1 = Math.sqrt(tx * tx + ty * ty + tz * tz) || 1;
    tx /= l1; ty /= l1; tz /= l1;
    const bx = ny * tz - nz * ty, by = nz * tx - nx * tz, bz = nx * ty - ny * tx;
    const k = this.deep * (1 - 0.35 * spot.soft) * (1.12 - 0.30 * halo), round = k * spot.slopeRound, up = k * spot.slopeUp;
    const mx = nx - round * tx - up * bx, my = ny - round * ty - up * by, mz = nz - round * tz - up * bz, l2 = Math.sqrt(mx * mx + my * my + mz * mz);
    const loop = (mx * KEY[0] + my * KEY[1] + mz * KEY[2]) / l2, plain = nx * KEY[0] + ny * KEY[1] + nz * KEY[2];
    const wide = clamp((plain + 0.5) / 1.5, 0, 1), soft = 0.38 + 0.62 * wide, veil = this.veiled * (0.65 + 0.9 * halo);
    const height = spot.height > 1 ? 1 : spot.height * (1.28 - 0.28 * spot.height);
    const under = surface === BODY && form.cuff && s < 2.5 && hat.brim ? 1 - 0.62 * Math.exp(-Math.max(0, s) / 0.34) : 1;
    const open = mix(mix(0.27 + 0.3 * (veil - 0.12), 0.9, spot.soft), 1.03, height) * spot.shade * under * (1 - 0.5 * dip);
    const lit = this.falling(loop, my / l2, soft) * open * (1 + spot.tone) * 1.30 * this.ply(angle, s);
    const flat = this.falling(plain, ny, soft) * 0.86 * Math.max(spot.shade, 0.7) * (1 - 0.5 * dip) * (1 + spot.tone) * under * 1.18;
    const light = mix(lit, flat, veil), rim = 1 - clamp(nz, 0, 1);
    const haze = (0.010 + 0.016 * halo + this.rimLight * (0.6 + halo) * rim * rim * rim * (0.35 + 0.65 * wide)) * (0.5 + 0.5 * spot.height) * under;
    const warm = this.rough ? 1 : 1 + 0.06 * (hash(spot.leg, spot.area, 2) - 0.5);
    this.r = ink.r * light * warm + haze * ink.pr;
    this.g = ink.g * light + haze * ink.pg;
    this.b = ink.b * light * warm + haze * ink.pb;
  }

  falling(towards, up, soft) {
    return 0.24 * (0.5 + 0.5 * up) + 0.78 * clamp((towards + 0.42) / 1.42, 0, 1) * soft + 0.10;
  }

  ply(angle, s) {
    const { spot } = this;
    if (this.rough) return spot.ply;
    const strength = spot.height > 0 ? (0.14 - 0.07 * spot.yarn.halo) * (0.4 + 0.6 * this.detail) : 0;
    const twist = strength * Math.sin((spot.alongLeg + spot.acrossLeg * 1.25) * 7.2 + spot.leg);
    return 0.93 + 0.14 * hash(spot.leg, spot.area, 12) + twist + 0.11 * this.detail * (hash((angle * 5200) | 0, (s * 560) | 0, 8) - 0.5);
  }
}

// The fabric laid flat once, so that a turning hat only looks it up: loops, tone and twist are kept, nothing is worked out anew.
class Laid {
  constructor(hat, form) {
    Object.assign(this, { hat, form, inks: [], maps: [] });
  }

  * lay(perCm) {
    const { hat, form } = this, spot = new Spot(hat, form), light = Object.create(Light.prototype),
      kept = ['height', 'slopeRound', 'slopeUp', 'tone', 'shade', 'soft', 'ply'];
    Object.assign(light, { spot, detail: 0.35, rough: false });
    for (const surface of [BODY, CUFF, POMPOM]) {
      const profile = form.of(surface);
      if (!profile) continue;
      const w = Math.round(ROUND * form.radius * perCm), h = Math.round(profile.length * perCm), n = w * h,
        m = { w, h, profile, area: new Uint8Array(n), ink: new Uint8Array(n), ghost: new Uint8Array(n) };
      for (const name of kept) m[name] = new Float32Array(n);
      m.sin = Float64Array.from({ length: w }, (_, i) => Math.sin(((i + 0.5) / w - 0.5) * ROUND));
      m.cos = Float64Array.from({ length: w }, (_, i) => Math.cos(((i + 0.5) / w - 0.5) * ROUND));
      for (let i = 0, q = 0; i < w; i++) {
        if (i % 24 === 0) yield;
        for (let j = 0; j < h; j++, q++) {
          const angle = ((i + 0.5) / w - 0.5) * ROUND, s = profile.start + (j + 0.5) / h * profile.length;
          spot.look(surface, angle, s, profile.radius(s));
          spot.ply = light.ply(angle, s);
          for (const name of kept) m[name][q] = spot[name];
          m.area[q] = spot.area;
          m.ghost[q] = spot.ghost ? 1 : 0;
          let at = this.inks.findIndex(k => k.ink === spot.ink);
          if (at < 0) at = this.inks.push({ ink: spot.ink, yarn: spot.yarn }) - 1;
          m.ink[q] = at;
        }
      }
      this.maps[surface] = m;
    }
  }

  look(surface, angle, s) {
    const m = this.maps[surface], i = clamp(((angle / ROUND + 0.5) * m.w) | 0, 0, m.w - 1),
      j = clamp(((s - m.profile.start) / m.profile.length * m.h) | 0, 0, m.h - 1), q = i * m.h + j;
    this.height = m.height[q]; this.slopeRound = m.slopeRound[q]; this.slopeUp = m.slopeUp[q];
    this.tone = m.tone[q]; this.shade = m.shade[q]; this.soft = m.soft[q]; this.ply = m.ply[q];
    this.area = m.area[q]; this.ghost = m.ghost[q] === 1;
    const { ink, yarn } = this.inks[m.ink[q]];
    this.ink = ink; this.yarn = yarn;
    this.sin = m.sin[i]; this.cos = m.cos[i];
  }
}

export class Painter {
  constructor(model) {
    this.hat = ready(model);
    this.form = new Form(this.hat);
    this.meshes = new Map();
    this.laid = null;
  }

  // Makes the turning quick; takes about as long as a picture. Stops now and then, so that a worker can look whether it is still wanted.
  * laying() {
    if (this.laid) return;
    const laid = new Laid(this.hat, this.form);
    yield* laid.lay(22);
    this.laid = laid;
  }

  layFlat() {
    for (const _ of this.laying());
  }

  // view: { width, height, yaw, tilt, dark, perCm, samples }; quick: for turning, from what was laid flat. The answer: { width, height, pixels, areas }.
  paint(view, quick = false) {
    const steps = this.painting(view, quick);
    let step = steps.next();
    while (!step.done) step = steps.next();
    return step.value;
  }

  * painting(view, quick = false) {
    const { hat, form } = this, rough = quick && !!this.laid, fine = quick ? 1 : view.samples || 2;
    const perCm = view.perCm || view.width / (2.3 * form.radius), key = `${rough} ${clamp(perCm / 28, 0.25, 1)}`;
    if (!this.meshes.has(key)) this.meshes.set(key, meshesOf(form, hat, perCm, rough ? 0.6 : 1));
    const meshes = this.meshes.get(key), frame = frameOf(meshes, view), samples = new Samples(meshes, view, frame, fine);
    const sheet = { width: frame.width, height: frame.height, pixels: new Uint8ClampedArray(frame.width * frame.height * 4),
      areas: new Uint8Array(frame.width * frame.height).fill(NOTHING) };
    const light = new Light(this, view, frame, rough ? this.laid : new Spot(hat, form), rough);
    for (let y = 0; y < frame.height; y++) {
      this.row(sheet, samples, light, fine, y);
      if (!quick && y % 16 === 15) yield;
    }
    return quick ? sheet : new Edge(hat, sheet, frame, samples, fine).finish(meshes);
  }

  row(sheet, samples, light, fine, y) {
    for (let x = 0; x < sheet.width; x++) {
      let r = 0, g = 0, b = 0, hits = 0, ghosts = 0, area = NOTHING;
      for (let k = 0; k < fine * fine; k++) {
        const at = (y * fine + ((k / fine) | 0)) * samples.width + x * fine + k % fine;
        if (samples.surface[at] === 0 || !light.fall(samples, at)) continue;
        r += light.r; g += light.g; b += light.b; hits++;
        area = light.spot.area;
        if (light.spot.ghost) ghosts++;
      }
      if (hits === 0) continue;
      const o = (y * sheet.width + x) * 4;
      sheet.pixels[o] = byte(r / hits); sheet.pixels[o + 1] = byte(g / hits); sheet.pixels[o + 2] = byte(b / hits);
      sheet.pixels[o + 3] = (255 * (hits - ghosts + ghosts * GHOST) / (fine * fine) + 0.5) | 0;
      sheet.areas[y * sheet.width + x] = area;
    }
  }
}

// The edge is no line: short fibres stand off it, and a soft copy lies beneath.
class Edge {
  constructor(hat, sheet, frame, samples, fine) {
    Object.assign(this, { hat, sheet, frame, samples, fine, w: sheet.width, h: sheet.height, p: sheet.pixels });
  }

  finish(meshes) {
    this.blend();
    this.fibres(meshes);
    this.soften();
    return this.sheet;
  }

  blend() {
    const { w, h, p } = this, share = 0.06 * (1 - smooth(24, 44, this.frame.perCm));
    if (share <= 0) return;
    const old = p.slice();
    for (let y = 1; y < h - 1; y++) for (let x = 1; x < w - 1; x++) {
      const o = (y * w + x) * 4, left = o - 4, right = o + 4, up = o - w * 4, down = o + w * 4;
      if (old[o + 3] < 255 || old[left + 3] < 255 || old[right + 3] < 255 || old[up + 3] < 255 || old[down + 3] < 255) continue;
      for (let k = 0; k < 3; k++) p[o + k] = (old[o + k] * (1 - 4 * share) + share * (old[left + k] + old[right + k] + old[up + k] + old[down + k]) + 0.5) | 0;
    }
  }

  fibres(meshes) {
    const { frame, samples } = this, size = Math.min(1, frame.perCm / USUAL), tries = (26000 * size) | 0, most = (MOST_FIBRES * size) | 0, n = [0, 0, 0],
      o = [0, 0, 0];
    for (let i = 0, made = 0; i < tries && made < most; i++) {
      const m = meshes.length > 1 && hash(i, 1, 71) < 0.34 ? meshes[meshes.length - 1] : meshes[0], row = m.up + 1;
      const at = Math.min(m.round - 1, (hash(i, 2, 71) * m.round) | 0) * row + Math.min(m.up - 1, (hash(i, 3, 71) * m.up) | 0);
      samples.seen(m.nx[at], m.ny[at], m.nz[at], n);
      const rim = n[2] < 0.22;
      if (n[2] < -0.02 || (!rim && hash(i, 4, 71) > 0.30)) continue;
      const a = hash(i, 9, 71), b = hash(i, 10, 71), c = at + row, d = at + 1, between = v => Math.fround(v[at] + a * (v[c] - v[at]) + b * (v[d] - v[at]));
      samples.seen(between(m.x), between(m.y), between(m.z), o);
      if (this.fibre(i, frame.x + o[0] * frame.perCm, frame.y - o[1] * frame.perCm, o[2], n[0], n[1], rim)) made++;
    }
  }

  fibre(i, x0, y0, z, nx, ny, rim) {
    const { hat, sheet, samples, fine, frame, w, h, p } = this, px = x0 | 0, py = y0 | 0;
    if (px < 0 || py < 0 || px >= w || py >= h) return false;
    const at = py * w + px, area = sheet.areas[at];
    if (area === NOTHING || p[at * 4 + 3] < 100 || samples.depth[py * fine * samples.width + px * fine] > z + 0.35) return false;
    const halo = hat.areas[area].fabric === 'PomPom' ? 1 : hat.yarns[hat.areas[area].yarn].halo, q = hash(i, 5, 71);
    if (hash(i, 11, 71) > (rim ? 0.30 + 0.9 * halo : halo)) return false;
    const long = (rim ? 0.06 + 0.10 * q + (q > 0.94 ? 0.13 : 0) : 0.10 + 0.16 * q) * (0.55 + 1.1 * halo) * frame.perCm, bend = (hash(i, 6, 71) - 0.5) * 3.6;
    const a = Math.atan2(-ny, nx) + (hash(i, 7, 71) - 0.5) * 1.9, x1 = x0 + Math.cos(a) * long * 0.7, y1 = y0 + Math.sin(a) * long * 0.7;
    const x2 = x0 + (Math.cos(a) * 0.55 + Math.cos(a + bend) * 0.5) * long, y2 = y0 + (Math.sin(a) * 0.55 + Math.sin(a + bend) * 0.5) * long;
    const lift = rim ? 1.06 : 1.14, r = Math.min(255, p[at * 4] * lift + 7), g = Math.min(255, p[at * 4 + 1] * lift + 7),
      b = Math.min(255, p[at * 4 + 2] * lift + 7);
    const ink = (rim ? 0.16 + 0.26 * hash(i, 8, 71) : 0.13) * clamp(frame.perCm / USUAL, 0.55, 1.6), steps = Math.max(2, (long * 2) | 0);
    for (let k = 0; k <= steps; k++) {
      const t = k / steps, wa = (1 - t) * (1 - t), wb = 2 * t * (1 - t), wc = t * t;
      this.dot(wa * x0 + wb * x1 + wc * x2, wa * y0 + wb * y1 + wc * y2, r, g, b, ink * 0.62 * (1 - 0.4 * t));
    }
    return true;
  }

  dot(x, y, r, g, b, ink) {
    const i = Math.floor(x - 0.5), j = Math.floor(y - 0.5), f = x - 0.5 - i, e = y - 0.5 - j;
    this.lay(i, j, r, g, b, ink * (1 - f) * (1 - e));
    this.lay(i + 1, j, r, g, b, ink * f * (1 - e));
    this.lay(i, j + 1, r, g, b, ink * (1 - f) * e);
    this.lay(i + 1, j + 1, r, g, b, ink * f * e);
  }

  lay(x, y, r, g, b, ink) {
    const { w, h, p } = this;
    if (x < 0 || y < 0 || x >= w || y >= h) return;
    const o = (y * w + x) * 4, below = p[o + 3] / 255 * (1 - ink), all = ink + below;
    if (all <= 0) return;
    p[o] = ((r * ink + p[o] * below) / all + 0.5) | 0;
    p[o + 1] = ((g * ink + p[o + 1] * below) / all + 0.5) | 0;
    p[o + 2] = ((b * ink + p[o + 2] * below) / all + 0.5) | 0;
    p[o + 3] = (all * 255 + 0.5) | 0;
  }

  soften() {
    const { w, h, p } = this, sigma = clamp(1.3 * this.frame.perCm / USUAL, 0.5, 2.6), reach = Math.ceil(sigma * 2.5), old = p.slice();
    const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-(i - reach) * (i - reach) / (2 * sigma * sigma))),
      sum = weights.reduce((a, b) => a + b, 0);
    const wool = (x, y) => x >= 0 && y >= 0 && x < w && y < h && old[(y * w + x) * 4 + 3] > 0;
    for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) {
      const o = (y * w + x) * 4;
      if (old[o + 3] === 255 || !(wool(x, y) || wool(x - reach, y) || wool(x + reach, y) || wool(x, y - reach) || wool(x, y + reach))) continue;
      let r = 0, g = 0, b = 0, a = 0;
      for (let j = Math.max(-reach, -y); j <= reach && y + j < h; j++) for (let i = Math.max(-reach, -x); i <= reach && x + i < w; i++) {
        const q = o + (j * w + i) * 4, share = weights[i + reach] * weights[j + reach] * old[q + 3];
        r += share * old[q]; g += share * old[q + 1]; b += share * old[q + 2]; a += share;
      }
      if (a <= 0) continue;
      const top = p[o + 3] / 255, below = 0.55 * a / (sum * sum * 255) * (1 - top), all = top + below;
      p[o] = ((p[o] * top + r / a * below) / all + 0.5) | 0;
      p[o + 1] = ((p[o + 1] * top + g / a * below) / all + 0.5) | 0;
      p[o + 2] = ((p[o + 2] * top + b / a * below) / all + 0.5) | 0;
      p[o + 3] = (all * 255 + 0.5) | 0;
    }
  }
}
