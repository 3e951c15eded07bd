// The dimension rule of every built-in function: what it takes, what it gives, what it refuses.

import { languageFunctions } from '#lib/language/index.ts';
import { coherentUnitText } from '#lib/units/index.ts';
import { describe, expect, test } from 'vitest';
import { checkWithTables } from './check.fixture.ts';
import { checkedFunctions } from './functions.ts';

test('the check has a rule for the functions of the language, and for no other', () => {
  expect([...checkedFunctions()].sort()).toEqual(languageFunctions.map(({ name }) => name).sort());
});

const given = [
  'L = 3 m',
  'b = 200 mm',
  't_1 = 5 s',
  'share_0 = 0.5',
  'swing = 30 deg',
  'v = 4 m/s',
  'is_hot = 3 > 2'
];

/** Call, unit of its result in coherent base units ('1' for a plain number). */
const right: readonly (readonly [function_: string, call: string, unit: string])[] = [
  ['sqrt', 'sqrt(L * b)', 'm'],
  ['sqrt', 'sqrt(2 * g_n * L)', 'm/s'],
  ['sqrt', 'sqrt(share_0)', '1'],
  ['cbrt', 'cbrt(L^3)', 'm'],
  ['abs', 'abs(L - b)', 'm'],
  ['exp', 'exp(-L / b)', '1'],
  ['exp', 'exp(swing)', '1'],
  ['ln', 'ln(L / b)', '1'],
  ['log10', 'log10(share_0)', '1'],
  ['log2', 'log2(8)', '1'],
  ['sin', 'sin(swing)', '1'],
  ['cos', 'cos(0.3)', '1'],
  ['tan', 'tan(swing)', '1'],
  ['asin', 'asin(b / L)', 'rad'],
  ['acos', 'acos(share_0)', 'rad'],
  ['atan', 'atan(b / L)', 'rad'],
  ['atan2', 'atan2(b, L)', 'rad'],
  ['sinh', 'sinh(share_0)', '1'],
  ['cosh', 'cosh(share_0)', '1'],
  ['tanh', 'tanh(share_0)', '1'],
  ['asinh', 'asinh(share_0)', '1'],
  ['acosh', 'acosh(2)', '1'],
  ['atanh', 'atanh(share_0)', '1'],
  ['min', 'min(L, b)', 'm'],
  ['min', 'min(pump.Q)', 'm^3/s'],
  ['max', 'max(L, b, 3 cm)', 'm'],
  ['max', 'max(pump.p)', 'Pa'],
  ['max', 'max(L, 0)', 'm'],
  ['hypot', 'hypot(L, b)', 'm'],
  ['floor', 'floor(L / b)', '1'],
  ['ceil', 'ceil(share_0)', '1'],
  ['round', 'round(share_0)', '1'],
  ['round', 'round(L, 5 mm)', 'm'],
  ['mod', 'mod(L, b)', 'm'],
  ['sign', 'sign(L - b)', '1'],
  ['clamp', 'clamp(L, 0, b)', 'm'],
  ['sum', 'sum(pump.p)', 'Pa'],
  ['mean', 'mean(pump.p)', 'Pa'],
  ['sd', 'sd(pump.p)', 'Pa'],
  ['count', 'count(pump.p)', '1'],
  ['first', 'first(pump.Q)', 'm^3/s'],
  ['last', 'last(pump.Q)', 'm^3/s'],
  ['interp', 'interp(12 L/min, pump.Q, pump.p)', 'Pa'],
  ['interp_hold', 'interp_hold(12 L/min, pump.Q, pump.p)', 'Pa'],
  ['interp_spline', 'interp_spline(12 L/min, pump.Q, pump.p)', 'Pa'],
  ['integrate', 'integrate(x, x, 0 m, L)', 'm^2'],
  ['integrate', 'integrate(v * x / L, x, 0 s, t_1)', 's'],
  ['integrate', 'integrate(exp(-x / t_1), x, 0 s, inf)', 's']
];

/** Call, code of what is said, text that is marked. */
const wrong: readonly (readonly [function_: string, call: string, code: string, marked: string])[] =
  [
    ['sqrt', 'sqrt(is_hot)', 'units/mismatch', 'is_hot'],
    ['cbrt', 'cbrt(pump.name)', 'units/mismatch', 'pump.name'],
    ['abs', 'abs(is_hot)', 'units/mismatch', 'is_hot'],
    ['sign', 'sign(pump.name)', 'units/mismatch', 'pump.name'],
    ...[
      'exp',
      'ln',
      'log10',
      'log2',
      'sinh',
      'cosh',
      'tanh',
      'asinh',
      'acosh',
      'atanh',
      'asin',
      'acos',
      'atan',
      'sin',
      'cos',
      'tan',
      'floor',
      'ceil',
      'round'
    ].map((name) => [name, `${name}(L)`, 'units/function-domain', 'L'] as const),
    ['atan2', 'atan2(L, t_1)', 'units/mismatch', 'L, t_1'],
    ['hypot', 'hypot(L, t_1)', 'units/mismatch', 'L, t_1'],
    ['mod', 'mod(L, 3)', 'units/mismatch', 'L, 3'],
    ['clamp', 'clamp(L, 0, t_1)', 'units/mismatch', 'L, 0, t_1'],
    ['min', 'min(L, t_1)', 'units/mismatch', 'L, t_1'],
    ['min', 'min(L)', 'units/function-domain', 'L'],
    ['max', 'max(L, b, t_1)', 'units/mismatch', 'L, b, t_1'],
    ['round', 'round(L, 1 s)', 'units/mismatch', 'L, 1 s'],
    ...['sum', 'mean', 'sd', 'count', 'first', 'last'].map(
      (name) => [name, `${name}(L)`, 'units/function-domain', 'L'] as const
    ),
    ['mean', 'mean(pump.name)', 'units/mismatch', 'pump.name'],
    ...['interp', 'interp_hold', 'interp_spline'].flatMap((name) => [
      [name, `${name}(L, pump.Q, pump.p)`, 'units/mismatch', 'L, pump.Q'] as const,
      [name, `${name}(L, b, pump.p)`, 'units/function-domain', 'b'] as const,
      [name, `${name}(1, other.x, pump.p)`, 'units/mismatch', 'pump.p'] as const
    ]),
    ['integrate', 'integrate(x, x, 0 m, t_1)', 'units/mismatch', '0 m, t_1'],
    ['integrate', 'integrate(x + t_1, x, 0 m, L)', 'units/mismatch', 'x + t_1'],
    ['integrate', 'integrate(pump.p, x, 0 m, L)', 'units/function-domain', 'pump.p']
  ];

const calledIn = (call: string) => checkWithTables(...given, `y = ${call}`);

describe('what it gives', () => {
  test.each(right)('%s: %s is in %s', (_, call, unit) => {
    const checked = calledIn(call);
    expect(checked.said).toEqual([]);
    expect(coherentUnitText(checked.quantity('y').dimension)).toBe(unit);
  });

  test('every function stands in this table', () => {
    const here = new Set(right.map(([name]) => name));
    expect(languageFunctions.map(({ name }) => name).filter((name) => !here.has(name))).toEqual([]);
  });
});

describe('what it refuses', () => {
  test.each(wrong)('%s: %s is %s at "%s"', (_, call, code, marked) => {
    const { problems } = calledIn(call);
    const text = `y = ${call}`;
    expect(
      problems.map((found) => [found.code, text.slice(found.at.from - 1, found.at.to - 1)])
    ).toEqual([[code, marked]]);
  });

  test('every function refuses something', () => {
    const here = new Set(wrong.map(([name]) => name));
    expect(languageFunctions.map(({ name }) => name).filter((name) => !here.has(name))).toEqual([]);
  });
});

describe('rows', () => {
  test.each([
    ['sqrt(pump.p)', 3],
    ['abs(pump.Q)', 3],
    ['max(pump.p, 3 bar)', 3],
    ['interp(pump.Q, pump.Q, pump.p)', 3],
    ['mean(pump.p)', null],
    ['max(pump.p)', null],
    ['atan2(pump.Q, 3 L/min)', 3],
    ['round(pump.p, 1 bar)', 3]
  ])('%s has %s', (call, rows) => expect(calledIn(call).quantity('y').rows).toBe(rows));

  test('two columns of different tables are refused', () => {
    const [found] = calledIn('atan2(pump.Q / (1 L/min), other.x)').problems;
    expect(found?.message).toBe(
      'pump.Q / (1 L/min) has 3 rows, other.x has 2: they cannot be combined row by row.'
    );
  });
});

describe('own functions', () => {
  const own = ['area(d) = pi * d^2 / 4', 'sum_of(a, c) = a + c'];
  test('are checked with the kinds they are called with', () => {
    expect(checkWithTables(...own, 'y = area(3 mm)').said).toEqual([]);
    expect(checkWithTables(...own, 'y = area(3)').quantity('y').dimension.key).toBe(
      checkWithTables('y = 1').quantity('y').dimension.key
    );
    expect(
      coherentUnitText(checkWithTables(...own, 'y = sum_of(3 mm, 4 m)').quantity('y').dimension)
    ).toBe('m');
  });

  test('say at the call what does not fit in the body', () => {
    const [found] = checkWithTables(...own, 'y = 2 * sum_of(3 mm, 4 s)').problems;
    expect(found?.code).toBe('units/mismatch');
    expect(found?.message).toBe(
      'sum_of(3 mm, 4 s): a (length, mm) and c (time, s) cannot be added.'
    );
    expect(found?.at).toMatchObject({ from: 9, to: 26 });
  });

  test('shadow names of the sheet with a note', () => {
    expect(checkWithTables('d = 3 mm', 'area(d) = d^2', 'y = area(2 m)').said).toEqual([
      'note line/duplicate-name'
    ]);
  });
});
