// Runs the long files of one kind, benches or soaks, as plain JavaScript. Each file is bundled with
// what it imports and runs in a Node of its own, so that nothing is measured through a loader and no
// file inherits the heap or the optimised code of the one before.
//
// A file exports `title` and `async run(print)`, prints its figures by `print(line)`, and throws when
// what it checks does not hold. The current folder is the project's.
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { Stopped, buildPrograms, install, root, run } from './common.mjs';

/**
 * @param {'bench' | 'soak'} kind files are tests/KIND/NAME.KIND.ts
 * @param {string[]} chosen parts of names; none means all
 */
export async function runAll(kind, chosen) {
  await install();
  await buildPrograms(); // the start of the command line is measured on the real one

  const folder = join(root, 'tests', kind);
  const ending = `.${kind}.ts`;
  const all = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith(ending)) : [];
  const names = all
    .map((file) => file.slice(0, -ending.length))
    .filter((name) => chosen.length === 0 || chosen.some((part) => name.includes(part)))
    .sort();
  if (names.length === 0) {
    const known = all.map((file) => file.slice(0, -ending.length)).join(', ') || 'none';
    throw new Stopped(`No file tests/${kind}/*${ending} fits. There are: ${known}.`);
  }

  const outDir = join(root, 'node_modules', `.${kind}`);
  rmSync(outDir, { recursive: true, force: true });
  const vite = await import('vite');
  await vite.build({
    root,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir,
      target: 'node20',
      rolldownOptions: {
        input: Object.fromEntries(names.map((name) => [name, join(folder, name + ending)])),
        output: { entryFileNames: '[name].mjs', chunkFileNames: 'own/[name]-[hash].mjs' }
      }
    }
  });

  const machine = cpus();
  console.log(
    `${kind}: Node ${process.version}, ${machine.length} x ${machine[0]?.model.trim() ?? 'unknown processor'}, ${process.platform}`
  );
  const failed = [];
  for (const name of names) {
    const file = join(outDir, `${name}.mjs`);
    const status = await run(process.execPath, [
      '--expose-gc',
      join(root, 'scripts', 'run-one.mjs'),
      file
    ]);
    if (status !== 0) failed.push(name);
  }
  if (failed.length > 0) throw new Stopped(`Failed: ${failed.join(', ')}.`);
}
