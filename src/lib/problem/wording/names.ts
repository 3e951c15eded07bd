// Words for names: one that is not defined, one that is no function, circles, and the number of
// arguments a function takes.

import type { Wording } from '../problem.ts';

/**
 * @param unit  what the name means as a unit ('amperes'), where it is one
 * @param near  a defined name that differs by a letter or two
 */
export const unknownName = (
  name: string,
  unit: string | null = null,
  near: string | null = null
): Wording => ({
  message: `${name} is not defined.`,
  hint:
    [near === null ? '' : `Nearest: ${near}.`, unit === null ? '' : `For ${unit} write 1 ${name}.`]
      .filter((part) => part !== '')
      .join(' ') || `Define ${name} in an inputs or calc block.`,
  found: name
});

export const unknownTable = (table: string): Wording => ({
  message: `${table} is not a table of this sheet.`,
  hint: `Write a table block with the name ${table}, or name one that is there.`,
  found: table
});

export const notAFunction = (name: string, product: string): Wording => ({
  message: `${name} is not a function.`,
  hint: `Is * missing? Write ${product}.`,
  found: name
});

export const functionCalled = (name: string, write: string): Wording => ({
  message: `${name} is not a function of the language.`,
  hint: `Write ${write}.`,
  found: name,
  expected: write
});

export const whichLogarithm = (name: string): Wording => ({
  message: `${name} is read differently from book to book: ln or log10?`,
  hint: 'Write ln(…) for the natural logarithm, log10(…) for the one to base 10.',
  found: name
});

/** @param argument  what seems to be meant as one */
export const functionWithoutArguments = (name: string, argument = '…'): Wording => ({
  message: `${name} is a function and needs its arguments in brackets.`,
  hint: `Write ${name}(${argument}).`,
  found: name
});

export const argumentCount = (
  name: string,
  found: number,
  expected: string,
  form: string | null = null
): Wording => ({
  message: `${name} takes ${expected}, and has ${found} here.`,
  hint: form === null ? null : `Write ${form}.`,
  found: String(found),
  expected
});

export const boundVariable = (found: string): Wording => ({
  message: `The second argument of integrate is the name of its variable, not ${found}.`,
  hint: 'Write integrate(expression, x, low, high).',
  found,
  expected: 'a name'
});

export const shadowsName = (name: string, line: number | null): Wording => ({
  message: `${name} is a variable of its own here${line === null ? '' : `, not the ${name} of line ${line}`}.`,
  hint: 'Use another letter if the other one is meant.'
});

/** @param path every member in order, the first not repeated */
export const circle = (path: readonly string[]): Wording => ({
  message:
    path.length === 1
      ? `${path[0]} depends on itself.`
      : `${path.slice(0, -1).join(', ')} and ${path.at(-1)} depend on each other: ${[...path, path[0]].join(' -> ')}.`,
  hint: 'Take one of them from an input, or use a solve block.'
});

export const ambiguousColumn = (name: string, table: string): Wording => ({
  message: `${name} is both a column of ${table} and a name of the sheet.`,
  hint: `Write ${table}.${name} for the column, or give the other one a new name.`,
  found: name
});
