// What may become of plane angle when a value is shown in a unit, summed, or compared. Every
// dimension carries an exponent a of plane angle; p is the power of a literal pi among the factors
// of the expression, which is how people write the conversion. The rules are those of
// docs/worksheet-format.md, *Plane angle*: none of 54 textbook formulas comes out wrong in silence.

import { angleWords, type ProblemCode, type Severity, type Wording } from '#lib/problem/index.ts';
import {
  dimensionOf, dropAngle, exponentOf, rational, withExponent, type Dimension, type Unit
} from '#lib/units/index.ts'; // prettier-ignore
import type { QuantityType } from './type.ts';

export interface AngleRemark {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly words: Wording;
}

const rateDimension = dimensionOf({ s: -1 });
const timeDimension = dimensionOf({ s: 1 });
const plainDimension = dimensionOf({});
const speedDimension = dimensionOf({ m: 1, s: -1 });

/** s^-1, whatever its plane angle. */
export const isRate = (dimension: Dimension): boolean => dropAngle(dimension) === rateDimension;
const isTime = (dimension: Dimension): boolean => dropAngle(dimension) === timeDimension;
const isPlain = (dimension: Dimension): boolean => dropAngle(dimension) === plainDimension;
export const isSpeed = (dimension: Dimension): boolean => dropAngle(dimension) === speedDimension;

/** The exponent of plane angle as a number. */
export function angleOf(dimension: Dimension): number {
  const exponent = exponentOf(dimension, 'rad');
  return exponent.num / exponent.den;
}

/** At the end of a definition p is settled into a: omega/(2 pi) counts turns, 2 pi f counts radians. */
export function settleAngle(type: QuantityType): QuantityType {
  const a = angleOf(type.dimension);
  const p = type.piPower;
  const angle = (num: number): QuantityType => ({
    ...type,
    dimension: withExponent(type.dimension, 'rad', rational(num)),
    piPower: 0
  });
  if (isRate(type.dimension) && a === 1 && p === -1) return angle(0);
  if (isRate(type.dimension) && a === 0 && p === 1) return angle(1);
  if (isTime(type.dimension) && a === -1 && p === 1) return angle(0);
  return type;
}

/** Where a value is wanted: in a unit asked for with `to`, or beside another in a sum or comparison. */
export interface AngleTarget {
  /** Exponent of plane angle over there. */
  readonly angle: number;
  readonly asked: 'to' | 'sum' | 'shown';
  readonly unit: Unit | null;
  /** Over there it counts revolutions. */
  readonly rev: boolean;
}

/**
 * What is to be said when a value of this type is taken to the target, whose other exponents match.
 * null: nothing. The value itself never changes (1 rad = 1).
 *
 * @param what the words for the value: a name, or the expression's text
 */
export function angleRemark(
  type: QuantityType,
  target: AngleTarget,
  what: string
): AngleRemark | null {
  const a = angleOf(type.dimension);
  const p = type.piPower;
  if (isRate(type.dimension)) return rateRemark(type, a, p, target, what);
  if (isTime(type.dimension)) {
    if (target.angle !== 0 || a >= 0 || p > 0) return null;
    return error('angle/time-per-radian', angleWords.timePerRadian(what));
  }
  if (isPlain(type.dimension)) return plainRemark(type, a, target, what);
  if (a === target.angle) return null;
  if (type.rev && p > 0 && a === 1) {
    return { code: 'angle/twice-two-pi', severity: 'warning', words: angleWords.twiceTwoPi(what) };
  }
  return type.rev ? note(what) : null;
}

/**
 * What is to be said when two values stand side by side in a sum or comparison; their other exponents
 * match. `angle` is the exponent that the pair has from there on.
 */
export function angleRemarkOfPair(
  first: QuantityType,
  second: QuantityType,
  what: readonly [string, string]
): { remark: AngleRemark | null; angle: number } {
  const [left, right] = [settleAngle(first), settleAngle(second)];
  const [a, b] = [angleOf(left.dimension), angleOf(right.dimension)];
  for (const [type, words] of [
    [left, what[0]],
    [right, what[1]]
  ] as const) {
    if (isRate(type.dimension) && angleOf(type.dimension) !== 0 && type.piPower !== 0) {
      return {
        remark: error('angle/twice-two-pi', angleWords.alreadyCountsRadians(words)),
        angle: a
      };
    }
  }
  if (a === b) return { remark: null, angle: a };
  const firstHasAngle = a !== 0;
  const [turning, still] = firstHasAngle ? [left, right] : [right, left];
  const [turningWords, stillWords] = firstHasAngle ? what : [what[1], what[0]];
  const dropped = angleRemark(
    turning, { angle: 0, asked: 'sum', unit: null, rev: false }, turningWords
  ); // prettier-ignore
  if (dropped?.severity !== 'error' || isTime(turning.dimension))
    return { remark: dropped, angle: 0 };
  const taken = angleRemark(
    still,
    { angle: angleOf(turning.dimension), asked: 'sum', unit: null, rev: turning.rev },
    stillWords
  );
  return { remark: taken === null ? null : dropped, angle: angleOf(turning.dimension) };
}

function rateRemark(
  type: QuantityType,
  a: number,
  p: number,
  target: AngleTarget,
  what: string
): AngleRemark | null {
  // prettier-ignore
  if (target.angle === 0) {
    if (a === 0) {
      const bareRoot = type.root && p === 0 && target.asked === 'to' && target.unit?.hasHz === true;
      return bareRoot
        ? { code: 'angle/root-in-hertz', severity: 'warning', words: angleWords.rootInHertz(what) }
        : null;
    }
    if (a === -1 || p < 0) return null;
    return error('angle/counts-radians', angleWords.countsRadians(what));
  }
  if (a !== 0) {
    return p === 0 ? null : error('angle/twice-two-pi', angleWords.alreadyCountsRadians(what));
  }
  if (p > 0) return null;
  if (p < 0) return error('angle/needs-turn-or-radian', angleWords.countsTurns(what));
  if (target.asked === 'to' && target.unit?.text === 'rad/s' && !type.hz) return null;
  return error(
    'angle/needs-turn-or-radian',
    angleWords.turnOrRadian(what, target.unit?.text ?? 'a rotating speed')
  );
}

function plainRemark(
  type: QuantityType,
  a: number,
  target: AngleTarget,
  what: string
): AngleRemark | null {
  // prettier-ignore
  if (target.angle === 0) {
    if (a === 0 || !type.rev) return null;
    // Left without `to`, it is shown in rad, so nothing is lost.
    if (target.asked === 'shown') return null;
    if (type.tipSpeedRatio) {
      return { code: 'angle/rev-as-radians', severity: 'note', words: angleWords.tipSpeedRatio(what) };
    }
    return error('angle/rev-as-radians', angleWords.turnsOrRadians(what));
  }
  if (a === 0 && target.rev) {
    return error('angle/needs-turn-or-radian', angleWords.numberAsTurns(what));
  }
  return null;
}

const error = (code: ProblemCode, words: Wording): AngleRemark => ({
  code,
  severity: 'error',
  words
});
const note = (what: string): AngleRemark => ({
  code: 'angle/rev-as-radians',
  severity: 'note',
  words: angleWords.revCountedAsRadians(what)
});
