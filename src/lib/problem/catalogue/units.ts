// Problems of units and dimensions.

import { block, raised, type CatalogueEntry } from './entry.ts';

export const unitProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'units/unknown',
    meaning: 'A unit is not in the table of units.',
    example: block('inputs', 'P_motor = 1.1 kw'),
    cure: block('inputs', 'P_motor = 1.1 kW')
  }),
  raised({
    code: 'units/refused',
    meaning: 'A unit means different things to different people, and is refused with the ones it could be.',
    example: block('inputs', 'm_frame = 2 ton'),
    cure: block('inputs', 'm_frame = 2 tonne')
  }),
  raised({
    code: 'units/mismatch',
    meaning: 'Two values of different dimensions are added, compared or shown in each other\'s units.',
    example: block('calc', 'omega = 90 rad/s', 'T_shaft = 12 N m', 'P_drag = 900 W', 'P_total = T_shaft + P_drag'),
    cure: block('calc', 'omega = 90 rad/s', 'T_shaft = 12 N m', 'P_drag = 900 W', 'P_total = T_shaft * omega + P_drag')
  }),
  raised({
    code: 'units/exponent',
    meaning: 'An exponent has a unit, or a quantity has an exponent that is not written as a number.',
    example: block('calc', 'n = 2', 'area = (3 m)^n'),
    cure: block('calc', 'area = (3 m)^2')
  }),
  raised({
    code: 'units/function-domain',
    meaning: 'A function is given a value of a kind that it does not take.',
    example: block('calc', 'h = 300 m', 'share = exp(-h)'),
    cure: block('calc', 'h = 300 m', 'share = exp(-h / 8400 m)')
  }),
  raised({
    code: 'units/two-moneys',
    meaning: 'A sheet has one money, and another one is used.',
    example: ['---', 'money: EUR', '---', ...block('inputs', 'price = 40 USD')],
    cure: ['---', 'money: EUR', '---', ...block('inputs', 'price = 37 EUR')]
  }),
  raised({
    code: 'units/read-as-unit',
    meaning: 'A letter after a number is the unit, although the sheet has a name of that letter.',
    severity: 'note',
    example: block('calc', 'm = 12 kg', 'reach = 3 m'),
    cure: block('calc', 'm_arm = 12 kg', 'reach = 3 m')
  })
]; // prettier-ignore
