// Results as CSV (RFC 4180), one row for each name and stage, with numbers at full precision.
// A spreadsheet runs a text cell that begins like a formula, so such cells get an apostrophe in
// front (OWASP, CSV Injection, from memory); numbers of ours are written as they are.

import type { LimitResult, Results, ValueResult } from '#lib/sheet/index.ts';
import { partsWithoutCheck, writtenVariants } from './outline.ts';

const header = [
  'line', 'kind', 'name', 'stage', 'row', 'value', 'unit', 'standard uncertainty', 'capacity or required',
  'utilisation', 'margin', 'status', 'written', 'what it is', 'where from'
]; // prettier-ignore

type Cell = string | number | boolean | null;

/** The sheet as CSV text, with a header line and CRLF line ends. */
export function sheetCsv(results: Results): string {
  const rows: Cell[][] = [header];
  for (const value of results.values.values()) rows.push(...valueRows(value, results));
  for (const limit of results.limits.values()) rows.push(...limitRows(limit, results));
  for (const label of partsWithoutCheck(results))
    rows.push(row({ kind: 'part', name: label, status: 'no check' }));
  for (const found of results.problems)
    rows.push(
      row({
        line: found.at.line,
        kind: found.severity,
        name: found.subject,
        stage: found.stage,
        status: found.code,
        'what it is': found.hint === null ? found.message : `${found.message} ${found.hint}`
      })
    );
  return rows.map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}

function row(cells: Readonly<Record<string, Cell>>): Cell[] {
  return header.map((name) => cells[name] ?? null);
}

function valueRows(value: ValueResult, results: Results): Cell[][] {
  if (value.kind === 'function') return [];
  const written = writtenVariants(value);
  return value.at.flatMap((at, index) => {
    const variant = written[at.variant];
    const cells = {
      line: value.line,
      kind: value.kind,
      name: value.name,
      stage: results.stages[index]?.id ?? null,
      unit: unitText(value.unit?.text),
      'standard uncertainty': at.standardUncertainty,
      status: at.state === 'value' ? null : (at.error ?? waitText(at.waitsFor)),
      written: variant?.text ?? null,
      'what it is': variant?.comment?.what ?? value.comment?.what ?? null,
      'where from': variant?.comment?.source ?? value.comment?.source ?? null
    };
    if (at.value === null || typeof at.value !== 'object')
      return [row({ ...cells, value: at.value })];
    return at.value.map((entry, position) => row({ ...cells, row: position + 1, value: entry }));
  });
}

function limitRows(limit: LimitResult, results: Results): Cell[][] {
  return limit.at.map((at, index) =>
    row({
      line: limit.line,
      kind: limit.tags.all.length > 0 ? `limit [${limit.tags.all.join('] [')}]` : 'limit',
      name: limit.label,
      stage: results.stages[index]?.id ?? null,
      value: at.left,
      unit: unitText(limit.unit?.text),
      'capacity or required': at.right,
      utilisation: at.utilisation,
      margin: at.margin,
      status: at.waitsFor.length > 0 ? `${at.status}, ${waitText(at.waitsFor)}` : at.status,
      'what it is': limit.variants[at.variant]?.comment?.what ?? limit.comment?.what ?? null,
      'where from': limit.variants[at.variant]?.comment?.source ?? limit.comment?.source ?? null
    })
  );
}

const unitText = (unit: string | undefined): string | null =>
  unit === '1' ? null : (unit ?? null);
const waitText = (names: readonly string[]): string => `waits for ${names.join(' ')}`;

/** One cell; exported for its tests. */
export function csvCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  const flat = cell.replace(/(?![\n\r\t])\p{Cc}/gu, '\ufffd');
  const still = /^[\s]*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/u.test(flat) ? `'${flat}` : flat;
  return /[",\r\n]/.test(still) ? `"${still.replaceAll('"', '""')}"` : still;
}
