// Knock-on as text: what changed, which limits flipped, which ratings stayed put while their load
// grew, which results moved and by what factor, and in one sentence what did not.

import type { KnockOn } from '#lib/analysis/index.ts';
import type { ComparedSide, ComparedStage, Comparison } from './compare-json.ts';
import type { Palette } from './columns.ts';
import { clip, padLeft, padRight, plainPalette, printableLine, widest } from './columns.ts';
import { paintTone } from './limit-lines.ts';
import { problemLines } from './problem-lines.ts';
import { changeText, counted, listing, percentText, toneOf, toneSigns } from './words.ts';

const NAME_MOST = 40;
const VALUE_MOST = 24;

/** What `compare` prints: each comparison in turn, then the errors of the sheets. */
export function compareText(
  comparisons: readonly Comparison[],
  sides: readonly ComparedSide[],
  palette: Palette = plainPalette
): string {
  const sections = comparisons.map((comparison) => comparisonLines(comparison, palette).join('\n'));
  const files = new Map(sides.map((side) => [side.file, side.results]));
  for (const [file, results] of files) {
    const errors = results.problems.filter(({ severity }) => severity === 'error');
    if (errors.length > 0)
      sections.push(problemLines({ ...results, problems: errors }, file, palette).join('\n'));
  }
  return `${sections.join('\n\n')}\n`;
}

function comparisonLines(comparison: Comparison, palette: Palette): string[] {
  const { knockOn } = comparison;
  return [
    palette.strong(headText(comparison)),
    ...section('What changed', inputLines(knockOn), palette),
    ...section('Limits that flipped', flippedLines(knockOn, palette), palette),
    ...section(
      'Ratings that stayed put while their load grew',
      stayedLines(knockOn, palette),
      palette
    ),
    ...section('Results that moved', movedLines(knockOn), palette),
    '',
    ...closing(knockOn)
  ];
}

function headText({ knockOn, from, to, tries }: Comparison): string {
  const trial = tries
    .map(
      ({ name, stage, value }) => `${name} = ${value}${stage === null ? '' : ` from ${stage} on`}`
    )
    .join(', ');
  const sameFile = from.file === to.file;
  const side = ({ title, file }: ComparedStage): string => (sameFile ? title : `${title}, ${file}`);
  const same = sameFile && knockOn.from.stage === knockOn.to.stage;
  const head = same ? to.title : `${side(from)} to ${side(to)}`;
  return printableLine(trial === '' ? head : `${head}, trying ${trial}`);
}

const section = (title: string, lines: readonly string[], palette: Palette): string[] =>
  lines.length === 0 ? [] : ['', palette.strong(title), ...lines.map((line) => `  ${line}`)];

/** Rows of texts in columns as wide as their texts, up to a most each. */
function columns(
  rows: readonly (readonly string[])[],
  most: readonly number[],
  right: ReadonlySet<number> = new Set()
): string[] {
  const clean = rows.map((row) => row.map(printableLine));
  const widths = most.map((limit, index) =>
    Math.min(limit, widest(clean.map((row) => row[index] ?? '')))
  );
  return clean.map((row) =>
    row
      .map((cell, index) => (right.has(index) ? padLeft : padRight)(cell, widths[index] ?? 0))
      .join('  ')
      .trimEnd()
  );
}

function inputLines({ changedInputs }: KnockOn): string[] {
  return columns(
    changedInputs.map(({ name, line, before, after, ratio, reason }) => [
      name,
      `${before} → ${after}`,
      ratio === null && isZero(before) ? 'new' : changeText(ratio, null),
      `line ${line}`,
      reason ?? ''
    ]),
    [NAME_MOST, 2 * VALUE_MOST, 10, 12, 60]
  );
}

const isZero = (text: string): boolean => /^0(?:\.0+)?(?![\d.e])/.test(text);

function flippedLines({ flipped }: KnockOn, palette: Palette): string[] {
  const texts = columns(
    flipped.map(
      ({ label, line, tags, before, after, beforeUtilisation, afterUtilisation, direction }) => [
        label + tags.all.map((tag) => ` [${tag}]`).join(''),
        direction === 'out' ? 'no longer inside' : 'inside again',
        `${shareText(beforeUtilisation, before)} → ${shareText(afterUtilisation, after)}`,
        `line ${line}`
      ]
    ),
    [NAME_MOST, 16, 2 * VALUE_MOST, 12]
  );
  return texts.map((text, index) => signed(flipped[index]?.after ?? 'unknown', text, palette));
}

function stayedLines({ stayedPut }: KnockOn, palette: Palette): string[] {
  const texts = columns(
    stayedPut.map(({ label, tags, line, capacityText, before, after, grew, status }) => [
      label + tags.all.map((tag) => ` [${tag}]`).join(''),
      capacityText,
      `${shareText(before, null)} → ${shareText(after, status)}`,
      grew === null ? 'new' : changeText(grew, null),
      `line ${line}`
    ]),
    [NAME_MOST, VALUE_MOST, 2 * VALUE_MOST, 10, 12]
  );
  return texts.map((text, index) => signed(stayedPut[index]?.status ?? 'unknown', text, palette));
}

function signed(
  status: KnockOn['stayedPut'][number]['status'],
  text: string,
  palette: Palette
): string {
  const tone = toneOf(status);
  return `${paintTone(palette, tone)(toneSigns[tone])} ${text}`;
}

/** '226 %, over'; the status alone where there is no percent. */
function shareText(share: number | null, status: string | null): string {
  if (share === null) return status ?? 'no percent';
  return status === null ? percentText(share) : `${percentText(share)}, ${status}`;
}

function movedLines({ moved }: KnockOn): string[] {
  return columns(
    moved.map(({ name, beforeText, afterText, ratio, change, line }) => [
      name,
      changeText(ratio, change),
      clip(withoutRepeatedUnit(beforeText, afterText), VALUE_MOST),
      '→',
      clip(afterText, VALUE_MOST + 8),
      `line ${line}`
    ]),
    [NAME_MOST, 14, VALUE_MOST, 1, VALUE_MOST + 8, 12],
    new Set([2])
  );
}

/** The first value without its unit, where the second repeats it. */
function withoutRepeatedUnit(before: string, after: string): string {
  const tail = / .*$/.exec(before)?.[0];
  return tail !== undefined && after.endsWith(tail) ? before.slice(0, -tail.length) : before;
}

/** What did not move, and what stands on one side only. */
function closing({ moved, unmoved, unmatched }: KnockOn): string[] {
  const lines =
    moved.length === 0
      ? [`No result moved by 0.5 % or more; ${counted(unmoved, 'result')} compared.`]
      : [`${counted(moved.length, 'result')} moved, ${unmoved} did not (less than 0.5 %).`];
  for (const [names, where] of [
    [unmatched.onlyBefore, 'before'],
    [unmatched.onlyAfter, 'after']
  ] as const) {
    if (names.length === 0) continue;
    const shown = names.slice(0, 12);
    const more = names.length > shown.length ? `, and ${names.length - shown.length} more` : '';
    const list = more === '' ? listing(shown) : shown.join(', ');
    lines.push(printableLine(`Only ${where} the change: ${list}${more}.`));
  }
  return lines;
}
