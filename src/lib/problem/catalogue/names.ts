// Problems of names: not defined, not a function, in a circle, with another number of arguments.

import { block, raised, type CatalogueEntry } from './entry.ts';

export const nameProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'names/unknown',
    meaning: 'A name is used that nothing defines.',
    example: block('calc', 'P_drag = 900 W', 'P_total = P_darg + 200 W'),
    cure: block('calc', 'P_drag = 900 W', 'P_total = P_drag + 200 W')
  }),
  raised({
    code: 'names/not-a-function',
    meaning: 'A name that is no function stands before a bracket.',
    example: block('calc', 'R = 0.6 m', 'e = 0.1', 'reach = R(1 + e)'),
    cure: block('calc', 'R = 0.6 m', 'e = 0.1', 'reach = R*(1 + e)')
  }),
  raised({
    code: 'names/ambiguous-column',
    meaning: 'A bare name in a choice is both a column of its table and a name of the sheet.',
    example: [
      ...block('inputs', 'P_rated = 3 kW'),
      ...block('table motors', 'name, P_rated [kW]', 'A, 1.1', 'B, 5.5'),
      ...block('choose motor from motors', 'motors.P_rated >= P_rated', 'least motors.P_rated')
    ],
    cure: [
      ...block('inputs', 'P_need = 3 kW'),
      ...block('table motors', 'name, P_rated [kW]', 'A, 1.1', 'B, 5.5'),
      ...block('choose motor from motors', 'P_rated >= P_need', 'least P_rated')
    ]
  }),
  raised({
    code: 'names/circle',
    meaning: 'Names depend on each other in a circle, so none of them can be computed first.',
    example: block('calc', 'a = b + 1', 'b = c * 2', 'c = a - 3'),
    cure: block('calc', 'a = b + 1', 'b = c * 2', 'c = 4')
  }),
  raised({
    code: 'names/arguments',
    meaning: 'A function is called with another number of arguments than it takes.',
    example: block('calc', 'angle = atan2(3 m)'),
    cure: block('calc', 'angle = atan2(3 m, 4 m)')
  })
]; // prettier-ignore
