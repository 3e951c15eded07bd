// One wrong line stops only itself and what depends on it: a dependent adds no complaint of its own,
// it waits and names what for.

import { compute } from '#lib/sheet/index.ts';
import { describe, expect, test } from 'vitest';

const choice = [
  '```choose motor from motors', 'P_rated >= 1 kW', 'least price', '```', '```calc', 'y = 2 * motor.P_rated',
  'most_powerful = max(motors.P_rated)', 'alone = 3 kW', '```', ''
].join('\n'); // prettier-ignore

const table = (...lines: readonly string[]): string =>
  ['```table motors', ...lines, '```', ''].join('\n');

describe('a table with a mistake', () => {
  test.each([
    [
      'a cell that is no number',
      table('name, P_rated [kW], price', 'A, 1.1, 90', 'C, large, 300'),
      'table/cell'
    ],
    [
      'a row with a cell too many',
      table('name, P_rated [kW], price', 'A, 1.1, 90, 4'),
      'line/column-count'
    ],
    [
      'a unit that is not known',
      table('name, P_rated [kWx], price', 'A, 1.1, 90'),
      'units/unknown'
    ],
    ['a file that is not there', '```table motors from motors.csv\n```\n', 'file/table-missing'],
    ['a path out of the folder', '```table motors from ../motors.csv\n```\n', 'file/table-outside']
  ])('%s is said once; what reads the table waits', (_, written, code) => {
    const { problems, values } = compute(written + choice);
    expect(problems.map((found) => found.code)).toEqual([code]);
    const states = ['y', 'most_powerful', 'alone'].map((name) => values.get(name)?.at[0]?.state);
    expect(states).toEqual(['waits', 'waits', 'value']);
  });

  test('a column beside it computes', () => {
    const sheet = `${table('name, P_rated [kW], price', 'A, large, 90')}\`\`\`calc\ndear = max(motors.price)\n\`\`\`\n`;
    const { problems, values } = compute(sheet);
    expect(problems.map((found) => found.code)).toEqual(['table/cell']);
    expect(values.get('dear')?.at[0]?.value).toBe(90);
  });

  test('a choice from a table that is not there says so once', () => {
    const { problems } = compute(choice);
    expect(problems.map(({ code, at }) => `${at.line}:${at.from}-${at.to} ${code}`)).toEqual([
      '1:22-28 names/unknown', '7:21-35 names/unknown'
    ]); // prettier-ignore
    expect(problems[0]?.message).toBe('motors is not a table of this sheet.');
  });
});

describe('a cell that was not measured', () => {
  const pump = '```table pump\nQ [L/min], p [bar], name\n0, 6, a\n10, , b\n20, 4, c\n```\n';
  const saidOf = (block: string): string[] =>
    compute(pump + block).problems.map(({ code, message }) => `${code}: ${message}`);
  const calc = (line: string): string => `\`\`\`calc\n${line}\n\`\`\`\n`;

  test.each(['y = mean(pump.p)', 'y = max(pump.p) * 2', 'y = count(pump.p)', 'y = sd(pump.p)'])(
    '%s passes over it',
    (line) => expect(saidOf(calc(line))).toEqual([])
  );

  test.each([
    'y = pump.p * 2',
    'y = mean(pump.p * 2)',
    'y = interp(5 L/min, pump.Q, pump.p)',
    'y = sqrt(pump.p)'
  ])('%s says which cell is empty', (line) =>
    expect(saidOf(calc(line))).toEqual(['table/cell: pump.p, row 2 is empty: not measured.'])
  );

  test('a condition of a choice says so too', () => {
    const choose = '```choose point from pump\np >= 3 bar\nleast Q\n```\n';
    expect(saidOf(choose)).toEqual(['table/cell: pump.p, row 2 is empty: not measured.']);
  });

  test('a fault of another kind beside it keeps its own words', () => {
    expect(saidOf(calc('y = sqrt(3 bar - mean(pump.p))'))[0]).toMatch(/^value\/outside-domain/u);
  });
});

describe('a definition with a mistake', () => {
  test.each([
    ['an unknown name', 'a = unknown_1'],
    ['a sum of two kinds', 'a = 3 m + 2 kg'],
    ['a bracket left open', 'a = (3 m'],
    ['a unit that is not known', 'a = 3 kw'],
    ['a root of a negative value', 'a = sqrt(2 - 3)'],
    ['a circle with itself', 'a = a + 1']
  ])('%s: dependents and limits wait for it', (_, line) => {
    const sheet = `\`\`\`calc\n${line}\nb = a * 2\nc = b + 1\n\`\`\`\n\`\`\`limits\nreach: c <= 3\n\`\`\`\n`;
    const { problems, values, limits } = compute(sheet);
    expect(problems).toHaveLength(1);
    for (const name of ['b', 'c']) {
      const at = values.get(name)?.at[0];
      expect(at?.state, name).toBe('waits');
      expect(at?.waitsFor, name).toEqual([name === 'b' ? 'a' : 'b']);
    }
    expect([...limits.values()][0]?.at[0]?.status).toBe('unknown');
  });
});
