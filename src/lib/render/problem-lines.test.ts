import { describe, expect, test } from 'vitest';
import { problem } from '#lib/problem/index.ts';
import { plainPalette } from './columns.ts';
import { results, rig, worksheet } from './results.fixture.ts';
import { problemLines } from './problem-lines.ts';

const words = { message: 'A is not defined.', hint: 'For amperes write 1 A.' };

describe('a problem as text', () => {
  test('is place and sentence, the line with the place marked, and what can be done', () => {
    expect(problemLines(rig, 'rig.md', plainPalette)).toEqual([
      'rig.md:4:5  error  T_shaft is a torque (N m), P_shaft a power (W): they cannot be added.',
      '    4 │ P = T_shaft + P_shaft',
      '      │     ^^^^^^^^^^^^^^^^^',
      '    Did you mean `T_shaft * omega`?'
    ]);
  });

  test('marks the place behind tabs and wide signs in the column where it shows', () => {
    const sheet = results({
      worksheet: worksheet('\t軸 = A'),
      problems: [problem('names/unknown', { line: 1, from: 6, to: 7 }, words)]
    });
    const [, line, marks] = problemLines(sheet, 'x', plainPalette);
    expect(line).toBe('    1 │  軸 = A');
    expect(marks).toBe('      │       ^');
  });

  test('cuts a line of a megabyte to the part around the place', () => {
    const sheet = results({
      worksheet: worksheet(`${'x'.repeat(500_000)}A${'y'.repeat(500_000)}`),
      problems: [problem('names/unknown', { line: 1, from: 500_001, to: 500_002 }, words)]
    });
    const [, line = '', marks = ''] = problemLines(sheet, 'x', plainPalette);
    expect(line.length).toBeLessThan(100);
    expect(line[marks.indexOf('^')]).toBe('A');
  });

  test('comes after errors where it is a notice', () => {
    const at = { line: 1, from: 1, to: 2 };
    const sheet = results({
      worksheet: worksheet('A'),
      problems: [
        problem('value/exact-comparison', at, { message: 'First.' }, { severity: 'note' }),
        problem('names/unknown', at, { message: 'Second.' })
      ]
    });
    const shown = problemLines(sheet, 'x', plainPalette).filter((line) => line.startsWith('x:'));
    expect(shown).toEqual(['x:1:1  error  Second.', 'x:1:1  note  First.']);
  });

  test('is a single line after the first twenty', () => {
    const at = { line: 1, from: 1, to: 2 };
    const many = Array.from({ length: 300 }, () => problem('names/unknown', at, words));
    const sheet = results({ worksheet: worksheet('A'), problems: many });
    expect(problemLines(sheet, 'x', plainPalette).length).toBe(20 * 5 - 1 + 1 + 280);
  });
});
