import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { mostBytes, readTables, readText } from './files.ts';

const folder = mkdtempSync(join(tmpdir(), 'rigwright-files-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function put(name: string, bytes: string | Buffer): string {
  const path = join(folder, name);
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, bytes);
  return path;
}

async function refusal(file: string): Promise<string> {
  const read = await readText(file);
  return read.kind === 'refused' ? read.message.replaceAll(folder, 'DIR') : `read: ${read.text}`;
}

describe('a file', () => {
  test('is read byte for byte, its byte order mark and line ends included', async () => {
    const read = await readText(put('good.md', '\ufeffa\r\nω\n'));
    expect(read).toEqual({ kind: 'text', text: '\ufeffa\r\nω\n' });
    expect(await readText(put('empty.md', ''))).toEqual({ kind: 'text', text: '' });
  });

  test('that is missing, a folder or a link to itself gets one sentence', async () => {
    expect(await refusal(join(folder, 'none.md'))).toBe('DIR/none.md does not exist.');
    expect(await refusal(folder)).toBe('DIR is a folder; name a worksheet in it.');
    expect(await refusal(join(put('plain.md', ''), 'under.md'))).toBe(
      'DIR/plain.md/under.md does not exist: a part of its path is a file, not a folder.'
    );
    symlinkSync(join(folder, 'loop.md'), join(folder, 'loop.md'));
    expect(await refusal(join(folder, 'loop.md'))).toBe(
      'DIR/loop.md is a link that leads to itself.'
    );
  });

  test.skipIf(process.getuid?.() === 0)('that may not be read says so', async () => {
    const path = put('secret.md', 'x');
    chmodSync(path, 0);
    expect(await refusal(path)).toBe(
      'DIR/secret.md may not be read: this user has no right to it.'
    );
  });

  test('that is not UTF-8 is told with the first line at fault', async () => {
    const latin = put('latin.md', Buffer.from('one\ntwo\nD\xfcse\n', 'latin1'));
    expect(await refusal(latin)).toBe(
      'DIR/latin.md is not UTF-8 text: line 3 holds other bytes. Save it as UTF-8.'
    );
    const wide = put('wide.md', Buffer.from('\ufeffa ü', 'utf16le'));
    expect(await refusal(wide)).toBe(
      'DIR/wide.md is not UTF-8 text: it is UTF-16. Save it as UTF-8.'
    );
  });

  test('of more than 5 MB is refused unread, one of exactly 5 MB is read', async () => {
    expect(await refusal(put('over.md', Buffer.alloc(mostBytes + 1, 'a')))).toBe(
      'DIR/over.md is 5.0 MB; a worksheet of at most 5 MB is read.'
    );
    expect((await readText(put('full.md', Buffer.alloc(mostBytes, 'a')))).kind).toBe('text');
  });

  test.skipIf(process.platform === 'win32')(
    'without end is refused as soon as it is over',
    async () => {
      expect(await refusal('/dev/zero')).toBe(
        '/dev/zero is larger than 5 MB; a worksheet of at most 5 MB is read.'
      );
    }
  );

  test.skipIf(process.platform === 'win32')('may be a pipe', async () => {
    const pipe = join(folder, 'pipe');
    execFileSync('mkfifo', [pipe]);
    const reading = readText(pipe);
    execFileSync('sh', ['-c', `printf 'a = 1' > '${pipe}' &`]);
    expect(await reading).toEqual({ kind: 'text', text: 'a = 1' });
  });
});

describe('tables', () => {
  const wanted = (...paths: string[]): { path: string; line: number }[] =>
    paths.map((path, index) => ({ path, line: index + 1 }));

  test('are looked up beside the worksheet, then in the product’s own shared folder', async () => {
    put('tables/motors.csv', 'name, P\n');
    const { files, notices } = await readTables(wanted('tables/motors.csv', 'none.csv'), folder);
    expect([...files]).toEqual([['tables/motors.csv', 'name, P\n']]);
    expect(notices).toEqual([]);
  });

  test('outside of both folders are not read, by any way out', async () => {
    const outside = mkdtempSync(join(tmpdir(), 'rigwright-outside-'));
    const secret = join(outside, 'secret.csv');
    writeFileSync(secret, 'secret');
    symlinkSync(secret, join(folder, 'link.csv'));
    const paths = [secret, '../'.repeat(20) + secret.slice(1), 'link.csv', '', '.', 'a\0b', '..'];
    const { files } = await readTables(wanted(...paths), folder);
    expect([...files.keys()]).toEqual([]);
    rmSync(outside, { recursive: true });
  });

  test('that are there but cannot be read are told with the line that asks', async () => {
    put('bad.csv', Buffer.from([0x61, 0xff]));
    const { files, notices } = await readTables(wanted('bad.csv'), folder);
    expect(files.size).toBe(0);
    expect(notices[0]).toMatch(/^Line 1 asks for a table: .*bad\.csv is not UTF-8 text: line 1/);
  });
});
