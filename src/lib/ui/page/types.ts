// What the page of one worksheet shows, as plain data: words, TeX, states and places in the layout.
// It is made once from the results of the sheet (model.ts) and can be sent, stored or drawn without
// the engine; components read it and compute nothing on quantities.

/** A stage as the page marks it: a disc with its number, in its colour of the ramp. */
export interface StageMark {
  readonly id: string;
  readonly title: string;
  /** From 1, over all stages of the sheet. */
  readonly number: number;
  /** Place on the colour ramp: 0 first, 1 last. */
  readonly t: number;
  /** Number of stages of the sheet. */
  readonly of: number;
}

export type MarkShape = 'tick' | 'half' | 'octagon' | 'dash' | 'shield';
/** How loud a status is: 'calm' has no colour of its own. */
export type Tone = 'calm' | 'close' | 'over';

/** A status said three ways: word, shape, colour. */
export interface Status {
  readonly word: string;
  readonly shape: MarkShape;
  readonly tone: Tone;
}

export interface StageHead extends StageMark {
  /** Puts this stage in focus, or takes the focus away when it has it. */
  readonly href: string;
  readonly isFocus: boolean;
  /** '2 over', '0 over'; null for a sheet without limits. */
  readonly over: { readonly text: string; readonly status: Status } | null;
  /** '1 close', '3 not known'. */
  readonly others: readonly string[];
  /** Labels of the safety limits that stop the run at this stage. */
  readonly stoppedBy: readonly string[];
  /** What stands under the head: a count, the words to it, sentences. */
  readonly figure: { readonly count: string; readonly words: string } | null;
  readonly sentences: readonly string[];
  /** The input named in the front matter as headline, as it is set here. */
  readonly headline: { readonly tex: string; readonly text: string } | null;
  /** 'from First run' where a stage does not start from the one on its left; '14 March 2026'; 'as built'. */
  readonly remarks: readonly string[];
}

/** A lettered reason: the letter at the value leads to the note under the block. */
export interface Reason {
  readonly letter: string;
  readonly id: string;
  readonly stage: string;
  /** '80 to 46 m/s', 'another formula'. */
  readonly what: string;
  readonly words: string;
}

export interface LetterLink {
  readonly letter: string;
  readonly id: string;
}

export interface ColumnPlace {
  readonly stage: StageMark;
  readonly isFocus: boolean;
  /** Another stage has the focus. */
  readonly isDim: boolean;
}

export interface ValueCell extends ColumnPlace {
  readonly state: 'value' | 'error' | 'waits' | 'unknown' | 'after';
  /** A value that is no single number: a text, 'yes', a column in words. */
  readonly isWords: boolean;
  /** The number as its row shows it, or the words of the state. 'after' is a dash behind such words. */
  readonly text: string;
  /** Value with unit in full precision, for hovering. */
  readonly full: string | null;
  readonly isRevised: boolean;
  /** Same as at the stage it starts from. */
  readonly isQuiet: boolean;
  /** Shown as a line running on from the column before. */
  readonly isHeld: boolean;
  /** A line runs on from this value. */
  readonly leads: boolean;
  readonly letter: LetterLink | null;
  readonly factor: { readonly text: string; readonly isStrong: boolean } | null;
}

export interface Form {
  readonly tex: string;
  /** The stage from which a revised form holds. */
  readonly from: StageMark | null;
  readonly letter: LetterLink | null;
}

export interface Words {
  readonly what: string | null;
  readonly source: string | null;
}

export interface ProblemNote {
  readonly severity: 'error' | 'warning' | 'note';
  /** Line of the file. */
  readonly line: number;
  readonly stage: string | null;
  readonly message: string;
  readonly hint: string | null;
  /** The line as written, cut at the place meant; null where it stands in full elsewhere. */
  readonly source: {
    readonly before: string;
    readonly marked: string;
    readonly after: string;
  } | null;
  readonly replacement: string | null;
}

interface RowBase {
  /** Anchor: 'line-31'. */
  readonly id: string;
  readonly problems: readonly ProblemNote[];
}

export interface HeadingRow extends RowBase {
  readonly kind: 'heading';
  readonly words: string;
}

export interface InputRow extends RowBase {
  readonly kind: 'input';
  readonly tex: string;
  readonly name: string;
  readonly words: Words;
  /** '± 3 mm', '0.2 to 0.9 m'. */
  readonly tolerance: string | null;
  readonly within: string | null;
  readonly unit: string;
  /** No stage revises it. */
  readonly isConstant: boolean;
  readonly cells: readonly ValueCell[];
}

export interface CalcRow extends RowBase {
  readonly kind: 'calc';
  readonly name: string;
  readonly forms: readonly Form[];
  /** The form in view with its values put in, and the stage they are of. */
  readonly withNumbers: { readonly tex: string; readonly stage: StageMark } | null;
  readonly words: Words;
  /** 'found between 10 and 150 m/s'. */
  readonly found: string | null;
  readonly unit: string;
  /** Empty for a function: it has no value of its own. */
  readonly cells: readonly ValueCell[];
}

export interface LimitCell extends ColumnPlace {
  readonly status: Status;
  /** '169 %'; null where no ratio is meant. */
  readonly percent: string | null;
  /** Widths in % of a track of 0 to 150 %; null where no ratio is meant. */
  readonly bar: { readonly fill: number; readonly past: number; readonly isTorn: boolean } | null;
  /** '0.95 of 1.5 kW', 'waits for T'. */
  readonly amounts: string;
  readonly letter: LetterLink | null;
}

export interface LimitRow extends RowBase {
  readonly kind: 'limit';
  readonly label: string;
  readonly isSafety: boolean;
  readonly isScreen: boolean;
  /** 'close from 80 %', 'screen: can only show failure'. */
  readonly tags: readonly string[];
  readonly forms: readonly Form[];
  readonly words: Words;
  readonly cells: readonly LimitCell[];
}

/** An entry that is shown as it is written: not understood, or not computed yet. */
export interface TextRow extends RowBase {
  readonly kind: 'text';
  readonly text: string;
}

export type Row = HeadingRow | InputRow | CalcRow | LimitRow | TextRow;

interface ItemBase {
  readonly id: string;
  readonly problems: readonly ProblemNote[];
}

export interface ProseItem extends ItemBase {
  readonly kind: 'prose';
  readonly html: string;
}

export interface RowsItem extends ItemBase {
  readonly kind: 'rows';
  /** 'Inputs', 'Calculation', 'Limits', 'Solve'. */
  readonly label: string;
  readonly title: string | null;
  readonly rows: readonly Row[];
  readonly reasons: readonly Reason[];
}

export interface TableItem extends ItemBase {
  readonly kind: 'table';
  readonly label: string;
  readonly name: string;
  /** 'from tubes.csv', 'read at First run, 2026-03-14'. */
  readonly origin: string | null;
  readonly columns: readonly {
    readonly name: string;
    readonly tex: string;
    readonly unit: string;
    readonly isText: boolean;
  }[];
  readonly rows: readonly (readonly string[])[];
  /** How many rows stand open; the rest opens on demand. */
  readonly openRows: number;
  /** 'Left out: row 7 (belt slipped).' */
  readonly remarks: readonly string[];
}

export interface Candidate {
  readonly name: string;
  /** Stages at which it is the one: 'chosen' by the ranking, 'taken' by the author. */
  readonly marks: readonly { readonly stage: StageMark; readonly how: 'chosen' | 'taken' }[];
  /** At the stage in view: '1st', '2nd'; null where a condition excludes it. */
  readonly rank: string | null;
  /** Conditions it does not meet at the stage in view. */
  readonly misses: readonly string[];
}

export interface ChooseItem extends ItemBase {
  readonly kind: 'choose';
  readonly name: string;
  readonly table: string;
  readonly stage: StageMark;
  readonly rows: readonly Row[];
  readonly conditions: readonly string[];
  readonly candidates: readonly Candidate[];
  /** 'Upgrade: waits for P_need.' */
  readonly remarks: readonly string[];
  readonly reasons: readonly Reason[];
}

export interface CautionItem extends ItemBase {
  readonly kind: 'caution';
  readonly signal: 'danger' | 'warning' | 'caution';
  readonly title: string | null;
  readonly html: string;
}

export interface RemarkItem extends ItemBase {
  readonly kind: 'remark';
  /** 'B. Builder, 2026-03-14', 'resolved: A. Designer, 2026-03-15'. */
  readonly lines: readonly string[];
  readonly html: string;
}

/** A block whose computing is not there yet, or a listing. */
export interface TextItem extends ItemBase {
  readonly kind: 'text';
  readonly label: string;
  readonly title: string | null;
  readonly text: string;
  /** The plain sentence that it is not computed yet; null for a listing. */
  readonly sentence: string | null;
}

export type Item =
  | ProseItem | RowsItem | TableItem | ChooseItem | CautionItem | RemarkItem | TextItem; // prettier-ignore

export interface AttentionEntry {
  readonly href: string;
  readonly label: string;
  readonly status: Status;
  readonly percent: string | null;
  readonly isSafety: boolean;
}

export interface ContentsEntry {
  readonly href: string;
  readonly text: string;
  readonly depth: 0 | 1;
}

export interface PageModel {
  readonly file: string;
  readonly title: string;
  readonly summary: string | null;
  /** 'A. Designer, B. Builder'. */
  readonly by: string | null;
  /** The columns of the page: all stages, or a window of five round the focus. */
  readonly stages: readonly StageHead[];
  readonly earlier: { readonly text: string; readonly href: string } | null;
  readonly later: { readonly text: string; readonly href: string } | null;
  /** The stage whose numbers are shown. */
  readonly shown: StageMark;
  readonly hasFocus: boolean;
  readonly hasNumbers: boolean;
  readonly numbersHref: string;
  readonly sideBySideHref: string;
  /** What stops the run, and what is not checked. */
  readonly verdict: readonly string[];
  readonly contents: readonly ContentsEntry[];
  /** Over, short, failing, unknown and close at the stage in view, safety limits first, then worst first. */
  readonly attention: readonly AttentionEntry[];
  readonly items: readonly Item[];
  readonly cautions: readonly CautionItem[];
  /** Problems of the file itself: front matter, and whatever stands in no item. */
  readonly problems: readonly ProblemNote[];
  /** '2 lines have a mistake; the rest is computed.' */
  readonly mistakes: string | null;
}
