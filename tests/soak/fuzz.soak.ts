// 100,000 damaged worksheets, each in the session of its sheet, one in ten also afresh.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fuzz } from '../hostile/fuzz.ts';

export const title =
  'Damaged worksheets: no exception, byte-identical round trip, problems inside the file';

const seed = 20260125;
const cases = 100_000;
const atOnce = 5000;

export async function run(print: (line: string) => void): Promise<void> {
  const texts = ['spray-arm-rig.md', 'doubling-speed.md'].map((name) =>
    readFileSync(join(process.cwd(), 'worksheets', name), 'utf8')
  );
  print(`seed ${seed}, ${cases} cases`);
  let [slowestMs, withoutError] = [0, 0];
  const failures: string[] = [];
  for (let done = 0; done < cases; done += atOnce) {
    const report = fuzz(texts, seed + done, atOnce, 10);
    slowestMs = Math.max(slowestMs, report.slowestMs);
    withoutError += report.withoutError;
    failures.push(...report.failures);
    print(`${done + atOnce} done, ${failures.length} failures, slowest ${slowestMs.toFixed(0)} ms`);
    await Promise.resolve();
  }
  print(`${withoutError} of ${cases} computed without an error in them`);
  if (failures.length > 0) throw new Error(failures[0]);
}
