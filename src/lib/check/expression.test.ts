// The static check of expressions: sums, products, powers, relations, conditions and columns, with the
// full text of what is said.

import { coherentUnitText } from '#lib/units/index.ts';
import { describe, expect, test } from 'vitest';
import { checkLines, checkWithTables, type Checked } from './check.fixture.ts';

const given = [
  'T_shaft = 12 N m', 'P_drag = 900 W', 'omega = 90 rad/s', 'L = 3 m', 'b = 200 mm', 'm_arm = 2 kg', 't_1 = 5 s',
  'share_0 = 0.5', 'v = 4 m/s', 'F_c = 50 N', 'is_hot = L > b'
]; // prettier-ignore

const check = (line: string): Checked => checkLines(...given, line);

/** 'marked text | message | hint', for each problem. */
function texts(line: string): readonly string[] {
  return check(line).problems.map(
    ({ at, message, hint }) => `${line.slice(at.from - 1, at.to - 1)} | ${message} | ${hint ?? ''}`
  );
}

describe('sums', () => {
  test.each<readonly [string, readonly string[]]>([
    ['y = L + b', []],
    ['y = L + 0', []],
    ['y = 0 - L', []],
    ['y = L * b + 2 m^2', []],
    ['y = T_shaft + 3 J', []],
    ['y = T_shaft * omega + P_drag', []],
    [
      'y = T_shaft + P_drag',
      [
        'T_shaft + P_drag | T_shaft (torque or energy, N m) and P_drag (power, W) cannot be added. | Did you mean T_shaft * omega?'
      ]
    ],
    [
      'y = P_drag - T_shaft',
      [
        'P_drag - T_shaft | P_drag (power, W) and T_shaft (torque or energy, N m) cannot be subtracted. | Did you mean T_shaft * omega?'
      ]
    ],
    ['y = L + 3', ['L + 3 | L (length, m) and 3 (plain number) cannot be added. | ']],
    [
      'y = 1 + (b + t_1) * 2',
      ['b + t_1 | b (length, mm) and t_1 (time, s) cannot be added. | Did you mean t_1 * v?']
    ],
    ['y = b + m_arm', ['b + m_arm | b (length, mm) and m_arm (mass, kg) cannot be added. | ']],
    [
      'y = L + is_hot',
      ['is_hot | is_hot is a condition, not a number. | Write a ? b : c to make a number of it.']
    ]
  ])('%s', (line, said) => expect(texts(line)).toEqual(said));

  test('a mistake is said once, and what contains it adds nothing', () => {
    expect(texts('y = sqrt((L + t_1) * 2) + 3 kg')).toHaveLength(1);
  });

  test('two mistakes in one line are both said', () => {
    expect(check('y = (L + t_1) * (m_arm + b)').said).toEqual(['error units/mismatch']);
  });
});

describe('products and powers', () => {
  test.each([
    ['L * b', 'm^2'],
    ['L / t_1', 'm/s'],
    ['L / b', '1'],
    ['m_arm * v^2 / L', 'N'],
    ['F_c * L', 'N*m'],
    ['m_arm * v^2 / 2', 'J'],
    ['L^2', 'm^2'],
    ['(L^2 + b^2)^0.5', 'm'],
    ['L^-1', '1/m'],
    ['(L^3)^(1/3)', 'm'],
    ['-L', 'm'],
    ['2^share_0', '1']
  ])('%s is in %s', (expression, unit) => {
    const found = check(`y = ${expression}`);
    expect(found.said).toEqual([]);
    expect(found.quantity('y').dimension).toBe(
      check(
        `y = 1 ${unit.replace('*', ' ')}`.replace('1 1/m', '1 m^-1').replace(/1 1$/u, '1')
      ).quantity('y').dimension
    );
  });

  test.each<readonly [string, readonly string[]]>([
    [
      'y = L^share_0',
      [
        'share_0 | L (length, m) has a dimension, so its exponent must be written as a number, not as share_0. | Write the number, or divide L by its unit first.'
      ]
    ],
    [
      'y = 2^L',
      [
        'L | An exponent is a plain number; L (length, m) is none. | Divide it by a value of its own kind.'
      ]
    ],
    [
      'y = is_hot * 2',
      ['is_hot | is_hot is a condition, not a number. | Write a ? b : c to make a number of it.']
    ]
  ])('%s', (line, said) => expect(texts(line)).toEqual(said));
});

describe('relations and conditions', () => {
  test.each<readonly [string, readonly string[]]>([
    ['y = L > b', []],
    ['y = 1 m <= L < 5 m', []],
    ['y = L > 0', []],
    ['y = L > 2 m and b < 3 m or not is_hot', []],
    ['y = share_0 > 1 ? L : b', []],
    ['y = share_0 > 1 ? L : 0', []],
    ['y = is_hot ? 1 : 2', []],
    [
      'y = L > t_1',
      ['L > t_1 | L (length, m) and t_1 (time, s) cannot be compared. | Did you mean t_1 * v?']
    ],
    ['y = 1 m <= L < 5 s', ['L < 5 s | L (length, m) and 5 s (time, s) cannot be compared. | ']],
    [
      'y = L and is_hot',
      ['L | and wants a condition (yes or no); L is none. | Write a comparison.']
    ],
    [
      'y = not (L)',
      ['(L) | not wants a condition (yes or no); (L) is none. | Write a comparison.']
    ],
    ['y = L ? 1 : 2', ['L | ? : wants a condition (yes or no); L is none. | Write a comparison.']],
    [
      'y = is_hot ? L : t_1',
      [
        'L : t_1 | L (length, m) and t_1 (time, s) cannot be branches of one choice. | Did you mean t_1 * v?'
      ]
    ],
    [
      'y = is_hot ? L : is_hot',
      [
        'is_hot ? L : is_hot | The two branches differ: L (length, m) and is_hot (condition). | Give both the same dimension.'
      ]
    ],
    [
      'y = L == b',
      [
        'L == b | L == b compares computed values exactly, to the last digit. | Compare with a band, as in abs(a - b) < 0.1 mm.'
      ]
    ],
    ['y = L == 3 m', []]
  ])('%s', (line, said) => expect(texts(line)).toEqual(said));
});

describe('shown in a unit', () => {
  test.each<readonly [string, readonly string[]]>([
    ['y = L to mm', []],
    ['y = T_shaft * omega to kW', []],
    ['y = 0 to kW', []],
    ['y = (L to mm) + b', []],
    [
      'y = L to s',
      [
        'L | L (length, m) cannot be shown in s (time). | Check the formula, or ask for a unit of its own kind.'
      ]
    ],
    [
      'y = 2 * (L to kg)',
      [
        'L | L (length, m) cannot be shown in kg (mass). | Check the formula, or ask for a unit of its own kind.'
      ]
    ],
    [
      'y = is_hot to m',
      ['is_hot | is_hot is a condition, not a number. | Write a ? b : c to make a number of it.']
    ],
    [
      'y = P_drag to VA',
      [
        'P_drag | P_drag takes active power as apparent power (W and VA are one dimension). | Divide by the power factor if that is meant.'
      ]
    ]
  ])('%s', (line, said) => expect(texts(line)).toEqual(said));
});

describe('columns', () => {
  test.each([
    ['pump.Q * pump.p', 3],
    ['pump.Q * 2', 3],
    ['pump.Q + 3 L/min', 3],
    ['pump.Q > 5 L/min', 3],
    ['pump.Q > 5 L/min ? pump.p : 0', 3],
    ['pump.Q^2', 3],
    ['max(pump.Q) * 2', null]
  ])('%s has rows: %s', (expression, rows) => {
    expect(checkWithTables(`y = ${expression}`).type('y')?.rows).toBe(rows);
  });

  test.each([
    [
      'y = pump.Q * other.x',
      'other.x',
      'pump.Q has 3 rows, other.x has 2: they cannot be combined row by row.'
    ],
    [
      'y = pump.p / (1 bar) + other.x',
      'other.x',
      'pump.p / (1 bar) has 3 rows, other.x has 2: they cannot be combined row by row.'
    ],
    [
      'y = pump.Q > 5 L/min ? other.x : 0',
      'other.x',
      'pump.Q > 5 L/min has 3 rows, other.x has 2: they cannot be combined row by row.'
    ],
    [
      'y = pump.Q / (1 L/min) < 3 < other.x',
      'other.x',
      'pump.Q / (1 L/min) has 3 rows, other.x has 2: they cannot be combined row by row.'
    ],
    ['y = pump.name * 2', 'pump.name', 'pump.name is a text, not a number.']
  ])('%s', (line, marked, message) => {
    const [found, ...more] = checkWithTables(line).problems;
    expect(more).toEqual([]);
    expect(found && line.slice(found.at.from - 1, found.at.to - 1)).toBe(marked);
    expect(found?.message).toBe(message);
  });
});

describe('what travels with a value to show it in', () => {
  const shown = (line: string): string | null => check(line).quantity('y').unit?.text ?? null;
  test.each([
    ['y = b', 'mm'],
    ['y = b + L', 'mm'],
    ['y = L + b', 'm'],
    ['y = 2 * b', 'mm'],
    ['y = L * b', null],
    ['y = max(b, L)', 'mm'],
    ['y = L to ft', 'ft'],
    ['y = P_drag / v', null]
  ])('%s is shown in %s', (line, unit) => expect(shown(line)).toBe(unit));

  test('a power of a length keeps the unit of the first one', () => {
    expect(check('y = b * L').quantity('y').length?.text).toBe('mm');
    expect(check('y = L * b').quantity('y').length?.text).toBe('m');
    expect(check('y = m_arm * b^2').quantity('y').length?.text).toBe('mm');
  });

  test('a product with a force is a torque, one without is an energy', () => {
    expect(check('y = F_c * L').quantity('y').force).toBe(true);
    expect(check('y = m_arm * v^2').quantity('y').force).toBe(false);
    expect(coherentUnitText(check('y = m_arm * v^2').quantity('y').dimension)).toBeTruthy();
  });
});
