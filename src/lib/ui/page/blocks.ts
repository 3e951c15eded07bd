// From the blocks of a worksheet to the items of the page, one function a kind. A kind whose computing
// is not there yet is shown as its text with one plain sentence; nothing in a file is left out.

import type { Block, BlockKind, Entry, Placed } from '#lib/document/index.ts';
import { chooseItem } from './choose.ts';
import type { PageContext } from './context.ts';
import { limitRow } from './limit-rows.ts';
import { tableItem } from './table.ts';
import type { Item, ProblemNote, Row } from './types.ts';
import { calcRow, inputRow, lineId } from './value-rows.ts';

/** Renders the prose inside a block to HTML; its live values show the greatest over the stages. */
export type ProseOf = (
  text: string,
  line: number
) => { html: string; problems: readonly ProblemNote[] };

const labels: Readonly<Record<BlockKind, string>> = {
  inputs: 'Inputs',
  calc: 'Calculation',
  limits: 'Limits',
  parts: 'Parts',
  cases: 'Cases',
  table: 'Table',
  readings: 'Readings',
  fit: 'Fit',
  solve: 'Solve',
  course: 'Course',
  choose: 'Choice',
  sweep: 'Sweep',
  ladder: 'Ladder',
  drivers: 'Drivers',
  plan: 'Run card',
  holds: 'Hold points',
  event: 'Event',
  ask: 'Question',
  caution: 'Caution',
  remark: 'Remark'
};

/** What each kind that is not computed yet is told to be. */
const notYet: Partial<Readonly<Record<BlockKind, string>>> = {
  parts:
    'Parts are not computed yet: what is written here is shown as it stands, and no part is checked.',
  cases: 'Load cases are not computed yet: what is written here is shown as it stands.',
  fit: 'Fits are not computed yet: what is written here is shown as it stands.',
  course: 'Courses over time are not computed yet: what is written here is shown as it stands.',
  sweep: 'Sweeps are not computed yet: what is written here is shown as it stands.',
  ladder: 'Ladders are not computed yet: what is written here is shown as it stands.',
  drivers: 'Drivers are not computed yet: what is written here is shown as it stands.',
  plan: 'Run cards are not computed yet: what is written here is shown as it stands.',
  holds: 'Hold points cannot be ticked here yet: they are shown as they stand.',
  event: 'Events are not computed yet: what is written here is shown as it stands.',
  ask: 'Questions are not computed yet: an answer is not checked here.'
};

/** The items of one block, problems included. */
export function blockItems(context: PageContext, block: Block, proseOf: ProseOf): readonly Item[] {
  const end = block.line + block.lineCount;
  const headProblems = context.notes.take(block.line, block.line + 1);
  const close = (item: Item): readonly Item[] => [
    {
      ...item,
      problems: [...headProblems, ...item.problems, ...context.notes.take(block.line, end)]
    }
  ];
  const id = lineId(block.line);
  const { title, name } = block.head;
  switch (block.block) {
    case 'inputs':
    case 'calc':
    case 'limits':
      return close(rowsItem(context, block, title));
    case 'solve':
      return close(rowsItem(context, block, title ?? name?.text ?? null));
    case 'table':
    case 'readings':
      return close(tableItem(context, block, labels[block.block], id));
    case 'choose':
      return close(chooseItem(context, block, id));
    case 'caution': {
      const { html, problems } = proseOf(block.prose ?? '', block.line + 1);
      return close({
        kind: 'caution',
        id,
        problems,
        signal: block.head.signal ?? 'caution',
        title,
        html
      });
    }
    case 'remark': {
      const { lines, text, skipped } = remarkOf(block.prose ?? '');
      const { html, problems } = proseOf(text, block.line + 1 + skipped);
      return close({ kind: 'remark', id, problems, lines, html });
    }
    default:
      return close({
        kind: 'text',
        id,
        problems: [],
        label: block.block === 'listing' ? block.word : labels[block.block],
        title: headWords(block),
        text: insideText(block),
        sentence: block.block === 'listing' ? null : (notYet[block.block] ?? null)
      });
  }
}

function rowsItem(context: PageContext, block: Block, title: string | null): Item {
  const rows = rowsOf(context, block);
  return {
    kind: 'rows',
    id: lineId(block.line),
    problems: [],
    label: labels[block.block === 'listing' ? 'calc' : block.block],
    title,
    rows,
    reasons: context.letters.reasons(block.line, block.line + block.lineCount)
  };
}

/** The rows of a block's entries, in order. */
export const rowsOf = (context: PageContext, block: Block): readonly Row[] =>
  block.entries.map((placed) => rowOf(context, block, placed));

function rowOf(context: PageContext, block: Block, { line, entry }: Placed<Entry>): Row {
  const lineOfFile = block.line + line;
  const problems = context.notes.take(lineOfFile, lineOfFile + entry.lineCount);
  const id = lineId(lineOfFile);
  if (entry.kind === 'heading') return { kind: 'heading', id, problems, words: entry.words };
  const result = context.results.byLine.get(lineOfFile);
  if (result && 'label' in result) return limitRow(context, result, problems);
  if (result && 'kind' in result)
    return result.kind === 'input'
      ? inputRow(context, result, problems)
      : calcRow(context, result, problems);
  return { kind: 'text', id, problems, text: entry.text };
}

/** A remark's `by:` and `resolved:` lines, apart from its words. */
function remarkOf(prose: string): { lines: readonly string[]; text: string; skipped: number } {
  const all = prose.split(/\r?\n/);
  const lines: string[] = [];
  const kept = all.map((line) => {
    const [, word, rest] = /^(by|resolved):\s*(.+?)\s*$/.exec(line) ?? [];
    if (!word || !rest) return line;
    lines.push(word === 'by' ? rest : `resolved: ${rest}`);
    return '';
  });
  const skipped = Math.max(
    0,
    kept.findIndex((line) => line.trim() !== '')
  );
  return { lines, text: kept.slice(skipped).join('\n'), skipped };
}

/** Title or name with what the head ties it to: 'run1 at first-run', 'motor from motors'. */
function headWords({ head }: Block): string | null {
  if (head.title !== null) return head.title;
  const words = [head.name?.text ?? ''];
  if (head.from) words.push(`from ${head.from.text}`);
  if (head.to) words.push(`to ${head.to.text}`);
  if (head.at) words.push(`at ${head.at.text}`);
  return words.filter(Boolean).join(' ') || null;
}

/** The lines between the fences, as they stand. */
function insideText(block: Block): string {
  const lines = block.text.split(/\r?\n/);
  const inside = lines.slice(1, Math.max(1, block.lineCount - 1));
  return inside.join('\n').trimEnd();
}
