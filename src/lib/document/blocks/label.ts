// Labels and tags: a label is the text up to the first colon that is followed by white space; tags
// stand in square brackets at its end.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { sliceCut, spanOf, trimCut, type Cut } from '#lib/text/index.ts';
import type { LimitTags } from '../types.ts';

export const knownTags: readonly string[] = [
  '[safety]', '[screen]', '[level]', '[close at 80 %]', '[close within 5 K]', '[worst of run, jam]'
]; // prettier-ignore

/** What stands before and after the colon of a label; null where there is none. */
export function splitLabel(cut: Cut): { label: Cut; rest: Cut } | null {
  const colon = cut.text.search(/:(?=\s|$)/);
  if (colon < 0) return null;
  return { label: trimCut(sliceCut(cut, 0, colon)), rest: trimCut(sliceCut(cut, colon + 1)) };
}

/** Takes the tags off a label's end; adds a problem for each that is none of ours. */
export function readTags(cut: Cut, problems: Problem[]): { label: Cut; tags: LimitTags } {
  const groups: Cut[] = [];
  let label = trimCut(cut);
  while (label.text.endsWith(']')) {
    const open = label.text.lastIndexOf('[');
    if (open < 0) break;
    groups.unshift(trimCut(sliceCut(label, open + 1, label.text.length - 1)));
    label = trimCut(sliceCut(label, 0, open));
  }
  let safety = false;
  let screen = false;
  let level = false;
  let close: LimitTags['close'] = null;
  const worstOf: Cut[] = [];
  const all: string[] = [];
  let inCases = false;
  for (const tag of groups.flatMap(tagsOf)) {
    if (tag === null) {
      inCases = false;
      continue;
    }
    const closing = /^close\s+(at|within)\s+(?=\S)/.exec(tag.text);
    const cases = /^worst\s+of\s+(?=\S)/.exec(tag.text);
    if (tag.text === 'safety') safety = true;
    else if (tag.text === 'screen') screen = true;
    else if (tag.text === 'level') level = true;
    else if (closing) {
      const amount = trimCut(sliceCut(tag, closing[0].length));
      close = { kind: closing[1] === 'at' ? 'at' : 'within', amount };
    } else if (cases) {
      inCases = true;
      worstOf.push(trimCut(sliceCut(tag, cases[0].length)));
    } else if (inCases && tag.text !== '') {
      worstOf.push(tag);
      all.push(`${all.pop() ?? ''}, ${tag.text}`);
      continue;
    } else {
      const words = lineWords.unknownTag(tag.text, knownTags);
      const subject = label.text;
      problems.push(problem('line/not-understood', spanOf(tag), words, { subject }));
    }
    all.push(tag.text);
  }
  return { label, tags: { safety, screen, level, close, worstOf, all } };
}

// The tags of one pair of brackets, at its commas; null ends the pair.
function tagsOf(group: Cut): (Cut | null)[] {
  const tags: (Cut | null)[] = [];
  let from = 0;
  for (let at = group.text.indexOf(','); at >= 0; at = group.text.indexOf(',', from)) {
    tags.push(trimCut(sliceCut(group, from, at)));
    from = at + 1;
  }
  tags.push(trimCut(sliceCut(group, from)), null);
  return tags;
}
