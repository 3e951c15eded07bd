// Integrals of one function over many lanes at once, each lane with its own bounds and its own mesh.
// Every lane starts with equal panels (so that narrow peaks are met), halves those whose Gauss-Kronrod
// estimate is not good enough yet, and turns to a march in the logarithm of the distance where halving
// at an end does not help, or where a bound is infinite. All lanes' open panels are evaluated together.
// Source: the globally adaptive strategy of QUADPACK (Piessens et al. 1983), several panels a round.

import { pointsPerPanel } from './gauss-kronrod.ts';
import type { LaneFunction } from './lane-function.ts';
import { advance, closest, endOf, newMarch, nextPanel, type March } from './march.ts';
import {
  ascending,
  canBeHalved,
  evaluatePanels,
  halves,
  newPanel,
  type Panel,
  type PanelTask,
  type VariableChange
} from './panel.ts';
import { compensatedSum } from './summation.ts';

/** What became of an integral. */
export const integralStatus = { converged: 0, inaccurate: 1, notFinite: 2, budget: 3 } as const;

export interface IntegralOptions {
  /** Aim for error / |value|, until a tenth of the budget is gone. Default 1e-10. */
  readonly relative?: number;
  /** The aim may also be met absolutely [unit of f times x]. Default 0. */
  readonly absolute?: number;
  /** An error / |value| above it is 'inaccurate'. Default 1e-8. */
  readonly acceptable?: number;
  /** Values of f that one lane may ask for. Default 50,000. */
  readonly maxEvaluations?: number;
  /** Equal panels to start with. Default 16, that is 240 values. */
  readonly panels?: number;
  /** Most entries handed to f in one call. Default 4,096; has no effect on any figure. */
  readonly batch?: number;
}

export interface Integrals {
  /** [unit of f times x]; NaN where the status is notFinite. */
  readonly value: Float64Array;
  /** Estimate of |value - integral|; Infinity where the status is notFinite. */
  readonly error: Float64Array;
  /** Of `integralStatus`. */
  readonly status: Uint8Array;
  /**
   * Abscissa of the value that was not finite, or the end (infinite ones too) towards which f does not
   * fall off fast enough to have an integral; NaN otherwise.
   */
  readonly where: Float64Array;
  /** Values of f asked for, all lanes together. */
  readonly evaluations: number;
}

/** Cancellation: an error this small beside the integral of |f| is as good as float64 gets. */
const roundingShare = 1e-13;
/** An end panel halved this often is taken for singular. */
const singularDepth = 5;
/** Halvings granted to a panel with a value that is not finite: it may be one removable point. */
const mostRetries = 3;
/** Lanes in hand at a time; bounds the memory, has no effect on any figure. */
const laneBlock = 256;

/**
 * Integral of f from low to high, lane by lane.
 *
 * @param f          see LaneFunction; never evaluated at a bound itself
 * @param low        lower bound of each lane [unit of x]; -inf and inf allowed
 * @param high       upper bound of each lane [unit of x]; below low: the negative; equal: 0
 * @param laneCount  lanes in use
 *
 * Error   error <= max(absolute, relative |value|, 1e-13 integral of |f|) is aimed at; 'converged'
 *         promises it with `acceptable` for `relative`, as far as the estimate of QUADPACK can
 *         promise; a peak narrower than about 1/200 of the range (or, on an infinite range, than a
 *         tenth of its distance from the finite bound or from 0) can be missed
 * Cost    240 values for a smooth f; some 700 for an infinite range; 500 more for a singular end
 * Fails   'inaccurate' (noise, no convergence), 'notFinite' (f, a bound, or no integral at all;
 *         gives x), 'budget'; value and error are then the best there is
 * Source  R. Piessens et al., QUADPACK, 1983; variable change after Takahasi and Mori 1974
 * @example integrateLanes(f, Float64Array.of(0), Float64Array.of(1), 1).value[0]
 */
export function integrateLanes(
  f: LaneFunction,
  low: Float64Array,
  high: Float64Array,
  laneCount: number,
  options: IntegralOptions = {}
): Integrals {
  const value = new Float64Array(laneCount);
  const error = new Float64Array(laneCount);
  const status = new Uint8Array(laneCount);
  const where = new Float64Array(laneCount).fill(NaN);
  const limits: Required<IntegralOptions> = {
    relative: options.relative ?? 1e-10,
    absolute: options.absolute ?? 0,
    acceptable: Math.max(options.acceptable ?? 1e-8, options.relative ?? 0),
    maxEvaluations: options.maxEvaluations ?? 50_000,
    panels: options.panels ?? 16,
    batch: options.batch ?? 4096
  };
  let evaluations = 0;
  for (let from = 0; from < laneCount; from += laneBlock) {
    const states: LaneState[] = [];
    for (let lane = from; lane < Math.min(laneCount, from + laneBlock); lane++) {
      states.push(begin(lane, low[lane] ?? NaN, high[lane] ?? NaN, limits.panels));
    }
    evaluations += run(f, states, limits);
    for (const state of states) {
      const outcome = finish(state, limits);
      value[state.lane] = outcome.value;
      error[state.lane] = outcome.error;
      status[state.lane] = outcome.status;
      where[state.lane] = state.notFiniteAt;
    }
  }
  return { value, error, status, where, evaluations };
}

interface LaneState {
  readonly lane: number;
  /** -1 where the bounds were exchanged. */
  readonly sign: 1 | -1;
  readonly low: number;
  readonly high: number;
  /** Panels with their estimates. */
  panels: Panel[];
  /** Panels that wait for values. */
  open: Panel[];
  /** Where `open` holds halves: the panel that each pair came from. */
  parents: Panel[];
  /** The march under way: its panel is the only open one. */
  march: March | null;
  /** Marches to come, in order. */
  marches: March[];
  /** Estimates of what the marches left out. */
  tail: number;
  evaluations: number;
  stopped: 'running' | 'done' | 'notFinite' | 'budget';
  notFiniteAt: number;
}

function begin(lane: number, from: number, to: number, panelCount: number): LaneState {
  const sign = from > to ? -1 : 1;
  const low = sign === 1 ? from : to;
  const high = sign === 1 ? to : from;
  const state: LaneState = {
    lane, sign, low, high, panels: [], open: [], parents: [], march: null, marches: [], tail: 0,
    evaluations: 0, stopped: 'running', notFiniteAt: NaN
  }; // prettier-ignore
  if (low === high) state.stopped = 'done';
  else if (Number.isNaN(low) || Number.isNaN(high)) state.stopped = 'notFinite';
  else if (Number.isFinite(low) && Number.isFinite(high)) {
    const change: VariableChange = { kind: 'none', origin: 0, rank: 1 };
    let edge = low;
    for (let i = 1; i <= panelCount; i++) {
      const next = i === panelCount ? high : low * (1 - i / panelCount) + high * (i / panelCount);
      if (next > edge) state.open.push(newPanel(change, edge, next));
      edge = next;
    }
  } else {
    if (low === -Infinity) addInfinite(state, 'below', Number.isFinite(high) ? high : 0, 0);
    if (high === Infinity) addInfinite(state, 'above', Number.isFinite(low) ? low : 0, 2);
    startMarch(state);
  }
  return state;
}

/** Outward from distance 1, then inward: f tells what its scale is before small distances are tried. */
function addInfinite(
  state: LaneState,
  kind: 'above' | 'below',
  origin: number,
  rank: number
): void {
  const change: VariableChange = { kind, origin, rank };
  const start = Math.max(0, closest(origin) + 1);
  for (const direction of [1, -1] as const) {
    const march = newMarch(change, direction, 'infinity', start);
    if (march) state.marches.push(march);
  }
}

function startMarch(state: LaneState): void {
  state.march = state.marches.shift() ?? null;
  if (state.march) state.open.push(nextPanel(state.march));
}

/** Rounds of evaluation until no lane is running. Returns the number of values asked for. */
function run(f: LaneFunction, states: LaneState[], limits: Required<IntegralOptions>): number {
  let evaluations = 0;
  for (;;) {
    const tasks: PanelTask[] = [];
    for (const state of states) {
      if (state.stopped !== 'running') continue;
      const cost = state.open.length * pointsPerPanel;
      if (state.evaluations + cost > limits.maxEvaluations) {
        state.stopped = 'budget';
        continue;
      }
      state.evaluations += cost;
      for (const panel of state.open) {
        tasks.push({ lane: state.lane, low: state.low, high: state.high, panel });
      }
    }
    if (tasks.length === 0) return evaluations;
    evaluations += tasks.length * pointsPerPanel;
    evaluatePanels(f, tasks, limits.batch);
    for (const state of states) {
      if (state.stopped !== 'running') continue;
      if (state.march) takeMarchPanel(state, state.march);
      else takePanels(state);
      if (state.stopped !== 'running' || state.open.length > 0) continue;
      if (state.marches.length > 0) startMarch(state);
      else refine(state, limits);
    }
  }
}

function takeMarchPanel(state: LaneState, march: March): void {
  const panel = state.open.pop();
  if (!panel) return;
  const step = advance(march, panel, magnitudeOf(state.panels));
  if (Number.isNaN(panel.notFiniteAt)) state.panels.push(panel);
  if (step.kind === 'next') state.open.push(step.panel);
  else if (step.kind === 'ended') {
    // Without a change of sign there is no integral; with one there may be, beyond what is tried here.
    const isOneSign = Math.abs(panel.value) > 0.99 * panel.magnitude;
    if (step.tail === Infinity && isOneSign) stopNotFinite(state, endOf(march));
    else {
      state.tail += step.tail;
      startMarch(state);
    }
  } else stopNotFinite(state, step.where);
}

/** Keeps the panels that have finite values; halves the others, a few times. */
function takePanels(state: LaneState): void {
  for (const [i, parent] of state.parents.entries()) {
    noteProgress(parent, state.open[2 * i], state.open[2 * i + 1]);
  }
  const taken = state.open;
  state.open = [];
  state.parents = [];
  let failedAt = NaN;
  for (const panel of taken) {
    if (Number.isNaN(panel.notFiniteAt)) state.panels.push(panel);
    else if (Number.isNaN(panel.magnitude)) failedAt = lower(failedAt, panel.notFiniteAt);
    else if (panel.retries < mostRetries) openHalves(state, panel, panel.retries + 1);
    else state.panels.push(panel);
  }
  if (!Number.isNaN(failedAt)) stopNotFinite(state, failedAt);
}

function openHalves(state: LaneState, panel: Panel, retries: number): void {
  state.parents.push(panel);
  state.open.push(...halves(panel, retries));
}

/** Halving that leaves value and error as they were meets noise (QUADPACK's test for rounding). */
function noteProgress(parent: Panel, low: Panel | undefined, high: Panel | undefined): void {
  if (!low || !high || !Number.isNaN(parent.notFiniteAt)) return;
  const value = low.value + high.value;
  const isNoise =
    Math.abs(value - parent.value) <= 1e-5 * Math.abs(value) &&
    low.error + high.error >= 0.99 * parent.error;
  if (!isNoise) return;
  low.stalled++;
  high.stalled++;
}

/** The lower of two abscissae, of which the first may be NaN. */
function lower(a: number, b: number): number {
  return b >= a ? a : b;
}

function stopNotFinite(state: LaneState, where: number): void {
  state.stopped = 'notFinite';
  state.notFiniteAt = where;
  state.open = [];
}

/** Ends a lane whose estimate is good enough; else opens the panels that hold most of the error. */
function refine(state: LaneState, limits: Required<IntegralOptions>): void {
  state.panels.sort(ascending);
  const sums = totals(state);
  const aim = wanted(sums, limits, limits.relative);
  const isLate = state.evaluations > limits.maxEvaluations / 10;
  if (sums.error <= (isLate ? wanted(sums, limits, limits.acceptable) : aim)) {
    state.stopped = 'done';
    return;
  }
  const share = aim / (2 * state.panels.length);
  const kept: Panel[] = [];
  for (const panel of state.panels) {
    if (panel.error <= share || !canBeHalved(panel)) kept.push(panel);
    else if (!turnToMarch(state, panel)) openHalves(state, panel, 0);
  }
  state.panels = kept;
  if (state.open.length > 0) return;
  if (state.marches.length > 0) startMarch(state);
  else state.stopped = 'done';
}

interface Totals {
  readonly value: number;
  readonly error: number;
  readonly magnitude: number;
}

/** The error that will do. */
function wanted(sums: Totals, limits: Required<IntegralOptions>, relative: number): number {
  const { value, magnitude } = sums;
  return Math.max(limits.absolute, relative * Math.abs(value), roundingShare * magnitude);
}

/** An end panel that halving does not help is done over in the logarithm of the distance. */
function turnToMarch(state: LaneState, panel: Panel): boolean {
  if (panel.change.kind !== 'none' || panel.depth < singularDepth) return false;
  const atLow = panel.low === state.low;
  if (!atLow && panel.high !== state.high) return false;
  const change: VariableChange = atLow
    ? { kind: 'above', origin: state.low, rank: 0 }
    : { kind: 'below', origin: state.high, rank: 2 };
  const march = newMarch(change, -1, 'end', Math.log(panel.high - panel.low));
  if (march) state.marches.push(march);
  return march !== null;
}

function magnitudeOf(panels: readonly Panel[]): number {
  let magnitude = 0;
  for (const panel of panels) magnitude += panel.magnitude;
  return magnitude;
}

/** Sums over the panels, which stand in ascending order of x. */
function totals(state: LaneState): Totals {
  const value = compensatedSum(state.panels.map((panel) => panel.value));
  let error = state.tail;
  for (const panel of state.panels) error += panel.error;
  return { value, error, magnitude: magnitudeOf(state.panels) };
}

function finish(
  state: LaneState,
  limits: Required<IntegralOptions>
): { value: number; error: number; status: number } {
  if (state.stopped === 'notFinite') {
    return { value: NaN, error: Infinity, status: integralStatus.notFinite };
  }
  // Out of budget, a panel without its halves' values is still worth its own estimate.
  state.panels.push(...state.parents);
  state.panels.sort(ascending);
  const sums = totals(state);
  const value = state.sign * sums.value + 0;
  if (sums.error <= wanted(sums, limits, limits.acceptable)) {
    return { value, error: sums.error, status: integralStatus.converged };
  }
  for (const { notFiniteAt } of state.panels) {
    if (!Number.isNaN(notFiniteAt)) state.notFiniteAt = lower(state.notFiniteAt, notFiniteAt);
  }
  if (!Number.isNaN(state.notFiniteAt)) {
    return { value: NaN, error: Infinity, status: integralStatus.notFinite };
  }
  const status = state.stopped === 'budget' ? integralStatus.budget : integralStatus.inaccurate;
  return { value, error: sums.error, status };
}
