// What must hold of any text whatever: it is read and written back to the last character, it computes
// without an exception and without a hang, and its problems lie in the file. Used by the test and, with
// many more cases, by the soak.

import { readWorksheet, writeWorksheet } from '#lib/document/index.ts';
import { compute, Session } from '#lib/sheet/index.ts';
import { Random } from '../laws/random.ts';
import { mutated } from './mutate.ts';

export interface FuzzReport {
  readonly cases: number;
  readonly withoutError: number;
  readonly slowestMs: number;
  readonly slowestCase: number;
  readonly failures: readonly string[];
}

/** A text read and written. */
export const readBack = (text: string): string => writeWorksheet(readWorksheet(text));

/**
 * Damages worksheets at random. One session lives through all cases, as in an editor, beside the
 * sheets read afresh.
 *
 * @param every  a fresh computation beside the session's in one of so many cases
 */
export function fuzz(texts: readonly string[], seed: number, cases: number, every = 1): FuzzReport {
  const random = new Random(seed);
  const sessions = texts.map(() => new Session());
  const failures: string[] = [];
  let [withoutError, slowestMs, slowestCase] = [0, 0, 0];
  for (let i = 0; i < cases; i++) {
    const which = random.below(texts.length);
    const text = mutated(texts[which] ?? '', random);
    const start = performance.now();
    try {
      if (readBack(text) !== text) throw new Error('the text did not come back');
      const results = sessions[which]?.update(text);
      if (i % every === 0) compute(text);
      const lines = text.split(/\r\n|\r|\n/).length;
      for (const { at } of results?.problems ?? []) {
        if (!(at.line >= 1 && at.line <= lines && at.from >= 1 && at.to >= at.from)) {
          throw new Error(`a problem at ${JSON.stringify(at)} of ${lines} lines`);
        }
      }
      if (!results?.problems.some((found) => found.severity === 'error')) withoutError++;
    } catch (error) {
      sessions[which] = new Session();
      const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
      failures.push(`case ${i} (seed ${seed}): ${stack}\n--- text ---\n${text}`);
    }
    const took = performance.now() - start;
    if (took > slowestMs) [slowestMs, slowestCase] = [took, i];
  }
  return { cases, withoutError, slowestMs, slowestCase, failures };
}
