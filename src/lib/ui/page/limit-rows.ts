// Rows of limits. A status is said three ways: word, shape and colour; the bar's track runs from 0 to
// 150 % with the rating at two thirds, so that ratings line up down the page. Nothing here says that
// all limits hold: a row tells its own state and no more.

import type { LimitAtStage, LimitResult, LimitStatus } from '#lib/sheet/index.ts';
import { marginText, percentText, sidesText } from '#lib/render/index.ts';
import { placeOf } from './cells.ts';
import { markOf, type PageContext } from './context.ts';
import { typesetWithUnit } from './numbers.ts';
import { conditionTex } from './typeset.ts';
import type { Form, LimitCell, LimitRow, MarkShape, ProblemNote, Status, Tone } from './types.ts';
import { lineId, wordsOf } from './value-rows.ts';

/** End of the track, as a share of the rating. */
const TRACK_END = 1.5;

const looks: Readonly<Record<LimitStatus, { shape: MarkShape; tone: Tone }>> = {
  within: { shape: 'tick', tone: 'calm' },
  met: { shape: 'tick', tone: 'calm' },
  close: { shape: 'half', tone: 'close' },
  over: { shape: 'octagon', tone: 'over' },
  short: { shape: 'octagon', tone: 'over' },
  fails: { shape: 'octagon', tone: 'over' },
  // A screen that shows no failure shows nothing: no tick.
  'not-shown-to-fail': { shape: 'dash', tone: 'calm' },
  unknown: { shape: 'dash', tone: 'close' }
};

/** The status of a limit at a stage. */
export function statusOf(at: LimitAtStage): Status {
  // A close one stays so in words: its look would not tell otherwise why it is loud.
  const isJustIn = at.atLimit && looks[at.status].tone === 'calm';
  const word = isJustIn ? 'at the limit' : at.status.replaceAll('-', ' ');
  return { word, ...looks[at.status] };
}

/** '169 %'; null for screens, levels and wherever no ratio is meant. */
export const percentOf = (limit: LimitResult, at: LimitAtStage): string | null =>
  at.utilisation === null || limit.tags.screen ? null : percentText(at.utilisation);

/** Widths of a bar, in percent of its track. */
export function barOf(utilisation: number): NonNullable<LimitCell['bar']> {
  const share = (part: number): number => Math.round((part / TRACK_END) * 1000) / 10;
  const fill = Math.min(utilisation, 1);
  const past = Math.min(Math.max(utilisation - 1, 0), TRACK_END - 1);
  return { fill: share(fill), past: share(past), isTorn: utilisation > TRACK_END };
}

/** The row of a limit. */
export function limitRow(
  context: PageContext,
  limit: LimitResult,
  problems: readonly ProblemNote[]
): LimitRow {
  return {
    kind: 'limit',
    id: lineId(limit.line),
    problems,
    label: limit.label,
    isSafety: limit.tags.safety,
    isScreen: limit.tags.screen,
    tags: tagWords(limit),
    forms: formsOf(context, limit),
    words: wordsOf(limit.comment),
    cells: context.columns.map((index) => limitCell(context, limit, index))
  };
}

function limitCell(context: PageContext, limit: LimitResult, index: number): LimitCell {
  const at = limit.at[index];
  if (!at) throw new RangeError(`${limit.label} has no verdict at stage ${index}`);
  const percent = percentOf(limit, at);
  return {
    ...placeOf(context, index),
    status: statusOf(at),
    percent,
    bar: percent === null || at.utilisation === null ? null : barOf(at.utilisation),
    amounts: amountsOf(limit, at),
    letter: at.revised ? context.letters.linkOf(limit.variants[at.variant]?.line ?? 0) : null
  };
}

function amountsOf(limit: LimitResult, at: LimitAtStage): string {
  if (at.status === 'unknown') {
    if (at.waitsFor.length > 0) return `waits for ${at.waitsFor.join(', ')}`;
    if (at.error !== null) return 'a line is in error';
  }
  const sides = typesetWithUnit(sidesText(limit, at), limit.unit);
  const isJudgedByMargin = at.utilisation === null && at.margin !== null && !limit.tags.screen;
  return isJudgedByMargin
    ? `${sides}, margin ${typesetWithUnit(marginText(limit, at), limit.unit)}`
    : sides;
}

function tagWords(limit: LimitResult): readonly string[] {
  const { screen, level, close, worstOf } = limit.tags;
  const words: string[] = [];
  if (screen) words.push('a screen: it can only show failure');
  if (level) words.push('a level: judged by its margin');
  if (close?.kind === 'at') words.push(`close from ${close.amount.text}`);
  if (close?.kind === 'within') words.push(`close within ${close.amount.text}`);
  if (worstOf.length > 0) words.push(`worst of ${worstOf.map((name) => name.text).join(', ')}`);
  return words;
}

function formsOf(context: PageContext, limit: LimitResult): readonly Form[] {
  return limit.variants.map((variant) => ({
    tex: conditionTex(limit.form, variant.sides),
    from: variant.stage === null ? null : markOf(context, variant.stage),
    letter: variant.stage === null ? null : context.letters.linkOf(variant.line)
  }));
}

const tones: Readonly<Record<Tone, number>> = { over: 2, close: 1, calm: 0 };

/** Louder first: over, then close and unknown; the greater share first; then the file's order. */
export function byUrgency(a: LimitResult, b: LimitResult, stage: number): number {
  const [first, second] = [a.at[stage], b.at[stage]];
  if (!first || !second) return 0;
  const safety = Number(b.tags.safety) - Number(a.tags.safety);
  const tone = tones[statusOf(second).tone] - tones[statusOf(first).tone];
  const share = (second.utilisation ?? Infinity) - (first.utilisation ?? Infinity);
  return safety || tone || (Number.isNaN(share) ? 0 : share) || a.line - b.line;
}
