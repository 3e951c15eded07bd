// Tables as columns. A cell is a number in its column's unit or a text; an empty one is not measured
// and stays so. A table may stand in the sheet or in a file beside it.

import { isOutside, readTableText, type Block, type TableText } from '#lib/document/index.ts';
import { parseUnitCut } from '#lib/language/index.ts';
import {
  fileWords, lineWords, problem, shiftProblem, tableWords, type Problem
} from '#lib/problem/index.ts'; // prettier-ignore
import { canonicalName, spanOf, type Cut } from '#lib/text/index.ts';
import { toSI, type Unit } from '#lib/units/index.ts';
import type { ColumnNode } from './node.ts';

/** Texts of the files that tables are read from, by path as the sheet writes it. */
export type TableFiles = ReadonlyMap<string, string>;

export interface TableFound {
  readonly table: TableText | null;
  /** With lines of the sheet. */
  readonly problems: readonly Problem[];
}

/** The text of a block's table, from the block or from its file. */
export function tableText(block: Block, files: TableFiles): TableFound {
  const path = block.head.from;
  if (!path) {
    return { table: block.table, problems: [] };
  }
  // A path that leads out of the folder was refused when the sheet was read.
  if (isOutside(path.text)) return { table: null, problems: [] };
  const text = files.get(path.text);
  const name = block.head.name?.text ?? '';
  if (text === undefined) {
    const words = fileWords.tableMissing(name, path.text);
    const missing = problem('file/table-missing', spanOf(path), words, { subject: name });
    return { table: null, problems: [shiftProblem(missing, block.line)] };
  }
  const table = readTableText(text, { path: path.text });
  return { table, problems: table.problems.map((found) => atPath(found, path, block.line)) };
}

/** A problem of a file, at the path in the sheet; its message names the line in the file. */
function atPath(found: Problem, path: Cut, blockLine: number): Problem {
  return {
    ...found,
    at: { ...spanOf(path), line: blockLine },
    message: `${path.text}, line ${found.at.line + 1}: ${found.message}`,
    fix: null,
    related: []
  };
}

/**
 * A node for each column; problems have lines of the sheet. A column with a mistake is broken, and so
 * is every column of a table whose rows cannot be told apart: what reads them waits.
 *
 * @param path  of the file that the rows stand in; null where they stand in the sheet
 */
export function columnNodes(
  table: string,
  found: TableText,
  blockLine: number,
  path: Cut | null,
  stages: number,
  money: string | null
): { readonly nodes: readonly ColumnNode[]; readonly problems: readonly Problem[] } {
  // prettier-ignore
  const problems: Problem[] = [];
  const report = (each: Problem): void => {
    problems.push(path ? atPath(each, path, blockLine) : shiftProblem(each, blockLine));
  };
  const ofTable = found.problems.filter(({ severity }) => severity === 'error');
  const leftOut = new Set(found.leftOut.map(({ row }) => row - 1));
  const rows = found.rows.filter((_, index) => !leftOut.has(index));
  const seen = new Set<string>();
  const nodes: ColumnNode[] = [];
  for (const [index, column] of found.columns.entries()) {
    const name = canonicalName(column.name.text);
    if (seen.has(name)) {
      report(problem('line/duplicate-name', spanOf(column.name), lineWords.duplicateColumn(name)));
      continue;
    }
    seen.add(name);
    const { unit, problems: unitProblems } = column.unit
      ? parseUnitCut(column.unit, money)
      : { unit: null, problems: [] };
    const own: Problem[] = [...unitProblems];
    const texts = rows.map((row) => row.cells[index]?.text.trim() ?? '');
    const isText =
      column.unit === null && texts.some((text) => text !== '' && numberIn(text) === null);
    const numbers = isText
      ? null
      : rows.map((row, rowNumber) => {
          const cell = row.cells[index];
          const text = texts[rowNumber] ?? '';
          if (!cell || text === '') return NaN;
          const value = numberIn(text);
          if (value !== null) return unit ? toSI(value, unit) : value;
          const words =
            unit && /^[-+−]?[\d.]+\s*[^\d.\s,]/u.test(text)
              ? tableWords.cellUnit(name, rowNumber + 1, text, unit.text)
              : tableWords.cellNotANumber(name, rowNumber + 1, text);
          own.push(problem('table/cell', spanOf(cell), words));
          return NaN;
        });
    own.forEach(report);
    const node = columnNode(table, name, numbers, texts, unit, stages);
    const mistakes = [...ofTable, ...own];
    nodes.push(mistakes.length > 0 ? { ...node, problems: mistakes, isBroken: true } : node);
  }
  return { nodes, problems };
}

function columnNode(
  table: string,
  column: string,
  numbers: readonly number[] | null,
  texts: readonly string[],
  unit: Unit | null,
  stages: number
): ColumnNode {
  // prettier-ignore
  const id = `${table}.${column}`;
  return {
    kind: 'column', id, name: id, table, column, unit, numbers, texts, entry: null, nameCut: null,
    variants: [{ stage: null, line: 0, comment: null }],
    variantAt: new Array<number>(stages).fill(0), problems: [], isBroken: false, uses: []
  }; // prettier-ignore
}

/** A cell's number: signs and powers of ten; a minus sign may be typeset. */
function numberIn(text: string): number | null {
  const plain = text.replace('−', '-').replace(/^\+/u, '');
  return /^-?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/u.test(plain) ? Number(plain) : null;
}
