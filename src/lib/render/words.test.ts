import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { limit, limitAt, stage, tags, unit } from './results.fixture.ts';
import {
  changeText,
  countsText,
  factorText,
  listing,
  marginText,
  numberText,
  percentText,
  sidesText,
  significantText,
  stopText,
  verdictText
} from './words.ts';

const seed = 20260314;

describe('percent', () => {
  test.each([
    [0.9137, '91 %'],
    [1.69, '169 %'],
    [1, '100 %'],
    [0.004, '0.4 %'],
    [0, '0 %'],
    [25, '2500 %'],
    [123.456, '12\u202f346 %'],
    [1e7, '1.0\u202f×\u202f10⁹ %']
  ])('%f reads %s', (share, text) => {
    expect(percentText(share)).toBe(text);
  });

  test('a share off 1 by more than 1e-8 is never rounded to 100 %', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.02, max: 0.02, noNaN: true }), (off) => {
        fc.pre(Math.abs(off) > 1e-8);
        expect(percentText(1 + off)).not.toBe('100 %');
      }),
      { seed }
    );
  });
});

describe('factor', () => {
  // Two significant digits; two decimals from ×0.1 up to ×1.1 (the number rules of the interface).
  test.each([
    [1.6667, '×1.7'],
    [10.85, '×11'],
    [1.05, '×1.05'],
    [0.83, '×0.83'],
    [0.1, '×0.10'],
    [0.0496, '×0.050'],
    [6.97, '×7.0'],
    [9.96, '×10'],
    [333, '×330'],
    [-1.5, '×\u22121.5']
  ])('%f reads %s', (ratio, text) => {
    expect(factorText(ratio)).toBe(text);
  });

  test('from zero and through a sign a word stands in its place', () => {
    expect(changeText(null, 'new')).toBe('new');
    expect(changeText(null, 'sign')).toBe('sign changed');
  });
});

describe('numbers', () => {
  test('a minus is U+2212 and thousands are parted from 10 000 up', () => {
    expect(numberText(-1234.5, 1)).toBe('\u22121234.5');
    expect(numberText(12345.67, 2)).toBe('12\u202f345.67');
    expect(numberText(-0.001, 1)).toBe('0.0');
  });

  test.each([
    [812.345, 4, '812.3'],
    [0.0123456, 3, '0.0123'],
    [999.96, 4, '1000'],
    [1.5e9, 3, '1.50\u202f×\u202f10⁹'],
    [-2.5e-7, 2, '\u22122.5\u202f×\u202f10⁻⁷'],
    [0, 4, '0']
  ])('%f to %i digits is %s', (value, digits, text) => {
    expect(significantText(value, digits)).toBe(text);
  });
});

describe('a limit', () => {
  test('says its two sides with the unit once', () => {
    expect(sidesText(limit('a'), limitAt())).toBe('1.00 of 2.00 kW');
    const need = limit('a', { form: 'actual>=required' });
    expect(sidesText(need, limitAt())).toBe('1.00, needs 2.00 kW');
    expect(sidesText(limit('a'), limitAt({ leftText: '' }))).toBe('? of 2.00 kW');
    expect(sidesText(limit('a'), limitAt({ rightText: '' }))).toBe('1.00 kW');
  });

  test('gives the percent always with its word', () => {
    const at = limitAt({ utilisation: 1.69, status: 'over' });
    expect(verdictText(limit('a'), at)).toBe('169 %, over');
    expect(verdictText(limit('a'), limitAt({ utilisation: 1, atLimit: true }))).toBe(
      '100 %, within, at the limit'
    );
  });

  test('that is close or over by its tolerance alone says the chance of being over', () => {
    const close = limitAt({ utilisation: 0.28, status: 'close', chanceOver: 0.12 });
    expect(verdictText(limit('a'), close)).toBe('28 %, close, chance 12 %');
    const over = limitAt({ utilisation: 0.97, status: 'over', chanceOver: 0.18 });
    expect(verdictText(limit('a'), over)).toBe('97 %, over, chance 18 %');
    const plain = limitAt({ utilisation: 0.95, status: 'close', chanceOver: 0.12 });
    expect(verdictText(limit('a'), plain)).toBe('95 %, close');
  });

  test('without a percent gives the margin in units', () => {
    const at = limitAt({ utilisation: null, margin: -4.6, status: 'over' });
    expect(verdictText(limit('a'), at)).toBe('margin \u22124.60 kW, over');
    const warm = limit('a', { unit: unit('degC') });
    expect(marginText(warm, limitAt({ margin: 5 }))).toBe('5.00 K');
  });

  test('tagged [screen] shows neither tick nor percent', () => {
    const screen = limit('a', { tags: tags('screen') });
    expect(verdictText(screen, limitAt({ status: 'fails', utilisation: 1.4 }))).toBe('fails');
    expect(verdictText(screen, limitAt({ status: 'not-shown-to-fail' }))).toBe('not shown to fail');
  });

  test('that is unknown says what it waits for', () => {
    const at = limitAt({ status: 'unknown', waitsFor: ['P_a', 'P_b'] });
    expect(verdictText(limit('a'), at)).toBe('unknown, waits for P_a, P_b');
  });
});

describe('counts', () => {
  const counts = { checked: 7, inside: 7, close: 0, over: 0, unknown: 0, screens: 0, failing: 0 };

  test('are one sentence that also counts the parts without a check', () => {
    expect(countsText(stage('a', { counts }), 5)).toBe(
      '7 checked, 7 inside; 5 parts have no check'
    );
    expect(countsText(stage('a', { counts }), 1)).toBe('7 checked, 7 inside; 1 part has no check');
  });

  test('name what is close, over and unknown, and the screens apart', () => {
    const mixed = { ...counts, inside: 4, close: 2, over: 2, unknown: 1, screens: 3, failing: 1 };
    expect(countsText(stage('a', { counts: mixed }), 0)).toBe(
      '7 checked, 4 inside (2 of them close), 2 over, 1 unknown; 3 screens: 1 fails, 2 not shown to fail'
    );
    const one = { ...counts, screens: 1 };
    expect(countsText(stage('a', { counts: one }), 0)).toBe(
      '7 checked, 7 inside; 1 screen not shown to fail'
    );
  });

  test('of a sheet without limits say so', () => {
    const none = { ...counts, checked: 0, inside: 0 };
    expect(countsText(stage('a', { counts: none }), 0)).toBe('No limits to check');
  });

  test('say what stops the run, or that nothing computed here does', () => {
    expect(stopText(stage('a', { stopsTheRun: ['guard, hub', 'pin'] }))).toBe(
      'Stops the run: guard, hub; pin.'
    );
    expect(stopText(stage('a'))).toBe('Nothing computed here stops the run.');
  });

  test('and verdicts never call anything safe, fit or permitted', () => {
    const statuses = ['within', 'close', 'over', 'met', 'short', 'unknown', 'fails', 'not-shown-to-fail'] as const; // prettier-ignore
    const said = statuses.map((status) => verdictText(limit('a'), limitAt({ status })));
    said.push(stopText(stage('a')), countsText(stage('a', { counts }), 3));
    for (const text of said) expect(text).not.toMatch(/\b(safe|fit|permitted|ok|pass)/i);
  });
});

test('a list reads with "and" before its last word', () => {
  expect(listing([])).toBe('');
  expect(listing(['a'])).toBe('a');
  expect(listing(['a', 'b', 'c'])).toBe('a, b and c');
});
