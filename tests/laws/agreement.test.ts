// Random formulas through a worksheet against mathjs's own evaluation of the same, and the list of
// what differs on purpose. Both must agree or both refuse; where a worksheet refuses because a term
// has no real, finite value (1/(1/0) is 0 in mathjs), mathjs's own value of that term is what decides.

import { all, create, type FunctionNode, type MathNode, type Unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { compute } from '#lib/sheet/index.ts';
import { plainExpression, unitExpression, type Spelling } from './formulas.ts';
import { Random } from './random.ts';

/** Comparisons without tolerance, so that floor, ceil and min mean what they say. */
const math = create(all ?? {}, { relTol: 1e-15, absTol: 1e-300 });

/** What mathjs holds: SI, but for temperatures on a scale. */
const heldValue = (quantity: Unit): unknown => quantity.value;
/** SI, scales of temperature too; slower. */
const kelvinValue = (quantity: Unit): unknown => quantity.toSI().toNumeric();

/** A real, finite value in coherent SI units; null for anything else, a refusal among them. */
function valueOf(evaluate: () => unknown, unitValue = heldValue): number | null {
  let value: unknown;
  try {
    value = evaluate();
  } catch {
    return null;
  }
  if (typeof value === 'boolean') return Number(value);
  if (math.isUnit(value)) value = unitValue(value);
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

/** Whether every term has a real, finite value in mathjs; the remainder of a division by 0 has none. */
function isFiniteThroughout(text: string): boolean {
  let isFinite = true;
  math.parse(text).traverse((node: MathNode) => {
    if (node.type === 'SymbolNode') return;
    if (valueOf(() => node.evaluate()) === null) isFinite = false;
    const { fn, args } = node as FunctionNode;
    if (node.type === 'FunctionNode' && fn.name === 'mod' && args[1]?.evaluate() === 0)
      isFinite = false;
  });
  return isFinite;
}

/** Whether the last digit of a literal decides the twelfth of the value: then it has no twelfth. */
function isIllConditioned(text: string): boolean {
  const value = valueOf(() => math.evaluate(text));
  const nudged = text.replace(/(?<![\w.])(\d+\.\d*|\.\d+)(e[+-]?\d+)?/g, (number) =>
    String(Number(number) * (1 + 4e-16))
  );
  const other = valueOf(() => math.evaluate(nudged));
  return value === null || other === null || Math.abs(value - other) > 1e-13 * Math.abs(value);
}

const linesPerSheet = 500;

interface Comparison {
  agree: number;
  refused: number;
  illConditioned: number;
  readonly differ: string[];
}

function compare(cases: readonly Spelling[]): Comparison {
  const found: Comparison = { agree: 0, refused: 0, illConditioned: 0, differ: [] };
  for (let start = 0; start < cases.length; start += linesPerSheet) {
    const some = cases.slice(start, start + linesPerSheet);
    const lines = some.map(({ ours }, i) => `x_${i} = ${ours}`);
    const results = compute(['```calc', ...lines, '```', ''].join('\n'));
    for (const [i, { ours, mathjs }] of some.entries()) {
      const at = results.values.get(`x_${i}`)?.at[0];
      const mine = at?.state === 'value' && typeof at.si === 'number' ? at.si : null;
      const theirs = valueOf(() => math.evaluate(mathjs));
      if (mine === null && theirs === null) found.refused++;
      else if (mine !== null && theirs !== null && isClose(mine, theirs)) found.agree++;
      else if (mine === null && !isFiniteThroughout(mathjs)) found.refused++;
      else if (mine !== null && isIllConditioned(mathjs)) found.illConditioned++;
      else found.differ.push(`${ours}: ${mine ?? at?.error ?? 'none'}, mathjs ${theirs ?? 'none'}`);
    }
  }
  return found;
}

const isClose = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));

const kinds = [
  ['plain numbers', plainExpression, 20260101],
  ['quantities', unitExpression, 20260102]
] as const;

describe('a worksheet and mathjs', () => {
  it.each(kinds)(
    'agree to 1e-12 on 5000 random formulas of %s, or both refuse',
    (_, grow, seed) => {
      const random = new Random(seed);
      const cases = Array.from({ length: 5000 }, () => grow(random, 1 + random.below(5)));
      const found = compare(cases);
      expect(found.differ, `seed ${seed}`).toEqual([]);
      // Most have a value: a test that only ever refuses would show nothing.
      expect(found.agree, `seed ${seed}`).toBeGreaterThan(4000);
      expect(found.illConditioned, `seed ${seed}`).toBeLessThan(10);
    }
  );
});

interface Difference {
  readonly formula: string;
  /** A value in SI units, or the code of the problem. */
  readonly ours: number | string;
  readonly mathjs: string;
  /** null: mathjs refuses, or has no real value. */
  readonly theirs: number | null;
  readonly why: string;
}

const differ = (
  formula: string, ours: number | string, mathjs: string, theirs: number | null, why: string
): Difference => ({ formula, ours, mathjs, theirs, why }); // prettier-ignore

/** Every difference that is meant. The random formulas keep clear of these. */
const differences: readonly Difference[] = [
  differ('10 m/s / 5 m/s', 2, '10 m/s / 5 m/s', 2, 'a quantity is one atom (here mathjs agrees)'),
  differ('a / 5 m/s', 2, 'a / (5 m)/s', 2, 'a quantity is one atom: not (a/(5 m))/s'),
  differ('1 / 2 kW', 1 / 2000, '1 / 2 kW', 500, 'a spaced fraction divides by the quantity'),
  differ('1/2 kW', 500, '1/2 kW', 500, 'a tight fraction is a magnitude (here mathjs agrees)'),
  differ('3 m^2', 3, '(3 m)^2', 9, 'the exponent belongs to the unit'),
  differ('2 L', 0.002, 'L = 5; 2 L', 10, 'a name after a number is a unit, whatever is defined'),
  differ('5 kN / A', 'names/unknown', '5 kN / A', 5000, 'a bare name is never a unit'),
  differ('100 + 5 %', 100.05, '100 + 5%', 105, '% is 0.01, always'),
  differ('0.9 - 5 %', 0.85, '0.9 - 5%', 0.855, '% is 0.01, always'),
  differ(
    '20 degC + 20 degC',
    'temperature/two-points',
    '20 degC + 20 degC',
    313.15,
    'two readings have no sum'
  ),
  differ(
    '2 * 20 degC',
    'temperature/scaled-point',
    '2 * 20 degC',
    313.15,
    'a reading has no double'
  ),
  differ('25 degC - 20 degC', 5, '25 degC - 20 degC', 278.15, 'readings differ by kelvin'),
  differ('asin(1) to deg', Math.PI / 2, 'asin(1) to deg', null, 'inverse functions give an angle'),
  differ('2 rad * 3 m to m', 6, '2 rad * 3 m to m', null, '1 rad drops out of a length'),
  differ(
    '600 rpm to Hz',
    'angle/counts-radians',
    '600 rpm to Hz',
    null,
    'turns or radians a second?'
  ),
  differ('hypot(3 m, 4 m)', 5, 'hypot(3 m, 4 m)', null, 'functions take quantities where they can'),
  differ('mod(370 deg, 360 deg)', Math.PI / 18, 'mod(370 deg, 360 deg)', null, 'the same'),
  differ('atan2(1 m, 1 m)', Math.PI / 4, 'atan2(1 m, 1 m)', null, 'the same'),
  differ('round(2.345 m, 0.1 m)', 2.3, 'round(2.345 m, 0.1 m)', null, 'round takes a step'),
  differ('3 m + 0', 3, '3 m + 0', null, 'a literal 0 fits any dimension'),
  differ('3 m > 0', 1, '3 m > 0', null, 'a literal 0 fits any dimension'),
  differ('0.1 + 0.2 == 0.3', 0, '0.1 + 0.2 == 0.3', 1, 'conditions are exact'),
  differ('1/(1/0)', 'value/not-finite', '1/(1/0)', 0, 'infinity never travels silently'),
  differ('min(1, 1/0)', 'value/not-finite', 'min(1, 1/0)', 1, 'infinity never travels silently'),
  differ('mod(7, 0)', 'value/not-finite', 'mod(7, 0)', 7, 'a division by 0 leaves no remainder'),
  differ('sqrt(-4)', 'value/outside-domain', 'sqrt(-4)', null, 'real numbers only'),
  differ('abs(sqrt(-4))', 'value/outside-domain', 'abs(sqrt(-4))', 2, 'real numbers only'),
  differ('log(10)', 'names/not-a-function', 'log(10)', Math.LN10, 'ln or log10?'),
  differ('5!', 'syntax/not-in-language', '5!', 120, 'no factorial: easily read over'),
  differ('1/2 pi', 'syntax/missing-operator', '1/2 pi', Math.PI / 2, 'no factor without * after /'),
  differ('2 a', 'syntax/missing-operator', 'a = 10; 2 a', 20, 'no factor without * before a name'),
  differ('10^-6 m', 'syntax/number-form', '10^-6 m', 1e-6, 'write 1e-6 m'),
  differ('1 psi', 6894.757293168361, '1 psi', 6894.75729276459, "mathjs's factor is off by 5.9e-11")
];

describe('what differs from mathjs on purpose', () => {
  const reading = create(all ?? {});
  it.each(differences)('$formula: $why', ({ formula, ours, mathjs, theirs }) => {
    const results = compute(
      `\`\`\`inputs\na = 10 m/s\n\`\`\`\n\`\`\`calc\nx = ${formula}\n\`\`\`\n`
    );
    const at = results.values.get('x')?.at[0];
    if (typeof ours === 'string') {
      expect(at?.state).not.toBe('value');
      expect(results.problems.map((found) => found.code)).toContain(ours);
    } else {
      expect(results.problems.filter((found) => found.severity === 'error')).toEqual([]);
      const value = typeof at?.value === 'boolean' ? Number(at.value) : at?.si;
      expect(Math.abs(Number(value) - ours)).toBeLessThanOrEqual(2e-15 * Math.abs(ours));
    }
    const value = valueOf(() => {
      const all: unknown = reading.evaluate(mathjs, { a: reading.unit('10 m/s') });
      return math.typeOf(all) === 'ResultSet'
        ? (all as { entries: unknown[] }).entries.at(-1)
        : all;
    }, kelvinValue);
    if (theirs === null) expect(value).toBeNull();
    else expect(value).toBeCloseTo(theirs, 6);
  });
});
