import { describe, expect, test } from 'vitest';
import { compute } from '#lib/sheet/index.ts';
import { letterAt } from './letters.ts';
import { barOf } from './limit-rows.ts';
import { pageModel } from './model.ts';
import type { CalcRow, InputRow, LimitRow, PageModel, ProblemNote, Row } from './types.ts';
import { viewRequestOf } from './view.ts';

const page = (text: string, query = ''): PageModel =>
  pageModel({
    results: compute(text, { files: new Map() }),
    file: 'trial.md',
    view: viewRequestOf(new URLSearchParams(query)),
    pictureHref: (path) => `/beside/${path}`,
    sheetHref: (name) => `/worksheets/${name}`
  });

const rowsOf = (model: PageModel): readonly Row[] =>
  model.items.flatMap((item) => (item.kind === 'rows' || item.kind === 'choose' ? item.rows : []));
const input = (model: PageModel, name: string): InputRow => {
  const row = rowsOf(model).find(
    (one): one is InputRow => one.kind === 'input' && one.name === name
  );
  if (!row) throw new Error(`no input ${name}`);
  return row;
};
const calc = (model: PageModel, name: string): CalcRow => {
  const row = rowsOf(model).find((one): one is CalcRow => one.kind === 'calc' && one.name === name);
  if (!row) throw new Error(`no result ${name}`);
  return row;
};
const limit = (model: PageModel, label: string): LimitRow => {
  const row = rowsOf(model).find(
    (one): one is LimitRow => one.kind === 'limit' && one.label === label
  );
  if (!row) throw new Error(`no limit ${label}`);
  return row;
};

const rig = `---
title: Trial
headline: v
stages: { one: Sketch, two: First run, three: Upgrade }
---

# Trial

## Speeds

At {v} and {v at two}, {v to km/h}, {P to hp}; {nobody} and \`{v}\`.

\`\`\`inputs Set
v = 80 m/s ± 1 m/s within 10 m/s .. 120 m/s   # tip speed; assumed
  at two: 46 m/s     # the most it held; measured
  at three: 80 m/s
R = 0.5 m            # length; measured
\`\`\`

\`\`\`calc
w = v/R to rad/s     # turning; derived
  at three: 2*v/R to rad/s   # geared
d = 2*R              # across
k(x) = 3*x
P = 1 W*w/(1 rad/s)
\`\`\`

\`\`\`limits
speed: v >= 60 m/s    # asked for
length: R <= 0.55 m
tip [safety]: v <= 78 m/s
  at three: v <= 85 m/s   # stronger; maker
wall [screen]: R <= 0.1 m
\`\`\`

\`\`\`caution danger
It reaches {v}.
\`\`\`
`;

describe('inputs', () => {
  const model = page(rig);

  test('a revision is bold with its letter and factor; a value that keeps on is a line', () => {
    const [one, two, three] = input(model, 'v').cells;
    expect(one).toMatchObject({
      text: '80',
      isRevised: false,
      isHeld: false,
      leads: false,
      letter: null
    });
    expect(two).toMatchObject({
      text: '46',
      isRevised: true,
      factor: { text: '×0.57', isStrong: false }
    });
    expect(two?.letter).toEqual({ letter: 'a', id: 'reason-a' });
    expect(three).toMatchObject({ isRevised: true, letter: null, factor: { text: '×1.7' } });
    const held = input(model, 'R').cells;
    expect(held.map((cell) => [cell.isHeld, cell.leads])).toEqual([[false, true], [true, false], [true, false]]); // prettier-ignore
  });

  test('the reason stands under the block with what changed', () => {
    const [block] = model.items.filter((item) => item.kind === 'rows');
    expect(block?.kind === 'rows' && block.reasons).toMatchObject([
      {
        letter: 'a',
        stage: 'First run',
        what: '80 to 46\u00a0m/s',
        words: 'the most it held; measured'
      }
    ]);
  });

  test('words, source, tolerance and range stand beside the symbol', () => {
    expect(input(model, 'v')).toMatchObject({
      words: { what: 'tip speed', source: 'assumed' },
      tolerance: '± 1\u00a0m/s',
      unit: 'm/s'
    });
    expect(input(model, 'v').within).toMatch(/10.* to 120/);
  });

  test('in focus a column shows its numbers, held ones too', () => {
    const focused = input(page(rig, 'stage=two'), 'R').cells;
    expect(focused.map((cell) => cell.isHeld)).toEqual([false, false, true]);
    expect(focused.map((cell) => [cell.isFocus, cell.isDim])).toEqual([[false, true], [true, false], [false, true]]); // prettier-ignore
  });

  test('no line runs from a column that is not the same, though the stage starts from another', () => {
    const tree = page(`---
stages: { a: A, b: B, c: { title: C, after: a } }
---
\`\`\`inputs
x = 1 m
  at b: 2 m
\`\`\`
`);
    expect(input(tree, 'x').cells.map((cell) => [cell.text, cell.isHeld])).toEqual([
      ['1', false],
      ['2', false],
      ['1', false]
    ]);
    expect(tree.stages[2]?.remarks).toContain('from A');
  });
});

describe('calculations', () => {
  test('a value stands at every stage, quiet where it did not move', () => {
    const model = page(rig);
    expect(calc(model, 'w').cells.map((cell) => cell.text)).toEqual(['160', '92', '320']);
    expect(calc(model, 'w').cells.map((cell) => cell.factor?.text ?? null)).toEqual([null, '×0.57', '×3.5']); // prettier-ignore
    expect(calc(model, 'd').cells.map((cell) => cell.isQuiet)).toEqual([false, true, true]);
    expect(calc(model, 'k').cells).toEqual([]);
  });

  test('a revised formula stands under the first with its stage and letter', () => {
    const { forms } = calc(page(rig), 'w');
    expect(forms.map((form) => form.from?.title ?? null)).toEqual([null, 'Upgrade']);
    expect(forms[1]?.letter?.letter).toBe('b');
  });

  test('the line with numbers takes the form and the values of the stage in view', () => {
    expect(calc(page(rig, 'stage=one'), 'w').withNumbers).toMatchObject({
      stage: { title: 'Sketch' }
    });
    expect(calc(page(rig, 'stage=one'), 'w').withNumbers?.tex).toMatch(/^= .*80.*0\.5.* = 160/);
    expect(calc(page(rig), 'w').withNumbers?.tex).toMatch(/^= .*2 \\cdot 80.*0\.5.* = 320/);
    expect(calc(page(rig, 'numbers=off'), 'w').withNumbers).toBeNull();
  });
});

describe('limits', () => {
  const model = page(rig);

  test('say percent, word and amounts', () => {
    const [one, two] = limit(model, 'speed').cells;
    expect(one).toMatchObject({
      percent: '75 %',
      status: { word: 'met', shape: 'tick', tone: 'calm' }
    });
    expect(one?.amounts).toMatch(/^80, needs 60\u00a0m\/s$/);
    expect(two).toMatchObject({ status: { word: 'short', shape: 'octagon', tone: 'over' } });
    expect(limit(model, 'length').cells[0]).toMatchObject({ percent: '91 %', status: { word: 'close', shape: 'half' } }); // prettier-ignore
  });

  test('a screen has no percent, no bar and no tick', () => {
    const [cell] = limit(model, 'wall').cells;
    expect(cell).toMatchObject({ percent: null, bar: null, status: { word: 'fails' } });
  });

  test('a revised condition is shown with its stage, its letter in the cell', () => {
    const row = limit(model, 'tip');
    expect(row.isSafety).toBe(true);
    expect(row.forms.map((form) => form.from?.title ?? null)).toEqual([null, 'Upgrade']);
    expect(row.cells[2]?.letter).toEqual(row.forms[1]?.letter);
  });

  test('a stage that a safety limit stops says by which; the others do not call themselves safe', () => {
    expect(model.stages[0]?.stoppedBy).toEqual(['tip']);
    expect(model.verdict[0]).toContain('Sketch');
    expect(JSON.stringify(model)).not.toMatch(/all hold|is safe|permitted/i);
  });

  test('what is to be looked at is listed with safety first, whatever its percent', () => {
    expect(page(rig, 'stage=one').attention.map(({ label }) => label)).toEqual([
      'tip',
      'wall',
      'length'
    ]);
  });

  test('a sheet that stops nothing says just that, and what has no check', () => {
    const calm = page(`\`\`\`inputs
x = 1 m
\`\`\`
\`\`\`limits
x: x <= 2 m
\`\`\`
\`\`\`parts
belt guard
\`\`\`
`);
    expect(calm.verdict).toEqual(['Nothing computed here stops the run.', '1 part has no check.']);
  });

  test.each([
    [0, 0, 0, false],
    [0.75, 50, 0, false],
    [1, 66.7, 0, false],
    [1.25, 66.7, 16.7, false],
    [1.5, 66.7, 33.3, false],
    [40, 66.7, 33.3, true]
  ])('a bar of %d fills %d %% of the track, %d %% past the mark', (share, fill, past, isTorn) => {
    expect(barOf(share)).toEqual({ fill, past, isTorn });
  });
});

const wrong = `---
stages: { one: One, two: Two }
unknown-key: kept
---

{P_nowhere} is not there.

\`\`\`inputs
P = 5 kW
T = 2 N m
u = ? m
P = 6 kW
\`\`\`

\`\`\`calc
S = P + T
V = 2 * S
L = 2 * u
good = 2 * u2 + 3 kw
gone
what is this
\`\`\`

\`\`\`limits
shaft: S <= 10 kW
empty:
\`\`\`

\`\`\`sweep
S over P from 1 kW to 2 kW
\`\`\`

\`\`\`python
print("a listing")
\`\`\`
`;

describe('mistakes', () => {
  const model = page(wrong);
  const noteList = (): readonly ProblemNote[] => [
    ...model.problems,
    ...model.items.flatMap((item) => [
      ...item.problems,
      ...(item.kind === 'rows' || item.kind === 'choose' ? item.rows.flatMap((row) => row.problems) : []) // prettier-ignore
    ])
  ];

  test('each problem of the sheet is on the page, at its own line', () => {
    const { problems } = compute(wrong, { files: new Map() });
    const told = problems.filter(({ code }) => code !== 'sheet/not-computed-yet');
    expect(told.length).toBeGreaterThan(4);
    const notes = noteList();
    for (const { message, at } of told)
      expect(
        notes.filter((note) => note.message === message && note.line === at.line)
      ).toHaveLength(1);
  });

  test('a sum of a power and a torque is told under its line, its dependents wait for it', () => {
    const row = calc(model, 'S');
    expect(row.problems[0]?.source?.marked).toContain('P + T');
    expect(calc(model, 'V').cells.map((cell) => [cell.state, cell.text])).toEqual([['waits', 'waits for S'], ['after', '–']]); // prettier-ignore
    expect(limit(model, 'shaft').cells[0]).toMatchObject({
      status: { word: 'unknown' },
      bar: null
    });
    expect(limit(model, 'shaft').cells[0]?.amounts).toContain('S');
  });

  test('a value not known yet asks for one; what depends on it waits', () => {
    expect(input(model, 'u').cells.map((cell) => cell.text)).toEqual(['needs a value', '–']);
    expect(calc(model, 'L').cells[0]?.text).toBe('waits for u');
  });

  test('a name in prose that is not there stays as written, with a note', () => {
    const [prose] = model.items;
    expect(prose?.kind === 'prose' && prose.html).toContain('{P_nowhere}');
    expect(prose?.problems[0]).toMatchObject({ severity: 'warning', line: 6 });
  });

  test('a kind that is not computed yet shows its text and says so; a listing says nothing', () => {
    const texts = model.items.filter((item) => item.kind === 'text');
    expect(texts).toMatchObject([
      { label: 'Sweep', text: 'S over P from 1 kW to 2 kW', sentence: expect.stringMatching(/not computed yet/) as string },
      { label: 'python', text: 'print("a listing")', sentence: null }
    ]); // prettier-ignore
  });
});

describe('live values', () => {
  test('prose shows the stage in view, a named stage, another unit', () => {
    const [prose] = page(rig, 'stage=two').items;
    const html = prose?.kind === 'prose' ? prose.html.replaceAll('\u00a0', ' ') : '';
    expect(html).toContain(
      'At <span class="live number" data-state="value" title="v, First run">46 m/s</span>'
    );
    expect(html).toContain('>165.6 km/h<');
    expect(html).toMatch(/>0\.1234 hp<|>0\.12\d* hp</);
    expect(html).toContain('<code>{v}</code>');
    expect(html).toContain('{nobody}');
  });

  test('a caution shows the greatest over the stages, whatever is in view', () => {
    const [caution] = page(rig, 'stage=two').cautions;
    expect(caution?.html.replaceAll('\u00a0', ' ')).toContain('>80 m/s<');
  });
});

test('a remark says who wrote it, apart from its words', () => {
  const model = page('```remark\nby: A. Designer, 2026-03-14\n\nIs {x} *right*?\nresolved: B, 2026-03-15\n```\n'); // prettier-ignore
  const [remark] = model.items;
  expect(remark).toMatchObject({ lines: ['A. Designer, 2026-03-14', 'resolved: B, 2026-03-15'] });
  expect(remark?.kind === 'remark' && remark.html).toContain('<em>right</em>');
  expect(remark?.problems[0]?.line).toBe(4);
});

test('a stage whose limits are not all known shows no tick', () => {
  expect(page(wrong).stages[0]?.over).toMatchObject({ text: '0 over', status: { shape: 'dash' } });
  expect(page(wrong).stages[0]?.figure?.words).toBe('over, of 2 limits');
});

test('tables and a choice: every row, what is taken, what each misses', () => {
  const model = page(`\`\`\`table motors
type | P_r [kW] | mass [kg]
small | 1.1 | 12
middle | 2.2 | 20
big | 5.5 | 44
\`\`\`
\`\`\`inputs
need = 2 kW
\`\`\`
\`\`\`choose motor from motors
P_r >= need
least mass
\`\`\`
`);
  const [table] = model.items.filter((item) => item.kind === 'table');
  expect(table).toMatchObject({ name: 'motors', rows: [['small', '1.1', '12'], ['middle', '2.2', '20'], ['big', '5.5', '44']] }); // prettier-ignore
  const [choice] = model.items.filter((item) => item.kind === 'choose');
  expect(choice?.candidates.map(({ name, rank, misses }) => [name, rank, misses.length])).toEqual([
    ['small', null, 1],
    ['middle', '1st', 0],
    ['big', '2nd', 0]
  ]);
  expect(choice?.candidates[1]?.marks).toMatchObject([{ how: 'chosen' }]);
  expect(calc(model, 'motor.P_r').cells[0]?.text).toBe('2.2');
});

test('letters count on past z', () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(letterAt)).toEqual([
    'a',
    'z',
    'aa',
    'az',
    'ba',
    'zz',
    'aaa'
  ]);
});

test.each([rig, wrong, '', '---\n---\n', '```inputs\n```\n', '\ufeff# A\r\n\r\ntext\r\n'])(
  'the model of %j is plain data',
  (text) => {
    const model = page(text);
    expect(JSON.parse(JSON.stringify(model))).toEqual(model);
    expect(model.stages.length).toBeGreaterThan(0);
  }
);
