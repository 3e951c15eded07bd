// A choice: the candidates with the conditions each one misses at the stage in view, their ranking,
// and which stage chose or took which. The values it gives (`motor.P_rated`) are rows like any other.

import type { Block, Entry, Placed } from '#lib/document/index.ts';
import { parseExpression, type Expression } from '#lib/language/index.ts';
import { listing } from '#lib/render/index.ts';
import type { ChooseResult } from '#lib/sheet/index.ts';
import type { Cut } from '#lib/text/index.ts';
import { shownMark, type PageContext } from './context.ts';
import type { Candidate, ChooseItem, Row } from './types.ts';
import { definitionTex, nameTex } from './typeset.ts';
import { calcRow, lineId, wordsOf } from './value-rows.ts';

/** The item of a `choose` block. */
export function chooseItem(context: PageContext, block: Block, id: string): ChooseItem {
  const name = block.head.name?.text ?? '';
  const choice = context.results.choices.get(name);
  const conditions = block.entries.flatMap(({ entry }) => conditionText(entry));
  const written = block.entries.map((placed) => entryRow(context, block, placed));
  const hasRow = new Set(written.map((row) => (row.kind === 'calc' ? row.name : '')));
  return {
    kind: 'choose',
    id,
    problems: [],
    name,
    table: block.head.from?.text ?? '',
    stage: shownMark(context),
    rows: [...written, ...columnRows(context, name, hasRow)],
    conditions,
    candidates: choice ? candidatesOf(context, choice, conditions) : [],
    remarks: choice ? remarksOf(context, choice) : [],
    reasons: context.letters.reasons(block.line, block.line + block.lineCount)
  };
}

/** What the chosen row gives from the table itself, under dotted names. */
const columnRows = (
  context: PageContext,
  name: string,
  hasRow: ReadonlySet<string>
): readonly Row[] =>
  [...context.results.values.values()]
    .filter(
      (one) => one.kind === 'choose' && one.name.startsWith(`${name}.`) && !hasRow.has(one.name)
    )
    .map((result) => ({
      ...calcRow(context, result, []),
      id: `value-${result.name}`,
      forms: [{ tex: nameTex(result.name), from: null, letter: null }]
    }));

/** A derived column with what it comes to in the chosen row; a condition as it is asked. */
function entryRow(context: PageContext, block: Block, { line, entry }: Placed<Entry>): Row {
  const lineOfFile = block.line + line;
  const id = lineId(lineOfFile);
  const problems = context.notes.take(lineOfFile, lineOfFile + entry.lineCount);
  if (entry.kind === 'heading') return { kind: 'heading', id, problems, words: entry.words };
  const asked = entry.kind === 'condition' ? entry.base : null;
  const tree = treeOf(
    context,
    asked ?? (entry.kind === 'calculation' ? entry.base.expression : null)
  );
  if (asked && tree) {
    const forms = [{ tex: definitionTex(null, null, tree), from: null, letter: null }];
    return { kind: 'calc', id, problems, name: asked.text.trim(), forms, withNumbers: null, words: wordsOf(entry.comment), found: 'asked of each row', unit: '', cells: [] }; // prettier-ignore
  }
  const result =
    entry.kind === 'calculation'
      ? context.results.values.get(`${block.head.name?.text ?? ''}.${entry.name.text}`)
      : undefined;
  if (entry.kind !== 'calculation' || !tree || !result)
    return { kind: 'text', id, problems, text: entry.text };
  return {
    ...calcRow(context, result, problems),
    id,
    words: wordsOf(entry.comment),
    forms: [{ tex: definitionTex(entry.name.text, null, tree), from: null, letter: null }]
  };
}

/** The tree of an entry's text; the engine keeps none for columns. */
function treeOf(context: PageContext, cut: Cut | null): Expression | null {
  if (cut === null) return null;
  const ownFunctions = new Set(
    [...context.results.values.values()]
      .filter(({ kind }) => kind === 'function')
      .map(({ name }) => name)
  );
  const { money } = context.results.worksheet.frontMatter;
  return parseExpression(cut, { money, ownFunctions }).tree;
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
