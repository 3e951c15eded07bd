import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readUnitRun } from './run.ts';

/** Reads the run behind the magnitude that an expression begins with. */
function readAfterNumber(expression: string): string {
  const magnitude = /^[\d.]+/.exec(expression)?.[0] ?? '';
  const run = readUnitRun(expression, magnitude.length, 'EUR');
  if (run === null) return 'none';
  if ('fault' in run) {
    return `${run.fault.code} at "${expression.slice(run.fault.from, run.fault.to)}"`;
  }
  return `${run.unit.text} | ${expression.slice(run.end)}`;
}

describe('a unit run', () => {
  it.each([
    ['9.81 m/s^2*m', 'm/s^2 | *m'],
    ['20 kg/m^3', 'kg/m^3 | '],
    ['5 N m', 'N m | '],
    ['5 N·m', 'N m | '],
    ['5 N⋅m', 'N m | '],
    ['5N', 'N | '],
    ['5 kg/m/s', 'kg/(m s) | '],
    ['20 kg/(m s K^0.5)*T_air', 'kg/(m s K^0.5) | *T_air'],
    ['5 W/(m^2*K) + b', 'W/(m^2 K) |  + b'],
    ['5 m²/s³', 'm^2/s^3 | '],
    ['5 s⁻¹', 's^-1 | '],
    ['5 m^(1/2)', 'm^0.5 | '],
    ['5 m^-0.5', 'm^-0.5 | '],
    ['5 m^−2', 'm^-2 | '],
    ['5 µm', 'um | '],
    ['20 °C', 'degC | '],
    ['20°C', 'degC | '],
    ['5 EUR/kg', 'EUR/kg | '],
    ['5 %', '% | '],
    ['0.4 %/K', '%/K | '],
    ['1 lbf in to N m', 'lbf in |  to N m'],
    ['2048/rev * 0.25 rev', '1/rev |  * 0.25 rev']
  ])('%s is read as %s', (expression, expected) => {
    expect(readAfterNumber(expression)).toBe(expected);
  });

  it.each([
    ['5 m / s', 'm |  / s'],
    ['5 m /s', 'm |  /s'],
    ['5 m/ s', 'm | / s'],
    ['5 N * m', 'N |  * m'],
    ['5 N · m', 'N |  · m'],
    ['5 kW/x', 'kW | /x'],
    ['5 W/(m^2 x)', 'W | /(m^2 x)'],
    ['5 W/(m^2', 'W | /(m^2'],
    ['5 kPa at upgrade', 'kPa |  at upgrade'],
    ['1 m and 2 m', 'm |  and 2 m'],
    ['5 % kW', '% |  kW'],
    ['5 m/min(a, b)', 'm | /min(a, b)'],
    ['5 kg\n  m', 'kg | \n  m'],
    ['5 m/motor.P', 'm | /motor.P']
  ])('stops before what is no unit: %s', (expression, expected) => {
    expect(readAfterNumber(expression)).toBe(expected);
  });

  it.each(['5 min(a, b)', '5 x', '5', '5 * m', '1/h', '1/(rev)', '5 kw', '5 m.x', '5 g_n', '2 R'])(
    'is not there: %s',
    (expression) => {
      expect(readAfterNumber(expression)).toBe('none');
    }
  );

  it.each([
    ['5 J/kg K', 'units/refused at "J/kg K"'],
    ['5 J/kg·K', 'units/refused at "J/kg·K"'],
    ['5 in in mm', 'units/refused at "in"'],
    ['5 lbf ft in N m', 'units/refused at "in"'],
    ['20 deg C', 'units/refused at "deg C"'],
    ['5 psig', 'units/refused at "psig"'],
    ['5 kg/ton', 'units/refused at "ton"'],
    ['5 USD', 'units/two-moneys at "USD"'],
    ['5 € + 1', 'units/refused at "€"'],
    ['5 m^n', 'units/exponent at "m^n"'],
    ['5 m^(n + 1)', 'units/exponent at "m^(n + 1)"'],
    ['5 m^2^3', 'units/exponent at "m^2^3"'],
    ['5 m^0', 'units/exponent at "m^0"'],
    ['5 m^25', 'units/exponent at "m^25"'],
    ['5 m ^2', 'units/exponent at "m ^"']
  ])('is a fault: %s', (expression, expected) => {
    expect(readAfterNumber(expression)).toBe(expected);
  });

  it('offers both readings of a stroke followed by a space', () => {
    expect(readUnitRun('5 J/kg K', 1, null)).toEqual({
      fault: {
        code: 'units/refused',
        from: 2,
        to: 8,
        message: '"J/kg K" can be read as J/(kg K) and as J K/kg.',
        hint: 'Write J/(kg K) if all that follows the stroke is below it, J K/kg if not.',
        replacement: 'J/(kg K)'
      }
    });
  });

  it('says where each unit name stands', () => {
    const run = readUnitRun('9.81 m/s^2', 4, null);
    expect(run && 'atoms' in run && run.atoms).toEqual([
      { name: 'm', from: 5, to: 6 },
      { name: 's', from: 7, to: 8 }
    ]);
  });

  it('ends inside the text and never throws, whatever follows the number', () => {
    const pieces = fc.constantFrom(
      ...[
        'm',
        's',
        'kg',
        'in',
        'deg',
        'C',
        '%',
        ' ',
        '/',
        '·',
        '*',
        '^',
        '(',
        ')',
        '2',
        '-1',
        '.5'
      ],
      ...['²', '⁻', 'x', 'ton', 'EUR', 'USD', '°', '€', 'min', '.', '\n', 'µ', 'to']
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 12 }), (parts) => {
        const text = `5 ${parts.join('')}`;
        const run = readUnitRun(text, 1, 'EUR');
        if (run === null) return;
        const [from, to] = 'fault' in run ? [run.fault.from, run.fault.to] : [2, run.end];
        expect(from).toBeGreaterThanOrEqual(1);
        expect(to).toBeGreaterThanOrEqual(from);
        expect(to).toBeLessThanOrEqual(text.length);
      }),
      { seed: 20250303, numRuns: 2000 }
    );
  });

  it('takes no long time over hostile lines', () => {
    for (const text of [
      `5 ${'GPa^24 '.repeat(280)}`,
      `5 m^${'9'.repeat(1900)}`,
      `5 m/${'('.repeat(1900)}`,
      `5 eV^23.999 ${'hp^(999/1000) '.repeat(100)}`
    ]) {
      const run = readUnitRun(text, 1, null);
      expect(run === null || 'fault' in run || run.end < text.length).toBe(true);
    }
  });
});
