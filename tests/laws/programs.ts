// Programs for the laws of lanes: formulas over names, lowered as the engine lowers them, run over as
// many lanes as a law asks for.

import {
  Builder, execute, LaneFile, linkSegments, Lowering, RegisterSpace, tangentProgram, type Operand,
  type Program
} from '#lib/lanes/index.ts'; // prettier-ignore
import { parseExpression } from '#lib/language/index.ts';
import { cutOf } from '#lib/text/index.ts';

/** A formula's program. Columns take as many registers as they have rows. */
export interface Formula {
  readonly program: Program;
  readonly result: number;
  /** First register and rows (null: a single value) of each name. */
  readonly names: ReadonlyMap<string, { readonly register: number; readonly rows: number | null }>;
}

/** A root is asked for by `solve`, which no formula has: the unknown and the range it is sought in. */
export interface Root {
  readonly unknown: string;
  readonly low: string;
  readonly high: string;
}

/**
 * @param names  rows of each name; null: a single value
 * @param root   the text is the left side of an equation whose right side is 0
 */
export function formula(
  text: string,
  names: Readonly<Record<string, number | null>>,
  root: Root | null = null
): Formula {
  // prettier-ignore
  const space = new RegisterSpace();
  const operands = new Map<string, Operand>();
  for (const [name, rows] of Object.entries(names)) {
    operands.set(name, { register: space.keep(rows), rows, kind: 'definition', value: NaN });
  }
  const builder = new Builder(space);
  const scope = {
    operandOf: (name: string) => operands.get(name),
    functionOf: () => undefined,
    isTable: () => false
  };
  const lowering = new Lowering(builder, scope, cutOf(text));
  const lower = (part: string, into = lowering): Operand => {
    const cut = cutOf(part);
    const { tree, problems } = parseExpression(cut, { money: null });
    if (!tree) throw new Error(`${part}: ${problems[0]?.message ?? 'no tree'}`);
    return into.lower(tree, cut);
  };
  let value: Operand;
  if (root) {
    const [low, high] = [lower(root.low), lower(root.high)];
    const { tree } = parseExpression(cutOf(text), { money: null });
    if (!tree) throw new Error(text);
    const called = lowering.nest(root.unknown, (inner) => lower(text, inner), 'unknown');
    value = lowering.callNested('solve', low, high, called, tree);
  } else value = lower(text);
  const result = space.keep(value.rows);
  builder.moveTo(result, value, {
    node: { kind: 'number', value: 0, text: '0', from: 0, to: 1 },
    cut: cutOf(text)
  });
  const found = new Map(
    [...operands].map(([name, { register, rows }]) => [name, { register, rows }])
  );
  return { program: linkSegments([builder.segment()], space), result, names: found };
}

/** Values of a name in every lane; of a column, row by row. */
export type Lanes = Readonly<Record<string, readonly (readonly number[])[]>>;

/** Runs a formula over lanes, `stride` of them at once. @returns one value a lane */
export function run(made: Formula, values: Lanes, stride: number, seeds?: Lanes): number[] {
  const derived = seeds
    ? tangentProgram(made.program, registersOf(made, Object.keys(seeds)))
    : { program: made.program, offset: 0 };
  const count = Object.values(values)[0]?.[0]?.length ?? 0;
  const out: number[] = [];
  const file = new LaneFile(derived.program.registers, stride);
  for (const [register, value] of derived.program.constants) file.fill(register, value);
  for (let start = 0; start < count; start += stride) {
    file.lanes = Math.min(stride, count - start);
    set(made, file, values, start, 0);
    if (seeds) set(made, file, seeds, start, derived.offset);
    execute(derived.program.code, derived.program.nested, file);
    const at = (made.result + derived.offset) * stride;
    out.push(...file.registers.subarray(at, at + file.lanes));
  }
  return out;
}

function registersOf(made: Formula, names: readonly string[]): number[] {
  return names.flatMap((name) => {
    const found = made.names.get(name);
    if (!found) throw new RangeError(`${name} is no name of the formula`);
    return Array.from({ length: found.rows ?? 1 }, (_, row) => found.register + row);
  });
}

function set(made: Formula, file: LaneFile, values: Lanes, start: number, offset: number): void {
  for (const [name, rows] of Object.entries(values)) {
    const [first = 0] = registersOf(made, [name]);
    for (const [row, lanes] of rows.entries()) {
      for (let i = 0; i < file.lanes; i++) {
        file.registers[(first + offset + row) * file.stride + i] = lanes[start + i] ?? NaN;
      }
    }
  }
}
