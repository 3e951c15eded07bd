// Problems of a file as a whole: front matter, stages, fences, size, and the tables beside it.

import { block, raised, type CatalogueEntry } from './entry.ts';

const twoStages = ['---', 'stages:', '  sketch: First sketch', '  upgrade: Bigger motor', '---'];

export const fileProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'file/front-matter',
    meaning: 'A key of the front matter has a value that it cannot have, or the front matter is not YAML.',
    example: ['---', 'title: Spray rig', 'digits: many', '---'],
    cure: ['---', 'title: Spray rig', 'digits: 4', '---']
  }),
  raised({
    code: 'file/stage-unknown',
    meaning: 'A stage starts from one that the sheet does not have.',
    example: [
      '---', 'stages:', '  sketch: First sketch', '  faired: { title: Faired arms, after: first-run }', '---'
    ],
    cure: [
      '---', 'stages:', '  sketch: First sketch', '  faired: { title: Faired arms, after: sketch }', '---'
    ]
  }),
  raised({
    code: 'file/stage-circle',
    meaning: 'Stages start from each other, so none of them comes first.',
    example: [
      '---', 'stages:', '  sketch: { title: First sketch, after: upgrade }',
      '  upgrade: { title: Bigger motor, after: sketch }', '---'
    ],
    cure: twoStages
  }),
  raised({
    code: 'file/block-not-closed',
    meaning: 'A fenced block has no closing fence.',
    example: ['```inputs', 'd_arm = 25 mm', '', 'The arms are tubes.'],
    cure: [...block('inputs', 'd_arm = 25 mm'), '', 'The arms are tubes.']
  }),
  raised({
    code: 'file/kind-near',
    meaning: 'A fenced block has a kind that is nearly one of ours, and is therefore shown as a listing.',
    severity: 'note',
    example: block('input', 'd_arm = 25 mm'),
    cure: block('inputs', 'd_arm = 25 mm')
  }),
  raised({
    code: 'file/too-long',
    meaning: 'A line of a block, or the file, is longer than what is read.',
    example: block('calc', `total = 1${' + 1'.repeat(600)}`),
    cure: block('calc', 'total = 601'),
    inWords: {
      example: 'A calc line `total = 1 + 1 + 1 …` of more than 2000 characters.',
      cure: 'The sum in parts with names of their own, or the formula on several indented lines.'
    }
  }),
  raised({
    code: 'file/table-missing',
    meaning: 'A table is to be read from a file that is not there.',
    example: block('table motors from tables/motors.csv'),
    cure: block('table motors', 'name, P_rated [kW]', 'A, 1.1', 'B, 5.5')
  }),
  raised({
    code: 'file/table-outside',
    meaning: 'The path of a table leads out of the folder of the sheet.',
    example: block('table motors from ../motors.csv'),
    cure: block('table motors from motors.csv'),
    files: { 'motors.csv': 'name, P_rated [kW]\nA, 1.1\nB, 5.5\n' }
  })
]; // prettier-ignore
