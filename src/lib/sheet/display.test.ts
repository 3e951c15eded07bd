// The unit a value is shown in when its line asks for none: the author's own, else a named unit of the
// sheet's family. Rules of docs/worksheet-format.md, *Display*.

import { describe, expect, test } from 'vitest';
import { compute } from './session.ts';

const given = [
  'b = 200 mm', 'L = 3 m', 'm_arm = 2 kg', 'v = 4 m/s', 'F_c = 50 N', 'P = 900 W', 'omega = 90 rad/s', 'n = 600 rpm',
  'f_0 = 10 Hz', 'T_room = 20 degC', 'T_oil = 90 degC', 'p = 3 bar', 'U = 230 V', 'I_0 = 2 A'
]; // prettier-ignore

/** Text of a value at the first stage, in a sheet of one family. */
function shown(expression: string, family = 'SI'): string | null {
  const text = `---\nunits: ${family}\n---\n\`\`\`calc\n${given.join('\n')}\ny = ${expression}\n\`\`\`\n`;
  const results = compute(text);
  const said = results.problems.filter(({ severity }) => severity === 'error');
  expect(said.map(({ message }) => message)).toEqual([]);
  return results.values.get('y')?.at[0]?.text ?? null;
}

describe("the author's own unit", () => {
  test.each([
    ['b * 2', '400 mm'],
    ['b + L', '3200 mm'],
    ['L + b', '3.2 m'],
    ['max(b, 3 cm)', '200 mm'],
    ['p + 50 kPa', '3.5 bar'],
    ['n * 2', '1200 rpm'],
    ['T_room + 5 K', '25 degC'],
    ['p to kPa', '300 kPa']
  ])('%s is %s', (expression, text) => expect(shown(expression)).toBe(text));
});

describe('a power of a length follows the first length', () => {
  test.each([
    ['b^2', '40000 mm^2'],
    ['b * L', '600000 mm^2'],
    ['L * b', '0.6 m^2'],
    ['pi * b^2 / 4', '31416 mm^2'],
    ['L^3', '27 m^3']
  ])('%s is %s', (expression, text) => expect(shown(expression)).toBe(text));
});

describe('a named unit with one prefix', () => {
  test.each([
    ['F_c * L', '150 N m'],
    ['P / omega', '10 N m'],
    ['m_arm * v^2 / 2', '16 J'],
    ['P * 3 s', '2.7 kJ'],
    ['m_arm * v / (0.01 s)', '800 N'],
    ['U * I_0 * 10', '4.6 kW'],
    ['U / I_0', '115 ohm'],
    ['T_oil - T_room', '70 K'],
    ['f_0 * 2', '20 Hz'],
    ['sqrt(4000 N/m / m_arm)', '44.72 1/s']
  ])('%s is %s', (expression, text) => expect(shown(expression)).toBe(text));
});

describe('the US family', () => {
  test.each([
    ['m_arm * v / (0.01 s)', '179.8 lbf'],
    ['F_c * L', '110.6 lbf ft']
  ])('%s is %s', (expression, text) => expect(shown(expression, 'US')).toBe(text));
});

test('the unit does not depend on what else stands in the sheet', () => {
  const alone = compute('```calc\nF = 50 N\ny = F * 3 m\n```\n').values.get('y')?.at[0]?.text;
  const more = compute('```calc\nE = 3 J\nF = 50 N\nE_2 = 5 kJ\ny = F * 3 m\nk = 4 lbf\n```\n');
  expect(more.values.get('y')?.at[0]?.text).toBe(alone);
});
