// The page on the worksheet format is itself a worksheet: its examples are computed here, so that a
// reader who copies one gets what the page says.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { blockKinds, readWorksheet } from '#lib/document/index.ts';
import { compute } from '#lib/sheet/index.ts';

const text = readFileSync(join(import.meta.dirname, '../../docs/worksheet-format.md'), 'utf8');

test('the page shows every kind of block', () => {
  const shown = new Set(
    readWorksheet(text).items.flatMap((item) => (item.kind === 'block' ? [item.block] : []))
  );
  expect(blockKinds.filter((kind) => !shown.has(kind))).toEqual([]);
});

test('no example has a mistake, and nothing but kinds still to come is remarked on', () => {
  const remarks = compute(text).problems.filter(({ code }) => code !== 'sheet/not-computed-yet');
  expect(remarks).toEqual([]);
});

test('what the page says about its own figures is so', () => {
  const { values, limits } = compute(text);
  const choice = values.get('drive.motor')?.at.map((at) => at.text);
  expect(choice).toEqual(['gear motor 250', 'gear motor 370']);
  expect(limits.get('speed asked for')?.at[0]?.atLimit).toBe(true);
});
