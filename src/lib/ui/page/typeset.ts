// TeX of what a row shows: formulas, their forms with numbers, searches, conditions. The printing
// itself is the language's; here it is only put together and fed with the values of the stage in view.

import type { Comparison } from '#lib/document/index.ts';
import {
  texOf,
  texOfDefinition,
  texOfName,
  texWithNumbers,
  type Expression
} from '#lib/language/index.ts';
import type { Results, StageValue, Variant } from '#lib/sheet/index.ts';
import { unitLabel, type Unit } from '#lib/units/index.ts';

/** A unit as text: 'kg/m³', 'N·m'; blank for a plain number. */
export const unitOrBlank = (unit: Unit | null): string => (unit === null ? '' : unitLabel(unit));

/** TeX of a name. */
export const nameTex = texOfName;

/** TeX of a definition; of the formula alone where the result has no name. */
export const definitionTex = (
  name: string | null,
  parameters: readonly string[] | null,
  tree: Expression
): string => (name === null ? texOf(tree) : texOfDefinition(name, tree, parameters));

/** TeX of a search: what is found, and where it is to hold. */
export const solveTex = (name: string, solve: NonNullable<Variant['solve']>): string =>
  `${texOfName(name)} = ${texOfName(solve.unknown)} \\text{ where } ${texOf(solve.left)} = ${texOf(solve.right)}`;

/**
 * TeX of a formula with the values of a stage put in, and its result: '= 2 \cdot 3 = 6'.
 *
 * @returns  null where nothing would be put in: a formula without names
 */
export function withNumbersTex(
  results: Results,
  tree: Expression,
  stage: number,
  at: StageValue,
  unit: Unit | null
): string | null {
  let isFilled = false;
  const tex = texWithNumbers(tree, (name) => {
    const value = results.values.get(name);
    const there = value?.at[stage];
    if (there?.state !== 'value' || typeof there.value !== 'number') return null;
    isFilled = true;
    return { number: there.number, unit: value?.unit ?? null };
  });
  if (!isFilled) return null;
  if (typeof at.value !== 'number') return `= ${tex}`;
  const result: Expression = { kind: 'name', name: 'result', from: 0, to: 0 };
  return `= ${tex} = ${texWithNumbers(result, () => ({ number: at.number, unit }))}`;
}

/** TeX of a limit's condition; a side without bound is 'none'. */
export function conditionTex(
  form: Comparison['form'],
  sides: readonly (Expression | null)[]
): string {
  const [first = '', second = '', third = ''] = sides.map((side) =>
    side === null ? '\\text{none}' : texOf(side)
  );
  switch (form) {
    case 'demand<=capacity':
      return `${first} \\le ${second}`;
    case 'actual>=required':
      return `${first} \\ge ${second}`;
    case 'low<=x<=high':
      return `${first} \\le ${second} \\le ${third}`;
    case 'x outside a..b':
      return `${first} \\text{ outside } ${second} \\text{ to } ${third}`;
    case 'a==b':
      return `${first} = ${second}`;
  }
}
