// A problem is a mistake in a worksheet, held as plain data: it never travels as an exception, and
// the rest of the sheet keeps computing. Its words come from the tables in `wording/`.

import type { ProblemCode } from './codes.ts';

export type Severity = 'error' | 'warning' | 'note';

/**
 * A run of characters on one line. Columns count UTF-16 units from 1, `to` exclusive.
 * `line` counts from 1 in a whole file; inside an entry it counts from 0 at the entry's first line
 * until `shiftProblem` has moved it.
 */
export interface Span {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** A one-press cure: put `replacement` in place of what stands at `at`. */
export interface Fix {
  readonly at: Span;
  readonly replacement: string;
}

export interface Problem {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly at: Span;
  /** The stage it belongs to, or null where it belongs to all. */
  readonly stage: string | null;
  /** The name being defined, or the label of the limit. */
  readonly subject: string | null;
  readonly found: string | null;
  readonly expected: string | null;
  /** One sentence in the words of the sheet. */
  readonly message: string;
  /** What can be done about it. */
  readonly hint: string | null;
  readonly fix: Fix | null;
  readonly related: readonly Span[];
}

/** The words of a problem, as the tables in `wording/` give them. */
export interface Wording {
  readonly message: string;
  readonly hint?: string | null;
  readonly found?: string | null;
  readonly expected?: string | null;
}

export interface ProblemOptions {
  readonly severity?: Severity;
  readonly stage?: string | null;
  readonly subject?: string | null;
  readonly fix?: Fix | null;
  readonly related?: readonly Span[];
}

/** Builds a problem from its code, place and words; severity is 'error' unless told otherwise. */
export function problem(
  code: ProblemCode,
  at: Span,
  words: Wording,
  options: ProblemOptions = {}
): Problem {
  return {
    code,
    severity: options.severity ?? 'error',
    at,
    stage: options.stage ?? null,
    subject: options.subject ?? null,
    found: words.found ?? null,
    expected: words.expected ?? null,
    message: words.message,
    hint: words.hint ?? null,
    fix: options.fix ?? null,
    related: options.related ?? []
  };
}

/** The same span, `lines` further down. */
export function shiftSpan(span: Span, lines: number): Span {
  return { line: span.line + lines, from: span.from, to: span.to };
}

/** The same problem, `lines` further down: from an entry's own lines to the lines of the file. */
export function shiftProblem(found: Problem, lines: number): Problem {
  return {
    ...found,
    at: shiftSpan(found.at, lines),
    fix: found.fix && { ...found.fix, at: shiftSpan(found.fix.at, lines) },
    related: found.related.map((span) => shiftSpan(span, lines))
  };
}
