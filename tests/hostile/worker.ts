// Computes hostile case by number, in a thread that can be ended.

import { parentPort } from 'node:worker_threads';
import { compute } from '#lib/sheet/index.ts';
import { hostileCases } from './cases.ts';

parentPort?.on('message', (index: number) => {
  try {
    const results = compute(hostileCases[index]?.text() ?? '');
    const errors = results.problems.filter((found) => found.severity === 'error');
    parentPort?.postMessage({
      error: null,
      codes: [...new Set(errors.map((found) => found.code))]
    });
  } catch (error) {
    parentPort?.postMessage({
      error: error instanceof Error ? error.stack : String(error),
      codes: []
    });
  }
});
