// A march goes panel by panel from a place inside the range towards an end where f may be singular,
// or towards infinity, in the logarithm of the distance. How fast the panels' contents fall says how
// much is left beyond; the march stops once that no longer matters. So f is not evaluated at
// distances that the result does not rest on, where it might overflow or lose all its digits.

import { newPanel, type Panel, type VariableChange } from './panel.ts';

/** e^690 is near the largest double, e^-690 near the smallest. */
const farthest = 690;
/** A remainder below this share of the integral of |f| is left out (and counted in the error). */
const negligibleShare = 1e-13;
/** So many panels in a row must be negligible: a factor 20 in distance when one panel is a factor e. */
const negligibleRun = 3;
const mostShrinks = 4;

export interface March {
  readonly change: VariableChange;
  /** +1 away from the origin, -1 towards it. */
  readonly direction: 1 | -1;
  /** Towards infinity, panels are one factor e wide over all scales met in practice. */
  readonly reach: 'infinity' | 'end';
  /** w at which the march ends at the latest. */
  readonly limit: number;
  readonly start: number;
  /** w up to which the panels are done. */
  edge: number;
  /** Integral of |f| per unit of w in the last panel, and where. */
  density: number;
  centre: number;
  /** Estimate of what lies beyond the edge. */
  tail: number;
  negligible: number;
  shrinks: number;
}

export type MarchStep =
  | { readonly kind: 'next'; readonly panel: Panel }
  | { readonly kind: 'ended'; readonly tail: number }
  | { readonly kind: 'notFinite'; readonly where: number };

/** A march from distance e^start; null where the distance is below what rounding lets pass. */
export function newMarch(
  change: VariableChange,
  direction: 1 | -1,
  reach: 'infinity' | 'end',
  start: number
): March | null {
  const limit = direction === 1 ? farthest : closest(change.origin);
  if (direction * (limit - start) <= 0) return null;
  return {
    change, direction, reach, limit, start,
    edge: start, density: NaN, centre: start, tail: Infinity, negligible: 0, shrinks: 0
  }; // prettier-ignore
}

/** Smallest w whose distance from `origin` survives rounding. */
export function closest(origin: number): number {
  return origin === 0 ? -farthest : Math.max(-farthest, Math.log(2 ** -50 * Math.abs(origin)));
}

/** The abscissa that a march goes towards. */
export function endOf({ change, direction }: March): number {
  if (direction === -1) return change.origin;
  return change.kind === 'above' ? Infinity : -Infinity;
}

/** The panel after the edge. */
export function nextPanel(march: March): Panel {
  const travelled = Math.abs(march.edge - march.start);
  const width =
    march.reach === 'infinity'
      ? Math.max(1, (Math.abs(march.edge) - 24) / 4)
      : Math.max(2, travelled / 4);
  return panelOfWidth(march, width);
}

/**
 * Takes the panel that the march asked for last, and says what comes next.
 *
 * @param magnitude  integral of |f| over all panels of the lane so far, without this one
 * @returns 'next' (and the panel belongs to the integral, unless it was not finite), 'ended' with
 *          the estimate of what was left out, or 'notFinite'
 */
export function advance(march: March, panel: Panel, magnitude: number): MarchStep {
  if (!Number.isNaN(panel.notFiniteAt)) return meetNotFinite(march, panel, magnitude);
  const width = panel.high - panel.low;
  const density = panel.magnitude / width;
  const centre = panel.low / 2 + panel.high / 2;
  const rate = Math.log(march.density / density) / Math.abs(centre - march.centre);
  march.tail =
    density === 0 ? 0 : rate > 0.01 ? (density * Math.exp((-rate * width) / 2)) / rate : Infinity;
  march.density = density;
  march.centre = centre;
  march.edge = march.direction === 1 ? panel.high : panel.low;
  const total = magnitude + panel.magnitude;
  const isNegligible = total > 0 && march.tail <= negligibleShare * total;
  march.negligible = isNegligible ? march.negligible + 1 : 0;
  if (march.negligible >= negligibleRun || march.edge === march.limit) {
    return { kind: 'ended', tail: march.tail };
  }
  return { kind: 'next', panel: nextPanel(march) };
}

/** Where f cannot be evaluated: no matter if nothing is left beyond; else try to come closer. */
function meetNotFinite(march: March, panel: Panel, magnitude: number): MarchStep {
  if (march.tail <= negligibleShare * magnitude) return { kind: 'ended', tail: march.tail };
  if (march.shrinks >= mostShrinks) {
    // Growth up to the last place before an end is the end's doing.
    const isGrowth = march.direction === -1 && march.density > 0 && march.tail === Infinity;
    return { kind: 'notFinite', where: isGrowth ? endOf(march) : panel.notFiniteAt };
  }
  march.shrinks++;
  return { kind: 'next', panel: panelOfWidth(march, (panel.high - panel.low) / 4) };
}

function panelOfWidth(march: March, width: number): Panel {
  const { change, direction, edge, limit } = march;
  const tip = direction === 1 ? Math.min(limit, edge + width) : Math.max(limit, edge - width);
  return direction === 1 ? newPanel(change, edge, tip) : newPanel(change, tip, edge);
}
