// The stages of a sheet as a tree: depth first, children in file order. A stage starts from its
// parent, so what holds at a stage is what the nearest of its ancestors (itself first) has written.

import type { StageDeclaration } from '#lib/document/index.ts';

export interface Stage extends StageDeclaration {
  /** Place in the depth-first order. */
  readonly index: number;
  /** Index of the parent; null for a stage that starts from nothing. */
  readonly parent: number | null;
  /** The stage itself, its parent, its parent's parent …, as indices. */
  readonly lineage: readonly number[];
}

/** Orders declared stages as a tree; unknown and circular parents were reported by the reader. */
export function stageTree(declared: readonly StageDeclaration[]): readonly Stage[] {
  const stages: Stage[] = [];
  const ids = new Set(declared.map((stage) => stage.id));
  const place = (declaration: StageDeclaration, parent: Stage | null): void => {
    if (stages.some((stage) => stage.id === declaration.id)) return;
    const index = stages.length;
    const stage: Stage = {
      ...declaration,
      index,
      parent: parent?.index ?? null,
      lineage: [index, ...(parent?.lineage ?? [])]
    };
    stages.push(stage);
    for (const child of declared) if (child.after === declaration.id) place(child, stage);
  };
  for (const stage of declared) {
    if (stage.after === null || !ids.has(stage.after)) place(stage, null);
  }
  return stages;
}

/**
 * Which variant holds at each stage.
 *
 * @param from  for each variant the index of the stage it was written for; null for the base
 * @returns     for each stage the index of its variant; -1 where none holds
 */
export function variantsAtStages(
  stages: readonly Stage[],
  from: readonly (number | null)[]
): readonly number[] {
  if (from.length === 1 && from[0] === null) return new Array<number>(stages.length).fill(0);
  const base = from.indexOf(null);
  return stages.map(({ lineage }) => {
    for (const ancestor of lineage) {
      const variant = from.lastIndexOf(ancestor);
      if (variant >= 0) return variant;
    }
    return base;
  });
}
