import { error } from '@sveltejs/kit';
import { pageModel, viewRequestOf } from '#lib/ui/index.ts';
import { computeFile, pictureHref, sheetHref } from '../../worksheets.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, url }) => {
  const file = `${params.name}.md`;
  const outcome = await computeFile(file);
  if (outcome.kind === 'fault') error(outcome.fault === 'missing' ? 404 : 422, outcome.message);
  const model = pageModel({
    results: outcome.results,
    file,
    view: viewRequestOf(url.searchParams),
    pictureHref: (path) => pictureHref(params.name, path),
    sheetHref
  });
  return { model, here: url.pathname + url.search };
};
