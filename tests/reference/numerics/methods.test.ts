// The problem sets through the methods themselves, before any worksheet. mathjs evaluates the
// formulas, so that a fault of our language cannot hide one of the method.

import { readFileSync } from 'node:fs';
import { compile } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  integralStatus,
  integrateLanes,
  interpolant,
  interpolateAt,
  rootStatus,
  rootsLanes,
  type LaneFunction
} from '#lib/numeric/index.ts';

interface Numerics {
  readonly roots: readonly { id: string; f: string; bracket: [number, number]; root: number }[];
  readonly integrals: readonly {
    id: string;
    f: string;
    lower: string;
    upper: string;
    value: number;
    kind: string;
  }[];
  readonly interpolation: readonly {
    id: string;
    x: number[];
    y: number[];
    query: number[];
    values: Record<'linear' | 'natural_cubic_spline', number[]>;
  }[];
}

const { roots, integrals, interpolation } = JSON.parse(
  readFileSync(new URL('numerics.json', import.meta.url), 'utf8')
) as Numerics;

/** A formula of one variable; a complex value is none. */
function formula(text: string): LaneFunction {
  const code = compile(text);
  return (_, x, count, out) => {
    for (let i = 0; i < count; i++) {
      const value: unknown = code.evaluate({ x: x[i] });
      out[i] = typeof value === 'number' ? value : NaN;
    }
  };
}

const bound = (text: string): number =>
  text === 'inf' ? Infinity : text === '-inf' ? -Infinity : Number(compile(text).evaluate());

describe('integrals', () => {
  it('are 31', () => expect(integrals.length).toBe(31));

  // The aim of the default options is 1e-10; it is met with two digits to spare.
  it.each(integrals)('$id $f from $lower to $upper to 1e-12', ({ f, lower, upper, value }) => {
    const found = integrateLanes(
      formula(f),
      Float64Array.of(bound(lower)),
      Float64Array.of(bound(upper)),
      1
    );
    const difference = Math.abs((found.value[0] ?? NaN) - value);
    expect(found.status[0]).toBe(integralStatus.converged);
    expect(difference).toBeLessThanOrEqual(found.error[0] ?? NaN);
    expect(difference / Math.abs(value)).toBeLessThan(1e-12);
  });
});

describe('roots', () => {
  it('are 43', () => expect(roots.length).toBe(43));

  // The tolerance of the method is 1e-12 of max(|x|, range/1e6); where the root is 0, that of the range.
  // r55 is x^3/6 - x + sin(x) - 1e-6: beside its slope of 3e-5, its terms' rounding is 1e-12 of x.
  it.each(roots)('$id in $bracket to 1e-12', ({ id, f, bracket: [low, high], root }) => {
    const relative = id === 'r55' ? 1e-11 : 1e-12;
    const found = rootsLanes(formula(f), Float64Array.of(low), Float64Array.of(high), 1);
    expect(found.status[0]).toBe(rootStatus.found);
    const difference = Math.abs((found.root[0] ?? NaN) - root);
    expect(difference).toBeLessThanOrEqual(relative * Math.max(Math.abs(root), (high - low) / 1e6));
  });
});

describe('interpolation', () => {
  it('has 7 tables', () => expect(interpolation.length).toBe(7));

  const kinds = [
    ['linear', 'linear'],
    ['held', 'linear'],
    ['spline', 'natural_cubic_spline']
  ] as const;
  it.each(interpolation)('$id to 1e-13 of the largest ordinate', ({ x, y, query, values }) => {
    const largest = Math.max(...y.map(Math.abs));
    for (const [kind, column] of kinds) {
      const table = interpolant(kind, x, y);
      for (const [i, place] of query.entries()) {
        const found = interpolateAt(table, place);
        expect(found.status).toBe('inside');
        expect(Math.abs(found.value - (values[column][i] ?? NaN)) / largest).toBeLessThan(1e-13);
      }
    }
  });
});
