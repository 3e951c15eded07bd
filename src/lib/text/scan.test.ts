import { describe, expect, test } from 'vitest';
import { cutOf, spanOf } from './cut.ts';
import { commentStart, splitAtCommas, topLevelMarks } from './scan.ts';

const words = (text: string): string[] => topLevelMarks(text).map(({ word }) => word);

describe('marks at top level', () => {
  test.each([
    ['a <= b', ['a', '<=', 'b']],
    ['≤ ≥ ≠ read as their spellings', ['<=', '>=', '!=', 'read', 'as', 'their', 'spellings']],
    ['a == b = c < d > e != f', ['a', '==', 'b', '=', 'c', '<', 'd', '>', 'e', '!=', 'f']],
    ['(a to b) [c, d] {e} to f', ['to', 'f']],
    ['f(x, (y)) , z', ['f', ',', 'z']],
    ['run1.to to kW', ['run1', 'to', 'kW']],
    ['tor.to_x to_y into', ['tor', 'to_y', 'into']],
    ['1 .. 2 ± 3', ['1', '..', '2', '±', '3']],
    ['"a to b" to c', ['to', 'c']],
    ['3/4" pipe', ['3', '4', 'pipe']],
    ['a ) to b', ['a', 'to', 'b']],
    ['( a to b', []],
    ['größe ω_2 to µm', ['größe', 'ω_2', 'to', 'µm']],
    ['a ? b : c', ['a', '?', 'b', ':', 'c']]
  ])('%s', (text, expected) => {
    expect(words(text)).toEqual(expected);
  });

  test('only the words asked for are kept, and offsets are those of the text', () => {
    const marks = topLevelMarks('x to (y to z) ≤ to', new Set(['to']));
    expect(marks).toEqual([
      { word: 'to', from: 2, to: 4 },
      { word: '<=', from: 14, to: 15 },
      { word: 'to', from: 16, to: 18 }
    ]);
  });

  test('parts between top-level commas keep their place', () => {
    const parts = splitAtCommas(cutOf('a, f(b, c) ,d', 0, 5));
    expect(parts.map(({ text }) => text)).toEqual(['a', 'f(b, c)', 'd']);
    expect(parts.map((part) => spanOf(part).from)).toEqual([5, 8, 17]);
    expect(splitAtCommas(cutOf('  '))).toEqual([]);
  });

  test('a hostile line costs no more than its length', { timeout: 4000 }, () => {
    for (const unit of ['"', '(', '" \n', '..', 'to ', '±', '# ', '😀']) {
      const text = unit.repeat(1_000_000 / unit.length);
      expect(topLevelMarks(text).length).toBeLessThanOrEqual(text.length);
      expect(commentStart(text, true)).toBeLessThan(text.length);
    }
  });
});

describe('a comment begins', () => {
  test.each([
    ['at # after white space and before white space', 'a = 1 # note', 6],
    ['at the start of a line', '# heading', 0],
    ['at the end of a line', 'a = 1 #', 6],
    ['after a tab', 'a\t#\tb', 2],
    ['not in #10-32', 'screw #10-32', -1],
    ['not in bearing #2', 'bearing #2: a <= b', -1],
    ['not in C#', 'C# x', -1],
    ['at the first that fits', 'bolt #2 # the # second', 8]
  ])('%s', (_, line, expected) => {
    expect(commentStart(line)).toBe(expected);
  });

  test('inside double quotes a # is text only where quotes count', () => {
    expect(commentStart('take "A # 1"  # why', true)).toBe(14);
    expect(commentStart('take "A # 1"  # why')).toBe(8);
    expect(commentStart('take "A # 1', true)).toBe(8);
  });
});
