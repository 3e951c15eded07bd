// The results of limits: the verdict at every stage, both sides in one unit.

import type { NodeCheck } from '#lib/check/index.ts';
import { constantValue } from '#lib/lanes/index.ts';
import type { LimitNode, LimitVariant } from '#lib/model/index.ts';
import { fromSI, type Unit } from '#lib/units/index.ts';
import type { Place } from './compile.ts';
import type { Evaluation } from './evaluation.ts';
import type { LimitAtStage, LimitResult } from './results.ts';
import { rowUnit, shownNumbers } from './rows.ts';
import { judge, type LimitFigures, type Verdict } from './verdict.ts';

/** The result of one limit. */
export function limitResult(
  node: LimitNode,
  check: NodeCheck | undefined,
  evaluation: Evaluation
): LimitResult {
  // prettier-ignore
  const { stages, lineOf } = evaluation.checked.model;
  const judged = stages.map((stage) => judgedAt(node, check, stage.index, evaluation));
  const type = check?.sides.find((side) => side !== null) ?? null;
  let largest = 0;
  for (const each of judged) {
    for (const side of each?.sides ?? []) {
      if (side !== null && Number.isFinite(side)) largest = Math.max(largest, Math.abs(side));
    }
  }
  const unit = type && rowUnit(type, largest, evaluation.settings);
  const line = lineOf.get(node.id) ?? 1;
  return {
    label: node.label,
    line,
    tags: node.tags,
    form: node.variants[0]?.form ?? 'demand<=capacity',
    unit,
    at: limitStages(node, judged, unit, evaluation),
    variants: node.variants.map((variant) => ({
      stage: variant.stage === null ? null : (stages[variant.stage]?.id ?? null),
      sides: variant.sides.map((side) => side?.tree ?? null),
      comment: variant.comment,
      line: line + variant.line
    })),
    comment: node.variants[0]?.comment ?? null,
    uses: node.uses
  };
}

interface Judged {
  readonly sides: readonly (number | null)[];
  readonly verdict: Verdict;
}

/** null: a side has no value, or the limit is judged by load cases, which are not computed yet. */
function judgedAt(
  node: LimitNode,
  check: NodeCheck | undefined,
  stage: number,
  evaluation: Evaluation
): Judged | null {
  // prettier-ignore
  if (evaluation.state(node.id, stage) !== 'value' || node.tags.worstOf.length > 0) return null;
  const index = node.variantAt[stage] ?? 0;
  const variant = node.variants[index];
  const [group, lane] = evaluation.lane(stage);
  const places = group.nodes.get(node.id)?.places ?? [];
  if (!variant) return null;
  const { sides, tolerance } = placesOfSides(variant, places);
  const values = sides.map((place) => place && group.valueAt(place, lane));
  const figures: LimitFigures = {
    form: variant.form,
    sides: values,
    tolerance: tolerance && group.valueAt(tolerance, lane),
    isLevel: node.tags.level || check?.sides[index]?.temperature === 'point',
    isSafety: node.tags.safety,
    isScreen: node.tags.screen,
    close: closeOf(node),
    uncertainty: (left, right) =>
      evaluation.uncertaintyOfDifference(sides[left] ?? null, sides[right] ?? null, stage)
  };
  return { sides: values, verdict: judge(figures) };
}

function placesOfSides(
  variant: LimitVariant,
  places: readonly Place[]
): { readonly sides: readonly (Place | null)[]; readonly tolerance: Place | null } {
  // prettier-ignore
  let next = 0;
  const sides = variant.sides.map((side) => (side ? (places[next++] ?? null) : null));
  return { sides, tolerance: variant.tolerance ? (places[next] ?? null) : null };
}

function closeOf(node: LimitNode): LimitFigures['close'] {
  const { close } = node;
  if (!close?.amount.tree) return null;
  const { tree, cut } = close.amount;
  const offset = tree.kind === 'quantity' ? tree.unit.offset : 0;
  return { kind: close.kind, amount: constantValue(tree, cut) - offset };
}

function limitStages(
  node: LimitNode,
  judged: readonly (Judged | null)[],
  unit: Unit | null,
  evaluation: Evaluation
): readonly LimitAtStage[] {
  // prettier-ignore
  const { digits } = evaluation.settings;
  const side = (of: 'left' | 'right'): readonly (number | null)[] =>
    judged.map((each) => each?.sides[each.verdict[of]] ?? null);
  const [left, right] = [side('left'), side('right')];
  const leftShown = unit ? shownNumbers(left, unit, digits) : [];
  const rightShown = unit ? shownNumbers(right, unit, digits) : [];
  return evaluation.checked.model.stages.map((stage, i): LimitAtStage => {
    const each = judged[i];
    const variant = Math.max(0, node.variantAt[stage.index] ?? 0);
    const revised = node.variants[variant]?.stage === stage.index;
    if (!each || !unit) {
      const figure = evaluation.figure(node, stage.index);
      return {
        status: 'unknown', atLimit: false, left: null, right: null, leftText: '', rightText: '',
        utilisation: null, margin: null, chanceOver: null, waitsFor: figure.waitsFor,
        error: figure.error, variant, revised
      }; // prettier-ignore
    }
    const { verdict } = each;
    const [l, r] = [left[i] ?? null, right[i] ?? null];
    return {
      status: verdict.status,
      atLimit: verdict.atLimit,
      left: l === null ? null : fromSI(l, unit),
      right: r === null ? null : fromSI(r, unit),
      leftText: leftShown[i]?.text ?? '',
      rightText: r === null ? 'none' : (rightShown[i]?.text ?? ''),
      utilisation: verdict.utilisation,
      margin: verdict.margin === null ? null : verdict.margin / unit.factor,
      chanceOver: verdict.chanceOver,
      waitsFor: [],
      error: null,
      variant,
      revised
    };
  });
}
