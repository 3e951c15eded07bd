// The cells of a row of values: what stands in each stage's column. Change is the figure, rest is the
// ground: a revised value is bold with its reason's letter, a result that moved carries its factor, an
// input that keeps its value is a line running on from the last number.

import { changeText } from '#lib/render/index.ts';
import type { StageResult, StageValue, ValueResult } from '#lib/sheet/index.ts';
import type { PageContext } from './context.ts';
import { typesetNumerals, typesetQuantity } from './numbers.ts';
import type { ColumnPlace, LetterLink, ValueCell } from './types.ts';

/** Change below which a value counts as not moved: half a percent. */
const MOVED = 0.005;
/** From these factors on the factor is set bold. */
const STRONG = { up: 2, down: 0.5 };

/** The column of a stage, and whether it or another one has the focus. */
export function placeOf(context: PageContext, index: number): ColumnPlace {
  const { focus } = context.view;
  const stage = context.marks[index];
  if (!stage) throw new RangeError(`no stage ${index}`);
  return { stage, isFocus: focus === index, isDim: focus !== null && focus !== index };
}

/** Index of the stage that a stage starts from; null for a first one. */
export function parentOf(stages: readonly StageResult[], index: number): number | null {
  const after = stages[index]?.after ?? null;
  const parent = after === null ? -1 : stages.findIndex((stage) => stage.id === after);
  return parent < 0 ? null : parent;
}

export const hasMoved = (at: StageValue): boolean =>
  at.change !== null || (at.ratio !== null && Math.abs(at.ratio - 1) >= MOVED);

/** Cells in the order of the page's columns. */
export function valueCells(context: PageContext, result: ValueResult): readonly ValueCell[] {
  const { results, columns } = context;
  const isInput = result.kind === 'input';
  const firstBad = columns.find((index) => result.at[index]?.state !== 'value');
  const heldAt = columns.map((index, place) => {
    const left = columns[place - 1];
    if (!isInput || left === undefined || context.view.focus === index) return false;
    const [here, there] = [result.at[index], result.at[left]];
    // The line says "the same as on its left", which is not the parent in a branched tree of stages.
    return !!here && !!there && !here.revised && here.state === 'value' && here.text === there.text;
  });
  return columns.map((index, place) => {
    const at = result.at[index];
    if (!at) throw new RangeError(`${result.name} has no value at stage ${index}`);
    const parent = parentOf(results.stages, index);
    const moved = parent !== null && hasMoved(at);
    const repeats = index !== firstBad && saysTheSame(at, result.at[firstBad ?? -1]);
    return {
      ...placeOf(context, index),
      state: repeats ? 'after' : at.state,
      isWords: at.state === 'value' && typeof at.value !== 'number',
      text: repeats ? '–' : cellText(at),
      full: fullText(at, result),
      isRevised: at.revised,
      isQuiet: !isInput && parent !== null && !moved && at.state === 'value',
      isHeld: heldAt[place] === true,
      leads: heldAt[place + 1] === true && heldAt[place] === false,
      letter: at.revised ? letterOf(context, result, at) : null,
      factor: moved
        ? {
            text: changeText(at.ratio, at.change),
            isStrong: at.ratio !== null && (at.ratio >= STRONG.up || at.ratio <= STRONG.down)
          }
        : null
    };
  });
}

const letterOf = (context: PageContext, result: ValueResult, at: StageValue): LetterLink | null =>
  context.letters.linkOf(result.variants[at.variant]?.line ?? 0);

/** Whether a cell without a value would only repeat the words of the row's first one. */
const saysTheSame = (at: StageValue, first: StageValue | undefined): boolean =>
  at.state !== 'value' && at.state === first?.state && at.waitsFor.join() === first.waitsFor.join();

function cellText(at: StageValue): string {
  switch (at.state) {
    case 'value':
      return typesetNumerals(at.number === '' ? at.text : at.number);
    case 'unknown':
      return 'needs a value';
    case 'waits':
      return `waits for ${at.waitsFor.join(', ')}`;
    case 'error':
      return 'see below';
  }
}

function fullText(at: StageValue, result: ValueResult): string | null {
  if (at.state !== 'value' || typeof at.value !== 'number') return null;
  const uncertainty =
    at.standardUncertainty === null
      ? ''
      : `, standard uncertainty ${typesetQuantity(at.standardUncertainty.toPrecision(2), result.unit)}`;
  return typesetQuantity(String(at.value), result.unit) + uncertainty;
}
