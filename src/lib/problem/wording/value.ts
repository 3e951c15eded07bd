// Words for values that could not be computed, or that ask for a second look.

import type { Wording } from '../problem.ts';

export const notFinite = (term: string, because: string): Wording => ({
  message: `${term} is not a finite number: ${because}.`,
  hint: 'Check the values that go into it.'
});

export const divisionByZero = (term: string, divisor: string): Wording => ({
  message: `${term} divides by ${divisor === '0' ? '0' : `${divisor}, which is 0 here`}.`,
  hint: 'Check the values that go into the divisor.'
});

export const outsideDomain = (call: string, argument: string, domain: string): Wording => ({
  message: `${call} is taken of ${argument}, outside ${domain}.`,
  hint: 'Check the values that go into it, or treat that case by a condition.'
});

export const zeroToNegative = (term: string): Wording => ({
  message: `${term} raises 0 to a negative power, which divides by 0.`,
  hint: 'Check the values that go into it, or treat that case by a condition.'
});

/** @param base  with its value, as in 'x = -8' */
export const fractionalPower = (term: string, base: string): Wording => ({
  message: `${term} raises ${base} to a power that is not whole; below 0 that has no value.`,
  hint: 'For a cube root write cbrt(…), or treat that case by a condition.'
});

export const needsAValue = (name: string): Wording => ({
  message: `${name} needs a value: its line has none that can be read.`,
  hint: 'Write a value, or ? with its unit while it is not known.'
});

export const notConstant = (name: string, used: string): Wording => ({
  message: `${name}: an input is made of numbers alone, and ${used} is a name.`,
  hint: 'Move the line to a calc block.',
  found: used
});

export const notConstantHere = (text: string, used: string): Wording => ({
  message: `${text}: only a constant can stand here, and ${used} is a name of the sheet.`,
  hint: 'Write the figure itself.'
});

export const outsideWithin = (name: string, value: string, low: string, high: string): Wording => ({
  message: `${name} is ${value}, outside its own range ${low} .. ${high}.`,
  hint: 'Change the value or the range.'
});

export const reversedWithin = (name: string, low: string, high: string): Wording => ({
  message: `${name}: the range ${low} .. ${high} runs backwards.`,
  hint: 'Write the lower end first.'
});

export const negativeTolerance = (name: string, tolerance: string): Wording => ({
  message: `${name}: the tolerance ${tolerance} is not a positive amount.`,
  hint: 'Write an amount above 0, or leave the tolerance out.',
  found: tolerance,
  expected: 'an amount above 0'
});

export const percentOfZero = (name: string): Wording => ({
  message: `${name} is 0, and a percentage of 0 is no tolerance.`,
  hint: 'Write the tolerance as an amount.'
});

export const toleranceLost = (name: string, before: string): Wording => ({
  message: `${name} loses its tolerance ${before} with this revision.`,
  hint: 'Repeat the tolerance if it still holds.'
});

export const exactComparison = (comparison: string): Wording => ({
  message: `${comparison} compares computed values exactly, to the last digit.`,
  hint: 'Compare with a band, as in abs(a - b) < 0.1 mm.'
});

export const correlationOutside = (value: string): Wording => ({
  message: `A correlation lies between -1 and 1; ${value} does not.`,
  hint: 'Write a number from -1 to 1.',
  found: value,
  expected: '-1 .. 1'
});
