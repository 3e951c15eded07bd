// `parts`: `label [tags] [: carries expression]`, and under it, in any order and number of lines,
// `rating name = value` or `rating ?`, `mass …`, `cost …`, `time …`, `from words`. A revision revises
// any of them.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { cutOf, spanOf, splitAtCommas, type Cut } from '#lib/text/index.ts';
import type { EntryText } from '../entries.ts';
import { checkName } from '../head.ts';
import type { Entry, LaterEntry } from '../types.ts';
import {
  afterWord,
  brokenEntry,
  laterEntry,
  misfit,
  missingAfter,
  splitAssignment
} from './entry.ts';
import { readTags, splitLabel } from './label.ts';

export const partForms: readonly string[] = [
  'label [tags]: carries expression', 'rating name = value', 'rating ?', 'mass …, cost …, time …, from words'
]; // prettier-ignore

const amounts = ['mass', 'cost', 'time', 'from'] as const;

type Parts = LaterEntry['parts'];

export function readParts(entry: EntryText): Entry {
  const [head = cutOf(''), ...lines] = entry.lines;
  const problems: Problem[] = [];
  const split = splitLabel(head);
  const { label, tags } = readTags(split ? split.label : head, problems);
  if (label.text === '') return brokenEntry(entry, misfit(head, 'parts', partForms));
  const parts: Record<string, Cut | readonly Cut[]> = { label, worstOf: tags.worstOf };
  if (tags.safety) parts['safety'] = label;
  if (split) {
    const carried = afterWord(split.rest, 'carries');
    if (carried && carried.text !== '') parts['carries'] = carried;
    else if (carried)
      problems.push(
        missingAfter(carried, label.text, 'what it carries', 'label: carries expression')
      );
    else problems.push(misfit(split.rest.text === '' ? head : split.rest, 'parts', partForms));
  }
  readItems(lines, parts, problems);
  const revisions = entry.revisions.map((revision) => {
    const value: Record<string, Cut | readonly Cut[]> = {};
    const [first, ...others] = revision.lines;
    const carried = first ? afterWord(first, 'carries') : null;
    if (carried) value['carries'] = carried;
    readItems(carried ? others : revision.lines, value, problems);
    if (Object.keys(value).length === 0) {
      problems.push(
        missingAfter(revision.body, label.text, 'what is revised', 'at STAGE: rating name = value')
      );
    }
    return { stage: revision.stage, value, comment: revision.comment };
  });
  return laterEntry(entry, 'part', parts, problems, revisions);
}

// `rating name = value, mass 0.6 kg, from shelf`, on one line or several.
function readItems(
  lines: readonly Cut[],
  parts: Record<string, Parts[string]>,
  problems: Problem[]
): void {
  for (const item of lines.flatMap(splitAtCommas)) {
    const rating = afterWord(item, 'rating');
    if (rating) {
      refuseSecond(parts, 'rating', item, problems);
      const assignment = splitAssignment(rating);
      if (rating.text.startsWith('?')) parts['rating'] = rating;
      else if (!assignment || assignment.right.text === '') {
        problems.push(
          missingAfter(rating, 'The rating', 'a name and a value', 'rating name = value')
        );
      } else {
        checkName(assignment.left, problems);
        parts['name'] = assignment.left;
        parts['rating'] = assignment.right;
      }
      continue;
    }
    const word = amounts.find((each) => afterWord(item, each) !== null);
    const amount = word ? afterWord(item, word) : null;
    if (!word || !amount) problems.push(misfit(item, 'parts', partForms));
    else if (amount.text === '')
      problems.push(missingAfter(amount, word, 'a value', `${word} value`));
    else {
      refuseSecond(parts, word, item, problems);
      parts[word] = amount;
    }
  }
}

function refuseSecond(parts: Parts, word: string, item: Cut, problems: Problem[]): void {
  if (!Object.hasOwn(parts, word)) return;
  problems.push(
    problem('line/not-understood', spanOf(item, 0, word.length), lineWords.twice('The part', word))
  );
}
