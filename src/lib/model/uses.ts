// What expressions read: names of the sheet and own functions.

import { namesIn, ownCallsIn } from '#lib/language/index.ts';
import { predefinedValues } from './constants.ts';
import type { Parsed } from './node.ts';

/** Names and own functions that expressions use, each once. */
export function usesOf(parsed: readonly (Parsed | null)[]): readonly string[] {
  const names = new Set<string>();
  for (const each of parsed) {
    if (!each?.tree) continue;
    for (const name of namesIn(each.tree)) if (!predefinedValues.has(name)) names.add(name);
    for (const name of ownCallsIn(each.tree)) names.add(name);
  }
  return [...names];
}
