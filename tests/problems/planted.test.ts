// One mistake at a time, planted at a known place of a long sheet: the problem stands there, to the
// character, whatever the line endings and the indentation. ⟦ and ⟧ mark the place and are taken out.

import { describe, expect, test } from 'vitest';
import { problemsOf } from './said.ts';

const files = { 'tables/pump.csv': 'Q [L/min],p [bar]\n0,6\n10,5\n20,4\n' };

/** A sheet without a mistake; the planted lines go in at the end of the block of their kind. */
function sheetWith(kind: string, planted: readonly string[]): string {
  const at = (own: string): readonly string[] => (own === kind ? planted : []);
  return [
    '---', 'title: Spray rig', 'stages:', '  sketch: First sketch', '  upgrade: Bigger motor', '---', '',
    '# A sheet of some length', '', 'Words before, with `code` and a picture of µ and Ω.', '',
    '```inputs Arms', '# geometry', 'R = 0.6 m ± 3 mm   # measured', 'd_arm = 25 mm', '  at upgrade: 30 mm',
    'v_tip = 40 m/s within 20 m/s .. 80 m/s', 'k_air = 1.0 ± 0.2', ...at('inputs'), '```', '',
    '```calc', 'omega = v_tip / R to rad/s', 'P_drag = 0.6 kg/m^3 * d_arm * R', '  * v_tip^3 * k_air to W',
    'power(v) = P_drag * (v / v_tip)^3', ...at('calc'), '```', '',
    'More words.', '', '> ```calc', '> this = is no block', '> ```', '',
    '```limits', 'tip speed [safety]: v_tip <= 80 m/s', ...at('limits'), '```', '',
    '```table motors', 'name, P_rated [kW], price', 'A, 1.1, 90', 'B, 5.5, 240', ...at('table'), '```', '',
    '```table pump from tables/pump.csv', '```', '',
    '```choose motor from motors', 'P_rated >= P_drag', 'least price', ...at('choose'), '```', '',
    '```solve', 'v_max = v_tip where P_drag == 2 kW', ...at('solve'), '```', '', 'The end.'
  ].join('\n'); // prettier-ignore
}

const cases: readonly (readonly [title: string, kind: string, code: string, lines: readonly string[]])[] = [
  ['the first line of a formula', 'calc', 'names/unknown', ['x = ⟦unknown_1⟧ + 1']],
  ['the second line of a formula', 'calc', 'names/unknown', ['x = R', '  + ⟦unknown_1⟧ * 2']],
  ['the third line, after a comment line', 'calc', 'names/unknown', ['x = R', '  # and more', '  + R', '    + ⟦unknown_1⟧']],
  ['the third line, past a comment at the end of the second', 'calc', 'units/mismatch', ['x = (', '  2 m  # a length', '  ) + (⟦R + 3 kg⟧)']],
  ['a unit deep in a formula of several lines', 'calc', 'units/unknown', ['x = R', '  + 3 mm', '  + 4 ⟦kw⟧']],
  ['a unit after to, on a line of its own', 'calc', 'units/unknown', ['x = R * 2', '  to ⟦kw⟧']],
  ['a bracket that is not closed, on the second line', 'calc', 'syntax/brackets', ['x = R', '  + ⟦(⟧R * 2']],
  ['a missing operator on the second line', 'calc', 'syntax/missing-operator', ['x = R', '  + ⟦R k_air⟧']],
  ['a decimal comma in brackets', 'calc', 'syntax/number-form', ['x = R', '  * (⟦1,5⟧)']],
  ['a letter beyond the first plane before it', 'calc', 'names/unknown', ['x = R  # 𝛚 and 🌀', '  + ⟦unknown_1⟧  # 🌀']],
  ['a typeset sign before it', 'calc', 'names/unknown', ['x = 2·R × 3 − ⟦unknown_1⟧']],
  ['a revised formula', 'calc', 'names/unknown', ['x = R', '  at upgrade: R * ⟦unknown_1⟧']],
  ['the second line of a revised formula', 'calc', 'names/unknown', ['x = R', '  at upgrade: R', '    + ⟦unknown_1⟧']],
  ['the stage of a revision', 'calc', 'line/unknown-stage', ['x = R', '  at ⟦first-run⟧: 2 * R']],
  ['a revision of another dimension', 'calc', 'units/mismatch', ['x = R', '  at upgrade: ⟦3 kg⟧']],
  ['an angle shown in Hz', 'calc', 'angle/counts-radians', ['x = R', 'f_turn = ⟦omega⟧ to Hz']],
  ['a value out of its domain on the second line', 'calc', 'value/outside-domain', ['x = 1', '  + ⟦sqrt(k_air - 3)⟧']],
  ['a division by 0 on the second line', 'calc', 'value/not-finite', ['x = 1', '  + ⟦2 / (k_air - 1)⟧']],
  ['an own function with one argument too many', 'calc', 'names/arguments', ['x = 1 W', '  + ⟦power(3 m/s, 1)⟧']],
  ['the body of an own function', 'calc', 'names/unknown', ['force(v) = k_air', '  * ⟦unknown_1⟧ * v']],
  ['an interpolation beyond its table', 'calc', 'table/outside-range', ['x = 1 bar', '  + ⟦interp(30 L/min, pump.Q, pump.p)⟧']],
  ['a name defined twice', 'calc', 'line/duplicate-name', ['⟦R⟧ = 3 m']],
  ['a circle', 'calc', 'names/circle', ['⟦x_1⟧ = x_2 + 1', 'x_2 = x_1', '  * 2']],

  ['an input without a value', 'inputs', 'line/not-understood', ['⟦something else⟧']],
  ['an input made of a name', 'inputs', 'value/needs-a-value', ['x = ⟦2 * R⟧']],
  ['a tolerance of another dimension', 'inputs', 'units/mismatch', ['x = 3 m ± ⟦2 kg⟧']],
  ['a tolerance without an amount', 'inputs', 'value/negative-tolerance', ['x = 3 m ± ⟦0 mm⟧']],
  ['the low end of a range', 'inputs', 'units/mismatch', ['x = 3 m within ⟦1 kg⟧ .. 5 m']],
  ['the high end of a range, on a second line', 'inputs', 'units/mismatch', ['x = 3 m', '  within 1 m .. ⟦5 kg⟧']],
  ['a value outside its range', 'inputs', 'value/outside-within', ['x = ⟦30 m⟧ within 1 m .. 5 m']],
  ['a revised value outside its range', 'inputs', 'value/outside-within', ['x = 3 m within 1 m .. 5 m', '  at upgrade: ⟦30 m⟧']],
  ['the unit of a revised value', 'inputs', 'units/unknown', ['x = 3 m', '  at upgrade: 5 ⟦kw⟧   # why']],
  ['a tolerance that a revision loses', 'inputs', 'value/tolerance-lost', ['x = 3 m ± 1 mm', '  at upgrade: ⟦5 m⟧']],
  ['a reading below 0 K', 'inputs', 'temperature/below-zero', ['T_bath = ⟦-300 degC⟧']],
  ['a reserved name', 'inputs', 'line/reserved-name', ['⟦max⟧ = 3 m']],

  ['the demand of a limit', 'limits', 'names/unknown', ['power: ⟦unknown_1⟧ <= 3 kW']],
  ['the capacity of a limit', 'limits', 'units/mismatch', ['power: P_drag <= ⟦3 kg⟧']],
  ['the capacity on a second line', 'limits', 'names/unknown', ['power: P_drag', '  <= 3 kW + ⟦unknown_1⟧']],
  ['the middle of a range', 'limits', 'names/unknown', ['power: 1 kW <= ⟦unknown_1⟧ <= 3 kW']],
  ['the far end of outside', 'limits', 'names/unknown', ['power: P_drag outside 1 kW .. ⟦unknown_1⟧']],
  ['the band of an equality', 'limits', 'units/mismatch', ['play: R == d_arm ± ⟦2 kg⟧']],
  ['a strict sign', 'limits', 'line/no-comparison', ['power: P_drag ⟦<⟧ 3 kW']],
  ['an unknown tag', 'limits', 'line/not-understood', ['power [⟦sure⟧]: P_drag <= 3 kW']],
  ['a revised limit', 'limits', 'names/unknown', ['power: P_drag <= 3 kW', '  at upgrade: P_drag <= ⟦unknown_1⟧']],
  ['a label taken twice', 'limits', 'line/duplicate-label', ['⟦tip speed⟧: v_tip <= 81 m/s']],

  ['the left side of a solve', 'solve', 'names/unknown', ['x = v_tip where ⟦unknown_1⟧ == 2 kW']],
  ['the right side of a solve, on a second line', 'solve', 'names/unknown', ['x = v_tip where P_drag', '  == ⟦unknown_1⟧']],
  ['sides of two dimensions', 'solve', 'units/mismatch', ['x = v_tip where P_drag == ⟦2 kg⟧']],
  ['the unknown of a solve', 'solve', 'names/unknown', ['x = ⟦unknown_1⟧ where P_drag == 2 kW']],
  ['the unknown that is no input', 'solve', 'value/needs-a-value', ['x = ⟦omega⟧ where P_drag == 2 kW']],
  ['the low end of a search', 'solve', 'units/mismatch', ['x = v_tip where P_drag == 2 kW between ⟦1 kg⟧ and 50 m/s']],
  ['the high end of a search', 'solve', 'units/unknown', ['x = v_tip where P_drag == 2 kW between 1 m/s and 50 ⟦kw⟧/s']],

  ['a cell that is no number', 'table', 'table/cell', ['C, ⟦large⟧, 300']],
  ['a cell in quotes', 'table', 'table/cell', ['"C, the third", ⟦large⟧, 300']],
  ['a cell that carries a unit', 'table', 'table/cell', ['C, ⟦7.5 kW⟧, 300']],
  ['a row with a cell too many', 'table', 'line/column-count', ['⟦C, 7.5, 300, 4⟧']],

  ['a condition', 'choose', 'names/unknown', ['price <= ⟦unknown_1⟧']],
  ['a condition on a second line', 'choose', 'names/unknown', ['price', '  <= ⟦unknown_1⟧']],
  ['a condition that compares nothing', 'choose', 'line/not-understood', ['⟦price + 3⟧']],
  ['a condition of two dimensions', 'choose', 'units/mismatch', ['⟦P_rated >= 3 kg⟧']],
  ['a derived column', 'choose', 'names/unknown', ['worth = price / ⟦unknown_1⟧']],
  ['a derived column of two dimensions, on a second line', 'choose', 'units/mismatch', ['worth = 1 +', '  (⟦price + P_rated⟧)']],
  ['a derived column out of its domain', 'choose', 'value/outside-domain', ['worth = 1', '  + ⟦ln(price - 90)⟧']],
  ['a row that is not there', 'choose', 'choose/none-fits', ['take "⟦C⟧"']],
  ['a text compared with a column of numbers', 'choose', 'units/mismatch', ['⟦price⟧ is "A"']],
  ['a ranking that moved', 'choose', 'choose/ranking-moved', ['take "⟦B⟧"']]
]; // prettier-ignore

/** The ways a file may be written; each gives the text of the same sheet. */
const writings: readonly (readonly [string, (text: string) => string])[] = [
  ['line feeds', (text) => text],
  ['carriage returns', (text) => text.replace(/\n/gu, '\r\n')],
  ['tabs', (text) => text.replace(/^ {2,}(?=\S)/gmu, (run) => '\t'.repeat(run.length / 2))],
  [
    'spaces that trail',
    (text) => text.replace(/(?<=\S)\n/gu, '  \n').replace(/^--- {2}$/gmu, '---')
  ]
];

/** Front matter takes no tabs, so only what stands below it is written in another way. */
function written(text: string, write: (text: string) => string): string {
  const below = text.indexOf('# A sheet');
  const head = text.slice(0, below);
  return (write === writings[1]?.[1] ? write(head) : head) + write(text.slice(below));
}

/** The text without its marks, and the place between them. */
function unmarked(text: string): { text: string; place: string } {
  const before = text.slice(0, text.indexOf('⟦'));
  const inside = text.slice(text.indexOf('⟦') + 1, text.indexOf('⟧'));
  const line = before.split('\n').length;
  const from = before.length - before.lastIndexOf('\n');
  return { text: text.replace(/[⟦⟧]/gu, ''), place: `${line}:${from}-${from + inside.length}` };
}

const saidOf = (text: string): string[] =>
  problemsOf(text, files).map(({ code, at }) => `${at.line}:${at.from}-${at.to} ${code}`);

describe.each(writings)('with %s', (_, write) => {
  test('the sheet without a planted line has no problem', () => {
    expect(saidOf(written(sheetWith('', []), write))).toEqual([]);
  });

  test.each(cases)('%s', (_title, kind, code, lines) => {
    const { text, place } = unmarked(written(sheetWith(kind, lines), write));
    expect(saidOf(text)).toEqual([`${place} ${code}`]);
  });
});

describe('a table read from a file', () => {
  const path = 'tables/pump.csv';
  const place = ((): string => {
    const lines = sheetWith('', []).split('\n');
    const line = lines.findIndex((text) => text.includes(path));
    const from = (lines[line] ?? '').indexOf(path) + 1;
    return `${line + 1}:${from}-${from + path.length}`;
  })();

  test.each([
    [
      'a row with a cell too many',
      'line/column-count',
      'Q [L/min],p [bar]\n0,6\n10,5,1\n',
      'line 3'
    ],
    ['a cell that is no number', 'table/cell', 'Q [L/min],p [bar]\r\n0,6\r\n10,high\r\n', 'line 3'],
    [
      'a unit that is not known',
      'units/unknown',
      'Q [L/min],p [bars of chocolate]\n0,6\n',
      'line 1'
    ],
    ['a column named twice', 'line/duplicate-name', 'Q [L/min],Q [bar]\n0,6\n', 'line 1']
  ])('%s is reported at the path, and names its line in the file', (_, code, text, line) => {
    const found = problemsOf(sheetWith('', []), { [path]: text });
    expect(found.map(({ code, at }) => `${at.line}:${at.from}-${at.to} ${code}`)).toEqual([
      `${place} ${code}`
    ]);
    expect(found[0]?.message).toMatch(new RegExp(`^tables/pump\\.csv, ${line}: `, 'u'));
    expect(found[0]?.fix).toBeNull();
  });
});
