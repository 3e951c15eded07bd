import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatNumber, formatRow, formatSignificant, formatUncertain } from './format.ts';

describe('a row', () => {
  it.each([
    ['the largest value sets the decimals', [1069, 522.72, 3363.4, 945.1], '1069 523 3363 945'],
    ['the smallest keeps two digits', [1069.3, 0.654], '1069.30 0.65'],
    ['decimals are the same in all', [32.123, 54.4, 90.6667, 113.33], '32.1 54.4 90.7 113.3'],
    ['zeros that all values end in are left out', [0, 0, 64, 100], '0 0 64 100'],
    ['an entered value stays as entered', [1.1], '1.1'],
    ['small rows share a power of ten', [1.8134e-5, 1.842e-5], '1.813e-5 1.842e-5'],
    ['mixed small rows stay plain', [6.21e-4, 0.0024841, 4.386e-4], '0.000621 0.002484 0.000439'],
    ['whole digits are kept', [127768, 76697.3], '127768 76697'],
    ['from ten million on by powers of ten', [2.5e8, 1e8 / 3], '2.500e8 0.333e8'],
    ['a value far smaller stands by itself', [3195.4, 1e-6], '3195 1.0e-6'],
    ['round-off beside a large value is 0', [9.52381, 1e-17], '9.524 0.000'],
    ['rounding up moves the point', [9999.6], '10000'],
    ['a sum of decimals', [0.1 + 0.2], '0.3'],
    ['feet from inches', [36.00000000000001], '36'],
    ['a third', [1 / 3], '0.3333'],
    ['signs', [-0.5, 0.25], '-0.50 0.25'],
    ['zeros alone', [0, -0], '0 0']
  ])('%s', (_rule, values, expected) => {
    expect(formatRow(values, 4).join(' ')).toBe(expected);
  });

  it('leaves a place for what has no value', () => {
    expect(formatRow([null, NaN, Infinity, -Infinity, 5], 4)).toEqual(['', '', 'inf', '-inf', '5']);
    expect(formatRow([], 4)).toEqual([]);
  });

  it('is typeset with a minus sign, thin spaces and raised powers', () => {
    expect(formatRow([-12345.6, 999], 4, 'typeset')).toEqual(['−12\u202F346', '999']);
    expect(formatRow([1.8134e-5], 4, 'typeset')).toEqual(['1.813\u202F×\u202F10⁻⁵']);
    expect(formatRow([-1.8134e-5, 0], 4, 'tex')).toEqual(['-1.813\\times10^{-5}', '0.000']);
  });

  it('reads back to the digits asked, and never has more than 15 digits', () => {
    const sizes = fc.double({ min: 1e-12, max: 1e12, noNaN: true });
    const values = fc.array(sizes, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(values, fc.integer({ min: 2, max: 12 }), (row, digits) => {
        const largest = Math.max(...row);
        for (const [index, text] of formatRow(row, digits).entries()) {
          const value = row[index] ?? 0;
          const error = Math.abs(Number(text) - value);
          // Half a unit of the largest value's last digit, or of the second digit of the value.
          const allowed = Math.max(
            0.5 * largest * 10 ** (1 - digits),
            0.05 * value,
            largest * 1e-11
          );
          expect(error).toBeLessThanOrEqual(allowed);
          expect(text.replace(/e.*|\D/g, '').replace(/^0+/, '').length).toBeLessThanOrEqual(15);
        }
      }),
      { seed: 20250306 }
    );
  });
});

describe('one number to four digits', () => {
  // Figures of the whirling-arm rig's table of results, as printed there.
  it.each(
    `1.199 1.813e-5 343.2 0.2331 6.210e-4 0.002484 0.001934 4.386e-4 106.7 52 1019 496.6 9.524 9.55
     29.95 1.278e5 76697 1.225e5 13.18 28.5 0 0.6 753.7 90.67 0.06667 0.4303 0.436 2480 38.93 13.3
     1132 18.57 0.6077 4204 17.5 95 124.5 30.08 82.56`.split(/\s+/)
  )('%s is printed as it is', (text) => {
    expect(formatSignificant(Number(text), 4)).toBe(text);
  });

  it('has a policy for what is no number', () => {
    expect([null, NaN, Infinity, 0, -0].map((value) => formatSignificant(value, 4))).toEqual([
      '',
      '',
      'inf',
      '0',
      '0'
    ]);
  });
});

describe('fixed precision', () => {
  it('keeps its zeros and shows no minus zero', () => {
    expect(formatNumber(2, { decimals: 3 })).toBe('2.000');
    expect(formatNumber(2, { digits: 3 })).toBe('2.00');
    expect(formatNumber(-0.001, { decimals: 1 })).toBe('0.0');
    expect(formatNumber(-1234567.8, { digits: 4 }, 'tex')).toBe('-1{\\,}234{\\,}568');
    expect(formatNumber(12345.678, { decimals: 1 }, 'typeset')).toBe('12\u202F345.7');
  });
});

describe('a value with its uncertainty', () => {
  it.each([
    [23.4567, 0.0123, '23.457', '0.012'],
    [1234.5, 123, '1230', '120'],
    [100.02147, 0.00035, '100.02147', '0.00035'],
    [0, 0.2, '0.00', '0.20'],
    [1.2345e-7, 3e-9, '1.235e-7', '0.030e-7'],
    [5, 0, '5', '0']
  ])('%s with u = %s is %s and %s', (value, u, text, uText) => {
    // The third is the mass of JCGM 100:2008, 7.2.2.
    expect(formatUncertain(value, u)).toEqual({ value: text, uncertainty: uText });
  });
});
