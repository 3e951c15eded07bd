import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  divideExact,
  exactOne,
  exactValue,
  multiplyExact,
  parseExact,
  powerExact
} from './exact.ts';
import { rational } from './rational.ts';

describe('exact factors', () => {
  it.each([
    ['127/5000', 0.0254],
    ['0.45359237', 0.45359237],
    ['1.602176634e-19', 1.602176634e-19],
    ['1e300', 1e300],
    ['1e-300', 1e-300],
    ['1 pi', Math.PI],
    ['1/180 pi', 0.017453292519943295],
    ['1 pi^-1', 0.3183098861837907]
  ])('%s is the double nearest to it', (text, value) => {
    expect(exactValue(parseExact(text))).toBe(value);
  });

  it.each(['', 'pi', '1/0', '0', 'x', '1 / 2', '-1'])('"%s" is no factor', (text) => {
    expect(() => parseExact(text)).toThrow(RangeError);
  });

  it('a fraction of whole doubles is rounded as the processor divides it', () => {
    const whole = fc.integer({ min: 1, max: 2 ** 31 - 1 });
    fc.assert(
      fc.property(
        whole,
        whole,
        (num, den) => exactValue(parseExact(`${num}/${den}`)) === num / den
      ),
      { seed: 20250302 }
    );
  });

  it('a product divided by a factor is the other factor', () => {
    const inch = parseExact('127/5000');
    const turn = parseExact('2 pi');
    expect(divideExact(multiplyExact(inch, turn), turn)).toEqual(inch);
  });

  it('a root that is a fraction stays one, any other is a double', () => {
    expect(powerExact(parseExact('1/10000'), rational(1, 2))).toEqual(parseExact('1/100'));
    expect(exactValue(powerExact(parseExact('2'), rational(1, 2)))).toBe(Math.SQRT2);
    expect(exactValue(powerExact(parseExact('27/8'), rational(-1, 3)))).toBe(2 / 3);
    expect(powerExact(parseExact('5 pi'), rational(-2))).toEqual(parseExact('1/25 pi^-2'));
    expect(powerExact(exactOne, rational(1, 997))).toEqual(exactOne);
  });
});
