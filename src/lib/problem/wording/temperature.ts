// Words for temperatures: points on a scale, differences, and what they cannot do.

import type { Wording } from '../problem.ts';

export const twoPoints = (left: string, right: string): Wording => ({
  message: `${left} and ${right} are both readings on a temperature scale: they cannot be added.`,
  hint: 'Add a difference in K to a reading, or take one reading from the other.'
});

export const differenceMinusPoint = (left: string, right: string): Wording => ({
  message: `${right} is a reading on a temperature scale and cannot be taken from ${left}, a difference.`,
  hint: 'Write the reading first: a reading less a difference is a reading.'
});

export const scaledPoint = (what: string): Wording => ({
  message: `${what} multiplies a reading on a temperature scale by a plain number, which depends on where the scale has its zero.`,
  hint: 'If the kelvins are meant, write (… to K) around the reading.'
});

export const dependsOnZero = (what: string): Wording => ({
  message: `${what} depends on where the temperature scale has its zero.`,
  hint: 'If the kelvins are meant, write (… to K) around the reading.'
});

export const differenceAsReading = (what: string, unit: string): Wording => ({
  message: `${what} is a temperature difference: ${unit} would read it as a point on the scale.`,
  hint: 'Show it to K (or degR).'
});

export const belowZero = (what: string, kelvin: string): Wording => ({
  message: `${what} is ${kelvin}, below 0 K.`,
  hint: 'Check the sign and the scale.',
  found: kelvin,
  expected: '0 K or more'
});

export const percentOfPoint = (name: string): Wording => ({
  message: `${name}: a percentage of a reading on a temperature scale depends on where the scale has its zero.`,
  hint: 'Write the tolerance in K.'
});
