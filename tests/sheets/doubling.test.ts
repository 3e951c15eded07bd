// The teaching sheet on doubling the speed, against the tables that it teaches.
// Source of the figures: computed with Python and mathjs beside the specification; invented scenario.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compute, type Results } from '#lib/sheet/index.ts';

const path = join(import.meta.dirname, '../../worksheets/doubling-speed.md');
const results: Results = compute(readFileSync(path, 'utf8'));
const stages = ['drag', 'friction', 'spray'];

function numberAt(name: string, stage: number): number {
  const value = results.values.get(name)?.at[stage]?.value;
  if (typeof value !== 'number')
    throw new Error(`${name} is no number at ${stages[stage] ?? stage}`);
  return value;
}

const rounded = (x: number, digits: number): number => Number(x.toPrecision(digits));

test('the sheet has its three regimes and no mistake', () => {
  expect(results.stages.map(({ id }) => id)).toEqual(stages);
  expect(results.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
});

describe('from 40 to 80 m/s: each quantity, and the factor between', () => {
  // name, at 40 m/s, at 80 m/s, times; the unit is the row's
  const rows: [string, number, number, number][] = [
    ['T_drag', 7.125, 28.5, 4],
    ['F_root', 1222, 4887, 4],
    ['E_kin', 788.4, 3154, 4],
    ['P_mean', 78.84, 315.4, 4],
    ['P_drag', 380, 3040, 8],
    ['P_dry', 45.33, 90.67, 2],
    ['P_visc', 45.33, 181.3, 4],
    ['P_wet', 16, 64, 4]
  ];
  for (const [name, slow, fast, times] of rows) {
    test(`${name}: times ${times}`, () => {
      for (const stage of stages.keys()) {
        expect(rounded(numberAt(`${name}_1`, stage), 4)).toBe(slow);
        expect(rounded(numberAt(`${name}_2`, stage), 4)).toBe(fast);
        expect(numberAt(`x_${name}`, stage)).toBeCloseTo(times, 12);
      }
    });
  }

  test('times to reach the speed: 2 with a fixed torque, 4 with a fixed power', () => {
    expect(numberAt('x_t_T', 0)).toBeCloseTo(2, 12);
    expect(numberAt('x_t_P', 0)).toBeCloseTo(4, 12);
  });

  test('rotor power: 8 with drag alone, 7.24 with friction and spray', () => {
    expect(numberAt('x_P_rot', 0)).toBeCloseTo(8, 12);
    expect(rounded(numberAt('P_rot_1', 2), 4)).toBe(441.3);
    expect(rounded(numberAt('P_rot_2', 2), 4)).toBe(3195);
    expect(rounded(numberAt('x_P_rot', 2), 3)).toBe(7.24);
  });

  test('noise of round bars: 45 to 64 times, 16.6 to 18 dB', () => {
    expect(rounded(numberAt('x_noise_a', 0), 2)).toBe(45);
    expect(numberAt('x_noise_b', 0)).toBeCloseTo(64, 12);
    expect(rounded(numberAt('dL_a', 0), 3)).toBe(16.6);
    expect(rounded(numberAt('dL_b', 0), 3)).toBe(18.1);
  });
});

describe('friction plus drag at each speed of the table', () => {
  // v, friction, drag, total, share of drag, n, 2^n, true factor
  const printed = [
    ['5', '5.667', '0.9533', '6.62', '0.144', '1.288', '2.44', '2.86'],
    ['10', '11.33', '7.627', '18.96', '0.402', '1.805', '3.49', '4.41'],
    ['15', '17', '25.74', '42.74', '0.602', '2.204', '4.61', '5.61'],
    ['20', '22.67', '61.01', '83.68', '0.729', '2.458', '5.50', '6.37'],
    ['30', '34', '205.9', '239.9', '0.858', '2.717', '6.57', '7.15'],
    ['40', '45.33', '488.1', '533.4', '0.915', '2.830', '7.11', '7.49'],
    ['60', '68', '1647', '1715', '0.960', '2.921', '7.57', '7.76'],
    ['80', '90.67', '3905', '3996', '0.977', '2.955', '7.75', '7.86']
  ];
  const columns = ['speeds.v', 'P_f_at', 'P_d_at', 'P_at', 'phi_at', 'n_at', 'x_n_at', 'x_at'];
  for (const [column, name] of columns.entries()) {
    test(name, () => {
      const values = results.values.get(name)?.at[0]?.value;
      if (!Array.isArray(values)) throw new Error(`${name} is no column`);
      expect(values).toHaveLength(printed.length);
      for (const [row, cells] of printed.entries()) {
        const cell = cells[column] ?? '';
        const decimals = column < 4 ? null : (cell.split('.')[1] ?? '').length;
        const value = Number(values[row]);
        const shown = decimals === null ? rounded(value, 4) : Number(value.toFixed(decimals));
        expect(shown, `row ${row + 1}`).toBe(Number(cell));
      }
    });
  }

  test('the exponent is 2 at 12.19 m/s, the factor is 4 from 8.62 m/s', () => {
    expect(rounded(numberAt('v_equal', 0), 4)).toBe(12.19);
    expect(rounded(numberAt('v_four', 0), 3)).toBe(8.62);
    expect(numberAt('v_n_two', 0)).toBeCloseTo(numberAt('v_equal', 0), 9);
    expect(numberAt('v_x_four', 0)).toBeCloseTo(numberAt('v_four', 0), 9);
  });
});

// Source: a second program (Python, midpoint rule with 400,000 strips) on the same two tables.
describe('a smooth tube through the drag crisis', () => {
  test('power at 40 and 80 m/s, exponents, factors', () => {
    expect(rounded(numberAt('P_S_1', 0), 5)).toBe(1325.6);
    expect(rounded(numberAt('P_S_2', 0), 5)).toBe(8635.6);
    expect(rounded(numberAt('P_R_1', 0), 5)).toBe(1294.6);
    expect(rounded(numberAt('P_R_2', 0), 5)).toBe(6953.7);
    expect(rounded(numberAt('x_P_S', 0), 3)).toBe(6.51);
    expect(rounded(numberAt('x_P_R', 0), 3)).toBe(5.37);
    expect(rounded(numberAt('n_80_S', 0), 4)).toBe(2.006);
    expect(rounded(numberAt('n_80_R', 0), 4)).toBe(1.706);
    expect(rounded(numberAt('n_100_S', 0), 3)).toBe(1.49);
    expect(rounded(numberAt('n_100_R', 0), 3)).toBe(1.2);
  });
});
