// `limits`: a label with tags, a colon, and what is judged: `demand <= capacity`,
// `actual >= required`, a range, `x outside a .. b`, or whether two parts fit (`a == b ± t`).
// A comparison that cannot be judged is told, and still split as far as it goes, so that the limit
// stays on the list as one that is not known.

import {
  lineWords,
  problem,
  type Problem,
  type ProblemOptions,
  type Wording
} from '#lib/problem/index.ts';
import {
  aroundMark, sliceCut, spanOf, splitAt, topLevelMarks, trimCut, type Cut, type Mark
} from '#lib/text/index.ts'; // prettier-ignore
import type { EntryText } from '../entries.ts';
import type { Comparison, Entry } from '../types.ts';
import { brokenEntry, fieldsOf, firstLine, notUnderstood, readRevisions } from './entry.ts';
import { readTags, splitLabel } from './label.ts';

export const limitForms: readonly string[] = [
  'label [tags]: demand <= capacity', 'label: actual >= required', 'label: low <= x <= high',
  'label: x outside a .. b', 'label: a == b ± t'
]; // prettier-ignore

const words: ReadonlySet<string> = new Set(['outside']);
const relations: ReadonlySet<string> = new Set(['<=', '>=', '<', '>', '==', '=', '!=', 'outside']);

export function readLimits(entry: EntryText): Entry {
  const split = splitLabel(entry.head);
  if (!split) {
    const isComparison = topLevelMarks(entry.head.text, words).some(({ word }) =>
      relations.has(word)
    );
    if (!isComparison) return notUnderstood(entry, 'limits', limitForms);
    const line = firstLine(entry.head);
    return brokenEntry(
      entry,
      problem('line/not-understood', spanOf(line), lineWords.labelMissing(line.text))
    );
  }
  const problems: Problem[] = [];
  const { label, tags } = readTags(split.label, problems);
  if (label.text === '') {
    const line = firstLine(entry.head);
    return brokenEntry(
      entry,
      problem('line/not-understood', spanOf(line), lineWords.labelMissing(line.text))
    );
  }
  const read = (cut: Cut): Comparison => readComparison(cut, label.text, problems);
  const base = read(split.rest);
  const revisions = readRevisions(entry, read);
  return { kind: 'limit', label, tags, base, revisions, ...fieldsOf(entry, problems) };
}

function readComparison(cut: Cut, label: string, problems: Problem[]): Comparison {
  const report = (
    at: { from: number; to: number },
    wording: Wording,
    options: ProblemOptions = {}
  ): void => {
    const span = spanOf(cut, at.from, at.to);
    problems.push(problem('line/no-comparison', span, wording, { subject: label, ...options }));
  };
  const marks = topLevelMarks(cut.text, words);
  const signs = marks.filter(({ word }) => relations.has(word));
  const whole = { from: 0, to: cut.text.length };
  const kinds = signs.map((mark) => normalSign(cut, mark, label, report));
  const [first, second] = signs;
  const [kind, secondKind] = kinds;
  const unread = (): Comparison => ({
    form: 'demand<=capacity', demand: cut, capacity: sliceCut(cut, cut.text.length)
  }); // prettier-ignore
  if (!first || kind === undefined) {
    report(whole, lineWords.noComparison(label));
    return unread();
  }
  if (kind === null || secondKind === null) return unread();
  if (signs.length > 2) {
    report(whole, lineWords.mixedComparison(label));
    return unread();
  }
  const parts = splitAt(cut, signs);
  const sides = parts.map((part) => (part.text === 'none' ? null : part));
  const empty = parts.find(({ text }) => text === '');
  if (empty) {
    const wording = lineWords.missing(label, 'one side of the comparison', 'demand <= capacity');
    problems.push(problem('line/no-comparison', spanOf(empty), wording, { subject: label }));
    return unread();
  }
  const [left, middle, right] = sides;
  const judged = (side: Cut | null | undefined, at: number): Cut => {
    if (side) return side;
    const part = parts[at] ?? cut;
    problems.push(
      problem('line/no-comparison', spanOf(part), lineWords.noneNotHere(label), { subject: label })
    );
    return part;
  };
  if (second) {
    if (kind !== secondKind || (kind !== '<=' && kind !== '>=')) {
      report(whole, lineWords.mixedComparison(label));
      return unread();
    }
    const [low, high] = kind === '<=' ? [left, right] : [right, left];
    return { form: 'low<=x<=high', low: low ?? null, x: judged(middle, 1), high: high ?? null };
  }
  if (kind === '<=')
    return { form: 'demand<=capacity', demand: judged(left, 0), capacity: middle ?? null };
  if (kind === '>=')
    return { form: 'actual>=required', actual: judged(left, 0), required: middle ?? null };
  if (kind === 'outside') {
    const range = parts[1] ?? cut;
    const points = topLevelMarks(range.text, words).find(({ word }) => word === '..');
    const ends = points ? aroundMark(range, points) : null;
    if (!ends || ends.some(({ text }) => text === '')) {
      const wording = lineWords.missing(label, 'a range a .. b', 'x outside a .. b');
      problems.push(problem('line/no-comparison', spanOf(range), wording, { subject: label }));
      return unread();
    }
    return { form: 'x outside a..b', x: judged(left, 0), low: ends[0], high: ends[1] };
  }
  const band = marks.find(({ word, from }) => word === '±' && from > first.to);
  const b = band ? trimCut(sliceCut(cut, first.to, band.from)) : judged(middle, 1);
  const tolerance = band ? trimCut(sliceCut(cut, band.to)) : null;
  return { form: 'a==b', a: judged(left, 0), b, tolerance };
}

type NormalSign = '<=' | '>=' | '==' | 'outside';

// What a sign is read as: < and > lack their =, a single = its second; != has no reading.
function normalSign(
  cut: Cut,
  mark: Mark,
  label: string,
  report: (at: Mark, wording: Wording, options?: ProblemOptions) => void
): NormalSign | null {
  const fixed = (replacement: string): ProblemOptions => ({
    fix: { at: spanOf(cut, mark.from, mark.to), replacement }
  });
  switch (mark.word) {
    case '<': case '>':
      report(mark, lineWords.strictComparison(label, mark.word), fixed(`${mark.word}=`));
      return `${mark.word}=`;
    case '=':
      report(mark, lineWords.singleEquals(label), fixed('=='));
      return '==';
    case '!=':
      report(mark, lineWords.unequalNotJudged(label));
      return null;
    default:
      return mark.word as '<=' | '>=' | '==' | 'outside';
  } // prettier-ignore
}
