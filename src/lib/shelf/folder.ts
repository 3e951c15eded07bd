// A folder of worksheets on this machine: what is in it, the text of one, the tables and pictures
// beside it. A name from outside is never joined to a path before it has been taken apart: no
// absolute paths, no '..', no hidden parts, and the real place (links followed) must lie inside the
// folder that was asked. Whatever cannot be read is told as one sentence, never thrown.

import { open, readdir, realpath, stat } from 'node:fs/promises';
import { isAbsolute, join, relative, resolve, sep } from 'node:path';
import { decodeText } from './decode.ts';

/** Largest file that is read, in bytes: 5 MB, far above any sheet written by hand. */
export const LARGEST_FILE = 5_000_000;

export type FaultKind = 'name' | 'missing' | 'not-a-file' | 'outside' | 'too-large' | 'encoding' | 'system'; // prettier-ignore

/** Why a file could not be read, as one sentence that names it. */
export interface Fault {
  readonly kind: 'fault';
  readonly fault: FaultKind;
  readonly message: string;
}

export interface TextFile {
  readonly kind: 'text';
  readonly text: string;
  /** Last change, milliseconds since 1970. */
  readonly changed: number;
}

export interface BytesFile {
  readonly kind: 'bytes';
  readonly bytes: Uint8Array;
}

export interface Entry {
  /** File name with its ending: 'spray-arm-rig.md'. */
  readonly file: string;
  /** Last change, milliseconds since 1970. */
  readonly changed: number;
}

export interface Listing {
  readonly kind: 'listing';
  /** Latest change first. */
  readonly entries: readonly Entry[];
}

/** Where worksheets live. Each method answers with a fault rather than an exception. */
export interface WorksheetFolder {
  list(): Promise<Listing | Fault>;
  /** A worksheet by its file name, `NAME.md`. */
  read(file: string): Promise<TextFile | Fault>;
  /** A table named in a sheet (`from PATH`): beside the sheet first, then in the shared folder. */
  readTable(path: string): Promise<TextFile | Fault>;
  /** A picture named in a sheet, beside it. */
  readPicture(path: string): Promise<BytesFile | Fault>;
}

const fault = (kind: FaultKind, message: string): Fault => ({
  kind: 'fault',
  fault: kind,
  message
});

/** Control characters in a name would garble the sentence that tells it. */
const shown = (name: string): string => name.replace(/\p{Cc}/gu, '\ufffd').slice(0, 200);

/**
 * The parts of a relative path that stays below its folder, or null.
 *
 * Refused: an empty path, absolute paths and drive letters, backslashes, '.', '..', hidden parts,
 * control characters (a NUL among them) and names Windows keeps for devices.
 */
export function safeParts(path: string): readonly string[] | null {
  if (path === '' || path.length > 400 || isAbsolute(path) || /[\\:\p{Cc}]/u.test(path))
    return null;
  const parts = path.split('/');
  const device = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;
  return parts.some((part) => part === '' || part.startsWith('.') || device.test(part))
    ? null
    : parts;
}

/** Whether `path` is `folder` or below it; both are real paths. */
const isInside = (folder: string, path: string): boolean => {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
};

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

const isAbsent = (error: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes(codeOf(error));

interface Found {
  readonly kind: 'found';
  readonly bytes: Uint8Array;
  readonly changed: number;
}

/** The bytes of `path` below `folder`, with every check of the head comment. */
async function readBelow(folder: string, path: string): Promise<Found | Fault> {
  const name = shown(path);
  const parts = safeParts(path);
  if (!parts) {
    return fault('name', `"${name}" is not a file name that can be opened; expected a name beside the worksheets, without "..".`); // prettier-ignore
  }
  try {
    const root = await realpath(folder);
    const place = await realpath(join(root, ...parts));
    if (!isInside(root, place)) {
      return fault(
        'outside',
        `${name} leads out of the folder of worksheets, so it is not opened.`
      );
    }
    if (!(await stat(place)).isFile()) {
      return fault('not-a-file', `${name} is not a file, so there is nothing to read in it.`);
    }
    const handle = await open(place, 'r');
    try {
      const { size, mtimeMs } = await handle.stat();
      if (size > LARGEST_FILE) {
        const megabytes = (size / 1e6).toFixed(1);
        return fault('too-large', `${name} is ${megabytes} MB; files up to 5 MB are opened.`);
      }
      return { kind: 'found', bytes: await handle.readFile(), changed: mtimeMs };
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (isAbsent(error)) return fault('missing', `There is no file ${name} in the folder.`);
    return fault(
      'system',
      `${name} cannot be read: ${codeOf(error) || 'the system gave no reason'}.`
    );
  }
}

async function readText(folder: string, path: string): Promise<TextFile | Fault> {
  const found = await readBelow(folder, path);
  if (found.kind === 'fault') return found;
  const decoded = decodeText(found.bytes);
  if (decoded.kind === 'text') return { kind: 'text', text: decoded.text, changed: found.changed };
  return fault('encoding', `${shown(path)} is not UTF-8 text (${decoded.reason}). Save it as UTF-8 and open it again.`); // prettier-ignore
}

/**
 * Worksheets in a folder of this machine.
 *
 * @param folder  where the `*.md` lie
 * @param shared  the product's own tables, second place where `from PATH` is looked up; null for none
 */
export function worksheetFolder(folder: string, shared: string | null): WorksheetFolder {
  const root = resolve(folder);
  return {
    async list() {
      try {
        const names = (await readdir(root)).filter(
          (name) => /\.md$/i.test(name) && safeParts(name)
        );
        const entries: Entry[] = [];
        for (const file of names) {
          // A link that leads nowhere is still listed: opening it tells why it cannot be read.
          const changed = await stat(join(root, file)).then(
            (found) => (found.isFile() ? found.mtimeMs : null),
            () => 0
          );
          if (changed !== null) entries.push({ file, changed });
        }
        entries.sort((a, b) => b.changed - a.changed || (a.file < b.file ? -1 : 1));
        return { kind: 'listing', entries };
      } catch (error) {
        const why = isAbsent(error)
          ? 'it is not there'
          : codeOf(error) || 'the system gave no reason';
        return fault('missing', `The folder of worksheets cannot be listed: ${why}.`);
      }
    },

    async read(file) {
      if (/\.md$/i.test(file)) return readText(root, file);
      return fault(
        'name',
        `"${shown(file)}" is not a worksheet; expected a name that ends in .md.`
      );
    },

    async readTable(path) {
      const beside = await readText(root, path);
      if (shared === null || beside.kind === 'text' || beside.fault !== 'missing') return beside;
      return readText(shared, path);
    },

    async readPicture(path) {
      const found = await readBelow(root, path);
      return found.kind === 'fault' ? found : { kind: 'bytes', bytes: found.bytes };
    }
  };
}
