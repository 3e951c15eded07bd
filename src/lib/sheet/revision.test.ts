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

describe('a function revised at a stage', () => {
  const text = (revision: string): string =>
    `---\nstages:\n  a: A\n  b: B\n---\n\`\`\`inputs\nv = 10 m/s\n\`\`\`\n\`\`\`calc\nf(x) = 2*x\n  at b: ${revision}\ny = f(v)\nz = 3*v\n\`\`\`\n`;
  const states = (revision: string): unknown => {
    const { values } = compute(text(revision));
    return ['y', 'z'].map((name) => values.get(name)?.at.map(({ state }) => state));
  };

  it('computes each stage with its own body', () => {
    expect(
      compute(text('3*x'))
        .values.get('y')
        ?.at.map(({ si }) => si)
    ).toEqual([20, 30]);
  });

  it.each(['3*x +', 'nothing*x', '(x'])(
    'with the mistake %s leaves the other stage alone',
    (revision) => {
      expect(states(revision)).toEqual([['value', 'error'], ['value', 'value']]); // prettier-ignore
    }
  );

  it('to another dimension is told at its call', () => {
    expect(errors(text('x^2'))).toEqual(['12 units/mismatch']);
  });
});
