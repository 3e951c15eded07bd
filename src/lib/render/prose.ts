// Values in running text: `{P_shaft}`, `{P_shaft at upgrade}`, `{P_shaft to hp}` outside code and
// mathematics. Where several stages are shown and the value differs between them, every stage's
// value is given with the stage's title, since printed text has no stage in view.

import type { Results, StageValue, ValueResult } from '#lib/sheet/index.ts';
import { fromSI, isUnitFault, parseUnit, sameBesidesAngle, unitLabel } from '#lib/units/index.ts';
import type { Unit } from '#lib/units/index.ts';
import { significantText } from './words.ts';

/** Code spans, mathematics, then a placeholder. */
const pieces =
  /(?<ticks>`+)(?!`)[^]*?(?<!`)\k<ticks>(?!`)|\$\$(?:[^$\\]|\\[^])*\$\$|\$(?!\s)(?:[^$\\\n]|\\.)*?[^\s\\]\$(?!\d)|\{[ \t]*(?<words>[^{}\n]{1,200}?)[ \t]*\}/gu;
const fence = /^ {0,3}(?:`{3,}|~{3,})/;
const placeholder = /^([\p{L}_][\p{L}\p{Nd}_.]*)(?:\s+at\s+([a-z][a-z0-9-]*))?(?:\s+to\s+(.+))?$/u;

/**
 * @param text      CommonMark of the sheet
 * @param greatest  a caution: the greatest value over the stages is shown
 * @returns         the same with its placeholders replaced; what names nothing stays as it stands
 */
export function fillProse(text: string, results: Results, greatest = false): string {
  if (!text.includes('{')) return text;
  const paragraphs = text.split(/(\n[ \t]*\r?\n)/);
  let inFence = false;
  return paragraphs
    .map((paragraph) => {
      const fences = paragraph.split('\n').filter((line) => fence.test(line)).length;
      const isCode = inFence || fences > 0;
      if (fences % 2 === 1) inFence = !inFence;
      return isCode ? paragraph : filledParagraph(paragraph, results, greatest);
    })
    .join('');
}

function filledParagraph(text: string, results: Results, greatest: boolean): string {
  return text.replace(pieces, (...found: unknown[]) => {
    const whole = String(found[0]);
    const groups = found.at(-1) as { readonly words?: string };
    const parts = groups.words === undefined ? null : placeholder.exec(groups.words);
    const value = parts?.[1] === undefined ? undefined : results.values.get(parts[1]);
    if (!parts || !value) return whole;
    const unit = parts[3] === undefined ? null : unitFor(value, parts[3], results);
    if (unit === undefined) return whole;
    const text = valueText(value, results, parts[2] ?? null, unit, greatest);
    return text ?? whole;
  });
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
