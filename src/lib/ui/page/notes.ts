// Problems as the page shows them: under the line they belong to, with the line as written and the
// place marked. Each problem is handed out once; what no line claims is still there at the end.

import type { Problem } from '#lib/problem/index.ts';
import type { StageResult } from '#lib/sheet/index.ts';
import type { ProblemNote } from './types.ts';

export interface Notes {
  /** Takes the problems whose place begins on lines `from` to `to`, `to` exclusive. */
  take(from: number, to: number): readonly ProblemNote[];
  /** Takes whatever has not been taken yet. */
  takeRest(): readonly ProblemNote[];
}

/** A block says of itself that it is not computed yet, in one plain sentence. */
const isShownElsewhere = (found: Problem): boolean => found.code === 'sheet/not-computed-yet';

/** The problems of a sheet, to be taken line by line. */
export function notesOf(
  problems: readonly Problem[],
  lines: readonly string[],
  stages: readonly StageResult[]
): Notes {
  const left = new Set(problems.filter((found) => !isShownElsewhere(found)));
  const takeWhere = (isMeant: (found: Problem) => boolean): readonly ProblemNote[] => {
    const taken = [...left].filter(isMeant);
    for (const found of taken) left.delete(found);
    return merged(taken.map((found) => noteOf(found, lines, stages)));
  };
  return {
    take: (from, to) => takeWhere(({ at }) => at.line >= from && at.line < to),
    takeRest: () => takeWhere(() => true)
  };
}

function noteOf(
  found: Problem,
  lines: readonly string[],
  stages: readonly StageResult[]
): ProblemNote {
  const { line, from, to } = found.at;
  const text = lines[line - 1];
  // A span may reach past its line where the fault is that something is missing: mark the last sign.
  const start = Math.min(Math.max(0, from - 1), text?.length ?? 0);
  const end = Math.max(start, Math.min(to - 1, text?.length ?? 0));
  return {
    severity: found.severity,
    line,
    stage: stages.find(({ id }) => id === found.stage)?.title ?? null,
    message: found.message,
    hint: found.hint,
    source:
      text === undefined || text.trim() === ''
        ? null
        : {
            before: text.slice(0, start).trimStart(),
            marked: text.slice(start, end),
            after: text.slice(end).trimEnd()
          },
    replacement: found.fix?.replacement ?? null
  };
}

/** The same sentence at several stages is said once, with the stages named together. */
function merged(notes: readonly ProblemNote[]): readonly ProblemNote[] {
  const byWords = new Map<string, ProblemNote>();
  for (const note of notes) {
    const key = JSON.stringify([note.line, note.message, note.source]);
    const there = byWords.get(key);
    if (!there) byWords.set(key, note);
    else if (there.stage !== null && note.stage !== null && there.stage !== note.stage)
      byWords.set(key, { ...there, stage: `${there.stage}, ${note.stage}` });
  }
  return [...byWords.values()];
}
