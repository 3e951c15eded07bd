// The files a worksheet's tables are read from, before anything is computed.

import { filesWanted as filesOf, readWorksheet } from '#lib/document/index.ts';

/** Paths as the sheet writes them, each with the line of its block. */
export function filesWanted(
  text: string
): readonly { readonly path: string; readonly line: number }[] {
  return filesOf(readWorksheet(text));
}
