// Numbers and quantities. A number with a unit run after it becomes one token whatever names exist
// in the sheet, so `9.81 m/s^2` never meets a mass called m. Numbers in forms that other places use
// (decimal comma, groups of digits, mixed fractions) are told apart here and refused with a cure:
// reading them wrong would be silent.

import { syntaxWords } from '#lib/problem/index.ts';
import { readUnitRun, type Unit } from '#lib/units/index.ts';
import { finding, type Finding } from './finding.ts';
import type { Token } from './token.ts';
import { unitFinding } from './unit-finding.ts';

export interface NumberContext {
  readonly money: string | null;
  /** Right of `^`: no unit is taken. */
  readonly isExponent: boolean;
  /** Between the brackets of a call, where a comma separates arguments. */
  readonly insideCall: boolean;
}

/** Either a token or a finding; `to` is where reading goes on. */
export interface NumberReading {
  readonly token: Token | null;
  readonly found: Finding | null;
  readonly to: number;
}

const body = /(?:\d+(?:\.(?!\.)\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const divisor = /\/\d+(?![\d.eE_])/y;
const blanks = /[ \t\u00a0\u2009\u202f]*/y;

/** The text a sticky pattern matches at `at`, or ''. */
export function matchAt(pattern: RegExp, text: string, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? '';
}

/** Reads the number or quantity at `from`, which begins with a digit or a point and a digit. */
export function readNumber(text: string, from: number, context: NumberContext): NumberReading {
  const number = matchAt(body, text, from);
  const end = from + number.length;
  const odd = oddForm(text, from, number, context);
  if (odd) return { token: null, found: odd, to: odd.to };
  if (Number(number) === Infinity) {
    const found = finding('syntax/number-form', from, end, syntaxWords.tooLarge(number));
    return { token: null, found, to: end };
  }
  if (!context.isExponent) {
    const quantity = readQuantity(text, from, number, context.money);
    if (quantity) return quantity;
  }
  const token: Token = {
    kind: 'number',
    from,
    to: end,
    text: number,
    value: Number(number),
    unit: null
  };
  return { token, found: null, to: end };
}

function readQuantity(
  text: string,
  from: number,
  number: string,
  money: string | null
): NumberReading | null {
  const end = from + number.length;
  // A tight fraction of whole numbers before a unit is one magnitude: 3/4 in.
  const fraction = text[end] === '/' && /^\d+$/.test(number) ? matchAt(divisor, text, end) : '';
  if (fraction !== '' && Number(fraction.slice(1)) !== 0) {
    const value = Number(number) / Number(fraction.slice(1));
    const reading = quantityReading(text, from, end + fraction.length, value, money);
    if (reading) return reading;
  }
  return quantityReading(text, from, end, Number(number), money);
}

function quantityReading(
  text: string,
  from: number,
  magnitudeTo: number,
  value: number,
  money: string | null
): NumberReading | null {
  const run = readUnitRun(text, magnitudeTo, money);
  if (!run) return null;
  if ('fault' in run) {
    const found = unitFinding(run.fault, 0);
    return { token: null, found, to: Math.max(found.to, magnitudeTo) };
  }
  const { unit, end } = run;
  const token: Token = {
    kind: 'quantity',
    from,
    to: end,
    text: text.slice(from, magnitudeTo),
    value,
    unit
  };
  return { token, found: null, to: end };
}

/** The unit run after a number that ends at `at`: the unit, and where its text begins and ends. */
export function unitAfter(
  text: string,
  at: number,
  money: string | null
): { readonly unit: Unit; readonly from: number; readonly to: number } | null {
  const run = readUnitRun(text, at, money);
  if (!run || 'fault' in run) return null;
  return { unit: run.unit, from: at + matchAt(blanks, text, at).length, to: run.end };
}

// Forms of other places ---------------------------------------------------------------------------

function oddForm(
  text: string,
  from: number,
  number: string,
  context: NumberContext
): Finding | null {
  return (
    otherBase(text, from) ??
    digitGroups(text, from, number) ??
    (context.insideCall ? null : commaForm(text, from)) ??
    severalPoints(text, from, number) ??
    mixedNumber(text, from, number, context.money)
  );
}

function otherBase(text: string, from: number): Finding | null {
  if (text[from] !== '0') return null;
  const written = matchAt(/0[xX][0-9a-fA-F]+|0[bB][01]+|0[oO][0-7]+/y, text, from);
  if (written === '') return null;
  const to = from + written.length;
  const write = String(Number(written));
  const words = syntaxWords.otherBase(written, write);
  return finding('syntax/number-form', from, to, words, { from, to, replacement: write });
}

function digitGroups(text: string, from: number, number: string): Finding | null {
  const next = text[from + number.length];
  if (next === undefined || !"_'’ \u00a0\u2009\u202f".includes(next) || !/^\d/.test(number))
    return null;
  const written =
    matchAt(/\d+(?:_\d+)+(?:\.\d+)?/y, text, from) ||
    matchAt(/\d{1,3}(?:['’]\d{3})+(?![\d'’])(?:\.\d+)?/y, text, from) ||
    matchAt(/\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+(?![\d/])(?:\.\d+)?/y, text, from);
  if (written === '') return null;
  const write = written.replace(/[^\d.]/gu, '');
  const to = from + written.length;
  const words = syntaxWords.digitGroups(written, write);
  return finding('syntax/number-form', from, to, words, { from, to, replacement: write });
}

function commaForm(text: string, from: number): Finding | null {
  const written =
    matchAt(/\d{1,3}(?:\.\d{3})+,\d+/y, text, from) ||
    matchAt(/\d+(?:,\d+)+(?:\.\d+)?/y, text, from);
  if (written === '') return null;
  const to = from + written.length;
  const ungrouped = written.replace(/,/gu, '');
  const grouped = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(written);
  const commas = written.split(',').length - 1;
  if (grouped && (commas > 1 || written.includes('.'))) {
    const words = syntaxWords.digitGroups(written, ungrouped);
    return finding('syntax/number-form', from, to, words, { from, to, replacement: ungrouped });
  }
  if (commas > 1)
    return finding('syntax/number-form', from, to, syntaxWords.severalPoints(written));
  const decimal = (written.includes('.') ? written.replace(/\./gu, '') : written).replace(',', '.');
  if (grouped && !written.startsWith('0')) {
    return finding(
      'syntax/number-form',
      from,
      to,
      syntaxWords.commaOrGroup(written, decimal, ungrouped)
    );
  }
  const words = syntaxWords.decimalComma(written, decimal);
  return finding('syntax/number-form', from, to, words, { from, to, replacement: decimal });
}

function severalPoints(text: string, from: number, number: string): Finding | null {
  const end = from + number.length;
  if (text[end] !== '.' || !/\d/.test(text[end + 1] ?? '')) return null;
  const written = number + matchAt(/[.\d]+/y, text, end);
  const words = /e/iu.test(number)
    ? syntaxWords.exponentNotWhole(written)
    : syntaxWords.severalPoints(written);
  return finding('syntax/number-form', from, from + written.length, words);
}

/** `1 1/2 in`, `1½ in`. */
function mixedNumber(
  text: string,
  from: number,
  number: string,
  money: string | null
): Finding | null {
  if (!/^\d+$/.test(number)) return null;
  const end = from + number.length;
  const spaced = /[ \t]+(\d+)\/(\d+)(?![\d.])/y;
  spaced.lastIndex = end;
  const parts = spaced.exec(text) ?? oneSignFraction(text, end);
  if (!parts) return null;
  const [tail, top, bottom] = [parts[0], Number(parts[1]), Number(parts[2])];
  if (bottom === 0) return null;
  const numberTo = end + tail.length;
  const unit = unitAfter(text, numberTo, money);
  const to = unit?.to ?? numberTo;
  const written = text.slice(from, to);
  const value = Number(number) + top / bottom;
  // Where the decimals do not end early, a fraction says the same exactly.
  const exact = Math.round(value * 1e6) === value * 1e6;
  const fraction = `${Number(number) * bottom + top}/${bottom}`;
  const magnitude = exact ? String(value) : unit ? fraction : `(${fraction})`;
  const write = magnitude + text.slice(numberTo, to);
  const words = syntaxWords.mixedNumber(written, write);
  return finding('syntax/number-form', from, to, words, { from, to, replacement: write });
}

function oneSignFraction(text: string, at: number): [string, string, string] | null {
  const sign = matchAt(/ ?[\u00bc-\u00be\u2150-\u215e]/y, text, at);
  const parts = /(\d+)\u2044(\d+)/u.exec(sign.normalize('NFKD'));
  return parts ? [sign, parts[1] ?? '', parts[2] ?? ''] : null;
}
