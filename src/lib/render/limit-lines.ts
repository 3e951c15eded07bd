// Limits as lines of text, one a limit: sign, label, demand of capacity, verdict, line of the file.
// Columns are as wide as the sheet's own texts need, so that stages stand under each other alike.

import type { LimitResult, Results, StageResult } from '#lib/sheet/index.ts';
import type { Palette } from './columns.ts';
import { displayWidth, padRight, printableLine, widest, wrap } from './columns.ts';
import { partsWithoutCheck } from './outline.ts';
import type { Tone } from './words.ts';
import { countsText, sidesText, stopText, toneOf, toneSigns, verdictText } from './words.ts';

const LABEL_MOST = 40;
const SIDES_MOST = 40;
const VERDICT_MOST = 26;

/** Colours of a tone. */
export const paintTone = (palette: Palette, tone: Tone): ((text: string) => string) =>
  tone === 'over' || tone === 'unknown'
    ? palette.over
    : tone === 'close'
      ? palette.close
      : palette.inside;

/** Every stage's limits under the stage's head, those with [safety] first. */
export function limitLines(results: Results, palette: Palette): string[] {
  if (results.limits.size === 0) return [];
  const limits = safetyFirst([...results.limits.values()]);
  const cells = limits.map((limit) => ({ limit, label: labelText(limit) }));
  const labelWidth = Math.min(LABEL_MOST, widest(cells.map((cell) => cell.label)));
  const shown = limits.flatMap((limit) =>
    limit.at.map((at) => [
      printableLine(sidesText(limit, at)),
      printableLine(verdictText(limit, at))
    ])
  );
  const sidesWidth = Math.min(SIDES_MOST, widest(shown.map(([sides]) => sides ?? '')));
  const verdictWidth = Math.min(VERDICT_MOST, widest(shown.map(([, verdict]) => verdict ?? '')));

  const lines: string[] = [];
  for (const [index, stage] of results.stages.entries()) {
    if (index > 0) lines.push('');
    lines.push(palette.strong(stageHead(stage, results)));
    for (const { limit, label } of cells) {
      const at = limit.at[index];
      if (!at) continue;
      const tone = toneOf(at.status);
      const paint = paintTone(palette, tone);
      lines.push(
        [
          `  ${paint(toneSigns[tone])} ${padRight(label, labelWidth)}`,
          padRight(printableLine(sidesText(limit, at)), sidesWidth),
          padPainted(printableLine(verdictText(limit, at)), verdictWidth, paint),
          palette.quiet(`line ${limit.line}`)
        ].join('  ')
      );
    }
  }
  return lines;
}

/** One sentence of counts a stage, and what is over in it: the end of what `check` prints. */
export function countLines(results: Results, palette: Palette, width = 100): string[] {
  const parts = partsWithoutCheck(results).length;
  const [first] = results.stages;
  if (results.limits.size === 0 && first) return [`${countsText(first, parts)}.`];
  const titles = results.stages.map((stage) => printableLine(stage.title));
  const titleWidth = Math.min(LABEL_MOST, widest(titles));
  const lines: string[] = [];
  for (const [index, stage] of results.stages.entries()) {
    const indent = ' '.repeat(titleWidth + 2);
    const say = (text: string, paint: (text: string) => string): void => {
      for (const line of wrap(printableLine(text), width - titleWidth - 2)) {
        const first = lines.length === begin;
        lines.push(
          (first ? padRight(titles[index] ?? '', titleWidth) + '  ' : indent) + paint(line)
        );
      }
    };
    const begin = lines.length;
    const asItIs = (text: string): string => text;
    if (stage.stopsTheRun.length > 0) say(stopText(stage), palette.over);
    say(`${countsText(stage, parts)}.`, asItIs);
    for (const [tone, word] of toldTones) {
      const labels = labelsOf(results, index, tone).filter(
        (label) => !stage.stopsTheRun.includes(label)
      );
      if (labels.length > 0) say(`${word}: ${labels.join('; ')}.`, palette.over);
    }
    if (stage.stopsTheRun.length === 0) say(stopText(stage), palette.quiet);
  }
  return lines;
}

/** Limits with [safety] first, else in the order of the file. */
export const safetyFirst = (limits: readonly LimitResult[]): LimitResult[] => [
  ...limits.filter((limit) => limit.tags.safety),
  ...limits.filter((limit) => !limit.tags.safety)
];

/** 'guard, whole arm [safety]'. */
export function labelText(limit: LimitResult): string {
  const tags = limit.tags.all.map((tag) => ` [${tag}]`).join('');
  return printableLine(limit.label + tags);
}

/** 'First run, as built (first-run), after First sketch'. */
export function stageHead(stage: StageResult, results: Results): string {
  const parent = results.stages.find(({ id }) => id === stage.after);
  const words = [`${stage.title} (${stage.id})`];
  if (stage.date !== null) words.push(stage.date);
  if (parent) words.push(`after ${parent.title}`);
  return printableLine(words.join(', '));
}

const toldTones: readonly (readonly [Tone, string])[] = [
  ['over', 'Over'],
  ['unknown', 'Unknown']
];

const labelsOf = (results: Results, index: number, tone: Tone): string[] =>
  safetyFirst([...results.limits.values()])
    .filter((limit) => {
      const at = limit.at[index];
      return at !== undefined && toneOf(at.status) === tone;
    })
    .map((limit) => limit.label);

const padPainted = (text: string, width: number, paint: (text: string) => string): string =>
  paint(text) + ' '.repeat(Math.max(0, width - displayWidth(text)));
