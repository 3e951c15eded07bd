// docs/problems.md is what the catalogue gives.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { catalogue } from '#lib/problem/index.ts';
import { expect, test } from 'vitest';
import { problemsPage } from './page.ts';

const page = join(import.meta.dirname, '..', '..', 'docs', 'problems.md');

test('the page of problems is made from the catalogue as it stands: run `npm run problems`', () => {
  expect(readFileSync(page, 'utf8')).toBe(problemsPage());
});

test('the page has a heading for every code', () => {
  const headings = problemsPage().split('\n').filter((line) => line.startsWith('### ')); // prettier-ignore
  expect(headings).toEqual(catalogue.map(({ code }) => `### ${code}`));
});
