// Words for choices from a table.

import type { Wording } from '../problem.ts';

export const noneFits = (name: string, worst: string | null): Wording => ({
  message: `${name}: no row of the table meets every condition.`,
  hint:
    worst === null
      ? 'Add rows, or ease a condition.'
      : `${worst} excludes most; ease it, or add rows.`
});

export const rankingMoved = (name: string, taken: string, first: string): Wording => ({
  message: `${name}: ${taken} is taken; by its conditions and preference the choice would now be ${first}.`,
  hint: `Write take "${first}" to follow, or leave it if ${taken} is what was bought.`
});

export const rowUnknown = (row: string, rows: readonly string[]): Wording => ({
  message: `The table has no row ${row}.`,
  hint:
    rows.length > 0
      ? `Its rows are ${rows.slice(0, 8).join(', ')}${rows.length > 8 ? ' …' : ''}.`
      : null
});

export const columnOfNumbers = (column: string): Wording => ({
  message: `${column} is a column of numbers, so it cannot be compared with a text.`,
  hint: `Write a comparison such as ${column} >= 1.`
});
