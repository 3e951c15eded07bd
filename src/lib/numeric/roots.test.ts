import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LaneFunction } from './lane-function.ts';
import { rootStatus, rootsLanes, type RootOptions } from './roots.ts';

const { found, sameSign, notFinite, budget, discontinuous } = rootStatus;

function over(f: (x: number, lane: number) => number): LaneFunction {
  return (lanes, x, count, out) => {
    for (let i = 0; i < count; i++) out[i] = f(x[i] ?? NaN, lanes[i] ?? -1);
  };
}

function search(f: (x: number) => number, low: number, high: number, options?: RootOptions) {
  const result = rootsLanes(over(f), Float64Array.of(low), Float64Array.of(high), 1, options);
  return {
    root: result.root[0] ?? NaN,
    status: result.status[0],
    count: result.count[0] ?? -1,
    atLow: result.atLow[0] ?? NaN,
    atHigh: result.atHigh[0] ?? NaN,
    where: result.where[0] ?? NaN,
    all: result.all?.[0],
    evaluations: result.evaluations
  };
}

describe('ranges and values that are not plain', () => {
  it('an end that is not finite ends as not finite', () => {
    for (const [low, high] of [
      [NaN, 1],
      [0, NaN],
      [0, Infinity],
      [-Infinity, 0]
    ] as const) {
      // prettier-ignore
      expect(search((x) => x - 0.3, low, high).status).toBe(notFinite);
    }
  });

  it('f not a number everywhere ends as not finite, with the lowest place', () => {
    expect(search(() => NaN, 2, 3)).toMatchObject({ status: notFinite, where: 2, root: NaN });
  });

  it('f not a number on a part of the range does not hide a root of the rest', () => {
    const result = search((x) => Math.sqrt(x - 1) - 1, 0, 3);
    expect(result.status).toBe(found);
    expect(result.root).toBeCloseTo(2, 11);
    expect(result.where).toBe(0);
  });

  it('no lanes give no values', () => {
    const none = rootsLanes(over(Math.sin), new Float64Array(0), new Float64Array(0), 0);
    expect([none.root.length, none.evaluations]).toEqual([0, 0]);
  });

  it('equal ends are one point: a root if f is zero there', () => {
    expect(search((x) => x - 2, 2, 2)).toMatchObject({ status: found, root: 2, count: 1 });
    expect(search((x) => x - 1, 2, 2)).toMatchObject({ status: sameSign, atLow: 1, atHigh: 1 });
  });

  it('reversed ends are the same range, each end keeping its own value of f', () => {
    const result = search((x) => x - 1, 3, 0);
    expect(result).toMatchObject({ status: found, count: 1, atLow: 2, atHigh: -1 });
    expect(result.root).toBeCloseTo(1, 12);
  });

  it('a scan of fewer than two points is a mistake of the caller', () => {
    expect(() => search(Math.sin, 0, 1, { points: 1 })).toThrow(RangeError);
  });
});

describe('zeros', () => {
  it('an exact zero at a scan point counts once', () => {
    const result = search((x) => x - 3, 0, 63, { every: true });
    expect(result).toMatchObject({ status: found, root: 3, count: 1, evaluations: 64 });
    expect([...(result.all ?? [])]).toEqual([3]);
  });

  it('a zero at an end is a root', () => {
    expect(search((x) => x, 0, 1)).toMatchObject({ status: found, root: 0, count: 1 });
    expect(search((x) => x - 1, 0, 1)).toMatchObject({ status: found, root: 1, count: 1 });
  });

  it('a stretch of zeros is one root, at its low end', () => {
    const result = search((x) => Math.max(0, x - 10) + Math.min(0, x - 5), 0, 63, { every: true });
    expect(result).toMatchObject({ status: found, root: 5, count: 1 });
  });

  it('f zero everywhere gives the low end', () => {
    expect(search(() => 0, 1, 2)).toMatchObject({ status: found, root: 1, count: 1 });
  });

  it('negative zero is zero', () => {
    expect(search((x) => (x === 0 ? -0 : 1), 0, 1)).toMatchObject({ status: found, root: 0 });
  });
});

describe('which root', () => {
  it('the lowest of several, and how many were seen', () => {
    const result = search(Math.sin, 1, 20);
    expect(result.count).toBe(6);
    expect(result.root).toBeCloseTo(Math.PI, 12);
  });

  it('every root, ascending', () => {
    const { all } = search(Math.sin, 1, 20, { every: true });
    expect(all?.length).toBe(6);
    for (const [i, root] of (all ?? new Float64Array(0)).entries()) {
      expect(Math.abs(root / ((i + 1) * Math.PI) - 1)).toBeLessThan(1e-12);
    }
  });

  it('one sign everywhere: no root, and f at the ends', () => {
    const result = search((x) => x * x + 1, -1, 2);
    expect(result).toMatchObject({ status: sameSign, root: NaN, count: 0, atLow: 2, atHigh: 5 });
  });
});

describe('changes of sign that are no roots', () => {
  it.each([
    ['a pole between scan points', (x: number) => 1 / (x - 0.3), 0.3],
    ['a pole that halving meets', (x: number) => 1 / (x - 0.5), 0.5],
    ['a pole of the third order', (x: number) => (x - 0.7) ** -3, 0.7],
    ['a tangent', (x: number) => Math.tan(x + 1), Math.PI / 2 - 1],
    ['a jump', (x: number) => (x < 0.4 ? -2 : 3), 0.4]
  ])('%s is told, with its place', (_, f, place) => {
    const result = search(f, 0, 1, { every: true });
    expect(result.status).toBe(discontinuous);
    expect(result.root).toBeCloseTo(place, 10);
    expect(result.all?.length).toBe(0);
  });

  it('the root above a pole is found', () => {
    const result = search((x) => Math.tan(x), 1, 4);
    expect(result.status).toBe(found);
    expect(result.root).toBeCloseTo(Math.PI, 11);
  });

  it('a pole at a scan point does not hide a root', () => {
    const result = search((x) => 1 / (x - 2) + 1, 0, 63, { every: true });
    expect(result.status).toBe(found);
    expect(result.where).toBe(2);
    expect(result.root).toBe(1);
  });
});

describe('hard roots', () => {
  it.each([
    ['steep', (x: number) => Math.atan(1e8 * (x - 0.3)), 0.3],
    ['flat', (x: number) => (x - 0.3) ** 9, 0.3],
    ['a cube root', (x: number) => Math.cbrt(x - 0.3), 0.3],
    ['a ninth root at 0', (x: number) => Math.sign(x) * Math.abs(x) ** (1 / 9), 0],
    ['a scan point that all but is the root', (x: number) => x - 20 / 63 - 1e-18, 20 / 63]
  ])('%s', (_, f, root) => {
    const result = search(f, -0.37, 1);
    expect(result.status).toBe(found);
    expect(Math.abs(result.root - root)).toBeLessThan(1e-12);
  });

  it('stops at the budget with its best place', () => {
    const result = search((x) => (x - 0.3) ** 9, 0, 1, { maxEvaluations: 5 });
    expect(result.status).toBe(budget);
    expect(Math.abs(result.root - 0.3)).toBeLessThan(0.02);
  });

  it('a smooth root costs the scan and about 10 values', () => {
    expect(search((x) => Math.exp(x) - 2, 0, 1).evaluations).toBeLessThan(64 + 12);
  });
});

describe('lanes', () => {
  const family = (x: number, a: number) => {
    if (a < 0.3) return x ** 3 - a;
    if (a < 0.5) return Math.sin(30 * a * x + 1);
    if (a < 0.7) return 1 / (x - a);
    if (a < 0.8) return x * x + a;
    return Math.sqrt(x - a) - 0.1;
  };

  it('permuting the lanes or changing the batch changes no bit', () => {
    const lists = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: 1,
      maxLength: 40
    });
    fc.assert(
      fc.property(
        lists,
        fc.integer({ min: 1, max: 500 }),
        fc.boolean(),
        fc.infiniteStream(fc.nat()),
        (as, batch, every, keys) => {
          const order = as.map((_, i) => ({ i, key: keys.next().value as number }));
          order.sort((p, q) => p.key - q.key || q.i - p.i);
          const shuffled = order.map(({ i }) => as[i] ?? NaN);
          const runOver = (list: number[], options: RootOptions) =>
            rootsLanes(
              over((x, lane) => family(x, list[lane] ?? NaN)),
              new Float64Array(list.length),
              new Float64Array(list.length).fill(1),
              list.length,
              { every, ...options }
            );
          const straight = runOver(as, {});
          const other = runOver(shuffled, { batch });
          expect(other.evaluations).toBe(straight.evaluations);
          for (const [j, { i }] of order.entries()) {
            for (const field of ['root', 'status', 'count', 'atLow', 'atHigh', 'where'] as const) {
              expect(other[field][j]).toBe(straight[field][i]);
            }
            expect(other.all?.[j]).toEqual(straight.all?.[i]);
          }
        }
      ),
      { seed: 1997, numRuns: 60 }
    );
  });
});
