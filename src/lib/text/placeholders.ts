// Live values in running text: `{P_shaft}`, `{P_shaft at upgrade}`, `{P_shaft to hp}`. Code spans,
// fenced code and mathematics are passed over.

export interface Placeholder {
  readonly name: string;
  readonly stage: string | null;
  /** The unit asked for, as written. */
  readonly unit: string | null;
  /** Offsets of the braces, `to` exclusive. */
  readonly from: number;
  readonly to: number;
}

/** Code spans, mathematics, then a placeholder. */
const pieces =
  /(?<ticks>`+)(?!`)[^]*?(?<!`)\k<ticks>(?!`)|\$\$(?:[^$\\]|\\[^])*\$\$|\$(?!\s)(?:[^$\\\n]|\\.)*?[^\s\\]\$(?!\d)|\{[ \t]*(?<words>[^{}\n]{1,200}?)[ \t]*\}/gu;
const form = /^([\p{L}_][\p{L}\p{Nd}_.]*)(?:\s+at\s+([a-z][a-z0-9-]*))?(?:\s+to\s+(.+))?$/u;
const fence = /^ {0,3}(?:`{3,}|~{3,})/;

/** Every live value that a text asks for, in order. */
export function placeholdersIn(text: string): readonly Placeholder[] {
  if (!text.includes('{')) return [];
  const found: Placeholder[] = [];
  let offset = 0;
  let inFence = false;
  for (const paragraph of text.split(/(\n[ \t]*\r?\n)/)) {
    const fences = paragraph.split('\n').filter((line) => fence.test(line)).length;
    const isCode = inFence || fences > 0;
    if (fences % 2 === 1) inFence = !inFence;
    if (!isCode) found.push(...inParagraph(paragraph, offset));
    offset += paragraph.length;
  }
  return found;
}

function inParagraph(text: string, offset: number): Placeholder[] {
  return [...text.matchAll(pieces)].flatMap((match) => {
    const words = match.groups?.['words'];
    const parts = words === undefined ? null : form.exec(words);
    if (!parts?.[1]) return [];
    const from = offset + match.index;
    return [{
      name: parts[1], stage: parts[2] ?? null, unit: parts[3] ?? null, from, to: from + match[0].length
    }]; // prettier-ignore
  });
}
