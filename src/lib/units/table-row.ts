// One row of the unit table and where its figures come from. The definitions are stated from memory
// of the sources named, worked out in exact fractions, and compared with GNU units 2.22 and with the
// reference conversions under tests/reference/units.

export interface UnitRow {
  /** Accepted names that may carry a prefix; the first is the one we write ourselves. */
  readonly symbols: readonly string[];
  /** Accepted names written out; they take no prefix. */
  readonly words: readonly string[];
  /** Coherent SI value of 1 of the unit: a fraction, times a power of pi where written. */
  readonly exact: string;
  readonly dimension: string;
  readonly definition: string;
  readonly source: string;
  /** The prefixes that make sense on it, and no others: 'mm' but not 'Ym', and none on in, lb, h. */
  readonly prefixes: readonly string[];
  /** rev: counts turns. hz: a rate without angle. reading, kelvin: temperatures. */
  readonly marks: 'rev' | 'hz' | 'reading' | 'kelvin' | null;
  /** For a reading: what is added to the number before it is scaled to kelvin. */
  readonly zero: number;
}

export const siBrochure = 'BIPM, SI Brochure, 9th ed. (2019)';
export const sp811 = 'NIST SP 811 (2008), appendix B';
export const yardPound = 'international yard and pound agreement of 1959; NIST SP 811, B.6';
export const trade = 'common practice, no source';

/** A row; `names` holds the symbols, then after ';' the words. */
export function unit(
  names: string,
  exact: string,
  dimension: string,
  definition: string,
  source: string,
  more: {
    readonly prefixes?: string;
    readonly marks?: 'rev' | 'hz' | 'reading' | 'kelvin';
    readonly zero?: string;
  } = {}
): UnitRow {
  const [symbols = '', words = ''] = names.split('; ');
  return {
    symbols: symbols.split(' '),
    words: words === '' ? [] : words.split(' '),
    exact,
    dimension,
    definition,
    source,
    prefixes: more.prefixes?.split(' ') ?? [],
    marks: more.marks ?? null,
    zero: Number(more.zero ?? 0)
  };
}
