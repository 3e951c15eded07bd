// Random expressions, each in two spellings: as a worksheet writes it and as mathjs reads the same.
// They differ only where the languages do on purpose: a quantity is one atom here and stands in
// brackets there, and ln is called log there. Trees are grown with a dimension in mind, so that most
// have one; now and then a branch is grown for another, which both must refuse.

import type { Random } from './random.ts';

export interface Spelling {
  readonly ours: string;
  readonly mathjs: string;
  /** 5 atom, 4 quantity, 3 power, 2 product, 1 sum: what an operator needs brackets around. */
  readonly strength: number;
}

/** Exponents of length, mass, time. */
type Dimension = readonly [number, number, number];

const plain: Dimension = [0, 0, 0];

/** Units that both know with the same factor. */
const unitsOf: readonly (readonly [Dimension, readonly string[]])[] = [
  [
    [1, 0, 0],
    ['m', 'mm', 'cm', 'km', 'in', 'ft']
  ],
  [
    [0, 1, 0],
    ['kg', 'g']
  ],
  [
    [0, 0, 1],
    ['s', 'ms']
  ],
  [
    [1, 0, -1],
    ['m/s', 'km/s', 'mm/s']
  ],
  [
    [2, 0, 0],
    ['m^2', 'mm^2', 'in^2']
  ],
  [
    [3, 0, 0],
    ['m^3', 'cm^3', 'ft^3']
  ],
  [
    [1, 1, -2],
    ['N', 'kN', 'mN']
  ],
  [
    [-1, 1, -2],
    ['Pa', 'kPa', 'MPa', 'N/mm^2']
  ],
  [
    [2, 1, -2],
    ['J', 'kJ', 'N m']
  ],
  [
    [2, 1, -3],
    ['W', 'kW']
  ],
  [
    [-3, 1, 0],
    ['kg/m^3', 'g/cm^3']
  ],
  [[1, 0, -2], ['m/s^2']]
];

const same = (a: Dimension, b: Dimension): boolean => a.every((x, i) => x === b[i]);
const less = (a: Dimension, b: Dimension): Dimension => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Dimension, n: number): Dimension => [a[0] * n, a[1] * n, a[2] * n];

/** A number as people write it: few digits, now and then an exponent. */
function literal(random: Random): string {
  const size = random.below(6);
  if (size === 0) return String(1 + random.below(12));
  if (size === 1) return `${random.between(1, 10).toFixed(3)}e${random.below(7) - 3}`;
  if (size === 2) return `.${1 + random.below(999)}`;
  return random.between(0.05, 60).toFixed(1 + random.below(3));
}

function atom(text: string, mathjs = text): Spelling {
  return { ours: text, mathjs, strength: 5 };
}

function bracketed(inner: Spelling, least: number): Spelling {
  if (inner.strength >= least) return inner;
  return atom(`(${inner.ours})`, `(${inner.mathjs})`);
}

function binary(op: string, left: Spelling, right: Spelling): Spelling {
  const strength = op === '+' || op === '-' ? 1 : 2;
  const [a, b] = [bracketed(left, strength), bracketed(right, strength + 1)];
  return {
    ours: `${a.ours} ${op} ${b.ours}`,
    mathjs: `${a.mathjs} ${op} ${b.mathjs}`,
    strength
  };
}

function power(base: Spelling, exponent: Spelling): Spelling {
  const [a, b] = [bracketed(base, 5), bracketed(exponent, 5)];
  return { ours: `${a.ours}^${b.ours}`, mathjs: `${a.mathjs}^${b.mathjs}`, strength: 3 };
}

function call(name: string, ...args: Spelling[]): Spelling {
  const mathjs = name === 'ln' ? 'log' : name;
  return atom(
    `${name}(${args.map((arg) => arg.ours).join(', ')})`,
    `${mathjs}(${args.map((arg) => arg.mathjs).join(', ')})`
  );
}

const ofOne = [
  'sqrt', 'cbrt', 'abs', 'exp', 'ln', 'log10', 'log2', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan',
  'sinh', 'cosh', 'tanh', 'asinh', 'acosh', 'atanh', 'floor', 'ceil', 'round', 'sign'
]; // prettier-ignore
const ofTwo = ['min', 'max', 'hypot', 'mod', 'atan2'];

/** An expression of plain numbers. */
export function plainExpression(random: Random, depth: number): Spelling {
  if (depth === 0 || random.chance(0.1)) {
    return random.chance(0.1) ? atom('pi') : atom(literal(random));
  }
  const part = (): Spelling =>
    plainExpression(random, depth - 1 - random.below(2 - (depth < 2 ? 1 : 0)));
  const kind = random.below(12);
  if (kind < 6) return binary(random.pick(['+', '-', '*', '/']), part(), part());
  if (kind === 6)
    return power(part(), atom(random.pick(['2', '3', '0.5', '-1', '-2', '7', '1.5'])));
  if (kind === 7) return power(part(), part());
  if (kind === 8) return call(random.pick(ofTwo), part(), part());
  if (kind === 9) {
    const inner = bracketed(part(), 3);
    return { ours: `-${inner.ours}`, mathjs: `-${inner.mathjs}`, strength: 2 };
  }
  return call(random.pick(ofOne), part());
}

/** A quantity of a dimension, by a unit of its own or by base units. */
function quantity(random: Random, of: Dimension): Spelling {
  const number = literal(random);
  if (same(of, plain)) return atom(number);
  const known = unitsOf.find(([dimension]) => same(dimension, of));
  const unit = known ? random.pick(known[1]) : baseUnits(random, of);
  return { ours: `${number} ${unit}`, mathjs: `(${number} ${unit})`, strength: 4 };
}

function baseUnits(random: Random, of: Dimension): string {
  const names = [
    random.pick(['m', 'mm', 'ft']),
    random.pick(['kg', 'g']),
    random.pick(['s', 'ms'])
  ];
  return of.flatMap((n, i) => (n === 0 ? [] : n === 1 ? names[i] : `${names[i]}^${n}`)).join(' ');
}

const factorDimensions: readonly Dimension[] = [plain, ...unitsOf.map(([dimension]) => dimension)];

/** An expression of quantities; about one in thirty of its sums adds what cannot be added. */
export function unitExpression(
  random: Random,
  depth: number,
  of: Dimension = random.pick(factorDimensions)
): Spelling {
  if (depth === 0 || random.chance(0.1)) return quantity(random, of);
  const next = depth - 1;
  switch (random.below(10)) {
    case 0:
    case 1: {
      const other = random.chance(1 / 30) ? random.pick(factorDimensions) : of;
      const [a, b] = [unitExpression(random, next, of), unitExpression(random, next, other)];
      return binary(random.pick(['+', '-']), a, b);
    }
    case 2:
    case 3: {
      const factor = random.pick(factorDimensions);
      const rest = less(of, factor);
      return binary('*', unitExpression(random, next, factor), unitExpression(random, next, rest));
    }
    case 4:
    case 5: {
      const divisor = random.pick(factorDimensions);
      const top = less(of, times(divisor, -1));
      return binary('/', unitExpression(random, next, top), unitExpression(random, next, divisor));
    }
    case 6: {
      if (of.every((n) => n % 2 === 0)) {
        return power(unitExpression(random, next, times(of, 1 / 2)), atom('2'));
      }
      return call('sqrt', unitExpression(random, next, times(of, 2)));
    }
    case 7: {
      if (of.every((n) => n % 3 === 0)) {
        return power(unitExpression(random, next, times(of, 1 / 3)), atom('3'));
      }
      return power(unitExpression(random, next, times(of, 2)), atom('0.5'));
    }
    case 8:
      return call(
        random.pick(['min', 'max']),
        unitExpression(random, next, of),
        unitExpression(random, next, of)
      );
    default:
      if (same(of, plain)) {
        const inner = unitExpression(random, next, plain);
        return call(random.pick(['sin', 'cos', 'exp', 'ln', 'tanh', 'sqrt']), inner);
      }
      return call('abs', unitExpression(random, next, of));
  }
}
