// Values in running text: `{P_shaft}`, `{P_shaft at upgrade}`, `{P_shaft to hp}` outside code and
// mathematics. Where several stages are shown and the value differs between them, every stage's
// value is given with the stage's title, since printed text has no stage in view.

import type { Results, StageValue, ValueResult } from '#lib/sheet/index.ts';
import { placeholdersIn } from '#lib/text/index.ts';
import { fromSI, isUnitFault, parseUnit, sameBesidesAngle, unitLabel } from '#lib/units/index.ts';
import type { Unit } from '#lib/units/index.ts';
import { wholeOf } from './one-stage.ts';
import { significantText } from './words.ts';

/**
 * @param text      CommonMark of the sheet
 * @param greatest  a caution: the greatest value over the stages is shown
 * @returns         the same with its placeholders replaced; what names nothing stays as it stands
 */
export function fillProse(text: string, results: Results, greatest = false): string {
  let filled = '';
  let done = 0;
  for (const { name, stage, unit, from, to } of placeholdersIn(text)) {
    const source = greatest || stage !== null ? wholeOf(results) : results;
    const value = source.values.get(name);
    const asked = value && unit !== null ? unitFor(value, unit, results) : null;
    if (!value || asked === undefined) continue;
    filled += text.slice(done, from);
    filled += valueText(value, source, stage, asked, greatest) ?? text.slice(from, to);
    done = to;
  }
  return filled + text.slice(done);
}

/** The unit that a placeholder asks for; undefined where the value cannot be shown in it. */
function unitFor(value: ValueResult, text: string, results: Results): Unit | undefined {
  const unit = parseUnit(text, results.worksheet.frontMatter.money);
  if (isUnitFault(unit) || value.dimension === null) return undefined;
  return sameBesidesAngle(unit.dimension, value.dimension) ? unit : undefined;
}

function valueText(
  value: ValueResult,
  results: Results,
  stage: string | null,
  unit: Unit | null,
  greatest: boolean
): string | null {
  const { digits } = results.worksheet.frontMatter;
  const shown = value.at.map((at) => textAt(at, unit, digits));
  if (stage !== null) {
    const index = results.stages.findIndex(({ id }) => id === stage);
    return shown[index] ?? null;
  }
  const most = greatest ? greatestIndex(value) : null;
  if (most !== null) return shown[most] ?? null;
  if (new Set(shown).size === 1) return shown[0] ?? null;
  return shown.map((text, index) => `${text} (${results.stages[index]?.title ?? ''})`).join(', ');
}

function textAt(at: StageValue, unit: Unit | null, digits: number): string {
  switch (at.state) {
    case 'value':
      if (unit === null || typeof at.si !== 'number') return together(at.text);
      return together(`${significantText(fromSI(at.si, unit), digits)} ${unitLabel(unit)}`);
    case 'waits':
      return `(waits for ${at.waitsFor.join(', ')})`;
    case 'unknown':
      return '(not known yet)';
    case 'error':
      return '(in error)';
  }
}

/** A number and its unit are not parted at the end of a line. */
const together = (text: string): string => text.trim().replaceAll(' ', '\u00a0');

/** The stage at which a number is greatest; null where it has none. */
function greatestIndex(value: ValueResult): number | null {
  let most: number | null = null;
  let reached = -Infinity;
  for (const [index, at] of value.at.entries())
    if (typeof at.si === 'number' && at.si > reached) [most, reached] = [index, at.si];
  return most;
}
