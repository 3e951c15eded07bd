import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutOf } from '#lib/text/index.ts';
import { parseExpression, texOf, textOf } from './index.ts';
import { read } from './sketch.fixture.ts';
import { limits } from './token.ts';

const many = (text: string, count: number): string => text.repeat(count);
const codeOf = (text: string): string | undefined => read(text).problems[0]?.code;

describe('limits of size', () => {
  it.each([
    ['2,000 characters on a line', `a${many(' ', limits.line - 1)}`, `a${many(' ', limits.line)}`],
    ['50 brackets deep', `${many('(', 50)}a${many(')', 50)}`, `${many('(', 51)}a${many(')', 51)}`],
    ['50 calls deep', `${many('sin(', 50)}a${many(')', 50)}`, `${many('sin(', 51)}a${many(')', 51)}`],
    ['50 choices inside choices', `${many('a?', 50)}b${many(':c', 50)}`, `${many('a?', 51)}b${many(':c', 51)}`],
    ['500 nodes', `a${many('+a', 249)}`, `a${many('+a', 250)}`]
  ])('%s are read, more are refused', (_, good, bad) => {
    expect(read(good).tree).not.toBeNull();
    expect(codeOf(bad)).toBe('syntax/too-deep');
  }); // prettier-ignore

  it('say which limit was met, and what can be done', () => {
    expect(read(many('1 + ', 600) + '1').problems[0]?.message).toBe(
      'This line has 2401 characters, more than the 2000 that are read.'
    );
    expect(read(`a${many('+a', 300)}`).problems[0]?.message).toBe(
      'This expression has more than 500 names, numbers and operators.'
    );
    expect(read(many('(', 60)).problems[0]?.message).toBe('Here brackets stand more than 50 deep.');
    expect(read(many('(', 60)).problems[0]?.hint).toBe(
      'Split the formula with names for its parts.'
    );
  });

  it('count each line of a long entry by itself', () => {
    const lines = Array.from({ length: 4 }, () => `a${many(' ', 1500)}`).join('+\n');
    expect(read(lines).tree).not.toBeNull();
  });
});

describe('hostile lines end at once', () => {
  // The first doubles mathjs's time with each level: 22 levels took 19 s there.
  it.each([
    ['the remainder that doubles', `${many('1%(1+', 40)}1${many(')', 40)}`],
    ['a thousand brackets', many('(', 1000) + many(')', 1000)],
    ['a thousand brackets, never closed', many('(', 1000)],
    ['a thousand signs', `${many('-', 1900)}1`],
    ['a thousand nots', `${many('not ', 400)}a`],
    ['powers of powers', many('2^', 900) + '2'],
    ['choices in a row', `${many('a?b:', 400)}c`],
    ['open choices', many('a?', 900)],
    ['strokes', many('1/', 900) + '1'],
    ['units', `1${many(' m', 900)}`],
    ['unit strokes', `1${many(' m/s', 400)}`],
    ['unit groups', `1 m/${many('(', 900)}`],
    ['conversions', many('(a to ', 330)],
    ['digits', many('1', 1999)],
    ['points', many('1.', 999)],
    ['commas', many('1,', 999)],
    ['quotes', many('"', 1999)],
    ['names with points', many('a.', 999) + 'a'],
    ['underscores in a number', many('1_', 999)],
    ['groups of three', many('100 ', 499)],
    ['raised signs', many('²', 1999)],
    ['a megabyte', many('a+', 500_000)],
    ['a megabyte on many lines', many(`${many('a+', 900)}\n`, 550)],
    ['a megabyte of brackets', many('(', 1_000_000)],
    ['a megabyte of lines', many('\n', 1_000_000)]
  ])('%s', (_, text) => {
    const start = performance.now();
    const { tree, problems } = parseExpression(cutOf(text), { money: null });
    // Not a timing: far beyond this a page would stand still.
    expect(performance.now() - start).toBeLessThan(500);
    expect(problems.length > 0).toBe(tree === null);
    expect(problems.length).toBeLessThanOrEqual(5);
  });

  it.each([
    'createUnit("kW")', 'evaluate("1")', 'import(a)', 'parse("1")', 'compile(a)', 'simplify(a)',
    'a.toString()', '(3 m).toNumber(m)', 'f(x) = f(x + 1)', 'f(x) := x', 'zeros(1000)', '1:1e7',
    'random()', 'cos.constructor("return 1")', 'a["constructor"]', '{}.constructor', 'a?.b',
    'a?.(b)', 'a ?? b', 'parser()', 'chain(1)', 'help(sin)', '__proto__(1)', 'constructor(1)',
    'hasOwnProperty(a)', 'toString()', 'valueOf()', 'map([1], f)', 'x => x', '`a`', '\\u0041',
    'null(1)', 'a = b = c', '1; 2', '#', 'undefined()'
  ])('%s is refused', (text) => {
    expect(read(text).tree).toBeNull();
  }); // prettier-ignore

  it.each(['__proto__', 'constructor', 'hasOwnProperty', 'null', 'undefined', 'NaN', 'Infinity', 'mod', 'xor', 'end'])(
    '%s is a plain name',
    (name) => {
      expect(read(name).tree).toMatchObject({ kind: 'name', name });
    }
  ); // prettier-ignore
});

describe('whatever stands there', () => {
  const token = fc.constantFrom(
    '1', '2.5', '1e3', '5 m', '3/4 in', '5 %', 'a', 'pi', 'e', 'm', 'in', 'to', 'mm', 'sin', 'min', 'log',
    'R', 'a.b', '(', ')', '(', ')', ',', '+', '-', '*', '/', '^', '²', '³', '<', '<=', '==', '!=', 'and',
    'or', 'not', '?', ':', '%', '!', '=', '.', '"', "'", '[', ';', 'ω', '×', '≤', '±', '½', '⁻¹', '°', '\n', ' '
  ); // prettier-ignore
  const line = fc.array(fc.tuple(token, fc.constantFrom('', ' ')), { maxLength: 14 });
  const settings = { seed: 20_261_125, numRuns: 20_000 };

  it('is a tree that can be written out, or a problem in its place, and never an exception', () => {
    const texts = line.map((parts) => parts.map(([text, gap]) => text + gap).join(''));
    fc.assert(
      fc.property(texts, (text) => {
        const { tree, problems } = read(text, ['R']);
        if (tree) {
          texOf(tree);
          expect(read(textOf(tree), ['R']).tree).not.toBeNull();
          return;
        }
        expect(problems.length).toBeGreaterThan(0);
        const lengths = text.split('\n').map((part) => part.length);
        for (const { at, fix } of problems) {
          for (const span of fix ? [at, fix.at] : [at]) {
            expect(span.line).toBeLessThan(lengths.length);
            expect(span.from).toBeGreaterThanOrEqual(1);
            expect(span.to).toBeLessThanOrEqual((lengths[span.line] ?? 0) + 1);
          }
        }
      }),
      settings
    );
  });

  it('of any characters, is never an exception', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        read(text);
      }),
      { seed: 5, numRuns: 5000 }
    );
  });
});
