// The results of one stage alone, in the same form as those of all, so that whatever shows a sheet
// need not know that a stage was picked.

import type { LimitResult, Results, ValueResult, ChooseResult } from '#lib/sheet/index.ts';

/** Results of one stage, with those of all beside: a caution shows the greatest value of any stage. */
interface PickedResults extends Results {
  readonly whole: Results;
}

/** The results of all stages, whether or not one was picked. */
export function wholeOf(results: Results): Results {
  return 'whole' in results ? (results as PickedResults).whole : results;
}

/**
 * @param results  of a whole sheet
 * @param id       of one of its stages
 * @returns        the same with that stage only, and with the problems that are its own or all stages'
 *
 * Fails  RangeError where the sheet has no such stage
 */
export function atStage(results: Results, id: string): PickedResults {
  const index = results.stages.findIndex((stage) => stage.id === id);
  const stage = results.stages[index];
  if (!stage) throw new RangeError(`no stage ${id}`);
  const only = <T>(at: readonly T[]): readonly T[] => at.slice(index, index + 1);
  const value = (result: ValueResult): ValueResult => ({ ...result, at: only(result.at) });
  const limit = (result: LimitResult): LimitResult => ({ ...result, at: only(result.at) });
  const choice = (result: ChooseResult): ChooseResult => ({ ...result, at: only(result.at) });
  return {
    ...results,
    whole: results,
    stages: [stage],
    values: mapped(results.values, value),
    limits: mapped(results.limits, limit),
    choices: mapped(results.choices, choice),
    byLine: mapped(results.byLine, (result) =>
      'label' in result ? limit(result) : 'rowNames' in result ? choice(result) : value(result)
    ),
    problems: results.problems.filter((found) => found.stage === null || found.stage === id)
  };
}

const mapped = <K, V, W>(entries: ReadonlyMap<K, V>, change: (value: V) => W): Map<K, W> =>
  new Map([...entries].map(([key, value]) => [key, change(value)]));
