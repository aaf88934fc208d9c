// What lies at a place of the fabric: which loop, of which yarn, how light its colour is there.
import { ROUND, hash, mix, clamp, along, over, smooth, linear } from './grain.js';
import { BODY, CUFF, POMPOM, RIB } from './form.js';

const COS = 0.9210609940028851, SIN = 0.3894183423086505;
const INKS = 6, GATHER = 0.34, SET_UP = 1;

const pale = light => 0.35 + 0.65 * Math.sqrt(light);
const ink = (r, g, b) => ({ r, g, b, pr: pale(r), pg: pale(g), pb: pale(b) });

// A hat as the program hands it over, made ready to paint: rows told off to areas, colours as light.
export function ready(model) {
  const hat = { ...model, rowAreas: [], firstRows: [] };
  hat.areas.forEach((a, i) => {
    hat.firstRows.push(hat.rowAreas.length);
    for (let k = 0; k < a.rows; k++) hat.rowAreas.push(i);
  });
  hat.rows = hat.rowAreas.length;
  hat.seamArea = hat.areas.findIndex(a => a.fabric === 'Seam');
  hat.pomPomArea = hat.areas.findIndex(a => a.fabric === 'PomPom');
  hat.yarns = model.yarns.map(y => {
    const light = y.colours.map(c => ink(...[1, 3, 5].map(i => linear(parseInt(c.slice(i, i + 2), 16) / 255))));
    return { halo: y.halo, inks: light.length === 1 ? light : Array.from({ length: light.length * INKS }, (_, i) => {
      const a = light[(i / INKS) | 0], b = light[(((i / INKS) | 0) + 1) % light.length], t = smooth(0.5, 1.1, (i % INKS) / INKS);
      return ink(mix(a.r, b.r, t), mix(a.g, b.g, t), mix(a.b, b.b, t));
    }) };
  });
  return hat;
}

export class Spot {
  constructor(hat, form) {
    this.hat = hat;
    this.form = form;
    this.height = this.wale = this.course = this.leg = this.alongLeg = this.acrossLeg = this.row = this.stitch = 0;
    this.slopeRound = this.slopeUp = this.tone = this.soft = this.sin = this.cos = this.area = 0;
    this.shade = 1;
    this.ghost = false;
    this.yarn = hat.yarns[0];
    this.ink = this.yarn.inks[0];
  }

  clear() {
    this.height = this.wale = this.course = this.leg = this.alongLeg = this.acrossLeg = 0;
  }

  // ---- loops: each leg of a stitch is a bean that dives under at both ends; the highest wins.
  bean(dx, dy, cos, sin, halfLength, halfWidth, proud, leg) {
    const a = dx * sin + dy * cos, b = dx * cos - dy * sin, e = a / halfLength, f = b / halfWidth, e2 = e * e, q = 1 - f * f - e2 * e2;
    if (q <= 0.0004) return false;
    const h = Math.sqrt(q);
    if (proud * h <= this.height) return false;
    this.height = proud * h;
    const steep = proud / Math.max(h, 0.35), across = -f / halfWidth * steep, on = -2 * e * e2 / halfLength * steep;
    this.wale = across * cos + on * sin;
    this.course = on * cos - across * sin;
    this.leg = leg;
    this.alongLeg = a;
    this.acrossLeg = b;
    return true;
  }

  knit(w, c, wide, high, seed, none = 0, upTo = 0) {
    const j = Math.floor(w), k0 = Math.floor(c), x = (w - j - 0.5) * wide, side = x < 0 ? -1 : 1;
    for (let k = k0 - 1; k <= k0 + 1; k++) {
      if ((k >= none && k < upTo) || Math.abs(c - k - 0.5) > 1.25) continue; // a leg reaches no further
      const q = hash(j, k, seed), p = hash(k, j, seed + side), tension = hash(k, 1, seed + 5) - 0.5;
      const more = (p - 0.5) * 0.16, even = 1 - more * more / 2, odd = more - more * more * more / 6; // it leans 0.40 and a little more or less
      const off = ((p - 0.5) * 0.24 + tension * 0.22) * high;
      if (this.bean(x * side - 0.262 * wide - (q - 0.5) * 0.12 * wide * side, (c - k - 0.5) * high - off, COS * even - SIN * odd, SIN * even + COS * odd,
        high * 0.86, wide * (0.232 + 0.035 * q + 0.02 * tension), 0.90 + 0.10 * q, j * 131 + k * 7 + side)) {
        this.row = k;
        this.stitch = j;
      }
    }
    this.wale *= side;
  }

  purl(w, c, wide, high, seed, proud = 0.62) {
    const j0 = Math.floor(w), k0 = Math.floor(c);
    for (let k = k0 - 1; k <= k0 + 1; k++) for (let j = j0 - 1; j <= j0 + 1; j++) {
      const q = hash(j, k, seed + 77);
      if (this.bean((w - j - 0.5) * wide, (c - k - 0.5 + (q - 0.5) * 0.2) * high, 1, 0, high * 0.5, wide * 0.62, proud, j * 131 + k * 7)) {
        this.row = k;
        this.stitch = j;
      }
    }
  }

  garter(w, c, wide, high, seed) {
    const j0 = Math.floor(w * 2), k0 = Math.floor(c / 2);
    for (let k = k0 - 1; k <= k0 + 1; k++) for (let j = j0 - 1; j <= j0 + 1; j++) {
      const q = hash(j, k, seed + 78), bow = (j & 1) === 0 ? 0.34 : -0.34;
      if (this.bean((w * 2 - j - 0.5) * wide / 2, (c - 2 * k - 1 + (q - 0.5) * 0.3 + bow * 0.9) * high, 1, 0, high * 0.62, wide * 0.36, 0.95 + 0.1 * q,
        j * 131 + k * 7)) {
        this.row = 2 * k;
        this.stitch = j >> 1;
      }
    }
  }

  // 1: the second strand, 0: the first, -1: what was found before lies higher.
  braid(t, q, wide, half, seed) {
    const side = q < 0 ? -1 : 1, k0 = Math.floor(t), before = this.height, on = wide * 0.74, across = half * 0.55, long = Math.sqrt(on * on + across * across);
    let second = 0;
    for (let k = k0 - 2; k <= k0 + 1; k++) {
      const j = hash(k, side, seed) - 0.5, lean = Math.atan2(across, on) + j * 0.14;
      if (this.bean(q * side * half - half * 0.47, (t - k - 0.2) * wide - j * 0.3, Math.cos(lean), Math.sin(lean), long * 1.06, wide * across / long * 0.62,
        1.16 + (k & 1) * 0.05, k * 9 + side)) {
        second = k & 1;
        this.stitch = k;
      }
    }
    if (this.height === before) return -1;
    const w = this.wale;
    this.wale = this.course;
    this.course = w * side;
    return second;
  }

  bar(dx, dy, lean, halfLength, halfWidth, proud, leg) {
    return this.bean(dx, dy, Math.cos(lean), Math.sin(lean), halfLength, halfWidth, proud, leg);
  }

  upright() {
    this.slopeRound = this.wale;
    this.slopeUp = this.course;
  }

  lying() {
    this.slopeRound = this.course;
    this.slopeUp = this.wale;
  }

  // ---- fabrics
  look(surface, angle, s, r) {
    this.clear();
    this.tone = this.soft = 0;
    this.shade = 1;
    this.ghost = false;
    const sin = this.sin = Math.sin(angle), cos = this.cos = Math.cos(angle);
    if (surface === POMPOM) this.onPomPom(angle, s, sin, cos);
    else if (surface === CUFF && !this.hat.brim) this.curl(angle, s);
    else if (surface === CUFF || s < this.joins(angle)) this.rib(surface, angle, s);
    else if (this.hat.sideways) this.sideways(angle, s, r, sin, cos);
    else this.upwards(angle, s, r, sin, cos);
  }

  joins(angle) {
    const { brim, sideways, rows } = this.hat;
    return !brim || brim.folded ? 0 : sideways ? -0.11 * Math.abs(Math.sin(angle * brim.ribs * brim.wales)) : -0.7 * this.form.body.end / rows;
  }

  rib(surface, angle, s) {
    const { hat, form } = this, brim = hat.brim, cuff = surface === CUFF, up = cuff ? s : s + form.below, length = cuff ? form.cuff.length : form.below;
    const high = 9 / brim.rounds, wide = ROUND * form.radius * 10 / brim.ribs, c = up * 10 / high;
    const p = (angle + form.sway(angle, s)) * brim.ribs / ROUND, j = Math.floor(p), f = p - j, furrow = 1 - RIB;
    const edge = cuff ? length - 0.22 - up : up - 0.10;
    if (!brim.rounded && edge < 0.20 && edge > -0.20) this.edge((edge + 0.20) / 0.40, angle * form.radius * 10 / 3.4, brim.first);
    else if (f < RIB) {
      this.knit(j * brim.wales + f / RIB * brim.wales, c, wide * RIB / brim.wales, high, 41);
      this.upright();
      this.soft = 0.30;
    } else {
      this.purl(j * brim.wales + (f - RIB) / furrow * brim.wales, c, wide * furrow / brim.wales, high, 43);
      this.upright();
      this.slopeUp *= 0.55;
      this.soft = 0.55;
      this.shade = mix(1, 0.42, Math.sin(Math.PI * (f - RIB) / furrow));
    }
    let row = up / Math.max(0.1, length);
    row = brim.folded ? (brim.first ? 0.5 - 0.5 * row : 0.5 + 0.5 * row) : brim.first ? row : 1 - row;
    this.dye(brim.area, hat.areas[brim.area].yarn, Math.floor(c), p * 2);
    this.ghost = this.isOut(brim.area, row + 0.02 * (hash(j, 3, 47) - 0.5));
  }

  edge(across, on, castOn) {
    if (castOn) {
      this.purl(on, across, 3.4, 4, 63, 0.8);
      this.upright();
    } else {
      this.knit(across, on, 4.2, 3.4, 61);
      this.lying();
    }
  }

  curl(angle, s) {
    const { hat, form } = this, wide = ROUND * form.radius * 10 / hat.stitches, high = form.body.end * 10 / hat.rows;
    const w = angle * form.radius * 10 / wide, c = s * 10 / high, area = hat.rowAreas[0];
    this.garter(w, 2 * c, wide, high / 2, 45);
    this.upright();
    this.dye(area, hat.areas[area].yarn, Math.floor(c), w);
    this.ghost = this.isOut(area, 0);
  }

  drift(sin, cos, s) {
    const x = cos * 4, z = sin * 4;
    this.d1 = over(x + s * 0.31, z + s * 0.17 + 20, 61);
    this.d2 = over(x * 1.7 + 7, z * 1.7 + s * 0.55, 62);
  }

  sideways(angle, s, r, sin, cos) {
    const { hat, form } = this, rows = hat.rows;
    this.drift(sin, cos, s);
    const fade = smooth(0, 0.3, Math.PI - Math.abs(angle)), c = clamp((angle / ROUND + 0.5) * rows + 0.55 * this.d2 * fade, 0, rows - 0.001);
    const w = s / form.body.end * hat.stitches + 0.5 * this.d1, high = ROUND * Math.max(r, 1.2) * 10 / rows, wide = form.body.end * 10 / hat.stitches;
    const area = hat.rowAreas[c | 0];
    if (r < GATHER) {
      const seam = hat.seamArea >= 0 ? hat.seamArea : area;
      this.knit(angle * 1.2, s * 4, 3, 2.5, 5);
      this.upright();
      this.dye(seam, hat.areas[seam].yarn, 0, angle);
      this.ghost = this.isOut(seam, 0);
      return;
    }
    this.body(area, w, c, wide, high, 11);
    this.lying();
    if (hat.seamArea >= 0) this.sewn((Math.PI - Math.abs(angle)) * r * 10, s);
  }

  upwards(angle, s, r, sin, cos) {
    const { hat, form } = this, span = form.body.end, n = hat.gores;
    this.drift(sin, cos, s);
    const back = smooth(0, 0.2, Math.PI - Math.abs(angle));
    let c = s / span * hat.rows + 0.55 * this.d2 * smooth(0, 1, s) * back + (hat.flat ? 0.3 * Math.sign(angle) * (1 - back) : -angle / ROUND);
    c = clamp(c, -0.9, hat.rows - 0.001);
    let w = angle / ROUND * hat.stitches + 0.5 * this.d1 * back, wide = ROUND * form.radius * 10 / hat.stitches, line = 9;
    const high = span * 10 / hat.rows;
    if (s > form.crownFrom && n > 0) {
      const g = angle / ROUND * n, at = Math.floor(g), aside = g - at - 0.5, each = Math.max(0.8, hat.stitches / n * (span - s) / (span - form.crownFrom));
      w = aside * each + 0.5 + at * 64;
      wide = ROUND * Math.max(r, 0.15) * 10 / n / each;
      line = (0.5 - Math.abs(aside)) * each * (aside < 0 ? -1 : 1);
    }
    this.body(this.rowArea(c | 0), w, c, wide, high, 11);
    if (Math.abs(line) < 0.75) this.decrease(line, c, wide, high);
    this.upright();
    if (hat.flat && hat.seamArea >= 0) this.sewn((Math.PI - Math.abs(angle)) * r * 10, s);
  }

  decrease(line, c, wide, high) {
    const k = Math.floor(c / 2);
    for (let i = k - 1; i <= k + 1; i++) this.bar(-line * wide, (c - 2 * i - 1) * high, 0.5, high * 1.5, wide * 0.3, 1.08, i * 17);
    this.shade *= 0.80 + 0.27 * Math.abs(line);
  }

  body(area, w, c, wide, high, seed) {
    const { hat } = this, at = c | 0, next = this.rowArea(at + 1), last = this.rowArea(at - 1);
    const braid = this.isBraid(area) ? area : this.isBraid(next) ? next : this.isBraid(last) ? last : -1;
    if (hat.areas[area].fabric === 'Garter') this.garter(w, c, wide, high, seed);
    else if (braid < 0) this.knit(w, c, wide, high, seed);
    else this.knit(w, c, wide, high, seed, hat.firstRows[braid] + SET_UP, hat.firstRows[braid] + hat.areas[braid].rows);
    if (braid >= 0 && this.crossed(braid, w, c, wide, high)) return;
    const row = this.height > 0 ? clamp(this.row, 0, hat.rows - 1) : at;
    let own = hat.rowAreas[row];
    if (this.isBraid(own)) {
      const second = this.stitch & 1;
      this.dye(own, second ? hat.areas[own].second : hat.areas[own].yarn, (second ? 5 : 0) + own, w, 0.7);
      this.ghost = this.isOut(own, this.out(w));
      return;
    }
    if (this.row < 0 && !hat.sideways && hat.brim) own = hat.brim.area;
    this.dye(own, hat.areas[own].yarn, row, w);
    this.ghost = this.isOut(own, (row - hat.firstRows[own]) / Math.max(1, hat.areas[own].rows));
  }

  rowArea(row) {
    return this.hat.rowAreas[clamp(row, 0, this.hat.rows - 1)];
  }

  isBraid(area) {
    return this.hat.areas[area].fabric === 'Braid';
  }

  crossed(area, w, c, wide, high) {
    const { hat } = this, own = hat.areas[area], from = hat.firstRows[area] + SET_UP - 0.25, half = (hat.firstRows[area] + own.rows + 0.10 - from) / 2;
    const q = (c - from - half) / half;
    if (Math.abs(q) > 1.3) return false;
    const second = this.braid(w, q, wide, half * high, area);
    if (second < 0) return false;
    this.dye(area, second ? own.second : own.yarn, (second ? 5 : 0) + area, w, 0.7);
    this.tone += 0.14 * Math.sin(this.acrossLeg * 6.5 + this.alongLeg * 2.2);
    const end = Math.abs(this.alongLeg) / (half * high * 0.84);
    this.shade = 1 - 0.34 * Math.min(1, end * end * end) - 0.18 * Math.pow(clamp(Math.abs(q) - 0.2, 0, 1), 2);
    this.ghost = this.isOut(area, this.out(w));
    return true;
  }

  out(w) {
    return Math.floor(w) / this.hat.stitches + (this.hat.sideways ? 0 : 0.5);
  }

  isOut(area, share) {
    const { knitted } = this.hat.areas[area];
    return knitted < 1 && share >= knitted;
  }

  sewn(off, s) {
    const { hat } = this;
    off += 0.5 * along(s * 2.9, 19);
    if (off > 1.8) return;
    this.shade *= mix(0.84, 1, smooth(0.2, 1.6, off));
    if (off < 0.16) {
      this.clear();
      const t = s * 10 / 3.4;
      this.bar((t - Math.floor(t) - 0.5) * 3.4, off, 0, 0.9, 1.5, 0.7, Math.floor(t));
      this.lying();
      this.dye(hat.seamArea, hat.areas[hat.seamArea].yarn, 0, s);
      this.ghost = this.isOut(hat.seamArea, 0);
    }
  }

  onPomPom(angle, s, sin, cos) {
    const { hat, form } = this, x = angle * 11 * Math.max(0.2, Math.cos((s - form.pomPom.length / 2) / 2.5)), y = s * 6, j = Math.floor(x), k = Math.floor(y);
    for (let a = j - 1; a <= j + 1; a++) for (let b = k - 1; b <= k + 1; b++) {
      const q = hash(a, b, 81);
      this.bar((x - a - 0.5 - 0.7 * (q - 0.5)) * 1.5, (y - b - 0.5 - 0.7 * (hash(b, a, 82) - 0.5)) * 1.5, q * 3, 1.1, 0.75, 0.6 + 0.5 * q, a * 31 + b);
    }
    this.upright();
    this.soft = 0.2;
    this.dye(hat.pomPomArea, hat.areas[hat.pomPomArea].yarn, j, k, 1);
    this.tone += 0.12 * over(sin * 3 + 2, cos * 3 + s, 84);
    this.ghost = this.isOut(hat.pomPomArea, 0);
  }

  // A yarn's tone changes slowly along its length; one of several colours changes those too.
  dye(area, yarn, row, on, much = 1) {
    this.area = area;
    this.yarn = this.hat.yarns[yarn];
    const at = on * 0.16 + hash(row, 3, yarn + 3) * 400, seed = yarn + 51, inks = this.yarn.inks;
    this.tone = (0.095 * along(at, seed) + 0.06 * along(on * 0.7 + hash(row, 5, yarn + 3) * 900, seed + 1)) * much;
    if (inks.length === 1) {
      this.ink = inks[0];
      return;
    }
    const { stitches, flat } = this.hat, run = (row + ((row & 1) === 0 || !flat ? on / stitches : 1 - on / stitches)) * stitches / 150;
    const t = (run + 0.9 * along(run * 0.9, seed + 2)) * INKS;
    this.ink = inks[((t - inks.length * Math.floor(t / inks.length)) | 0) % inks.length];
  }
}
