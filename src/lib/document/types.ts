// What a worksheet's text holds, before anything is computed: prose and blocks in order, and in a
// block its entries, split at the words and signs of the format but with expressions left as text.
// Cuts inside an entry count lines from 0 at the entry's first line; `Placed.line` counts lines from
// the block's opening fence (the fence is line 0), and `Block.line` counts from 1 in the file.
// Entries are cached by their text: an entry that did not change is the same object after an edit.

import type { Problem } from '#lib/problem/index.ts';
import type { Cut } from '#lib/text/index.ts';

export interface Worksheet {
  /** The whole text: `frontMatter.text` and the texts of `items`, joined, give it back byte for byte. */
  readonly text: string;
  readonly frontMatter: FrontMatter;
  readonly items: readonly (Prose | Block)[];
  /** Problems of the file itself and of its entries' form, with lines of the file. */
  readonly problems: readonly Problem[];
}

export interface FrontMatter {
  /** As it stands, hyphens and line ends included; without front matter '' or a byte order mark. */
  readonly text: string;
  /** Number of lines it takes, fences included; 0 where there is none. */
  readonly lineCount: number;
  readonly format: number;
  readonly title: string | null;
  readonly summary: string | null;
  readonly by: readonly string[];
  readonly units: 'SI' | 'US';
  /** Significant digits of a row's largest value, 2 to 12. */
  readonly digits: number;
  /** ISO 4217 code. */
  readonly money: string | null;
  readonly headline: string | null;
  /** In file order; one stage 'design' where none are declared. */
  readonly stages: readonly StageDeclaration[];
}

export interface StageDeclaration {
  readonly id: string;
  readonly title: string;
  /** The stage it starts from: the one named by `after`, else the one before it; null for a first one. */
  readonly after: string | null;
  readonly date: string | null;
  readonly built: boolean;
  /** Line of the file. */
  readonly line: number;
}

export interface Prose {
  readonly kind: 'prose';
  /** First line, from 1 in the file. */
  readonly line: number;
  /** With its line ends. */
  readonly text: string;
}

export const blockKinds = [
  'inputs', 'calc', 'limits', 'parts', 'cases', 'table', 'readings', 'fit', 'solve', 'course',
  'choose', 'sweep', 'ladder', 'drivers', 'plan', 'holds', 'event', 'ask', 'caution', 'remark'
] as const; // prettier-ignore
export type BlockKind = (typeof blockKinds)[number];

export interface Block {
  readonly kind: 'block';
  /** 'listing' for a kind that is not ours: shown as it stands, no error. */
  readonly block: BlockKind | 'listing';
  /** The info string's first word as written. */
  readonly word: string;
  /** The rest of the info string, split as the kind asks. */
  readonly head: BlockHead;
  /** Line of the opening fence, from 1 in the file. */
  readonly line: number;
  /** Both fences included, with line ends. */
  readonly text: string;
  /** Number of lines, fences included. */
  readonly lineCount: number;
  /** Empty for prose kinds and listings. */
  readonly entries: readonly Placed<Entry>[];
  /** For table and readings. */
  readonly table: TableText | null;
  /** For caution, ask, remark, event and listing: the lines between the fences, as they stand. */
  readonly prose: string | null;
}

export interface BlockHead {
  readonly title: string | null;
  readonly name: Cut | null;
  readonly from: Cut | null;
  readonly at: Cut | null;
  readonly to: Cut | null;
  /** caution: 'danger' | 'warning' | 'caution'. */
  readonly signal: 'danger' | 'warning' | 'caution' | null;
}

export interface Placed<T> {
  /** Lines below the opening fence. */
  readonly line: number;
  readonly entry: T;
}

/** `# what it is; where from`. */
export interface Comment {
  readonly text: string;
  readonly what: string;
  /** From its first sure-word on (measured, maker, standard, handbook, derived, fit, assumed, guess, invented), else null. */
  readonly source: string | null;
}

export type Entry =
  | HeadingEntry
  | InputEntry
  | CorrelationEntry
  | CalculationEntry
  | FunctionEntry
  | BareEntry
  | LimitEntry
  | SolveEntry
  | UnknownEntry
  | EquationEntry
  | PreferenceEntry
  | TakeEntry
  | TextConditionEntry
  | ConditionEntry
  | LaterEntry
  | BrokenEntry;

interface EntryBase {
  /** The entry's lines as they stand, joined by '\n', without the fence's own lines. */
  readonly text: string;
  readonly lineCount: number;
  readonly comment: Comment | null;
  /** Problems of the entry's own form (no expression is read yet); lines from 0 at the entry. */
  readonly problems: readonly Problem[];
}

/** A revision of what an entry defines or judges, from a stage on. */
export interface Revision<T> {
  readonly stage: Cut;
  readonly value: T;
  readonly comment: Comment | null;
}

/** A comment line at base: a heading for what follows. */
export interface HeadingEntry extends EntryBase {
  readonly kind: 'heading';
  readonly words: string;
}

export interface Tolerance {
  readonly amount: Cut;
  readonly shape: 'rectangular' | 'normal' | 'triangular' | 'arcsine';
  /** For `k=2` the coverage factor; `sd` is 1; null for a bound. */
  readonly coverage: number | null;
  readonly degreesOfFreedom: number | null;
}

export interface InputValue {
  /** null for `? unit`: not known yet. */
  readonly expression: Cut | null;
  /** After `to`, or after `?`. */
  readonly unit: Cut | null;
  readonly tolerance: Tolerance | null;
  readonly within: { readonly low: Cut; readonly high: Cut } | null;
}

export interface InputEntry extends EntryBase {
  readonly kind: 'input';
  readonly name: Cut;
  readonly base: InputValue;
  readonly revisions: readonly Revision<InputValue>[];
}

export interface CorrelationEntry extends EntryBase {
  readonly kind: 'correlation';
  readonly first: Cut;
  readonly second: Cut;
  readonly coefficient: Cut;
}

export interface Formula {
  readonly expression: Cut;
  /** The unit after the last top-level `to`. */
  readonly unit: Cut | null;
}

/** `name = expression [to unit]`, in calc and (as a derived column) in choose. */
export interface CalculationEntry extends EntryBase {
  readonly kind: 'calculation';
  readonly name: Cut;
  readonly base: Formula;
  readonly revisions: readonly Revision<Formula>[];
}

export interface FunctionEntry extends EntryBase {
  readonly kind: 'function';
  readonly name: Cut;
  readonly parameters: readonly Cut[];
  readonly base: Formula;
  readonly revisions: readonly Revision<Formula>[];
}

/** A bare expression: an unnamed result. */
export interface BareEntry extends EntryBase {
  readonly kind: 'bare';
  readonly base: Formula;
  readonly revisions: readonly Revision<Formula>[];
}

/** A side is null where `none` stands: a capacity without bound. */
export type Comparison =
  | { readonly form: 'demand<=capacity'; readonly demand: Cut; readonly capacity: Cut | null }
  | { readonly form: 'actual>=required'; readonly actual: Cut; readonly required: Cut | null }
  | {
      readonly form: 'low<=x<=high';
      readonly low: Cut | null;
      readonly x: Cut;
      readonly high: Cut | null;
    }
  | { readonly form: 'x outside a..b'; readonly x: Cut; readonly low: Cut; readonly high: Cut }
  | { readonly form: 'a==b'; readonly a: Cut; readonly b: Cut; readonly tolerance: Cut | null };

export interface LimitTags {
  readonly safety: boolean;
  readonly screen: boolean;
  readonly level: boolean;
  /** `[close at 80 %]` or `[close within 5 K]`. */
  readonly close: { readonly kind: 'at' | 'within'; readonly amount: Cut } | null;
  /** `[worst of run, jam]`. */
  readonly worstOf: readonly Cut[];
  /** Tags that are none of ours are a problem of the entry. */
  readonly all: readonly string[];
}

export interface LimitEntry extends EntryBase {
  readonly kind: 'limit';
  readonly label: Cut;
  readonly tags: LimitTags;
  readonly base: Comparison;
  readonly revisions: readonly Revision<Comparison>[];
}

/** `name = unknown where left == right [between low and high]`, possibly followed by `every root`. */
export interface SolveEntry extends EntryBase {
  readonly kind: 'solve';
  readonly name: Cut;
  readonly unknown: Cut;
  readonly left: Cut;
  readonly right: Cut;
  readonly between: { readonly low: Cut; readonly high: Cut } | null;
  readonly everyRoot: boolean;
}

/** `unknown x from 1`, in solve NAME and fit. */
export interface UnknownEntry extends EntryBase {
  readonly kind: 'unknown';
  readonly name: Cut;
  readonly start: Cut;
}

/** `a == b`, in solve NAME. */
export interface EquationEntry extends EntryBase {
  readonly kind: 'equation';
  readonly left: Cut;
  readonly right: Cut;
}

/** `least mass weight 3`, in choose. */
export interface PreferenceEntry extends EntryBase {
  readonly kind: 'preference';
  readonly sense: 'least' | 'most';
  readonly column: Cut;
  readonly weight: Cut | null;
  readonly revisions: readonly Revision<{
    readonly sense: 'least' | 'most';
    readonly column: Cut;
    readonly weight: Cut | null;
  }>[];
}

/** `take "ROW"`, in choose; revised at stages. `row` null takes nothing back. */
export interface TakeEntry extends EntryBase {
  readonly kind: 'take';
  readonly row: Cut;
  readonly revisions: readonly Revision<Cut>[];
}

/** `column is "text"`, in choose. */
export interface TextConditionEntry extends EntryBase {
  readonly kind: 'text-condition';
  readonly column: Cut;
  readonly words: string;
}

/** A condition on columns, in choose. */
export interface ConditionEntry extends EntryBase {
  readonly kind: 'condition';
  readonly base: Cut;
  readonly revisions: readonly Revision<Cut>[];
}

/**
 * An entry of a kind whose computing comes later (parts, cases, fit, course, sweep, ladder, drivers,
 * plan, holds, event): recognised by its form, its parts kept by role.
 */
export interface LaterEntry extends EntryBase {
  readonly kind: 'later';
  /** The form it matched, as the grammar names it: 'part', 'case', 'sweep', 'until', 'steps' … */
  readonly form: string;
  readonly parts: Readonly<Record<string, Cut | readonly Cut[]>>;
  readonly revisions: readonly Revision<Readonly<Record<string, Cut | readonly Cut[]>>>[];
}

/** A line that fits no form of its kind: kept, with its problem; nothing depends on it. */
export interface BrokenEntry extends EntryBase {
  readonly kind: 'broken';
}

export interface TableText {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly separator: '\t' | '|' | ';' | ',';
  /** A separator `;` and numbers with a decimal comma: cells carry a point in its place. */
  readonly decimalComma: boolean;
  /** Readings: `date …` lines before the header, `leave out 7, 8` after the rows. */
  readonly date: string | null;
  readonly leftOut: readonly { readonly row: number; readonly why: string | null }[];
  readonly problems: readonly Problem[];
}

export interface TableColumn {
  readonly name: Cut;
  readonly unit: Cut | null;
  readonly tolerance: Tolerance | null;
  readonly common: boolean;
}

export interface TableRow {
  /** Lines below the opening fence (or, for a table from a file, below the file's first line). */
  readonly line: number;
  /** In column order; null where the cell is empty: not measured. */
  readonly cells: readonly (Cut | null)[];
}
