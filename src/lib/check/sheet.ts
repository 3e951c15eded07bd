// The check of a whole sheet, definition by definition in the order of dependence. What was worked out
// for a definition is kept as long as its text and the types of the names it uses are the same, so an
// edit costs only what it reaches.

import type { Model, SheetNode } from '#lib/model/index.ts';
import { choiceBetween, NodeChecker, type NodeCheck } from './node.ts';
import { SheetScope } from './scope.ts';
import { typeKey } from './type.ts';

export interface CheckedModel {
  readonly model: Model;
  readonly checks: ReadonlyMap<string, NodeCheck>;
  /** Nodes whose check is not the one of the run before. */
  readonly changed: ReadonlySet<string>;
}

/** Checks models one after another, keeping what an edit did not reach. */
export class SheetChecker {
  private kept = new Map<string, KeptCheck>();
  private functionVersions = 0;

  /**
   * @param sorted  every node after those it uses; where revisions make that impossible, in the order
   *                of one stage, and the check goes through it twice
   * @param isSameStructure  names and what they use are those of the run before
   */
  check(
    model: Model,
    sorted: readonly SheetNode[],
    isTwice = false,
    isSameStructure = false
  ): CheckedModel {
    // prettier-ignore
    const before = this.kept;
    // With the same names in the same order, only what changed is put into the map of the run before.
    const kept = isSameStructure ? before : new Map<string, KeptCheck>();
    const changed = new Set<string>();
    const scope = new SheetScope(model, kept);
    for (const node of isTwice ? [...sorted, ...sorted] : sorted) {
      const known = kept.get(node.id) ?? before.get(node.id);
      const isUntouched =
        isSameStructure &&
        known?.node === node &&
        (changed.size === 0 || !node.uses.some((name) => changed.has(name)));
      if (isUntouched) continue;
      const signature = signatureOf(node, model, kept);
      // The cure of a mistake may name any name of the sheet, so it is looked for anew.
      const mayNameOthers = !isSameStructure && known !== undefined && hasError(known);
      if (known?.node === node && known.signature === signature && !mayNameOthers) {
        kept.set(node.id, known);
        continue;
      }
      const made = new NodeChecker(model, scope, node).run();
      const version =
        node.kind === 'function'
          ? `function ${++this.functionVersions}`
          : made.type
            ? typeKey(made.type)
            : 'none';
      kept.set(node.id, { ...made, version, signature });
      changed.add(node.id);
    }
    this.kept = kept;
    return { model, checks: kept, changed };
  }
}

/** A check with everything it was made from. */
interface KeptCheck extends NodeCheck {
  readonly signature: string;
}

/** Everything that the check of a node may depend on besides its own text. */
function signatureOf(
  node: SheetNode,
  model: Model,
  checks: ReadonlyMap<string, NodeCheck>
): string {
  let signature = '';
  for (const name of node.uses) {
    const check = checks.get(name);
    signature += check ? `${check.version};` : model.byId.has(name) ? 'circle;' : '?;';
  }
  if (node.kind === 'solve') signature += choiceBetween(node, model) ?? '';
  return signature;
}

const hasError = (check: NodeCheck): boolean =>
  check.problems.some((found) => found.severity === 'error');
