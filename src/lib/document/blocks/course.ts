// `course NAME`: what happens over time. `x' = rate from start`, `until condition`,
// `at most duration`, `when condition: name = expression, …`, `then title`.

import type { Problem } from '#lib/problem/index.ts';
import { sliceCut, trimCut, type Cut } from '#lib/text/index.ts';
import { refuseRevisions, type EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { Entry, LaterEntry } from '../types.ts';
import {
  afterWord, brokenEntry, laterEntry, missingAfter, notUnderstood, readAssignments, splitAssignment, splitAtWord
} from './entry.ts'; // prettier-ignore
import { splitLabel } from './label.ts';

export const courseForms: readonly string[] = [
  "x' = expression from start", 'until condition', 'at most duration',
  'when condition: name = expression, …', 'then title'
]; // prettier-ignore

const single = [
  { words: 'until', form: 'until', part: 'condition' },
  { words: 'at most', form: 'at most', part: 'duration' },
  { words: 'then', form: 'then', part: 'title' }
] as const;

export function readCourse(entry: EntryText): Entry {
  const { head } = entry;
  const problems: Problem[] = refuseRevisions(entry, 'A line of a course');
  const finish = (form: string, parts: LaterEntry['parts']) =>
    laterEntry(entry, form, parts, problems);
  for (const { words, form, part } of single) {
    const rest = afterWord(head, words);
    if (!rest) continue;
    if (rest.text === '')
      problems.push(missingAfter(rest, words, `the ${part}`, `${words} ${part}`));
    return finish(form, { [part]: rest });
  }
  const when = afterWord(head, 'when');
  const split = when ? splitLabel(when) : null;
  if (split) {
    const assignments = readAssignments(split.rest, problems, courseForms[3] ?? '');
    return finish('when', { condition: split.label, ...assignments });
  }
  const derivative = splitAssignment(head);
  if (!derivative || !/['’′]$/.test(derivative.left.text))
    return notUnderstood(entry, 'course', courseForms);
  const name: Cut = trimCut(sliceCut(derivative.left, 0, derivative.left.text.length - 1));
  if (!checkName(name, problems)) return brokenEntry(entry, ...problems);
  const sides = splitAtWord(derivative.right, 'from', 'last');
  const [rate, start] = sides ?? [derivative.right, null];
  if (rate.text === '')
    problems.push(missingAfter(rate, name.text, 'its rate', courseForms[0] ?? ''));
  if (!start || start.text === '') {
    problems.push(
      missingAfter(start ?? rate, name.text, 'from and a value to start from', courseForms[0] ?? '')
    );
  }
  return finish('derivative', start ? { name, rate, start } : { name, rate });
}
