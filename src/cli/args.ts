// Reads a call of the command line by the table of options. A call that cannot be understood gives
// one sentence that names the word at fault and what was expected there; it is never guessed at.

import type { CommandName, Format, OptionName } from './options.ts';
import { commandNames, commands, formats, optionHead, options } from './options.ts';

export interface Call {
  readonly kind: 'run';
  readonly command: CommandName;
  readonly operands: readonly string[];
  readonly stage: string | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly tries: readonly Try[];
  readonly json: boolean;
  readonly format: Format | null;
  readonly out: string | null;
  readonly port: number | null;
  readonly host: string | null;
  readonly secretFile: string | null;
}

/** `--try NAME=VALUE` or `NAME@STAGE=VALUE`: the value as typed, a constant expression of the sheet. */
export interface Try {
  readonly name: string;
  readonly stage: string | null;
  readonly value: string;
}

export type ParsedCall =
  | Call
  | { readonly kind: 'help'; readonly command: CommandName | null }
  | { readonly kind: 'version' }
  | { readonly kind: 'wrong'; readonly message: string };

const wrong = (message: string): ParsedCall => ({ kind: 'wrong', message });

/** @param words  the call without the program's own name */
export function parseCall(words: readonly string[]): ParsedCall {
  const given = new Map<OptionName, string[]>();
  const operands: string[] = [];
  let onlyOperands = false;
  for (let index = 0; index < words.length; index++) {
    const word = words[index] ?? '';
    if (onlyOperands || word === '-' || !word.startsWith('-')) {
      operands.push(word);
      continue;
    }
    if (word === '--') {
      onlyOperands = true;
      continue;
    }
    const [head = '', ...tail] = word.split('=');
    const name = shortNames.get(head) ?? head.slice(2);
    const row =
      head.startsWith('--') || shortNames.has(head)
        ? options.find((option) => option.name === name)
        : undefined;
    if (!row) return wrong(unknownOption(head));
    let value = tail.length > 0 ? tail.join('=') : null;
    if (row.value === null) {
      if (value !== null) return wrong(`--${row.name} takes no value, and "${value}" was given.`);
      value = '';
    } else if (value === null) {
      const next = words[index + 1];
      if (next === undefined || (next.startsWith('--') && next.length > 2))
        return wrong(`--${row.name} needs a value after it: ${optionHead(row)}.`);
      value = next;
      index++;
    }
    const before = given.get(row.name) ?? [];
    if (before.length > 0 && !row.repeats && row.value !== null)
      return wrong(`--${row.name} was given twice: "${before[0] ?? ''}" and "${value}".`);
    given.set(row.name, [...before, value]);
  }
  return commandCall(operands, given);
}

const shortNames: ReadonlyMap<string, OptionName> = new Map([
  ['-h', 'help'],
  ['-V', 'version']
]);

function commandCall(
  operands: readonly string[],
  given: ReadonlyMap<OptionName, readonly string[]>
): ParsedCall {
  const [word, ...rest] = operands;
  const command = commandNames.find((name) => name === word);
  if (given.has('help') || (word === 'help' && !command))
    return {
      kind: 'help',
      command: command ?? commandNames.find((name) => name === rest[0]) ?? null
    };
  if (given.has('version')) return { kind: 'version' };
  if (word === undefined) return wrong(`Say what to do: ${commandNames.join(', ')}.`);
  if (!command) return wrong(unknownCommand(word));

  const row = commands.find(({ name }) => name === command);
  if (row && rest.length < row.least)
    return wrong(`${command} needs a file: rigwright ${command} ${row.operands}.`);
  if (row && rest.length > row.most)
    return wrong(
      `${command} takes ${row.operands}, and ${rest.length} were given: ${rest.join(', ')}.`
    );
  for (const name of given.keys()) {
    const option = options.find((candidate) => candidate.name === name);
    if (option && option.commands.length > 0 && !option.commands.includes(command))
      return wrong(
        `--${name} does not belong to ${command}; it belongs to ${option.commands.join(', ')}.`
      );
  }
  if (rest.includes('')) return wrong('A file with an empty name was given.');
  return checkedCall(command, rest, given);
}

function checkedCall(
  command: CommandName,
  operands: readonly string[],
  given: ReadonlyMap<OptionName, readonly string[]>
): ParsedCall {
  const one = (name: OptionName): string | null => given.get(name)?.[0] ?? null;
  const formatWord = one('format');
  const format = formats.find((name) => name === formatWord) ?? null;
  if (formatWord !== null && format === null)
    return wrong(`--format is ${formats.join(', ')}, and "${formatWord}" was given.`);
  const json = given.has('json');
  if (json && format !== null) return wrong('--json and --format ask for two different outputs.');

  const portWord = one('port');
  const port = portWord === null ? null : Number(portWord);
  if (port !== null && !(/^\d+$/.test(portWord ?? '') && port >= 1 && port <= 65535))
    return wrong(`--port is a whole number from 1 to 65535, and "${portWord ?? ''}" was given.`);

  if (operands.filter((file) => file === '-').length > 1)
    return wrong('Standard input (-) can be read once, and was given twice.');
  const tries: Try[] = [];
  for (const word of given.get('try') ?? []) {
    const found = tryOf(word);
    if (typeof found === 'string') return wrong(found);
    const twice = tries.find(({ name, stage }) => name === found.name && stage === found.stage);
    if (twice)
      return wrong(`--try gives ${found.name} two values, "${twice.value}" and "${found.value}".`);
    tries.push(found);
  }
  if (command === 'compare' && operands.length === 2 && tries.length > 0)
    return wrong('--try sets a file against itself: give compare one FILE with it.');
  for (const name of ['stage', 'from', 'to', 'out', 'host', 'secret-file'] as const)
    if (one(name) === '') return wrong(`--${name} was given an empty value.`);
  return {
    kind: 'run',
    command,
    operands,
    stage: one('stage'),
    from: one('from'),
    to: one('to'),
    tries,
    json,
    format,
    out: one('out'),
    port,
    host: one('host'),
    secretFile: one('secret-file')
  };
}

const tryForm =
  /^\s*([\p{L}_][\p{L}\p{Nd}_]*(?:\.[\p{L}_][\p{L}\p{Nd}_]*)*)\s*(?:@\s*([a-z][a-z0-9-]*))?\s*=(?!=)\s*(.*\S)\s*$/su;

/** A try, or the sentence that says what is wrong with it. */
function tryOf(word: string): Try | string {
  const parts = tryForm.exec(word);
  const [, name, stage, value] = parts ?? [];
  if (name === undefined || value === undefined)
    return `--try is NAME=VALUE or NAME@STAGE=VALUE, for example v_top=60m/s, and "${word}" was given.`;
  if (/[\r\n]/.test(value)) return `--try takes one line, and the value for ${name} has several.`;
  return { name: name.normalize('NFC'), stage: stage ?? null, value };
}

function unknownOption(head: string): string {
  const near = nearest(
    head.replace(/^-+/, ''),
    options.map(({ name }) => name)
  );
  return `There is no option ${head}${near === null ? '' : `; nearest: --${near}`}.`;
}

function unknownCommand(word: string): string {
  const near = nearest(word, commandNames);
  const looksLikeFile = /[./\\]/.test(word);
  const cure = looksLikeFile
    ? `To check a worksheet: rigwright check ${word}.`
    : near === null
      ? `Commands: ${commandNames.join(', ')}.`
      : `Nearest: ${near}.`;
  return `There is no command "${word}". ${cure}`;
}

/** The word that takes the fewest changes of a letter, if at most two (and fewer than its length). */
export function nearest(word: string, among: readonly string[]): string | null {
  let best: string | null = null;
  let least = 3;
  for (const candidate of among) {
    const changes = editDistance(word.slice(0, 60), candidate.slice(0, 60));
    if (changes < least && changes < candidate.length) {
      least = changes;
      best = candidate;
    }
  }
  return best;
}

/** Letters to insert, remove or exchange (Levenshtein's distance). */
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchanged = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(exchanged, (previous[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    previous = row;
  }
  return previous[b.length] ?? 0;
}
