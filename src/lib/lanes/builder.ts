// Writes instructions. A builder hands out registers, keeps each constant once, folds operations on
// constants, and remembers beside each instruction the term it came from and the branch it is in, so
// that a value gone bad can be traced to its place in the sheet.

import type { Expression } from '#lib/language/index.ts';
import type { Cut } from '#lib/text/index.ts';
import {
  evaluateOnce, instructionSize, operations, type OperationName
} from './instruction.ts'; // prettier-ignore

/** Instructions a program may have; a sheet beyond it is told so at the line. */
export const instructionLimit = 100_000;

/** Thrown by a builder that would exceed `instructionLimit`, caught where a definition is lowered. */
export class ProgramTooLong extends RangeError {}

/** A value in a register. `rows` null: a single value. */
export interface Operand {
  readonly register: number;
  readonly rows: number | null;
  readonly kind: 'constant' | 'definition' | 'temporary';
  /** Of a constant. */
  readonly value: number;
}

/** The term an instruction was made for. */
export interface Origin {
  readonly node: Expression;
  readonly cut: Cut;
}

/** Numbers registers, and keeps each constant in one of them. */
export class RegisterSpace {
  private next: number;
  private readonly free = new Map<number, number[]>();
  private readonly constantRegisters = new Map<number, number>();
  /** [register, value], in the order they were made. */
  readonly constants: (readonly [number, number])[] = [];

  constructor(first = 0) {
    this.next = first;
  }

  get size(): number {
    return this.next;
  }

  /**
   * A register that keeps its value from one run to the next. It was no temporary before: code that was
   * written earlier may still write to those.
   */
  keep(rows: number | null): number {
    const register = this.next;
    this.next += rows ?? 1;
    return register;
  }

  /** A register for a temporary. */
  take(rows: number | null): number {
    const count = rows ?? 1;
    const reused = this.free.get(count)?.pop();
    if (reused !== undefined) return reused;
    const register = this.next;
    this.next += count;
    return register;
  }

  giveBack(register: number, rows: number | null): void {
    const count = rows ?? 1;
    const list = this.free.get(count);
    if (list) list.push(register);
    else this.free.set(count, [register]);
  }

  constant(value: number): number {
    const known = this.constantRegisters.get(value);
    if (known !== undefined) return known;
    const register = this.next++;
    this.constantRegisters.set(value, register);
    this.constants.push([register, value]);
    return register;
  }
}

/** A program that another calls: an integrand, or the two sides of an equation. */
export interface NestedProgram {
  readonly program: Program;
  /** Register of the variable of integration or of the unknown. */
  readonly variable: number;
  readonly result: number;
  /** Registers copied in from the outer program: [outer, inner, rows]. */
  readonly captures: readonly (readonly [number, number, number])[];
}

export interface Program {
  readonly code: Int32Array;
  readonly registers: number;
  readonly constants: readonly (readonly [number, number])[];
  readonly nested: readonly NestedProgram[];
}

/** A definition's own instructions, on the registers of the whole sheet. */
export interface Segment {
  readonly code: Int32Array;
  readonly nested: readonly NestedProgram[];
  /** One per instruction. */
  readonly origins: readonly (Origin | null)[];
  /** Register of the branch condition an instruction stands under; -1 for none. One per instruction. */
  readonly masks: readonly number[];
}

export class Builder {
  readonly space: RegisterSpace;
  readonly code: number[] = [];
  readonly origins: (Origin | null)[] = [];
  readonly masks: number[] = [];
  readonly nested: NestedProgram[] = [];
  /** Counts down over a definition and all programs nested in it. */
  readonly budget: { left: number };

  constructor(space: RegisterSpace, budget = { left: instructionLimit }) {
    this.space = space;
    this.budget = budget;
  }

  constant(value: number): Operand {
    return { register: this.space.constant(value), rows: null, kind: 'constant', value };
  }

  /** Counts a term against the limit, whether or not it becomes an instruction. */
  spend(): void {
    if (--this.budget.left < 0) throw new ProgramTooLong();
  }

  /** Appends an instruction as it is. */
  append(
    name: OperationName,
    dst: number,
    a: number,
    b: number,
    c: number,
    rows: number | null,
    origin: Origin | null,
    mask: number
  ): void {
    // prettier-ignore
    this.spend();
    this.code.push(operations[name], dst, a, b, c, rows ?? 1);
    this.origins.push(origin);
    this.masks.push(mask);
  }

  /** An element-wise operation; columns and single values mix. Operands that were temporary are freed. */
  element(
    name: OperationName,
    operands: readonly Operand[],
    origin: Origin | null,
    mask: number
  ): Operand {
    // prettier-ignore
    const folded = fold(name, operands);
    if (folded !== null) return this.constant(folded);
    const rows = operands.find((operand) => operand.rows !== null)?.rows ?? null;
    const inputs = operands.map((operand) => this.spreadTo(operand, rows, origin, mask));
    const dst = this.space.take(rows);
    const [a, b, c] = inputs;
    this.append(
      name,
      dst,
      a?.register ?? -1,
      b?.register ?? -1,
      c?.register ?? -1,
      rows,
      origin,
      mask
    );
    for (const input of inputs) this.release(input);
    return { register: dst, rows, kind: 'temporary', value: NaN };
  }

  /** x^n with the integer n held in the instruction. */
  integerPower(base: Operand, n: number, origin: Origin | null, mask: number): Operand {
    if (base.kind === 'constant') {
      const value = evaluateOnce('integerPower', base.value, n);
      if (value !== null && Number.isFinite(value)) return this.constant(value);
    }
    const dst = this.space.take(base.rows);
    this.append('integerPower', dst, base.register, n, -1, base.rows, origin, mask);
    this.release(base);
    return { register: dst, rows: base.rows, kind: 'temporary', value: NaN };
  }

  /** An operation with a single result whose operands keep their own rows. */
  single(
    name: OperationName,
    registers: readonly [number, number, number],
    rows: number | null,
    origin: Origin | null,
    mask: number
  ): Operand {
    // prettier-ignore
    const dst = this.space.take(null);
    this.append(name, dst, ...registers, rows, origin, mask);
    return { register: dst, rows: null, kind: 'temporary', value: NaN };
  }

  /** Guards an operation that would swallow a value that is not finite. */
  check(operand: Operand, origin: Origin | null, mask: number, maskByRow = false): void {
    if (operand.kind === 'constant') return;
    const traced = maskByRow ? -1 : mask;
    this.append(
      'check',
      -1,
      operand.register,
      mask,
      maskByRow ? 1 : 0,
      operand.rows,
      origin,
      traced
    );
  }

  /** Puts a value into a register that was numbered before, without a copy where that can be. */
  moveTo(target: number, value: Operand, origin: Origin | null): void {
    const last = this.code.length - instructionSize;
    if (value.kind === 'temporary' && last >= 0 && this.code[last + 1] === value.register) {
      this.code[last + 1] = target;
      this.release(value);
      return;
    }
    this.append('copy', target, value.register, -1, -1, value.rows, origin, -1);
    this.release(value);
  }

  spreadTo(operand: Operand, rows: number | null, origin: Origin | null, mask: number): Operand {
    if (operand.rows === rows || rows === null) return operand;
    const dst = this.space.take(rows);
    this.append('spread', dst, operand.register, -1, -1, rows, origin, mask);
    this.release(operand);
    return { register: dst, rows, kind: 'temporary', value: NaN };
  }

  release(operand: Operand): void {
    if (operand.kind === 'temporary') this.space.giveBack(operand.register, operand.rows);
  }

  segment(): Segment {
    return {
      code: Int32Array.from(this.code),
      nested: this.nested,
      origins: this.origins,
      masks: this.masks
    };
  }

  program(): Program {
    return {
      code: Int32Array.from(this.code),
      registers: this.space.size,
      constants: this.space.constants,
      nested: this.nested
    };
  }
}

/** Number of instructions in a run of code. */
export const instructionCount = (code: Int32Array): number => code.length / instructionSize;

/** Folds only what stays finite: what does not must be traced when the sheet runs. */
function fold(name: OperationName, operands: readonly Operand[]): number | null {
  if (operands.length > 2 || operands.some((operand) => operand.kind !== 'constant')) return null;
  const [a, b] = operands;
  const value = evaluateOnce(name, a?.value ?? NaN, b?.value ?? NaN);
  return value !== null && Number.isFinite(value) && !Object.is(value, -0) ? value : null;
}
