// A computed worksheet in reading order, as plain rows: prose with its values put in, and the rows
// of each block with their results and problems. Every printed form of a sheet (text, Markdown,
// HTML, LaTeX) is written from this list, so that what is shown, and in which order, is said once.

import type { Block, BlockKind, Comment, Entry, Placed } from '#lib/document/index.ts';
import type { Problem } from '#lib/problem/index.ts';
import type { ChooseResult, LimitResult, Results, ValueResult } from '#lib/sheet/index.ts';
import { fillProse } from './prose.ts';

export type OutlineItem =
  { readonly kind: 'prose'; readonly line: number; readonly text: string } | BlockItem;

export interface BlockItem {
  readonly kind: 'block';
  readonly block: BlockKind | 'listing';
  /** The kind's word as written, for a listing. */
  readonly word: string;
  /** Title or name, as written after the kind; '' where there is none. */
  readonly title: string;
  readonly signal: 'danger' | 'warning' | 'caution' | null;
  readonly line: number;
  readonly rows: readonly OutlineRow[];
}

export type OutlineRow =
  | { readonly kind: 'heading'; readonly words: string }
  | { readonly kind: 'value'; readonly line: number; readonly result: ValueResult }
  | { readonly kind: 'limit'; readonly line: number; readonly result: LimitResult }
  | { readonly kind: 'choice'; readonly line: number; readonly result: ChooseResult }
  | {
      readonly kind: 'table';
      readonly columns: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  /** Text as it stands in the file: a line that is not computed, or a listing. */
  | { readonly kind: 'lines'; readonly line: number; readonly text: string }
  /** Prose inside a block: a caution, a question, a remark. */
  | { readonly kind: 'words'; readonly line: number; readonly text: string }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** The sheet's title: that of the front matter, else its first heading; null where it has neither. */
export const titleOf = (results: Results): string | null =>
  results.worksheet.frontMatter.title ?? firstHeading(results);

/** The front matter's title, unless the prose begins by saying the same: what a printed form adds. */
export function ownTitle(results: Results): string | null {
  const { title } = results.worksheet.frontMatter;
  return title === firstHeading(results) ? null : title;
}

function firstHeading({ worksheet }: Results): string | null {
  for (const item of worksheet.items) {
    if (item.kind !== 'prose') continue;
    const heading = /^#{1,2}[ \t]+(.+?)[ \t]*#*\r?$/m.exec(item.text);
    if (heading?.[1] !== undefined) return heading[1];
  }
  return null;
}

/** Labels of the parts of which nothing here is checked. */
export function partsWithoutCheck(results: Results): string[] {
  const labels: string[] = [];
  for (const item of results.worksheet.items) {
    if (item.kind !== 'block' || item.block !== 'parts') continue;
    for (const { entry } of item.entries) {
      if (entry.kind !== 'later' || entry.form !== 'part') continue;
      const label = entry.parts.label;
      if (label && 'text' in label && !results.limits.has(label.text)) labels.push(label.text);
    }
  }
  return labels;
}

/**
 * The sheet in reading order.
 *
 * @returns  every item of the file but blank prose; a problem follows the row it belongs to, one
 *           that belongs to no row comes first in its block, one of no block before everything
 */
export function outlineOf(results: Results): readonly OutlineItem[] {
  const { items } = results.worksheet;
  const problems = problemsByLine(results.problems);
  const outline: OutlineItem[] = [];
  for (const item of items) {
    if (item.kind === 'prose') {
      if (item.text.trim() !== '')
        outline.push({ kind: 'prose', line: item.line, text: fillProse(item.text, results) });
    } else outline.push(blockItem(item, results, problems));
  }
  return outline;
}

/** Problems that stand in no block: of the front matter, of stages, of prose. */
export function problemsOutsideBlocks(results: Results): readonly Problem[] {
  const blocks = results.worksheet.items.filter((item) => item.kind === 'block');
  return results.problems.filter(
    ({ at }) =>
      !blocks.some((block) => at.line >= block.line && at.line < block.line + block.lineCount)
  );
}

function blockItem(
  block: Block,
  results: Results,
  problems: ReadonlyMap<number, readonly Problem[]>
): BlockItem {
  const rows: OutlineRow[] = [];
  const problemsIn = (from: number, count: number): void => {
    for (let line = from; line < from + count; line++)
      for (const found of problems.get(line) ?? []) rows.push({ kind: 'problem', problem: found });
  };
  problemsIn(block.line, 1);

  const name = block.head.name?.text;
  const choice =
    block.block === 'choose' && name !== undefined ? results.choices.get(name) : undefined;
  if (choice) rows.push({ kind: 'choice', line: choice.line, result: choice });
  if (block.table) {
    rows.push({
      kind: 'table',
      columns: block.table.columns.map(({ name, unit }) =>
        unit ? `${name.text} [${unit.text}]` : name.text
      ),
      rows: block.table.rows.map((row) => row.cells.map((cell) => cell?.text ?? ''))
    });
    problemsIn(block.line + 1, block.lineCount - 1);
  } else if (block.prose !== null) {
    const listing = block.block === 'listing';
    const text = listing ? block.prose : fillProse(block.prose, results, block.block === 'caution');
    rows.push({ kind: listing ? 'lines' : 'words', line: block.line + 1, text });
    problemsIn(block.line + 1, block.lineCount - 1);
  }
  for (const placed of block.entries) {
    rows.push(entryRow(placed, block, results));
    problemsIn(block.line + placed.line, placed.entry.lineCount);
  }
  return {
    kind: 'block',
    block: block.block,
    word: block.word,
    title: headText(block),
    signal: block.head.signal,
    line: block.line,
    rows
  };
}

function entryRow({ line, entry }: Placed<Entry>, block: Block, results: Results): OutlineRow {
  const lineOfFile = block.line + line;
  if (entry.kind === 'heading') return { kind: 'heading', words: entry.words };
  const result = results.byLine.get(lineOfFile);
  if (!result || 'rowNames' in result) return { kind: 'lines', line: lineOfFile, text: entry.text };
  return 'label' in result
    ? { kind: 'limit', line: lineOfFile, result }
    : { kind: 'value', line: lineOfFile, result };
}

function headText({ head, block }: Block): string {
  if (head.title !== null) return head.title;
  const words = [head.name?.text ?? ''];
  if (head.from) words.push(`from ${head.from.text}`);
  if (head.to) words.push(`to ${head.to.text}`);
  if (head.at) words.push(`at ${head.at.text}`);
  if (block === 'caution' && head.signal) words.unshift(head.signal);
  return words.filter((word) => word !== '').join(' ');
}

function problemsByLine(problems: readonly Problem[]): Map<number, Problem[]> {
  const byLine = new Map<number, Problem[]>();
  for (const found of problems) {
    const there = byLine.get(found.at.line);
    if (there) there.push(found);
    else byLine.set(found.at.line, [found]);
  }
  return byLine;
}

/** A formula or value of a row as it stands in the file, with the stage it holds from. */
export interface WrittenVariant {
  /** null for the base. */
  readonly stage: string | null;
  readonly text: string;
  readonly comment: Comment | null;
  /** Index into the row's variants. */
  readonly variant: number;
}

/** The variants of a value as they are written: '= (P_drag + P_fric)/eta to kW', 'from upgrade: = …'. */
export function writtenVariants(result: ValueResult): readonly WrittenVariant[] {
  return result.variants.map((variant, index) => {
    let text = variant.cut ? variant.cut.text.replace(/\s+/g, ' ').trim() : '?';
    if (variant.solve) text = `${variant.solve.unknown} where ${text}`;
    if (variant.toleranceText !== null) text += ` ± ${variant.toleranceText}`;
    if (variant.within) text += ` within ${variant.within.low} .. ${variant.within.high}`;
    return { stage: variant.stage, text, comment: variant.comment, variant: index };
  });
}
