// The unit table: every row, by name, with its prefixes. One unit name has one meaning here; a name
// that the trades use for several things stands in `refused.ts` instead.

import type { Exact } from './exact.ts';
import type { UnitRow } from './table-row.ts';
import { parseExact } from './exact.ts';
import { mechanicalUnits } from './table-mechanics.ts';
import { otherUnits } from './table-other.ts';
import { spaceUnits } from './table-space.ts';

export const unitRows: readonly UnitRow[] = [...spaceUnits, ...mechanicalUnits, ...otherUnits];

/** The SI prefixes in use, as exact factors. Source: BIPM, SI Brochure, 9th ed., table 7. */
const prefixFactors: Readonly<Record<string, string>> = {
  p: '1e-12',
  n: '1e-9',
  u: '1e-6',
  m: '1e-3',
  c: '1e-2',
  d: '1e-1',
  da: '10',
  h: '1e2',
  k: '1e3',
  M: '1e6',
  G: '1e9',
  T: '1e12'
};

export const prefixes: ReadonlyMap<string, Exact> = new Map(
  Object.entries(prefixFactors).map(([prefix, factor]) => [prefix, parseExact(factor)])
);

/** One accepted spelling: which row it belongs to and which prefix it carries ('' for none). */
export interface UnitSpelling {
  readonly row: UnitRow;
  readonly prefix: string;
}

/** Every accepted spelling, prefixed ones included. */
export const unitSpellings: ReadonlyMap<string, UnitSpelling> = collectSpellings();

function collectSpellings(): Map<string, UnitSpelling> {
  const spellings = new Map<string, UnitSpelling>();
  const add = (name: string, spelling: UnitSpelling): void => {
    if (spellings.has(name)) throw new RangeError(`two units are spelled "${name}"`);
    spellings.set(name, spelling);
  };
  for (const row of unitRows) {
    for (const name of [...row.symbols, ...row.words]) add(name, { row, prefix: '' });
    for (const prefix of row.prefixes) {
      for (const symbol of row.symbols) add(prefix + symbol, { row, prefix });
    }
  }
  return spellings;
}
