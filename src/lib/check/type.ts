// The type of a value: its dimension, and what travels with it so that plane angle and temperature
// are neither a nuisance nor blind. Types are static: they are worked out once per edit, never in
// the lanes. The marks follow the rules for plane angle and temperature of docs/worksheet-format.md.

import { plain, type Dimension, type Unit } from '#lib/units/index.ts';

/** A point on a scale, a difference of two, or neutral (written in K or degR). */
export type TemperatureKind = 'point' | 'difference' | 'neutral';

export interface QuantityType {
  readonly kind: 'quantity';
  readonly dimension: Dimension;
  /** Rows of a column; null for a single value. */
  readonly rows: number | null;
  /** Entered or shown in revolutions. */
  readonly rev: boolean;
  /** Came from Hz. */
  readonly hz: boolean;
  /** A bare square root with no rate inside: it counts radians per second if it is a rate. */
  readonly root: boolean;
  /** Power of a literal pi among the top-level factors of this expression; 0 in a name's type. */
  readonly piPower: number;
  /** Some operand is a rate. */
  readonly rate: boolean;
  /** A rotating speed over a speed (tip-speed ratio). */
  readonly tipSpeedRatio: boolean;
  /** null unless the dimension is exactly K. */
  readonly temperature: TemperatureKind | null;
  /** A literal 0 fits any dimension in a sum or comparison. */
  readonly literalZero: boolean;
  /** Written as a number or a quantity, without any name in it. */
  readonly literal: boolean;
  /** The author's own unit for this dimension, to show the value in. */
  readonly unit: Unit | null;
  /** Unit of the first length operand: a power of a length is shown in it. */
  readonly length: Unit | null;
  /** A factor is a force: kg m^2 s^-2 is then a torque, N m. */
  readonly force: boolean;
}

export interface TruthType {
  readonly kind: 'truth';
  readonly rows: number | null;
}

export interface TextType {
  readonly kind: 'text';
  readonly rows: number | null;
}

export type Type = QuantityType | TruthType | TextType;

/** A plain number without marks. */
export const plainNumber: QuantityType = {
  kind: 'quantity',
  dimension: plain,
  rows: null,
  rev: false,
  hz: false,
  root: false,
  piPower: 0,
  rate: false,
  tipSpeedRatio: false,
  temperature: null,
  literalZero: false,
  literal: false,
  unit: null,
  length: null,
  force: false
};

/** A quantity of a dimension without marks. */
export function quantityOf(dimension: Dimension, rows: number | null = null): QuantityType {
  return { ...plainNumber, dimension, rows };
}

/** Equal keys: everything that depends on the type is unchanged. */
export function typeKey(type: Type): string {
  if (type.kind !== 'quantity') return `${type.kind}:${type.rows ?? ''}`;
  const marks =
    (type.rev ? 'r' : '') + (type.hz ? 'h' : '') + (type.root ? 'q' : '') +
    (type.rate ? 't' : '') + (type.tipSpeedRatio ? 'u' : '') + (type.force ? 'f' : '') +
    (type.literalZero ? '0' : ''); // prettier-ignore
  return [
    type.dimension.key,
    type.rows ?? '',
    marks,
    type.piPower,
    type.temperature ?? '',
    type.unit?.text ?? '',
    type.length?.text ?? ''
  ].join('|');
}
