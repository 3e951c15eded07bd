// `drivers`: `of name, …`, which inputs decide a result.

import { refuseRevisions, type EntryText } from '../entries.ts';
import type { Entry } from '../types.ts';
import { afterWord, laterEntry, notUnderstood, readNames } from './entry.ts';

export const driverForms: readonly string[] = ['of name, …'];

export function readDrivers(entry: EntryText): Entry {
  const list = afterWord(entry.head, 'of');
  if (!list) return notUnderstood(entry, 'drivers', driverForms);
  const problems = refuseRevisions(entry, 'A line of drivers');
  return laterEntry(entry, 'drivers', { names: readNames(list, problems, 'of name, …') }, problems);
}
