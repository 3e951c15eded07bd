// Which stage starts from which: from the one named by `after`, else from the one before it. An
// unknown `after` falls back to the one before; a circle is cut at its member that comes first in
// the file, so that what follows always finds a tree.

import { fileWords, problem, type Problem, type Span } from '#lib/problem/index.ts';
import type { StageDeclaration } from './types.ts';

export interface StageDraft {
  readonly id: string;
  title: string;
  after: string | null;
  /** Where `after` is written; where it is not, the stage's id. */
  afterAt: Span;
  date: string | null;
  built: boolean;
  readonly line: number;
}

/** The declarations in file order, each with the stage it starts from; adds what it cannot resolve. */
export function orderStages(
  drafts: readonly StageDraft[],
  problems: Problem[]
): StageDeclaration[] {
  const ids = drafts.map((draft) => draft.id);
  const declared = new Set(ids);
  const parents = new Map<string, string | null>();
  for (const [index, draft] of drafts.entries()) {
    const before = drafts[index - 1]?.id ?? null;
    const isKnown = draft.after === null || declared.has(draft.after);
    if (draft.after !== null && !isKnown) {
      const words = fileWords.stageUnknown(
        draft.id, draft.after, ids.filter((id) => id !== draft.id)
      ); // prettier-ignore
      problems.push(problem('file/stage-unknown', draft.afterAt, words, { subject: draft.id }));
    }
    parents.set(draft.id, draft.after !== null && isKnown ? draft.after : before);
  }
  const rooted = new Set<string>();
  for (const draft of drafts) {
    const path = pathToRoot(draft.id, parents, rooted);
    if (path.isCircle) {
      const words = fileWords.stageCircle(path.stages);
      problems.push(problem('file/stage-circle', draft.afterAt, words, { subject: draft.id }));
      parents.set(draft.id, null);
    }
    for (const stage of path.stages) rooted.add(stage);
  }
  return drafts.map(({ id, title, date, built, line }) => ({
    id, title, after: parents.get(id) ?? null, date, built, line
  })); // prettier-ignore
}

// The stages from `start` on, up to one whose line of parents is known to end, or back to `start`.
// A walk that meets another circle stops there; that circle is cut when its own member is reached.
function pathToRoot(
  start: string,
  parents: ReadonlyMap<string, string | null>,
  rooted: ReadonlySet<string>
): { stages: string[]; isCircle: boolean } {
  const stages = [start];
  const seen = new Set(stages);
  let next = parents.get(start) ?? null;
  while (next !== null && !rooted.has(next)) {
    if (next === start) return { stages, isCircle: true };
    if (seen.has(next)) return { stages: [], isCircle: false };
    stages.push(next);
    seen.add(next);
    next = parents.get(next) ?? null;
  }
  return { stages, isCircle: false };
}
