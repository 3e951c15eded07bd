import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import type { KnockOn } from '#lib/analysis/index.ts';
import { compareObject } from './compare-json.ts';
import type { Comparison } from './compare-json.ts';
import { compareText } from './compare-text.ts';
import { results, rig, tags } from './results.fixture.ts';
import { jsonText } from './json.ts';

const schemaOf = (name: string): object =>
  JSON.parse(
    readFileSync(new URL(`../../../docs/schemas/${name}.schema.json`, import.meta.url), 'utf8')
  ) as object;
const isCompare = new Ajv2020({ schemas: [schemaOf('result')] }).compile(schemaOf('compare'));

/** Figures of the invented rig between two of its stages. */
const knockOn: KnockOn = {
  from: { title: 'A rig', stage: 'first-run' },
  to: { title: 'A rig', stage: 'upgrade' },
  changedInputs: [
    { name: 'v_top', line: 20, before: '48 m/s', after: '80 m/s', ratio: 1.667, reason: 'the target again' }
  ], // prettier-ignore
  moved: [
    { name: 'T_pk', line: 70, kind: 'calc', unit: 'N m', before: 18.57, after: 129.5, beforeText: '18.57 N m', afterText: '129.5 N m', ratio: 6.97, change: null },
    { name: 'I_pk', line: 71, kind: 'calc', unit: 'A', before: 0, after: 84.8, beforeText: '0 A', afterText: '84.8 A', ratio: null, change: 'new' }
  ], // prettier-ignore
  flipped: [
    { label: 'motor pulley', line: 80, tags: tags('safety'), before: 'within', after: 'over', beforeUtilisation: 0.81, afterUtilisation: 2.26, direction: 'out' },
    { label: 'tip speed', line: 81, tags: tags(), before: 'short', after: 'met', beforeUtilisation: 2.05, afterUtilisation: 1, direction: 'in' },
    { label: 'noise', line: 82, tags: tags('level'), before: 'within', after: 'over', beforeUtilisation: null, afterUtilisation: null, direction: 'out' }
  ], // prettier-ignore
  stayedPut: [
    { label: 'motor pulley', line: 80, tags: tags('safety'), capacityText: '16 N m', before: 0.81, after: 2.26, grew: 2.81, status: 'over' },
    { label: 'brake peak', line: 83, tags: tags(), capacityText: '67.9 A', before: 0, after: 1.25, grew: null, status: 'over' },
    { label: 'vibration', line: 84, tags: tags(), capacityText: '4.5 mm/s', before: 0.046, after: 0.5, grew: 10.85, status: 'within' }
  ], // prettier-ignore
  unmoved: 12,
  unmatched: {
    onlyBefore: ['a'],
    onlyAfter: Array.from({ length: 14 }, (_, index) => `b_${index}`)
  }
};
const [from, to] = [
  { file: 'rig.md', title: 'First run' },
  { file: 'rig.md', title: 'Bigger motor' }
];
const comparison: Comparison = { knockOn, from, to, tries: [] };
const sides = [{ file: 'rig.md', results: results({}) }];

describe('a comparison as text', () => {
  test('tells what changed, what flipped, what stayed put while its load grew, and what moved', () => {
    expect(compareText([comparison], sides)).toBe(`First run to Bigger motor

What changed
  v_top  48 m/s → 80 m/s  ×1.7  line 20  the target again

Limits that flipped
  ● motor pulley [safety]  no longer inside  81 %, within → 226 %, over  line 80
  ✓ tip speed              inside again      205 %, short → 100 %, met   line 81
  ● noise [level]          no longer inside  within → over               line 82

Ratings that stayed put while their load grew
  ● motor pulley [safety]  16 N m    81 % → 226 %, over  ×2.8  line 80
  ● brake peak             67.9 A    0 % → 125 %, over   new   line 83
  ✓ vibration              4.5 mm/s  5 % → 50 %, within  ×11   line 84

Results that moved
  T_pk  ×7.0  18.57  →  129.5 N m  line 70
  I_pk  new       0  →  84.8 A     line 71

2 results moved, 12 did not (less than 0.5 %).
Only before the change: a.
Only after the change: b_0, b_1, b_2, b_3, b_4, b_5, b_6, b_7, b_8, b_9, b_10, b_11, and 2 more.
`);
  });

  test('names the files where they differ, and what is tried', () => {
    const head = (over: Partial<Comparison>): string | undefined =>
      compareText([{ ...comparison, ...over }], sides).split('\n')[0];
    expect(head({ to: { file: 'new.md', title: 'Bigger motor' } })).toBe(
      'First run, rig.md to Bigger motor, new.md'
    );
    const tries = [{ name: 'v_top', stage: 'upgrade', value: '60 m/s' }];
    const same = { ...knockOn, from: knockOn.to };
    expect(head({ tries, knockOn: same })).toBe(
      'Bigger motor, trying v_top = 60 m/s from upgrade on'
    );
  });

  test('says that nothing moved, and shows the errors that make it incomplete', () => {
    const still: KnockOn = { ...knockOn, changedInputs: [], moved: [], flipped: [], stayedPut: [], unmatched: { onlyBefore: [], onlyAfter: [] } }; // prettier-ignore
    const text = compareText(
      [{ ...comparison, knockOn: still }],
      [{ file: 'rig.md', results: rig }]
    );
    expect(text).toContain(
      'No result moved by 0.5 % or more; 12 results compared.\n\nrig.md:4:5  error'
    );
  });
});

test('a comparison as JSON keeps to its schema', () => {
  const read: unknown = JSON.parse(
    jsonText(compareObject([comparison], [{ file: 'rig.md', results: rig }]))
  );
  expect(isCompare(read), JSON.stringify(isCompare.errors)).toBe(true);
  expect(read).toMatchObject({
    compare: [{ stayedPut: [{ tags: ['safety'], grew: 2.81 }, { grew: 'new' }, {}] }],
    errors: [{ file: 'rig.md', code: 'units/mismatch' }]
  });
});
