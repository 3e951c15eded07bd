// A block's info string after its kind: a title, a name, a path, a stage or a signal word, split as
// the kind asks. Cuts stand on line 0, the line of the fence.

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { isName, reservationOf, sliceCut, spanOf, trimCut, type Cut } from '#lib/text/index.ts';
import { pathProblem } from './files.ts';
import type { BlockHead, BlockKind } from './types.ts';

export type HeadForm =
  | 'title' | 'name' | 'system' | 'name [from PATH]' | 'name at STAGE' | 'at STAGE' | 'name to READINGS'
  | 'name from TABLE' | 'signal'; // prettier-ignore

type Mutable = { -readonly [K in keyof BlockHead]: BlockHead[K] };

const signals = ['danger', 'warning', 'caution'] as const;

/**
 * Reads what follows a block's kind; adds what is missing or not understood.
 *
 * @param info  the rest of the info string, trimmed
 * @param kind  a cut of the kind's own word, where a missing part is told
 */
export function readHead(
  form: HeadForm,
  block: BlockKind,
  kind: Cut,
  info: Cut,
  problems: Problem[]
): BlockHead {
  const head: Mutable = { title: null, name: null, from: null, at: null, to: null, signal: null };
  if (form === 'title' || form === 'system') {
    head.title = info.text === '' ? null : info.text;
    if (form === 'system' && isName(info.text)) head.name = info;
    return head;
  }
  const written = `${block} ${headForms[form]}`;
  if (info.text === '') {
    const words = lineWords.headMissing(block, headParts[form], written);
    problems.push(problem('line/not-understood', spanOf(kind), words));
    if (form === 'signal') head.signal = 'caution';
    return head;
  }
  const refuse = (part: Cut): void => {
    const words = lineWords.headNotUnderstood(part.text, block, written);
    problems.push(problem('line/not-understood', spanOf(part), words));
  };
  if (form === 'signal') {
    const signal = signals.find((word) => word === info.text.toLowerCase());
    if (signal === undefined) refuse(info);
    head.signal = signal ?? 'caution';
    return head;
  }
  const words = wordsOf(info);
  const [first, second, third] = words;
  if (form === 'at STAGE') {
    if (first?.text === 'at' && second && !third) head.at = second;
    else refuse(info);
    return head;
  }
  if (!first) return head;
  if (checkName(first, problems)) head.name = first;
  if (form === 'name') {
    if (second) refuse(restFrom(info, second));
    return head;
  }
  const joint = { 'name [from PATH]': 'from', 'name at STAGE': 'at', 'name to READINGS': 'to', 'name from TABLE': 'from' }[form] as 'from' | 'at' | 'to'; // prettier-ignore
  if (!second) {
    if (form !== 'name [from PATH]') {
      const missing = lineWords.headMissing(block, headParts[form], written);
      problems.push(problem('line/not-understood', spanOf(first), missing));
    }
    return head;
  }
  const target = third ? restFrom(info, third) : null;
  const isOneWord = target !== null && words.length === 3;
  if (second.text !== joint || target === null || !(isOneWord || form === 'name [from PATH]')) {
    refuse(restFrom(info, second));
    return head;
  }
  head[joint] = target;
  if (form === 'name [from PATH]') {
    const outside = pathProblem(target);
    if (outside) problems.push(outside);
  }
  return head;
}

const headForms: Readonly<Record<Exclude<HeadForm, 'title' | 'system'>, string>> = {
  name: 'NAME', 'name [from PATH]': 'NAME [from PATH]', 'name at STAGE': 'NAME at STAGE',
  'at STAGE': 'at STAGE', 'name to READINGS': 'NAME to READINGS', 'name from TABLE': 'NAME from TABLE',
  signal: 'danger, warning or caution'
}; // prettier-ignore

const headParts: Readonly<Record<Exclude<HeadForm, 'title' | 'system'>, string>> = {
  name: 'a name', 'name [from PATH]': 'a name', 'name at STAGE': 'a name and a stage',
  'at STAGE': 'a stage', 'name to READINGS': 'a name and the readings it is fitted to',
  'name from TABLE': 'a name and the table it chooses from',
  signal: 'its signal word (danger, warning or caution)'
}; // prettier-ignore

/** Adds the problem of a text that is no name, or of a name that cannot be defined. */
export function checkName(name: Cut, problems: Problem[]): boolean {
  if (!isName(name.text)) {
    problems.push(problem('line/not-understood', spanOf(name), lineWords.notAName(name.text)));
    return false;
  }
  const reservation = reservationOf(name.text);
  if (reservation !== null) {
    const words = lineWords.reservedName(name.text, reservation);
    problems.push(problem('line/reserved-name', spanOf(name), words, { subject: name.text }));
    return false;
  }
  return true;
}

function wordsOf(cut: Cut): Cut[] {
  const words: Cut[] = [];
  for (const match of cut.text.matchAll(/\S+/g)) {
    words.push(sliceCut(cut, match.index, match.index + match[0].length));
  }
  return words;
}

// A cut from where `part` begins to the end of `whole`; both stand on one line.
function restFrom(whole: Cut, part: Cut): Cut {
  const from = (part.pieces[0]?.column ?? 1) - (whole.pieces[0]?.column ?? 1);
  return trimCut(sliceCut(whole, from));
}
