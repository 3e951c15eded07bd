// `rigwright serve [FOLDER]`: the page, on this machine. The server is loaded
// only here, so that the other commands start without it. Any address but loopback
// would let others in: it needs a secret, which is never taken from the call, where every user of
// the machine could read it.

import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Call } from './args.ts';
import { readText } from './files.ts';
import type { Status } from './output.ts';
import { complain } from './output.ts';

/** Without --port, this one or the next that is free. */
const FIRST_PORT = 4173;
const PORTS_TRIED = 20;

const loopback = new Set(['127.0.0.1', '::1', 'localhost']);

/** @returns  the exit status of a call that cannot be served, or null once the server runs */
export async function serve(call: Call): Promise<Status | null> {
  const host = call.host ?? '127.0.0.1';
  if (!loopback.has(host)) return refuseHost(host, call.secretFile);
  if (call.secretFile !== null) {
    complain(`--secret-file goes with a --host beyond this machine; ${host} needs none.`);
    return 3;
  }
  const folder = resolve(call.operands[0] ?? 'worksheets');
  if (!existsSync(folder) || !statSync(folder).isDirectory()) {
    complain(
      `${call.operands[0] ?? 'worksheets'} is not a folder; name the folder that holds the worksheets.`
    );
    return 3;
  }
  const server = await import('../server.ts');
  for (let port = call.port ?? FIRST_PORT; ; port++) {
    try {
      const running = await server.startServer({ folder, host, port });
      process.stdout.write(`Serving ${folder}\nReady at ${running.address}\n`);
      for (const signal of ['SIGINT', 'SIGTERM'] as const)
        process.once(signal, () => void running.close().then(() => process.exit(0)));
      return null;
    } catch (error) {
      const isTaken = faultCode(error) === 'EADDRINUSE';
      if (isTaken && call.port === null && port < FIRST_PORT + PORTS_TRIED) continue;
      complain(serverFault(error, host, port));
      return 3;
    }
  }
}

async function refuseHost(host: string, secretFile: string | null): Promise<Status> {
  const fromEnvironment = process.env.RIGWRIGHT_SECRET ?? '';
  if (secretFile === null && fromEnvironment === '') {
    complain(
      `--host ${host} lets other machines in, which needs a secret: put one in a file and name it with --secret-file, or in RIGWRIGHT_SECRET.`
    );
    return 3;
  }
  if (secretFile !== null) {
    const read = await readText(secretFile);
    if (read.kind === 'refused' || read.text.trim().length < 16) {
      complain(
        read.kind === 'refused'
          ? `--secret-file: ${read.message}`
          : `--secret-file ${secretFile} holds fewer than 16 characters; a secret takes at least 16.`
      );
      return 3;
    }
  }
  complain(
    `Serving other machines is not available yet, also with a secret: --host ${host} was not opened. Without --host the page is served on this machine.`
  );
  return 3;
}

function serverFault(error: unknown, host: string, port: number): string {
  const where = `Port ${port} of ${host}`;
  const code = faultCode(error);
  if (code === 'EADDRINUSE') return `${where} is in use; choose another with --port.`;
  if (code === 'EACCES')
    return `${where} may not be opened by this user; choose a port above 1023.`;
  return `The page could not be served on port ${port} of ${host}: ${error instanceof Error ? error.message : String(error)}`;
}

const faultCode = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : null;
