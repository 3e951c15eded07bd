// What depends on what. A circle may exist at one stage only, where a revised formula closes it, so
// edges are those of the variants that hold at a stage; one order serves all stages when no formula
// is revised in between.

import type { SheetNode, FormulaVariant, LimitVariant, SolveVariant } from './node.ts';
import { usesOf } from './uses.ts';

/** Names that a node reads at a stage. */
export function usesAt(node: SheetNode, stage: number): readonly string[] {
  if (node.variants.length === 1) return node.uses;
  const variant = node.variants[node.variantAt[stage] ?? -1];
  if (!variant) return [];
  switch (node.kind) {
    case 'calc':
    case 'function':
      return usesOf([(variant as FormulaVariant).expression]);
    case 'limit':
      return usesOf([...(variant as LimitVariant).sides, (variant as LimitVariant).tolerance]);
    case 'solve': {
      const { left, right, low, high } = variant as SolveVariant;
      return [node.unknown, ...usesOf([left, right, low, high])];
    }
    default:
      return node.uses;
  }
}

export interface Order {
  /** Nodes after everything they use; members of circles left out. */
  readonly sorted: readonly SheetNode[];
  /** Each circle once, as ids in the order of dependence. */
  readonly circles: readonly (readonly string[])[];
  /** Every node that lies on a circle. */
  readonly inCircle: ReadonlySet<string>;
}

/**
 * Sorts nodes so that each comes after what it uses (Tarjan's strongly connected components, without
 * recursion: ten thousand names in a row must not overflow a stack).
 *
 * @param usesOfNode  ids a node uses; unknown ids are passed over
 * Source  R. E. Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1 (1972)
 */
export function dependencyOrder(
  nodes: readonly SheetNode[],
  byId: ReadonlyMap<string, SheetNode>,
  usesOfNode: (node: SheetNode) => readonly string[]
): Order {
  const index = new Map<SheetNode, number>();
  const low = new Map<SheetNode, number>();
  const onStack = new Set<SheetNode>();
  const stack: SheetNode[] = [];
  const sorted: SheetNode[] = [];
  const circles: string[][] = [];
  const inCircle = new Set<string>();
  let next = 0;
  const successors = (node: SheetNode): SheetNode[] =>
    usesOfNode(node).flatMap((id) => byId.get(id) ?? []);

  for (const root of nodes) {
    if (index.has(root)) continue;
    const work: { node: SheetNode; children: SheetNode[]; at: number }[] = [];
    const enter = (node: SheetNode): void => {
      index.set(node, next);
      low.set(node, next);
      next++;
      stack.push(node);
      onStack.add(node);
      work.push({ node, children: successors(node), at: 0 });
    };
    enter(root);
    while (work.length > 0) {
      const frame = work[work.length - 1];
      if (!frame) break;
      const child = frame.children[frame.at++];
      if (child) {
        if (!index.has(child)) enter(child);
        else if (onStack.has(child)) {
          low.set(frame.node, Math.min(low.get(frame.node) ?? 0, index.get(child) ?? 0));
        }
        continue;
      }
      work.pop();
      const parent = work[work.length - 1];
      const own = low.get(frame.node) ?? 0;
      if (parent) low.set(parent.node, Math.min(low.get(parent.node) ?? 0, own));
      if (own !== index.get(frame.node)) continue;
      const members: SheetNode[] = [];
      for (;;) {
        const member = stack.pop();
        if (!member) break;
        onStack.delete(member);
        members.push(member);
        if (member === frame.node) break;
      }
      const isCircle = members.length > 1 || successors(frame.node).includes(frame.node);
      if (!isCircle) {
        sorted.push(frame.node);
        continue;
      }
      for (const member of members) inCircle.add(member.id);
      circles.push(circlePath(members, successors));
    }
  }
  return { sorted, circles, inCircle };
}

/** A shortest circle among the members of a component, from the member that comes first by id. */
function circlePath(
  members: readonly SheetNode[],
  successors: (node: SheetNode) => readonly SheetNode[]
): string[] {
  const inside = new Set(members);
  const start = [...members].sort((a, b) => (a.id < b.id ? -1 : 1))[0];
  if (!start) return [];
  const from = new Map<SheetNode, SheetNode>();
  const queue: SheetNode[] = [start];
  for (let i = 0; i < queue.length; i++) {
    const node = queue[i];
    if (!node) break;
    for (const next of successors(node)) {
      if (next === start) {
        const path: string[] = [];
        for (let at: SheetNode | undefined = node; at; at = from.get(at)) path.unshift(at.id);
        return path;
      }
      if (inside.has(next) && !from.has(next)) {
        from.set(next, node);
        queue.push(next);
      }
    }
  }
  return [start.id];
}
