// Runs the built command as a person does, and makes small sheets for it in a folder of their own.

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { buildPrograms } from '../../scripts/common.mjs';

export const projectFolder = resolve(import.meta.dirname, '../..');
export const command = join(projectFolder, 'build', 'cli.js');

/** Builds the command where it is missing; `npm test` builds it anew before any test. */
export async function needCommand(): Promise<void> {
  if (!existsSync(command)) await buildPrograms();
}

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
  readonly milliseconds: number;
}

export interface RunOptions {
  readonly input?: string | Buffer;
  readonly folder?: string;
  readonly environment?: Readonly<Record<string, string>>;
}

/** One call of the command; it is killed after 20 s, with status null. */
export function rigwright(args: readonly string[], options: RunOptions = {}): Promise<Ended> {
  const start = performance.now();
  const child = spawn(process.execPath, [command, ...args], {
    cwd: options.folder ?? projectFolder,
    env: { PATH: process.env.PATH, ...options.environment },
    stdio: ['pipe', 'pipe', 'pipe'],
    timeout: 20_000
  });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
  // A command that refuses its call does not read: the pipe then closes early.
  child.stdin.on('error', () => undefined);
  child.stdin.end(options.input ?? '');
  return new Promise((done, fail) => {
    child.on('error', fail);
    child.on('close', (status) =>
      done({ status, out, err, milliseconds: performance.now() - start })
    );
  });
}

export interface SheetFolder {
  readonly path: string;
  /** Writes a file and gives its path. */
  put(name: string, content: string | Buffer): string;
  remove(): void;
}

/** A folder for a test's files. */
export function sheetFolder(): SheetFolder {
  const path = mkdtempSync(join(tmpdir(), 'rigwright-cli-'));
  return {
    path,
    put(name, content) {
      const file = join(path, name);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, content);
      return file;
    },
    remove: () => rmSync(path, { recursive: true, force: true })
  };
}

/** A block of a worksheet. */
export const block = (head: string, ...lines: readonly string[]): string =>
  `\`\`\`${head}\n${lines.join('\n')}\n\`\`\`\n`;

/** An invented belt drive of two stages: inside at the first, over at the second. */
export const drive = `---
title: Belt drive
stages:
  sketch: First sketch
  upgrade: Bigger motor
---

An invented drive: the shaft takes {P_shaft}.

${block(
  'inputs',
  'T = 8 N m        # torque at the shaft; invented',
  '  at upgrade: 24 N m   # the bigger motor; invented',
  'n = 1200 rpm within 300 rpm .. 3000 rpm   # speed; invented',
  'P_rated = 1.5 kW # of the belt; invented'
)}
${block('calc', 'omega = n to rad/s', 'P_shaft = T*omega to kW   # power at the shaft')}
${block('limits', 'belt: P_shaft <= P_rated   # maker', 'guard [safety]: P_shaft <= 5 kW')}
`;

/** One stage, every limit inside. */
export const inside = `# Inside

${block('inputs', 'F = 2 kN   # invented')}
${block('limits', 'pull: F <= 4 kN', 'need: F >= 1 kN')}
`;
