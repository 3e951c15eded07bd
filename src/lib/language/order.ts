// Which token may follow which: operators between values, brackets in pairs, commas in calls, `:`
// after `?`, nothing side by side but a number and pi or a bracket; and the limits of size. All of it
// is settled in one pass without recursion, so the parser behind it only meets expressions that it
// can read, of a depth that it can hold.

import { syntaxWords } from '#lib/problem/index.ts';
import { finding, type Finding } from './finding.ts';
import { sideBySide } from './side-by-side.ts';
import { limits, type Token } from './token.ts';

interface Frame {
  readonly open: Token | null;
  /** `?` whose `:` has not come. */
  choices: number;
}

/** The first mistake in the order of the tokens, or null where there is none. */
export function orderFinding(
  text: string,
  tokens: readonly Token[],
  money: string | null
): Finding | null {
  if (tokens.length === 0) {
    return finding('syntax/unexpected', 0, text.length, syntaxWords.emptyExpression());
  }
  const frames: Frame[] = [{ open: null, choices: 0 }];
  let depth = 0;
  let nodes = 0;
  let wantsValue = true;
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    const frame = frames.at(-1);
    if (!token || !frame) break;
    const before = tokens[i - 1] ?? null;
    switch (token.kind) {
      case 'number':
      case 'quantity':
      case 'name':
      case '(':
        if (!wantsValue) {
          const wrong = sideBySide(text, tokens, i, money);
          if (wrong) return wrong;
          nodes++;
        }
        nodes++;
        wantsValue = token.kind === '(';
        break;
      case 'call':
        wantsValue = true;
        break;
      case 'operator':
        if (token.text === 'not' && !wantsValue) {
          const words = syntaxWords.missingBeforeNot();
          return finding('syntax/missing-operator', token.from, token.to, words);
        }
        if (wantsValue && !isPrefix(token)) return missingValue(token, before);
        wantsValue = true;
        nodes++;
        break;
      case 'power':
        if (wantsValue) return missingValue(token, before);
        if (before?.kind === 'power') {
          return finding('syntax/unexpected', before.from, token.to, syntaxWords.afterPower());
        }
        if (before?.kind === 'quantity') {
          const written = text.slice(before.from, before.to);
          const words = syntaxWords.powerAfterQuantity(written, token.text);
          return finding('syntax/unexpected', before.from, token.to, words);
        }
        nodes += 2;
        break;
      case 'to':
        if (wantsValue) return missingValue(token, before);
        break;
      case ',':
        if (frame.open?.kind !== 'call') {
          return finding('syntax/unexpected', token.from, token.to, syntaxWords.commaOutside());
        }
        if (wantsValue) return missingValue(token, before);
        if (frame.choices > 0) return unfinishedChoice(tokens, i);
        wantsValue = true;
        break;
      case '?':
        if (wantsValue) return missingValue(token, before);
        frame.choices++;
        depth++;
        nodes++;
        wantsValue = true;
        break;
      case ':':
        if (frame.choices === 0) {
          return finding('syntax/unexpected', token.from, token.to, syntaxWords.colonAlone());
        }
        if (wantsValue) return missingValue(token, before);
        frame.choices--;
        depth--;
        wantsValue = true;
        break;
      case ')':
        if (!frame.open) {
          const cure = { from: token.from, to: token.to, replacement: '' };
          return finding('syntax/brackets', token.from, token.to, syntaxWords.notOpened(), cure);
        }
        if (wantsValue && before?.kind === '(') {
          return finding('syntax/unexpected', before.from, token.to, syntaxWords.emptyBrackets());
        }
        if (wantsValue && before?.kind !== 'call') return missingValue(token, before);
        if (frame.choices > 0) return unfinishedChoice(tokens, i);
        frames.pop();
        depth--;
        wantsValue = false;
        break;
    }
    if (token.kind === '(' || token.kind === 'call') {
      frames.push({ open: token, choices: 0 });
      depth++;
    }
    if (depth > limits.depth) {
      return finding('syntax/too-deep', token.from, token.to, syntaxWords.tooDeep(limits.depth));
    }
    if (nodes > limits.nodes) {
      return finding(
        'syntax/too-deep',
        token.from,
        token.to,
        syntaxWords.tooManyNodes(limits.nodes)
      );
    }
  }
  return ending(text, tokens, frames, wantsValue);
}

function ending(
  text: string,
  tokens: readonly Token[],
  frames: readonly Frame[],
  wantsValue: boolean
): Finding | null {
  const last = tokens.at(-1);
  const frame = frames.at(-1);
  if (!last || !frame) return null;
  if (wantsValue && last.kind !== '(' && last.kind !== 'call') {
    return finding('syntax/unexpected', last.from, last.to, syntaxWords.endsEarly(last.text));
  }
  if (frame.open) {
    const { from, to } = frame.open;
    const end = text.trimEnd().length;
    const cure = wantsValue ? null : { from: end, to: end, replacement: ')' };
    return finding('syntax/brackets', from, to, syntaxWords.notClosed(), cure);
  }
  return frame.choices > 0 ? unfinishedChoice(tokens, tokens.length) : null;
}

function isPrefix(token: Token): boolean {
  return token.text === '-' || token.text === '+' || token.text === 'not';
}

function missingValue(token: Token, before: Token | null): Finding {
  const found = token.kind === 'power' ? (token.text === '2' ? '²' : '³') : token.text;
  const words = syntaxWords.valueExpected(found, before && before.text);
  const from = before?.kind === 'operator' ? before.from : token.from;
  // `a * / b` marks both signs; after a bracket only the second one is wrong.
  return finding('syntax/unexpected', from, token.to, words);
}

/** Marks the last `?` before `end` that has no `:`. */
function unfinishedChoice(tokens: readonly Token[], end: number): Finding {
  let colons = 0;
  for (let i = end - 1; i >= 0; i--) {
    const token = tokens[i];
    if (token?.kind === ':') colons++;
    if (token?.kind !== '?' || colons-- > 0) continue;
    return finding('syntax/unexpected', token.from, token.to, syntaxWords.choiceIncomplete());
  }
  throw new RangeError('unfinishedChoice: no ? before token ' + String(end));
}
