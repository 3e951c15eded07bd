// The instruction set of the lanes. A program is a flat run of instructions over registers; a register
// holds one SI float per lane, a column register `rows` of them one after another. Each instruction is
// six integers: [operation, destination, a, b, c, rows]. The same instructions are meant to be written
// out as a WebAssembly kernel, so each does one thing that both can do to the last bit.

/** Integers an instruction takes in the code. */
export const instructionSize = 6;

/**
 * Operations by name. `column` ones read a, b as columns of `rows` rows and give a single value; the
 * rest work element by element (destination and operands have the same rows).
 */
export const operations = {
  /** dst = a */
  copy: 0,
  /** every row of dst = a (a single value) */
  spread: 1,
  add: 2,
  subtract: 3,
  multiply: 4,
  divide: 5,
  negate: 6,
  /** dst = a^b, b an integer held in the instruction, as products (see `integerPower`) */
  integerPower: 7,
  power: 8,
  sqrt: 9,
  cbrt: 10,
  exp: 11,
  ln: 12,
  log10: 13,
  log2: 14,
  sin: 15,
  cos: 16,
  tan: 17,
  asin: 18,
  acos: 19,
  atan: 20,
  atan2: 21,
  sinh: 22,
  cosh: 23,
  tanh: 24,
  asinh: 25,
  acosh: 26,
  atanh: 27,
  min: 28,
  max: 29,
  abs: 30,
  sign: 31,
  floor: 32,
  ceil: 33,
  round: 34,
  /** a - b floor(a/b) */
  modulo: 35,
  hypot: 36,
  /** 1 where true, 0 where false */
  less: 37,
  lessOrEqual: 38,
  equal: 39,
  unequal: 40,
  and: 41,
  or: 42,
  not: 43,
  /** dst = a where c is true, else b */
  select: 44,
  /** Marks lanes bad where a is not finite and mask b (-1: everywhere; c = 1: row by row) is true. */
  check: 45,
  /** dst = a, but not a number where a < 0 (a temperature below 0 K) */
  notNegative: 46,
  sum: 47,
  mean: 48,
  standardDeviation: 49,
  minimum: 50,
  maximum: 51,
  /** number of measured rows */
  count: 52,
  /** dst = the row of a that the single value b numbers from 0 */
  pick: 53,
  /** dst = number of the row with the least score b among those where a is true; not a number if none */
  choose: 54,
  /** dst = the ordinates c over the abscissae b at the single value a, linear; outside not a number */
  interpolate: 55,
  /** the same, end values held */
  interpolateHeld: 56,
  /** the same, natural cubic spline */
  interpolateSpline: 57,
  /** slope of 55, 56 and 57 */
  slope: 58,
  slopeHeld: 59,
  slopeSpline: 60,
  /** dst = integral of nested program c from a to b */
  integrate: 61,
  /** dst = lowest root of nested program c between a and b */
  solve: 62,
  /** End of definition b: dst is its value; not a number in lanes that are bad, whose status is kept. */
  end: 63,
  /** dst = nested program c at the single value a */
  call: 64,
  /** first and last measured row of a */
  first: 65,
  last: 66
} as const;

export type OperationName = keyof typeof operations;

/** Name of an operation, for messages and tests. */
export const operationNames: readonly OperationName[] = Object.keys(operations) as OperationName[];

/** Largest exponent that is written out as products; beyond it `power` is used. */
export const largestIntegerPower = 64;

/** x^n by repeated squaring; the order of products is part of the contract with the kernel. */
export function integerPower(x: number, n: number): number {
  let left = Math.abs(n);
  let square = x;
  let result = 1;
  let isFirst = true;
  while (left > 0) {
    if (left & 1) {
      result = isFirst ? square : result * square;
      isFirst = false;
    }
    left >>= 1;
    if (left > 0) square *= square;
  }
  return n < 0 ? 1 / result : result;
}

/** Half away from zero, as in hand calculation. */
export function roundHalfAway(x: number): number {
  return x < 0 ? -Math.round(-x) : Math.round(x);
}

/** a - b floor(a/b): the sign of b. */
export const modulo = (a: number, b: number): number => a - b * Math.floor(a / b);

const unary: Partial<Record<OperationName, (a: number) => number>> = {
  copy: (a) => a,
  negate: (a) => -a,
  sqrt: Math.sqrt,
  cbrt: Math.cbrt,
  exp: Math.exp,
  ln: Math.log,
  log10: Math.log10,
  log2: Math.log2,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  sinh: Math.sinh,
  cosh: Math.cosh,
  tanh: Math.tanh,
  asinh: Math.asinh,
  acosh: Math.acosh,
  atanh: Math.atanh,
  abs: Math.abs,
  sign: Math.sign,
  floor: Math.floor,
  ceil: Math.ceil,
  round: roundHalfAway,
  not: (a) => (a === 0 ? 1 : 0)
};

const binary: Partial<Record<OperationName, (a: number, b: number) => number>> = {
  add: (a, b) => a + b,
  subtract: (a, b) => a - b,
  multiply: (a, b) => a * b,
  divide: (a, b) => a / b,
  integerPower,
  power: Math.pow,
  atan2: Math.atan2,
  min: Math.min,
  max: Math.max,
  modulo,
  hypot: Math.hypot,
  less: (a, b) => (a < b ? 1 : 0),
  lessOrEqual: (a, b) => (a <= b ? 1 : 0),
  equal: (a, b) => (a === b ? 1 : 0),
  unequal: (a, b) => (a !== b ? 1 : 0),
  and: (a, b) => (a !== 0 && b !== 0 ? 1 : 0),
  or: (a, b) => (a !== 0 || b !== 0 ? 1 : 0)
};

/** One element-wise operation on single floats, as the interpreter computes it; null for the others. */
export function evaluateOnce(name: OperationName, a: number, b: number): number | null {
  return unary[name]?.(a) ?? binary[name]?.(a, b) ?? null;
}
