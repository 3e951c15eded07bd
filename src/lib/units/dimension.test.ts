import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Base } from './types.ts';
import {
  baseDimension,
  dimensionOf,
  dimensionText,
  divideDimensions,
  dropAngle,
  exponentOf,
  multiplyDimensions,
  parseDimension,
  plain,
  powerDimension,
  sameBesidesAngle,
  sameDimension,
  withExponent
} from './dimension.ts';
import { addRational, multiplyRational, rational, rationalOf, rationalText } from './rational.ts';
import { bases } from './types.ts';

const seed = 20250301;
const exponents = fc.record(
  Object.fromEntries(bases.map((base) => [base, fc.integer({ min: -4, max: 4 })])) as Record<
    Base,
    fc.Arbitrary<number>
  >
);
const dimensions = exponents.map(dimensionOf);
const powers = fc
  .tuple(fc.integer({ min: -6, max: 6 }), fc.integer({ min: 1, max: 6 }))
  .map(([num, den]) => rational(num, den));

describe('rational numbers', () => {
  it.each([
    [0.5, '0.5'],
    [1.5, '1.5'],
    [0.25, '0.25'],
    [1 / 3, '(1/3)'],
    [-2 / 3, '(-2/3)'],
    [0.107, '0.107'],
    [3, '3'],
    [0, '0']
  ])('%s is recognised and written %s', (value, text) => {
    const found = rationalOf(value);
    expect(found && rationalText(found)).toBe(text);
  });

  it.each([Math.PI, Math.SQRT2, NaN, Infinity, 0.33333])('%s is no simple fraction', (value) => {
    const found = rationalOf(value);
    expect(found === null || found.num / found.den === value).toBe(true);
    if (value !== 0.33333) expect(found).toBeNull();
  });

  it('a denominator of 0 is refused with the numbers', () => {
    expect(() => rational(1, 0)).toThrow('rational(1, 0)');
  });

  it('signs and common factors are settled', () => {
    expect(rational(4, -6)).toEqual({ num: -2, den: 3 });
    expect(rational(0, -5)).toEqual({ num: 0, den: 1 });
  });
});

describe('dimensions', () => {
  it.each([
    [{ m: 1, kg: 1, s: -2 }, 'kg m s^-2'],
    [{ kg: 1, m: 2, s: -3 }, 'kg m^2 s^-3'],
    [{ s: -1, rad: 1 }, 's^-1 rad'],
    [{ K: -0.5 }, 'K^-0.5'],
    [{ m: 1 / 3 }, 'm^(1/3)'],
    [{ money: 1, kg: -1 }, 'kg^-1 money'],
    [{}, '1']
  ] as const)('%o is written %s and read back', (given, text) => {
    expect(dimensionText(dimensionOf(given))).toBe(text);
    expect(parseDimension(text)).toBe(dimensionOf(given));
  });

  it('equal dimensions are one object', () => {
    fc.assert(
      fc.property(exponents, (given) =>
        sameDimension(dimensionOf(given), dimensionOf({ ...given }))
      ),
      { seed }
    );
  });

  it('a product divided by a factor is the other factor', () => {
    fc.assert(
      fc.property(
        dimensions,
        dimensions,
        (a, b) => divideDimensions(multiplyDimensions(a, b), b) === a
      ),
      { seed }
    );
  });

  it('powers of a power multiply, products of powers add', () => {
    fc.assert(
      fc.property(dimensions, powers, powers, (a, p, q) => {
        expect(powerDimension(powerDimension(a, p), q)).toBe(
          powerDimension(a, multiplyRational(p, q))
        );
        expect(multiplyDimensions(powerDimension(a, p), powerDimension(a, q))).toBe(
          powerDimension(a, addRational(p, q))
        );
      }),
      { seed }
    );
  });

  it('text and dimension go there and back', () => {
    fc.assert(
      fc.property(dimensions, powers, (a, p) => {
        const dimension = powerDimension(a, p);
        expect(parseDimension(dimensionText(dimension))).toBe(dimension);
      }),
      { seed }
    );
  });

  it('angle drops out, and only angle', () => {
    const speed = dimensionOf({ m: 1, s: -1 });
    const withAngle = withExponent(speed, 'rad', rational(1));
    expect(dropAngle(withAngle)).toBe(speed);
    expect(sameBesidesAngle(speed, withAngle)).toBe(true);
    expect(sameBesidesAngle(speed, baseDimension('m'))).toBe(false);
    expect(exponentOf(withAngle, 'rad')).toEqual(rational(1));
    expect(dropAngle(plain)).toBe(plain);
  });
});
