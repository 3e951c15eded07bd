// A choice: the candidates with the conditions each one misses at the stage in view, their ranking,
// and which stage chose or took which. The values it gives (`motor.P_rated`) are rows like any other.

import type { Block, Entry } from '#lib/document/index.ts';
import { listing } from '#lib/render/index.ts';
import type { ChooseResult } from '#lib/sheet/index.ts';
import { shownMark, type PageContext } from './context.ts';
import type { Candidate, ChooseItem, Row } from './types.ts';
import { calcRow } from './value-rows.ts';

/** The item of a `choose` block. */
export function chooseItem(
  context: PageContext,
  block: Block,
  rows: readonly Row[],
  id: string
): ChooseItem {
  const name = block.head.name?.text ?? '';
  const choice = context.results.choices.get(name);
  const conditions = block.entries.flatMap(({ entry }) => conditionText(entry));
  const given = [...context.results.values.values()].filter(
    (result) => result.kind === 'choose' && result.name.startsWith(`${name}.`)
  );
  const hasOwnRow = new Set(rows.map((row) => row.id));
  return {
    kind: 'choose',
    id,
    problems: [],
    name,
    table: block.head.from?.text ?? '',
    stage: shownMark(context),
    rows: [
      ...rows,
      ...given
        .filter((result) => !hasOwnRow.has(`line-${result.line}`))
        .map((result) => calcRow(context, result, []))
    ],
    conditions,
    candidates: choice ? candidatesOf(context, choice, conditions) : [],
    remarks: choice ? remarksOf(context, choice) : [],
    reasons: context.letters.reasons(block.line, block.line + block.lineCount)
  };
}

const conditionText = (entry: Entry): readonly string[] =>
  entry.kind === 'condition'
    ? [entry.base.text.trim()]
    : entry.kind === 'text-condition'
      ? [`${entry.column.text} is "${entry.words}"`]
      : [];

function candidatesOf(
  context: PageContext,
  choice: ChooseResult,
  conditions: readonly string[]
): readonly Candidate[] {
  const shown = choice.at[context.view.shown];
  return choice.rowNames.map((name, row) => {
    const place = shown?.ranking.indexOf(row) ?? -1;
    return {
      name,
      marks: choice.at.flatMap((at, index) => {
        const stage = context.marks[index];
        if (at.row !== row || !stage || !context.columns.includes(index)) return [];
        return [{ stage, how: at.taken ? ('taken' as const) : ('chosen' as const) }];
      }),
      rank: place < 0 ? null : ordinal(place + 1),
      misses: (shown?.excludedBy[row] ?? []).map(
        (index) => conditions[index] ?? `condition ${index + 1}`
      )
    };
  });
}

/** 1st, 2nd, 3rd, 4th, 11th, 21st. */
export function ordinal(number: number): string {
  const last = number % 10;
  if (Math.floor(number / 10) % 10 === 1) return `${number}th`;
  return `${number}${['th', 'st', 'nd', 'rd'][last] ?? 'th'}`;
}

function remarksOf(context: PageContext, choice: ChooseResult): readonly string[] {
  return context.columns.flatMap((index) => {
    const at = choice.at[index];
    const title = context.results.stages[index]?.title ?? '';
    if (at?.state === 'waits') return [`${title}: waits for ${listing(at.waitsFor)}.`];
    if (at?.state === 'error') return [`${title}: not chosen, a line is in error.`];
    if (at?.state === 'value' && at.row === null)
      return [`${title}: no row of ${choice.table} meets every condition.`];
    return [];
  });
}
