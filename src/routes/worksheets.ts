// The one place where the page meets the folder and the engine: a file is read anew for each request
// and computed anew when its text, or that of a table it uses, has changed.

import { env } from '$env/dynamic/private';
import { compute, filesWanted, type Results } from '#lib/sheet/index.ts';
import { worksheetFolder, type Fault, type WorksheetFolder } from '#lib/shelf/index.ts';

export type Computed = { readonly kind: 'results'; readonly results: Results } | Fault;

let folder: WorksheetFolder | null = null;

/** The folder that the server was started on. */
export function worksheets(): WorksheetFolder {
  folder ??= worksheetFolder(
    env['RIGWRIGHT_FOLDER'] ?? 'worksheets',
    env['RIGWRIGHT_SHARED'] ?? 'shared'
  );
  return folder;
}

export const sheetHref = (name: string): string => `/worksheets/${encodeURIComponent(name)}`;

export const pictureHref = (name: string, path: string): string =>
  `${sheetHref(name)}/beside/${path.split('/').map(encodeURIComponent).join('/')}`;

/** Reads a worksheet and the tables it names, and computes it. */
export async function computeFile(file: string): Promise<Computed> {
  const sheet = await worksheets().read(file);
  if (sheet.kind === 'fault') return sheet;
  const files = new Map<string, string>();
  for (const { path } of filesWanted(sheet.text)) {
    const table = await worksheets().readTable(path);
    // A table that cannot be read is told by the engine, at the line that asks for it.
    if (table.kind === 'text') files.set(path, table.text);
  }
  try {
    return { kind: 'results', results: remembered(file, sheet.text, files) };
  } catch (error) {
    // A fault of the program, never of the sheet: told for this file, so that the others still open.
    console.error(`${file} could not be computed:`, error);
    return {
      kind: 'fault',
      fault: 'system',
      message: `${file} could not be computed: a fault of this program, told in full where it was started.`
    };
  }
}

interface Memory {
  readonly text: string;
  readonly files: ReadonlyMap<string, string>;
  readonly results: Results;
}

const memory = new Map<string, Memory>();
const MOST_REMEMBERED = 50;

/** Computes, unless this very text with these very tables was computed last time. */
function remembered(file: string, text: string, files: ReadonlyMap<string, string>): Results {
  const last = memory.get(file);
  const isSame =
    last?.text === text &&
    last.files.size === files.size &&
    [...files].every(([path, content]) => last.files.get(path) === content);
  if (last && isSame) return last.results;
  const results = compute(text, { files });
  if (memory.size >= MOST_REMEMBERED) memory.clear();
  memory.set(file, { text, files, results });
  return results;
}
