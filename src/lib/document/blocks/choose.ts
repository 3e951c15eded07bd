// `choose NAME from TABLE`: conditions on columns, derived columns, preferences, and the row that was
// taken. Text in double quotes stands only here.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import {
  sliceCut, spanOf, topLevelMarks, trimCut, type Cut
} from '#lib/text/index.ts'; // prettier-ignore
import { refuseRevisions, type EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { Entry, PreferenceEntry } from '../types.ts';
import {
  afterWord, brokenEntry, fieldsOf, isDottedName, missingAfter, misfit, notAName, notUnderstood,
  readFormula, readRevisions, splitAssignment, splitAtWord
} from './entry.ts'; // prettier-ignore

export const chooseForms: readonly string[] = [
  'condition, as in P_rated >= P_need', 'column is "text"', 'name = expression [to unit]',
  'least column [weight 3]', 'most column [weight 3]', 'take "ROW"'
]; // prettier-ignore

type Preference = Pick<PreferenceEntry, 'sense' | 'column' | 'weight'>;

const signs: ReadonlySet<string> = new Set(['<', '<=', '>', '>=', '==', '!=']);
const logic: ReadonlySet<string> = new Set(['and', 'or', 'not']);

export function readChoose(entry: EntryText): Entry {
  const { head } = entry;
  const problems: Problem[] = [];
  const row = afterWord(head, 'take');
  if (row && (row.text === '' || row.text.startsWith('"'))) {
    const read = (body: Cut): Cut => readQuoted(afterWord(body, 'take') ?? body, problems);
    return {
      kind: 'take',
      row: read(row),
      revisions: readRevisions(entry, read),
      ...fieldsOf(entry, problems)
    };
  }
  const preference = readPreference(head, problems);
  if (preference) {
    const read = (body: Cut): Preference => {
      const revised = readPreference(body, problems);
      if (!revised) problems.push(misfit(body, 'choose', chooseForms.slice(3, 5)));
      return revised ?? { ...preference, column: body };
    };
    return {
      kind: 'preference',
      ...preference,
      revisions: readRevisions(entry, read),
      ...fieldsOf(entry, problems)
    };
  }
  const is = splitAtWord(head, 'is');
  if (is && isDottedName(is[0].text)) {
    const words = readQuoted(is[1], problems).text;
    problems.push(...refuseRevisions(entry, 'A condition on text'));
    return { kind: 'text-condition', column: is[0], words, ...fieldsOf(entry, problems) };
  }
  const assignment = splitAssignment(head);
  if (assignment) {
    const { left: name, right } = assignment;
    if (name.text === '') return notUnderstood(entry, 'choose', chooseForms);
    if (!checkName(name, problems)) return brokenEntry(entry, ...problems);
    const revisions = readRevisions(entry, readFormula);
    return {
      kind: 'calculation',
      name,
      base: readFormula(right),
      revisions,
      ...fieldsOf(entry, problems)
    };
  }
  if (!isCondition(head)) return notUnderstood(entry, 'choose', chooseForms);
  return {
    kind: 'condition',
    base: head,
    revisions: readRevisions(entry, trimCut),
    ...fieldsOf(entry, problems)
  };
}

function readPreference(cut: Cut, problems: Problem[]): Preference | null {
  const least = afterWord(cut, 'least');
  const rest = least ?? afterWord(cut, 'most');
  if (!rest || splitAssignment(cut)) return null;
  const split = splitAtWord(rest, 'weight');
  const [column, weight] = split ?? [rest, null];
  const form = 'least column [weight 3]';
  if (column.text === '') problems.push(missingAfter(column, cut.text, 'a column', form));
  else if (!isDottedName(column.text)) problems.push(notAName(column));
  if (weight?.text === '') problems.push(missingAfter(weight, column.text, 'the weight', form));
  return { sense: least ? 'least' : 'most', column, weight };
}

// The text between double quotes; what is not quoted is told and taken as it stands.
function readQuoted(cut: Cut, problems: Problem[]): Cut {
  const { text } = cut;
  if (text.length > 2 && text.startsWith('"') && text.indexOf('"', 1) === text.length - 1) {
    return sliceCut(cut, 1, text.length - 1);
  }
  const words = lineWords.missing('The row or word', 'its text in double quotes', 'take "ROW"');
  problems.push(problem('line/not-understood', spanOf(cut), { ...words, found: text || null }));
  return cut;
}

// A comparison anywhere, brackets included, or words that join conditions.
function isCondition(cut: Cut): boolean {
  if (topLevelMarks(cut.text, logic).some(({ word }) => signs.has(word) || logic.has(word)))
    return true;
  return /[<>≤≥≠]|==|!=/.test(cut.text);
}
