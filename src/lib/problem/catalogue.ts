// The catalogue of problems: for every code of `codes.ts` what it means, an example and a cure. The
// page docs/problems.md is made from it, and tests hold the engine to it.

import { angleProblems } from './catalogue/angle.ts';
import type { CatalogueEntry } from './catalogue/entry.ts';
import { fileProblems } from './catalogue/file.ts';
import { lineProblems } from './catalogue/line.ts';
import { methodProblems } from './catalogue/method.ts';
import { nameProblems } from './catalogue/names.ts';
import { syntaxProblems } from './catalogue/syntax.ts';
import { choiceProblems, partProblems, sheetProblems, tableProblems } from './catalogue/table.ts';
import { temperatureProblems } from './catalogue/temperature.ts';
import { unitProblems } from './catalogue/units.ts';
import { valueProblems } from './catalogue/value.ts';

export type { CatalogueEntry, LaterProblem, RaisedProblem } from './catalogue/entry.ts';

/** One row for each code, in the order of `problemCodes`. */
export const catalogue: readonly CatalogueEntry[] = [
  ...fileProblems,
  ...lineProblems,
  ...syntaxProblems,
  ...nameProblems,
  ...unitProblems,
  ...angleProblems,
  ...temperatureProblems,
  ...valueProblems,
  ...methodProblems,
  ...choiceProblems,
  ...partProblems,
  ...tableProblems,
  ...sheetProblems
];

/** What the part of a code before the stroke stands for, as a heading. */
export const areaTitles: Readonly<Record<string, string>> = {
  file: 'The file',
  line: 'Lines',
  syntax: 'Form of an expression',
  names: 'Names',
  units: 'Units and dimensions',
  angle: 'Plane angle',
  temperature: 'Temperature',
  value: 'Values and tolerances',
  solve: 'Solving',
  integral: 'Integrals',
  course: 'Courses over time',
  fit: 'Fits to readings',
  choose: 'Choices from a table',
  parts: 'Parts',
  limits: 'Limits',
  table: 'Tables',
  sheet: 'The sheet as a whole'
};
