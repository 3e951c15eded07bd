// Reads a worksheet's text into front matter, prose and blocks. A reader remembers what it has read:
// a block whose text did not change keeps its entries, and an entry whose text did not change is the
// same object, so whoever works on entries can tell by identity what an edit has touched.

import { fileWords, lineWords, problem, shiftProblem, type Problem } from '#lib/problem/index.ts';
import {
  cutOf, linesText, lineText, sliceCut, spanOf, splitLines, trimCut, type Cut, type Lines
} from '#lib/text/index.ts'; // prettier-ignore
import { brokenEntry } from './blocks/entry.ts';
import { kinds, nearestKind, type KindRow } from './blocks/kinds.ts';
import { openingFence, closesFence, type FenceOpening } from './containers.ts';
import {
  entryTextOf, groupEntries, readEntryText, revisionStageOf, type EntryGroup, type EntryText
} from './entries.ts'; // prettier-ignore
import { infoWord, isBlockKind, segmentsOf } from './fences.ts';
import { readFrontMatter } from './front-matter.ts';
import { readHead } from './head.ts';
import { readTable } from './table.ts';
import type { Block, BlockHead, BlockKind, Entry, Placed, Prose, Worksheet } from './types.ts';

/** Characters of a file; a longer one is kept as one piece of prose and not read. */
export const longestFile = 5_000_000;

export interface Reader {
  /** Reads a text; what is the same as in the texts read before is given as the same objects. */
  read(text: string): Worksheet;
}

// A block as its own text tells it, lines counted from the fence.
interface BlockRead {
  readonly block: Omit<Block, 'line'>;
  readonly problems: readonly Problem[];
}

/** A reader with its own memory; one for each sheet that is being edited. */
export function createReader(): Reader {
  let blocks = new Map<string, BlockRead>();
  let placed = new Map<string, Prose | Block>();
  const entries = createEntryMemory();

  function read(text: string): Worksheet {
    if (text.length > longestFile) return refusedFile(text);
    const lines = splitLines(text);
    const { frontMatter, problems: found } = readFrontMatter(lines);
    const problems = [...found];
    const items: (Prose | Block)[] = [];
    const nextBlocks = new Map<string, BlockRead>();
    const nextPlaced = new Map<string, Prose | Block>();
    const withoutMark = frontMatter.lineCount === 0 ? frontMatter.text.length : 0;
    for (const segment of segmentsOf(lines, frontMatter.lineCount, withoutMark)) {
      const line = segment.from + 1;
      const whole = linesText(lines, segment.from, segment.to);
      const own = segment.from === 0 ? whole.slice(withoutMark) : whole;
      const key = `${line} ${own}`;
      const same = placed.get(key);
      if (segment.opening === null) {
        const prose: Prose = same?.kind === 'prose' ? same : { kind: 'prose', line, text: own };
        items.push(prose);
        nextPlaced.set(key, prose);
        continue;
      }
      const blockRead = nextBlocks.get(own) ?? blocks.get(own) ?? readBlock(own, entries);
      nextBlocks.set(own, blockRead);
      const block: Block = same?.kind === 'block' ? same : { ...blockRead.block, line };
      items.push(block);
      nextPlaced.set(key, block);
      for (const each of blockRead.problems) problems.push(shiftProblem(each, line));
    }
    blocks = nextBlocks;
    placed = nextPlaced;
    entries.trim(items);
    return { text, frontMatter, items, problems };
  }

  return { read };
}

/** Reads one text, without memory of others. */
export function readWorksheet(text: string): Worksheet {
  return createReader().read(text);
}

/** The text of a worksheet: byte for byte the one it was read from. */
export function writeWorksheet(worksheet: Worksheet): string {
  return worksheet.frontMatter.text + worksheet.items.map((item) => item.text).join('');
}

function refusedFile(text: string): Worksheet {
  const { frontMatter } = readFrontMatter(splitLines(''));
  const characters = (size: number): string => `${size} characters`;
  const words = fileWords.fileTooLong(characters(text.length), characters(longestFile));
  return {
    text, frontMatter, items: [{ kind: 'prose', line: 1, text }],
    problems: [problem('file/too-long', { line: 1, from: 1, to: 1 }, words)]
  }; // prettier-ignore
}

// Entries by kind and text. It is emptied down to what is in use when it has grown to several times
// that, so a long session of typing does not keep every half-written line.
interface EntryMemory {
  recall(block: BlockKind, text: string, read: () => Entry): Entry;
  trim(items: readonly (Prose | Block)[]): void;
}

function createEntryMemory(): EntryMemory {
  let byKind = new Map<BlockKind, Map<string, Entry>>();
  let size = 0;
  const of = (block: BlockKind): Map<string, Entry> => {
    let known = byKind.get(block);
    if (!known) byKind.set(block, (known = new Map<string, Entry>()));
    return known;
  };
  return {
    recall(block, text, read) {
      const known = of(block);
      let entry = known.get(text);
      if (!entry) {
        entry = read();
        known.set(text, entry);
        size++;
      }
      return entry;
    },
    trim(items) {
      if (size < 2000) return;
      const blocks = items.filter((item): item is Block => item.kind === 'block');
      const used = blocks.reduce((sum, block) => sum + block.entries.length, 0);
      if (size < 4 * used) return;
      byKind = new Map();
      size = 0;
      for (const { block, entries } of blocks) {
        if (block === 'listing') continue;
        for (const { entry } of entries) of(block).set(entry.text, entry);
        size += entries.length;
      }
    }
  };
}

// One block ---------------------------------------------------------------------------------------

function readBlock(text: string, memory: EntryMemory): BlockRead {
  const lines = splitLines(text);
  const fence = lineText(lines, 0);
  const opening = openingFence(fence);
  if (!opening) throw new RangeError(`A block begins with a fence, not with ${fence.slice(0, 20)}`);
  const last = lines.count - 1;
  const isClosed = last > 0 && closesFence(lineText(lines, last), opening.char, opening.length);
  const to = isClosed ? last : lines.count;
  const word = infoWord(opening.info);
  const problems: Problem[] = [];
  const kind = kindCut(fence, opening, word);
  if (!isClosed) problems.push(notClosed(kind, opening, word, lines.count - 1));
  const common = { kind: 'block', word, text, lineCount: lines.count } as const;
  if (!isBlockKind(word)) {
    const near = nearestKind(word);
    if (near !== null) {
      const fix = { at: spanOf(kind), replacement: near };
      const words = fileWords.kindNear(word, near);
      problems.push(problem('file/kind-near', spanOf(kind), words, { severity: 'note', fix }));
    }
    const title = opening.info.trim().slice(word.length).trim();
    const head = { ...emptyHead, title: title === '' ? null : title };
    const prose = linesText(lines, 1, to);
    return {
      block: { ...common, block: 'listing', head, entries: [], table: null, prose },
      problems
    };
  }
  const row = kinds[word];
  const info = trimCut(sliceCut(cutOf(fence), kindEnd(kind)));
  const head = readHead(row.head, word, kind, info, problems);
  const prose = row.prose ? linesText(lines, 1, to) : null;
  if (row.content === 'table') {
    const table = readRows(lines, to, word, head, problems);
    return { block: { ...common, block: word, head, entries: [], table, prose }, problems };
  }
  const entries = row.readProse
    ? row.readProse(lines, 1, to, kind, problems)
    : readEntries(lines, to, opening.indent, word, row, memory);
  for (const { line, entry } of entries) {
    for (const each of entry.problems) problems.push(shiftProblem(each, line));
  }
  const own = row.finish ? row.finish(head, entries, kind, problems) : head;
  return { block: { ...common, block: word, head: own, entries, table: null, prose }, problems };
}

const emptyHead: BlockHead = {
  title: null,
  name: null,
  from: null,
  at: null,
  to: null,
  signal: null
};

// The kind's own word on the fence's line; where there is none, the fence.
function kindCut(fence: string, opening: FenceOpening, word: string): Cut {
  const from = opening.indent + opening.length;
  if (word === '') return sliceCut(cutOf(fence), opening.indent, from);
  const at = from + opening.info.length - opening.info.trimStart().length;
  return sliceCut(cutOf(fence), at, at + word.length);
}

function kindEnd(kind: Cut): number {
  return (kind.pieces[0]?.column ?? 1) - 1 + kind.text.length;
}

function notClosed(kind: Cut, opening: FenceOpening, word: string, read: number): Problem {
  const words = fileWords.blockNotClosed(word, opening.char.repeat(opening.length), read);
  return problem('file/block-not-closed', spanOf(kind), words);
}

function readRows(
  lines: Lines,
  to: number,
  block: BlockKind,
  head: BlockHead,
  problems: Problem[]
) {
  const subject = head.name?.text ?? block;
  if (head.from === null) {
    const table = readTable(lines, 1, to, { subject, isReadings: block === 'readings' });
    // A head that could not be read may have meant rows from a file.
    if (problems.length === 0 || table.columns.length > 0) problems.push(...table.problems);
    return table;
  }
  for (let i = 1; i < to; i++) {
    const line = trimCut(cutOf(lineText(lines, i), i));
    if (line.text === '') continue;
    const words = lineWords.rowsFromFile(subject, head.from.text);
    problems.push(problem('line/not-understood', spanOf(line), words, { subject }));
    break;
  }
  return null;
}

function readEntries(
  lines: Lines, to: number, indent: number, block: BlockKind, row: KindRow, memory: EntryMemory
): Placed<Entry>[] {
  const groups = groupEntries(lines, 1, to, indent, row.attaches ?? null);
  return groups.map((group, index) => {
    const text = entryTextOf(lines, group);
    const before = groups[index - 1]?.place === 'entry' ? 'entry' : 'none';
    const entry =
      group.place === 'entry'
        ? (misplacedRevision(text, before, row) ??
          memory.recall(block, text, () => readOne(readEntryText(text, row.quotes), row)))
        : readAside(readEntryText(text, row.quotes), group.place);
    return { line: group.from, entry };
  });
} // prettier-ignore

function readOne(entry: EntryText, row: KindRow): Entry {
  if (entry.tooLong) return brokenEntry(entry, entry.tooLong);
  if (!row.read) throw new RangeError('A kind of block without entries was asked for one');
  return row.read(entry);
}

// A heading, or a line whose indentation gives it no place.
function readAside(entry: EntryText, place: Exclude<EntryGroup['place'], 'entry'>): Entry {
  if (place === 'heading') {
    const { text, lineCount, comment } = entry;
    return { kind: 'heading', words: comment?.text ?? '', text, lineCount, comment, problems: [] };
  }
  const line = trimCut(cutOf(entry.text.split('\n', 1)[0] ?? ''));
  const stage = place === 'deep' ? revisionStageOf(line) : null;
  if (stage !== null) return brokenEntry(entry, withoutBase(line, stage));
  const words = place === 'shallow' ? lineWords.shallow() : lineWords.deepUnderHeading();
  return brokenEntry(entry, problem('line/indent', spanOf(line), words));
}

function withoutBase(line: Cut, stage: string): Problem {
  const words = lineWords.revisionWithoutBase(stage);
  return problem('line/revision-without-base', spanOf(line), words, { stage });
}

// `at STAGE:` at the block's base: it revises nothing, whatever stands above it.
function misplacedRevision(text: string, before: 'entry' | 'none', row: KindRow): Entry | null {
  if (row.labelled || !/^\s*at\s/.test(text)) return null;
  const entry = readEntryText(text, row.quotes);
  const [line] = entry.lines;
  const stage = line ? revisionStageOf(line) : null;
  if (!line || stage === null) return null;
  if (before === 'none') return brokenEntry(entry, withoutBase(line, stage));
  const { from } = spanOf(line);
  const fix = { at: { line: 0, from, to: from }, replacement: '  ' };
  const words = lineWords.revisionNotIndented(stage);
  return brokenEntry(entry, problem('line/indent', spanOf(line), words, { stage, fix }));
}
