// What the list of worksheets says of one: title, summary, its stages as a small strip with the counts
// of limits over, and one sentence on the last stage.

import { counted, partsWithoutCheck, percentText, titleOf } from '#lib/render/index.ts';
import type { LimitResult, Results } from '#lib/sheet/index.ts';
import { statusOf } from '../page/limit-rows.ts';
import { dateText, overCount, stageMarks } from '../page/stages.ts';
import type { StageHead, StageMark, Status } from '../page/types.ts';

export interface HomeStage extends StageMark {
  readonly over: StageHead['over'];
  readonly stopsTheRun: boolean;
}

export interface HomeEntry {
  readonly file: string;
  readonly href: string;
  readonly title: string;
  readonly summary: string | null;
  /** Day of the last change. */
  readonly changed: string | null;
  readonly stages: readonly HomeStage[];
  /** On the last stage, with the loudest status there. */
  readonly sentence: { readonly text: string; readonly status: Status } | null;
  /** '2 lines have a mistake.' */
  readonly mistakes: string | null;
  /** Why the file could not be read; everything else is then empty. */
  readonly fault: string | null;
}

/** File, address and last change of a worksheet, as the list has them. */
export interface HomeFile {
  readonly file: string;
  readonly href: string;
  /** Milliseconds since 1970; null where not known. */
  readonly changed: number | null;
}

/** The entry of a worksheet: its results, or the sentence that says why it cannot be read. */
export function homeEntry(from: HomeFile, results: Results | string): HomeEntry {
  const changed = from.changed ? dateText(new Date(from.changed).toISOString().slice(0, 10)) : null;
  const base = { file: from.file, href: from.href, changed };
  if (typeof results === 'string') {
    return { ...base, title: from.file, summary: null, stages: [], sentence: null, mistakes: null, fault: results }; // prettier-ignore
  }
  const marks = stageMarks(results.stages);
  const lines = new Set(
    results.problems.filter(({ severity }) => severity === 'error').map(({ at }) => at.line)
  ).size;
  return {
    ...base,
    title: titleOf(results) ?? from.file.replace(/\.md$/i, ''),
    summary: results.worksheet.frontMatter.summary,
    stages: results.stages.flatMap((stage, index) => {
      const mark = marks[index];
      return mark
        ? [{ ...mark, over: overCount(stage), stopsTheRun: stage.stopsTheRun.length > 0 }]
        : [];
    }),
    sentence: lastStageSentence(results),
    mistakes:
      lines === 0 ? null : `${counted(lines, 'line has', 'lines have')} a mistake; the rest is computed.`, // prettier-ignore
    fault: null
  };
}

function lastStageSentence(results: Results): HomeEntry['sentence'] {
  const index = results.stages.length - 1;
  const stage = results.stages[index];
  const calm = { word: '', shape: 'dash', tone: 'calm' } as const;
  if (!stage) return null;
  if (results.limits.size === 0) {
    const parts = partsWithoutCheck(results).length;
    const text = parts > 0 ? `No limits; ${counted(parts, 'part has', 'parts have')} no check.` : 'No limits in this sheet.'; // prettier-ignore
    return { text, status: calm };
  }
  const { checked, inside, unknown } = stage.counts;
  const notKnown = unknown > 0 ? `, ${unknown} unknown` : '';
  const where = results.stages.length > 1 ? `${stage.title}: ` : '';
  const worst = worstLimit(results, index);
  const stopped = stage.stopsTheRun;
  // The limit that stops the run comes first, whatever its percent.
  const named =
    stopped.length > 0
      ? `Stopped by ${stopped.join('; ')}.`
      : worst
        ? `${worst.limit.label} ${worst.text}.`
        : '';
  const loudest = [...results.limits.values()]
    .flatMap((limit) => (limit.at[index] ? [statusOf(limit.at[index])] : []))
    .sort((a, b) => rank(b) - rank(a))[0];
  return {
    text: `${where}${checked} checked, ${inside} inside${notKnown}. ${named}`.trim(),
    status: loudest ?? calm
  };
}

const rank = ({ tone }: Status): number => (tone === 'over' ? 2 : tone === 'close' ? 1 : 0);

/** The limit with the greatest share; screens show no share. */
function worstLimit(
  results: Results,
  index: number
): { readonly limit: LimitResult; readonly text: string } | null {
  let worst: LimitResult | null = null;
  let most = -Infinity;
  for (const limit of results.limits.values()) {
    const share = limit.at[index]?.utilisation ?? null;
    if (share === null || limit.tags.screen || share <= most) continue;
    [worst, most] = [limit, share];
  }
  const at = worst?.at[index];
  return worst && at ? { limit: worst, text: `${percentText(most)}, ${statusOf(at).word}` } : null;
}
