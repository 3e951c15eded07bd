// For tests: a tree as one short line, so that tables can show what belongs together; a cut's text at a
// problem's place; and a fix carried out.

import type { Problem, Span } from '#lib/problem/index.ts';
import { cutOf, joinCuts } from '#lib/text/index.ts';
import { parseExpression, type ParsedExpression } from './expression.ts';
import type { Expression } from './tree.ts';

/** 'a + b*c' is '(a+(b*c))', a product without sign '(2~pi)', a quantity '<5 m>', brackets '[…]'. */
export function sketch(node: Expression): string {
  switch (node.kind) {
    case 'number':
      return node.text;
    case 'quantity':
      return `<${node.magnitudeText} ${node.unit.text}>`;
    case 'name':
      return node.name;
    case 'sign':
      return `(${node.op}${sketch(node.operand)})`;
    case 'not':
      return `(not ${sketch(node.operand)})`;
    case 'binary':
      return `(${sketch(node.left)}${node.implicit ? '~' : node.op}${sketch(node.right)})`;
    case 'logic':
      return `(${sketch(node.left)} ${node.op} ${sketch(node.right)})`;
    case 'relation':
      return `(${node.operands.map((part, i) => (node.operators[i - 1] ?? '') + sketch(part)).join('')})`;
    case 'conditional':
      return `(${sketch(node.test)} ? ${sketch(node.yes)} : ${sketch(node.no)})`;
    case 'call':
      return `${node.callee}(${node.args.map(sketch).join(',')})`;
    case 'group':
      return `[${sketch(node.inner)}${node.unit ? ` to ${node.unit.text}` : ''}]`;
  }
}

/** Reads a text that may run over several lines; the sheet's money is EUR. */
export function read(text: string, ownFunctions: readonly string[] = []): ParsedExpression {
  const cut = joinCuts(text.split('\n').map((part, line) => cutOf(part, line)));
  return parseExpression(cut, { money: 'EUR', ownFunctions: new Set(ownFunctions) });
}

/** The tree of a text that has no mistake. */
export function treeOf(text: string, ownFunctions: readonly string[] = []): Expression {
  const { tree, problems } = read(text, ownFunctions);
  if (!tree) throw new Error(`${text}: ${problems[0]?.message ?? 'no tree'}`);
  return tree;
}

/** The characters of a one-line text that a span covers. */
export function covered(text: string, at: Span): string {
  return text.slice(at.from - 1, at.to - 1);
}

/** A one-line text with the problem's fix put in; null where there is none. */
export function cured(text: string, found: Problem): string | null {
  if (!found.fix) return null;
  const { at, replacement } = found.fix;
  return text.slice(0, at.from - 1) + replacement + text.slice(at.to - 1);
}
