// Integrals and roots inside a program. Each lane of the outer program is advanced by itself; the
// nested program runs over lanes of its own, one per (outer lane, abscissa) that is asked for at once.

import {
  integralStatus, integrateLanes, rootStatus, rootsLanes, type LaneFunction
} from '#lib/numeric/index.ts'; // prettier-ignore
import type { NestedProgram } from './builder.ts';
import { operations as op } from './instruction.ts';
import { LaneFile, type MethodReport } from './lane-file.ts';

/** The interpreter, which calls this and is called from here. */
export type Execute = (code: Int32Array, nested: readonly NestedProgram[], file: LaneFile) => void;

/** An integral whose error may be larger than this share of it has no value. */
export const roughest = 0.01;

/** Lanes of a nested program that are run at once. */
const nestedChunk = 512;

/**
 * Runs an integral (from a to b), a solve (between a and b) or a call (at a) for every lane of the outer file and
 * writes the values at d; what is to be said about a lane goes to `outer.reports`.
 */
export function runNested(
  execute: Execute,
  operation: number,
  called: NestedProgram,
  outer: LaneFile,
  d: number,
  a: number,
  b: number,
  instruction: number
): void {
  // prettier-ignore
  const { lanes, registers } = outer;
  const isSolve = operation === op.solve;
  const low = registers.slice(a, a + lanes);
  const high = operation === op.call ? low : registers.slice(b, b + lanes);
  const f = nestedFunction(execute, called, outer);
  if (operation === op.call) {
    const values = new Float64Array(lanes);
    f(
      Int32Array.from({ length: lanes }, (_, lane) => lane),
      low,
      lanes,
      values
    );
    registers.set(values, d);
    return;
  }
  const report = (lane: number, status: MethodReport['status'], ...figures: number[]): void => {
    const kind = isSolve ? 'solve' : 'integral';
    // Where the work has run out, what the method says about its values means nothing.
    const told = outer.budget.left < 0 ? 'budget' : status;
    outer.reports?.push({ kind, lane, status: told, instruction, figures });
  };
  if (isSolve) {
    const found = rootsLanes(f, low, high, lanes);
    for (let lane = 0; lane < lanes; lane++) {
      const status = at(found.status, lane);
      registers[d + lane] = status === rootStatus.found ? at(found.root, lane) : NaN;
      if (status === rootStatus.sameSign) {
        const ends = [at(found.atLow, lane), at(found.atHigh, lane), at(low, lane), at(high, lane)];
        report(lane, 'sameSign', ...ends);
      }
      if (status === rootStatus.notFinite) report(lane, 'notFinite', at(found.where, lane));
      if (status === rootStatus.budget) report(lane, 'budget', at(found.root, lane));
      if (status === rootStatus.discontinuous) report(lane, 'discontinuous', at(found.root, lane));
      const count = at(found.count, lane);
      if (status === rootStatus.found && count > 1) report(lane, 'several', count);
    }
    return;
  }
  const found = integrateLanes(f, low, high, lanes);
  for (let lane = 0; lane < lanes; lane++) {
    const status = at(found.status, lane);
    const [value, error] = [at(found.value, lane), at(found.error, lane)];
    const isRough = status === integralStatus.inaccurate && error <= roughest * Math.abs(value);
    const hasValue = status === integralStatus.converged || isRough;
    registers[d + lane] = hasValue ? value : NaN;
    if (status === integralStatus.notFinite) report(lane, 'notFinite', at(found.where, lane));
    if (status === integralStatus.budget) report(lane, 'budget', value, error);
    if (status === integralStatus.inaccurate) report(lane, 'inaccurate', value, error);
  }
}

const at = (values: ArrayLike<number>, i: number): number => values[i] ?? NaN;

/** The nested program as a function of (outer lane, abscissa). */
function nestedFunction(execute: Execute, called: NestedProgram, outer: LaneFile): LaneFunction {
  // prettier-ignore
  const { program, captures, variable, result } = called;
  let file = outer.inner.get(called);
  if (!file) {
    file = new LaneFile(program.registers, nestedChunk);
    for (const [register, value] of program.constants) file.fill(register, value);
    outer.inner.set(called, file);
  }
  const inner = file;
  inner.budget = outer.budget;
  return (lanes, x, count, out) => {
    for (let start = 0; start < count; start += nestedChunk) {
      const size = Math.min(nestedChunk, count - start);
      if (outer.budget.left < 0) {
        out.fill(NaN, start, start + size);
        continue;
      }
      inner.lanes = size;
      inner.bad.fill(0);
      for (const [from, to, rows] of captures) {
        for (let row = 0; row < rows; row++) {
          const source = (from + row) * outer.stride;
          const target = (to + row) * nestedChunk;
          for (let i = 0; i < size; i++) {
            inner.registers[target + i] = outer.registers[source + (lanes[start + i] ?? 0)] ?? NaN;
          }
        }
      }
      inner.registers.set(x.subarray(start, start + size), variable * nestedChunk);
      const before = inner.work;
      execute(program.code, program.nested, inner);
      outer.work += inner.work - before;
      for (let i = 0; i < size; i++) {
        out[start + i] = inner.bad[i] ? NaN : (inner.registers[result * nestedChunk + i] ?? NaN);
      }
    }
  };
}
