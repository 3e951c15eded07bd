import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  decodeText,
  LARGEST_FILE,
  safeParts,
  worksheetFolder,
  type WorksheetFolder
} from './index.ts';

let base: string;
let folder: WorksheetFolder;

beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'rigwright-shelf-'));
  const sheets = join(base, 'sheets');
  mkdirSync(join(sheets, 'tables'), { recursive: true });
  mkdirSync(join(sheets, 'folder.md'));
  mkdirSync(join(base, 'shared'));
  mkdirSync(join(base, 'sheets-of-another'));
  writeFileSync(join(base, 'secret.md'), 'secret');
  writeFileSync(join(base, 'sheets-of-another', 'a.md'), 'another');
  writeFileSync(join(sheets, 'plain.md'), '# Plain ω\r\n');
  writeFileSync(join(sheets, 'marked.md'), '\ufeff# Marked');
  writeFileSync(join(sheets, 'latin.md'), Buffer.from('first\nsecond\nbr\xfcchig\n', 'latin1'));
  writeFileSync(join(sheets, 'sixteen.md'), Buffer.from('\ufeff# Wide', 'utf16le'));
  writeFileSync(join(sheets, 'zero-byte.md'), 'a\0b');
  writeFileSync(join(sheets, 'empty.md'), '');
  writeFileSync(join(sheets, 'large.md'), Buffer.alloc(LARGEST_FILE + 1, 32));
  writeFileSync(join(sheets, 'notes.txt'), 'not a worksheet');
  writeFileSync(join(sheets, '.hidden.md'), 'hidden');
  writeFileSync(join(sheets, 'tables', 'tubes.csv'), 'beside');
  writeFileSync(join(base, 'shared', 'bearings.csv'), 'shared');
  writeFileSync(join(base, 'shared', 'tubes.csv'), 'shared tubes');
  symlinkSync(join(base, 'secret.md'), join(sheets, 'way-out.md'));
  symlinkSync(join(base, 'sheets-of-another'), join(sheets, 'door'));
  symlinkSync(join(sheets, 'plain.md'), join(sheets, 'inside-link.md'));
  symlinkSync(join(base, 'nowhere.md'), join(sheets, 'dangling.md'));
  folder = worksheetFolder(sheets, join(base, 'shared'));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const faultOf = async (file: string): Promise<string> => {
  const found = await folder.read(file);
  return found.kind === 'fault' ? found.fault : found.kind;
};

describe('names', () => {
  test.each([
    '../secret.md',
    'tables/../../secret.md',
    '/etc/passwd.md',
    '..\\secret.md',
    'C:/x.md',
    '.hidden.md',
    './plain.md',
    'a//b.md',
    'plain.md\0.md',
    '',
    'con.md',
    '..',
    'door/../../secret.md',
    'a\nb.md'
  ])('%j is refused before the disk is asked', async (name) => {
    // prettier-ignore
    expect(safeParts(name)).toBeNull();
    expect(await faultOf(name)).toBe('name');
  });

  test('only .md files are worksheets', async () => {
    expect(await faultOf('notes.txt')).toBe('name');
  });

  test('percent signs are plain characters: nothing is decoded twice', async () => {
    expect(await faultOf('%2e%2e%2fsecret.md')).toBe('missing');
  });
});

describe('links', () => {
  test.each(['way-out.md', 'door/a.md'])(
    '%s leads out of the folder and is refused',
    async (name) => {
      expect(await faultOf(name)).toBe('outside');
    }
  );

  test('a link that stays inside is followed', async () => {
    expect(await folder.read('inside-link.md')).toMatchObject({
      kind: 'text',
      text: '# Plain ω\r\n'
    });
  });

  test('a link that leads nowhere is missing', async () => {
    expect(await faultOf('dangling.md')).toBe('missing');
  });
});

describe('reading', () => {
  test('line ends and a byte order mark are kept', async () => {
    expect(await folder.read('plain.md')).toMatchObject({ text: '# Plain ω\r\n' });
    expect(await folder.read('marked.md')).toMatchObject({ text: '\ufeff# Marked' });
    expect(await folder.read('empty.md')).toMatchObject({ text: '' });
  });

  test.each([
    ['latin.md', 'encoding', 'line 3'],
    ['sixteen.md', 'encoding', 'UTF-16'],
    ['zero-byte.md', 'encoding', 'NUL'],
    ['large.md', 'too-large', '5.0 MB'],
    ['folder.md', 'not-a-file', 'not a file'],
    ['absent.md', 'missing', 'absent.md']
  ])('%s: one sentence of kind %s that says "%s"', async (name, kind, words) => {
    const found = await folder.read(name);
    expect(found).toMatchObject({ kind: 'fault', fault: kind });
    expect(found.kind === 'fault' && found.message).toContain(words);
    expect(found.kind === 'fault' && found.message).not.toContain(base);
  });

  test('a list holds the worksheets, not hidden files, other files or folders', async () => {
    const found = await folder.list();
    const names = found.kind === 'listing' ? found.entries.map((entry) => entry.file).sort() : [];
    expect(names).toEqual(
      ['dangling', 'empty', 'inside-link', 'large', 'latin', 'marked', 'plain', 'sixteen', 'way-out', 'zero-byte']
        .map((name) => `${name}.md`) // prettier-ignore
    );
  });

  test('a folder that is not there is told, not thrown', async () => {
    const found = await worksheetFolder(join(base, 'gone'), null).list();
    expect(found).toMatchObject({
      kind: 'fault',
      message: expect.stringContaining('not there') as string
    });
  });
});

describe('tables', () => {
  test('are looked up beside the sheet first, then in the shared folder', async () => {
    expect(await folder.readTable('tables/tubes.csv')).toMatchObject({ text: 'beside' });
    expect(await folder.readTable('tubes.csv')).toMatchObject({ text: 'shared tubes' });
    expect(await folder.readTable('bearings.csv')).toMatchObject({ text: 'shared' });
  });

  test.each(['../shared/bearings.csv', '/etc/passwd'])('%s is refused', async (path) => {
    expect(await folder.readTable(path)).toMatchObject({ fault: 'name' });
  });
});

test('each odd encoding is refused with its reason', () => {
  expect(decodeText(Uint8Array.of(0xc3))).toMatchObject({
    reason: expect.stringContaining('line 1') as string
  });
  expect(decodeText(Uint8Array.of(0x61, 0x0a, 0xed, 0xa0, 0x80)).kind).toBe('refused'); // lone surrogate
  expect(decodeText(Uint8Array.of(0xc0, 0xaf)).kind).toBe('refused'); // overlong slash, RFC 3629 section 10
  expect(decodeText(Uint8Array.of(0xf0, 0x9d, 0x9c, 0x94))).toEqual({ kind: 'text', text: '𝜔' });
});
