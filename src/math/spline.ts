/**
 * Second derivatives of the cubic spline through the first `count` of `(t[i], y[i])`, written into `m`, with the slope given at the first knot and
 * either a slope or a zero second derivative ("free") at the last. Units: those of y over t squared.
 * Source: the standard tridiagonal system of the C2 cubic spline (de Boor, A Practical Guide to Splines, chapter IV).
 */
export function solveSplineCurvature(
  t: Float64Array,
  y: Float64Array,
  count: number,
  startSlope: number,
  endSlope: number | 'free',
  m: Float64Array,
): void {
  const last = count - 1;
  // Thomas algorithm; `upper` and the right-hand side live in small scratch arrays.
  const upper = scratchA;
  const right = scratchB;
  let h = t[1] - t[0];
  upper[0] = 0.5;
  right[0] = (3 / h) * ((y[1] - y[0]) / h - startSlope);
  for (let i = 1; i < last; i++) {
    const next = t[i + 1] - t[i];
    const mu = h / (h + next);
    const rhs = (6 / (h + next)) * ((y[i + 1] - y[i]) / next - (y[i] - y[i - 1]) / h);
    const pivot = 2 - mu * upper[i - 1];
    upper[i] = (1 - mu) / pivot;
    right[i] = (rhs - mu * right[i - 1]) / pivot;
    h = next;
  }
  if (endSlope === 'free') {
    m[last] = 0;
  } else {
    const rhs = (6 / h) * (endSlope - (y[last] - y[last - 1]) / h);
    m[last] = (rhs - right[last - 1]) / (2 - upper[last - 1]);
  }
  for (let i = last - 1; i >= 0; i--) m[i] = right[i] - upper[i] * m[i + 1];
}

const MAX_KNOTS = 32;
const scratchA = new Float64Array(MAX_KNOTS);
const scratchB = new Float64Array(MAX_KNOTS);

/**
 * Coefficients c0..c5 of one cubic piece in local time (t - t0), from its end values and second derivatives.
 */
export function writeCubicPiece(
  out: Float64Array,
  at: number,
  h: number,
  y0: number,
  y1: number,
  m0: number,
  m1: number,
): void {
  out[at] = y0;
  out[at + 1] = (y1 - y0) / h - (h * (2 * m0 + m1)) / 6;
  out[at + 2] = m0 / 2;
  out[at + 3] = (m1 - m0) / (6 * h);
  out[at + 4] = 0;
  out[at + 5] = 0;
}

/**
 * Adds to a piece of length `h` the quintic that changes its second derivative at the end by `change` and leaves
 * value and slope at both ends, and the second derivative at the start, as they are.
 */
export function addEndCurvature(out: Float64Array, at: number, h: number, change: number): void {
  // change h^2/2 u^3 (1-u)^2 with u = local time / h
  const k = change / (2 * h);
  out[at + 3] += k;
  out[at + 4] -= (2 * k) / h;
  out[at + 5] += k / (h * h);
}

/**
 * Adds to a piece of length `h` the quintic that changes its second derivative at the start by `change` and leaves
 * value and slope at both ends, and the second derivative at the end, as they are.
 */
export function addStartCurvature(out: Float64Array, at: number, h: number, change: number): void {
  // change h^2/2 u^2 (1-u)^3 with u = local time / h
  const k = change / 2;
  out[at + 2] += k;
  out[at + 3] -= (3 * k) / h;
  out[at + 4] += (3 * k) / (h * h);
  out[at + 5] -= k / (h * h * h);
}

/** Value of a piece at local time `s`. */
export function pieceValue(c: Float64Array, at: number, s: number): number {
  return c[at] + s * (c[at + 1] + s * (c[at + 2] + s * (c[at + 3] + s * (c[at + 4] + s * c[at + 5]))));
}

/** Slope of a piece at local time `s`. */
export function pieceSlope(c: Float64Array, at: number, s: number): number {
  return c[at + 1] + s * (2 * c[at + 2] + s * (3 * c[at + 3] + s * (4 * c[at + 4] + s * 5 * c[at + 5])));
}

/** Second derivative of a piece at local time `s`. */
export function pieceCurvature(c: Float64Array, at: number, s: number): number {
  return 2 * c[at + 2] + s * (6 * c[at + 3] + s * (12 * c[at + 4] + s * 20 * c[at + 5]));
}

/** Rises from 0 to 1 with zero slope and curvature at both ends (C2): 0 before 0, 1 after 1. */
export function smoothRise(u: number): number {
  if (u <= 0) return 0;
  if (u >= 1) return 1;
  return u * u * u * (10 + u * (6 * u - 15));
}
