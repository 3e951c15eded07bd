// The dimension rule of every built-in function, one row each: what it takes, what it gives. What a
// function computes stands in the lanes; how many arguments it has, in the language's own table.

import { nodeSpan, type Expression } from '#lib/language/index.ts';
import {
  angleWords,
  problem,
  temperatureWords,
  unitWords,
  type Wording
} from '#lib/problem/index.ts';
import {
  baseDimension, dropAngle, multiplyDimensions, plain, rational, type Unit
} from '#lib/units/index.ts'; // prettier-ignore
import type { ExpressionCheck } from './expression.ts';
import { commonTemperature, raised } from './quantity.ts';
import { plainNumber, quantityOf, type QuantityType, type Type } from './type.ts';

type Call = Expression & { readonly kind: 'call' };
type Rule = (check: ExpressionCheck, call: Call) => Type | null;

/** The type of a call of a built-in function; null where an argument has a mistake. */
export function checkCall(check: ExpressionCheck, call: Call): Type | null {
  const rule = rules.get(call.callee);
  return rule ? rule(check, call) : null; // an unknown callee was reported by the parser
}

/** Functions whose rule is known, for the test that holds this table to the language's. */
export const checkedFunctions = (): readonly string[] => [...rules.keys()];

const plainToPlain: Rule = (check, call) => {
  const arg = onlyArgument(check, call);
  if (!arg) return null;
  if (dropAngle(arg.type.dimension) === plain)
    return { ...plainNumber, rows: arg.type.rows, literal: arg.type.literal };
  return refuse(
    check,
    arg.node,
    unitWords.needsPlain(call.callee, check.describe(arg.node, arg.type))
  );
};

const root =
  (den: number): Rule =>
  (check, call) => {
    const arg = onlyArgument(check, call);
    return arg && raised(arg.type, rational(1, den));
  };

const sameAsArgument: Rule = (check, call) => {
  const arg = onlyArgument(check, call);
  if (!arg || isPoint(check, call, arg.node, arg.type)) return null;
  return { ...arg.type, piPower: 0 };
};

const trigonometric: Rule = (check, call) => {
  const arg = onlyArgument(check, call);
  if (!arg) return null;
  if (dropAngle(arg.type.dimension) !== plain) {
    return refuse(
      check,
      arg.node,
      unitWords.needsAngle(call.callee, check.describe(arg.node, arg.type))
    );
  }
  if (arg.node.kind === 'number' && Math.abs(arg.node.value) > 2 * Math.PI) {
    const words = angleWords.largeNumberAsAngle(check.text(call), arg.node.text);
    check.problems.push(
      problem('angle/large-number', nodeSpan(check.cut, arg.node), words, { severity: 'note' })
    );
  }
  return { ...plainNumber, rows: arg.type.rows };
};

const inverseTrigonometric: Rule = (check, call) => {
  const result = plainToPlain(check, call);
  return result?.kind === 'quantity' ? { ...quantityOf(radian), rows: result.rows } : null;
};

const sameKind =
  (give: (both: QuantityType) => QuantityType, takesPoints = true): Rule =>
  (check, call) => {
    const both = sameArguments(check, call, call.args);
    if (!both || (!takesPoints && isPoint(check, call, call, both))) return null;
    return give(both);
  };

/** floor, ceil, round of a quantity need a step to round to: `round(x, 1 mm)`. */
const rounding: Rule = (check, call) => {
  const [first, step] = call.args;
  if (!first) return null;
  const type = check.quantity(first);
  if (!type || isPoint(check, call, first, type)) return null;
  if (step) {
    const stepType = check.quantity(step);
    return (
      stepType && check.pair(first, type, step, stepType, 'compared') && { ...type, piPower: 0 }
    );
  }
  if (dropAngle(type.dimension) === plain && !type.rev) return { ...plainNumber, rows: type.rows };
  return refuse(check, first, unitWords.needsStep(call.callee, check.describe(first, type)));
};

/** On one column the statistic over its rows; on several values the same over them, where that has a sense. */
const overColumn =
  (
    give: (column: QuantityType) => QuantityType,
    overValues: Rule | null,
    takesPoints = true
  ): Rule =>
  (check, call) => {
    const [first] = call.args;
    if (call.args.length > 1 && overValues) return overValues(check, call);
    const type = first && check.quantity(first);
    if (!first || !type) return null;
    if (type.rows === null) {
      return refuse(check, first, unitWords.needsColumn(call.callee, check.text(first)));
    }
    if (!takesPoints && isPoint(check, call, first, type)) return null;
    return give({ ...type, rows: null, piPower: 0, literal: false });
  };

const keepKind = (type: QuantityType): QuantityType => type;
const spread = (type: QuantityType): QuantityType =>
  type.temperature ? { ...type, temperature: 'difference', unit: intervalUnit(type.unit) } : type;

/** interp(x, xs, ys): x of the kind of xs, the result of the kind of ys. */
const interpolation: Rule = (check, call) => {
  const [x, xs, ys] = call.args;
  if (!x || !xs || !ys) return null;
  const [at, abscissae, ordinates] = [check.quantity(x), check.quantity(xs), check.quantity(ys)];
  if (!at || !abscissae || !ordinates) return null;
  for (const [node, type] of [
    [xs, abscissae],
    [ys, ordinates]
  ] as const) {
    if (type.rows === null)
      return refuse(check, node, unitWords.needsColumn(call.callee, check.text(node)));
  }
  if (check.commonRows(xs, abscissae, ys, ordinates) === undefined) return null;
  const single = { ...abscissae, rows: null };
  if (!check.pair(x, { ...at, rows: null }, xs, single, 'compared')) return null;
  return { ...ordinates, rows: at.rows, piPower: 0, literal: false };
};

/** integrate(expression, x, low, high): the variable is of the kind of the bounds. */
const integral: Rule = (check, call) => {
  const [integrand, variable, low, high] = call.args;
  if (!integrand || variable?.kind !== 'name' || !low || !high) return null;
  const bounds = [low, high].filter((bound) => !isInfinite(bound));
  const types: QuantityType[] = [];
  for (const bound of bounds) {
    const type = check.quantity(bound);
    if (!type) return null;
    if (type.rows !== null)
      return refuse(check, bound, unitWords.needsSingle(call.callee, check.text(bound)));
    types.push(type);
  }
  let over: QuantityType = types[0] ?? plainNumber;
  const [first, second] = bounds;
  if (first && second && types[0] && types[1]) {
    const both = check.pair(first, types[0], second, types[1], 'compared');
    if (!both) return null;
    over = { ...both, temperature: types[0].temperature };
  }
  const bound = { ...over, rows: null, literal: false, literalZero: false, piPower: 0 };
  const before = check.problems.length;
  const inner = check.withBound(variable.name, bound, () => check.quantity(integrand));
  if (!inner) {
    // From 0 to infinity nothing says what the variable counts: it is a plain number until a bound has a unit.
    const last = check.problems[check.problems.length - 1];
    if (last && check.problems.length > before && types.every((type) => type.literalZero)) {
      const hint = `${variable.name} is a plain number here. Give a bound its unit, as in 0 s.`;
      check.problems[check.problems.length - 1] = { ...last, hint };
    }
    return null;
  }
  if (inner.rows !== null)
    return refuse(check, integrand, unitWords.needsSingle(call.callee, check.text(integrand)));
  return {
    ...plainNumber,
    dimension: multiplyDimensions(inner.dimension, over.dimension),
    rev: inner.rev || over.rev,
    hz: inner.hz || over.hz,
    rate: inner.rate || over.rate,
    length: inner.length ?? over.length,
    force: inner.force
  };
};

const radian = baseDimension('rad');
const asPlain = (both: QuantityType): QuantityType => ({ ...plainNumber, rows: both.rows });
const count = (): QuantityType => plainNumber;

const rules = new Map<string, Rule>([
  ['sqrt', root(2)],
  ['cbrt', root(3)],
  ['abs', sameAsArgument],
  ['sign', (check, call) => { const arg = sameAsArgument(check, call); return arg?.kind === 'quantity' ? asPlain(arg) : null; }],
  ...['exp', 'ln', 'log10', 'log2', 'sinh', 'cosh', 'tanh', 'asinh', 'acosh', 'atanh'].map(
    (name): [string, Rule] => [name, plainToPlain]
  ),
  ...['sin', 'cos', 'tan'].map((name): [string, Rule] => [name, trigonometric]),
  ...['asin', 'acos', 'atan'].map((name): [string, Rule] => [name, inverseTrigonometric]),
  ['atan2', sameKind((both) => ({ ...quantityOf(radian), rows: both.rows }))],
  ['hypot', sameKind(keepKind, false)],
  ['mod', sameKind(keepKind, false)],
  ['clamp', sameKind(keepKind)],
  ...['floor', 'ceil', 'round'].map((name): [string, Rule] => [name, rounding]),
  ['min', overColumn(keepKind, sameKind(keepKind))],
  ['max', overColumn(keepKind, sameKind(keepKind))],
  ['mean', overColumn(keepKind, null)],
  ['sum', overColumn(keepKind, null, false)],
  ['sd', overColumn(spread, null)],
  ['count', overColumn(count, null)],
  ['first', overColumn(keepKind, null)],
  ['last', overColumn(keepKind, null)],
  ...['interp', 'interp_hold', 'interp_spline'].map((name): [string, Rule] => [name, interpolation]),
  ['integrate', integral]
]); // prettier-ignore

/** `inf` or `-inf`, as a bound of integrate. */
export function isInfinite(node: Expression): boolean {
  if (node.kind === 'sign') return isInfinite(node.operand);
  if (node.kind === 'group') return isInfinite(node.inner);
  return node.kind === 'name' && node.name === 'inf';
}

function onlyArgument(
  check: ExpressionCheck,
  call: Call
): { readonly node: Expression; readonly type: QuantityType } | null {
  // prettier-ignore
  const [node] = call.args;
  const type = node && check.quantity(node);
  return node && type ? { node, type } : null;
}

/** All arguments of one kind; temperatures keep theirs. */
function sameArguments(
  check: ExpressionCheck,
  call: Call,
  args: readonly Expression[]
): QuantityType | null {
  // prettier-ignore
  let first: Expression | null = null;
  let all: QuantityType | null = null;
  const types: QuantityType[] = [];
  for (const arg of args) {
    const type = check.quantity(arg);
    if (!type) return null;
    types.push(type);
    if (!first || !all) {
      [first, all] = [arg, type];
      continue;
    }
    all = check.pair(first, all, arg, type, 'compared');
    if (!all) return null;
  }
  if (!all) return null;
  const temperature = types.some((type) => type.temperature !== null)
    ? commonTemperature(types)
    : null;
  return { ...all, piPower: 0, temperature };
}

/** The spread of readings in degC is in K. */
function intervalUnit(unit: Unit | null): Unit | null {
  return unit?.temperature === 'reading' ? null : unit;
}

/** Sizes, signs, sums and roundings of a reading depend on where its scale has its zero. */
function isPoint(
  check: ExpressionCheck,
  call: Call,
  node: Expression,
  type: QuantityType
): boolean {
  if (type.temperature !== 'point') return false;
  check.report('temperature/scaled-point', node, temperatureWords.dependsOnZero(check.text(call)));
  return true;
}

function refuse(check: ExpressionCheck, node: Expression, words: Wording): null {
  return check.report('units/function-domain', node, words);
}
