import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { indentWidth, linesText, lineText, splitLines } from './lines.ts';

const own = (text: string): string[] => {
  const lines = splitLines(text);
  return Array.from({ length: lines.count }, (_, i) => lineText(lines, i));
};

describe('lines', () => {
  test.each([
    ['an empty text has no lines', '', []],
    ['a text that ends with a line end has no empty last line', 'a\nb\n', ['a', 'b']],
    ['the last line may lack its end', 'a\nb', ['a', 'b']],
    [
      'LF, CRLF and a lone CR end a line (CommonMark 0.31.2, 2.1)',
      'a\r\nb\rc\nd',
      ['a', 'b', 'c', 'd']
    ],
    ['CR CR LF is two line ends', 'a\r\r\nb', ['a', '', 'b']],
    ['line separators of Unicode end no line', 'a\u2028b\u0085c\fd', ['a\u2028b\u0085c\fd']]
  ])('%s', (_, text, expected) => {
    expect(own(text)).toEqual(expected);
  });

  test('lines with their ends, joined, are the text', () => {
    const text = fc.string({
      unit: fc.constantFrom('a', '\r', '\n', ' ', 'é', '😀'),
      maxLength: 30
    });
    fc.assert(
      fc.property(text, (whole) => {
        const lines = splitLines(whole);
        let joined = '';
        for (let i = 0; i < lines.count; i++) joined += linesText(lines, i, i + 1);
        expect(joined).toBe(whole);
        expect(own(whole)).toEqual(whole.split(/\r\n|\r|\n/).slice(0, lines.count));
      }),
      { seed: 12, numRuns: 500 }
    );
  });

  test('a tab counts as 4 columns of indentation', () => {
    expect(['', 'a', '  a', '\ta', ' \t a', '    '].map(indentWidth)).toEqual([0, 0, 2, 4, 6, 4]);
  });
});
