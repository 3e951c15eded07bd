/** `rigwright show`: the whole sheet in each of its forms. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { drive, needCommand, projectFolder, rigwright, sheetFolder } from './rigwright.ts';

beforeAll(needCommand, 60_000);
const folder = sheetFolder();
afterAll(() => folder.remove());
folder.put('drive.md', drive);
const show = (...args: string[]): ReturnType<typeof rigwright> =>
  rigwright(['show', ...args], { folder: folder.path });

describe('a sheet', () => {
  test('as text has its prose with values, a row a quantity and the counts', async () => {
    const { out, err, status } = await show('drive.md');
    expect({ err, status }).toEqual({ err: '', status: 1 });
    expect(out).toMatch(/^Belt drive\n/);
    expect(out).toMatch(
      /the shaft takes\s1\.005\skW \(First sketch\),\s3\.016\skW \(Bigger motor\)/
    );
    expect(out).toMatch(/sketch +upgrade\n/);
    expect(out).toMatch(/^ {2}P_shaft +1\.005 +3\.016 +kW$/m);
    expect(out).toContain('Over: belt.');
  });

  test('of one stage has no other', async () => {
    const { out, status } = await show('drive.md', '--stage', 'sketch');
    expect(status).toBe(0);
    expect(out).not.toContain('3.016');
  });

  test.each([
    ['markdown', /\| `P_shaft` +\| 1\.005 +\| 3\.016 +\| kW/],
    ['html', /<!doctype html>[^]*<math[^]*1\.005/],
    ['csv', /^line,kind,name,stage,[^]*\r\n\d+,calc,P_shaft,sketch,,1\.00530964914873\d*,kW/],
    ['latex', /\\begin\{document\}[^]*P_\{\\mathrm\{shaft\}\}[^]*1\.005[^]*\\end\{document\}/]
  ])('as %s', async (format, expected) => {
    const { out, err, status } = await show('drive.md', '--format', format);
    expect({ err, status }).toEqual({ err: '', status: 1 });
    expect(out).toMatch(expected);
  });

  test('goes to a file, whose ending tells the form unless --format does', async () => {
    await show('drive.md', '--out', 'x.html');
    expect(readFileSync(join(folder.path, 'x.html'), 'utf8')).toMatch(/^<!doctype html>/);
    await show('drive.md', '--out', 'y.html', '--format', 'csv');
    expect(readFileSync(join(folder.path, 'y.html'), 'utf8')).toMatch(/^line,kind/);
  });

  test('with a try shows its values', async () => {
    expect((await show('drive.md', '--try', 'T=4 N m')).out).toMatch(
      /P_shaft +0\.5027 +0\.5027 +kW/
    );
  });

  test('of standard input needs no file', async () => {
    const { out } = await rigwright(['show', '-'], { input: drive });
    expect(out).toMatch(/^Belt drive\n/);
  });

  test('of the project is shown in every form', async () => {
    for (const name of ['spray-arm-rig.md', 'doubling-speed.md'])
      for (const format of ['text', 'markdown', 'html', 'csv', 'latex']) {
        const file = join(projectFolder, 'worksheets', name);
        const { out, err, status } = await show(file, '--format', format);
        expect(err).toBe('');
        expect(status).toBeLessThan(3);
        expect(out.length).toBeGreaterThan(2000);
      }
  });
});
