// Every sign that may stand in an expression, and what is said about the ones that may not. Signs of
// print (× · ÷ − ≤ ≥ ≠ ² ³) mean what they mean on paper.

import { syntaxWords, type ProblemCode, type Wording } from '#lib/problem/index.ts';
import { finding, type Finding } from './finding.ts';
import { matchAt } from './number.ts';
import type { TokenKind } from './token.ts';

interface SignReading {
  readonly kind: TokenKind;
  readonly text: string;
  readonly length: number;
}

const operator = (text: string, length = text.length): SignReading => ({
  kind: 'operator',
  text,
  length
});

const mark = (kind: TokenKind): SignReading => ({ kind, text: kind, length: 1 });

const pairs: ReadonlyMap<string, SignReading> = new Map(
  ['<=', '>=', '==', '!='].map((text) => [text, operator(text)])
);

const singles: ReadonlyMap<string, SignReading> = new Map([
  ['+', operator('+')],
  ['-', operator('-')],
  ['−', operator('-')],
  ['*', operator('*')],
  ['×', operator('*')],
  ['·', operator('*')],
  ['⋅', operator('*')],
  ['/', operator('/')],
  ['÷', operator('/')],
  ['^', operator('^')],
  ['<', operator('<')],
  ['>', operator('>')],
  ['≤', operator('<=', 1)],
  ['≥', operator('>=', 1)],
  ['≠', operator('!=', 1)],
  ['²', { kind: 'power', text: '2', length: 1 }],
  ['³', { kind: 'power', text: '3', length: 1 }],
  ['(', mark('(')],
  [')', mark(')')],
  [',', mark(',')],
  ['?', mark('?')],
  [':', mark(':')]
]);

/** Signs of other languages, longest first, with what is written here. */
const otherSpellings: readonly (readonly [string, string])[] = [
  ['===', '=='],
  ['!==', '!='],
  ['**', '^'],
  ['=<', '<='],
  ['=>', '>='],
  ['<>', '!='],
  ['&&', 'and'],
  ['||', 'or'],
  ['–', '-'],
  ['—', '-'],
  ['∕', '/'],
  ['⁄', '/'],
  ['∗', '*'],
  ['∙', '*'],
  ['•', '*'],
  ['⩽', '<='],
  ['⩾', '>='],
  ['∞', 'inf'],
  ['∧', 'and'],
  ['∨', 'or'],
  ['¬', 'not']
];

const foreign: ReadonlyMap<string, () => Wording> = new Map([
  ['=', syntaxWords.noAssignment],
  ['[', syntaxWords.noMatrix],
  [']', syntaxWords.noMatrix],
  ['{', syntaxWords.noBraces],
  ['}', syntaxWords.noBraces],
  ['"', syntaxWords.noText],
  ['“', syntaxWords.noText],
  ['”', syntaxWords.noText],
  ["'", syntaxWords.noText],
  ['‘', syntaxWords.noText],
  ['’', syntaxWords.noText],
  ['!', syntaxWords.noFactorial],
  ['|', syntaxWords.noBars],
  [';', syntaxWords.oneStatement],
  ['±', syntaxWords.toleranceInside],
  ['%', syntaxWords.percentAfterNumber],
  ['.', syntaxWords.noProperty]
]);

const writeInstead: ReadonlyMap<string, string> = new Map([
  ['°', '30 deg for an angle, 20 degC for a temperature'],
  ['√', 'sqrt(…)'],
  ['∛', 'cbrt(…)'],
  ['∑', 'sum(…)'],
  ['∫', 'integrate(…)'],
  ['€', '5 EUR'],
  ['$', '5 USD'],
  ['£', '5 GBP']
]);

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const superscriptRun = /[⁺⁻]?[⁰¹²³⁴-⁹]+/y;
const quoted = /"[^"\n]*"|“[^”\n]*”|'[^'\n]*'|‘[^’\n]*’/y;

/** The sign at `at`, or what is wrong with it; `afterDigit` and `afterName` tell what touches it. */
export function readSign(
  text: string,
  at: number,
  touching: 'digit' | 'name' | null
): SignReading | Finding {
  const power = matchAt(superscriptRun, text, at);
  if (power.length > 1 || (power !== '' && power !== '²' && power !== '³'))
    return superscript(power, at);
  if (text.startsWith(':=', at)) return foreignAt(at, 2, syntaxWords.noAssignment(), '==');
  for (const [found, write] of otherSpellings) {
    if (!text.startsWith(found, at)) continue;
    return foreignAt(at, found.length, syntaxWords.otherSpelling(found, write), write);
  }
  const sign = pairs.get(text.slice(at, at + 2)) ?? singles.get(text.charAt(at));
  if (sign) return sign;
  return strange(text, at, touching);
}

function superscript(run: string, at: number): Finding {
  const digits = [...run].map((sign) => {
    if (sign === '⁻') return '-';
    return sign === '⁺' ? '' : String(superscripts.indexOf(sign));
  });
  const write = `^${digits.join('')}`;
  return foreignAt(at, run.length, syntaxWords.otherSpelling(run, write), write);
}

function strange(text: string, at: number, touching: 'digit' | 'name' | null): Finding {
  const sign = String.fromCodePoint(text.codePointAt(at) ?? 0);
  if (/["'’”]/u.test(sign)) {
    if (touching === 'digit') return foreignAt(at, 1, syntaxWords.feetAndInches(sign));
    if (touching === 'name' && sign !== '"') return foreignAt(at, 1, syntaxWords.noPrime());
  }
  if (text.startsWith('..', at)) return foreignAt(at, 2, syntaxWords.rangeInside());
  const words = foreign.get(sign);
  if (words) {
    const length = matchAt(quoted, text, at).length || 1;
    return foreignAt(at, length, words(), sign === '=' ? '==' : null);
  }
  const fraction = /^(\d+)\u2044(\d+)$/u.exec(sign.normalize('NFKD'));
  if (fraction) {
    const write = `${fraction[1]}/${fraction[2]}`;
    const cure = { from: at, to: at + 1, replacement: write };
    return finding('syntax/number-form', at, at + 1, syntaxWords.fractionSign(sign, write), cure);
  }
  const to = at + sign.length;
  if (/[\p{C}\p{M}]/u.test(sign)) {
    const code = `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
    const cure = { from: at, to, replacement: '' };
    return finding('syntax/unexpected', at, to, syntaxWords.hiddenSign(code), cure);
  }
  const words2 = syntaxWords.strangeSign(sign, writeInstead.get(sign) ?? null);
  return finding('syntax/unexpected', at, to, words2);
}

function foreignAt(
  at: number,
  length: number,
  words: Wording,
  replacement: string | null = null
): Finding {
  const code: ProblemCode = 'syntax/not-in-language';
  const cure = replacement === null ? null : { from: at, to: at + length, replacement };
  return finding(code, at, at + length, words, cure);
}
