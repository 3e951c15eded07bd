// Words for what stands in the cells of a table.

import type { Wording } from '../problem.ts';

/** @param row  counts from 1 below the header */
export const cellNotANumber = (column: string, row: number, found: string): Wording => ({
  message: `${column}, row ${row}: ${found} is not a number.`,
  hint: 'Write the number alone, its unit in the header; leave the cell empty where nothing was measured.',
  found,
  expected: 'a number'
});

export const cellEmpty = (column: string, row: number): Wording => ({
  message: `${column}, row ${row} is empty: not measured.`,
  hint: 'Write the value; only functions of whole columns and fits pass over an empty cell.',
  expected: 'a value'
});

export const cellUnit = (column: string, row: number, found: string, unit: string): Wording => ({
  message: `${column}, row ${row}: ${found} carries a unit of its own, and the column is in ${unit}.`,
  hint: `Write the number in ${unit}.`,
  found,
  expected: unit
});

export const cellQuoteOpen = (): Wording => ({
  message: 'The quotation mark that begins this cell is not closed.',
  hint: 'Close it; a quotation mark inside a quoted cell is written twice.',
  expected: '"'
});

export const afterQuote = (found: string): Wording => ({
  message: `After the closing quotation mark of this cell stands more: ${found}.`,
  hint: 'Put the whole cell in quotes, or none of it.',
  found
});

export const noColumns = (table: string): Wording => ({
  message: `The table ${table} has no header.`,
  hint: 'Write the names of its columns first, each with its unit: v [m/s], P [W].',
  expected: 'a header'
});

/** @param row  counts from 1 below the header */
export const notAscending = (column: string, row: number): Wording => ({
  message: `${column} does not rise from row ${row} to the next, as a column to interpolate along must.`,
  hint: 'Sort the rows so that it rises, and keep one row of each value.'
});

/** `value`, `low` and `high` with their units. */
export const outsideRange = (call: string, value: string, low: string, high: string): Wording => ({
  message: `${call} asks for ${value}, and the table goes from ${low} to ${high}.`,
  hint: 'Extend the table, or use interp_hold to keep its end values.',
  found: value,
  expected: `${low} .. ${high}`
});
