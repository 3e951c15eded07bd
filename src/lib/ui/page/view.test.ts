import { describe, expect, test } from 'vitest';
import { columnsOf, hrefOf, viewOf, viewRequestOf } from './view.ts';

const ids = ['sketch', 'first-run', 'upgrade', 'refined'];
const viewAt = (query: string) => viewOf(viewRequestOf(new URLSearchParams(query)), ids);

describe('the view asked for by an address', () => {
  test.each([
    ['', null, 3, true],
    ['stage=upgrade', 2, 2, true],
    ['stage=gone', null, 3, true],
    ['of=first-run', null, 1, true],
    ['of=first-run&stage=sketch', 0, 0, true],
    ['numbers=off', null, 3, false],
    ['stage=__proto__&numbers=maybe', null, 3, true]
  ])('%j: focus %s, numbers of %s', (query, focus, shown, hasNumbers) => {
    expect(viewAt(query)).toEqual({ focus, shown, hasNumbers });
  });

  test('an address made from a view asks for that view', () => {
    for (const focus of [null, 0, 1, 2, 3])
      for (const shown of focus === null ? [0, 1, 2, 3] : [focus])
        for (const hasNumbers of [true, false]) {
          const view = { focus, shown, hasNumbers };
          expect(viewAt(hrefOf(view, ids).slice(1))).toEqual(view);
        }
  });

  test('a sheet with one stage needs no query', () => {
    expect(hrefOf({ focus: null, shown: 0, hasNumbers: true }, ['design'])).toBe('?');
  });
});

describe('columns', () => {
  const columns = (shown: number, count: number) =>
    columnsOf({ focus: null, shown, hasNumbers: true }, count).join(' ');

  test('up to six stages stand side by side', () => {
    expect(columns(5, 6)).toBe('0 1 2 3 4 5');
    expect(columns(0, 1)).toBe('0');
  });

  test('of more, a window of five round the stage shown, moved in at the ends', () => {
    expect(columns(0, 9)).toBe('0 1 2 3 4');
    expect(columns(4, 9)).toBe('2 3 4 5 6');
    expect(columns(8, 9)).toBe('4 5 6 7 8');
  });
});
