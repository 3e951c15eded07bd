// The check of a few lines, for the tests of this folder: the lines of a calc block (after the blocks
// given before it) are read, sorted and checked, and nothing is computed.

import { readWorksheet } from '#lib/document/index.ts';
import { dependencyOrder, ModelBuilder } from '#lib/model/index.ts';
import { shiftProblem, type Problem } from '#lib/problem/index.ts';
import { SheetChecker } from './sheet.ts';
import type { QuantityType, Type } from './type.ts';

export interface Checked {
  /** In file order. */
  readonly problems: readonly Problem[];
  /** 'error units/mismatch', in file order; what is not computed yet is left out. */
  readonly said: readonly string[];
  type(name: string): Type | null;
  /** The type of a name that must be a quantity. */
  quantity(name: string): QuantityType;
}

/** Checks the lines of a calc block. */
export const checkLines = (...lines: readonly string[]): Checked =>
  checkText(`\`\`\`calc\n${lines.join('\n')}\n\`\`\`\n`);

/** Checks a whole worksheet. */
export function checkText(text: string): Checked {
  const model = new ModelBuilder().build(readWorksheet(text), new Map());
  const order = dependencyOrder(model.nodes, model.byId, (node) => node.uses);
  const { checks } = new SheetChecker().check(model, order.sorted);
  const problems: Problem[] = [...model.problems];
  for (const [id, check] of checks) {
    for (const found of check.problems) {
      problems.push(shiftProblem(found, model.lineOf.get(id) ?? 0));
    }
  }
  problems.sort((a, b) => a.at.line - b.at.line || a.at.from - b.at.from);
  const type = (name: string): Type | null => checks.get(name)?.type ?? null;
  return {
    problems,
    said: problems
      .filter(({ code }) => code !== 'sheet/not-computed-yet')
      .map(({ severity, code }) => `${severity} ${code}`),
    type,
    quantity(name) {
      const found = type(name);
      if (found?.kind !== 'quantity') {
        const said = problems.map(({ message }) => message).join(' ');
        throw new RangeError(`${name} is no quantity: ${said}`);
      }
      return found;
    }
  };
}

/** The tables that most tests of columns read. */
export const pumpTable = [
  '```table pump',
  'Q [L/min], p [bar], T [degC], name',
  '0, 6, 20, a',
  '10, 5, 30, b',
  '20, 4, 40, c',
  '```',
  '```table other',
  'x',
  '1',
  '2',
  '```',
  ''
].join('\n');

/** Checks the lines of a calc block below the tables. */
export const checkWithTables = (...lines: readonly string[]): Checked =>
  checkText(`${pumpTable}\`\`\`calc\n${lines.join('\n')}\n\`\`\`\n`);
