// Each rule for temperature: what becomes of points on a scale, differences and what is written in
// kelvin. The rules are those of docs/worksheet-format.md, *Temperature*.

import { describe, expect, test } from 'vitest';
import { checkLines, checkText, checkWithTables } from './check.fixture.ts';
import type { TemperatureKind } from './type.ts';

const given = [
  'T_room = 20 degC', 'T_oil = 90 degF', 'T_gas = 300 K', 'T_hot = 500 degR', 'rise = T_oil - T_room',
  'R_gas = 287 J/(kg K)', 'p_air = 1 bar', 'share_0 = 0.5'
]; // prettier-ignore

const kindOf = (expression: string): TemperatureKind | null =>
  checkLines(...given, `y = ${expression}`).quantity('y').temperature;
const said = (line: string): readonly string[] => checkLines(...given, line).said;

describe('a temperature is a point, a difference, or neutral', () => {
  test.each<readonly [string, TemperatureKind]>([
    ['20 degC', 'point'],
    ['-20 degC', 'point'],
    ['70 degF', 'point'],
    ['300 K', 'neutral'],
    ['500 degR', 'neutral'],
    ['T_oil - T_room', 'difference'],
    ['T_gas - 280 K', 'difference'],
    ['T_room - T_gas', 'point'],
    ['T_room + rise', 'point'],
    ['rise + T_room', 'point'],
    ['T_room - rise', 'point'],
    ['T_room + 5 K', 'point'],
    ['5 K + T_room', 'point'],
    ['T_gas + rise', 'neutral'],
    ['T_gas - rise', 'neutral'],
    ['rise + rise', 'difference'],
    ['rise - rise', 'difference'],
    ['2 * rise', 'difference'],
    ['T_gas * 2', 'neutral'],
    ['T_room to K', 'neutral'],
    ['T_room to degR', 'neutral'],
    ['T_gas to degC', 'point'],
    ['rise to K', 'difference'],
    ['(T_room to K) * 2', 'neutral'],
    ['share_0 > 1 ? T_room : T_oil', 'point'],
    ['share_0 > 1 ? rise : T_oil - 3 degC', 'difference']
  ])('%s is a %s', (expression, kind) => expect(kindOf(expression)).toBe(kind));
});

describe('what a point cannot do', () => {
  test.each<readonly [string, readonly string[]]>([
    ['y = T_room + T_oil', ['error temperature/two-points']],
    ['y = 20 degC + 5 degC', ['error temperature/two-points']],
    ['y = rise - T_room', ['error temperature/two-points']],
    ['y = 2 * T_room', ['error temperature/scaled-point']],
    ['y = T_room / 2', ['error temperature/scaled-point']],
    ['y = 2 * (T_room / 3)', ['error temperature/scaled-point']],
    ['y = share_0 * T_room', ['error temperature/scaled-point']],
    ['y = -T_room', ['error temperature/scaled-point']],
    ['y = 20 % * T_room', ['error temperature/scaled-point']],
    ['y = p_air / (R_gas * T_room) to kg/m^3', []],
    ['y = T_room / T_oil', []],
    ['y = T_room^4', []],
    ['y = 5.67e-8 W/(m^2 K^4) * (T_oil^4 - T_room^4)', []],
    ['y = rise to degC', ['error temperature/difference-as-reading']],
    ['y = 2 * rise to degF', ['error temperature/difference-as-reading']],
    ['y = T_room > T_oil', []],
    ['y = T_room > 290 K', []]
  ])('%s: %j', (line, outcome) => expect(said(line)).toEqual(outcome));
});

describe('an interval in a compound unit', () => {
  test.each<readonly [string, readonly string[]]>([
    ['y = 5 W/degC', []],
    ['y = 5 degC/min', []],
    ['y = 5 W/degC * rise to W', []],
    ['y = 5 degC/min * 3 min', []]
  ])('%s: %j', (line, outcome) => expect(said(line)).toEqual(outcome));

  test('a rate of degrees times a time is no point', () => {
    expect(kindOf('5 degC/min * 3 min')).not.toBe('point');
  });
});

describe('functions of points', () => {
  test.each<readonly [string, TemperatureKind]>([
    ['min(T_room, T_oil)', 'point'],
    ['max(T_room, T_oil)', 'point'],
    ['clamp(T_room, 0 degC, 100 degC)', 'point'],
    ['abs(rise)', 'difference'],
    ['min(rise, T_oil - 3 degC)', 'difference']
  ])('%s is a %s', (expression, kind) => expect(kindOf(expression)).toBe(kind));

  test.each<readonly [string, TemperatureKind]>([
    ['mean(pump.T)', 'point'],
    ['max(pump.T)', 'point'],
    ['first(pump.T)', 'point'],
    ['last(pump.T)', 'point'],
    ['sd(pump.T)', 'difference'],
    ['interp(5 L/min, pump.Q, pump.T)', 'point']
  ])('%s is a %s', (expression, kind) => {
    expect(checkWithTables(`y = ${expression}`).quantity('y').temperature).toBe(kind);
  });

  test.each<readonly [string, readonly string[]]>([
    ['y = abs(T_room)', ['error temperature/scaled-point']],
    ['y = sign(T_room)', ['error temperature/scaled-point']],
    ['y = round(T_room, 5 K)', ['error temperature/scaled-point']],
    ['y = mod(T_room, 10 degC)', ['error temperature/scaled-point']],
    ['y = hypot(T_room, 10 degC)', ['error temperature/scaled-point']],
    ['y = sum(pump.T)', ['error temperature/scaled-point']],
    ['y = sum((pump.T to K))', []],
    ['y = round((T_room to K), 5 K)', []]
  ])('%s: %j', (line, outcome) => {
    expect(checkWithTables('T_room = 20 degC', line).said).toEqual(outcome);
  });
});

describe('tolerances and ranges of a point', () => {
  const input = (line: string): readonly string[] =>
    checkText(`\`\`\`inputs\n${line}\n\`\`\`\n`).said;
  test.each<readonly [string, readonly string[]]>([
    ['T_bath = 20 degC ± 2 degC', []],
    ['T_bath = 20 degC ± 2 K', []],
    ['T_bath = 20 degC ± 2 %', ['error temperature/scaled-point']],
    ['T_bath = 293 K ± 2 %', []],
    ['T_bath = 20 degC within 0 degC .. 100 degC', []]
  ])('%s: %j', (line, outcome) => expect(input(line)).toEqual(outcome));
});
