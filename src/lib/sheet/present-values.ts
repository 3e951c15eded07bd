// The results of named values: one row a node, one figure a stage.

import type { NodeCheck } from '#lib/check/index.ts';
import type { FormulaVariant, InputVariant, SheetNode, SolveVariant } from '#lib/model/index.ts';
import { cutOf } from '#lib/text/index.ts';
import { fromSI, type Unit } from '#lib/units/index.ts';
import type { Evaluation, StageFigure } from './evaluation.ts';
import type { StageValue, ValueKind, ValueResult, Variant } from './results.ts';
import { columnText, isQuantity, rowUnit, shownNumbers, textColumnText } from './rows.ts';
import { coverageFactor95 } from './verdict.ts';

/** The result of one node; null for what has no row of its own (limits, choices, derived columns). */
export function valueResult(
  node: SheetNode,
  check: NodeCheck | undefined,
  evaluation: Evaluation
): ValueResult | null {
  // prettier-ignore
  const kind = kindOf(node);
  if (!kind) return null;
  const { model } = evaluation.checked;
  const type = check?.type ?? null;
  const figures = model.stages.map((stage) => evaluation.figure(node, stage.index));
  const unit = unitOfRow(type, figures, evaluation);
  const at = stageValues(node, check, figures, unit, evaluation);
  const line = model.lineOf.get(node.id) ?? 1;
  return {
    name: node.id,
    line,
    kind,
    dimension: isQuantity(type) ? type.dimension : null,
    unit,
    rows: type?.rows ?? null,
    at,
    variants: node.variants.map((variant) => variantResult(node, variant, line, evaluation)),
    comment: node.variants[0]?.comment ?? null,
    uses: node.uses.filter((name) => !name.includes('#')),
    usedBy: evaluation.usedBy.get(node.id) ?? []
  };
}

function kindOf(node: SheetNode): ValueKind | null {
  switch (node.kind) {
    case 'input':
    case 'function':
    case 'solve':
    case 'column':
      return node.kind;
    case 'calc':
      return node.id.includes('#') ? null : 'calc';
    case 'pick':
      return 'choose';
    default:
      return null;
  }
}

function unitOfRow(
  type: NodeCheck['type'],
  figures: readonly StageFigure[],
  evaluation: Evaluation
): Unit | null {
  // prettier-ignore
  if (!isQuantity(type)) return null;
  let largest = 0;
  for (const { values } of figures) {
    for (const value of values ?? [])
      if (Number.isFinite(value)) largest = Math.max(largest, Math.abs(value));
  }
  return rowUnit(type, largest, evaluation.settings);
}

function stageValues(
  node: SheetNode,
  check: NodeCheck | undefined,
  figures: readonly StageFigure[],
  unit: Unit | null,
  evaluation: Evaluation
): readonly StageValue[] {
  // prettier-ignore
  const { digits } = evaluation.settings;
  const isSingle = check?.type?.rows === null;
  const singles = figures.map(({ values }) => (isSingle ? (values?.[0] ?? null) : null));
  const shown = unit ? shownNumbers(singles, unit, digits) : [];
  return evaluation.checked.model.stages.map((stage) => {
    const figure = figures[stage.index];
    const common = {
      error: figure?.error ?? null,
      waitsFor: figure?.waitsFor ?? [],
      variant: Math.max(0, node.variantAt[stage.index] ?? 0),
      revised: node.variants[node.variantAt[stage.index] ?? 0]?.stage === stage.index
    };
    const empty: StageValue = {
      ...common, state: figure?.state ?? 'error', value: null, si: null, text: '', number: '',
      ratio: null, change: null, standardUncertainty: null, coverage: null
    }; // prettier-ignore
    if (figure?.state !== 'value') return empty;
    if (figure.words !== null) {
      return { ...empty, value: figure.words, text: figure.words, number: figure.words };
    }
    const values = figure.values ?? [];
    if (check?.type?.kind === 'truth') {
      const holds = values[0] !== 0;
      return { ...empty, value: holds, text: holds ? 'yes' : 'no', number: holds ? 'yes' : 'no' };
    }
    if (node.kind === 'column' && !node.numbers) {
      return { ...empty, value: `${node.texts.join(', ')}`, text: textColumnText(node.texts) };
    }
    if (!unit) return empty;
    if (!isSingle) {
      const inUnit = values.map((value) => fromSI(value, unit));
      return { ...empty, value: inUnit, si: values, text: columnText(inUnit, unit, digits) };
    }
    const [si = NaN] = values;
    const own = shown[stage.index];
    const parent = stage.parent === null ? null : singles[stage.parent];
    const u = figure.standardUncertainty === null ? null : figure.standardUncertainty / unit.factor;
    const value = own?.value ?? NaN;
    return {
      ...empty,
      value,
      si,
      text: own?.text ?? '',
      number: own?.number ?? '',
      ...comparedWith(si, parent ?? null),
      standardUncertainty: u,
      coverage: u === null ? null : [value - coverageFactor95 * u, value + coverageFactor95 * u]
    };
  });
}

/** How a value moved from the one before it. */
export function comparedWith(
  now: number,
  before: number | null
): { readonly ratio: number | null; readonly change: 'new' | 'sign' | null } {
  // prettier-ignore
  if (before === null) return { ratio: null, change: null };
  if (before === now) return { ratio: 1, change: null };
  if (before === 0) return { ratio: null, change: 'new' };
  if (now !== 0 && now > 0 !== before > 0) return { ratio: null, change: 'sign' };
  return { ratio: now / before, change: null };
}

function variantResult(
  node: SheetNode,
  variant: SheetNode['variants'][number],
  line: number,
  evaluation: Evaluation
): Variant {
  // prettier-ignore
  const { stages } = evaluation.checked.model;
  const common = {
    stage: variant.stage === null ? null : (stages[variant.stage]?.id ?? null),
    comment: variant.comment,
    line: line + variant.line,
    toleranceText: null,
    within: null,
    solve: null,
    parameters: null
  };
  switch (node.kind) {
    case 'input': {
      const { value, tolerance, within } = variant as InputVariant;
      return {
        ...common,
        tree: value?.tree ?? null,
        cut: value?.cut ?? null,
        toleranceText: tolerance && tolerance.text + toleranceSuffix(tolerance.form),
        within: within && { low: within.low.cut.text, high: within.high.cut.text }
      };
    }
    case 'calc':
    case 'function': {
      const { tree, cut } = (variant as FormulaVariant).expression;
      return {
        ...common,
        tree,
        cut,
        parameters: node.kind === 'function' ? node.parameters : null
      };
    }
    case 'solve': {
      const { left, right, low, high } = variant as SolveVariant;
      const solve =
        left.tree && right.tree
          ? { unknown: node.unknown, left: left.tree, right: right.tree }
          : null;
      const range = low && high ? ` between ${low.cut.text} and ${high.cut.text}` : '';
      const text = `${node.unknown} where ${left.cut.text} == ${right.cut.text}${range}`;
      return { ...common, tree: null, cut: cutOf(text), solve };
    }
    default:
      return { ...common, tree: null, cut: null };
  }
}

function toleranceSuffix(form: {
  shape: string;
  coverage: number | null;
  degreesOfFreedom: number | null;
}): string {
  const shape =
    form.shape === 'normal'
      ? form.coverage === null || form.coverage === 1 ? ' sd' : ` k=${form.coverage}`
      : form.shape === 'rectangular' ? '' : ` ${form.shape}`; // prettier-ignore
  return shape + (form.degreesOfFreedom === null ? '' : ` dof ${form.degreesOfFreedom}`);
}
