// The value of an expression without names of the sheet: what an input, a tolerance, a range is.

import { ExpressionCheck } from '#lib/check/index.ts';
import type { Expression } from '#lib/language/index.ts';
import type { Cut } from '#lib/text/index.ts';
import { Builder, RegisterSpace } from './builder.ts';
import { execute } from './interpret.ts';
import { LaneFile } from './lane-file.ts';
import { Lowering } from './lower.ts';

/** In coherent SI units; NaN where it is not finite, or is no constant: the check says which. */
export function constantValue(tree: Expression, cut: Cut): number {
  if (tree.kind === 'number') return tree.value;
  if (tree.kind === 'quantity') return tree.magnitude * tree.unit.factor + tree.unit.offset;
  if (!isConstant(tree, cut)) return NaN;
  const builder = new Builder(new RegisterSpace());
  const lowering = new Lowering(
    builder,
    { operandOf: () => undefined, functionOf: () => undefined, isTable: () => false },
    cut
  );
  const value = lowering.lower(tree);
  if (value.kind === 'constant') return value.value;
  const program = builder.program();
  const file = new LaneFile(program.registers, 1);
  for (const [register, constant] of program.constants) file.fill(register, constant);
  execute(program.code, program.nested, file);
  const found = file.registers[value.register] ?? NaN;
  return file.bad[0] === 0 && Number.isFinite(found) ? found : NaN;
}

/** Whether an expression is sound without any name or own function of the sheet. */
export function isConstant(tree: Expression, cut: Cut): boolean {
  const nothing = { typeOf: () => undefined, functionOf: () => undefined };
  return new ExpressionCheck(nothing, cut).type(tree) !== null;
}
