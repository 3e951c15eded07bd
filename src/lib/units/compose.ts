// Factors to one unit: exact factor, dimension, uniform text. The uniform text has single spaces
// between factors, one stroke, and brackets round what stands under it when that is more than one.

import type { Exact } from './exact.ts';
import type { UnitAtomMatch } from './lookup.ts';
import type { Rational, Unit, UnitAtom } from './types.ts';
import { multiplyDimensions, plain, powerDimension } from './dimension.ts';
import { exactOne, exactValue, multiplyExact, parseExact, powerExact } from './exact.ts';
import { negateRational, rational, rationalText, rationalValue, sameRational } from './rational.ts';

/** One factor as written: a unit name or a numeral, to a power, over or under the stroke. */
export interface UnitFactor {
  readonly match: UnitAtomMatch | null;
  /** The symbol or the numeral. */
  readonly text: string;
  /** Sign as written: -1 in `s^-1`, 1 in `1/s`. */
  readonly exponent: Rational;
  readonly under: boolean;
}

const one = rational(1);
const rememberedMost = 5000;
/** All exponents of a unit together: beyond it the exact factor has thousands of digits. */
const largestPower = 60;
const units = new Map<string, Unit>();
const exactFactors = new WeakMap<Unit, Exact>();

/**
 * The unit that factors make up, one object for equal texts; null if its powers are too many or its
 * factor is no finite number.
 */
export function composeUnit(factors: readonly UnitFactor[]): Unit | null {
  if (
    factors.reduce((sum, each) => sum + Math.abs(rationalValue(each.exponent)), 0) > largestPower
  ) {
    return null;
  }
  const text = unitText(factors);
  const key = hasMoney(factors) ? `${text} money` : text;
  const known = units.get(key);
  if (known) return known;
  let exact = exactOne;
  let dimension = plain;
  const atoms: UnitAtom[] = [];
  for (const { match, text: written, exponent: sign, under } of factors) {
    const exponent = under ? negateRational(sign) : sign;
    exact = multiplyExact(exact, powerExact(match?.exact ?? parseExact(written), exponent));
    if (!match) continue;
    dimension = multiplyDimensions(dimension, powerDimension(match.dimension, exponent));
    atoms.push({ symbol: match.symbol, exponent });
  }
  const factor = exactValue(exact);
  if (!Number.isFinite(factor) || factor === 0) return null;
  const temperature = temperatureOf(factors);
  const zero = temperature === 'reading' ? (factors[0]?.match?.zero ?? 0) : 0;
  const unit: Unit = Object.freeze({
    text,
    factor,
    dimension,
    atoms: Object.freeze(atoms),
    temperature,
    offset: zero * factor,
    hasRev: factors.some((each) => each.match?.marks === 'rev'),
    hasHz: factors.some((each) => each.match?.marks === 'hz')
  });
  exactFactors.set(unit, exact);
  if (units.size >= rememberedMost) units.clear();
  units.set(key, unit);
  return unit;
}

/** The exact factor of a unit made here; null for a copy that came from elsewhere. */
export function exactFactorOf(unit: Unit): Exact | null {
  return exactFactors.get(unit) ?? null;
}

function hasMoney(factors: readonly UnitFactor[]): boolean {
  return factors.some((each) => each.match?.dimension.key === 'money');
}

function temperatureOf(factors: readonly UnitFactor[]): Unit['temperature'] {
  const [only] = factors;
  if (!only?.match || factors.length > 1 || only.under || !sameRational(only.exponent, one)) {
    return null;
  }
  const { marks } = only.match;
  return marks === 'reading' || marks === 'kelvin' ? marks : null;
}

function unitText(factors: readonly UnitFactor[]): string {
  const over = factors.filter((each) => !each.under).map(factorText);
  const under = factors.filter((each) => each.under).map(factorText);
  const above = over.length > 0 ? over.join(' ') : '1';
  if (under.length === 0) return above;
  return `${above}/${under.length === 1 ? under.join('') : `(${under.join(' ')})`}`;
}

function factorText({ text, exponent }: UnitFactor): string {
  return sameRational(exponent, one) ? text : `${text}^${rationalText(exponent)}`;
}
