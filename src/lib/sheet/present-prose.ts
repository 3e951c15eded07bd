// Live values in running text that name nothing: they stay as text, and are said.

import type { Block, Prose } from '#lib/document/index.ts';
import { nameWords, problem, lineWords, type Problem } from '#lib/problem/index.ts';
import { canonicalName, placeholdersIn } from '#lib/text/index.ts';
import type { Evaluation } from './evaluation.ts';

/** Notices of all prose, with lines of the file. */
export function proseProblems(evaluation: Evaluation): Problem[] {
  const { model } = evaluation.checked;
  const problems: Problem[] = [];
  for (const item of model.worksheet.items) {
    const text = proseOf(item);
    if (text === null) continue;
    const first = item.kind === 'prose' ? item.line : item.line + 1;
    for (const { name, stage, from, to } of placeholdersIn(text)) {
      const before = text.slice(0, from);
      const line = first + (before.match(/\n/gu)?.length ?? 0);
      const column = from - (before.lastIndexOf('\n') + 1) + 1;
      const at = { line, from: column, to: column + to - from };
      if (!model.byId.has(canonicalName(name))) {
        problems.push(
          problem('names/unknown', at, nameWords.unknownName(name), { severity: 'note' })
        );
      } else if (stage !== null && !model.stages.some(({ id }) => id === stage)) {
        const words = lineWords.unknownStage(
          stage,
          model.stages.map(({ id }) => id)
        );
        problems.push(problem('line/unknown-stage', at, words, { severity: 'note' }));
      }
    }
  }
  return problems;
}

const proseKinds: ReadonlySet<string> = new Set(['caution', 'ask', 'remark']);

function proseOf(item: Prose | Block): string | null {
  if (item.kind === 'prose') return item.text;
  return proseKinds.has(item.block) ? item.prose : null;
}
