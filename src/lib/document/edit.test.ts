import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  editText,
  findInput,
  insertEntry,
  insertItem,
  rangeOfItem,
  replaceItem,
  setInputValue,
  type InputEdit
} from './edit.ts';
import { readWorksheet } from './read.ts';
import { blockIn, plain, sheetOf } from './reading.fixture.ts';
import type { Block } from './types.ts';

describe('changes', () => {
  test('are made at the offsets of the text as it was, in any order', () => {
    expect(editText('abcdef', [{ from: 4, to: 5, insert: 'E' }, { from: 0, to: 1, insert: '' }, { from: 2, to: 2, insert: '+' }])).toBe('b+cdEf');
  }); // prettier-ignore

  test.each([
    [
      [
        { from: 0, to: 2, insert: '' },
        { from: 1, to: 3, insert: '' }
      ]
    ],
    [[{ from: 2, to: 1, insert: '' }]],
    [[{ from: 0, to: 9, insert: '' }]],
    [[{ from: -1, to: 0, insert: '' }]],
    [[{ from: Number.NaN, to: 0, insert: '' }]]
  ])('that overlap or lie outside are refused: %j', (changes) => {
    expect(() => editText('abc', changes)).toThrow(RangeError);
  });
});

describe('an edit of one block leaves every other byte alone', () => {
  const piece = fc.constantFrom(
    'prose\n', '\r\n', '\t', '- x\n  ```calc\n', '\ufeff', '```calc\nb = 1\n```\n', '```inputs\r\nc = 1\r\n```\r\n', '\0', '# x\n\n', '~~~\n~~~\n'
  ); // prettier-ignore
  const around = fc.array(piece, { maxLength: 5 }).map((parts) => parts.join(''));

  test('replacing any block, whatever stands around it', () => {
    fc.assert(
      fc.property(around, around, (before, after) => {
        const text = `${before}\n\n${sheetOf('inputs', 'a = 1')}${after}`;
        const worksheet = readWorksheet(text);
        for (const item of worksheet.items) {
          const { from, to } = rangeOfItem(worksheet, item);
          expect(text.slice(from, to)).toBe(item.text);
          expect(editText(text, [replaceItem(worksheet, item, 'NEW')])).toBe(
            `${text.slice(0, from)}NEW${text.slice(to)}`
          );
        }
      }),
      { seed: 41, numRuns: 300 }
    );
  });

  test('setting a value changes nothing but that value', () => {
    fc.assert(
      fc.property(around, around, (before, after) => {
        const [head, tail] = [`${before}\n\n`, `  # c\r\n\tat x: 2\r\n~~~\r\n${after}`];
        const text = `${head}~~~inputs\r\na =\t1 ± 2 %${tail}`;
        const changes = setInputValue(readWorksheet(text), { name: 'a', stage: null, value: '5' });
        fc.pre(changes !== null);
        expect(editText(text, changes ?? [])).toBe(`${head}~~~inputs\r\na =\t5${tail}`);
      }),
      { seed: 42, numRuns: 300 }
    );
  });
});

describe('setting an input’s value', () => {
  const stages = '---\nstages:\n  one: One\n  two: Two\n  three: Three\n---\n';
  const after = (lines: string[], edit: Omit<InputEdit, 'name'>): string[] => {
    const text = stages + sheetOf('inputs', ...lines, 'b = 2');
    const changes = setInputValue(readWorksheet(text), { name: 'a', ...edit });
    const result = editText(text, changes ?? [])
      .slice(stages.length)
      .split('\n');
    return result.slice(1, -3);
  };

  test.each<[string, string[], Omit<InputEdit, 'name'>, string[]]>([
    ['its first value', ['a = 1 kW  # c'], { stage: null, value: '2 kW' }, ['a = 2 kW  # c']],
    ['with its tolerance', ['a = 1 kW ± 2 %  # c'], { stage: null, value: '2 kW ± 1 %' }, ['a = 2 kW ± 1 %  # c']],
    ['a range stays', ['a = 1 ± 2 % within 0 .. 9'], { stage: null, value: '2' }, ['a = 2 within 0 .. 9']],
    ['a value not known yet', ['a = ? kW'], { stage: null, value: '2 kW' }, ['a = 2 kW']],
    ['no value yet', ['a ='], { stage: null, value: '2 kW' }, ['a = 2 kW']],
    ['a value of several lines', ['a = 1 kW  # c', '  + 2 kW  # d', '  at two: 3 kW'], { stage: null, value: '5 kW' }, ['a = 5 kW  # c', '    # d', '  at two: 3 kW']],
    ['a revision that stands', ['a = 1', '  at two: 3 ± 1  # c'], { stage: 'two', value: '5' }, ['a = 1', '  at two: 5  # c']],
    ['one on the line after', ['a = 1', '  at two:', '    3'], { stage: 'two', value: '5' }, ['a = 1', '  at two:', '    5']],
    ['one without a value', ['a = 1', '  at two:  # c'], { stage: 'two', value: '5' }, ['a = 1', '  at two: 5  # c']],
    ['a new revision', ['a = 1  # c'], { stage: 'two', value: '5' }, ['a = 1  # c', '  at two: 5']],
    ['in the order of the stages', ['a = 1', '  at three: 3'], { stage: 'two', value: '5' }, ['a = 1', '  at two: 5', '  at three: 3']],
    ['after the earlier ones', ['a = 1', '\tat one: 3', '\t  # why'], { stage: 'two', value: '5' }, ['a = 1', '\tat one: 3', '\t  # why', '\tat two: 5']],
    ['with its reason', ['a = 1'], { stage: 'two', value: '5', reason: 'bigger; maker' }, ['a = 1', '  at two: 5  # bigger; maker']],
    ['a reason in place of a comment', ['a = 1  # c'], { stage: null, value: '5', reason: 'new' }, ['a = 5  # new']],
    ['a reason where none was', ['a = 1', '  at two: 3'], { stage: 'two', value: '5', reason: 'new' }, ['a = 1', '  at two: 5  # new']]
  ])('%s', (_, lines, edit, expected) => {
    expect(after(lines, edit)).toEqual(expected);
  }); // prettier-ignore

  test('reads back as what was set', () => {
    const text = sheetOf('inputs', 'ω = 1 rad/s', '  at two: 2 rad/s');
    const changes = setInputValue(readWorksheet(text), { name: 'omega', stage: 'two', value: '3 rad/s ± 1 %' });
    const entry = findInput(readWorksheet(editText(text, changes ?? [])), 'ω')?.placed.entry;
    expect(plain(entry?.kind === 'input' && entry.revisions[0]?.value)).toMatchObject({ expression: '3 rad/s', tolerance: { amount: '1 %' } });
  }); // prettier-ignore

  test('keeps CRLF, and ends a last line that had no end', () => {
    const set = (text: string): string =>
      editText(
        text,
        setInputValue(readWorksheet(text), { name: 'a', stage: 'x', value: '2' }) ?? []
      );
    expect(set('```inputs\r\na = 1\r\n```\r\n')).toBe('```inputs\r\na = 1\r\n  at x: 2\r\n```\r\n');
    expect(set('```inputs\na = 1')).toBe('```inputs\na = 1\n  at x: 2');
  });

  test('an input that is not there gives null', () => {
    expect(
      setInputValue(readWorksheet('prose'), { name: 'a', stage: null, value: '1' })
    ).toBeNull();
  });

  test.each(['', ' ', '1\nb = 2', '1\r'])(
    'a value that is not one line is refused: %j',
    (value) => {
      const worksheet = readWorksheet(sheetOf('inputs', 'a = 1'));
      expect(() => setInputValue(worksheet, { name: 'a', stage: null, value })).toThrow(RangeError);
      expect(() =>
        setInputValue(worksheet, { name: 'a', stage: null, value: '1', reason: value })
      ).toThrow(RangeError);
    }
  );
});

describe('insertions', () => {
  const text = `prose\n${sheetOf('inputs', 'a = 1', '  at x: 2', 'b = 2')}`;
  const worksheet = readWorksheet(text);
  const block: Block = blockIn(worksheet);

  test('an entry after another, with what belongs to it', () => {
    const change = insertEntry(worksheet, block, 'c = 3\n  at x: 4', block.entries[0] ?? null);
    expect(editText(text, [change])).toBe(`prose\n${sheetOf('inputs', 'a = 1', '  at x: 2', 'c = 3', '  at x: 4', 'b = 2')}`);
  }); // prettier-ignore

  test('an entry first in its block', () => {
    const change = insertEntry(worksheet, block, 'c = 3\n', null);
    expect(editText(text, [change])).toBe(
      `prose\n${sheetOf('inputs', 'c = 3', 'a = 1', '  at x: 2', 'b = 2')}`
    );
  });

  test('a block before an item, or at the end', () => {
    expect(editText(text, [insertItem(worksheet, 1, 'X\n')])).toBe(
      text.replace('```inputs', 'X\n```inputs')
    );
    expect(editText(text, [insertItem(worksheet, 9, 'X\n')])).toBe(`${text}X\n`);
  });

  test('an item of another worksheet is refused', () => {
    expect(() => rangeOfItem(readWorksheet(text), block)).toThrow(RangeError);
  });
});
