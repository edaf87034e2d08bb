// Transforms of the plan, [a, b, c, d, x, y] as in SVG: x' = a·x + c·y + x0, y' = b·x + d·y + y0.

export const still = [1, 0, 0, 1, 0, 0];

/** First one, then the other. */
export function then([a, b, c, d, x, y], [e, f, g, h, u, v]) {
  return [e * a + g * b, f * a + h * b, e * c + g * d, f * c + h * d, e * x + g * y + u, f * x + h * y + v];
}

/** The way back; null where there is none. */
export function back([a, b, c, d, x, y]) {
  const size = a * d - b * c;
  if (Math.abs(size) < 1e-12) return null;
  return [d / size, -b / size, -c / size, a / size, (c * y - d * x) / size, (b * x - a * y) / size];
}

export const shift = ([x, y]) => [1, 0, 0, 1, x, y];

/** Turn about a place by an angle in degrees, clockwise as seen. */
export function turn(degrees, [x, y]) {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return [c, -s, s, c, x - c * x - s * y, y + s * x - c * y];
}

/** Stretch by a factor about a place, along a direction of length 1, or every way. */
export function stretch(factor, [x, y], along = null) {
  const k = factor - 1;
  const [u, v] = along || [0, 0];
  const [a, b, d] = along ? [1 + k * u * u, k * u * v, 1 + k * v * v] : [factor, 0, factor];
  return [a, b, b, d, x - a * x - b * y, y - b * x - d * y];
}

export const on = ([a, b, c, d, x, y], [u, v]) => [a * u + c * v + x, b * u + d * v + y];
export const minus = ([x, y], [u, v]) => [x - u, y - v];
export const plus = ([x, y], [u, v]) => [x + u, y + v];
export const times = ([x, y], by) => [x * by, y * by];
export const dot = ([x, y], [u, v]) => x * u + y * v;
export const far = ([x, y]) => Math.hypot(x, y);
export const unit = (way) => times(way, 1 / (far(way) || 1));

/** The direction of a way on the turntable: degrees clockwise from 12 o'clock. */
export const bearing = ([x, y]) => (Math.atan2(x, y) * 180) / Math.PI;

/** What moves one copy as another is moved: the same change, seen from the frame of each. */
export function alike(change, frame, other) {
  const away = back(frame);
  const out = back(other);
  if (!away || !out) return still;
  return then(then(then(then(out, frame), change), away), other);
}
