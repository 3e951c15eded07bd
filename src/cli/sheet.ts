// From a file's name to its results: read, find the tables it asks for, compute with the tries, pick
// the stage. What stands in the way is told on standard error, in the words of the call.

import { dirname } from 'node:path';
import { atStage } from '#lib/render/index.ts';
import type { Override, Results } from '#lib/sheet/index.ts';
import { compute, filesWanted } from '#lib/sheet/index.ts';
import { canonicalName } from '#lib/text/index.ts';
import type { Try } from './args.ts';
import { nearest } from './args.ts';
import { readTables, readText } from './files.ts';
import type { Status } from './output.ts';
import { complain } from './output.ts';

/** A worksheet's text with its tables: what is needed to compute it, any number of times. */
export interface Source {
  /** As the call names it. */
  readonly file: string;
  readonly text: string;
  readonly tables: ReadonlyMap<string, string>;
}

/** Reads a worksheet and its tables; null after saying why it cannot be read. */
export async function readSource(file: string): Promise<Source | null> {
  const read = await readText(file);
  if (read.kind === 'refused') {
    complain(read.message);
    return null;
  }
  const folder = file === '-' ? process.cwd() : dirname(file);
  const { files, notices } = await readTables(filesWanted(read.text), folder);
  for (const notice of notices) complain(`${file}: ${notice}`);
  return { file, text: read.text, tables: files };
}

/** Computes a worksheet with other values for some inputs; the file stays as it is. */
export function computed(source: Source, tries: readonly Try[] = []): Results {
  const overrides: Override[] = tries.map(({ name, value, stage }) => ({ name, value, stage }));
  return compute(source.text, { files: source.tables, overrides });
}

/** The results at one stage, or at all; null after saying that there is no such stage. */
export function picked(results: Results, stage: string | null, file: string): Results | null {
  if (stage === null) return results;
  if (hasStage(results, stage, file, '--stage')) return atStage(results, stage);
  return null;
}

/** Whether a stage is there; where it is not, the stages there are have been named. */
export function hasStage(results: Results, stage: string, file: string, option: string): boolean {
  const ids = results.stages.map(({ id }) => id);
  if (ids.includes(stage)) return true;
  complain(`${option}: ${file} has no stage ${stage}; it has ${ids.join(', ')}.`);
  return false;
}

/** Whether each try names an input and a stage of the sheet; where one does not, that has been said. */
export function triesFit(results: Results, tries: readonly Try[], file: string): boolean {
  for (const { name, stage } of tries) {
    const value = results.values.get(canonicalName(name));
    if (value?.kind !== 'input') {
      const inputs = [...results.values.values()]
        .filter(({ kind }) => kind === 'input')
        .map((input) => input.name);
      const near = nearest(name, inputs);
      const found = value
        ? `${name} is computed on line ${value.line}, and only inputs can be tried`
        : `${file} has no input ${name}`;
      complain(`--try: ${found}${near === null || near === name ? '' : `; nearest: ${near}`}.`);
      return false;
    }
    if (stage !== null && !hasStage(results, stage, file, `--try ${name}@${stage}`)) return false;
  }
  return true;
}

/**
 * Whether the values tried can be read and have the dimension of their inputs; where one does not,
 * that has been said. The engine tells it as a problem of the input that the sheet does not have
 * without the try.
 */
export function valuesFit(tried: Results, source: Source, tries: readonly Try[]): boolean {
  const names = new Set(tries.map(({ name }) => canonicalName(name)));
  const suspects = tried.problems.filter(
    ({ severity, subject, at }) =>
      severity === 'error' && subject !== null && names.has(subject) && at.from === 1
  );
  if (suspects.length === 0) return true;
  const own = new Set(computed(source).problems.map(({ message }) => message));
  const [found] = suspects.filter(({ message }) => !own.has(message));
  if (!found) return true;
  const value = tries.find(({ name }) => canonicalName(name) === found.subject)?.value ?? '';
  const hint = found.hint === null ? '' : ` ${found.hint}`;
  complain(`--try ${found.subject ?? ''}=${value}: ${found.message}${hint}`);
  return false;
}

/** 2 for a line in error or a limit that cannot be computed, 1 for a limit over, else 0. */
export function statusOf(results: Results): Status {
  const unknown = results.stages.some(({ counts }) => counts.unknown > 0);
  if (unknown || results.problems.some(({ severity }) => severity === 'error')) return 2;
  return results.stages.some(({ counts }) => counts.over > 0 || counts.failing > 0) ? 1 : 0;
}
