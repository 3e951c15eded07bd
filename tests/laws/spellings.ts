/**
 * Random expressions for laws: each as a worksheet would write it and as mathjs reads the same thing,
 * made side by side from one tree. The worksheet's text uses the signs of print, raised powers,
 * products without sign and spacing at random; the text for mathjs is spelled out and bracketed, so
 * that only the meaning is compared. Forms in which the two differ on purpose do not occur.
 */
import fc from 'fast-check';

export interface ExpressionPair {
  readonly ours: string;
  readonly mathjs: string;
}

interface Part extends ExpressionPair {
  readonly binds: Binding;
}

/** Loosest first: choice, sum, product, sign, power, value. */
type Binding = 0 | 1 | 2 | 3 | 4 | 5;
const [choice, sum, product, sign, power, value] = [0, 1, 2, 3, 4, 5] as const;

/** In brackets where it binds less than asked. */
function at(part: Part, least: Binding): ExpressionPair {
  if (part.binds >= least) return part;
  return { ours: `(${part.ours})`, mathjs: `(${part.mathjs})` };
}

const number: fc.Arbitrary<string> = fc.oneof(
  fc.integer({ min: 1, max: 99 }).map(String),
  fc.integer({ min: 1, max: 999 }).map((n) => (n / 10).toFixed(1)),
  fc.integer({ min: 1, max: 999 }).map((n) => (n / 1000).toFixed(3)),
  fc.tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: -4, max: 4 })).map(([n, e]) => `${n / 10}e${e}`),
  fc.integer({ min: 1, max: 99 }).map((n) => `.${n}`)
); // prettier-ignore

const space = fc.constantFrom('', ' ');

function spaced(operator: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc.tuple(space, operator).map(([gap, text]) => gap + text + gap);
}

const plus = spaced(fc.constant('+'));
const minus = spaced(fc.constantFrom('-', '−'));
const times = spaced(fc.constantFrom('*', '×', '·', '⋅'));
// Spaced, since a stroke between two whole numbers before a unit is a fraction of that unit.
const over = fc.constantFrom(' / ', ' ÷ ');

function joined(
  left: fc.Arbitrary<Part>,
  operator: fc.Arbitrary<string>,
  right: fc.Arbitrary<Part>,
  spelled: '+' | '-' | '*' | '/'
): fc.Arbitrary<Part> {
  const binds = spelled === '+' || spelled === '-' ? sum : product;
  const least: Binding =
    spelled === '+' ? sum : spelled === '/' ? power : binds === sum ? product : product;
  return fc.tuple(left, operator, right).map(([a, text, b]) => {
    const [first, second] = [at(a, binds), at(b, spelled === '+' ? product : least)];
    return {
      ours: first.ours + text + second.ours,
      mathjs: `${first.mathjs} ${spelled} ${at(b, value).mathjs}`,
      binds
    };
  });
}

/** Powers that are real for every base, or for bases above zero (`abs` is put round those). */
const wholePower: fc.Arbitrary<ExpressionPair> = fc.constantFrom(
  { ours: '^2', mathjs: '^2' },
  { ours: '²', mathjs: '^2' },
  { ours: '³', mathjs: '^3' },
  { ours: '^-1', mathjs: '^(-1)' },
  { ours: '^−2', mathjs: '^(-2)' },
  { ours: '^(1 + 2)', mathjs: '^3' },
  { ours: '^2^1', mathjs: '^2' }
);
const brokenPower: fc.Arbitrary<ExpressionPair> = fc.constantFrom(
  { ours: '^0.5', mathjs: '^0.5' },
  { ours: '^(1/2)', mathjs: '^(1/2)' },
  { ours: '^(2 / 3)', mathjs: '^(2/3)' },
  { ours: '^-1.5', mathjs: '^(-1.5)' }
);

function raised(base: fc.Arbitrary<Part>): fc.Arbitrary<Part> {
  const whole = fc.tuple(base, wholePower).map(([part, exponent]) => {
    const inner = at(part, value);
    return {
      ours: inner.ours + exponent.ours,
      mathjs: inner.mathjs + exponent.mathjs,
      binds: power
    };
  });
  const broken = fc.tuple(base, brokenPower).map(([part, exponent]) => ({
    ours: `abs(${part.ours})${exponent.ours}`,
    mathjs: `abs(${part.mathjs})${exponent.mathjs}`,
    binds: power
  }));
  return fc.oneof(whole, broken);
}

function called(
  ours: string,
  mathjs: string,
  args: readonly fc.Arbitrary<Part>[]
): fc.Arbitrary<Part> {
  return fc.tuple(...args).map((parts) => ({
    ours: `${ours}(${parts.map((part) => part.ours).join(', ')})`,
    mathjs: `${mathjs}(${parts.map((part) => part.mathjs).join(', ')})`,
    binds: value
  }));
}

function negated(operand: fc.Arbitrary<Part>): fc.Arbitrary<Part> {
  return fc.tuple(operand, fc.constantFrom('-', '−', '+')).map(([part, text]) => {
    const inner = at(part, sign);
    return {
      ours: text + inner.ours,
      mathjs: (text === '+' ? '+' : '-') + inner.mathjs,
      binds: sign
    };
  });
}

function chosen(yes: fc.Arbitrary<Part>, no: fc.Arbitrary<Part>): fc.Arbitrary<Part> {
  const relation = fc.constantFrom('<', '<=', '>', '>=', '==', '!=');
  return fc.tuple(number, relation, number, yes, no).map(([a, operator, b, first, second]) => {
    const signs: Readonly<Record<string, string>> = { '<=': '≤', '>=': '≥', '!=': '≠' };
    return {
      ours: `${a} ${signs[operator] ?? operator} ${b} ? ${first.ours} : ${second.ours}`,
      mathjs: `${a} ${operator} ${b} ? (${first.mathjs}) : (${second.mathjs})`,
      binds: choice
    };
  });
}

/** name here, name in mathjs, number of arguments. No `mod`: one digit in the last place can turn it. */
const functions: readonly (readonly [string, string, number])[] = [
  ['sqrt', 'sqrt', 1], ['cbrt', 'cbrt', 1], ['abs', 'abs', 1], ['exp', 'exp', 1], ['ln', 'log', 1],
  ['log10', 'log10', 1], ['log2', 'log2', 1], ['sin', 'sin', 1], ['cos', 'cos', 1], ['tan', 'tan', 1],
  ['asin', 'asin', 1], ['acos', 'acos', 1], ['atan', 'atan', 1], ['atan2', 'atan2', 2],
  ['sinh', 'sinh', 1], ['cosh', 'cosh', 1], ['tanh', 'tanh', 1], ['asinh', 'asinh', 1],
  ['acosh', 'acosh', 1], ['atanh', 'atanh', 1], ['min', 'min', 2], ['max', 'max', 3],
  ['hypot', 'hypot', 2], ['floor', 'floor', 1], ['ceil', 'ceil', 1], ['sign', 'sign', 1]
]; // prettier-ignore

/** Expressions with plain numbers. mathjs is to be run with `predictable`, which keeps it real. */
export function plainExpression(): fc.Arbitrary<ExpressionPair> {
  const literal: fc.Arbitrary<Part> = fc.oneof(
    { weight: 6, arbitrary: number.map((text) => ({ ours: text, mathjs: text, binds: value })) },
    { weight: 1, arbitrary: fc.constantFrom('pi', 'π').map((text) => ({ ours: text, mathjs: 'pi', binds: value })) },
    { weight: 1, arbitrary: number.map((text) => ({ ours: `${text} %`, mathjs: `(${text}/100)`, binds: sign })) }
  ); // prettier-ignore
  const { tree } = fc.letrec<{ tree: Part }>((tie) => {
    const part = tie('tree');
    const unsaid = fc.tuple(number, part, fc.boolean()).map(([text, inner, isPi]) => ({
      ours: isPi ? `${text} pi` : `${text}(${inner.ours})`,
      mathjs: isPi ? `${text} * pi` : `${text} * (${inner.mathjs})`,
      binds: product
    }));
    return {
      tree: fc.oneof(
        { maxDepth: 5, depthSize: 'small' },
        literal,
        joined(part, plus, part, '+'),
        joined(part, minus, part, '-'),
        joined(part, times, part, '*'),
        joined(part, over, part, '/'),
        raised(part),
        negated(part),
        unsaid,
        chosen(part, part),
        fc.constantFrom(...functions).chain(([ours, mathjs, count]) =>
          called(
            ours,
            mathjs,
            Array.from({ length: count }, () => part)
          )
        )
      )
    };
  });
  return tree.map(({ ours, mathjs }) => ({ ours, mathjs }));
}

export interface UnitExpressionPair extends ExpressionPair {
  /** False where a sum or comparison in it joins two dimensions: both sides must refuse it. */
  readonly matches: boolean;
}

/** Units that mathjs has to the last digit, by dimension: the text here and the text for mathjs. */
const unitsOf = {
  length: [['m', 'm'], ['mm', 'mm'], ['km', 'km'], ['in', 'inch'], ['ft', 'ft']],
  time: [['s', 's'], ['ms', 'ms'], ['min', 'minute'], ['h', 'hour']],
  mass: [['kg', 'kg'], ['g', 'g']],
  speed: [['m/s', 'm/s'], ['km/h', 'km/hour'], ['ft/s', 'ft/s']],
  force: [['N', 'N'], ['kN', 'kN'], ['kg m/s^2', 'kg m/s^2']],
  energy: [['J', 'J'], ['N m', 'N m'], ['kW h', 'kW hour'], ['kN·mm', 'kN mm']],
  power: [['W', 'W'], ['kW', 'kW'], ['J/s', 'J/s']],
  pressure: [['Pa', 'Pa'], ['MPa', 'MPa'], ['bar', 'bar'], ['N/mm²', 'N/mm^2']],
  current: [['A', 'A'], ['mA', 'mA']],
  density: [['kg/m^3', 'kg/m^3'], ['g/cm³', 'g/cm^3']]
} as const; // prettier-ignore
type DimensionName = keyof typeof unitsOf | 'plain';

/** Products and quotients that give a dimension; none is plain, since mathjs adds no number to A/mA. */
const relations: readonly (readonly [DimensionName, DimensionName, '*' | '/', DimensionName])[] = [
  ['length', 'speed', '*', 'time'],
  ['length', 'energy', '/', 'force'],
  ['time', 'length', '/', 'speed'],
  ['speed', 'length', '/', 'time'],
  ['speed', 'power', '/', 'force'],
  ['force', 'energy', '/', 'length'],
  ['force', 'power', '/', 'speed'],
  ['energy', 'force', '*', 'length'],
  ['energy', 'power', '*', 'time'],
  ['power', 'energy', '/', 'time'],
  ['power', 'force', '*', 'speed'],
  ['mass', 'mass', '*', 'plain']
];

/**
 * Expressions with units, of one dimension each; in one of ten a sum of two dimensions is put in.
 * mathjs holds the value of a quantity in SI (`unit.value`); angle and temperature do not occur.
 */
export function unitExpression(): fc.Arbitrary<UnitExpressionPair> {
  const names = Object.keys(unitsOf) as (keyof typeof unitsOf)[];
  const trees = fc.letrec<Record<DimensionName, Part>>((tie) => {
    const entries = [...names, 'plain' as const].map((name) => [name, partOf(name, tie)] as const);
    return Object.fromEntries(entries) as Record<DimensionName, fc.Arbitrary<Part>>;
  });
  const all = fc.constantFrom(...names, 'plain' as const);
  const matched = all.chain((name) => trees[name]).map((part) => ({ ...part, matches: true }));
  const mixed = fc
    .tuple(all, all)
    .filter(([a, b]) => a !== b)
    .chain(([a, b]) => fc.tuple(trees[a], trees[b], fc.constantFrom('+', '-')))
    .map(([a, b, operator]) => ({
      ours: `${at(a, sum).ours} ${operator} ${at(b, product).ours}`,
      mathjs: `(${a.mathjs}) ${operator} (${b.mathjs})`,
      matches: false
    }));
  return fc
    .oneof({ weight: 9, arbitrary: matched }, { weight: 1, arbitrary: mixed })
    .map(({ ours, mathjs, matches }) => ({ ours, mathjs, matches }));
}

function quantity(name: DimensionName): fc.Arbitrary<Part> {
  if (name === 'plain') return number.map((text) => ({ ours: text, mathjs: text, binds: value }));
  const units: readonly (readonly [string, string])[] = unitsOf[name];
  return fc
    .tuple(number, fc.constantFrom(...units), fc.constantFrom(' ', ''))
    .filter(([text, [ours], gap]) => gap === ' ' || !/e/.test(text + ours))
    .map(([text, [ours, mathjs], gap]) => ({
      ours: text + gap + ours,
      mathjs: `(${text} ${mathjs})`,
      binds: sign
    }));
}

function partOf(
  name: DimensionName,
  tie: (key: DimensionName) => fc.Arbitrary<Part>
): fc.Arbitrary<Part> {
  const [same, plain] = [tie(name), tie('plain')];
  const from = relations.filter(([result]) => result === name);
  const products = from.map(([, left, operator, right]) =>
    joined(tie(left), operator === '*' ? times : over, tie(right), operator)
  );
  const squares = name === 'plain' ? [] : [rootOfSquare(same)];
  return fc.oneof(
    { maxDepth: 3, depthSize: 'small' },
    quantity(name),
    joined(same, plus, same, '+'),
    joined(same, minus, same, '-'),
    joined(plain, times, same, '*'),
    joined(same, over, number.map((text) => ({ ours: text, mathjs: text, binds: value })), '/'),
    negated(same),
    chosen(same, same),
    called('abs', 'abs', [same]),
    called('max', 'max', [same, same]),
    ...products,
    ...squares
  ); // prettier-ignore
}

function rootOfSquare(part: fc.Arbitrary<Part>): fc.Arbitrary<Part> {
  return part.map((inner) => ({
    ours: `sqrt(${at(inner, value).ours}²)`,
    mathjs: `sqrt((${inner.mathjs})^2)`,
    binds: value
  }));
}
