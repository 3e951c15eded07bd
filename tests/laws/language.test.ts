import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { cutOf } from '#lib/text/index.ts';
import { parseExpression, textOf, type Expression } from '#lib/language/index.ts';
import { plainExpression, unitExpression } from './spellings.ts';

/** Real results only, and comparisons without tolerance. */
const math = create(all ?? {}, { predictable: true, relTol: 1e-15, absTol: 1e-300 });

/** What mathjs makes of a text: a number in SI, or NaN where it refuses or finds nothing real. */
function mathjsValue(text: string): number {
  let result: unknown;
  try {
    result = math.evaluate(text);
  } catch {
    return NaN;
  }
  if (typeof result === 'number') return result;
  return math.isUnit(result) && typeof result.value === 'number' ? result.value : NaN;
}

const functions: Readonly<Record<string, (...args: number[]) => number>> = {
  sqrt: Math.sqrt, cbrt: Math.cbrt, abs: Math.abs, exp: Math.exp, ln: Math.log, log10: Math.log10,
  log2: Math.log2, sin: Math.sin, cos: Math.cos, tan: Math.tan, asin: Math.asin, acos: Math.acos,
  atan: Math.atan, atan2: Math.atan2, sinh: Math.sinh, cosh: Math.cosh, tanh: Math.tanh,
  asinh: Math.asinh, acosh: Math.acosh, atanh: Math.atanh, min: Math.min, max: Math.max,
  hypot: Math.hypot, floor: Math.floor, ceil: Math.ceil, sign: Math.sign
}; // prettier-ignore

/** A tree's value in SI, dimensions not looked at: as plain as can be, to judge the tree alone. */
function valueOf(node: Expression): number {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'quantity':
      return node.magnitude * node.unit.factor;
    case 'name':
      return node.name === 'pi' ? Math.PI : NaN;
    case 'sign':
      return node.op === '-' ? -valueOf(node.operand) : valueOf(node.operand);
    case 'group':
      return valueOf(node.inner);
    case 'call':
      return functions[node.callee]?.(...node.args.map(valueOf)) ?? NaN;
    case 'conditional':
      return isTrue(node.test) ? valueOf(node.yes) : valueOf(node.no);
    case 'binary': {
      const [a, b] = [valueOf(node.left), valueOf(node.right)];
      if (node.op === '+') return a + b;
      if (node.op === '-') return a - b;
      if (node.op === '*') return a * b;
      return node.op === '/' ? a / b : a ** b;
    }
    default:
      return NaN;
  }
}

function isTrue(node: Expression): boolean {
  if (node.kind !== 'relation') return false;
  const [a = NaN, b = NaN] = node.operands.map(valueOf);
  switch (node.operators[0]) {
    case '<':
      return a < b;
    case '<=':
      return a <= b;
    case '>':
      return a > b;
    case '>=':
      return a >= b;
    case '==':
      return a === b;
    default:
      return a !== b;
  }
}

function treeOf(text: string): Expression {
  const { tree, problems } = parseExpression(cutOf(text), { money: null });
  if (!tree) throw new Error(`${text}: ${problems[0]?.message ?? 'no tree'}`);
  return tree;
}

function agrees(a: number, b: number): boolean {
  if (!Number.isFinite(a) || !Number.isFinite(b)) return Number.isFinite(a) === Number.isFinite(b);
  return Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)) || Math.abs(a - b) < 1e-300;
}

/** Without places, which differ between two spellings of one tree. */
function bare(tree: Expression): unknown {
  return JSON.parse(
    JSON.stringify(tree, (key, part: unknown) =>
      /^(from|to|calleeTo)$/.test(key) ? undefined : part
    )
  ) as unknown;
}

describe('random expressions', () => {
  it('with plain numbers are read as mathjs reads them, 10,000 of them', () => {
    const property = fc.property(plainExpression(), ({ ours, mathjs }) => {
      const [a, b] = [valueOf(treeOf(ours)), mathjsValue(mathjs)];
      expect(agrees(a, b), `${ours} | ${mathjs}: ${a}, mathjs ${b}`).toBe(true);
    });
    fc.assert(property, { seed: 20_261_125, numRuns: 10_000, endOnFailure: true });
  });

  it('with units are read as mathjs reads them, 3,000 of them', () => {
    const property = fc.property(unitExpression(), ({ ours, mathjs, matches }) => {
      const theirs = mathjsValue(mathjs);
      if (!matches) {
        expect(theirs, mathjs).toBeNaN();
        return;
      }
      const own = valueOf(treeOf(ours));
      expect(agrees(own, theirs), `${ours} | ${mathjs}: ${own}, mathjs ${theirs}`).toBe(true);
    });
    fc.assert(property, { seed: 7, numRuns: 3000, endOnFailure: true });
  });

  it('written out are read as the same tree, 5,000 of them', () => {
    const property = fc.property(fc.oneof(plainExpression(), unitExpression()), ({ ours }) => {
      const tree = treeOf(ours);
      expect(bare(treeOf(textOf(tree)))).toEqual(bare(tree));
    });
    fc.assert(property, { seed: 11, numRuns: 5000, endOnFailure: true });
  });
});
