// A finding is a mistake in an expression, with its place as offsets in the cut that was read. The
// public functions turn findings into problems at lines and columns of the entry.

import {
  problem,
  type Fix,
  type Problem,
  type ProblemCode,
  type Wording
} from '#lib/problem/index.ts';
import { spanOf, type Cut } from '#lib/text/index.ts';

export interface Finding {
  readonly code: ProblemCode;
  readonly from: number;
  readonly to: number;
  readonly words: Wording;
  readonly cure: Cure | null;
}

/** What to put in place of the text from `from` to `to`. */
export interface Cure {
  readonly from: number;
  readonly to: number;
  readonly replacement: string;
}

export function finding(
  code: ProblemCode,
  from: number,
  to: number,
  words: Wording,
  cure: Cure | null = null
): Finding {
  return { code, from, to, words, cure };
}

/** The same mistake as a problem at its place in the entry. */
export function toProblem(cut: Cut, found: Finding): Problem {
  return problem(found.code, spanOf(cut, found.from, found.to), found.words, {
    fix: found.cure && toFix(cut, found.cure)
  });
}

/** A fix changes one line: a cure that reaches over a line's end is not offered as one. */
function toFix(cut: Cut, cure: Cure): Fix | null {
  if (cut.text.slice(cure.from, cure.to).includes('\n')) return null;
  return { at: spanOf(cut, cure.from, cure.to), replacement: cure.replacement };
}
