// TeX of what a row shows: names, formulas, their forms with numbers, conditions, units. The printing
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
import { unitLabel, unitTex, type Unit } from '#lib/units/index.ts';

/** A unit as text: 'kg/m³', 'N·m'; blank for a plain number. */
export const unitOrBlank = (unit: Unit | null): string => (unit === null ? '' : unitLabel(unit));
