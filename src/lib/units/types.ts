// What a dimension and a unit are. Dimensions carry a rational exponent for each SI base quantity,
// for plane angle (rad) and for the sheet's one money; units are exact factors onto coherent SI.

/** num/den in lowest terms, den > 0. */
export interface Rational {
  readonly num: number;
  readonly den: number;
}

export const bases = ['m', 'kg', 's', 'A', 'K', 'mol', 'cd', 'rad', 'money'] as const;
export type Base = (typeof bases)[number];

/** Interned: equal dimensions are the same object, so `===` compares them. */
export interface Dimension {
  /** Canonical text: 'kg m^2 s^-2', '1' for a plain number; money is written 'money', angle 'rad'. */
  readonly key: string;
  /** In the order of `bases`. */
  readonly exponents: readonly Rational[];
}

/** One named unit of a compound one, for typesetting and for finding the author's own length unit. */
export interface UnitAtom {
  /** As written, prefix included: 'mm', 'kW', 'rev', 'EUR'. */
  readonly symbol: string;
  readonly exponent: Rational;
}

export interface Unit {
  /** As the author wrote it, signs and spacing made uniform: 'N m', 'kg/m^3', 'rad/s', '1', '%'. */
  readonly text: string;
  /** Coherent SI value of 1 of this unit, correctly rounded from the exact definition. */
  readonly factor: number;
  readonly dimension: Dimension;
  readonly atoms: readonly UnitAtom[];
  /**
   * 'degC' or 'degF' alone to the first power: a number in it is a reading on that scale, a point
   * (in kelvin: value * factor + offset). 'kelvin': K or degR alone. Otherwise null.
   */
  readonly temperature: 'reading' | 'kelvin' | null;
  /** Added after scaling when a reading becomes kelvin; 0 unless `temperature` is 'reading'. */
  readonly offset: number;
  /** rev, rpm, rps or the like stands in it. */
  readonly hasRev: boolean;
  /** Hz stands in it. */
  readonly hasHz: boolean;
}

/** Why a text is no unit. `from` and `to` are offsets in the text that was asked. */
export interface UnitFault {
  readonly code: 'units/unknown' | 'units/refused' | 'units/two-moneys' | 'units/exponent';
  readonly from: number;
  readonly to: number;
  readonly message: string;
  readonly hint: string | null;
  /** What could stand there instead: 'kW' for 'kw'. */
  readonly replacement: string | null;
}

export type UnitFamily = 'SI' | 'US';
