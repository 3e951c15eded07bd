#!/usr/bin/env node
/**
 * Entry of the command line `rigwright`. Built to `build/cli.js`.
 */
import { parseArgs } from 'node:util';

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    port: { type: 'string', default: '4173' },
    host: { type: 'string', default: '127.0.0.1' }
  }
});

if (positionals[0] === 'serve') {
  const { serve } = await import('../server.ts');
  const { address, close } = await serve({ port: Number(values.port), host: values.host });
  console.log(`Ready at ${address}`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void close().then(() => process.exit(0)));
  }
} else {
  console.error('rigwright serve [FOLDER] [--port NUMBER] [--host NAME]');
  process.exitCode = 3;
}
