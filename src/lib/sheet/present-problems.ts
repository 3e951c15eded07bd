// What is to be said about a node beyond its check: lanes that went bad, methods that have doubts,
// letters that are read as units, a choice that would now fall otherwise.

import { ExpressionCheck, type CheckScope, type NodeCheck } from '#lib/check/index.ts';
import { visit, nodeSpan } from '#lib/language/index.ts';
import { traceLane } from '#lib/lanes/index.ts';
import type {
  ChooseNode, FormulaVariant, InputVariant, LimitVariant, Parsed, SheetNode, SolveNode, SolveVariant
} from '#lib/model/index.ts'; // prettier-ignore
import {
  chooseWords, nameWords, problem, sheetWords, shiftSpan, unitWords, valueWords, type Problem
} from '#lib/problem/index.ts'; // prettier-ignore
import { cutOf, spanOf, type Cut } from '#lib/text/index.ts';
import { instructionLimit } from '#lib/lanes/index.ts';
import type { Unit } from '#lib/units/index.ts';
import type { Evaluation } from './evaluation.ts';
import { faultProblem, reportNotice, type FaultContext } from './faults.ts';
import { rankingAt } from './present-choices.ts';
import type { ChooseResult, LimitResult, ValueResult } from './results.ts';

/** Problems of the lanes of a node that went bad by themselves; lines from 0 at the entry. */
export function laneProblems(
  node: SheetNode,
  check: NodeCheck | undefined,
  evaluation: Evaluation
): Problem[] {
  // prettier-ignore
  const { model } = evaluation.checked;
  const problems: Problem[] = [];
  const byMessage = new Map<string, { found: Problem; stages: number }>();
  for (const { index, id } of model.stages) {
    const [group, lane] = evaluation.lane(index);
    const kept = group.nodes.get(node.id);
    if (!kept || node.kind === 'input' || node.kind === 'function') continue;
    const stage = model.stages.length > 1 ? id : null;
    const context = contextOf(node, check, index, stage, evaluation);
    if (kept.isTooLong) {
      const words = sheetWords.tooManyInstructions(context.subject, instructionLimit);
      const at = spanOf(context.home.cut);
      evaluation.faultCodes.set(`${node.id}@${index}`, 'sheet/budget');
      problems.push(problem('sheet/budget', at, words, { subject: context.subject }));
      break;
    }
    for (const report of kept.reports) {
      if (report.lane !== lane) continue;
      const notice = reportNotice(report, context);
      if (!notice) continue;
      problems.push(
        problem(notice.code, spanOf(context.home.cut), notice.words, {
          severity: notice.code === 'solve/several' ? 'note' : 'warning', stage, subject: context.subject
        })
      ); // prettier-ignore
    }
    if (!kept.segment || evaluation.state(node.id, index) !== 'error') continue;
    const found = faultProblem(traceLane(kept.segment, group.file, lane), context);
    evaluation.faultCodes.set(`${node.id}@${index}`, found.code);
    const key = `${found.code}|${found.message}`;
    const same = byMessage.get(key);
    if (same) same.stages++;
    else byMessage.set(key, { found, stages: 1 });
  }
  // The same at several stages is said once, of no stage in particular.
  for (const { found, stages } of byMessage.values()) {
    problems.push(stages > 1 ? { ...found, stage: null } : found);
  }
  return problems;
}

function contextOf(
  node: SheetNode,
  check: NodeCheck | undefined,
  stage: number,
  stageId: string | null,
  evaluation: Evaluation
): FaultContext {
  // prettier-ignore
  const { checks, model } = evaluation.checked;
  const cuts = cutsOf(node, node.variantAt[stage] ?? 0);
  const scope: CheckScope = {
    typeOf: (name) => checks.get(name)?.type,
    functionOf: () => undefined
  };
  const type = check?.type?.kind === 'quantity' ? check.type : null;
  const name = node.id.slice(node.id.indexOf('#') + 1);
  return {
    subject: node.kind === 'limit' ? node.label : name,
    scope,
    home: { cut: cuts[0] ?? node.nameCut ?? cutOf(' '), line: model.lineOf.get(node.id) ?? 1 },
    stage: stageId,
    unknown:
      node.kind === 'solve'
        ? { name: node.unknown, unit: type?.unit ?? null, sidesUnit: sidesUnit(node, stage, scope) }
        : null,
    strictest: node.kind === 'choose' ? strictestCondition(node, stage, evaluation) : null,
    reads: node.uses,
    emptyRow: (id) => {
      const column = model.byId.get(id);
      const row = column?.kind === 'column' ? (column.numbers?.findIndex(Number.isNaN) ?? -1) : -1;
      return row < 0 ? null : row + 1;
    },
    isOwn: (cut) => cuts.includes(cut)
  };
}

/** The unit of the first side of a solve that has one of its own. */
function sidesUnit(node: SolveNode, stage: number, scope: CheckScope): Unit | null {
  const variant = node.variants[node.variantAt[stage] ?? 0];
  for (const side of variant ? [variant.right, variant.left] : []) {
    const type = side.tree && new ExpressionCheck(scope, side.cut).type(side.tree);
    if (type?.kind === 'quantity' && type.unit) return type.unit;
  }
  return null;
}

/** The cuts of a node's expressions at a variant. */
function cutsOf(node: SheetNode, index: number): readonly Cut[] {
  return parsedOf(node, index).map((parsed) => parsed.cut);
}

function parsedOf(node: SheetNode, index: number): readonly Parsed[] {
  const variant = node.variants[index];
  if (!variant) return [];
  switch (node.kind) {
    case 'calc':
    case 'function':
      return [(variant as FormulaVariant).expression];
    case 'input': {
      const { value, tolerance, within } = variant as InputVariant;
      return [value, tolerance?.amount, within?.low, within?.high].flatMap((each) => each ?? []);
    }
    case 'limit': {
      const { sides, tolerance } = variant as LimitVariant;
      return [...sides, tolerance].flatMap((each) => each ?? []);
    }
    case 'solve': {
      const { left, right, low, high } = variant as SolveVariant;
      return [left, right, low, high].flatMap((each) => each ?? []);
    }
    default:
      return [];
  }
}

function strictestCondition(
  node: ChooseNode,
  stage: number,
  evaluation: Evaluation
): string | null {
  const { excludedBy } = rankingAt(node, stage, evaluation);
  const counts = new Map<number, number>();
  for (const failed of excludedBy) for (const i of failed) counts.set(i, (counts.get(i) ?? 0) + 1);
  const [worst] = [...counts].sort((a, b) => b[1] - a[1]);
  const condition = worst && node.variants[node.variantAt[stage] ?? 0]?.conditions[worst[0]];
  if (!condition) return null;
  return condition.kind === 'words'
    ? `${condition.column} is "${condition.words}"`
    : condition.test.cut.text;
}

/** Notices: letters read as units, unused load cases, a ranking that moved. */
export function nodeNotices(
  node: SheetNode,
  row: ValueResult | LimitResult | ChooseResult | null,
  evaluation: Evaluation
): Problem[] {
  // prettier-ignore
  const problems: Problem[] = [...unitLetters(node, evaluation), ...shadowedVariables(node, evaluation)];
  if (node.kind === 'limit' && node.tags.worstOf.length > 0 && node.nameCut) {
    const words = sheetWords.worstOfNotYet(node.label);
    problems.push(
      problem('sheet/not-computed-yet', spanOf(node.nameCut), words, { severity: 'warning' })
    );
  }
  if (node.kind === 'choose' && row && 'rowNames' in row) {
    problems.push(...rankingsMoved(node, row, evaluation));
  }
  return problems;
}

/** A pinned row that its choice would no longer give; the same at several stages is said once. */
function rankingsMoved(node: ChooseNode, row: ChooseResult, evaluation: Evaluation): Problem[] {
  const byMessage = new Map<string, Problem>();
  for (const [stage, at] of row.at.entries()) {
    const best = at.ranking[0];
    const take = node.variants[node.variantAt[stage] ?? 0]?.take;
    if (!take || !at.taken || at.row === null || best === undefined || best === at.row) continue;
    const words = chooseWords.rankingMoved(
      node.id, row.rowNames[at.row] ?? '', row.rowNames[best] ?? ''
    ); // prettier-ignore
    const same = byMessage.get(words.message);
    const id = evaluation.checked.model.stages[stage]?.id ?? null;
    const place = shiftSpan(spanOf(take.cut), take.line);
    const options = { severity: 'note', stage: same ? null : id } as const;
    byMessage.set(words.message, problem('choose/ranking-moved', place, words, options));
  }
  return [...byMessage.values()];
}

/** `3 m` is three metres even where m is a mass: said once a line. */
function unitLetters(node: SheetNode, evaluation: Evaluation): Problem[] {
  const { byId } = evaluation.checked.model;
  if (!evaluation.hasNamesLikeUnits) return [];
  const problems: Problem[] = [];
  for (const index of node.variants.keys()) {
    for (const { tree, cut } of parsedOf(node, index)) {
      if (!tree) continue;
      visit(tree, (each) => {
        if (each.kind !== 'quantity' || each.unit.atoms.length === 0) return;
        const letter = each.unit.atoms.find((atom) => byId.has(atom.symbol))?.symbol;
        if (!letter) return;
        const words = unitWords.readAsUnit(letter, cut.text.slice(each.from, each.to));
        problems.push(
          problem('units/read-as-unit', nodeSpan(cut, each), words, { severity: 'note' })
        );
      });
    }
  }
  return problems;
}

/** The variable of an integral that is also a name of the sheet. */
function shadowedVariables(node: SheetNode, evaluation: Evaluation): Problem[] {
  const { byId, lineOf } = evaluation.checked.model;
  const own = node.kind === 'function' ? node.parameters : [];
  const problems: Problem[] = [];
  for (const index of node.variants.keys()) {
    for (const { tree, cut } of parsedOf(node, index)) {
      if (!tree || !cut.text.includes('integrate')) continue;
      visit(tree, (each) => {
        if (each.kind !== 'call' || each.callee !== 'integrate') return;
        const variable = each.args[1];
        if (variable?.kind !== 'name' || !byId.has(variable.name) || own.includes(variable.name))
          return;
        const words = nameWords.shadowsName(variable.name, lineOf.get(variable.name) ?? null);
        problems.push(
          problem('line/duplicate-name', nodeSpan(cut, variable), words, { severity: 'note' })
        );
      });
    }
  }
  return problems;
}

/** Correlations between names that are no inputs, or outside -1 to 1. */
export function correlationProblems(evaluation: Evaluation): Problem[] {
  const { model } = evaluation.checked;
  const problems: Problem[] = [];
  for (const { first, second, coefficient, line, cuts } of model.correlations) {
    for (const [i, name] of [first, second].entries()) {
      const cut = cuts[i];
      if (!cut || model.byId.get(name)?.kind === 'input') continue;
      const at = { ...spanOf(cut), line: spanOf(cut).line + line };
      problems.push(problem('names/unknown', at, nameWords.unknownName(name)));
    }
    if (!coefficient.tree) continue;
    const check = new ExpressionCheck(
      { typeOf: () => undefined, functionOf: () => undefined },
      coefficient.cut
    );
    const type = check.type(coefficient.tree);
    const value =
      coefficient.tree.kind === 'number' || coefficient.tree.kind === 'sign'
        ? Number(coefficient.cut.text)
        : NaN;
    if (type && Math.abs(value) <= 1) continue;
    const at = { ...spanOf(coefficient.cut), line: spanOf(coefficient.cut).line + line };
    problems.push(
      problem('value/outside-domain', at, valueWords.correlationOutside(coefficient.cut.text))
    );
  }
  return problems;
}
