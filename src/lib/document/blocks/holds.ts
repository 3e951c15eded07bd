// `holds`: `[ ] text with {values}`, and ticked: `[x] text — NAME, DATE`.

import { lineWords, problem } from '#lib/problem/index.ts';
import { sliceCut, spanOf, trimCut, type Cut } from '#lib/text/index.ts';
import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry } from '../types.ts';
import { firstLine, laterEntry, notUnderstood } from './entry.ts';

export const holdForms: readonly string[] = ['[ ] text', '[x] text — NAME, DATE'];

const box = /^\[([ xX])\](?=\s)/;

export function readHolds(entry: EntryText): Entry {
  const match = box.exec(entry.head.text);
  if (!match) return notUnderstood(entry, 'holds', holdForms);
  const problems = refuseRevisions(entry, 'A hold');
  const text = trimCut(sliceCut(entry.head, match[0].length));
  if (match[1] === ' ') return laterEntry(entry, 'hold', { text }, problems);
  const signed = readSignature(text);
  if (signed) return laterEntry(entry, 'ticked hold', signed, problems);
  const at = spanOf(firstLine(entry.head));
  problems.push(problem('line/not-understood', at, lineWords.tickWithoutName()));
  return laterEntry(entry, 'ticked hold', { text }, problems);
}

// `text — NAME, DATE`: the last dash, then the last comma.
function readSignature(cut: Cut): { text: Cut; by: Cut; date: Cut } | null {
  const dash = Math.max(cut.text.lastIndexOf('—'), cut.text.lastIndexOf('–'));
  if (dash < 0) return null;
  const signed = splitDate(sliceCut(cut, dash + 1));
  return signed && { text: trimCut(sliceCut(cut, 0, dash)), ...signed };
}

/** `NAME, DATE`: the date follows the last comma. */
export function splitDate(cut: Cut): { by: Cut; date: Cut } | null {
  const comma = cut.text.lastIndexOf(',');
  if (comma < 0) return null;
  const by = trimCut(sliceCut(cut, 0, comma));
  const date = trimCut(sliceCut(cut, comma + 1));
  return by.text !== '' && isDate(date.text) ? { by, date } : null;
}

/** Whether a text is year, month and day, as in 2026-03-14. */
export function isDate(text: string): boolean {
  return /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/.test(text);
}
