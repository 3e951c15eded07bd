// The functions of the language, in one table: what each takes and what it is for. The rules for
// their dimensions stand in the check, their arithmetic in the lanes; this table is what both, the
// completion of names and the documentation read.

/** 'rows': one argument is a column and is taken as a whole; 'table': x, then two columns. */
export type FunctionShape = 'values' | 'rows' | 'values-or-rows' | 'table' | 'integral';

export interface LanguageFunction {
  readonly name: string;
  /** Names of the arguments, for messages and help; those in `optional` may be left out. */
  readonly parameters: readonly string[];
  readonly least: number;
  /** Infinity: any number. */
  readonly most: number;
  readonly shape: FunctionShape;
  readonly description: string;
}

const row = (
  name: string,
  parameters: string,
  least: number,
  most: number,
  shape: FunctionShape,
  description: string
): LanguageFunction => ({
  name,
  parameters: parameters.split(' '),
  least,
  most,
  shape,
  description
});

export const languageFunctions: readonly LanguageFunction[] = [
  row('sqrt', 'x', 1, 1, 'values', 'square root'),
  row('cbrt', 'x', 1, 1, 'values', 'cube root'),
  row('abs', 'x', 1, 1, 'values', 'size without sign'),
  row('exp', 'x', 1, 1, 'values', 'e to the power x'),
  row('ln', 'x', 1, 1, 'values', 'natural logarithm'),
  row('log10', 'x', 1, 1, 'values', 'logarithm to base 10'),
  row('log2', 'x', 1, 1, 'values', 'logarithm to base 2'),
  row('sin', 'angle', 1, 1, 'values', 'sine'),
  row('cos', 'angle', 1, 1, 'values', 'cosine'),
  row('tan', 'angle', 1, 1, 'values', 'tangent'),
  row('asin', 'x', 1, 1, 'values', 'angle whose sine is x'),
  row('acos', 'x', 1, 1, 'values', 'angle whose cosine is x'),
  row('atan', 'x', 1, 1, 'values', 'angle whose tangent is x'),
  row('atan2', 'y x', 2, 2, 'values', 'angle of the point x, y'),
  row('sinh', 'x', 1, 1, 'values', 'hyperbolic sine'),
  row('cosh', 'x', 1, 1, 'values', 'hyperbolic cosine'),
  row('tanh', 'x', 1, 1, 'values', 'hyperbolic tangent'),
  row('asinh', 'x', 1, 1, 'values', 'inverse of sinh'),
  row('acosh', 'x', 1, 1, 'values', 'inverse of cosh'),
  row('atanh', 'x', 1, 1, 'values', 'inverse of tanh'),
  row('min', 'x', 1, Infinity, 'values-or-rows', 'least of several values, or of a column'),
  row('max', 'x', 1, Infinity, 'values-or-rows', 'greatest of several values, or of a column'),
  row('hypot', 'x y', 2, Infinity, 'values', 'root of the sum of squares'),
  row('floor', 'x', 1, 1, 'values', 'next whole number down'),
  row('ceil', 'x', 1, 1, 'values', 'next whole number up'),
  row('round', 'x step', 1, 2, 'values', 'nearest whole number, or nearest multiple of a step'),
  row('mod', 'a b', 2, 2, 'values', 'remainder of a/b, with the sign of b'),
  row('sign', 'x', 1, 1, 'values', '-1, 0 or 1'),
  row('clamp', 'x low high', 3, 3, 'values', 'x held between low and high'),
  row('sum', 'column', 1, 1, 'rows', 'sum of a column'),
  row('mean', 'column', 1, 1, 'rows', 'mean of a column'),
  row('sd', 'column', 1, 1, 'rows', 'standard deviation of a column, over n - 1'),
  row('count', 'column', 1, 1, 'rows', 'number of measured rows'),
  row('first', 'column', 1, 1, 'rows', 'first measured row'),
  row('last', 'column', 1, 1, 'rows', 'last measured row'),
  row('interp', 'x xs ys', 3, 3, 'table', 'straight lines between the rows; outside them an error'),
  row('interp_hold', 'x xs ys', 3, 3, 'table', 'straight lines, end values held outside'),
  row('interp_spline', 'x xs ys', 3, 3, 'table', 'smooth curve through the rows'),
  row('integrate', 'expression variable low high', 4, 4, 'integral', 'integral over a variable')
];

const byName: ReadonlyMap<string, LanguageFunction> = new Map(
  languageFunctions.map((entry) => [entry.name, entry])
);

/** Whether a name is a function of the language. */
export function isFunctionName(name: string): boolean {
  return byName.has(name);
}

export function languageFunction(name: string): LanguageFunction | undefined {
  return byName.get(name);
}

/** 'one argument', '2 arguments', '1 or 2 arguments', '2 arguments or more'. */
export function argumentsTaken(entry: LanguageFunction): string {
  const { least, most } = entry;
  if (least === most) return least === 1 ? 'one argument' : `${least} arguments`;
  if (most === Infinity) return least === 1 ? 'one argument or more' : `${least} arguments or more`;
  return `${least} or ${most} arguments`;
}

/** 'atan2(y, x)', 'round(x) or round(x, step)', 'min(x, …)': how a call is written. */
export function callForm({ name, parameters, least, most }: LanguageFunction): string {
  if (most === Infinity) return `${name}(${parameters.join(', ')}, …)`;
  const forms = [`${name}(${parameters.slice(0, least).join(', ')})`];
  if (most > least) forms.push(`${name}(${parameters.join(', ')})`);
  return forms.join(' or ');
}

/** What functions of other programs are written as here; null where two readings are common. */
export const otherFunctionNames: ReadonlyMap<string, string | null> = new Map([
  ['log', null],
  ['lg', null],
  ['Log', null],
  ['pow', 'a^b'],
  ['square', 'x^2'],
  ['cube', 'x^3'],
  ['sqr', 'x^2'],
  ['nthRoot', 'x^(1/n)'],
  ['root', 'x^(1/n)'],
  ['if', 'test ? value : other value'],
  ['iff', 'test ? value : other value'],
  ['arcsin', 'asin'],
  ['arccos', 'acos'],
  ['arctan', 'atan'],
  ['arctan2', 'atan2'],
  ['sec', '1/cos(…)'],
  ['csc', '1/sin(…)'],
  ['cot', '1/tan(…)'],
  ['std', 'sd'],
  ['stdev', 'sd'],
  ['average', 'mean'],
  ['avg', 'mean'],
  ['ceiling', 'ceil'],
  ['trunc', 'floor(…) or ceil(…)'],
  ['fix', 'floor(…) or ceil(…)'],
  ['int', 'floor'],
  ['sgn', 'sign'],
  ['len', 'count'],
  ['rem', 'mod'],
  ['fabs', 'abs'],
  ['integral', 'integrate'],
  ['interpolate', 'interp'],
  ['rad', '… * 1 rad'],
  ['deg', '… * 1 deg']
]);
