// Laws of the sheet: an edit gives what the whole text would give, at the cost of what it reaches; order
// and unrelated names change nothing.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { knockOn } from '#lib/analysis/index.ts';
import { compute, Session, type Results } from '#lib/sheet/index.ts';
import { mutated } from '../hostile/mutate.ts';
import { Random } from './random.ts';

const block = (kind: string, lines: readonly string[]): string =>
  ['```' + kind, ...lines, '```', ''].join('\n');
const worksheet = (name: string): string =>
  readFileSync(new URL(`../../worksheets/${name}`, import.meta.url), 'utf8');

/** Everything of results that a reader sees, as plain text that can be compared. */
function projection(results: Results): unknown {
  return {
    stages: results.stages,
    values: [...results.values].map(([name, row]) => [
      name, row.line, row.kind, row.dimension?.key, row.unit?.text, row.rows, row.at, row.uses, row.usedBy
    ]), // prettier-ignore
    limits: [...results.limits].map(([label, row]) => [label, row.line, row.unit?.text, row.at]),
    choices: [...results.choices].map(([name, row]) => [name, row.line, row.at]),
    problems: results.problems
  };
}

/** Random definitions over two stages; each uses earlier ones, stands anywhere, and may be revised. */
function randomSheet(random: Random, count: number): string {
  const inputs: string[] = [];
  const lines: string[] = [];
  for (let i = 0; i < count; i++) {
    const earlier = (): string => `n_${random.below(i)}`;
    if (i < 3 || random.chance(0.2)) {
      const tolerance = random.chance(0.5) ? ' ± 1 %' : '';
      inputs.push(`n_${i} = ${random.between(1, 9).toFixed(2)}${tolerance}`);
      if (random.chance(0.3))
        inputs.push(`  at later: ${random.between(1, 9).toFixed(2)}${tolerance}`);
      continue;
    }
    const formula = (): string =>
      `${earlier()} ${random.pick(['+', '-', '*'])} ${random.pick([earlier(), '2'])}`;
    lines.push(`n_${i} = ${formula()}${random.chance(0.1) ? `\n  at later: ${formula()}` : ''}`);
  }
  const blocks = random.shuffled(lines).map((line) => block('calc', [line]));
  return [
    '---\nstages:\n  now: Now\n  later: Later\n---\n',
    block('inputs', inputs),
    ...blocks
  ].join('');
}

describe('after any edits the results are those of the text alone', () => {
  const keep = (text: string, edits: number, random: Random): void => {
    const session = new Session();
    let now = text;
    for (let i = 0; i < edits; i++) {
      now = random.chance(0.25) ? text : mutated(random.chance(0.5) ? now : text, random);
      const found = projection(session.update(now));
      expect(found, `edit ${i} of\n${now}`).toEqual(projection(compute(now)));
    }
  };

  it('of a random sheet of 40 definitions (200 edits, seed 31)', () => {
    const random = new Random(31);
    for (let i = 0; i < 8; i++) keep(randomSheet(random, 40), 25, random);
  });

  it('of the story and of the doubling sheet (40 edits, seed 32)', () => {
    const random = new Random(32);
    for (const name of ['spray-arm-rig.md', 'doubling-speed.md']) keep(worksheet(name), 20, random);
  }, 60_000);
});

describe('an edit runs what it reaches and nothing else', () => {
  const counted = (before: string, after: string): number => {
    const session = new Session();
    session.update(before);
    const { run } = session.work;
    session.update(after);
    return session.work.run - run;
  };
  //      a            a -> b -> c -> d        a -> b   e -> f
  //     / \
  //    b   c
  //     \ /
  //      d
  const diamond =
    block('inputs', ['a = 1', 'e = 5']) +
    block('calc', ['b = a + 1', 'c = a + 2', 'd = b*c', 'f = e']);
  const chain = block('inputs', ['a = 1']) + block('calc', ['b = a + 1', 'c = b + 1', 'd = c + 1']);

  it.each([
    ['diamond: an edit of a runs b, c and d', diamond, diamond.replace('a = 1', 'a = 2'), 3],
    ['diamond: an edit of e runs f', diamond, diamond.replace('e = 5', 'e = 6'), 1],
    ['chain: an edit of a runs b, c and d', chain, chain.replace('a = 1', 'a = 2'), 3],
    ['chain: an edit of c runs c and d', chain, chain.replace('b + 1', 'b + 2'), 2],
    [
      'an input written otherwise, at the same value, runs nothing',
      chain,
      chain.replace('a = 1', 'a = 1.0'),
      0
    ],
    [
      'an edit of a comment runs nothing',
      chain,
      chain.replace('a = 1', 'a = 1   # length; guess'),
      0
    ],
    ['an edit of prose runs nothing', chain, `# Title\n\n${chain}\nWords.\n`, 0],
    ['an unrelated line runs alone', chain, chain + block('calc', ['z = 3*4']), 1]
  ])('%s', (_, before, after, expected) => {
    expect(counted(before, after)).toBe(expected);
  });
});

describe('what changes nothing', () => {
  const figures = (results: Results): unknown =>
    [...results.values].map(([name, row]) => [name, row.unit?.text, row.at]).sort();

  it('the order of the blocks (20 random sheets, seed 33)', () => {
    const random = new Random(33);
    for (let i = 0; i < 20; i++) {
      const [front = '', ...rest] = randomSheet(random, 40).split(/(?=```inputs|```calc)/);
      const mixed = front + random.shuffled(rest).join('');
      const sorted = front + rest.join('');
      const plainly = (text: string): unknown =>
        JSON.stringify(figures(compute(text))).replace(
          /"standardUncertainty":[^,]*|"coverage":[^\]]*\]/g,
          ''
        );
      expect(plainly(mixed)).toEqual(plainly(sorted));
    }
  });

  it('unrelated names', () => {
    const text = worksheet('spray-arm-rig.md');
    const more = text + block('calc', ['q_other = 3 kW', 'q_more = q_other/2 s']);
    const own = (results: Results): unknown =>
      [...results.values]
        .filter(([name]) => !name.startsWith('q_'))
        .map(([name, row]) => [name, row.unit?.text, row.at]);
    expect(own(compute(more))).toEqual(own(compute(text)));
  });

  it.each(['N', 'm', 's', 'W', 'h', 'kg', 'Pa'])(
    'a name that is also the unit %s, but for a notice',
    (letter) => {
      const body = (name: string): string =>
        block('inputs', ['F = 12 N', 'L = 3 m', `${name} = 5 kg`]) +
        block('calc', ['p = F/L^2 to Pa', 'E = F*L', 'P = 9.81 m/s^2 * F / 2 h to kg W/s^2']);
      const own = (results: Results): unknown =>
        ['F', 'L', 'p', 'E', 'P'].map((name) => results.values.get(name)?.at);
      const renamed = compute(body(letter));
      expect(own(renamed)).toEqual(own(compute(body('other_name'))));
      expect(renamed.problems.filter((found) => found.severity === 'error')).toEqual(
        compute(body('other_name')).problems.filter((found) => found.severity === 'error')
      );
    }
  );

  it('a revision to the same value: it makes no knock-on', () => {
    const text =
      '---\nstages:\n  now: Now\n  later: Later\n---\n' +
      block('inputs', ['a = 2 m', '  at later: 2 m']) +
      block('calc', ['b = 3*a']) +
      block('limits', ['reach: b <= 7 m']);
    const results = compute(text);
    const found = knockOn(results, 'now', results, 'later');
    expect([found.moved, found.flipped, found.stayedPut]).toEqual([[], [], []]);
  });
});

describe('first-order uncertainty is the hand formula', () => {
  // JCGM 100:2008, 5.1.2: u(a + b)^2 = u_a^2 + u_b^2; for a product the relative ones add likewise.
  const sheet = compute(
    block('inputs', ['a = 3 ± 0.2 sd', 'b = 5 ± 0.4 sd']) +
      block('calc', ['s = a + b', 'd = a - b', 'p = a*b', 'q = a/b', 'k = a^3', 'o = a - a'])
  );
  const u = (name: string): number | null | undefined =>
    sheet.values.get(name)?.at[0]?.standardUncertainty;
  it.each([
    ['s', Math.hypot(0.2, 0.4)],
    ['d', Math.hypot(0.2, 0.4)],
    ['p', 15 * Math.hypot(0.2 / 3, 0.4 / 5)],
    ['q', 0.6 * Math.hypot(0.2 / 3, 0.4 / 5)],
    ['k', 3 * 27 * (0.2 / 3)]
  ])('for %s', (name, expected) => expect(u(name)).toBeCloseTo(expected, 12));
  it('and a value less itself has none', () => expect(u('o') ?? 0).toBe(0));
});
