// Cuts a file's lines into prose and fenced blocks, as CommonMark does (0.31.2, section 4.5), at
// document level only: a fence inside a list item, a quote or indented code is prose.
//
// CommonMark lets a block that is not closed run to the end of the file. A listing does so here too;
// a block of ours ends before its first empty line instead (or before the next block of ours, if that
// comes first), and is told as not closed, so one missing fence does not swallow the sheet.

import { lineText, type Lines } from '#lib/text/index.ts';
import { closesFence, createProseTracker, openingFence, type FenceOpening } from './containers.ts';
import { blockKinds, type BlockKind } from './types.ts';

/** Lines `from` to `to` (exclusive, from 0); `opening` is null for prose. */
export interface Segment {
  readonly from: number;
  readonly to: number;
  readonly opening: FenceOpening | null;
  readonly isClosed: boolean;
}

const ours: ReadonlySet<string> = new Set(blockKinds);

/** Whether a word is one of our kinds of block. */
export function isBlockKind(word: string): word is BlockKind {
  return ours.has(word);
}

/** The first word of an info string. */
export function infoWord(info: string): string {
  const trimmed = info.trimStart();
  const end = trimmed.search(/\s/);
  return end < 0 ? trimmed : trimmed.slice(0, end);
}

/**
 * Prose and blocks in order, from line `first` on; together they hold every line once.
 *
 * @param skip  characters of the file's first line that are none of its own (a byte order mark)
 */
export function segmentsOf(lines: Lines, first = 0, skip = 0): Segment[] {
  const segments: Segment[] = [];
  let tracker = createProseTracker();
  let proseFrom = first;
  let index = first;
  while (index < lines.count) {
    const line = lineText(lines, index);
    const opening = tracker.read(index === 0 ? line.slice(skip) : line);
    if (opening === null) {
      index++;
      continue;
    }
    if (index > proseFrom) segments.push(prose(proseFrom, index));
    const { to, isClosed } = endOfBlock(lines, index, opening);
    segments.push({ from: index, to, opening, isClosed });
    index = to;
    proseFrom = to;
    tracker = createProseTracker();
  }
  if (index > proseFrom) segments.push(prose(proseFrom, index));
  return segments;
}

function prose(from: number, to: number): Segment {
  return { from, to, opening: null, isClosed: true };
}

function endOfBlock(
  lines: Lines,
  from: number,
  opening: FenceOpening
): { to: number; isClosed: boolean } {
  const isOurs = isBlockKind(infoWord(opening.info));
  let firstBlank = -1;
  let hasContent = false;
  let stop = lines.count;
  for (let i = from + 1; i < lines.count; i++) {
    const shape = lineShape(lines, i, opening.char);
    if (shape === 'fence') {
      const line = lineText(lines, i);
      if (closesFence(line, opening.char, opening.length)) return { to: i + 1, isClosed: true };
      const inner = isOurs ? openingFence(line) : null;
      if (inner && inner.length >= opening.length && isBlockKind(infoWord(inner.info))) {
        stop = i;
        break;
      }
    }
    if (shape !== 'blank') hasContent = true;
    else if (hasContent && firstBlank < 0) firstBlank = i;
  }
  return { to: isOurs && firstBlank >= 0 ? firstBlank : stop, isClosed: false };
}

// What a line inside a block can be, told from its first characters without copying it.
function lineShape(lines: Lines, index: number, char: string): 'blank' | 'fence' | 'text' {
  const { text } = lines;
  const end = lines.ends[index] ?? text.length;
  let at = lines.starts[index] ?? text.length;
  const from = at;
  while (at < end && (text.charCodeAt(at) === 32 || text.charCodeAt(at) === 9)) at++;
  if (at >= end) return 'blank';
  return at - from <= 3 && text[at] === char ? 'fence' : 'text';
}
