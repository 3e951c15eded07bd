import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvCell, sheetCsv } from './csv.ts';
import { limit, results, rig, stageValue, value } from './results.fixture.ts';

describe('a cell', () => {
  // RFC 4180, section 2, rules 5 to 7.
  test.each([
    ['plain', 'plain'],
    ['a,b', '"a,b"'],
    ['say "so"', '"say ""so"""'],
    ['two\nlines', '"two\nlines"'],
    [null, ''],
    [true, 'yes'],
    [-1.5e-9, '-1.5e-9'],
    [0.1, '0.1'],
    [NaN, '']
  ])('%j is written %j', (cell, text) => {
    expect(csvCell(cell)).toBe(text);
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', ' =HYPERLINK("x")', '＝1', '\r=1'])(
    'of text that begins like a formula (%j) gets an apostrophe in front',
    (text) => {
      expect(csvCell(text).replace(/^"/, '')).toMatch(/^'/);
    }
  );

  test('read back by the rules of RFC 4180 is the text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const cell = csvCell(text);
        const read = cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell;
        expect(read.replace(/^'/, '')).toBe(text.replace(/^'/, ''));
      }),
      { seed: 20260314 }
    );
  });
});

describe('a sheet as CSV', () => {
  const lines = sheetCsv(rig).split('\r\n');

  test('has a header, then one row a limit and stage, with equal counts of cells', () => {
    expect(lines[0]).toMatch(/^line,kind,name,stage,row,value,unit,/);
    expect(lines.filter((line) => line.includes('belt pulley'))).toHaveLength(2);
    expect(lines.find((line) => line.includes('"guard, whole arm"'))).toBe(
      '43,limit [safety],"guard, whole arm",sketch,,1,J,,2,0.93,1,close,,,'
    );
  });

  test('writes a column one row an entry, an empty cell for what was not measured', () => {
    const column = value('run.P', {
      kind: 'column',
      rows: 2,
      at: [stageValue({ value: [1.5, NaN], si: [1.5, NaN], text: '2 values' })]
    });
    const rows = sheetCsv(results({ values: [column] })).split('\r\n');
    expect(rows[1]).toBe('1,column,run.P,design,1,1.5,m,,,,,,1 m,,');
    expect(rows[2]).toBe('1,column,run.P,design,2,,m,,,,,,1 m,,');
  });

  test('keeps labels of a sheet from running as formulas', () => {
    const text = sheetCsv(results({ limits: [limit('=cmd|x')] }));
    expect(text).toContain(",'=cmd|x,");
  });
});
