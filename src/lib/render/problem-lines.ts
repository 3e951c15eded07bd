// Problems as text: place and sentence on one line, then the line of the file with the place marked,
// then what can be done. A very long line is cut to the part around the place; notes, and
// whatever comes after the first twenty problems, are the sentence alone.

import type { Problem, Span } from '#lib/problem/index.ts';
import type { Results } from '#lib/sheet/index.ts';
import type { Palette } from './columns.ts';
import { displayWidth, printable, printableLine, wrap } from './columns.ts';

const SHOWN_IN_FULL = 20;
const EXCERPT_WIDTH = 84;

/**
 * @param file  how the sheet is called in 'FILE:LINE:COLUMN'
 * @returns     errors first, then warnings and notes, each group in the order of the file
 */
export function problemLines(
  results: Results,
  file: string,
  palette: Palette,
  width = 100
): string[] {
  const ordered = [
    ...results.problems.filter((found) => found.severity === 'error'),
    ...results.problems.filter((found) => found.severity !== 'error')
  ];
  const fileLines = ordered.length > 0 ? linesOf(results.worksheet.text) : [];
  const lines: string[] = [];
  let wasFull = true;
  for (const [index, found] of ordered.entries()) {
    const isFull = found.severity !== 'note' && index < SHOWN_IN_FULL;
    if (index > 0 && (isFull || wasFull)) lines.push('');
    wasFull = isFull;
    lines.push(problemText(found, file, palette));
    if (!isFull) continue;
    const line = fileLines[found.at.line - 1];
    if (line !== undefined) lines.push(...excerpt(line, found.at, palette, found.severity));
    if (found.hint !== null)
      for (const words of wrap(printableLine(found.hint), width - 4)) lines.push(`    ${words}`);
  }
  return lines;
}

function problemText(found: Problem, file: string, palette: Palette): string {
  const place = printableLine(`${file}:${found.at.line}:${found.at.from}`);
  const paint = found.severity === 'error' ? palette.over : palette.close;
  const stage = found.stage === null ? '' : ` (at ${found.stage})`;
  return `${palette.strong(place)}  ${paint(found.severity)}  ${printableLine(found.message)}${stage}`;
}

/** The line with its number, and under it the place, marked. */
function excerpt(
  line: string,
  at: Span,
  palette: Palette,
  severity: Problem['severity']
): string[] {
  const from = Math.min(Math.max(0, at.from - 1), line.length);
  const to = Math.min(Math.max(from, at.to - 1), line.length);
  const start = to <= EXCERPT_WIDTH ? 0 : Math.max(0, Math.min(from - 20, to - EXCERPT_WIDTH + 4));
  const end = Math.min(line.length, start + EXCERPT_WIDTH);
  const cut = (a: number, b: number): string => oneColumnTabs(line.slice(a, Math.max(a, b)));
  const lead = start > 0 ? '…' : '';
  const before = lead + cut(start, from);
  const marked = cut(from, Math.min(to, end));
  const after = cut(Math.min(to, end), end) + (end < line.length ? '…' : '');
  const number = String(at.line).padStart(5);
  const marks = '^'.repeat(Math.max(1, displayWidth(marked)));
  const paint = severity === 'error' ? palette.over : palette.close;
  return [
    `${palette.quiet(`${number} │`)} ${before}${marked}${after}`.trimEnd(),
    `${palette.quiet('      │')} ${' '.repeat(displayWidth(before))}${paint(marks)}`
  ];
}

const oneColumnTabs = (text: string): string =>
  printable(text).replaceAll('\t', ' ').replaceAll('\n', ' ');

const linesOf = (text: string): string[] => text.split(/\r\n|\n|\r/);
