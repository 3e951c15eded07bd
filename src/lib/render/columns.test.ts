import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clip,
  displayWidth,
  padLeft,
  padRight,
  printable,
  printableLine,
  wrap
} from './columns.ts';

const seed = 20260314;
const anyText = fc.string({ unit: 'binary' });

describe('what a sheet prints', () => {
  test('cannot steer a terminal', () => {
    expect(printable('a\u001b[31mred\u0007')).toBe('a␛[31mred␇');
    expect(printable('\u009b31m')).toBe('\ufffd31m');
    expect(printable('\u202eabc')).toBe('\ufffdabc');
    expect(printable('a\r\nb\rc\td')).toBe('a\nb␍c\td');
  });

  test('holds no control but newline and tab, whatever the sheet says', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(printable(text)).not.toMatch(/(?![\n\t])\p{Cc}|[\u202a-\u202e]/u);
        expect(printableLine(text)).not.toMatch(/[\n\t]/);
      }),
      { seed }
    );
  });
});

describe('width', () => {
  // Unicode Standard Annex 11: wide signs take two columns; combining marks take none.
  test.each([
    ['abc', 3],
    ['', 0],
    ['m²', 2],
    ['軸受', 4],
    ['e\u0301', 1],
    ['🔧', 2]
  ])('of %s is %i', (text, width) => {
    expect(displayWidth(text)).toBe(width);
  });

  test('is what padding fills and clipping keeps to', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 1, max: 40 }), (text, width) => {
        expect(displayWidth(padRight(text, width))).toBe(Math.max(width, displayWidth(text)));
        expect(displayWidth(padLeft(text, width))).toBe(Math.max(width, displayWidth(text)));
        expect(displayWidth(clip(text, width))).toBeLessThanOrEqual(width);
      }),
      { seed }
    );
  });

  test('of wrapped lines stays within bounds unless one word is longer', () => {
    expect(wrap('one two three', 7)).toEqual(['one two', 'three']);
    expect(wrap('', 7)).toEqual(['']);
    expect(wrap('a longerthanseven b', 7)).toEqual(['a', 'longerthanseven', 'b']);
  });
});
