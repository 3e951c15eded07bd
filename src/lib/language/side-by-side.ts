// Two values side by side. Only a number before `pi` or a bracket multiplies, and only where no slash
// or power stands before it; everywhere else the reader would have to guess, so the sheet is asked to
// write the operator, with the likely cure at hand.

import { nameWords, syntaxWords } from '#lib/problem/index.ts';
import { isUnitFault, parseUnit } from '#lib/units/index.ts';
import { finding, type Cure, type Finding } from './finding.ts';
import { isFunctionName } from './functions.ts';
import { unitAfter } from './number.ts';
import type { Token } from './token.ts';
import { unitFinding } from './unit-finding.ts';

interface Pair {
  readonly text: string;
  readonly tokens: readonly Token[];
  /** Index of the second of the two. */
  readonly at: number;
  readonly left: Token;
  readonly right: Token;
  readonly money: string | null;
}

/** What is wrong with the token at `at`, a value right after a value; null for `2 pi`, `2(3 + 4)`. */
export function sideBySide(
  text: string,
  tokens: readonly Token[],
  at: number,
  money: string | null
): Finding | null {
  const [left, right] = [tokens[at - 1], tokens[at]];
  if (!left || !right) throw new RangeError(`sideBySide: no pair at token ${at}`);
  const pair: Pair = { text, tokens, at, left, right, money };
  const multiplies = left.kind === 'number' && (right.kind === '(' || isPi(pair));
  if (multiplies && operatorBefore(tokens, at - 1) === null) return null;
  return (
    conversionWord(pair) ??
    remainder(pair) ??
    partOfQuantity(pair) ??
    unitAfterPower(pair) ??
    misspeltUnit(pair) ??
    missingOperator(pair)
  );
}

/** `pi` itself, not a call of something named so. */
function isPi({ tokens, at, right }: Pair): boolean {
  return right.kind === 'name' && right.text === 'pi' && tokens[at + 1]?.kind !== 'call';
}

/** `/` or `^` before the value at `index`, signs between passed over; null where there is none. */
function operatorBefore(tokens: readonly Token[], index: number): '/' | '^' | null {
  let i = index - 1;
  while (i > 0 && isPrefixSign(tokens, i)) i--;
  const text = tokens[i]?.text;
  return text === '/' || text === '^' ? text : null;
}

function isPrefixSign(tokens: readonly Token[], index: number): boolean {
  const text = tokens[index]?.text;
  const before = tokens[index - 1];
  return (text === '-' || text === '+') && before?.kind === 'operator';
}

/** `x in mm`, `a mod b`. */
function conversionWord({ left, right, text, tokens, at }: Pair): Finding | null {
  const { from, to } = right;
  const [before, after] = [written(text, left), tokens[at + 1]];
  if (right.text === 'in') {
    const cure = { from, to, replacement: 'to' };
    return finding('syntax/not-in-language', from, to, syntaxWords.conversionByIn(before), cure);
  }
  if (right.text !== 'mod' && right.text !== 'xor' && right.text !== 'rem') return null;
  const other = after ? written(text, after) : 'b';
  const example = right.text === 'xor' ? `${before} != ${other}` : `mod(${before}, ${other})`;
  const words = syntaxWords.wordOperator(right.text, example);
  return finding('syntax/not-in-language', from, to, words);
}

/** `5 % 3` */
function remainder({ left, right, text, tokens, at }: Pair): Finding | null {
  if (left.unit?.text !== '%') return null;
  const simple = right.kind !== '(' && tokens[at + 1]?.kind !== 'call';
  const divisor = simple ? written(text, right) : '…';
  const write = `mod(${left.text}, ${divisor})`;
  const alone = tokens[at - 2] === undefined || isOpening(tokens[at - 2]);
  const cure = simple && alone ? { from: left.from, to: right.to, replacement: write } : null;
  const words = syntaxWords.remainderBySign(write);
  return finding('syntax/not-in-language', left.from, right.to, words, cure);
}

/** `5 ft 3 in`, and longer: 1 h 20 min 5 s. */
function partOfQuantity({ left, right, text, tokens, at }: Pair): Finding | null {
  if (left.kind !== 'quantity' || right.kind !== 'quantity') return null;
  if (left.unit?.dimension !== right.unit?.dimension) return null;
  let last = at;
  while (tokens[last + 1]?.kind === 'quantity') last++;
  const parts = tokens.slice(at - 1, last + 1).map((part) => written(text, part));
  const [from, to] = [left.from, tokens[last]?.to ?? right.to];
  const sum = parts.join(' + ');
  const alone = tokens.length === parts.length;
  const write = alone ? sum : `(${sum})`;
  const words = syntaxWords.mixedUnits(text.slice(from, to), write);
  return finding('syntax/number-form', from, to, words, { from, to, replacement: write });
}

/** `10^-6 m` */
function unitAfterPower({ left, right, text, tokens, at, money }: Pair): Finding | null {
  if (left.kind !== 'number' || right.kind !== 'name') return null;
  if (operatorBefore(tokens, at - 1) !== '^') return null;
  const run = unitAfter(text, left.to, money);
  if (!run) return null;
  let power = at - 2;
  while (tokens[power]?.text !== '^') power--;
  const base = tokens[power - 1];
  if (!base) return null;
  const exponent = text.slice(tokens[power + 1]?.from, left.to).replace(/\s|\+/gu, '');
  const unit = text.slice(run.from, run.to);
  const isTen = base.kind === 'number' && base.value === 10 && /^[-−]*\d+$/u.test(exponent);
  if (!isTen) {
    const found = text.slice(base.from, run.to);
    const write = `${text.slice(base.from, left.to)} * 1 ${unit}`;
    const cure = { from: left.to, to: run.from, replacement: ' * 1 ' };
    return finding(
      'syntax/number-form',
      base.from,
      run.to,
      syntaxWords.unitAfterPower(found, write),
      cure
    );
  }
  // 3*10^-6 m is taken together: 3e-6 m.
  const factor = tokens[power - 3];
  const joins =
    tokens[power - 2]?.text === '*' && factor?.kind === 'number' && /^[\d.]+$/.test(factor.text) &&
    operatorBefore(tokens, power - 3) === null; // prettier-ignore
  const from = joins ? factor.from : base.from;
  const write = `${joins ? factor.text : '1'}e${exponent.replace(/−/gu, '-')} ${unit}`;
  const words = syntaxWords.unitAfterPower(text.slice(from, run.to), write);
  return finding('syntax/number-form', from, run.to, words, {
    from,
    to: run.to,
    replacement: write
  });
}

/** `5 kw`, `3 ton`: a name after a number that is nearly a unit, or one that is refused. */
function misspeltUnit({ left, right, tokens, at, money }: Pair): Finding | null {
  if (left.kind !== 'number' || right.kind !== 'name' || tokens[at + 1]?.kind === 'call')
    return null;
  if (right.text.includes('.') || isFunctionName(right.text) || isPi({ tokens, at, right } as Pair))
    return null;
  const fault = parseUnit(right.text, money);
  if (!isUnitFault(fault)) return null;
  // One letter is more often a factor than a unit spelt wrong.
  const near = fault.replacement !== null && right.text.length > 1;
  return fault.code !== 'units/unknown' || near ? unitFinding(fault, right.from) : null;
}

function missingOperator(pair: Pair): Finding {
  const { text, tokens, at, left, right, money } = pair;
  const [first, second] = [written(text, left), rightText(pair)];
  const startAt = operandStart(tokens, at - 1);
  const before = operatorBefore(tokens, startAt);
  const from = tokens[startAt]?.from ?? left.from;
  const to = right.from + second.length;
  const start = text.slice(from, left.to);
  if (before === '/') {
    const top = dividend(text, tokens, startAt);
    const words = syntaxWords.missingAfterSlash(start, second, [
      `${top}/${start}*${second}`,
      `${top}/(${start}*${second})`
    ]);
    return finding('syntax/missing-operator', from, to, words);
  }
  const cure = insertTimes(pair);
  if (left.kind === 'name' && right.kind === 'name' && !isUnitFault(parseUnit(right.text, money))) {
    const words = syntaxWords.nameBesideUnit(first, second);
    return finding('syntax/missing-operator', from, to, words, cure);
  }
  if (left.kind === 'name' && isFunctionName(left.text)) {
    const call = nameWords.functionWithoutArguments(left.text, second);
    return finding('names/arguments', left.from, to, call);
  }
  const per = perUnit(pair, first);
  if (per) return per;
  const bothNumbers = isNumeral(left) && isNumeral(right);
  const product = start + timesBetween(pair) + second;
  const words = syntaxWords.missingTimes(start, second, product);
  return finding('syntax/missing-operator', from, to, words, bothNumbers ? null : cure);
}

/** `10 1/s`: a number takes names of units only, so one over a unit is a power. */
function perUnit({ left, right, tokens, at, money }: Pair, number: string): Finding | null {
  const [slash, unit] = [tokens[at + 1], tokens[at + 2]];
  if (left.kind !== 'number' || right.text !== '1' || slash?.text !== '/') return null;
  if (unit?.kind !== 'name' || isUnitFault(parseUnit(unit.text, money))) return null;
  const words = syntaxWords.onePerUnit(number, unit.text);
  const cure = { from: right.from, to: unit.to, replacement: `${unit.text}^-1` };
  return finding('syntax/missing-operator', left.from, unit.to, words, cure);
}

function insertTimes(pair: Pair): Cure {
  return { from: pair.left.to, to: pair.right.from, replacement: timesBetween(pair) };
}

/** `2 pi f` becomes `2 pi * f`, `2 R` becomes `2*R`. */
function timesBetween({ left, tokens, at }: Pair): string {
  return left.text === 'pi' && tokens[at - 2]?.kind === 'number' ? ' * ' : '*';
}

/** Index of the first token of the value that ends at `index`: of `f(x)` the f, of `2 pi` the 2. */
function operandStart(tokens: readonly Token[], index: number): number {
  let start = index;
  if (tokens[index]?.kind === ')') {
    let depth = 0;
    for (; start > 0; start--) {
      const kind = tokens[start]?.kind;
      if (kind === ')') depth++;
      else if ((kind === '(' || kind === 'call') && --depth === 0) break;
    }
    if (tokens[start]?.kind === 'call') start--;
  }
  const before = tokens[start - 1];
  const isPart = tokens[start]?.text === 'pi' || tokens[start]?.kind === '(';
  return isPart && before?.kind === 'number' ? start - 1 : start;
}

/** What stands before the slash in front of the value at `startAt`; '…' where a sign is between. */
function dividend(text: string, tokens: readonly Token[], startAt: number): string {
  const last = tokens[startAt - 2];
  if (!last || tokens[startAt - 1]?.text !== '/') return '…';
  return text.slice(tokens[operandStart(tokens, startAt - 2)]?.from, last.to);
}

/** The value on the right, a call or bracket up to its closing bracket, long ones cut short. */
function rightText({ text, tokens, at, right }: Pair): string {
  const opens = right.kind === '(' ? at : tokens[at + 1]?.kind === 'call' ? at + 1 : -1;
  if (opens < 0) return written(text, right);
  let depth = 0;
  for (let i = opens; i < tokens.length; i++) {
    const token = tokens[i];
    if (!token) break;
    if (token.kind === '(' || token.kind === 'call') depth++;
    else if (token.kind === ')' && --depth === 0) return text.slice(right.from, token.to);
  }
  return text.slice(right.from);
}

function written(text: string, token: Token): string {
  return text.slice(token.from, token.to);
}

function isNumeral(token: Token): boolean {
  return token.kind === 'number' || token.kind === 'quantity';
}

function isOpening(token: Token | undefined): boolean {
  return token?.kind === '(' || token?.kind === 'call' || token?.kind === ',';
}
