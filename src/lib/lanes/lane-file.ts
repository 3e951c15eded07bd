// The registers of a chunk of lanes, and what is kept beside them while a program runs.

import type { NestedProgram } from './builder.ts';

/** What a nested method has to say beyond its value, per lane. */
export interface MethodReport {
  readonly kind: 'integral' | 'solve';
  readonly lane: number;
  readonly status: 'inaccurate' | 'notFinite' | 'budget' | 'sameSign' | 'several' | 'discontinuous';
  /** Instruction, counted from the start of the code that ran. */
  readonly instruction: number;
  /** sameSign: the values at both ends; inaccurate: value and estimated error; notFinite: where. */
  readonly figures: readonly number[];
}

/**
 * Instructions times lanes that one definition may take for each lane, nested programs included: an
 * integral of an integral of an integral multiplies its work with every level.
 */
export const workPerDefinition = 30_000_000;

/** The registers of a chunk of lanes, and what went wrong in them. */
export class LaneFile {
  registers: Float64Array;
  /** Lanes a register has room for. */
  readonly stride: number;
  /** Lanes in use, at most `stride`. */
  lanes: number;
  /** 1 where a lane of the definition that runs has met a value that is not finite. */
  readonly bad: Uint8Array;
  /** Result of each definition's `end`, by status number * stride + lane: 0 is good. */
  status: Uint8Array;
  reports: MethodReport[] | null = null;
  /** Instructions times lanes so far, nested programs included. */
  work = 0;
  /** What the definition that runs may still take; one for a file and all files of nested programs. */
  budget: { left: number };
  /** Files of nested programs, kept for the next call. */
  readonly inner = new Map<NestedProgram, LaneFile>();

  constructor(registers: number, stride: number, statuses = 0) {
    this.registers = new Float64Array(registers * stride);
    this.stride = stride;
    this.lanes = stride;
    this.budget = { left: workPerDefinition * stride };
    this.bad = new Uint8Array(stride);
    this.status = new Uint8Array(statuses * stride);
  }

  /** Makes room for more registers and statuses, keeping what is there. */
  grow(registers: number, statuses: number): void {
    if (registers * this.stride > this.registers.length) {
      const wider = new Float64Array(Math.ceil(registers * 1.5) * this.stride);
      wider.set(this.registers);
      this.registers = wider;
    }
    if (statuses * this.stride > this.status.length) {
      const wider = new Uint8Array(Math.ceil(statuses * 1.5) * this.stride);
      wider.set(this.status);
      this.status = wider;
    }
  }

  /** Sets a register to one value in every lane. */
  fill(register: number, value: number): void {
    this.registers.fill(value, register * this.stride, (register + 1) * this.stride);
  }
}
