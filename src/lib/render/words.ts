// How a verdict, a percent, a factor and a count are said, in every output alike. A percent is never
// rounded across 100, so that "100 %, over" does not appear; no sentence here calls anything safe,
// fit or permitted: a sheet only tells what was computed and what was not.

import type { Comparison } from '#lib/document/index.ts';
import { formatNumber, unitLabel } from '#lib/units/index.ts';
import type { Unit } from '#lib/units/index.ts';
import type { LimitAtStage, LimitResult, LimitStatus, StageResult } from '#lib/sheet/index.ts';

export type Tone = 'over' | 'close' | 'inside' | 'unknown';

const tones: Readonly<Record<LimitStatus, Tone>> = {
  within: 'inside',
  met: 'inside',
  'not-shown-to-fail': 'inside',
  close: 'close',
  over: 'over',
  short: 'over',
  fails: 'over',
  unknown: 'unknown'
};

export const toneOf = (status: LimitStatus): Tone => tones[status];

/** One sign per tone; the word always stands beside it. */
export const toneSigns: Readonly<Record<Tone, string>> = {
  over: '●',
  close: '◐',
  inside: '✓',
  unknown: '?'
};

/** A number with fixed decimals, as it is printed: a true minus, thin spaces from 10 000 up. */
export const numberText = (value: number, decimals: number): string =>
  formatNumber(value, { decimals }, 'typeset');

/** A number to a count of significant digits, as it is printed. */
export const significantText = (value: number, digits: number): string =>
  value === 0 ? '0' : formatNumber(value, { digits }, 'typeset');

/** `0.9137` as '91 %', with as many decimals as it takes to stay on its side of 100. */
export function percentText(share: number): string {
  const percent = share * 100;
  if (percent >= 1e7) return `${significantText(percent, 2)} %`;
  let decimals = percent > 0 && percent < 1 ? 1 : 0;
  while (decimals < 7 && percent !== 100 && Number(percent.toFixed(decimals)) === 100) decimals++;
  return `${numberText(percent, decimals)} %`;
}

/** A ratio as '×1.7': 2 significant digits, 2 decimals between ×0.1 and ×1.1. */
export function factorText(ratio: number): string {
  const size = Math.abs(ratio);
  if (size >= 0.1 && size < 1.1) return `×${numberText(ratio, 2)}`;
  return `×${significantText(Number(ratio.toPrecision(2)), 2)}`;
}

/** What has become of a value, where a factor stands otherwise. */
export const changeText = (ratio: number | null, change: 'new' | 'sign' | null): string =>
  ratio !== null ? factorText(ratio) : change === 'sign' ? 'sign changed' : (change ?? '');

/** 'a', 'a and b', 'a, b and c'. */
export function listing(words: readonly string[], joint = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1) ?? ''}`;
}

/** '1 line', '2 lines'. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** A text without the unit at its end, where that is the unit given. */
export function withoutUnit(text: string, unit: Unit | null): string {
  if (!unit || unit.text === '1') return text;
  for (const written of [unit.text, unitLabel(unit)])
    if (text.endsWith(written)) return text.slice(0, -written.length).trimEnd();
  return text;
}

/** What the two sides of a limit are to each other: '5.00 of 1.5 kW', '84.4, needs 80 m/s'. */
export function sidesText(limit: LimitResult, at: LimitAtStage): string {
  const { leftText: left, rightText: right } = at;
  if (left === '' && right === '') return '';
  if (left === '') return `? ${joints[limit.form]} ${right}`.replace(' ,', ',');
  if (right === '') return left;
  const first = withoutUnit(left, limit.unit);
  return `${first} ${joints[limit.form]} ${right}`.replace(' ,', ',');
}

const joints: Readonly<Record<Comparison['form'], string>> = {
  'demand<=capacity': 'of',
  'actual>=required': ', needs',
  'low<=x<=high': ', bound',
  'x outside a..b': ', keeps off',
  'a==b': 'against'
};

/** A verdict in words, the percent or the margin before it: '169 %, over', 'margin 2.4, within'. */
export function verdictText(limit: LimitResult, at: LimitAtStage): string {
  if (at.status === 'unknown') {
    if (at.waitsFor.length > 0) return `unknown, waits for ${at.waitsFor.join(', ')}`;
    return at.error === null ? 'unknown' : 'unknown, a line is in error';
  }
  if (limit.tags.screen) return at.status === 'fails' ? 'fails' : 'not shown to fail';
  const word = at.status + (at.atLimit ? ', at the limit' : chanceText(at));
  if (at.utilisation !== null) return `${percentText(at.utilisation)}, ${word}`;
  if (at.margin !== null) return `margin ${marginText(limit, at)}, ${word}`;
  return word;
}

/** Where the ratio alone would read otherwise, the chance of being over tells why. */
function chanceText({ status, utilisation, chanceOver }: LimitAtStage): string {
  const tone = toneOf(status);
  const ratioTells =
    utilisation === null || (tone === 'over' ? utilisation > 1 : utilisation >= USUALLY_CLOSE);
  if (chanceOver === null || chanceOver < LEAST_CHANCE || tone === 'inside' || ratioTells)
    return '';
  return `, chance ${percentText(chanceOver)}`;
}

/** From here on a limit is close by its ratio, unless it says otherwise. */
const USUALLY_CLOSE = 0.9;
/** Chances of being over below this are not worth a word. */
const LEAST_CHANCE = 0.01;

/** The margin with its unit, to three significant digits. */
export function marginText(limit: LimitResult, at: LimitAtStage): string {
  const unit = limit.unit === null ? '' : differenceLabel(limit.unit);
  return [significantText(at.margin ?? 0, 3), unit].filter(Boolean).join(' ');
}

/** Between two readings of a thermometer lies a difference. */
const differenceLabel = (unit: Unit): string =>
  unit.temperature === 'reading' ? (unit.factor === 1 ? 'K' : '°R') : unitLabel(unit);

/** The sentence of counts of a stage: '7 checked, 7 inside; 5 parts have no check'. */
export function countsText(stage: StageResult, partsWithoutCheck: number): string {
  const { checked, inside, close, over, unknown, screens, failing } = stage.counts;
  const clauses: string[] = [];
  if (checked > 0) {
    let sentence = `${checked} checked, ${inside} inside`;
    if (close > 0) sentence += ` (${close} of them close)`;
    if (over > 0) sentence += `, ${over} over`;
    if (unknown > 0) sentence += `, ${unknown} unknown`;
    clauses.push(sentence);
  } else clauses.push('No limits to check');
  if (screens > 0) clauses.push(screensText(screens, failing));
  if (partsWithoutCheck > 0)
    clauses.push(`${counted(partsWithoutCheck, 'part has', 'parts have')} no check`);
  return clauses.join('; ');
}

function screensText(screens: number, failing: number): string {
  const silent = screens - failing;
  if (screens === 1) return failing === 1 ? '1 screen fails' : '1 screen not shown to fail';
  const parts: string[] = [];
  if (failing > 0) parts.push(`${failing} ${failing === 1 ? 'fails' : 'fail'}`);
  if (silent > 0) parts.push(`${silent} not shown to fail`);
  return `${screens} screens: ${parts.join(', ')}`;
}

/** Whether a stage stops the run, in one sentence. */
export const stopText = (stage: StageResult): string =>
  stage.stopsTheRun.length > 0
    ? `Stops the run: ${stage.stopsTheRun.join('; ')}.`
    : 'Nothing computed here stops the run.';
