// `ask`: prose, then `answer expression ± band`, on the last line that starts with `answer`.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import {
  cutOf,
  lineText,
  spanOf,
  topLevelMarks,
  aroundMark,
  trimCut,
  type Cut,
  type Lines
} from '#lib/text/index.ts';
import { longestLine, readEntryText } from '../entries.ts';
import type { Entry, LaterEntry, Placed } from '../types.ts';
import { afterWord, laterEntry, missingAfter } from './entry.ts';

export const askForms: readonly string[] = ['answer expression ± band'];

export function readAsk(
  lines: Lines,
  from: number,
  to: number,
  kind: Cut,
  problems: Problem[]
): Placed<Entry>[] {
  for (let i = to - 1; i >= from; i--) {
    const text = lineText(lines, i);
    if (text.length > longestLine) continue;
    const answer = afterWord(trimCut(cutOf(text)), 'answer');
    if (answer) return [{ line: i, entry: readAnswer(text) }];
  }
  const words = lineWords.headMissing('ask', 'a line with the answer', askForms[0] ?? '');
  problems.push(problem('line/not-understood', spanOf(kind), words));
  return [];
}

function readAnswer(text: string): LaterEntry {
  const entry = readEntryText(text);
  const answer = afterWord(entry.head, 'answer') ?? entry.head;
  const sign = topLevelMarks(answer.text).find(({ word }) => word === '±');
  const [expression, band] = sign ? aroundMark(answer, sign) : [answer, null];
  const form = askForms[0] ?? '';
  const problems: Problem[] = [];
  if (expression.text === '')
    problems.push(missingAfter(expression, 'answer', 'an expression', form));
  if (!band || band.text === '') {
    problems.push(
      missingAfter(band ?? expression, 'answer', '± and the band that is still right', form)
    );
  }
  return laterEntry(entry, 'answer', band ? { expression, band } : { expression }, problems);
}
