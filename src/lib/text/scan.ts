// Reads along a line without understanding its expressions: finds the words and signs that split an
// entry, where they stand outside brackets and quoted text, and where a comment begins. One pass
// from left to right, no backtracking, so a hostile line costs no more than its length.

import { sliceCut, trimCut, type Cut } from './cut.ts';

/** A word or sign at bracket depth 0. */
export interface Mark {
  readonly word: string;
  readonly from: number;
  readonly to: number;
}

const asciiWord = new Uint8Array(128);
for (let code = 0; code < 128; code++) {
  if (/[A-Za-z0-9_]/.test(String.fromCharCode(code))) asciiWord[code] = 1;
}
const wordBeyondAscii = /[\p{L}\p{Nd}]/u;
const blank = /\s/;

// ≤ ≥ ≠ are given as `<=`, `>=`, `!=`; the mark's offsets still show their true length.
const signsByCode: ReadonlyMap<number, string> = new Map(
  [
    ['≤', '<='], ['≥', '>='], ['≠', '!='], ['±', '±'], ['=', '='], ['<', '<'], ['>', '>'], [',', ','],
    [':', ':'], ['?', '?']
  ].map(([sign = '', word = '']) => [sign.charCodeAt(0), word])
); // prettier-ignore
const pairsByCode: ReadonlyMap<number, string> = new Map(
  ['<=', '>=', '==', '!=', '..'].map((pair) => [pair.charCodeAt(0), pair])
);

/**
 * The words and signs of a text at bracket depth 0, outside quoted text, in order. Words are whole
 * runs of letters, digits and `_`; one right after a point (`run1.to`) belongs to the name before it
 * and is left out. Signs are `<= >= == != < > = ± .. , : ?`; other characters are passed over.
 *
 * @param wanted  only these words are kept; null keeps all
 */
export function topLevelMarks(text: string, wanted: ReadonlySet<string> | null = null): Mark[] {
  const marks: Mark[] = [];
  let depth = 0;
  let i = 0;
  while (i < text.length) {
    const code = text.charCodeAt(i);
    if (code === 32) {
      i++;
      continue;
    }
    if (asciiWord[code] === 1 || (code > 127 && isWordAt(text, i))) {
      const end = wordEnd(text, i);
      if (depth === 0 && text.charCodeAt(i - 1) !== 46) {
        const word = text.slice(i, end);
        if (wanted === null || wanted.has(word)) marks.push({ word, from: i, to: end });
      }
      i = end;
      continue;
    }
    if (code === 40 || code === 91 || code === 123) depth++;
    else if (code === 41 || code === 93 || code === 125) depth = Math.max(0, depth - 1);
    else if (code === 34) {
      const close = text.indexOf('"', i + 1);
      // A quote that does not close on its line is text.
      if (close > i && !text.slice(i, close).includes('\n')) i = close;
    } else if (depth === 0) {
      const pair = pairsByCode.get(code);
      if (pair !== undefined && text.charCodeAt(i + 1) === pair.charCodeAt(1)) {
        marks.push({ word: pair, from: i, to: i + 2 });
        i += 2;
        continue;
      }
      const sign = signsByCode.get(code);
      if (sign !== undefined) marks.push({ word: sign, from: i, to: i + 1 });
    }
    i++;
  }
  return marks;
}

/**
 * Where a line's comment begins: at a `#` that starts the line or follows white space, and is
 * followed by white space or the end; −1 where there is none. With `quotes`, a `#` inside
 * double quotes that close on the line is text.
 */
export function commentStart(line: string, quotes = false): number {
  let at = line.indexOf('#');
  if (at < 0) return -1;
  const inside = quotes ? quotedRanges(line) : [];
  let range = 0;
  for (; at >= 0; at = line.indexOf('#', at + 1)) {
    const before = at === 0 || blank.test(line.charAt(at - 1));
    const after = at + 1 === line.length || blank.test(line.charAt(at + 1));
    if (!before || !after) continue;
    while (range < inside.length && (inside[range]?.[1] ?? 0) < at) range++;
    const quoted = inside[range];
    if (quoted === undefined || quoted[0] > at) return at;
  }
  return -1;
}

/** A cut's parts between marks, trimmed; `marks` in order. */
export function splitAt(cut: Cut, marks: readonly Mark[]): Cut[] {
  const parts: Cut[] = [];
  let from = 0;
  for (const mark of marks) {
    parts.push(trimCut(sliceCut(cut, from, mark.from)));
    from = mark.to;
  }
  parts.push(trimCut(sliceCut(cut, from)));
  return parts;
}

/** What stands before and after a mark, both trimmed. */
export function aroundMark(cut: Cut, mark: Mark): [Cut, Cut] {
  return [trimCut(sliceCut(cut, 0, mark.from)), trimCut(sliceCut(cut, mark.to))];
}

/** The parts of a list at its top-level commas, trimmed; an empty list has no parts. */
export function splitAtCommas(cut: Cut): Cut[] {
  if (cut.text.trim() === '') return [];
  return splitAt(
    cut,
    topLevelMarks(cut.text, none).filter((mark) => mark.word === ',')
  );
}

const none: ReadonlySet<string> = new Set();

function quotedRanges(line: string): [number, number][] {
  const ranges: [number, number][] = [];
  let open = line.indexOf('"');
  while (open >= 0) {
    const close = line.indexOf('"', open + 1);
    if (close < 0) break;
    ranges.push([open, close]);
    open = line.indexOf('"', close + 1);
  }
  return ranges;
}

function isWordAt(text: string, i: number): boolean {
  const code = text.charCodeAt(i);
  if (code < 128) return asciiWord[code] === 1;
  return wordBeyondAscii.test(String.fromCodePoint(text.codePointAt(i) ?? code));
}

// Plain letters are by far the most, and pass without a call each.
function wordEnd(text: string, from: number): number {
  let i = from;
  for (;;) {
    while (asciiWord[text.charCodeAt(i)] === 1) i++;
    if (i >= text.length || text.charCodeAt(i) < 128 || !isWordAt(text, i)) return i;
    i += (text.codePointAt(i) ?? 0) > 0xffff ? 2 : 1;
  }
}
