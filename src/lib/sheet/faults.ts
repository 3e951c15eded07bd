// A lane that went bad, in words: which term, with which value, and what it would have to be.

import { ExpressionCheck, type CheckScope, type QuantityType } from '#lib/check/index.ts';
import { roughest, type Fault, type MethodReport } from '#lib/lanes/index.ts';
import { childrenOf, languageFunction, nodeSpan, type Expression } from '#lib/language/index.ts';
import {
  chooseWords, problem, solveWords, tableWords, temperatureWords, valueWords, type Problem,
  type ProblemCode, type Wording
} from '#lib/problem/index.ts'; // prettier-ignore
import type { Cut } from '#lib/text/index.ts';
import { coherentUnitText, formatSignificant, fromSI, type Unit } from '#lib/units/index.ts';

export interface FaultContext {
  readonly subject: string;
  readonly scope: CheckScope;
  /** Where to show it when the term itself is not known, or stands in another entry. */
  readonly home: { readonly cut: Cut; readonly line: number };
  readonly stage: string | null;
  /** Of a solve: its unknown and the unit of its value. */
  readonly unknown: {
    readonly name: string;
    readonly unit: Unit | null;
    /** To show what is between the two sides in. */
    readonly sidesUnit: Unit | null;
  } | null;
  /** Of a choice that found no row: the condition that excludes most. */
  readonly strictest: string | null;
  /** Names that the definition reads. */
  readonly reads: readonly string[];
  /** First row, from 1, in which a column was not measured; null for any other name. */
  readonly emptyRow: (name: string) => number | null;
  /** Whether a cut is one of the entry's own. */
  readonly isOwn: (cut: Cut) => boolean;
}

/** The problem of a lane, with lines from 0 at the entry. */
export function faultProblem(fault: Fault | null, context: FaultContext): Problem {
  const { code, words } = describe(fault, context);
  const origin = fault?.origin;
  const at =
    origin && context.isOwn(origin.cut)
      ? nodeSpan(origin.cut, origin.node)
      : nodeSpan(context.home.cut, { from: 0, to: context.home.cut.text.length });
  return problem(code, at, words, { stage: context.stage, subject: context.subject });
}

/** What a method says though it has a value: a notice, or null. */
export function reportNotice(
  report: MethodReport,
  context: FaultContext
): { readonly code: ProblemCode; readonly words: Wording } | null {
  // prettier-ignore
  if (report.status === 'several') {
    return { code: 'solve/several', words: solveWords.several(context.subject, report.figures[0] ?? 2) };
  }
  if (report.status !== 'inaccurate') return null;
  const [value = NaN, error = NaN] = report.figures;
  const share = error / Math.abs(value);
  if (!(share <= roughest)) return null; // it has no value, which its fault says
  const known = `${formatSignificant(share * 100, 1)} %`;
  return {
    code: 'integral/inaccurate',
    words: solveWords.integralInaccurate(context.subject, known)
  };
}

function describe(
  fault: Fault | null,
  context: FaultContext
): { readonly code: ProblemCode; readonly words: Wording } {
  // prettier-ignore
  const { subject } = context;
  const empty = emptyCell(fault, context);
  if (empty) return empty;
  if (!fault)
    return {
      code: 'value/not-finite',
      words: valueWords.notFinite(subject, 'a term in it overflows')
    };
  if (fault.report) return methodFault(fault.report, context);
  const node = fault.origin?.node;
  const text = node && fault.origin ? sourceText(fault.origin.cut, node) : subject;
  const argument = (index: number): string => operandText(fault, index, context);
  switch (fault.operation) {
    case 'divide':
      if (fault.operands[1] === 0) {
        return {
          code: 'value/not-finite',
          words: valueWords.divisionByZero(text, childText(fault, 1))
        };
      }
      break;
    case 'choose':
      return { code: 'choose/none-fits', words: chooseWords.noneFits(subject, context.strictest) };
    case 'notNegative': {
      const kelvin = `${formatSignificant(fault.operands[0] ?? NaN, 4)} K`;
      return { code: 'temperature/below-zero', words: temperatureWords.belowZero(subject, kelvin) };
    }
    case 'interpolate':
    case 'interpolateSpline':
    case 'interpolateHeld':
      return tableFault(fault, context, text);
    default: {
      const domain = domains[fault.operation];
      if (domain) {
        return {
          code: 'value/outside-domain',
          words: valueWords.outsideDomain(callName(fault), argument(0), domain)
        };
      }
    }
  }
  const base = fault.operands[0] ?? NaN;
  const isPower = fault.operation === 'power' || fault.operation === 'integerPower';
  if (isPower && (Number.isNaN(fault.value) || base === 0)) {
    const words =
      base === 0 ? valueWords.zeroToNegative(text) : valueWords.fractionalPower(text, argument(0));
    return { code: 'value/outside-domain', words };
  }
  const because = Number.isNaN(fault.value) ? 'it has no value there' : 'it overflows';
  return { code: 'value/not-finite', words: valueWords.notFinite(text, because) };
}

/** A cell that was not measured, where something but a function of whole columns reads it. */
function emptyCell(
  fault: Fault | null,
  context: FaultContext
): { readonly code: ProblemCode; readonly words: Wording } | null {
  if (fault?.report) return null;
  const names = fault?.origin ? namesRead(fault.origin.node) : context.reads;
  for (const name of names) {
    const row = context.emptyRow(name);
    if (row !== null) return { code: 'table/cell', words: tableWords.cellEmpty(name, row) };
  }
  return null;
}

/** Names in a term, but for columns that a function takes as a whole. */
function namesRead(node: Expression): readonly string[] {
  if (node.kind === 'name') return [node.name];
  const shape = node.kind === 'call' ? languageFunction(node.callee)?.shape : undefined;
  const isWhole = shape === 'rows' || (shape === 'values-or-rows' && childrenOf(node).length === 1);
  return isWhole ? [] : childrenOf(node).flatMap(namesRead);
}

const domains: Readonly<Partial<Record<string, string>>> = {
  sqrt: 'values of 0 or more',
  ln: 'positive values',
  log10: 'positive values',
  log2: 'positive values',
  asin: '-1 to 1',
  acos: '-1 to 1',
  acosh: 'values of 1 or more',
  atanh: '-1 to 1, ends excluded'
};

function methodFault(
  report: MethodReport,
  context: FaultContext
): { readonly code: ProblemCode; readonly words: Wording } {
  // prettier-ignore
  const { subject, unknown } = context;
  const [first = NaN, second = NaN] = report.figures;
  const name = unknown?.name ?? subject;
  const where = withUnit(first, unknown?.unit ?? null);
  if (report.kind === 'integral') {
    if (report.status === 'budget')
      return { code: 'sheet/budget', words: solveWords.integralBudget(subject) };
    if (report.status === 'inaccurate')
      return { code: 'integral/inaccurate', words: solveWords.integralUncertain(subject) };
    return {
      code: 'integral/not-finite',
      words: solveWords.integralNotFinite(subject, formatSignificant(first, 6))
    };
  }
  switch (report.status) {
    case 'sameSign': {
      const [atLow = '', atHigh = ''] = [first, second].map((value) =>
        signed(value, unknown?.sidesUnit ?? null)
      );
      const [low = '', high = ''] = report.figures
        .slice(2)
        .map((end) => withUnit(end, unknown?.unit ?? null));
      const [from, to] = report.figures.slice(2);
      if (from === to) {
        return { code: 'solve/same-sign', words: solveWords.reversedRange(subject, low, high) };
      }
      return {
        code: 'solve/same-sign',
        words: solveWords.sameSign(subject, name, low, high, atLow, atHigh)
      };
    }
    case 'discontinuous':
      return { code: 'solve/not-finite', words: solveWords.discontinuous(subject, name, where) };
    case 'budget':
      return { code: 'solve/budget', words: solveWords.budget(subject) };
    default:
      return { code: 'solve/not-finite', words: solveWords.notFinite(subject, name, where) };
  }
}

function tableFault(
  fault: Fault,
  context: FaultContext,
  text: string
): { readonly code: ProblemCode; readonly words: Wording } {
  // prettier-ignore
  const xs = fault.abscissae ?? [];
  const node = fault.origin?.node;
  const column = node?.kind === 'call' ? node.args[1] : undefined;
  const falling = xs.findIndex((x, row) => row > 0 && !(x > (xs[row - 1] ?? NaN)));
  if (falling > 0) {
    const name = column && fault.origin ? sourceText(fault.origin.cut, column) : text;
    return { code: 'table/not-ascending', words: tableWords.notAscending(name, falling) };
  }
  const type =
    column && fault.origin && new ExpressionCheck(context.scope, fault.origin.cut).type(column);
  const end = (value = NaN): string =>
    type?.kind === 'quantity' ? inOwnUnit(value, type) : formatSignificant(value, 4);
  const words = tableWords.outsideRange(
    text, operandText(fault, 0, context), end(xs[0]), end(xs.at(-1))
  ); // prettier-ignore
  return { code: 'table/outside-range', words };
}

function sourceText(cut: Cut, node: Expression): string {
  return cut.text.slice(node.from, node.to).replace(/\s+/gu, ' ');
}

function childText(fault: Fault, index: number): string {
  const node = fault.origin?.node;
  if (node?.kind !== 'binary' || !fault.origin) return 'a value';
  const child = index === 0 ? node.left : node.right;
  return sourceText(fault.origin.cut, child.kind === 'group' ? child.inner : child);
}

function callName(fault: Fault): string {
  const node = fault.origin?.node;
  if (node?.kind === 'call') return node.callee;
  return fault.operation === 'sqrt' ? 'A square root' : fault.operation;
}

/** 'v_tip - v_0 = -3.2 m/s', or the value alone where its text is not known. */
function operandText(fault: Fault, index: number, context: FaultContext): string {
  const node = fault.origin?.node;
  const value = fault.operands[index] ?? NaN;
  let part: Expression | undefined;
  if (node?.kind === 'call') part = node.args[index];
  if (node?.kind === 'binary') part = index === 0 ? node.left : node.right;
  if (!part || !fault.origin) return formatSignificant(value, 4);
  const text = sourceText(fault.origin.cut, part);
  const type = new ExpressionCheck(context.scope, fault.origin.cut).type(part);
  const shown = type?.kind === 'quantity' ? inOwnUnit(value, type) : formatSignificant(value, 4);
  return isLiteral(part) ? text : `${text} = ${shown}`;
}

/** In the author's own unit, else in coherent base units. */
function inOwnUnit(si: number, type: QuantityType): string {
  if (type.unit) return withUnit(si, type.unit);
  return `${formatSignificant(si, 4)} ${coherentUnitText(type.dimension)}`.replace(/ 1$/u, '');
}

/** Written out in figures: its value is its text. */
function isLiteral(node: Expression): boolean {
  if (node.kind === 'sign') return isLiteral(node.operand);
  return node.kind === 'number' || node.kind === 'quantity';
}

function withUnit(si: number, unit: Unit | null): string {
  const value = formatSignificant(unit ? fromSI(si, unit) : si, 4);
  return unit && unit.text !== '1' ? `${value} ${unit.text}` : value;
}

/** A difference of two sides: its unit counts as an interval. */
function signed(si: number, unit: Unit | null): string {
  const value = unit ? si / unit.factor : si;
  const text = (value > 0 ? '+' : '') + formatSignificant(value, 3);
  return unit && unit.text !== '1' ? `${text} ${unit.text}` : text;
}
