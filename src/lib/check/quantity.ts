// Types made from units, and the ones that powers and mixtures give.

import {
  baseDimension,
  dimensionOf,
  plain,
  powerDimension,
  type Rational,
  type Unit
} from '#lib/units/index.ts';
import { isRate } from './angle.ts';
import { plainNumber, type QuantityType, type TemperatureKind } from './type.ts';

const kelvin = baseDimension('K');
const length = baseDimension('m');
const force = dimensionOf({ m: 1, kg: 1, s: -2 });

/** A value raised to a rational power. */
export function raised(base: QuantityType, exponent: Rational): QuantityType {
  const isRoot = exponent.num === 1 && exponent.den === 2 && !base.rate;
  const dimension = powerDimension(base.dimension, exponent);
  const isOne = exponent.num === 1 && exponent.den === 1;
  return {
    ...plainNumber,
    dimension,
    rows: base.rows,
    rev: base.rev,
    hz: base.hz,
    root: isRoot,
    rate: base.rate,
    literal: base.literal,
    temperature: dimension === kelvin ? (isOne ? base.temperature : 'neutral') : null,
    unit: isOne ? base.unit : null,
    length: base.length
  };
}

/** The type of a value written or shown in a unit. */
export function quantityIn(unit: Unit): QuantityType {
  return {
    ...plainNumber,
    dimension: unit.dimension,
    rev: unit.hasRev,
    hz: unit.hasHz,
    rate: isRate(unit.dimension),
    temperature: unitTemperature(unit),
    unit,
    length: unit.dimension === length ? unit : null,
    force: unit.dimension === force
  };
}

export function quantityLiteral(unit: Unit, magnitude: number): QuantityType {
  const isPlainZero = magnitude === 0 && unit.dimension === plain;
  return { ...quantityIn(unit), literal: true, literalZero: isPlainZero };
}

function unitTemperature(unit: Unit): TemperatureKind | null {
  if (unit.temperature === 'reading') return 'point';
  return unit.dimension === kelvin ? 'neutral' : null;
}

/** Points stay points, differences differences; anything mixed is neutral. */
export function commonTemperature(types: readonly QuantityType[]): TemperatureKind {
  const kinds = types
    .filter((type) => !type.literalZero)
    .map((type) => type.temperature ?? 'neutral');
  if (kinds.includes('point')) return 'point';
  return kinds.every((kind) => kind === 'difference') ? 'difference' : 'neutral';
}
