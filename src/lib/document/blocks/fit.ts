// `fit NAME to READINGS`: `left == right [with input = column, …]`, `unknown p from value`,
// `uncertainty column` or `weigh by column`, `predict P at v_tip = 80 m/s`.

import type { Problem } from '#lib/problem/index.ts';
import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry, LaterEntry } from '../types.ts';
import {
  afterWord,
  laterEntry,
  notUnderstood,
  readAssignments,
  readNames,
  splitAtWord
} from './entry.ts';
import { readSides, readUnknown } from './solve.ts';

export const fitForms: readonly string[] = [
  'left == right [with input = column, …]', 'unknown p from value', 'uncertainty column',
  'weigh by column', 'predict name at input = value, …'
]; // prettier-ignore

export function readFit(entry: EntryText): Entry {
  const { head } = entry;
  const problems: Problem[] = [];
  const finish = (form: string, parts: LaterEntry['parts']): Entry =>
    laterEntry(entry, form, parts, [...problems, ...refuseRevisions(entry, 'A line of a fit')]);
  const unknown = afterWord(head, 'unknown');
  if (unknown) return readUnknown(entry, unknown, 'fit', fitForms);
  const uncertainty = afterWord(head, 'uncertainty');
  if (uncertainty)
    return finish('uncertainty', {
      columns: readNames(uncertainty, problems, 'uncertainty column')
    });
  const weigh = afterWord(head, 'weigh');
  const by = weigh ? afterWord(weigh, 'by') : null;
  if (by) return finish('weigh', { columns: readNames(by, problems, 'weigh by column') });
  const predict = afterWord(head, 'predict');
  if (predict) {
    const split = splitAtWord(predict, 'at');
    if (!split) return notUnderstood(entry, 'fit', fitForms);
    const names = readNames(split[0], problems, fitForms[4] ?? '');
    return finish('predict', { names, ...readAssignments(split[1], problems, fitForms[4] ?? '') });
  }
  const withList = splitAtWord(head, 'with');
  const sides = readSides(withList ? withList[0] : head, 'The fit', problems);
  if (!sides) return notUnderstood(entry, 'fit', fitForms);
  const pairs = withList
    ? readAssignments(withList[1], problems, fitForms[0] ?? '')
    : { targets: [], values: [] };
  return finish('relation', { ...sides, inputs: pairs.targets, columns: pairs.values });
}
