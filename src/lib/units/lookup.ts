// One unit name to its meaning: the table, the prefixes allowed on that very unit, the sheet's money.
// Names are case-sensitive; typographic forms (µ, Ω, °C) are read as their plain spellings.

import type { Exact } from './exact.ts';
import type { UnitRow } from './table-row.ts';
import type { Dimension, UnitFault } from './types.ts';
import { baseDimension, parseDimension } from './dimension.ts';
import { exactOne, multiplyExact, parseExact } from './exact.ts';
import { recognisedFault } from './faults.ts';
import { prefixes, unitSpellings } from './table.ts';

/** What one unit name means. */
export interface UnitAtomMatch {
  readonly kind: 'unit';
  /** As it is written back: prefix included, in plain letters: 'um', 'ohm', 'degC'. */
  readonly symbol: string;
  readonly prefix: string;
  /** Coherent SI value of 1 of it. */
  readonly exact: Exact;
  readonly dimension: Dimension;
  readonly marks: UnitRow['marks'];
  /** For a temperature reading: what is added before scaling to kelvin. */
  readonly zero: number;
  readonly definition: string;
  readonly source: string;
}

/** µ U+00B5 and U+03BC, Ω U+03A9 and U+2126, Å U+00C5 and U+212B, ° U+00B0. */
const plainSpellings: readonly (readonly [RegExp, string])[] = [
  [/^[\u00B5\u03BC]/, 'u'],
  [/[\u03A9\u2126]$/, 'ohm'],
  [/^\u00B0/, 'deg'],
  [/^[\u00C5\u212B]$/, 'angstrom']
];

const matches = new Map<string, UnitAtomMatch>();

/** A unit name in plain letters: 'µm' is 'um', 'kΩ' is 'kohm', '°C' is 'degC'. */
export function plainUnitName(name: string): string {
  let text = name;
  for (const [pattern, plain] of plainSpellings) text = text.replace(pattern, plain);
  return text;
}

/**
 * The meaning of one unit name.
 *
 * @param money  the sheet's ISO 4217 code, or null if it has none
 * @returns  the match; a fault if the name is recognised and refused; null if it is not known
 */
export function lookupUnit(name: string, money: string | null): UnitAtomMatch | UnitFault | null {
  const plain = plainUnitName(name);
  const found = matches.get(plain) ?? matchOf(plain);
  if (found) return found;
  if (money !== null && plain === money) return moneyMatch(money);
  return recognisedFault(plain, money);
}

/** Whether a result is a fault, not a meaning. */
export function isUnitFault(result: object | null): result is UnitFault {
  return result !== null && 'code' in result;
}

function matchOf(name: string): UnitAtomMatch | null {
  const spelling = unitSpellings.get(name);
  if (!spelling) return null;
  const { row, prefix } = spelling;
  const exact = parseExact(row.exact);
  const match: UnitAtomMatch = {
    kind: 'unit',
    symbol: name,
    prefix,
    exact: multiplyExact(exact, prefixes.get(prefix) ?? exactOne),
    dimension: parseDimension(row.dimension),
    marks: row.marks,
    zero: row.zero,
    definition: row.definition,
    source: row.source
  };
  matches.set(name, match);
  return match;
}

function moneyMatch(code: string): UnitAtomMatch {
  return {
    kind: 'unit',
    symbol: code,
    prefix: '',
    exact: exactOne,
    dimension: baseDimension('money'),
    marks: null,
    zero: 0,
    definition: 'the money of this sheet',
    source: 'front matter'
  };
}
