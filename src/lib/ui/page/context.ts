// What every part of the page model needs at hand while it is made.

import type { Results } from '#lib/sheet/index.ts';
import type { Letters } from './letters.ts';
import type { Notes } from './notes.ts';
import type { StageMark } from './types.ts';
import type { View } from './view.ts';

export interface PageContext {
  readonly results: Results;
  readonly view: View;
  /** Of all stages, in their order. */
  readonly marks: readonly StageMark[];
  /** Indices of the stages that get a column. */
  readonly columns: readonly number[];
  readonly letters: Letters;
  readonly notes: Notes;
}

/** The stage whose numbers are shown. */
export function shownMark(context: PageContext): StageMark {
  const mark = context.marks[context.view.shown];
  if (!mark) throw new RangeError(`no stage ${context.view.shown}`);
  return mark;
}

export const markOf = (context: PageContext, id: string): StageMark | null =>
  context.marks.find((mark) => mark.id === id) ?? null;
