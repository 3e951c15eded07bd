// One worksheet for each worked example: its inputs, its formulas, and beside each result the answer
// expected, so that both come out of the same engine in the same units.

import { block, inputLines } from '../worksheet.ts';

export interface Check {
  readonly id: string;
  readonly topic: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly expected: Readonly<Record<string, string>>;
  readonly rel_tol: number;
  readonly source: string;
  readonly page_or_equation: string;
  /** Rotor cases: formula by name, null where there is none; results without a formula are left out. */
  readonly mathjs?: Readonly<Record<string, string>> | null;
  /** Structure cases: lines in order. */
  readonly formula?: readonly string[];
}

export interface CheckSheet {
  readonly check: Check;
  readonly text: string;
  /** Results to compare: name of the result, name of the expected answer. */
  readonly pairs: readonly (readonly [string, string])[];
}

/** What a worksheet writes differently, in any case. */
export const translations: readonly { form: RegExp; instead: string; why: string }[] = [
  { form: /\blog\(/g, instead: 'ln(', why: 'ln or log10?' },
  { form: /\bfpm\b/g, instead: 'ft/min', why: 'not a unit of the table' }
];

/** Lines that a case needs in our language's own terms, by case and name. */
export const rewritten: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  // A truth value is not a number.
  'U-03': {
    zone: '1 + (v_rms > b_AB ? 1 : 0) + (v_rms > b_BC ? 1 : 0) + (v_rms > b_CD ? 1 : 0)'
  },
  // A speed in rpm over a frequency: turns or radians? Radians, says the pi.
  'red-01': { slip: '1 - (n*ratio to rad/s)/(pi*f)' },
  'red-02': { slip: '1 - (n*ratio to rad/s)/(pi*f)' }
};

/** The sheet of a case; null where it has nothing that can be computed today. */
export function sheetOf(check: Check): CheckSheet | null {
  const byHand = written[check.id];
  const lines = byHand?.calc ?? formulaLines(check);
  if (lines.length === 0) return null;
  const names = [...lines, ...(byHand?.solve ?? [])].map((line) => line.split(' = ')[0] ?? '');
  const expected = Object.entries(check.expected).filter(([name]) => names.includes(name));
  const answers = expected.map(([name, value]) => `expected_${name} = ${translated(value)}`);
  const inputs = Object.entries({ ...check.inputs, ...byHand?.inputs }).filter(
    ([name]) => name !== 'table'
  );
  const text = [
    `# ${check.id}: ${check.topic}`,
    '',
    `${check.source}; ${check.page_or_equation}.`,
    '',
    ...(byHand?.tables ?? []).map((name) => tables[name] ?? ''),
    block('inputs', inputLines(Object.fromEntries(inputs)).map(translated)),
    byHand?.solve ? block('solve', byHand.solve) : '',
    block('calc', lines),
    block('inputs The answer expected', answers)
  ].join('\n');
  return { check, text, pairs: expected.map(([name]) => [name, `expected_${name}`] as const) };
}

function translated(text: string): string {
  return translations.reduce((line, { form, instead }) => line.replace(form, instead), text);
}

function formulaLines({ id, mathjs, formula }: Check): string[] {
  const lines = formula ?? Object.entries(mathjs ?? {}).map((entry) => entry.join(' = '));
  return lines.map((line) => {
    const name = line.split(' = ')[0] ?? '';
    const instead = rewritten[id]?.[name];
    return instead === undefined ? translated(line) : `${name} = ${instead}`;
  });
}

/** A case whose formula is more than one expression, in the words of its book or of its topic. */
interface Written {
  readonly tables?: readonly string[];
  readonly inputs?: Readonly<Record<string, string>>;
  readonly solve?: readonly string[];
  readonly calc: readonly string[];
}

// Drag coefficient of a smooth round tube against Reynolds number. S: curve of DNV-RP-C205 (2025-04) as
// digitised in cybergalactic/MSS, HYDRO/cylinderDrag.m, commit 8acb5353. R: A. Roshko, J. Fluid Mech. 10 (1961) 345, as
// tabulated in WISDEM, wind_wave_drag.py.
// prettier-ignore
const tableS: readonly (readonly [number, number])[] = [
  [10211.0405297256, 1.20769], [15543.542321149, 1.20369], [24434.8681540938, 1.20823],
  [35719.8807222993, 1.2106], [60880.7508493947, 1.21093], [86174.743619061, 1.20901],
  [118086.431856986, 1.21134], [149262.25551642, 1.21148], [214708.876786124, 1.21171],
  [230940.445891927, 1.20109], [271581.385758833, 1.16918], [297098.185911873, 1.11163],
  [325252.018159382, 1.00926], [361942.848517458, 0.89411], [409798.156149477, 0.70855],
  [475302.392082697, 0.53155], [524734.960427919, 0.40785], [578921.928291835, 0.32683],
  [638292.879987135, 0.28422], [744046.36619192, 0.29711], [853237.628592033, 0.3228],
  [1068685.70450627, 0.38909], [1393381.37138896, 0.47033], [1831850.38455424, 0.53878],
  [2258395.50114555, 0.58372], [2899011.91287642, 0.62868], [3663279.03082383, 0.64803],
  [4937305.49552761, 0.67808]
];
// prettier-ignore
const tableR: readonly (readonly [number, number])[] = [
  [10, 4], [100, 2], [1000, 1.11], [1e4, 1.11], [2e4, 1.2], [1.22e5, 1.2], [2e5, 1.17], [3e5, 0.9],
  [4e5, 0.54], [5e5, 0.31], [1e6, 0.38], [1.5e6, 0.46], [2e6, 0.53], [2.5e6, 0.57], [3e6, 0.61],
  [3.5e6, 0.64], [4e6, 0.67], [5e6, 0.7], [1e7, 0.7]
];

const dragTable = (name: string, pairs: readonly (readonly [number, number])[]) =>
  block(`table ${name}`, ['Re, C_d', ...pairs.map((pair) => pair.join(', '))]);

const strips = (count: number) =>
  block('table strips', ['k', ...Array.from({ length: count }, (_, k) => String(k))]);

const tables: Readonly<Record<string, string>> = {
  S: dragTable('S', tableS),
  R_table: dragTable('R_table', tableR),
  strips10: strips(10),
  strips50: strips(50)
};

const interpolated = (table: string): Written => ({
  tables: [table],
  calc: [`lg = log10(${table}.Re)`, `C_d = interp_hold(log10(Re), lg, ${table}.C_d)`]
});

const midpoint = (table: string): Written => ({
  tables: [table],
  calc: [
    'dr = (r_a - r_h)/N_s',
    'r_k = r_h + (strips.k + 0.5)*dr',
    'P = n_arm*rho*C_d*d_a*(v_tip/R)^3*sum(r_k^3)*dr/2 to W'
  ]
});

/** Strip theory with the coefficient of each place's own Reynolds number. */
const alongArm = (table: string, outer: string): Written => ({
  tables: [table],
  calc: [
    `lg = log10(${table}.Re)`,
    `C_at(r, v) = interp_hold(log10(v/R*r*d_a/nu), lg, ${table}.C_d)`,
    `I_at(v) = integrate(C_at(r, v)*r^3, r, r_h, ${outer})`,
    'P_at(v) = n_arm*rho*d_a*(v/R)^3*I_at(v)/2',
    'P = P_at(v_tip) to W',
    `C_mean = 4*I_at(v_tip)/(${outer}^4 - r_h^4)`,
    'factor = P_at(2*v_tip)/P_at(v_tip)',
    'Re_tip = v_tip*d_a/nu',
    `C_tip = C_at(${outer}, v_tip)`
  ]
});

const written: Readonly<Record<string, Written>> = {
  'cd-01': interpolated('S'),
  'cd-02': interpolated('S'),
  'cd-03': interpolated('S'),
  'cd-04': interpolated('S'),
  'cd-05': interpolated('R_table'),
  'cd-06': interpolated('R_table'),
  'strip-02': midpoint('strips10'),
  'strip-03': midpoint('strips50'),
  'strip-05': alongArm('S', 'r_a'),
  'dbl-08': alongArm('S', 'R'),
  'dbl-09': alongArm('S', 'R'),
  'dbl-10': alongArm('S', 'R'),
  'dbl-11': alongArm('S', 'R'),
  'dbl-15': alongArm('R_table', 'R'),
  // Kloss against friction and square-law drag: the slip at which the motor stalls.
  'mot-08': {
    inputs: { s_try: '0.5 within 0.01 .. 1' },
    solve: ['s = s_try where M_mot == M_load'],
    calc: [
      's_N = 1 - n_N/(1500 rpm)',
      's_k = s_N*(lam + sqrt(lam^2 - 1))',
      'M_mot = 2*lam*T_N/(s_try/s_k + s_k/s_try) to N m',
      'w = (1 - s_try)*(1500 rpm)/ratio to rad/s',
      'M_load = (T_f + k*w^2)/(ratio*eta_b) to N m',
      'w_s = (1 - s)*(1500 rpm)/ratio to rad/s',
      'M = (T_f + k*w_s^2)/(ratio*eta_b) to N m',
      'v = w_s*R to m/s'
    ]
  },
  // Angular speeds stated in 1/s say what they count, so that they may meet others.
  'mo-15': {
    inputs: { omega: '100 rad/s' },
    calc: ['t = integrate(J_r*w/(P_m - k*w^3), w, 0 rad/s, omega) to s', 'w_inf = (P_m/k)^(1/3)']
  },
  'mo-20': {
    inputs: { omega: '106.66666667 rad/s' },
    calc: ['t = integrate(J_r/(T_m - T_f - c_1*w - k*w^2), w, 0 rad/s, omega) to s']
  },
  'mo-21': {
    inputs: { omega: '106.6666 rad/s' },
    calc: [
      's_at(w) = 1 - w*ratio/n_s',
      'T_at(w) = ratio*eta_b*2*T_k/(s_at(w)/s_k + s_k/s_at(w))',
      't = integrate(J_r/(T_at(w) - T_f - c_1*w - k*w^2), w, 0 rad/s, omega) to s'
    ]
  }
};
