// Worked examples through the command line: every sheet is a file, one call checks them all.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { reference, relativeDifference } from '../worksheet.ts';
import { sheetOf, type Check, type CheckSheet } from './sheets.ts';

interface Output {
  readonly values: Readonly<Record<string, ValueOutput | undefined>>;
  readonly errors: readonly { line: number; code: string; message: string }[];
}

interface ValueOutput {
  readonly dimension: string;
  readonly at: Readonly<Record<string, { readonly si?: number } | undefined>>;
}

const cli = resolve(import.meta.dirname, '../../../build/cli.js');
if (!existsSync(cli)) throw new Error(`${cli} is missing: npm run build`);

const cases = [
  ...reference<Check[]>(import.meta.url, 'checks-rotor.json'),
  ...reference<Check[]>(import.meta.url, 'checks-structure.json')
];
const sheets = cases.map(sheetOf).filter((sheet) => sheet !== null);

const folder = mkdtempSync(join(tmpdir(), 'checks-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Results of every sheet, in one call. */
const outputs = rigwright(
  'check',
  ...sheets.map(({ check, text }) => {
    const file = join(folder, `${check.id}.md`);
    writeFileSync(file, text);
    return file;
  })
) as readonly Output[];

function rigwright(...args: string[]): unknown {
  const call = spawnSync(process.execPath, [cli, ...args, '--json'], {
    encoding: 'utf8',
    maxBuffer: 64e6
  });
  if (call.status === 3) throw new Error(call.stderr);
  return JSON.parse(call.stdout);
}

/** What is wrong with a sheet's output; empty where every answer is the one expected. */
function faults({ check, pairs }: CheckSheet, output: Output | undefined): string[] {
  const found = (output?.errors ?? []).map(
    ({ line, code, message }) => `${line} ${code}: ${message}`
  );
  for (const [name, answer] of pairs) {
    const value = output?.values[name];
    const expected = output?.values[answer];
    const si = Object.values(value?.at ?? {})[0]?.si ?? NaN;
    const wanted = Object.values(expected?.at ?? {})[0]?.si ?? NaN;
    const difference = relativeDifference(si, wanted);
    if (!(difference <= check.rel_tol)) found.push(`${name}: ${si}, expected ${wanted}`);
  }
  return found;
}

describe('worked examples through the command line', () => {
  it('are 159 of 178 cases', () => {
    expect([sheets.length, cases.length]).toEqual([159, 178]);
  });

  it.each(sheets.map((sheet, i) => ({ id: sheet.check.id, topic: sheet.check.topic, sheet, i })))(
    '$id $topic',
    ({ sheet, i }) => {
      expect(sheet.pairs.length).toBeGreaterThan(0);
      expect(faults(sheet, outputs[i])).toEqual([]);
    }
  );

  it('standard input gives what a file gives', () => {
    const sheet = sheets.find(({ check }) => check.id === 'strip-01');
    const call = spawnSync(process.execPath, [cli, 'show', '-', '--json'], {
      encoding: 'utf8',
      input: sheet?.text ?? ''
    });
    expect(call.stderr).toBe('');
    const output = JSON.parse(call.stdout) as Output;
    expect(output.values).toEqual(outputs[sheets.findIndex((one) => one === sheet)]?.values);
  });
});
