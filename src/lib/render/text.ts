// A computed sheet as plain text for a terminal or a file: prose as it stands with its values put
// in, a row a quantity with a column a stage, formulas as they are written, limits with their
// verdict, and each problem under its line.

import type { Problem } from '#lib/problem/index.ts';
import { unitLabel } from '#lib/units/index.ts';
import type { LimitResult, Results, StageValue, ValueResult } from '#lib/sheet/index.ts';
import type { Palette } from './columns.ts';
import {
  padLeft,
  padRight,
  plainPalette,
  printable,
  printableLine,
  widest,
  wrap
} from './columns.ts';
import { countLines, labelText, paintTone, stageHead } from './limit-lines.ts';
import type { BlockItem, OutlineRow } from './outline.ts';
import { outlineOf, ownTitle, problemsOutsideBlocks, writtenVariants } from './outline.ts';
import { blockTitle, choiceLines } from './rows.ts';
import { sidesText, toneOf, toneSigns, verdictText } from './words.ts';

const NAME_MOST = 24;
const NAME_LEAST = 10;
const FORMULA_MOST = 36;
const WIDTH = 100;

/** The whole sheet as text, without a trailing line end beyond the last line's own. */
export function sheetText(results: Results, palette: Palette = plainPalette): string {
  const lines: string[] = [];
  const title = ownTitle(results);
  const { summary } = results.worksheet.frontMatter;
  if (title !== null) lines.push(palette.strong(printableLine(title)), '');
  if (summary !== null) lines.push(...wrap(printableLine(summary), WIDTH), '');
  if (results.stages.length > 1) {
    for (const stage of results.stages) lines.push(`  ${stageHead(stage, results)}`);
    lines.push('');
  }
  const outside = problemsOutsideBlocks(results);
  if (outside.length > 0) {
    for (const found of outside) lines.push(...problemRow(found, palette));
    lines.push('');
  }
  for (const item of outlineOf(results)) {
    if (item.kind === 'prose') lines.push(...proseLines(item.text, WIDTH), '');
    else lines.push(...blockLines(item, results, palette), '');
  }
  if (results.limits.size > 0) lines.push(...countLines(results, palette));
  return `${lines.join('\n').trimEnd()}\n`;
}

function blockLines(item: BlockItem, results: Results, palette: Palette): string[] {
  const lines: string[] = [];
  const values = item.rows.filter((row) => row.kind === 'value').map((row) => row.result);
  const nameWidth = Math.max(NAME_LEAST, Math.min(NAME_MOST, widest(values.map(nameText))));
  const widths = results.stages.map((stage, index) =>
    Math.max(
      results.stages.length > 1 ? stage.id.length : 0,
      widest(values.map((value) => cellText(value.at[index])))
    )
  );
  const title = palette.strong(printableLine(blockTitle(item)));
  const heads = results.stages.map((stage, index) => padLeft(stage.id, widths[index] ?? 0));
  lines.push(
    values.length > 0 && results.stages.length > 1
      ? `${title}\n${palette.quiet(`  ${' '.repeat(nameWidth)}  ${heads.join('  ')}`)}`
      : title
  );
  for (const row of item.rows) lines.push(...rowLines(row, results, palette, nameWidth, widths));
  return lines;
}

function rowLines(
  row: OutlineRow,
  results: Results,
  palette: Palette,
  nameWidth: number,
  widths: readonly number[]
): string[] {
  switch (row.kind) {
    case 'heading':
      return [`  ${palette.strong(printableLine(row.words))}`];
    case 'value':
      return valueLines(row.result, palette, nameWidth, widths);
    case 'limit':
      return limitRows(row.result, results, palette);
    case 'choice':
      return choiceLines(row.result, results).map((line) => `  ${printableLine(line)}`);
    case 'table':
      return tableLines(row.columns, row.rows, palette);
    case 'words':
      return proseLines(row.text, WIDTH - 2).map((line) => `  ${line}`.trimEnd());
    case 'lines':
      return printable(row.text)
        .trimEnd()
        .split('\n')
        .map((line) => `  ${line}`.trimEnd());
    case 'problem':
      return problemRow(row.problem, palette);
  }
}

function valueLines(
  value: ValueResult,
  palette: Palette,
  nameWidth: number,
  widths: readonly number[]
): string[] {
  const cells = value.at.map((at, index) => padLeft(cellText(at), widths[index] ?? 0));
  const unit = value.unit === null ? '' : unitLabel(value.unit);
  const lines = [
    `  ${padRight(nameText(value), nameWidth)}  ${value.kind === 'function' ? '' : cells.join('  ')}  ${unit}`.trimEnd()
  ];
  const indent = ' '.repeat(6);
  const written = writtenVariants(value).map(({ stage, text, comment }) => ({
    formula: printableLine(stage === null ? `= ${text}` : `from ${stage}: ${text}`),
    words: comment === null ? '' : printableLine(`# ${comment.text}`)
  }));
  const width = Math.min(FORMULA_MOST, widest(written.map(({ formula }) => formula)));
  for (const { formula, words } of written)
    lines.push(indent + palette.quiet(`${padRight(formula, width)}  ${words}`.trimEnd()));
  const waits = [...new Set(value.at.flatMap((at) => at.waitsFor))];
  if (waits.length > 0) lines.push(`${indent}${palette.close(`waits for ${waits.join(', ')}`)}`);
  return lines;
}

function limitRows(limit: LimitResult, results: Results, palette: Palette): string[] {
  const lines = [`  ${labelText(limit)}`];
  const idWidth = widest(results.stages.map(({ id }) => id));
  const sides = limit.at.map((at) => printableLine(sidesText(limit, at)));
  for (const [index, at] of limit.at.entries()) {
    const tone = toneOf(at.status);
    const paint = paintTone(palette, tone);
    const stage = padRight(results.stages[index]?.id ?? '', idWidth);
    lines.push(
      [
        `    ${paint(toneSigns[tone])} ${stage}`,
        padRight(sides[index] ?? '', widest(sides)),
        paint(printableLine(verdictText(limit, at)))
      ].join('  ')
    );
  }
  return lines;
}

function tableLines(
  columns: readonly string[],
  rows: readonly (readonly string[])[],
  palette: Palette
): string[] {
  const cells = [columns, ...rows].map((row) => row.map(printableLine));
  const widths = columns.map((_, index) => widest(cells.map((row) => row[index] ?? '')));
  return cells.map((row, index) => {
    const line = row.map((cell, column) => padRight(cell, widths[column] ?? 0)).join('  ');
    return `  ${index === 0 ? palette.quiet(line.trimEnd()) : line.trimEnd()}`;
  });
}

function problemRow(found: Problem, palette: Palette): string[] {
  const paint = found.severity === 'error' ? palette.over : palette.close;
  const hint = found.hint === null ? '' : ` ${printableLine(found.hint)}`;
  return [`      ${paint(`line ${found.at.line}: ${printableLine(found.message)}`)}${hint}`];
}

/** Prose as it stands, with lines that are too long broken at spaces; tables and code stay whole. */
function proseLines(text: string, width: number): string[] {
  let isFenced = false;
  return printable(text)
    .trim()
    .split('\n')
    .flatMap((line) => {
      const isFence = /^ {0,3}(?:`{3,}|~{3,})/.test(line);
      if (isFence) isFenced = !isFenced;
      if (isFence || isFenced || /^(?: {4}|\t|\s*\||#)/.test(line)) return [line];
      const lead = /^\s*(?:(?:[-*+>]|\d+[.)])\s+)?/.exec(line)?.[0] ?? '';
      const [first = '', ...rest] = wrap(line.slice(lead.length), width - lead.length);
      const hanging = lead.includes('>') ? lead : ' '.repeat(lead.length);
      return [(lead + first).trimEnd(), ...rest.map((words) => hanging + words)];
    });
}

/** A value as a cell of its row, without the unit. */
export function cellText(at: StageValue | undefined): string {
  if (!at) return '';
  switch (at.state) {
    case 'value':
      return printableLine(at.number === '' ? at.text : at.number);
    case 'waits':
      return 'waits';
    case 'unknown':
      return '?';
    case 'error':
      return 'in error';
  }
}

/** A row's name as it stands in the margin: 'f(x, y)' for a function, '' for an unnamed line. */
export function nameText(value: ValueResult): string {
  const parameters = value.variants[0]?.parameters;
  if (parameters) return printableLine(`${value.name}(${parameters.join(', ')})`);
  return /^line \d+$/.test(value.name) ? '' : printableLine(value.name);
}
