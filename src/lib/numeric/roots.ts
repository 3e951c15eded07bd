// Roots of one function over many lanes at once: a scan over equal steps finds where the sign changes,
// then a bracketing method closes in on the lowest change, lane by lane; a change across a pole or a
// jump is told from a root by what is left of it when the bracket has closed. All lanes' open brackets
// are evaluated together.
// Source: T. R. Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a
// nonlinear function without using derivatives, Advances in Engineering Software 28 (1997) 145-149.

import { closeBrackets, type Bracket } from './chandrupatla.ts';
import { at, type LaneFunction } from './lane-function.ts';

/** What became of a search. */
export const rootStatus = {
  found: 0,
  /** f has one sign at every scan point. */
  sameSign: 1,
  /** f, or an end of the range, is not finite, and no root was seen beside it. */
  notFinite: 2,
  budget: 3,
  /** The sign changes, but only across poles or jumps. */
  discontinuous: 4
} as const;

export interface RootOptions {
  /** Scan points, both ends included; at least 2. Default 64. */
  readonly points?: number;
  /** Close in on every sign change instead of the lowest. Default false. */
  readonly every?: boolean;
  /** Evaluations that one bracket may take after the scan. Default 400. */
  readonly maxEvaluations?: number;
  /** Most entries handed to f in one call. Default 4,096; has no effect on any figure. */
  readonly batch?: number;
}

export interface Roots {
  /** Lowest root [unit of x]; the lowest pole or jump for discontinuous, the best for budget; else NaN. */
  readonly root: Float64Array;
  /** Of `rootStatus`. */
  readonly status: Uint8Array;
  /** Sign changes and exact zeros seen in the scan. */
  readonly count: Int32Array;
  /** f at `low` and at `high` as they were given [unit of f]. */
  readonly atLow: Float64Array;
  readonly atHigh: Float64Array;
  /** Where f was not finite (the lowest scan point, or inside a bracket); NaN where it always was. */
  readonly where: Float64Array;
  /** With `every`: the roots of each lane, ascending. */
  readonly all?: readonly Float64Array[];
  /** Values of f asked for, all lanes together. */
  readonly evaluations: number;
}

/**
 * Lowest root of f between low and high, lane by lane.
 *
 * @param f          see LaneFunction; continuous but for poles and jumps
 * @param low        one end of each lane's range [unit of x], finite
 * @param high       the other end; below `low` it is the same range, equal is one point
 * @param laneCount  lanes in use
 *
 * Error   |x - root| <= 1e-12 max(|x|, range/1e6) where the rounding of f allows it
 * Cost    64 values for the scan, then about 10 for each bracket closed in on
 * Fails   'sameSign', 'notFinite' (gives x), 'budget', 'discontinuous'; roots closer together than
 *         1/63 of the range, or where f touches zero without a change of sign, can be missed
 * Source  Chandrupatla 1997
 * @example rootsLanes(f, Float64Array.of(0), Float64Array.of(2), 1).root[0]  // x^2 - 2: 1.414213562373
 */
export function rootsLanes(
  f: LaneFunction,
  low: Float64Array,
  high: Float64Array,
  laneCount: number,
  options: RootOptions = {}
): Roots {
  const points = options.points ?? 64;
  if (!(points >= 2)) throw new RangeError(`a scan takes at least 2 points, got ${points}`);
  const every = options.every ?? false;
  const maxEvaluations = options.maxEvaluations ?? 400;
  const batch = Math.max(1, options.batch ?? 4096);
  const root = new Float64Array(laneCount).fill(NaN);
  const status = new Uint8Array(laneCount);
  const count = new Int32Array(laneCount);
  const atLow = new Float64Array(laneCount);
  const atHigh = new Float64Array(laneCount);
  const where = new Float64Array(laneCount).fill(NaN);

  const scanned = scan(f, low, high, laneCount, points, batch);
  let evaluations = scanned.evaluations;
  const searches: Search[] = [];
  for (let lane = 0; lane < laneCount; lane++) {
    const search = newSearch(lane, scanned, points);
    searches.push(search);
    count[lane] = search.candidates.length;
    const isReversed = at(low, lane) > at(high, lane);
    const first = at(scanned.values, lane * points);
    const last = at(scanned.values, lane * points + points - 1);
    atLow[lane] = isReversed ? last : first;
    atHigh[lane] = isReversed ? first : last;
  }

  // Each pass closes the next bracket of every lane that still looks for its root.
  for (;;) {
    const brackets: Bracket[] = [];
    for (const search of searches) brackets.push(...takeBrackets(search, every));
    if (brackets.length === 0) break;
    evaluations += closeBrackets(f, brackets, maxEvaluations, batch);
  }

  for (const [lane, search] of searches.entries()) {
    const outcome = outcomeOf(search);
    root[lane] = outcome.root;
    status[lane] = outcome.status;
    where[lane] = outcome.where;
  }
  const found = { root, status, count, atLow, atHigh, where, evaluations };
  return every ? { ...found, all: searches.map(rootsOf) } : found;
}

/** A scan point where f is exactly zero, or two neighbours between which its sign changes. */
type Candidate =
  | { readonly kind: 'zero'; readonly x: number }
  | { readonly kind: 'change'; readonly bracket: Bracket };

interface Search {
  /** Ascending in x. */
  readonly candidates: readonly Candidate[];
  readonly isFinite: boolean;
  readonly notFiniteAt: number;
  /** Candidates up to here are settled or under way. */
  taken: number;
}

interface Scan {
  /** points per lane, ascending in x. */
  readonly x: Float64Array;
  readonly values: Float64Array;
  readonly evaluations: number;
}

function scan(
  f: LaneFunction,
  low: Float64Array,
  high: Float64Array,
  laneCount: number,
  points: number,
  batch: number
): Scan {
  const x = new Float64Array(laneCount * points);
  const values = new Float64Array(laneCount * points);
  for (let lane = 0; lane < laneCount; lane++) {
    const from = Math.min(at(low, lane), at(high, lane));
    const to = Math.max(at(low, lane), at(high, lane));
    for (let i = 0; i < points; i++) {
      const t = i / (points - 1);
      x[lane * points + i] = i === 0 ? from : i === points - 1 ? to : from * (1 - t) + to * t;
    }
  }
  const lanes = new Int32Array(batch);
  const total = laneCount * points;
  for (let from = 0; from < total; from += batch) {
    const size = Math.min(batch, total - from);
    for (let i = 0; i < size; i++) lanes[i] = Math.floor((from + i) / points);
    f(lanes, x.subarray(from, from + size), size, values.subarray(from, from + size));
  }
  return { x, values, evaluations: total };
}

function newSearch(lane: number, scanned: Scan, points: number): Search {
  const candidates: Candidate[] = [];
  let isWhole = true;
  let notFiniteAt = NaN;
  const from = lane * points;
  const lowest = at(scanned.x, from);
  const range = at(scanned.x, from + points - 1) - lowest;
  for (let i = from; i < from + points; i++) {
    const x = at(scanned.x, i);
    const value = at(scanned.values, i);
    const isFinite = Number.isFinite(x) && Number.isFinite(value);
    if (!isFinite && isWhole) notFiniteAt = x;
    isWhole &&= isFinite;
    const before = i > from ? at(scanned.values, i - 1) : NaN;
    if (value === 0 && isFinite) {
      // A stretch of zeros is one root, at its low end.
      if (before !== 0) candidates.push({ kind: 'zero', x });
    } else if (isFinite && Number.isFinite(before) && before * Math.sign(value) < 0) {
      const bracket: Bracket = {
        lane, a: at(scanned.x, i - 1), fa: before, b: x, fb: value, range, outcome: 'open', root: NaN
      }; // prettier-ignore
      candidates.push({ kind: 'change', bracket });
    }
    if (range === 0) break;
  }
  return { candidates, isFinite: isWhole, notFiniteAt, taken: 0 };
}

/** The brackets to close next: none once a root is found, and no more than is needed. */
function takeBrackets(search: Search, every: boolean): Bracket[] {
  const brackets: Bracket[] = [];
  while (search.taken < search.candidates.length) {
    const last = search.candidates[search.taken - 1];
    if (!every && last && isSettled(last)) return brackets;
    const next = search.candidates[search.taken++];
    if (next?.kind !== 'change') continue;
    brackets.push(next.bracket);
    if (!every) return brackets;
  }
  return brackets;
}

/** Whether a lane that wants its lowest root can stop at this candidate. */
function isSettled(candidate: Candidate): boolean {
  return candidate.kind === 'zero' || candidate.bracket.outcome !== 'discontinuous';
}

function rootsOf(search: Search): Float64Array {
  const roots: number[] = [];
  for (const candidate of search.candidates) {
    if (candidate.kind === 'zero') roots.push(candidate.x);
    else if (candidate.bracket.outcome === 'found') roots.push(candidate.bracket.root);
  }
  return Float64Array.from(roots);
}

function outcomeOf(search: Search): { root: number; status: number; where: number } {
  const where = search.notFiniteAt;
  const first = search.candidates.find(isSettled);
  if (first?.kind === 'zero') return { root: first.x, status: rootStatus.found, where };
  if (first?.bracket.outcome === 'notFinite') {
    return { root: NaN, status: rootStatus.notFinite, where: first.bracket.root };
  }
  if (first) {
    const isFound = first.bracket.outcome === 'found';
    const status = isFound ? rootStatus.found : rootStatus.budget;
    return { root: first.bracket.root, status, where };
  }
  if (!search.isFinite) return { root: NaN, status: rootStatus.notFinite, where };
  const broken = search.candidates[0];
  if (broken?.kind !== 'change') return { root: NaN, status: rootStatus.sameSign, where };
  return { root: broken.bracket.root, status: rootStatus.discontinuous, where };
}
