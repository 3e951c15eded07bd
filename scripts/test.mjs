// npm test: installs and builds what is missing, then runs lint, types, layout and every test, the
// browser's included. All steps run even when one fails, so that one call shows everything. The last
// line is `N passed, N failed`, where a failed step counts as one failure.
//   npm test -- ARGUMENTS   go to Vitest, for example a file name; lint and types are then left out
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { needChromium } from './browser.mjs';
import { Stopped, build, install, main, root, tool } from './common.mjs';

/** Vitest, its output passed on but for the reporter's last line, which is returned as counts. */
function runTests(args, env) {
  const folder = join(root, 'node_modules', 'vitest');
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const child = spawn(process.execPath, [join(folder, bin.vitest), 'run', ...args], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    env: {
      ...process.env,
      ...env,
      ...(process.stdout.isTTY ? { FORCE_COLOR: '1' } : { NO_COLOR: '1' })
    }
  });
  return new Promise((done, fail) => {
    let counts = null;
    let rest = '';
    child.stdout.setEncoding('utf8').on('data', (text) => {
      const lines = (rest + text).split('\n');
      rest = lines.pop();
      for (const line of lines) {
        const found = /^(\d+) passed, (\d+) failed(?:, (\d+) skipped)?$/.exec(line);
        if (found) counts = { passed: Number(found[1]), failed: Number(found[2]) };
        else process.stdout.write(`${line}\n`);
      }
    });
    child.on('error', fail);
    child.on('close', (status) => {
      if (rest !== '') process.stdout.write(`${rest}\n`);
      done({ status: status ?? 1, counts: counts ?? { passed: 0, failed: 1 } });
    });
  });
}

await main(async () => {
  const chosen = process.argv.slice(2);
  const failures = [];
  /** One step before the tests; true when it succeeded. */
  const step = async (title, work) => {
    const start = performance.now();
    let problem = null;
    try {
      const status = await work();
      if (typeof status === 'number' && status !== 0) problem = `status ${status}`;
    } catch (error) {
      problem = error instanceof Stopped ? error.message : String(error.stack);
    }
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    console.log(problem ? `FAILED ${title}: ${problem}` : `ok     ${title} (${seconds} s)`);
    if (problem) failures.push(title);
    return problem === null;
  };

  let passed = 0;
  let failed = 0;
  if (await step('install', install)) {
    await step('types made', () => tool('@sveltejs/kit', ['sync'], { program: 'svelte-kit' }));
    if (chosen.length === 0) {
      await step('lint', () => tool('eslint', ['.', '--max-warnings', '0']));
      await step('layout', () => tool('prettier', ['--check', '--log-level', 'warn', '.']));
      await step('engine types', () =>
        tool('typescript', ['--project', 'tsconfig.engine.json'], { program: 'tsc' })
      );
      await step('types', () =>
        tool('svelte-check', ['--tsconfig', './tsconfig.json', '--fail-on-warnings'])
      );
    }
    const isBuilt = await step('build', build);
    let chromium = '';
    const hasBrowser = await step('browser', async () => {
      chromium = await needChromium();
    });
    // One project after the other: a server that does not start then costs only its own tests, and
    // the browser has the machine to itself. Without a build or a browser the failure is counted
    // above; the other tests still run.
    for (const project of isBuilt && hasBrowser ? ['unit', 'e2e'] : ['unit']) {
      const { status, counts } = await runTests(
        ['--project', project, '--passWithNoTests', ...chosen],
        { CHROMIUM_PATH: chromium }
      );
      passed += counts.passed;
      failed += counts.failed;
      if (status !== 0 && counts.failed === 0) failures.push(`tests (${project})`);
    }
    if (passed + failed === 0) failures.push('no test was found');
  }

  failed += failures.length;
  if (failures.length > 0) console.log(`\nFailed steps: ${failures.join(', ')}`);
  console.log(`\n${passed} passed, ${failed} failed`);
  if (failed > 0) process.exitCode = 1;
});
