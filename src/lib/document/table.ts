// Tables: a header of columns with units, then rows, in a block or in a file of their own. The
// separator is the first of tab, `|`, `;` and `,` that the header holds; quotes are read as in
// RFC 4180, section 2, so a quoted cell may hold the separator, a doubled quote, or a line end. With
// `;` a number may carry a decimal comma. Nothing else of the format (comments, continuations,
// revisions) applies inside.

import { lineWords, problem, tableWords, type Problem } from '#lib/problem/index.ts';
import {
commentStart, cutOf, endOf, isName, joinCuts, lineText, sliceCut, spanOf, splitLines,
  trimCut, type Cut, type Lines
} from '#lib/text/index.ts'; // prettier-ignore
import { readTolerance } from './blocks/tolerance.ts';
import type { TableColumn, TableRow, TableText } from './types.ts';

type Separator = TableText['separator'];

const separators: readonly Separator[] = ['\t', '|', ';', ','];
const decimalNumber = /^[+-]?\d*,\d+(?:[eE][+-]?\d+)?$/;
const dateLine = /^date[ \t]+(?=\d)/;
const leaveOutLine = /^leave[ \t]+out[ \t]+(?=\d)/;

/** Reads a table from a file's text; line 0 is the file's first, a byte order mark is passed over. */
export function readTableText(text: string, source: { readonly path: string }): TableText {
  const lines = splitLines(text);
  return readTable(lines, 0, lines.count, { subject: source.path, isReadings: false });
}

/**
 * Reads lines `from` to `to` as a table; cuts and rows carry the lines' own numbers.
 *
 * @param options  `subject` names the table in problems; readings may carry `date` and `leave out`
 */
export function readTable(
  lines: Lines,
  from: number,
  to: number,
  options: { readonly subject: string; readonly isReadings: boolean }
): TableText {
  const problems: Problem[] = [];
  let index = nextFilled(lines, from, to);
  let date: string | null = null;
  for (; options.isReadings && index < to; index = nextFilled(lines, index + 1, to)) {
    const line = trimCut(lineCut(lines, index));
    const match = dateLine.exec(line.text);
    if (!match) break;
    const written = withoutComment(trimCut(sliceCut(line, match[0].length)));
    date = written.text;
    if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) {
      problems.push(problem('line/not-understood', spanOf(written), lineWords.notADate(date)));
    }
  }
  if (index >= to) {
    const at = { line: Math.max(0, from - 1), from: 1, to: 1 };
    problems.push(problem('line/not-understood', at, tableWords.noColumns(options.subject)));
    return {
      columns: [],
      rows: [],
      separator: ',',
      decimalComma: false,
      date,
      leftOut: [],
      problems
    };
  }
  const header = lineText(lines, index);
  const separator = separators.find((sign) => header.includes(sign)) ?? ',';
  const bars = separator === '|';
  const columns = cellsOf(lines, index, to, separator, bars, problems).cells.map((cell) =>
    readColumn(cell, options.subject, problems)
  );
  const rows: TableRow[] = [];
  const leftOut: { row: number; why: string | null }[] = [];
  let decimalComma = false;
  let isFirst = true;
  index = nextFilled(lines, index + 1, to);
  for (; index < to; index = nextFilled(lines, index + 1, to)) {
    const text = lineText(lines, index);
    const isRule = bars && isFirst && isRuleLine(text);
    isFirst = false;
    if (isRule) continue;
    const line = trimCut(cutOf(text, index));
    const match = options.isReadings ? leaveOutLine.exec(line.text) : null;
    if (match) {
      readLeftOut(line, sliceCut(line, match[0].length), leftOut, problems);
      continue;
    }
    const { cells, last } = cellsOf(lines, index, to, separator, bars, problems);
    if (cells.length !== columns.length) {
      const whole = trimCut(cutOf(text, index));
      const words = lineWords.columnCount(cells.length, columns.length);
      problems.push(
        problem('line/column-count', spanOf(whole), words, { subject: options.subject })
      );
    }
    const shown = separator === ';' ? cells.map(withPoint) : cells;
    decimalComma ||= shown.some((cell, i) => cell !== cells[i]);
    rows.push({ line: index, cells: shown.map((cell) => (cell.text === '' ? null : cell)) });
    index = last;
  }
  return { columns, rows, separator, decimalComma, date, leftOut, problems };
}

// The cells of the row that begins on a line, and the line it ends on.
function cellsOf(
  lines: Lines, first: number, to: number, separator: Separator, bars: boolean, problems: Problem[]
): { cells: Cut[]; last: number } {
  const cells: Cut[] = [];
  let line = lineCut(lines, first);
  let number = first;
  let at = 0;
  if (bars) {
    const start = line.text.length - line.text.trimStart().length;
    if (line.text.charAt(start) === '|') at = start + 1;
    const end = line.text.trimEnd();
    if (end.length - 1 >= at && end.endsWith('|')) line = sliceCut(line, 0, end.length - 1);
  }
  for (;;) {
    const { text } = line;
    let open = at;
    while (open < text.length && text.charAt(open) === ' ') open++;
    if (text.charAt(open) !== '"') {
      const end = text.indexOf(separator, at);
      cells.push(trimCut(sliceCut(line, at, end < 0 ? text.length : end)));
      if (end < 0) return { cells, last: number };
      at = end + 1;
      continue;
    }
    const quoted = readQuoted(lines, line, number, to, open + 1, separator);
    if (quoted.after !== null) {
      const words = tableWords.afterQuote(quoted.after.text);
      problems.push(problem('table/cell', spanOf(quoted.after), words));
    }
    if (quoted.isOpen) {
      problems.push(problem('table/cell', spanOf(line, open, open + 1), tableWords.cellQuoteOpen()));
      cells.push(trimCut(sliceCut(line, at)));
      return { cells, last: number };
    }
    cells.push(quoted.cell);
    ({ line, number } = quoted);
    if (quoted.next < 0) return { cells, last: number };
    at = quoted.next;
  }
} // prettier-ignore

interface QuotedCell {
  readonly cell: Cut;
  readonly line: Cut;
  readonly number: number;
  /** Where the next cell begins on `line`; −1 at the end of the row. */
  readonly next: number;
  readonly isOpen: boolean;
  /** What stands between the closing quote and the next separator, where it should not. */
  readonly after: Cut | null;
}

function readQuoted(
  lines: Lines, first: Cut, firstNumber: number, to: number, from: number, separator: Separator
): QuotedCell {
  const parts: Cut[] = [];
  let line = first;
  let number = firstNumber;
  let start = from;
  let at = from;
  for (;;) {
    const quote = line.text.indexOf('"', at);
    if (quote < 0) {
      if (number + 1 >= to) return { cell: first, line, number, next: -1, isOpen: true, after: null };
      parts.push(sliceCut(line, start));
      number++;
      line = lineCut(lines, number);
      start = at = 0;
    } else if (line.text.charAt(quote + 1) === '"') at = quote + 2;
    else {
      parts.push(sliceCut(line, start, quote));
      const rest = line.text.indexOf(separator, quote + 1);
      const cell = joinCuts(parts.map(withoutDoubledQuotes));
      const after = trimCut(sliceCut(line, quote + 1, rest < 0 ? line.text.length : rest));
      return {
        cell, line, number, next: rest < 0 ? -1 : rest + 1, isOpen: false,
        after: after.text === '' ? null : after
      };
    }
  }
} // prettier-ignore

function readColumn(cell: Cut, subject: string, problems: Problem[]): TableColumn {
  const sign = cell.text.indexOf('±');
  const before = sign < 0 ? cell : trimCut(sliceCut(cell, 0, sign));
  const open = before.text.indexOf('[');
  const close = before.text.lastIndexOf(']');
  const hasUnit = open >= 0 && close === before.text.length - 1;
  const name = hasUnit ? trimCut(sliceCut(before, 0, open)) : before;
  const unit = hasUnit ? trimCut(sliceCut(before, open + 1, close)) : null;
  if (name.text === '') {
    const words = lineWords.missing(subject, 'the name of a column', 'name [unit], …');
    problems.push(problem('line/not-understood', spanOf(cell), words, { subject }));
  } else if (!isName(name.text)) {
    problems.push(problem('line/not-understood', spanOf(name), lineWords.notAName(name.text)));
  }
  if (sign < 0) return { name, unit, tolerance: null, common: false };
  const written = trimCut(sliceCut(cell, sign + 1));
  const common = /(?:^|\s)common$/.test(written.text);
  const amount = common ? trimCut(sliceCut(written, 0, written.text.length - 6)) : written;
  return { name, unit, tolerance: readTolerance(amount, name.text || subject, problems), common };
}

function readLeftOut(
  line: Cut, list: Cut, leftOut: { row: number; why: string | null }[], problems: Problem[]
): void {
  const hash = commentStart(list.text);
  const why = hash < 0 ? null : list.text.slice(hash + 1).trim() || null;
  const rows = hash < 0 ? list.text : list.text.slice(0, hash);
  for (const word of rows.split(',')) {
    if (/^\d+$/.test(word.trim())) leftOut.push({ row: Number(word), why });
    else {
      const words = lineWords.notUnderstood(line.text, 'readings', ['leave out 7, 8  # why']);
      problems.push(problem('line/not-understood', spanOf(line), words));
      return;
    }
  }
} // prettier-ignore

function withoutComment(cut: Cut): Cut {
  const hash = commentStart(cut.text);
  return hash < 0 ? cut : trimCut(sliceCut(cut, 0, hash));
}

// The line `|---|:-:|` under a header: bars, hyphens, colons and spaces, at least one hyphen.
function isRuleLine(line: string): boolean {
  return line.includes('-') && !/[^ \t|:-]/.test(line);
}

// A decimal comma becomes a point at equal length, so places stay true.
function withPoint(cell: Cut): Cut {
  return decimalNumber.test(cell.text) ? { ...cell, text: cell.text.replace(',', '.') } : cell;
}

// Past a doubled quote the cell's own columns run one ahead of the file's; only whole cells are shown.
function withoutDoubledQuotes(cut: Cut): Cut {
  return cut.text.includes('""') ? { ...cut, text: cut.text.replaceAll('""', '"') } : cut;
}

function lineCut(lines: Lines, index: number): Cut {
  const text = lineText(lines, index);
  const hasMark = index === 0 && text.startsWith('\ufeff');
  return hasMark ? cutOf(text.slice(1), index, 2) : cutOf(text, index);
}

function nextFilled(lines: Lines, from: number, to: number): number {
  let index = from;
  while (
    index < to &&
    lines.text.slice(lines.starts[index] ?? 0, endOf(lines, index)).trim() === ''
  )
    index++;
  return index;
}
