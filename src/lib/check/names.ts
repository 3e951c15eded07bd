// Names that an expression uses and nothing defines, each with the nearest thing that could be meant.

import { visit, type Expression } from '#lib/language/index.ts';
import { predefinedValues, type Model } from '#lib/model/index.ts';
import { nameWords, problem, type Problem } from '#lib/problem/index.ts';
import { spanOf, type Cut } from '#lib/text/index.ts';
import { isUnitFault, lookupUnit } from '#lib/units/index.ts';

const constants: ReadonlySet<string> = new Set(['pi', 'true', 'false', 'inf']);

/**
 * Problems for the names in a tree that are not defined, and for own functions called with another
 * number of arguments than they take.
 *
 * @param extra  names that are defined here only: parameters of a function
 */
export function unknownNames(
  tree: Expression,
  cut: Cut,
  model: Model,
  extra: ReadonlySet<string>
): Problem[] {
  // prettier-ignore
  const problems: Problem[] = [];
  visit(tree, (node, bound) => {
    if (node.kind === 'call') {
      const own = model.byId.get(node.callee);
      if (own?.kind !== 'function' || own.parameters.length === node.args.length) return;
      const count = own.parameters.length;
      const words = nameWords.argumentCount(
        node.callee, node.args.length, count === 1 ? 'one argument' : `${count} arguments`
      ); // prettier-ignore
      problems.push(problem('names/arguments', spanOf(cut, node.from, node.to), words));
      return;
    }
    if (node.kind !== 'name' || bound.includes(node.name)) return;
    const { name } = node;
    if (extra.has(name) || constants.has(name) || predefinedValues.has(name)) return;
    const at = spanOf(cut, node.from, node.to);
    const used = model.byId.get(name);
    if (used && used.kind !== 'choose' && used.kind !== 'function') return;
    if (used?.kind === 'function') {
      problems.push(problem('names/unknown', at, nameWords.functionWithoutArguments(name)));
      return;
    }
    const block = model.blockNames.get(name.split('.')[0] ?? name);
    if (block && name.includes('.') && (waitingBlocks.has(block.block) || block.isBroken)) return;
    const words = nameWords.unknownName(name, unitMeaning(name, model), nearest(name, model));
    problems.push(problem('names/unknown', at, words));
  });
  return problems;
}

/** Blocks whose dotted names will exist once they are computed. */
const waitingBlocks: ReadonlySet<string> = new Set(['fit', 'course', 'solve', 'plan']);

/** What a name means as a unit: 'amperes', or the unit itself where it has no such word. */
function unitMeaning(name: string, model: Model): string | null {
  const found = lookupUnit(name, model.worksheet.frontMatter.money);
  if (!found || isUnitFault(found)) return null;
  return unitWordsOf.get(name) ?? `the unit ${name}`;
}

const unitWordsOf: ReadonlyMap<string, string> = new Map([
  ['A', 'amperes'], ['V', 'volts'], ['W', 'watts'], ['N', 'newtons'], ['J', 'joules'],
  ['K', 'kelvins'], ['m', 'metres'], ['s', 'seconds'], ['h', 'hours'], ['g', 'grams'],
  ['T', 'teslas'], ['F', 'farads'], ['H', 'henries'], ['C', 'coulombs'], ['L', 'litres'],
  ['Pa', 'pascals'], ['Hz', 'hertz'], ['d', 'days'], ['t', 'tonnes'], ['S', 'siemens']
]); // prettier-ignore

/** In a sheet of more names the nearest is not looked for: ten thousand unknown names would take minutes. */
const mostNamesCompared = 2000;

/** A defined name within two letters (one for short names), the nearest by edit distance. */
function nearest(name: string, model: Model): string | null {
  if (model.byId.size > mostNamesCompared) return null;
  let best: string | null = null;
  let bestDistance = Math.min(3, Math.ceil(name.length / 2));
  for (const candidate of model.byId.keys()) {
    if (candidate.includes(' ') || candidate.includes('#')) continue;
    if (Math.abs(candidate.length - name.length) >= bestDistance) continue;
    const distance = editDistance(name, candidate, bestDistance);
    if (distance < bestDistance) [best, bestDistance] = [candidate, distance];
  }
  return best;
}

/** Levenshtein's distance; gives up (at `most`) once it cannot be smaller. */
function editDistance(a: string, b: string, most: number): number {
  if (a.toLowerCase() === b.toLowerCase()) return 0.5;
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(
        Math.min((row[j] ?? most) + 1, (next[j - 1] ?? most) + 1, (row[j - 1] ?? most) + same)
      );
    }
    if (Math.min(...next) >= most) return most;
    row = next;
  }
  return row[b.length] ?? most;
}
