import { describe, expect, it } from 'vitest';
import { block, inputLines, reference, relativeDifference, run } from '../worksheet.ts';

interface Case {
  readonly id: number;
  readonly case: string;
  readonly inputs: Record<string, string>;
  readonly expression: string;
  readonly to: string;
  readonly outcome: 'value' | 'note' | 'warning' | 'error';
  readonly textbook_value: number;
}

const { cases } = reference<{ cases: Case[] }>(import.meta.url, 'angle.json');

/** What a line may be remarked on, least first; the outcome of a case is the worst remark on it. */
const outcomes = ['value', 'note', 'warning', 'error'] as const;

function outcome(text: string, name: string) {
  const sheet = run(text);
  const severities = sheet.problems(name).map((found) => found.split(' ')[0]);
  const worst = Math.max(0, ...outcomes.map((o, i) => (severities.includes(o) ? i : 0)));
  return { outcome: outcomes[worst], value: sheet.shown(name), codes: sheet.problems(name) };
}

const sheetOf = ({ inputs, expression, to }: Case) =>
  block('inputs', inputLines(inputs)) + block('calc', [`y = ${expression} to ${to}`]);

/** The remark says that the line does not compute what the textbook does. */
const notTheTextbookValue = new Set([4, 25, 47]);
/** The rules leave the choice between an error and a note. */
const eitherNoteOrError = new Set([49]);

describe('plane angle', () => {
  it('has 36 cases', () => expect(cases.length).toBe(36));

  it.each(cases)('case $id, $case: $expression to $to is a $outcome', (one) => {
    const found = outcome(sheetOf(one), 'y');
    const allowed = eitherNoteOrError.has(one.id) ? ['note', 'error'] : [one.outcome];
    expect(allowed, found.codes.join()).toContain(found.outcome);
    if (found.outcome === 'error') {
      expect(found.value).toBeNaN();
      expect(
        found.codes.every((code) => code.includes(' angle/')),
        found.codes.join()
      ).toBe(true);
    } else if (!notTheTextbookValue.has(one.id)) {
      // Some textbook values are printed to six figures, the inputs too.
      expect(relativeDifference(found.value, one.textbook_value)).toBeLessThan(3e-6);
    }
  });
});

describe('plane angle over names', () => {
  const w = 'w = 600 rpm';
  const chains: [string[], string[], string, (typeof outcomes)[number], number][] = [
    [[w], ['f = w/(2*pi)', 'y = f to Hz'], 'f shown in Hz', 'value', 10],
    [[w], ['f = w/(2*pi)', 'y = f to rpm'], 'f shown in rpm', 'error', NaN],
    [['f = 10 Hz'], ['w = 2*pi*f', 'y = w to rpm'], 'w shown in rpm', 'value', 600],
    [['f = 10 Hz'], ['w = 2*pi*f', 'y = w to Hz'], 'w shown in Hz', 'error', NaN],
    [[w], ['T = 2*pi/w', 'y = T to s'], 'a period by way of a name', 'value', 0.1],
    [[w], ['T = 1/w', 'y = T to s'], 'a time per radian by way of a name', 'error', NaN],
    [['v = 10 m/s', 'R = 0.5 m'], ['w = v/R to rad/s', 'y = w to rpm'], 'v/R stated', 'value', 600/Math.PI], // prettier-ignore
    [['v = 10 m/s', 'R = 0.5 m'], ['w = v/R', 'y = w to rpm'], 'v/R not stated', 'error', NaN],
    [['k = 1000 N/m', 'M = 2 kg'], ['w = sqrt(k/M)', 'y = w to Hz'], 'a bare root in Hz', 'warning', Math.sqrt(500)], // prettier-ignore
    [['k = 1000 N/m', 'M = 2 kg'], ['w = sqrt(k/M) to rad/s', 'y = w to Hz'], 'a stated root in Hz', 'error', NaN] // prettier-ignore
  ];
  it.each(chains)('%j, %j: %s is a %s', (inputs, calc, _, expected, value) => {
    const found = outcome(block('inputs', inputs) + block('calc', calc), 'y');
    expect(found.outcome, found.codes.join()).toBe(expected);
    if (expected !== 'error') expect(relativeDifference(found.value, value)).toBeLessThan(1e-12);
  });
});
