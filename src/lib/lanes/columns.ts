// The instructions that read whole columns: statistics over rows, picking and choosing a row,
// interpolation. Each lane works down its own rows.

import {
  compensatedSum, interpolant, interpolateAt, mean, standardDeviation, type Interpolant, type InterpolationKind
} from '#lib/numeric/index.ts'; // prettier-ignore
import type { LaneFile } from './lane-file.ts';
import { operations as op } from './instruction.ts';

/**
 * Runs one column instruction. Offsets are into the file's registers; `option` is the instruction's
 * last operand as a plain number: 1 lets statistics skip rows that were not measured (not a number).
 */
export function columnOperation(
  operation: number,
  file: LaneFile,
  d: number,
  a: number,
  b: number,
  c: number,
  rows: number,
  option: number
): void {
  // prettier-ignore
  const r = file.registers;
  switch (operation) {
    case op.sum:
    case op.mean:
    case op.standardDeviation:
    case op.minimum:
    case op.maximum:
    case op.count:
    case op.first:
    case op.last:
      for (let i = 0; i < file.lanes; i++) {
        r[d + i] = statistic(operation, rowsOfLane(file, a, rows, i, option === 1));
      }
      break;
    case op.pick:
      for (let i = 0; i < file.lanes; i++) {
        const row = r[b + i] ?? NaN;
        r[d + i] = row >= 0 && row < rows ? (r[a + row * file.stride + i] ?? NaN) : NaN;
      }
      break;
    case op.choose:
      for (let i = 0; i < file.lanes; i++) r[d + i] = leastScore(file, a, b, rows, i);
      break;
    default: {
      const method = interpolations.get(operation);
      if (!method) throw new RangeError(`operation ${operation} is none of the instruction set`);
      let table: Interpolant | null = null;
      for (let i = 0; i < file.lanes; i++) {
        // Lanes of a nested program mostly read the same table: it is looked over once.
        if (table === null || !isLaneBefore(file, b, rows, i) || !isLaneBefore(file, c, rows, i)) {
          table = interpolant(
            method.kind, rowsOfLane(file, b, rows, i, false), rowsOfLane(file, c, rows, i, false)
          ); // prettier-ignore
        }
        const found = interpolateAt(table, r[a + i] ?? NaN);
        r[d + i] = method.slope ? found.slope : found.value;
      }
    }
  }
}

const interpolations = new Map<number, { kind: InterpolationKind; slope: boolean }>([
  [op.interpolate, { kind: 'linear', slope: false }],
  [op.interpolateHeld, { kind: 'held', slope: false }],
  [op.interpolateSpline, { kind: 'spline', slope: false }],
  [op.slope, { kind: 'linear', slope: true }],
  [op.slopeHeld, { kind: 'held', slope: true }],
  [op.slopeSpline, { kind: 'spline', slope: true }]
]);

/** Whether a column holds the same figures, to the bit, in a lane as in the one before it. */
function isLaneBefore(file: LaneFile, from: number, rows: number, lane: number): boolean {
  const r = file.registers;
  for (let row = 0; row < rows; row++) {
    const at = from + row * file.stride + lane;
    if (!Object.is(r[at], r[at - 1])) return false;
  }
  return true;
}

function rowsOfLane(
  file: LaneFile,
  from: number,
  rows: number,
  lane: number,
  measuredOnly: boolean
): Float64Array {
  // prettier-ignore
  const values = new Float64Array(rows);
  let count = 0;
  for (let row = 0; row < rows; row++) {
    const value = file.registers[from + row * file.stride + lane] ?? NaN;
    if (measuredOnly && Number.isNaN(value)) continue;
    values[count++] = value;
  }
  return values.subarray(0, count);
}

/** Of no rows at all: count and sum are 0, the rest is not a number. */
function statistic(operation: number, values: Float64Array): number {
  switch (operation) {
    case op.sum:
      return compensatedSum(values);
    case op.mean:
      return mean(values);
    case op.standardDeviation:
      return standardDeviation(values);
    case op.count:
      return values.length;
    case op.first:
      return values[0] ?? NaN;
    case op.last:
      return values[values.length - 1] ?? NaN;
    default: {
      let extreme = values[0] ?? NaN;
      for (const value of values) {
        extreme = operation === op.minimum ? Math.min(extreme, value) : Math.max(extreme, value);
      }
      return extreme;
    }
  }
}

/** Equal scores: the upper row. */
function leastScore(
  file: LaneFile,
  mask: number,
  score: number,
  rows: number,
  lane: number
): number {
  let best = NaN;
  let bestScore = Infinity;
  for (let row = 0; row < rows; row++) {
    const at = row * file.stride + lane;
    const value = file.registers[score + at] ?? NaN;
    if (file.registers[mask + at] !== 0 && (value < bestScore || Number.isNaN(best))) {
      best = row;
      bestScore = value;
    }
  }
  return best;
}
