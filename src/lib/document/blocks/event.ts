// `event at STAGE`: `DATE: what happened`, and `part LABEL gave way at v_top = 69 m/s`.

import type { Problem } from '#lib/problem/index.ts';
import { sliceCut, trimCut } from '#lib/text/index.ts';
import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry } from '../types.ts';
import {
  afterWord, isDottedName, laterEntry, missingAfter, notAName, notUnderstood, splitAssignment
} from './entry.ts'; // prettier-ignore
import { isDate } from './holds.ts';
import { splitLabel } from './label.ts';

export const eventForms: readonly string[] = ['DATE: text', 'part LABEL gave way at name = value'];

export function readEvent(entry: EntryText): Entry {
  const { head } = entry;
  const problems: Problem[] = refuseRevisions(entry, 'An event');
  const part = afterWord(head, 'part');
  const words = part ? /\sgave\s+way\s+at\s/.exec(part.text) : null;
  if (part && words) {
    const label = trimCut(sliceCut(part, 0, words.index));
    const rest = trimCut(sliceCut(part, words.index + words[0].length));
    const assignment = splitAssignment(rest);
    if (!assignment || assignment.right.text === '') {
      problems.push(missingAfter(rest, label.text, 'name = value', eventForms[1] ?? ''));
      return laterEntry(entry, 'gave way', { label }, problems);
    }
    const { left: name, right: value } = assignment;
    if (!isDottedName(name.text)) problems.push(notAName(name));
    return laterEntry(entry, 'gave way', { label, name, value }, problems);
  }
  const split = splitLabel(head);
  if (!split || !isDate(split.label.text)) return notUnderstood(entry, 'event', eventForms);
  return laterEntry(entry, 'happened', { date: split.label, text: split.rest }, problems);
}
