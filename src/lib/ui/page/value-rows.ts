// Rows that carry values: inputs, formulas (revised forms under the first), own functions and found
// values. One row is one entry of the file; its problems come with it.

import type { Comment } from '#lib/document/index.ts';
import type { StageValue, ValueResult, Variant } from '#lib/sheet/index.ts';
import { isUnitFault, parseUnit, unitLabel, type Unit } from '#lib/units/index.ts';
import { valueCells } from './cells.ts';
import { markOf, shownMark, type PageContext } from './context.ts';
import { definitionTex, nameTex, solveTex, unitOrBlank, withNumbersTex } from './typeset.ts';
import { typesetNumerals, typesetQuantity, typesetWithUnit } from './numbers.ts';
import type { CalcRow, Form, InputRow, ProblemNote, Words } from './types.ts';

export const wordsOf = (comment: Comment | null): Words => ({
  what: comment?.what.trim() || null,
  source: comment?.source?.trim() || null
});

/** Anchor of the row that begins on a line of the file. */
export const lineId = (line: number): string => `line-${line}`;

/** The row of an input. */
export function inputRow(
  context: PageContext,
  result: ValueResult,
  problems: readonly ProblemNote[]
): InputRow {
  const [base] = result.variants;
  return {
    kind: 'input',
    id: lineId(result.line),
    problems,
    name: result.name,
    tex: nameTex(result.name),
    words: wordsOf(result.comment),
    tolerance: base?.toleranceText ? `± ${writtenQuantity(context, base.toleranceText)}` : null,
    within: base?.within ? rangeText(context, base.within) : null,
    unit: unitOrBlank(result.unit),
    isConstant: !result.at.some((at) => at.revised),
    cells: valueCells(context, result)
  };
}

const rangeText = (context: PageContext, range: NonNullable<Variant['within']>): string =>
  `${writtenQuantity(context, range.low)} to ${writtenQuantity(context, range.high)}`;

/** A quantity as the author wrote it, its unit typeset; any other text as it stands. */
export function writtenQuantity(context: PageContext, text: string): string {
  const [, number = '', written = '', suffix = ''] =
    /^(\S+)\s+(.+?)(\s+(?:sd|k=.*|dof.*|triangular|arcsine))?$/.exec(text.trim()) ?? [];
  const unit = parseUnit(written, context.results.worksheet.frontMatter.money);
  return number === '' || isUnitFault(unit)
    ? typesetNumerals(text)
    : `${typesetNumerals(number)}\u00a0${unitLabel(unit)}${suffix}`;
}

/** The row of a formula, a function or a found value. */
export function calcRow(
  context: PageContext,
  result: ValueResult,
  problems: readonly ProblemNote[]
): CalcRow {
  return {
    kind: 'calc',
    id: lineId(result.line),
    problems,
    name: result.name,
    forms: formsOf(context, result),
    withNumbers: withNumbersOf(context, result),
    words: wordsOf(result.comment),
    found: foundWords(context, result),
    unit: result.kind === 'function' ? '' : unitOrBlank(result.unit),
    cells: result.kind === 'function' ? [] : valueCells(context, result)
  };
}

function formsOf(context: PageContext, result: ValueResult): readonly Form[] {
  return result.variants.flatMap((variant) => {
    const tex = variantTex(result, variant);
    if (tex === null) return [];
    return [
      {
        tex,
        from: variant.stage === null ? null : markOf(context, variant.stage),
        letter: variant.stage === null ? null : context.letters.linkOf(variant.line)
      }
    ];
  });
}

/** null where the formula has a mistake: the line stands in its problem as written. */
function variantTex(result: ValueResult, variant: Variant): string | null {
  if (variant.solve) return solveTex(result.name, variant.solve);
  if (variant.tree === null) return null;
  // An unnamed result is called by its line ('line 31'): the formula stands alone.
  const isUnnamed = result.name.includes(' ');
  return definitionTex(isUnnamed ? null : result.name, variant.parameters, variant.tree);
}

function withNumbersOf(context: PageContext, result: ValueResult): CalcRow['withNumbers'] {
  const { view } = context;
  const at = result.at[view.shown];
  const variant = result.variants[at?.variant ?? 0];
  if (!view.hasNumbers || result.kind !== 'calc' || at?.state !== 'value' || !variant?.tree)
    return null;
  const tex = withNumbersTex(context.results, variant.tree, view.shown, at, result.unit);
  return tex === null ? null : { tex, stage: shownMark(context) };
}

function foundWords(context: PageContext, result: ValueResult): string | null {
  if (result.kind !== 'solve') return null;
  const within = result.variants[0]?.within;
  if (!within) return 'found by search';
  const [low, high] = [within.low, within.high].map((side) => writtenQuantity(context, side));
  return `found between ${low ?? ''} and ${high ?? ''}`;
}

/** A value at a stage as text with its unit; words for one that has none. */
export function valueText(at: StageValue, unit: Unit | null): string {
  if (at.state === 'value') {
    const isNumber = typeof at.value === 'number' && at.number !== '';
    return isNumber ? typesetQuantity(at.number, unit) : typesetWithUnit(at.text, unit);
  }
  return at.state === 'waits' ? `waits for ${at.waitsFor.join(', ')}` : 'not known';
}
