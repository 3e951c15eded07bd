// Problems of methods: solve, integrals, and the courses and fits to come.

import { block, later, raised, type CatalogueEntry } from './entry.ts';

export const methodProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'solve/same-sign',
    meaning: 'The two sides of an equation do not cross in the range that is searched.',
    example: [
      ...block('inputs', 'v = 10 m/s within 1 m/s .. 20 m/s'),
      ...block('calc', 'P = 0.6 kg/m * v^3'),
      ...block('solve', 'v_max = v where P == 20 kW')
    ],
    cure: [
      ...block('inputs', 'v = 10 m/s within 1 m/s .. 40 m/s'),
      ...block('calc', 'P = 0.6 kg/m * v^3'),
      ...block('solve', 'v_max = v where P == 20 kW')
    ]
  }),
  raised({
    code: 'solve/several',
    meaning: 'The two sides of an equation cross more than once in the range that is searched.',
    severity: 'note',
    example: [
      ...block('inputs', 'x = 1'),
      ...block('solve', 'x_root = x where sin(x) == 0.5 between 0 and 3')
    ],
    cure: [
      ...block('inputs', 'x = 1'),
      ...block('solve', 'x_root = x where sin(x) == 0.5 between 0 and 1.5')
    ]
  }),
  raised({
    code: 'solve/not-finite',
    meaning: 'The two sides of an equation cannot be computed, or jump past each other, in the range that is searched.',
    example: [
      ...block('inputs', 'x = 1'),
      ...block('solve', 'x_root = x where 1 / (x - 2) == 0 between 0 and 3')
    ],
    cure: [
      ...block('inputs', 'x = 1'),
      ...block('solve', 'x_root = x where 1 / (x - 2) == 1 between 2.5 and 4')
    ]
  }),
  later('solve/budget', 'A search took more work than a sheet may ask for; every equation tried so far stays below that bound.'),
  raised({
    code: 'integral/inaccurate',
    meaning: 'An integral is known less exactly than the rest of the sheet.',
    severity: 'warning',
    example: block('calc', 'area = integrate(sin(1 / x), x, 0.0001, 1)'),
    cure: block('calc', 'area = integrate(sin(1 / x), x, 0.1, 1)')
  }),
  raised({
    code: 'integral/not-finite',
    meaning: 'The expression under an integral has no finite value somewhere in its range.',
    example: block('calc', 'area = integrate(1 / x, x, 0, 1)'),
    cure: block('calc', 'area = integrate(1 / x, x, 0.1, 1)')
  }),
  later('course/event-not-reached', 'A course over time ended before its condition came true.'),
  later('course/step', 'A course over time needs steps that are too small to go on.'),
  later('course/budget', 'A course over time took more work than a sheet may ask for.'),
  later('fit/too-few', 'A fit has fewer readings than unknowns.'),
  later('fit/not-identifiable', 'The readings cannot tell the unknowns of a fit apart.'),
  later('fit/no-convergence', 'A fit did not settle on values of its unknowns.'),
  later('fit/moved', 'A fit gives another value than the one that a revision took from it.')
]; // prettier-ignore
