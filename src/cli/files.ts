// Reading worksheets and the tables they ask for. Whatever cannot be read gives one sentence; at
// most 5 MB are read, so that a pipe or a device without end is refused as soon as it is over. A
// table is looked for beside the worksheet, then in the product's own `shared/`; a path that leads
// out of either folder, also through a link, is refused.

import { isUtf8 } from 'node:buffer';
import { constants } from 'node:fs';
import { open, realpath } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Largest file that is read [bytes]. */
export const mostBytes = 5_000_000;

export type Read =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'refused'; readonly message: string };

const refused = (message: string): Read => ({ kind: 'refused', message });

/** @param file  a path, or '-' for standard input */
export async function readText(file: string): Promise<Read> {
  if (file === '-') return decoded(await firstBytes(process.stdin), 'Standard input');
  let handle;
  try {
    handle = await open(file, constants.O_RDONLY);
  } catch (error) {
    return refused(openFault(file, error));
  }
  try {
    const stat = await handle.stat();
    if (stat.isDirectory()) return refused(`${file} is a folder; name a worksheet in it.`);
    if (stat.isFile() && stat.size > mostBytes) return refused(tooLarge(file, stat.size));
    return decoded(await firstBytes(handle.createReadStream({ autoClose: false })), file);
  } catch (error) {
    return refused(openFault(file, error));
  } finally {
    await handle.close();
  }
}

/** Up to one byte more than the most that is read. */
async function firstBytes(stream: AsyncIterable<unknown>): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of stream) {
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk) : (chunk as Buffer);
    chunks.push(bytes);
    size += bytes.length;
    if (size > mostBytes) break;
  }
  return Buffer.concat(chunks);
}

function decoded(bytes: Buffer, name: string): Read {
  if (bytes.length > mostBytes) return refused(tooLarge(name, null));
  if (isUtf8(bytes))
    return { kind: 'text', text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) };
  const utf16 =
    (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const found = utf16 ? 'it is UTF-16' : `line ${firstBadLine(bytes)} holds other bytes`;
  return refused(`${name} is not UTF-8 text: ${found}. Save it as UTF-8.`);
}

/** The first line, from 1, that is not UTF-8 by itself. */
function firstBadLine(bytes: Buffer): number {
  let line = 1;
  for (let start = 0; start < bytes.length; line++) {
    const end = bytes.indexOf(0x0a, start);
    const stop = end === -1 ? bytes.length : end;
    if (!isUtf8(bytes.subarray(start, stop))) return line;
    start = stop + 1;
  }
  return line;
}

const tooLarge = (file: string, size: number | null): string =>
  `${file} is ${size === null ? 'larger than 5 MB' : `${(size / 1e6).toFixed(1)} MB`}; a worksheet of at most 5 MB is read.`;

function openFault(file: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  switch (code) {
    case 'ENOENT':
      return `${file} does not exist.`;
    case 'ENOTDIR':
      return `${file} does not exist: a part of its path is a file, not a folder.`;
    case 'EACCES':
    case 'EPERM':
      return `${file} may not be read: this user has no right to it.`;
    case 'EISDIR':
      return `${file} is a folder; name a worksheet in it.`;
    case 'ENAMETOOLONG':
      return `${file.slice(0, 60)}… is longer than a path may be.`;
    case 'ELOOP':
      return `${file} is a link that leads to itself.`;
    default:
      return `${file} could not be read${typeof code === 'string' ? ` (${code})` : ''}.`;
  }
}

export interface Tables {
  /** By path as the worksheet writes it. */
  readonly files: ReadonlyMap<string, string>;
  /** Sentences on tables that are there but cannot be read. */
  readonly notices: readonly string[];
}

/**
 * The tables that a worksheet asks for, from files.
 *
 * @param wanted  paths as the worksheet writes them, with the line that asks
 * @param folder  where the worksheet lies
 */
export async function readTables(
  wanted: readonly { readonly path: string; readonly line: number }[],
  folder: string
): Promise<Tables> {
  const files = new Map<string, string>();
  const notices: string[] = [];
  const shared = sharedFolder();
  for (const { path, line } of wanted) {
    if (files.has(path)) continue;
    for (const base of shared === null ? [folder] : [folder, shared]) {
      const file = await insideOf(base, path);
      if (file === null) continue;
      const read = await readText(file);
      if (read.kind === 'text') files.set(path, read.text);
      else notices.push(`Line ${line} asks for a table: ${read.message}`);
      break;
    }
  }
  return { files, notices };
}

/** The file that a relative path names in a folder; null where there is none, or not in it. */
async function insideOf(folder: string, path: string): Promise<string | null> {
  if (path === '' || path.includes('\0') || isAbsolute(path) || /^[a-z]:/i.test(path)) return null;
  try {
    const [root, file] = [await realpath(folder), await realpath(resolve(folder, path))];
    const way = relative(root, file);
    const outside = way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way) || way === '';
    return outside ? null : file;
  } catch {
    // Not there: the sheet itself says so, at the line that asks for it.
    return null;
  }
}

/** The product's `shared/`: beside the package.json above this file, built or not. */
function sharedFolder(): string | null {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (let up = 0; up < 5; up++) {
    const candidate = join(folder, 'shared');
    if (existsSync(join(folder, 'package.json')) && existsSync(candidate)) return candidate;
    folder = dirname(folder);
  }
  return null;
}
