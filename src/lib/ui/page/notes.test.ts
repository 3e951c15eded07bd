import { expect, test } from 'vitest';
import { problem, type ProblemOptions } from '#lib/problem/index.ts';
import { notesOf } from './notes.ts';

const stages = [{ id: 'a', title: 'First' }, { id: 'b', title: 'Second' }] as unknown as Parameters<typeof notesOf>[2]; // prettier-ignore
const lines = ['x = 1 m + 2 s', '  at b: 3 kg   ', ''];
const at = (
  line: number,
  from: number,
  to: number,
  message: string,
  options: ProblemOptions = {}
) => problem('units/mismatch', { line, from, to }, { message }, options);

test('a problem is handed out once, to the lines that hold it', () => {
  const notes = notesOf([at(1, 5, 14, 'one'), at(2, 9, 13, 'two')], lines, stages);
  expect(notes.take(2, 3).map((note) => note.message)).toEqual(['two']);
  expect(notes.take(1, 4).map((note) => note.message)).toEqual(['one']);
  expect(notes.takeRest()).toEqual([]);
});

test('the line is cut at the place meant', () => {
  const [note] = notesOf([at(1, 5, 14, 'one')], lines, stages).takeRest();
  expect(note?.source).toEqual({ before: 'x = ', marked: '1 m + 2 s', after: '' });
});

test.each([
  [1, 90, 95],
  [1, 0, 0],
  [1, 10, 3],
  [3, 1, 1],
  [99, 1, 2]
])('a place off its line (line %i, %i to %i) still gives a note', (line, from, to) => {
  const [note] = notesOf([at(line, from, to, 'odd')], lines, stages).takeRest();
  expect(note?.message).toBe('odd');
});

test('the same sentence at several stages is said once, with the stages named', () => {
  const notes = notesOf([at(1, 1, 2, 'same', { stage: 'a' }), at(1, 1, 2, 'same', { stage: 'b' })], lines, stages); // prettier-ignore
  expect(notes.takeRest().map((note) => note.stage)).toEqual(['First, Second']);
});

test('a block says itself that it is not computed yet', () => {
  const found = problem(
    'sheet/not-computed-yet',
    { line: 1, from: 1, to: 2 },
    { message: 'later' }
  );
  expect(notesOf([found], lines, stages).takeRest()).toEqual([]);
});
