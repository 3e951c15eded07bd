// Exponents that are written out: exact rationals, never through a float.

import fc from 'fast-check';
import { parseExpression } from '#lib/language/index.ts';
import { cutOf } from '#lib/text/index.ts';
import { describe, expect, test } from 'vitest';
import { checkLines } from './check.fixture.ts';
import { literalExponent } from './exponent.ts';

function exponentOf(text: string): readonly [number, number] | null {
  const { tree } = parseExpression(cutOf(text), { money: null, ownFunctions: new Set() });
  const found = tree && literalExponent(tree);
  return found ? [found.num, found.den] : null;
}

describe('a literal is read digit by digit', () => {
  test.each<readonly [string, readonly [number, number] | null]>([
    ['2', [2, 1]],
    ['-1', [-1, 1]],
    ['+3', [3, 1]],
    ['0', [0, 1]],
    ['0.5', [1, 2]],
    ['.5', [1, 2]],
    ['1.5e0', [3, 2]],
    ['15e-1', [3, 2]],
    ['0.1', [1, 10]],
    ['(2/3)', [2, 3]],
    ['1/3', [1, 3]],
    ['-(1/3)', [-1, 3]],
    ['2*3/4', [3, 2]],
    ['1/2 + 1/3', [5, 6]],
    ['1 - 1/3', [2, 3]],
    ['1/0', null],
    ['n', null],
    ['2*n', null],
    ['sqrt(4)', null],
    ['2 m', null],
    ['1.234567890123', null],
    ['1e10', null]
  ])('%s', (text, exponent) => expect(exponentOf(text)).toEqual(exponent));

  test('a fraction of two whole numbers is itself in lowest terms', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999, max: 999 }),
        fc.integer({ min: 1, max: 999 }),
        (num, den) => {
          const [n = NaN, d = NaN] = exponentOf(`${num}/${den}`) ?? [];
          expect(n * den).toBe(num * d);
          expect(d).toBeGreaterThan(0);
        }
      ),
      { seed: 20260314, numRuns: 300 }
    );
  });
});

describe('in a formula', () => {
  test.each<readonly [string, readonly string[]]>([
    ['y = (4 m^2)^0.5 to m', []],
    ['y = (8 m^3)^(1/3) to m', []],
    ['y = (3 m)^-2 to 1/m^2', []],
    ['y = 2^n', []],
    ['y = (3 m / (1 m))^n', []],
    ['y = (3 m)^n', ['error units/exponent']],
    ['y = 2^(3 m)', ['error units/exponent']],
    ['y = (3 m)^(3 m)', ['error units/exponent']],
    ['y = (3 m)^2^1', ['error units/exponent']],
    ['y = (3 m)^(n/n)', ['error units/exponent']]
  ])('%s: %j', (line, outcome) => expect(checkLines('n = 2', line).said).toEqual(outcome));
});
