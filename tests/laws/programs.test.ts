// The laws of lanes on programs nobody chose: random formulas, columns, integrals and roots; and the
// derivatives of the reference set.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { formula, run, type Lanes } from './programs.ts';
import { plainExpression } from './formulas.ts';
import { Random } from './random.ts';

const seed = 5101;
const laneCount = 41;

/** Each number of a random formula in turn becomes an input, so that lanes differ. */
function withInputs(text: string): string {
  let next = 0;
  return text.replace(/(?<![\w.^]|\^-)\d+\.?\d*(?:e[+-]?\d+)?(?![\w.(])/gu, (number) => {
    next++;
    return next % 2 === 0 ? number : next % 4 === 1 ? 'x' : 'y';
  });
}

const spread = (random: Random, rows = 1): number[][] =>
  Array.from({ length: rows }, () =>
    Array.from({ length: laneCount }, () => 0.3 + 2 * random.next())
  );

const permuted = (values: Lanes, order: readonly number[]): Lanes =>
  Object.fromEntries(
    Object.entries(values).map(([name, rows]) => [
      name,
      rows.map((lanes) => order.map((i) => lanes[i] ?? NaN))
    ])
  );

function expectSameBits(make: ReturnType<typeof formula>, values: Lanes, random: Random): void {
  const straight = run(make, values, 64);
  for (const stride of [1, 3, 7]) expect(run(make, values, stride)).toEqual(straight);
  const order = random.shuffled(Array.from({ length: laneCount }, (_, i) => i));
  expect(run(make, permuted(values, order), 5)).toEqual(order.map((i) => straight[i]));
}

describe(`permuting lanes or changing chunks changes no bit (seed ${seed})`, () => {
  it('in 300 random formulas', () => {
    const random = new Random(seed);
    let count = 0;
    while (count < 300) {
      const text = withInputs(plainExpression(random, 4).ours);
      if (!/[xy]/u.test(text)) continue;
      count++;
      expectSameBits(
        formula(text, { x: null, y: null }),
        { x: spread(random), y: spread(random) },
        random
      );
    }
  });

  it.each([
    'sum(c)*x', 'sd(c) + x', 'mean(c*x)', 'interp(x/9 + 1, k, c)', 'max(c) - min(c)/x',
    'sum(c > 1 ? c : x)'
  ])('over columns: %s', (text) => {
    const random = new Random(seed);
    // k ascends in every lane.
    const k = Array.from({ length: 5 }, (_, row) => new Array<number>(laneCount).fill(row));
    expectSameBits(
      formula(text, { x: null, c: 5, k: 5 }),
      { x: spread(random), c: spread(random, 5), k },
      random
    );
  }); // prettier-ignore

  it('through roots', () => {
    const random = new Random(seed);
    const root = { unknown: 't', low: '0', high: '40' };
    for (const text of [
      't^3*x - y',
      'exp(t/9) - 1 - x*y',
      'integrate(u*x, u, 0, t) - y',
      't - 2*cos(t*x)*y'
    ]) {
      expectSameBits(
        formula(text, { x: null, y: null }, root),
        { x: spread(random), y: spread(random) },
        random
      );
    }
  });
});

interface DerivativeCase {
  readonly id: string;
  readonly expression: string;
  readonly variables: Readonly<Record<string, number>>;
  readonly value: number;
  readonly partial_derivatives: Readonly<Record<string, number>>;
}

describe('tangents are the derivatives of the reference set', () => {
  // Source: tests/reference/algebra/SOURCE.md, figures by mpmath at 40 digits.
  const { derivatives } = JSON.parse(
    readFileSync('tests/reference/algebra/algebra.json', 'utf8')
  ) as {
    derivatives: readonly DerivativeCase[];
  };
  // erf is none of our functions.
  const computed = derivatives.filter(({ expression }) => !expression.includes('erf'));

  it('are 24, one of them with a function that is not in the language', () => {
    expect([derivatives.length, computed.length]).toEqual([24, 23]);
  });

  it.each(computed)(
    '$id $expression to 1e-9',
    ({ expression, variables, value, partial_derivatives }) => {
      const names = Object.fromEntries(Object.keys(variables).map((name) => [name, null]));
      const made = formula(expression, names);
      const values = Object.fromEntries(
        Object.entries(variables).map(([name, x]) => [name, [[x]]])
      );
      expect(Math.abs((run(made, values, 1)[0] ?? NaN) / value - 1)).toBeLessThan(1e-12);
      for (const [name, expected] of Object.entries(partial_derivatives)) {
        const seeds = Object.fromEntries(
          Object.keys(variables).map((each) => [each, [[each === name ? 1 : 0]]])
        );
        const [found = NaN] = run(made, values, 1, seeds);
        expect(Math.abs(found - expected)).toBeLessThan(1e-9 * Math.max(Math.abs(expected), 1e-12));
      }
    }
  );
});
