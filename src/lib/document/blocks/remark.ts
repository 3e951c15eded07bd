// `remark`: `by: NAME, DATE`, prose, `resolved: NAME, DATE`; it is about the block above.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { cutOf, lineText, spanOf, trimCut, type Cut, type Lines } from '#lib/text/index.ts';
import { longestLine, readEntryText } from '../entries.ts';
import type { Entry, Placed } from '../types.ts';
import { laterEntry, missingAfter } from './entry.ts';
import { splitDate } from './holds.ts';
import { splitLabel } from './label.ts';

export const remarkForms: readonly string[] = ['by: NAME, DATE', 'resolved: NAME, DATE'];

export function readRemark(
  lines: Lines,
  from: number,
  to: number,
  kind: Cut,
  problems: Problem[]
): Placed<Entry>[] {
  const entries: Placed<Entry>[] = [];
  let isSigned = false;
  for (let i = from; i < to; i++) {
    const text = lineText(lines, i);
    if (text.length > longestLine) continue;
    const split = splitLabel(trimCut(cutOf(text)));
    const role = split?.label.text;
    if (!split || (role !== 'by' && role !== 'resolved')) continue;
    if (role === 'by' && isSigned) continue;
    isSigned ||= role === 'by';
    const signed = splitDate(split.rest);
    const missing = missingAfter(
      split.rest,
      role,
      'a name and a date (2026-03-14)',
      `${role}: NAME, DATE`
    );
    const parts = signed ? { name: signed.by, date: signed.date } : {};
    entries.push({
      line: i,
      entry: laterEntry(readEntryText(text), role, parts, signed ? [] : [missing])
    });
  }
  if (!isSigned) {
    const words = lineWords.headMissing('remark', 'its author', 'by: NAME, DATE');
    problems.push(problem('line/not-understood', spanOf(kind), words));
  }
  return entries;
}
