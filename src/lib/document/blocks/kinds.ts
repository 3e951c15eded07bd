// The table of block kinds: how the info string of each is read, what stands in it, and the lines it
// knows. A new kind is one file in this folder and one row here.

import type { Problem } from '#lib/problem/index.ts';
import type { Cut, Lines } from '#lib/text/index.ts';
import type { EntryText } from '../entries.ts';
import type { HeadForm } from '../head.ts';
import { blockKinds, type BlockHead, type BlockKind, type Entry, type Placed } from '../types.ts';
import { askForms, readAsk } from './ask.ts';
import { calcForms, readCalc } from './calc.ts';
import { caseForms, readCases } from './cases.ts';
import { chooseForms, readChoose } from './choose.ts';
import { courseForms, readCourse } from './course.ts';
import { driverForms, readDrivers } from './drivers.ts';
import { eventForms, readEvent } from './event.ts';
import { fitForms, readFit } from './fit.ts';
import { holdForms, readHolds } from './holds.ts';
import { inputForms, readInputs } from './inputs.ts';
import { ladderForms, readLadder } from './ladder.ts';
import { limitForms, readLimits } from './limits.ts';
import { partForms, readParts } from './parts.ts';
import { planForms, readPlan } from './plan.ts';
import { readRemark, remarkForms } from './remark.ts';
import { attachesToSolve, finishSolve, readSolve, solveForms } from './solve.ts';
import { readSweep, sweepForms } from './sweep.ts';

export interface KindRow {
  readonly head: HeadForm;
  readonly content: 'entries' | 'table';
  /** The lines it knows, as the grammar writes them. */
  readonly forms: readonly string[];
  /** Reads one entry; null for tables and where the whole block is prose. */
  readonly read: ((entry: EntryText) => Entry) | null;
  /** Keeps the lines between the fences as prose. */
  readonly prose?: boolean;
  /** Finds the few lines of a prose block that are not prose. */
  readonly readProse?: (
    lines: Lines,
    from: number,
    to: number,
    kind: Cut,
    problems: Problem[]
  ) => Placed<Entry>[];
  /** Looks at the whole block once its entries are read, and gives its head as it then stands. */
  readonly finish?: (
    head: BlockHead,
    entries: readonly Placed<Entry>[],
    kind: Cut,
    problems: Problem[]
  ) => BlockHead;
  /** A line at base for which this holds goes with the entry above it. */
  readonly attaches?: (line: string) => boolean;
  /** Text in double quotes may hold a `#`. */
  readonly quotes?: boolean;
  /** Its lines begin with a label, which may be `at rest:`. */
  readonly labelled?: boolean;
}

const tableForms: readonly string[] = ['name [unit], …', 'cell, …'];
const readingForms: readonly string[] = [
  'date 2026-03-14',
  'name [unit] ± …, …',
  'cell, …',
  'leave out 7, 8'
];

export const kinds: Readonly<Record<BlockKind, KindRow>> = {
  inputs: { head: 'title', content: 'entries', forms: inputForms, read: readInputs },
  calc: { head: 'title', content: 'entries', forms: calcForms, read: readCalc },
  limits: { head: 'title', content: 'entries', forms: limitForms, read: readLimits, labelled: true },
  parts: { head: 'title', content: 'entries', forms: partForms, read: readParts, labelled: true },
  cases: { head: 'title', content: 'entries', forms: caseForms, read: readCases },
  table: { head: 'name [from PATH]', content: 'table', forms: tableForms, read: null },
  readings: { head: 'name at STAGE', content: 'table', forms: readingForms, read: null },
  fit: { head: 'name to READINGS', content: 'entries', forms: fitForms, read: readFit },
  solve: {
    head: 'system', content: 'entries', forms: solveForms, read: readSolve, attaches: attachesToSolve,
    finish: finishSolve
  },
  course: { head: 'name', content: 'entries', forms: courseForms, read: readCourse },
  choose: { head: 'name from TABLE', content: 'entries', forms: chooseForms, read: readChoose, quotes: true },
  sweep: { head: 'title', content: 'entries', forms: sweepForms, read: readSweep },
  ladder: { head: 'title', content: 'entries', forms: ladderForms, read: readLadder },
  drivers: { head: 'title', content: 'entries', forms: driverForms, read: readDrivers },
  plan: { head: 'name', content: 'entries', forms: planForms, read: readPlan },
  holds: { head: 'title', content: 'entries', forms: holdForms, read: readHolds },
  event: { head: 'at STAGE', content: 'entries', forms: eventForms, read: readEvent, prose: true },
  ask: { head: 'title', content: 'entries', forms: askForms, read: null, prose: true, readProse: readAsk },
  caution: { head: 'signal', content: 'entries', forms: [], read: null, prose: true, readProse: () => [] },
  remark: {
    head: 'title', content: 'entries', forms: remarkForms, read: null, prose: true, readProse: readRemark
  }
}; // prettier-ignore

/** Common words after a fence that name a plain listing, however near they are to a kind of ours. */
const listings: ReadonlySet<string> = new Set([
  '', 'asm', 'bash', 'c', 'cpp', 'css', 'csv', 'diff', 'git', 'html', 'ini', 'java', 'js', 'json', 'make',
  'math', 'md', 'plain', 'py', 'python', 'rust', 'sh', 'sql', 'svg', 'tex', 'text', 'toml', 'ts', 'txt', 'yaml'
]); // prettier-ignore

/** The kind that a word was likely meant for: within two letters of it (one, for a kind of three). */
export function nearestKind(word: string): BlockKind | null {
  if (word.length > 12 || listings.has(word)) return null;
  let nearest: BlockKind | null = null;
  let least = 3;
  for (const kind of blockKinds) {
    const distance = editDistance(word.toLowerCase(), kind);
    if (distance < least && distance <= (kind.length === 3 ? 1 : 2)) {
      nearest = kind;
      least = distance;
    }
  }
  return nearest;
}

// Letters to add, drop, change, or swap with a neighbour (optimal string alignment).
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      const step = Math.min(
        (above[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (above[j - 1] ?? 0) + change
      );
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(isSwap ? Math.min(step, (before[j - 2] ?? 0) + 1) : step);
    }
    before = above;
    above = row;
  }
  return above[b.length] ?? 0;
}
