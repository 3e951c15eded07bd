// `solve`: `name = unknown where left == right [between low and high]`, with `every root` on the line
// after it; as a system, lines `unknown x from 1` and `a == b`.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import {
  aroundMark, sliceCut, spanOf, topLevelMarks, trimCut, type Cut
} from '#lib/text/index.ts'; // prettier-ignore
import { refuseRevisions, type EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { BlockHead, Entry, Placed, SolveEntry } from '../types.ts';
import {
  afterWord, brokenEntry, fieldsOf, isDottedName, missingAfter, notAName, notUnderstood,
  splitAssignment, splitAtWord
} from './entry.ts'; // prettier-ignore

export const solveForms: readonly string[] = [
  'name = unknown where left == right [between low and high]', 'every root',
  'unknown x from 1', 'a == b'
]; // prettier-ignore

const everyRoot = /^every\s+root\s*$/;
const noWords: ReadonlySet<string> = new Set();

/** A line `every root` belongs to the solve above it, indented or not. */
export function attachesToSolve(line: string): boolean {
  return everyRoot.test(line.split(/\s#(?:\s|$)/, 1)[0] ?? '');
}

export function readSolve(entry: EntryText): Entry {
  const lines = entry.lines.filter(({ text }) => !everyRoot.test(text));
  const isEveryRoot = lines.length < entry.lines.length;
  const head = isEveryRoot ? headWithoutRoots(entry, lines) : entry.head;
  if (head === null) return notUnderstood(entry, 'solve', solveForms);
  const unknown = afterWord(head, 'unknown');
  const unread = isEveryRoot ? notUnderstood(entry, 'solve', solveForms) : null;
  if (unknown && !splitAssignment(head))
    return unread ?? readUnknown(entry, unknown, 'solve', solveForms);
  const where = splitAtWord(head, 'where');
  if (where) return readWhere(entry, where[0], where[1], isEveryRoot);
  return unread ?? readEquation(entry);
}

function headWithoutRoots(entry: EntryText, lines: readonly Cut[]): Cut | null {
  const first = lines[0];
  if (!first) return null;
  const last = lines.at(-1) ?? first;
  // `every root` stands last, so the head without it is the beginning of the head.
  const length = lines.reduce((sum, line) => sum + line.text.length, lines.length - 1);
  const head = sliceCut(entry.head, 0, length);
  return head.text.endsWith(last.text) ? head : null;
}

/** `unknown name from start`, in solve and fit. */
export function readUnknown(
  entry: EntryText,
  rest: Cut,
  block: 'solve' | 'fit',
  forms: readonly string[]
): Entry {
  const split = splitAtWord(rest, 'from');
  if (!split) return notUnderstood(entry, block, forms);
  const [name, start] = split;
  const problems: Problem[] = [];
  if (!checkName(name, problems)) return brokenEntry(entry, ...problems);
  if (start.text === '')
    problems.push(missingAfter(start, name.text, 'a value to start from', 'unknown x from 1'));
  problems.push(...refuseRevisions(entry, 'An unknown'));
  return { kind: 'unknown', name, start, ...fieldsOf(entry, problems) };
}

/** The sides of the one `==` of a cut; a single `=` is told with its cure. */
export function readSides(
  cut: Cut,
  subject: string,
  problems: Problem[]
): { left: Cut; right: Cut } | null {
  const signs = topLevelMarks(cut.text, noWords).filter(
    ({ word }) => word === '==' || word === '='
  );
  const [sign, more] = signs;
  if (!sign) return null;
  const [left, right] = aroundMark(cut, sign);
  const form = 'left == right';
  if (more) {
    const at = spanOf(cut, more.from, more.to);
    problems.push(
      problem('line/not-understood', at, lineWords.twice(subject, more.word), { subject })
    );
  } else if (sign.word === '=') {
    const at = spanOf(cut, sign.from, sign.to);
    const fix = { at, replacement: '==' };
    problems.push(
      problem('line/not-understood', at, lineWords.singleEquals(subject), { subject, fix })
    );
  }
  if (left.text === '') problems.push(missingAfter(left, subject, 'the left side', form));
  if (right.text === '') problems.push(missingAfter(right, subject, 'the right side', form));
  return { left, right };
}

function readWhere(entry: EntryText, definition: Cut, rest: Cut, isEveryRoot: boolean): Entry {
  const assignment = splitAssignment(definition);
  if (!assignment) return notUnderstood(entry, 'solve', solveForms);
  const { left: name, right: unknown } = assignment;
  const problems: Problem[] = [];
  if (!checkName(name, problems)) return brokenEntry(entry, ...problems);
  const form = solveForms[0] ?? '';
  if (unknown.text === '')
    problems.push(missingAfter(unknown, name.text, 'the name to solve for', form));
  else if (!isDottedName(unknown.text)) problems.push(notAName(unknown));
  let condition = rest;
  let between: SolveEntry['between'] = null;
  const range = splitAtWord(rest, 'between', 'last');
  if (range) {
    condition = range[0];
    const ends = splitAtWord(range[1], 'and', 'last');
    if (ends && ends[0].text !== '' && ends[1].text !== '')
      between = { low: ends[0], high: ends[1] };
    else problems.push(missingAfter(range[1], name.text, 'a range low and high', form));
  }
  const sides = readSides(condition, name.text, problems);
  if (!sides) problems.push(missingAfter(condition, name.text, '== and a right side', form));
  problems.push(...refuseRevisions(entry, 'A line of solve'));
  const { left, right } = sides ?? {
    left: condition,
    right: trimCut(sliceCut(condition, condition.text.length))
  };
  return {
    kind: 'solve', name, unknown, left, right, between, everyRoot: isEveryRoot,
    ...fieldsOf(entry, problems)
  }; // prettier-ignore
}

function readEquation(entry: EntryText): Entry {
  const isEquation = topLevelMarks(entry.head.text, noWords).some(({ word }) => word === '==');
  if (!isEquation) return notUnderstood(entry, 'solve', solveForms);
  const problems: Problem[] = [];
  const sides = readSides(entry.head, 'The equation', problems);
  if (!sides) return notUnderstood(entry, 'solve', solveForms);
  problems.push(...refuseRevisions(entry, 'An equation'));
  return { kind: 'equation', ...sides, ...fieldsOf(entry, problems) };
}

/** A system needs a name; a block of single solves has a title at most. */
export function finishSolve(
  head: BlockHead,
  entries: readonly Placed<Entry>[],
  kind: Cut,
  problems: Problem[]
): BlockHead {
  const isSystem = entries.some(
    ({ entry }) => entry.kind === 'unknown' || entry.kind === 'equation'
  );
  if (!isSystem) return { ...head, name: null };
  if (head.name === null) {
    const words = lineWords.headMissing(
      'solve',
      'a name for its system of equations',
      'solve NAME'
    );
    problems.push(problem('line/not-understood', spanOf(kind), words));
  } else if (!checkName(head.name, problems)) return { ...head, name: null };
  return head;
}
