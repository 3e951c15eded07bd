// Problems of temperature: points on a scale and differences.

import { block, raised, type CatalogueEntry } from './entry.ts';

export const temperatureProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'temperature/two-points',
    meaning:
      'Two readings on a temperature scale are added, or a reading is taken from a difference.',
    example: block('calc', 'T_room = 20 degC', 'T_oil = T_room + 60 degC'),
    cure: block('calc', 'T_room = 20 degC', 'T_oil = T_room + 60 K')
  }),
  raised({
    code: 'temperature/scaled-point',
    meaning:
      'A reading on a temperature scale is multiplied by a plain number, or has a tolerance in percent.',
    example: block('calc', 'T_room = 20 degC', 'T_twice = 2 * T_room'),
    cure: block('calc', 'T_room = 20 degC', 'T_twice = 2 * (T_room to K)')
  }),
  raised({
    code: 'temperature/difference-as-reading',
    meaning: 'A difference of temperatures is shown in a scale, which would read it as a point.',
    example: block('calc', 'rise = 60 degC - 20 degC to degC'),
    cure: block('calc', 'rise = 60 degC - 20 degC to K')
  }),
  raised({
    code: 'temperature/below-zero',
    meaning: 'A temperature is below 0 K.',
    example: block('inputs', 'T_bath = -300 degC'),
    cure: block('inputs', 'T_bath = -30 degC')
  })
];
