// `sweep`: `y1, y2 over x from low to high [in N steps] [log x] [linear y]`, with a second axis
// `, z from low to high` for a contour map, and `mark name`.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { sliceCut, spanOf, splitAtCommas, trimCut, type Cut } from '#lib/text/index.ts';
import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry } from '../types.ts';
import { readAxis } from './axis.ts';
import {
  afterWord,
  laterEntry,
  missingAfter,
  notUnderstood,
  readNames,
  splitAtWord
} from './entry.ts';

export const sweepForms: readonly string[] = [
  'y1, y2 over x from low to high [in N steps] [log x] [linear y]', 'mark name'
]; // prettier-ignore

const scale = /(?:^|\s)(log|linear)\s+([xy])$/;
const steps = /(?:^|\s)in\s+(\S+)\s+steps$/;

export function readSweep(entry: EntryText): Entry {
  const { head } = entry;
  const problems: Problem[] = refuseRevisions(entry, 'A sweep');
  const mark = afterWord(head, 'mark');
  if (mark)
    return laterEntry(entry, 'mark', { names: readNames(mark, problems, 'mark name') }, problems);
  const over = splitAtWord(head, 'over');
  if (!over) return notUnderstood(entry, 'sweep', sweepForms);
  const form = sweepForms[0] ?? '';
  const shown = readNames(over[0], problems, form);
  let rest = over[1];
  const scales: Record<'log' | 'linear', Cut[]> = { log: [], linear: [] };
  for (let match = scale.exec(rest.text); match; match = scale.exec(rest.text)) {
    const axis = sliceCut(rest, rest.text.length - 1);
    scales[match[1] === 'log' ? 'log' : 'linear'].unshift(axis);
    rest = trimCut(sliceCut(rest, 0, match.index));
  }
  const count = steps.exec(rest.text);
  let number: Cut | null = null;
  if (count) {
    const from = rest.text.lastIndexOf(count[1] ?? '', rest.text.length - 'steps'.length - 1);
    number = sliceCut(rest, from, from + (count[1] ?? '').length);
    rest = trimCut(sliceCut(rest, 0, count.index));
    if (!/^[1-9]\d{0,6}$/.test(number.text)) {
      const words = lineWords.notPositive('A number of steps', number.text);
      problems.push(problem('line/not-understood', spanOf(number), words));
    }
  }
  const axes = splitAtCommas(rest).map((each) => readAxis(each, problems));
  if (axes.length === 0) problems.push(missingAfter(rest, 'The sweep', 'an axis', form));
  if (axes.length > 2)
    problems.push(missingAfter(rest, 'The sweep', 'a choice of at most two axes', form));
  for (const { name, range } of axes) {
    if (range === null && problems.length === 0)
      problems.push(missingAfter(name, name.text, 'its range', form));
  }
  const parts = {
    shown, axes: axes.map(({ name }) => name), low: axes.flatMap(({ range }) => range?.[0] ?? []),
    high: axes.flatMap(({ range }) => range?.[1] ?? []), ...scales
  }; // prettier-ignore
  return laterEntry(entry, 'sweep', number ? { ...parts, steps: number } : parts, problems);
}
