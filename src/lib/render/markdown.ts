// A computed sheet as Markdown (CommonMark with tables): prose as it stands with its values put in,
// each block as a table with a column a stage. Texts from the sheet are escaped where they could be
// taken for markup; the prose itself is the author's own Markdown.

import { unitLabel } from '#lib/units/index.ts';
import type { Results } from '#lib/sheet/index.ts';
import { displayWidth, padRight, printable, printableLine } from './columns.ts';
import { labelText, stageHead } from './limit-lines.ts';
import type { BlockItem, OutlineRow } from './outline.ts';
import {
  outlineOf,
  ownTitle,
  partsWithoutCheck,
  problemsOutsideBlocks,
  writtenVariants
} from './outline.ts';
import { blockTitle, choiceLines } from './rows.ts';
import { cellText, nameText } from './text.ts';
import { countsText, sidesText, stopText, verdictText } from './words.ts';

/** The sheet as Markdown text. */
export function sheetMarkdown(results: Results): string {
  const parts: string[] = [];
  const { summary } = results.worksheet.frontMatter;
  const title = ownTitle(results);
  if (title !== null) parts.push(`# ${escaped(title)}`);
  if (summary !== null) parts.push(escaped(summary));
  if (results.stages.length > 1)
    parts.push(results.stages.map((stage) => `- ${escaped(stageHead(stage, results))}`).join('\n'));
  for (const found of problemsOutsideBlocks(results)) parts.push(problemText(found));
  for (const item of outlineOf(results))
    parts.push(item.kind === 'prose' ? printable(item.text).trim() : blockText(item, results));
  if (results.limits.size > 0) {
    const without = partsWithoutCheck(results).length;
    const lines = results.stages.map(
      (stage) => `- ${escaped(`${stage.title}: ${countsText(stage, without)}. ${stopText(stage)}`)}`
    );
    parts.push(lines.join('\n'));
  }
  return `${parts.join('\n\n')}\n`;
}

function blockText(item: BlockItem, results: Results): string {
  const parts: string[] = [`**${escaped(blockTitle(item))}**`];
  let rows: OutlineRow[] = [];
  const flush = (): void => {
    if (rows.length > 0) parts.push(rowsTable(rows, results));
    rows = [];
  };
  for (const row of item.rows) {
    if (row.kind === 'value' || row.kind === 'limit') {
      if (rows[0] && rows[0].kind !== row.kind) flush();
      rows.push(row);
      continue;
    }
    flush();
    switch (row.kind) {
      case 'heading':
        parts.push(`*${escaped(row.words)}*`);
        break;
      case 'choice':
        parts.push(
          choiceLines(row.result, results)
            .map((line) => `- ${escaped(line)}`)
            .join('\n')
        );
        break;
      case 'table':
        parts.push(
          table(
            row.columns.map(escaped),
            row.rows.map((cells) => cells.map(escaped)),
            []
          )
        );
        break;
      case 'lines':
        parts.push(fenced(row.text));
        break;
      case 'words':
        parts.push(quoted(row.text));
        break;
      case 'problem':
        parts.push(problemText(row.problem));
    }
  }
  flush();
  return parts.join('\n\n');
}

function rowsTable(rows: readonly OutlineRow[], results: Results): string {
  const stages = results.stages.map((stage) => escaped(stage.title));
  if (rows[0]?.kind === 'limit') {
    const cells = rows.flatMap((row) =>
      row.kind === 'limit'
        ? [
            [
              escaped(labelText(row.result)),
              ...row.result.at.map((at) => {
                const sides = sidesText(row.result, at);
                return escaped([verdictText(row.result, at), sides].filter(Boolean).join('; '));
              }),
              escaped(row.result.comment?.text ?? '')
            ]
          ]
        : []
    );
    return table(['limit', ...stages, 'what it is; where from'], cells, []);
  }
  const cells = rows.flatMap((row) => (row.kind === 'value' ? valueCells(row.result) : []));
  const right = results.stages.map((_, index) => index + 1);
  return table(['name', ...stages, 'unit', 'as written', 'what it is; where from'], cells, right);
}

function valueCells(value: Parameters<typeof nameText>[0]): string[][] {
  const unit = value.unit === null ? '' : unitLabel(value.unit);
  const [base, ...revisions] = writtenVariants(value);
  const first = [
    code(nameText(value)),
    ...value.at.map((at) => (value.kind === 'function' ? '' : escaped(cellText(at)))),
    escaped(unit),
    code(base?.text ?? ''),
    escaped(base?.comment?.text ?? value.comment?.text ?? '')
  ];
  const empty = value.at.map(() => '');
  return [
    first,
    ...revisions.map(({ stage, text, comment }) => [
      '',
      ...empty,
      '',
      `from ${escaped(stage ?? '')}: ${code(text)}`,
      escaped(comment?.text ?? '')
    ])
  ];
}

function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[]
): string {
  const cells = [head, ...rows].map((row) => head.map((_, index) => row[index] ?? ''));
  const widths = head.map((_, index) =>
    Math.max(3, ...cells.map((row) => Math.min(60, displayWidth(row[index] ?? ''))))
  );
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, index) => padRight(cell, widths[index] ?? 3)).join(' | ')} |`;
  const rule = widths.map((width, index) =>
    right.includes(index) ? `${'-'.repeat(width - 1)}:` : '-'.repeat(width)
  );
  const [first = [], ...rest] = cells;
  return [line(first), `| ${rule.join(' | ')} |`, ...rest.map(line)].join('\n');
}

const problemText = (found: {
  readonly severity: string;
  readonly at: { readonly line: number };
  readonly message: string;
  readonly hint: string | null;
}): string => {
  const hint = found.hint === null ? '' : ` ${found.hint}`;
  return `> **${found.severity}**, line ${found.at.line}: ${escaped(`${found.message}${hint}`)}`;
};

const quoted = (text: string): string =>
  printable(text)
    .trim()
    .split('\n')
    .map((line) => `> ${line}`.trimEnd())
    .join('\n');

/** A fence longer than any run of backticks inside. */
function fenced(text: string): string {
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  return `${fence}\n${printable(text).trimEnd()}\n${fence}`;
}

/** Text that is no markup: one line, every sign that CommonMark or a table could read escaped. */
export const escaped = (text: string): string =>
  printableLine(text)
    .replace(/[\\`*{}[\]<>#|~&$!]|(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, '\\$&')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2')
    .replace(/^[-+=](?=[-+=\s]|$)/, '\\$&');

/** Text as code on one line, with a fence longer than any run of backticks inside; '' stays ''. */
function code(text: string): string {
  const line = printableLine(text);
  if (line === '') return '';
  const longest = Math.max(0, ...[...line.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  const pad = line.startsWith('`') || line.endsWith('`') ? ' ' : '';
  return `${fence}${pad}${line.replaceAll('|', '\\|')}${pad}${fence}`;
}
