// `rigwright show FILE`: the whole sheet with its values, in one of five forms or as JSON.

import { extname } from 'node:path';
import {
  jsonText,
  resultObject,
  sheetCsv,
  sheetHtml,
  sheetLatex,
  sheetMarkdown,
  sheetText
} from '#lib/render/index.ts';
import type { Results } from '#lib/sheet/index.ts';
import type { Call } from './args.ts';
import type { Format } from './options.ts';
import type { Status } from './output.ts';
import { deliver, highest, paletteFor } from './output.ts';
import { computed, picked, readSource, statusOf, triesFit, valuesFit } from './sheet.ts';

/** @returns  the exit status */
export async function show(call: Call): Promise<Status> {
  const file = call.operands[0] ?? '-';
  const source = await readSource(file);
  if (!source) return 3;
  const whole = computed(source, call.tries);
  const fits = triesFit(whole, call.tries, file) && valuesFit(whole, source, call.tries);
  const results = fits ? picked(whole, call.stage, file) : null;
  if (!results) return 3;
  const text = call.json
    ? jsonText(resultObject(results))
    : await written(results, call.format ?? formatOf(call.out), call.out);
  return highest(statusOf(results), deliver(text, call.out, call.operands));
}

async function written(results: Results, format: Format, out: string | null): Promise<string> {
  switch (format) {
    case 'text':
      return sheetText(results, paletteFor(out));
    case 'markdown':
      return sheetMarkdown(results);
    case 'csv':
      return sheetCsv(results);
    case 'latex':
      return sheetLatex(results);
    case 'html':
      return sheetHtml(results);
  }
}

/** Without --format, the ending of --out tells. */
function formatOf(out: string | null): Format {
  switch (out === null ? '' : extname(out).toLowerCase()) {
    case '.md':
      return 'markdown';
    case '.html':
    case '.htm':
      return 'html';
    case '.csv':
      return 'csv';
    case '.tex':
      return 'latex';
    default:
      return 'text';
  }
}
