import { homeEntry } from '#lib/ui/index.ts';
import { computeFile, sheetHref, worksheets } from './worksheets.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async () => {
  const listing = await worksheets().list();
  if (listing.kind === 'fault') return { entries: [], fault: listing.message };
  const entries = [];
  for (const { file, changed } of listing.entries) {
    const outcome = await computeFile(file);
    const from = { file, href: sheetHref(file.replace(/\.md$/i, '')), changed: changed || null };
    entries.push(homeEntry(from, outcome.kind === 'fault' ? outcome.message : outcome.results));
  }
  return { entries, fault: null };
};
