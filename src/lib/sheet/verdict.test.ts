// Verdicts on limits: each form, each tag, and the bands at the edge.

import { describe, expect, it } from 'vitest';
import { judge, normalProbability, type LimitFigures } from './verdict.ts';

const limit = (
  form: LimitFigures['form'],
  sides: readonly (number | null)[],
  more: Partial<LimitFigures> = {}
): LimitFigures => ({
  form, sides, tolerance: null, isLevel: false, isSafety: false, isScreen: false, close: null,
  uncertainty: () => null, ...more
}); // prettier-ignore

describe('a capacity', () => {
  it.each([
    [0.5, 1, 'within', 0.5], [0.9, 1, 'close', 0.9], [0.89, 1, 'within', 0.89], [1, 1, 'close', 1],
    [1.1, 1, 'over', 1.1], [0, 1, 'within', 0], [-1, 1, 'within', null], [1, -1, 'over', null],
    [1, 0, 'over', null], [0, 0, 'within', null]
  ] as const)('%f against %f is %s', (demand, capacity, status, utilisation) => {
    const verdict = judge(limit('demand<=capacity', [demand, capacity]));
    expect([verdict.status, verdict.utilisation]).toEqual([status, utilisation]);
  }); // prettier-ignore

  it('holds inside a band of 1e-9 of the larger side, and is then at the limit', () => {
    expect(judge(limit('demand<=capacity', [1 + 0.9e-9, 1]))).toMatchObject({
      status: 'close',
      atLimit: true
    });
    expect(judge(limit('demand<=capacity', [1 + 1.1e-9, 1]))).toMatchObject({
      status: 'over',
      atLimit: false
    });
    expect(judge(limit('demand<=capacity', [1 - 1.1e-9, 1]))).toMatchObject({ atLimit: false });
  });

  it('without bound is never reached', () => {
    expect(judge(limit('demand<=capacity', [1e300, null]))).toMatchObject({
      status: 'within', utilisation: null, margin: null
    }); // prettier-ignore
  });

  it('has its margin in the same unit, negative when over', () => {
    expect(judge(limit('demand<=capacity', [3, 5])).margin).toBe(2);
    expect(judge(limit('demand<=capacity', [7, 5])).margin).toBe(-2);
  });
});

describe('a requirement', () => {
  it('is met or short, its use is required over actual, and no ratio makes it close', () => {
    expect(judge(limit('actual>=required', [80, 80]))).toMatchObject({
      status: 'met',
      utilisation: 1,
      atLimit: true
    });
    expect(judge(limit('actual>=required', [39, 80]))).toMatchObject({
      status: 'short',
      utilisation: 80 / 39
    });
    expect(judge(limit('actual>=required', [81, 80]))).toMatchObject({ status: 'met' });
  });
});

describe('a range', () => {
  it('is judged by the larger use of its two ends', () => {
    expect(judge(limit('low<=x<=high', [1, 2, 10]))).toMatchObject({
      status: 'within',
      utilisation: 0.5
    });
    expect(judge(limit('low<=x<=high', [1, 0.5, 10]))).toMatchObject({
      status: 'over',
      utilisation: 2
    });
    expect(judge(limit('low<=x<=high', [1, 12, 10]))).toMatchObject({
      status: 'over',
      utilisation: 1.2
    });
    expect(judge(limit('low<=x<=high', [null, 9.5, 10]))).toMatchObject({ status: 'close' });
  });

  it('may be kept out of', () => {
    expect(judge(limit('x outside a..b', [5, 10, 20]))).toMatchObject({
      status: 'within',
      margin: 5
    });
    expect(judge(limit('x outside a..b', [25, 10, 20]))).toMatchObject({
      status: 'within',
      margin: 5
    });
    expect(judge(limit('x outside a..b', [12, 10, 20]))).toMatchObject({
      status: 'over',
      margin: -2
    });
  });
});

describe('a fit of two parts', () => {
  it('allows what its tolerance says', () => {
    expect(judge(limit('a==b', [10, 10.02], { tolerance: 0.05 })).status).toBe('within');
    expect(judge(limit('a==b', [10, 10.06], { tolerance: 0.05 })).status).toBe('over');
    expect(judge(limit('a==b', [10, 10])).status).toBe('within');
    expect(judge(limit('a==b', [10, 10.0001])).status).toBe('over');
  });
});

describe('tags', () => {
  it('[close at …] and [close within …] move where close begins', () => {
    const at = { close: { kind: 'at', amount: 0.8 } } as const;
    expect(judge(limit('demand<=capacity', [0.85, 1], at)).status).toBe('close');
    const within = { isLevel: true, close: { kind: 'within', amount: 5 } } as const;
    expect(judge(limit('demand<=capacity', [81, 85], within)).status).toBe('close');
    expect(judge(limit('demand<=capacity', [79, 85], within)).status).toBe('within');
  });

  it('[level] has a margin and no ratio', () => {
    expect(judge(limit('demand<=capacity', [84.9, 85], { isLevel: true }))).toMatchObject({
      status: 'within', utilisation: null
    }); // prettier-ignore
  });

  it('[screen] can only show failure, without percent', () => {
    const screen = { isScreen: true } as const;
    expect(judge(limit('demand<=capacity', [0.95, 1], screen))).toMatchObject({
      status: 'not-shown-to-fail', utilisation: null
    }); // prettier-ignore
    expect(judge(limit('demand<=capacity', [1.5, 1], screen)).status).toBe('fails');
  });

  it('[safety] is judged at the unfavourable end of the 95 % interval', () => {
    const uncertainty = (): number => 0.05;
    expect(judge(limit('demand<=capacity', [0.89, 1], { uncertainty })).status).toBe('within');
    expect(
      judge(limit('demand<=capacity', [0.91, 1], { uncertainty, isSafety: true })).status
    ).toBe('over');
    expect(
      judge(limit('demand<=capacity', [0.89, 1], { uncertainty, isSafety: true })).status
    ).toBe('within');
    expect(
      judge(limit('actual>=required', [1.09, 1], { uncertainty, isSafety: true })).status
    ).toBe('short');
  });
});

describe('the chance of being over', () => {
  it('makes a limit close above 5 %', () => {
    const figures = limit('demand<=capacity', [0.8, 1], { uncertainty: () => 0.13 });
    expect(judge(figures).status).toBe('close');
    expect(judge({ ...figures, uncertainty: () => 0.11 }).status).toBe('within');
  });

  // Source: M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, table 26.1 (from memory).
  it.each([
    [0, 0.5], [1, 0.8413447], [-1, 0.1586553], [1.96, 0.9750021], [-1.644854, 0.05], [3, 0.9986501]
  ] as const)('of a normal variable below %f is %f', (z, probability) => {
    expect(Math.abs(normalProbability(z) - probability)).toBeLessThan(2e-7);
  }); // prettier-ignore
});
