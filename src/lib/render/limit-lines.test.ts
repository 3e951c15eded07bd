import { describe, expect, test } from 'vitest';
import { checkText } from './check-text.ts';
import { displayWidth, plainPalette } from './columns.ts';
import { limit, limitAt, results, rig, stage } from './results.fixture.ts';
import { countLines, limitLines } from './limit-lines.ts';

describe('limits as lines', () => {
  const lines = limitLines(rig, plainPalette);

  test('stand one a limit under each stage, those tagged [safety] first', () => {
    expect(lines.slice(0, 4)).toEqual([
      'First sketch (sketch)',
      '  ◐ guard, whole arm [safety]    27.9 of 30.0 J      93 %, close                 line 43',
      '  ✓ belt pulley                  0.95 of 1.5 kW      63 %, within                line 40',
      '  ● target speed                 47.4, needs 80 m/s  169 %, short                line 41'
    ]);
    expect(lines[7]).toBe('Bigger motor (upgrade), after First sketch');
  });

  test('are at most 100 columns wide with labels of up to 40', () => {
    for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(100);
  });

  test('keep a very long label on the line of its limit', () => {
    const long = 'a label that goes on for more than the forty columns of its own';
    const [, line] = limitLines(results({ limits: [limit(long)] }), plainPalette);
    expect(line).toContain(`${long}  1.00 of 2.00 kW`);
  });

  test('of a sheet without limits are none', () => {
    expect(limitLines(results({}), plainPalette)).toEqual([]);
  });
});

describe('the counts at the end', () => {
  test('say per stage what stops the run, what was checked, and what is over or unknown', () => {
    expect(countLines(rig, plainPalette)).toEqual([
      'First sketch  4 checked, 3 inside (1 of them close), 1 over; 1 screen not shown to fail.',
      '              Over: target speed.',
      '              Nothing computed here stops the run.',
      'Bigger motor  Stops the run: guard, whole arm.',
      '              4 checked, 1 inside, 2 over, 1 unknown; 1 screen fails.',
      '              Over: belt pulley; guard, perforation.',
      '              Unknown: noise.'
    ]);
  });

  test('are the last lines of a check, with the count of errors', () => {
    expect(checkText(rig, 'rig.md').trimEnd().split('\n').at(-1)).toBe('1 error.');
    const silent = results({
      stages: [stage('design')],
      limits: [limit('a', { at: [limitAt()] })]
    });
    expect(checkText(silent, 'rig.md').trimEnd().split('\n').at(-1)).toBe('No line is in error.');
  });
});
