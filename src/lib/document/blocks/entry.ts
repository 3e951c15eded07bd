// What every kind of block needs to make entries of lines: their common fields, names, assignments,
// formulas with their unit, and the two ways in which a line is refused.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import {
  aroundMark, isName, sliceCut, spanOf, splitAt, splitAtCommas, topLevelMarks, trimCut, type Cut, type Mark
} from '#lib/text/index.ts'; // prettier-ignore
import type { EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { BlockKind, BrokenEntry, Formula, LaterEntry, Revision } from '../types.ts';

/** The fields that every entry has. */
export function fieldsOf(entry: EntryText, problems: readonly Problem[]) {
  const { text, lineCount, comment } = entry;
  return { text, lineCount, comment, problems };
}

/** An entry that is kept and not read. */
export function brokenEntry(entry: EntryText, ...problems: readonly Problem[]): BrokenEntry {
  return { kind: 'broken', ...fieldsOf(entry, problems) };
}

/** A line that fits none of the forms of its kind. */
export function notUnderstood(
  entry: EntryText,
  block: BlockKind,
  forms: readonly string[]
): BrokenEntry {
  return brokenEntry(entry, misfit(entry.head, block, forms));
}

/** The problem of a text that fits none of the forms of its kind; its place is the first line. */
export function misfit(cut: Cut, block: BlockKind, forms: readonly string[]): Problem {
  const line = firstLine(cut);
  return problem(
    'line/not-understood',
    spanOf(line),
    lineWords.notUnderstood(line.text, block, forms)
  );
}

/** The problem of a part that is missing at the end of a cut. */
export function missingAfter(cut: Cut, subject: string, part: string, form: string): Problem {
  const end = cut.text.length;
  const words = lineWords.missing(subject, part, form);
  return problem('line/not-understood', spanOf(cut, end, end), words, { subject });
}

/** A cut up to the end of its first line. */
export function firstLine(cut: Cut): Cut {
  const end = cut.text.indexOf('\n');
  return end < 0 ? cut : trimCut(sliceCut(cut, 0, end));
}

/** An entry of a kind that is computed later, or of a form that only names things. */
export function laterEntry(
  entry: EntryText,
  form: string,
  parts: LaterEntry['parts'],
  problems: readonly Problem[] = [],
  revisions: LaterEntry['revisions'] = []
): LaterEntry {
  return { kind: 'later', form, parts, revisions, ...fieldsOf(entry, problems) };
}

/** Splits at the first top-level `=`; null where there is none. */
export function splitAssignment(cut: Cut): { left: Cut; right: Cut; sign: Mark } | null {
  const sign = plainAssignment(cut.text) ?? topLevelMarks(cut.text, noWords).find(isEquals);
  if (!sign) return null;
  const [left, right] = aroundMark(cut, sign);
  return { left, right, sign };
}

// The `=` of `name = …`, by far the most common line, without reading what follows it.
function plainAssignment(text: string): Mark | null {
  const from = text.indexOf('=');
  if (from < 0 || text.charAt(from + 1) === '=' || /[^\w ]/.test(text.slice(0, from))) return null;
  return { word: '=', from, to: from + 1 };
}

function isEquals({ word }: Mark): boolean {
  return word === '=';
}

/** An expression and the unit after its last top-level `to`. */
export function readFormula(cut: Cut): Formula {
  if (!cut.text.includes('to')) return { expression: trimCut(cut), unit: null };
  const last = topLevelMarks(cut.text, onlyTo).findLast((mark) => mark.word === 'to');
  if (!last) return { expression: trimCut(cut), unit: null };
  const [expression, unit] = aroundMark(cut, last);
  return { expression, unit };
}

/** The revisions of an entry, each body read by `read`. */
export function readRevisions<T>(entry: EntryText, read: (body: Cut) => T): Revision<T>[] {
  return entry.revisions.map(({ stage, body, comment }) => ({ stage, value: read(body), comment }));
}

/** A list `name = expression, …`, or null with its problem where a part is none. */
export function readAssignments(
  list: Cut,
  problems: Problem[],
  form: string
): { targets: Cut[]; values: Cut[] } {
  const targets: Cut[] = [];
  const values: Cut[] = [];
  if (list.text === '') problems.push(missingAfter(list, 'The list', 'name = expression', form));
  for (const part of splitAtCommas(list)) {
    const assignment = splitAssignment(part);
    if (!assignment || assignment.right.text === '') {
      problems.push(missingAfter(part, firstLine(part).text || 'The list', assignment ? 'a value' : '= and a value', form)); // prettier-ignore
      continue;
    }
    if (!isDottedName(assignment.left.text)) checkName(assignment.left, problems);
    targets.push(assignment.left);
    values.push(assignment.right);
  }
  return { targets, values };
}

/** A list of names between commas; adds a problem for each part that is none. */
export function readNames(list: Cut, problems: Problem[], form: string): Cut[] {
  const names = splitAtCommas(list);
  if (names.length === 0) problems.push(missingAfter(list, 'The list', 'a name', form));
  for (const name of names) {
    if (name.text === '') problems.push(missingAfter(name, 'The list', 'a name', form));
    else if (!isDottedName(name.text)) problems.push(notAName(name));
  }
  return names;
}

/** The problem of a text where a name was expected. */
export function notAName(cut: Cut): Problem {
  return problem('line/not-understood', spanOf(cut), lineWords.notAName(cut.text));
}

/** A name, or names joined by points, as `run1_fit.k_air`. */
export function isDottedName(text: string): boolean {
  return text.split('.').every(isName);
}

/** Splits at the first (or last) mark with this word; null where there is none. */
export function splitAtWord(
  cut: Cut,
  word: string,
  which: 'first' | 'last' = 'first'
): [Cut, Cut] | null {
  const marks = topLevelMarks(cut.text, new Set([word])).filter((mark) => mark.word === word);
  const mark = which === 'first' ? marks[0] : marks.at(-1);
  return mark ? aroundMark(cut, mark) : null;
}

/** What follows a word (or words) that a cut begins with, or null where it begins otherwise. */
export function afterWord(cut: Cut, words: string): Cut | null {
  if (!cut.text.startsWith(words)) return null;
  const next = cut.text.charAt(words.length);
  return next === '' || /\s/.test(next) ? trimCut(sliceCut(cut, words.length)) : null;
}

/** The parts of a cut between the top-level marks of one sign, trimmed. */
export function splitAtSign(cut: Cut, sign: string): Cut[] {
  return splitAt(cut, topLevelMarks(cut.text, noWords).filter((mark) => mark.word === sign)); // prettier-ignore
}

const noWords: ReadonlySet<string> = new Set();
const onlyTo: ReadonlySet<string> = new Set(['to']);
