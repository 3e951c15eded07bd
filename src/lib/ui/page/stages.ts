// The stages of a sheet as the strip shows them: the heads of all columns, with what each one's limits
// say. A stage that a safety limit stops says so; none ever says that everything holds.

import { counted, countsText, listing, partsWithoutCheck } from '#lib/render/index.ts';
import type { Results, StageResult } from '#lib/sheet/index.ts';
import { parentOf } from './cells.ts';
import type { PageContext } from './context.ts';
import { byUrgency, percentOf, statusOf } from './limit-rows.ts';
import type { AttentionEntry, StageHead, StageMark, Status } from './types.ts';
import { nameTex } from './typeset.ts';
import { lineId, valueText } from './value-rows.ts';
import { hrefOf } from './view.ts';

/** The marks of all stages: number and place on the ramp. */
export function stageMarks(stages: readonly StageResult[]): readonly StageMark[] {
  const last = stages.length - 1;
  return stages.map(({ id, title }, index) => ({
    id,
    title,
    number: index + 1,
    // A single stage stands in the middle of the ramp, where white text can be read on it.
    t: last === 0 ? 0.6 : Math.round((index / last) * 1000) / 1000,
    of: stages.length
  }));
}

const none: Status = { word: 'none over', shape: 'tick', tone: 'calm' };
/** No tick while something could not be judged. */
const notAll: Status = { word: 'none over', shape: 'dash', tone: 'calm' };
const some: Status = { word: 'over', shape: 'octagon', tone: 'over' };

/** '2 over' with its status, as on the strip and on the list of worksheets. */
export function overCount(stage: StageResult): StageHead['over'] {
  const { checked, over, screens, failing, unknown } = stage.counts;
  if (checked + screens + unknown === 0) return null;
  const count = over + failing;
  return { text: `${count} over`, status: count > 0 ? some : unknown > 0 ? notAll : none };
}

/** The head of a stage's column. */
export function stageHead(context: PageContext, index: number): StageHead {
  const { results, marks, view } = context;
  const [stage, mark] = [results.stages[index], marks[index]];
  if (!stage || !mark) throw new RangeError(`no stage ${index}`);
  const isFocus = view.focus === index;
  const { close, unknown } = stage.counts;
  const others: string[] = [];
  if (close > 0) others.push(`${close} close`);
  if (unknown > 0) others.push(`${unknown} unknown`);
  const over = overCount(stage);
  return {
    ...mark,
    // Pressed again, the head gives the focus back; the stage's numbers stay in view.
    href: hrefOf({ ...view, focus: isFocus ? null : index, shown: index }, idsOf(results)),
    isFocus,
    over,
    others,
    stoppedBy: stage.stopsTheRun,
    figure: over === null ? null : figureOf(stage, results.limits.size),
    sentences: over === null ? [] : [`${countsText(stage, partsWithoutCheck(results).length)}.`],
    headline: headlineOf(results, index),
    remarks: remarksOf(results, index)
  };
}

export const idsOf = (results: Results): readonly string[] => results.stages.map(({ id }) => id);

function figureOf(stage: StageResult, limits: number): NonNullable<StageHead['figure']> {
  const { over, failing } = stage.counts;
  return {
    count: String(over + failing),
    words: `over, of ${counted(limits, 'limit')}`
  };
}

/** The input named by `headline`, as it is set; what the parts allow is the ladder's to say. */
function headlineOf(results: Results, index: number): StageHead['headline'] {
  const { headline } = results.worksheet.frontMatter;
  const result = headline === null ? undefined : results.values.get(headline);
  const at = result?.at[index];
  return result && at
    ? { tex: nameTex(result.name), text: `set to ${valueText(at, result.unit)}` }
    : null;
}

function remarksOf(results: Results, index: number): readonly string[] {
  const stage = results.stages[index];
  const parent = parentOf(results.stages, index);
  const remarks: string[] = [];
  if (index > 0 && parent !== index - 1) {
    const from = parent === null ? undefined : results.stages[parent];
    remarks.push(from ? `from ${from.title}` : 'a start of its own');
  }
  if (stage?.date) remarks.push(dateText(stage.date));
  if (stage?.built) remarks.push('built');
  return remarks;
}

const months = [
  'January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October',
  'November', 'December'
]; // prettier-ignore

/** '2024-05-17' as '17 May 2024'; any other text as it stands. */
export function dateText(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? [];
  const name = months[Number(month) - 1];
  return year && day && name ? `${Number(day)} ${name} ${year}` : date;
}

/** What is to be looked at, at the stage in view: safety first, then the loudest and largest. */
export function attentionAt(results: Results, index: number): readonly AttentionEntry[] {
  return [...results.limits.values()]
    .filter((limit) => {
      const at = limit.at[index];
      return at !== undefined && statusOf(at).tone !== 'calm';
    })
    .sort((a, b) => byUrgency(a, b, index))
    .flatMap((limit) => {
      const at = limit.at[index];
      if (!at) return [];
      return [
        {
          href: `#${lineId(limit.line)}`,
          label: limit.label,
          status: statusOf(at),
          percent: percentOf(limit, at),
          isSafety: limit.tags.safety
        }
      ];
    });
}

/** What stops the run, stage by stage, and what nothing here checks. */
export function verdictOf(results: Results): readonly string[] {
  const parts = partsWithoutCheck(results).length;
  const stopped = results.stages.filter(({ stopsTheRun }) => stopsTheRun.length > 0);
  const titles = stopped.map(({ title }) => title);
  const sentences: string[] = [];
  if (stopped.length === 0) sentences.push('Nothing computed here stops the run.');
  else if (results.stages.length === 1) sentences.push('A safety limit stops the run.');
  else sentences.push(`Safety limits stop the run at ${listing(titles)}.`);
  if (parts > 0) sentences.push(`${counted(parts, 'part has', 'parts have')} no check.`);
  return sentences;
}
