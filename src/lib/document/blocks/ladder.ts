// `ladder`: `over name [from low to high]`, at which value of an input each limit gives out.

import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry } from '../types.ts';
import { readAxis } from './axis.ts';
import { afterWord, laterEntry, notUnderstood } from './entry.ts';

export const ladderForms: readonly string[] = ['over name [from low to high]'];

export function readLadder(entry: EntryText): Entry {
  const over = afterWord(entry.head, 'over');
  if (!over) return notUnderstood(entry, 'ladder', ladderForms);
  const problems = refuseRevisions(entry, 'A ladder');
  const { name, range } = readAxis(over, problems);
  return laterEntry(
    entry,
    'ladder',
    range ? { name, low: range[0], high: range[1] } : { name },
    problems
  );
}
