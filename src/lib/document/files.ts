// The files a worksheet asks for. A path is relative to the sheet's folder and stays inside it:
// whatever could lead elsewhere is refused here, before anything looks at a disk.

import { fileWords, problem, type Problem } from '#lib/problem/index.ts';
import { spanOf, type Cut } from '#lib/text/index.ts';
import type { Worksheet } from './types.ts';

/**
 * Whether a path could lead out of the sheet's folder: an absolute one, one with a `..` part, a
 * drive letter, a scheme, a backslash, or a control character.
 */
export function isOutside(path: string): boolean {
  if (path === '' || path.startsWith('/') || path.startsWith('~')) return true;
  if (/^[A-Za-z][A-Za-z0-9+.-]*:/.test(path)) return true;
  for (let i = 0; i < path.length; i++) {
    const code = path.charCodeAt(i);
    if (code < 32 || code === 127 || code === 92) return true;
  }
  return path.split('/').includes('..');
}

/** The problem of a path that leads out of the sheet's folder, or null. */
export function pathProblem(path: Cut): Problem | null {
  if (!isOutside(path.text)) return null;
  return problem('file/table-outside', spanOf(path), fileWords.tableOutside(path.text));
}

/** The paths of `table NAME from PATH`, in file order, without those that are refused. */
export function filesWanted(worksheet: Worksheet): { path: string; line: number }[] {
  const wanted: { path: string; line: number }[] = [];
  for (const item of worksheet.items) {
    if (item.kind !== 'block' || item.block !== 'table' || item.head.from === null) continue;
    const path = item.head.from.text;
    if (!isOutside(path)) wanted.push({ path, line: item.line });
  }
  return wanted;
}
