// The commands and options of the command line, in one table: reading a call, checking it and the
// help text all go by these rows.

import { wrap } from '#lib/render/index.ts';

export const commandNames = ['check', 'show', 'compare', 'serve'] as const;
export type CommandName = (typeof commandNames)[number];

export interface CommandRow {
  readonly name: CommandName;
  /** What stands after the name. */
  readonly operands: string;
  readonly least: number;
  readonly most: number;
  readonly purpose: string;
}

export const commands: readonly CommandRow[] = [
  {
    name: 'check',
    operands: 'FILE...',
    least: 1,
    most: Infinity,
    purpose: 'compute, and print one line per limit and per error'
  },
  {
    name: 'show',
    operands: 'FILE',
    least: 1,
    most: 1,
    purpose: 'print the whole sheet with its values'
  },
  {
    name: 'compare',
    operands: 'FILE [FILE]',
    least: 1,
    most: 2,
    purpose: 'what a change reaches: between two stages, two files, or today and a try'
  },
  {
    name: 'serve',
    operands: '[FOLDER]',
    least: 0,
    most: 1,
    purpose: 'the page on this machine, for the worksheets of a folder'
  }
];

export const formats = ['text', 'markdown', 'html', 'csv', 'latex'] as const;
export type Format = (typeof formats)[number];

export type OptionName =
  | 'stage'
  | 'from'
  | 'to'
  | 'try'
  | 'json'
  | 'format'
  | 'out'
  | 'port'
  | 'host'
  | 'secret-file'
  | 'help'
  | 'version';

export interface OptionRow {
  readonly name: OptionName;
  /** null for an option that stands alone. */
  readonly value: string | null;
  readonly repeats: boolean;
  /** Empty: every command and none. */
  readonly commands: readonly CommandName[];
  readonly meaning: string;
}

export const options: readonly OptionRow[] = [
  {
    name: 'stage',
    value: 'ID',
    repeats: false,
    commands: ['check', 'show'],
    meaning: 'only that stage'
  },
  {
    name: 'from',
    value: 'ID',
    repeats: false,
    commands: ['compare'],
    meaning: 'the stage before the change (without it: each stage against its parent)'
  },
  {
    name: 'to',
    value: 'ID',
    repeats: false,
    commands: ['compare'],
    meaning: 'the stage after the change'
  },
  {
    name: 'try',
    value: 'NAME=VALUE',
    repeats: true,
    commands: ['check', 'show', 'compare'],
    meaning: 'another value for an input; NAME@STAGE=VALUE from a stage on; the file is not touched'
  },
  {
    name: 'json',
    value: null,
    repeats: false,
    commands: ['check', 'show', 'compare'],
    meaning: 'the results as JSON; for several files an array, each with its "file"'
  },
  {
    name: 'format',
    value: formats.join('|'),
    repeats: false,
    commands: ['show'],
    meaning: 'what show prints; without it, by the ending of --out, else text'
  },
  {
    name: 'out',
    value: 'FILE',
    repeats: false,
    commands: ['check', 'show', 'compare'],
    meaning: 'write there instead of printing'
  },
  {
    name: 'port',
    value: 'NUMBER',
    repeats: false,
    commands: ['serve'],
    meaning: 'port of the page (without it: 4173 or the next free one)'
  },
  {
    name: 'host',
    value: 'ADDRESS',
    repeats: false,
    commands: ['serve'],
    meaning: 'address to listen on; any but this machine alone needs a secret'
  },
  {
    name: 'secret-file',
    value: 'FILE',
    repeats: false,
    commands: ['serve'],
    meaning: 'holds the secret that --host asks for (or RIGWRIGHT_SECRET)'
  },
  { name: 'help', value: null, repeats: false, commands: [], meaning: 'this text' },
  { name: 'version', value: null, repeats: false, commands: [], meaning: 'the version' }
];

const HELP_WIDTH = 100;

/** The help text: of one command, or of all. */
export function helpText(command: CommandName | null): string {
  const shown = commands.filter((row) => command === null || row.name === command);
  const rows = options.filter(
    (row) => command === null || row.commands.length === 0 || row.commands.includes(command)
  );
  const sections: (readonly string[])[] = [
    inTwoColumns(shown.map((row) => [`rigwright ${row.name} ${row.operands}`, row.purpose])),
    inTwoColumns(
      rows.map((row) => {
        const of = command === null ? row.commands : [];
        return [
          optionHead(row),
          of.length === 0 ? row.meaning : `${row.meaning} (${of.join(', ')})`
        ];
      })
    )
  ];
  if (command !== 'serve') sections.push(foot);
  return sections.map((lines) => `${lines.join('\n')}\n`).join('\n');
}

const foot: readonly string[] = [
  'FILE may be - for standard input.',
  'Exit status, the highest that applies: 0 no limit over; 1 a limit is over; 2 a line is in error',
  'or a limit cannot be computed; 3 a file cannot be read or the call is wrong.'
];

/** Heads and their words; a head that is too long stands on a line of its own. */
function inTwoColumns(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.min(30, Math.max(...rows.map(([head]) => head.length)));
  const indent = ' '.repeat(width + 4);
  return rows.flatMap(([head, words]) => {
    const lines = wrap(words, HELP_WIDTH - indent.length);
    if (head.length > width) return [`  ${head}`, ...lines.map((line) => indent + line)];
    const [first = '', ...rest] = lines;
    return [`  ${head.padEnd(width)}  ${first}`, ...rest.map((line) => indent + line)];
  });
}

export const optionHead = (row: OptionRow): string =>
  row.value === null ? `--${row.name}` : `--${row.name} ${row.value}`;
