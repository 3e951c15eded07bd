import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockIn, everyKind, sheetOf, completeInfo } from './reading.fixture.ts';
import { createReader, longestFile, readWorksheet, writeWorksheet } from './read.ts';
import { filesWanted, isOutside } from './files.ts';
import type { Block } from './types.ts';

const blocksOf = (text: string): Block[] =>
  readWorksheet(text).items.filter((item): item is Block => item.kind === 'block');

describe('text to worksheet to text is the same, byte for byte', () => {
  const block = '```inputs\na = 1\n  at x: 2\n```\n';
  test.each([
    ['nothing', ''],
    ['an empty line', '\n'],
    ['prose without a final newline', 'prose'],
    ['CRLF', block.replaceAll('\n', '\r\n')],
    ['lone CR', block.replaceAll('\n', '\r')],
    ['mixed line ends', '```calc\r\na = 1\rb = 2\n\r\n```\rprose\n\r'],
    ['tabs', '```inputs\n\ta = 1\n\t\tat x:\t2\t# c\n```\t\n'],
    ['no final newline after a fence', '```calc\na = 1\n```'],
    ['a byte order mark', `\ufeff${block}`],
    ['a byte order mark and front matter', `\ufeff---\ntitle: a\n---\n${block}`],
    ['two byte order marks', `\ufeff\ufeff${block}`],
    ['a NUL', '```inputs\na\0 = 1\0\n```\n\0'],
    ['half a surrogate pair', '\ud800```\n\udc00'],
    ['unknown kinds', '```mermaid\ngraph\n```\n~~~ input {x}\n~~~\n'],
    ['broken front matter', `---\ntitle: [\n\t- x: : y\n---\n${block}`],
    ['front matter that is not closed', `---\ntitle: a\n${block}`],
    ['an unclosed fence', `${block}\n\`\`\`calc\na = 1\n\nprose`],
    ['nested fences', '````ask\n```inputs\na = 1\n```\n````\n'],
    ['tildes in lists', `- ~~~\n  x\n- y\n\n~~~calc\na\n~~~\n`],
    ['trailing white space', '```inputs   \na = 1   \n   \n```   \n   '],
    ['separators of Unicode', '```calc\na = 1\u2028b = 2\u0085\n```\n\u2029'],
    ['only fences', '```\n```\n```\n'],
    ['a last line of spaces', '```inputs\n  ']
  ])('%s', (_, text) => {
    expect(writeWorksheet(readWorksheet(text))).toBe(text);
  });

  const piece = fc.constantFrom(
    '---', 'title: a', 'stages:', '  a: { after: b }', '```', '```inputs', '~~~calc', '````', '   ```limits', '    ```',
    '- x', '> y', '  ', '\t', 'a = 1', '  at x: 2', 'b: a <= c', '# c', '\ufeff', '\0', '| a | b |', '"', '`', '{a}', ''
  ); // prettier-ignore
  const end = fc.constantFrom('\n', '\n', '\r\n', '\r', '');
  const mixture = fc
    .array(fc.tuple(piece, end), { maxLength: 25 })
    .map((parts) => parts.map(([text, lineEnd]) => text + lineEnd).join(''));

  test('any mixture of pieces', () => {
    const reader = createReader();
    fc.assert(
      fc.property(mixture, (text) => {
        const worksheet = reader.read(text);
        expect(writeWorksheet(worksheet)).toBe(text);
        let line = 1 + worksheet.frontMatter.lineCount;
        for (const item of worksheet.items) {
          expect(item.line).toBe(line);
          line +=
            item.kind === 'block'
              ? item.lineCount
              : item.text
                  .replace(/\r\n?/g, '\n')
                  .replace(/[^\n]$/, '$&\n')
                  .split('\n').length - 1;
        }
      }),
      { seed: 31, numRuns: 3000 }
    );
  });

  test('any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        expect(writeWorksheet(readWorksheet(text))).toBe(text);
      }),
      { seed: 32, numRuns: 1000 }
    );
  });

  test('a reader with memory reads the same as one without', () => {
    const reader = createReader();
    fc.assert(
      fc.property(mixture, (text) => {
        expect(reader.read(text)).toEqual(readWorksheet(text));
      }),
      { seed: 33, numRuns: 1000 }
    );
  });
});

describe('blocks', () => {
  test('every kind is recognised, with its entries at their lines', () => {
    for (const kind of everyKind) {
      const [block] = blocksOf(`prose\n\n${sheetOf(completeInfo[kind], 'a')}`);
      expect(block).toMatchObject({ block: kind, word: kind, line: 3, lineCount: 3 });
    }
  });

  test('base is the first line that is neither empty nor comment; entries stand below their fence', () => {
    const text = sheetOf('inputs', '# heading', '', '  a = 1', '    # deeper', '', '    at x: 2', '# other', '  b = 2', '');
    const entries = blocksOf(text)[0]?.entries.map(({ line, entry }) => [line, entry.kind, entry.lineCount]);
    expect(entries).toEqual([[1, 'heading', 1], [3, 'input', 4], [7, 'heading', 1], [8, 'input', 1]]);
  }); // prettier-ignore

  test('indentation of the fence is no indentation of its lines', () => {
    const text = '  ```inputs\n  a = 1\n b = 2\n    at x: 3\n  ```\n';
    expect(
      blocksOf(text)[0]?.entries.map(({ entry }) => [entry.kind, entry.problems.length])
    ).toEqual([
      ['input', 0],
      ['input', 0]
    ]);
  });

  test('a tab counts as 4 columns', () => {
    const text = sheetOf('inputs', '    a = 1', '\tb = 2', '\t  at x: 3');
    expect(blocksOf(text)[0]?.entries.map(({ entry }) => entry.text)).toEqual([
      '    a = 1',
      '\tb = 2\n\t  at x: 3'
    ]);
  });

  test('one wrong line stops only itself', () => {
    const { items, problems } = readWorksheet(sheetOf('inputs', 'a = 1', 'nonsense', 'b = 2'));
    expect(blockIn({ items } as never).entries.map(({ entry }) => entry.kind)).toEqual([
      'input',
      'broken',
      'input'
    ]);
    expect(problems).toHaveLength(1);
  });

  test('a block that is not closed does not swallow the sheet', () => {
    const text = '```inputs\na = 1\n\nprose\n\n```calc\nb = a\n```\n';
    const { items, problems } = readWorksheet(text);
    expect(items.map((item) => (item.kind === 'block' ? item.block : item.text))).toEqual([
      'inputs',
      '\nprose\n\n',
      'calc'
    ]);
    expect(problems.map(({ code, at }) => [code, at.line])).toEqual([['file/block-not-closed', 1]]);
  });

  test('prose kinds keep their prose, lines with a part in the format beside it', () => {
    const [ask, caution, remark, event] = blocksOf(
      sheetOf('ask', 'How fast?', 'answer it', '', 'answer v ± 5 %  ') + sheetOf('caution danger', '# Keep {d} away', 'at x: y') +
      sheetOf('remark', 'by: A, 2026-03-14', 'thin: very', 'resolved: B, 2026-03-15') + sheetOf('event at run', '2026-03-14: it broke')
    );
    expect(ask).toMatchObject({ prose: 'How fast?\nanswer it\n\nanswer v ± 5 %  \n', entries: [{ line: 4 }] });
    expect(caution).toMatchObject({ prose: '# Keep {d} away\nat x: y\n', entries: [], head: { signal: 'danger' } });
    expect(remark?.entries.map(({ line }) => line)).toEqual([1, 3]);
    expect(event).toMatchObject({ prose: '2026-03-14: it broke\n', entries: [{ line: 1, entry: { form: 'happened' } }] });
  }); // prettier-ignore

  test('lines of a problem are lines of the file, below front matter and other blocks', () => {
    const text = `---\ntitle: a\n---\nprose\n${sheetOf('inputs', 'a = 1')}\n${sheetOf('calc', 'x = 1', '', 'y z = 2 +', '  3')}`;
    expect(readWorksheet(text).problems.map(({ at }) => at)).toEqual([
      { line: 12, from: 1, to: 4 }
    ]);
  });
});

describe('what did not change is the same object', () => {
  const lines = Array.from({ length: 40 }, (_, i) => `x_${i} = ${i} * a`);
  const sheet = (calc: readonly string[], prose = 'prose'): string =>
    `${sheetOf('inputs', 'a = 1')}${prose}\n${sheetOf('calc', ...calc)}`;

  test('the whole worksheet’s items after reading the same text again', () => {
    const reader = createReader();
    const [first, second] = [reader.read(sheet(lines)), reader.read(sheet(lines))];
    expect(second.items.every((item, i) => item === first.items[i])).toBe(true);
  });

  test('a block that only moved keeps its entries', () => {
    const reader = createReader();
    const [, , before] = reader.read(sheet(lines)).items as [Block, unknown, Block];
    const [, , after] = reader.read(sheet(lines, 'more\nprose')).items as [Block, unknown, Block];
    expect(after.line).toBe(before.line + 1);
    expect(after.entries).toBe(before.entries);
  });

  test('in a block that changed every other entry is kept, wherever it stands now', () => {
    const reader = createReader();
    const [, , before] = reader.read(sheet(lines)).items as [Block, unknown, Block];
    const edited = ['new = 1', ...lines.map((line, i) => (i === 20 ? `${line} + 1` : line))];
    const [, , after] = reader.read(sheet(edited)).items as [Block, unknown, Block];
    const kept = before.entries.filter(({ entry }) =>
      after.entries.some((placed) => placed.entry === entry)
    );
    expect(kept).toHaveLength(39);
    expect(after.entries[1]?.entry).toBe(before.entries[0]?.entry);
  });

  test('the same text in a block of another kind is another entry', () => {
    const [a, b] = blocksOf(sheetOf('inputs', 'a = 1') + sheetOf('calc', 'a = 1'));
    expect([a?.entries[0]?.entry.kind, b?.entries[0]?.entry.kind]).toEqual([
      'input',
      'calculation'
    ]);
  });

  test('line ends are none of an entry’s text', () => {
    const reader = createReader();
    const text = sheetOf('inputs', 'a = 1', '  at x: 2');
    const before = blockIn(reader.read(text)).entries[0]?.entry;
    expect(blockIn(reader.read(text.replaceAll('\n', '\r\n'))).entries[0]?.entry).toBe(before);
  });

  test('a long session does not keep every half-written line', () => {
    const reader = createReader();
    for (let i = 0; i < 5000; i++) reader.read(sheet([`x = ${i}`]));
    const first = blockIn(reader.read(sheet(lines))).entries[0]?.entry;
    expect(blockIn(reader.read(sheet(lines))).entries[0]?.entry).toBe(first);
  });
});

describe('hostile input is read in time that grows with its length', () => {
  test.each<[string, string]>([
    ['a line of 1 MB in an entry', sheetOf('calc', `x = ${'a+'.repeat(500_000)}`)],
    ['a line of 1 MB of prose', `${'- '.repeat(500_000)}x\n\n  y\n`],
    ['quotes', '>'.repeat(1_000_000)],
    ['10,000 fences', '```inputs\na = 1\n```\n'.repeat(10_000)],
    ['10,000 fences, none closed', '```inputs\na = 1\n'.repeat(10_000)],
    ['10,000 fences of two kinds, none closed', '```inputs\n~~~calc\n'.repeat(5_000)],
    [
      'fences that get shorter',
      Array.from({ length: 1500 }, (_, i) => '`'.repeat(1503 - i) + 'inputs').join('\n')
    ],
    ['1 MB of backticks', '`'.repeat(1_000_000)],
    ['1 MB of empty lines', '\n'.repeat(1_000_000)],
    ['nested lists and empty lines', '- '.repeat(99) + 'a\n' + '\n'.repeat(300_000)],
    [
      'an entry of 100,000 lines',
      sheetOf('calc', 'x = 1', ...Array<string>(100_000).fill('  + a # b; c'))
    ],
    ['100,000 revisions', sheetOf('inputs', 'x = 1', ...Array<string>(100_000).fill('  at a: 2'))],
    ['a label of brackets', sheetOf('limits', `${'[]'.repeat(900)}: a <= b`)],
    ['a header of digits', sheetOf('table T', `a ± 1 dof ${'1'.repeat(500_000)}x`)],
    ['a rule that is none', sheetOf('table T', '| a |', `|${'-'.repeat(500_000)}x`)],
    ['suffixes', sheetOf('inputs', `x = 1 ± 1 ${'sd '.repeat(600)}`)],
    ['parts of a list', sheetOf('parts', 'x', `  rating ${'a,'.repeat(900)}`)],
    ['5 million characters', 'word '.repeat(1_000_000)]
  ])('%s', { timeout: 2500 }, (_, text) => {
    expect(writeWorksheet(readWorksheet(text))).toBe(text);
  });

  test('a file over the limit is kept whole and not read', () => {
    const text = `${sheetOf('inputs', 'a = 1')}${'x'.repeat(longestFile)}`;
    const { items, problems } = readWorksheet(text);
    expect(items).toEqual([{ kind: 'prose', line: 1, text }]);
    expect(problems.map(({ code, message }) => [code, message])).toEqual([
      [
        'file/too-long',
        'This file has 5000020 characters, more than the 5000000 characters that are read.'
      ]
    ]);
  });

  test('names of an object’s own parts are names', () => {
    const text = sheetOf('inputs', '__proto__ = 1', 'constructor = 2', 'hasOwnProperty = 3');
    expect(readWorksheet(text).problems).toEqual([]);
    expect(blocksOf('```__proto__\n```\n```constructor\n```\n').map(({ block }) => block)).toEqual([
      'listing',
      'listing'
    ]);
  });
});

describe('files of tables', () => {
  test('are listed with the line of their block', () => {
    const text = `prose\n${sheetOf('table T from data/motors.csv')}${sheetOf('table U', 'a')}${sheetOf('table V from my file.csv')}`;
    expect(filesWanted(readWorksheet(text))).toEqual([
      { path: 'data/motors.csv', line: 2 },
      { path: 'my file.csv', line: 7 }
    ]);
  });

  test.each([
    '/etc/passwd', '../x.csv', 'a/../../x.csv', '..', 'C:/x.csv', 'c:x.csv', 'http://x.y/z.csv', 'file:x', '//x/y',
    'a\\..\\b', '\\\\x\\y', 'a\0.csv', '~/x.csv', 'a\u007f', ''
  ])('%j leads outside and is not asked for', (path) => {
    expect(isOutside(path)).toBe(true);
    const { problems } = readWorksheet(sheetOf(`table T from ${path}`));
    expect(problems.map(({ code }) => code)).toEqual([path === '' ? 'line/not-understood' : 'file/table-outside']);
    expect(filesWanted(readWorksheet(sheetOf(`table T from ${path}`)))).toEqual([]);
  }); // prettier-ignore

  test.each(['x.csv', 'a/b/x.csv', './x.csv', 'a..b.csv', '...', 'größe.csv', 'a b.csv'])(
    '%j stays inside',
    (path) => {
      expect(isOutside(path)).toBe(false);
    }
  );
});
