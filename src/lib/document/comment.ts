// Comments of a block's lines: `# what it is; where from`. Where-from begins with a word that says
// how sure it is, at the start of the comment or after a semicolon.

import type { Comment } from './types.ts';

/** How sure a value is, from the surest on. */
export const sureWords: readonly string[] = [
  'measured', 'maker', 'standard', 'handbook', 'derived', 'fit', 'assumed', 'guess', 'invented'
]; // prettier-ignore

const sure: ReadonlySet<string> = new Set(sureWords);

function startsSure(text: string): boolean {
  const word = /^[a-z]+/.exec(text)?.[0] ?? '';
  return sure.has(word) && !/^[\p{L}\p{Nd}_]/u.test(text.slice(word.length, word.length + 2));
}

/** A comment from the texts after its `#` signs, in order; null where there is none. */
export function commentOf(texts: readonly string[]): Comment | null {
  let text = '';
  for (const part of texts.map((each) => each.trim())) {
    if (part === '') continue;
    if (text !== '') text += startsSure(part) && !text.endsWith(';') ? '; ' : ' ';
    text += part;
  }
  if (text === '') return null;
  let from = 0;
  for (const segment of text.split(';')) {
    if (startsSure(segment.trimStart())) {
      const what = text.slice(0, Math.max(0, from - 1)).trim();
      return { text, what, source: text.slice(from).trim() };
    }
    from += segment.length + 1;
  }
  return { text, what: text, source: null };
}
