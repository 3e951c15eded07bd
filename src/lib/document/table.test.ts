import { describe, expect, test } from 'vitest';
import { plain, sheetOf, blockIn, textAt, told } from './reading.fixture.ts';
import { readWorksheet } from './read.ts';
import { readTableText } from './table.ts';

const cells = (text: string): unknown =>
  plain(readTableText(text, { path: 't.csv' }).rows.map((row) => row.cells));
const columns = (text: string): unknown => plain(readTableText(text, { path: 't.csv' }).columns);

describe('tables', () => {
  test('columns carry a unit and a tolerance', () => {
    const none = { unit: null, tolerance: null, common: false };
    expect(columns('name, v [m/s], P [W] ± 2 %, T [K] ± 0.5 K sd common, x ± 1')).toEqual([
      { ...none, name: 'name' },
      { ...none, name: 'v', unit: 'm/s' },
      { name: 'P', unit: 'W', common: false, tolerance: { amount: '2 %', shape: 'rectangular', coverage: null, degreesOfFreedom: null } },
      { name: 'T', unit: 'K', common: true, tolerance: { amount: '0.5 K', shape: 'normal', coverage: 1, degreesOfFreedom: null } },
      { ...none, name: 'x', tolerance: { amount: '1', shape: 'rectangular', coverage: null, degreesOfFreedom: null } }
    ]);
  }); // prettier-ignore

  test.each([
    ['the separator is the first of tab, |, ; and , in the header', 'a\tb\n1\t2|3', [['1', '2|3']]],
    ['bars', 'a | b\n1 | 2', [['1', '2']]],
    ['outer bars and the line under the header are skipped', '| a | b |\n|---|:-:|\n| 1 | 2 |\n| 3 | |', [['1', '2'], ['3', null]]],
    ['only under the header', '| a |\n| 1 |\n| - |', [['1'], ['-']]],
    ['a semicolon lets numbers have a decimal comma', 'a;b\n1,5;-2,5e3\nM8, steel;,5', [['1.5', '-2.5e3'], ['M8, steel', '.5']]],
    ['commas', 'a,b\n1.5,2', [['1.5', '2']]],
    ['an empty cell is not measured', 'a,b\n,2\n1,', [[null, '2'], ['1', null]]],
    ['one column', 'a\n1\n2', [['1'], ['2']]],
    ['empty lines are skipped, rows may be indented', 'a,b\n\n  1, 2\n \n3,4\n', [['1', '2'], ['3', '4']]],
    ['nothing is a comment', 'a,b\n# 1,2', [['# 1', '2']]],
    ['CRLF and a byte order mark', '\ufeffa,b\r\n1,2\r\n', [['1', '2']]],
    // RFC 4180, section 2, rules 5 to 7
    ['quoted cells', '"a","b"\n"1","2"', [['1', '2']]],
    ['quotes hold the separator', 'a,b\n"1,000",x', [['1,000', 'x']]],
    ['quotes hold a line end', 'a,b\n"x\r\ny",2\n3,4', [['x\ny', '2'], ['3', '4']]],
    ['a quote inside quotes is doubled', 'a,b\n"say ""x""",2', [['say "x"', '2']]],
    ['a quote inside a cell is text', 'a,b\n3/4" pipe,2', [['3/4" pipe', '2']]]
  ])('%s', (_, text, expected) => {
    expect(cells(text)).toEqual(expected);
    expect(readTableText(text, { path: 't.csv' }).problems).toEqual([]);
  }); // prettier-ignore

  test('cells stand where they are in the text', () => {
    const text = 'name ; v [m/s] \n "A" ;  1,5\n';
    const table = readTableText(text, { path: 't.csv' });
    const cuts = [...table.columns.map(({ name }) => name), ...table.rows.flatMap(({ cells }) => cells)];
    const places = cuts.map((cut) => cut && [cut.pieces[0]?.line, cut.pieces[0]?.column]);
    expect(places).toEqual([[0, 1], [0, 8], [1, 3], [1, 9]]);
    expect(table.decimalComma).toBe(true);
  }); // prettier-ignore
});

describe('readings', () => {
  const text = sheetOf(
    'readings run1 at first-run',
    'date 2026-03-14  # morning',
    '',
    'v [m/s], P [W] ± 3 W, note',
    '10, 20,',
    '20, 90, gusty',
    'leave out 2, 1  # gusts'
  );

  test('a date before the header, rows left out after it', () => {
    const block = blockIn(readWorksheet(text));
    expect(plain(block.head)).toEqual({ title: null, name: 'run1', from: null, at: 'first-run', to: null, signal: null });
    expect(plain(block.table?.rows)).toEqual([{ line: 4, cells: ['10', '20', null] }, { line: 5, cells: ['20', '90', 'gusty'] }]);
    expect(block.table).toMatchObject({ date: '2026-03-14', leftOut: [{ row: 2, why: 'gusts' }, { row: 1, why: 'gusts' }] });
  }); // prettier-ignore

  test('in a table these lines are rows', () => {
    const block = blockIn(readWorksheet(sheetOf('table T', 'a', 'leave out 2')));
    expect(plain(block.table?.rows)).toEqual([{ line: 2, cells: ['leave out 2'] }]);
  });
});

describe('problems of tables', () => {
  test.each([
    ['a, b\n1, 2, 3', '3:1-8 line/column-count: This row has 3 cells, and the header 2 columns. Leave a cell empty where nothing was measured; put a cell that holds the separator in quotes.'],
    ['a, b\n1', '3:1-2 line/column-count: This row has 1 cell, and the header 2 columns. Leave a cell empty where nothing was measured; put a cell that holds the separator in quotes.'],
    ['a, 2nd run [m]\n1, 2', '2:4-11 line/not-understood: 2nd run is not a name: a name is letters, digits and _, and does not begin with a digit. Join words by _, as in T_shaft.'],
    ['a, "b\n1, 2', '2:4-5 table/cell: The quotation mark that begins this cell is not closed. Close it; a quotation mark inside a quoted cell is written twice.'],
    ['a, b\n"x" y, 2', '3:5-6 table/cell: After the closing quotation mark of this cell stands more: y. Put the whole cell in quotes, or none of it.'],
    ['', '1:1-1 line/not-understood: The table T has no header. Write the names of its columns first, each with its unit: v [m/s], P [W].']
  ])('%j', (rows, expected) => {
    const text = sheetOf('table T', ...rows.split('\n'));
    const { problems } = readWorksheet(text);
    expect(told(problems[0] as (typeof problems)[0])).toBe(expected);
    for (const { at, found, code } of problems) {
      if (found !== null && code !== 'line/column-count') expect(textAt(text, at)).toBe(found);
    }
  }); // prettier-ignore

  test(
    'a table of many cells is read in time that grows with its length',
    { timeout: 2000 },
    () => {
      const text = `a,b,c\n${'1,2,3\n'.repeat(50_000)}`;
      expect(readTableText(text, { path: 't.csv' }).rows).toHaveLength(50_000);
      const quotes = readTableText(`a\n${'"\n'.repeat(100_001)}`, { path: 't.csv' });
      expect(quotes.rows.length).toBeGreaterThan(0);
    }
  );
});
