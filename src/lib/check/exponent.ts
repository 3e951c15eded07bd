// Exponents on quantities are literal rationals, so that dimensions stay exact: 2, -1, 1/2, (2/3),
// 0.5, 1.5e0. Decimals are read digit by digit, never through a float.

import type { Expression } from '#lib/language/index.ts';
import { bases, rational, type Dimension, type Rational } from '#lib/units/index.ts';

/** The rational that an exponent is written as, or null where it is no literal (or beyond 1000). */
export function literalExponent(node: Expression): Rational | null {
  switch (node.kind) {
    case 'number':
      return decimal(node.text);
    case 'group':
      return node.unit ? null : literalExponent(node.inner);
    case 'sign': {
      const value = literalExponent(node.operand);
      return value && node.op === '-' ? rational(-value.num, value.den) : value;
    }
    case 'binary': {
      const left = literalExponent(node.left);
      const right = literalExponent(node.right);
      if (!left || !right) return null;
      if (node.op === '/' && right.num !== 0)
        return bounded(left.num * right.den, left.den * right.num);
      if (node.op === '*') return bounded(left.num * right.num, left.den * right.den);
      if (node.op === '+')
        return bounded(left.num * right.den + right.num * left.den, left.den * right.den);
      if (node.op === '-')
        return bounded(left.num * right.den - right.num * left.den, left.den * right.den);
      return null;
    }
    default:
      return null;
  }
}

function decimal(text: string): Rational | null {
  const match = /^(\d*)\.?(\d*)(?:[eE]([+-]?\d+))?$/u.exec(text);
  if (!match) return null;
  const [, whole = '', fraction = '', power = '0'] = match;
  const places = fraction.length - Number(power);
  if (whole.length + fraction.length > 12 || Math.abs(places) > 9) return null;
  const digits = Number(whole + fraction);
  return places >= 0 ? bounded(digits, 10 ** places) : bounded(digits * 10 ** -places, 1);
}

function bounded(num: number, den: number): Rational | null {
  const value = rational(num, den);
  return Math.abs(value.num) > 1e6 || value.den > 1e6 ? null : value;
}

/** Sizes an exponent in a dimension may have: the first is that of a unit as it can be written. */
const largestExponent = 24;
const largestDenominator = 99;

/** Angle drops out of what is shown, so only exactness bounds its exponent. */
const largestOfAngle = 1e6;

/** Whether the exponents of a dimension are such as a formula may give: exact, and no accident. */
export function isWithinReach({ exponents }: Dimension): boolean {
  return exponents.every(({ num, den }, i) => {
    const largest = bases[i] === 'rad' ? largestOfAngle : largestExponent;
    return Math.abs(num / den) <= largest && den <= largestDenominator;
  });
}
