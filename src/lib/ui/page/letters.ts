// Reasons: every revision that says why gets a letter, counted through the whole sheet in the order
// of the file (a … z, aa, ab …). The letter stands at the revised value and leads to its note.

import type { LimitResult, Results, ValueResult } from '#lib/sheet/index.ts';
import { typesetNumerals, typesetWithUnit } from './numbers.ts';
import { valueText } from './value-rows.ts';
import type { LetterLink, Reason } from './types.ts';

export interface Letters {
  /** The letter of the revision that begins on a line of the file; null where it gives no reason. */
  linkOf(line: number): LetterLink | null;
  /** The reasons on lines `from` to `to`, `to` exclusive. */
  reasons(from: number, to: number): readonly Reason[];
}

/** 0 is a, 25 z, 26 aa. */
export function letterAt(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : letterAt(Math.floor(index / 26) - 1) + letter;
}

/** Letters of all reasons of a sheet. */
export function lettersOf(results: Results): Letters {
  const byLine = new Map<number, Reason>();
  const titles = new Map(results.stages.map(({ id, title }) => [id, title]));
  const found = new Map<number, Omit<Reason, 'letter' | 'id'>>();
  const add = (result: ValueResult | LimitResult): void => {
    for (const [index, variant] of result.variants.entries()) {
      if (variant.stage === null || variant.comment === null) continue;
      found.set(variant.line, {
        stage: titles.get(variant.stage) ?? variant.stage,
        what: 'label' in result ? ratingChange(result, index) : valueChange(result, index, results),
        words: variant.comment.text
      });
    }
  };
  for (const result of results.values.values()) add(result);
  for (const result of results.limits.values()) add(result);
  for (const [index, line] of [...found.keys()].sort((a, b) => a - b).entries()) {
    const reason = found.get(line);
    const letter = letterAt(index);
    if (reason) byLine.set(line, { ...reason, letter, id: `reason-${letter}` });
  }
  return {
    linkOf: (line) => {
      const reason = byLine.get(line);
      return reason ? { letter: reason.letter, id: reason.id } : null;
    },
    reasons: (from, to) =>
      [...byLine].filter(([line]) => line >= from && line < to).map(([, reason]) => reason)
  };
}

/** '46 to 80 m/s', 'now 80 m/s', 'another formula'. */
function valueChange(result: ValueResult, variant: number, results: Results): string {
  if (result.kind !== 'input') return 'another formula';
  const index = results.stages.findIndex(({ id }) => id === result.variants[variant]?.stage);
  const now = result.at[index];
  if (now?.state !== 'value') return 'not known yet';
  const parent = results.stages.findIndex(({ id }) => id === results.stages[index]?.after);
  const before = result.at[parent];
  if (before?.state !== 'value') return `now ${valueText(now, result.unit)}`;
  if (before.text === now.text) return `still ${valueText(now, result.unit)}`;
  return `${typesetNumerals(before.number || before.text)} to ${valueText(now, result.unit)}`;
}

function ratingChange(result: LimitResult, variant: number): string {
  const at = result.at.find((stage) => stage.variant === variant);
  return at && at.rightText !== ''
    ? `now ${typesetWithUnit(at.rightText, result.unit)}`
    : 'another condition';
}
