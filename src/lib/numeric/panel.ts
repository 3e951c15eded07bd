// A panel is one piece of one lane's integral, in x or in a changed variable. Towards an end where f
// may be singular, and towards infinity, the variable is the logarithm of the distance from a fixed
// place: x = origin + e^w or origin - e^w. There a power of the distance becomes an exponential of w,
// which a polynomial rule takes in its stride, and one step of w is a factor in x whatever its unit.
// Source of the idea: H. Takahasi, M. Mori, Double exponential formulas for numerical integration,
// Publ. RIMS 9 (1974) 721-741; here with one exponential and panels in place of the trapezium rule.

import { nodes, panelEstimate, pointsPerPanel } from './gauss-kronrod.ts';
import { at, epsilon, type LaneFunction } from './lane-function.ts';

/** How a panel's own variable w gives x. */
export interface VariableChange {
  /** 'none': x = w; 'above': x = origin + e^w; 'below': x = origin - e^w. */
  readonly kind: 'none' | 'above' | 'below';
  readonly origin: number;
  /** Place of this part of the integral among the lane's parts, ascending in x. */
  readonly rank: number;
}

export interface Panel {
  readonly change: VariableChange;
  /** Ends in w. */
  readonly low: number;
  readonly high: number;
  /** Halvings since the first panels. */
  readonly depth: number;
  /** Halvings in a row that did not make the estimates better. */
  stalled: number;
  /** Halvings in a row because f was not finite at a node. */
  readonly retries: number;
  value: number;
  error: number;
  magnitude: number;
  /** Lowest abscissa at which f was not finite, else NaN; the estimate then has an error of its own size. */
  notFiniteAt: number;
}

/** A panel that waits for its values, with the ends of the whole range that it must not touch. */
export interface PanelTask {
  readonly lane: number;
  readonly low: number;
  readonly high: number;
  readonly panel: Panel;
}

export function newPanel(
  change: VariableChange,
  low: number,
  high: number,
  depth = 0,
  stalled = 0,
  retries = 0
): Panel {
  return {
    change, low, high, depth, stalled, retries, value: 0, error: 0, magnitude: 0, notFiniteAt: NaN
  }; // prettier-ignore
}

/** The two halves of a panel. */
export function halves(panel: Panel, retries: number): readonly [Panel, Panel] {
  const { change, low, high, stalled } = panel;
  const middle = low / 2 + high / 2;
  const depth = panel.depth + 1;
  return [
    newPanel(change, low, middle, depth, stalled, retries),
    newPanel(change, middle, high, depth, stalled, retries)
  ];
}

/**
 * Whether halving can still help: not where the nodes would run into each other, nor where the
 * distance from a place other than 0 is mostly rounding.
 */
export function canBeHalved(panel: Panel): boolean {
  const { change, low, high, stalled, depth, notFiniteAt } = panel;
  if (stalled >= 4 || depth >= 60 || !Number.isNaN(notFiniteAt)) return false;
  if (change.kind === 'none') {
    return high - low > 64 * epsilon * Math.max(Math.abs(low), Math.abs(high));
  }
  return high - low > 0.01 && Math.exp(low) > 1e6 * epsilon * Math.abs(change.origin);
}

/** Order of panels along x; sums taken in this order do not depend on the order of the work. */
export function ascending(a: Panel, b: Panel): number {
  if (a.change.rank !== b.change.rank) return a.change.rank - b.change.rank;
  return a.change.kind === 'below' ? b.low - a.low : a.low - b.low;
}

/**
 * Evaluates f for panels of any lanes and fills in their estimates.
 *
 * @param batch  most entries handed to f in one call; has no effect on any figure
 */
export function evaluatePanels(f: LaneFunction, tasks: readonly PanelTask[], batch: number): void {
  const perCall = Math.max(1, Math.floor(batch / pointsPerPanel));
  const size = Math.min(perCall, tasks.length) * pointsPerPanel;
  const lanes = new Int32Array(size);
  const x = new Float64Array(size);
  const jacobian = new Float64Array(size);
  const values = new Float64Array(size);
  for (let from = 0; from < tasks.length; from += perCall) {
    const group = tasks.slice(from, from + perCall);
    let count = 0;
    for (const task of group) {
      placeNodes(task, x, jacobian, count);
      lanes.fill(task.lane, count, count + pointsPerPanel);
      count += pointsPerPanel;
    }
    f(lanes, x, count, values);
    for (const [i, { panel }] of group.entries()) {
      settle(panel, i * pointsPerPanel, x, jacobian, values);
    }
  }
}

function placeNodes(task: PanelTask, x: Float64Array, jacobian: Float64Array, from: number): void {
  const { change, low, high } = task.panel;
  const centre = low / 2 + high / 2;
  const half = high / 2 - low / 2;
  for (let i = 0; i < pointsPerPanel; i++) {
    const w = centre + half * at(nodes, i);
    const distance = change.kind === 'none' ? 1 : Math.exp(w);
    jacobian[from + i] = distance;
    x[from + i] = inside(
      change.kind === 'none'
        ? w
        : change.kind === 'above'
          ? change.origin + distance
          : change.origin - distance,
      task.low,
      task.high
    );
  }
}

/** An abscissa that rounding has put on an end of the range moves to the double beside it. */
function inside(x: number, low: number, high: number): number {
  if (x <= low) return low + Math.max(Math.abs(low) * epsilon, Number.MIN_VALUE);
  if (x >= high) return high - Math.max(Math.abs(high) * epsilon, Number.MIN_VALUE);
  return x;
}

function settle(
  panel: Panel,
  from: number,
  x: Float64Array,
  jacobian: Float64Array,
  values: Float64Array
): void {
  const end = from + pointsPerPanel;
  let notFiniteAt = NaN;
  for (let i = from; i < end; i++) {
    const product = at(values, i) * at(jacobian, i);
    values[i] = product;
    if (!Number.isFinite(product) && !(at(x, i) >= notFiniteAt)) notFiniteAt = at(x, i);
  }
  panel.notFiniteAt = notFiniteAt;
  const isWhole = Number.isNaN(notFiniteAt);
  if (!isWhole) patch(values, from, end);
  panelEstimate(values, from, panel.high / 2 - panel.low / 2, panel);
  if (!isWhole) panel.error = 10 * panel.magnitude;
}

/**
 * Puts the value before (or else after) in the place of one that is not finite. The estimate is then
 * as good as nothing, and its error says so; that is enough where a panel has become very small.
 */
function patch(values: Float64Array, from: number, end: number): void {
  for (let i = from + 1; i < end; i++) {
    if (!Number.isFinite(values[i])) values[i] = at(values, i - 1);
  }
  for (let i = end - 2; i >= from; i--) {
    if (!Number.isFinite(values[i])) values[i] = at(values, i + 1);
  }
}
