// Where a value went bad. One lane of a definition is run again, instruction by instruction, until the
// first one that makes something not finite out of finite operands in a branch that counts: that is
// the term to name. The run is the interpreter's own, so the trace cannot disagree with the value.

import type { Origin, Segment } from './builder.ts';
import { instructionSize, operationNames, type OperationName } from './instruction.ts';
import { execute } from './interpret.ts';
import { LaneFile, type MethodReport } from './lane-file.ts';

export interface Fault {
  readonly operation: OperationName;
  readonly origin: Origin | null;
  /** Values of the operands, SI. */
  readonly operands: readonly number[];
  /** What the value is: NaN or an infinity. */
  readonly value: number;
  readonly report: MethodReport | null;
  /** Of an interpolation: the column it goes along, SI. */
  readonly abscissae: readonly number[] | null;
}

/** The first fault of a definition in one lane; null where the lane computes well. */
export function traceLane(segment: Segment, file: LaneFile, lane: number): Fault | null {
  const { stride } = file;
  const registers = file.registers.length / stride;
  const alone = new LaneFile(registers, 1);
  for (let r = 0; r < registers; r++) alone.registers[r] = file.registers[r * stride + lane] ?? NaN;
  alone.status = new Uint8Array(file.status.length / stride);
  alone.reports = [];
  const count = segment.code.length / instructionSize;
  for (let i = 0; i < count; i++) {
    const k = i * instructionSize;
    const [operation = 0, d = -1, a = -1, b = -1] = segment.code.subarray(k, k + instructionSize);
    const rows = segment.code[k + 5] ?? 1;
    const name = operationNames[operation];
    if (!name || name === 'end') continue;
    alone.reports = [];
    const operands = [a, b].map((register) => alone.registers[register] ?? NaN);
    execute(segment.code, segment.nested, alone, i, i + 1);
    if (d < 0) continue;
    const mask = segment.masks[i] ?? -1;
    if (mask >= 0 && alone.registers[mask] === 0) continue;
    for (let row = 0; row < (singleValued.has(name) ? 1 : rows); row++) {
      const value = alone.registers[d + row] ?? NaN;
      if (Number.isFinite(value)) continue;
      const [report = null] = alone.reports;
      const abscissae = interpolations.has(name)
        ? Array.from(alone.registers.subarray(b, b + rows))
        : null;
      return {
        operation: name,
        origin: segment.origins[i] ?? null,
        operands,
        value,
        report,
        abscissae
      };
    }
  }
  return null;
}

const interpolations: ReadonlySet<OperationName> = new Set<OperationName>([
  'interpolate', 'interpolateHeld', 'interpolateSpline'
]); // prettier-ignore

const singleValued: ReadonlySet<OperationName> = new Set<OperationName>([
  'sum', 'mean', 'standardDeviation', 'minimum', 'maximum', 'count', 'first', 'last', 'pick',
  'choose', 'interpolate', 'interpolateHeld', 'interpolateSpline'
]); // prettier-ignore
