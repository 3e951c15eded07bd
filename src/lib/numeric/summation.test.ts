import { describe, expect, it } from 'vitest';
import { compensatedSum, mean, standardDeviation } from './summation.ts';

describe('values that are not plain', () => {
  it('not a number stays', () => {
    expect(compensatedSum([1, NaN])).toBeNaN();
    expect(mean([1, NaN])).toBeNaN();
    expect(standardDeviation([1, NaN, 2])).toBeNaN();
  });

  it('infinity stays, and two of different sign are not a number', () => {
    expect(compensatedSum([1, Infinity, 2])).toBe(Infinity);
    expect(compensatedSum([-Infinity, 1])).toBe(-Infinity);
    expect(compensatedSum([Infinity, -Infinity])).toBeNaN();
    expect(compensatedSum([1e308, 1e308])).toBe(Infinity);
  });

  it('no values: sum 0, no mean, no deviation', () => {
    expect([compensatedSum([]), mean([]), standardDeviation([])]).toEqual([0, NaN, NaN]);
  });

  it('one value: its own sum and mean, no deviation', () => {
    expect([compensatedSum([3]), mean([3]), standardDeviation([3])]).toEqual([3, 3, NaN]);
  });

  it('equal values have no deviation, exactly', () => {
    expect(standardDeviation([0.1, 0.1, 0.1])).toBe(0);
  });
});

describe('digits', () => {
  it('keeps what large terms of opposite sign would swallow', () => {
    expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
    expect(compensatedSum(Array.from({ length: 10 }, () => 0.1))).toBe(1);
  });

  // NIST StRD, univariate summary statistics, certified values exact; the sets are given there as
  // rules for their values (from memory): a centre once, then centre - 0.1 and centre + 0.1 in turn.
  const inTurn = (centre: number, below: number, above: number) => [
    centre,
    ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? below : above))
  ];
  it.each([
    ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, 1e-15],
    ['NumAcc2', inTurn(1.2, 1.1, 1.3), 1.2, 0.1, 1e-14],
    // The readings' own rounding (1e-10 and 1e-9 of 0.1) bounds what any method can give.
    ['NumAcc3', inTurn(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 1e-9],
    ['NumAcc4', inTurn(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 1e-8]
  ])('%s', (_, values, centre, deviation, relative) => {
    expect(Math.abs(mean(values) / centre - 1)).toBeLessThan(1e-15);
    expect(Math.abs(standardDeviation(values) / deviation - 1)).toBeLessThan(relative);
  });
});
