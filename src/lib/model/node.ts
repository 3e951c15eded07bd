// The definitions of a sheet: what each entry defines or judges, its expressions read, its revisions
// put to stages. A node is the same object as long as its entry's text is the same, so whatever is
// worked out for it can be kept.

import type { Comment, Comparison, Entry, LimitTags, Tolerance } from '#lib/document/index.ts';
import type { Expression } from '#lib/language/index.ts';
import type { Problem } from '#lib/problem/index.ts';
import type { Cut } from '#lib/text/index.ts';
import type { Unit } from '#lib/units/index.ts';

/** An expression with its tree; null where it could not be read. */
export interface Parsed {
  readonly cut: Cut;
  readonly tree: Expression | null;
}

interface VariantBase {
  /** Index of the stage it is written for; null for the base. */
  readonly stage: number | null;
  /** Lines below the entry's first. */
  readonly line: number;
  readonly comment: Comment | null;
}

interface NodeBase<V extends VariantBase> {
  /** Unique in the sheet: a name, or a label or line with a mark that no name can have. */
  readonly id: string;
  /** The name, or null for what cannot be named in an expression. */
  readonly name: string | null;
  readonly entry: Entry | null;
  readonly nameCut: Cut | null;
  readonly variants: readonly V[];
  /** For each stage the index of the variant that holds; -1 where none does. */
  readonly variantAt: readonly number[];
  /** Of its expressions; those of its form are the worksheet's. */
  readonly problems: readonly Problem[];
  /** The entry's form has a mistake: it keeps its name, and is not computed. */
  readonly isBroken: boolean;
  /** Names that any variant uses, functions included. */
  readonly uses: readonly string[];
}

export interface InputVariant extends VariantBase {
  /** null for `? unit`. */
  readonly value: Parsed | null;
  readonly isUnknown: boolean;
  readonly unit: Unit | null;
  readonly tolerance: {
    readonly amount: Parsed;
    readonly form: Tolerance;
    readonly text: string;
  } | null;
  readonly within: { readonly low: Parsed; readonly high: Parsed } | null;
  /** `FIT.p`: the value of a fit's parameter. */
  readonly fitted: string | null;
}
export interface InputNode extends NodeBase<InputVariant> {
  readonly kind: 'input';
}

export interface FormulaVariant extends VariantBase {
  readonly expression: Parsed;
  readonly unit: Unit | null;
  /** A unit was asked for, but could not be read. */
  readonly unitFailed: boolean;
}
/** A calc line, named or bare, or a derived column of a choice. */
export interface FormulaNode extends NodeBase<FormulaVariant> {
  readonly kind: 'calc';
  /** Rows of the table, for a derived column; null for a line of calc. */
  readonly rows: number | null;
}

export interface FunctionNode extends NodeBase<FormulaVariant> {
  readonly kind: 'function';
  readonly parameters: readonly string[];
}

export interface LimitVariant extends VariantBase {
  readonly form: Comparison['form'];
  /** In written order; null is `none`. */
  readonly sides: readonly (Parsed | null)[];
  /** Of `a == b ± t`. */
  readonly tolerance: Parsed | null;
}
export interface LimitNode extends NodeBase<LimitVariant> {
  readonly kind: 'limit';
  readonly label: string;
  readonly tags: LimitTags;
  readonly close: { readonly kind: 'at' | 'within'; readonly amount: Parsed } | null;
}

export interface SolveVariant extends VariantBase {
  readonly left: Parsed;
  readonly right: Parsed;
  readonly low: Parsed | null;
  readonly high: Parsed | null;
}
export interface SolveNode extends NodeBase<SolveVariant> {
  readonly kind: 'solve';
  readonly unknown: string;
  readonly unknownCut: Cut;
}

/** `TABLE.column`: constant rows. */
export interface ColumnNode extends NodeBase<VariantBase> {
  readonly kind: 'column';
  readonly table: string;
  readonly column: string;
  readonly unit: Unit | null;
  /** In coherent SI units; NaN where the cell is empty. null for a column of texts. */
  readonly numbers: readonly number[] | null;
  readonly texts: readonly string[];
}

export interface ChooseVariant extends VariantBase {
  readonly conditions: readonly ChooseCondition[];
  readonly preference: {
    readonly sense: 'least' | 'most';
    readonly column: Parsed;
    readonly line: number;
  } | null;
  /** Text of the row that is taken; null where the ranking decides. */
  readonly take: { readonly row: string; readonly cut: Cut; readonly line: number } | null;
}
export type ChooseCondition =
  | { readonly kind: 'test'; readonly test: Parsed; readonly line: number }
  | {
      readonly kind: 'words';
      readonly column: string;
      readonly words: string;
      readonly cut: Cut;
      readonly line: number;
    };
export interface ChooseNode extends NodeBase<ChooseVariant> {
  readonly kind: 'choose';
  readonly table: string;
  readonly rows: number;
  readonly rowNames: readonly string[];
}

/** `CHOICE.column`: the value of the chosen row. */
export interface PickNode extends NodeBase<VariantBase> {
  readonly kind: 'pick';
  readonly choice: string;
  readonly source: string;
}

/** A name that later work will give a value to (a fit's parameter, a course's result). */
export interface LaterNode extends NodeBase<VariantBase> {
  readonly kind: 'later';
}

export type SheetNode =
  | InputNode | FormulaNode | FunctionNode | LimitNode | SolveNode | ColumnNode | ChooseNode
  | PickNode | LaterNode; // prettier-ignore
