// The story of the spray rig, whole: every value of its table of results, every verdict of its limits.
// Source of the figures: computed with Python and mathjs beside the specification; invented scenario.
// The figures of the last two tests were computed with Python by a second program, written for them.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compute, type LimitResult, type Results, type ValueResult } from '#lib/sheet/index.ts';

const stages = ['sketch', 'first-run', 'upgrade', 'refined'];
const path = join(import.meta.dirname, '../../worksheets/spray-arm-rig.md');
const results: Results = compute(readFileSync(path, 'utf8'));

/** name | unit | a value per stage, to the digits printed. */
const printedValues = `
rho_air  | kg/m^3   | 1.199 | 1.199 | 1.167 | 1.176
mu_air   | Pa s     | 1.813e-5 | 1.813e-5 | 1.842e-5 | 1.832e-5
a_air    | m/s      | 343.2 | 343.2 | 346.7 | 345.6
Mach     | 1        | 0.2331 | 0.1398 | 0.2307 | 0.2894
k_arm    | N m s^2  | 6.210e-4 | 0.002484 | 0.001934 | 4.386e-4
k_c      | N m s^2  | 1.897e-4 | 7.334e-4 | 5.710e-4 | 1.737e-4
k_drag   | N m s^2  | 8.107e-4 | 0.003218 | 0.002505 | 6.123e-4
w_con    | rad/s    | 106.7 | 52 | 106.7 | 106.7
n_con    | rpm      | 1019 | 496.6 | 1019 | 1019
T_con    | N m      | 9.524 | 9.55 | 29.95 | 8.417
P_con    | W        | 1069 | 522.7 | 3363 | 945
w_top    | rad/s    | 106.7 | 64 | 106.7 | 133.3
n_top    | rpm      | 1019 | 611.2 | 1019 | 1273
f_rot    | Hz       | 16.98 | 10.19 | 16.98 | 21.22
Re_a     | 1        | 1.278e5 | 76697 | 1.225e5 | 1.675e5
T_drag   | N m      | 9.224 | 13.18 | 28.5 | 10.89
T_spray  | N m      | 0 | 0 | 0.6 | 0.75
T_load   | N m      | 9.524 | 14.03 | 29.95 | 12.49
P_arm    | W        | 753.7 | 651.2 | 2347 | 1040
P_c      | W        | 230.2 | 192.3 | 693 | 411.7
P_spray  | W        | 0 | 0 | 64 | 100
P_fric   | W        | 32 | 54.4 | 90.67 | 113.3
P_load   | W        | 1016 | 897.9 | 3195 | 1665
P_top    | W        | 1069 | 945.1 | 3363 | 1752
n_exp    | 1        | 2.937 | 2.879 | 2.923 | 2.804
x_dbl    | 1        | 7.658 | 7.355 | 7.585 | 6.983
T_N      | N m      | 7.503 | 7.503 | 36.22 | 7.397
s_N      | 1        | 0.06667 | 0.06667 | 0.03333 | 0.05333
M_con    | N m      | 7.291 | 7.311 | 22.93 | 6.443
M_top    | N m      | 7.291 | 10.74 | 22.93 | 9.558
f_0      | Hz       | 46.69 | 28.01 | 46.69 | 58.36
f_s      | Hz       | 3.239 | 4.771 | 1.055 | 3.446
f_ctl    | Hz       | 49.92 | 32.78 | 47.74 | 64
x_flux   | 1        | 1 | 1 | 1 | 0.7812
M_brk    | N m      | 13.51 | 13.51 | 94.18 | 13.09
I_con    | A        | 7.266 | 7.278 | 7.911 | 4.04
I_top    | A        | 7.266 | 9.586 | 7.911 | 6.212
P_loss   | W        | 386.5 | 386.5 | 771.4 | 251.4
eta_mot  | 1        | 0.7412 | 0.6104 | 0.8735 | 0.7735
S_in     | VA       | 2337 | 2507 | 6170 | 3371
I_in     | A        | 10.16 | 10.9 | 26.83 | 14.66
I_pk     | A        | 0 | 0 | 84.82 | 0
v_lim    | m/s      | 81.19 | 39.56 | 102.1 | 89.98
th_con   | K        | 78.13 | 78.3 | 55.39 | 71.83
th_top   | K        | 78.13 | 115.3 | 55.39 | 131.7
t_over   | s        | no limit | 70.51 | no limit | 220.1
m_l      | kg/m     | 1.134 | 1.134 | 1.134 | 1.484
J_rot    | kg m^2   | 0.4303 | 0.5203 | 0.5203 | 0.6316
J_all    | kg m^2   | 0.436 | 0.526 | 0.5543 | 0.6377
E_kin    | J        | 2480 | 1077 | 3154 | 5668
T_acc    | N m      | 11.46 | 13.85 | 46.46 | 13.64
w_inf    | rad/s    | 118.9 | 65.61 | 136.2 | 149.3
t_acc    | s        | 6.591 | 5.465 | 1.712 | 10.03
T_stop   | N m      | 4.3 | 0.85 | 12.85 | 3.85
t_coast  | s        | 38.93 | 13.3 | 16.82 | 36.29
t_stop   | s        | 7.176 | 13.3 | 3.026 | 13.58
T_des    | N m      | 9.004 | 12.89 | 36.22 | 11.47
F_eff    | N        | 225.1 | 322.2 | 905.5 | 286.7
F_1      | N        | 281.4 | 402.7 | 1132 | 358.4
F_sh     | N        | 450.2 | 644.4 | 1811 | 573.5
T_pk     | N m      | 18.57 | 18.57 | 129.5 | 29.5
p_k      | MPa      | 23.58 | 23.58 | 164.4 | 37.46
s_dead   | MPa      | 13.03 | 13.03 | 39.55 | 11.69
s_jolt   | MPa      | 61.61 | 71.32 | 209.2 | 63.73
F_rad    | kN       | 0.6077 | 0.8699 | 2.445 | 0.7742
E_c      | J        | 320 | 207.4 | 576 | 1000
t_brl    | mm       | 1.467 | 1.098 | 2.17 | 3.135
t_need   | mm       | 1.833 | 1.373 | 2.713 | 3.919
F_root   | N        | 4204 | 1759 | 4887 | 9518
tau_p    | MPa      | 41.82 | 17.5 | 48.61 | 94.68
M_all    | kg       | 95 | 95 | 124.5 | 93.5
f_mode   | Hz       | 25.82 | 24 | 20.96 | 31.23
x_mode   | 1        | 1.521 | 2.356 | 1.235 | 1.472
r_f      | 1        | 0.6575 | 0.4244 | 0.8098 | 0.6795
X_vib    | um       | 7.983 | 4.622 | 30.08 | 5.477
v_vib    | mm/s     | 0.6021 | 0.2092 | 2.269 | 0.5164
L_A      | 1        | 82.56 | 77.35 | 89.56 | 83.89
m_lift   | kg       | 24 | 24 | 44 | 24
dT_air   | K        | 2.81 | 2.484 | 9.081 | 4.694
`;

/** label | left / right = utilisation, to the digits printed, and whether it fails. */
const printedLimits = `
tip speed | 80 m/s / 80 m/s = 1.00 | 39 m/s / 80 m/s = 2.05 fails | 80 m/s / 80 m/s = 1.00 | 80 m/s / 80 m/s = 1.00
coupon mass | 0.1 kg / 0.2 kg = 0.50 | 0.18 kg / 0.2 kg = 0.90 | 0.18 kg / 0.2 kg = 0.90 | 0.2 kg / 0.2 kg = 1.00
floor area | 1.88 m / 2 m = 0.94 | 1.88 m / 2 m = 0.94 | 1.98 m / 2 m = 0.99 | 1.88 m / 2 m = 0.94
heaviest lift | 24 kg / 33 kg = 0.73 | 24 kg / 33 kg = 0.73 | 44 kg / 33 kg = 1.33 fails | 24 kg / 33 kg = 0.73
outlet | 2336.6 VA / 3.68 kVA = 0.63 | 2507.2 VA / 3.68 kVA = 0.68 | 6169.8 VA / 3.68 kVA = 1.68 fails | 3371.2 VA / 3.68 kVA = 0.92
time to speed | 6.5913 s / 30 s = 0.22 | 5.4654 s / 30 s = 0.18 | 1.7119 s / 30 s = 0.06 | 10.029 s / 30 s = 0.33
stopping time | 7.1755 s / 20 s = 0.36 | 13.297 s / 20 s = 0.66 | 3.0264 s / 20 s = 0.15 | 13.584 s / 20 s = 0.68
noise | 82.6 / 85 dB: margin +2.4 | 77.4 / 85 dB: margin +7.6 | 89.6 / 85 dB: margin -4.6 fails | 83.9 / 85 dB: margin +1.1
vibration | 0.602 mm/s / 4.5 mm/s = 0.13 | 0.209 mm/s / 4.5 mm/s = 0.05 | 2.27 mm/s / 4.5 mm/s = 0.50 | 0.516 mm/s / 4.5 mm/s = 0.11
budget | 1150 EUR / 2200 EUR = 0.52 | 1240 EUR / 2200 EUR = 0.56 | 1860 EUR / 2200 EUR = 0.85 | 2150 EUR / 2200 EUR = 0.98
build time | 16 day / 30 day = 0.53 | 20 day / 30 day = 0.67 | 24 day / 30 day = 0.80 | 29 day / 30 day = 0.97
motor torque, continuous | 7.2911 N m / 7.503 N m = 0.97 | 7.3112 N m / 7.503 N m = 0.97 | 22.929 N m / 36.221 N m = 0.63 | 6.4434 N m / 7.3973 N m = 0.87
motor power, continuous | 1069.4 W / 1.1 kW = 0.97 | 522.75 W / 1.1 kW = 0.48 | 3362.9 W / 5.5 kW = 0.61 | 945.03 W / 1.1 kW = 0.86
motor breakdown margin | 9.1139 N m / 13.505 N m = 0.67 | 13.425 N m / 13.505 N m = 0.99 | 28.661 N m / 94.176 N m = 0.30 | 11.948 N m / 13.092 N m = 0.91
motor overrun time | 0 s / no limit = 0.00 | 20 s / 70.509 s = 0.28 | 0 s / no limit = 0.00 | 180 s / 220.11 s = 0.82
controller current | 7.2656 A / 10 A = 0.73 | 9.5861 A / 10 A = 0.96 | 7.9114 A / 13 A = 0.61 | 6.2125 A / 7 A = 0.89
brake peak against breaker | 0 A / 67.882 A = 0.00 | 0 A / 67.882 A = 0.00 | 84.823 A / 67.882 A = 1.25 fails | 0 A / 67.882 A = 0.00
motor pulley | 9.0036 N m / 16 N m = 0.56 | 12.888 N m / 16 N m = 0.81 | 36.221 N m / 16 N m = 2.26 fails | 11.47 N m / 16 N m = 0.72
belt tension | 281.36 N / 550 N = 0.51 | 402.75 N / 550 N = 0.73 | 1131.9 N / 550 N = 2.06 fails | 358.44 N / 550 N = 0.65
key pressure | 23.581 MPa / 60 MPa = 0.39 | 23.581 MPa / 60 MPa = 0.39 | 164.43 MPa / 60 MPa = 2.74 fails | 37.456 MPa / 60 MPa = 0.62
plate, dead weight | 13.035 MPa / 157 MPa = 0.08 | 13.035 MPa / 157 MPa = 0.08 | 39.553 MPa / 157 MPa = 0.25 | 11.686 MPa / 157 MPa = 0.07
plate, jolt | 61.613 MPa / 157 MPa = 0.39 | 71.324 MPa / 157 MPa = 0.45 | 209.21 MPa / 157 MPa = 1.33 fails | 63.734 MPa / 157 MPa = 0.41
bearing housing | 0.60774 kN / 1.6 kN = 0.38 | 0.86993 kN / 1.6 kN = 0.54 | 2.4449 kN / 1.6 kN = 1.53 fails | 0.77422 kN / 1.6 kN = 0.48
guard thickness | 1.8333 mm / 2 mm = 0.92 | 1.3728 mm / 2 mm = 0.69 | 2.7128 mm / 2 mm = 1.36 fails | 3.9186 mm / 5 mm = 0.78
retention pin | 41.82 MPa / 100 MPa = 0.42 | 17.5 MPa / 100 MPa = 0.17 | 48.611 MPa / 100 MPa = 0.49 | 94.675 MPa / 100 MPa = 0.95
mode separation | 1.5208 / 1.25 = 0.82 | 2.3561 / 1.25 = 0.53 | 1.2348 / 1.25 = 1.01 fails | 1.4717 / 1.25 = 0.85
Mach number | 0.23308 / 0.3 = 0.78 | 0.13985 / 0.3 = 0.47 | 0.23073 / 0.3 = 0.77 | 0.28938 / 0.3 = 0.96
`;

/** Rows of a table above, split at its bars. */
const rowsOf = (table: string): string[][] =>
  table
    .trim()
    .split('\n')
    .map((row) => row.split('|').map((cell) => cell.trim()));

/** Digits of a printed figure that are not leading zeros; a plain "52" still stands for four. */
const digitsOf = (printed: string): number =>
  Math.max(
    4,
    printed
      .replace(/e.*$/, '')
      .replace(/^[-0.]+/, '')
      .replace('.', '').length
  );

/** x as a figure of so many significant digits. */
const rounded = (x: number, digits: number): number => Number(x.toPrecision(digits));

function valueOf(name: string): ValueResult {
  const value = results.values.get(name);
  if (!value) throw new Error(`the sheet has no ${name}`);
  return value;
}

function limitOf(label: string): LimitResult {
  const limit = results.limits.get(label);
  if (!limit) throw new Error(`the sheet has no limit "${label}"`);
  return limit;
}

/** The value at a stage, in the row's own unit. */
function numberAt(name: string, stage: number): number {
  const value = valueOf(name).at[stage]?.value;
  if (typeof value !== 'number')
    throw new Error(`${name} is no number at ${stages[stage] ?? stage}`);
  return value;
}

test('the sheet has its four stages and no mistake', () => {
  expect(results.stages.map(({ id }) => id)).toEqual(stages);
  expect(results.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
});

describe('every printed value is reproduced to its digits', () => {
  for (const [name = '', unit = '', ...printed] of rowsOf(printedValues)) {
    test(`${name} [${unit}]`, () => {
      expect(valueOf(name).unit?.text).toBe(unit);
      expect(printed).toHaveLength(stages.length);
      for (const [stage, figure] of printed.entries()) {
        const computed = numberAt(name, stage);
        if (figure === 'no limit') expect(computed).toBe(36_000);
        else expect(rounded(computed, digitsOf(figure))).toBe(Number(figure));
      }
    });
  }
});

describe('every printed verdict is reproduced', () => {
  for (const [label = '', ...printed] of rowsOf(printedLimits)) {
    test(label, () => {
      const limit = limitOf(label);
      expect(printed).toHaveLength(stages.length);
      for (const [stage, text] of printed.entries()) {
        const at = limit.at[stage];
        if (!at) throw new Error(`no verdict at ${stages[stage] ?? stage}`);
        const fails = text.endsWith('fails');
        expect(['over', 'short'].includes(at.status), `${stages[stage] ?? ''}: ${at.status}`).toBe(
          fails
        );
        if (!fails) expect(['within', 'close', 'met']).toContain(at.status);
        checkFigures(at, text);
      }
    });
  }

  function checkFigures(at: LimitResult['at'][number], text: string): void {
    const level = /margin ([-+][\d.]+)/.exec(text);
    if (level) {
      expect(at.utilisation).toBeNull();
      expect(Number(at.margin?.toFixed(1))).toBe(Number(level[1]));
      return;
    }
    const utilisation = / = ([\d.]+)/.exec(text)?.[1] ?? '';
    const left = /^[\d.]+/.exec(text)?.[0] ?? '';
    // The unit of the row is the limit's own; the printed left side is compared through its digits.
    expect(mantissa(at.left ?? NaN, left)).toBe(mantissa(Number(left), left));
    // Nothing is used of a capacity by a load of 0: no ratio, the whole capacity is the margin.
    if (at.left === 0) expect(at.utilisation ?? 0).toBe(0);
    else expect(at.utilisation?.toFixed(2)).toBe(utilisation);
  }

  /** The figure without its power of ten, to the digits printed (a row may be in kN or in N). */
  function mantissa(x: number, printed: string): string {
    return x.toExponential(Math.max(2, digitsIn(printed)) - 1).replace(/e.*$/, '');
  }

  function digitsIn(printed: string): number {
    return printed.replace(/^[-0.]+/, '').replace('.', '').length;
  }
});

test('the bigger motor outgrows eleven numbers, and fairing the arms brings every one back', () => {
  const story = rowsOf(printedLimits).map(([label = '']) => label);
  const over = (stage: number): string[] =>
    story.filter((label) => ['over', 'short'].includes(limitOf(label).at[stage]?.status ?? ''));
  expect(over(0)).toEqual([]);
  expect(over(1)).toEqual(['tip speed']);
  expect(over(2)).toHaveLength(11);
  expect(over(3)).toEqual([]);
});

test('the limits that hold and contain are judged at the unfavourable end', () => {
  expect(limitOf('guard thickness').tags.safety).toBe(true);
  expect(limitOf('retention pin').tags.safety).toBe(true);
  expect(results.stages[2]?.stopsTheRun).toContain('guard thickness');
});

// A second program: the roots of k w^2 + q R^2 w + T_f = T_N ratio eta_b in closed form.
test('the speed at rated torque found by the solve agrees with the closed form', () => {
  for (const [stage, v] of [81.19135, 39.55768, 101.3074, 86.59818].entries()) {
    expect(rounded(numberAt('v_hold', stage), 7)).toBe(v);
  }
  expect(numberAt('v_hold', 1)).toBeCloseTo(numberAt('v_lim', 1), 9);
});

test('judged harder: whole arm, twice the pull, the highest speed that the drive can reach', () => {
  const printed: Record<string, number[]> = {
    v_drv: [89.174, 49.209, 102.15, 111.96],
    E_arm: [1414.8, 527.69, 2273.7, 3351.5],
    t_arm: [4.9386, 2.5589, 6.7758, 8.7759],
    tau_2: [103.92, 36.785, 158.5, 237.34]
  };
  for (const [name, figures] of Object.entries(printed)) {
    for (const [stage, figure] of figures.entries()) {
      expect(rounded(numberAt(name, stage), 5), name).toBe(figure);
    }
  }
  expect(limitOf('guard, whole arm').at.map(({ status }) => status)).toEqual(
    Array(4).fill('fails')
  );
});

// The table of the decision, with 0.0032 kg m^2 for the motor's inertia; the specification prints
// 3.36, 5.11, 2.47, 1.45 and 0.939 kW, and 4.89, 5.8, 6.2, 5.92 and 6.09 kN.
test('the choice of arm reproduces the table of the decision', () => {
  const choice = results.choices.get('idea');
  const upgrade = choice?.at[2];
  expect(choice?.rowNames[upgrade?.row ?? -1]).toBe(
    'fairing on the arms, tail cone on the coupons'
  );
  expect(upgrade?.ranking).toEqual([4, 3]);
  expect(upgrade?.excludedBy.map((conditions) => conditions.length === 0)).toEqual([
    false, false, false, true, true
  ]); // prettier-ignore
  expect(rounded(numberAt('idea.P_need', 2), 3)).toBe(0.939);
  expect(rounded(numberAt('idea.F_pull', 2), 3)).toBe(6.09);
});
