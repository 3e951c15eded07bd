// An axis of a sweep or ladder: `name from low to high`, split at the first `from` and the last `to`.

import type { Problem } from '#lib/problem/index.ts';
import type { Cut } from '#lib/text/index.ts';
import { isDottedName, missingAfter, notAName, splitAtWord } from './entry.ts';

export interface Axis {
  readonly name: Cut;
  readonly range: readonly [Cut, Cut] | null;
}

/** Reads an axis; a range that is half written is told. */
export function readAxis(cut: Cut, problems: Problem[]): Axis {
  const form = 'name from low to high';
  const split = splitAtWord(cut, 'from');
  const name = split ? split[0] : cut;
  if (name.text === '') problems.push(missingAfter(name, 'The axis', 'a name', form));
  else if (!isDottedName(name.text)) problems.push(notAName(name));
  if (!split) return { name, range: null };
  const range = splitAtWord(split[1], 'to', 'last');
  if (range && range[0].text !== '' && range[1].text !== '') return { name, range };
  problems.push(missingAfter(split[1], name.text || 'The axis', 'a range low to high', form));
  return { name, range: null };
}
