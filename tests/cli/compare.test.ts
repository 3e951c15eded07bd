/** `rigwright compare`: between stages, between files, and against a try. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { block, drive, inside, needCommand, rigwright, sheetFolder } from './rigwright.ts';

beforeAll(needCommand, 60_000);
const folder = sheetFolder();
afterAll(() => folder.remove());
folder.put('drive.md', drive);
folder.put('inside.md', inside);
folder.put('later.md', drive.replace('P_rated = 1.5 kW', 'P_rated = 4 kW'));
const compare = (...args: string[]): ReturnType<typeof rigwright> =>
  rigwright(['compare', ...args], { folder: folder.path });

describe('between the stages of a file', () => {
  test('each stage is set against its parent', async () => {
    const { out, status } = await compare('drive.md');
    expect(status).toBe(1);
    expect(out).toMatch(/^First sketch to Bigger motor\n/);
    expect(out).toMatch(/What changed\n +T +8 N m → 24 N m +×3\.0 +line \d+ +the bigger motor/);
    expect(out).toMatch(
      /Limits that flipped\n +● belt +no longer inside +67 %, within → 201 %, over/
    );
    expect(out).toMatch(
      /stayed put while their load grew\n[^]*belt +1\.5 kW +67 % → 201 %, over +×3\.0/
    );
    expect(out).toMatch(/Results that moved\n +P_shaft +×3\.0/);
  });

  test('--from and --to choose any two', async () => {
    const { out, status } = await compare('drive.md', '--from', 'upgrade', '--to', 'sketch');
    expect(status).toBe(0);
    expect(out).toContain('Bigger motor to First sketch');
    expect(out).toContain('inside again');
  });

  test.each([
    [['inside.md'], 'inside.md has one stage, design: give a second file, or a value to try with --try.'],
    [['drive.md', '--from', 'none'], '--from: drive.md has no stage none; it has sketch, upgrade.'],
    [['drive.md', '--to', 'none'], '--to: drive.md has no stage none; it has sketch, upgrade.'],
    [['drive.md', '--from', 'upgrade'], 'No stage of drive.md starts from upgrade: name the other stage with --to.'],
    [['drive.md', '--to', 'sketch'], 'sketch starts from no other stage of drive.md: name the other stage with --from.'],
    [['drive.md', 'inside.md'], 'drive.md has the stages sketch, upgrade, inside.md has design: say which to compare with --from and --to.'],
    [['none.md', 'drive.md'], 'none.md does not exist.']
  ])('%j is refused in one sentence', async (args, sentence) => {
    const { out, err, status } = await compare(...args);
    expect({ out, err, status }).toEqual({ out: '', err: `rigwright: ${sentence}\n`, status: 3 });
  }); // prettier-ignore
});

describe('between two files', () => {
  test('stages of the same id face each other', async () => {
    const { out, status } = await compare('drive.md', 'later.md');
    expect(status).toBe(0);
    expect(out).toContain('Bigger motor, drive.md to Bigger motor, later.md');
    expect(out).toMatch(/P_rated +1\.5 kW → 4 kW/);
    expect(out).toContain('inside again');
  });

  test('names and labels of one side only are told', async () => {
    folder.put('more.md', drive + block('calc', 'P_twice = 2*P_shaft'));
    const { out } = await compare('drive.md', 'more.md', '--from', 'sketch', '--to', 'sketch');
    expect(out).toContain('Only after the change: P_twice.');
  });
});

describe('against a try', () => {
  test('every stage is set against itself', async () => {
    const { out, status } = await compare('drive.md', '--try', 'n=600 rpm');
    expect(status).toBe(1);
    expect(out).toContain('First sketch, trying n = 600 rpm');
    expect(out).toContain('Bigger motor, trying n = 600 rpm');
    expect(out).toContain('×0.50');
  });

  test('also one from a stage on', async () => {
    const { out } = await compare('drive.md', '--try', 'T@upgrade=12 N m', '--to', 'upgrade');
    expect(out).toMatch(/^Bigger motor, trying T = 12 N m from upgrade on\n/);
    expect(out).not.toContain('First sketch');
  });
});

test('a line in error makes the status 2 and is shown', async () => {
  folder.put('broken.md', drive + block('calc', 'x = 2 kg + 3 m'));
  const { out, status } = await compare('broken.md');
  expect(status).toBe(2);
  expect(out).toMatch(/^broken\.md:\d+:5 {2}error/m);
});
