// A mistake stops what it is in and what depends on it, wherever in an entry it stands. Each case is a
// sheet that once stopped the program.

import { describe, expect, it } from 'vitest';
import { compute } from './index.ts';

const block = (kind: string, ...lines: string[]): string =>
  ['```' + kind, ...lines, '```', ''].join('\n');
const stages = '---\nstages:\n  now: Now\n  later: Later\n---\n';
const input = block('inputs', 'a = 2 within 0 .. 3');

/** [title, sheet, codes of its problems, states of names at its stages] */
const cases: readonly (readonly [string, string, readonly string[], Record<string, string>])[] = [
  [
    'an input that calls an own function is no constant',
    block('calc', 'f(x) = x') + block('inputs', 'a = f(2)'),
    ['value/needs-a-value'],
    { a: 'error' }
  ],
  [
    'a tolerance that reads a name is no constant, and the value stands',
    block('inputs', 'a = 2 ± b', 'b = 3'),
    ['value/needs-a-value'],
    { a: 'value', b: 'value' }
  ],
  [
    'a range that calls an own function is no constant, and the value stands',
    block('calc', 'f(x) = x') + block('inputs', 'a = 2 within f(1) .. 3'),
    ['value/needs-a-value'],
    { a: 'value' }
  ],
  [
    'a tolerance with a mistake of its own is told once',
    block('inputs', 'a = 2 ± max()'),
    ['names/arguments'],
    { a: 'value' }
  ],
  [
    'a formula that is broken at first and mended by a revision has a value from there on',
    stages + input + block('calc', 'c = a +', '  at later: a + 1', 'd = c + a'),
    ['syntax/unexpected'],
    { c: 'error value', d: 'waits value' }
  ],
  [
    'a solve waits where a formula between its unknown and its equation has a mistake',
    stages +
      input +
      block('calc', 'c = a', '  at later: a + nothing', 'd = c + a') +
      block('solve', 's = a where d == 3'),
    ['names/unknown'],
    { d: 'value waits', s: 'value waits' }
  ],
  [
    'a solve without a range of its own may stand inside another',
    block('inputs', 'a = 2 within 0 .. 3', 'b = 1 within -9 .. 9') +
      block('calc', 'c = a + b', 'd = t*1.5') +
      block('solve', 's = a where d == 3', 't = b where c == 4'),
    [],
    { s: 'value', t: 'value' }
  ],
  [
    'a choice between an unknown and its equation is refused',
    input +
      block('table t', 'x', '1', '2', '3') +
      block('choose k from t', 'least x', 'x > a') +
      block('calc', 'd = k.x') +
      block('solve', 's = a where d == 3'),
    ['value/needs-a-value'],
    { d: 'value', s: 'error' }
  ]
];

describe('a mistake stops only what depends on it', () => {
  it.each(cases)('%s', (_, text, codes, states) => {
    const results = compute(text);
    expect(results.problems.map((found) => found.code)).toEqual(codes);
    for (const [name, expected] of Object.entries(states)) {
      const found = results.values.get(name)?.at.map((at) => at.state);
      expect(found?.join(' '), name).toBe(expected);
    }
  });
});
