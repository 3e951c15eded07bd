// `cases`: `NAME: name = expression, …`, what a load case sets for the time of a check.

import type { Problem } from '#lib/problem/index.ts';
import type { Cut } from '#lib/text/index.ts';
import type { EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { Entry } from '../types.ts';
import { brokenEntry, laterEntry, notUnderstood, readAssignments, readRevisions } from './entry.ts';
import { splitLabel } from './label.ts';

export const caseForms: readonly string[] = ['NAME: name = expression, …'];

export function readCases(entry: EntryText): Entry {
  const split = splitLabel(entry.head);
  if (!split) return notUnderstood(entry, 'cases', caseForms);
  const problems: Problem[] = [];
  if (!checkName(split.label, problems)) return brokenEntry(entry, ...problems);
  const read = (list: Cut) => readAssignments(list, problems, 'NAME: name = expression, …');
  const parts = { name: split.label, ...read(split.rest) };
  return laterEntry(entry, 'case', parts, problems, readRevisions(entry, read));
}
