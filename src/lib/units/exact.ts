// Exact factors: a fraction of whole numbers of any size, times a whole power of pi. Conversions are
// worked out in these and rounded once, to the nearest double, so that 36 in is 3 ft and not
// 3.0000000000000004 ft. A root of a unit may leave the fractions (mm^0.5); the rest is then kept
// as a double and the factor is right to a few ulp only.

import type { Rational } from './types.ts';
import { rationalValue } from './rational.ts';

export interface Exact {
  readonly num: bigint;
  /** Greater than 0. */
  readonly den: bigint;
  readonly pi: number;
  /** What could not be kept exactly; 1 wherever the factor is exact. */
  readonly rest: number;
}

export const exactOne: Exact = { num: 1n, den: 1n, pi: 0, rest: 1 };

/** Significant bits asked of a quotient before it is rounded; the sticky bit is one of them. */
const quotientBits = 66;
/** pi to 70 decimals (OEIS A000796), far beyond what a double of any power in use needs. */
const piDigits = 31415926535897932384626433832795028841971693993751058209749445923078164n;
const piScale = 10n ** 70n;

/**
 * Reads '127/5000', '0.3048', '1.602176634e-19', '1/180 pi', '250 pi^-1'.
 *
 * Fails   RangeError for any other text; the texts read are tables and numerals already recognised
 */
export function parseExact(text: string): Exact {
  const match = /^(\d*\.?\d+|\d+\.)(?:[eE]([+-]?\d+))?(?:\/(\d+))?(?: pi(?:\^(-?\d+))?)?$/.exec(
    text
  );
  if (!match) throw new RangeError(`"${text}" is not an exact factor`);
  const [whole = '', decimals = ''] = (match[1] ?? '').split('.');
  const power = Number(match[2] ?? 0) - decimals.length;
  const num = BigInt(whole + decimals) * (power > 0 ? 10n ** BigInt(power) : 1n);
  const den = BigInt(match[3] ?? 1) * (power < 0 ? 10n ** BigInt(-power) : 1n);
  if (num === 0n || den === 0n) throw new RangeError(`"${text}": a factor is not 0`);
  const pi = text.includes('pi') ? Number(match[4] ?? 1) : 0;
  return reduced(num, den, pi, 1);
}

export function multiplyExact(a: Exact, b: Exact): Exact {
  return reduced(a.num * b.num, a.den * b.den, a.pi + b.pi, a.rest * b.rest);
}

export function divideExact(a: Exact, b: Exact): Exact {
  return reduced(a.num * b.den, a.den * b.num, a.pi - b.pi, a.rest / b.rest);
}

/** a to a rational power; exact wherever the root of its fraction is a fraction and pi stays whole. */
export function powerExact(a: Exact, exponent: Rational): Exact {
  if (a.num === a.den && a.pi === 0 && a.rest === 1) return a;
  if (exponent.den > 1 && (exponent.den > 12 || Math.abs(exponent.num) > 48)) {
    return { ...exactOne, rest: exactValue(a) ** rationalValue(exponent) };
  }
  const power = BigInt(Math.abs(exponent.num));
  const num = exactRoot(a.num ** power, exponent.den);
  const den = exactRoot(a.den ** power, exponent.den);
  const pi = (a.pi * exponent.num) / exponent.den;
  if (num === null || den === null || !Number.isInteger(pi)) {
    return { ...exactOne, rest: exactValue(a) ** rationalValue(exponent) };
  }
  const rest = a.rest === 1 ? 1 : a.rest ** rationalValue(exponent);
  return exponent.num < 0 ? reduced(den, num, pi, rest) : reduced(num, den, pi, rest);
}

/**
 * The nearest double.
 *
 * Error   correctly rounded where `rest` is 1 and the value is a normal number
 */
export function exactValue(a: Exact): number {
  const up = BigInt(Math.max(0, a.pi));
  const down = BigInt(Math.max(0, -a.pi));
  const num = a.num * piDigits ** up * piScale ** down;
  const den = a.den * piDigits ** down * piScale ** up;
  return nearestDouble(num, den) * a.rest;
}

/**
 * num/den as the nearest double: the quotient is taken to 66 bits with a sticky last bit, and
 * Number() of a BigInt rounds to nearest, ties to even (ECMA-262, Number value of a BigInt).
 */
function nearestDouble(num: bigint, den: bigint): number {
  const shift = quotientBits - (bitLength(num) - bitLength(den));
  const scaledNum = shift > 0 ? num << BigInt(shift) : num;
  const scaledDen = shift < 0 ? den << BigInt(-shift) : den;
  const quotient = scaledNum / scaledDen;
  const sticky = quotient * scaledDen === scaledNum ? 0n : 1n;
  const half = Math.trunc(-shift / 2);
  return Number(quotient | sticky) * 2 ** half * 2 ** (-shift - half);
}

function bitLength(value: bigint): number {
  return value.toString(2).length;
}

function reduced(num: bigint, den: bigint, pi: number, rest: number): Exact {
  let [a, b] = [num, den];
  while (b !== 0n) [a, b] = [b, a % b];
  return { num: num / a, den: den / a, pi, rest };
}

/** The whole root of degree `degree`, or null if there is none. */
function exactRoot(value: bigint, degree: number): bigint | null {
  if (degree === 1 || value === 1n) return value;
  const n = BigInt(degree);
  let root = 1n << BigInt(Math.ceil(bitLength(value) / degree));
  for (;;) {
    const next = ((n - 1n) * root + value / root ** (n - 1n)) / n;
    if (next >= root) break;
    root = next;
  }
  return root ** n === value ? root : null;
}
