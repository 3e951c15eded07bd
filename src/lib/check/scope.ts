// The names of a sheet as its expressions see them: types of what was checked before, own functions
// checked once for each signature they are called with.

import type { FunctionNode, Model, SheetNode } from '#lib/model/index.ts';
import { childrenOf, type Expression } from '#lib/language/index.ts';
import { problem, syntaxWords, unitWords, type Problem } from '#lib/problem/index.ts';
import { dropAngle, plain } from '#lib/units/index.ts';
import { settleAngle } from './angle.ts';
import {
  describeType, ExpressionCheck, type CallableFunction, type CheckScope
} from './expression.ts'; // prettier-ignore
import { typeKey, type Type } from './type.ts';

interface ScopeEntry {
  readonly node: SheetNode;
  readonly type: Type | null;
}

/** How the expressions of a sheet find types and own functions. */
export class SheetScope implements CheckScope {
  private readonly callables = new Map<FunctionNode, CallableFunction>();
  private readonly depths = new Map<FunctionNode, number>();
  private byDimension: Map<string, string> | null = null;
  private readonly model: Model;
  private readonly checks: ReadonlyMap<string, ScopeEntry>;

  constructor(model: Model, checks: ReadonlyMap<string, ScopeEntry>) {
    this.model = model;
    this.checks = checks;
  }

  typeOf(name: string): Type | null | undefined {
    return this.checks.get(name)?.type;
  }

  functionOf(name: string): CallableFunction | undefined {
    const node = this.model.byId.get(name);
    if (node?.kind !== 'function') return undefined;
    const known = this.callables.get(node);
    if (known) return known;
    const made = callable(node, this, this.depthOf(node));
    this.callables.set(node, made);
    return made;
  }

  /** Levels of brackets and calls that an own function and those it calls stand for, put into each other. */
  private depthOf(start: FunctionNode): number {
    const open: FunctionNode[] = [start];
    for (let node = open.at(-1); node; node = open.at(-1)) {
      const called = node.uses.flatMap((name): FunctionNode[] => {
        const used = this.model.byId.get(name);
        return used?.kind === 'function' ? [used] : [];
      });
      const waiting = called.find((each) => !this.depths.has(each) && !open.includes(each));
      if (waiting) {
        open.push(waiting);
        continue;
      }
      const own = Math.max(...node.variants.map(({ expression }) => treeDepth(expression.tree)));
      this.depths.set(node, own + Math.max(0, ...called.map((each) => this.depths.get(each) ?? 0)));
      open.pop();
    }
    return this.depths.get(start) ?? 0;
  }

  /** The first rotating speed or plain quantity of that dimension, for a hint. */
  nameOfDimension(key: string): string | null {
    if (key === plain.key) return null;
    if (!this.byDimension) {
      this.byDimension = new Map();
      for (const [name, { type, node }] of this.checks) {
        if (type?.kind !== 'quantity' || node.name === null) continue;
        const own = dropAngle(type.dimension).key;
        if (!this.byDimension.has(own)) this.byDimension.set(own, name);
      }
    }
    return this.byDimension.get(key) ?? null;
  }
}

/** An own function, checked once for each signature it is called with. */
function callable(node: FunctionNode, scope: CheckScope, depth: number): CallableFunction {
  const answers = new Map<string, { type: Type | null; problems: readonly Problem[] }>();
  let isOpen = false;
  return {
    parameters: node.parameters,
    check(args) {
      const key = args.map(typeKey).join(' , ');
      const known = answers.get(key);
      if (known) return known;
      const variant = node.variants[0];
      if (isOpen || !variant?.expression.tree) return { type: null, problems: [] };
      if (depth > deepestCalls) {
        const at = { line: 0, from: 1, to: 2 };
        const words = syntaxWords.callsTooDeep(node.id, deepestCalls);
        return { type: null, problems: [problem('syntax/too-deep', at, words)] };
      }
      isOpen = true;
      const parameters = new Map(node.parameters.map((name, i) => [name, args[i] ?? null]));
      const inner: CheckScope = {
        typeOf: (name) => (parameters.has(name) ? parameters.get(name) : scope.typeOf(name)),
        functionOf: (name) => scope.functionOf(name)
      };
      const problems: Problem[] = [];
      let type: Type | null = null;
      for (const each of node.variants) {
        const found = bodyType(each, inner, problems);
        // A body that is revised is held to the kind of the first; one without a tree is told elsewhere.
        if (each === variant) type = found;
        else if (type && found && !isSameKind(type, found)) {
          const words = unitWords.differentInRevision(
            node.id, describeType('', type).trim(), describeType('', found).trim()
          ); // prettier-ignore
          problems.push(problem('units/mismatch', { line: each.line, from: 1, to: 2 }, words));
        }
      }
      isOpen = false;
      const answer = { type, problems };
      answers.set(key, answer);
      return answer;
    }
  };
}

/** The type of one body of an own function, its mistakes added to `problems`. */
function bodyType(
  variant: FunctionNode['variants'][number],
  scope: CheckScope,
  problems: Problem[]
): Type | null {
  const { tree, cut } = variant.expression;
  if (!tree) return null;
  const check = new ExpressionCheck(scope, cut);
  let type = check.type(tree);
  if (type?.kind === 'quantity' && variant.unit) type = check.shownIn(tree, type, variant.unit);
  problems.push(...check.problems);
  return type?.kind === 'quantity' ? { ...settleAngle(type), literal: false } : type;
}

function isSameKind(a: Type, b: Type): boolean {
  if (a.kind !== 'quantity' || b.kind !== 'quantity') return a.kind === b.kind;
  return (b.literalZero && b.dimension === plain) || a.dimension === b.dimension;
}

/** Levels that functions calling each other may reach together. */
const deepestCalls = 500;

/** Levels of a tree; each of its nodes is at most `limits.nodes` levels down. */
function treeDepth(tree: Expression | null): number {
  if (!tree) return 0;
  let deepest = 0;
  for (const child of childrenOf(tree)) deepest = Math.max(deepest, treeDepth(child));
  return deepest + 1;
}
