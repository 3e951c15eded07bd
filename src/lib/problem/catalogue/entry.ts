// One row of the catalogue of problems: what a code means, a small worksheet that raises it, and the
// same worksheet put right. What is said about the example is not written here: it comes from the
// engine, and tests/problems/catalogue.txt holds it in plain sight.

import type { ProblemCode } from '../codes.ts';
import type { Severity } from '../problem.ts';

/** A problem that is raised today, with its example and cure. */
export interface RaisedProblem {
  readonly code: ProblemCode;
  readonly isLater: false;
  /** What it means, in one sentence. */
  readonly meaning: string;
  /** Of the example; where the same code also comes with another, `meaning` says so. */
  readonly severity: Severity;
  /** A whole worksheet that raises this code and no other. */
  readonly example: string;
  /** The example put right: it raises nothing. */
  readonly cure: string;
  /** Texts of the files beside the example, by path. */
  readonly files: Readonly<Record<string, string>>;
  /** In place of an example and a cure that are too long to read. */
  readonly inWords: { readonly example: string; readonly cure: string } | null;
}

/** A problem of what is not computed yet: its meaning stands, an example comes with the computing. */
export interface LaterProblem {
  readonly code: ProblemCode;
  readonly isLater: true;
  readonly meaning: string;
}

export type CatalogueEntry = RaisedProblem | LaterProblem;

interface Raised {
  readonly code: ProblemCode;
  readonly meaning: string;
  readonly severity?: Severity;
  readonly example: readonly string[];
  readonly cure: readonly string[];
  readonly files?: Readonly<Record<string, string>>;
  readonly inWords?: { readonly example: string; readonly cure: string };
}

/** A row, its worksheets given line by line; severity is 'error' unless told otherwise. */
export function raised(row: Raised): RaisedProblem {
  return {
    code: row.code,
    isLater: false,
    meaning: row.meaning,
    severity: row.severity ?? 'error',
    example: `${row.example.join('\n')}\n`,
    cure: `${row.cure.join('\n')}\n`,
    files: row.files ?? {},
    inWords: row.inWords ?? null
  };
}

export function later(code: ProblemCode, meaning: string): LaterProblem {
  return { code, isLater: true, meaning };
}

/** Lines of one fenced block. */
export function block(head: string, ...lines: readonly string[]): readonly string[] {
  return ['```' + head, ...lines, '```'];
}
