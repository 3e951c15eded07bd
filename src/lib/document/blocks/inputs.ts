// `inputs`: `name = value [to unit] [± tolerance] [within low .. high]`, values not known yet
// (`? unit`), and `correlated a, b 0.9`.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import {
  aroundMark, sliceCut, spanOf, splitAt, splitAtCommas, topLevelMarks, trimCut, type Cut
} from '#lib/text/index.ts'; // prettier-ignore
import { refuseRevisions, type EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { Entry, InputValue } from '../types.ts';
import {
  afterWord, brokenEntry, fieldsOf, isDottedName, missingAfter, notAName, notUnderstood, readFormula,
  readRevisions, splitAssignment
} from './entry.ts'; // prettier-ignore
import { readTolerance } from './tolerance.ts';

export const inputForms: readonly string[] = [
  'name = value [± tolerance] [within low .. high]', 'name = ? unit', 'correlated a, b 0.9'
]; // prettier-ignore

const clauseWords: ReadonlySet<string> = new Set(['within']);

export function readInputs(entry: EntryText): Entry {
  const assignment = splitAssignment(entry.head);
  if (!assignment || assignment.left.text === '') {
    const pair = afterWord(entry.head, 'correlated');
    return pair ? readCorrelation(entry, pair) : notUnderstood(entry, 'inputs', inputForms);
  }
  const { left: name, right } = assignment;
  const problems: Problem[] = [];
  if (!checkName(name, problems)) return brokenEntry(entry, ...problems);
  const read = (value: Cut): InputValue => readInputValue(value, name.text, problems);
  const base = read(right);
  const revisions = readRevisions(entry, read);
  return { kind: 'input', name, base, revisions, ...fieldsOf(entry, problems) };
}

/**
 * Splits the value of an input. `to unit` may stand after the value, or at the end of the line.
 *
 * @param subject  the name it belongs to, for problems
 */
export function readInputValue(cut: Cut, subject: string, problems: Problem[]): InputValue {
  const form = 'name = value [± tolerance] [within low .. high]';
  const marks = topLevelMarks(cut.text, clauseWords).filter(
    ({ word }) => word === '±' || word === 'within'
  );
  const [valuePart = cut, ...clauses] = splitAt(cut, marks);
  const value = readFormula(valuePart);
  let unit = value.unit;
  let tolerance: InputValue['tolerance'] = null;
  let within: InputValue['within'] = null;
  for (const [index, clause] of clauses.entries()) {
    const mark = marks[index];
    const content = readFormula(clause);
    if (content.unit) {
      if (unit) problems.push(twice(content.unit, 'to', subject));
      unit ??= content.unit;
    }
    const range = mark?.word === 'within';
    if (mark && (range ? within : tolerance)) {
      const at = spanOf(cut, mark.from, mark.to);
      problems.push(
        problem('line/not-understood', at, lineWords.twice(subject, mark.word), { subject })
      );
    } else if (range) within = readRange(content.expression, subject, form, problems);
    else if (content.expression.text === '') {
      problems.push(missingAfter(content.expression, subject, 'the amount after ±', form));
    } else tolerance = readTolerance(content.expression, subject, problems);
  }
  const { expression } = value;
  if (expression.text.startsWith('?')) {
    const rest = trimCut(sliceCut(expression, 1));
    return { expression: null, unit: rest.text === '' ? unit : rest, tolerance, within };
  }
  if (expression.text === '') problems.push(missingAfter(expression, subject, 'a value', form));
  const sum = /\+(?:\/-|-)/.exec(expression.text);
  if (sum) {
    const at = spanOf(expression, sum.index, sum.index + sum[0].length);
    const fix = { at, replacement: '±' };
    problems.push(
      problem('line/not-understood', at, lineWords.plusMinus(sum[0]), { subject, fix })
    );
  }
  return { expression, unit, tolerance, within };
}

function readRange(
  cut: Cut,
  subject: string,
  form: string,
  problems: Problem[]
): InputValue['within'] {
  const points = topLevelMarks(cut.text, clauseWords).find(({ word }) => word === '..');
  const [low, high] = points ? aroundMark(cut, points) : [cut, null];
  if (low.text === '' || high === null || high.text === '') {
    problems.push(missingAfter(cut, subject, 'a range low .. high', form));
    return null;
  }
  return { low, high };
}

function readCorrelation(entry: EntryText, pair: Cut): Entry {
  const [first, rest, ...more] = splitAtCommas(pair);
  const space = rest ? rest.text.search(/\s/) : -1;
  if (!first || !rest || space < 0 || more.length > 0)
    return notUnderstood(entry, 'inputs', inputForms);
  const second = sliceCut(rest, 0, space);
  const coefficient = trimCut(sliceCut(rest, space));
  const problems = [first, second].filter(({ text }) => !isDottedName(text)).map(notAName);
  problems.push(...refuseRevisions(entry, 'A correlation'));
  return { kind: 'correlation', first, second, coefficient, ...fieldsOf(entry, problems) };
}

// A second unit: the place is what follows the second `to`.
function twice(cut: Cut, word: string, subject: string): Problem {
  const words = { ...lineWords.twice(subject, word), found: cut.text || null };
  return problem('line/not-understood', spanOf(cut), words, { subject });
}
