// Live values in prose: `{P_shaft}`, `{P_shaft at upgrade}`, `{P_shaft to hp}`. Where no stage is
// named, prose shows the stage in view and a caution the greatest over the stages. What names no value
// stays as it is written, and a notice says so.

import type { StageValue, ValueResult } from '#lib/sheet/index.ts';
import { canonicalName } from '#lib/text/index.ts';
import {
  formatNumber,
  fromSI,
  isUnitFault,
  parseUnit,
  sameBesidesAngle,
  unitLabel
} from '#lib/units/index.ts';
import type { PageContext } from './context.ts';
import { valueText } from './value-rows.ts';

export type LiveValue =
  | {
      readonly kind: 'value';
      readonly text: string;
      /** 'P_shaft at First run': told on hovering and to readers of sound. */
      readonly of: string;
      readonly state: StageValue['state'];
    }
  /** Names nothing: the braces stay. */
  | { readonly kind: 'unknown'; readonly sentence: string };

const form = /^\s*([\p{L}_][\p{L}\p{Nd}_.]*)(?:\s+at\s+([A-Za-z][\w-]*))?(?:\s+to\s+(\S.*?))?\s*$/u;

/**
 * What stands for the text between two braces.
 *
 * @param scope  'view': the stage in view; 'greatest': the greatest over the stages
 * @returns      null where the text has not the form of a value: plain braces in prose
 */
export function liveValueOf(
  context: PageContext,
  inside: string,
  scope: 'view' | 'greatest'
): LiveValue | null {
  const [, written = '', stageId, unitText] = form.exec(inside) ?? [];
  if (written === '') return null;
  const { results, view } = context;
  const result = results.values.get(canonicalName(written));
  if (!result) {
    // A bare word in braces may be plain prose; with `at` or `to` it was meant as a value.
    return { kind: 'unknown', sentence: `{${inside}}: ${written} is not defined in this sheet, so the text stands as written.` }; // prettier-ignore
  }
  let index = scope === 'greatest' ? greatestAt(result) : view.shown;
  if (stageId !== undefined) {
    index = results.stages.findIndex(({ id }) => id === stageId);
    if (index < 0) {
      return { kind: 'unknown', sentence: `{${inside}}: this sheet has no stage ${stageId}, so the text stands as written.` }; // prettier-ignore
    }
  }
  const at = result.at[index];
  if (!at) return null;
  const shown =
    unitText === undefined ? textOf(at, result) : convertedText(context, at, result, unitText);
  if (shown === null) {
    return { kind: 'unknown', sentence: `{${inside}}: ${written} cannot be shown in ${unitText ?? ''}, so the text stands as written.` }; // prettier-ignore
  }
  const stage = results.stages[index]?.title ?? '';
  return {
    kind: 'value',
    text: shown,
    of: results.stages.length > 1 ? `${written}, ${stage}` : written,
    state: at.state
  };
}

/** Index of the stage with the greatest value; the first one without a value wins, being unknown. */
function greatestAt(result: ValueResult): number {
  let best = 0;
  for (const [index, at] of result.at.entries()) {
    if (at.state !== 'value') return index;
    const [here, there] = [at.si, result.at[best]?.si];
    if (typeof here === 'number' && typeof there === 'number' && here > there) best = index;
  }
  return best;
}

function textOf(at: StageValue, result: ValueResult): string {
  if (at.state === 'value') return valueText(at, result.unit);
  if (at.state === 'waits') return `(waits for ${at.waitsFor.join(', ')})`;
  return at.state === 'unknown' ? '(not known yet)' : '(in error)';
}

/** In another unit, to the sheet's number of digits; null where the unit does not fit. */
function convertedText(
  context: PageContext,
  at: StageValue,
  result: ValueResult,
  unitText: string
): string | null {
  const { digits, money } = context.results.worksheet.frontMatter;
  const unit = parseUnit(unitText, money);
  if (isUnitFault(unit) || result.dimension === null) return null;
  if (!sameBesidesAngle(unit.dimension, result.dimension)) return null;
  if (at.state !== 'value' || typeof at.si !== 'number') return textOf(at, result);
  const number = formatNumber(fromSI(at.si, unit), { digits }, 'typeset');
  return [number, unitLabel(unit)].filter(Boolean).join('\u00a0');
}
