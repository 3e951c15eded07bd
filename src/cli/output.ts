// Where the command line writes: results to standard output or to the file of --out, everything else
// to standard error. Colours only on a terminal, and never with NO_COLOR (no-color.org).

import { realpathSync, writeFileSync } from 'node:fs';
import type { Palette } from '#lib/render/index.ts';
import { plainPalette, printable } from '#lib/render/index.ts';

/** Exit status: the highest that applies. */
export type Status = 0 | 1 | 2 | 3;
export const highest = (...statuses: readonly Status[]): Status =>
  statuses.reduce((most, status) => (status > most ? status : most), 0);

const sgr =
  (on: number, off: number) =>
  (text: string): string =>
    text === '' ? '' : `\u001b[${on}m${text}\u001b[${off}m`;

const terminalPalette: Palette = {
  over: sgr(31, 39),
  close: sgr(33, 39),
  inside: sgr(32, 39),
  quiet: sgr(2, 22),
  strong: sgr(1, 22)
};

/** The colours for what goes to standard output, or to a file. */
export function paletteFor(out: string | null): Palette {
  const plain =
    out !== null ||
    !process.stdout.isTTY ||
    Boolean(process.env.NO_COLOR) ||
    process.env.TERM === 'dumb';
  return plain ? plainPalette : terminalPalette;
}

/** One sentence to standard error. */
export function complain(sentence: string): void {
  process.stderr.write(`rigwright: ${printable(sentence)}\n`);
}

/**
 * Writes the results; a file that is read is never written over.
 *
 * @returns  3 where the file cannot be written, else 0
 */
export function deliver(text: string, out: string | null, sources: readonly string[]): Status {
  if (out === null) {
    process.stdout.write(text);
    return 0;
  }
  if (sources.some((source) => source !== '-' && isSameFile(source, out))) {
    complain(`--out ${out} is the worksheet itself; nothing was written.`);
    return 3;
  }
  try {
    writeFileSync(out, text);
    return 0;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? ` (${String(error.code)})` : '';
    complain(`--out ${out} could not be written${code}.`);
    return 3;
  }
}

function isSameFile(one: string, other: string): boolean {
  try {
    return realpathSync(one) === realpathSync(other);
  } catch {
    // The file of --out does not exist yet.
    return false;
  }
}

/** Says what is being worked on, on a terminal's standard error only; '' wipes it. */
export function progress(words: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${printable(words)}`);
}
