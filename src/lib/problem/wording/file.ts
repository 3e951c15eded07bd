// Words for the file as a whole: its front matter, stages, fences, size, and the tables beside it.

import type { Wording } from '../problem.ts';

// Front matter ------------------------------------------------------------------------------------

export const frontMatterYaml = (reason: string): Wording => ({
  message: `The front matter cannot be read from here on: ${reason}.`,
  hint: 'What was read up to here holds, and so does the rest of the file.',
  expected: 'YAML'
});

export const frontMatterOpen = (): Wording => ({
  message: 'The front matter that begins here has no closing line.',
  hint: 'Write --- on a line of its own after the last key.',
  found: '---'
});

export const frontMatterShape = (found: string): Wording => ({
  message: `The front matter is ${found}; keys with values were expected.`,
  hint: 'Write lines such as title: Spray rig.',
  expected: 'keys with values'
});

export const frontMatterTooLarge = (most: string): Wording => ({
  message: `The front matter has more than ${most}.`,
  hint: 'Keep it to title, stages and settings; longer text belongs below it.'
});

/** @param expected  completes "is …", as in 'a whole number from 2 to 12' */
export const frontMatterValue = (key: string, found: string, expected: string): Wording => ({
  message: `${key} is ${found}, and should be ${expected}.`,
  hint: `Write ${key}: with ${expected} after it, or leave it out.`,
  found,
  expected
});

export const formatUnknown = (found: string): Wording => ({
  message: `This file says format ${found}; format 1 is what is read here.`,
  hint: 'Write format: 1, or read the file with a release that knows the other format.',
  found,
  expected: '1'
});

export const stageIdForm = (found: string): Wording => ({
  message: `${found} is not the id of a stage: an id is small letters, digits and hyphens, a letter first.`,
  hint: `Write an id such as first-run, and the words as its title.`,
  found,
  expected: 'small letters, digits and hyphens'
});

// Stages ------------------------------------------------------------------------------------------

export const stageUnknown = (
  stage: string,
  after: string,
  declared: readonly string[]
): Wording => ({
  message: `${stage} starts from ${after}, which is not a stage of this sheet.`,
  hint:
    declared.length === 0
      ? `Take after away, or declare ${after}.`
      : `It can start from ${declared.join(', ')}.`,
  found: after
});

/** @param path  every member in order, the first not repeated */
export const stageCircle = (path: readonly string[]): Wording => ({
  message:
    path.length === 1
      ? `The stage ${path[0]} starts from itself.`
      : `The stages ${path.join(', ')} start from each other: ${[...path, path[0]].join(' -> ')}.`,
  hint: `Take after from one of them; until then ${path[0]} is read as a first stage.`
});

// Fences ------------------------------------------------------------------------------------------

/**
 * @param kind   as written after the fence; '' for a plain listing
 * @param lines  how many lines below the fence are still read as part of the block
 */
export const blockNotClosed = (kind: string, fence: string, lines: number): Wording => ({
  message: `The ${kind === '' ? 'listing' : `${kind} block`} that begins here is not closed; ${lines === 1 ? '1 line of it is' : `${lines} lines of it are`} read.`,
  hint: `Write ${fence} on a line of its own where it ends.`,
  expected: fence
});

export const kindNear = (word: string, near: string): Wording => ({
  message: `${word} is not a kind of block, so this is shown as a plain listing.`,
  hint: `Nearest: ${near}.`,
  found: word,
  expected: near
});

// Size --------------------------------------------------------------------------------------------

export const fileTooLong = (size: string, most: string): Wording => ({
  message: `This file has ${size}, more than the ${most} that are read.`,
  hint: 'Move tables to files of their own, or split the sheet.',
  found: size,
  expected: `at most ${most}`
});

export const lineTooLong = (length: number, most: number): Wording => ({
  message: `This line has ${length} characters, more than the ${most} that are read.`,
  hint: 'Go on with it on an indented line below, or split the formula with names for its parts.'
});

// Tables beside the sheet -------------------------------------------------------------------------

export const tableMissing = (table: string, path: string): Wording => ({
  message: `${table}: the file ${path} was found neither beside the sheet nor among the shared tables.`,
  hint: 'Check the path, or put the file beside the sheet.',
  found: path
});

export const tableOutside = (path: string): Wording => ({
  message: `The path ${path} leads out of the sheet's folder.`,
  hint: 'Put the file beside the sheet, or in a folder below it, and write the path from there.',
  found: path,
  expected: 'a path below the folder of the sheet'
});
