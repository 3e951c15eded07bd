// What the scripts share: where the project is, npm and package programs without a shell, and the
// stamps that let an install or a build be skipped when nothing it reads has changed. Only Node's
// own modules, because these run before anything is installed.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder, wherever the script was called from. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');

/** A failure the reader can act on: printed as one sentence, without a stack. */
export class Stopped extends Error {}

/**
 * Runs a program to its end; its output is ours.
 * @param {string} program
 * @param {string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 * @returns {Promise<number>} the exit status; 1 when a signal ended it
 */
export function run(program, args, options = {}) {
  return new Promise((done, fail) => {
    const child = spawn(program, args, { cwd: root, stdio: 'inherit', ...options });
    child.on('error', fail);
    child.on('close', (status) => done(status ?? 1));
  });
}

/**
 * npm by its own program file where npm started us (no shell, no .cmd file), else by name.
 * @param {string[]} args
 */
export async function npm(...args) {
  const program = process.env.npm_execpath;
  const status =
    program && /\.[cm]?js$/.test(program)
      ? await run(process.execPath, [program, ...args])
      : await run('npm', args, { shell: process.platform === 'win32' });
  if (status !== 0) throw new Stopped(`npm ${args.join(' ')} ended with status ${status}.`);
}

/**
 * A package's program, by the file its package.json names, run with this Node.
 * @param {string} packageName
 * @param {string[]} args
 * @param {{ program?: string, env?: NodeJS.ProcessEnv }} [options] program: which, where a package has several
 * @returns {Promise<number>} the exit status
 */
export function tool(packageName, args, { program, env } = {}) {
  const folder = join(root, 'node_modules', packageName);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = typeof bin === 'string' ? bin : bin[program ?? packageName];
  return run(process.execPath, [join(folder, file), ...args], {
    env: { ...process.env, ...env }
  });
}

/**
 * Every file under the given files and folders, sorted, as paths from the project's folder.
 * @param {string[]} names
 */
function filesUnder(names) {
  /** @type {string[]} */
  const found = [];
  /** @param {string} name */
  const walk = (name) => {
    const path = join(root, name);
    if (!existsSync(path)) return;
    if (statSync(path).isDirectory()) {
      for (const entry of readdirSync(path)) walk(`${name}/${entry}`);
    } else found.push(name);
  };
  names.forEach(walk);
  return found.sort();
}

/**
 * SHA-256 over the names and bytes of the inputs, and over what a build depends on besides.
 * @param {string[]} names
 */
function digest(names) {
  const hash = createHash('sha256').update(
    `${process.versions.node.split('.')[0]} ${process.platform} ${process.arch}`
  );
  for (const name of filesUnder(names)) {
    hash.update(`\0${name}\0`).update(readFileSync(join(root, name)));
  }
  return hash.digest('hex');
}

/**
 * Does the work unless the same inputs were seen at its last success.
 * @param {string} name of the stamp
 * @param {string[]} inputs files and folders
 * @param {string[]} results files that must be there for the work to count as done
 * @param {() => Promise<void>} work
 * @returns {Promise<boolean>} whether the work was done now
 */
export async function once(name, inputs, results, work) {
  const stamp = join(root, 'node_modules', '.stamp', name);
  const now = digest(inputs);
  const done = results.every((file) => existsSync(join(root, file)));
  if (done && existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return false;
  await work();
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, now);
  return true;
}

/** The packages, exactly as locked. A NODE_ENV of production would leave the build's tools out. */
export const install = () =>
  once('install', ['package-lock.json', '.npmrc'], ['node_modules/vite/package.json'], () =>
    npm('ci', '--include=dev')
  );

const BUILD_INPUTS = [
  'src',
  'static',
  'shared',
  'package-lock.json',
  'package.json',
  'svelte.config.js',
  'vite.config.ts',
  'vite.katex.config.ts',
  'vite.server.config.ts'
];

/** @param {string} config file of the build's settings */
async function viteBuild(config) {
  const status = await tool('vite', ['build', '--config', config, '--logLevel', 'warn']);
  if (status !== 0) throw new Stopped(`The build stopped (${config}, status ${status}).`);
}

/** The server's entry and the command line: build/server.js and build/cli.js. */
export const buildPrograms = () =>
  once('programs', BUILD_INPUTS, ['build/server.js', 'build/cli.js'], () =>
    viteBuild('vite.server.config.ts')
  );

/** All of build/. The page comes first, because its build empties the folder. */
export async function build() {
  await once('page', BUILD_INPUTS, ['build/handler.js'], () => viteBuild('vite.config.ts'));
  await buildPrograms();
}

/**
 * The first port from `first` on that nobody on this machine listens to.
 * @param {number} first
 * @returns {Promise<number>}
 */
export async function freePort(first) {
  for (let port = first; port < first + 100; port++) {
    const isFree = await new Promise((done) => {
      const probe = createServer();
      probe.once('error', () => done(false));
      probe.listen({ port, host: '127.0.0.1', exclusive: true }, () => {
        probe.close(() => done(true));
      });
    });
    if (isFree) return port;
  }
  throw new Stopped(`No port from ${first} to ${first + 99} is free. Set PORT to another one.`);
}

/**
 * Runs a script's main function: a `Stopped` becomes its one sentence, anything else its stack.
 * @param {() => Promise<void>} work
 */
export async function main(work) {
  try {
    await work();
  } catch (error) {
    console.error(error instanceof Stopped ? error.message : error);
    process.exitCode = 1;
  }
}
