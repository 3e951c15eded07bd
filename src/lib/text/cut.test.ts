import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutOf, joinCuts, sliceCut, spanOf, trimCut } from './cut.ts';

describe('cuts know where their characters stood', () => {
  const joined = joinCuts([cutOf('a = 1 +', 0, 3), cutOf('2 * b', 1, 5), cutOf('- c', 3, 5)]);

  test('parts are joined by a newline', () => {
    expect(joined.text).toBe('a = 1 +\n2 * b\n- c');
  });

  test.each([
    ['a', 0, 1, { line: 0, from: 3, to: 4 }],
    ['1 +', 4, 7, { line: 0, from: 7, to: 10 }],
    ['2 * b', 8, 13, { line: 1, from: 5, to: 10 }],
    ['c', 16, 17, { line: 3, from: 7, to: 8 }],
    ['a span over a line’s end stops there', 6, 11, { line: 0, from: 9, to: 10 }]
  ])('%s', (_, from, to, span) => {
    expect(spanOf(joined, from, to)).toEqual(span);
  });

  test('a slice of a slice keeps its place', () => {
    const inner = trimCut(sliceCut(sliceCut(joined, 7), 2, 7));
    expect(inner.text).toBe('* b');
    expect(spanOf(inner)).toEqual({ line: 1, from: 7, to: 10 });
  });

  test('an empty cut has a place too', () => {
    expect(spanOf(trimCut(sliceCut(cutOf('a =  ', 2, 4), 3)))).toEqual({ line: 2, from: 9, to: 9 });
  });

  test('whatever is sliced and trimmed, each character is found where it stood', () => {
    const line = fc.stringMatching(/^[ab =]{0,12}$/);
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 4 }),
        fc.nat(40),
        fc.nat(40),
        (lines, a, b) => {
          const whole = joinCuts(lines.map((text, index) => cutOf(text, index, 1)));
          const [from, to] = [
            Math.min(a, b, whole.text.length),
            Math.min(Math.max(a, b), whole.text.length)
          ];
          const cut = trimCut(sliceCut(whole, from, to));
          for (let i = 0; i < cut.text.length; i++) {
            if (cut.text[i] === '\n') continue;
            const at = spanOf(cut, i, i + 1);
            expect(lines[at.line]?.slice(at.from - 1, at.to - 1)).toBe(cut.text[i]);
          }
        }
      ),
      { seed: 11, numRuns: 300 }
    );
  });
});
