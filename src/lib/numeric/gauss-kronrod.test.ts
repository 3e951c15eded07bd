import { describe, expect, it } from 'vitest';
import {
  gaussWeights,
  kronrodWeights,
  nodes,
  panelEstimate,
  pointsPerPanel
} from './gauss-kronrod.ts';

function estimate(f: (x: number) => number, half = 1) {
  const values = Float64Array.from(nodes, (node) => f(half * node));
  const result = { value: NaN, error: NaN, magnitude: NaN };
  panelEstimate(values, 0, half, result);
  return result;
}

/** Sum of weights times powers of the nodes. */
const moment = (weights: Float64Array, power: number) =>
  weights.reduce((sum, weight, i) => sum + weight * (nodes[i] ?? NaN) ** power, 0);

describe('the 15-point rule', () => {
  it('carries values that are not finite into the estimate', () => {
    expect(estimate((x) => (x > 0.9 ? NaN : 1)).value).toBeNaN();
    expect(estimate((x) => (x > 0.9 ? Infinity : 1)).value).toBe(Infinity);
  });

  it('has no error left on zero, nor on a panel without width', () => {
    expect(estimate(() => 0)).toEqual({ value: 0, error: 0, magnitude: 0 });
    expect(estimate(Math.exp, 0).value).toBe(0);
  });

  it('is symmetric, ascending and inside the panel', () => {
    for (let i = 0; i < pointsPerPanel; i++) {
      expect(nodes[i]).toBe(-(nodes[pointsPerPanel - 1 - i] ?? NaN) + 0);
      expect(kronrodWeights[i]).toBe(kronrodWeights[pointsPerPanel - 1 - i]);
      expect(Math.abs(nodes[i] ?? NaN)).toBeLessThan(1);
    }
  });

  it('integrates x^n exactly to degree 23, and not 24', () => {
    for (let n = 0; n <= 23; n++) {
      const exact = n % 2 === 0 ? 2 / (n + 1) : 0;
      expect(Math.abs(moment(kronrodWeights, n) - exact)).toBeLessThan(4e-16);
    }
    expect(Math.abs(moment(kronrodWeights, 24) - 2 / 25)).toBeGreaterThan(1e-10);
  });

  it('holds the 7-point Gauss rule, exact to degree 13, and not 14', () => {
    for (let n = 0; n <= 13; n++) {
      const exact = n % 2 === 0 ? 2 / (n + 1) : 0;
      expect(Math.abs(moment(gaussWeights, n) - exact)).toBeLessThan(4e-16);
    }
    expect(Math.abs(moment(gaussWeights, 14) - 2 / 15)).toBeGreaterThan(1e-5);
  });

  it('sees the error made on a step', () => {
    for (const step of [-0.95, -0.5, 0, 0.123, 0.8]) {
      const found = estimate((x) => (x < step ? 0 : 1));
      expect(found.error).toBeGreaterThan(Math.abs(found.value - (1 - step)) / 3);
    }
  });
});
