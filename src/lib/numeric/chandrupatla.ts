// Closing brackets by Chandrupatla's method: inverse quadratic interpolation where the last three
// points say that it is safe, halving elsewhere. Brackets of any lanes are closed together; what one
// does depends on its own values alone. When a bracket has closed, what is left of the difference of f
// across it tells a root (nothing) from a jump (the jump) and a pole (more than before).
// Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149, in the form of
// P. O. J. Scherer, Computational Physics, Springer 2010, section 6.1.7.3 (from memory).

import { at, type LaneFunction } from './lane-function.ts';

/** Two places where f has opposite signs; closed in place by `closeBrackets`. */
export interface Bracket {
  readonly lane: number;
  readonly a: number;
  readonly fa: number;
  readonly b: number;
  readonly fb: number;
  /** Width of the whole range searched; sets the tolerance near x = 0. */
  readonly range: number;
  /** 'notFinite' and 'discontinuous' have their place in `root`. */
  outcome: 'open' | 'found' | 'notFinite' | 'budget' | 'discontinuous';
  root: number;
}

/** Left of the difference across a bracket: below it a root for sure; else halve to the last double. */
const surelyContinuous = 1e-7;
/** Above it at the last double, the sign changes by a jump or across a pole. */
const surelyBroken = 1e-5;
/** Halvings to reach the last double; near 0 doubles go on for a thousand more. */
const mostProbes = 120;
/** Where to look instead of a place where f is not finite: it may be one point, like a pole's own. */
const detours = [0.31, 0.73, 0.17];

interface Closing {
  readonly bracket: Bracket;
  readonly tolerance: number;
  /** The newest place; [a, b] brackets, c is the one before. */
  a: number;
  fa: number;
  b: number;
  fb: number;
  c: number;
  fc: number;
  /** Next place to look at: a + t (b - a). */
  t: number;
  next: number;
  evaluations: number;
  notFinite: number;
  probes: number;
}

/**
 * Closes every bracket: sets its outcome and root.
 *
 * Error   |x - root| <= 1e-12 max(|x|, range/1e6) where the outcome is 'found'
 * Cost    about 10 values a bracket; at most `maxEvaluations`
 * @returns the number of values asked for
 */
export function closeBrackets(
  f: LaneFunction,
  brackets: readonly Bracket[],
  maxEvaluations: number,
  batch: number
): number {
  let open = brackets.map(begin);
  let evaluations = 0;
  const lanes = new Int32Array(Math.min(batch, open.length));
  const x = new Float64Array(lanes.length);
  const values = new Float64Array(lanes.length);
  while (open.length > 0) {
    for (let from = 0; from < open.length; from += lanes.length) {
      const group = open.slice(from, from + lanes.length);
      for (const [i, closing] of group.entries()) {
        closing.next = closing.a + closing.t * (closing.b - closing.a);
        lanes[i] = closing.bracket.lane;
        x[i] = closing.next;
      }
      f(lanes, x, group.length, values);
      evaluations += group.length;
      for (const [i, closing] of group.entries()) take(closing, at(values, i), maxEvaluations);
    }
    open = open.filter((closing) => closing.bracket.outcome === 'open');
  }
  return evaluations;
}

function begin(bracket: Bracket): Closing {
  const { a, fa, b, fb, range } = bracket;
  return {
    bracket, tolerance: 1e-12 * (range / 1e6), a, fa, b, fb, c: a, fc: fa, t: 0.5, next: NaN,
    evaluations: 0, notFinite: 0, probes: 0
  }; // prettier-ignore
}

function take(closing: Closing, value: number, maxEvaluations: number): void {
  closing.evaluations++;
  if (!Number.isFinite(value)) {
    const detour = detours[closing.notFinite++];
    if (detour !== undefined && closing.probes === 0) closing.t = detour;
    else settle(closing, left(closing) > 1 ? 'discontinuous' : 'notFinite', closing.next);
    return;
  }
  if (Math.sign(value) === Math.sign(closing.fa)) {
    closing.c = closing.a;
    closing.fc = closing.fa;
  } else {
    closing.c = closing.b;
    closing.fc = closing.fb;
    closing.b = closing.a;
    closing.fb = closing.fa;
  }
  closing.a = closing.next;
  closing.fa = value;
  const best = Math.abs(closing.fa) < Math.abs(closing.fb) ? closing.a : closing.b;
  if (closing.fa === 0) settle(closing, 'found', closing.a);
  else if (closing.probes > 0) probe(closing, best);
  else {
    const tolerance = Math.max(1e-12 * Math.abs(best), closing.tolerance, Number.MIN_VALUE);
    const least = tolerance / 2 / Math.abs(closing.b - closing.a);
    if (least <= 0.5) closing.t = interpolated(closing, least);
    else if (left(closing) <= surelyContinuous) settle(closing, 'found', best);
    else probe(closing, best);
  }
  if (closing.bracket.outcome === 'open' && closing.evaluations >= maxEvaluations) {
    settle(closing, 'budget', best);
  }
}

/** Where to look next, as a share of the way from a to b, at least `least` away from both. */
function interpolated(closing: Closing, least: number): number {
  const { a, b, c, fa, fb, fc } = closing;
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const isSafe = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
  const t = isSafe
    ? (fa / (fb - fa)) * (fc / (fb - fc)) +
      (((c - a) / (b - a)) * (fa / (fc - fa)) * fb) / (fc - fb)
    : 0.5;
  return Math.min(Math.max(Number.isNaN(t) ? 0.5 : t, least), 1 - least);
}

/** What is left of the difference of f across the bracket, as a share of the first difference. */
function left(closing: Closing): number {
  const { fa, fb, bracket } = closing;
  return Math.abs(fb - fa) / Math.abs(bracket.fb - bracket.fa);
}

/** Halves on, beyond the tolerance, to see whether the difference goes away. */
function probe(closing: Closing, best: number): void {
  const { a, b } = closing;
  const middle = a + 0.5 * (b - a);
  const isClosed = middle === a || middle === b;
  if (left(closing) <= surelyContinuous) settle(closing, 'found', best);
  else if (!isClosed && closing.probes < mostProbes) {
    closing.probes++;
    closing.t = 0.5;
  } else settle(closing, left(closing) <= surelyBroken ? 'found' : 'discontinuous', best);
}

function settle(closing: Closing, outcome: Bracket['outcome'], root: number): void {
  closing.bracket.outcome = outcome;
  closing.bracket.root = root;
}
