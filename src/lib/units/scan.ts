// The small pieces that unit texts are made of: white space, names, exponents, numerals. Each reader
// looks at one offset and says what stands there and where it ends; none moves anything.

import type { UnitAtomMatch } from './lookup.ts';
import type { Rational, UnitFault } from './types.ts';
import { exponentFault, faultAt } from './faults.ts';
import { isUnitFault, lookupUnit } from './lookup.ts';
import { rational, rationalOf } from './rational.ts';

/** A unit name with its exponent, as it stands in a text. */
export interface ScannedUnit {
  readonly kind: 'unit';
  readonly match: UnitAtomMatch;
  readonly exponent: Rational;
  readonly from: number;
  /** Where the name ends. */
  readonly nameEnd: number;
  /** Where the exponent ends. */
  readonly end: number;
}

export interface ScannedExponent {
  readonly exponent: Rational;
  readonly end: number;
}

const largestExponent = 24;
const one = rational(1);
const namePattern = /[\p{L}_][\p{L}\p{Nd}_]*|°(?:[CFR](?![\p{L}\p{Nd}_]))?|%|\p{Sc}/uy;
const spacePattern = /[ \t\u00A0\u2009\u202F]*/y;
const numeralPattern = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?(?![\p{L}\p{Nd}_.])/uy;
const powerPattern =
  /\^(?:([-−]?(?:\d+\.?\d*|\.\d+))|\(\s*([-−]?\d+)\s*(?:\/\s*(\d+)\s*)?\))(?![\p{L}\p{Nd}_.^(²³])/uy;
const raisedPattern = /[⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+(?![\^²³])/y;
const raisedDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Where the white space at an offset ends; line ends are not crossed. */
export function skipSpace(text: string, from: number): number {
  return from + matchAt(spacePattern, text, from).length;
}

/** The word, degree sign, percent sign or currency sign at an offset; '' if there is none. */
export function nameAt(text: string, from: number): string {
  return matchAt(namePattern, text, from);
}

/** The unsigned decimal numeral at an offset; '' if there is none. */
export function numeralAt(text: string, from: number): string {
  return matchAt(numeralPattern, text, from);
}

/**
 * The unit at an offset, exponent included.
 *
 * @returns  a fault if the name is recognised and refused or the exponent is no literal number;
 *           null if no unit stands there: an unknown word, a call `min(`, a dotted name `m.x`
 */
export function unitAt(
  text: string,
  from: number,
  money: string | null
): ScannedUnit | UnitFault | null {
  const name = nameAt(text, from);
  if (name === '') return null;
  const nameEnd = from + name.length;
  if (text[nameEnd] === '(' || /^\.[\p{L}_]/u.test(text.slice(nameEnd, nameEnd + 3))) return null;
  const match = lookupUnit(name, money);
  if (match === null) return null;
  if (isUnitFault(match)) return faultAt(match, from, nameEnd);
  const power = exponentAt(text, nameEnd);
  if (isUnitFault(power)) {
    const end = power.to;
    return faultAt(exponentFault(text.slice(from, end)), from, end);
  }
  return { kind: 'unit', match, exponent: power.exponent, from, nameEnd, end: power.end };
}

/** The exponent at an offset, 1 if there is none; a fault if there is one and it is no literal. */
export function exponentAt(text: string, from: number): ScannedExponent | UnitFault {
  const raised = matchAt(raisedPattern, text, from);
  if (raised !== '') return checked(rationalOf(raisedValue(raised)), text, from, raised.length);
  if (text[from] !== '^' && !/^[⁰-⁹¹²³⁻⁺]/.test(text.slice(from, from + 1))) {
    return { exponent: one, end: from };
  }
  powerPattern.lastIndex = from;
  const power = powerPattern.exec(text);
  if (!power) return exponentEnd(text, from);
  const exponent = power[2]
    ? fraction(power[2], power[3])
    : rationalOf(Number((power[1] ?? '').replace('−', '-')));
  return checked(exponent, text, from, power[0].length);
}

function checked(
  exponent: Rational | null,
  text: string,
  from: number,
  length: number
): ScannedExponent | UnitFault {
  const isUsable = exponent !== null && exponent.num !== 0 && isSmall(exponent);
  if (!isUsable)
    return faultAt(exponentFault(text.slice(from, from + length)), from, from + length);
  return { exponent, end: from + length };
}

/** Whether an exponent is within the size that units can have. */
export function isSmall(exponent: Rational): boolean {
  return Math.abs(exponent.num / exponent.den) <= largestExponent && exponent.den <= 1000;
}

function exponentEnd(text: string, from: number): UnitFault {
  const rest =
    /^\^?[-−]?(?:\([^)]*\)?|[\p{L}\p{Nd}_.^²³⁰-⁹¹⁻⁺]*)/u.exec(text.slice(from))?.[0] ?? '';
  const end = from + Math.max(1, rest.length);
  return faultAt(exponentFault(text.slice(from, end)), from, end);
}

function fraction(num: string, den: string | undefined): Rational | null {
  const below = Number(den ?? 1);
  const above = Number(num.replace('−', '-'));
  if (below === 0 || !Number.isSafeInteger(above) || !Number.isSafeInteger(below)) return null;
  return rational(above, below);
}

function raisedValue(raised: string): number {
  const digits = [...raised].map((sign) => {
    const digit = raisedDigits.indexOf(sign);
    return digit >= 0 ? String(digit) : sign === '⁻' ? '-' : '';
  });
  return Number(digits.join(''));
}

function matchAt(pattern: RegExp, text: string, from: number): string {
  pattern.lastIndex = from;
  return pattern.exec(text)?.[0] ?? '';
}
