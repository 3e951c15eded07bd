// Forward-mode derivatives as a transform of the program: beside every register stands a second one,
// its tangent, and beside every instruction the rule that carries tangents through it. One direction
// a lane: which input a lane differentiates by is the caller's seed, so many inputs are many lanes.
// A root is differentiated by the implicit function theorem, an integral under its sign.
// Source: A. Griewank, A. Walther, Evaluating Derivatives, SIAM 2008, ch. 3 (from memory).

import { RegisterSpace, type NestedProgram, type Program } from './builder.ts';
import {
  instructionSize, operationNames, operations, type OperationName
} from './instruction.ts'; // prettier-ignore

export interface TangentProgram {
  readonly program: Program;
  /** The tangent of register r of the original stands at r + offset. */
  readonly offset: number;
  /** Whether a register of the original carries a tangent that may differ from 0, after the run. */
  readonly isActive: (register: number) => boolean;
}

/**
 * The program with tangents. Registers of the original keep their numbers.
 *
 * @param program  original
 * @param seeds    registers whose tangents the caller sets (per lane) before the run
 *
 * Cost   each instruction on an active register becomes 2 to 8
 */
export function tangentProgram(program: Program, seeds: Iterable<number>): TangentProgram {
  const transform = new Transform(program, seeds);
  return transform.run();
}

class Transform {
  private readonly original: Program;
  private readonly offset: number;
  private readonly scratch: RegisterSpace;
  private readonly active: Uint8Array;
  private readonly code: number[] = [];
  private readonly nested: NestedProgram[];
  private scratchTaken: (readonly [number, number])[] = [];

  constructor(program: Program, seeds: Iterable<number>) {
    this.original = program;
    this.offset = program.registers;
    this.scratch = new RegisterSpace(2 * program.registers);
    this.active = new Uint8Array(program.registers);
    this.nested = [...program.nested];
    for (const seed of seeds) this.active[seed] = 1;
  }

  run(): TangentProgram {
    const { code } = this.original;
    for (let k = 0; k < code.length; k += instructionSize) {
      const [operation = 0, d = 0, a = 0, b = 0, c = 0, rows = 1] = code.subarray(
        k,
        k + instructionSize
      );
      this.code.push(operation, d, a, b, c, rows);
      const name = operationNames[operation];
      if (!name) throw new RangeError(`operation ${operation} is none of the instruction set`);
      if (d >= 0 && name !== 'end') this.rule(name, d, a, b, c, rows);
      for (const [register, count] of this.scratchTaken) this.scratch.giveBack(register, count);
      this.scratchTaken = [];
    }
    const active = this.active.slice();
    return {
      offset: this.offset,
      isActive: (register) => active[register] === 1,
      program: {
        code: Int32Array.from(this.code),
        registers: this.scratch.size,
        constants: [...this.original.constants, ...this.scratch.constants],
        nested: this.nested
      }
    };
  }

  private emit(name: OperationName, d: number, a: number, b = -1, c = -1, rows = 1): number {
    this.code.push(operations[name], d, a, b, c, rows);
    return d;
  }

  /** A scratch register with the value of one operation. */
  private make(name: OperationName, a: number, b = -1, c = -1, rows = 1): number {
    const d = this.scratch.take(rows);
    this.scratchTaken.push([d, rows]);
    return this.emit(name, d, a, b, c, rows);
  }

  /** A single-valued scratch register fed from columns. */
  private makeSingle(name: OperationName, a: number, b: number, c: number, rows: number): number {
    const d = this.scratch.take(1);
    this.scratchTaken.push([d, 1]);
    return this.emit(name, d, a, b, c, rows);
  }

  private constant(value: number, rows: number): number {
    const register = this.scratch.constant(value);
    return rows === 1 ? register : this.make('spread', register, -1, -1, rows);
  }

  private isActive(register: number): boolean {
    return register >= 0 && this.active[register] === 1;
  }

  private tangent(register: number): number {
    return register + this.offset;
  }

  private mark(register: number, rows: number, value: 0 | 1): void {
    this.active.fill(value, register, register + rows);
  }

  private rule(
    name: OperationName,
    d: number,
    a: number,
    b: number,
    c: number,
    rows: number
  ): void {
    if (name === 'integrate' || name === 'solve') return this.method(name, d, a, b, c);
    const rule = rules[name];
    const width = singleResults.has(name) ? 1 : rows;
    const operands = operandRows(name, a, b, c, rows);
    if (!rule || !operands.some(([register, count]) => this.isActiveRows(register, count))) {
      this.mark(d, width, 0);
      return;
    }
    const value = rule(this.writer(rows), d, a, b, c);
    this.emit('copy', this.tangent(d), value, -1, -1, width);
    this.mark(d, width, 1);
  }

  private writer(rows: number): Writer {
    return {
      rows,
      make: (operation, x, y = -1, z = -1) => this.make(operation, x, y, z, rows),
      single: (operation, x, y = -1, z = -1) => this.make(operation, x, y, z, 1),
      fromColumns: (operation, x, y, z) => this.makeSingle(operation, x, y, z, rows),
      constant: (value) => this.constant(value, rows),
      singleConstant: (value) => this.constant(value, 1),
      // A register without a tangent has tangent 0, which is not kept up: it is written when read.
      tangent: (register, count = rows) => {
        const target = this.tangent(register);
        if (!this.isActiveRows(register, count)) {
          this.emit('copy', target, this.constant(0, count), -1, -1, count);
        }
        return target;
      },
      isActive: (register, count = rows) => this.isActiveRows(register, count)
    };
  }

  private isActiveRows(register: number, rows: number): boolean {
    if (register < 0) return false;
    for (let row = 0; row < rows; row++) if (this.isActive(register + row)) return true;
    return false;
  }

  /** An integral under its sign with the ends' terms; a root by the implicit function theorem. */
  private method(
    name: 'integrate' | 'solve',
    d: number,
    a: number,
    b: number,
    number: number
  ): void {
    const called = this.original.nested[number];
    if (!called) throw new RangeError('an instruction calls a program that is not there');
    const moving = called.captures.filter(([outer, , rows]) => this.isActiveRows(outer, rows));
    const terms: number[] = [];
    if (moving.length > 0) {
      const seeds = moving.flatMap(([, inner, rows]) =>
        Array.from({ length: rows }, (_, i) => inner + i)
      );
      const inner = this.addNested(called, seeds, moving);
      if (inner !== null) {
        terms.push(
          name === 'solve'
            ? this.makeSingle('call', d, -1, inner, 1)
            : this.makeSingle('integrate', a, b, inner, 1)
        );
      }
    }
    if (name === 'integrate') {
      for (const [end, sign] of [
        [b, 1],
        [a, -1]
      ] as const) {
        if (!this.isActive(end)) continue;
        const height = this.makeSingle('call', end, -1, number, 1);
        const term = this.make('multiply', height, this.tangent(end));
        terms.push(sign === 1 ? term : this.make('negate', term));
      }
    }
    if (terms.length === 0) return this.mark(d, 1, 0);
    let total = terms.reduce((sum, term) => this.make('add', sum, term));
    if (name === 'solve') {
      const slope = this.addNested(called, [called.variable], []);
      if (slope === null) return this.mark(d, 1, 0);
      const derivative = this.makeSingle('call', d, -1, slope, 1);
      total = this.make('negate', this.make('divide', total, derivative));
    }
    this.emit('copy', this.tangent(d), total);
    this.mark(d, 1, 1);
  }

  /** The derivative of a nested program in the direction of `seeds`; null where it is 0. */
  private addNested(
    called: NestedProgram,
    seeds: readonly number[],
    moving: readonly (readonly [number, number, number])[]
  ): number | null {
    // prettier-ignore
    const derived = tangentProgram(called.program, seeds);
    const isOwn = seeds.length === 1 && seeds[0] === called.variable;
    if (!derived.isActive(called.result)) return null;
    const program: Program = isOwn
      ? {
          ...derived.program,
          constants: [...derived.program.constants, [called.variable + derived.offset, 1]]
        }
      : derived.program;
    this.nested.push({
      program,
      variable: called.variable,
      result: called.result + derived.offset,
      captures: [
        ...called.captures,
        ...moving.map(
          ([outer, inner, rows]) => [this.tangent(outer), inner + derived.offset, rows] as const
        )
      ]
    });
    return this.nested.length - 1;
  }
}

/** Writes instructions of one rule; `rows` are those of the original instruction. */
interface Writer {
  readonly rows: number;
  /** Element by element over the rows. */
  make(name: OperationName, a: number, b?: number, c?: number): number;
  /** On single values. */
  single(name: OperationName, a: number, b?: number, c?: number): number;
  /** A single value from columns. */
  fromColumns(name: OperationName, a: number, b: number, c: number): number;
  constant(value: number): number;
  singleConstant(value: number): number;
  tangent(register: number, rows?: number): number;
  isActive(register: number, rows?: number): boolean;
}

/** Gives the register that holds the tangent of `d` after the original instruction has run. */
type TangentRule = (w: Writer, d: number, a: number, b: number, c: number) => number;

const quotient = (denominator: (w: Writer, d: number, a: number) => number): TangentRule =>
  (w, d, a) => w.make('divide', w.tangent(a), denominator(w, d, a)); // prettier-ignore
const product = (factor: (w: Writer, d: number, a: number) => number): TangentRule =>
  (w, d, a) => w.make('multiply', w.tangent(a), factor(w, d, a)); // prettier-ignore
const square = (w: Writer, a: number): number => w.make('multiply', a, a);
const lessSquare = (w: Writer, a: number): number =>
  w.make('subtract', w.constant(1), square(w, a));
const moreSquare = (w: Writer, a: number): number => w.make('add', w.constant(1), square(w, a));

const rules: Partial<Record<OperationName, TangentRule>> = {
  copy: (w, _d, a) => w.tangent(a),
  notNegative: (w, _d, a) => w.tangent(a),
  spread: (w, _d, a) => w.make('spread', w.tangent(a, 1)),
  negate: (w, _d, a) => w.make('negate', w.tangent(a)),
  add: (w, _d, a, b) => w.make('add', w.tangent(a), w.tangent(b)),
  subtract: (w, _d, a, b) => w.make('subtract', w.tangent(a), w.tangent(b)),
  multiply: (w, _d, a, b) => {
    const parts: number[] = [];
    if (w.isActive(a)) parts.push(w.make('multiply', w.tangent(a), b));
    if (w.isActive(b)) parts.push(w.make('multiply', a, w.tangent(b)));
    return parts.reduce((sum, part) => w.make('add', sum, part));
  },
  divide: (w, d, a, b) => {
    if (!w.isActive(b)) return w.make('divide', w.tangent(a), b);
    const inner = w.make('multiply', d, w.tangent(b));
    return w.make('divide', w.make('subtract', w.tangent(a), inner), b);
  },
  integerPower: (w, _d, a, n) => {
    const lower = n === 1 ? w.constant(1) : w.make('integerPower', a, n - 1);
    return w.make('multiply', w.make('multiply', w.constant(n), lower), w.tangent(a));
  },
  power: (w, d, a, b) => {
    const parts: number[] = [];
    if (w.isActive(a)) {
      const lower = w.make('power', a, w.make('subtract', b, w.constant(1)));
      parts.push(w.make('multiply', w.make('multiply', b, lower), w.tangent(a)));
    }
    if (w.isActive(b)) {
      parts.push(w.make('multiply', w.make('multiply', d, w.make('ln', a)), w.tangent(b)));
    }
    return parts.reduce((sum, part) => w.make('add', sum, part));
  },
  sqrt: quotient((w, d) => w.make('multiply', w.constant(2), d)),
  cbrt: quotient((w, d) => w.make('multiply', w.constant(3), square(w, d))),
  exp: product((_w, d) => d),
  ln: quotient((_w, _d, a) => a),
  log10: quotient((w, _d, a) => w.make('multiply', w.constant(Math.LN10), a)),
  log2: quotient((w, _d, a) => w.make('multiply', w.constant(Math.LN2), a)),
  sin: product((w, _d, a) => w.make('cos', a)),
  cos: product((w, _d, a) => w.make('negate', w.make('sin', a))),
  tan: product((w, d) => moreSquare(w, d)),
  asin: quotient((w, _d, a) => w.make('sqrt', lessSquare(w, a))),
  acos: quotient((w, _d, a) => w.make('negate', w.make('sqrt', lessSquare(w, a)))),
  atan: quotient((w, _d, a) => moreSquare(w, a)),
  atan2: (w, _d, y, x) => {
    const top = w.make(
      'subtract', w.make('multiply', x, w.tangent(y)), w.make('multiply', y, w.tangent(x))
    ); // prettier-ignore
    return w.make('divide', top, w.make('add', square(w, x), square(w, y)));
  },
  sinh: product((w, _d, a) => w.make('cosh', a)),
  cosh: product((w, _d, a) => w.make('sinh', a)),
  tanh: product((w, d) => lessSquare(w, d)),
  asinh: quotient((w, _d, a) => w.make('sqrt', moreSquare(w, a))),
  acosh: quotient((w, _d, a) => w.make('sqrt', w.make('subtract', square(w, a), w.constant(1)))),
  atanh: quotient((w, _d, a) => lessSquare(w, a)),
  min: (w, _d, a, b) => w.make('select', w.tangent(a), w.tangent(b), w.make('lessOrEqual', a, b)),
  max: (w, _d, a, b) => w.make('select', w.tangent(a), w.tangent(b), w.make('lessOrEqual', b, a)),
  abs: product((w, _d, a) => w.make('sign', a)),
  modulo: (w, _d, a, b) => {
    if (!w.isActive(b)) return w.tangent(a);
    const turns = w.make('floor', w.make('divide', a, b));
    return w.make('subtract', w.tangent(a), w.make('multiply', turns, w.tangent(b)));
  },
  hypot: (w, d, a, b) => {
    const top = w.make(
      'add', w.make('multiply', a, w.tangent(a)), w.make('multiply', b, w.tangent(b))
    ); // prettier-ignore
    return w.make('divide', top, d);
  },
  select: (w, _d, a, b, c) => w.make('select', w.tangent(a), w.tangent(b), c),
  sum: (w, _d, a) => w.fromColumns('sum', w.tangent(a), -1, 0),
  mean: (w, _d, a) => w.fromColumns('mean', w.tangent(a), -1, 0),
  standardDeviation: (w, d, a) => {
    const centred = w.make('subtract', a, w.make('spread', w.fromColumns('mean', a, -1, 0)));
    const sum = w.fromColumns('sum', w.make('multiply', centred, w.tangent(a)), -1, 0);
    const degrees = w.single('subtract', w.fromColumns('count', a, -1, 0), w.singleConstant(1));
    return w.single('divide', sum, w.single('multiply', degrees, d));
  },
  minimum: (w, _d, a) => w.fromColumns('pick', w.tangent(a), leastRow(w, a), -1),
  maximum: (w, _d, a) => w.fromColumns('pick', w.tangent(a), leastRow(w, w.make('negate', a)), -1),
  // No row of a column with a tangent is missing, so the measured ones are all.
  first: (w, _d, a) => w.fromColumns('first', w.tangent(a), -1, 0),
  last: (w, _d, a) => w.fromColumns('last', w.tangent(a), -1, 0),
  pick: (w, _d, a, b) => w.fromColumns('pick', w.tangent(a), b, -1),
  interpolate: interpolationRule('interpolate', 'slope'),
  interpolateHeld: interpolationRule('interpolateHeld', 'slopeHeld'),
  interpolateSpline: interpolationRule('interpolateSpline', 'slopeSpline')
};

const leastRow = (w: Writer, column: number): number =>
  w.fromColumns('choose', w.constant(1), column, -1);

/** slope (dx - interpolated dxs) + interpolated dys: exact where linear, first order for the spline. */
function interpolationRule(value: OperationName, slope: OperationName): TangentRule {
  return (w, _d, x, xs, ys) => {
    let step = w.tangent(x, 1);
    if (w.isActive(xs)) {
      step = w.single('subtract', step, w.fromColumns(value, x, xs, w.tangent(xs)));
    }
    const along = w.single('multiply', w.fromColumns(slope, x, xs, ys), step);
    if (!w.isActive(ys)) return along;
    return w.single('add', along, w.fromColumns(value, x, xs, w.tangent(ys)));
  };
}

/** Operations that give a single value from columns. */
const singleResults: ReadonlySet<OperationName> = new Set<OperationName>([
  'sum', 'mean', 'standardDeviation', 'minimum', 'maximum', 'count', 'pick', 'choose', 'interpolate',
  'interpolateHeld', 'interpolateSpline', 'slope', 'slopeHeld', 'slopeSpline', 'call',
  'first', 'last'
]); // prettier-ignore

/** The registers an operation reads that may carry a tangent, with their rows. */
function operandRows(
  name: OperationName,
  a: number,
  b: number,
  c: number,
  rows: number
): readonly (readonly [number, number])[] {
  // prettier-ignore
  switch (name) {
    case 'spread':
      return [[a, 1]];
    case 'integerPower':
    case 'pick':
    case 'sum':
    case 'mean':
    case 'standardDeviation':
    case 'minimum':
    case 'maximum':
    case 'first':
    case 'last':
      return [[a, rows]];
    case 'interpolate':
    case 'interpolateHeld':
    case 'interpolateSpline':
      return [[a, 1], [b, rows], [c, rows]]; // prettier-ignore
    default:
      return [[a, rows], [b, rows]]; // prettier-ignore
  }
}
