// A unit expression, as it stands behind `to`, in a table's header or in brackets: products and
// quotients of unit names, numerals and bracket groups. A name that is no unit is a fault here,
// since nothing else can stand in its place.

import type { UnitFactor } from './compose.ts';
import type { Rational, Unit, UnitFault } from './types.ts';
import { composeUnit } from './compose.ts';
import { exponentFault, faultAt, notUnitFault, twoReadingsFault, unknownFault } from './faults.ts';
import { isUnitFault } from './lookup.ts';
import { multiplyRational } from './rational.ts';
import { exponentAt, isSmall, nameAt, numeralAt, skipSpace, unitAt } from './scan.ts';

interface Product {
  readonly factors: readonly UnitFactor[];
  readonly end: number;
}

const rememberedMost = 5000;
const deepest = 20;
const remembered = new Map<string, Unit | UnitFault>();

/**
 * The unit that a text means, as a whole; white space at its ends is nothing.
 *
 * @param money  the sheet's ISO 4217 code, or null if it has none
 * @returns  the unit, the same object for the same text; or a fault with offsets in `text`
 */
export function parseUnit(text: string, money: string | null): Unit | UnitFault {
  const key = `${money ?? ''}:${text}`;
  const known = remembered.get(key);
  if (known) return known;
  const unit = parseWhole(text, money);
  if (remembered.size >= rememberedMost) remembered.clear();
  remembered.set(key, unit);
  return unit;
}

function parseWhole(text: string, money: string | null): Unit | UnitFault {
  const from = text.length - text.trimStart().length;
  const to = text.trimEnd().length;
  if (from >= to) return faultAt(notUnitFault(''), 0, text.length);
  const product = productAt(text, from, to, money, 0);
  if (isUnitFault(product)) return product;
  if (product.end < to) return faultAt(notUnitFault(text.slice(product.end, to)), product.end, to);
  return composeUnit(product.factors) ?? faultAt(exponentFault(text.slice(from, to)), from, to);
}

function productAt(
  text: string,
  from: number,
  to: number,
  money: string | null,
  depth: number
): Product | UnitFault {
  const factors: UnitFactor[] = [];
  let at = from;
  let under = false;
  let hasStroke = false;
  for (;;) {
    const term = termAt(text, at, to, money, depth);
    if (isUnitFault(term)) return term;
    for (const each of term.factors) factors.push(under ? { ...each, under: !each.under } : each);
    const after = skipSpace(text, term.end);
    const sign = after < to ? text[after] : undefined;
    if (sign === undefined || sign === ')') return { factors, end: after };
    const isUnmarked = !'/*×'.includes(sign);
    if (isUnmarked && after === term.end && sign !== '·' && sign !== '⋅') {
      return { factors, end: after };
    }
    if (isUnmarked && hasStroke && under) return readings(text, from, to, factors, after, money);
    under = sign === '/';
    hasStroke ||= under;
    at = '/*×·⋅'.includes(sign) ? skipSpace(text, after + 1) : after;
  }
}

/** One factor, or a bracket group, with its exponent. */
function termAt(
  text: string,
  from: number,
  to: number,
  money: string | null,
  depth: number
): Product | UnitFault {
  if (text[from] === '(' && depth < deepest) {
    const inner = productAt(text, skipSpace(text, from + 1), to, money, depth + 1);
    if (isUnitFault(inner)) return inner;
    if (text[inner.end] !== ')' || inner.end >= to) {
      return faultAt(notUnitFault(text.slice(from, to)), from, to);
    }
    return raised(text, from, inner.end + 1, inner.factors);
  }
  const numeral = numeralAt(text, from);
  if (numeral !== '' && isPlainFactor(Number(numeral)) && numeral.length <= 24) {
    const factor = { match: null, text: numeral, exponent: { num: 1, den: 1 }, under: false };
    return raised(text, from, from + numeral.length, numeral === '1' ? [] : [factor]);
  }
  const scanned = unitAt(text, from, money);
  if (isUnitFault(scanned)) return scanned;
  if (scanned === null) return unknownAt(text, from, to, money);
  const { match, exponent, end } = scanned;
  return { factors: [{ match, text: match.symbol, exponent, under: false }], end };
}

/** Whether a numeral is of a size that a unit can have; larger ones would cost time to no end. */
function isPlainFactor(value: number): boolean {
  return value >= 1e-30 && value <= 1e30;
}

function raised(
  text: string,
  from: number,
  end: number,
  factors: readonly UnitFactor[]
): Product | UnitFault {
  const power = exponentAt(text, end);
  if (isUnitFault(power)) return faultAt(exponentFault(text.slice(from, power.to)), from, power.to);
  const product: UnitFactor[] = [];
  for (const factor of factors) {
    const exponent: Rational = multiplyRational(factor.exponent, power.exponent);
    if (!isSmall(exponent)) {
      return faultAt(exponentFault(text.slice(from, power.end)), from, power.end);
    }
    product.push({ ...factor, exponent });
  }
  return { factors: product, end: power.end };
}

function unknownAt(text: string, from: number, to: number, money: string | null): UnitFault {
  const name = nameAt(text, from);
  if (name === '') return faultAt(notUnitFault(text.slice(from, to)), from, to);
  return faultAt(unknownFault(name, money), from, from + name.length);
}

/** A space or dot after a stroke: what follows may have been meant below it or above. */
function readings(
  text: string,
  from: number,
  to: number,
  factors: readonly UnitFactor[],
  rest: number,
  money: string | null
): UnitFault {
  const restFrom = skipSpace(text, '·⋅'.includes(text[rest] ?? '') ? rest + 1 : rest);
  const term = termAt(text, restFrom, to, money, 0);
  if (isUnitFault(term)) return term;
  const below = term.factors.map((each) => ({ ...each, under: !each.under }));
  const written = text.slice(from, term.end);
  const texts = [below, term.factors].map(
    (each) => composeUnit([...factors, ...each])?.text ?? written
  );
  const fault = twoReadingsFault(written, texts[0] ?? written, texts[1] ?? written);
  return faultAt(fault, from, term.end);
}
