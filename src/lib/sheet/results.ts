// What a computed sheet gives, as plain data: a value per name and stage, a verdict per limit and
// stage, and the problems, each with its line in the file. Everything that shows a sheet (page,
// command line, exports) reads this and nothing deeper.

import type { Comment, Comparison, LimitTags, Worksheet } from '#lib/document/index.ts';
import type { Expression } from '#lib/language/index.ts';
import type { Problem, ProblemCode } from '#lib/problem/index.ts';
import type { Cut } from '#lib/text/index.ts';
import type { Dimension, Unit } from '#lib/units/index.ts';

export interface Results {
  readonly worksheet: Worksheet;
  /** Depth first over the tree of stages, children in file order. */
  readonly stages: readonly StageResult[];
  /** By name, in file order. Unnamed calc lines are called 'line 31'; block results 'motor.P_rated'. */
  readonly values: ReadonlyMap<string, ValueResult>;
  /** By label, in file order. */
  readonly limits: ReadonlyMap<string, LimitResult>;
  /** The value or limit whose entry begins on a line of the file. */
  readonly byLine: ReadonlyMap<number, ValueResult | LimitResult | ChooseResult>;
  readonly choices: ReadonlyMap<string, ChooseResult>;
  /** Sorted by line; severity 'error', 'warning' and 'note'. */
  readonly problems: readonly Problem[];
}

export interface StageResult {
  readonly id: string;
  readonly title: string;
  /** Parent in the tree of stages. */
  readonly after: string | null;
  readonly date: string | null;
  readonly built: boolean;
  readonly counts: LimitCounts;
  /** Labels of the [safety] limits that are over or unknown. */
  readonly stopsTheRun: readonly string[];
}

/** [screen] limits are counted in `screens` only. */
export interface LimitCounts {
  readonly checked: number;
  /** within, close or met. */
  readonly inside: number;
  readonly close: number;
  /** over or short. */
  readonly over: number;
  readonly unknown: number;
  readonly screens: number;
  /** [screen] limits that fail. */
  readonly failing: number;
}

export type ValueKind = 'input' | 'calc' | 'function' | 'solve' | 'column' | 'choose';

export interface ValueResult {
  readonly name: string;
  /** Of the entry, in the file. */
  readonly line: number;
  readonly kind: ValueKind;
  /** null where the definition has a mistake. */
  readonly dimension: Dimension | null;
  /** Shown in; null for truth values, texts and where nothing is known. '1' is a plain number. */
  readonly unit: Unit | null;
  /** Number of rows of a column; null for a single value. */
  readonly rows: number | null;
  /** In the order of `Results.stages`. */
  readonly at: readonly StageValue[];
  /** Base first, then the revisions in file order. */
  readonly variants: readonly Variant[];
  readonly comment: Comment | null;
  /** Names this one uses directly, in any variant. */
  readonly uses: readonly string[];
  /** Names that use this one directly. */
  readonly usedBy: readonly string[];
}

export interface Variant {
  /** Stage from which it holds; null for the base. */
  readonly stage: string | null;
  /** The checked tree; null for `?` and where it has a mistake. */
  readonly tree: Expression | null;
  readonly cut: Cut | null;
  /** As written: '3 mm', '2 %'; null where there is none. */
  readonly toleranceText: string | null;
  readonly within: { readonly low: string; readonly high: string } | null;
  readonly comment: Comment | null;
  /** Line of the file on which this variant begins. */
  readonly line: number;
  /** For a solve: what is found, and the equation's sides. */
  readonly solve: {
    readonly unknown: string;
    readonly left: Expression;
    readonly right: Expression;
  } | null;
  /** For an own function. */
  readonly parameters: readonly string[] | null;
}

/** One name at one stage. Exactly one of `value`, `error`, `waitsFor` tells; `unknown` is `?`. */
export interface StageValue {
  readonly state: 'value' | 'error' | 'waits' | 'unknown';
  /** In the row's unit; a column gives an array. null unless state is 'value'. */
  readonly value: number | boolean | string | readonly number[] | null;
  /** In coherent SI units; same shape as `value` for numbers. */
  readonly si: number | readonly number[] | null;
  /** With unit: '0.8123 kW', '12 values, 13.6 to 48.5 m/s', 'yes'. '' unless state is 'value'. */
  readonly text: string;
  /** The number as the row shows it, without unit: '0.8123'. */
  readonly number: string;
  readonly error: ProblemCode | null;
  readonly waitsFor: readonly string[];
  /** Index into `ValueResult.variants` of the variant that holds here. */
  readonly variant: number;
  /** A revision is written at this very stage. */
  readonly revised: boolean;
  /** Ratio to the value at the parent stage; null where there is none, from zero, or through a sign. */
  readonly ratio: number | null;
  /** Why `ratio` is null although both stages have a value. */
  readonly change: 'new' | 'sign' | null;
  /** First order (JCGM 100:2008), in the row's unit; null where no tolerance reaches the value. */
  readonly standardUncertainty: number | null;
  /** 95 % coverage interval, in the row's unit. */
  readonly coverage: readonly [number, number] | null;
}

export type LimitStatus =
  | 'within' | 'close' | 'over' | 'met' | 'short' | 'unknown' | 'fails' | 'not-shown-to-fail'; // prettier-ignore

export interface LimitResult {
  readonly label: string;
  readonly line: number;
  readonly tags: LimitTags;
  readonly form: Comparison['form'];
  /** Both sides are shown in it; null where a side has a mistake. */
  readonly unit: Unit | null;
  readonly at: readonly LimitAtStage[];
  readonly variants: readonly LimitVariant[];
  readonly comment: Comment | null;
  readonly uses: readonly string[];
}

export interface LimitVariant {
  readonly stage: string | null;
  /** demand, capacity / actual, required / low, x, high / x, a, b / a, b: in written order; null is `none`. */
  readonly sides: readonly (Expression | null)[];
  readonly comment: Comment | null;
  readonly line: number;
}

export interface LimitAtStage {
  readonly status: LimitStatus;
  /** Inside the comparison's own band of 1e-9: the limit holds and is said to be at the limit. */
  readonly atLimit: boolean;
  /** demand or actual or x, in the row's unit; null where unknown. */
  readonly left: number | null;
  /** capacity or required, in the row's unit; null where unknown or `none`. For a range, the side that governs. */
  readonly right: number | null;
  readonly leftText: string;
  readonly rightText: string;
  /** demand/capacity, required/actual; null where a side is not positive, for [level] and temperature points. */
  readonly utilisation: number | null;
  /** How much is left before it gives out, in the row's unit; negative when over. null for `none`. */
  readonly margin: number | null;
  /** First-order chance of being over; null where no tolerance reaches the limit. */
  readonly chanceOver: number | null;
  readonly waitsFor: readonly string[];
  readonly error: ProblemCode | null;
  readonly variant: number;
  readonly revised: boolean;
}

export interface ChooseResult {
  readonly name: string;
  readonly line: number;
  readonly table: string;
  /** Texts of the table's first column (the row's name). */
  readonly rowNames: readonly string[];
  readonly at: readonly ChooseAtStage[];
}

export interface ChooseAtStage {
  readonly state: 'value' | 'error' | 'waits';
  /** Index of the chosen row; null where none fits. */
  readonly row: number | null;
  /** Pinned by `take`. */
  readonly taken: boolean;
  /** Rows that meet every condition, best first. */
  readonly ranking: readonly number[];
  /** For each row, the indices of the conditions it does not meet. */
  readonly excludedBy: readonly (readonly number[])[];
  readonly waitsFor: readonly string[];
}
