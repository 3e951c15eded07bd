import { describe, expect, test } from 'vitest';
import type { Call } from './args.ts';
import { nearest, parseCall } from './args.ts';
import { commands, helpText, options } from './options.ts';

const words = (line: string): string[] => line.split(' ').filter((word) => word !== '');

function call(line: string): Call {
  const parsed = parseCall(words(line));
  if (parsed.kind !== 'run') throw new Error(JSON.stringify(parsed));
  return parsed;
}

const complaint = (line: string): string => {
  const parsed = parseCall(words(line));
  return parsed.kind === 'wrong' ? parsed.message : `not refused: ${JSON.stringify(parsed)}`;
};

describe('a call', () => {
  test('is read with its files and options in any order, by space or by =', () => {
    expect(call('check --json a.md --stage first-run b.md')).toMatchObject({
      command: 'check',
      operands: ['a.md', 'b.md'],
      json: true,
      stage: 'first-run'
    });
    expect(call('show a.md --format=html --out=x.html')).toMatchObject({
      format: 'html',
      out: 'x.html'
    });
    expect(call('compare a.md --from sketch --to upgrade')).toMatchObject({
      from: 'sketch',
      to: 'upgrade'
    });
    expect(call('serve')).toMatchObject({ command: 'serve', operands: [] });
    expect(call('serve sheets --port 8080')).toMatchObject({ port: 8080 });
  });

  test('takes - for standard input, and what follows -- for files', () => {
    expect(call('check -').operands).toEqual(['-']);
    expect(call('check -- --odd.md').operands).toEqual(['--odd.md']);
  });

  test('tries several inputs, each everywhere or from a stage on', () => {
    const parsed = parseCall(['check', 'a.md', '--try', 'v_top=60 m/s', '--try=C_d@upgrade = 0.3']);
    expect(parsed).toMatchObject({
      tries: [
        { name: 'v_top', stage: null, value: '60 m/s' },
        { name: 'C_d', stage: 'upgrade', value: '0.3' }
      ]
    });
    expect(call('check a.md --try ω=-3rad/s').tries[0]).toEqual({
      name: 'ω',
      stage: null,
      value: '-3rad/s'
    });
  });

  test('for help or the version needs nothing else', () => {
    expect(parseCall(['--help'])).toEqual({ kind: 'help', command: null });
    expect(parseCall(['check', '-h'])).toEqual({ kind: 'help', command: 'check' });
    expect(parseCall(['help', 'show'])).toEqual({ kind: 'help', command: 'show' });
    expect(parseCall(['--version'])).toEqual({ kind: 'version' });
  });
});

describe('a wrong call', () => {
  test.each([
    ['', 'Say what to do: check, show, compare, serve.'],
    ['chekc a.md', 'There is no command "chekc". Nearest: check.'],
    ['a.md', 'There is no command "a.md". To check a worksheet: rigwright check a.md.'],
    ['frobnicate', 'There is no command "frobnicate". Commands: check, show, compare, serve.'],
    ['check', 'check needs a file: rigwright check FILE....'],
    ['show a.md b.md', 'show takes FILE, and 2 were given: a.md, b.md.'],
    ['compare a b c', 'compare takes FILE [FILE], and 3 were given: a, b, c.'],
    ['check a.md --stag x', 'There is no option --stag; nearest: --stage.'],
    ['check a.md -x', 'There is no option -x.'],
    ['check a.md --stage', '--stage needs a value after it: --stage ID.'],
    ['check a.md --stage --json', '--stage needs a value after it: --stage ID.'],
    ['check a.md --stage=', '--stage was given an empty value.'],
    ['check a.md --json=yes', '--json takes no value, and "yes" was given.'],
    ['check a.md --stage a --stage b', '--stage was given twice: "a" and "b".'],
    ['check a.md --format html', '--format does not belong to check; it belongs to show.'],
    ['compare a.md --stage x', '--stage does not belong to compare; it belongs to check, show.'],
    [
      'show a.md --format pdf',
      '--format is text, markdown, html, csv, latex, and "pdf" was given.'
    ],
    ['show a.md --json --format csv', '--json and --format ask for two different outputs.'],
    ['serve --port 0', '--port is a whole number from 1 to 65535, and "0" was given.'],
    ['serve --port 80a', '--port is a whole number from 1 to 65535, and "80a" was given.'],
    ['check - -', 'Standard input (-) can be read once, and was given twice.'],
    ['check a.md --try v_top', '--try is NAME=VALUE or NAME@STAGE=VALUE, for example v_top=60m/s, and "v_top" was given.'], // prettier-ignore
    ['check a.md --try v==3', '--try is NAME=VALUE or NAME@STAGE=VALUE, for example v_top=60m/s, and "v==3" was given.'], // prettier-ignore
    ['check a.md --try v=', '--try is NAME=VALUE or NAME@STAGE=VALUE, for example v_top=60m/s, and "v=" was given.'], // prettier-ignore
    ['check a.md --try v=1 --try v=2', '--try gives v two values, "1" and "2".'],
    [
      'compare a.md b.md --try v=1',
      '--try sets a file against itself: give compare one FILE with it.'
    ]
  ])('%j gets one sentence that names the word at fault', (line, sentence) => {
    expect(complaint(line)).toBe(sentence);
  });
});

describe('the table of options', () => {
  test('has every option and command in the help, and no line over 100 columns', () => {
    const help = helpText(null);
    for (const { name } of options) expect(help).toContain(`--${name}`);
    for (const { name } of commands) expect(help).toContain(`rigwright ${name}`);
    for (const line of help.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('shows of one command its own options only', () => {
    expect(helpText('serve')).not.toContain('--stage');
    expect(helpText('show')).toContain('--format');
  });
});

test('the nearest word is at most two letters away', () => {
  expect(nearest('stagee', ['stage', 'json'])).toBe('stage');
  expect(nearest('x', ['json'])).toBeNull();
  expect(nearest('a', ['b'])).toBeNull();
});
