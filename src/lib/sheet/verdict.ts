// The verdict on one limit at one stage, from figures alone. The comparison decides first, with 1e-9 of
// the larger side as its band; utilisation and margin say how far there is to go. A [safety] limit is
// judged at the unfavourable end of the 95 % interval. Nothing here ever says more than inside or over.

import type { Comparison } from '#lib/document/index.ts';
import type { LimitStatus } from './results.ts';

/** Sides in written order, SI; null is `none`. */
export interface LimitFigures {
  readonly form: Comparison['form'];
  readonly sides: readonly (number | null)[];
  /** SI, of `a == b ± t`; null where none is written. */
  readonly tolerance: number | null;
  /** Judged by margin: decibels, or points on a temperature scale. */
  readonly isLevel: boolean;
  readonly isSafety: boolean;
  readonly isScreen: boolean;
  /** `[close at …]` as a utilisation, `[close within …]` as a margin [SI]. */
  readonly close: { readonly kind: 'at' | 'within'; readonly amount: number } | null;
  /** u of (left - right) at each pair of sides that is compared, SI; null where it is exact. */
  readonly uncertainty: (left: number, right: number) => number | null;
}

export interface Verdict {
  readonly status: LimitStatus;
  readonly atLimit: boolean;
  /** Indices into `sides` of what is judged and of what it is held against. */
  readonly left: number;
  readonly right: number;
  readonly utilisation: number | null;
  /** SI; negative when over. */
  readonly margin: number | null;
  readonly chanceOver: number | null;
}

/** Relative width of the band in which a limit holds and reads "at the limit". */
const band = 1e-9;
/** Half-width of a 95 % interval in standard uncertainties, normal distribution (JCGM 100:2008, G.1). */
export const coverageFactor95 = 1.96;
const defaultClose = 0.9;
const chanceThatIsClose = 0.05;

/** One comparison of a limit: `demand` must not exceed `capacity`. */
interface Comparing {
  readonly left: number;
  readonly right: number;
  /** demand - capacity: positive is over. */
  readonly excess: number;
  readonly size: number;
  readonly utilisation: number | null;
  readonly uncertainty: number | null;
}

/** Judges a limit whose sides all have values. */
export function judge(limit: LimitFigures): Verdict {
  const comparisons = comparisonsOf(limit);
  const governing = comparisons.reduce<Comparing | null>(
    (worst, each) => (worst && !isWorse(each, worst) ? worst : each), null
  ); // prettier-ignore
  if (!governing) {
    return {
      status: limit.isScreen ? 'not-shown-to-fail' : limit.form === 'actual>=required' ? 'met' : 'within',
      atLimit: false, left: 0, right: 1, utilisation: null, margin: null, chanceOver: null
    }; // prettier-ignore
  }
  const { excess, size, uncertainty } = governing;
  const width = band * size;
  const spread = limit.isSafety && uncertainty !== null ? coverageFactor95 * uncertainty : 0;
  const isOver = excess + spread > width;
  const chanceOver = uncertainty === null ? null : normalProbability(excess / uncertainty);
  const utilisation = limit.isLevel || limit.isScreen ? null : governing.utilisation;
  return {
    status: statusOf(limit, isOver, utilisation, -excess, chanceOver),
    atLimit: !isOver && Math.abs(excess) <= width,
    left: governing.left,
    right: governing.right,
    utilisation,
    margin: -excess,
    chanceOver
  };
}

function statusOf(
  limit: LimitFigures,
  isOver: boolean,
  utilisation: number | null,
  margin: number,
  chanceOver: number | null
): LimitStatus {
  // prettier-ignore
  if (limit.isScreen) return isOver ? 'fails' : 'not-shown-to-fail';
  const isRequirement = limit.form === 'actual>=required';
  if (isOver) return isRequirement ? 'short' : 'over';
  if (chanceOver !== null && chanceOver > chanceThatIsClose) return 'close';
  if (limit.close?.kind === 'within' && margin <= limit.close.amount) return 'close';
  const closeAt = limit.close?.kind === 'at' ? limit.close.amount : defaultClose;
  const byRatio = !isRequirement || limit.close?.kind === 'at';
  if (byRatio && utilisation !== null && utilisation >= closeAt * (1 - band)) return 'close';
  return isRequirement ? 'met' : 'within';
}

function comparisonsOf(limit: LimitFigures): readonly Comparing[] {
  const [first = null, second = null, third = null] = limit.sides;
  const pair = (demand: number | null, capacity: number | null, left: number, right: number): Comparing[] =>
    demand === null || capacity === null
      ? []
      : [{
          left, right, excess: demand - capacity, size: Math.max(Math.abs(demand), Math.abs(capacity)),
          utilisation: demand >= 0 && capacity > 0 ? demand / capacity : null,
          uncertainty: limit.uncertainty(left, right)
        }]; // prettier-ignore
  switch (limit.form) {
    case 'demand<=capacity':
      return pair(first, second, 0, 1);
    case 'actual>=required':
      // The requirement is the demand, what is there the capacity; shown as actual against required.
      return pair(second, first, 0, 1);
    case 'low<=x<=high':
      return [...pair(second, third, 1, 2), ...pair(first, second, 1, 0)];
    case 'x outside a..b': {
      if (first === null || second === null || third === null) return [];
      // Outside on the nearer side is enough, so the more favourable comparison decides.
      const [below] = pair(first, second, 0, 1);
      const [above] = pair(third, first, 0, 2);
      const better = below && above ? (below.excess <= above.excess ? below : above) : null;
      return better ? [{ ...better, utilisation: null }] : [];
    }
    case 'a==b': {
      if (first === null || second === null) return [];
      const difference = Math.abs(first - second);
      const allowed = limit.tolerance ?? 0;
      const size = Math.max(Math.abs(first), Math.abs(second), allowed);
      return [{
        left: 0, right: 1, excess: difference - allowed, size,
        utilisation: allowed > 0 ? difference / allowed : null, uncertainty: limit.uncertainty(0, 1)
      }]; // prettier-ignore
    }
  }
}

function isWorse(a: Comparing, b: Comparing): boolean {
  if (a.excess > band * a.size !== b.excess > band * b.size) return a.excess > band * a.size;
  if (a.utilisation !== null && b.utilisation !== null) return a.utilisation > b.utilisation;
  return a.excess > b.excess;
}

/**
 * Probability that a standard normal variable is below z: the complementary error function by
 * Chebyshev fit, relative error below 1.2e-7.
 *
 * Source  W. H. Press et al., Numerical Recipes, 2nd ed., 6.2 (erfcc); from memory, checked in the test
 *         against values of the error function
 */
export function normalProbability(z: number): number {
  if (Number.isNaN(z)) return NaN;
  const x = -z / Math.SQRT2;
  const t = 1 / (1 + 0.5 * Math.abs(x));
  const polynomial = chebyshev.reduceRight((sum, coefficient) => sum * t + coefficient, 0);
  const tail = t * Math.exp(-x * x + polynomial);
  return (x >= 0 ? tail : 2 - tail) / 2;
}

const chebyshev = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
  -0.82215223, 0.17087277
]; // prettier-ignore
