// The algebra of dimensions. A dimension is interned by its canonical text, so that equal dimensions
// are one object and `===` compares them. Plane angle and money are bases like the others; what may
// be dropped, and when, is decided elsewhere (see the page on dimensions).

import type { Base, Dimension, Rational } from './types.ts';
import { bases } from './types.ts';
import {
  addRational,
  multiplyRational,
  rational,
  rationalOf,
  rationalText,
  sameRational,
  subtractRational
} from './rational.ts';

/** The order in which a dimension is written: mass first, as in 'kg m^2 s^-3'. */
const written: readonly Base[] = ['kg', 'm', 's', 'A', 'K', 'mol', 'cd', 'rad', 'money'];

const zero = rational(0);
const one = rational(1);
const known = new Map<string, Dimension>();

/** The dimension of a plain number. */
export const plain: Dimension = intern(bases.map(() => zero));

const baseDimensions = new Map<Base, Dimension>(
  bases.map((base) => [base, withExponent(plain, base, one)])
);

/** The dimension of one base to the first power. */
export function baseDimension(base: Base): Dimension {
  const found = baseDimensions.get(base);
  if (!found) throw new RangeError(`no base quantity "${base}"`);
  return found;
}

/**
 * The dimension with the exponents given: `dimensionOf({ m: 1, kg: 1, s: -2 })` is a force.
 *
 * Fails   RangeError for an exponent that is no fraction with a small denominator
 */
export function dimensionOf(exponents: Readonly<Partial<Record<Base, number>>>): Dimension {
  let dimension = plain;
  for (const base of bases) {
    const value = exponents[base];
    if (value === undefined) continue;
    const exponent = rationalOf(value);
    if (!exponent) throw new RangeError(`${base}^${value}: the exponent is no simple fraction`);
    dimension = withExponent(dimension, base, exponent);
  }
  return dimension;
}

/**
 * Reads a dimension as `dimensionText` writes it: 'kg m^2 s^-3', '1'.
 *
 * Fails   RangeError for any other text; the texts read are our own tables
 */
export function parseDimension(text: string): Dimension {
  let dimension = plain;
  if (text === '1') return dimension;
  for (const part of text.split(' ')) {
    const match = /^([a-zA-Z]+)(?:\^(?:(-?[\d.]+)|\((-?\d+)\/(\d+)\)))?$/.exec(part);
    const base = bases.find((name) => name === match?.[1]);
    if (!match || !base) throw new RangeError(`"${text}" is not a dimension`);
    const exponent = match[3]
      ? rational(Number(match[3]), Number(match[4]))
      : rationalOf(Number(match[2] ?? 1));
    if (!exponent) throw new RangeError(`"${text}" is not a dimension`);
    dimension = withExponent(dimension, base, addRational(exponentOf(dimension, base), exponent));
  }
  return dimension;
}

export function multiplyDimensions(a: Dimension, b: Dimension): Dimension {
  if (a === plain) return b;
  if (b === plain) return a;
  return combine(a, b, addRational);
}

export function divideDimensions(a: Dimension, b: Dimension): Dimension {
  if (b === plain) return a;
  return combine(a, b, subtractRational);
}

export function powerDimension(a: Dimension, exponent: Rational): Dimension {
  if (a === plain || sameRational(exponent, one)) return a;
  return intern(a.exponents.map((value) => multiplyRational(value, exponent)));
}

export function exponentOf(dimension: Dimension, base: Base): Rational {
  return dimension.exponents[bases.indexOf(base)] ?? zero;
}

export function withExponent(dimension: Dimension, base: Base, exponent: Rational): Dimension {
  const at = bases.indexOf(base);
  return intern(dimension.exponents.map((value, index) => (index === at ? exponent : value)));
}

/** The same dimension with 1 rad = 1. */
export function dropAngle(dimension: Dimension): Dimension {
  return exponentOf(dimension, 'rad').num === 0 ? dimension : withExponent(dimension, 'rad', zero);
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a === b;
}

export function sameBesidesAngle(a: Dimension, b: Dimension): boolean {
  return a === b || dropAngle(a) === dropAngle(b);
}

/** The canonical text of a dimension: 'kg m^2 s^-3', '1' for a plain number. */
export function dimensionText(dimension: Dimension): string {
  return dimension.key;
}

function combine(
  a: Dimension,
  b: Dimension,
  operation: (x: Rational, y: Rational) => Rational
): Dimension {
  return intern(a.exponents.map((value, index) => operation(value, b.exponents[index] ?? zero)));
}

function intern(exponents: readonly Rational[]): Dimension {
  const key = keyOf(exponents);
  const found = known.get(key);
  if (found) return found;
  const dimension: Dimension = Object.freeze({ key, exponents: Object.freeze([...exponents]) });
  known.set(key, dimension);
  return dimension;
}

function keyOf(exponents: readonly Rational[]): string {
  const parts: string[] = [];
  for (const base of written) {
    const exponent = exponents[bases.indexOf(base)] ?? zero;
    if (exponent.num === 0) continue;
    parts.push(sameRational(exponent, one) ? base : `${base}^${rationalText(exponent)}`);
  }
  return parts.length === 0 ? '1' : parts.join(' ');
}
