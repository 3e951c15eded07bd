// From the lines of a block to its entries' own lines: which line heads an entry, what goes on with
// it, which deeper lines revise it at a stage, and what is comment. Two steps: `groupEntries` cuts a
// block into entries by indentation alone, so that an entry's text can be looked up before it is
// read; `readEntryText` takes one entry's text apart.

import { fileWords, lineWords, problem, type Problem } from '#lib/problem/index.ts';
import {
  commentStart, cutOf, endOf, joinCuts, sliceCut, spanOf, startOf, trimCut, type Cut, type Lines
} from '#lib/text/index.ts'; // prettier-ignore
import { commentOf } from './comment.ts';
import type { Comment } from './types.ts';

/** Characters of a line in an entry; a longer one is kept and not read. */
export const longestLine = 2000;

/** Lines `from` to `to` (exclusive) of a block. */
export interface EntryGroup {
  readonly from: number;
  readonly to: number;
  readonly place: 'entry' | 'heading' | 'shallow' | 'deep';
}

export interface RevisionText {
  readonly stage: Cut;
  /** What stands after the colon, continuations joined. */
  readonly body: Cut;
  readonly lines: readonly Cut[];
  readonly comment: Comment | null;
  /** The whole of `at STAGE:`, for a problem of the revision's place. */
  readonly head: Cut;
}

/** One entry's text, taken apart; cuts count lines from 0 at its first. */
export interface EntryText {
  readonly text: string;
  readonly lineCount: number;
  /** Its lines without comments and revisions, trimmed; the first is the head line. */
  readonly lines: readonly Cut[];
  /** The same, joined. */
  readonly head: Cut;
  readonly comment: Comment | null;
  readonly revisions: readonly RevisionText[];
  /** Set where a line is too long to be read. */
  readonly tooLong: Problem | null;
}

const revisionHead = /^at[ \t]+([^\s:]+)[ \t]*:(?=\s|$)/;

/**
 * Cuts lines `from` to `to` of a block into entries. Columns of indentation that the opening fence
 * has itself are taken off, as CommonMark does.
 *
 * @param attaches  a line at base for which this holds goes with the entry above it
 */
export function groupEntries(
  lines: Lines,
  from: number,
  to: number,
  fenceIndent: number,
  attaches: ((line: string) => boolean) | null = null
): EntryGroup[] {
  const { text } = lines;
  const groups: EntryGroup[] = [];
  let base = -1;
  let open: { from: number; to: number; place: EntryGroup['place'] } | null = null;
  const start = (at: number, place: EntryGroup['place']): void => {
    if (open) groups.push(open);
    open = { from: at, to: at + 1, place };
  };
  const extend = (at: number): boolean => {
    if (open === null || open.place === 'heading') return false;
    open.to = at + 1;
    return true;
  };
  for (let i = from; i < to; i++) {
    const end = endOf(lines, i);
    let at = startOf(lines, i);
    let width = 0;
    for (; at < end; at++) {
      const code = text.charCodeAt(at);
      if (code === 32) width += 1;
      else if (code === 9) width += 4;
      else break;
    }
    if (at >= end || text.slice(at, end).trim() === '') continue;
    width = Math.max(0, width - fenceIndent);
    const isComment =
      text.charCodeAt(at) === 35 && (at + 1 === end || isBlank(text.charCodeAt(at + 1)));
    if (isComment) {
      if (base < 0 || width <= base || !extend(i)) start(i, 'heading');
      continue;
    }
    if (base < 0) base = width;
    if (width > base) {
      if (!extend(i)) start(i, 'deep');
    } else if (attaches?.(text.slice(at, end)) && extend(i)) continue;
    else start(i, width < base ? 'shallow' : 'entry');
  }
  if (open) groups.push(open);
  return groups;
}

/** An entry's lines as they stand, joined by newlines. */
export function entryTextOf(lines: Lines, group: EntryGroup): string {
  if (group.to === group.from + 1)
    return lines.text.slice(startOf(lines, group.from), endOf(lines, group.from));
  const text = lines.text.slice(startOf(lines, group.from), endOf(lines, group.to - 1));
  return text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
}

/** Takes one entry's text apart. `quotes`: a `#` inside double quotes begins no comment. */
export function readEntryText(text: string, quotes = false): EntryText {
  const first: Section = { revision: null, lines: [], comments: [] };
  const sections: Section[] = [first];
  let section = first;
  let tooLong: Problem | null = null;
  const lines = text.split('\n');
  for (const [index, line] of lines.entries()) {
    if (line.length > longestLine) {
      const at = { line: index, from: 1, to: line.length + 1 };
      tooLong ??= problem('file/too-long', at, fileWords.lineTooLong(line.length, longestLine));
      continue;
    }
    const hash = commentStart(line, quotes);
    const cut = trimCut(cutOf(hash < 0 ? line : line.slice(0, hash), index));
    const match = index > 0 ? revisionHead.exec(cut.text) : null;
    if (match) {
      const stageFrom = match[0].indexOf(match[1] ?? '', 2);
      section = {
        revision: {
          head: sliceCut(cut, 0, match[0].length),
          stage: sliceCut(cut, stageFrom, stageFrom + (match[1] ?? '').length)
        },
        lines: [trimCut(sliceCut(cut, match[0].length))],
        comments: []
      };
      sections.push(section);
    } else if (cut.text !== '') section.lines.push(cut);
    if (hash >= 0) section.comments.push(line.slice(hash + 1));
  }
  const head = first.lines;
  return {
    text, lineCount: lines.length, lines: head, head: joinCuts(head.length > 0 ? head : [cutOf('')]),
    comment: commentOf(first.comments), revisions: sections.flatMap(revisionOf), tooLong
  }; // prettier-ignore
}

/** The stage named by a line that has the form of a revision, where it stands at base. */
export function revisionStageOf(head: Cut): string | null {
  return revisionHead.exec(head.text)?.[1] ?? null;
}

/** The problem of a revision under an entry of a form that cannot be revised. */
export function refuseRevisions(entry: EntryText, what: string): Problem[] {
  return entry.revisions.map(({ head }) =>
    problem('line/not-understood', spanOf(head), {
      ...lineWords.notRevised(what),
      found: head.text
    })
  );
}

// The head of an entry, or one of its revisions, while its lines are gathered.
interface Section {
  readonly revision: { readonly head: Cut; readonly stage: Cut } | null;
  readonly lines: Cut[];
  readonly comments: string[];
}

// The formula of a revision may begin on the line after `at STAGE:`.
function revisionOf({ revision, lines, comments }: Section): RevisionText[] {
  if (revision === null) return [];
  const whole = lines.length > 1 && lines[0]?.text === '' ? lines.slice(1) : lines;
  return [{ ...revision, lines: whole, body: joinCuts(whole), comment: commentOf(comments) }];
}

function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 12 || code === 11 || code === 0xa0;
}
