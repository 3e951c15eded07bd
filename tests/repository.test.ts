/**
 * What must hold for the repository as a whole: no address of the machine it was made on, a lock file
 * that works with any registry, no test left out, no promise left in a comment.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const LARGEST_TEXT_BYTES = 2_000_000;
/** This file spells out what it looks for. */
const SELF = 'tests/repository.test.ts';

/** Files under version control, and new ones that are not ignored, that exist and are text. */
const files = execFileSync(
  'git',
  ['ls-files', '-z', '--cached', '--others', '--exclude-standard'],
  {
    cwd: root,
    encoding: 'utf8'
  }
)
  .split('\0')
  .filter((path) => path !== '' && existsSync(join(root, path)))
  .filter((path) => statSync(join(root, path)).size <= LARGEST_TEXT_BYTES)
  .map((path) => ({ path, bytes: readFileSync(join(root, path)) }))
  .filter(({ bytes }) => !bytes.subarray(0, 8000).includes(0))
  .map(({ path, bytes }) => ({ path, text: bytes.toString('utf8') }));

/** `path:line: the line` for every line of these files that the pattern matches. */
function matches(pattern: RegExp, wanted: (path: string) => boolean): string[] {
  return files
    .filter(({ path }) => path !== SELF && wanted(path))
    .flatMap(({ path, text }) =>
      text
        .split('\n')
        .flatMap((line, index) =>
          pattern.test(line) ? [`${path}:${index + 1}: ${line.trim().slice(0, 120)}`] : []
        )
    );
}

const isCode = (path: string): boolean => /\.(ts|js|mjs|svelte)$/.test(path);
const isTest = (path: string): boolean => /\.(test|e2e)\.ts$/.test(path);

test('the lock file names no registry and every package by its digest', () => {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { resolved?: string; integrity?: string }>;
  };
  const packages = Object.entries(lock.packages).filter(([path]) => path !== '');
  expect(packages.length).toBeGreaterThan(100);
  expect(packages.filter(([, entry]) => entry.resolved !== undefined)).toEqual([]);
  expect(packages.filter(([, entry]) => entry.integrity === undefined)).toEqual([]);
});

test('package.json gives exact versions only', () => {
  const { dependencies, devDependencies } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8')
  ) as Record<'dependencies' | 'devDependencies', Record<string, string>>;
  const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
    ([, version]) => !/^\d+\.\d+\.\d+$/.test(version)
  );
  expect(loose).toEqual([]);
});

test('no file names a folder of the machine it was written on', () => {
  const pattern = /(^|[^\w.~@/-])\/(work|tmp|root|home|Users|mnt|opt)\/\w/;
  expect(matches(pattern, () => true)).toEqual([]);
});

test('no file names a package registry', () => {
  const pattern =
    /registry\.(npmjs|yarnpkg)|\bnpmmirror|\bartifactory|\bverdaccio|_authToken|:_auth/i;
  expect(matches(pattern, () => true)).toEqual([]);
});

// `skipIf` stays allowed: some systems lack a pipe, or a file nobody may read.
test('no test is left out or run alone', () => {
  const pattern = /\b(test|it|describe)(\.\w+)*\.(only|skip|todo|fails)\b|\b(xit|xtest|fit)\(/;
  expect(matches(pattern, (path) => isCode(path) && path.startsWith('src/'))).toEqual([]);
  expect(matches(pattern, isTest)).toEqual([]);
});

test('no source leaves a promise in a comment', () => {
  const pattern = /\b(TODO|FIXME|XXX|HACK)\b/;
  expect(matches(pattern, (path) => isCode(path) && !path.startsWith('tests/'))).toEqual([]);
});

test('no source switches off the type checker', () => {
  const pattern = /@ts-(ignore|nocheck)\b/;
  expect(
    matches(pattern, (path) => /\.(ts|svelte)$/.test(path) && path.startsWith('src/'))
  ).toEqual([]);
});
