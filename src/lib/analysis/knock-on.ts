// What a change reaches: between two stages of a sheet, between two sheets, between a sheet and a
// trial. Results that moved, limits that flipped, and the ones the eye misses: capacities that stayed
// put while the load on them grew. Sheets are matched by name and by label.

import type {
  LimitAtStage,
  LimitResult,
  LimitStatus,
  Results,
  StageValue,
  ValueResult
} from '#lib/sheet/index.ts';
import type { LimitTags } from '#lib/document/index.ts';

export interface KnockOnEnd {
  readonly title: string;
  readonly stage: string;
}

export interface ChangedInput {
  readonly name: string;
  readonly line: number;
  readonly before: string;
  readonly after: string;
  readonly ratio: number | null;
  readonly reason: string | null;
}

export interface MovedResult {
  readonly name: string;
  readonly line: number;
  readonly kind: ValueResult['kind'];
  readonly unit: string;
  /** In `unit`; null for what is no single number. */
  readonly before: number | null;
  readonly after: number | null;
  readonly beforeText: string;
  readonly afterText: string;
  readonly ratio: number | null;
  readonly change: 'new' | 'sign' | null;
}

export interface FlippedLimit {
  readonly label: string;
  readonly line: number;
  readonly tags: LimitTags;
  readonly before: LimitStatus;
  readonly after: LimitStatus;
  readonly beforeUtilisation: number | null;
  readonly afterUtilisation: number | null;
  /** 'out': it gave out, or is no longer known; 'in': it came back inside. */
  readonly direction: 'out' | 'in';
}

export interface StayedPut {
  readonly label: string;
  readonly line: number;
  readonly tags: LimitTags;
  /** The capacity (or requirement) that did not move. */
  readonly capacityText: string;
  readonly before: number;
  readonly after: number;
  /** Ratio of the utilisations; null from 0: the load is new. */
  readonly grew: number | null;
  readonly status: LimitStatus;
}

export interface KnockOn {
  readonly from: KnockOnEnd;
  readonly to: KnockOnEnd;
  readonly changedInputs: readonly ChangedInput[];
  /** Largest factor first. */
  readonly moved: readonly MovedResult[];
  /** Safety first, then what gave out, then what came back. */
  readonly flipped: readonly FlippedLimit[];
  /** Safety first, then by utilisation. */
  readonly stayedPut: readonly StayedPut[];
  /** Number of results that did not move. */
  readonly unmoved: number;
  readonly unmatched: {
    readonly onlyBefore: readonly string[];
    readonly onlyAfter: readonly string[];
  };
}

/** A ratio off 1 by this much or more is a move. */
const moveThreshold = 0.005;
/** A capacity equal to this, relative, stayed put. */
const samePlace = 1e-12;

/** The Knock-on from one stage of a sheet to a stage of the same or another sheet. */
export function knockOn(
  before: Results,
  beforeStage: string,
  after: Results,
  afterStage: string
): KnockOn {
  const from = stageIndex(before, beforeStage);
  const to = stageIndex(after, afterStage);
  const changedInputs: ChangedInput[] = [];
  const moved: MovedResult[] = [];
  let unmoved = 0;
  for (const row of after.values.values()) {
    const old = before.values.get(row.name);
    if (!old || row.kind === 'function' || row.rows !== null) continue;
    const [a, b] = [old.at[from], row.at[to]];
    if (!a || !b) continue;
    const change = compared(a, b);
    if (row.kind === 'input') {
      if (isChanged(a, b)) changedInputs.push(inputRow(row, a, b, change.ratio));
      continue;
    }
    if (!isMoved(a, b, change)) {
      unmoved++;
      continue;
    }
    moved.push({
      name: row.name, line: row.line, kind: row.kind, unit: row.unit?.text ?? '',
      before: numberOf(a, old, row), after: numberOf(b, row, row), beforeText: a.text || a.state,
      afterText: b.text || b.state, ...change
    }); // prettier-ignore
  }
  const pairs = [...after.limits.values()].flatMap((limit) => {
    const old = before.limits.get(limit.label);
    const [a, b] = [old?.at[from], limit.at[to]];
    return old && a && b ? [{ limit, old, a, b }] : [];
  });
  return {
    from: { title: titleOf(before), stage: beforeStage },
    to: { title: titleOf(after), stage: afterStage },
    changedInputs,
    moved: moved.sort((x, y) => moveSize(y) - moveSize(x)),
    flipped: pairs.flatMap(flippedRow).sort(bySafetyThenDirection),
    stayedPut: pairs.flatMap(stayedRow).sort(bySafetyThenUse),
    unmoved,
    unmatched: {
      onlyBefore: missingIn(before, after),
      onlyAfter: missingIn(after, before)
    }
  };
}

function stageIndex(results: Results, id: string): number {
  const index = results.stages.findIndex((stage) => stage.id === id);
  if (index < 0) throw new RangeError(`${id} is not a stage of this sheet`);
  return index;
}

const titleOf = (results: Results): string => results.worksheet.frontMatter.title ?? '';

function compared(
  a: StageValue,
  b: StageValue
): { ratio: number | null; change: 'new' | 'sign' | null } {
  if (typeof a.si !== 'number' || typeof b.si !== 'number') return { ratio: null, change: null };
  if (a.si === b.si) return { ratio: 1, change: null };
  if (a.si === 0) return { ratio: null, change: 'new' };
  if (b.si !== 0 && a.si > 0 !== b.si > 0) return { ratio: null, change: 'sign' };
  return { ratio: b.si / a.si, change: null };
}

function isMoved(
  a: StageValue,
  b: StageValue,
  change: { ratio: number | null; change: 'new' | 'sign' | null }
): boolean {
  if (change.ratio !== null) return Math.abs(change.ratio - 1) >= moveThreshold;
  return isChanged(a, b);
}

function isChanged(a: StageValue, b: StageValue): boolean {
  if (a.state !== b.state) return true;
  if (typeof a.si === 'number' && typeof b.si === 'number') return a.si !== b.si;
  return a.text !== b.text;
}

/** In the later row's unit. */
function numberOf(value: StageValue, own: ValueResult, shown: ValueResult): number | null {
  if (typeof value.value !== 'number') return null;
  if (!own.unit || !shown.unit || own.unit === shown.unit || typeof value.si !== 'number')
    return value.value;
  return (value.si - shown.unit.offset) / shown.unit.factor;
}

function inputRow(
  row: ValueResult,
  a: StageValue,
  b: StageValue,
  ratio: number | null
): ChangedInput {
  const comment = row.variants[b.variant]?.comment;
  return {
    name: row.name,
    line: row.variants[b.variant]?.line ?? row.line,
    before: a.text || a.state,
    after: b.text || b.state,
    ratio,
    reason: comment?.text ?? null
  };
}

function moveSize({ ratio, change }: { ratio: number | null; change: string | null }): number {
  if (ratio === null) return change === null ? 0 : Infinity;
  return ratio === 0 ? Infinity : Math.abs(Math.log(Math.abs(ratio)));
}

interface LimitPair {
  readonly limit: LimitResult;
  readonly old: LimitResult;
  readonly a: LimitAtStage;
  readonly b: LimitAtStage;
}

const isOut = (status: LimitStatus): boolean =>
  status === 'over' || status === 'short' || status === 'fails' || status === 'unknown';

function flippedRow({ limit, a, b }: LimitPair): FlippedLimit[] {
  if (isOut(a.status) === isOut(b.status)) return [];
  return [{
    label: limit.label, line: limit.line, tags: limit.tags, before: a.status, after: b.status,
    beforeUtilisation: a.utilisation, afterUtilisation: b.utilisation,
    direction: isOut(b.status) ? 'out' : 'in'
  }]; // prettier-ignore
}

function stayedRow({ limit, old, a, b }: LimitPair): StayedPut[] {
  if (
    a.utilisation === null ||
    b.utilisation === null ||
    b.utilisation <= a.utilisation * (1 + samePlace)
  )
    return [];
  const [before, after] = [capacitySi(old, a), capacitySi(limit, b)];
  if (before === null || after === null) return [];
  if (Math.abs(before - after) > samePlace * Math.max(Math.abs(before), Math.abs(after))) return [];
  return [{
    label: limit.label, line: limit.line, tags: limit.tags, capacityText: b.rightText,
    before: a.utilisation, after: b.utilisation,
    grew: a.utilisation === 0 ? null : b.utilisation / a.utilisation, status: b.status
  }]; // prettier-ignore
}

function capacitySi(limit: LimitResult, at: LimitAtStage): number | null {
  return at.right === null || !limit.unit ? null : at.right * limit.unit.factor;
}

function bySafetyThenDirection(x: FlippedLimit, y: FlippedLimit): number {
  return (
    Number(y.tags.safety) - Number(x.tags.safety) ||
    Number(x.direction === 'in') - Number(y.direction === 'in') ||
    x.line - y.line
  );
}

function bySafetyThenUse(x: StayedPut, y: StayedPut): number {
  return Number(y.tags.safety) - Number(x.tags.safety) || y.after - x.after || x.line - y.line;
}

function missingIn(these: Results, those: Results): string[] {
  const names = [...these.values.keys()].filter(
    (name) => !those.values.has(name) && !name.startsWith('line ')
  );
  const labels = [...these.limits.keys()].filter((label) => !those.limits.has(label));
  return [...names, ...labels];
}
