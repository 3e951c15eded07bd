// A revision keeps the dimension, plane angle included.

import { describe, expect, it } from 'vitest';
import { compute } from '#lib/sheet/index.ts';

const sheet = (block: string, base: string, revision: string): string =>
  `---\nstages:\n  a: A\n  b: B\n---\n\`\`\`inputs\nv = 10 m/s\nR = 2 m\n\`\`\`\n\`\`\`${block}\nw = ${base}\n  at b: ${revision}\n\`\`\`\n`;

const errors = (text: string): string[] =>
  compute(text).problems.flatMap(({ severity, code, at }) =>
    severity === 'error' ? [`${at.line} ${code}`] : []
  );

describe('a revision', () => {
  it.each([
    ['inputs', '60 rpm', '10 Hz', '12 angle/counts-radians'],
    ['inputs', '10 Hz', '60 rpm', '12 angle/counts-radians'],
    ['inputs', '3 m', '3 s', '12 units/mismatch'],
    ['calc', 'v/R to rad/s', 'v/R', '12 angle/counts-radians'],
    ['calc', 'v*R', 'v/R', '12 units/mismatch']
  ])('in %s from %s to %s is refused at its place', (block, base, revision, code) => {
    expect(errors(sheet(block, base, revision))).toEqual([code]);
  });

  it.each([
    ['inputs', '60 rpm', '10 rad/s'],
    ['inputs', '60 rpm', '1 rev/s'],
    ['inputs', '5 deg', '0.1 rad'],
    ['inputs', '3 m', '12 in'],
    ['inputs', '3 m', '0 m'],
    ['inputs', '20 degC', '300 K'],
    ['calc', 'v/R to rad/s', '2*v/R to rad/s'],
    ['calc', 'v*R', '2*v*R']
  ])('in %s from %s to %s stands', (block, base, revision) => {
    expect(errors(sheet(block, base, revision))).toEqual([]);
  });

  it('that is refused leaves the other stages alone', () => {
    const value = compute(sheet('inputs', '60 rpm', '10 Hz')).values.get('w');
    expect(value?.at.map(({ state, text }) => [state, text])).toEqual([['value', '60 rpm'], ['error', '']]); // prettier-ignore
  });
});
