// How long the command line takes from call to answer.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

export const title = 'start of the command line';

export function run(print: (line: string) => void): void {
  if (!existsSync('build/cli.js'))
    throw new Error('build/cli.js is missing: run npm run build first');
  for (const [what, args] of [
    ['rigwright --help', ['build/cli.js', '--help']],
    [
      'rigwright check worksheets/spray-arm-rig.md',
      ['build/cli.js', 'check', 'worksheets/spray-arm-rig.md']
    ]
  ] as const) {
    // prettier-ignore
    const times = Array.from({ length: 7 }, () => {
      const start = performance.now();
      spawnSync(process.execPath, [...args], { stdio: 'ignore' });
      return performance.now() - start;
    });
    times.sort((a, b) => a - b);
    print(`${what}: ${(times[3] ?? NaN).toFixed(0)} ms (median of 7; aim: 300)`);
  }
}
