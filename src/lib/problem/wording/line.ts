// Words for the form of a line in a block: what a kind of block does not know, names, labels and
// stages that do not fit, lines in the wrong place, and comparisons that cannot be judged.

import type { Wording } from '../problem.ts';

// Forms -------------------------------------------------------------------------------------------

/** @param forms  what the kind knows, as the grammar writes it */
export const notUnderstood = (line: string, kind: string, forms: readonly string[]): Wording => ({
  message: `${clip(line)} is none of the lines that ${article(kind)} block knows.`,
  hint: `It knows: ${forms.join(' · ')}.`,
  found: line,
  expected: forms.join(' · ')
});

/** @param part  what is missing, with its article, as in 'a value' */
export const missing = (subject: string, part: string, form: string): Wording => ({
  message: `${subject}: ${part} is missing.`,
  hint: `The form is ${form}.`,
  expected: part
});

export const twice = (subject: string, word: string): Wording => ({
  message: `${subject}: ${word} stands here a second time.`,
  hint: 'Keep one of the two.',
  found: word
});

export const notRevised = (what: string): Wording => ({
  message: `${what} cannot be revised at a stage.`,
  hint: 'Revise the inputs and formulas it is made of.'
});

export const headMissing = (kind: string, part: string, form: string): Wording => ({
  message: `This ${kind} block needs ${part}.`,
  hint: `Write ${form}.`,
  expected: part
});

export const headNotUnderstood = (found: string, kind: string, form: string): Wording => ({
  message: `${clip(found)} after ${kind} cannot be read.`,
  hint: `The form is ${form}.`,
  found,
  expected: form
});

export const plusMinus = (found: string): Wording => ({
  message: `${found} is a sum and a sign, not a tolerance.`,
  hint: 'Write ± for a tolerance.',
  found,
  expected: '±'
});

export const suffixesClash = (first: string, second: string): Wording => ({
  message: `A tolerance is either ${first} or ${second}, not both.`,
  hint: 'Keep one of the two.',
  found: second
});

/** @param what  as in 'a coverage factor' */
export const notPositive = (what: string, found: string): Wording => ({
  message: `${what} is greater than 0, and ${found} is not.`,
  found,
  expected: 'a number above 0'
});

export const rowsFromFile = (table: string, path: string): Wording => ({
  message: `${table} takes its rows from ${path}; this line in the block is not read.`,
  hint: `Take the line away, or take "from ${path}" away.`
});

export const notADate = (found: string): Wording => ({
  message: `${found} is not a date.`,
  hint: 'Write year, month and day: 2026-03-14.',
  found,
  expected: 'YYYY-MM-DD'
});

export const tickWithoutName = (): Wording => ({
  message: 'This hold is ticked, and does not say by whom and when.',
  hint: 'End the line with — NAME, DATE.',
  expected: '— NAME, DATE'
});

export const unknownTag = (tag: string, known: readonly string[]): Wording => ({
  message: `[${tag}] is not a tag of a limit.`,
  hint: `The tags are ${known.join(', ')}.`,
  found: tag,
  expected: known.join(', ')
});

// Names and labels --------------------------------------------------------------------------------

export const notAName = (found: string): Wording => ({
  message: `${clip(found)} is not a name: a name is letters, digits and _, and does not begin with a digit.`,
  hint: 'Join words by _, as in T_shaft.',
  found,
  expected: 'a name'
});

export const reservedName = (
  name: string,
  reservation: 'function' | 'constant' | 'word'
): Wording => ({
  message: `${name} is ${reservationWords(name, reservation)} and cannot be defined.`,
  hint: `Use another name, such as ${name}_1.`,
  found: name
});

export const duplicateName = (name: string, line: number): Wording => ({
  message: `${name} is already defined on line ${line}.`,
  hint: 'Give one of the two another name; for a new value at a stage, write an indented line such as "at STAGE: value".',
  found: name
});

export const duplicateColumn = (name: string): Wording => ({
  message: `This table has a second column ${name}.`,
  hint: 'Give one of the two another name.',
  found: name
});

export const duplicateLabel = (label: string, line: number): Wording => ({
  message: `The label ${clip(label)} is already used on line ${line}.`,
  hint: 'Give one of the two another label.',
  found: label
});

export const labelMissing = (found: string): Wording => ({
  message: `${clip(found)} has no label.`,
  hint: `Write a label and a colon first: tip speed: ${clip(found)}.`,
  found,
  expected: 'label: comparison'
});

// Places ------------------------------------------------------------------------------------------

export const unknownStage = (stage: string, declared: readonly string[]): Wording => ({
  message: `${stage} is not a stage of this sheet.`,
  hint: `Its stages are ${declared.join(', ')}.`,
  found: stage
});

export const revisedTwice = (name: string, stage: string): Wording => ({
  message: `${name} is revised twice at ${stage}.`,
  hint: 'Keep one of the two lines.',
  found: stage
});

export const revisionWithoutBase = (stage: string): Wording => ({
  message: `This revision at ${stage} stands under no line that it could revise.`,
  hint: 'Write it indented, right under the line it revises.'
});

export const revisionNotIndented = (stage: string): Wording => ({
  message: `This revision at ${stage} is not indented, so it revises nothing.`,
  hint: 'Indent it by two spaces under the line it revises.'
});

export const shallow = (): Wording => ({
  message: 'This line is indented less than the first line of its block.',
  hint: 'Give every line that begins something the same indentation.'
});

export const deepUnderHeading = (): Wording => ({
  message: 'This indented line goes on with nothing: above it stands a heading.',
  hint: 'Take the indentation away, or move the line up under what it goes on with.'
});

// Tables and comparisons --------------------------------------------------------------------------

export const columnCount = (found: number, expected: number): Wording => ({
  message: `This row has ${count(found, 'cell')}, and the header ${count(expected, 'column')}.`,
  hint: 'Leave a cell empty where nothing was measured; put a cell that holds the separator in quotes.',
  found: String(found),
  expected: String(expected)
});

export const noComparison = (label: string): Wording => ({
  message: `${clip(label)}: nothing is compared.`,
  hint: 'The forms are: demand <= capacity · actual >= required · low <= x <= high · x outside a .. b · a == b ± t.',
  expected: 'a comparison'
});

export const strictComparison = (label: string, sign: '<' | '>'): Wording => ({
  message: `${clip(label)}: ${sign} leaves out equality; a limit holds at equality, within one part in a thousand million.`,
  hint: `Write ${sign}=.`,
  found: sign,
  expected: `${sign}=`
});

export const singleEquals = (subject: string): Wording => ({
  message: `${clip(subject)}: = defines a name, and here two sides are compared.`,
  hint: 'Write ==.',
  found: '=',
  expected: '=='
});

export const mixedComparison = (label: string): Wording => ({
  message: `${clip(label)}: these comparisons do not make one range.`,
  hint: 'Write low <= x <= high, or make two limits of them.',
  expected: 'low <= x <= high'
});

export const unequalNotJudged = (label: string): Wording => ({
  message: `${clip(label)}: "not equal" is not a limit.`,
  hint: 'To keep clear of a range write x outside a .. b.',
  found: '!='
});

export const noneNotHere = (label: string): Wording => ({
  message: `${clip(label)}: "none" is a capacity without bound, and cannot be what is judged.`,
  hint: 'Write the quantity that is to be judged.',
  found: 'none'
});

// Helpers -----------------------------------------------------------------------------------------

/** A long text shortened for a message; whole texts stand in `found`. */
function clip(text: string): string {
  const line = text.split('\n', 1)[0] ?? '';
  return line.length <= 60 ? line : `${line.slice(0, 57)}…`;
}

function article(kind: string): string {
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`;
}

function reservationWords(name: string, reservation: 'function' | 'constant' | 'word'): string {
  if (reservation === 'function') return 'a function';
  if (reservation === 'word') return 'a word of the worksheet';
  return name === 'g_n' ? 'predefined (9.80665 m/s^2, standard gravity)' : 'predefined';
}
