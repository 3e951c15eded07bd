// The results of choices: which row, how the rows rank, and which condition keeps a row out.

import type { ChooseNode } from '#lib/model/index.ts';
import type { Evaluation } from './evaluation.ts';
import type { ChooseAtStage, ChooseResult } from './results.ts';

/** Places of a choice: see `compile.ts`. */
const firstCondition = 3;

export function chooseResult(node: ChooseNode, evaluation: Evaluation): ChooseResult {
  const { stages, lineOf } = evaluation.checked.model;
  return {
    name: node.id,
    line: lineOf.get(node.id) ?? 1,
    table: node.table,
    rowNames: node.rowNames,
    at: stages.map((stage) => choiceAt(node, stage.index, evaluation))
  };
}

function choiceAt(node: ChooseNode, stage: number, evaluation: Evaluation): ChooseAtStage {
  const figure = evaluation.figure(node, stage);
  const state = figure.state === 'unknown' ? 'waits' : figure.state;
  const table = rankingAt(node, stage, evaluation);
  const variant = node.variants[node.variantAt[stage] ?? 0];
  const row = state === 'value' ? (figure.values?.[0] ?? null) : null;
  return {
    state,
    row,
    taken: row !== null && variant?.take !== null,
    ranking: state === 'waits' ? [] : table.ranking,
    excludedBy: state === 'waits' ? [] : table.excludedBy,
    waitsFor: figure.waitsFor
  };
}

/** Rows that meet every condition, best first; and for each row the conditions it does not meet. */
export function rankingAt(
  node: ChooseNode,
  stage: number,
  evaluation: Evaluation
): { readonly ranking: readonly number[]; readonly excludedBy: readonly (readonly number[])[] } {
  // prettier-ignore
  const [group, lane] = evaluation.lane(stage);
  const places = group.nodes.get(node.id)?.places ?? [];
  const conditions = node.variants[node.variantAt[stage] ?? 0]?.conditions ?? [];
  const score = places[2];
  const excludedBy: number[][] = [];
  const fitting: { row: number; score: number }[] = [];
  for (let row = 0; row < node.rows; row++) {
    const failed = conditions.flatMap((_, i) => {
      const place = places[firstCondition + i];
      return place && group.valueAt(place, lane, row) !== 0 ? [] : [i];
    });
    excludedBy.push(failed);
    if (failed.length === 0)
      fitting.push({ row, score: score ? group.valueAt(score, lane, row) : 0 });
  }
  fitting.sort((a, b) => a.score - b.score || a.row - b.row);
  return { ranking: fitting.map((each) => each.row), excludedBy };
}
