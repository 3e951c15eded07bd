// Results as the result object of the command line, for other programs: documented by
// docs/schemas/result.schema.json, to which the tests hold it. Names come from the worksheet, so the
// objects keyed by name are made entry by entry (`__proto__` is a name like any other).

import type { Problem, Span } from '#lib/problem/index.ts';
import type {
  LimitAtStage,
  LimitResult,
  Results,
  StageValue,
  ValueResult
} from '#lib/sheet/index.ts';
import { partsWithoutCheck, titleOf } from './outline.ts';

export interface ResultObject {
  readonly title: string | null;
  readonly stages: readonly { id: string; title: string; after: string | null }[];
  readonly values: Readonly<Record<string, ValueObject>>;
  readonly limits: readonly LimitObject[];
  readonly stopsTheRun: Readonly<Record<string, readonly string[]>>;
  readonly partsWithoutCheck: Readonly<Record<string, readonly string[]>>;
  readonly errors: readonly ProblemObject[];
  readonly notices: readonly ProblemObject[];
  readonly seed: number;
  readonly samples: number;
}

export interface ValueObject {
  readonly line: number;
  readonly kind: ValueResult['kind'];
  readonly dimension: string | null;
  readonly unit: string | null;
  readonly at: Readonly<Record<string, ValueAtObject>>;
}

export interface ValueAtObject {
  readonly value?: number | boolean | string | readonly (number | null)[];
  readonly si?: number | readonly (number | null)[];
  readonly text?: string;
  readonly standardUncertainty?: number;
  readonly coverage?: readonly [number, number];
  readonly error?: string;
  readonly waitsFor?: readonly string[];
}

export interface LimitObject {
  readonly line: number;
  readonly label: string;
  readonly tags: readonly string[];
  readonly form: LimitResult['form'];
  readonly unit: string | null;
  readonly at: Readonly<Record<string, LimitAtObject>>;
}

export interface LimitAtObject {
  readonly left: number | null;
  readonly right: number | null;
  readonly utilisation: number | null;
  readonly margin: number | null;
  readonly status: LimitAtStage['status'];
  readonly atLimit: boolean;
  readonly chanceOver?: number;
  readonly error?: string;
  readonly waitsFor?: readonly string[];
}

export interface ProblemObject {
  readonly code: string;
  readonly severity: Problem['severity'];
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
  readonly stage: string | null;
  readonly subject: string | null;
  readonly found: string | null;
  readonly expected: string | null;
  readonly message: string;
  readonly hint: string | null;
  readonly related: readonly { line: number; column: number; endColumn: number }[];
}

/** The seed that draws will be counted from, and how many were drawn: first order draws none. */
const SEED = 1;
const SAMPLES = 0;

/** The result object of a computed sheet. */
export function resultObject(results: Results): ResultObject {
  const { stages } = results;
  const perStage = <T>(give: (index: number) => T): Record<string, T> =>
    Object.fromEntries(stages.map((stage, index) => [stage.id, give(index)]));
  const parts = partsWithoutCheck(results);
  return {
    title: titleOf(results),
    stages: stages.map(({ id, title, after }) => ({ id, title, after })),
    values: Object.fromEntries(
      [...results.values].map(([name, value]) => [name, valueObject(value, results)])
    ),
    limits: [...results.limits.values()].map((limit) => limitObject(limit, results)),
    stopsTheRun: perStage((index) => stages[index]?.stopsTheRun ?? []),
    partsWithoutCheck: perStage(() => parts),
    errors: results.problems.filter((found) => found.severity === 'error').map(problemObject),
    notices: results.problems.filter((found) => found.severity !== 'error').map(problemObject),
    seed: SEED,
    samples: SAMPLES
  };
}

/**
 * An object as JSON text that cannot steer a terminal either: besides what JSON escapes, so are
 * C1 controls and line separators.
 */
export function jsonText(object: unknown): string {
  const text = JSON.stringify(object, null, 2);
  return `${text.replace(
    /[\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`
  )}\n`;
}

function valueObject(value: ValueResult, results: Results): ValueObject {
  return {
    line: value.line,
    kind: value.kind,
    dimension: value.dimension?.key ?? null,
    unit: value.unit?.text ?? null,
    at: Object.fromEntries(
      results.stages.flatMap((stage, index) => {
        const at = value.at[index];
        return at ? [[stage.id, valueAtObject(at)] as const] : [];
      })
    )
  };
}

function valueAtObject(at: StageValue): ValueAtObject {
  if (at.state === 'waits') return { waitsFor: at.waitsFor };
  if (at.state === 'unknown') return { error: 'value/needs-a-value' };
  if (at.state === 'error' || at.value === null) return { error: at.error ?? 'value/not-finite' };
  return {
    value: typeof at.value === 'object' ? at.value.map(finiteOrNull) : at.value,
    ...(at.si === null ? {} : { si: typeof at.si === 'number' ? at.si : at.si.map(finiteOrNull) }),
    text: at.text,
    ...(at.standardUncertainty === null ? {} : { standardUncertainty: at.standardUncertainty }),
    ...(at.coverage === null ? {} : { coverage: at.coverage })
  };
}

/** An empty cell of a column is not a number: JSON has null for it. */
const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);

function limitObject(limit: LimitResult, results: Results): LimitObject {
  return {
    line: limit.line,
    label: limit.label,
    tags: limit.tags.all,
    form: limit.form,
    unit: limit.unit?.text ?? null,
    at: Object.fromEntries(
      results.stages.flatMap((stage, index) => {
        const at = limit.at[index];
        return at ? [[stage.id, limitAtObject(at)] as const] : [];
      })
    )
  };
}

function limitAtObject(at: LimitAtStage): LimitAtObject {
  return {
    left: at.left,
    right: at.right,
    utilisation: at.utilisation,
    margin: at.margin,
    status: at.status,
    atLimit: at.atLimit,
    ...(at.chanceOver === null ? {} : { chanceOver: at.chanceOver }),
    ...(at.error === null ? {} : { error: at.error }),
    ...(at.waitsFor.length === 0 ? {} : { waitsFor: at.waitsFor })
  };
}

/** A problem as other programs get it: columns count UTF-16 units from 1, the end exclusive. */
export function problemObject(found: Problem): ProblemObject {
  return {
    code: found.code,
    severity: found.severity,
    ...place(found.at),
    stage: found.stage,
    subject: found.subject,
    found: found.found,
    expected: found.expected,
    message: found.message,
    hint: found.hint,
    related: found.related.map(place)
  };
}

const place = (at: Span): { line: number; column: number; endColumn: number } => ({
  line: at.line,
  column: at.from,
  endColumn: at.to
});
