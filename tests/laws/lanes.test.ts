// A lane's result depends on that lane alone, and its tangent is its derivative.

import { describe, expect, it } from 'vitest';
import {
  Builder,
  execute,
  LaneFile,
  Lowering,
  RegisterSpace,
  tangentProgram,
  type Operand,
  type Program
} from '#lib/lanes/index.ts';
import { parseExpression } from '#lib/language/index.ts';
import { compute } from '#lib/sheet/index.ts';
import { cutOf } from '#lib/text/index.ts';

/** Each on inputs x and z, both between 0.5 and 2; xs and ys are columns of the sheet below. */
const formulas: readonly string[] = [
  'x + z', 'x - z', 'x*z', 'x/z', '-x*z', 'x^2', 'x^3*z', 'x^-2', 'x^7', 'x^0.5', 'x^1.5', 'x^z',
  '2^x', 'sqrt(x)', 'cbrt(x)', 'exp(x)', 'ln(x)', 'log10(x)', 'log2(x)', 'sin(x)', 'cos(x)', 'tan(x/2)',
  'asin(x/3)', 'acos(x/3)', 'atan(x)', 'atan2(x, z)', 'sinh(x)', 'cosh(x)', 'tanh(x)', 'asinh(x)',
  'acosh(x + 1)', 'atanh(x/3)', 'min(x, z + 5)', 'max(x, z/9)', 'abs(-x)', 'hypot(x, z)', 'mod(x + 7, z)',
  'clamp(x, 0.1, 9)', 'x > 0.2 ? x^2 : z', 'x < 0.2 ? ln(x) : z*x', 'integrate(x*t^2, t, 0, z)',
  'integrate(exp(-t*x), t, 0, inf)', 'integrate(sin(t), t, x, 3*z)',
  'integrate(integrate(u*t*x, u, 0, t), t, 0, z)', 'x*exp(-x^2)/(1 + z)'
]; // prettier-ignore

const names = ['x', 'z'] as const;

function programOf(text: string): { program: Program; inputs: readonly number[]; result: number } {
  const space = new RegisterSpace();
  const builder = new Builder(space);
  const registers = new Map<string, Operand>(
    names.map((name) => [
      name,
      { register: space.keep(null), rows: null, kind: 'definition', value: NaN }
    ])
  );
  const cut = cutOf(text);
  const { tree } = parseExpression(cut, { money: null });
  if (!tree) throw new Error(`${text} cannot be read`);
  const scope = {
    operandOf: (name: string) => registers.get(name),
    functionOf: () => undefined,
    isTable: () => false
  };
  const value = new Lowering(builder, scope, cut).lower(tree);
  const result = space.keep(null);
  builder.moveTo(result, value, null);
  return {
    program: builder.program(),
    inputs: names.map((name) => registers.get(name)?.register ?? 0),
    result
  };
}

/** Values of a formula over lanes, in chunks of `stride`. */
function valuesOver(
  text: string,
  lanes: readonly (readonly [number, number])[],
  stride: number
): number[] {
  const { program, inputs, result } = programOf(text);
  const values: number[] = [];
  for (let start = 0; start < lanes.length; start += stride) {
    const chunk = lanes.slice(start, start + stride);
    const file = new LaneFile(program.registers, stride);
    file.lanes = chunk.length;
    for (const [register, constant] of program.constants) file.fill(register, constant);
    for (const [lane, point] of chunk.entries()) {
      for (const [i, register] of inputs.entries())
        file.registers[register * stride + lane] = point[i] ?? NaN;
    }
    execute(program.code, program.nested, file);
    for (const lane of chunk.keys()) values.push(file.registers[result * stride + lane] ?? NaN);
  }
  return values;
}

const lanes = Array.from(
  { length: 23 },
  (_, i) => [0.5 + ((i * 7) % 23) / 16, 0.55 + ((i * 11) % 23) / 16] as const
);

describe('a lane depends on itself alone', () => {
  it.each(formulas)('%s: chunks of 1, 3, 7 and 64 and any order give the same bits', (text) => {
    const straight = valuesOver(text, lanes, 64);
    for (const stride of [1, 3, 7]) expect(valuesOver(text, lanes, stride)).toEqual(straight);
    const reversed = valuesOver(text, lanes.toReversed(), 5).toReversed();
    expect(reversed).toEqual(straight);
  });
});

describe('a tangent is the derivative', () => {
  it.each(formulas)('%s', (text) => {
    const { program, inputs, result } = programOf(text);
    const derived = tangentProgram(program, inputs);
    const [x, z] = [1.3, 0.7];
    for (const [direction, register] of inputs.entries()) {
      const file = new LaneFile(derived.program.registers, 1);
      for (const [constant, value] of derived.program.constants) file.fill(constant, value);
      for (const [i, input] of inputs.entries()) file.fill(input, [x, z][i] ?? NaN);
      file.fill(register + derived.offset, 1);
      execute(derived.program.code, derived.program.nested, file);
      const tangent = derived.isActive(result)
        ? (file.registers[result + derived.offset] ?? NaN)
        : 0;
      const h = 1e-5;
      const at = (step: number): readonly [number, number] =>
        direction === 0 ? [x + step, z] : [x, z + step];
      const [a, b, c, d] = valuesOver(text, [at(-2 * h), at(-h), at(h), at(2 * h)], 4) as [
        number,
        number,
        number,
        number
      ];
      // Five-point difference: its error is of the order h^4, its rounding of 1e-16/h.
      const difference = (a - 8 * b + 8 * c - d) / (12 * h);
      expect(Math.abs(tangent - difference)).toBeLessThan(2e-9 * Math.max(1, Math.abs(difference)));
    }
  });

  // y is 1, 3, 8 at x = 0, 1, 2: mean 4, standard deviation sqrt(13), slope 5 at 1.5.
  it.each([
    ['interp(x, tab.x, tab.y)', 5],
    ['interp_hold(x + 90, tab.x, tab.y)', 0],
    ['interp(1.5, tab.x, tab.y*x)', 5.5],
    ['interp(0.5, tab.x*x, tab.y)', 1 / 2.25],
    ['mean(tab.y)*x', 4],
    ['sd(tab.y)*x', Math.sqrt(13)],
    ['sd(tab.y*x)', Math.sqrt(13)],
    ['max(tab.y)*x', 8],
    ['min(tab.y*x)', 1],
    ['sum(tab.y*x)', 12],
    ['first(tab.y)*x', 1],
    ['last(tab.y*x)', 8]
  ] as const)('of a column: %s by x at 1.5 is %f in size', (text, slope) => {
    const table = '```table tab\nx, y\n0, 1\n1, 3\n2, 8\n```\n';
    const sheet = `${table}\`\`\`inputs\nx = 1.5 ± 1 sd\n\`\`\`\n\`\`\`calc\nf = ${text}\n\`\`\`\n`;
    const found = compute(sheet).values.get('f')?.at[0]?.standardUncertainty ?? 0;
    expect(found).toBeCloseTo(slope, 9);
  });

  it('of a root is that of the implicit function', () => {
    // v^3 k = P: v = (P/k)^(1/3), dv/dP = v/(3 P), dv/dk = -v/(3 k).
    const sheet = (P: string, k: string): string =>
      `\`\`\`inputs\nv = 1 m/s\nP = ${P}\nk = ${k}\n\`\`\`\n\`\`\`calc\nQ = k*v^3 to W\n\`\`\`\n\`\`\`solve\nw = v where Q == P between 0.1 m/s and 90 m/s\n\`\`\`\n`;
    const byP = compute(sheet('1000 W ± 10 W sd', '0.5 kg/m')).values.get('w')?.at[0];
    const byK = compute(sheet('1000 W', '0.5 kg/m ± 0.01 kg/m sd')).values.get('w')?.at[0];
    const v = Math.cbrt(1000 / 0.5);
    expect(byP?.si).toBeCloseTo(v, 10);
    expect(byP?.standardUncertainty).toBeCloseTo((v / 3000) * 10, 9);
    expect(byK?.standardUncertainty).toBeCloseTo((v / 1.5) * 0.01, 9);
  });

  // d ln(c x^n)/d ln x is n.
  it.each([1, 2, 3, 4, -1, -2, 0.5, 1.5])('the local exponent of 7 x^%f is that', (n) => {
    const sheet = `\`\`\`inputs\nx = 1.7 ± 1 sd\n\`\`\`\n\`\`\`calc\nf = 7*x^(${n})\n\`\`\`\n`;
    const f = compute(sheet).values.get('f')?.at[0];
    const exponent = ((f?.standardUncertainty ?? NaN) * 1.7) / Number(f?.value);
    expect(exponent).toBeCloseTo(Math.abs(n), 12);
  });
});

describe('uncertainty of first order', () => {
  it('adds in squares for a sum, in relative squares for a product, and keeps correlation', () => {
    const sheet = `\`\`\`inputs\na = 3 m ± 0.3 m sd\nb = 4 m ± 0.4 m sd\ncorrelated a, b R\n\`\`\`\n\`\`\`calc\ns = a + b\nd = a - b\np = a*b\n\`\`\`\n`;
    const u = (r: string, name: string): number =>
      compute(sheet.replace('R', r)).values.get(name)?.at[0]?.standardUncertainty ?? 0;
    expect(u('0', 's')).toBeCloseTo(0.5, 12);
    expect(u('0', 'p')).toBeCloseTo(12 * Math.hypot(0.1, 0.1), 12);
    expect(u('1', 's')).toBeCloseTo(0.7, 12);
    expect(u('1', 'd')).toBeCloseTo(0.1, 12);
    expect(u('-1', 's')).toBeCloseTo(0.1, 12);
  });

  // Source: JCGM 100:2008, 4.3.7 (rectangular), 4.3.9 (triangular), 4.3.3 (k); JCGM 101:2008, 6.4.6 (arcsine).
  it.each([
    ['3 mm', 3e-3 / Math.sqrt(3)], ['3 mm triangular', 3e-3 / Math.sqrt(6)], ['3 mm arcsine', 3e-3 / Math.SQRT2],
    ['3 mm k=2', 1.5e-3], ['3 mm sd', 3e-3], ['2 %', 0.02 / Math.sqrt(3)]
  ] as const)('± %s is a standard uncertainty of %f m on 1 m', (tolerance, u) => {
    const value = compute(`\`\`\`inputs\na = 1 m ± ${tolerance}\n\`\`\`\n`).values.get('a')?.at[0];
    expect(value?.standardUncertainty).toBeCloseTo(u, 15);
  }); // prettier-ignore
});
