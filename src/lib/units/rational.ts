// Rational numbers with small numerators and denominators, for the exponents of dimensions: `K^0.5`
// and `^(1/3)` must stay exact through any product, so exponents are never floating point.

import type { Rational } from './types.ts';

/** The largest denominator that `rationalOf` recognises. */
const largestDenominator = 1000;

/**
 * num/den in lowest terms, den > 0.
 *
 * Fails   RangeError if either is not a safe integer, or den is 0
 */
export function rational(num: number, den = 1): Rational {
  if (!Number.isSafeInteger(num) || !Number.isSafeInteger(den) || den === 0) {
    throw new RangeError(
      `rational(${num}, ${den}): two whole numbers are expected, the second not 0`
    );
  }
  const divisor = greatestCommonDivisor(Math.abs(num), Math.abs(den)) * (den < 0 ? -1 : 1);
  return { num: num / divisor + 0, den: den / divisor };
}

/**
 * The rational that a double stands for: 0.5 is 1/2, 0.3333333333333333 is 1/3. Only a double that is
 * the one nearest to a fraction with a denominator up to 1000 is recognised; any other gives null.
 */
export function rationalOf(value: number): Rational | null {
  if (!Number.isFinite(value) || Math.abs(value) > 1e6) return null;
  for (let den = 1; den <= largestDenominator; den++) {
    const num = Math.round(value * den);
    if (num / den === value) return rational(num, den);
  }
  return null;
}

export function addRational(a: Rational, b: Rational): Rational {
  return rational(a.num * b.den + b.num * a.den, a.den * b.den);
}

export function subtractRational(a: Rational, b: Rational): Rational {
  return rational(a.num * b.den - b.num * a.den, a.den * b.den);
}

export function multiplyRational(a: Rational, b: Rational): Rational {
  return rational(a.num * b.num, a.den * b.den);
}

export function negateRational(a: Rational): Rational {
  return { num: 0 - a.num, den: a.den };
}

export function sameRational(a: Rational, b: Rational): boolean {
  return a.num === b.num && a.den === b.den;
}

/** The nearest double. */
export function rationalValue(a: Rational): number {
  return a.num / a.den;
}

/**
 * As an exponent is written behind `^`: '2', '-1', '0.5', '(1/3)'. Decimal where that is exact and
 * short, a fraction in brackets otherwise.
 */
export function rationalText(a: Rational): string {
  if (a.den === 1) return String(a.num);
  const decimal = String(a.num / a.den);
  return decimal.length <= 6 && 1000 % a.den === 0 ? decimal : `(${a.num}/${a.den})`;
}

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a === 0 ? 1 : a;
}
