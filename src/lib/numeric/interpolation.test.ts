import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  interpolant,
  interpolate,
  interpolateAt,
  naturalCubicSpline,
  segmentOf
} from './interpolation.ts';

const kinds = ['linear', 'held', 'spline'] as const;

describe.each(kinds)('%s: tables and places that are not plain', (kind) => {
  it('a place or a point that is not finite has no value', () => {
    const none = { value: NaN, slope: NaN, status: 'notFinite' };
    expect(interpolate(kind, [0, 1], [0, 1], NaN)).toEqual(none);
    expect(interpolate(kind, [0, 1], [0, 1], Infinity)).toEqual(none);
    expect(interpolate(kind, [0, NaN], [0, 1], 0)).toEqual(none);
    expect(interpolate(kind, [0, 1], [0, Infinity], 0)).toEqual(none);
  });

  it('no points, or not as many of either, have no value', () => {
    expect(interpolate(kind, [], [], 0).status).toBe('empty');
    expect(interpolate(kind, [1, 2], [1], 1).status).toBe('empty');
  });

  it('equal or descending abscissae have no value', () => {
    expect(interpolate(kind, [0, 0], [1, 2], 0).status).toBe('notAscending');
    expect(interpolate(kind, [1, 0], [1, 2], 0.5).status).toBe('notAscending');
  });

  it('one point answers at its own place', () => {
    expect(interpolate(kind, [2], [7], 2)).toMatchObject({ value: 7, status: 'inside' });
    expect(interpolate(kind, [2], [7], 3).status).toBe('above');
  });

  it('two points make a straight line', () => {
    expect(interpolate(kind, [0, 2], [1, 5], 0.5)).toEqual({
      value: 2,
      slope: 2,
      status: 'inside'
    });
  });

  it('every point of the table is given back exactly', () => {
    const xs = [0.1, 0.2, 0.3, 0.7, 1.9];
    const ys = [3.3, -1.7, 0, 2.2, 1e-9];
    for (const [i, x] of xs.entries()) expect(interpolate(kind, xs, ys, x).value).toBe(ys[i]);
  });

  it('outside the table only held has a value', () => {
    const below = interpolate(kind, [1, 2], [10, 20], 0.999);
    const above = interpolate(kind, [1, 2], [10, 20], 2.001);
    expect([below.status, above.status]).toEqual(['below', 'above']);
    expect([below.value, above.value]).toEqual(kind === 'held' ? [10, 20] : [NaN, NaN]);
    if (kind === 'held') expect([below.slope, above.slope]).toEqual([0, 0]);
  });

  it('is linear in the ordinates, so tangents interpolate as values do', () => {
    const points = fc.array(
      fc.record({
        step: fc.double({ min: 0.01, max: 2, noNaN: true }),
        y: fc.double({ min: -5, max: 5, noNaN: true }),
        z: fc.double({ min: -5, max: 5, noNaN: true })
      }),
      { minLength: 3, maxLength: 12 }
    );
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (list, t) => {
        let x = 0;
        const xs = list.map(({ step }) => (x += step));
        const place = (xs[0] ?? 0) * (1 - t) + x * t;
        const ys = list.map(({ y }) => y);
        const zs = list.map(({ z }) => z);
        const sum = interpolate(kind, xs, ys.map((y, i) => 2 * y + (zs[i] ?? NaN)), place); // prettier-ignore
        const y = interpolate(kind, xs, ys, place);
        const z = interpolate(kind, xs, zs, place);
        // Splines over steps of very different size swing, and their rounding with them.
        const swing = 1 + Math.abs(y.value) + Math.abs(z.value);
        expect(Math.abs(sum.value - 2 * y.value - z.value) / swing).toBeLessThan(1e-10);
      }),
      { seed: 1978, numRuns: 200 }
    );
  });

  it('the slope is that of the curve (central differences)', () => {
    const table = interpolant(kind, [0, 1, 2.5, 3, 5], [1, 3, 2, 2.5, -1]);
    for (const x of [0.4, 1.7, 2.8, 4.4]) {
      const h = 1e-5;
      const rise = interpolateAt(table, x + h).value - interpolateAt(table, x - h).value;
      expect(Math.abs(interpolateAt(table, x).slope - rise / (2 * h))).toBeLessThan(1e-9);
    }
  });
});

describe('the natural cubic spline', () => {
  it('has no second derivative at its ends, and a continuous one between', () => {
    const xs = [0, 1, 2.5, 3, 5];
    const seconds = naturalCubicSpline(xs, [1, 3, 2, 2.5, -1]);
    expect([seconds[0], seconds[4]]).toEqual([0, 0]);
    const table = interpolant('spline', xs, [1, 3, 2, 2.5, -1]);
    for (const x of [1, 2.5, 3]) {
      const before = interpolateAt(table, x - 1e-9).slope;
      const after = interpolateAt(table, x + 1e-9).slope;
      expect(Math.abs(after - before)).toBeLessThan(1e-7);
    }
  });

  it('draws a straight line through points on a straight line', () => {
    const xs = [0, 0.3, 1, 4, 4.5];
    const table = interpolant('spline', xs, xs.map((x) => 3 - 2 * x)); // prettier-ignore
    for (const x of [0.1, 0.9, 2, 4.4]) {
      expect(Math.abs(interpolateAt(table, x).value - (3 - 2 * x))).toBeLessThan(1e-14);
    }
  });
});

describe('segmentOf', () => {
  it.each([
    [[], 1, -1],
    [[1, 2, 3], NaN, -1],
    [[1, 2, 3], 0.5, -1],
    [[1, 2, 3], 1, 0],
    [[1, 2, 3], 1.5, 0],
    [[1, 2, 3], 2, 1],
    [[1, 2, 3], 9, 2],
    [[1, 2, 3], Infinity, 2]
  ])('the last of %j that is not above %s has index %s', (xs, x, index) => {
    expect(segmentOf(xs, x)).toBe(index);
  });
});
