// From a checked expression to instructions. Names become registers, own functions are written in at
// their calls, both branches of a condition are computed and one is selected, and wherever an
// operation would swallow a value that is not finite, a check stands before it.

import type { Expression, RelationOperator } from '#lib/language/index.ts';
import { predefinedValues } from '#lib/model/index.ts';
import type { Cut } from '#lib/text/index.ts';
import {
  Builder,
  RegisterSpace,
  type NestedProgram,
  type Operand,
  type Origin
} from './builder.ts';
import { largestIntegerPower, type OperationName } from './instruction.ts';

/** An own function, as lowering sees it. */
export interface FunctionBody {
  readonly parameters: readonly string[];
  readonly tree: Expression;
  readonly cut: Cut;
}

export interface LowerScope {
  /** The value of a name; with `sheetOnly` parameters and bound variables around are passed over. */
  operandOf(name: string, sheetOnly?: boolean): Operand | undefined;
  functionOf(name: string): FunctionBody | undefined;
  /** The operand is a column of a table as it was read, in which a row may be not measured. */
  isTable(operand: Operand): boolean;
}

/** Lowers expressions into one builder. */
export class Lowering {
  readonly builder: Builder;
  private readonly scope: LowerScope;
  private locals: Map<string, Operand>[] = [];
  /** Names of the sheet whose value is another one here: the unknown of a solve and what follows from it. */
  private readonly overrides = new Map<string, Operand>();
  /** In the body of an own function, which sees the sheet and its parameters only. */
  private isInFunction = false;
  private mask: Operand | null = null;
  private cut: Cut;

  constructor(builder: Builder, scope: LowerScope, cut: Cut) {
    this.builder = builder;
    this.scope = scope;
    this.cut = cut;
  }

  /** Instructions for an expression; the operand holds its value. */
  lower(node: Expression, cut: Cut = this.cut): Operand {
    const before = this.cut;
    this.cut = cut;
    const value = this.expression(node);
    this.cut = before;
    return value;
  }

  /** With some names standing for other operands, as parameters of a function do. */
  withLocals<T>(names: ReadonlyMap<string, Operand>, work: () => T): T {
    this.locals.push(new Map(names));
    const value = work();
    this.locals.pop();
    return value;
  }

  /** Gives a name of the sheet another value from here on. */
  define(name: string, value: Operand, origin: Origin): void {
    this.builder.check(value, origin, -1);
    this.overrides.set(
      name,
      value.kind === 'constant' ? value : { ...value, kind: 'definition', value: NaN }
    );
  }

  operandOf(name: string, sheetOnly = false): Operand {
    for (let i = this.locals.length - 1; i >= 0 && !sheetOnly; i--) {
      const local = this.locals[i]?.get(name);
      if (local) return local;
    }
    const override = this.overrides.get(name);
    if (override) return override;
    if (name === 'pi') return this.builder.constant(Math.PI);
    if (name === 'inf') return this.builder.constant(Infinity);
    if (name === 'true') return this.builder.constant(1);
    if (name === 'false') return this.builder.constant(0);
    const predefined = predefinedValues.get(name);
    if (predefined) return this.builder.constant(predefined.value);
    const operand = this.scope.operandOf(name, sheetOnly || this.isInFunction);
    if (!operand) throw new RangeError(`${name} has no register`);
    return operand;
  }

  private expression(node: Expression): Operand {
    this.builder.spend();
    switch (node.kind) {
      case 'number':
        return this.builder.constant(node.value);
      case 'quantity':
        return this.builder.constant(node.magnitude * node.unit.factor + node.unit.offset);
      case 'name':
        return this.operandOf(node.name);
      case 'group':
        return this.expression(node.inner);
      case 'sign': {
        if (node.op === '+') return this.expression(node.operand);
        // A minus before a reading belongs to the reading.
        if (node.operand.kind === 'quantity' && node.operand.unit.offset !== 0) {
          const { magnitude, unit } = node.operand;
          return this.builder.constant(-magnitude * unit.factor + unit.offset);
        }
        return this.emit('negate', [this.expression(node.operand)], node);
      }
      case 'not': {
        const operand = this.expression(node.operand);
        this.guard(operand, node.operand);
        return this.emit('not', [operand], node);
      }
      case 'binary':
        return node.op === '^' ? this.power(node) : this.arithmetic(node);
      case 'relation':
        return this.relation(node);
      case 'logic':
        return this.logic(node);
      case 'conditional':
        return this.conditional(node);
      case 'call':
        return this.call(node);
    }
  }

  private arithmetic(node: Expression & { kind: 'binary' }): Operand {
    const left = this.expression(node.left);
    const right = this.expression(node.right);
    if (node.op === '/') this.guard(right, node.right); // x/inf is 0
    return this.emit(arithmeticOperations[node.op], [left, right], node);
  }

  private power(node: Expression & { kind: 'binary' }): Operand {
    const base = this.expression(node.left);
    const exponent = this.expression(node.right);
    if (exponent.kind === 'constant') {
      const n = exponent.value;
      if (n === 0.5) return this.emit('sqrt', [base], node);
      if (Number.isInteger(n) && n !== 0 && Math.abs(n) <= largestIntegerPower) {
        if (n < 0) this.guard(base, node.left);
        if (n === 1) return base;
        return this.builder.integerPower(base, n, this.origin(node), this.maskRegister());
      }
    }
    this.guard(base, node.left);
    this.guard(exponent, node.right);
    return this.emit('power', [base, exponent], node);
  }

  private relation(node: Expression & { kind: 'relation' }): Operand {
    const operands: Operand[] = [];
    for (const part of node.operands) {
      const operand = this.held(this.expression(part));
      this.guard(operand, part, true);
      operands.push(operand);
    }
    let result: Operand | null = null;
    for (const [i, operator] of node.operators.entries()) {
      const [left, right] = [operands[i], operands[i + 1]];
      if (!left || !right) continue;
      const { name, swap } = relationOperations[operator];
      const one = this.emit(name, swap ? [right, left] : [left, right], node);
      result = result ? this.emit('and', [result, one], node) : one;
    }
    for (const operand of operands) this.letGo(operand);
    return result ?? this.builder.constant(1);
  }

  /** The right side of `and` counts only where the left is true, that of `or` only where it is not. */
  private logic(node: Expression & { kind: 'logic' }): Operand {
    const left = this.held(this.expression(node.left));
    this.guard(left, node.left, true);
    const where = node.op === 'and' ? left : this.held(this.emit('not', [left], node));
    const right = this.under(where, node, () => {
      const value = this.expression(node.right);
      this.guard(value, node.right, true);
      return value;
    });
    if (where !== left) this.letGo(where);
    const result = this.emit(node.op, [left, right], node);
    this.letGo(left);
    return result;
  }

  private conditional(node: Expression & { kind: 'conditional' }): Operand {
    const test = this.held(this.expression(node.test));
    this.guard(test, node.test, true);
    if (test.kind === 'constant') return this.expression(test.value !== 0 ? node.yes : node.no);
    const otherwise = this.held(this.emit('not', [test], node));
    const yes = this.held(this.under(test, node, () => this.expression(node.yes)));
    const no = this.held(this.under(otherwise, node, () => this.expression(node.no)));
    const result = this.builder.element(
      'select', [yes, no, test], this.origin(node), this.maskRegister()
    ); // prettier-ignore
    for (const operand of [test, otherwise, yes, no]) this.letGo(operand);
    return result;
  }

  private call(node: Expression & { kind: 'call' }): Operand {
    const own = this.scope.functionOf(node.callee);
    if (own) return this.ownCall(node, own);
    if (node.callee === 'integrate') return this.integral(node);
    const onColumn = columnStatistics[node.callee];
    const [first] = node.args;
    if (onColumn && first && node.args.length === 1) return this.statistic(node, first, onColumn);
    if (interpolations[node.callee]) return this.interpolation(node);
    const args = node.args.map((arg) => this.held(this.expression(arg)));
    const result = this.builtIn(node, args);
    for (const arg of args) this.letGo(arg);
    return result;
  }

  private builtIn(node: Expression & { kind: 'call' }, args: readonly Operand[]): Operand {
    const [a, b, c] = args;
    if (!a) throw new RangeError(`${node.callee} has no argument`);
    const plain = plainFunctions[node.callee];
    if (plain) {
      if (swallows.has(node.callee))
        for (const [i, arg] of args.entries()) this.guard(arg, node.args[i] ?? node);
      if (node.callee === 'round' && b) {
        const ratio = this.emit('round', [this.emit('divide', [a, b], node)], node);
        return this.emit('multiply', [ratio, b], node);
      }
      let result = this.emit(plain, args.slice(0, foldable.has(node.callee) ? 2 : 3), node);
      if (foldable.has(node.callee)) {
        for (const arg of args.slice(2)) result = this.emit(plain, [result, arg], node);
      }
      return result;
    }
    if (node.callee === 'clamp' && b && c) {
      for (const [i, arg] of args.entries()) this.guard(arg, node.args[i] ?? node);
      return this.emit('min', [this.emit('max', [a, b], node), c], node);
    }
    throw new RangeError(`${node.callee} cannot be lowered`);
  }

  private statistic(
    node: Expression & { kind: 'call' },
    argument: Expression,
    name: OperationName
  ): Operand {
    // prettier-ignore
    const column = this.held(this.expression(argument));
    const rows = column.rows ?? 1;
    // Rows of a table that were not measured are skipped; in a computed column they are an error.
    const isTable = this.scope.isTable(column);
    if (!isTable) this.guard(column, argument);
    const result = this.builder.single(
      name, [column.register, -1, isTable ? 1 : 0], rows, this.origin(node), this.maskRegister()
    ); // prettier-ignore
    this.letGo(column);
    return result;
  }

  private interpolation(node: Expression & { kind: 'call' }): Operand {
    const name = interpolations[node.callee];
    const [x, xs, ys] = node.args.map((arg) => this.held(this.expression(arg)));
    if (!name || !x || !xs || !ys) throw new RangeError(`${node.callee} takes three arguments`);
    const [xNode, xsNode, ysNode] = node.args;
    for (const [operand, part] of [
      [x, xNode],
      [xs, xsNode],
      [ys, ysNode]
    ] as const) {
      if (part) this.guard(operand, part, true);
    }
    const result = this.eachRow(x, node, (at) =>
      this.builder.single(
        name,
        [at, xs.register, ys.register],
        ys.rows,
        this.origin(node),
        this.maskRegister()
      )
    );
    for (const operand of [x, xs, ys]) this.letGo(operand);
    return result;
  }

  /** An operation on a single value, for every row where it is given a column. */
  private eachRow(x: Operand, node: Expression, one: (register: number) => Operand): Operand {
    if (x.rows === null) return one(x.register);
    const column = this.builder.space.take(x.rows);
    for (let row = 0; row < x.rows; row++) {
      const value = one(x.register + row);
      this.builder.append(
        'copy',
        column + row,
        value.register,
        -1,
        -1,
        null,
        this.origin(node),
        this.maskRegister()
      );
      this.builder.release(value);
    }
    return { register: column, rows: x.rows, kind: 'temporary', value: NaN };
  }

  private ownCall(node: Expression & { kind: 'call' }, own: FunctionBody): Operand {
    const args = node.args.map((arg) => this.held(this.expression(arg)));
    const parameters = new Map<string, Operand>();
    for (const [i, name] of own.parameters.entries()) {
      const [arg, argNode] = [args[i], node.args[i]];
      if (!arg || !argNode) continue;
      this.guard(arg, argNode);
      parameters.set(name, arg.kind === 'constant' ? arg : { ...arg, value: NaN });
    }
    // A function sees the names of the sheet and its parameters, not those of its caller.
    const [outer, wasInFunction] = [this.locals, this.isInFunction];
    this.locals = [];
    this.isInFunction = true;
    const value = this.withLocals(parameters, () => this.lower(own.tree, own.cut));
    this.locals = outer;
    this.isInFunction = wasInFunction;
    const isArgument = args.some((arg) => arg.register === value.register);
    const result = isArgument ? this.emit('copy', [value], node) : value;
    for (const arg of args) this.letGo(arg);
    return result;
  }

  private integral(node: Expression & { kind: 'call' }): Operand {
    const [integrand, variable, low, high] = node.args;
    if (!integrand || variable?.kind !== 'name' || !low || !high) {
      throw new RangeError('integrate takes an expression, a name and two bounds');
    }
    const from = this.held(this.expression(low));
    const to = this.expression(high);
    const called = this.nest(variable.name, (inner) => inner.lower(integrand, this.cut));
    const result = this.callNested('integrate', from, to, called, node);
    this.letGo(from);
    this.builder.release(to);
    return result;
  }

  /** Appends the call of a nested program. */
  callNested(
    name: 'integrate' | 'solve',
    low: Operand,
    high: Operand,
    called: NestedProgram,
    node: Expression
  ): Operand {
    // prettier-ignore
    this.builder.nested.push(called);
    const number = this.builder.nested.length - 1;
    return this.builder.single(
      name,
      [low.register, high.register, number],
      null,
      this.origin(node),
      this.maskRegister()
    );
  }

  /** A program of its own with one variable; whatever else it reads is copied in from here. */
  nest(
    variable: string,
    body: (inner: Lowering) => Operand,
    kind: 'bound' | 'unknown' = 'bound'
  ): NestedProgram {
    // prettier-ignore
    const space = new RegisterSpace();
    const builder = new Builder(space, this.builder.budget);
    const captures: (readonly [number, number, number])[] = [];
    const captured = new Map<number, Operand>();
    const capture = (operand: Operand): Operand => {
      if (operand.kind === 'constant') return builder.constant(operand.value);
      const known = captured.get(operand.register);
      if (known) return known;
      const copy: Operand = { ...operand, register: space.keep(operand.rows), kind: 'definition' };
      captures.push([operand.register, copy.register, operand.rows ?? 1]);
      captured.set(operand.register, copy);
      return copy;
    };
    const own: Operand = { register: space.keep(null), rows: null, kind: 'definition', value: NaN };
    const inner = new Lowering(
      builder,
      {
        operandOf: (name, sheetOnly) => capture(this.operandOf(name, sheetOnly)),
        functionOf: (name) => this.scope.functionOf(name),
        isTable: () => false
      },
      this.cut
    );
    if (kind === 'unknown') inner.overrides.set(variable, own);
    const locals = kind === 'bound' ? new Map([[variable, own]]) : new Map<string, Operand>();
    const result = inner.withLocals(locals, () => body(inner));
    return {
      program: builder.program(),
      variable: own.register,
      result: result.register,
      captures
    };
  }

  /** A value that stays in its register until it is let go. */
  private held(operand: Operand): Operand {
    return operand.kind === 'temporary'
      ? { ...operand, kind: 'definition', value: heldMark }
      : operand;
  }

  private letGo(operand: Operand): void {
    if (operand.kind === 'definition' && operand.value === heldMark) {
      this.builder.release({ ...operand, kind: 'temporary' });
    }
  }

  /** Computes a part that counts only where a condition is true. */
  private under<T>(condition: Operand, node: Expression, work: () => T): T {
    const outer = this.mask;
    const both =
      outer && outer.rows === condition.rows
        ? this.held(this.emit('and', [outer, condition], node))
        : condition;
    this.mask = both;
    const value = work();
    this.mask = outer;
    if (both !== condition) this.letGo(both);
    return value;
  }

  /** Before an operation that would swallow it: a value that may not be finite is checked. */
  private guard(operand: Operand, node: Expression, always = false): void {
    if (operand.kind === 'constant') return;
    const isOfSheet = operand.kind === 'definition' && operand.value !== heldMark;
    if (isOfSheet && !always) return; // finite, or not a number, which every arithmetic keeps
    const byRow = this.mask !== null && this.mask.rows !== null && this.mask.rows === operand.rows;
    const mask = byRow && this.mask ? this.mask.register : this.maskRegister();
    this.builder.check(operand, this.origin(node), mask, byRow);
  }

  private emit(name: OperationName, operands: readonly Operand[], node: Expression): Operand {
    return this.builder.element(name, operands, this.origin(node), this.maskRegister());
  }

  private maskRegister(): number {
    return this.mask && this.mask.rows === null && this.mask.kind !== 'constant'
      ? this.mask.register
      : -1;
  }

  private origin(node: Expression): Origin {
    return { node, cut: this.cut };
  }
}

/** Marks a temporary that is held; real definitions have no value of their own here. */
const heldMark = -1;

const arithmeticOperations = {
  '+': 'add', '-': 'subtract', '*': 'multiply', '/': 'divide', '^': 'power'
} as const; // prettier-ignore

const relationOperations: Record<RelationOperator, { name: OperationName; swap: boolean }> = {
  '<': { name: 'less', swap: false },
  '<=': { name: 'lessOrEqual', swap: false },
  '>': { name: 'less', swap: true },
  '>=': { name: 'lessOrEqual', swap: true },
  '==': { name: 'equal', swap: false },
  '!=': { name: 'unequal', swap: false }
};

const plainFunctions: Readonly<Record<string, OperationName | undefined>> = {
  sqrt: 'sqrt', cbrt: 'cbrt', abs: 'abs', exp: 'exp', ln: 'ln', log10: 'log10', log2: 'log2',
  sin: 'sin', cos: 'cos', tan: 'tan', asin: 'asin', acos: 'acos', atan: 'atan', atan2: 'atan2',
  sinh: 'sinh', cosh: 'cosh', tanh: 'tanh', asinh: 'asinh', acosh: 'acosh', atanh: 'atanh',
  min: 'min', max: 'max', hypot: 'hypot', floor: 'floor', ceil: 'ceil', round: 'round',
  mod: 'modulo', sign: 'sign'
}; // prettier-ignore

/** Functions of any number of arguments, taken two by two. */
const foldable: ReadonlySet<string> = new Set(['min', 'max', 'hypot']);

/** Functions that give a finite value even where an argument is not. */
const swallows: ReadonlySet<string> = new Set([
  'exp', 'tanh', 'atan', 'atan2', 'min', 'max', 'sign', 'hypot', 'mod'
]); // prettier-ignore

const columnStatistics: Readonly<Record<string, OperationName | undefined>> = {
  sum: 'sum', mean: 'mean', sd: 'standardDeviation', min: 'minimum', max: 'maximum',
  count: 'count', first: 'first', last: 'last'
}; // prettier-ignore

const interpolations: Readonly<Record<string, OperationName | undefined>> = {
  interp: 'interpolate', interp_hold: 'interpolateHeld', interp_spline: 'interpolateSpline'
}; // prettier-ignore
