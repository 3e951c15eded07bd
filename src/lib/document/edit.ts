// Edits as small changes of the text: what an edit does not name keeps every byte. Changes are
// offsets and texts, so they can be shown, undone, or sent to somebody else before they are made.

import { canonicalName, commentStart, linesText, lineText, splitLines, startOf, topLevelMarks, type Cut, type Lines } from '#lib/text/index.ts'; // prettier-ignore
import { readEntryText, type EntryText } from './entries.ts';
import type { Block, Entry, Placed, Prose, Worksheet } from './types.ts';

/** Put `insert` in place of the characters from `from` to `to` (UTF-16 offsets, `to` exclusive). */
export interface TextChange {
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

/**
 * A text with changes made; their offsets are those of the text as it was.
 *
 * Fails  RangeError where changes overlap or lie outside the text
 */
export function editText(text: string, changes: readonly TextChange[]): string {
  const ordered = [...changes].sort((a, b) => a.from - b.from || a.to - b.to);
  let result = '';
  let at = 0;
  for (const { from, to, insert } of ordered) {
    if (!(from >= at && to >= from && to <= text.length)) {
      throw new RangeError(
        `A change from ${from} to ${to} overlaps another or leaves the text (0 to ${text.length})`
      );
    }
    result += text.slice(at, from) + insert;
    at = to;
  }
  return result + text.slice(at);
}

/** Where a piece of prose or a block stands in the worksheet's text. */
export function rangeOfItem(
  worksheet: Worksheet,
  item: Prose | Block
): { from: number; to: number } {
  let from = worksheet.frontMatter.text.length;
  for (const each of worksheet.items) {
    if (each === item) return { from, to: from + item.text.length };
    from += each.text.length;
  }
  throw new RangeError(`The ${item.kind} of line ${item.line} is not an item of this worksheet`);
}

/** Puts a text in place of a block or a piece of prose, fences and line ends included. */
export function replaceItem(worksheet: Worksheet, item: Prose | Block, text: string): TextChange {
  return { ...rangeOfItem(worksheet, item), insert: text };
}

/** Puts a text before the item of this index, or at the end of the file. */
export function insertItem(worksheet: Worksheet, index: number, text: string): TextChange {
  const item = worksheet.items[index];
  const at = item ? rangeOfItem(worksheet, item).from : worksheet.text.length;
  return { from: at, to: at, insert: text };
}

/** Puts lines after an entry of a block, or (`after` null) right below its fence. */
export function insertEntry(
  worksheet: Worksheet,
  block: Block,
  text: string,
  after: Placed<Entry> | null
): TextChange {
  const line = after ? after.line + after.entry.lineCount : 1;
  return insertLines(rangeOfItem(worksheet, block).from, splitLines(block.text), line, text);
}

/** An input by its name, with the block it stands in. */
export function findInput(
  worksheet: Worksheet,
  name: string
): { readonly block: Block; readonly placed: Placed<Entry> } | null {
  const wanted = canonicalName(name);
  for (const block of worksheet.items) {
    if (block.kind !== 'block') continue;
    for (const placed of block.entries) {
      const { entry } = placed;
      if (entry.kind === 'input' && canonicalName(entry.name.text) === wanted)
        return { block, placed };
    }
  }
  return null;
}

/** A new value of an input, from a stage on or (`stage` null) as its first value. */
export interface InputEdit {
  readonly name: string;
  readonly stage: string | null;
  /** Value and tolerance as they are to stand; a range `within` stays. */
  readonly value: string;
  /** The line's new comment; without it the comment stays. */
  readonly reason?: string;
}

/**
 * The changes that give an input a value: its own value replaced, the revision at that stage
 * replaced, or a new revision in the order of the stages.
 *
 * @returns null where the worksheet has no such input
 * Fails    RangeError for a value or reason that is not one line
 */
export function setInputValue(worksheet: Worksheet, edit: InputEdit): TextChange[] | null {
  for (const text of [edit.value, edit.reason ?? '-']) {
    if (text.trim() === '' || /[\r\n]/.test(text))
      throw new RangeError(`Not one line of text: ${JSON.stringify(text)}`);
  }
  const found = findInput(worksheet, edit.name);
  if (!found) return null;
  const { block, placed } = found;
  const start = rangeOfItem(worksheet, block).from;
  const lines = splitLines(block.text);
  const entry = readEntryText(placed.entry.text);
  const place: Place = { start, lines, first: placed.line };
  if (edit.stage === null) {
    const sign = topLevelMarks(entry.head.text, noWords).find(({ word }) => word === '=');
    return replaceValue(place, entry.head, (sign?.from ?? -1) + 1, edit);
  }
  const revision = entry.revisions.find(({ stage }) => stage.text === edit.stage);
  if (revision && revision.body.text !== '') return replaceValue(place, revision.body, 0, edit);
  if (revision) {
    const at = offsetOf(place, revision.head, revision.head.text.length);
    return [{ from: at, to: at, insert: ` ${edit.value}` }];
  }
  const line = lineOfNewRevision(worksheet, entry, edit.stage);
  const indent = indentOfRevisions(entry);
  const reason = edit.reason === undefined ? '' : `  # ${edit.reason}`;
  const text = `${indent}at ${edit.stage}: ${edit.value}${reason}`;
  return [insertLines(start, lines, placed.line + line, text)];
}

const noWords: ReadonlySet<string> = new Set();
const onlyWithin: ReadonlySet<string> = new Set(['within']);

// A block at offset `start` of the file, and the line of it where an entry begins.
interface Place {
  readonly start: number;
  readonly lines: Lines;
  readonly first: number;
}

// The value runs up to `within`; where it stands on several lines, the new one takes the first.
function replaceValue(place: Place, cut: Cut, from: number, edit: InputEdit): TextChange[] {
  const marks = topLevelMarks(cut.text, onlyWithin);
  const end = marks.find(({ word }) => word === 'within')?.from ?? cut.text.length;
  const changes: TextChange[] = [];
  for (const [index, piece] of cut.pieces.entries()) {
    const pieceEnd = (cut.pieces[index + 1]?.offset ?? cut.text.length + 1) - 1;
    const part = cut.text.slice(Math.max(from, piece.offset), Math.min(end, pieceEnd));
    if (part.trim() === '' && (index > 0 || pieceEnd < from)) continue;
    const lead = part.length - part.trimStart().length;
    const at = offsetOf(place, cut, Math.max(from, piece.offset) + lead);
    const isFirst = changes.length === 0;
    const space = isFirst && part.trim() === '' && lead === 0 ? ' ' : '';
    const tail = isFirst && part.trim() === '' && end < cut.text.length ? ' ' : '';
    changes.push({
      from: at,
      to: at + part.trim().length,
      insert: isFirst ? `${space}${edit.value}${tail}` : ''
    });
    if (isFirst && edit.reason !== undefined) {
      changes.push(replaceComment(place, place.first + piece.line, edit.reason));
    }
  }
  return changes;
}

function replaceComment(place: Place, line: number, reason: string): TextChange {
  const text = lineText(place.lines, line);
  const at = place.start + startOf(place.lines, line);
  const hash = commentStart(text);
  if (hash >= 0) return { from: at + hash, to: at + text.length, insert: `# ${reason}` };
  const end = text.trimEnd().length;
  return { from: at + end, to: at + end, insert: `  # ${reason}` };
}

function offsetOf(place: Place, cut: Cut, offset: number): number {
  const piece = cut.pieces.findLast((each) => each.offset <= offset) ?? {
    offset: 0,
    line: 0,
    column: 1
  };
  return (
    place.start +
    startOf(place.lines, place.first + piece.line) +
    piece.column -
    1 +
    offset -
    piece.offset
  );
}

// Before the first revision at a stage that is declared later; the entry's lines count from 0.
function lineOfNewRevision(worksheet: Worksheet, entry: EntryText, stage: string): number {
  const order = worksheet.frontMatter.stages.map(({ id }) => id);
  const at = order.indexOf(stage);
  const later = entry.revisions.find(
    (revision) => at >= 0 && order.indexOf(revision.stage.text) > at
  );
  return later?.head.pieces[0]?.line ?? entry.lineCount;
}

function indentOfRevisions(entry: EntryText): string {
  const lines = entry.text.split('\n');
  const like = entry.revisions[0]?.head.pieces[0]?.line;
  const line = lines[like ?? 0] ?? '';
  const indent = line.slice(0, line.length - line.trimStart().length);
  return like === undefined ? `${indent}  ` : indent;
}

// Whole lines put in before a line of a block, with the block's own line end.
function insertLines(start: number, lines: Lines, line: number, text: string): TextChange {
  const first = linesText(lines, 0, 1);
  const end = /\r\n$|[\r\n]$/.exec(first)?.[0] ?? '\n';
  const own = text.replace(/(?:\r\n|[\r\n])$/, '').replace(/\r\n|[\r\n]/g, end);
  const at = startOf(lines, line);
  const isUnended = line >= lines.count && !/[\r\n]$/.test(lines.text);
  const insert = isUnended ? end + own : own + end;
  return { from: start + at, to: start + at, insert };
}
