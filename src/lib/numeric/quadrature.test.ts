import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LaneFunction } from './lane-function.ts';
import { integralStatus, integrateLanes, type IntegralOptions } from './quadrature.ts';

const { converged, inaccurate, notFinite, budget } = integralStatus;

function over(f: (x: number, lane: number) => number): LaneFunction {
  return (lanes, x, count, out) => {
    for (let i = 0; i < count; i++) out[i] = f(x[i] ?? NaN, lanes[i] ?? -1);
  };
}

function integral(f: (x: number) => number, low: number, high: number, options?: IntegralOptions) {
  const found = integrateLanes(over(f), Float64Array.of(low), Float64Array.of(high), 1, options);
  return {
    value: found.value[0] ?? NaN,
    error: found.error[0] ?? NaN,
    status: found.status[0],
    where: found.where[0] ?? NaN,
    evaluations: found.evaluations
  };
}

describe('bounds and values that are not plain', () => {
  it('a bound that is not a number ends as not finite', () => {
    for (const [low, high] of [
      [NaN, 1],
      [0, NaN],
      [NaN, NaN]
    ] as const) {
      // prettier-ignore
      expect(integral(Math.exp, low, high)).toMatchObject({ value: NaN, status: notFinite });
    }
  });

  it('f not a number on a stretch ends as not finite, with a place in that stretch', () => {
    const found = integral((x) => Math.sqrt(x - 0.3), 0, 1);
    expect(found.status).toBe(notFinite);
    expect(found.where).toBeGreaterThan(0);
    expect(found.where).toBeLessThan(0.3);
  });

  it('one removable point that is not a number does no harm', () => {
    // The centre of the first of 16 panels is 0, where sin(x)/x is 0/0. Si(31) + Si(1) by mpmath 1.2.1.
    const found = integral((x) => Math.sin(x) / x, -1, 31);
    expect(found.status).toBe(converged);
    expect(found.value).toBeCloseTo(2.487850107660972, 12);
  });

  it('no lanes give no values', () => {
    const none = integrateLanes(over(Math.exp), new Float64Array(0), new Float64Array(0), 0);
    expect([none.value.length, none.evaluations]).toEqual([0, 0]);
  });

  it('equal bounds give 0 without a look at f, infinite ones too', () => {
    for (const bound of [0, 2, -Infinity, Infinity]) {
      const found = integral(() => NaN, bound, bound);
      expect(found).toMatchObject({ value: 0, error: 0, status: converged, evaluations: 0 });
    }
  });

  it('reversed bounds give the negative', () => {
    for (const [low, high] of [
      [0, 1],
      [0, Infinity],
      [-Infinity, 1],
      [-Infinity, Infinity]
    ] as const) {
      // prettier-ignore
      const f = (x: number) => Math.exp(-x * x) / (1 + 0.1 * x);
      const g = (x: number) => f(Math.abs(x));
      expect(integral(g, high, low).value).toBe(-integral(g, low, high).value);
    }
  });

  it('f zero everywhere gives 0, on infinite ranges too', () => {
    expect(integral(() => 0, 0, 1)).toMatchObject({ value: 0, status: converged });
    expect(integral(() => 0, -Infinity, Infinity)).toMatchObject({ value: 0, status: converged });
  });

  it('a range of a few doubles is not a trap', () => {
    const high = 1 + 4 * 2 ** -52;
    expect(integral((x) => x, 1, high).value).toBeCloseTo(4 * 2 ** -52, 25);
    expect(integral((x) => 1 / Math.sqrt(x - 1), 1, high).status).not.toBe(notFinite);
  });
});

describe('exactness and signs', () => {
  it('cancellation to zero counts as converged', () => {
    expect(integral((x) => x ** 3, -1, 1)).toMatchObject({ status: converged });
    expect(Math.abs(integral(Math.sin, 0, 2 * Math.PI).value)).toBeLessThan(1e-14);
  });

  it('the estimate is no smaller than the error that was made', () => {
    const cases: [(x: number) => number, number, number, number][] = [
      [(x) => Math.abs(x - 0.3), 0, 1, 0.29],
      [(x) => (x < 0.3 ? 0 : 1), 0, 1, 0.7],
      [(x) => Math.sqrt(Math.abs(x - 0.3)), 0, 1, (2 / 3) * (0.3 ** 1.5 + 0.7 ** 1.5)],
      [(x) => 1 / Math.cbrt(Math.abs(x - 0.3)), 0, 1, 1.5 * (0.3 ** (2 / 3) + 0.7 ** (2 / 3))],
      [(x) => 1 / Math.sqrt(1 - x), 0, 1, 2],
      [(x) => x ** -0.9, 0, 1, 10],
      [(x) => Math.log(x) / Math.sqrt(x), 0, 1, -4],
      [(x) => Math.max(0, Math.sin(x)), 0, 20, 7 - Math.cos(20 - 6 * Math.PI)]
    ];
    for (const [f, low, high, exact] of cases) {
      const found = integral(f, low, high);
      expect(Math.abs(found.value - exact), f.toString()).toBeLessThanOrEqual(found.error + 1e-15);
      expect(found.error / Math.abs(exact), f.toString()).toBeLessThan(1e-7);
    }
  });
});

describe('ends', () => {
  it('f is never asked for at a bound', () => {
    const f = over((x) => {
      if (x <= 0 || x >= 1) throw new RangeError(`asked at ${x}`);
      return 1 / Math.sqrt(x * (1 - x));
    });
    const found = integrateLanes(f, Float64Array.of(0), Float64Array.of(1), 1);
    expect(found.value[0]).toBeCloseTo(Math.PI, 6);
  });

  it('losing all digits near a harmless end does no harm', () => {
    // (1 - cos x)/x^2 is 0/0 below 1e-162; the integral from 0 to 1 by mpmath 1.2.1.
    const found = integral((x) => (1 - Math.cos(x)) / (x * x), 0, 1);
    expect(found.status).toBe(converged);
    expect(found.value).toBeCloseTo(0.486385376235323, 12);
  });

  it.each([1e-9, 1e-6, 1e-3, 1, 1e3, 1e6, 1e9])('a decay length of %s is found', (scale) => {
    const found = integral((x) => Math.exp(-x / scale), 0, Infinity);
    expect(found.status).toBe(converged);
    expect(Math.abs(found.value / scale - 1)).toBeLessThan(1e-12);
  });

  it('the whole line, with a hump away from 0', () => {
    const found = integral((x) => Math.exp((-(x - 50) * (x - 50)) / 2), -Infinity, Infinity);
    expect(Math.abs(found.value / Math.sqrt(2 * Math.PI) - 1)).toBeLessThan(1e-10);
  });

  it('a tail that overflows where nothing is left is passed over', () => {
    // x/(e^x - 1): pi^2/6. cosh(x)^-2: 1. Both get infinite denominators from x = 710 on.
    const bose = integral(
      (x) => {
        const d = Math.exp(x) - 1;
        return d === Infinity ? NaN : x / d;
      },
      0,
      Infinity
    );
    expect(Math.abs(bose.value / (Math.PI ** 2 / 6) - 1)).toBeLessThan(1e-10);
    const soliton = integral(
      (x) => {
        const c = Math.cosh(x) ** 2;
        return c === Infinity ? NaN : 1 / c;
      },
      0,
      Infinity
    );
    expect(Math.abs(soliton.value - 1)).toBeLessThan(1e-10);
  });

  it('the law of black-body radiation in hertz gives the law of Stefan and Boltzmann', () => {
    // 2 pi h/c^2 f^3/(exp(h f/(k T)) - 1) integrated over f is sigma T^4; CODATA 2018, exact constants.
    const h = 6.62607015e-34, k = 1.380649e-23, c = 299792458, T = 300; // prettier-ignore
    const sigma = (2 * Math.PI ** 5 * k ** 4) / (15 * h ** 3 * c ** 2);
    const f = (x: number) =>
      ((2 * Math.PI * h) / c ** 2) * (x ** 3 / (Math.exp((h * x) / (k * T)) - 1));
    const found = integral(f, 0, Infinity);
    expect(found.status).toBe(converged);
    expect(Math.abs(found.value / (sigma * T ** 4) - 1)).toBeLessThan(1e-9);
  });

  it.each([
    ['1/x from 0', (x: number) => 1 / x, 0, 1, 0],
    ['x^-1.1 from 0', (x: number) => x ** -1.1, 0, 1, 0],
    ['1/x^2 from 0', (x: number) => 1 / (x * x), 0, 1, 0],
    ['1/(1 - x) to 1', (x: number) => 1 / (1 - x), 0, 1, 1],
    ['1/x to infinity', (x: number) => 1 / x, 1, Infinity, Infinity],
    ['a constant from minus infinity', () => 1, -Infinity, 0, -Infinity]
  ])('%s has no integral, and the end is told', (_, f, low, high, where) => {
    expect(integral(f, low, high)).toMatchObject({ value: NaN, status: notFinite, where });
  });

  it('sin x / x to infinity stops at its budget or says that it is inaccurate', () => {
    const found = integral((x) => Math.sin(x) / x, 0, Infinity);
    expect([inaccurate, budget]).toContain(found.status);
  });
});

describe('peaks', () => {
  it('a peak of 1/250 of the range is found wherever it stands', () => {
    for (let i = 0; i < 200; i++) {
      const centre = 0.04 + (0.92 * i) / 199;
      const found = integral((x) => Math.exp(-((x - centre) ** 2) / (2 * 0.004 ** 2)), 0, 1);
      expect(Math.abs(found.value / (0.004 * Math.sqrt(2 * Math.PI)) - 1)).toBeLessThan(1e-8);
    }
  });
});

describe('budget and noise', () => {
  it('stops at the budget with its best estimate', () => {
    const found = integral((x) => Math.cos(1e6 * x), 0, 1, { maxEvaluations: 2000 });
    expect(found.status).toBe(budget);
    expect(found.evaluations).toBeLessThanOrEqual(2000);
    expect(Number.isFinite(found.value)).toBe(true);
  });

  it('noise is not taken for a value', () => {
    const noise = (x: number) => 1 + 1e-6 * (Math.abs(Math.sin(1e9 * x) * 1e4) % 1);
    const found = integral(noise, 0, 1);
    expect(Math.abs(found.value - 1)).toBeLessThan(2e-6);
    expect([inaccurate, budget]).toContain(found.status);
  });

  it('noise below the acceptable error does not spoil the status', () => {
    const noise = (x: number) => 1 + 1e-9 * (Math.abs(Math.sin(1e9 * x) * 1e4) % 1);
    const found = integral(noise, 0, 1);
    expect(found.status).toBe(converged);
    expect(found.evaluations).toBeLessThan(15_000);
  });
});

describe('lanes', () => {
  // Each lane has its own integrand: a kink, a singular end, an infinite range, a fault, smooth.
  const family = (x: number, a: number) => {
    if (a < 0.2) return Math.abs(x - a);
    if (a < 0.4) return x ** -a;
    if (a < 0.6) return Math.exp(-a * x) * Math.cos(x);
    if (a < 0.65) return Math.sqrt(x - a);
    return Math.sin(20 * a * x);
  };
  const highOf = (a: number) => (a >= 0.4 && a < 0.6 ? Infinity : 1 + a);

  it('permuting the lanes or changing the batch changes no bit', () => {
    const lists = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: 1,
      maxLength: 40
    });
    fc.assert(
      fc.property(
        lists,
        fc.integer({ min: 15, max: 500 }),
        fc.infiniteStream(fc.nat()),
        (as, batch, keys) => {
          const order = as.map((_, i) => ({ i, key: keys.next().value as number }));
          order.sort((p, q) => p.key - q.key || q.i - p.i);
          const shuffled = order.map(({ i }) => as[i] ?? NaN);
          const runOver = (list: number[], options: IntegralOptions) =>
            integrateLanes(
              over((x, lane) => family(x, list[lane] ?? NaN)),
              new Float64Array(list.length),
              Float64Array.from(list, highOf),
              list.length,
              options
            );
          const straight = runOver(as, {});
          const other = runOver(shuffled, { batch });
          for (const [j, { i }] of order.entries()) {
            expect(other.value[j]).toBe(straight.value[i]);
            expect(other.error[j]).toBe(straight.error[i]);
            expect(other.status[j]).toBe(straight.status[i]);
            expect(other.where[j]).toBe(straight.where[i]);
          }
        }
      ),
      { seed: 1967, numRuns: 30 }
    );
  });

  it('more lanes than a block agree with one lane alone', () => {
    const count = 600;
    const list = Float64Array.from({ length: count }, (_, i) => (i + 0.5) / count);
    const f = over((x, lane) => family(x, list[lane] ?? NaN));
    const together = integrateLanes(f, new Float64Array(count), list.map(highOf), count);
    for (const lane of [0, 255, 256, 257, 511, 599]) {
      const a = list[lane] ?? NaN;
      expect(together.value[lane]).toBe(integral((x) => family(x, a), 0, highOf(a)).value);
    }
  });

  it('the cost of a smooth lane is 240 values, whatever the others need', () => {
    const f = over((x, lane) => (lane === 0 ? x : Math.abs(x - 0.3)));
    const found = integrateLanes(f, new Float64Array(2), Float64Array.of(1, 1), 2);
    const alone = integral((x) => Math.abs(x - 0.3), 0, 1);
    expect(found.evaluations).toBe(240 + alone.evaluations);
  });
});
