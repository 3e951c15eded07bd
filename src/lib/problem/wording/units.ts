// Words for dimensions and units that do not go together.

import type { Wording } from '../problem.ts';

/** `left` and `right` are described, as in 'P_drag (power, W)'; `verb` completes 'cannot be …'. */
export const cannotAdd = (
  left: string, right: string, verb: string, hint: string | null,
  found: string, expected: string
): Wording => ({
  message: `${left} and ${right} cannot be ${verb}.`,
  hint,
  found,
  expected
}); // prettier-ignore

export const cannotShow = (what: string, unit: string, unitName: string): Wording => ({
  message: `${what} cannot be shown in ${unit} (${unitName}).`,
  hint: 'Check the formula, or ask for a unit of its own kind.',
  found: what,
  expected: unit
});

export const mixedBranches = (yes: string, no: string): Wording => ({
  message: `The two branches differ: ${yes} and ${no}.`,
  hint: 'Give both the same dimension.'
});

export const differentInRevision = (name: string, base: string, revision: string): Wording => ({
  message: `${name} is ${base}; this revision makes it ${revision}.`,
  hint: 'Write it in a unit of the same kind; a revision keeps the dimension.',
  found: revision,
  expected: base
});

export const exponentNotPlain = (what: string): Wording => ({
  message: `An exponent is a plain number; ${what} is none.`,
  hint: 'Divide it by a value of its own kind.',
  found: what,
  expected: 'a plain number'
});

/** @param described  the base with its kind, as in 'd (length, mm)' */
export const exponentNotLiteral = (described: string, base: string, exponent: string): Wording => ({
  message: `${described} has a dimension, so its exponent must be written as a number, not as ${exponent}.`,
  hint: `Write the number, or divide ${base} by its unit first.`,
  found: exponent,
  expected: 'a number'
});

export const exponentBeyondReach = (text: string): Wording => ({
  message: `${text} has a dimension with an exponent beyond 24, or finer than 1/99.`,
  hint: 'Divide by a value of its own kind before raising it so far.'
});

export const unitAfterPower = (base: string, unit: string, better: string): Wording => ({
  message: `A number right of ^ takes no unit: ${base} to a power in ${unit}.`,
  hint: `Write ${better}.`
});

export const needsPlain = (call: string, what: string): Wording => ({
  message: `${call} takes a plain number, not ${what}.`,
  hint: 'Divide it by a value of its own kind, or by the unit it is to be counted in.',
  found: what,
  expected: 'a plain number'
});

export const needsAngle = (call: string, what: string): Wording => ({
  message: `${call} takes an angle or a plain number, not ${what}.`,
  hint: 'Divide it by a value of its own kind, or give an angle such as 30 deg.',
  found: what,
  expected: 'an angle or a plain number'
});

export const needsStep = (call: string, what: string): Wording => ({
  message: `${call} needs to know in which unit to round ${what}.`,
  hint: 'Write round(x, step), as in round(x, 1 mm).'
});

export const needsTruth = (where: string, what: string): Wording => ({
  message: `${where} wants a condition (yes or no); ${what} is none.`,
  hint: 'Write a comparison.'
});

export const needsNumber = (what: string): Wording => ({
  message: `${what} is a condition, not a number.`,
  hint: 'Write a ? b : c to make a number of it.'
});

export const textNotNumber = (what: string): Wording => ({
  message: `${what} is a text, not a number.`,
  hint: 'Compare it with is "…" in a choose block.'
});

export const needsColumn = (call: string, what: string): Wording => ({
  message: `${call} takes a column; ${what} is a single value.`,
  hint: 'Name a column of a table, as in motors.P_rated.'
});

export const needsSingle = (call: string, what: string): Wording => ({
  message: `${call} takes a single value; ${what} is a column.`,
  hint: 'Take one value of it, as by max, mean or last.'
});

export const differentRows = (
  left: string,
  right: string,
  rows: readonly [number, number]
): Wording => ({
  message: `${left} has ${rows[0]} rows, ${right} has ${rows[1]}: they cannot be combined row by row.`,
  hint: 'Take both columns from one table.'
});

export const apparentPower = (what: string): Wording => ({
  message: `${what} takes active power as apparent power (W and VA are one dimension).`,
  hint: 'Divide by the power factor if that is meant.'
});

export const readAsUnit = (letter: string, quantity: string): Wording => ({
  message: `In ${quantity}, ${letter} is the unit; the name ${letter} of this sheet is not meant.`,
  hint: `Write a * before ${letter} to multiply by the name.`
});
