// Problems of the form of a line in a block.

import { block, raised, type CatalogueEntry } from './entry.ts';

const twoStages = ['---', 'stages:', '  sketch: First sketch', '  upgrade: Bigger motor', '---'];

export const lineProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'line/not-understood',
    meaning: 'A line has none of the forms that its block knows, or a part of its form is missing.',
    example: block('inputs', 'd_arm is 25 mm'),
    cure: block('inputs', 'd_arm = 25 mm')
  }),
  raised({
    code: 'line/indent',
    meaning: 'A line is indented less than its block begins, a revision is not indented, or a deeper line continues nothing.',
    example: block('calc', '  d_hub = 80 mm', 'd_arm = 25 mm'),
    cure: block('calc', '  d_hub = 80 mm', '  d_arm = 25 mm')
  }),
  raised({
    code: 'line/duplicate-name',
    meaning: 'A name is defined twice; as a note: a parameter or a variable of integrate has the name of something else.',
    example: block('inputs', 'd_arm = 25 mm', 'd_arm = 30 mm'),
    cure: block('inputs', 'd_arm = 25 mm', 'd_hub = 30 mm')
  }),
  raised({
    code: 'line/reserved-name',
    meaning: 'A name is that of a function, of a constant, or of a word that the lines of a block are split at.',
    example: block('inputs', 'min = 3 mm'),
    cure: block('inputs', 'd_min = 3 mm')
  }),
  raised({
    code: 'line/duplicate-label',
    meaning: 'Two limits have the same label.',
    example: block('limits', 'tip speed: 40 m/s <= 80 m/s', 'tip speed: 41 m/s <= 80 m/s'),
    cure: block('limits', 'tip speed: 40 m/s <= 80 m/s', 'tip speed, wet: 41 m/s <= 80 m/s')
  }),
  raised({
    code: 'line/unknown-stage',
    meaning: 'A revision or a reading is for a stage that the sheet does not have.',
    example: [...twoStages, ...block('inputs', 'P_motor = 1.1 kW', '  at uprade: 5.5 kW')],
    cure: [...twoStages, ...block('inputs', 'P_motor = 1.1 kW', '  at upgrade: 5.5 kW')]
  }),
  raised({
    code: 'line/revision-without-base',
    meaning: 'A revision stands under no line that it could revise.',
    example: [...twoStages, ...block('inputs', '# motor', '  at upgrade: 5.5 kW')],
    cure: [...twoStages, ...block('inputs', '# motor', 'P_motor = 1.1 kW', '  at upgrade: 5.5 kW')]
  }),
  raised({
    code: 'line/column-count',
    meaning: 'A row of a table has more or fewer cells than the header has columns.',
    example: block('table motors', 'name, P_rated [kW]', 'A, 1.1, 24', 'B, 5.5'),
    cure: block('table motors', 'name, P_rated [kW]', 'A, 1.1', 'B, 5.5')
  }),
  raised({
    code: 'line/no-comparison',
    meaning: 'A limit compares nothing, or in a way that cannot be judged.',
    example: block('limits', 'tip speed: 40 m/s < 80 m/s'),
    cure: block('limits', 'tip speed: 40 m/s <= 80 m/s')
  })
]; // prettier-ignore
