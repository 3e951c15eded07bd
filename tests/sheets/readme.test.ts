// What the README prints is what the command prints: every console listing in it is run again.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { needCommand, projectFolder, rigwright, sheetFolder } from '../cli/rigwright.ts';

const readme = readFileSync(join(projectFolder, 'README.md'), 'utf8');
const listings = [...readme.matchAll(/^```console\n\$ npx rigwright (.*)\n([^]*?)^```$/gm)];
const mistaken = /With this as `fan\.md`:\n\n````markdown\n([^]*?)^````$/m.exec(readme)?.[1] ?? '';

beforeAll(needCommand, 60_000);
const folder = sheetFolder();
afterAll(() => folder.remove());
folder.put('fan.md', mistaken);

/** Words of a call; a word in single quotes may hold spaces. */
const wordsOf = (call: string): string[] =>
  [...call.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');

const withoutEnds = (text: string): string => text.replace(/[ \t]+$/gm, '').trim();

describe('a listing of the README is what the command prints', () => {
  test('there are listings', () => {
    expect(listings.length).toBeGreaterThanOrEqual(4);
    expect(mistaken).toContain('P_total');
  });

  for (const [, call = '', printed = ''] of listings) {
    test(call, async () => {
      const isFan = call.includes('fan.md');
      const options = isFan ? { folder: folder.path } : {};
      const { out, err, status } = await rigwright(wordsOf(call), options);
      expect(err).toBe('');
      expect(status).toBe(isFan ? 2 : call.startsWith('check') ? 1 : status);
      const whole = withoutEnds(out);
      // A line with … stands for lines that are left out; the others follow each other as printed.
      let from = 0;
      for (const run of printed.split(/^…$/m).map(withoutEnds)) {
        expect(whole.slice(from)).toContain(run);
        from = whole.indexOf(run, from) + run.length;
      }
    });
  }
});
