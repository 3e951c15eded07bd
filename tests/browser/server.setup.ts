/**
 * Before the browser tests: the built server on a port of its own, over a copy of `worksheets/` so
 * that no test can change the real ones. After them: the server is stopped and the copy removed.
 */
import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { TestProject } from 'vitest/node';
import { freePort, root } from '../../scripts/common.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built server, with its closing slash. */
    serverAddress: string;
    /** The folder it serves, a copy of `worksheets/`. */
    servedFolder: string;
  }
}

const START_LIMIT_MS = 20_000;

export default async function startServer(project: TestProject): Promise<() => Promise<void>> {
  const cli = join(root, 'build', 'cli.js');
  if (!existsSync(cli)) throw new Error('build/cli.js is missing; expected after `npm run build`.');

  const folder = mkdtempSync(join(tmpdir(), 'rigwright-e2e-'));
  cpSync(join(root, 'worksheets'), folder, { recursive: true });
  const port = await freePort(4273);
  const address = `http://127.0.0.1:${port}/`;
  const server = spawn(process.execPath, [cli, 'serve', folder, '--port', String(port)], {
    stdio: ['ignore', 'ignore', 'inherit']
  });
  const ended = new Promise<void>((done) => server.once('close', () => done()));

  const start = Date.now();
  for (;;) {
    if (server.exitCode !== null) throw new Error(`The server ended, status ${server.exitCode}.`);
    if (Date.now() - start > START_LIMIT_MS) throw new Error(`No answer from ${address} in 20 s.`);
    const isUp = await fetch(address).then(
      () => true,
      () => false
    );
    if (isUp) break;
    await wait(50);
  }

  project.provide('serverAddress', address);
  project.provide('servedFolder', folder);
  return async () => {
    server.kill();
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
}
