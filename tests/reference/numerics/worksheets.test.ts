// The problem sets again, as worksheets: `integrate` in a formula, and `solve` for an input.

import { describe, expect, it } from 'vitest';
import { block, reference, relativeDifference, run } from '../worksheet.ts';

interface Numerics {
  readonly roots: readonly { id: string; f: string; bracket: [number, number]; root: number }[];
  readonly integrals: readonly {
    id: string;
    f: string;
    lower: string;
    upper: string;
    value: number;
  }[];
  readonly interpolation: readonly {
    id: string;
    x: number[];
    y: number[];
    query: number[];
    values: Record<'linear' | 'natural_cubic_spline', number[]>;
  }[];
}

const { roots, integrals, interpolation } = reference<Numerics>(import.meta.url, 'numerics.json');

/** `log` is refused (ln or log10?), and erf is written as the integral that it is. */
const translated = (f: string): string =>
  f.replace(/\blog\(/g, 'ln(').replace(/\berf\(x\)/g, '2/sqrt(pi)*integrate(exp(-u^2), u, 0, x)');

describe('integrals in formulas', () => {
  const sheet = run(
    block(
      'calc',
      integrals.map(
        ({ id, f, lower, upper }) => `${id} = integrate(${translated(f)}, x, ${lower}, ${upper})`
      )
    )
  );
  it.each(integrals)('$id $f from $lower to $upper to 1e-12', ({ id, value }) => {
    expect(sheet.problems(id).filter((found) => !found.startsWith('note'))).toEqual([]);
    expect(relativeDifference(sheet.si(id), value)).toBeLessThan(1e-12);
  });
});

describe('roots by solve', () => {
  const lines = roots.map(
    ({ id, f, bracket: [low, high] }) =>
      `${id} = x where ${translated(f)} == 0 between ${low} and ${high}`
  );
  const sheet = run(block('inputs', ['x = 1']) + block('solve', lines));

  // r55 is x^3/6 - x + sin(x) - 1e-6: beside its slope of 3e-5, its terms' rounding is 1e-12 of x.
  it.each(roots)('$id in $bracket to 1e-12', ({ id, bracket: [low, high], root }) => {
    expect(sheet.problems(id).filter((found) => found.startsWith('error'))).toEqual([]);
    const tolerance = (id === 'r55' ? 1e-11 : 1e-12) * Math.max(Math.abs(root), (high - low) / 1e6);
    expect(Math.abs(sheet.si(id) - root)).toBeLessThanOrEqual(tolerance);
  });
});

describe('interpolation in tables', () => {
  const kinds = [
    ['interp', 'linear'],
    ['interp_hold', 'linear'],
    ['interp_spline', 'natural_cubic_spline']
  ] as const;
  it.each(interpolation)('$id to 1e-13 of the largest ordinate', ({ x, y, query, values }) => {
    const largest = Math.max(...y.map(Math.abs));
    const rows = x.map((place, i) => `${place}, ${y[i]}`);
    const lines = kinds.flatMap(([name]) =>
      query.map((place, i) => `${name}_${i} = ${name}(${place}, points.x, points.y)`)
    );
    const sheet = run(block('table points', ['x, y', ...rows]) + block('calc', lines));
    for (const [name, column] of kinds) {
      for (const [i, expected] of values[column].entries()) {
        const found = sheet.si(`${name}_${i}`);
        expect(sheet.problems(`${name}_${i}`)).toEqual([]);
        expect(Math.abs(found - expected) / largest).toBeLessThan(1e-13);
      }
    }
  });
});
