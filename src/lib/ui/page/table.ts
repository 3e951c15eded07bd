// Tables and readings as they are written, under typeset heads; a table that comes from a file shows
// the columns that the sheet computed from it.

import type { Block } from '#lib/document/index.ts';
import { isUnitFault, parseUnit, unitLabel } from '#lib/units/index.ts';
import type { ValueResult } from '#lib/sheet/index.ts';
import type { PageContext } from './context.ts';
import { dateText } from './stages.ts';
import { nameTex, unitOrBlank } from './typeset.ts';
import type { TableItem } from './types.ts';

/** Rows that stand open; a longer table opens on demand. */
const OPEN_ROWS = 12;

/** The item of a `table` or `readings` block. */
export function tableItem(
  context: PageContext,
  block: Block,
  label: string,
  id: string
): TableItem {
  const { head, table } = block;
  const name = head.name?.text ?? '';
  const fromFile = columnsOfName(context, name);
  const remarks = (table?.leftOut ?? []).map(({ row, why }) =>
    why === null ? `Row ${row} is left out.` : `Row ${row} is left out: ${why}.`
  );
  const base = { kind: 'table', id, problems: [], label, name, origin: originOf(context, block), openRows: OPEN_ROWS, remarks } as const; // prettier-ignore
  if (table && table.columns.length > 0) {
    const { columns, rows } = table;
    return {
      ...base,
      columns: columns.map((column, index) => ({
        name: column.name.text,
        tex: nameTex(column.name.text),
        unit: writtenUnit(context, column.unit?.text ?? ''),
        isText: rows.some((row) => !isNumber(row.cells[index]?.text ?? ''))
      })),
      rows: rows.map((row) => columns.map((_, index) => row.cells[index]?.text ?? ''))
    };
  }
  const count = Math.max(0, ...fromFile.map((column) => column.rows ?? 0));
  return {
    ...base,
    columns: fromFile.map((column) => ({
      name: column.name.slice(name.length + 1),
      tex: nameTex(column.name.slice(name.length + 1)),
      unit: unitOrBlank(column.unit),
      isText: false
    })),
    rows: Array.from({ length: count }, (_, row) => fromFile.map((column) => cellOf(column, row)))
  };
}

const columnsOfName = (context: PageContext, name: string): readonly ValueResult[] =>
  [...context.results.values.values()].filter(
    (result) => result.kind === 'column' && result.name.startsWith(`${name}.`)
  );

function cellOf(column: ValueResult, row: number): string {
  const value = column.at[0]?.value;
  const cell: unknown = Array.isArray(value) ? value[row] : undefined;
  return typeof cell === 'number' && !Number.isNaN(cell) ? String(cell).replace('-', '\u2212') : '';
}

/** An empty cell says nothing about its column. */
const isNumber = (text: string): boolean => text === '' || /^[+\-\u2212]?[\d.]/.test(text);

function originOf(context: PageContext, { head, table }: Block): string | null {
  const parts: string[] = [];
  if (head.from) parts.push(`from ${head.from.text}`);
  if (head.at) {
    const id = head.at.text;
    const stage = context.results.stages.find((one) => one.id === id);
    parts.push(`taken at ${stage?.title ?? id}`);
  }
  if (table?.date) parts.push(dateText(table.date));
  return parts.join(', ') || null;
}

/** A unit as the header writes it; one that is not understood stays as written. */
function writtenUnit(context: PageContext, text: string): string {
  if (text === '') return '';
  const unit = parseUnit(text, context.results.worksheet.frontMatter.money);
  return isUnitFault(unit) ? text : unitLabel(unit);
}
