// What the README prints is what the command prints: every console listing in it is run again.
// UPDATE=1 writes the listings anew, with the same lines left out; review the diff.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { needCommand, projectFolder, rigwright, sheetFolder } from '../cli/rigwright.ts';

const path = join(projectFolder, 'README.md');
const readme = readFileSync(path, 'utf8');
const listings = [...readme.matchAll(/^```console\n\$ npx rigwright (.*)\n([^]*?)^```$/gm)];
const mistaken = /With this as `fan\.md`:\n\n````markdown\n([^]*?)^````$/m.exec(readme)?.[1] ?? '';

beforeAll(needCommand, 60_000);
const folder = sheetFolder();
afterAll(() => folder.remove());
folder.put('fan.md', mistaken);

/** Words of a call; a word in single quotes may hold spaces. */
const wordsOf = (call: string): string[] =>
  [...call.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');

const linesOf = (text: string): string[] =>
  text
    .replace(/[ \t]+$/gm, '')
    .trim()
    .split('\n');

/** What a line is about, whatever its figures are: its first words. */
const subjectOf = (line: string): string => line.slice(0, 44).replace(/[^a-z]+/gi, ' ');

/** The printed lines with the figures of the output; a line with … stands for lines left out. */
function renewed(printed: readonly string[], output: readonly string[]): string[] {
  let at = 0;
  return printed.map((line, i) => {
    if (line === '…') return line;
    if (printed[i - 1] === '…') {
      const found = output.findIndex((each, k) => k >= at && subjectOf(each) === subjectOf(line));
      if (found < 0) throw new Error(`no line of the output is about "${line}"`);
      at = found;
    }
    return output[at++] ?? '';
  });
}

describe('a listing of the README is what the command prints', () => {
  test('there are listings', () => {
    expect(listings.length).toBeGreaterThanOrEqual(4);
    expect(mistaken).toContain('P_total');
  });

  for (const [whole, call = '', text = ''] of listings) {
    test(call, async () => {
      const isFan = call.includes('fan.md');
      const { out, err } = await rigwright(wordsOf(call), isFan ? { folder: folder.path } : {});
      expect(err).toBe('');
      const printed = linesOf(text);
      const now = renewed(printed, linesOf(out));
      if (process.env['UPDATE'] === '1') {
        const listing = `\`\`\`console\n$ npx rigwright ${call}\n${now.join('\n')}\n\`\`\``;
        writeFileSync(
          path,
          readFileSync(path, 'utf8').replace(whole, () => listing)
        );
      } else expect(now).toEqual(printed);
    });
  }

  test('the statuses that it tells of', async () => {
    expect((await rigwright(['check', 'worksheets/spray-arm-rig.md'])).status).toBe(1);
    expect((await rigwright(['check', 'fan.md'], { folder: folder.path })).status).toBe(2);
  });
});
