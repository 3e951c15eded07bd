// Input that means harm, or that nobody meant: refused by a stated limit or computed, without an
// exception and without a hang. All cases run in a worker of their own; a case that has not answered
// in time has the worker ended and is told by its title.

import { afterAll, beforeAll, expect, it } from 'vitest';
import { Worker } from 'node:worker_threads';
import { build } from 'vite';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { hostileCases } from './cases.ts';

/** Far more than any case takes on an honest machine (about 2 s), and far less than a hang. */
const timeLimitMs = 15_000;
let folder = '';
let worker: Worker | null = null;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hostile-'));
  await build({
    root: fileURLToPath(new URL('../..', import.meta.url)),
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: true,
      rolldownOptions: {
        input: fileURLToPath(new URL('./worker.ts', import.meta.url)),
        output: { entryFileNames: 'worker.mjs' }
      }
    }
  });
}, 60_000);

afterAll(async () => {
  await worker?.terminate();
  rmSync(folder, { recursive: true, force: true });
});

interface Answer {
  readonly error: string | null;
  readonly codes: readonly string[];
}

function ask(index: number): Promise<Answer | 'no answer in time'> {
  worker ??= new Worker(join(folder, 'worker.mjs'));
  const asked = worker;
  return new Promise((done) => {
    const timer = setTimeout(() => {
      worker = null;
      void asked.terminate();
      done('no answer in time');
    }, timeLimitMs);
    asked.once('message', (answer: Answer) => {
      clearTimeout(timer);
      done(answer);
    });
    asked.postMessage(index);
  });
}

it.each(hostileCases.map((each, index) => ({ ...each, index })))(
  '$title: $says',
  async ({ index, says }) => {
    const answer = await ask(index);
    if (answer === 'no answer in time') throw new Error(answer);
    expect(answer.error).toBeNull();
    if (says === null) expect(answer.codes).toEqual([]);
    else expect(answer.codes).toContain(says);
  },
  30_000
);
