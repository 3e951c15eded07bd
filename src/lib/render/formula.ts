// A row's formula as TeX, from the checked tree: `P_shaft = (P_drag + P_fric)/eta`.

import { texOf, texOfDefinition, texOfName } from '#lib/language/index.ts';
import type { ValueResult } from '#lib/sheet/index.ts';

/** TeX of one variant of a value; null where it has no tree (a mistake, `?`, a table's column). */
export function formulaTex(value: ValueResult, index: number): string | null {
  const variant = value.variants[index];
  if (!variant) return null;
  if (variant.solve) {
    const { unknown, left, right } = variant.solve;
    return `${texOfName(value.name)} = ${texOfName(unknown)} \\text{ where } ${texOf(left)} = ${texOf(right)}`;
  }
  if (!variant.tree) return null;
  const formula = /^line \d+$/.test(value.name)
    ? texOf(variant.tree)
    : texOfDefinition(value.name, variant.tree, variant.parameters);
  const { toleranceText, within } = variant;
  const tolerance = toleranceText === null ? '' : ` \\pm ${upright(toleranceText)}`;
  const range =
    within === null
      ? ''
      : ` \\text{ within } ${upright(within.low)} \\text{ to } ${upright(within.high)}`;
  return formula + tolerance + range;
}

/** Words of the sheet as they stand, upright: signs that TeX would read are escaped or left out. */
const upright = (text: string): string =>
  `\\text{${text.replace(/[\\{}$^~]/g, '').replace(/[&#_%]/g, '\\$&')}}`;
