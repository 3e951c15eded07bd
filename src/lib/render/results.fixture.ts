// Results made by hand for the tests of this folder: a small sheet of two stages with every status,
// and builders to vary it. Invented data.

import { readWorksheet } from '#lib/document/index.ts';
import type { LimitTags, Worksheet } from '#lib/document/index.ts';
import { parseExpression } from '#lib/language/index.ts';
import { problem } from '#lib/problem/index.ts';
import type { Problem } from '#lib/problem/index.ts';
import type {
  LimitAtStage,
  LimitResult,
  Results,
  StageResult,
  StageValue,
  ValueResult,
  Variant
} from '#lib/sheet/index.ts';
import { cutOf } from '#lib/text/index.ts';
import { isUnitFault, parseUnit } from '#lib/units/index.ts';
import type { Unit } from '#lib/units/index.ts';

export function unit(text: string): Unit {
  const parsed = parseUnit(text, null);
  if (isUnitFault(parsed)) throw new RangeError(`${text} is no unit`);
  return parsed;
}

export const tags = (...all: string[]): LimitTags => ({
  safety: all.includes('safety'),
  screen: all.includes('screen'),
  level: all.includes('level'),
  close: null,
  worstOf: [],
  all
});

export const stageValue = (over: Partial<StageValue> = {}): StageValue => ({
  state: 'value',
  value: 1,
  si: 1,
  text: '1.00 m',
  number: '1.00',
  error: null,
  waitsFor: [],
  variant: 0,
  revised: false,
  ratio: null,
  change: null,
  standardUncertainty: null,
  coverage: null,
  ...over
});

export const waiting = (...names: string[]): StageValue =>
  stageValue({ state: 'waits', value: null, si: null, text: '', number: '', waitsFor: names });

export const variant = (text: string, over: Partial<Variant> = {}): Variant => ({
  stage: null,
  tree: null,
  cut: cutOf(text),
  toleranceText: null,
  within: null,
  comment: null,
  line: 1,
  solve: null,
  parameters: null,
  ...over
});

export const value = (name: string, over: Partial<ValueResult> = {}): ValueResult => ({
  name,
  line: 1,
  kind: 'calc',
  dimension: unit('m').dimension,
  unit: unit('m'),
  rows: null,
  at: [stageValue()],
  variants: [variant('1 m')],
  comment: null,
  uses: [],
  usedBy: [],
  ...over
});

export const limitAt = (over: Partial<LimitAtStage> = {}): LimitAtStage => ({
  status: 'within',
  atLimit: false,
  left: 1,
  right: 2,
  leftText: '1.00 kW',
  rightText: '2.00 kW',
  utilisation: 0.5,
  margin: 1,
  chanceOver: null,
  waitsFor: [],
  error: null,
  variant: 0,
  revised: false,
  ...over
});

export const limit = (label: string, over: Partial<LimitResult> = {}): LimitResult => ({
  label,
  line: 1,
  tags: tags(),
  form: 'demand<=capacity',
  unit: unit('kW'),
  at: [limitAt()],
  variants: [{ stage: null, sides: [], comment: null, line: 1 }],
  comment: null,
  uses: [],
  ...over
});

export const stage = (id: string, over: Partial<StageResult> = {}): StageResult => ({
  id,
  title: id,
  after: null,
  date: null,
  built: false,
  counts: { checked: 0, inside: 0, close: 0, over: 0, unknown: 0, screens: 0, failing: 0 },
  stopsTheRun: [],
  ...over
});

export function worksheet(text: string, title: string | null = 'A rig'): Worksheet {
  return {
    text,
    frontMatter: {
      text: '',
      lineCount: 0,
      format: 1,
      title,
      summary: null,
      by: [],
      units: 'SI',
      digits: 4,
      money: null,
      headline: null,
      stages: []
    },
    items: [{ kind: 'prose', line: 1, text }],
    problems: []
  };
}

export function results(over: {
  readonly worksheet?: Worksheet;
  readonly stages?: readonly StageResult[];
  readonly values?: readonly ValueResult[];
  readonly limits?: readonly LimitResult[];
  readonly problems?: readonly Problem[];
}): Results {
  const values = over.values ?? [];
  const limits = over.limits ?? [];
  return {
    worksheet: over.worksheet ?? worksheet(''),
    stages: over.stages ?? [stage('design')],
    values: new Map(values.map((one) => [one.name, one])),
    limits: new Map(limits.map((one) => [one.label, one])),
    byLine: new Map([...values, ...limits].map((one) => [one.line, one])),
    choices: new Map(),
    problems: over.problems ?? []
  };
}

/** Two stages, seven limits, one error; every status but those of screens stands in it. */
export const rig: Results = results({
  worksheet: worksheet('# A rig\n\n\nP = T_shaft + P_shaft\n'),
  stages: [
    stage('sketch', {
      title: 'First sketch',
      counts: { checked: 4, inside: 3, close: 1, over: 1, unknown: 0, screens: 1, failing: 0 }
    }),
    stage('upgrade', {
      title: 'Bigger motor',
      after: 'sketch',
      counts: { checked: 4, inside: 1, close: 0, over: 2, unknown: 1, screens: 1, failing: 1 },
      stopsTheRun: ['guard, whole arm']
    })
  ],
  limits: [
    limit('belt pulley', {
      line: 40,
      at: [
        limitAt({ leftText: '0.95 kW', rightText: '1.5 kW', utilisation: 0.633 }),
        limitAt({ leftText: '5.00 kW', rightText: '1.5 kW', utilisation: 3.333, status: 'over' })
      ]
    }),
    limit('target speed', {
      line: 41,
      form: 'actual>=required',
      unit: unit('m/s'),
      at: [
        limitAt({ leftText: '47.4 m/s', rightText: '80 m/s', utilisation: 1.688, status: 'short' }),
        limitAt({ leftText: '82.7 m/s', rightText: '80 m/s', utilisation: 0.967, status: 'met' })
      ]
    }),
    limit('noise', {
      line: 42,
      tags: tags('level'),
      unit: unit('1'),
      at: [
        limitAt({ leftText: '82.6', rightText: '85', utilisation: null, margin: 2.4 }),
        limitAt({ status: 'unknown', left: null, leftText: '', rightText: '85', utilisation: null, margin: null, waitsFor: ['L_motor'] }) // prettier-ignore
      ]
    }),
    limit('guard, whole arm', {
      line: 43,
      tags: tags('safety'),
      unit: unit('J'),
      at: [
        limitAt({ leftText: '27.9 J', rightText: '30.0 J', utilisation: 0.93, status: 'close' }),
        limitAt({ leftText: '30.1 J', rightText: '30.0 J', utilisation: 1.0033, status: 'over' })
      ]
    }),
    limit('guard, perforation', {
      line: 44,
      tags: tags('screen'),
      unit: unit('mm'),
      at: [
        limitAt({ leftText: '1.8 mm', rightText: '2.0 mm', utilisation: 0.9, status: 'not-shown-to-fail' }), // prettier-ignore
        limitAt({ leftText: '2.7 mm', rightText: '2.0 mm', utilisation: 1.35, status: 'fails' })
      ]
    })
  ],
  problems: [
    problem(
      'units/mismatch',
      { line: 4, from: 5, to: 22 },
      {
        message: 'T_shaft is a torque (N m), P_shaft a power (W): they cannot be added.',
        hint: 'Did you mean `T_shaft * omega`?'
      },
      { subject: 'P' }
    )
  ]
});

/** A text as a sheet whose every input, calculation and limit has the same value at every stage. */
export function sheetOf(text: string): Results {
  const read = readWorksheet(text);
  const values: ValueResult[] = [];
  const limits: LimitResult[] = [];
  const stages = read.frontMatter.stages.map(({ id, title, after }) => stage(id, { title, after }));
  for (const item of read.items) {
    if (item.kind !== 'block') continue;
    for (const { line: below, entry } of item.entries) {
      const line = item.line + below;
      if (entry.kind === 'limit')
        limits.push(
          limit(entry.label.text, {
            line,
            tags: entry.tags,
            comment: entry.comment,
            at: stages.map(() => limitAt())
          })
        );
      if (entry.kind !== 'input' && entry.kind !== 'calculation') continue;
      values.push(
        value(entry.name.text, {
          line,
          kind: entry.kind === 'input' ? 'input' : 'calc',
          comment: entry.comment,
          at: stages.map(() => stageValue()),
          variants: [
            { stage: null, value: entry.base, comment: entry.comment },
            ...entry.revisions.map((one) => ({ ...one, stage: one.stage.text }))
          ].map((one) => {
            const cut = one.value.expression;
            const tree = cut === null ? null : parseExpression(cut, { money: null }).tree;
            return variant('', { cut, tree, stage: one.stage, comment: one.comment });
          })
        })
      );
    }
  }
  return results({ worksheet: read, stages, values, limits, problems: read.problems });
}
