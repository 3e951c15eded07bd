// Whatever edits a session has seen, its results are those of the text it was given last; and an edit
// runs what it reaches, no more. Random edits are seeded.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compute, Session, type Results } from '#lib/sheet/index.ts';

/** Everything that a reader may see of results, without what only identifies objects. */
function plainOf(results: Results): unknown {
  return {
    values: [...results.values].map(([name, row]) => [
      name, row.line, row.kind, row.dimension?.key, row.unit?.text, row.at, row.uses, row.usedBy
    ]),
    limits: [...results.limits].map(([label, row]) => [label, row.line, row.unit?.text, row.at]),
    choices: [...results.choices],
    stages: results.stages,
    lines: [...results.byLine].map(([line, row]) => [line, 'label' in row ? row.label : row.name]).sort(),
    problems: results.problems
  }; // prettier-ignore
}

/** Numbers from 0 to 1: mulberry32 (T. Ettinger, public domain; from memory). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** One random edit of a line: a figure, a name, an operator, a line more or less. */
function edited(text: string, random: () => number): string {
  const lines = text.split('\n');
  const pick = (): number => Math.floor(random() * lines.length);
  const at = pick();
  const line = lines[at] ?? '';
  switch (Math.floor(random() * 7)) {
    case 0:
      lines[at] = line.replace(/\d+/u, (digits) => String(Number(digits) + 1));
      break;
    case 1:
      lines.splice(at, 1);
      break;
    case 2:
      lines.splice(at, 0, line);
      break;
    case 3:
      lines[at] = line.replace('*', '+');
      break;
    case 4:
      lines[at] = `${line} # a word`;
      break;
    case 5:
      lines[at] = line.replace(/[a-z]\w*_\w+/u, 'v_top');
      break;
    default: {
      const other = pick();
      [lines[at], lines[other]] = [lines[other] ?? '', line];
    }
  }
  return lines.join('\n');
}

describe('incremental is from scratch', () => {
  const seed = 20261125;
  it.each(['spray-arm-rig.md', 'doubling-speed.md'])(
    `after any edit of %s (seed ${seed})`,
    (name) => {
      const text = readFileSync(`worksheets/${name}`, 'utf8');
      const random = seeded(seed);
      const session = new Session();
      session.update(text);
      let current = text;
      for (let i = 0; i < 60; i++) {
        // Now and then the whole is put back, as undo does.
        current = random() < 0.15 ? text : edited(current, random);
        expect(plainOf(session.update(current)), `edit ${i}`).toEqual(plainOf(compute(current)));
      }
    },
    120_000
  );

  it('when stages come and go, names are given away and taken back', () => {
    const session = new Session();
    const sheet = (stages: string, a: string, b: string): string =>
      `---\nstages:\n${stages}---\n\`\`\`inputs\na = ${a}\n  at two: 5 m\n\`\`\`\n\`\`\`calc\n${b}\n\`\`\`\n`;
    const texts = [
      sheet('  one: 1\n  two: 2\n', '1 m ± 1 mm', 'b = 2*a\nc = b^2'),
      sheet('  one: 1\n', '1 m ± 1 mm', 'b = 2*a\nc = b^2'),
      sheet('  one: 1\n  two: 2\n  three: 3\n', '2 m', 'b = 2*a\n  at three: 3*a\nc = b^2'),
      sheet('  one: 1\n  two: 2\n', '2 m', 'b = c\nc = b'),
      sheet('  one: 1\n  two: 2\n', '2 m', 'b = 1/(a - 2 m)\nc = b*a\nd = a > 1 m ? a : c*1 m'),
      sheet('  one: 1\n  two: 2\n', '3 m', 'b = 1/(a - 2 m)\nc = b*a\nd = a > 1 m ? a : c*1 m'),
      sheet('  one: 1\n  two: 2\n', '3 s', 'b = 2*a\nc = b^2')
    ];
    for (const text of [...texts, ...texts.toReversed(), ...texts]) {
      expect(plainOf(session.update(text))).toEqual(plainOf(compute(text)));
    }
  });
});

describe('an edit runs what it reaches', () => {
  //      a   b          a ─ x ─ y ─┐
  //       \ / \         b ─ z ─────┴ w      u alone
  const sheet = (a: string, b: string, more = ''): string =>
    `\`\`\`inputs\na = ${a}\nb = ${b}\n\`\`\`\n\`\`\`calc\nx = 2*a\ny = x + 1 m\nz = b^2\nw = y*z\nu = 3 m\n${more}\`\`\`\n`;
  const runs = (from: string, to: string): { run: number; compiled: number } => {
    const session = new Session();
    session.update(from);
    const before = session.work;
    session.update(to);
    const after = session.work;
    return { run: after.run - before.run, compiled: after.compiled - before.compiled };
  };

  it.each([
    ['one input: its chain', sheet('1 m', '2 s'), sheet('1.5 m', '2 s'), 3, 0],
    ['the other input: its own', sheet('1 m', '2 s'), sheet('1 m', '3 s'), 2, 0],
    ['both: each once', sheet('1 m', '2 s'), sheet('2 m', '3 s'), 4, 0],
    ['the same value in another unit: nothing', sheet('1 m', '2 s'), sheet('1000 mm', '2 s'), 0, 0],
    ['a comment: nothing', sheet('1 m', '2 s'), sheet('1 m   # measured', '2 s'), 0, 0],
    ['an unrelated line more: itself', sheet('1 m', '2 s'), sheet('1 m', '2 s', 'n = 7\n'), 1, 1],
    ['a prose line above: nothing', sheet('1 m', '2 s'), `Words.\n\n${sheet('1 m', '2 s')}`, 0, 0]
  ] as const)('%s', (_, from, to, run, compiled) => {
    expect(runs(from, to)).toEqual({ run, compiled });
  });

  it('a value that comes out the same stops there', () => {
    const text = (a: string): string =>
      `\`\`\`inputs\na = ${a}\n\`\`\`\n\`\`\`calc\nx = max(a, 10 m)\ny = 2*x\nz = 3*y\n\`\`\`\n`;
    expect(runs(text('1 m'), text('2 m'))).toEqual({ run: 1, compiled: 0 });
  });
});

describe('order and unrelated names change nothing', () => {
  const blocks = [
    '```inputs\nv = 20 m/s\nR = 0.5 m ± 1 mm\nP_max = 2 kW\n```',
    '```calc\nomega = v/R to rad/s\nP = 0.1 N m s^2*omega^3/1 rad to kW\n```',
    '```limits\nmotor: P <= P_max\n```',
    '```solve\nv_max = v where P == P_max between 1 m/s and 90 m/s\n```'
  ];
  const figures = (results: Results): unknown =>
    ['omega', 'P', 'v_max'].map((name) =>
      results.values
        .get(name)
        ?.at.map(({ si, text, standardUncertainty }) => [si, text, standardUncertainty])
    );
  const straight = compute(blocks.join('\n\n'));

  it.each([[3, 2, 1, 0], [1, 0, 3, 2], [2, 3, 0, 1]])('blocks in order %i %i %i %i', (...order) => {
    const results = compute(order.map((i) => blocks[i] ?? '').join('\n\n'));
    expect(figures(results)).toEqual(figures(straight));
    expect(results.limits.get('motor')?.at).toEqual(straight.limits.get('motor')?.at);
  }); // prettier-ignore

  it('names that look like units, beside', () => {
    const more = '```inputs\nm = 3 kg\ns = 4\nkW = 7 V\nrad = 2\n```';
    expect(figures(compute([...blocks, more].join('\n\n')))).toEqual(figures(straight));
  });
});
