// Going through a tree: its children in text order, the names it reads, the functions it calls.

import type { Span } from '#lib/problem/index.ts';
import { spanOf, type Cut } from '#lib/text/index.ts';
import { isFunctionName } from './functions.ts';
import { constantNames } from './reserved.ts';
import type { Expression } from './tree.ts';

/** Where a node stands in the entry whose expression `cut` is. */
export function nodeSpan(cut: Cut, node: { readonly from: number; readonly to: number }): Span {
  return spanOf(cut, node.from, node.to);
}

const none: readonly Expression[] = [];

/** The parts of a node, in text order. */
export function childrenOf(node: Expression): readonly Expression[] {
  switch (node.kind) {
    case 'number':
    case 'quantity':
    case 'name':
      return none;
    case 'sign':
    case 'not':
      return [node.operand];
    case 'binary':
    case 'logic':
      return [node.left, node.right];
    case 'relation':
      return node.operands;
    case 'conditional':
      return [node.test, node.yes, node.no];
    case 'call':
      return node.args;
    case 'group':
      return [node.inner];
  }
}

/**
 * Calls `seen` for every node, a node before its parts. `bound` holds the variables of the integrals
 * around it, innermost last.
 */
export function visit(
  tree: Expression,
  seen: (node: Expression, bound: readonly string[]) => void,
  bound: readonly string[] = []
): void {
  seen(tree, bound);
  const children = childrenOf(tree);
  if (children.length === 0) return;
  const variable = integrationVariable(tree);
  for (let i = 0; i < children.length; i++) {
    const child = children[i];
    // The variable holds in the expression under the integral and names itself, not in the bounds.
    if (child) visit(child, seen, variable !== null && i < 2 ? [...bound, variable] : bound);
  }
}

/** The variable that an integral binds; null for any other node. */
export function integrationVariable(node: Expression): string | null {
  if (node.kind !== 'call' || node.callee !== 'integrate') return null;
  const variable = node.args[1];
  return variable?.kind === 'name' ? variable.name : null;
}

/**
 * The names whose values an expression reads, each once, in text order: not the constants of the
 * language, not the variables of its integrals, not the functions it calls.
 */
export function namesIn(tree: Expression): string[] {
  const names = new Set<string>();
  visit(tree, (node, bound) => {
    if (node.kind !== 'name' || constantNames.has(node.name) || bound.includes(node.name)) return;
    names.add(node.name);
  });
  return [...names];
}

/** The functions of the sheet that an expression calls, each once, in text order. */
export function ownCallsIn(tree: Expression): string[] {
  const names = new Set<string>();
  visit(tree, (node) => {
    if (node.kind === 'call' && !isFunctionName(node.callee)) names.add(node.callee);
  });
  return [...names];
}
