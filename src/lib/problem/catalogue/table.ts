// Problems of tables and choices, of parts and load cases to come, and of the sheet as a whole.

import { block, later, raised, type CatalogueEntry } from './entry.ts';

const motors = block('table motors', 'name, P_rated [kW], price', 'A, 1.1, 90', 'B, 5.5, 240');
const pump = (...rows: readonly string[]): readonly string[] =>
  block('table pump', 'Q [L/min], p [bar]', ...rows);
const tenTimes = (name: string): string =>
  Array.from({ length: 10 }, () => `${name}(x)`).join(' + ');

export const choiceProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'choose/none-fits',
    meaning: 'No row of a table meets every condition of a choice, or the row that is taken does not exist.',
    example: [...motors, ...block('choose motor from motors', 'P_rated >= 8 kW', 'least price')],
    cure: [...motors, ...block('choose motor from motors', 'P_rated >= 3 kW', 'least price')]
  }),
  raised({
    code: 'choose/ranking-moved',
    meaning: 'The row that is taken is no longer the one that the conditions and the preference would give.',
    severity: 'note',
    example: [...motors, ...block('choose motor from motors', 'P_rated >= 1 kW', 'least price', 'take "B"')],
    cure: [...motors, ...block('choose motor from motors', 'P_rated >= 3 kW', 'least price', 'take "B"')]
  })
]; // prettier-ignore

export const partProblems: readonly CatalogueEntry[] = [
  later(
    'parts/no-check',
    'A part carries nothing that is written down, so no change can reach it.'
  ),
  later('parts/no-rating', 'A part carries a load, and what it may carry is not known yet.'),
  later('parts/gave-way', 'A part gave way, and its rating stands until it is replaced.'),
  later('limits/no-case', 'A limit is judged by a load case that the sheet does not have.')
];

export const tableProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'table/cell',
    meaning: 'A cell of a column of numbers holds something else, or is empty where a value is needed.',
    example: block('table motors', 'name, P_rated [kW]', 'A, 1.1', 'B, large'),
    cure: block('table motors', 'name, P_rated [kW]', 'A, 1.1', 'B, 5.5')
  }),
  raised({
    code: 'table/not-ascending',
    meaning: 'A table is interpolated over a column that does not rise from row to row.',
    example: [...pump('0, 6', '20, 4', '10, 5'), ...block('calc', 'p_work = interp(12 L/min, pump.Q, pump.p)')],
    cure: [...pump('0, 6', '10, 5', '20, 4'), ...block('calc', 'p_work = interp(12 L/min, pump.Q, pump.p)')]
  }),
  raised({
    code: 'table/outside-range',
    meaning: 'A table is interpolated beyond its first or last row.',
    example: [...pump('0, 6', '10, 5', '20, 4'), ...block('calc', 'p_work = interp(25 L/min, pump.Q, pump.p)')],
    cure: [...pump('0, 6', '10, 5', '30, 2'), ...block('calc', 'p_work = interp(25 L/min, pump.Q, pump.p)')]
  })
]; // prettier-ignore

export const sheetProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'sheet/budget',
    meaning: 'A definition asks for more work than a sheet may.',
    example: block(
      'calc', `a(x) = ${Array.from({ length: 10 }, () => 'x').join(' + ')}`, `b(x) = ${tenTimes('a')}`,
      `c(x) = ${tenTimes('b')}`, `d(x) = ${tenTimes('c')}`, `f(x) = ${tenTimes('d')}`, 'y = f(3)'
    ),
    cure: block('calc', 'y = 100000 * 3')
  }),
  raised({
    code: 'sheet/not-computed-yet',
    meaning: 'A kind of block is shown as it stands, because this release does not compute it yet.',
    severity: 'note',
    example: [...block('calc', 'P = 5 kW'), ...block('drivers', 'of P')],
    cure: block('calc', 'P = 5 kW')
  })
]; // prettier-ignore
