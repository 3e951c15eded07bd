// Segments one after another as a single program, for runs over lanes other than the stages.

import type { Program, RegisterSpace, Segment, NestedProgram } from './builder.ts';
import { instructionSize, operations } from './instruction.ts';

/** @param space  the registers that all segments were written for */
export function linkSegments(segments: readonly Segment[], space: RegisterSpace): Program {
  const length = segments.reduce((sum, segment) => sum + segment.code.length, 0);
  const code = new Int32Array(length);
  const nested: NestedProgram[] = [];
  let at = 0;
  for (const segment of segments) {
    code.set(segment.code, at);
    for (let k = at; k < at + segment.code.length; k += instructionSize) {
      if (calling.has(code[k] ?? -1)) code[k + 4] = (code[k + 4] ?? 0) + nested.length;
    }
    nested.push(...segment.nested);
    at += segment.code.length;
  }
  return { code, registers: space.size, constants: space.constants, nested };
}

const calling: ReadonlySet<number> = new Set([
  operations.integrate,
  operations.solve,
  operations.call
]);
