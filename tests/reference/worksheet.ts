// Worksheets made from reference cases, and what comes out of them. A case is run the way a designer
// would run it: as text, through the whole engine, with its value read at the one stage there is.

import { readFileSync } from 'node:fs';
import { compute, type Results } from '#lib/sheet/index.ts';

/** A JSON file beside the test that asks. */
export function reference<T>(url: string, path: string): T {
  return JSON.parse(readFileSync(new URL(path, url), 'utf8')) as T;
}

/** A fenced block of a worksheet. */
export function block(kind: string, lines: readonly string[]): string {
  return ['```' + kind, ...lines, '```', ''].join('\n');
}

/** The lines of an `inputs` block. */
export function inputLines(inputs: Readonly<Record<string, string>>): string[] {
  return Object.entries(inputs).map(([name, value]) => `${name} = ${value}`);
}

/** A worksheet's results with short ways to ask for them. */
export interface Sheet {
  readonly results: Results;
  /** In coherent SI units; NaN where there is no number. */
  si(name: string): number;
  /** In the unit that the line is shown in. */
  shown(name: string): number;
  /** Codes of the problems about a name, with their severities: 'error units/mismatch'. */
  problems(name: string): string[];
}

export function run(text: string): Sheet {
  const results = compute(text);
  const stageValue = (name: string) => results.values.get(name)?.at[0];
  return {
    results,
    si: (name) => numberOf(stageValue(name)?.si),
    shown: (name) => numberOf(stageValue(name)?.value),
    problems: (name) => {
      const line = results.values.get(name)?.line;
      return results.problems
        .filter((found) => found.subject === name || found.at.line === line)
        .map((found) => `${found.severity} ${found.code}`);
    }
  };
}

/** |value - expected| / |expected|; where 0 is expected, |value|. */
export function relativeDifference(value: number, expected: number): number {
  return expected === 0 ? Math.abs(value) : Math.abs(value - expected) / Math.abs(expected);
}

function numberOf(value: unknown): number {
  return typeof value === 'number' ? value : NaN;
}
