// The stages that share every formula, run together: each is a lane. Registers, compiled segments and
// values are kept from one edit to the next; a segment is compiled anew only where what it reads has
// changed, and run anew only where a value it reads has.

import type { CheckedModel, NodeCheck } from '#lib/check/index.ts';
import {
  execute, LaneFile, ProgramTooLong, RegisterSpace, type MethodReport, type Segment
} from '#lib/lanes/index.ts'; // prettier-ignore
import type { SheetNode, SolveNode } from '#lib/model/index.ts';
import { compileNode, type CompileScope, type Place } from './compile.ts';
import type { InputFigures } from './inputs.ts';

export type LaneState = 'value' | 'error' | 'waits' | 'unknown';

/** What one group keeps of a node. */
export interface GroupNode {
  readonly node: SheetNode;
  readonly check: NodeCheck;
  readonly places: readonly Place[];
  readonly statusNumber: number;
  readonly segment: Segment | null;
  /** It would need more instructions than a program may have. */
  readonly isTooLong: boolean;
  /** Everything its instructions were made from. */
  readonly signature: string;
  /** Of its last run. */
  readonly reports: readonly MethodReport[];
}

export interface GroupInput {
  readonly checked: CheckedModel;
  /** Every node after those it uses, without circles. */
  readonly sorted: readonly SheetNode[];
  readonly inCircle: ReadonlySet<string>;
  /** Per input and lane of this group. */
  readonly figuresOf: (id: string, lane: number) => InputFigures;
}

/** Counts that tests hold the engine to. */
export interface WorkCount {
  compiled: number;
  run: number;
}

export class StageGroup {
  /** Indices of the stages that are its lanes. */
  readonly stages: readonly number[];
  readonly space = new RegisterSpace();
  file: LaneFile;
  readonly nodes = new Map<string, GroupNode>();
  /** Of the last update: every node after those it uses. */
  private order: readonly SheetNode[] = [];
  readonly work: WorkCount = { compiled: 0, run: 0 };
  private statuses = 0;
  private constantsFilled = 0;
  /** Nodes of this update whose instructions or registers are new: what reads them is looked at again. */
  private readonly restructured = new Set<string>();
  private serial = 0;
  private touched = new Set<string>();
  private hasFunctions = false;
  private readonly serials = new WeakMap<SheetNode, number>();

  constructor(stages: readonly number[]) {
    this.stages = stages;
    this.file = new LaneFile(64, stages.length, 64);
  }

  /** The segments of all nodes, in the order in which they run. */
  segments(): readonly Segment[] {
    const segments: Segment[] = [];
    for (const { id } of this.order) {
      const segment = this.nodes.get(id)?.segment;
      if (segment) segments.push(segment);
    }
    return segments;
  }

  get statusCount(): number {
    return this.statuses;
  }

  /**
   * Brings every node up to date.
   *
   * @returns `changed`: ids whose values or states differ from before; `touched`: ids that were computed
   *          anew, whatever came out
   */
  update(input: GroupInput): {
    readonly changed: ReadonlySet<string>;
    readonly touched: ReadonlySet<string>;
  } {
    const changed = new Set<string>();
    this.touched = new Set();
    this.order = input.sorted;
    this.hasFunctions = input.sorted.some((node) => node.kind === 'function');
    const scope = this.compileScope(input);
    this.restructured.clear();
    for (const node of input.sorted) this.updateNode(node, input, scope, changed);
    const present =
      this.nodes.size === input.sorted.length ? null : new Set(input.sorted.map(({ id }) => id));
    for (const id of present ? this.nodes.keys() : []) {
      if (present?.has(id)) continue;
      this.nodes.delete(id);
      changed.add(id);
      this.restructured.add(id);
    }
    return { changed, touched: this.touched };
  }

  /** Whether a node has a value in every lane. */
  isGoodEverywhere(id: string): boolean {
    const kept = this.nodes.get(id);
    if (!kept || kept.statusNumber < 0 || kept.isTooLong || !this.isUsable(kept.node, kept.check))
      return false;
    const { status, stride } = this.file;
    for (let i = kept.statusNumber * stride; i < (kept.statusNumber + 1) * stride; i++) {
      if (status[i] !== 0) return false;
    }
    return true;
  }

  /** State of a node in a lane. */
  state(id: string, lane: number): LaneState {
    const kept = this.nodes.get(id);
    if (!kept) return 'error';
    if (!this.isUsable(kept.node, kept.check) || kept.isTooLong) {
      const hasMistake =
        kept.isTooLong ||
        kept.check.problems.some((found) => found.severity === 'error') ||
        kept.node.problems.some((found) => found.severity === 'error');
      return hasMistake || kept.check.waitsFor.length === 0 ? 'error' : 'waits';
    }
    const status = this.file.status[kept.statusNumber * this.file.stride + lane] ?? 0;
    return laneStates[status] ?? 'error';
  }

  /** Value of a node's place in a lane, SI. */
  valueAt(place: Place, lane: number, row = 0): number {
    return this.file.registers[(place.register + row) * this.file.stride + lane] ?? NaN;
  }

  /** Whether the variant that holds here can be run. */
  isUsable(node: SheetNode, check: NodeCheck): boolean {
    return check.isVariantSound[this.variantOf(node)] === true;
  }

  variantOf(node: SheetNode): number {
    return node.variantAt[this.stages[0] ?? 0] ?? 0;
  }

  private updateNode(
    node: SheetNode,
    input: GroupInput,
    scope: CompileScope,
    changed: Set<string>
  ): void {
    const check = input.checked.checks.get(node.id);
    if (!check) return;
    const before = this.nodes.get(node.id);
    const isSame = before?.node === node && before.check === check && this.restructured.size === 0;
    if (isSame && node.kind !== 'input' && !this.readsChanged(node, input, changed)) return;
    if (node.kind !== 'input') this.touched.add(node.id);
    if (node.kind === 'function') {
      if (before?.node === node && before.check.version === check.version) return;
      this.nodes.set(node.id, emptyNode(node, check, this.serialOf(node)));
      this.restructured.add(node.id);
      changed.add(node.id);
      return;
    }
    const places = this.placesFor(node, check, before);
    if (node.kind === 'input') return this.updateInput(node, check, before, places, input, changed);
    const isUsable =
      this.isUsable(node, check) &&
      this.isChainUsable(node, input) &&
      this.areCallsUsable(node, input);
    const isKept = before?.node === node && before.check === check && this.restructured.size === 0;
    const signature = isKept
      ? before.signature
      : isUsable
        ? this.signatureOf(node, input, places)
        : 'unusable';
    const isFresh = before === undefined || before.node !== node || before.signature !== signature;
    if (isFresh) this.restructured.add(node.id);
    const reads = isFresh || this.readsChanged(node, input, changed);
    if (!reads) {
      if (before && before.check !== check) this.nodes.set(node.id, { ...before, node, check });
      return;
    }
    const statusNumber = before?.statusNumber ?? this.newStatus();
    if (!isUsable || node.kind === 'column' || node.kind === 'later') {
      const kept: GroupNode = { ...emptyNode(node, check, signature), places, statusNumber };
      this.nodes.set(node.id, kept);
      this.makeRoom();
      if (node.kind === 'column') this.fillColumn(node.numbers, places);
      else for (const place of places) this.fillPlace(place, NaN);
      this.file.status.fill(
        isUsable ? 0 : 1,
        statusNumber * this.file.stride,
        (statusNumber + 1) * this.file.stride
      );
      if (isFresh) changed.add(node.id);
      return;
    }
    let segment = isFresh ? null : (before?.segment ?? null);
    let isTooLong = false;
    if (!segment) {
      try {
        segment = compileNode(node, places, statusNumber, scope);
        this.work.compiled++;
      } catch (error) {
        if (!(error instanceof ProgramTooLong)) throw error;
        isTooLong = true;
      }
    }
    this.makeRoom();
    const old = this.snapshot(places, statusNumber);
    const reports: MethodReport[] = [];
    if (segment) {
      this.work.run++;
      this.file.reports = reports;
      execute(segment.code, segment.nested, this.file);
      this.file.reports = null;
    } else {
      for (const place of places) this.fillPlace(place, NaN);
    }
    this.nodes.set(node.id, {
      node,
      check,
      places,
      statusNumber,
      segment,
      isTooLong,
      signature,
      reports
    });
    const isEqual = !isFresh && this.isSame(old, places, statusNumber);
    if (!isEqual) changed.add(node.id);
  }

  private updateInput(
    node: SheetNode,
    check: NodeCheck,
    before: GroupNode | undefined,
    places: readonly Place[],
    input: GroupInput,
    changed: Set<string>
  ): void {
    // prettier-ignore
    const statusNumber = before?.statusNumber ?? this.newStatus();
    this.makeRoom();
    const { stride } = this.file;
    const [place, low, high] = places;
    if (before?.places !== places) this.restructured.add(node.id);
    let isChanged = before?.places !== places;
    for (const [lane] of this.stages.entries()) {
      const figures = input.figuresOf(node.id, lane);
      const status = laneStates.indexOf(figures.state);
      const at = statusNumber * stride + lane;
      if (this.file.status[at] !== status) isChanged = true;
      this.file.status[at] = status;
      for (const [target, value] of [
        [place, figures.value],
        [low, figures.range?.[0] ?? NaN],
        [high, figures.range?.[1] ?? NaN]
      ] as const) {
        // prettier-ignore
        if (!target) continue;
        const index = target.register * stride + lane;
        if (!Object.is(this.file.registers[index], value)) isChanged = true;
        this.file.registers[index] = value;
      }
    }
    this.nodes.set(node.id, { ...emptyNode(node, check, ''), places, statusNumber });
    if (isChanged) {
      changed.add(node.id);
      this.touched.add(node.id);
    }
  }

  /** Registers for a node's values: the ones it has, where their number and rows still fit. */
  private placesFor(
    node: SheetNode,
    check: NodeCheck,
    before: GroupNode | undefined
  ): readonly Place[] {
    const rows = rowsOfPlaces(node, check);
    const fits = before && before.places.length === rows.length &&
      before.places.every((place, i) => place.rows === rows[i]); // prettier-ignore
    if (fits) return before.places;
    return rows.map((count) => ({ register: this.space.keep(count), rows: count }));
  }

  private newStatus(): number {
    return this.statuses++;
  }

  private makeRoom(): void {
    this.file.grow(this.space.size, this.statuses);
    const { constants } = this.space;
    for (; this.constantsFilled < constants.length; this.constantsFilled++) {
      const [register, value] = constants[this.constantsFilled] ?? [0, 0];
      this.file.fill(register, value);
    }
  }

  private fillPlace(place: Place, value: number): void {
    for (let row = 0; row < (place.rows ?? 1); row++) this.file.fill(place.register + row, value);
  }

  private fillColumn(numbers: readonly number[] | null, places: readonly Place[]): void {
    const [place] = places;
    if (!place || !numbers) return;
    for (const [row, value] of numbers.entries()) this.file.fill(place.register + row, value);
  }

  private snapshot(places: readonly Place[], statusNumber: number): Float64Array[] {
    const { stride, registers, status } = this.file;
    return [
      ...places.map(({ register, rows }) =>
        registers.slice(register * stride, (register + (rows ?? 1)) * stride)
      ),
      Float64Array.from(status.subarray(statusNumber * stride, (statusNumber + 1) * stride))
    ];
  }

  private isSame(
    old: readonly Float64Array[],
    places: readonly Place[],
    statusNumber: number
  ): boolean {
    const now = this.snapshot(places, statusNumber);
    return old.every((values, i) => values.every((value, j) => Object.is(value, now[i]?.[j])));
  }

  private serialOf(node: SheetNode): string {
    let serial = this.serials.get(node);
    if (serial === undefined) this.serials.set(node, (serial = ++this.serial));
    return String(serial);
  }

  /** What the instructions of a node are made from: itself, the places it reads, functions, a solve's chain. */
  private signatureOf(node: SheetNode, input: GroupInput, places: readonly Place[]): string {
    let signature = `${this.serialOf(node)}:${places[0]?.register ?? ''};`;
    const open = new Set<string>();
    const add = (used: SheetNode): void => {
      if (open.has(used.id)) return;
      open.add(used.id);
      for (const name of used.uses) {
        const other = input.checked.model.byId.get(name);
        if (!other) continue;
        if (other.kind === 'function') {
          signature += `f${this.serialOf(other)};`;
          add(other);
          continue;
        }
        const place = this.nodes.get(name)?.places[0];
        signature += `${place?.register ?? '-'}/${place?.rows ?? ''};`;
      }
    };
    add(node);
    if (node.kind === 'solve') {
      for (const link of this.chain(node, input)) {
        signature += `c${this.serialOf(link)};`;
        add(link);
      }
    }
    return signature;
  }

  /** A solve re-runs the definitions between its unknown and its sides: each must be without mistake. */
  private isChainUsable(node: SheetNode, input: GroupInput): boolean {
    if (node.kind !== 'solve') return true;
    return this.chain(node, input).every((link) => {
      const check = input.checked.checks.get(link.id);
      return check !== undefined && this.isUsable(link, check);
    });
  }

  /** Every own function that is called from here has a body without mistake at these stages. */
  private areCallsUsable(node: SheetNode, input: GroupInput): boolean {
    if (!this.hasFunctions) return true;
    const open = node.kind === 'solve' ? [node, ...this.chain(node, input)] : [node];
    const seen = new Set<SheetNode>(open);
    for (const each of open) {
      for (const name of each.uses) {
        const other = input.checked.model.byId.get(name);
        if (other?.kind !== 'function' || seen.has(other)) continue;
        const check = input.checked.checks.get(name);
        if (!check || !this.isUsable(other, check)) return false;
        seen.add(other);
        open.push(other);
      }
    }
    return true;
  }

  private readsChanged(node: SheetNode, input: GroupInput, changed: ReadonlySet<string>): boolean {
    if (changed.size === 0) return false;
    if (node.uses.some((name) => changed.has(name))) return true;
    if (this.hasFunctions && usesFunctions(node, input, changed)) return true;
    if (node.kind !== 'solve') return false;
    // A solve reads what its chain reads, even where the chain's own values did not move.
    return this.chain(node, input).some((link) => link.uses.some((name) => changed.has(name)));
  }

  private chain(node: SolveNode, input: GroupInput): readonly SheetNode[] {
    const targets = node.uses.filter((name) => name !== node.unknown);
    return chainBetween(node.unknown, targets, input.sorted, input.checked.model.byId);
  }

  private compileScope(input: GroupInput): CompileScope {
    const { byId } = input.checked.model;
    return {
      space: this.space,
      nodeOf: (id) => byId.get(id),
      checkOf: (id) => input.checked.checks.get(id),
      placesOf: (id) => this.nodes.get(id)?.places,
      variantOf: (node) => this.variantOf(node),
      chainBetween: (unknown, targets) => chainBetween(unknown, targets, input.sorted, byId),
      rangeOf: (id) => {
        const [, low, high] = this.nodes.get(id)?.places ?? [];
        return low && high ? [low, high] : null;
      }
    };
  }
}

const laneStates: readonly LaneState[] = ['value', 'error', 'waits', 'unknown'];

function emptyNode(node: SheetNode, check: NodeCheck, signature: string): GroupNode {
  return {
    node, check, places: [], statusNumber: -1, segment: null, isTooLong: false, signature, reports: []
  }; // prettier-ignore
}

function rowsOfPlaces(node: SheetNode, check: NodeCheck): readonly (number | null)[] {
  switch (node.kind) {
    case 'input':
      return check.type ? [null, null, null] : [];
    case 'limit': {
      const most = Math.max(
        ...node.variants.map((v) => v.sides.filter((side) => side).length + (v.tolerance ? 1 : 0))
      );
      return new Array<null>(most).fill(null);
    }
    case 'choose': {
      const most = Math.max(...node.variants.map((variant) => variant.conditions.length));
      return [null, null, node.rows, ...new Array<number>(most).fill(node.rows)];
    }
    case 'pick':
      return check.type ? [null] : [];
    case 'column':
      return node.numbers ? [node.texts.length] : [];
    default:
      return check.type && check.type.kind !== 'text' ? [check.type.rows] : [];
  }
}

/** Names that own functions called here read. */
function usesFunctions(node: SheetNode, input: GroupInput, changed: ReadonlySet<string>): boolean {
  const open = [node];
  const seen = new Set<SheetNode>(open);
  for (const each of open) {
    for (const name of each.uses) {
      const other = input.checked.model.byId.get(name);
      if (other?.kind !== 'function' || seen.has(other)) continue;
      if (other.uses.some((used) => changed.has(used))) return true;
      seen.add(other);
      open.push(other);
    }
  }
  return false;
}

/**
 * The definitions through which `unknown` reaches the targets, in order of dependence. Own functions
 * are looked through: what they read counts as read by their callers.
 */
export function chainBetween(
  unknown: string,
  targets: readonly string[],
  sorted: readonly SheetNode[],
  byId: ReadonlyMap<string, SheetNode>
): readonly SheetNode[] {
  // prettier-ignore
  const below = new Set<string>([unknown]);
  for (const node of sorted) {
    if (node.kind === 'limit' || node.id === unknown) continue;
    if (node.uses.some((name) => below.has(name))) below.add(node.id);
  }
  const above = new Set<string>(targets);
  const open = [...targets];
  for (const id of open) {
    for (const name of byId.get(id)?.uses ?? []) {
      if (above.has(name)) continue;
      above.add(name);
      open.push(name);
    }
  }
  return sorted.filter(
    (node) =>
      node.kind !== 'function' && node.id !== unknown && below.has(node.id) && above.has(node.id)
  );
}
