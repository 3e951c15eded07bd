// Every problem of the catalogue as the engine says it today. The texts stand in catalogue.txt beside
// this file, to be read as a designer would; `UPDATE=1` rewrites it.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { catalogue, problemCodes, type RaisedProblem } from '#lib/problem/index.ts';
import { describe, expect, test } from 'vitest';
import { markedText, problemsOf, saidAbout } from './said.ts';

const raised = catalogue.filter((entry): entry is RaisedProblem => !entry.isLater);
const snapshot = join(import.meta.dirname, 'catalogue.txt');

test('the catalogue has one row for each code, in their order', () => {
  expect(catalogue.map((entry) => entry.code)).toEqual([...problemCodes]);
});

test('a meaning is one sentence', () => {
  for (const { code, meaning } of catalogue) expect(meaning, code).toMatch(/^[A-Z][^.]*\.$/u);
});

describe.each(raised.map((entry) => [entry.code, entry] as const))('%s', (code, entry) => {
  test('its example raises it, and nothing else', () => {
    const found = problemsOf(entry.example, entry.files);
    expect(found.map((each) => `${each.code}, ${each.severity}`)).toEqual(
      found.length > 0
        ? found.map(() => `${code}, ${entry.severity}`)
        : [`${code}, ${entry.severity}`]
    );
  });

  test('its cure raises nothing', () => {
    const said = problemsOf(entry.cure, entry.files).map((each) => `${each.code}: ${each.message}`);
    expect(said).toEqual([]);
  });

  test('it marks a run of characters that exists', () => {
    for (const found of problemsOf(entry.example, entry.files)) {
      const lines = entry.example.split('\n');
      expect(found.at.line).toBeLessThanOrEqual(lines.length);
      expect(found.at.to).toBeGreaterThan(found.at.from);
      expect(markedText(entry.example, found)).toHaveLength(found.at.to - found.at.from);
    }
  });

  test('its message is one sentence, and its hint can be done', () => {
    for (const { message, hint } of problemsOf(entry.example, entry.files)) {
      expect(message).toMatch(/[.?]$/u);
      if (hint !== null) expect(hint).toMatch(/[.?]$/u);
    }
  });
});

test('what is said about each example is what catalogue.txt holds', () => {
  const said = raised.map(saidAbout).join('\n');
  if (process.env['UPDATE'] === '1') writeFileSync(snapshot, said);
  expect(said).toBe(readFileSync(snapshot, 'utf8'));
});
