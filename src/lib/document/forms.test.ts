import { describe, expect, test } from 'vitest';
import { entryOf, spoken } from './reading.fixture.ts';
import type { BlockKind } from './types.ts';

const value = { unit: null, tolerance: null, within: null };
const bound = { shape: 'rectangular', coverage: null, degreesOfFreedom: null };
const noTags = { safety: false, screen: false, level: false, close: null, worstOf: [], all: [] };

function readsAs(kind: BlockKind, forms: readonly (readonly [string, unknown])[]): void {
  test.each(forms.map(([text, said]) => [text.replaceAll('\n', '⏎'), text, said] as const))(
    '%s',
    (_, text, said) => {
      const entry = entryOf(kind, text);
      expect(spoken(entry)).toEqual(said);
      expect(entry.problems).toEqual([]);
    }
  );
}

describe('inputs', () => {
  const input = (name: string, base: object, revisions: unknown[] = []) => ({
    kind: 'input', name, base: { ...value, ...base }, revisions
  }); // prettier-ignore
  readsAs('inputs', [
    ['v = 80 m/s', input('v', { expression: '80 m/s' })],
    ['ω = 3/4 in  # note', input('ω', { expression: '3/4 in' })],
    ['k = 1.00 ± 0.20', input('k', { expression: '1.00', tolerance: { ...bound, amount: '0.20' } })],
    ['k = 1 ± 2 % within 0.5 .. 2', input('k', {
      expression: '1', tolerance: { ...bound, amount: '2 %' }, within: { low: '0.5', high: '2' }
    })],
    ['k = 1 within 0.5 .. 2 ± 2 %', input('k', {
      expression: '1', tolerance: { ...bound, amount: '2 %' }, within: { low: '0.5', high: '2' }
    })],
    ['P = 2 kW ± 0.1 kW sd', input('P', {
      expression: '2 kW', tolerance: { ...bound, amount: '0.1 kW', shape: 'normal', coverage: 1 }
    })],
    ['P = 2 kW ± 0.1 kW k=2 dof 9', input('P', {
      expression: '2 kW',
      tolerance: { amount: '0.1 kW', shape: 'normal', coverage: 2, degreesOfFreedom: 9 }
    })],
    ['P = 2 kW ± 0.1 kW dof 9 k = 2', input('P', {
      expression: '2 kW',
      tolerance: { amount: '0.1 kW', shape: 'normal', coverage: 2, degreesOfFreedom: 9 }
    })],
    ['P = 2 kW ± 5 % triangular', input('P', {
      expression: '2 kW', tolerance: { ...bound, amount: '5 %', shape: 'triangular' }
    })],
    ['P = 2 kW ± 5 % arcsine', input('P', {
      expression: '2 kW', tolerance: { ...bound, amount: '5 %', shape: 'arcsine' }
    })],
    ['T = 16 N m * 0.7 to N m', input('T', { expression: '16 N m * 0.7', unit: 'N m' })],
    ['P = 2 kW ± 3 % to hp', input('P', {
      expression: '2 kW', unit: 'hp', tolerance: { ...bound, amount: '3 %' }
    })],
    ['x = (2 m to ft) + 1 ft', input('x', { expression: '(2 m to ft) + 1 ft' })],
    ['k = run1_fit.k_air', input('k', { expression: 'run1_fit.k_air' })],
    ['P = ? kW', input('P', { expression: null, unit: 'kW' })],
    ['P = ?', input('P', { expression: null })],
    ['P = ? kW within 1 kW .. 9 kW', input('P', {
      expression: null, unit: 'kW', within: { low: '1 kW', high: '9 kW' }
    })],
    ['k = 1\n  at upgrade: 2 ± 0.1  # why\n  at faired :\n    3', input('k', { expression: '1' }, [
      { stage: 'upgrade', comment: 'why', value: { ...value, expression: '2', tolerance: { ...bound, amount: '0.1' } } },
      { stage: 'faired', comment: null, value: { ...value, expression: '3' } }
    ])],
    ['d = 25 mm\n  + 2 mm', input('d', { expression: '25 mm\n+ 2 mm' })],
    ['correlated a, b 0.9', { kind: 'correlation', first: 'a', second: 'b', coefficient: '0.9' }],
    ['correlated = 3', input('correlated', { expression: '3' })]
  ]); // prettier-ignore
});

describe('calc', () => {
  const base = (expression: string, unit: string | null = null) => ({ expression, unit });
  readsAs('calc', [
    ['P = T*omega', { kind: 'calculation', name: 'P', base: base('T*omega'), revisions: [] }],
    ['P = T*omega to kW', { kind: 'calculation', name: 'P', base: base('T*omega', 'kW'), revisions: [] }],
    ['P = (T to N m)*w to hp', { kind: 'calculation', name: 'P', base: base('(T to N m)*w', 'hp'), revisions: [] }],
    ['x = a == b ? 1 : 2', { kind: 'calculation', name: 'x', base: base('a == b ? 1 : 2'), revisions: [] }],
    ['x = a +\n  b\n  # note\n  - c to m', { kind: 'calculation', name: 'x', base: base('a +\nb\n- c', 'm'), revisions: [] }],
    ['x = a\n  at first-run: b to m', {
      kind: 'calculation', name: 'x', base: base('a'),
      revisions: [{ stage: 'first-run', value: base('b', 'm'), comment: null }]
    }],
    ['f(x, y) = x*y to m', { kind: 'function', name: 'f', parameters: ['x', 'y'], base: base('x*y', 'm'), revisions: [] }],
    ['P_drag to kW', { kind: 'bare', base: base('P_drag', 'kW'), revisions: [] }],
    ['a <= b', { kind: 'bare', base: base('a <= b'), revisions: [] }]
  ]); // prettier-ignore
});

describe('limits', () => {
  const limit = (label: string, base: object, tags: object = {}) => ({
    kind: 'limit', label, tags: { ...noTags, ...tags }, base, revisions: []
  }); // prettier-ignore
  const simple = { form: 'demand<=capacity', demand: 'a', capacity: 'b' };
  readsAs('limits', [
    ['tip speed: a <= b', limit('tip speed', simple)],
    ['tip speed: a ≤ b', limit('tip speed', simple)],
    ['x: a >= b', limit('x', { form: 'actual>=required', actual: 'a', required: 'b' })],
    ['x: a <= none', limit('x', { form: 'demand<=capacity', demand: 'a', capacity: null })],
    ['x: a >= none', limit('x', { form: 'actual>=required', actual: 'a', required: null })],
    ['x: 1 m <= d <= 2 m', limit('x', { form: 'low<=x<=high', low: '1 m', x: 'd', high: '2 m' })],
    ['x: 2 m ≥ d ≥ 1 m', limit('x', { form: 'low<=x<=high', low: '1 m', x: 'd', high: '2 m' })],
    ['x: none <= d <= 2 m', limit('x', { form: 'low<=x<=high', low: null, x: 'd', high: '2 m' })],
    ['x: n outside 0.8*n_1 .. 1.2*n_1', limit('x', { form: 'x outside a..b', x: 'n', low: '0.8*n_1', high: '1.2*n_1' })],
    ['x: a == b', limit('x', { form: 'a==b', a: 'a', b: 'b', tolerance: null })],
    ['x: a == b ± 0.1 mm', limit('x', { form: 'a==b', a: 'a', b: 'b', tolerance: '0.1 mm' })],
    ['x: max(a, c) <= (b < c ? b : c)', limit('x', { form: 'demand<=capacity', demand: 'max(a, c)', capacity: '(b < c ? b : c)' })],
    ['at rest: a <= b', limit('at rest', simple)],
    ['v:tip speed: a <= b', limit('v:tip speed', simple)],
    ['x [safety]: a <= b', limit('x', simple, { safety: true, all: ['safety'] })],
    ['x [screen] [level]: a <= b', limit('x', simple, { screen: true, level: true, all: ['screen', 'level'] })],
    ['x [close at 80 %]: a <= b', limit('x', simple, { close: { kind: 'at', amount: '80 %' }, all: ['close at 80 %'] })],
    ['x [close within 5 K]: a <= b', limit('x', simple, { close: { kind: 'within', amount: '5 K' }, all: ['close within 5 K'] })],
    ['x [worst of run, jam]: a <= b', limit('x', simple, { worstOf: ['run', 'jam'], all: ['worst of run, jam'] })],
    ['x [safety, worst of run, jam]: a <= b', limit('x', simple, { safety: true, worstOf: ['run', 'jam'], all: ['safety', 'worst of run, jam'] })]
  ]); // prettier-ignore

  test('a limit is revised by a whole comparison', () => {
    expect(spoken(entryOf('limits', 'x: a <= b\n  at upgrade: a <= c  # bigger'))).toMatchObject({
      revisions: [{ stage: 'upgrade', comment: 'bigger', value: { ...simple, capacity: 'c' } }]
    });
  });
});

describe('solve', () => {
  const solve = {
    kind: 'solve',
    name: 'R_1',
    unknown: 'R',
    left: 'P(R)',
    right: '4 kW',
    between: null,
    everyRoot: false
  };
  const between = { low: '0.2 m', high: '0.9 m' };
  readsAs('solve', [
    ['R_1 = R where P(R) == 4 kW', solve],
    ['R_1 = R where P(R) == 4 kW between 0.2 m and 0.9 m', { ...solve, between }],
    ['R_1 = R where P(R) == 4 kW\nevery root', { ...solve, everyRoot: true }],
    ['R_1 = R where P(R) == 4 kW between 0.2 m and 0.9 m\n  every root  # both', { ...solve, between, everyRoot: true }],
    ['R_1 = R\n  where P(R) == 4 kW\n  between 0.2 m and 0.9 m\nevery root', { ...solve, between, everyRoot: true }],
    ['unknown x from 1', { kind: 'unknown', name: 'x', start: '1' }],
    ['x^2 + y == 4', { kind: 'equation', left: 'x^2 + y', right: '4' }]
  ]); // prettier-ignore
});

describe('choose', () => {
  readsAs('choose', [
    ['P_rated >= P_need', { kind: 'condition', base: 'P_rated >= P_need', revisions: [] }],
    ['(a < b) or c >= d', { kind: 'condition', base: '(a < b) or c >= d', revisions: [] }],
    ['a < b\n  at upgrade: a < c', {
      kind: 'condition', base: 'a < b', revisions: [{ stage: 'upgrade', value: 'a < c', comment: null }]
    }],
    ['kind is "three phase"', { kind: 'text-condition', column: 'kind', words: 'three phase' }],
    ['mass = rho*A*L to kg', { kind: 'calculation', name: 'mass', base: { expression: 'rho*A*L', unit: 'kg' }, revisions: [] }],
    ['least mass', { kind: 'preference', sense: 'least', column: 'mass', weight: null, revisions: [] }],
    ['most eta weight 3', { kind: 'preference', sense: 'most', column: 'eta', weight: '3', revisions: [] }],
    ['take "M # 90S"  # in stock', { kind: 'take', row: 'M # 90S', revisions: [] }],
    ['take "A"\n  at upgrade: take "B"\n  at faired: "C"', {
      kind: 'take', row: 'A',
      revisions: [{ stage: 'upgrade', value: 'B', comment: null }, { stage: 'faired', value: 'C', comment: null }]
    }]
  ]); // prettier-ignore
});

describe('kinds that are computed later: their lines are recognised, parts kept by role', () => {
  const later = (form: string, parts: object, revisions: unknown[] = []) => ({
    kind: 'later',
    form,
    parts,
    revisions
  });

  describe('parts', () => {
    readsAs('parts', [
      ['belt guard', later('part', { label: 'belt guard', worstOf: [] })],
      ['hub block: carries F_root\n  rating ?', later('part', { label: 'hub block', worstOf: [], carries: 'F_root', rating: '?' })],
      ['arm pin [safety]: carries tau_p\n  rating tau_pin = 100 MPa * 0.7  # handbook', later('part', {
        label: 'arm pin', worstOf: [], safety: 'arm pin', carries: 'tau_p', name: 'tau_pin', rating: '100 MPa * 0.7'
      })],
      ['motor pulley [worst of run, jam]: carries T_des\n  rating T_pul = 16 N m\n  mass 0.6 kg, cost 24 EUR\n  time 0 day, from shelf\n  at upgrade: rating T_pul = 32 N m, cost 41 EUR  # deforming',
        later('part', {
          label: 'motor pulley', worstOf: ['run', 'jam'], carries: 'T_des', name: 'T_pul', rating: '16 N m',
          mass: '0.6 kg', cost: '24 EUR', time: '0 day', from: 'shelf'
        }, [{ stage: 'upgrade', value: { name: 'T_pul', rating: '32 N m', cost: '41 EUR' }, comment: 'deforming' }])]
    ]); // prettier-ignore
  });

  describe('cases', () => {
    readsAs('cases', [
      ['jam: T_load = T_pk, k = max(1, 2)', later('case', { name: 'jam', targets: ['T_load', 'k'], values: ['T_pk', 'max(1, 2)'] })],
      ['jam: k = 1\n  at upgrade: k = 2', later('case', { name: 'jam', targets: ['k'], values: ['1'] }, [
        { stage: 'upgrade', value: { targets: ['k'], values: ['2'] }, comment: null }
      ])]
    ]); // prettier-ignore
  });

  describe('course', () => {
    readsAs('course', [
      ["x' = v from 0 m", later('derivative', { name: 'x', rate: 'v', start: '0 m' })],
      ["v' = F/m\n  from v_0 to m/s", later('derivative', { name: 'v', rate: 'F/m', start: 'v_0 to m/s' })],
      ['until v <= 0 m/s', later('until', { condition: 'v <= 0 m/s' })],
      ['at most 60 s', later('at most', { duration: '60 s' })],
      ['when t > 2 s: F = 0 N, k = 2', later('when', { condition: 't > 2 s', targets: ['F', 'k'], values: ['0 N', '2'] })],
      ['then coasting', later('then', { title: 'coasting' })]
    ]); // prettier-ignore
  });

  describe('sweep', () => {
    const scales = { log: [], linear: [] };
    readsAs('sweep', [
      ['P over v from 0 m/s to 100 m/s', later('sweep', { shown: ['P'], axes: ['v'], low: ['0 m/s'], high: ['100 m/s'], ...scales })],
      ['P, M.I over v from 1 to 10 in 50 steps linear x log y', later('sweep', {
        shown: ['P', 'M.I'], axes: ['v'], low: ['1'], high: ['10'], steps: '50', log: ['y'], linear: ['x']
      })],
      ['P over v from 1 to 10, R from 1 m to 2 m', later('sweep', {
        shown: ['P'], axes: ['v', 'R'], low: ['1', '1 m'], high: ['10', '2 m'], ...scales
      })],
      ['mark v_top', later('mark', { names: ['v_top'] })]
    ]); // prettier-ignore
  });

  describe('ladder, drivers', () => {
    readsAs('ladder', [
      ['over v_top', later('ladder', { name: 'v_top' })],
      [
        'over v_top from 20 m/s to 120 m/s',
        later('ladder', { name: 'v_top', low: '20 m/s', high: '120 m/s' })
      ]
    ]);
    readsAs('drivers', [['of P, M.I', later('drivers', { names: ['P', 'M.I'] })]]);
  });

  describe('fit', () => {
    readsAs('fit', [
      ['P == k*v^3', later('relation', { left: 'P', right: 'k*v^3', inputs: [], columns: [] })],
      ['P == P_top with v_top = v, T_air = T', later('relation', { left: 'P', right: 'P_top', inputs: ['v_top', 'T_air'], columns: ['v', 'T'] })],
      ['unknown k from 1', { kind: 'unknown', name: 'k', start: '1' }],
      ['uncertainty u_P', later('uncertainty', { columns: ['u_P'] })],
      ['weigh by w', later('weigh', { columns: ['w'] })],
      ['predict P at v_tip = 80 m/s, R = 1 m', later('predict', { names: ['P'], targets: ['v_tip', 'R'], values: ['80 m/s', '1 m'] })]
    ]); // prettier-ignore
  });

  describe('plan, holds, event, ask, remark', () => {
    readsAs('plan', [
      ['steps v_tip = 20, 30, 40 m/s', later('steps', { name: 'v_tip', values: ['20', '30', '40 m/s'] })],
      ['expect P, I from run1_fit', later('expect', { names: ['P', 'I'], from: 'run1_fit' })],
      ['expect P', later('expect', { names: ['P'] })],
      ['stop above 5 % of P', later('stop above', { what: '5 % of P' })],
      ['stop below P', later('stop below', { what: 'P' })]
    ]);
    readsAs('holds', [
      ['[ ] guard shut, {v_top}', later('hold', { text: 'guard shut, {v_top}' })],
      ['[x] guard shut — off — B. Builder, 2026-03-14', later('ticked hold', { text: 'guard shut — off', by: 'B. Builder', date: '2026-03-14' })]
    ]);
    readsAs('event', [
      ['2026-03-14: the belt slipped', later('happened', { date: '2026-03-14', text: 'the belt slipped' })],
      ['part motor pulley gave way at v_top = 69 m/s', later('gave way', { label: 'motor pulley', name: 'v_top', value: '69 m/s' })]
    ]);
    readsAs('ask', [
      ['answer v/R ± 5 %', later('answer', { expression: 'v/R', band: '5 %' })]
    ]);
    readsAs('remark', [
      ['by: B. Builder, Jr., 2026-03-14', later('by', { name: 'B. Builder, Jr.', date: '2026-03-14' })]
    ]);
  }); // prettier-ignore
});

describe('comments', () => {
  test.each([
    [
      'what it is; where from',
      'motor rating; maker, single phase',
      'motor rating',
      'maker, single phase'
    ],
    ['where from alone', 'assumed', '', 'assumed'],
    ['a word that only begins like one is none', 'makeready; fitting', 'makeready; fitting', null],
    ['from the first word that says how sure it is', 'a; b; guess; maker', 'a; b', 'guess; maker'],
    [
      'a later word in the middle of a phrase says nothing',
      'the standard size',
      'the standard size',
      null
    ]
  ])('%s', (_, text, what, source) => {
    expect(entryOf('inputs', `a = 1 # ${text}`).comment).toEqual({ text, what, source });
  });

  test('comments of several lines are one', () => {
    const entry = entryOf(
      'inputs',
      'a = 1 # first\n  # second\n  at x: 2 # third\n  # maker, fourth'
    );
    expect(entry.comment?.text).toBe('first second');
    expect(entry.kind === 'input' && entry.revisions[0]?.comment).toEqual({
      text: 'third; maker, fourth', what: 'third', source: 'maker, fourth'
    }); // prettier-ignore
  });
});
