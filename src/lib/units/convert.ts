// Numbers from one unit to another, and to and from coherent SI. Factors are divided exactly and
// rounded once. Temperature readings are shifted before they are scaled, so that 32 degF is 0 degC.

import type { Unit } from './types.ts';
import { exactFactorOf } from './compose.ts';
import { sameBesidesAngle } from './dimension.ts';
import { divideExact, exactValue } from './exact.ts';

/** A difference of readings this small, relative to the kelvin it came from, is round-off. */
const readingRoundOff = 4 * Number.EPSILON;

/**
 * The number of `to` in 1 `from`; for temperature readings, of their intervals.
 *
 * Error   correctly rounded for units made by `parseUnit` and `readUnitRun`, roots of units and
 *         copies of units (from a worker) to a few ulp
 * Fails   RangeError if the dimensions differ in more than plane angle
 */
export function factorBetween(from: Unit, to: Unit): number {
  if (!sameBesidesAngle(from.dimension, to.dimension)) {
    throw new RangeError(`factorBetween(${from.text}, ${to.text}): the dimensions differ`);
  }
  const above = exactFactorOf(from);
  const below = exactFactorOf(to);
  return above && below ? exactValue(divideExact(above, below)) : from.factor / to.factor;
}

/** A number in a unit as coherent SI; a reading in degC or degF as kelvin. */
export function toSI(value: number, unit: Unit): number {
  if (unit.temperature !== 'reading') return value * unit.factor;
  if (unit.factor === 1) return value + unit.offset;
  return ((value + fahrenheitZero) * 5) / 9;
}

/** A coherent SI value as a number in a unit; kelvin as a reading in degC or degF. */
export function fromSI(si: number, unit: Unit): number {
  if (unit.temperature !== 'reading') return si / unit.factor;
  const reading = unit.factor === 1 ? si - unit.offset : (si * 9) / 5 - fahrenheitZero;
  return Math.abs(reading * unit.factor) <= readingRoundOff * Math.abs(si) ? 0 : reading;
}

/** degF of absolute zero, with its sign changed. Source: NIST SP 811, B.8: (t + 459.67)/1.8 K. */
const fahrenheitZero = 459.67;
