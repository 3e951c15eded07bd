// Interpolation in a table of points with ascending abscissae: straight lines, straight lines with the
// end values held, and the natural cubic spline. Every kind is linear in the ordinates, so a tangent
// of the result with respect to anything the ordinates depend on is the same interpolation of their
// tangents.
// Source of the spline: C. de Boor, A Practical Guide to Splines, Springer 1978, chapter IV (the
// natural end conditions and the tridiagonal system for second slopes are textbook matter).

import { at } from './lane-function.ts';

/**
 * 'linear' and 'spline' know nothing outside the table; 'held' keeps the end values there. 'spline'
 * is the natural cubic spline: second slope continuous, zero at both ends. It is smooth and may
 * swing beyond the points beside it; where that must not happen, take 'linear'.
 */
export type InterpolationKind = 'linear' | 'held' | 'spline';

export type InterpolationStatus =
  | 'inside'
  /** x lies below the first or above the last abscissa; 'held' still gives a value. */
  | 'below'
  | 'above'
  /** No points, fewer ordinates than abscissae or the reverse. */
  | 'empty'
  | 'notAscending'
  /** x, or a point, is NaN or infinite. */
  | 'notFinite';

export interface Interpolation {
  /** [unit of y]; NaN where there is none. */
  readonly value: number;
  /** d value / d x [unit of y per unit of x]; at a kink that of the piece above. */
  readonly slope: number;
  readonly status: InterpolationStatus;
}

/** A table that has been looked over once and may then be asked many times. */
export interface Interpolant {
  readonly kind: InterpolationKind;
  readonly xs: ArrayLike<number>;
  readonly ys: ArrayLike<number>;
  /** Second slopes at the points; empty unless the kind is 'spline'. */
  readonly seconds: Float64Array;
  readonly fault: 'empty' | 'notAscending' | 'notFinite' | null;
}

/**
 * Looks a table over and prepares it.
 *
 * @param xs  abscissae, strictly ascending [unit of x]
 * @param ys  ordinates, as many [unit of y]
 * @returns an interpolant; `fault` says what is wrong with the points, and every answer then has it
 *          as its status
 *
 * Cost    once through the points
 */
export function interpolant(
  kind: InterpolationKind,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>
): Interpolant {
  const fault = faultOf(xs, ys);
  const seconds =
    kind === 'spline' && fault === null ? naturalCubicSpline(xs, ys) : new Float64Array(0);
  return { kind, xs, ys, seconds, fault };
}

/**
 * Value and slope at x.
 *
 * Error   a few roundings; the values of the table itself are given back exactly
 * Fails   status 'below' or 'above' (with a value only for 'held'), or the table's own fault
 * Cost    one bisection
 */
export function interpolateAt(table: Interpolant, x: number): Interpolation {
  const { kind, xs, ys, fault } = table;
  if (fault !== null) return without(fault);
  if (!Number.isFinite(x)) return without('notFinite');
  const last = xs.length - 1;
  if (x < at(xs, 0)) return outside(kind, 'below', at(ys, 0));
  if (x > at(xs, last)) return outside(kind, 'above', at(ys, last));
  if (last === 0) return { value: at(ys, 0), slope: 0, status: 'inside' };
  const i = Math.min(segmentOf(xs, x), last - 1);
  const width = at(xs, i + 1) - at(xs, i);
  const rise = at(ys, i + 1) - at(ys, i);
  const b = (x - at(xs, i)) / width;
  const a = 1 - b;
  const isEnd = b === 1;
  const value = isEnd ? at(ys, i + 1) : b === 0 ? at(ys, i) : a * at(ys, i) + b * at(ys, i + 1);
  if (kind !== 'spline') return { value, slope: rise / width, status: 'inside' };
  const low = at(table.seconds, i);
  const high = at(table.seconds, i + 1);
  return {
    value: value + (((a * a * a - a) * low + (b * b * b - b) * high) * width * width) / 6,
    slope: rise / width + (((3 * b * b - 1) * high - (3 * a * a - 1) * low) * width) / 6,
    status: 'inside'
  };
}

/** Both in one call, for a table that is asked once. */
export function interpolate(
  kind: InterpolationKind,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  x: number
): Interpolation {
  return interpolateAt(interpolant(kind, xs, ys), x);
}

/**
 * Second slopes of the natural cubic spline at its points.
 *
 * @param xs  strictly ascending [unit of x]
 * @param ys  as many [unit of y]
 * @returns one a point, zero at both ends [unit of y per unit of x squared]
 *
 * Source  de Boor 1978, chapter IV; the tridiagonal system is diagonally dominant, so elimination
 *         needs no exchange of rows
 */
export function naturalCubicSpline(xs: ArrayLike<number>, ys: ArrayLike<number>): Float64Array {
  const count = xs.length;
  const seconds = new Float64Array(count);
  const upper = new Float64Array(count);
  for (let i = 1; i < count - 1; i++) {
    const before = at(xs, i) - at(xs, i - 1);
    const after = at(xs, i + 1) - at(xs, i);
    const slopeBefore = (at(ys, i) - at(ys, i - 1)) / before;
    const slopeAfter = (at(ys, i + 1) - at(ys, i)) / after;
    const pivot = 2 * (before + after) - before * at(upper, i - 1);
    upper[i] = after / pivot;
    seconds[i] = (6 * (slopeAfter - slopeBefore) - before * at(seconds, i - 1)) / pivot;
  }
  for (let i = count - 2; i > 0; i--) {
    seconds[i] = at(seconds, i) - at(upper, i) * at(seconds, i + 1);
  }
  return seconds;
}

/**
 * Index of the last value that is not above x, by bisection.
 *
 * @param xs  ascending
 * @returns -1 where x lies below all of them, is NaN, or there are none
 */
export function segmentOf(xs: ArrayLike<number>, x: number): number {
  let low = -1;
  let high = xs.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(xs, middle) <= x) low = middle;
    else high = middle;
  }
  return low;
}

function faultOf(xs: ArrayLike<number>, ys: ArrayLike<number>): Interpolant['fault'] {
  if (xs.length === 0 || xs.length !== ys.length) return 'empty';
  for (let i = 0; i < xs.length; i++) {
    if (!Number.isFinite(xs[i]) || !Number.isFinite(ys[i])) return 'notFinite';
  }
  for (let i = 1; i < xs.length; i++) if (!(at(xs, i) > at(xs, i - 1))) return 'notAscending';
  return null;
}

function outside(
  kind: InterpolationKind,
  status: 'below' | 'above',
  endValue: number
): Interpolation {
  return kind === 'held' ? { value: endValue, slope: 0, status } : without(status);
}

function without(status: InterpolationStatus): Interpolation {
  return { value: NaN, slope: NaN, status };
}
