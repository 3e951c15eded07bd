// `calc`: definitions `name = expression [to unit]`, functions `f(x, y) = expression`, and bare
// expressions, which are shown as unnamed results.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { sliceCut, spanOf, splitAtCommas, trimCut, type Cut } from '#lib/text/index.ts';
import type { EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { Entry } from '../types.ts';
import {
  brokenEntry, fieldsOf, missingAfter, notUnderstood, readFormula, readRevisions, splitAssignment
} from './entry.ts'; // prettier-ignore

export const calcForms: readonly string[] = [
  'name = expression [to unit]', 'f(x, y) = expression [to unit]', 'expression [to unit]'
]; // prettier-ignore

export function readCalc(entry: EntryText): Entry {
  const assignment = splitAssignment(entry.head);
  const revisions = readRevisions(entry, readFormula);
  if (!assignment) {
    return { kind: 'bare', base: readFormula(entry.head), revisions, ...fieldsOf(entry, []) };
  }
  const { left, right } = assignment;
  if (left.text === '') return notUnderstood(entry, 'calc', calcForms);
  const problems: Problem[] = [];
  const base = readFormula(right);
  const call = readCall(left, problems);
  if (call) {
    if (problems.length > 0) return brokenEntry(entry, ...problems);
    return { kind: 'function', ...call, base, revisions, ...fieldsOf(entry, []) };
  }
  if (!checkName(left, problems)) return brokenEntry(entry, ...problems);
  return { kind: 'calculation', name: left, base, revisions, ...fieldsOf(entry, []) };
}

// The left side of a function's definition; null where it is no call at all.
function readCall(left: Cut, problems: Problem[]): { name: Cut; parameters: Cut[] } | null {
  const open = left.text.indexOf('(');
  if (open < 1 || !left.text.endsWith(')')) return null;
  const name = trimCut(sliceCut(left, 0, open));
  const inner = sliceCut(left, open + 1, left.text.length - 1);
  const parameters = splitAtCommas(inner);
  checkName(name, problems);
  if (parameters.length === 0) {
    problems.push(missingAfter(inner, name.text, 'a parameter', 'f(x, y) = expression'));
  }
  const seen = new Set<string>();
  for (const parameter of parameters) {
    if (!checkName(parameter, problems)) continue;
    if (seen.has(parameter.text)) {
      const words = lineWords.twice(name.text, parameter.text);
      problems.push(
        problem('line/duplicate-name', spanOf(parameter), words, { subject: name.text })
      );
    }
    seen.add(parameter.text);
  }
  return { name, parameters };
}
