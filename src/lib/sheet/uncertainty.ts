// Uncertainty to first order: u(y)^2 is the sum over inputs i and j of r_ij c_i u_i c_j u_j, where c is
// the sensitivity coefficient, the derivative of y by the input. All derivatives come from one run of
// the sheet's tangent program, with a lane for each stage and uncertain input.
// Source: JCGM 100:2008, 5.1.2 and 5.2.2.

import {
  execute, LaneFile, linkSegments, tangentProgram, type Segment, type TangentProgram
} from '#lib/lanes/index.ts'; // prettier-ignore
import type { Place } from './compile.ts';
import type { StageGroup } from './group.ts';

/** An uncertain input, with its standard uncertainty [SI] in each lane of the group. */
export interface UncertainInput {
  readonly id: string;
  readonly register: number;
  readonly standardUncertainty: readonly number[];
}

export interface Correlated {
  readonly first: string;
  readonly second: string;
  readonly coefficient: number;
}

/** Inputs differentiated by in one run; keeps the registers of the run small. */
const seedsPerRun = 64;

export class FirstOrder {
  private readonly inputs: readonly UncertainInput[];
  private readonly pairs: readonly (readonly [number, number, number])[];
  private readonly lanes: number;
  /** Per register: c_i u_i at input i * lanes + lane. */
  private readonly terms = new Map<number, Float64Array>();

  constructor(
    group: StageGroup,
    inputs: readonly UncertainInput[],
    correlations: readonly Correlated[],
    wanted: Iterable<Place>
  ) {
    // prettier-ignore
    this.inputs = inputs;
    this.lanes = group.stages.length;
    const index = new Map(inputs.map((input, i) => [input.id, i]));
    this.pairs = correlations.flatMap(({ first, second, coefficient }) => {
      const [i, j] = [index.get(first), index.get(second)];
      return i === undefined || j === undefined ? [] : [[i, j, coefficient] as const];
    });
    if (inputs.length > 0) this.differentiate(group, [...wanted]);
  }

  /** u(y) [SI] of a single value in a lane; null where no tolerance reaches it. */
  standard(place: Place, lane: number): number | null {
    return this.combine((i) => this.term(place.register, i, lane));
  }

  /** u of the difference of two values, each null for an exact one. */
  standardOfDifference(left: Place | null, right: Place | null, lane: number): number | null {
    return this.combine(
      (i) =>
        (left ? this.term(left.register, i, lane) : 0) -
        (right ? this.term(right.register, i, lane) : 0)
    );
  }

  private term(register: number, input: number, lane: number): number {
    return this.terms.get(register)?.[input * this.lanes + lane] ?? 0;
  }

  private combine(termOf: (input: number) => number): number | null {
    let variance = 0;
    let isReached = false;
    for (let i = 0; i < this.inputs.length; i++) {
      const term = termOf(i);
      if (term !== 0) isReached = true;
      variance += term * term;
    }
    for (const [i, j, coefficient] of this.pairs)
      variance += 2 * coefficient * termOf(i) * termOf(j);
    const u = Math.sqrt(Math.max(0, variance));
    return isReached && Number.isFinite(u) ? u : null;
  }

  private differentiate(group: StageGroup, wanted: readonly Place[]): void {
    const { inputs, lanes } = this;
    const kept = derivedProgram(
      group,
      inputs.map((input) => input.register)
    );
    const { derived } = kept;
    const active = wanted.filter(
      ({ register, rows }) => rows === null && derived.isActive(register)
    );
    for (const { register } of active)
      this.terms.set(register, new Float64Array(inputs.length * lanes));
    for (let start = 0; start < inputs.length; start += seedsPerRun) {
      const seeds = inputs.slice(start, start + seedsPerRun);
      const file = runFile(kept, lanes * seeds.length, group.statusCount);
      spreadRegisters(group, file, seeds.length);
      for (const { register } of inputs) file.fill(register + derived.offset, 0);
      for (const [s, { register }] of seeds.entries()) {
        const at = (register + derived.offset) * file.stride + s * lanes;
        file.registers.fill(1, at, at + lanes);
      }
      execute(derived.program.code, derived.program.nested, file);
      for (const { register } of active) {
        const terms = this.terms.get(register);
        for (const [s, seed] of seeds.entries()) {
          for (let lane = 0; lane < lanes; lane++) {
            const at = (register + derived.offset) * file.stride + s * lanes + lane;
            const c = file.registers[at] ?? NaN;
            const u = seed.standardUncertainty[lane] ?? 0;
            if (terms) terms[(start + s) * lanes + lane] = u === 0 ? 0 : c * u;
          }
        }
      }
    }
  }
}

interface Derived {
  readonly segments: readonly Segment[];
  readonly seeds: readonly number[];
  readonly derived: TangentProgram;
  /** Registers of earlier runs, by their lanes. */
  readonly files: Map<number, LaneFile>;
}

/** The tangent program of each group, kept while its segments and the uncertain inputs are the same. */
const derivedPrograms = new WeakMap<StageGroup, Derived>();

function derivedProgram(group: StageGroup, seeds: readonly number[]): Derived {
  const segments = group.segments();
  const known = derivedPrograms.get(group);
  if (known && isEqual(known.segments, segments) && isEqual(known.seeds, seeds)) return known;
  const program = linkSegments(segments, group.space);
  const derived = tangentProgram(program, seeds);
  const made: Derived = { segments, seeds, derived, files: new Map() };
  derivedPrograms.set(group, made);
  return made;
}

function isEqual<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

function runFile(kept: Derived, lanes: number, statuses: number): LaneFile {
  let file = kept.files.get(lanes);
  if (!file) {
    const { program } = kept.derived;
    file = new LaneFile(program.registers, lanes, statuses);
    for (const [register, value] of program.constants) file.fill(register, value);
    kept.files.set(lanes, file);
  }
  return file;
}

/** What no instruction computes (inputs, tables) once for each seed: lane s * stages + stage. */
function spreadRegisters(group: StageGroup, file: LaneFile, seeds: number): void {
  const { stride, registers } = group.file;
  for (const { segment, places } of group.nodes.values()) {
    if (segment) continue;
    for (const { register, rows } of places) {
      for (let r = register; r < register + (rows ?? 1); r++) {
        const values = registers.subarray(r * stride, (r + 1) * stride);
        for (let s = 0; s < seeds; s++) file.registers.set(values, r * file.stride + s * stride);
      }
    }
  }
}
