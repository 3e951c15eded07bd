// From an evaluation to results: rows kept where nothing in them moved, counts per stage, and every
// problem with its line in the file.

import type { NodeCheck } from '#lib/check/index.ts';
import type { SheetNode } from '#lib/model/index.ts';
import { problem, shiftProblem, nameWords, type Problem } from '#lib/problem/index.ts';
import { spanOf } from '#lib/text/index.ts';
import type { Evaluation } from './evaluation.ts';
import type { InputEvaluation } from './inputs.ts';
import { chooseResult } from './present-choices.ts';
import { limitResult } from './present-limits.ts';
import { correlationProblems, laneProblems, nodeNotices } from './present-problems.ts';
import { proseProblems } from './present-prose.ts';
import { valueResult } from './present-values.ts';
import type {
  ChooseResult, LimitCounts, LimitResult, Results, StageResult, ValueResult
} from './results.ts'; // prettier-ignore

type Row = ValueResult | LimitResult | ChooseResult;

interface KeptRow {
  readonly row: Row | null;
  readonly node: SheetNode;
  readonly check: NodeCheck | undefined;
  readonly line: number;
  /** Uncertainties the row was made from. */
  readonly signature: string;
  readonly problems: readonly Problem[];
}

/** Rows of the run before; the maps of results are copied, never written to again. */
export interface KeptRows {
  readonly rows: Map<string, KeptRow>;
  readonly values: ReadonlyMap<string, ValueResult>;
  readonly limits: ReadonlyMap<string, LimitResult>;
  readonly choices: ReadonlyMap<string, ChooseResult>;
  readonly byLine: ReadonlyMap<number, Row>;
}

export const noRows = (): KeptRows => ({
  rows: new Map(), values: new Map(), limits: new Map(), choices: new Map(), byLine: new Map()
}); // prettier-ignore

/** Whether every node stands on the line it stood on before. */
function isInPlace(before: KeptRows, evaluation: Evaluation): boolean {
  for (const [id, line] of evaluation.checked.model.lineOf) {
    if (before.rows.get(id)?.line !== line) return false;
  }
  return true;
}

export interface PresentOptions {
  /** Nodes that this run computed anew, in any group of stages. */
  readonly ran: ReadonlySet<string>;
  readonly kept: KeptRows;
  /** Some definition uses other names than before, so every row is made anew. */
  readonly isRestructured: boolean;
  readonly evaluations: ReadonlyMap<string, InputEvaluation>;
  readonly problems: readonly Problem[];
}

type Circles = readonly { readonly path: readonly string[]; readonly stage: number | null }[];

/** The results of a run, and the rows to keep for the next. */
export function presentSheet(
  evaluation: Evaluation,
  circles: Circles,
  options: PresentOptions
): { readonly results: Results; readonly kept: KeptRows } {
  // prettier-ignore
  const { model, checks } = evaluation.checked;
  const problems: Problem[] = [
    ...model.problems,
    ...options.problems,
    ...correlationProblems(evaluation),
    ...proseProblems(evaluation)
  ];
  const before = options.isRestructured ? null : options.kept;
  const rows = before ? before.rows : new Map<string, KeptRow>();
  const values = new Map(before?.values);
  const limits = new Map(before?.limits);
  const choices = new Map(before?.choices);
  const byLine =
    before && isInPlace(before, evaluation) ? new Map(before.byLine) : new Map<number, Row>();
  const isWholeByLine = byLine.size === 0;
  for (const node of model.nodes) {
    const check = checks.get(node.id);
    const line = model.lineOf.get(node.id) ?? 1;
    const known = rows.get(node.id);
    const signature = signatureOf(node, evaluation);
    const isKept =
      known?.node === node && known.check === check && known.line === line &&
      known.signature === signature && !options.ran.has(node.id); // prettier-ignore
    const kept = isKept ? known : madeRow(node, check, line, signature, evaluation, options);
    if (!isKept) rows.set(node.id, kept);
    for (const found of kept.problems) problems.push(shiftProblem(found, line));
    const { row } = kept;
    if (!row) continue;
    if (!isKept) {
      if ('label' in row) limits.set(row.label, row);
      else if ('rowNames' in row) choices.set(row.name, row);
      else values.set(row.name, row);
    }
    const hasOwnLine = node.kind !== 'column' && node.kind !== 'pick';
    if (hasOwnLine && (isWholeByLine || !isKept)) byLine.set(line, row);
  }
  problems.push(...circleProblems(circles, evaluation));
  const results: Results = {
    worksheet: model.worksheet,
    stages: model.stages.map((stage) => stageResult(stage, model.stages, limits)),
    values,
    limits,
    byLine,
    choices,
    problems: sorted(problems)
  };
  return { results, kept: { rows, values, limits, choices, byLine } };
}

function madeRow(
  node: SheetNode,
  check: NodeCheck | undefined,
  line: number,
  signature: string,
  evaluation: Evaluation,
  options: PresentOptions
): KeptRow {
  // prettier-ignore
  const problems: Problem[] = [];
  if (check) problems.push(...check.problems);
  if (node.kind === 'input') problems.push(...(options.evaluations.get(node.id)?.problems ?? []));
  // Faults first: they say why a row has no value.
  problems.push(...laneProblems(node, check, evaluation));
  const row = rowOf(node, check, evaluation);
  problems.push(...nodeNotices(node, row, evaluation));
  return { row, node, check, line, signature, problems };
}

function rowOf(node: SheetNode, check: NodeCheck | undefined, evaluation: Evaluation): Row | null {
  if (node.kind === 'limit') return limitResult(node, check, evaluation);
  if (node.kind === 'choose') return chooseResult(node, evaluation);
  return valueResult(node, check, evaluation);
}

/** Uncertainties at every stage, which may move though the node's own value did not. */
function signatureOf(node: SheetNode, evaluation: Evaluation): string {
  if (!evaluation.hasUncertainty) return '';
  let signature = '';
  for (const { index } of evaluation.checked.model.stages) {
    signature += `${evaluation.uncertaintySignature(node, index)};`;
  }
  return signature;
}

function circleProblems(circles: Circles, evaluation: Evaluation): Problem[] {
  const { model } = evaluation.checked;
  return circles.flatMap(({ path, stage }) => {
    const first = path.map((id) => model.byId.get(id)).find((node) => node?.nameCut);
    if (!first?.nameCut) return [];
    const line = model.lineOf.get(first.id) ?? 1;
    const from = path.indexOf(first.id);
    const names = [...path.slice(from), ...path.slice(0, from)];
    const options = {
      subject: first.name,
      stage: stage === null ? null : (model.stages[stage]?.id ?? null),
      related: names.slice(1).map((id) => ({ line: model.lineOf.get(id) ?? 1, from: 1, to: 2 }))
    };
    const found = problem('names/circle', spanOf(first.nameCut), nameWords.circle(names), options);
    return [{ ...shiftProblem(found, line), related: options.related }];
  });
}

function stageResult(
  stage: Evaluation['checked']['model']['stages'][number],
  stages: Evaluation['checked']['model']['stages'],
  limits: ReadonlyMap<string, LimitResult>
): StageResult {
  const stopsTheRun: string[] = [];
  for (const limit of limits.values()) {
    const status = limit.at[stage.index]?.status;
    const isBad =
      status === 'over' || status === 'short' || status === 'unknown' || status === 'fails';
    if (limit.tags.safety && isBad) stopsTheRun.push(limit.label);
  }
  return {
    id: stage.id,
    title: stage.title,
    after: stage.parent === null ? null : (stages[stage.parent]?.id ?? null),
    date: stage.date,
    built: stage.built,
    counts: countsAt(stage.index, limits),
    stopsTheRun
  };
}

function countsAt(stage: number, limits: ReadonlyMap<string, LimitResult>): LimitCounts {
  const counts = { checked: 0, inside: 0, close: 0, over: 0, unknown: 0, screens: 0, failing: 0 };
  for (const limit of limits.values()) {
    const status = limit.at[stage]?.status ?? 'unknown';
    if (limit.tags.screen) {
      counts.screens++;
      if (status === 'fails') counts.failing++;
      if (status === 'unknown') counts.unknown++;
      continue;
    }
    if (status === 'unknown') {
      counts.unknown++;
      continue;
    }
    counts.checked++;
    if (status === 'over' || status === 'short') counts.over++;
    else counts.inside++;
    if (status === 'close') counts.close++;
  }
  return counts;
}

/** By line, then column; what is the same at the same place is said once. */
function sorted(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  const unique = problems.filter((found) => {
    const key = `${found.code}|${found.at.line}|${found.at.from}|${found.stage ?? ''}|${found.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return unique.sort((a, b) => a.at.line - b.at.line || a.at.from - b.at.from);
}
