// Problems of the form of an expression.

import { block, raised, type CatalogueEntry } from './entry.ts';

const deep = `${'('.repeat(51)}1${')'.repeat(51)}`;

export const syntaxProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'syntax/missing-operator',
    meaning: 'Two values stand side by side without an operator.',
    example: block('calc', 'f = 3 Hz', 'omega = 2 pi f'),
    cure: block('calc', 'f = 3 Hz', 'omega = 2 pi * f')
  }),
  raised({
    code: 'syntax/unexpected',
    meaning: 'A sign stands where a value or the end of the expression is expected.',
    example: block('calc', 'area = 3 m *'),
    cure: block('calc', 'area = 3 m * 2 m')
  }),
  raised({
    code: 'syntax/brackets',
    meaning: 'A bracket is not closed, not opened, or holds nothing.',
    example: block('calc', 'area = (3 m + 1 m * 2 m'),
    cure: block('calc', 'area = (3 m + 1 m) * 2 m')
  }),
  raised({
    code: 'syntax/number-form',
    meaning: 'A number is written in a way that could be read as another one.',
    example: block('inputs', 'd_arm = 2,5 mm'),
    cure: block('inputs', 'd_arm = 2.5 mm')
  }),
  raised({
    code: 'syntax/not-in-language',
    meaning: 'Something belongs to another language: lists, texts, factorials, an assignment inside an expression.',
    example: block('calc', 'gap = [3 mm, 5 mm]'),
    cure: block('calc', 'gap = max(3 mm, 5 mm)')
  }),
  raised({
    code: 'syntax/too-deep',
    meaning: 'Brackets stand more than 50 deep, or an expression has more than 500 names, numbers and operators.',
    example: block('calc', `x = ${deep}`),
    cure: block('calc', 'x = 1')
  })
]; // prettier-ignore
