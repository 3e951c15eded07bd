// For the tests of this folder: one block or one entry at a time, and entries with their cuts as
// plain text, so that a test reads like the grammar's table.

import { kinds } from './blocks/kinds.ts';
import { readWorksheet } from './read.ts';
import type { Block, BlockKind, Entry, Worksheet } from './types.ts';
import type { Problem, Span } from '#lib/problem/index.ts';

/** A sheet of one block. */
export function sheetOf(info: string, ...lines: readonly string[]): string {
  return ['```' + info, ...lines, '```', ''].join('\n');
}

/** The first block of a text. */
export function blockIn(worksheet: Worksheet): Block {
  const block = worksheet.items.find((item): item is Block => item.kind === 'block');
  if (!block) throw new RangeError('There is no block in this text');
  return block;
}

/** The info string with which a kind is complete. */
export const completeInfo: Readonly<Record<BlockKind, string>> = {
  inputs: 'inputs', calc: 'calc', limits: 'limits', parts: 'parts', cases: 'cases', table: 'table T',
  readings: 'readings run1 at sketch', fit: 'fit F to run1', solve: 'solve S', course: 'course C',
  choose: 'choose M from T', sweep: 'sweep', ladder: 'ladder', drivers: 'drivers', plan: 'plan P',
  holds: 'holds', event: 'event at sketch', ask: 'ask', caution: 'caution danger', remark: 'remark'
}; // prettier-ignore

/** The first entry of a block of this kind, read from these lines. */
export function entryOf(kind: BlockKind, text: string): Entry {
  const [placed] = blockIn(readWorksheet(sheetOf(completeInfo[kind], ...text.split('\n')))).entries;
  if (!placed) throw new RangeError(`No entry in ${JSON.stringify(text)}`);
  return placed.entry;
}

/** What an entry says: cuts as their text, without the fields that every entry has. */
export function spoken(entry: Entry): unknown {
  const { text, lineCount, comment, problems, ...said } = entry;
  void [text, lineCount, comment, problems];
  return plain(said);
}

/** Any value with its cuts as plain text; comments as their text. */
export function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  if ('text' in value && ('pieces' in value || 'what' in value)) return value.text;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, plain(each)]));
}

/** The characters of a text at a span of its lines. */
export function textAt(text: string, span: Span): string {
  return (text.split(/\r\n|\r|\n/)[span.line - 1] ?? '').slice(span.from - 1, span.to - 1);
}

/** A problem as one line: its place, code, words and cure. */
export function told(problem: Problem): string {
  const { line, from, to } = problem.at;
  const fix = problem.fix
    ? ` [${problem.fix.at.from}-${problem.fix.at.to}: ${problem.fix.replacement}]`
    : '';
  return `${line}:${from}-${to} ${problem.code}: ${problem.message}${problem.hint === null ? '' : ` ${problem.hint}`}${fix}`;
}

export const everyKind = Object.keys(kinds) as BlockKind[];
