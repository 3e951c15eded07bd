// Knock-on as data for other programs: the object under the key `compare`, documented by
// docs/schemas/compare.schema.json.

import type { KnockOn } from '#lib/analysis/index.ts';
import type { Results } from '#lib/sheet/index.ts';
import type { ProblemObject } from './json.ts';
import { problemObject } from './json.ts';

/** One knock-on with what was put against what. */
export interface Comparison {
  readonly knockOn: KnockOn;
  readonly from: ComparedStage;
  readonly to: ComparedStage;
  readonly tries: readonly {
    readonly name: string;
    readonly stage: string | null;
    readonly value: string;
  }[];
}

export interface ComparedStage {
  readonly file: string;
  /** Of the stage. */
  readonly title: string;
}

export interface ComparedSide {
  readonly file: string;
  readonly results: Results;
}

export interface CompareObject {
  readonly compare: readonly object[];
  readonly errors: readonly ({ readonly file: string } & ProblemObject)[];
}

/** The object that `compare --json` prints. */
export function compareObject(
  comparisons: readonly Comparison[],
  sides: readonly ComparedSide[]
): CompareObject {
  const files = new Map(sides.map((side) => [side.file, side.results]));
  return {
    compare: comparisons.map(knockOnObject),
    errors: [...files].flatMap(([file, results]) =>
      results.problems
        .filter(({ severity }) => severity === 'error')
        .map((found) => ({ file, ...problemObject(found) }))
    )
  };
}

function knockOnObject({ knockOn, from, to, tries }: Comparison): object {
  return {
    from: { file: from.file, title: from.title, stage: knockOn.from.stage },
    to: { file: to.file, title: to.title, stage: knockOn.to.stage },
    tries: tries.map(({ name, stage, value }) => ({ name, stage, value })),
    changedInputs: knockOn.changedInputs.map(({ name, line, before, after, ratio, reason }) => ({
      name,
      line,
      before,
      after,
      ratio,
      reason
    })),
    moved: knockOn.moved.map((row) => ({
      name: row.name,
      line: row.line,
      kind: row.kind,
      unit: row.unit,
      before: row.before,
      after: row.after,
      beforeText: row.beforeText,
      afterText: row.afterText,
      ratio: row.ratio,
      change: row.change
    })),
    flipped: knockOn.flipped.map((row) => ({
      label: row.label,
      line: row.line,
      tags: row.tags.all,
      before: row.before,
      after: row.after,
      beforeUtilisation: row.beforeUtilisation,
      afterUtilisation: row.afterUtilisation,
      direction: row.direction
    })),
    stayedPut: knockOn.stayedPut.map((row) => ({
      label: row.label,
      line: row.line,
      tags: row.tags.all,
      capacityText: row.capacityText,
      before: row.before,
      after: row.after,
      grew: row.grew ?? 'new',
      status: row.status
    })),
    unmoved: knockOn.unmoved,
    unmatched: {
      onlyBefore: knockOn.unmatched.onlyBefore,
      onlyAfter: knockOn.unmatched.onlyAfter
    }
  };
}
