// A hat as a form, in cm: how far round the head and how high the fabric lies at an angle and a length along it.
import { ROUND, hash, mix, clamp, along, over, smooth, hump, turn } from './grain.js';

export const BODY = 1, CUFF = 2, POMPOM = 3;
export const RIB = 0.66;
const STRETCH = 1.1, BALL = 2.5, LEANS_TO = 1.15, LEAN = 0.5;

const far = (a, b) => Math.sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]));

// The side of a body of revolution: distance from the middle and height, evenly spaced along the fabric.
class Profile {
  constructor(points, steps, start) {
    const at = [0];
    for (let i = 1; i < points.length; i++) at.push(at[i - 1] + far(points[i - 1], points[i]));
    this.last = steps;
    this.radii = new Float64Array(steps + 1);
    this.heights = new Float64Array(steps + 1);
    this.start = start;
    this.length = at[at.length - 1];
    this.end = start + this.length;
    for (let i = 0, k = 0; i <= steps; i++) {
      const s = this.length * i / steps;
      while (k < at.length - 2 && at[k + 1] < s) k++;
      const share = at[k + 1] > at[k] ? (s - at[k]) / (at[k + 1] - at[k]) : 0;
      this.radii[i] = mix(points[k][0], points[k + 1][0], share);
      this.heights[i] = mix(points[k][1], points[k + 1][1], share);
    }
    this.top = this.heights[steps];
  }

  radius(s) {
    const q = clamp((s - this.start) / this.length * this.last, 0, this.last - 1e-6), i = q | 0;
    return this.radii[i] + (this.radii[i + 1] - this.radii[i]) * (q - i);
  }

  // Radius and height at a place, and the direction of the fabric there.
  at(s, o) {
    const q = clamp((s - this.start) / this.length * this.last, 0, this.last - 1e-6), i = q | 0, share = q - i;
    const dr = this.radii[i + 1] - this.radii[i], dz = this.heights[i + 1] - this.heights[i], long = Math.sqrt(dr * dr + dz * dz) || 1;
    o.radius = this.radii[i] + dr * share;
    o.height = this.heights[i] + dz * share;
    o.out = dr / long;
    o.up = dz / long;
  }
}

function folds(n, uneven) {
  const edges = [0];
  for (let i = 1; i <= n; i++) edges.push(edges[i - 1] + 0.62 + uneven * hash(i, n, 5));
  return edges.map(e => e / edges[n] * ROUND);
}

export class Form {
  constructor(hat) {
    const brim = hat.brim;
    this.hat = hat;
    this.depth = brim ? brim.depth : 0;
    this.radius = hat.around * STRETCH / ROUND;
    this.ribbedBody = !!brim && !brim.folded;
    this.below = this.ribbedBody ? this.depth : brim ? 1.2 : 0;
    this.body = new Profile(this.sides(), 220, -this.below);
    this.crownFrom = hat.crownRows > 0 ? this.body.end * (1 - hat.crownRows / hat.rows) : this.body.end;
    this.cuff = brim && brim.folded ? this.folded() : !brim && !hat.sideways ? this.curled() : null;
    this.pomPom = hat.pomPomArea >= 0 ? this.ball() : null;
    this.large = hat.sideways ? folds(15, 0.76) : folds(Math.max(4, hat.gores), 0);
    this.small = folds(34, 0.76);
    this.braids = hat.areas.flatMap((a, i) => (a.fabric === 'Braid' ? [hat.firstRows[i] + a.rows / 2] : []));
    this.p = {};
  }

  of(surface) {
    return surface === CUFF ? this.cuff : surface === POMPOM ? this.pomPom : this.body;
  }

  // How far a rib strays from its place.
  sway(angle, s) {
    const each = ROUND / this.hat.brim.ribs;
    return each * (0.15 * along(angle / each * 0.43, 15) * smooth(0, 0.3, Math.PI - Math.abs(angle))
      + 0.13 * over(Math.cos(angle) * 5, Math.sin(angle) * 5 + s * 0.35, 16));
  }

  // Where a piece of fabric lies (o[0] to o[2]), and how deep in a fold (o[3]).
  at(surface, angle, s, o) {
    const sin = Math.sin(angle), cos = Math.cos(angle), p = this.p;
    this.of(surface).at(s, p);
    this.dip = 0;
    this.drop = 0;
    const d = surface === BODY ? this.onBody(angle, sin, cos, s, p.radius)
      : surface === CUFF ? this.onCuff(angle, sin, cos, s) : 0.22 * over(sin * 4 + 5, cos * 4 + s * 1.5, 91);
    const r = p.radius + d * p.up, x = r * sin, z = r * cos;
    let y = p.height - d * p.out + this.drop;
    const high = smooth(1, this.body.top, y), towards = (x * Math.sin(LEANS_TO) + z * Math.cos(LEANS_TO)) / this.radius;
    y -= 0.22 * high * (0.4 + 0.6 * towards);
    o[0] = x + LEAN * high * Math.sin(LEANS_TO);
    o[1] = y;
    o[2] = z + LEAN * high * Math.cos(LEANS_TO);
    o[3] = this.dip;
  }

  onBody(angle, sin, cos, s, r) {
    let d = this.lift(angle, sin, cos, s, r);
    if (this.ribbedBody && s < 0.5) {
      const edge = mix(0.4, 1, smooth(-this.depth, -this.depth + 0.7, s));
      d += 0.085 * this.wave(angle + this.sway(angle, s)) * (1 - smooth(-0.7, 0.5, s)) * edge + 0.05 * along(cos * 3, 21);
    }
    this.drop = s < 1 - this.below ? 0.10 * along(cos * 2.6 + sin, 36) * (1 - smooth(-this.below, 1 - this.below, s)) : 0;
    return d;
  }

  onCuff(angle, sin, cos, s) {
    const q = s / this.cuff.length;
    if (!this.hat.brim) {
      this.drop = 0.16 * along(cos * 3.3 + sin * 2, 35);
      return 0.13 * over(cos * 3, sin * 3 + q, 31) + 0.05 * along(cos * 7 + sin, 33);
    }
    this.drop = 0.13 * along(cos * 2.3 + sin * 2, 35) * smooth(0.4, 1, q) + 0.10 * along(sin * 2.6 + cos, 36) * (1 - smooth(0, 0.4, q));
    return 0.095 * this.wave(angle + this.sway(angle, s)) * mix(0.30, 1, smooth(0.10, 0.22, q)) * (1 - 0.5 * smooth(0.93, 1, q))
      + 0.11 * over(cos * 1.8, sin * 1.8 + q * 1.2, 31) + 0.06 * along(cos * 4.1 + sin, 33) * smooth(0.6, 1, q);
  }

  wave(angle) {
    const p = angle * this.hat.brim.ribs / ROUND, f = p - Math.floor(p);
    return f < RIB ? Math.pow(Math.sin(Math.PI * f / RIB), 0.6) : -0.9 * Math.sin(Math.PI * (f - RIB) / (1 - RIB));
  }

  // How far the body's fabric stands off: soft dents, folds of the crown, braids, the seam.
  lift(angle, sin, cos, s, r) {
    const hat = this.hat;
    let d = 0.17 * over(cos * 1.3 + 9, sin * 1.3 + s * 0.16, 3) + 0.06 * over(cos * 4 + 3, sin * 4 + s * 0.5, 4);
    d += 0.13 * over(cos * 1.6 + 4, sin * 1.6 + s * 0.55, 7) * hump(s, 2.8, 2.4) * smooth(0, 0.8, s);
    if (!hat.sideways) {
      if (s > this.crownFrom) {
        this.fold(this.large, angle);
        const deep = smooth(0.55, 0.95, 1 - r / this.radius);
        d += this.f * deep * 0.28 * Math.min(1, r / 0.8 + 0.1);
        this.dip += deep * Math.max(0, -this.f) * 0.8;
      }
      const each = this.body.end / hat.rows;
      for (const braid of this.braids) d += 0.07 * hump(s, braid * each, 0.36);
      return hat.flat ? d + this.seamDip(angle, r) : d;
    }
    const fall = 1 - r / this.radius;
    if (fall > 0.02) {
      this.fold(this.large, angle);
      const f = this.f, deep = smooth(0.12 + 0.25 * hash(this.fi, 1, 9), 0.80, fall);
      this.fold(this.small, angle);
      const g = this.f, fine = smooth(0.2 * hash(this.fi, 2, 9), 0.35, fall) * (1 - 0.75 * smooth(0.55, 0.9, fall));
      d += f * deep * 0.66 * Math.min(1, r / 1.5 + 0.1) + g * fine * 0.20 * Math.min(1, r / 2);
      this.dip = deep * Math.max(0, 0.1 - f) * 1.1 + fine * Math.max(0, -g) * 0.5;
    }
    const each = ROUND / hat.rows;
    for (const braid of this.braids) d += 0.07 * hump(turn(angle - (braid * each - Math.PI)) * this.radius, 0, 0.36) * smooth(0.5, 2, r);
    return d + this.seamDip(angle, r) * smooth(0.5, 2, r);
  }

  seamDip(angle, r) {
    const off = (Math.PI - Math.abs(angle)) * r;
    return 0.05 * hump(off, 0.42, 0.30) - 0.06 * hump(off, 0, 0.18);
  }

  fold(edges, angle) {
    angle -= ROUND * Math.floor(angle / ROUND);
    let i = 0;
    while (i < edges.length - 2 && edges[i + 1] <= angle) i++;
    const f = clamp((angle - edges[i]) / (edges[i + 1] - edges[i]), 0, 1);
    this.f = Math.pow(Math.sin(Math.PI * f), 0.62) - 0.62;
    this.fi = i;
  }

  sides() {
    const R = this.radius, length = this.hat.above, points = [];
    let dome = 0.86 * R;
    while (this.arc(dome) > length * 0.95) dome *= 0.96;
    const straight = length - this.arc(dome), depth = this.depth;
    for (let i = 0; i <= 40; i++) {
      const s = -this.below + (straight + this.below) * i / 40, t = clamp(s / straight, 0, 1);
      const r = this.ribbedBody
        ? 0.94 + 0.06 * smooth(-1.2, 2.6, s) + 0.012 * Math.sin(Math.PI * clamp((s + depth) / Math.max(1, depth - 1), 0, 1))
          - 0.004 * smooth(-depth + 0.6, -depth, s)
        : 1 + 0.012 * Math.sin(Math.PI * t) - 0.012 * (1 - t) * (1 - t);
      points.push([R * (r + 0.012 * hump(s, 2.2, 1.6)), s]);
    }
    if (!(this.hat.brim && this.hat.brim.folded)) {
      const low = points[0][0], b = this.below;
      points[0] = [low - 0.20, -b + 0.05];
      points.splice(1, 0, [low - 0.10, -b - 0.05], [low - 0.03, -b - 0.01]);
    }
    for (let i = 1; i <= 120; i++) {
      const q = this.dome(i / 120, dome);
      points.push([q[0], q[1] + straight]);
    }
    return points;
  }

  arc(dome) {
    let sum = 0, last = this.dome(0, dome);
    for (let i = 1; i <= 90; i++) {
      const next = this.dome(i / 90, dome);
      sum += far(last, next);
      last = next;
    }
    return sum;
  }

  dome(t, dome) {
    const a = t * Math.PI / 2, sunk = smooth(0.80, 1, t), side = this.hat.sideways;
    return [t >= 1 ? 0 : this.radius * Math.pow(Math.cos(a), side ? 0.80 : 0.86), dome * Math.pow(Math.sin(a), 0.92) - (side ? 0.35 * sunk * sunk : 0)];
  }

  folded() {
    const half = 0.36, R = this.radius, depth = this.depth, points = [];
    for (let i = 0; i <= 10; i++) {
      const a = Math.PI * (1 - i / 10);
      points.push([R * 0.955 + half + half * Math.cos(a), -depth + half - half * 0.9 * Math.sin(a)]);
    }
    for (let i = 1; i <= 24; i++) {
      const q = i / 24;
      points.push([R * mix(0.955, 0.978, q) + 2 * half - 0.10 * q + 0.16 * Math.sin(Math.PI * q), -depth + half + (depth - half - 0.22) * q]);
    }
    const [r, z] = points[points.length - 1];
    for (let i = 1; i <= 8; i++) {
      const a = Math.PI * i / 8;
      points.push([r - 0.40 + 0.40 * Math.cos(a), z + 0.20 * Math.sin(a)]);
    }
    return new Profile(points, 90, 0);
  }

  curled() {
    const half = 0.46, points = [];
    for (let i = 0; i <= 30; i++) {
      const a = Math.PI * (1.1 - 1.9 * i / 30);
      points.push([this.radius - 0.02 + half + half * Math.cos(a), half - half * Math.sin(a)]);
    }
    return new Profile(points, 60, 0);
  }

  ball() {
    const points = [];
    for (let i = 0; i <= 40; i++) {
      const a = Math.PI * (i / 40 - 0.5);
      points.push([BALL * Math.cos(a), this.body.top + BALL * (0.75 + 0.92 * Math.sin(a))]);
    }
    return new Profile(points, 60, 0);
  }
}
