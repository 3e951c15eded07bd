import { describe, expect, test } from 'vitest';
import { splitLines } from '#lib/text/index.ts';
import { readFrontMatter } from './front-matter.ts';
import { textAt, told } from './reading.fixture.ts';

const read = (text: string) => readFrontMatter(splitLines(text));
const problems = (yaml: string): string[] => read(`---\n${yaml}\n---\nprose\n`).problems.map(told);

describe('front matter', () => {
  test('all keys', () => {
    const { frontMatter, problems } = read(
      `---
format: 1
title: Whirling-arm spray rig
summary: One sentence.
by: [A. Designer, B. Builder]
units: US
digits: 5
money: EUR
headline: v_top
other: { kept: [1, 2] }
stages:
  sketch: First sketch
  first-run: { title: First run, date: 2026-03-14, built: true }
  upgrade: { title: Bigger motor, after: first-run, colour: red }
  faired: { title: Faired arms, after: first-run }
  last:
---
# prose`
    );
    expect(problems).toEqual([]);
    const { text, ...said } = frontMatter;
    expect(text.endsWith('last:\n---\n')).toBe(true);
    expect(said).toEqual({
      lineCount: 17, format: 1, title: 'Whirling-arm spray rig', summary: 'One sentence.',
      by: ['A. Designer', 'B. Builder'], units: 'US', digits: 5, money: 'EUR', headline: 'v_top',
      stages: [
        { id: 'sketch', title: 'First sketch', after: null, date: null, built: false, line: 12 },
        { id: 'first-run', title: 'First run', after: 'sketch', date: '2026-03-14', built: true, line: 13 },
        { id: 'upgrade', title: 'Bigger motor', after: 'first-run', date: null, built: false, line: 14 },
        { id: 'faired', title: 'Faired arms', after: 'first-run', date: null, built: false, line: 15 },
        { id: 'last', title: 'last', after: 'faired', date: null, built: false, line: 16 }
      ]
    });
  }); // prettier-ignore

  const defaults = {
    format: 1, title: null, summary: null, by: [], units: 'SI', digits: 4, money: null, headline: null,
    stages: [{ id: 'design', title: 'Design', after: null, date: null, built: false, line: 1 }]
  }; // prettier-ignore

  test.each([
    ['no front matter', 'prose', '', 0],
    ['an empty file', '', '', 0],
    ['a rule of hyphens is prose', '---\nprose\n---x\n', '', 0],
    ['only in the first line', '\n---\ntitle: a\n---\n', '', 0],
    ['empty front matter', '---\n---\n', '---\n---\n', 2],
    ['only a comment', '---\n# nothing\n---', '---\n# nothing\n---', 3],
    ['a byte order mark alone', '\ufeffprose', '\ufeff', 0],
    ['a byte order mark before it', '\ufeff---\n---\r\nx', '\ufeff---\n---\r\n', 2]
  ])('%s: what holds by default', (_, file, text, lineCount) => {
    const found = read(file);
    expect(found.frontMatter).toEqual({ ...defaults, text, lineCount });
    expect(found.problems).toEqual([]);
  });

  test('values keep the words of the file: 1.10 is not 1.1, yes is not true', () => {
    const { frontMatter } = read('---\ntitle: 1.10\nsummary: yes\nby: A. Designer\n---\n');
    expect(frontMatter).toMatchObject({ title: '1.10', summary: 'yes', by: ['A. Designer'] });
  });

  test('CRLF and lone CR', () => {
    expect(read('---\r\ntitle: a\r\nunits: US\r\n---\r\nx').frontMatter).toMatchObject({
      title: 'a',
      units: 'US'
    });
  });

  test('names of an object’s own parts are keys like any other', () => {
    const { frontMatter, problems } = read(
      '---\n__proto__: { title: x }\nconstructor: 1\ntitle: a\n---\n'
    );
    expect(frontMatter.title).toBe('a');
    expect(problems).toEqual([]);
  });
});

describe('a wrong value is one problem at its line, and the rest is read', () => {
  test.each([
    ['units: metric', '2:8-14 file/front-matter: units is metric, and should be SI or US. Write units: with SI or US after it, or leave it out.'],
    ['digits: 13', '2:9-11 file/front-matter: digits is 13, and should be a whole number from 2 to 12. Write digits: with a whole number from 2 to 12 after it, or leave it out.'],
    ['digits: 4.5', '2:9-12 file/front-matter: digits is 4.5, and should be a whole number from 2 to 12. Write digits: with a whole number from 2 to 12 after it, or leave it out.'],
    ['money: €', '2:8-9 file/front-matter: money is €, and should be a currency in three capital letters, as in EUR. Write money: with a currency in three capital letters, as in EUR after it, or leave it out.'],
    ['title: [a, b]', '2:8-14 file/front-matter: title is a list, and should be a line of text. Write title: with a line of text after it, or leave it out.'],
    ['by: { a: b }', '2:5-13 file/front-matter: by is a set of keys, and should be a list of names, as in [A. Designer, B. Builder]. Write by: with a list of names, as in [A. Designer, B. Builder] after it, or leave it out.'],
    ['format: 2', '2:9-10 file/front-matter: This file says format 2; format 1 is what is read here. Write format: 1, or read the file with a release that knows the other format.'],
    ['stages: [a, b]', '2:9-15 file/front-matter: stages is a list, and should be one line a stage, as in sketch: First sketch. Write stages: with one line a stage, as in sketch: First sketch after it, or leave it out.'],
    ['stages:\n  First: x', '3:3-8 file/front-matter: First is not the id of a stage: an id is small letters, digits and hyphens, a letter first. Write an id such as first-run, and the words as its title.'],
    ['stages:\n  a: [b]', '3:6-9 file/front-matter: a is a list, and should be a title, or { title: …, after: …, date: …, built: … }. Write a: with a title, or { title: …, after: …, date: …, built: … } after it, or leave it out.'],
    ['stages:\n  a: { date: 14 March }', '3:14-22 file/front-matter: date is 14 March, and should be a date, as in 2026-03-14. Write date: with a date, as in 2026-03-14 after it, or leave it out.'],
    ['stages:\n  a: { built: maybe }', '3:15-20 file/front-matter: built is maybe, and should be true or false. Write built: with true or false after it, or leave it out.'],
    ['- a list', '2:1-9 file/front-matter: The front matter is a list; keys with values were expected. Write lines such as title: Spray rig.'],
    ['stages:\n  a: x\n  b: { after: c }', '4:15-16 file/stage-unknown: b starts from c, which is not a stage of this sheet. It can start from a.'],
    ['stages:\n  a: { after: b }\n  b: { after: a }', '3:15-16 file/stage-circle: The stages a, b start from each other: a -> b -> a. Take after from one of them; until then a is read as a first stage.'],
    ['stages:\n  a: { after: a }', '3:15-16 file/stage-circle: The stage a starts from itself. Take after from one of them; until then a is read as a first stage.']
  ])('%s', (yaml, expected) => {
    expect(problems(`${yaml}`)).toEqual([expected]);
    const text = `---\n${yaml}\n---\n`;
    for (const { at, found } of read(text).problems) {
      if (found !== null && !/^a (list|set)/.test(found)) expect(textAt(text, at)).toBe(found);
    }
  }); // prettier-ignore

  test('front matter that is not closed', () => {
    const { frontMatter, problems } = read('---\ntitle: a\n\n```inputs\n```\n');
    expect(frontMatter.lineCount).toBe(0);
    expect(problems.map(told)).toEqual([
      '1:1-4 file/front-matter: The front matter that begins here has no closing line. Write --- on a line of its own after the last key.'
    ]);
  });

  test('broken YAML is told at its line, and the keys around it are read', () => {
    const found = read('---\ntitle: a\nby: [A, B\nunits: US\n---\nprose\n');
    expect(found.frontMatter).toMatchObject({ title: 'a', lineCount: 5 });
    expect(found.problems.length).toBeGreaterThan(0);
    expect(
      found.problems.every(
        ({ at, code }) => code === 'file/front-matter' && at.line >= 2 && at.line <= 5
      )
    ).toBe(true);
    expect(found.problems[0]?.message).toMatch(
      /^The front matter cannot be read from here on: .*[^.]\.$/
    );
  });

  test('a key written twice is told at the second', () => {
    const [first, ...more] = read('---\ntitle: a\ntitle: b\n---\n').problems;
    expect(first?.at).toEqual({ line: 3, from: 1, to: 2 });
    expect(more).toEqual([]);
  });

  test('a circle that others hang on is told once, and what follows is a tree', () => {
    const { frontMatter, problems } = read('---\nstages:\n  x: { after: b }\n  a: { after: b }\n  b: { after: a }\n  c: c\n---\n');
    expect(problems.map(({ code, at }) => [code, at.line])).toEqual([['file/stage-circle', 4]]);
    expect(frontMatter.stages.map(({ id, after }) => [id, after])).toEqual([['x', 'b'], ['a', null], ['b', 'a'], ['c', 'b']]);
  }); // prettier-ignore

  test.each([
    ['nested lists', '['.repeat(1900)],
    ['nested items', '- '.repeat(900)],
    ['nested items, many lines', Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}- - -`).join('\n')],
    ['question marks', '? '.repeat(900)],
    ['many keys', Array.from({ length: 5000 }, (_, i) => `k${i}: 1`).join('\n')],
    ['a chain of stages', `stages:\n${Array.from({ length: 4000 }, (_, i) => `  s${i}: { after: s${(i + 1) % 4000} }`).join('\n')}`],
    ['a long line', `title: ${'a'.repeat(1_000_000)}`],
    ['aliases of aliases', 'a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]']
  ])('hostile: %s, read in well under a second', { timeout: 2000 }, (_, yaml) => {
    expect(read(`---\n${yaml}\n---\n`).frontMatter.lineCount).toBeGreaterThan(2);
  }); // prettier-ignore
});
