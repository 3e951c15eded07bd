// Words for what is solved and integrated.

import type { Wording } from '../problem.ts';

export const unknownIsNoInput = (name: string): Wording => ({
  message: `${name} is not an input, so it cannot be what is solved for.`,
  hint: 'Solve for an input; whatever depends on it follows.'
});

export const needsRange = (name: string): Wording => ({
  message: `Where to look for ${name} is not said.`,
  hint: `Write between low and high, or give ${name} a range with within.`
});

export const choiceBetween = (name: string, choice: string, unknown: string): Wording => ({
  message: `${name}: the equation reads the choice ${choice}, which itself depends on ${unknown} and changes by jumps.`,
  hint: `Fix the row with take, or write the equation without ${choice}.`
});

/** `atLow`, `atHigh`: left side less right side at the ends, with sign and unit. */
export const sameSign = (
  name: string, unknown: string, low: string, high: string, atLow: string, atHigh: string
): Wording => ({
  message: `${name}: the sides do not cross for ${unknown} from ${low} to ${high} (left less right is ${atLow} and ${atHigh} at the ends).`,
  hint: 'Widen the range, or check which side should be the larger.'
}); // prettier-ignore

export const several = (name: string, count: number): Wording => ({
  message: `${name}: the sides cross ${count} times in this range; the lowest is taken.`,
  hint: 'Narrow the range to the crossing that is meant.'
});

export const notFinite = (name: string, unknown: string, where: string): Wording => ({
  message: `${name}: the sides have no finite value at ${unknown} = ${where}.`,
  hint: 'Narrow the range to where both can be computed.'
});

export const discontinuous = (name: string, unknown: string, where: string): Wording => ({
  message: `${name}: the sides change places at ${unknown} = ${where} by a jump, without meeting.`,
  hint: 'Narrow the range, or check the formula there.'
});

export const budget = (name: string): Wording => ({
  message: `${name}: the search took more work than a sheet may ask for.`,
  hint: 'Narrow the range.'
});

export const reversedRange = (name: string, low: string, high: string): Wording => ({
  message: `${name}: the range from ${low} to ${high} has no width.`,
  hint: 'Write two different ends.'
});

/** @param error  in percent of the value, with its sign */
export const integralInaccurate = (name: string, error: string): Wording => ({
  message: `${name}: the integral is known to ${error} only.`,
  hint: 'Split the range where the expression has a kink or a jump.'
});

export const integralUncertain = (name: string): Wording => ({
  message: `${name}: the integral is not known: its error may be more than a hundredth of it.`,
  hint: 'Check that it exists; split the range where the expression has a kink or a jump.'
});

export const integralNotFinite = (name: string, where: string): Wording => ({
  message: `${name}: the expression under the integral has no finite value at ${where}.`,
  hint: `Choose bounds that leave ${where} out, or rewrite the expression there.`
});

export const integralBudget = (name: string): Wording => ({
  message: `${name}: the integral took more work than a sheet may ask for.`,
  hint: 'Split the range, or simplify the expression.'
});
