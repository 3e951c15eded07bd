// What an input is at each stage: its value, its standard uncertainty, and whether it keeps to its
// own range. Tolerances become standard uncertainties as JCGM 100:2008 has it: a bound is a
// rectangular distribution (4.3.7, a/sqrt 3), a triangle a/sqrt 6 (4.3.9), a multiple k of the
// standard deviation U/k (4.3.3); an arcsine a/sqrt 2 (JCGM 101:2008, 6.4.6; from memory).

import type { NodeCheck } from '#lib/check/index.ts';
import { constantValue, isConstant } from '#lib/lanes/index.ts';
import type { InputNode, InputVariant, Parsed } from '#lib/model/index.ts';
import { problem, temperatureWords, valueWords, type Problem } from '#lib/problem/index.ts';
import { spanOf } from '#lib/text/index.ts';
import { formatSignificant, fromSI, type Unit } from '#lib/units/index.ts';

/** One variant of an input, evaluated. */
export interface InputFigures {
  /** SI; NaN where it has a mistake, waits or is not known yet. */
  readonly value: number;
  readonly state: 'value' | 'error' | 'waits' | 'unknown';
  /** SI; 0 where it has no tolerance. */
  readonly standardUncertainty: number;
  /** SI ends of `within`. */
  readonly range: readonly [number, number] | null;
}

/** Figures of every variant, and what is to be said about them; lines from 0 at the entry. */
export interface InputEvaluation {
  readonly figures: readonly InputFigures[];
  readonly problems: readonly Problem[];
}

/** Evaluates an input's variants. `check` is that of the same node. */
export function evaluateInput(node: InputNode, check: NodeCheck): InputEvaluation {
  const problems: Problem[] = [];
  const type = check.type?.kind === 'quantity' ? check.type : null;
  let range: readonly [number, number] | null = null;
  const figures = node.variants.map((variant, index): InputFigures => {
    if (variant.within) range = rangeOf(node, variant, problems);
    if (variant.isUnknown) return { value: NaN, state: 'unknown', standardUncertainty: 0, range };
    if (variant.fitted !== null && check.waitsFor.includes(variant.fitted)) {
      return { value: NaN, state: 'waits', standardUncertainty: 0, range };
    }
    const failed: InputFigures = { value: NaN, state: 'error', standardUncertainty: 0, range };
    if (!check.isVariantSound[index] || !variant.value?.tree) return failed;
    const { tree, cut } = variant.value;
    const value = constantValue(tree, cut);
    if (!Number.isFinite(value)) {
      const words = valueWords.notFinite(cut.text, 'it has no finite value');
      problems.push(problem('value/not-finite', spanOf(cut), words, { subject: node.id }));
      return failed;
    }
    if (type?.temperature === 'point' && value < 0) {
      const words = temperatureWords.belowZero(node.id, `${formatSignificant(value, 4)} K`);
      problems.push(problem('temperature/below-zero', spanOf(cut), words, { subject: node.id }));
      return failed;
    }
    const unit = type?.unit ?? null;
    if (range && (value < range[0] || value > range[1])) {
      const words = valueWords.outsideWithin(
        node.id, withUnit(value, unit), withUnit(range[0], unit), withUnit(range[1], unit)
      ); // prettier-ignore
      problems.push(
        problem('value/outside-within', spanOf(cut), words, {
          severity: 'warning',
          subject: node.id
        })
      );
    }
    const standardUncertainty = uncertaintyOf(node, variant, value, unit, problems);
    if (index > 0 && !variant.tolerance) noteLostTolerance(node, index, problems);
    return { value, state: 'value', standardUncertainty, range };
  });
  return { figures, problems };
}

function rangeOf(
  node: InputNode,
  variant: InputVariant,
  problems: Problem[]
): readonly [number, number] | null {
  // prettier-ignore
  const within = variant.within;
  if (!within?.low.tree || !within.high.tree) return null;
  const low = constantValue(within.low.tree, within.low.cut);
  const high = constantValue(within.high.tree, within.high.cut);
  if (low < high) return [low, high];
  const ends = [within.low, within.high];
  if (ends.some(({ tree, cut }) => tree && !isConstant(tree, cut))) return null; // said by the check
  const words = valueWords.reversedWithin(node.id, within.low.cut.text, within.high.cut.text);
  problems.push(
    problem('value/outside-within', spanOf(within.low.cut), words, { subject: node.id })
  );
  return null;
}

/** Standard uncertainty [SI] of one variant. */
function uncertaintyOf(
  node: InputNode,
  variant: InputVariant,
  value: number,
  unit: Unit | null,
  problems: Problem[]
): number {
  // prettier-ignore
  const tolerance = variant.tolerance;
  if (!tolerance?.amount.tree) return 0;
  const amount = amountOf(tolerance.amount);
  const { tree, cut } = tolerance.amount;
  const isShare = tree.kind === 'quantity' && tree.unit.text === '%' && unit?.text !== '%';
  if (isShare && value === 0) {
    const words = valueWords.percentOfZero(node.id);
    problems.push(problem('value/negative-tolerance', spanOf(cut), words, { subject: node.id }));
    return 0;
  }
  if (!isConstant(tree, cut)) return 0; // said by the check
  if (!(amount > 0)) {
    const words = valueWords.negativeTolerance(node.id, cut.text);
    problems.push(problem('value/negative-tolerance', spanOf(cut), words, { subject: node.id }));
    return 0;
  }
  const half = isShare ? amount * Math.abs(value) : amount;
  return half / divisors[tolerance.form.shape](tolerance.form.coverage ?? 1);
}

const divisors = {
  rectangular: () => Math.sqrt(3),
  normal: (coverage: number) => coverage,
  triangular: () => Math.sqrt(6),
  arcsine: () => Math.SQRT2
} as const;

/** `± 2 degC` is an interval of 2 K, not a point. */
function amountOf(parsed: Parsed): number {
  if (!parsed.tree) return NaN;
  const offset = parsed.tree.kind === 'quantity' ? parsed.tree.unit.offset : 0;
  return constantValue(parsed.tree, parsed.cut) - offset;
}

function noteLostTolerance(node: InputNode, index: number, problems: Problem[]): void {
  const before = node.variants.slice(0, index).findLast((variant) => variant.tolerance !== null);
  const variant = node.variants[index];
  const last = node.variants[index - 1];
  if (!before?.tolerance || !variant?.value || !last?.tolerance) return;
  const words = valueWords.toleranceLost(node.id, `± ${before.tolerance.text}`);
  problems.push(
    problem('value/tolerance-lost', spanOf(variant.value.cut), words, {
      severity: 'note',
      subject: node.id
    })
  );
}

function withUnit(si: number, unit: Unit | null): string {
  const value = formatSignificant(unit ? fromSI(si, unit) : si, 4);
  return unit && unit.text !== '1' ? `${value} ${unit.text}` : value;
}
