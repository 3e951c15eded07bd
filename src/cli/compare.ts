// `rigwright compare FILE [FILE]`: what a change reaches, between two stages, between two files, or
// between a file as it stands and with a try. Stages of one file go by their parents unless --from
// and --to say otherwise; of two files, stages of the same id face each other.

import type { KnockOn } from '#lib/analysis/index.ts';
import { knockOn } from '#lib/analysis/index.ts';
import type { Comparison } from '#lib/render/index.ts';
import { atStage, compareObject, compareText, jsonText } from '#lib/render/index.ts';
import type { Results } from '#lib/sheet/index.ts';
import type { Call } from './args.ts';
import type { Status } from './output.ts';
import { complain, deliver, highest, paletteFor } from './output.ts';
import { computed, hasStage, readSource, statusOf, triesFit, valuesFit } from './sheet.ts';

interface Side {
  readonly file: string;
  readonly results: Results;
}

/** @returns  the exit status, judged at the later side of each comparison */
export async function compare(call: Call): Promise<Status> {
  const sides = await bothSides(call);
  if (!sides) return 3;
  const [before, after] = sides;
  const pairs = stagePairs(before, after, call);
  if (!pairs) return 3;

  const comparisons: Comparison[] = pairs.map(([from, to]) => {
    const found: KnockOn = knockOn(before.results, from, after.results, to);
    return {
      knockOn: found,
      from: { file: before.file, title: stageTitle(before.results, from) },
      to: { file: after.file, title: stageTitle(after.results, to) },
      tries: call.tries
    };
  });
  const status = highest(
    statusOfLines(before.results),
    ...pairs.map(([, to]) => statusOf(atStage(after.results, to)))
  );
  const text = call.json
    ? jsonText(compareObject(comparisons, [before, after]))
    : compareText(comparisons, [before, after], paletteFor(call.out));
  return highest(status, deliver(text, call.out, call.operands));
}

const stageTitle = (results: Results, id: string): string =>
  results.stages.find((stage) => stage.id === id)?.title ?? id;

async function bothSides(call: Call): Promise<readonly [Side, Side] | null> {
  const [first = '-', second] = call.operands;
  const source = await readSource(first);
  const other = second === undefined ? source : await readSource(second);
  if (!source || !other) return null;
  const before = computed(source);
  if (second !== undefined)
    return [
      { file: first, results: before },
      { file: second, results: computed(other) }
    ];
  const after = call.tries.length > 0 ? computed(source, call.tries) : before;
  if (!triesFit(before, call.tries, first) || !valuesFit(after, source, call.tries)) return null;
  return [
    { file: first, results: before },
    { file: first, results: after }
  ];
}

/** Which stage faces which; null after saying why none do. */
function stagePairs(
  before: Side,
  after: Side,
  call: Call
): readonly (readonly [string, string])[] | null {
  const { from, to } = call;
  if (from !== null && !hasStage(before.results, from, before.file, '--from')) return null;
  if (to !== null && !hasStage(after.results, to, after.file, '--to')) return null;
  if (from !== null && to !== null) return [[from, to]];

  const sameSheet = before.results === after.results;
  if (sameSheet) return parentPairs(before, from, to);
  const only = from ?? to;
  const ids = before.results.stages.map(({ id }) => id);
  const common = after.results.stages
    .map(({ id }) => id)
    .filter((id) => ids.includes(id) && (only === null || id === only));
  if (common.length > 0) return common.map((id) => [id, id] as const);
  const [alone, aloneAfter] = [before.results.stages, after.results.stages];
  if (alone.length === 1 && aloneAfter.length === 1 && alone[0] && aloneAfter[0])
    return [[alone[0].id, aloneAfter[0].id]];
  complain(
    `${before.file} has the stages ${ids.join(', ')}, ${after.file} has ${after.results.stages.map(({ id }) => id).join(', ')}: say which to compare with --from and --to.`
  );
  return null;
}

/** Stages of one sheet: each against its parent, or those that --from or --to leaves. */
function parentPairs(
  { file, results }: Side,
  from: string | null,
  to: string | null
): readonly (readonly [string, string])[] | null {
  const pairs = results.stages.flatMap(({ id, after }) =>
    after !== null && (from === null || after === from) && (to === null || id === to)
      ? [[after, id] as const]
      : []
  );
  if (pairs.length > 0) return pairs;
  complain(
    results.stages.length === 1
      ? `${file} has one stage, ${results.stages[0]?.id ?? ''}: give a second file, or a value to try with --try.`
      : from !== null
        ? `No stage of ${file} starts from ${from}: name the other stage with --to.`
        : `${to ?? ''} starts from no other stage of ${file}: name the other stage with --from.`
  );
  return null;
}

/** A line in error on the earlier side makes the comparison incomplete too. */
const statusOfLines = (results: Results): Status =>
  results.problems.some(({ severity }) => severity === 'error') ? 2 : 0;
