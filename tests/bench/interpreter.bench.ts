// The bench sheet at four stages: our interpreter, the parser's own library with units and without, and
// the same formulas written by hand. All in one run, so that the ratios mean something.

import { all, create, type EvalFunction, type Unit } from 'mathjs';
import {
  Builder,
  execute,
  LaneFile,
  Lowering,
  RegisterSpace,
  type Operand
} from '#lib/lanes/index.ts';
import { parseExpression } from '#lib/language/index.ts';
import { cutOf } from '#lib/text/index.ts';
import { benchFormulas, benchInputs } from './bench-sheet.ts';

export const title = 'bench sheet, four stages, one evaluation of all its lines per stage';

const stageCount = 4;

export function run(print: (line: string) => void): void {
  const [ours, ourValue] = interpreter();
  const [units, unitsValue] = mathjsWithUnits(true);
  const [texts] = mathjsWithUnits(false);
  const [byHand, handValue] = handWritten();
  for (const value of [ourValue, unitsValue]) {
    if (Math.abs(value / handValue - 1) > 1e-12)
      throw new Error(`T_1 differs: ${value}, ${handValue}`);
  }
  const times = {
    ours: perStage(ours, 20_000),
    units: perStage(units, 60),
    texts: perStage(texts, 40),
    byHand: perStage(byHand, 200_000)
  };
  print(`interpreter            ${(times.ours * 1e3).toFixed(3)} µs a stage`);
  print(
    `mathjs with units      ${(times.units * 1e3).toFixed(1)} µs a stage, compiled: ${(times.units / times.ours).toFixed(0)} times as long (aim: 250)`
  );
  print(
    `mathjs, from text      ${(times.texts * 1e3).toFixed(1)} µs a stage: ${(times.texts / times.ours).toFixed(0)} times as long`
  );
  print(
    `hand-written           ${(times.byHand * 1e3).toFixed(3)} µs a stage: the interpreter takes ${(times.ours / times.byHand).toFixed(1)} times as long`
  );
}

/** Median milliseconds of one call over `stageCount`. */
function perStage(call: () => void, repeats: number): number {
  const samples: number[] = [];
  for (let round = 0; round < 15; round++) {
    const start = performance.now();
    for (let i = 0; i < repeats; i++) call();
    samples.push((performance.now() - start) / repeats / stageCount);
  }
  samples.sort((a, b) => a - b);
  return samples[7] ?? NaN;
}

const stageFactor = (stage: number): number => 1 + stage / 10;

function interpreter(): [() => void, number] {
  const space = new RegisterSpace();
  const builder = new Builder(space);
  const registers = new Map<string, Operand>();
  const name = (text: string): Operand => {
    const operand: Operand = {
      register: space.keep(null),
      rows: null,
      kind: 'definition',
      value: NaN
    };
    registers.set(text, operand);
    return operand;
  };
  for (const [input] of benchInputs) name(input);
  for (const [status, [formula, text]] of benchFormulas.entries()) {
    const cut = cutOf(text);
    const { tree } = parseExpression(cut, { money: null });
    if (!tree) throw new Error(`${text} cannot be read`);
    const scope = {
      operandOf: (of: string) => registers.get(of),
      functionOf: () => undefined,
      isTable: () => false
    };
    const value = new Lowering(builder, scope, cut).lower(tree);
    const target = name(formula).register;
    builder.moveTo(target, value, { node: tree, cut });
    builder.append('end', target, -1, status, -1, null, null, -1);
  }
  const program = builder.program();
  const file = new LaneFile(program.registers, stageCount, benchFormulas.length);
  for (const [register, value] of program.constants) file.fill(register, value);
  for (const [input, value] of benchInputs) {
    const register = registers.get(input)?.register ?? 0;
    for (let lane = 0; lane < stageCount; lane++) {
      file.registers[register * stageCount + lane] =
        input === 'v' ? value * stageFactor(lane) : value;
    }
  }
  const call = (): void => execute(program.code, program.nested, file);
  call();
  return [call, file.registers[(registers.get('T_1')?.register ?? 0) * stageCount] ?? NaN];
}

/** Compiled once, or read from its text each time as in a first evaluation. */
function mathjsWithUnits(isCompiled: boolean): [() => void, number] {
  const math = create(all ?? {});
  const compiled: [string, EvalFunction][] = benchFormulas.map(([name, text]) => [
    name,
    isCompiled
      ? math.compile(text)
      : { evaluate: (scope?: object) => math.evaluate(text, scope) as unknown }
  ]);
  const scopes = Array.from({ length: stageCount }, (_, stage) => {
    const scope: Record<string, unknown> = {};
    for (const [name, value, text] of benchInputs) {
      const unit = text.split(' ').slice(1).join(' ');
      const figure = name === 'v' ? value * stageFactor(stage) : value;
      scope[name] = unit === '' ? figure : math.unit(figure, unit);
    }
    return scope;
  });
  const call = (): void => {
    for (const scope of scopes)
      for (const [name, code] of compiled) scope[name] = code.evaluate(scope) as unknown;
  };
  call();
  return [call, (scopes[0]?.['T_1'] as Unit).toNumber('N')];
}

function handWritten(): [() => void, number] {
  const inputs = benchInputs.map(([, value]) => new Float64Array(stageCount).fill(value));
  const speeds = inputs[1];
  for (let stage = 0; stage < stageCount && speeds; stage++)
    speeds[stage] = 80 * stageFactor(stage);
  const result = new Float64Array(stageCount);
  const [R, v, rho, C_d, d, eta, T_0, ratio, D_p, mu, beta, m_b] = inputs as [
    Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array,
    Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array
  ]; // prettier-ignore
  const call = (): void => {
    for (let i = 0; i < stageCount; i++) {
      const omega = v[i]! / R[i]!;
      const r2 = R[i]! * R[i]!;
      const P_drag = (2 * rho[i]! * C_d[i]! * d[i]! * omega * omega * omega * r2 * r2) / 8;
      const P_shaft = (P_drag + T_0[i]! * omega) / eta[i]!;
      const v_belt = (omega * ratio[i]! * D_p[i]!) / 2;
      const k = Math.exp(mu[i]! * beta[i]!);
      result[i] = m_b[i]! * v_belt * v_belt + ((P_shaft / v_belt) * k) / (k - 1);
    }
  };
  call();
  return [call, result[0] ?? NaN];
}
