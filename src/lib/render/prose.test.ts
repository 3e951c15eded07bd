import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { results, stage, stageValue, unit, value, waiting } from './results.fixture.ts';
import { fillProse } from './prose.ts';

const kW = unit('kW');
const sheet = results({
  stages: [stage('sketch', { title: 'First sketch' }), stage('upgrade', { title: 'Bigger motor' })],
  values: [
    value('P_shaft', {
      unit: kW,
      dimension: kW.dimension,
      at: [
        stageValue({ value: 0.8123, si: 812.3, text: '0.8123 kW' }),
        stageValue({ value: 5, si: 5000, text: '5.000 kW' })
      ]
    }),
    value('R', { at: [stageValue({ text: '0.75 m' }), stageValue({ text: '0.75 m' })] }),
    value('motor.P', { at: [waiting('P_need'), stageValue({ text: '2 kW' })] })
  ]
});
/** With plain spaces, which print as no-break ones. */
const filled = (text: string, greatest = false): string =>
  fillProse(text, sheet, greatest).replaceAll('\u00a0', ' ');

describe('a value in running text', () => {
  test('that is the same at every stage is said once', () => {
    expect(filled('An arm of {R} here.')).toBe('An arm of 0.75 m here.');
  });

  test('that differs is said for each stage by its title', () => {
    expect(filled('It takes {P_shaft}.')).toBe(
      'It takes 0.8123 kW (First sketch), 5.000 kW (Bigger motor).'
    );
  });

  test('may be asked for at a stage and in another unit', () => {
    expect(filled('{P_shaft at upgrade}')).toBe('5.000 kW');
    // 1 hp = 745.69987 W (NIST SP 811, appendix B.8: 550 ft lbf/s).
    expect(filled('{P_shaft at sketch to hp}')).toBe('1.089 hp');
    expect(filled('{ P_shaft  to  W }')).toBe('812.3 W (First sketch), 5000 W (Bigger motor)');
  });

  test('in a caution is the greatest over the stages', () => {
    expect(filled('carries {P_shaft}', true)).toBe('carries 5.000 kW');
  });

  test('that waits says for what', () => {
    expect(filled('{motor.P at sketch}')).toBe('(waits for P_need)');
  });

  test('does not part from its unit at the end of a line', () => {
    expect(fillProse('{R}', sheet)).toBe('0.75\u00a0m');
  });
});

describe('text stays as it stands', () => {
  test.each([
    'an unknown {name}',
    'a stage that is none: {R at nowhere}',
    'a unit that does not fit: {P_shaft to kg}',
    'code `{R}` and ``a ` {R}``',
    'mathematics $x_{R}$ and $$\\frac{R}{R}$$',
    '```\n{R}\n```\n',
    'before\n\n~~~\n{R}\n\n{R}\n~~~\n\nafter',
    'empty {} and {  } and {{}}'
  ])('%j', (text) => {
    expect(filled(text)).toBe(text);
  });

  test('where it has no braces, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        fc.pre(!text.includes('{'));
        expect(fillProse(text, sheet)).toBe(text);
      }),
      { seed: 20260314 }
    );
  });

  test('and a price is no mathematics: 5 $ for {R} and 7 $', () => {
    expect(filled('from 5 $ for {R} to 7 $')).toBe('from 5 $ for 0.75 m to 7 $');
  });

  test('and hostile braces and backticks take no time', () => {
    const start = performance.now();
    for (const text of [
      '{'.repeat(200_000),
      '`'.repeat(200_000),
      '$ '.repeat(100_000),
      '{a '.repeat(60_000),
      '`a'.repeat(60_000)
    ])
      fillProse(text, sheet);
    expect(performance.now() - start).toBeLessThan(1000);
  });
});
