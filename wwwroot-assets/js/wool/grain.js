// Chance that is the same every time: numbers drawn from places, and what is smooth between them. As in the program's own painter.
export const ROUND = Math.PI * 2;

export function hash(i, j, k) {
  let h = Math.imul(i, 374761393) ^ Math.imul(j, 668265263) ^ Math.imul(k, 2246822519);
  h = Math.imul(h ^ (h >>> 15), 2246822519);
  h = Math.imul(h ^ (h >>> 13), 3266489917);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

export const mix = (a, b, t) => a + (b - a) * t;
export const clamp = (x, low, high) => (x < low ? low : x > high ? high : x);

// -1 to 1, smooth along a line.
export function along(x, k) {
  const i = Math.floor(x), f = x - i;
  return mix(hash(i, 7, k), hash(i + 1, 7, k), f * f * (3 - 2 * f)) * 2 - 1;
}

// -1 to 1, smooth over a plane.
export function over(x, y, k) {
  const i = Math.floor(x), j = Math.floor(y), f = x - i, g = y - j, u = f * f * (3 - 2 * f);
  return mix(mix(hash(i, j, k), hash(i + 1, j, k), u), mix(hash(i, j + 1, k), hash(i + 1, j + 1, k), u), g * g * (3 - 2 * g)) * 2 - 1;
}

// 0 below a, 1 above b, smooth between.
export function smooth(a, b, x) {
  const t = clamp((x - a) / (b - a), 0, 1);
  return t * t * (3 - 2 * t);
}

export function hump(x, at, width) {
  const q = (x - at) / width;
  return q < -3 || q > 3 ? 0 : Math.exp(-q * q);
}

export const turn = angle => angle - ROUND * Math.floor(angle / ROUND + 0.5);

export const linear = coded => (coded <= 0.04045 ? coded / 12.92 : Math.pow((coded + 0.055) / 1.055, 2.4));

const coded = light => (light <= 0.0031308 ? light * 12.92 : 1.055 * Math.pow(light, 1 / 2.4) - 0.055);
const BYTES = Uint8Array.from({ length: 4097 }, (_, i) => (255 * coded(i / 4096) + 0.5) | 0);
export const byte = light => BYTES[light <= 0 ? 0 : light >= 1 ? 4096 : (light * 4096 + 0.5) | 0];
