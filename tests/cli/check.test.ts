/** `rigwright check`: what it prints, and the status it ends with. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { block, command, drive, inside, needCommand, rigwright, sheetFolder } from './rigwright.ts';

beforeAll(needCommand, 60_000);
const folder = sheetFolder();
afterAll(() => folder.remove());
const check = (...args: string[]): ReturnType<typeof rigwright> =>
  rigwright(['check', ...args], { folder: folder.path });
folder.put('drive.md', drive);
folder.put('inside.md', inside);

describe('the exit status is the highest that applies', () => {
  test.each([
    ['0: no limit over', inside, 0],
    ['1: a limit is over', drive, 1],
    ['1: a requirement is short', block('inputs', 'F = 2 kN') + block('limits', 'a: F >= 3 kN'), 1],
    [
      '1: a screen fails',
      block('inputs', 'F = 2 kN') + block('limits', 'a [screen]: F <= 1 kN'),
      1
    ],
    ['2: a line is in error', `${drive}\n${block('calc', 'x = 2 kg + 3 m')}`, 2],
    [
      '2: a limit cannot be computed',
      block('inputs', 'F = ? N') + block('limits', 'a: F <= 1 kN'),
      2
    ],
    ['0: nothing in the file', '', 0],
    ['0: a file of prose alone', '# Notes\n\nNothing is computed here.\n', 0]
  ])('%s', async (_title, text, status) => {
    const ended = await rigwright(['check', '-'], { input: text });
    expect(ended.err).toBe('');
    expect(ended.status).toBe(status);
  });

  test('over several files', async () => {
    expect((await check('inside.md', 'inside.md')).status).toBe(0);
    expect((await check('inside.md', 'drive.md')).status).toBe(1);
    const missing = await check('drive.md', 'none.md', 'inside.md');
    expect(missing.status).toBe(3);
    expect(missing.err).toBe('rigwright: none.md does not exist.\n');
    expect(missing.out).toContain('Belt drive  drive.md');
    expect(missing.out).toContain('Inside  inside.md');
  });
});

describe('the lines', () => {
  test('are one a limit and stage, [safety] first, then problems, then what was counted', async () => {
    const { out, status } = await check('drive.md');
    expect(status).toBe(1);
    expect(out).toMatchInlineSnapshot(`
      "Belt drive  drive.md

      First sketch (sketch)
        ✓ guard [safety]  1.005 of 5 kW    20 %, within  line 24
        ✓ belt            1.005 of 1.5 kW  67 %, within  line 23

      Bigger motor (upgrade), after First sketch
        ✓ guard [safety]  3.016 of 5 kW    60 %, within  line 24
        ● belt            3.016 of 1.5 kW  201 %, over   line 23

      First sketch  2 checked, 2 inside.
                    Nothing computed here stops the run.
      Bigger motor  2 checked, 1 inside, 1 over.
                    Over: belt.
                    Nothing computed here stops the run.
      No line is in error.
      "
    `);
  });

  test('of a problem name file, line and column, show the place and say what to do', async () => {
    folder.put('wrong.md', block('inputs', 'A = 3 m', 'm_1 = 2 kg') + block('calc', 'x = A + m_1'));
    const { out, status } = await check('wrong.md');
    expect(status).toBe(2);
    expect(out).toMatch(/^wrong\.md:6:5 {2}error {2}.*\bA\b.*\bm_1\b/m);
    expect(out).toMatch(/^ {4}6 │ x = A \+ m_1\n {6}│ {5}\^{7}$/m);
    expect(out.trimEnd()).toMatch(/1 error\.$/);
  });

  test('never call anything safe, fit or permitted', async () => {
    for (const file of ['drive.md', 'inside.md'])
      expect((await check(file)).out).not.toMatch(/\b(safe|fit|permitted|okay|passed)\b/i);
  });

  test('count the parts of which nothing is checked', async () => {
    folder.put('parts.md', inside + block('parts', 'belt guard', 'hub block'));
    expect((await check('parts.md')).out).toContain('2 checked, 2 inside; 2 parts have no check.');
  });

  test('cannot steer a terminal, whatever the sheet says', async () => {
    const text = `# \u001b[2Jtitle \u009b31m\n${block('inputs', 'F = 1 N')}${block('limits', 'a \u001b]0;x\u0007 b: F <= 2 N')}`;
    folder.put('steer.md', text);
    for (const args of [['steer.md'], ['steer.md', '--json']])
      expect((await check(...args)).out).not.toMatch(/(?!\n)\p{Cc}/u);
  });
});

describe('--stage', () => {
  test('shows and judges one stage', async () => {
    const { out, status } = await check('drive.md', '--stage', 'sketch');
    expect(status).toBe(0);
    expect(out).toContain('First sketch (sketch)');
    expect(out).not.toContain('Bigger motor (upgrade)');
  });

  test('that is not there names those that are', async () => {
    const { err, out, status } = await check('drive.md', '--stage', 'refined');
    expect({ err, out, status }).toEqual({
      err: 'rigwright: --stage: drive.md has no stage refined; it has sketch, upgrade.\n',
      out: '',
      status: 3
    });
  });
});

describe('--try', () => {
  test('puts another value for an input everywhere, whatever is revised there', async () => {
    expect((await check('drive.md', '--try', 'T=5 N m')).status).toBe(0);
    expect((await check('drive.md', '--try=T = 90 N m')).out).toContain('Stops the run: guard.');
  });

  test('puts it from a stage on', async () => {
    const { out, status } = await check('drive.md', '--try', 'T@upgrade=9 N m');
    expect(status).toBe(0);
    expect(out).toMatch(/belt +1\.\d+ of 1\.50? kW/);
  });

  test('leaves the file as it is', async () => {
    const { readFileSync } = await import('node:fs');
    await check('drive.md', '--try', 'T=5 N m');
    expect(readFileSync(`${folder.path}/drive.md`, 'utf8')).toBe(drive);
  });

  test.each([
    ['P_rate=1 kW', '--try: drive.md has no input P_rate; nearest: P_rated.'],
    ['P_shaft=1 kW', /--try: P_shaft is computed on line \d+, and only inputs can be tried\./],
    ['T@later=1 N m', '--try T@later: drive.md has no stage later; it has sketch, upgrade.'],
    ['T', /^rigwright: --try is NAME=VALUE or NAME@STAGE=VALUE/]
  ])('of %j is refused with status 3', async (tried, sentence) => {
    const { err, out, status } = await check('drive.md', '--try', tried);
    if (typeof sentence === 'string') expect(err).toBe(`rigwright: ${sentence}\n`);
    else expect(err).toMatch(sentence);
    expect({ out, status }).toEqual({ out: '', status: 3 });
  });

  test.each(['T=5 kg', 'T=5 N m +', 'T=elephant', 'T=1/0 N m'])(
    'of a value that does not do (%j) says so with status 2 or 3',
    async (tried) => {
      const { err, out, status } = await check('drive.md', '--try', tried);
      expect(status).toBeGreaterThanOrEqual(2);
      expect(err + out).toMatch(/\bT\b/);
    }
  );
});

describe('colours', () => {
  test('are not used where the output is no terminal', async () => {
    const ended = await rigwright(['check', 'drive.md'], {
      folder: folder.path,
      environment: { FORCE_COLOR: '1' }
    });
    expect(ended.out).not.toContain('\u001b');
  });

  // util-linux `script` lends the command a terminal.
  test.skipIf(!existsSync('/usr/bin/script'))('are on a terminal, but never with NO_COLOR', () => {
    const onTerminal = (environment: Readonly<Record<string, string>>): string =>
      execFileSync(
        '/usr/bin/script',
        ['-qec', `"${process.execPath}" "${command}" check inside.md`, '/dev/null'],
        {
          cwd: folder.path,
          encoding: 'utf8',
          env: { PATH: process.env.PATH, TERM: 'xterm', ...environment }
        }
      );
    expect(onTerminal({})).toContain('\u001b[32m');
    expect(onTerminal({ NO_COLOR: '1' })).not.toContain('\u001b');
    expect(onTerminal({ TERM: 'dumb' })).not.toContain('\u001b');
  });
});

describe('--out', () => {
  test('takes the lines instead of standard output', async () => {
    const { readFileSync } = await import('node:fs');
    const { out, status } = await check('drive.md', '--out', 'report.txt');
    expect({ out, status }).toEqual({ out: '', status: 1 });
    expect(readFileSync(`${folder.path}/report.txt`, 'utf8')).toContain('Belt drive  drive.md');
  });

  test('never writes over the worksheet, and says where it cannot write', async () => {
    const { readFileSync } = await import('node:fs');
    const same = await check('drive.md', '--out', './drive.md');
    expect(same.status).toBe(3);
    expect(same.err).toContain('is the worksheet itself; nothing was written.');
    expect(readFileSync(`${folder.path}/drive.md`, 'utf8')).toBe(drive);
    expect((await check('drive.md', '--out', 'none/x.txt')).err).toContain('could not be written');
  });
});
