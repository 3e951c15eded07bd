// Rows of results: a value's unit, digits and texts at every stage. The unit is the one asked for or
// the author's own; otherwise a named unit of the sheet's family with one prefix for the whole row.

import type { QuantityType, Type } from '#lib/check/index.ts';
import {
  displayUnit, dropAngle, formatRow, formatSignificant, fromSI, plain, withPrefix, type Unit, type UnitFamily
} from '#lib/units/index.ts'; // prettier-ignore

export interface RowSettings {
  readonly family: UnitFamily;
  readonly digits: number;
  readonly money: string | null;
}

/** The unit a row is shown in. `largest` is its largest magnitude, SI. */
export function rowUnit(type: QuantityType, largest: number, settings: RowSettings): Unit {
  if (type.unit) return type.unit;
  // A ratio that took up an angle on its way (Reynolds number, from rad/s) is a plain number.
  const isRatio = dropAngle(type.dimension) === plain && type.rate && !type.rev;
  const unit = displayUnit(isRatio ? plain : type.dimension, {
    family: settings.family,
    lengthUnit: type.length,
    isTorque: type.force,
    isReading: type.temperature === 'point',
    rateInRev: type.rev,
    isRoot: type.root,
    money: settings.money
  });
  return withPrefix(unit, largest);
}

export interface ShownNumber {
  readonly value: number;
  readonly number: string;
  readonly text: string;
}

/** Values of a row in its unit; null where there is none. */
export function shownNumbers(
  si: readonly (number | null)[],
  unit: Unit,
  digits: number
): readonly (ShownNumber | null)[] {
  // prettier-ignore
  const values = si.map((value) => (value === null ? null : fromSI(value, unit)));
  const numbers = formatRow(values, digits);
  return values.map((value, i) => {
    if (value === null) return null;
    const number = numbers[i] ?? '';
    return { value, number, text: withUnitText(number, unit) };
  });
}

/** '12 values, 13.6 to 48.5 m/s' */
export function columnText(values: readonly number[], unit: Unit, digits: number): string {
  const measured = values.filter((value) => !Number.isNaN(value));
  const count = `${values.length} value${values.length === 1 ? '' : 's'}`;
  if (measured.length === 0) return count;
  const [low, high] = [Math.min(...measured), Math.max(...measured)];
  const range =
    low === high
      ? formatSignificant(low, digits)
      : `${formatSignificant(low, digits)} to ${formatSignificant(high, digits)}`;
  return `${count}, ${withUnitText(range, unit)}`;
}

/** '12 values, first motor A' for a column of texts. */
export function textColumnText(texts: readonly string[]): string {
  return `${texts.length} text${texts.length === 1 ? '' : 's'}`;
}

export function withUnitText(number: string, unit: Unit): string {
  return unit.text === '1' ? number : `${number} ${unit.text}`;
}

export function isQuantity(type: Type | null | undefined): type is QuantityType {
  return type?.kind === 'quantity';
}
