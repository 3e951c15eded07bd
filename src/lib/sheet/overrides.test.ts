// Trials of inputs: what fits an input's kind, where it reaches, and what is refused.

import { describe, expect, it } from 'vitest';
import { compute } from './session.ts';

const sheet = [
  '---', 'stages:', '  one: One', '  two: { title: Two, after: one }', '  three: { title: Three, after: one }', '---',
  '```inputs', 'w = 60 rpm', 'v = 10 m/s', '  at two: 20 m/s', 'T = 20 degC', 'k = 2', '```',
  '```calc', 'x = k*v', '```', ''
].join('\n'); // prettier-ignore

const tried = (
  name: string,
  value: string,
  stage: string | null = null
): { x: unknown; codes: string[] } => {
  const results = compute(sheet, { overrides: [{ name, value, stage }] });
  return {
    x: results.values.get('x')?.at.map(({ si }) => si),
    codes: results.problems.map(({ code }) => code)
  };
};

describe('a trial', () => {
  it('replaces an input at every stage, whatever is revised there', () => {
    expect(tried('v', '36 km/h')).toEqual({ x: [20, 20, 20], codes: [] });
  });

  it('from a stage on reaches that stage and what starts from it', () => {
    expect(tried('v', '30 m/s', 'two')).toEqual({ x: [20, 60, 20], codes: [] });
  });

  it.each([
    ['v', '3 kg', 'units/mismatch'],
    ['w', '10 Hz', 'angle/needs-turn-or-radian'],
    ['x', '3 m/s', 'names/unknown'],
    ['nothing', '3', 'names/unknown'],
    ['v', '3 m/', 'syntax/unexpected'],
    ['k', '3 m', 'units/mismatch']
  ])('%s = %s is refused: %s', (name, value, code) => {
    expect(tried(name, value)).toEqual({ x: [20, 40, 20], codes: [code] });
  });

  it('at a stage that is none is refused', () => {
    expect(tried('v', '3 m/s', 'four')).toEqual({ x: [20, 40, 20], codes: ['line/unknown-stage'] });
  });

  it.each([
    ['w', '10 rad/s'],
    ['w', '1 rev/s'],
    ['T', '300 K'],
    ['T', '70 degF'],
    ['k', '50 %']
  ])('%s = %s fits', (name, value) => {
    expect(tried(name, value).codes).toEqual([]);
  });
});
