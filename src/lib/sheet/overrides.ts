// Other values for inputs, as a trial or a call of the command line gives them. They replace an input
// at every stage asked, whatever is revised there; the text is not touched.

import { ExpressionCheck, type CheckedModel } from '#lib/check/index.ts';
import { constantValue } from '#lib/lanes/index.ts';
import { parseExpression } from '#lib/language/index.ts';
import {
  lineWords, nameWords, problem, unitWords, valueWords, type Problem, type Span
} from '#lib/problem/index.ts'; // prettier-ignore
import { canonicalName, cutOf } from '#lib/text/index.ts';
import { dropAngle } from '#lib/units/index.ts';

export interface Override {
  readonly name: string;
  /** A constant expression, as typed: '72 m/s'. */
  readonly value: string;
  /** From this stage on; null for all. */
  readonly stage: string | null;
}

export interface OverrideFigures {
  /** SI at a stage; undefined where the override does not reach. */
  at(stage: number): number | undefined;
}

/** Overrides by input; what does not fit is a problem at the input's own line. */
export function readOverrides(
  overrides: readonly Override[],
  checked: CheckedModel
): {
  readonly figures: ReadonlyMap<string, OverrideFigures>;
  readonly problems: readonly Problem[];
} {
  // prettier-ignore
  const problems: Problem[] = [];
  const values = new Map<string, Map<number, number>>();
  for (const override of overrides) {
    const name = canonicalName(override.name);
    const at: Span = { line: checked.model.lineOf.get(name) ?? 1, from: 1, to: 2 };
    const report = (found: Problem): void =>
      void problems.push({ ...found, at, subject: name, fix: null });
    const value = overrideValue(override, name, checked, at, report);
    if (value === null) continue;
    const { stages } = checked.model;
    const from =
      override.stage === null ? null : stages.find((stage) => stage.id === override.stage);
    if (from === undefined) {
      const declared = stages.map((stage) => stage.id);
      report(
        problem('line/unknown-stage', at, lineWords.unknownStage(override.stage ?? '', declared))
      );
      continue;
    }
    const reached = values.get(name) ?? new Map<number, number>();
    for (const stage of stages) {
      if (from === null || stage.lineage.includes(from.index)) reached.set(stage.index, value);
    }
    values.set(name, reached);
  }
  const figures = new Map<string, OverrideFigures>();
  for (const [name, reached] of values) figures.set(name, { at: (stage) => reached.get(stage) });
  return { figures, problems };
}

function overrideValue(
  override: Override,
  name: string,
  checked: CheckedModel,
  at: Span,
  report: (found: Problem) => void
): number | null {
  // prettier-ignore
  const node = checked.model.byId.get(name);
  if (node?.kind !== 'input') {
    report(
      problem(
        'names/unknown',
        at,
        node
          ? { message: `${name} is not an input, so it cannot be tried.` }
          : nameWords.unknownName(name)
      )
    );
    return null;
  }
  const cut = cutOf(override.value);
  const { tree, problems } = parseExpression(cut, {
    money: checked.model.worksheet.frontMatter.money
  });
  problems.forEach(report);
  if (!tree) return null;
  const check = new ExpressionCheck({ typeOf: () => undefined, functionOf: () => undefined }, cut);
  const found = check.type(tree);
  check.problems.forEach(report);
  const wanted = checked.checks.get(name)?.type;
  if (found?.kind !== 'quantity' || wanted?.kind !== 'quantity') {
    if (check.problems.length === 0)
      report(problem('value/needs-a-value', at, valueWords.needsAValue(name)));
    return null;
  }
  if (wanted.unit) {
    // Taken to the input's own unit by the rules of `to`: 10 Hz is no 10 rad/s.
    const shown = check.shownIn(tree, found, wanted.unit);
    check.problems.filter(({ severity }) => severity === 'error').forEach(report);
    if (!shown) return null;
  } else if (dropAngle(found.dimension) !== dropAngle(wanted.dimension)) {
    report(problem('units/mismatch', at, unitWords.cannotShow(override.value, '1', name)));
    return null;
  }
  const value = constantValue(tree, cut);
  if (Number.isFinite(value)) return value;
  report(
    problem('value/not-finite', at, valueWords.notFinite(override.value, 'it has no finite value'))
  );
  return null;
}
