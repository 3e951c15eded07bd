// How a verdict, a percent, a factor and a count are said, in every output alike. A percent is never
// rounded across 100, so that "100 %, over" does not appear; no sentence here calls anything safe,
// fit or permitted: a sheet only tells what was computed and what was not.

import type { Comparison } from '#lib/document/index.ts';
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
  close: '△',
  inside: '✓',
  unknown: '?'
};

const THIN_SPACE = '\u2009';
const MINUS = '\u2212';

/** A number with a true minus, and thin spaces between thousands from 10 000 up. */
export function numberText(value: number, decimals: number): string {
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && /[1-9]/.test(digits) ? MINUS + digits : digits;
}

/** A number to a count of significant digits; very large and very small ones with an exponent. */
export function significantText(value: number, digits: number): string {
  const size = Math.abs(value);
  if (size === 0) return '0';
  if (size >= 1e7 || size < 1e-5)
    return value
      .toExponential(digits - 1)
      .replace('e+', 'e')
      .replaceAll('-', MINUS);
  const rounded = Math.abs(Number(value.toPrecision(digits)));
  return numberText(value, Math.max(0, digits - 1 - Math.floor(Math.log10(rounded))));
}

/** `0.9137` as '91 %', with as many decimals as it takes to stay on its side of 100. */
export function percentText(share: number): string {
  const percent = share * 100;
  if (percent >= 1e6) return `${percent.toExponential(1).replace('e+', 'e')} %`;
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
export function withoutUnit(text: string, unit: string | null): string {
  if (!unit || unit === '1') return text;
  for (const written of [unit, unit.replaceAll(' ', '·')])
    if (text.endsWith(` ${written}`)) return text.slice(0, -written.length - 1);
  return text;
}

/** What the two sides of a limit are to each other: '5.00 of 1.5 kW', '84.4, needs 80 m/s'. */
export function sidesText(limit: LimitResult, at: LimitAtStage): string {
  const { leftText: left, rightText: right } = at;
  if (left === '' && right === '') return '';
  if (left === '') return `? ${joints[limit.form]} ${right}`.replace(' ,', ',');
  if (right === '') return left;
  const first = withoutUnit(left, limit.unit?.text ?? null);
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
  const word = at.atLimit ? `${at.status}, at the limit` : at.status;
  if (at.utilisation !== null) return `${percentText(at.utilisation)}, ${word}`;
  if (at.margin !== null) return `margin ${marginText(limit, at)}, ${word}`;
  return word;
}

/** The margin with its unit, to three significant digits. */
export function marginText(limit: LimitResult, at: LimitAtStage): string {
  const number = significantText(at.margin ?? 0, 3);
  const unit = limit.unit?.text ?? '1';
  return unit === '1' ? number : `${number} ${differenceUnit(unit)}`;
}

/** A margin between two readings on a temperature scale is a difference. */
const differenceUnit = (unit: string): string =>
  unit === 'degC' || unit === '°C' ? 'K' : unit === 'degF' || unit === '°F' ? 'degR' : unit;

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
  } else clauses.push('no limits to check');
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
