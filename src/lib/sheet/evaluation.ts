// A sheet that has been run: the figure of every node at every stage, put together from the groups of
// stages that ran it.

import type { CheckedModel } from '#lib/check/index.ts';
import type { SheetNode } from '#lib/model/index.ts';
import type { Problem, ProblemCode } from '#lib/problem/index.ts';
import type { Place } from './compile.ts';
import type { LaneState, StageGroup } from './group.ts';
import type { RowSettings } from './rows.ts';
import type { FirstOrder } from './uncertainty.ts';

export interface StageFigure {
  readonly state: LaneState;
  /** SI, one per row; null unless state is 'value'. Truth values are 0 and 1. */
  readonly values: readonly number[] | null;
  /** A text, for what is picked from a column of texts. */
  readonly words: string | null;
  readonly error: ProblemCode | null;
  readonly waitsFor: readonly string[];
  readonly standardUncertainty: number | null;
}

const none = {
  values: null,
  words: null,
  error: null,
  waitsFor: [],
  standardUncertainty: null
} as const;

export class Evaluation {
  readonly checked: CheckedModel;
  readonly settings: RowSettings;
  /** Some name of the sheet is also the name of a unit. */
  readonly hasNamesLikeUnits: boolean;
  readonly usedBy: ReadonlyMap<string, readonly string[]>;
  private readonly firstOrders: ReadonlyMap<StageGroup, FirstOrder>;
  private readonly inCircle: ReadonlySet<string>;
  /** States of the nodes that have no value at some stage. */
  private readonly exceptions = new Map<string, readonly LaneState[]>();
  private readonly groups: readonly StageGroup[];
  private readonly laneOf: readonly (readonly [StageGroup, number])[];
  /** Codes of faults found in lanes, by node and stage. */
  readonly faultCodes = new Map<string, ProblemCode>();

  constructor(
    checked: CheckedModel, groups: readonly StageGroup[],
    firstOrders: ReadonlyMap<StageGroup, FirstOrder>, inCircle: ReadonlySet<string>,
    usedBy: ReadonlyMap<string, readonly string[]>, hasNamesLikeUnits: boolean,
    settings: RowSettings
  ) {
    this.checked = checked;
    this.groups = groups;
    this.firstOrders = firstOrders;
    this.inCircle = inCircle;
    this.usedBy = usedBy;
    this.hasNamesLikeUnits = hasNamesLikeUnits;
    this.settings = settings;
    const laneOf: (readonly [StageGroup, number])[] = [];
    for (const group of groups) {
      for (const [lane, stage] of group.stages.entries()) laneOf[stage] = [group, lane];
    }
    this.laneOf = laneOf;
  } // prettier-ignore

  /** Some input has a tolerance. */
  get hasUncertainty(): boolean {
    return this.firstOrders.size > 0;
  }

  /** The group that runs a stage, and the stage's lane in it. */
  lane(stage: number): readonly [StageGroup, number] {
    const found = this.laneOf[stage];
    if (!found) throw new RangeError(`stage ${stage} is run by no group`);
    return found;
  }

  /** Works out every state, each node after those it reads, so that no chain is too long. */
  settle(sorted: readonly SheetNode[]): void {
    const stages = this.checked.model.stages.length;
    for (const { id } of sorted) {
      if (!this.inCircle.has(id) && this.groups.every((group) => group.isGoodEverywhere(id)))
        continue;
      const states: LaneState[] = [];
      for (let stage = 0; stage < stages; stage++) states.push(this.stateOf(id, stage));
      this.exceptions.set(id, states);
    }
  }

  state(id: string, stage: number): LaneState {
    return this.exceptions.get(id)?.[stage] ?? 'value';
  }

  private stateOf(id: string, stage: number): LaneState {
    if (this.inCircle.has(id)) return 'error';
    const [group, lane] = this.lane(stage);
    const state = group.state(id, lane);
    const kept = group.nodes.get(id);
    const canRun = kept !== undefined && !kept.isTooLong && group.isUsable(kept.node, kept.check);
    if (state !== 'error' || !canRun) return state;
    // A lane goes bad by its own fault, or because something it reads has no value there.
    return this.waitingReads(id, stage).length > 0 ? 'waits' : 'error';
  }

  /** Names that a node reads, through own functions too, and that have no value at a stage. */
  waitingReads(id: string, stage: number): readonly string[] {
    const { byId } = this.checked.model;
    const node = byId.get(id);
    const waiting = new Set<string>();
    const isRun = this.lane(stage)[0].nodes.get(id)?.segment !== null;
    const open = node ? [node] : [];
    const seen = new Set(open);
    for (const each of open) {
      for (const name of each.uses) {
        const other = byId.get(name);
        if (!other || seen.has(other)) continue;
        seen.add(other);
        if (other.kind === 'function') open.push(other);
        else if (node?.kind === 'solve' && isRun && this.isInside(node.unknown, name)) continue;
        else if (this.state(name, stage) !== 'value') waiting.add(name);
      }
    }
    return [...waiting];
  }

  /** What depends on the unknown of a solve is computed anew in it: its own value does not matter. */
  private isInside(unknown: string, name: string): boolean {
    if (name === unknown) return true;
    const { byId } = this.checked.model;
    const open = [name];
    const seen = new Set(open);
    for (const id of open) {
      for (const used of byId.get(id)?.uses ?? []) {
        if (used === unknown) return true;
        if (!seen.has(used)) {
          seen.add(used);
          open.push(used);
        }
      }
    }
    return false;
  }

  figure(node: SheetNode, stage: number): StageFigure {
    if (node.kind === 'function')
      return { ...none, state: this.functionState(node), error: this.errorOf(node, stage) };
    const state = this.state(node.id, stage);
    if (state === 'waits') return { ...none, state, waitsFor: this.waitsFor(node, stage) };
    if (state !== 'value')
      return { ...none, state, error: state === 'error' ? this.errorOf(node, stage) : null };
    const [group, lane] = this.lane(stage);
    const kept = group.nodes.get(node.id);
    const place = kept?.places[0];
    if (node.kind === 'pick') {
      const words = this.pickedText(node.choice, node.source, stage);
      if (words !== null) return { ...none, state, words };
    }
    if (!place) return { ...none, state: node.kind === 'column' ? 'value' : 'error' };
    const values: number[] = [];
    for (let row = 0; row < (place.rows ?? 1); row++) values.push(group.valueAt(place, lane, row));
    const standardUncertainty =
      place.rows === null ? (this.firstOrders.get(group)?.standard(place, lane) ?? null) : null;
    return { ...none, state, values, standardUncertainty };
  }

  /** u of the difference of two places at a stage; null where no tolerance reaches it. */
  uncertaintyOfDifference(left: Place | null, right: Place | null, stage: number): number | null {
    const [group, lane] = this.lane(stage);
    return this.firstOrders.get(group)?.standardOfDifference(left, right, lane) ?? null;
  }

  /** Changes whenever an uncertainty that a row shows may have. */
  uncertaintySignature(node: SheetNode, stage: number): string {
    const [group, lane] = this.lane(stage);
    const order = this.firstOrders.get(group);
    const places = group.nodes.get(node.id)?.places ?? [];
    if (!order || places.length === 0) return '';
    if (node.kind !== 'limit')
      return String(places[0]?.rows === null ? order.standard(places[0], lane) : '');
    return places
      .map((place, i) => order.standardOfDifference(place, places[i + 1] ?? null, lane))
      .join('/');
  }

  waitsFor(node: SheetNode, stage: number): readonly string[] {
    const check = this.checked.checks.get(node.id);
    const [group] = this.lane(stage);
    const isRun = group.nodes.get(node.id)?.segment !== null && group.nodes.has(node.id);
    if (!isRun && check && check.waitsFor.length > 0) return check.waitsFor.map(shownName);
    return this.waitingReads(node.id, stage).map(shownName);
  }

  errorOf(node: SheetNode, stage: number): ProblemCode | null {
    if (this.inCircle.has(node.id)) return 'names/circle';
    const isError = (found: Problem): boolean => found.severity === 'error';
    const check = this.checked.checks.get(node.id);
    const entryProblem = node.entry?.problems.find(isError);
    const own = entryProblem ?? node.problems.find(isError) ?? check?.problems.find(isError);
    return (
      this.faultCodes.get(`${node.id}@${stage}`) ??
      own?.code ??
      (node.kind === 'function' ? null : 'value/needs-a-value')
    );
  }

  private functionState(node: SheetNode): LaneState {
    return this.inCircle.has(node.id) ||
      node.isBroken ||
      node.problems.some((p) => p.severity === 'error')
      ? 'error'
      : 'value';
  }

  private pickedText(choice: string, source: string, stage: number): string | null {
    const column = this.checked.model.byId.get(source);
    if (column?.kind !== 'column' || column.numbers) return null;
    const [group, lane] = this.lane(stage);
    const place = group.nodes.get(choice)?.places[0];
    return place ? (column.texts[group.valueAt(place, lane)] ?? null) : null;
  }
}

/** A derived column of a choice is called by its own name. */
const shownName = (id: string): string => id.slice(id.indexOf('#') + 1);
