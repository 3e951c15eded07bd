#!/usr/bin/env node
// The command line's entry: reads the call, runs its command, and ends with the status that applies.

import { createRequire } from 'node:module';
import { parseCall } from './args.ts';
import { helpText } from './options.ts';
import type { Status } from './output.ts';
import { complain } from './output.ts';

/** @param words  the call without node and the program's own name */
async function run(words: readonly string[]): Promise<Status | null> {
  const call = parseCall(words);
  switch (call.kind) {
    case 'help':
      process.stdout.write(helpText(call.command));
      return 0;
    case 'version':
      process.stdout.write(`${version()}\n`);
      return 0;
    case 'wrong':
      complain(`${call.message} rigwright --help lists what there is.`);
      return 3;
    case 'run':
      break;
  }
  // One module a command, loaded when it is called: `serve` starts without the engine.
  switch (call.command) {
    case 'check':
      return (await import('./check.ts')).check(call);
    case 'show':
      return (await import('./show.ts')).show(call);
    case 'compare':
      return (await import('./compare.ts')).compare(call);
    case 'serve':
      return (await import('./serve.ts')).serve(call);
  }
}

function version(): string {
  const packaged: unknown = createRequire(import.meta.url)('../package.json');
  return typeof packaged === 'object' && packaged !== null && 'version' in packaged
    ? String(packaged.version)
    : 'unknown';
}

// A reader that stops early (`| head`) closes the pipe: that is no fault of the call.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  throw error;
});

try {
  const status = await run(process.argv.slice(2));
  if (status !== null) process.exitCode = status;
} catch (error) {
  // A fault of the program must not end like a limit that is over: Node's own status would be 1.
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  complain(`This is a fault of the program, not of the worksheet.\n${trace}`);
  process.exitCode = 3;
}
