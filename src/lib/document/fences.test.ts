// The examples are those of CommonMark 0.31.2, section 4.5 (fenced code blocks), with the sections on
// lists, quotes and indented code where fences meet them: from memory, so their numbers are left out.
// `inputs` stands as the info string where the specification has none or another.

import { describe, expect, test } from 'vitest';
import { splitLines } from '#lib/text/index.ts';
import { segmentsOf } from './fences.ts';

/** Blocks as [first line, last line], from 1; an open one ends with a minus sign. */
function blocks(text: string): [number, number][] {
  return segmentsOf(splitLines(text))
    .filter(({ opening }) => opening !== null)
    .map(({ from, to, isClosed }) => [from + 1, isClosed ? to : -to]);
}

describe('fenced code, CommonMark 0.31.2 section 4.5', () => {
  test.each<[string, string, [number, number][]]>([
    ['backticks', '```\n<\n >\n```', [[1, 4]]],
    ['tildes', '~~~\n<\n >\n~~~', [[1, 4]]],
    ['two backticks open nothing', '``\nfoo\n``', []],
    ['the closing fence has the sign of the opening one', '```\naaa\n~~~\n```', [[1, 4]]],
    ['the same for tildes', '~~~\naaa\n```\n~~~', [[1, 4]]],
    ['the closing fence is at least as long', '````\naaa\n```\n``````', [[1, 4]]],
    ['the same for tildes', '~~~~\naaa\n~~~\n~~~~', [[1, 4]]],
    ['an unclosed listing runs to the end', '```\n\n```\naaa', [[1, 3]]],
    ['an unclosed listing runs to the end of the file', '`````\n\n```\naaa', [[1, -4]]],
    ['an unclosed one in a quote ends with the quote', '> ```\n> aaa\n\nbbb', []],
    ['a block may hold only empty lines', '```\n\n  \n```', [[1, 4]]],
    ['a block may be empty', '```\n```', [[1, 2]]],
    ['the opening fence may be indented by 1 to 3', ' ```\n aaa\naaa\n```', [[1, 4]]],
    ['by 2', '  ```\naaa\n  aaa\naaa\n  ```', [[1, 5]]],
    ['by 3', '   ```\n   aaa\n    aaa\n  aaa\n   ```', [[1, 5]]],
    ['four spaces make indented code', '    ```\n    aaa\n    ```', []],
    ['the closing fence may be indented otherwise', '```\naaa\n  ```', [[1, 3]]],
    ['and less than the opening one', '   ```\naaa\n  ```', [[1, 3]]],
    ['but not by 4', '```\naaa\n    ```', [[1, -3]]],
    ['a tab is 4', '```\naaa\n\t```', [[1, -3]]],
    ['a fence of backticks has none in its info', '``` ```\naaa', []],
    ['nor does a closing fence have spaces inside', '~~~~~~\naaa\n~~~ ~~', [[1, -3]]],
    ['it interrupts a paragraph', 'foo\n```\nbar\n```\nbaz', [[2, 4]]],
    ['it stands beside other blocks', 'foo\n---\n~~~\nbar\n~~~\n# baz', [[3, 5]]],
    ['an info string', '```ruby\ndef foo(x)\n  return 3\nend\n```', [[1, 5]]],
    ['an info string of several words', '~~~~    ruby startline=3 $%@#$\ndef\n~~~~~~~', [[1, 3]]],
    ['an info of backticks is code in a line', '``` aa ```\nfoo', []],
    ['an info of tildes may hold both', '~~~ aa ``` ~~~\nfoo\n~~~', [[1, 3]]],
    ['a closing fence has no info', '```\n``` aaa\n```', [[1, 3]]],
    ['a closing fence may have spaces after it', '```\naaa\n```  \t\nb', [[1, 3]]]
  ])('%s', (_, text, expected) => {
    expect(blocks(text)).toEqual(expected);
  });
});

describe('a fence inside a container is prose', () => {
  test.each<[string, string, [number, number][]]>([
    ['in a list item', '- a\n\n  ```inputs\n  x = 1\n  ```\n\nb', []],
    ['right after a list marker', '- ```inputs\n  x = 1\n  ```', []],
    ['in an ordered list', '10) a\n\n    ```inputs\n    ```', []],
    ['less indented than the item it is none of', '- a\n\n ```inputs\n ```', [[3, 4]]],
    ['it ends the list', '- a\n```inputs\n```', [[2, 3]]],
    ['an item goes on over lazy text', '- a\nlazy\n  ```inputs\n  ```', []],
    ['an open fence in an item ends with the item', '- ~~~\n  x\n\ny\n\n```inputs\n```', [[6, 7]]],
    ['in a quote', '> ```inputs\n> x = 1\n> ```', []],
    ['a quote ends at a line without its mark', '> a\n```inputs\n```', [[2, 3]]],
    ['a fence is no lazy line', '> ```\n```inputs\n```', [[2, 3]]],
    ['in an item in a quote', '> - a\n>   ```inputs\n>   ```', []],
    ['in a nested item', '- a\n  - b\n    ```inputs\n    ```', []],
    ['a nested item ends, its parent goes on', '- a\n  - b\n\n  ```inputs\n  ```', []],
    ['an empty item takes no line after an empty one', '-\n\n  ```inputs\n  ```', [[3, 4]]],
    ['a number other than 1 interrupts no paragraph', 'a\n2. b\n   ```inputs\n   ```', [[3, 4]]],
    ['a number 1 does', 'a\n1. b\n   ```inputs\n   ```', []],
    ['an empty item interrupts no paragraph', 'a\n-\n ```inputs\n ```', [[3, 4]]],
    ['a rule is no item', '- - -\n  ```inputs\n  ```', [[2, 3]]],
    ['a tab after a marker', '-\ta\n\n    ```inputs\n    ```', []],
    ['indented code in an item', '-     a\n\n  ```inputs\n  ```', []],
    ['raw HTML is text and hides nothing', '<!--\n```inputs\n```\n-->', [[2, 3]]],
    ['the same for elements', '<pre>\n```inputs\n```\n</pre>', [[2, 3]]]
  ])('%s', (_, text, expected) => {
    expect(blocks(text)).toEqual(expected);
  });
});

describe('a block of ours that is not closed', () => {
  test.each<[string, string, [number, number][]]>([
    ['ends before its first empty line', '```inputs\na = 1\nb = 2\n\nprose\n', [[1, -3]]],
    ['empty lines at its start do not count', '```inputs\n\na = 1\n\nprose\n', [[1, -3]]],
    ['ends before the next block of ours', '```inputs\na = 1\n```calc\nb = a\n```\n', [[1, -2], [3, 5]]],
    ['or at the end of the file', '```inputs\na = 1', [[1, -2]]],
    ['a listing is closed by the next bare fence, as in CommonMark', '```text\na\n```inputs\nb\n```', [[1, 5]]],
    ['a longer fence holds blocks as text', '````ask\n```inputs\n```\n````', [[1, 4]]],
    ['other fences stay what they are', '```inputs\na = 1\n~~~calc\n```', [[1, 4]]]
  ])('%s', (_, text, expected) => {
    expect(blocks(text)).toEqual(expected);
  }); // prettier-ignore
});
