// Text of an expression to tokens. The lexer is ours because a worksheet must not surprise: it folds
// each quantity into one token, reads the signs of print, keeps dotted names together, takes a
// conversion `to unit` inside brackets as one token, and refuses what the parser behind it would
// silently read in another sense (%, in, !, 0x1F, strings, lists).

import { syntaxWords } from '#lib/problem/index.ts';
import { canonicalName } from '#lib/text/index.ts';
import { isUnitFault, parseUnit } from '#lib/units/index.ts';
import { finding, type Finding } from './finding.ts';
import { matchAt, readNumber } from './number.ts';
import { operatorWords } from './reserved.ts';
import { readSign } from './sign.ts';
import { limits, type Token, type TokenKind } from './token.ts';
import { unitFinding } from './unit-finding.ts';

const asciiName = /[A-Za-z_][A-Za-z0-9_]*(?:\.[A-Za-z_][A-Za-z0-9_]*)*/y;
const anyName = /[\p{L}_][\p{L}\p{M}\p{Nd}_]*(?:\.[\p{L}_][\p{L}\p{M}\p{Nd}_]*)*/uy;
const wordTo = /(?<![\p{L}\p{M}\p{Nd}_.])to(?![\p{L}\p{M}\p{Nd}_.])/gu;
const space = /\s/;

export interface Lexed {
  readonly tokens: readonly Token[];
  readonly findings: readonly Finding[];
}

/** The tokens of an expression; with findings, the tokens are not to be used. */
export function tokensOf(text: string, money: string | null): Lexed {
  const lexer = new Lexer(text, money);
  lexer.run();
  return lexer;
}

class Lexer {
  readonly tokens: Token[] = [];
  readonly findings: Finding[] = [];
  private readonly text: string;
  private readonly money: string | null;
  private readonly brackets: ('(' | 'call')[] = [];
  private at = 0;

  constructor(text: string, money: string | null) {
    this.text = text;
    this.money = money;
  }

  run(): void {
    const { text } = this;
    while (this.at < text.length) {
      // Far past the limit of size: nothing more can come of it.
      if (this.tokens.length > 4 * limits.nodes || this.findings.length >= 5) return;
      const code = text.charCodeAt(this.at);
      if (code === 32 || code === 10) this.at++;
      else if (isDigit(code) || (code === 46 && isDigit(text.charCodeAt(this.at + 1))))
        this.number();
      else if (isAsciiLetter(code)) this.name(asciiName);
      else if (code < 128) this.sign();
      else if (space.test(text.charAt(this.at))) this.at++;
      else if (matchAt(anyName, text, this.at) !== '') this.name(anyName);
      else this.sign();
    }
  }

  private push(kind: TokenKind, length: number, text: string, value = 0): void {
    this.tokens.push({ kind, from: this.at, to: this.at + length, text, value, unit: null });
    this.at += length;
  }

  private report(found: Finding): void {
    this.findings.push(found);
    this.at = Math.max(found.to, this.at + 1);
  }

  private number(): void {
    const reading = readNumber(this.text, this.at, {
      money: this.money,
      isExponent: this.afterPowerSign(),
      insideCall: this.brackets.at(-1) === 'call'
    });
    if (reading.token) this.tokens.push(reading.token);
    if (reading.found) this.findings.push(reading.found);
    this.at = reading.to;
  }

  private name(pattern: RegExp): void {
    const { text, at } = this;
    let written = matchAt(pattern, text, at);
    // A letter outside ASCII goes on with the name.
    if (pattern === asciiName && text.charCodeAt(at + written.length) > 127) {
      written = matchAt(anyName, text, at);
    }
    if (written === 'to') return this.conversion();
    if (operatorWords.has(written)) return this.push('operator', written.length, written);
    this.push('name', written.length, canonicalName(written));
  }

  private sign(): void {
    const reading = readSign(this.text, this.at, this.touching());
    if ('words' in reading) {
      this.report(reading);
      // What stands in a list or in quotes is not read as a formula.
      if ('[{"“'.includes(this.text.charAt(reading.from))) this.at = this.text.length;
      return;
    }
    let { kind } = reading;
    if (kind === '(') {
      if (this.tokens.at(-1)?.kind === 'name') kind = 'call';
      this.brackets.push(kind === 'call' ? 'call' : '(');
    } else if (kind === ')') this.brackets.pop();
    this.push(kind, reading.length, reading.text, kind === 'power' ? Number(reading.text) : 0);
  }

  /** `to unit` up to the closing bracket of a group. */
  private conversion(): void {
    const { text, at } = this;
    const innermost = this.brackets.at(-1);
    if (innermost !== '(') {
      const hint =
        innermost === 'call'
          ? 'Inside a call, put the value and its unit in brackets of their own: f((x to mm)).'
          : 'Put the value and its unit in brackets: (x to mm).';
      const words = syntaxWords.conversionInside(hint);
      return this.report(finding('syntax/not-in-language', at, at + 2, words));
    }
    const end = closingBracket(text, at + 2);
    const written = text.slice(at + 2, end);
    if (written.search(wordTo) >= 0) {
      const words = syntaxWords.conversionInside('Use one conversion for each pair of brackets.');
      return this.report(finding('syntax/not-in-language', at, at + 2, words));
    }
    const from = at + 2 + (written.length - written.trimStart().length);
    const asked = written.trim();
    if (asked === '') {
      return this.report(finding('syntax/unexpected', at, at + 2, syntaxWords.unitExpected()));
    }
    const unit = parseUnit(asked, this.money);
    if (isUnitFault(unit)) {
      this.findings.push(unitFinding(unit, from));
    } else {
      this.tokens.push({
        kind: 'to',
        from: at,
        to: from + asked.length,
        text: 'to',
        value: 0,
        unit
      });
    }
    this.at = end;
  }

  /** Whether a number here stands right of `^`, its signs included. */
  private afterPowerSign(): boolean {
    let i = this.tokens.length - 1;
    while (i > 0 && this.isSign(i)) i--;
    return this.tokens[i]?.text === '^';
  }

  private isSign(index: number): boolean {
    const { text } = this.tokens[index] ?? { text: '' };
    if (text !== '-' && text !== '+') return false;
    const before = this.tokens[index - 1];
    return before === undefined || before.kind === 'operator';
  }

  private touching(): 'digit' | 'name' | null {
    const before = this.tokens.at(-1);
    if (before?.to !== this.at) return null;
    if (before.kind === 'number') return 'digit';
    return before.kind === 'name' ? 'name' : null;
  }
}

/** Where the bracket that is open at `from` closes; the end of the text where it does not. */
function closingBracket(text: string, from: number): number {
  let depth = 0;
  for (let i = from; i < text.length; i++) {
    if (text[i] === '(') depth++;
    else if (text[i] === ')' && --depth < 0) return i;
  }
  return text.length;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

function isAsciiLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || code === 95;
}
