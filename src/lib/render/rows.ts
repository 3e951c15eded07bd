// What several printed forms say alike: a block's heading in words, and the outcome of a choice.

import type { BlockKind } from '#lib/document/index.ts';
import type { ChooseResult, Results } from '#lib/sheet/index.ts';
import type { BlockItem } from './outline.ts';
import { counted } from './words.ts';

const blockWords: Readonly<Record<BlockKind | 'listing', string>> = {
  inputs: 'Inputs',
  calc: 'Calculation',
  limits: 'Limits',
  parts: 'Parts',
  cases: 'Cases',
  table: 'Table',
  readings: 'Readings',
  fit: 'Fit',
  solve: 'Solve',
  course: 'Over time',
  choose: 'Choice',
  sweep: 'Sweep',
  ladder: 'Ladder',
  drivers: 'Drivers',
  plan: 'Run card',
  holds: 'Hold points',
  event: 'Event',
  ask: 'Question',
  caution: 'Caution',
  remark: 'Remark',
  listing: 'Listing'
};

const signalWords = { danger: 'Danger', warning: 'Warning', caution: 'Caution' } as const;

/** 'Inputs: Arms and speed', 'Danger', 'Table motors'. */
export function blockTitle(item: BlockItem): string {
  if (item.block === 'caution' && item.signal) return signalWords[item.signal];
  if (item.block === 'listing')
    return [item.word, item.title].filter(Boolean).join(' ') || 'Listing';
  const word = blockWords[item.block];
  return item.title === '' ? word : `${word}: ${item.title}`;
}

/** What was chosen at each stage, in a sentence each. */
export function choiceLines(choice: ChooseResult, results: Results): string[] {
  return choice.at.map((at, index) => {
    const stage = results.stages[index];
    const where = results.stages.length > 1 && stage ? `${stage.id}: ` : '';
    if (at.state === 'waits') return `${where}waits for ${at.waitsFor.join(', ')}`;
    if (at.state === 'error') return `${where}not chosen, a line is in error`;
    const name = at.row === null ? undefined : choice.rowNames[at.row];
    if (name === undefined) return `${where}no row of ${choice.table} meets every condition`;
    const fitting = `${counted(at.ranking.length, 'row')} of ${choice.rowNames.length} meet the conditions`;
    const second = at.ranking.find((row) => row !== at.row);
    const next = second === undefined ? '' : `, next ${choice.rowNames[second] ?? ''}`;
    return `${where}${name}${at.taken ? ', taken' : ''} (${fitting}${next})`;
  });
}
