// `plan NAME`: a run card. `steps v_tip = 20, 30, 40 m/s`, `expect P, I [from FIT]`, `stop above …`,
// `stop below …`.

import type { Problem } from '#lib/problem/index.ts';
import { splitAtCommas } from '#lib/text/index.ts';
import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry } from '../types.ts';
import {
  afterWord, isDottedName, laterEntry, missingAfter, notAName, notUnderstood, readNames, splitAssignment, splitAtWord
} from './entry.ts'; // prettier-ignore

export const planForms: readonly string[] = [
  'steps name = value, …', 'expect name, … [from FIT]', 'stop above …', 'stop below …'
]; // prettier-ignore

export function readPlan(entry: EntryText): Entry {
  const { head } = entry;
  const problems: Problem[] = refuseRevisions(entry, 'A line of a plan');
  const steps = afterWord(head, 'steps');
  const assignment = steps ? splitAssignment(steps) : null;
  if (assignment) {
    const { left: name, right } = assignment;
    const values = splitAtCommas(right);
    if (!isDottedName(name.text)) problems.push(notAName(name));
    const empty = values.length === 0 ? right : values.find(({ text }) => text === '');
    if (empty) problems.push(missingAfter(empty, 'steps', 'a value', planForms[0] ?? ''));
    return laterEntry(entry, 'steps', { name, values }, problems);
  }
  const expect = afterWord(head, 'expect');
  if (expect) {
    const split = splitAtWord(expect, 'from', 'last');
    const names = readNames(split ? split[0] : expect, problems, planForms[1] ?? '');
    if (split && !isDottedName(split[1].text)) problems.push(notAName(split[1]));
    return laterEntry(entry, 'expect', split ? { names, from: split[1] } : { names }, problems);
  }
  for (const form of ['stop above', 'stop below']) {
    const what = afterWord(head, form);
    if (!what) continue;
    if (what.text === '')
      problems.push(missingAfter(what, form, 'what stops the run', `${form} …`));
    return laterEntry(entry, form, { what }, problems);
  }
  return notUnderstood(entry, 'plan', planForms);
}
