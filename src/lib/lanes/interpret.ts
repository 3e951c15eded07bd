// The chunked interpreter: a loop over instructions, each a tight loop over the lanes of a chunk. It
// is the reference for every other way to run a program, and the right one for a few lanes. A lane's
// result depends on that lane alone, so chunk size and order of lanes change no bit.

import type { NestedProgram } from './builder.ts';
import { columnOperation } from './columns.ts';
import {
  instructionSize,
  integerPower,
  modulo,
  operations as op,
  roundHalfAway
} from './instruction.ts';
import { workPerDefinition, type LaneFile } from './lane-file.ts';
import { runNested } from './nested.ts';

/**
 * Runs instructions `from` to `to` (counted in instructions) of a program over the lanes of a file.
 *
 * Cost    one pass over the lanes per instruction; nested programs run over lanes of their own
 * Fails   never: a lane that meets a value that is not finite is marked in `file.bad` and `file.status`
 */
export function execute(
  code: Int32Array, nested: readonly NestedProgram[], file: LaneFile,
  from = 0, to: number = code.length / instructionSize
): void { // prettier-ignore
  const r = file.registers;
  const stride = file.stride;
  const lanes = file.lanes;
  const end = to * instructionSize;
  file.work += (to - from) * lanes;
  file.budget.left -= (to - from) * lanes;
  for (let k = from * instructionSize; k < end; k += instructionSize) {
    const operation = code[k] as number;
    const rows = code[k + 5] as number;
    const count = rows === 1 ? lanes : rows * stride;
    const d = (code[k + 1] as number) * stride;
    const a = (code[k + 2] as number) * stride;
    const b = (code[k + 3] as number) * stride;
    const c = (code[k + 4] as number) * stride;
    switch (operation) {
      case op.copy: for (let i = 0; i < count; i++) r[d + i] = r[a + i]!; break;
      case op.spread:
        for (let row = 0; row < rows; row++) {
          for (let i = 0; i < stride; i++) r[d + row * stride + i] = r[a + i]!;
        }
        break;
      case op.add: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! + r[b + i]!; break;
      case op.subtract: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! - r[b + i]!; break;
      case op.multiply: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! * r[b + i]!; break;
      case op.divide: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! / r[b + i]!; break;
      case op.negate: for (let i = 0; i < count; i++) r[d + i] = -r[a + i]!; break;
      case op.integerPower: {
        const n = code[k + 3] as number;
        // The products of `integerPower`, in its order.
        if (n === 2) for (let i = 0; i < count; i++) r[d + i] = r[a + i]! * r[a + i]!;
        else if (n === 3) for (let i = 0; i < count; i++) r[d + i] = r[a + i]! * (r[a + i]! * r[a + i]!);
        else for (let i = 0; i < count; i++) r[d + i] = integerPower(r[a + i]!, n);
        break;
      }
      case op.power: for (let i = 0; i < count; i++) r[d + i] = Math.pow(r[a + i]!, r[b + i]!); break;
      case op.sqrt: for (let i = 0; i < count; i++) r[d + i] = Math.sqrt(r[a + i]!); break;
      case op.cbrt: for (let i = 0; i < count; i++) r[d + i] = Math.cbrt(r[a + i]!); break;
      case op.exp: for (let i = 0; i < count; i++) r[d + i] = Math.exp(r[a + i]!); break;
      case op.ln: for (let i = 0; i < count; i++) r[d + i] = Math.log(r[a + i]!); break;
      case op.log10: for (let i = 0; i < count; i++) r[d + i] = Math.log10(r[a + i]!); break;
      case op.log2: for (let i = 0; i < count; i++) r[d + i] = Math.log2(r[a + i]!); break;
      case op.sin: for (let i = 0; i < count; i++) r[d + i] = Math.sin(r[a + i]!); break;
      case op.cos: for (let i = 0; i < count; i++) r[d + i] = Math.cos(r[a + i]!); break;
      case op.tan: for (let i = 0; i < count; i++) r[d + i] = Math.tan(r[a + i]!); break;
      case op.asin: for (let i = 0; i < count; i++) r[d + i] = Math.asin(r[a + i]!); break;
      case op.acos: for (let i = 0; i < count; i++) r[d + i] = Math.acos(r[a + i]!); break;
      case op.atan: for (let i = 0; i < count; i++) r[d + i] = Math.atan(r[a + i]!); break;
      case op.atan2: for (let i = 0; i < count; i++) r[d + i] = Math.atan2(r[a + i]!, r[b + i]!); break;
      case op.sinh: for (let i = 0; i < count; i++) r[d + i] = Math.sinh(r[a + i]!); break;
      case op.cosh: for (let i = 0; i < count; i++) r[d + i] = Math.cosh(r[a + i]!); break;
      case op.tanh: for (let i = 0; i < count; i++) r[d + i] = Math.tanh(r[a + i]!); break;
      case op.asinh: for (let i = 0; i < count; i++) r[d + i] = Math.asinh(r[a + i]!); break;
      case op.acosh: for (let i = 0; i < count; i++) r[d + i] = Math.acosh(r[a + i]!); break;
      case op.atanh: for (let i = 0; i < count; i++) r[d + i] = Math.atanh(r[a + i]!); break;
      case op.min: for (let i = 0; i < count; i++) r[d + i] = Math.min(r[a + i]!, r[b + i]!); break;
      case op.max: for (let i = 0; i < count; i++) r[d + i] = Math.max(r[a + i]!, r[b + i]!); break;
      case op.abs: for (let i = 0; i < count; i++) r[d + i] = Math.abs(r[a + i]!); break;
      case op.sign: for (let i = 0; i < count; i++) r[d + i] = Math.sign(r[a + i]!); break;
      case op.floor: for (let i = 0; i < count; i++) r[d + i] = Math.floor(r[a + i]!); break;
      case op.ceil: for (let i = 0; i < count; i++) r[d + i] = Math.ceil(r[a + i]!); break;
      case op.round: for (let i = 0; i < count; i++) r[d + i] = roundHalfAway(r[a + i]!); break;
      case op.modulo: for (let i = 0; i < count; i++) r[d + i] = modulo(r[a + i]!, r[b + i]!); break;
      case op.hypot: for (let i = 0; i < count; i++) r[d + i] = Math.hypot(r[a + i]!, r[b + i]!); break;
      case op.less: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! < r[b + i]! ? 1 : 0; break;
      case op.lessOrEqual: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! <= r[b + i]! ? 1 : 0; break;
      case op.equal: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! === r[b + i]! ? 1 : 0; break;
      case op.unequal: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! !== r[b + i]! ? 1 : 0; break;
      case op.and: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! !== 0 && r[b + i]! !== 0 ? 1 : 0; break;
      case op.or: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! !== 0 || r[b + i]! !== 0 ? 1 : 0; break;
      case op.not: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! === 0 ? 1 : 0; break;
      case op.select: for (let i = 0; i < count; i++) r[d + i] = r[c + i]! !== 0 ? r[a + i]! : r[b + i]!; break;
      case op.check: markBad(file, a, b, count, code[k + 4] === 1); break;
      case op.notNegative: for (let i = 0; i < count; i++) r[d + i] = r[a + i]! < 0 ? NaN : r[a + i]!; break;
      case op.integrate:
      case op.solve:
      case op.call: {
        const called = nested[code[k + 4] as number];
        if (!called) throw new RangeError('an instruction calls a program that is not there');
        runNested(execute, operation, called, file, d, a, b, k / instructionSize);
        break;
      }
      case op.end: endDefinition(file, d, code[k + 3] as number, rows); break;
      default: columnOperation(operation, file, d, a, b, c, rows, code[k + 4] as number);
    }
  }
} // prettier-ignore

function markBad(file: LaneFile, a: number, mask: number, count: number, byRow: boolean): void {
  const r = file.registers;
  const { stride, bad } = file;
  if (mask < 0) {
    for (let i = 0; i < count; i++) {
      const x = r[a + i]!;
      if (x - x !== 0) bad[i < stride ? i : i % stride] = 1;
    }
    return;
  }
  for (let i = 0; i < count; i++) {
    const x = r[a + i]!;
    if (x - x !== 0 && r[mask + (byRow ? i : i % stride)] !== 0) bad[i % stride] = 1;
  }
}

function endDefinition(file: LaneFile, d: number, statusNumber: number, rows: number): void {
  file.budget.left = workPerDefinition * file.stride;
  const r = file.registers;
  const { stride, bad, lanes } = file;
  const s = statusNumber * stride;
  const status = file.status;
  if (rows === 1) {
    for (let i = 0; i < lanes; i++) {
      const x = r[d + i]!;
      const isBad = x - x !== 0 ? 1 : bad[i]!;
      status[s + i] = isBad;
      if (isBad === 0) continue;
      r[d + i] = NaN;
      bad[i] = 0;
    }
    return;
  }
  for (let i = 0; i < lanes; i++) {
    let isBad = bad[i]!;
    for (let row = 0; row < rows; row++) {
      const x = r[d + row * stride + i]!;
      if (x - x !== 0) isBad = 1;
    }
    if (isBad) {
      for (let row = 0; row < rows; row++) r[d + row * stride + i] = NaN;
      bad[i] = 0;
    }
    status[s + i] = isBad;
  }
}
