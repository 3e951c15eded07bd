// Words for the sheet as a whole: what is not computed yet, and what would take too long.

import type { Wording } from '../problem.ts';

export const notComputedYet = (kind: string): Wording => ({
  message: `This ${kind} block is shown as it stands: it is not computed yet.`,
  hint: null
});

export const tooManyInstructions = (name: string, most: number): Wording => ({
  message: `${name} needs more than ${most.toLocaleString('en').replace(/,/gu, ' ')} instructions when its functions are written out.`,
  hint: 'Give parts of it names of their own, so that each is computed once.'
});

export const worstOfNotYet = (label: string): Wording => ({
  message: `${label} is to be judged by load cases, which are not computed yet: it counts as unknown.`,
  hint: 'Take [worst of …] out to judge it at the values of the stage.'
});
