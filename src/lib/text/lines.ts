// Lines of a text, kept as offsets: where each begins, and where its words end and its line end
// begins. A line ends with LF, CRLF or a lone CR, as in CommonMark 0.31.2, section 2.1; nothing is
// copied or normalised, so a text cut at these offsets joins again byte for byte.

export interface Lines {
  readonly text: string;
  readonly count: number;
  /** Offset of each line's first character; one more entry, the text's length, closes the list. */
  readonly starts: readonly number[];
  /** Offset at which each line's own characters end and its line end (if any) begins. */
  readonly ends: readonly number[];
}

const LF = 10;
const CR = 13;

/**
 * The lines of a text. A text that ends with a line end has no empty last line; an empty text has
 * none at all.
 */
export function splitLines(text: string): Lines {
  const starts: number[] = [0];
  const ends: number[] = [];
  let position = 0;
  let nextReturn = text.indexOf('\r');
  let nextFeed = text.indexOf('\n');
  while (nextFeed >= 0 || nextReturn >= 0) {
    const end = nextReturn >= 0 && (nextFeed < 0 || nextReturn < nextFeed) ? nextReturn : nextFeed;
    const pair = text.charCodeAt(end) === CR && text.charCodeAt(end + 1) === LF;
    position = end + (pair ? 2 : 1);
    ends.push(end);
    starts.push(position);
    if (nextReturn >= 0 && nextReturn < position) nextReturn = text.indexOf('\r', position);
    if (nextFeed >= 0 && nextFeed < position) nextFeed = text.indexOf('\n', position);
  }
  if (position < text.length) {
    ends.push(text.length);
    starts.push(text.length);
  }
  return { text, count: ends.length, starts, ends };
}

/** A line's own characters, without its line end; lines count from 0. */
export function lineText(lines: Lines, index: number): string {
  return lines.text.slice(startOf(lines, index), endOf(lines, index));
}

/** Offset of a line's first character; for an index past the last line, the text's length. */
export function startOf(lines: Lines, index: number): number {
  return lines.starts[index] ?? lines.text.length;
}

/** Offset at which a line's own characters end. */
export function endOf(lines: Lines, index: number): number {
  return lines.ends[index] ?? lines.text.length;
}

/** The text of lines `from` to `to` (`to` exclusive), line ends included. */
export function linesText(lines: Lines, from: number, to: number): string {
  return lines.text.slice(startOf(lines, from), startOf(lines, to));
}

/** Columns of white space at the start of a line's text; a tab counts as 4. */
export function indentWidth(line: string): number {
  let width = 0;
  for (let i = 0; i < line.length; i++) {
    const code = line.charCodeAt(i);
    if (code === 32) width += 1;
    else if (code === 9) width += 4;
    else break;
  }
  return width;
}
