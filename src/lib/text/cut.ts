// A cut is a run of text taken out of a worksheet's line or lines, that still knows where each of its
// characters stood. Splitting an entry at `=`, `±`, `to` … makes smaller cuts, so a problem found
// deep inside an expression lands on the right line and column, on any line of a long entry.

import type { Span } from '#lib/problem/index.ts';

/** From `offset` in the text on (until the next piece), characters stand at `line`, `column` on. */
export interface CutPiece {
  readonly offset: number;
  /** 0 is the first line of the entry. */
  readonly line: number;
  /** UTF-16 units from 1. */
  readonly column: number;
}

export interface Cut {
  readonly text: string;
  /** Ascending by offset; the first has offset 0. A later piece begins after a joining newline. */
  readonly pieces: readonly CutPiece[];
}

/** A cut of one line's text that starts at `column`. */
export function cutOf(text: string, line = 0, column = 1): Cut {
  return { text, pieces: [{ offset: 0, line, column }] };
}

/** Joins the parts of an entry that goes on over several lines; a newline stands between parts. */
export function joinCuts(parts: readonly Cut[]): Cut {
  if (parts.length === 1 && parts[0]) return parts[0];
  let text = '';
  const pieces: CutPiece[] = [];
  for (const [index, part] of parts.entries()) {
    if (index > 0) text += '\n';
    for (const piece of part.pieces) pieces.push({ ...piece, offset: piece.offset + text.length });
    text += part.text;
  }
  return { text, pieces };
}

/** The part of a cut from `from` to `to` (offsets in its text, `to` exclusive). */
export function sliceCut(cut: Cut, from: number, to: number = cut.text.length): Cut {
  const pieces: CutPiece[] = [];
  for (let i = pieceIndex(cut, from); i < cut.pieces.length; i++) {
    const piece = cut.pieces[i];
    if (!piece || (piece.offset >= to && pieces.length > 0)) break;
    const skipped = Math.max(0, from - piece.offset);
    pieces.push({
      offset: Math.max(0, piece.offset - from),
      line: piece.line,
      column: piece.column + skipped
    });
  }
  return { text: cut.text.slice(from, to), pieces };
}

/** A cut without the white space at its ends. */
export function trimCut(cut: Cut): Cut {
  const trimmed = cut.text.trim();
  if (trimmed.length === cut.text.length) return cut;
  const from = cut.text.length - cut.text.trimStart().length;
  return sliceCut(cut, from, from + trimmed.length);
}

/** Where the characters from `from` to `to` of a cut stand; a span that runs over a line's end stops there. */
export function spanOf(cut: Cut, from = 0, to: number = cut.text.length): Span {
  const index = pieceIndex(cut, from);
  const piece = cut.pieces[index] ?? { offset: 0, line: 0, column: 1 };
  const next = cut.pieces[index + 1];
  const end = next ? Math.min(to, next.offset - 1) : to;
  const start = piece.column + (from - piece.offset);
  return {
    line: piece.line,
    from: start,
    to: Math.max(start, piece.column + (end - piece.offset))
  };
}

function pieceIndex(cut: Cut, offset: number): number {
  let index = 0;
  while (index + 1 < cut.pieces.length && (cut.pieces[index + 1]?.offset ?? Infinity) <= offset)
    index++;
  return index;
}
