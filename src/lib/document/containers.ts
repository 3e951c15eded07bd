// Tells, line by line, whether a worksheet's prose stands at document level or inside a list item or
// a block quote, as far as fences need it. It keeps the open containers and whether a paragraph is
// open in the innermost one, after the method of CommonMark 0.31.2, appendix "A parsing strategy"
// (from memory). Raw HTML is text here, so it opens nothing and hides no block.

/** A fence that opens a code block: 0 to 3 spaces, then at least three ` or ~. */
export interface FenceOpening {
  readonly char: '`' | '~';
  readonly length: number;
  readonly indent: number;
  /** What follows the fence on its line, as it stands. */
  readonly info: string;
}

type Container =
  | { readonly kind: 'quote' }
  | { readonly kind: 'item'; readonly width: number; hasContent: boolean };

type Leaf =
  | { readonly kind: 'none' | 'paragraph' }
  | { readonly kind: 'fence'; readonly char: string; readonly length: number };

/** Deeper nesting is read as text, so that a hostile line costs no more than its length. */
const deepestNesting = 40;
const longestStructure = 1000;

const nothing: Leaf = { kind: 'none' };
const paragraph: Leaf = { kind: 'paragraph' };

/** Reads the lines of a file's prose in order. */
export interface ProseTracker {
  /** The fence that opens at document level on this line, or null. */
  read(line: string): FenceOpening | null;
}

export function createProseTracker(): ProseTracker {
  let containers: Container[] = [];
  let leaf: Leaf = nothing;

  function read(original: string): FenceOpening | null {
    const line = structureOf(original);
    let at = 0;
    let matched = 0;
    for (const container of containers) {
      const next = continues(container, line, at);
      if (next === null) break;
      at = next;
      matched++;
    }
    const allMatched = matched === containers.length;
    if (leaf.kind === 'fence') {
      if (allMatched) {
        if (closesFence(line.slice(at), leaf.char, leaf.length)) leaf = nothing;
        return null;
      }
      leaf = nothing;
    }

    // Is a paragraph what this line would interrupt? Only where every container goes on.
    let interrupts = leaf.kind === 'paragraph' && allMatched;
    let opened = false;
    const closeUnmatched = (): void => {
      if (!opened) containers = containers.slice(0, matched);
      opened = true;
      leaf = nothing;
    };
    for (;;) {
      const indent = spacesAt(line, at);
      if (at + indent >= line.length) return blankLine(opened, matched);
      if (indent >= 4) {
        if (leaf.kind === 'paragraph' && !opened) return null;
        closeUnmatched();
        markContent();
        return null;
      }
      const rest = at + indent;
      const char = line.charAt(rest);
      if (char === '>' && containers.length < deepestNesting) {
        closeUnmatched();
        markContent();
        containers.push({ kind: 'quote' });
        at = rest + 1;
        if (line.charAt(at) === ' ') at++;
        interrupts = false;
        continue;
      }
      const fence = char === '`' || char === '~' ? openingFence(line.slice(at)) : null;
      if (fence) {
        closeUnmatched();
        if (containers.length === 0) return openingFence(original);
        markContent();
        leaf = { kind: 'fence', char: fence.char, length: fence.length };
        return null;
      }
      if (char === '#' && /^#{1,6}(?: |$)/.test(line.slice(rest, rest + 7))) {
        closeUnmatched();
        markContent();
        return null;
      }
      if (interrupts && (char === '=' || char === '-') && isSetextLine(line, rest)) {
        leaf = nothing;
        return null;
      }
      if (isThematicBreak(line, rest)) {
        closeUnmatched();
        markContent();
        return null;
      }
      const item = containers.length < deepestNesting ? itemMarker(line, at, interrupts) : null;
      if (item) {
        closeUnmatched();
        markContent();
        containers.push({ kind: 'item', width: item.width, hasContent: false });
        at = Math.min(line.length, at + item.width);
        interrupts = false;
        continue;
      }
      // A paragraph's text goes on lazily even where its containers are not marked again.
      if (leaf.kind === 'paragraph' && !opened) return null;
      closeUnmatched();
      markContent();
      leaf = paragraph;
      return null;
    }
  }

  function blankLine(opened: boolean, matched: number): null {
    if (!opened) containers = containers.slice(0, matched);
    leaf = nothing;
    return null;
  }

  function markContent(): void {
    const last = containers.at(-1);
    if (last?.kind === 'item') last.hasContent = true;
  }

  return { read };
}

/** Whether a line closes a fence: 0 to 3 spaces, the same sign at least as often, nothing else. */
export function closesFence(line: string, char: string, length: number): boolean {
  let at = 0;
  while (at < 4 && line.charAt(at) === ' ') at++;
  if (at > 3 || line.charAt(at) !== char) return false;
  const from = at;
  while (line.charAt(at) === char) at++;
  if (at - from < length) return false;
  while (at < line.length && (line.charAt(at) === ' ' || line.charAt(at) === '\t')) at++;
  return at === line.length;
}

/** The fence that a line opens, if it does; the info of a backtick fence has no backtick. */
export function openingFence(line: string): FenceOpening | null {
  let indent = 0;
  while (indent < 4 && line.charAt(indent) === ' ') indent++;
  const char = line.charAt(indent);
  if (indent > 3 || (char !== '`' && char !== '~')) return null;
  let at = indent;
  while (line.charAt(at) === char) at++;
  const length = at - indent;
  const info = line.slice(at);
  if (length < 3 || (char === '`' && info.includes('`'))) return null;
  return { char, length, indent, info };
}

// Where a container's content begins on a line that continues it; null where the line does not.
function continues(container: Container, line: string, at: number): number | null {
  const indent = spacesAt(line, at);
  const isBlank = at + indent >= line.length;
  if (container.kind === 'quote') {
    if (indent > 3 || line.charAt(at + indent) !== '>') return null;
    const next = at + indent + 1;
    return line.charAt(next) === ' ' ? next + 1 : next;
  }
  if (isBlank) return container.hasContent ? line.length : null;
  return indent >= container.width ? at + container.width : null;
}

interface ItemMarker {
  /** Columns from the item's start to its content. */
  readonly width: number;
}

function itemMarker(line: string, at: number, interrupts: boolean): ItemMarker | null {
  const indent = spacesAt(line, at);
  let end = at + indent;
  const char = line.charAt(end);
  let start = 1;
  if (char === '-' || char === '+' || char === '*') end++;
  else {
    const from = end;
    while (end - from < 10 && line.charAt(end) >= '0' && line.charAt(end) <= '9') end++;
    if (end === from || end - from > 9) return null;
    if (line.charAt(end) !== '.' && line.charAt(end) !== ')') return null;
    start = Number(line.slice(from, end));
    end++;
  }
  if (end < line.length && line.charAt(end) !== ' ') return null;
  const spaces = spacesAt(line, end);
  const isBlank = end + spaces >= line.length;
  if (interrupts && (isBlank || start !== 1)) return null;
  const padding = isBlank || spaces > 4 ? 1 : spaces;
  return { width: end - at + padding };
}

function isThematicBreak(line: string, from: number): boolean {
  const char = line.charAt(from);
  if (char !== '-' && char !== '_' && char !== '*') return false;
  let count = 0;
  for (let i = from; i < line.length; i++) {
    if (line.charAt(i) === char) count++;
    else if (line.charAt(i) !== ' ') return false;
  }
  return count >= 3;
}

function isSetextLine(line: string, from: number): boolean {
  const char = line.charAt(from);
  let at = from;
  while (line.charAt(at) === char) at++;
  while (at < line.length && line.charAt(at) === ' ') at++;
  return at === line.length;
}

function spacesAt(line: string, at: number): number {
  let end = at;
  while (line.charCodeAt(end) === 32) end++;
  return end - at;
}

// Tabs become spaces up to the next column that is a multiple of 4: only structure is read from the
// result, never text. Structure stands at the start of a line, so a long one is read no further.
function structureOf(line: string): string {
  const start = line.length > longestStructure ? line.slice(0, longestStructure) : line;
  if (!start.includes('\t')) return start;
  const [first = '', ...others] = start.split('\t');
  let expanded = first;
  for (const part of others) expanded += ' '.repeat(4 - (expanded.length % 4)) + part;
  return expanded;
}
